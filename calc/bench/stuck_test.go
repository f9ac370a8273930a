package bench_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// onAndWet is two cups that are on: the second is the one that doesn't go off.
const onAndWet = `cup = 1 2
cup.1.card = gelcoat
cup.1.mixed = 200 g
cup.1.share = 2 %
cup.1.surface-temp = 26 °C
cup.1.in = 1000
cup.2.card = gelcoat
cup.2.mixed = 200 g
cup.2.share = 1.8 %
cup.2.surface-temp = 18 °C
cup.2.in = 1000`

func stuck(t *testing.T, lines ...string) cure.Stuck {
	t.Helper()
	s, err := stuckErr(t, lines...)
	require.NoError(t, err)
	return s
}

func stuckErr(t *testing.T, lines ...string) (cure.Stuck, error) {
	t.Helper()
	p := plan.Make(document(t, append([]string{onAndWet}, lines...)...))
	return bench.Stuck(&p, "cup.2", tenOClock)
}

// A cup that doesn't go off is waited for by its own share of catalyst and its own
// surface: 13 min at 25 °C and 1.8 % have a late end of 17 there, more at 18 °C,
// less with more in it; and it is scraped off after three times that, no sooner
// than after two hours.
func TestHowLongACupIsWaitedFor(t *testing.T) {
	asWeighed := stuck(t)
	at25 := stuck(t, "cup.2.surface-temp = 25 °C")
	assert.InDelta(t, 17, unit.InMinute.From(float64(at25.Wait.Value)), 1e-9, "published: 10–17 min")
	assert.Nil(t, at25.Warmed.Step, "as warm as it was timed at")
	assert.InDelta(t, 120, unit.InMinute.From(float64(at25.Scrape.Value)), 1e-9)
	assert.Greater(t, asWeighed.Wait.Value, at25.Wait.Value)
	assert.InDelta(t, 25, inCelsius(asWeighed.Warm.Value), 1e-9)
	assert.InDelta(t, 17, unit.InMinute.From(float64(asWeighed.Warmed.Value)), 1e-9, "warmed to where it was timed")
	assert.Less(t, stuck(t, "cup.2.share = 2.2 %").Wait.Value, asWeighed.Wait.Value)
	assert.Greater(t, stuck(t, "cup.2.share = 1.2 %").Wait.Value, asWeighed.Wait.Value)
	assert.Equal(t, asWeighed.Wait.Value, stuck(t, "cup.2.share = ").Wait.Value, "what isn't taken down is as the card was timed, 1.8 %")
	assert.Equal(t, asWeighed.Wait.Value, stuck(t, "cup.1.surface-temp = 30 °C", "cup.1.share = 1 %").Wait.Value, "another cup is nothing to it")
}

// Today's reading of the surface takes precedence over the one at the weighing, one
// of another day doesn't; without either there is nothing to go by.
func TestAStuckCupGoesByTheSurfaceOfToday(t *testing.T) {
	at25 := stuck(t, "cup.2.surface-temp = 25 °C")
	assert.Equal(t, at25.Wait.Value, stuck(t, "bench.now.surface-temp = 25", "bench.now.read-on = 2026-06-01").Wait.Value)
	assert.Equal(t, stuck(t).Wait.Value, stuck(t, "bench.now.surface-temp = 25", "bench.now.read-on = 2026-05-31").Wait.Value)
	_, err := stuckErr(t, "cup.2.surface-temp = ")
	assert.ErrorIs(t, err, bench.ErrNoSurface)
	_, err = stuckErr(t, "cup.2.card = nothing")
	assert.ErrorIs(t, err, plan.ErrNoCard)
	_, err = stuckErr(t, "cup = 1")
	assert.ErrorIs(t, err, plan.ErrNoCard, "no such cup")
}

// The tests of the cup's own tin count, not those of the one that is on the bench
// by now.
func TestAStuckCupGoesByItsOwnTin(t *testing.T) {
	const timed = "test = 1\ntest.1.card = gelcoat\ntest.1.mass = 100 g\ntest.1.temp = 18\ntest.1.share = 1.8 %\ntest.1.minutes = 60\ntest.1.tin = May"
	slow := stuck(t, timed, "cup.2.tin = May", "bench.now.tin = June")
	assert.InDelta(t, 60*1.15, unit.InMinute.From(float64(slow.Wait.Value)), 1e-6, "±15 % of what was timed")
	assert.InDelta(t, 3*60*1.15, unit.InMinute.From(float64(slow.Scrape.Value)), 1e-6, "three times that is over two hours")
	assert.Equal(t, stuck(t).Wait.Value, stuck(t, timed, "cup.2.tin = June", "bench.now.tin = May").Wait.Value)
}

// A fixed ratio has no share of catalyst: its pot life stands for the gel time.
func TestAStuckCupOfAFixedRatio(t *testing.T) {
	ratio := func(share string) cure.Stuck {
		return stuck(t, strings.Replace("cup.2.card = topcoat\ncup.2.surface-temp = 20 °C\ncup.2.share = SHARE", "SHARE", share, 1))
	}
	assert.InDelta(t, 6, unit.InHour.From(float64(ratio("").Wait.Value)), 1e-9, "2–6 h at 20 °C")
	assert.Equal(t, ratio("").Wait.Value, ratio("2 %").Wait.Value)
}
