package cure_test

import (
	"math"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/source"
	"shedreckoner/calc/working"
)

func TestTemperaturesThatRefuse(t *testing.T) {
	_, err := cup(t, 200, 14.9).Dose()
	assert.True(t, refused[*cure.BeyondTableError](t, err).IsCold())
	_, err = cup(t, 200, 32.1).Dose()
	beyond := refused[*cure.BeyondTableError](t, err)
	assert.False(t, beyond.IsCold())
	assert.InDelta(t, 305.15, float64(beyond.Warmest), 1e-9)
	refused[*cure.TemperatureError](t, err) // and outside the card's limits: both are reported

	c := cup(t, 200, 20)
	c.Shed.ColdestAhead = celsius(14.9).Value
	_, err = c.Dose()
	refused[*cure.ColdEveningError](t, err)
	c.Shed.ColdestAhead = 0
	_, err = c.Dose()
	refused[*cure.ColdEveningError](t, err) // not known is not warm

	c = cup(t, 200, 31)
	c.Shed.Product = celsius(15.9)
	_, err = c.Dose()
	refused[*cure.ApartError](t, err)
	c.Shed.Product = celsius(16)
	_, err = c.Dose()
	assert.NoError(t, err, "15 °C apart, the product cooler")
}

func TestOnlyTheNamedPeroxideOnAPromotedProduct(t *testing.T) {
	c := cup(t, 200, 25)
	for family, cause := range map[cure.Family]cure.PeroxideCause{
		cure.UnknownFamily: cure.FamilyUnknown, cure.Family(99): cure.FamilyUnknown, cure.Family(-1): cure.FamilyUnknown,
		cure.Cumene: cure.FamilyRefused, cure.Acetylacetone: cure.FamilyRefused, cure.BenzoylPaste: cure.FamilyRefused,
	} {
		c.Peroxide.Family = family
		_, err := c.Dose()
		assert.Equal(t, cause, refused[*cure.PeroxideError](t, err).Cause, family)
	}
	c.Peroxide.Family = cure.Ketone
	c.Card.Takes.Families = []cure.Family{cure.KetoneLowHydrogenPeroxide}
	_, err := c.Dose()
	assert.Equal(t, cure.FamilyRefused, refused[*cure.PeroxideError](t, err).Cause, "not by its own name")
	c.Card.Takes.Families = append(c.Card.Takes.Families, cure.Ketone, cure.UnknownFamily)
	c.Card.Takes.Promoted = false
	_, err = c.Dose()
	assert.Equal(t, cure.NotPromoted, refused[*cure.PeroxideError](t, err).Cause)
	c.Card.Takes.Promoted, c.Peroxide.Family = true, cure.UnknownFamily
	_, err = c.Dose()
	assert.Equal(t, cure.FamilyUnknown, refused[*cure.PeroxideError](t, err).Cause, "even where a card names it")
}

func TestPartsThatCantBeRight(t *testing.T) {
	for _, mix := range []cure.Mix{
		{}, {Product: grams(-5)}, {Product: grams(math.NaN())}, {Product: grams(math.Inf(1))}, {Product: grams(30000)},
		{Product: grams(100), Thinner: grams(-1)}, {Product: grams(100), Pigment: grams(math.NaN())},
		{Product: grams(100), Wax: grams(4.01)},
	} {
		c := cup(t, 100, 25)
		c.Mix = mix
		_, err := c.Dose()
		refused[*cure.PartError](t, err)
	}
	both := cup(t, 100, 60)
	both.Mix.Wax = grams(5)
	_, err := both.Dose()
	refused[*cure.PartError](t, err) // told together with the heat
	refused[*cure.TemperatureError](t, err)

	c := cup(t, 100, 25)
	c.Mix.Wax = grams(4)
	_, err = c.Dose()
	assert.NoError(t, err)
	for _, rho := range []float64{0, math.NaN(), math.Inf(1), -1, 115} {
		c.Peroxide.Density = density(rho)
		_, err := c.Dose()
		refused[*working.RangeError](t, err)
	}
}

func TestTablesThatCantBeRight(t *testing.T) {
	for _, c := range []struct {
		rows  []cure.Row
		fault cure.TableFault
	}{
		{nil, cure.TooFewRows},
		{[]cure.Row{row(20, 1.5)}, cure.TooFewRows},
		{make([]cure.Row, cure.MaxRows+1), cure.TooManyRows},
		{[]cure.Row{row(20, 1.5), row(18, 1.6)}, cure.OutOfOrder},
		{[]cure.Row{row(20, 1.5), row(20, 1.5)}, cure.SameTemperature},
		{[]cure.Row{row(20, 1.5), row(20.05, 1.2)}, cure.SameTemperature},
		{[]cure.Row{row(20, 15), row(25, 1.5)}, cure.NotAShare},
		{[]cure.Row{row(20, 1.5), row(25, math.NaN())}, cure.NotAShare},
		{[]cure.Row{row(20, 1.5), row(25, 0)}, cure.NotAShare},
		{[]cure.Row{row(20, 1.5), row(77, 1.2)}, cure.NotATemperature},
		{[]cure.Row{row(math.NaN(), 1.5), row(25, 1.2)}, cure.NotATemperature},
	} {
		_, err := cure.NewTable("own", source.Typed, c.rows...)
		assert.Equal(t, c.fault, refused[*cure.TableError](t, err).Fault, c.rows)
	}
	_, err := cure.Table{}.At(celsius(20))
	refused[*cure.TableError](t, err)

	full := make([]cure.Row, cure.MaxRows)
	for i := range full {
		full[i] = row(float64(i), 1.5)
	}
	_, err = cure.NewTable("own", source.Typed, full...)
	assert.NoError(t, err)

	rising, err := cure.NewTable("own", source.Typed, row(15, 1.5), row(20, 1.8), row(25, 0.4))
	require.NoError(t, err)
	assert.Equal(t, []cure.Ask{{Row: 1, Why: cure.Rises}, {Row: 2, Why: cure.Unusual}}, rising.Asks())
	assert.Empty(t, table(t).Asks())
	ends, err := cure.NewTable("the trade's ends", source.Typed, row(15, 4), row(25, 0.5))
	require.NoError(t, err)
	assert.Empty(t, ends.Asks(), "0.5 and 4 % themselves are the trade's")
	past, err := cure.NewTable("past them", source.Typed, row(15, 4.01), row(25, 0.49))
	require.NoError(t, err)
	assert.Equal(t, []cure.Ask{{Row: 0, Why: cure.Unusual}, {Row: 1, Why: cure.Unusual}}, past.Asks())
}

func TestToolsThatCantBeRight(t *testing.T) {
	for _, c := range []struct {
		kind cure.ToolKind
		step string
	}{{0, "1"}, {9, "1"}, {cure.Scale, "0"}, {cure.Scale, "-1"}, {cure.Syringe, "11"}, {cure.Drops, "7"}, {cure.Drops, "61"}} {
		_, err := cure.NewTool(c.kind, decimal.RequireFromString(c.step))
		refused[*cure.ToolError](t, err)
	}
	for _, exponent := range []int32{10_000_000, -10_000_000} { // decimal reads no such text, but makes such a number
		_, err := cure.NewTool(cure.Scale, decimal.New(1, exponent))
		refused[*cure.ToolError](t, err)
	}
	c := cup(t, 200, 25)
	c.Tool = cure.Tool{}
	_, err := c.Dose()
	refused[*cure.ToolError](t, err)
}
