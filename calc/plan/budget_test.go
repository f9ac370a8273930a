package plan_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/chance"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
)

const gelCoated = `
surface = 1
surface.1.shape = rectangle
surface.1.length = 4 m
surface.1.width = 1 m
surface.1.buildup = buildup.1
surface.1.ground = polyester
surface.1.prepared = both
surface.1.prepared-grade = P120
buildup = 1
buildup.1.step = 1 2 3
buildup.1.step.1.kind = coat
buildup.1.step.1.card = gelcoat
buildup.1.step.1.method = gravity-gun
buildup.1.step.1.film = 760 µm
buildup.1.step.1.film-is = cured
buildup.1.step.1.release = film
buildup.1.step.2.kind = sand
buildup.1.step.2.by = grades
buildup.1.step.2.first = P220
buildup.1.step.2.last = P1200
buildup.1.step.3.kind = polish
buildup.1.step.3.card = compound
`

func planOf(t *testing.T, lines ...string) *plan.Plan {
	t.Helper()
	p := plan.Make(document(t, lines...))
	require.Empty(t, p.Refused())
	return &p
}

func micrometres[Q unit.Quantity](v Q) float64 { return unit.InMicrometre.From(float64(v)) }

func hasFinding(list []plan.Finding, rule buildup.Key) *plan.Finding {
	for i := range list {
		if list[i].Rule == rule {
			return &list[i]
		}
	}
	return nil
}

// Two rolled coats, 320 µm mean and 25 % uneven, less 177 µm at 40 %: about 9 %
// of the area goes through. Source: exact, check-values 8a. The order list goes
// on all the same.
func TestABudgetThatFailsSaysSo(t *testing.T) {
	p := planOf(t, brushed, "surface = 1\nsurface.1.length = 2 m\nsurface.1.width = 1 m\nsurface.1.buildup = buildup.1")
	b := p.Buildups()[0]
	require.Len(t, b.Budgets(), 1)
	last, ok := b.Budgets()[0].Last()
	require.True(t, ok)
	assert.InDelta(t, 0.09, float64(last.Through.Value), 0.005)
	assert.InDelta(t, 143, micrometres(last.Mean.Value), 1e-9)
	assert.Greater(t, float64(b.Budgets()[0].EdgeGone.Value), 0.0)
	for _, rule := range []buildup.Key{buildup.MeanLeft, buildup.ThinLeft, buildup.GoThrough} {
		assert.NotNil(t, hasFinding(b.Budgets()[0].Findings, rule), rule)
	}
	assert.NotEmpty(t, chance.OrderOf(p).Lines)

	more := planOf(t, brushed, "buildup.1.step.2.taken = 400 µm")
	f := hasFinding(more.Buildups()[0].Budgets()[0].Findings, buildup.MeanLeft)
	require.NotNil(t, f, "more is taken than there is")
	assert.True(t, f.IsRed())
}

// Solved backwards and walked forwards the budget leaves just the least.
func TestTheFilmNeededIsTheFilmThatHolds(t *testing.T) {
	b := planOf(t, brushed).Buildups()[0]
	require.Len(t, b.Needs(), 1)
	need := b.Needs()[0]
	require.Nil(t, need.Uneven)
	assert.InDelta(t, micrometres(need.Cured.Value)/0.83, micrometres(need.Wet.Value), 1e-6)
	assert.Equal(t, math.Ceil(micrometres(need.Wet.Value)/600), float64(need.Coats.Value), "the fewest coats of the card's 600 µm or less")
	film := unit.Typed(float64(need.Cured.Value), unit.InMicrometre) + " µm"
	again := planOf(t, brushed, "buildup.1.step.1.film = "+film).Buildups()[0]
	last, _ := again.Budgets()[0].Last()
	assert.Nil(t, hasFinding(again.Budgets()[0].Findings, buildup.MeanLeft))
	assert.Nil(t, hasFinding(again.Budgets()[0].Findings, buildup.ThinLeft))
	assert.InDelta(t, 250, micrometres(last.Thin.Value), 0.01, "the card's thinnest, at 5 % of the area")
	assert.Equal(t, last.Mean.Value, again.Left.Value)
}

// 25 % uneven, and no more than 0.1 % of the area may go thinner: z is 3.09, and
// z × CV stays under 1. A knife's 40 % doesn't: no film is enough.
func TestNotByMoreFilm(t *testing.T) {
	b := planOf(t, brushed, "buildup.1.thin-share = 0.1 %", "buildup.1.step.1.method = knife").Buildups()[0]
	require.Len(t, b.Needs(), 1)
	require.NotNil(t, b.Needs()[0].Uneven)
	assert.InDelta(t, 1/3.0902, float64(b.Needs()[0].Uneven.Below), 1e-4)
}

// Sanding takes 400 µm at 40 %, and 5 % of the area may fall to 250: so much is
// needed that over 640 µm are left in the mean, the card's most.
func TestTheFilmNeededMayBeTooThick(t *testing.T) {
	b := planOf(t, brushed, "buildup.1.step.2.taken = 400 µm").Buildups()[0]
	require.Len(t, b.Needs(), 1)
	need := b.Needs()[0]
	assert.Greater(t, micrometres(need.Cured.Value)-400, 640.0)
	assert.InDelta(t, 640, micrometres(need.Over.Value), 1e-9)
	assert.Nil(t, planOf(t, brushed).Buildups()[0].Needs()[0].Over.Step)
}

// Combs show 300 to 400 µm wet, so 350 in one coat, 290.5 µm cured at 0.83; the
// plan's one coat was 320. A witness of 200 µm after sanding stands above both.
func TestMeasuredFilmsStandInForThePlan(t *testing.T) {
	surfaces := "surface = 1 2\nsurface.1.length = 2 m\nsurface.1.width = 1 m\nsurface.1.buildup = buildup.1\nsurface.2.length = 2 m\nsurface.2.width = 1 m\nsurface.2.buildup = buildup.1"
	comb := "buildup.1.step.1.comb = 1\nbuildup.1.step.1.comb.1.surface = surface.2\nbuildup.1.step.1.comb.1.last-wet = 300\nbuildup.1.step.1.comb.1.first-dry = 400"
	b := planOf(t, brushed, surfaces, comb).Buildups()[0]
	require.Len(t, b.Budgets(), 2)
	assert.Equal(t, "surface.2", b.Budgets()[0].Surface, "the thinnest first")
	last, _ := b.Budgets()[0].Last()
	assert.InDelta(t, 350*0.83-177, micrometres(last.Mean.Value), 1e-6)

	witness := "buildup.1.step.2.witness = 1\nbuildup.1.step.2.witness.1.film = 200 µm"
	b = planOf(t, brushed, surfaces, comb, witness).Buildups()[0]
	last, _ = b.Budgets()[0].Last()
	assert.InDelta(t, 200, micrometres(last.Mean.Value), 1e-9)

	wrong := plan.Make(document(t, brushed, "buildup.1.step.1.comb = 1\nbuildup.1.step.1.comb.1.last-wet = 400\nbuildup.1.step.1.comb.1.first-dry = 400"))
	assert.Error(t, wrong.RefusedAt("buildup.1.step.1.comb.1.first-dry"))
}

// What is left on the thin side decides with which grade sanding may still begin.
func TestTheGradeThatIsStillAffordable(t *testing.T) {
	b := planOf(t, gelCoated).Buildups()[0]
	require.Len(t, b.Budgets()[0].Grades(), 1)
	assert.Equal(t, sanding.Grade(220), b.Budgets()[0].Grades()[0].Grade)

	thin := "buildup.1.step.1.witness = 1\nbuildup.1.step.1.witness.1.film = 500 µm"
	b = planOf(t, gelCoated, thin).Buildups()[0]
	g := b.Budgets()[0].Grades()[0]
	require.True(t, g.OK)
	// From P600 on 50 of texture and (25.8 + 21.8 + 18.3 + 15.3) ÷ 3 go, 77.1 in all:
	// 422.9 − 1.645 × √((0.2 × 500)² + (0.4 × 77.1)²) = 250.8 stay on the thin side,
	// over the card's 250; from P400 on, 88.7, it is 236.8.
	assert.Equal(t, sanding.Grade(600), g.Grade)
	assert.InDelta(t, 50+(25.8+21.8+18.3+15.3)/3, micrometres(g.Takes.Value), 1e-9)

	b = planOf(t, gelCoated, "buildup.1.step.1.witness = 1\nbuildup.1.step.1.witness.1.film = 350 µm").Buildups()[0]
	assert.False(t, b.Budgets()[0].Grades()[0].OK)
}

// Two rounds of 300 µm, each sanded back by 100: 400 are left, and twice as much is
// bought.
func TestRepeatedRounds(t *testing.T) {
	base := []string{brushed, "surface = 1\nsurface.1.length = 2 m\nsurface.1.width = 1 m\nsurface.1.buildup = buildup.1",
		"buildup.1.step.1.film = 300 µm\nbuildup.1.step.1.film-is = cured\nbuildup.1.step = 1"}
	once := planOf(t, base...).Buildups()[0].Steps[0]
	twice := planOf(t, append(base, "buildup.1.step.1.goes = 2\nbuildup.1.step.1.go-takes = 100 µm")...).Buildups()[0]
	assert.InDelta(t, 400, micrometres(twice.Left.Value), 1e-9)
	assert.InDelta(t, 2*float64(once.Coat.Mix.Value), float64(twice.Steps[0].Coat.Mix.Value), 1e-12)
	require.Len(t, twice.Budgets()[0].Flat, 4, "on, off, on, off")
	for lines, left := range map[string]float64{"buildup.1.step.1.goes = 2": 600, "buildup.1.step.1.go-takes = 100 µm": 200} {
		assert.InDelta(t, left, micrometres(planOf(t, append(base, lines)...).Buildups()[0].Left.Value), 1e-9, lines)
	}

	p := plan.Make(document(t, append(base, "buildup.1.step.1.goes = 2\nbuildup.1.step.1.go-takes = 301 µm")...))
	assert.Error(t, p.RefusedAt("buildup.1.step.1.go-takes"))
}

const overGround = `
surface = 1
surface.1.length = 2 m
surface.1.width = 1 m
surface.1.buildup = buildup.1
buildup = 1
buildup.1.step = 1
buildup.1.step.1.kind = coat
buildup.1.step.1.card = flowcoat
buildup.1.step.1.method = nap-roller
buildup.1.step.1.film = 400 µm
`

// What may go through is that of the uppermost layer: a layer below it that was sanded
// to nothing in places is covered, and its share would send the builder to more film.
func TestWhatGoesThroughIsOfTheUppermostLayer(t *testing.T) {
	p := planOf(t, oneSurface, "buildup.1.step = 1 2 3 4", step("1", "coat", "card = gelcoat", "method = brush", "film = 250 µm"), step("2", "sand", "taken = 170 µm"),
		step("3", "coat", "card = primer", "method = brush", "film = 1 mm"), step("4", "sand", "taken = 40 µm"))
	w := p.Buildups()[0].Budgets()[0]
	lower := 0.0
	for _, point := range w.Flat {
		if point.Step < 2 {
			lower = max(lower, float64(point.Through.Value))
		}
	}
	assert.Greater(t, lower, 0.05)
	require.NotNil(t, w.Share.Step)
	assert.Less(t, float64(w.Share.Value), lower/10)
}
