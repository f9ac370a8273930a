package cure_test

import (
	"errors"
	"math/rand/v2"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// refused asserts that err holds an error of the given type, and returns it.
func refused[E error](t *testing.T, err error) E {
	t.Helper()
	var want E
	require.True(t, errors.As(err, &want), "%T: %v", want, err)
	return want
}

func TestADoseIsReadInGramsAndInMillilitres(t *testing.T) {
	c := cup(t, 350, 25)
	d, err := c.Dose()
	require.NoError(t, err)
	assert.Equal(t, "5.2\u00a0g", d.Grams.String(), "5.25 g lies between two marks: the lesser")
	assert.Equal(t, "4.52\u00a0mL", d.Millilitres.String())
	assert.InDelta(t, 5.25, inGrams(d.Wanted), 1e-9)

	c.Tool = tool(t, cure.Syringe, "0.2")
	d, err = c.Dose()
	require.NoError(t, err)
	assert.Equal(t, "4.6\u00a0mL", d.Millilitres.String())
	assert.Equal(t, "5.29\u00a0g", d.Grams.String())

	c.Tool = tool(t, cure.Drops, "27")
	d, err = c.Dose()
	require.NoError(t, err)
	assert.EqualValues(t, 123, d.Drops) // 4.565 mL × 27
	assert.Equal(t, "5.24\u00a0g", d.Grams.String())
	assert.InDelta(t, 123./27*1.15, inGrams(d.Mass), 1e-6)
}

func TestTheWorkingOfADoseGoesBackToTheTable(t *testing.T) {
	d, err := cup(t, 350, 26).Dose()
	require.NoError(t, err)
	texts := d.Wanted.Step.Texts()
	require.Len(t, texts, 4)
	assert.Equal(t, []string{"(26 − 25) ÷ (28 − 25)", "0.33333"}, []string{texts[0].Numbers, texts[0].Result})
	assert.Equal(t, []string{"1.5 + (1.35 − 1.5) × 0.33333", "1.45\u00a0%"}, []string{texts[1].Numbers, texts[1].Result})
	assert.Equal(t, []string{"1.45 × 350 ÷ 100", "5.075\u00a0g"}, []string{texts[3].Numbers, texts[3].Result})
}

func TestFloorOfTheWholeAndCeilingOfTheProduct(t *testing.T) {
	c := cup(t, 300, 15) // 2.2 %
	c.Mix.Thinner, c.Mix.Wax, c.Mix.Pigment = grams(9), grams(6), grams(15)
	d, err := c.Dose()
	require.NoError(t, err)
	assert.InDelta(t, 7.26, inGrams(d.Wanted), 1e-9, "2.2 % of the whole 330 g")
	assert.InDelta(t, 100*7.3/330, unit.InPercent.From(float64(d.OfWhole.Value)), 1e-9)

	c.Mix.Pigment = grams(60) // 2.2 % of 375 g is 2.75 % of the product
	_, err = c.Dose()
	outside := refused[*cure.OutsideError](t, err)
	assert.InDelta(t, 0.02, float64(outside.Ceiling), 1e-9)

	c.Card.Floor = percent(2.1) // 7.875 g for the whole, 7.5 g at most for the product
	_, err = c.Dose()
	clash := refused[*cure.ClashError](t, err)
	assert.InDelta(t, 7.875e-3, float64(clash.Least), 1e-9)
	assert.InDelta(t, 7.5e-3, float64(clash.Most), 1e-9)
}

// 35 g × 2.5 % on a step of 0.5 g: 0.875 g; the mark of 1 g would be 2.86 %.
func TestADoseThatTheScaleCantHoldIsRefused(t *testing.T) {
	c := cup(t, 35, 20)
	c.Tool = tool(t, cure.Scale, "0.5")
	var err error
	c.Card.Table, err = cure.NewTable("own", source.Typed, row(15, 2.5), row(25, 2.5))
	require.NoError(t, err)
	_, err = c.Dose()
	refused[*cure.NoRoomError](t, err)

	c.Card.Ceiling = percent(2.6)
	_, err = c.Dose()
	tooSmall := refused[*cure.NotWithThisToolError](t, err)
	assert.InDelta(t, 750, unit.InGram.From(float64(tooSmall.Smallest)), 1e-6)
}

// The mark itself stays inside the limits, whatever the cup's size says.
func TestTheNearestMarkInsideTheLimits(t *testing.T) {
	for _, c := range []struct {
		kind              cure.ToolKind
		step              string
		want, least, most string // g
		steps             int64  // 0: none
	}{
		{cure.Scale, "0.5", "0.875", "0.35", "0.875", 1}, // 1 g is nearer, and over
		{cure.Scale, "0.5", "0.875", "0.6", "0.875", 0},
		{cure.Scale, "0.5", "0.6", "0.55", "1.2", 2}, // 0.5 g is nearer, and under
		{cure.Scale, "0.5", "0.75", "0.5", "1", 1},   // as near to both: the lesser
		{cure.Scale, "1", "0.4", "0.0", "0.9", 0},    // nothing is no dose
		{cure.Syringe, "0.2", "5.25", "3.5", "8.75", 23},
		{cure.Syringe, "0.2", "5.25", "5.2", "5.28", 0},
		{cure.Drops, "20", "5.25", "3.5", "8.75", 91},
		{cure.Drops, "20", "5.23", "3.5", "5.231", 90}, // 91 drops would be 5.2325 g
	} {
		d := decimal.RequireFromString
		n, g, ml, isIn := cure.OnMark(tool(t, c.kind, c.step), d(c.want), d(c.least), d(c.most), decimal.Zero, d("1.15"))
		assert.Equal(t, c.steps > 0, isIn, c)
		if isIn {
			assert.Equal(t, c.steps, n, c)
			for _, shown := range []decimal.Decimal{g.Number(), ml.Number().Mul(d("1.15"))} {
				assert.True(t, shown.GreaterThanOrEqual(d(c.least)) && shown.LessThanOrEqual(d(c.most)), "%v shows %s g", c, shown)
			}
		}
	}
}

func TestNoDoseInACupTheToolCantServe(t *testing.T) {
	c := cup(t, 100, 20) // a scale of 1 g needs 154 g
	c.Tool = tool(t, cure.Scale, "1")
	_, err := c.Dose()
	assert.InDelta(t, 100, unit.InGram.From(float64(refused[*cure.NotWithThisToolError](t, err).Cup)), 1e-9)

	c.Largest = upTo(120) // the smallest is over the largest
	_, err = c.Dose()
	assert.InDelta(t, 120, unit.InGram.From(float64(refused[*cure.NotWithThisToolError](t, err).Cup)), 1e-9)

	c = cup(t, 501, 20)
	_, err = c.Dose()
	refused[*cure.CupTooLargeError](t, err)
	c = cup(t, 50, 20)
	c.Largest = nil
	_, err = c.Dose()
	assert.Error(t, err, "no largest cup, no dose")
}

func TestAWarmProductOnAColdSurface(t *testing.T) {
	c := cup(t, 200, 20) // 1.85 %
	c.Shed.Product = celsius(28)
	_, err := c.Dose() // 1.35 %: 0.5 points
	require.NoError(t, err)
	c.Shed.Product = celsius(28.5)
	_, err = c.Dose()
	steep := refused[*cure.SteepError](t, err)
	assert.InDelta(t, 0.01325, float64(steep.AtProduct), 1e-9)

	// A warm product beyond the table, within the card's limits: not comparable, so no dose.
	c.Card.Limits.Warmest = celsius(35).Value
	c.Shed.Product = celsius(33)
	_, err = c.Dose()
	assert.Equal(t, cure.Product, refused[*cure.BeyondTableError](t, err).Of)
}

func TestTheEndsOfTheTableHoldInFahrenheit(t *testing.T) {
	for _, f := range []float64{59, 86} { // 15 and 30 °C; 86 °F comes out 6e-14 K over 30 °C
		c := cup(t, 200, 20)
		var err error
		c.Card.Table, err = cure.NewTable("flow coat", source.CommonPractice, row(15, 2.2), row(30, 1.25))
		require.NoError(t, err)
		c.Card.Limits.Warmest = celsius(30).Value
		at := given[unit.Temperature](f, unit.InFahrenheit)
		c.Shed = cure.Shed{Product: at, Surface: at, ColdestAhead: at.Value}
		_, err = c.Dose()
		assert.NoError(t, err, f)
	}
}

func TestADoseIsLinearInMass(t *testing.T) {
	for _, at := range []float64{15, 19.3, 26, 32} {
		one, err := cup(t, 100, at).Dose()
		require.NoError(t, err)
		for _, times := range []float64{1.5, 2, 3.7, 5} {
			more, err := cup(t, 100*times, at).Dose()
			require.NoError(t, err)
			assert.InEpsilon(t, times*inGrams(one.Wanted), inGrams(more.Wanted), 1e-12)
		}
	}
}

func TestTheTableStaysBetweenItsRows(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		rows := []cure.Row{row(10+5*random.Float64(), 0.5+3*random.Float64())}
		for range 1 + random.IntN(6) {
			last := unit.InCelsius.From(float64(rows[len(rows)-1].Surface))
			rows = append(rows, row(last+0.2+4*random.Float64(), 0.5+3*random.Float64()))
		}
		made, err := cure.NewTable("own", source.Typed, rows...)
		require.NoError(t, err)
		for i := 1; i < len(rows); i++ {
			cold, warm := rows[i-1], rows[i]
			at := cold.Surface + (warm.Surface-cold.Surface)*unit.Temperature(random.Float64())
			c, err := made.At(working.Given(at, "surface", unit.InCelsius, "", source.Typed))
			require.NoError(t, err)
			assert.GreaterOrEqual(t, float64(c.Value), float64(min(cold.Catalyst, warm.Catalyst))-1e-12)
			assert.LessOrEqual(t, float64(c.Value), float64(max(cold.Catalyst, warm.Catalyst))+1e-12)
		}
		for _, r := range rows {
			c, err := made.At(working.Given(r.Surface, "surface", unit.InCelsius, "", source.Typed))
			require.NoError(t, err)
			assert.InDelta(t, float64(r.Catalyst), float64(c.Value), 1e-12)
		}
	}
}

// 215 g at 22 °C need 3.66 g on a scale of 1 g, whose whole error is 1.5 g: 4 g
// could be 5.5 g, over the 5.38 g of the ceiling, and 3 g could be 1.5 g, under the
// 2.15 g of the floor. The wanted dose alone would pass.
func TestTheMeasuredDoseKeepsItsError(t *testing.T) {
	c := cup(t, 215, 22)
	c.Tool = tool(t, cure.Scale, "1")
	_, err := c.Dose()
	small := refused[*cure.NotWithThisToolError](t, err)
	assert.InDelta(t, 285.7, unit.InGram.From(float64(small.Smallest)), 0.1, "half a mark more, and a mark is sure to be inside")
	c.Mix.Product = grams(286)
	_, err = c.Dose()
	assert.NoError(t, err)
}

// 148 g of product bear 3.7 g; on a scale of 0.5 g, off by 0.75 g, 3 g could be
// 3.75 g, so that 2.5 g are measured, though the whole of 163 g could take more.
func TestTheMarkKeepsUnderTheCeilingOfTheProduct(t *testing.T) {
	c := cup(t, 148, 20.6)
	c.Mix.Pigment, c.Tool = grams(15), tool(t, cure.Scale, "0.5")
	d, err := c.Dose()
	require.NoError(t, err)
	assert.InDelta(t, 2.942, inGrams(d.Wanted), 0.001)
	assert.Equal(t, "2.5\u00a0g", d.Grams.String())
}

// 4.875 g are measured as 4.9 g: the cup must be small enough for that.
func TestTheLargestCupGoesByTheMeasuredDose(t *testing.T) {
	c := cup(t, 325, 25)
	c.Largest = func(share working.Figure[unit.ByMass]) (working.Figure[unit.Mass], error) {
		if share.Value > 0.0150001 {
			return grams(300), nil
		}
		return grams(400), nil
	}
	_, err := c.Dose()
	assert.InDelta(t, 300, unit.InGram.From(float64(refused[*cure.CupTooLargeError](t, err).Largest)), 1e-9)
}
