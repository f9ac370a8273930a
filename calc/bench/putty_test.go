package bench_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job/jobtest"
)

// handMixed is a fill that is mixed by hand: 100 : 33 by the tin, with 20 g of
// balloons and 5 g of silica to 100 g of resin.
const handMixed = bare + "\n" + jobtest.HandMixed + `bench.now.tool = scale
putty.1.part = 1 2 3 4
putty.1.part.3.what = balloons
putty.1.part.3.mass = 20 g
putty.1.part.4.what = silica
putty.1.part.4.mass = 5 g
`

// By hand: 200 g of 158 parts is 126.6 g of resin with 25.3 g and 6.3 g of
// fillers in it, so the scale shows 126.6, 151.9 and 158.2; then 41.8 g of hardener, 33 parts
// to the 100 of resin.
func TestAPuttyMixedByHandIsWeighed(t *testing.T) {
	b := benchOf(t, tenOClock, handMixed+"bench.now.amount = 200 g\n")
	require.True(t, b.HasParts, "%v %v", b.Reasons, b.Waiting)
	assert.False(t, b.HasDose)
	var lines []string
	for _, l := range b.Weigh {
		lines = append(lines, l.Name+" "+l.Own.Bare()+" "+l.Shows.Bare())
	}
	assert.Equal(t, []string{"resin 126.6 126.6", "microballoons 25.3 151.9", "fumed silica 6.3 158.2", " 41.8 200"}, lines)
	assert.Equal(t, bench.PartB, b.Weigh[3].Part, "the hardener goes in last: it starts the clock")
	assert.Equal(t, []string{"41.8\u00a0g", "200\u00a0g"}, []string{b.Pour.Amount.String(), b.Pour.Then.String()})
	assert.Equal(t, cure.Untimed, b.Tin, "the minutes are another filler's: as of a tin that nobody timed")
	takes := b.PuttyTakes()
	assert.InDelta(t, 126.58, inGrams(takes["putty-resin"]), 0.01)
	assert.InDelta(t, 25.32, inGrams(takes["microballoons"]), 0.01)
}

// The cup that is proposed is no larger than that of an untimed tin.
func TestAPuttyMixedByHandIsProposedSmall(t *testing.T) {
	b := benchOf(t, tenOClock, handMixed)
	require.True(t, b.HasParts, "%v %v", b.Reasons, b.Waiting)
	assert.LessOrEqual(t, inGrams(b.Whole.Value), 250.0)
	over := benchOf(t, tenOClock, handMixed+"bench.now.amount = 900 g\n")
	assert.False(t, over.HasParts)
	assert.True(t, hasReason[*cure.CupTooLargeError](over))
}

// What has no known dose is refused, with its reason.
func TestAPuttyThatCantBeDosed(t *testing.T) {
	for lines, why := range map[string]error{
		"putty.1.part.2.mass = \n":             bench.ErrPuttyRecipe,
		"putty.1.part = 1 3\n":                 bench.ErrPuttyHardener,
		"putty.1.part = 2\n":                   bench.ErrPuttyResin,
		"putty.1.part.2.mass = 0 g\n":          bench.ErrPuttyHardener, // nothing of it never cures
		"putty.1.part.3.mass = 200 g\n":        bench.ErrPuttyRecipe,   // more balloons than resin can wet
		"putty.1.part.2.mass = 33 quarts\n":    bench.ErrPuttyRecipe,
		"putty.1.against = polyester-filler\n": bench.ErrPuttyCatalyst,
		"putty.1.air = 90 %\n":                 bench.ErrUnread,
	} {
		b := benchOf(t, tenOClock, handMixed+"bench.now.amount = 200 g\n"+lines)
		assert.False(t, b.HasParts, lines)
		assert.Empty(t, b.Weigh, lines)
		assert.Nil(t, b.Pour, lines)
		assert.ErrorIs(t, errors.Join(b.Reasons...), why, lines)
	}
}

// Whatever the recipe and the scale: what is weighed of hardener is the ratio's
// share of the resin that is weighed, to the rounding of both, and no filler
// changes it.
func TestTheHardenerIsAShareOfTheResinAlone(t *testing.T) {
	random := rand.New(rand.NewPCG(12, 8))
	told := 0
	for range 60 {
		resin, hardener, balloons := 50+random.Float64()*200, 10+random.Float64()*100, random.Float64()*40
		amount := 100 + 10*float64(random.IntN(15))
		number := func(x float64) string { return strconv.FormatFloat(x, 'f', 3, 64) }
		lines := strings.NewReplacer("part.1.mass = 100 g", "part.1.mass = "+number(resin)+" g", "part.2.mass = 33 g", "part.2.mass = "+number(hardener)+" g",
			"part.3.mass = 20 g", "part.3.mass = "+number(balloons)+" g").Replace(handMixed)
		b := benchOf(t, tenOClock, lines+"bench.now.amount = "+number(amount)+" g\n")
		if !b.HasParts {
			continue
		}
		told++
		wanted := hardener / resin
		a, h := b.Weigh[0].Own.Number.InexactFloat64(), b.Pour.Amount.Number.InexactFloat64()
		assert.InDelta(t, wanted, h/a, (0.05+0.05*wanted)/a*1.01)
		assert.InDelta(t, amount, b.Pour.Then.Number.InexactFloat64(), 0.1+1e-9)
		assert.Less(t, math.Abs(inGrams(b.Whole.Value)-amount), 1e-2)
	}
	assert.Greater(t, told, 30)
}
