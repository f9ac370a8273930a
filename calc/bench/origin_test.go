package bench_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/unit"
)

// twoWorks is a deck to be filled and then coated, and a locker to be coated: each
// with a material and a method of its own.
const twoWorks = `surface = 1 2
surface.1.length = 2 m
surface.1.width = 1 m
surface.1.buildup = buildup.1
surface.2.length = 1 m
surface.2.width = 1 m
surface.2.buildup = buildup.2
buildup = 1 2
buildup.1.step = 1 2
buildup.1.step.1.kind = fill
buildup.1.step.1.card = polyester-filler
buildup.1.step.1.thickness = 2 mm
buildup.1.step.2.kind = coat
buildup.1.step.2.card = gelcoat
buildup.1.step.2.method = gravity-gun
buildup.1.step.2.film = 420 µm
buildup.2.step = 1
buildup.2.step.1.kind = coat
buildup.2.step.1.card = flowcoat
buildup.2.step.1.method = brush
buildup.2.step.1.film = 380 µm`

const (
	filled   = "\ndone = 1\ndone.1.step = buildup.1.step.1\ndone.1.surface = surface.1"
	allDone  = "\ndone = 1 2 3\ndone.1.step = buildup.1.step.1\ndone.1.surface = surface.1\ndone.2.step = buildup.1.step.2\ndone.2.surface = surface.1\ndone.3.step = buildup.2.step.1\ndone.3.surface = surface.2"
	lastCups = "\ncup = 1 2 3\ncup.1.card = flowcoat\ncup.1.mixed = 100 g\ncup.1.method = roll-and-tip\ncup.2.card = vinylester\ncup.2.mixed = 100 g\ncup.2.method = brush\ncup.3.card = tape\ncup.3.mixed = 100 g"
)

// What a cup is for: the first step that is still to be done, of a fill as of a
// coat; the one that is chosen; the material of the last cup that could be mixed;
// or what ships. Material, method and film come from there, and what is typed takes
// precedence. From another step it would be dosed as another material.
func TestWhatTheNextCupIsFor(t *testing.T) {
	for name, c := range map[string]struct {
		lines              string
		origin             bench.Origin
		coat, card, method string
		micrometres        float64
	}{
		"the first step, a fill":      {twoWorks, bench.FromStep, "buildup.1.step.1", "polyester-filler", "knife", 5000},
		"the fill is done":            {twoWorks + filled, bench.FromStep, "buildup.1.step.2", "gelcoat", "gravity-gun", 420},
		"no surface gets the first":   {twoWorks + "\nsurface.1.buildup = ", bench.FromStep, "buildup.2.step.1", "flowcoat", "brush", 380},
		"a step that is chosen":       {twoWorks + "\nbench.now.step = buildup.2.step.1", bench.FromStep, "buildup.2.step.1", "flowcoat", "brush", 380},
		"a fill that is chosen":       {twoWorks + filled + "\nbench.now.step = buildup.1.step.1", bench.FromStep, "buildup.1.step.1", "polyester-filler", "knife", 5000},
		"a step that isn't there":     {twoWorks + "\nbench.now.step = buildup.9.step.1", bench.FromShipped, "", "gelcoat", "", 0},
		"so much, for no coat":        {twoWorks + "\nbench.now.for = amount\nbench.now.amount = 100 g", bench.FromShipped, "", "gelcoat", "", 0},
		"all is done":                 {twoWorks + allDone, bench.FromShipped, "", "gelcoat", "", 0},
		"the last cup of the log":     {lastCups, bench.FromLastCup, "", "vinylester", "brush", 0},
		"all is done, and a last cup": {twoWorks + allDone + lastCups, bench.FromLastCup, "", "vinylester", "brush", 0},
		"typed":                       {twoWorks + filled + "\nbench.now.card = flowcoat", bench.FromTyped, "", "flowcoat", "", 0},
		"typed, as the step has it":   {twoWorks + filled + "\nbench.now.card = gelcoat", bench.FromTyped, "buildup.1.step.2", "gelcoat", "gravity-gun", 420},
		"a method and a film, typed":  {twoWorks + filled + "\nbench.now.method = nap-roller\nbench.now.film = 300 µm", bench.FromStep, "buildup.1.step.2", "gelcoat", "nap-roller", 300},
		"typed, and used before":      {lastCups + "\nbench.now.card = vinylester", bench.FromTyped, "", "vinylester", "brush", 0},
		"typed, and not used last":    {lastCups + "\nbench.now.card = flowcoat", bench.FromTyped, "", "flowcoat", "nap-roller", 0},
		"an empty phone":              {"", bench.FromShipped, "", "gelcoat", "", 0},
	} {
		b := benchOf(t, tenOClock, bare, c.lines)
		assert.Equal(t, c.origin, b.Origin, name)
		assert.Equal(t, c.coat, b.Coat, name)
		if assert.NotNil(t, b.Card, name) {
			assert.Equal(t, c.card, b.Card.Key, name)
		}
		if c.method != "" && assert.NotNil(t, b.Method, name) {
			assert.Equal(t, c.method, b.Method.Key, name)
		}
		if c.micrometres > 0 {
			assert.InDelta(t, c.micrometres, unit.InMicrometre.From(float64(b.Film.Value)), 1e-6, name)
		}
	}
}
