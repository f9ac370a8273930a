package cure_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Of two conditions each must hold by itself: here one of them fails and the other doesn't.

// The limits of a card are temperatures that are read at all, −20 to 60 °C, at both ends; the product and the surface by
// themselves lie in them.
func TestEachEndOfACardsLimitsIsATemperature(t *testing.T) {
	check := func(coldest, warmest, at float64) error {
		return cure.Shed{Product: celsius(at), Surface: celsius(at), ColdestAhead: celsius(at).Value}.Check(cure.Limits{Coldest: celsius(coldest).Value, Warmest: celsius(warmest).Value})
	}
	assert.NoError(t, check(-20, 60, 20))
	assert.NoError(t, check(-20, 60, -20))
	assert.NoError(t, check(-20, 60, 60))
	for _, c := range [][3]float64{{-20.1, 60, 20}, {-20, 60.1, 20}, {math.NaN(), 60, 20}, {-20, math.NaN(), 20}, {15, 32, math.NaN()}, {15, 32, 14.9}, {15, 32, 32.1}} {
		refused[*cure.TemperatureError](t, check(c[0], c[1], c[2]))
	}
}

// A table that asks for more catalyst in the warm is as steep as one that asks for less.
func TestATableIsSteepEitherWay(t *testing.T) {
	for _, ends := range [][2]float64{{2.2, 1.2}, {1.2, 2.2}} {
		made, err := cure.NewTable("own", source.Typed, row(18, ends[0]), row(28, ends[1]))
		require.NoError(t, err)
		c := cup(t, 200, 25)
		c.Card.Table = made
		c.Shed = cure.Shed{Product: celsius(28), Surface: celsius(18), ColdestAhead: celsius(18).Value}
		_, err = c.Dose()
		refused[*cure.SteepError](t, err)
	}
}

// One density alone makes no millilitres of a part, and no ratio of the other kind.
func TestOneDensityAloneIsNone(t *testing.T) {
	for _, d := range [][2]working.Figure[unit.Density]{{density(1.1), noDensity}, {noDensity, density(1.1)}} {
		byMass, byVolume := cure.RatioByMass(given[unit.ByMass](4, unit.InPure), d[0], d[1]), cure.RatioByVolume(given[unit.ByVolume](4, unit.InPure), d[0], d[1])
		p, err := byMass.ForTotal(grams(500))
		require.NoError(t, err)
		assert.Nil(t, p.A.Volume.Step)
		assert.Nil(t, p.B.Volume.Step)
		v, err := byVolume.ForTotalVolume(litres(500))
		require.NoError(t, err)
		assert.Nil(t, v.A.Mass.Step)
		assert.Nil(t, v.B.Mass.Step)
		_, err = byMass.ForTotalVolume(litres(500))
		assert.Equal(t, cure.DensityMissing, refused[*cure.RatioError](t, err).Cause)
		_, err = byVolume.ForTotal(grams(500))
		assert.Equal(t, cure.DensityMissing, refused[*cure.RatioError](t, err).Cause)
	}
}

// A test of a fixed ratio has no catalyst, any other has one; a gel time whose ranges can't be right takes no test.
func TestWhatATestIsHeldAgainst(t *testing.T) {
	tested := synthetic(55, 0.8, 25, 1.5, 0)
	pot := fixedRatio(celsius(20), energy(57))
	_, err := pot.Tested(tested)
	assert.Equal(t, cure.CatalystFault, refused[*cure.TestError](t, err).Fault)
	tested.Catalyst = working.Figure[unit.ByMass]{}
	_, err = pot.Tested(tested)
	assert.NoError(t, err)
	inf := given[unit.Time](math.Inf(1), unit.InMinute)
	for name, spoil := range map[string]func(*cure.Gel){
		"time": func(g *cure.Gel) { g.Time.Low = minutes(14) }, "endless": func(g *cure.Gel) { g.Time.High = inf }, "energy": func(g *cure.Gel) { g.Energy.High = energy(50) },
		"order": func(g *cure.Gel) { g.Order.Low = factor(0) },
	} {
		g := gel()
		spoil(&g)
		_, err := g.Tested(synthetic(55, 0.8, 25, 1.5, 0))
		refused[*cure.GelError](t, err)
		_, err = g.At(celsius(25), percent(1.5))
		assert.Error(t, err, name)
	}
}

// Another peroxide is offered where the card takes one that is slower and it isn't in the cup already; half a cup where the
// tool has room for any; shade where the minutes that it leaves are some.
func TestARemedyThatIsNoneIsNotOffered(t *testing.T) {
	slower := func(takes []cure.Family, has cure.Family) bool {
		s := hot(t)
		s.Cup.Card.Takes.Families, s.Cup.Peroxide.Family = takes, has
		return offered(s.Remedies(cure.Means{}), cure.SlowerPeroxide) != nil
	}
	assert.True(t, slower([]cure.Family{cure.Ketone, cure.Acetylacetone}, cure.Ketone))
	assert.False(t, slower([]cure.Family{cure.Ketone, cure.Acetylacetone}, cure.Acetylacetone))
	assert.False(t, slower([]cure.Family{cure.Ketone}, cure.Ketone))

	s := hot(t)
	require.NotNil(t, offered(s.Remedies(cure.Means{}), cure.SmallerCup))
	s.Cup.Card.Floor = percent(1.2) // what the table asks for at 32 °C
	assert.Nil(t, offered(s.Remedies(cure.Means{}), cure.SmallerCup))

	for _, c := range [][3]float64{{19, 32, 1}, {32, 19, 1}, {19, 19, 0}} { // product, part: one of them is warm enough to be the reason
		warm := hot(t)
		warm.Cup.Shed = cure.Shed{Product: celsius(c[0]), Surface: celsius(c[1]), ColdestAhead: celsius(18).Value}
		assert.Equal(t, c[2] > 0, len(warm.Remedies(cure.Means{})) > 0, "%v", c)
	}

	over := hot(t)
	over.Cup.Shed = cure.Shed{Product: celsius(25), Surface: celsius(38), ColdestAhead: celsius(20).Value}
	require.NotNil(t, offered(over.Remedies(cure.Means{Shaded: celsius(27)}), cure.Shade))
	over.Gel.Time = cure.Range[unit.Time]{Low: minutes(2), Mid: minutes(2.5), High: minutes(3)}
	assert.Nil(t, offered(over.Remedies(cure.Means{Shaded: celsius(27)}), cure.Shade), "it gels before it is spread there too")
}

// What one figure of several makes impossible is refused for that figure, and nothing stands beside the error: neither a dose, nor
// minutes, nor cups.
func TestNothingStandsBesideAnError(t *testing.T) {
	none := errors.New("no largest cup")
	c := cup(t, 200, 25)
	c.Largest = func(working.Figure[unit.ByMass]) (working.Figure[unit.Mass], error) {
		return working.Figure[unit.Mass]{}, none
	}
	d, err := c.Dose()
	assert.ErrorIs(t, err, none)
	assert.Zero(t, float64(d.Share.Value)+float64(d.Mass.Value))

	good, err := work().InHand(gel(), shed(25), percent(1.5), batch(t), cure.Untimed)
	require.NoError(t, err)
	assert.Positive(t, good.Largest.Value)
	for _, c := range [][2]float64{{25, 60}, {60, 25}} {
		hand, err := work().InHand(gel(), cure.Shed{Product: celsius(c[0]), Surface: celsius(c[1])}, percent(1.5), batch(t), cure.Untimed)
		assert.InDelta(t, float64(celsius(60).Value), float64(refused[*cure.FarError](t, err).Value), 1e-9)
		assert.Zero(t, float64(hand.Largest.Value)+float64(hand.Spreading.Value))
	}
	for _, n := range [][4]float64{{math.NaN(), 100, 10, 1}, {0, 100, 10, 1}, {2e6, 100, 10, 1}, {500, math.NaN(), 10, 1}, {500, 100, 10, math.NaN()}} {
		cups, err := cure.CupsFor(grams(n[0]), grams(n[1]), grams(n[2]), grams(n[3]))
		assert.Error(t, err, "%v", n)
		assert.Zero(t, float64(cups.Count.Value)+float64(cups.Each.Value), "%v", n)
	}
	calls := 0
	c.Largest = func(working.Figure[unit.ByMass]) (working.Figure[unit.Mass], error) {
		if calls++; calls > 1 { // of what was measured
			return working.Figure[unit.Mass]{}, none
		}
		return grams(500), nil
	}
	d, err = c.Dose()
	assert.ErrorIs(t, err, none)
	assert.Zero(t, float64(d.Mass.Value))
	for name, spoil := range map[string]func(*cure.Gel, *cure.Batch){
		"tested mass": func(g *cure.Gel, _ *cure.Batch) { g.Mass = grams(3) }, "batch": func(_ *cure.Gel, b *cure.Batch) { b.Most = grams(math.NaN()) }, "its gel time": func(_ *cure.Gel, b *cure.Batch) { b.Gel = minutes(0) },
	} {
		g, b := gel(), batch(t)
		spoil(&g, &b)
		_, err := work().InHand(g, shed(25), percent(1.5), b, cure.Untimed)
		assert.Error(t, err, name)
	}
	unlikely := synthetic(55, 0.8, 34, 1, 0)
	unlikely.Gel = minutes(2000)
	_, err = work().OpenedBy(gel(), unlikely)
	assert.Equal(t, cure.GelTimeFault, refused[*cure.TestError](t, err).Fault)
	clash := cup(t, 100, 34)
	clash.Card.Floor = percent(3)
	_, err = clash.FloorTest(cure.HotMost)
	refused[*cure.ClashError](t, err)
	low, high := cure.Table{}.Ends()
	assert.Zero(t, low+high)
	small := hot(t)
	small.Cup.Mix.Product, small.Cup.Tool = grams(20), tool(t, cure.Scale, "0.01")
	assert.Nil(t, offered(small.Remedies(cure.Means{}), cure.SmallerCup), "half of 20 g is spread in four seconds less")
}

// A refusal of temperatures too far apart names the product and then the surface, and a tin timed today for the heat holds the
// cup to 250 g besides all else. Twenty drops to the millilitre dose as a syringe of 0.05 mL does, over the table's end too.
func TestWhichIsWhich(t *testing.T) {
	err := cure.Shed{Product: celsius(15), Surface: celsius(31), ColdestAhead: celsius(20).Value}.Check(cure.Limits{Coldest: celsius(15).Value, Warmest: celsius(32).Value})
	assert.Equal(t, &cure.ApartError{Product: celsius(15).Value, Surface: celsius(31).Value}, refused[*cure.ApartError](t, err))

	hand, err := work().InHand(gel(), shed(25), percent(1.5), batch(t), cure.TimedToday)
	require.NoError(t, err)
	held := false
	for _, l := range hand.Limits {
		if l.Bound == cure.ByHeat {
			held = true
			assert.InDelta(t, 250, inGrams(l.Mass), 1e-9)
		}
	}
	assert.True(t, held)

	for _, c := range []float64{25, 36} {
		byTool := func(kind cure.ToolKind, step string) (cure.Dose, error) {
			made := cup(t, 200, c)
			made.Opened = &cure.Opened{UpTo: celsius(38).Value}
			made.Tool = tool(t, kind, step)
			return made.Dose()
		}
		drops, errDrops := byTool(cure.Drops, "20")
		syringe, errSyringe := byTool(cure.Syringe, "0.05")
		require.NoError(t, errDrops)
		require.NoError(t, errSyringe)
		assert.InDelta(t, 0, math.Mod(drops.Millilitres.Number().InexactFloat64()*20+1e-9, 1), 1e-6, "whole drops")
		assert.InDelta(t, float64(syringe.Mass.Value), float64(drops.Mass.Value), 1.15*0.05e-3*1.01, "%v °C", c)
	}
}
