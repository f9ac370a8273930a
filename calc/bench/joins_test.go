package bench_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// What isn't typed is never needed for a refusal to go away: whatever a bench is
// refused for, it has a dose once what was typed is taken away again but for the
// material, the tool, and a surface over 8 °C from the card's least temperature. Over drawn
// benches, with junk in them.
func TestARefusalGoesAwayWithWhatWasTyped(t *testing.T) {
	held := 0
	for seed := range jobtest.Enough(t, 250, &held, 80) {
		d := newBenches(seed).likely()
		p := plan.Make(d)
		b := bench.Make(&p, tenOClock)
		if b.HasDose || b.Card == nil {
			continue
		}
		held++
		cleared := d
		for _, l := range d.Lines() {
			if l.Path != "bench.now.card" {
				cleared = cleared.Set(l.Path, "")
			}
		}
		for _, line := range strings.Split(bare+"\nbench.now.surface-temp = 27", "\n") {
			path, text, _ := strings.Cut(line, " = ")
			cleared = cleared.Set(path, text)
		}
		p = plan.Make(cleared)
		after := bench.Make(&p, tenOClock)
		require.Empty(t, after.Reasons, "seed %d: %s", seed, d.Get("bench.now.card"))
		require.True(t, after.HasDose, "seed %d: waits for %v", seed, after.Waiting)
	}
}

// No card that takes a catalyst needs more for its dose than a surface and a tool,
// over 8 °C from the card's least temperature.
func TestTwoAnswersAreEnoughForEveryCatalysedCard(t *testing.T) {
	p := plan.Make(job.Document{})
	cards := 0
	for i := range p.Job.Cards {
		c := p.Job.Cards[i]
		if len(c.Families) == 0 {
			continue
		}
		cards++
		b := benchOf(t, tenOClock, bare, "bench.now.card = "+c.Key, "bench.now.surface-temp = 27")
		assert.True(t, b.HasDose, "%s: %v, waits for %v", c.Key, b.Reasons, b.Waiting)
	}
	assert.NotZero(t, cards)
}

// Over drawn benches: half a degree warmer or a tenth of a point more catalyst,
// and the cup gels sooner, early, middle and late, in the cup and in the film.
func TestTheBenchGelsSoonerWarmerOrWithMore(t *testing.T) {
	held := 0
	for seed := range jobtest.Enough(t, 300, &held, 60) {
		p := plan.Make(newBenches(seed).likely())
		b := bench.Make(&p, tenOClock)
		if !b.HasDose {
			continue
		}
		at := func(kelvin unit.TemperatureDifference, share unit.ByMass) [3]unit.Time {
			warm := celsiusFigure(inCelsius(b.Surface.Value) + float64(kelvin))
			more := working.Given(b.Dose.OfWhole.Value+share, "test", unit.InPercent, "", source.Typed)
			band, err := b.Gel.At(warm, more)
			require.NoError(t, err, "seed %d", seed)
			return [3]unit.Time{band.Early.Value, band.Mid.Value, band.Late.Value}
		}
		was, warmer, stronger := at(-0.25, 0), at(0.25, 0), at(-0.25, 0.001)
		for i := range was {
			require.Less(t, warmer[i], was[i], "seed %d", seed)
			require.Less(t, stronger[i], was[i], "seed %d", seed)
		}
		require.LessOrEqual(t, b.Minutes.Mix.Value, b.Minutes.Spread.Value, "seed %d", seed)
		require.Less(t, b.Minutes.Spread.Value, b.Minutes.GelsFrom.Value, "seed %d", seed)
		held++
	}
}
