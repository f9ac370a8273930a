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

func timed(m, c, share float64) cure.CupTest {
	return cure.CupTest{Gel: minutes(m), Temperature: celsius(c), Catalyst: percent(share), Mass: grams(100)}
}

func TestATimedTestOpensCupsOverTheTablesEnd(t *testing.T) {
	opened, err := work().OpenedBy(gel(), timed(9, 36, 1))
	require.NoError(t, err)
	assert.InDelta(t, 37, unit.InCelsius.From(float64(opened.UpTo)), 1e-9)
	opened, err = work().OpenedBy(gel(), timed(12, 41.5, 1))
	require.NoError(t, err)
	assert.InDelta(t, 42, unit.InCelsius.From(float64(opened.UpTo)), 1e-9, "never over 42 °C")

	// 0.67 × (0.85 × t) − 1 − 1.5 = 2 at t = 7.9 min
	_, err = work().OpenedBy(gel(), timed(7.91, 36, 1))
	require.NoError(t, err)
	_, err = work().OpenedBy(gel(), timed(7.89, 36, 1))
	assert.Less(t, inMinutes(working.Figure[unit.Time]{Value: refused[*cure.ShortTestError](t, err).Spreading}), 2.)
	_, err = work().OpenedBy(gel(), timed(0, 36, 1))
	refused[*cure.TestError](t, err)
}

// Over the table's end a cup takes the floor and what the tool needs over it; it
// is the same with a test as without one below the end, and nothing without a test.
func TestDosesOverTheTablesEnd(t *testing.T) {
	c := cup(t, 200, 36)
	_, err := c.Dose()
	refused[*cure.BeyondTableError](t, err)

	c.Opened = &cure.Opened{UpTo: celsius(37).Value}
	d, err := c.Dose()
	require.NoError(t, err)
	assert.Equal(t, "2.2\u00a0g", d.Grams.String(), "2 g, an error of 0.15 g, and up to a mark")
	assert.GreaterOrEqual(t, inGrams(d.Mass)-0.15, 2.0)
	assert.InEpsilon(t, 0.01+(0.15+0.05)/200, float64(d.Share.Value), 1e-9, "the floor, the error, and half a mark to find one")

	for name, spoil := range map[string]func(*cure.Cup){
		"warmer than opened":   func(c *cure.Cup) { c.Shed.Surface = celsius(37.1) },
		"product warmer":       func(c *cure.Cup) { c.Shed.Product = celsius(37.1) },
		"over 42 °C":           func(c *cure.Cup) { c.Shed, c.Opened = shed(43), &cure.Opened{UpTo: celsius(44).Value} },
		"a scale of 1 g":       func(c *cure.Cup) { c.Tool = tool(t, cure.Scale, "1") },
		"under what it takes":  func(c *cure.Cup) { c.Mix.Product = grams(59) },
		"another family":       func(c *cure.Cup) { c.Peroxide.Family = cure.BenzoylPaste },
		"product far cooler":   func(c *cure.Cup) { c.Shed.Product = celsius(20.9) },
		"over the largest cup": func(c *cure.Cup) { c.Largest = upTo(199) },
	} {
		bad := cup(t, 200, 36)
		bad.Opened = &cure.Opened{UpTo: celsius(37).Value}
		spoil(&bad)
		_, err := bad.Dose()
		assert.Error(t, err, name)
	}
	below := cup(t, 200, 31)
	want, err := below.Dose()
	require.NoError(t, err)
	below.Opened = &cure.Opened{UpTo: celsius(37).Value}
	got, err := below.Dose()
	require.NoError(t, err)
	assert.Equal(t, want.Grams.String(), got.Grams.String(), "below its end the table holds")
}

// Whatever was opened: never under the floor with the tool's error, never over
// the floor by more than half a point, never warmer than opened.
func TestNoOpenedCupIsUnderDosed(t *testing.T) {
	random := rand.New(rand.NewPCG(21, 22))
	dosed := 0
	for range 20000 {
		c := cup(t, 1+299*random.Float64(), 32+11*random.Float64())
		c.Tool = []cure.Tool{tool(t, cure.Scale, "0.1"), tool(t, cure.Scale, "0.01"), tool(t, cure.Scale, "1"), tool(t, cure.Syringe, "0.2"), tool(t, cure.Drops, "27")}[random.IntN(5)]
		c.Opened = &cure.Opened{UpTo: celsius(32 + 11*random.Float64()).Value}
		d, err := c.Dose()
		if err != nil {
			continue
		}
		dosed++
		whole, got, off := inGrams(d.Whole), inGrams(d.Mass), float64(d.Error.Value)*inGrams(d.Whole)
		require.GreaterOrEqual(t, got-off, 0.01*whole-1e-4)
		require.LessOrEqual(t, got+off, 0.025*whole+1e-4)
		require.LessOrEqual(t, got, 0.015*whole+1e-4)
		require.LessOrEqual(t, float64(c.Shed.Surface.Value), math.Min(float64(c.Opened.UpTo), 315.15)+1e-6)
	}
	assert.Greater(t, dosed, 2000)
}

func TestTheDoseOfATimedTestOverTheEnd(t *testing.T) {
	c := cup(t, 100, 38)
	d, err := c.FloorTest(cure.HotMost)
	require.NoError(t, err)
	assert.Equal(t, "1\u00a0g", d.Grams.String())
	c.Tool = tool(t, cure.Syringe, "0.2")
	d, err = c.FloorTest(cure.HotMost)
	require.NoError(t, err)
	assert.Equal(t, "1\u00a0mL", d.Millilitres.String(), "0.87 mL, up to the next mark: never under the floor")

	c.Tool = tool(t, cure.Scale, "1")
	_, err = c.FloorTest(cure.HotMost)
	refused[*cure.TestTooCoarseError](t, err)
	c = cup(t, 100, 42.5)
	_, err = c.FloorTest(cure.HotMost)
	refused[*cure.TemperatureError](t, err)
	c = cup(t, 100, 36)
	_, err = c.FloorTest(celsius(35).Value)
	refused[*cure.TemperatureError](t, err) // a flow coat ends at 35 °C
	c.Card.Takes.Promoted = false
	_, err = c.FloorTest(cure.HotMost)
	refused[*cure.PeroxideError](t, err)
}

// A film that doesn't go off is waited for to the late end at its temperature,
// and scraped off after three times that.
func TestACupThatDoesNotGoOff(t *testing.T) {
	s, err := gel().Stuck(celsius(18), percent(2))
	require.NoError(t, err)
	late := inMinutes(bandAt(t, gel(), 18, 2).Late)
	assert.InDelta(t, late, inMinutes(s.Wait), 1e-9)
	assert.InDelta(t, math.Max(120, 3*late), inMinutes(s.Scrape), 1e-9)
	assert.InDelta(t, inMinutes(bandAt(t, gel(), 25, 2).Late), inMinutes(s.Warmed), 1e-9)
	assert.Less(t, s.Warmed.Value, s.Wait.Value)

	s, err = gel().Stuck(celsius(30), percent(1.25))
	require.NoError(t, err)
	assert.Nil(t, s.Warm.Step, "warm enough")
	s, err = gel().Stuck(celsius(5), percent(2.2))
	refused[*cure.FarError](t, err)
	assert.InDelta(t, 25, unit.InCelsius.From(float64(s.Warm.Value)), 1e-9, "too cold for minutes: it is warmed")
}
