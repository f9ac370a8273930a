package cure_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

func litres(n float64) working.Figure[unit.Volume] { return given[unit.Volume](n, unit.InMillilitre) }

var noDensity working.Figure[unit.Density]

func TestFourToOneByMass(t *testing.T) {
	r := cure.RatioByMass(given[unit.ByMass](4, unit.InPure), noDensity, noDensity)
	p, err := r.ForTotal(grams(500)) // US Army TM 55-1905-223 par. 8-24: 400 g and 100 g
	require.NoError(t, err)
	assert.InDelta(t, 400, inGrams(p.A.Mass), 1e-9)
	assert.InDelta(t, 100, inGrams(p.B.Mass), 1e-9)
	assert.Nil(t, p.A.Volume.Step, "no millilitres without a density")
	_, err = r.ForTotalVolume(litres(500))
	assert.Equal(t, cure.DensityMissing, refused[*cure.RatioError](t, err).Cause)
}

func TestARatioByVolumeIsNotOneByMass(t *testing.T) {
	r := cure.RatioByVolume(given[unit.ByVolume](2, unit.InPure), density(1.15), density(0.95))
	p, err := r.ForTotalVolume(litres(300))
	require.NoError(t, err)
	assert.InDelta(t, 100, unit.InMillilitre.From(float64(p.B.Volume.Value)), 1e-9)
	assert.InDelta(t, 230, inGrams(p.A.Mass), 1e-9)
	assert.InDelta(t, 95, inGrams(p.B.Mass), 1e-9)
	byMass, err := r.ForTotal(grams(325))
	require.NoError(t, err)
	assert.InDelta(t, 95, inGrams(byMass.B.Mass), 1e-9, "not 108 g")
}

func TestAMissingRatioGivesNoParts(t *testing.T) {
	_, err := cure.Ratio{}.ForTotal(grams(100))
	assert.Equal(t, cure.RatioMissing, refused[*cure.RatioError](t, err).Cause)
	_, err = cure.Ratio{}.ForTotalVolume(litres(100))
	assert.Equal(t, cure.RatioMissing, refused[*cure.RatioError](t, err).Cause)
	_, err = cure.RatioByMass(given[unit.ByMass](0, unit.InPure), noDensity, noDensity).ForTotal(grams(100))
	refused[*working.RangeError](t, err)
}

func TestRatiosComeBackRound(t *testing.T) {
	random := rand.New(rand.NewPCG(13, 14))
	for range 500 {
		a, b := density(0.5+random.Float64()), density(0.5+random.Float64())
		byVolume := cure.RatioByVolume(given[unit.ByVolume](0.5+10*random.Float64(), unit.InPure), a, b)
		p, err := byVolume.ForTotal(grams(10 + 2000*random.Float64()))
		require.NoError(t, err)
		ratio := p.A.Mass.Value / p.B.Mass.Value
		byMass := cure.RatioByMass(working.Given(unit.ByMass(ratio), "", unit.InPure, "", 0), a, b)
		for _, again := range []func() (cure.Parts, error){
			func() (cure.Parts, error) { return byMass.ForTotal(sum(p.A.Mass, p.B.Mass)) },
			func() (cure.Parts, error) { return byMass.ForTotalVolume(sum(p.A.Volume, p.B.Volume)) },
			func() (cure.Parts, error) { return byVolume.ForTotalVolume(sum(p.A.Volume, p.B.Volume)) },
		} {
			q, err := again()
			require.NoError(t, err)
			assert.InEpsilon(t, float64(p.A.Mass.Value), float64(q.A.Mass.Value), 1e-9)
			assert.InEpsilon(t, float64(p.B.Volume.Value), float64(q.B.Volume.Value), 1e-9)
		}
	}
}

func sum[Q unit.Quantity](a, b working.Figure[Q]) working.Figure[Q] {
	return working.Sum(working.SumRule("both", unit.NoScale), a, b)
}

func TestPartsAreWeighedOnMarks(t *testing.T) {
	g, err := tool(t, cure.Scale, "0.5").Weigh(grams(83.3))
	require.NoError(t, err)
	assert.Equal(t, "83.5\u00a0g", g.String())
	ml, err := tool(t, cure.Syringe, "5").Draw(litres(102))
	require.NoError(t, err)
	assert.Equal(t, "100\u00a0mL", ml.String())
	_, err = tool(t, cure.Scale, "1").Weigh(grams(19))
	refused[*cure.CoarseToolError](t, err)
	_, err = tool(t, cure.Scale, "1").Draw(litres(100))
	refused[*cure.ToolError](t, err)
}
