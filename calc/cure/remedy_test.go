package cure_test

import (
	"math/rand/v2"
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

// Whatever is too cold, alone or together: with all that is offered done, there is a
// dose; with any of it a degree short, there is none, or the part is too near its dew.
// A tin from a warm house on a cold part, and a cold tin on a part in the sun, are as
// common as a cold shed. Where no warmth brings a dose, none is said to.
func TestWarmthThatIsOfferedBringsADose(t *testing.T) {
	random := rand.New(rand.NewPCG(15, 3))
	alone, withPart, cooled, none := 0, 0, 0, 0
	for range 4000 {
		between := func(low, high float64) float64 { return low + (high-low)*random.Float64() }
		s := hot(t)
		s.Cup.Mix = cure.Mix{Product: grams(between(100, 300))}
		s.Cup.Shed = cure.Shed{Product: celsius(between(0, 36)), Surface: celsius(between(0, 40)), ColdestAhead: celsius(between(5, 25)).Value}
		var means cure.Means
		dry := 0.
		if random.IntN(2) == 0 {
			means.DewPoint = celsius(between(0, 26))
			dry = inCelsius(means.DewPoint) + 3
		}
		isDose := func(shed cure.Shed) bool {
			cup := s.Cup
			cup.Shed = shed
			_, err := cup.Dose()
			return err == nil
		}
		list := s.Remedies(means)
		done, warms := s.Cup.Shed, 0
		for _, o := range list {
			switch o.Remedy {
			case cure.WarmProduct:
				done.Product = o.Target
			case cure.WarmPart:
				done.Surface = o.Target
			case cure.WarmShed:
				done.ColdestAhead = o.Target.Value
			case cure.CoolProduct:
				shed := s.Cup.Shed
				shed.Product = o.Target
				assert.Equal(t, o.Opens, !isDose(s.Cup.Shed) && isDose(shed), "%+v", s.Cup.Shed)
				cooled++
				continue
			default:
				continue
			}
			assert.True(t, o.Opens)
			assert.Positive(t, float64(o.Degrees.Value))
			warms++
		}
		if warms == 0 {
			isCold := inCelsius(s.Cup.Shed.Product) < 15 || inCelsius(s.Cup.Shed.Surface) < 15 || s.Cup.Shed.ColdestAhead < celsius(15).Value
			if none++; isCold && inCelsius(s.Cup.Shed.Surface) <= 32 {
				assert.True(t, dry > 32 || inCelsius(s.Cup.Shed.Product) > 32, "something would bring a dose at %+v, dew %v", s.Cup.Shed, dry)
			}
			continue
		}
		assert.True(t, isDose(done), "%+v: %+v", s.Cup.Shed, list)
		for _, o := range list {
			short := done
			switch o.Remedy {
			case cure.WarmProduct:
				short.Product = celsius(inCelsius(o.Target) - 1)
				alone++
			case cure.WarmPart:
				short.Surface = celsius(inCelsius(o.Target) - 1)
				withPart++
				if inCelsius(short.Surface) < dry {
					continue
				}
			case cure.WarmShed:
				short.ColdestAhead = o.Target.Value - 1
			default:
				continue
			}
			assert.False(t, isDose(short), "less warmth does: %+v: %+v", s.Cup.Shed, o)
		}
	}
	t.Log(alone, withPart, cooled, none)
	assert.Greater(t, min(alone, withPart, cooled, none), 100)
}

// The two ends of it by hand, with the table's 2.20 % at 15 °C, 2.00 at 18, 1.50 at 25
// and the 15 °C that product and part may be apart.
func TestAColdTinOnAWarmPartAndAWarmTinOnAColdOne(t *testing.T) {
	at := func(product, part float64) []cure.Offer {
		s := hot(t)
		s.Cup.Shed = cure.Shed{Product: celsius(product), Surface: celsius(part), ColdestAhead: celsius(16).Value}
		return s.Remedies(cure.Means{})
	}
	list := at(15.5, 31)
	require.Len(t, list, 1)
	assert.Equal(t, cure.WarmProduct, list[0].Remedy)
	assert.InDelta(t, 16, inCelsius(list[0].Target), 1e-9, "15 °C under the part's 31")
	assert.InDelta(t, 0.5, float64(list[0].Degrees.Value), 1e-9)

	list = at(25, 12)
	require.Len(t, list, 1)
	assert.Equal(t, cure.WarmPart, list[0].Remedy)
	assert.InDelta(t, 18, inCelsius(list[0].Target), 1e-9, "half a point over the product's 1.50 %, not only the table's 15 °C")

	list = at(25, 16)
	require.NotNil(t, offered(list, cure.WarmPart))
	o := offered(list, cure.CoolProduct)
	require.NotNil(t, o, "or the tin is brought nearer to its part")
	assert.InDelta(t, 18, inCelsius(o.Target), 1e-9)
	assert.Equal(t, cure.Sweats, o.Risk)

	assert.Nil(t, offered(at(17, 34), cure.WarmProduct), "no warmth brings a dose over the table's end")
}
