package plan_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

const twoBrushed = brushed + `
surface = 1 2
surface.1.length = 2 m
surface.1.width = 1 m
surface.1.buildup = buildup.1
surface.2.length = 3 m
surface.2.width = 2 m
surface.2.buildup = buildup.1
`

func measuredOn(p *plan.Plan, surface string) *plan.Budget {
	list := p.Buildups()[0].Budgets()
	for i := range list {
		if list[i].Surface == surface {
			return &list[i]
		}
	}
	return nil
}

// A comb whose teeth can't be is refused at its tooth, once, and what it was read on isn't told as if it had been
// measured; a comb of a step that lays no coat is none.
func TestACombThatCantBeMeasuresNothing(t *testing.T) {
	const bad = "buildup.1.step.1.comb = 1\nbuildup.1.step.1.comb.1.last-wet = 400\nbuildup.1.step.1.comb.1.first-dry = 300\n"
	const good = "buildup.1.step.1.comb.1.first-dry = 500\n"
	for _, surface := range []string{"", "surface.2"} {
		on := "buildup.1.step.1.comb.1.surface = " + surface + "\n"
		p := plan.Make(document(t, twoBrushed, bad, on))
		var at []string
		for _, r := range p.Refused() {
			at = append(at, r.Path)
		}
		assert.Equal(t, []string{"buildup.1.step.1.comb.1.first-dry"}, at, "read on %q", surface)
		assert.Nil(t, measuredOn(&p, surface), "read on %q", surface)
		p = plan.Make(document(t, twoBrushed, bad, on, good))
		assert.Empty(t, p.Refused())
		assert.NotNil(t, measuredOn(&p, surface), "read on %q", surface)
	}
	both := plan.Make(document(t, twoBrushed, bad, "buildup.1.step.1.comb = 1 2\nbuildup.1.step.1.comb.2.last-wet = 300\nbuildup.1.step.1.comb.2.first-dry = 400\nbuildup.1.step.1.comb.2.surface = surface.2"))
	assert.Len(t, both.Refused(), 1, "read on none, it counts on each, and is refused once")
	stray := planOf(t, twoBrushed, strings.ReplaceAll(bad, "step.1", "step.2"))
	assert.Len(t, stray.Buildups()[0].Budgets(), 1, "sanding has no wet film")
}

// What is found by a witness keeps the unevenness of the coat that was laid, and goes through on its own surface's area: 250 µm
// on 6 m² with 25 %.
func TestWhatIsFoundKeepsTheCoatsUnevenness(t *testing.T) {
	p := planOf(t, twoBrushed, "buildup.1.step.1.witness = 1\nbuildup.1.step.1.witness.1.film = 250 µm\nbuildup.1.step.1.witness.1.surface = surface.2")
	w := measuredOn(p, "surface.2")
	require.NotNil(t, w)
	cv := p.Buildups()[0].Steps[0].Job.Method.FilmCV
	require.True(t, cv.Known)
	assert.NotEqual(t, 0.2, float64(cv.Value), "another than the one that is assumed over no coat")
	assert.InDelta(t, 250*(1-1.645*float64(cv.Value)), micrometres(w.Flat[0].Thin.Value), 0.1)
	whole := measuredOn(p, "")
	require.NotNil(t, whole)
	flat := func(w *plan.Budget) float64 { return float64(w.Through.Value / unit.Area(w.Share.Value)) }
	assert.Less(t, flat(w), 6., "less the edge strips")
	assert.Greater(t, flat(w), 5.)
	assert.Less(t, flat(whole), 8.)
	assert.Greater(t, flat(whole), 6.)
}

// Filler between two coats of one card parts them: what was sanded through below it is closed.
func TestFillerOpensAnotherLayer(t *testing.T) {
	w := planOf(t, gelCoated, recoatLines, recoated, "buildup.1.step = 1 2 6 4 5\nbuildup.1.step.6.kind = fill\nbuildup.1.step.6.card = polyester-filler\nbuildup.1.step.6.thickness = 1 mm").Buildups()[0].Budgets()[0]
	last, ok := w.Last()
	require.True(t, ok)
	assert.Equal(t, last.Through.Value, w.Share.Value)
	assert.Less(t, float64(w.Share.Value), 1e-3)
}

// A film that nothing is taken from and of which no card asks for anything needs no advice; any that is given is of some film.
func TestNoFilmIsAdvisedWhereNoneIsNeeded(t *testing.T) {
	none := planOf(t, gelCoated, "buildup.1.step = 1\ncard.gelcoat.left-least = 0\ncard.gelcoat.left-thinnest = 0").Buildups()[0]
	assert.Empty(t, none.Needs())
	some := planOf(t, gelCoated).Buildups()[0]
	require.Len(t, some.Needs(), 1)
	assert.Positive(t, some.Needs()[0].Cured.Value)
}

// The films of a build-up are those of its steps, whether or not its amounts were ever asked for.
func TestFilmsAreThoseOfTheSteps(t *testing.T) {
	p := planOf(t, gelCoated)
	steps, films := p.Buildups()[0].Steps, p.Films("buildup.1").Steps
	require.Len(t, films, len(steps))
	for i := range steps {
		assert.Equal(t, steps[i].Added, films[i].Added)
		assert.Equal(t, steps[i].Taken, films[i].Taken)
	}
	assert.Empty(t, p.Films("buildup.2").Steps)
}
