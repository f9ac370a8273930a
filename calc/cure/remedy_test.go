package cure_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/unit"
)

// hot is 100 g at 32 °C: 0.3 spreading minutes.
func hot(t *testing.T) cure.Situation {
	return cure.Situation{Cup: cup(t, 100, 32), Gel: gel(), Work: work()}
}

func offer(t *testing.T, list []cure.Offer, r cure.Remedy) cure.Offer {
	t.Helper()
	for _, o := range list {
		if o.Remedy == r {
			return o
		}
	}
	require.Fail(t, "not offered", "%d", r)
	return cure.Offer{}
}

func TestCoolingTheProductBuysBackTheCup(t *testing.T) {
	o := offer(t, hot(t).Remedies(cure.Means{Cooled: celsius(20), DewPoint: celsius(17)}), cure.CoolProduct)
	require.NoError(t, o.Err)
	assert.InDelta(t, 4.8-0.3, inMinutes(o.Minutes), 0.1, "both to one decimal in the worked table")
	assert.InDelta(t, 12, float64(o.Degrees.Value), 1e-9)
	assert.Equal(t, cure.Sweats, o.Risk)

	for _, dew := range []float64{20, 23} {
		o = offer(t, hot(t).Remedies(cure.Means{Cooled: celsius(20), DewPoint: celsius(dew)}), cure.CoolProduct)
		refused[*cure.SweatError](t, o.Err)
	}
	o = offer(t, hot(t).Remedies(cure.Means{Cooled: celsius(20)}), cure.CoolProduct)
	refused[*cure.SweatError](t, o.Err) // the dew point must be known
	o = offer(t, hot(t).Remedies(cure.Means{Cooled: celsius(16), DewPoint: celsius(5)}), cure.CoolProduct)
	refused[*cure.ApartError](t, o.Err)
}

func TestShadeAndAnEarlierHour(t *testing.T) {
	s := hot(t)
	list := s.Remedies(cure.Means{Shaded: celsius(25), Earlier: shed(22)})
	shade, earlier := offer(t, list, cure.Shade), offer(t, list, cure.EarlierHour)
	require.NoError(t, earlier.Err)
	assert.InDelta(t, 4.3-0.3, inMinutes(earlier.Minutes), 0.1)
	assert.InDelta(t, 10, float64(earlier.Degrees.Value), 1e-9)

	// Shade over the part, the product still hot: the table asks for more catalyst and the
	// cup gels sooner, which eats most of what the film gains.
	require.NoError(t, shade.Err)
	before := 0.6*inMinutes(bandAt(t, gel(), 32, 1.2).Early) - 3
	after := inMinutes(bandAt(t, gel(), 32, 1.5).Early)*(0.6-1/inMinutes(bandAt(t, gel(), 25, 1.5).Early)) - 2
	assert.InDelta(t, after-before, inMinutes(shade.Minutes), 1e-9)
	assert.Less(t, after-before, 0.2)
	assert.InDelta(t, 7, float64(shade.Degrees.Value), 1e-9)

	s.Cup.Shed = shed(40) // no dose now: degrees only
	earlier = offer(t, s.Remedies(cure.Means{Earlier: shed(31)}), cure.EarlierHour)
	require.NoError(t, earlier.Err)
	assert.Nil(t, earlier.Minutes.Step)
	assert.InDelta(t, 9, float64(earlier.Degrees.Value), 1e-9)
	earlier = offer(t, s.Remedies(cure.Means{Earlier: shed(34)}), cure.EarlierHour)
	refused[*cure.BeyondTableError](t, earlier.Err)
	assert.InDelta(t, 2, float64(earlier.Missing.Value), 1e-9)
}

func TestSmallerCupTrayAndLowerDose(t *testing.T) {
	list := hot(t).Remedies(cure.Means{Smaller: grams(60), Tray: factor(2)})
	o := offer(t, list, cure.SmallerCup)
	require.NoError(t, o.Err)
	assert.InDelta(t, 40/(0.3*500), inMinutes(o.Minutes), 1e-9)

	early := inMinutes(bandAt(t, gel(), 32, 1.2).Early)
	o = offer(t, list, cure.Tray)
	require.NoError(t, o.Err)
	assert.InDelta(t, early*(0.6-1/early), inMinutes(o.Minutes), 1e-9, "the usable time in the cup once more")

	o = offer(t, list, cure.LowerDose)
	require.NoError(t, o.Err)
	low := inMinutes(bandAt(t, gel(), 32, 1.1).Early) // floor 1.0 and a step of 0.1 g in 100 g
	assert.InDelta(t, 0.6*(low-early), inMinutes(o.Minutes), 1e-9)
	assert.Equal(t, cure.Undercured, o.Risk)

	o = offer(t, hot(t).Remedies(cure.Means{Smaller: grams(49)}), cure.SmallerCup)
	refused[*cure.NotWithThisToolError](t, o.Err)
	s := hot(t)
	s.Cup.Tool = tool(t, cure.Scale, "0.5") // the floor and half a gram are over the table's dose
	o = offer(t, s.Remedies(cure.Means{}), cure.LowerDose)
	refused[*cure.NoGainError](t, o.Err)
	assert.Nil(t, offer(t, list, cure.SlowerPeroxide).Minutes.Step, "no figure is known for another peroxide")
}

func TestWhatColdAsksFor(t *testing.T) {
	s := hot(t)
	s.Cup.Shed = cure.Shed{Product: celsius(12), Surface: celsius(9), ColdestAhead: celsius(4).Value}
	list := s.Remedies(cure.Means{})
	for remedy, degrees := range map[cure.Remedy]float64{cure.WarmProduct: 3, cure.WarmPart: 6, cure.WarmShed: 11} {
		o := offer(t, list, remedy)
		require.NoError(t, o.Err)
		assert.InDelta(t, degrees, float64(o.Missing.Value), 1e-9)
		assert.Equal(t, cure.Ignites, o.Risk)
	}
	for _, o := range hot(t).Remedies(cure.Means{}) {
		assert.Less(t, o.Remedy, cure.WarmProduct, "nobody is told to warm on a hot day")
	}
	refused[*cure.BeyondTableError](t, offer(t, list, cure.LowerDose).Err)
}

func TestEveryOfferHasAFigureOrAReason(t *testing.T) {
	for at := -20.; at <= 60; at += 2.5 {
		s := hot(t)
		s.Cup.Shed = shed(at)
		for _, o := range s.Remedies(cure.Means{Cooled: celsius(18), DewPoint: celsius(10), Shaded: celsius(24), Earlier: shed(20), Smaller: grams(60), Tray: factor(2)}) {
			hasFigure := o.Minutes.Step != nil || o.Degrees.Step != nil || o.Missing.Step != nil
			assert.True(t, hasFigure || o.Err != nil || o.Remedy == cure.SlowerPeroxide, "%v at %v", o.Remedy, at)
			if o.Err == nil && o.Minutes.Step != nil {
				assert.Positive(t, unit.InMinute.From(float64(o.Minutes.Value)))
			}
		}
	}
}
