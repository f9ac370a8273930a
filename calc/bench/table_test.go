package bench_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
)

// The tables that ship, in °C of the surface and % by mass of all that cures:
// gel coat, flow coat to 30 °C, vinyl ester from 18.
// Source: common practice, as drawn up apart from this program.
var tablesThatShip = map[string][][2]float64{
	"gelcoat":    {{15, 2.20}, {18, 2.00}, {20, 1.85}, {22, 1.70}, {25, 1.50}, {28, 1.35}, {30, 1.25}, {32, 1.20}},
	"flowcoat":   {{15, 2.20}, {18, 2.00}, {20, 1.85}, {22, 1.70}, {25, 1.50}, {28, 1.35}, {30, 1.25}},
	"vinylester": {{18, 2.00}, {20, 1.90}, {25, 1.75}, {30, 1.50}},
}

// With the product as warm as the surface, at 30 °C and at every other row of the
// table and half way between two, the dose at the bench is the table's.
func TestDosesWithTheProductAsWarmAsTheSurface(t *testing.T) {
	for card, rows := range tablesThatShip {
		for i, row := range rows {
			at, share := []float64{row[0]}, []float64{row[1]}
			if i+1 < len(rows) {
				at, share = append(at, (row[0]+rows[i+1][0])/2), append(share, (row[1]+rows[i+1][1])/2)
			}
			for k := range at {
				name := fmt.Sprintf("%s at %v °C", card, at[k])
				b := benchOf(t, tenOClock, bare, "bench.now.card = "+card, "bench.now.scale-step = 0.01 g", "bench.now.amount = 80 g", "bench.now.ahead = 18",
					fmt.Sprintf("bench.now.surface-temp = %v\nbench.now.product-temp = %v", at[k], at[k]))
				require.True(t, b.HasDose, "%s: %v %v", name, b.Reasons, b.Waiting)
				assert.InDelta(t, share[k]/100, float64(b.Dose.Share.Value), 1e-9, name)
				assert.InDelta(t, share[k]/100*80, inGrams(b.Dose.Mass.Value), 0.00501, "%s: to the nearest mark", name)
			}
		}
	}
}

// A dose that isn't weighed into the cup has nothing that a scale would then show.
func TestOnlyAWeighedPourHasAThen(t *testing.T) {
	assert.False(t, new(bench.Pour).HasThen(), "nothing is poured yet")
	scale := benchOf(t, tenOClock, bare)
	require.NotNil(t, scale.Pour)
	assert.True(t, scale.Pour.HasThen())
	for _, tool := range []string{"bench.now.tool = syringe\nbench.now.syringe-step = 0.1 mL", "bench.now.tool = drops\nbench.now.drops = 30"} {
		b := benchOf(t, tenOClock, bare, tool)
		require.NotNil(t, b.Pour, "%s: %v %v", tool, b.Reasons, b.Waiting)
		assert.False(t, b.Pour.HasThen(), tool)
	}
}

// Where the cup that is proposed gets no dose, no smaller one would have got it
// either: a size on which no mark of the tool comes inside the limits is passed
// over for the next one. Tools as coarse as that happens with.
func TestACupIsProposedWhereAnyHasADose(t *testing.T) {
	dosed, none := 0, 0
	for degrees := 15; degrees <= 30; degrees++ {
		for _, tool := range []string{"bench.now.scale-step = 1 g", "bench.now.scale-step = 2 g", "bench.now.tool = syringe\nbench.now.syringe-step = 1 mL"} {
			for _, card := range []string{"gelcoat", "polyester-filler"} {
				lines := []string{bare, "bench.now.ahead = 18", "bench.now.card = " + card, tool, fmt.Sprintf("bench.now.surface-temp = %d", degrees)}
				b := benchOf(t, tenOClock, lines...)
				if b.HasDose {
					assert.True(t, b.Size.Proposed)
					dosed++
					continue
				}
				none++
				for grams := 10; grams <= 250; grams += 10 {
					smaller := benchOf(t, tenOClock, append(lines, fmt.Sprintf("bench.now.amount = %d g", grams))...)
					assert.False(t, smaller.HasDose, "%v: %d g would have a dose", lines, grams)
				}
			}
		}
	}
	assert.Greater(t, dosed, 30)
	assert.Greater(t, none, 10)
}
