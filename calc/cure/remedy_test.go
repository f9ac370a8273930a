package cure_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/unit"
)

// hot is 200 g at 32 °C: 1.2 spreading minutes.
func hot(t *testing.T) cure.Situation {
	return cure.Situation{Cup: cup(t, 200, 32), Gel: gel(), Work: work()}
}

func offered(list []cure.Offer, r cure.Remedy) *cure.Offer {
	for i := range list {
		if list[i].Remedy == r {
			return &list[i]
		}
	}
	return nil
}

func TestCoolingTheProductBuysBackTheCup(t *testing.T) {
	o := offered(hot(t).Remedies(cure.Means{DewPoint: celsius(17)}), cure.CoolProduct)
	require.NotNil(t, o)
	assert.InDelta(t, 18, unit.InCelsius.From(float64(o.Target.Value)), 1e-9, "18 °C is a degree over the dew point")
	assert.InDelta(t, 14, float64(o.Degrees.Value), 1e-9)
	before := 0.67*inMinutes(bandAt(t, gel(), 32, 1.2).Early) - 2.5
	after := inMinutes(bandAt(t, gel(), 18, 1.2).Early)*(0.67-1/inMinutes(bandAt(t, gel(), 32, 1.2).Early)) - 1.5
	assert.InDelta(t, after-before, inMinutes(o.Minutes), 1e-9)
	assert.Equal(t, cure.Sweats, o.Risk)

	o = offered(hot(t).Remedies(cure.Means{DewPoint: celsius(22.4)}), cure.CoolProduct)
	assert.InDelta(t, 24, unit.InCelsius.From(float64(o.Target.Value)), 1e-9, "over the dew point, up to a whole degree")
	assert.Nil(t, offered(hot(t).Remedies(cure.Means{DewPoint: celsius(31.5)}), cure.CoolProduct), "the tin would sweat")
}

func TestShadeAndAnotherHour(t *testing.T) {
	s := hot(t)
	list := s.Remedies(cure.Means{Shaded: celsius(25), Hour: 7 * unit.Hour, AtHour: shed(22)})
	other := offered(list, cure.OtherHour)
	require.NotNil(t, other)
	assert.InDelta(t, 5.6-1.2, inMinutes(other.Minutes), 0.1, "both to one decimal in the worked table")
	assert.InDelta(t, 10, float64(other.Degrees.Value), 1e-9)

	// Shade over the part, the product still hot: the table asks for more catalyst and the
	// cup gels sooner, which eats what the film gains. That is no remedy.
	before := 0.67*inMinutes(bandAt(t, gel(), 32, 1.2).Early) - 2.5
	after := inMinutes(bandAt(t, gel(), 32, 1.5).Early)*(0.67-1/inMinutes(bandAt(t, gel(), 25, 1.5).Early)) - 1.5
	assert.Less(t, after-before, 0.25)
	assert.Nil(t, offered(list, cure.Shade))

	s.Cup.Shed = cure.Shed{Product: celsius(25), Surface: celsius(38), ColdestAhead: celsius(20).Value}
	list = s.Remedies(cure.Means{Shaded: celsius(27), AtHour: shed(34)})
	shade := offered(list, cure.Shade)
	require.NotNil(t, shade, "no dose now, and one in the shade")
	assert.InDelta(t, 27, unit.InCelsius.From(float64(shade.Target.Value)), 1e-9, "what the part comes to")
	assert.True(t, shade.Opens)
	assert.Nil(t, shade.Minutes.Step)
	assert.Nil(t, offered(list, cure.OtherHour), "34 °C is beyond the table too")
}

func TestSmallerCupAndTray(t *testing.T) {
	list := hot(t).Remedies(cure.Means{})
	o := offered(list, cure.SmallerCup)
	require.NotNil(t, o)
	assert.InDelta(t, 100, inGrams(o.Mass), 1e-9)
	assert.InDelta(t, 100/(0.3*500), inMinutes(o.Minutes), 1e-9)

	early := inMinutes(bandAt(t, gel(), 32, 1.2).Early)
	o = offered(list, cure.Tray)
	require.NotNil(t, o)
	assert.InDelta(t, early*(0.67-1/early), inMinutes(o.Minutes), 1e-9, "the usable time in the cup once more")

	s := hot(t)
	s.Cup.Tool = tool(t, cure.Scale, "0.5")
	assert.Nil(t, offered(s.Remedies(cure.Means{}), cure.SmallerCup), "this scale can't dose it")
}

func TestWhatColdAsksFor(t *testing.T) {
	s := hot(t)
	s.Cup.Shed = cure.Shed{Product: celsius(12), Surface: celsius(9), ColdestAhead: celsius(4).Value}
	list := s.Remedies(cure.Means{AtHour: shed(20), Shaded: celsius(5)})
	assert.Len(t, list, 3, "warmth only")
	for remedy, degrees := range map[cure.Remedy]float64{cure.WarmProduct: 3, cure.WarmPart: 6, cure.WarmShed: 11} {
		o := offered(list, remedy)
		require.NotNil(t, o)
		assert.InDelta(t, degrees, float64(o.Degrees.Value), 1e-9)
		assert.InDelta(t, 15, unit.InCelsius.From(float64(o.Target.Value)), 1e-9)
		assert.Equal(t, cure.Ignites, o.Risk)
	}
	o := offered(s.Remedies(cure.Means{DewPoint: celsius(14)}), cure.WarmPart)
	assert.InDelta(t, 17, unit.InCelsius.From(float64(o.Target.Value)), 1e-9, "3 °C over the dew point")
}

// Each remedy comes with its own risk: a warmed tin is near what burns, a cooled
// one sweats. Source: common practice.
func TestEachRemedyHasItsRisk(t *testing.T) {
	risks := map[cure.Remedy]cure.Risk{
		cure.CoolProduct: cure.Sweats, cure.Shade: cure.SunComesRound, cure.OtherHour: cure.DewIsNear, cure.SmallerCup: cure.MoreJoins,
		cure.Tray: cure.MoreVapour, cure.SlowerPeroxide: cure.WrongFamily,
		cure.WarmProduct: cure.Ignites, cure.WarmPart: cure.Ignites, cure.WarmShed: cure.Ignites,
	}
	seen := map[cure.Remedy]bool{}
	for at := -5.; at <= 45; at += 2.5 {
		s := hot(t)
		s.Cup.Shed = shed(at)
		for _, o := range s.Remedies(cure.Means{DewPoint: celsius(5), Shaded: celsius(24), Hour: 7 * unit.Hour, AtHour: shed(20)}) {
			assert.Equal(t, risks[o.Remedy], o.Risk, "remedy %d at %v °C", o.Remedy, at)
			seen[o.Remedy] = true
		}
	}
	assert.GreaterOrEqual(t, len(seen), 7, "%v", seen)
}

// What is offered can be done, gains something and points the right way.
func TestEveryOfferHelps(t *testing.T) {
	for at := -20.; at <= 60; at += 2.5 {
		s := hot(t)
		s.Cup.Shed = shed(at)
		for _, o := range s.Remedies(cure.Means{DewPoint: celsius(10), Shaded: celsius(24), AtHour: shed(20)}) {
			warms := o.Remedy >= cure.WarmProduct
			assert.Equal(t, at < 15, warms, "%v at %v", o.Remedy, at)
			assert.True(t, o.Opens || o.Remedy == cure.SlowerPeroxide || o.Minutes.Step != nil, "%v at %v", o.Remedy, at)
			if o.Minutes.Step != nil {
				assert.GreaterOrEqual(t, inMinutes(o.Minutes), 0.25, "%v at %v", o.Remedy, at)
			}
		}
	}
}
