package cure_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

func bandAt(t *testing.T, g cure.Gel, c, p float64) cure.Band {
	t.Helper()
	b, err := g.At(celsius(c), percent(p))
	require.NoError(t, err)
	return b
}

func TestGelTimeFallsWithTemperatureAndCatalyst(t *testing.T) {
	for at := 10.; at < 40; at++ {
		for p := 1.; p < 2.5; p += 0.25 {
			here, warmer, more := bandAt(t, gel(), at, p), bandAt(t, gel(), at+1, p), bandAt(t, gel(), at, p+0.1)
			for _, later := range []cure.Band{warmer, more} {
				assert.Less(t, later.Early.Value, here.Early.Value)
				assert.Less(t, later.Mid.Value, here.Mid.Value)
				assert.Less(t, later.Late.Value, here.Late.Value)
			}
			assert.LessOrEqual(t, here.Early.Value, here.Mid.Value)
			assert.LessOrEqual(t, here.Mid.Value, here.Late.Value)
		}
	}
}

func TestTheBandWidensAwayFromTheReference(t *testing.T) {
	width := func(at float64) float64 {
		b := bandAt(t, gel(), at, 1.8)
		return float64(b.Late.Value / b.Early.Value)
	}
	for d := 0.; d < 15; d++ {
		assert.Less(t, width(25+d), width(25+d+1))
		assert.Less(t, width(25-d), width(25-d-1))
	}
}

// The extremes over all corners hold every point of the ranges.
func TestTheBandHoldsEveryPointOfItsRanges(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	b := bandAt(t, gel(), 31, 1.3)
	for range 1000 {
		ref, n, ea := 10+7*random.Float64(), 0.5+0.5*random.Float64(), 40e3+45e3*random.Float64()
		m := ref * math.Pow(1.8/1.3, n) * math.Exp(ea/8.314462618*(1/304.15-1/298.15))
		assert.GreaterOrEqual(t, m, inMinutes(b.Early)-1e-9)
		assert.LessOrEqual(t, m, inMinutes(b.Late)+1e-9)
	}
}

func TestNoMinutesFarFromAKnownPoint(t *testing.T) {
	bandAt(t, gel(), 10, 1.8)
	bandAt(t, gel(), 40, 1.8)
	for _, c := range []float64{9.9, 40.1, math.NaN(), math.Inf(1)} {
		_, err := gel().At(celsius(c), percent(1.8))
		refused[*cure.FarError](t, err)
	}
	_, err := gel().InCup(celsius(25), percent(1.8), 500*unit.Gram)
	require.NoError(t, err)
	for _, m := range []float64{501, 0, -1, math.NaN()} {
		_, err = gel().InCup(celsius(25), percent(1.8), unit.Of[unit.Mass](m, unit.InGram))
		refused[*cure.InCupError](t, err)
	}
}

func TestAGelTimeThatCantBeRight(t *testing.T) {
	for _, spoil := range []func(*cure.Gel){
		func(g *cure.Gel) { g.Time.Low = minutes(14) },
		func(g *cure.Gel) { g.Time.Mid = minutes(math.NaN()) },
		func(g *cure.Gel) { g.Time = cure.Range[unit.Time]{} },
		func(g *cure.Gel) { g.Energy.High = energy(50) },
		func(g *cure.Gel) { g.Order.Low = factor(0) },
		func(g *cure.Gel) { g.Catalyst = working.Figure[unit.ByMass]{} },
	} {
		g := gel()
		spoil(&g)
		_, err := g.At(celsius(25), percent(1.8))
		refused[*cure.GelError](t, err)
	}
	_, err := gel().At(celsius(25), working.Figure[unit.ByMass]{})
	refused[*cure.GelError](t, err)
	_, err = gel().At(celsius(25), percent(0))
	refused[*working.RangeError](t, err)
	_, err = cure.Gel{}.At(celsius(25), percent(1))
	assert.Error(t, err)
}

func TestPotLifeOfAFixedRatio(t *testing.T) {
	listed := fixedRatio(celsius(20), energy(57))
	none := working.Figure[unit.ByMass]{}
	for at := 10.; at < 30; at++ {
		here, err := listed.InCup(celsius(at), none, 100*unit.Gram)
		require.NoError(t, err)
		warmer, err := listed.InCup(celsius(at+1), none, 100*unit.Gram)
		require.NoError(t, err)
		assert.Less(t, warmer.Mid.Value, here.Mid.Value)
	}
	_, err := listed.At(celsius(20), percent(1))
	refused[*cure.GelError](t, err)
	_, err = listed.InCup(celsius(20), none, 501*unit.Gram)
	refused[*cure.InCupError](t, err)
	g, err := listed.Tested(
		cure.CupTest{Gel: minutes(80), Temperature: celsius(16), Mass: grams(100)},
		cure.CupTest{Gel: minutes(40), Temperature: celsius(26), Mass: grams(100)})
	require.NoError(t, err)
	assert.Equal(t, cure.Fitted, g.Fit)
	b, err := g.At(celsius(26), none)
	require.NoError(t, err)
	assert.InDelta(t, 40, inMinutes(b.Mid), 1e-9)
}

// Of a film whose catalyst isn't known nothing is told, neither where to warm it to.
func TestNothingIsToldOfAStuckFilmWithoutItsCatalyst(t *testing.T) {
	s, err := gel().Stuck(celsius(15), working.Figure[unit.ByMass]{})
	assert.Error(t, err)
	assert.Equal(t, cure.Stuck{}, s)
	s, err = gel().Stuck(celsius(5), percent(1.5))
	refused[*cure.FarError](t, err)
	assert.NotNil(t, s.Warm.Step, "too cold for minutes: it is to be warmed first")
}
