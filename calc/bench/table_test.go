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
		assert.Equal(t, "0", b.Pour.Then.String(), "%s: what has no unit is written without one", tool)
	}
}

// Each line of a cup is weighed from its own tin, and its mass follows its share:
// in 109 g of flow coat with 4 % of styrene, 2 % of wax solution and 3 % of pigment
// are 100 g as sold, and the display shows the sum so far. Source: definition of a
// share by mass of the product.
func TestEachLineIsWeighedFromItsOwnTin(t *testing.T) {
	b := benchOf(t, tenOClock, bare, "bench.now.card = flowcoat\nbench.now.thinner = 4 %\nbench.now.pigment = 3 %\nbench.now.amount = 109 g\nbench.now.scale-step = 0.01 g")
	require.True(t, b.HasDose, "%v %v", b.Reasons, b.Waiting)
	want := []struct {
		part       bench.Part
		card       string
		own, shows string
	}{
		{bench.Product, "flowcoat", "100 g", "100 g"}, {bench.Thinner, "styrene", "4 g", "104 g"},
		{bench.Wax, "wax-solution", "2 g", "106 g"}, {bench.Pigment, "", "3 g", "109 g"},
	}
	require.Len(t, b.Weigh, len(want))
	for i, w := range want {
		line, card := b.Weigh[i], ""
		if line.Card != nil {
			card = line.Card.Key
		}
		assert.Equal(t, w.part, line.Part)
		assert.Equal(t, w.card, card, "line %d", i)
		assert.Equal(t, spaced(w.own), line.Own.String(), "line %d", i)
		assert.Equal(t, spaced(w.shows), line.Shows.String(), "line %d", i)
	}
}

// Thinner goes between the parts of a fixed ratio, as it is measured: of base and
// hardener at 1.2 kg/L, 10 % by mass of a thinner of 0.8 kg/L is 15 % of their
// volume, 10 % by volume two thirds of that mass. Source: exact, by the densities.
func TestThinnerGoesBetweenThePartsOfARatio(t *testing.T) {
	for _, c := range []struct {
		lines      string
		own, shows [3]string
	}{
		{"card.topcoat.ratio-volume = 2:1\nbench.now.amount = 345 mL\nbench.now.thinner = 10 %", [3]string{"200 mL", "45 mL", "100 mL"}, [3]string{"200 mL", "245 mL", "345 mL"}},
		{"card.topcoat.ratio-mass = 4:1\nbench.now.amount = 550 g\nbench.now.thinner = 10 %", [3]string{"400 g", "50 g", "100 g"}, [3]string{"400 g", "450 g", "550 g"}},
		{"card.topcoat.ratio-mass = 4:1\nbench.now.amount = 480 g\nbench.now.thinner = 10 %\nbench.now.thinner-by = volume", [3]string{"360 g", "30 g", "90 g"}, [3]string{"360 g", "390 g", "480 g"}},
	} {
		b := benchOf(t, tenOClock, bare, "bench.now.card = topcoat\ncard.topcoat-thinner.density = 0.8", c.lines)
		require.Len(t, b.Weigh, 3, "%s: %v %v", c.lines, b.Reasons, b.Waiting)
		for i, part := range []bench.Part{bench.PartA, bench.Thinner, bench.PartB} {
			assert.Equal(t, part, b.Weigh[i].Part)
			assert.Equal(t, []string{"topcoat", "topcoat-thinner", "topcoat"}[i], b.Weigh[i].Card.Key)
			assert.Equal(t, spaced(c.own[i]), b.Weigh[i].Own.String(), c.lines)
			assert.Equal(t, spaced(c.shows[i]), b.Weigh[i].Shows.String(), c.lines)
		}
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
