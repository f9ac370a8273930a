package plan_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Of several combs each counts on its own surface, whatever stands before it: one
// of another surface, or one whose first dry tooth is yet to be typed, hides none.
// 300 and 400 µm are 350 wet; with 400 and 500 on the same surface the mean is 400.
func TestCombsOnSeveralSurfaces(t *testing.T) {
	surfaces := "surface = 1 2\nsurface.1.length = 2 m\nsurface.1.width = 1 m\nsurface.1.buildup = buildup.1\nsurface.2.length = 2 m\nsurface.2.width = 1 m\nsurface.2.buildup = buildup.1"
	combs := func(list ...string) string {
		lines, ids := "", ""
		for i, c := range list {
			id := string(rune('1' + i))
			ids += " " + id
			cells := strings.Fields(c)
			lines += "\nbuildup.1.step.1.comb." + id + ".surface = " + strings.TrimPrefix(cells[0], "any") + "\nbuildup.1.step.1.comb." + id + ".last-wet = " + cells[1]
			if len(cells) > 2 {
				lines += "\nbuildup.1.step.1.comb." + id + ".first-dry = " + cells[2]
			}
		}
		return "buildup.1.step.1.comb =" + ids + lines
	}
	for name, c := range map[string]struct {
		combs string
		wet   float64
	}{
		"another surface first": {combs("surface.1 500 600", "surface.2 300 400"), 350},
		"unfinished first":      {combs("surface.2 100", "surface.2 300 400"), 350},
		"two of them":           {combs("surface.2 300 400", "surface.2 400 500"), 400},
		"of no surface":         {combs("any 400 500", "surface.2 300 400"), 400},
	} {
		p := plan.Make(document(t, brushed, surfaces, c.combs))
		require.Empty(t, p.Refused(), name)
		var found bool
		for _, w := range p.Buildups()[0].Budgets() {
			if w.Surface == "surface.2" {
				found = true
				first := w.Flat[0]
				assert.InDelta(t, c.wet*0.83, micrometres(first.Mean.Value), 1e-6, name)
			}
		}
		assert.True(t, found, name)
		assert.Equal(t, strings.Contains(name, "unfinished"), len(p.Waiting()) > 0, "%s: a tooth that is yet to be typed is waited for", name)
	}
}

// Of two runs of grades each is said by itself: one after which the film was
// measured needs no advice any more, and the one that follows still has its own.
func TestEachRunOfGradesIsAffordableByItself(t *testing.T) {
	second := "buildup.1.step = 1 2 3 4\nbuildup.1.step.3.kind = coat\nbuildup.1.step.3.card = gelcoat\nbuildup.1.step.3.method = nap-roller\nbuildup.1.step.3.film = 1 mm\nbuildup.1.step.3.coats = 3\n" +
		"buildup.1.step.4.kind = sand\nbuildup.1.step.4.by = grades\nbuildup.1.step.4.first = P320\nbuildup.1.step.4.last = P800"
	list := planOf(t, gelCoated, second).Buildups()[0].Budgets()[0].Grades()
	require.Len(t, list, 2)
	assert.Equal(t, sanding.Grade(220), list[0].Grade)
	assert.Equal(t, sanding.Grade(320), list[1].Grade)
	found := "buildup.1.step.2.witness = 1\nbuildup.1.step.2.witness.1.film = 450 µm"
	list = planOf(t, gelCoated, second, found).Buildups()[0].Budgets()[0].Grades()
	require.Len(t, list, 1)
	assert.Equal(t, 3, list[0].Step)
	assert.Equal(t, sanding.Grade(320), list[0].Grade)
}

// What is laid after a run of grades and then sanded deep doesn't count against it: the run answers for what it leaves
// to the next coat, and is begun with the grade that was chosen.
func TestWhatIsLaidAfterARunDoesNotCountAgainstIt(t *testing.T) {
	witness := "buildup.1.step.1.witness = 1\nbuildup.1.step.1.witness.1.film = 500 µm"
	list := planOf(t, gelCoated, witness, "buildup.1.step = 1 2 3 4\nbuildup.1.step.3.kind = coat\nbuildup.1.step.3.card = gelcoat\nbuildup.1.step.3.method = nap-roller\nbuildup.1.step.3.film = 300 µm\n"+
		"buildup.1.step.4.kind = sand\nbuildup.1.step.4.taken = 600 µm").Buildups()[0].Budgets()[0].Grades()
	require.NotEmpty(t, list)
	assert.True(t, list[0].OK)
	assert.Equal(t, sanding.Grade(220), list[0].Grade)
}

// No thinner needs no limit, whatever the card; any needs one, and a thinner that the card names.
func TestNoThinnerNeedsNoLimit(t *testing.T) {
	bare := &job.Card{}
	assert.NoError(t, plan.CheckThinner(&job.Step{}, bare, nil))
	some := &job.Step{Thinner: working.Given(unit.Share(0.02), "thinner", unit.InPercent, "", source.Typed)}
	assert.ErrorIs(t, plan.CheckThinner(some, bare, nil), plan.ErrNoThinner)
	assert.ErrorIs(t, plan.CheckThinner(some, bare, &job.Card{}), plan.ErrNoThinner)
}
