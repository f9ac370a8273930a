package bench_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// A verdict says what its figures say, and what the sheet that it opens shows: it
// holds on the right side of its limit alone, and where it stops the cup there is
// no dose. Over drawn benches.
func TestVerdictsAgreeWithTheirFiguresAndSheets(t *testing.T) {
	sheets := []string{bench.AirSheet, bench.SpaceSheet, bench.TinSheet, bench.HandSheet}
	counts := map[bench.Kind]int{}
	for seed := range uint64(400) {
		r := newBenches(seed)
		p := plan.Make(r.likely())
		now := bench.Now{Hour: unit.Time(8+r.IntN(10)) * unit.Hour, Date: tenOClock.Date}
		b := bench.Make(&p, now)
		for _, v := range b.Verdicts() {
			counts[v.Kind]++
			if strings.Contains(v.Opens, ".") {
				require.NotNil(t, job.FieldAt(v.Opens), "seed %d: %s is no field", seed, v.Opens)
			} else {
				require.Contains(t, sheets, v.Opens, "seed %d", seed)
			}
			if v.Kind == bench.Stops && !v.IsLater && v.Err != nil {
				require.False(t, b.HasDose, "seed %d: a dose under a stop: %v", seed, v.Err)
			}
			if v.Kind == bench.Holds {
				require.True(t, isRight(v), "seed %d: subject %d holds with %v against %v", seed, v.Subject, v.Value, v.Limit)
			}
			if v.Subject == bench.Fire && v.Kind == bench.Asks {
				require.Greater(t, v.Value, v.Limit-1e-6, "seed %d: asked about a vapour that can't burn", seed)
			}
			onSheet, shown := shownOn(&b, v.Subject, now)
			if shown && v.Kind == bench.Holds {
				require.InDelta(t, onSheet, v.Value, 1e-9, "seed %d: subject %d: the sheet shows another figure", seed, v.Subject)
			}
		}
	}
	for _, kind := range []bench.Kind{bench.Holds, bench.Asks, bench.Stops} {
		assert.Greater(t, counts[kind], 30, "the benches drawn are worth it: kind %d", kind)
	}
}

// isRight says if a verdict's figure lies on the right side of its limit.
func isRight(v bench.Verdict) bool {
	const dust = 1e-6
	switch v.Subject {
	case bench.Dew, bench.ColdEvening:
		return v.Value >= v.Limit-dust
	case bench.Apart:
		return math.Abs(v.Value) <= v.Limit+dust
	case bench.Humidity, bench.Explosive, bench.Heat, bench.Fire:
		return v.Value <= v.Limit+dust
	}
	return true
}

// shownOn is the figure that the sheet shows for a subject.
func shownOn(b *bench.Bench, s bench.Subject, now bench.Now) (float64, bool) {
	switch s {
	case bench.Dew:
		return float64(b.Air.OverDew.Value), b.Air.Known
	case bench.ColdEvening:
		return float64(b.Air.ColdestAhead), b.Air.ColdestAhead != 0
	case bench.Humidity:
		return float64(b.Air.Day.Humidity(now.Hour)), b.Air.Known
	case bench.Explosive:
		return float64(b.Vapour.Space.Value), true
	case bench.Heat:
		return float64(b.Surface.Value), true
	case bench.Fire:
		return float64(max(b.Surface.Value, b.Product.Value)), b.Surface.Step != nil
	}
	return 0, false
}
