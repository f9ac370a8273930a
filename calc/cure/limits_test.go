package cure_test

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// A limit is itself allowed, on both sides of a range; a hair beyond it isn't. The figures
// are those of the doc comments.
func TestALimitIsItselfAllowed(t *testing.T) {
	ofTable := func(percent float64) error {
		_, err := cure.NewTable("own", source.Typed, row(18, percent), row(25, percent))
		return err
	}
	ofTest := func(spoil func(c *cure.CupTest, n float64)) func(float64) error {
		return func(n float64) error {
			c := synthetic(55, 0.8, 25, 1.5, 0)
			spoil(&c, n)
			_, err := gel().Tested(c)
			return err
		}
	}
	ofMix := func(spoil func(m *cure.Mix, n float64)) func(float64) error {
		return func(n float64) error {
			m := cure.Mix{Product: grams(100)}
			spoil(&m, n)
			return m.Check()
		}
	}
	ofTool := func(kind cure.ToolKind) func(float64) error {
		return func(n float64) error {
			_, err := cure.NewTool(kind, decimal.NewFromFloat(n))
			return err
		}
	}
	for name, c := range map[string]struct {
		try                       func(float64) error
		under, least, most, above float64 // least or most 0: that side has no limit of its own
	}{
		"catalyst of a row, %":         {ofTable, 0.1999, 0.2, 5, 5.001},
		"time of a test, min":          {ofTest(func(c *cure.CupTest, n float64) { c.Gel = minutes(n) }), 0.4999, 0.5, 1440, 1440.1},
		"catalyst of a test, %":        {ofTest(func(c *cure.CupTest, n float64) { c.Catalyst = percent(n) }), 0.0999, 0.1, 6, 6.001},
		"mass of a test, g":            {ofTest(func(c *cure.CupTest, n float64) { c.Mass = grams(n) }), 4.999, 5, 20000, 20001},
		"product of a cup, g":          {ofMix(func(m *cure.Mix, n float64) { m.Product = grams(n) }), 0.999, 1, 20000, 20001},
		"thinner by 100 g, g":          {ofMix(func(m *cure.Mix, n float64) { m.Thinner = grams(n) }), 0, 0, 100, 100.01},
		"pigment by 100 g, g":          {ofMix(func(m *cure.Mix, n float64) { m.Pigment = grams(n) }), 0, 0, 100, 100.01},
		"wax solution by 100 g, g":     {ofMix(func(m *cure.Mix, n float64) { m.Wax = grams(n) }), 0, 0, 4, 4.001},
		"step of a scale, g":           {ofTool(cure.Scale), 0.0009, 0.001, 20, 20.01},
		"step of a syringe, mL":        {ofTool(cure.Syringe), 0.009, 0.01, 10, 10.01},
		"drops in 1 mL":                {ofTool(cure.Drops), 7.9, 8, 60, 60.1},
		"weighed by a scale of 1 g, g": {func(n float64) error { _, err := tool(t, cure.Scale, "1").Weigh(grams(n)); return err }, 19.9, 20, 200000, 200001},
		"warmer row after 20 °C": {func(n float64) error {
			_, err := cure.NewTable("own", source.Typed, row(20, 1.5), row(n, 1.5))
			return err
		}, 20.09, 20.1, 60, 60.1},
		"largest cup with 1 g left behind and 1 g to dose, g": {func(n float64) error { _, err := cure.CupsFor(grams(1), grams(n), grams(1), grams(1)); return err }, 1.9, 2, 0, 0},
		"largest cup for a tool that doses 40 g, g":           {func(n float64) error { _, err := cure.CupsFor(grams(50), grams(n), grams(40), grams(1)); return err }, 39, 40, 0, 0},
		"cups of 99 g in a day, g":                            {func(n float64) error { _, err := cure.CupsFor(grams(n), grams(100), grams(40), grams(1)); return err }, 0, 0, 200 * 99, 200*99 + 1},
	} {
		if c.least != 0 {
			assert.NoError(t, c.try(c.least), "%s: %v is allowed", name, c.least)
			assert.Error(t, c.try(c.under), "%s: %v is too little", name, c.under)
		}
		if c.most != 0 {
			assert.NoError(t, c.try(c.most), "%s: %v is allowed", name, c.most)
			assert.Error(t, c.try(c.above), "%s: %v is too much", name, c.above)
		}
	}
	all := make([]cure.CupTest, cure.MaxTests)
	for i := range all {
		all[i] = synthetic(55, 0.8, 25, 1.5, 0)
	}
	_, err := gel().Tested(all...)
	assert.NoError(t, err)
	_, err = cure.NewTool(cure.Scale, decimal.New(1_000_000_000, -12))
	assert.NoError(t, err, "0.001 with twelve places")
	_, err = cure.NewTool(cure.Scale, decimal.New(10_000_000_000, -13))
	assert.Error(t, err, "and with thirteen")
	level, err := cure.NewTable("own", source.Typed, row(18, 1.5), row(25, 1.5))
	require.NoError(t, err)
	assert.Empty(t, level.Asks(), "a warmer row with as much catalyst is no slip")
	_, err = cure.NewTable("own", source.Typed, row(20, 1.5), row(19.9, 1.5))
	assert.Equal(t, cure.OutOfOrder, refused[*cure.TableError](t, err).Fault, "a tenth of a degree colder is colder")
}

// Floor and ceiling that are one figure leave the tool no room; a floor of nothing, or one over
// the ceiling, is no floor.
func TestAFloorAtTheCeilingLeavesNoRoom(t *testing.T) {
	smallest := func(floor float64) error {
		c := card(t)
		c.Floor, c.Ceiling = percent(floor), percent(1.5)
		_, err := c.Smallest(percent(1.5), cure.Mix{Product: grams(200)}, tool(t, cure.Scale, "0.1"), cup(t, 200, 25).Peroxide)
		return err
	}
	refused[*cure.NoRoomError](t, smallest(1.5))
	refused[*cure.ClashError](t, smallest(1.5001))
	refused[*cure.ClashError](t, smallest(0))
}

// From 20 °C on heat is what shortens the time. What leaves the part as warm as it is is no cooler
// hour, and half a cup that the tool just doses is one that can be mixed.
func TestRemediesAtTheirLimits(t *testing.T) {
	s := hot(t)
	s.Cup.Shed = shed(20)
	assert.NotEmpty(t, s.Remedies(cure.Means{}))
	s.Cup.Shed = shed(19.9)
	assert.Empty(t, s.Remedies(cure.Means{}))
	s.Cup.Shed = shed(28)
	cooler := cure.Shed{Product: celsius(20), Surface: celsius(28), ColdestAhead: celsius(20).Value}
	assert.Nil(t, offered(s.Remedies(cure.Means{AtHour: cooler}), cure.OtherHour))
	cooler.Surface = celsius(24)
	assert.NotNil(t, offered(s.Remedies(cure.Means{AtHour: cooler}), cure.OtherHour))

	share, err := s.Cup.Card.Table.At(celsius(28))
	require.NoError(t, err)
	least, err := s.Cup.Card.Smallest(share, s.Cup.Mix, s.Cup.Tool, s.Cup.Peroxide)
	require.NoError(t, err)
	for times, isOffered := range map[float64]bool{2: true, 1.999: false} {
		s.Cup.Mix = cure.Mix{Product: given[unit.Mass](times*inGrams(least), unit.InGram)}
		assert.Equal(t, isOffered, offered(s.Remedies(cure.Means{}), cure.SmallerCup) != nil, "a cup of %v times the smallest", times)
	}

	s.Cup.Shed = cure.Shed{Product: celsius(12), Surface: celsius(9)}
	assert.Nil(t, offered(s.Remedies(cure.Means{}), cure.WarmShed), "air that nobody knows is not warmed")
}

// The doses for product and surface may be half a point apart, no more: at 28.1 °C
// the table has 1.345 %, 0.505 points under the 1.85 % of a surface of 20 °C.
func TestHalfAPointApartIsTheLimit(t *testing.T) {
	c := cup(t, 200, 20)
	for at, holds := range map[float64]bool{27.9: true, 28: true, 28.1: false} {
		c.Shed.Product = celsius(at)
		_, err := c.Dose()
		if holds {
			require.NoError(t, err, at)
		} else {
			refused[*cure.SteepError](t, err)
		}
	}
}

// Product and surface are each checked against the card's limits by their own
// reading: a cold surface isn't passed for a warm product, nor a warm surface for a
// cold product, and the one at fault is named.
func TestEachTemperatureIsCheckedByItself(t *testing.T) {
	limits := cure.Limits{Coldest: celsius(15).Value, Warmest: celsius(30).Value}
	for _, c := range []struct {
		product, surface float64
		at               cure.Reading
		is               float64
	}{{20, 14, cure.Surface, 14}, {14, 20, cure.Product, 14}, {28, 31, cure.Surface, 31}, {31, 28, cure.Product, 31}} {
		s := cure.Shed{Product: celsius(c.product), Surface: celsius(c.surface), ColdestAhead: celsius(20).Value}
		fault := refused[*cure.TemperatureError](t, s.Check(limits))
		require.Equal(t, c.at, fault.Of)
		require.InDelta(t, float64(celsius(c.is).Value), float64(fault.Value), 1e-9)
	}
	require.NoError(t, cure.Shed{Product: celsius(20), Surface: celsius(18), ColdestAhead: celsius(16).Value}.Check(limits))
}
