package plan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/sanding"
)

// What is sanded is what lies on top: filler makes its own dust, by its own density (0.75 kg/L, the cured one not
// being known); a second run takes what scratches the first left, and the disc that is ordered is of the
// grade that was typed.
func TestWhatIsSandedIsWhatLiesOnTop(t *testing.T) {
	filled := planSix(t, "buildup.1.step = 1 2", step("1", "fill", "card = epoxy-filler", "thickness = 2 mm"), step("2", "sand", "by = grades", "grades = P120 P180 P240"))
	s := filled.Buildups()[0].Steps[1]
	require.Positive(t, s.Taken.Value)
	assert.InEpsilon(t, 6*float64(s.Taken.Value)*750, float64(s.Sand.Dust.Value), 1e-9)

	twice := planSix(t, "buildup.1.step = 1 2 3", step("2", "sand", "by = grades", "grades = P240 P320"), step("3", "sand", "by = grades", "grades = P400 P600")).Buildups()[0].Steps
	assert.Equal(t, twice[1].Sand.Stages[1].Leaves, twice[2].Sand.Flatten)
	assert.Positive(t, twice[2].Sand.Flatten.Value)
	first := planSix(t, "buildup.1.step = 1", step("1", "sand", "by = grades", "grades = P240 P320")).Buildups()[0].Steps[0]
	assert.Zero(t, first.Sand.Flatten.Value, "nothing lies below it")

	for typed, want := range map[string]sanding.Grade{"": 180, "P320": 320} {
		graded := planSix(t, "buildup.1.step = 1 2", step("2", "sand", "taken = 50 µm", "last = "+typed))
		o := chance.OrderOf(graded)
		discs := 0
		for _, l := range o.Lines {
			if l.Card.Key == "disc" {
				discs++
				assert.Equal(t, want, l.Grade)
			}
		}
		assert.Equal(t, 1, discs)
	}
}

// A step that goes on no surface is not done; one is done once it is on all of them. What is done takes no more
// masks: of 60 m² to sand at 3 m² an hour half is 10 h, two masks of 8 h for three.
func TestAStepIsDoneWhereItGoes(t *testing.T) {
	isDone := func(lines ...string) bool {
		s, _ := planSix(t, lines...).StepAt("buildup.1.step.1")
		return s.Progress.IsDone()
	}
	done := "done = 1\ndone.1.step = buildup.1.step.1\ndone.1.surface = surface.1"
	assert.False(t, isDone())
	assert.True(t, isDone(done))
	assert.False(t, isDone("surface.1.buildup = buildup.9"))
	assert.False(t, isDone(done, "surface.1.buildup = buildup.9"), "it goes nowhere now")
	other := "surface = 1 2\nsurface.2.length = 30 m\nsurface.2.width = 1 m\nsurface.2.buildup = buildup.1\nsurface.1.length = 30 m\nsurface.1.width = 1 m"
	assert.False(t, isDone(done, other), "one of two")

	masks := func(lines ...string) string {
		return need(*planSix(t, append(lines, other, "buildup.1.step = 1 2", step("2", "sand", "taken = 50 µm"))...), "mask").Need.String()
	}
	assert.Equal(t, "3", masks())
	assert.Equal(t, "2", masks("done = 1\ndone.1.step = buildup.1.step.2\ndone.1.surface = surface.1"))
}

// What was adopted counts before anything is logged of this job: e^0.2 times as much of all that is mixed.
func TestWhatWasLearntCountsFromTheStart(t *testing.T) {
	usual, learnt := planSix(t), planSix(t, "learn.nap-roller.gelcoat = 0.2 0.1 5")
	for _, key := range []string{"gelcoat", "ketone-peroxide"} {
		assert.InEpsilon(t, 1.2214028*float64(need(*usual, key).Mass.Value), float64(need(*learnt, key).Mass.Value), 1e-6, key)
	}
	assert.Equal(t, need(*usual, "tape").Need, need(*learnt, "tape").Need)
}

// A cup whose mass can't be read put on nobody knows what; one of which all is left put on nothing.
func TestWhatACupPutOnIsKnownByItsMass(t *testing.T) {
	put := func(mixed, left string) (float64, bool) {
		p := plan.Make(document(t, rolledDeck, "cup = 1\ncup.1.card = gelcoat\ncup.1.step = buildup.1.step.1\ncup.1.method = nap-roller\ncup.1.in = 100\ncup.1.ended = 400\ncup.1.end = spread\ncup.1.mixed = "+mixed+"\ncup.1.left = "+left))
		f, known := p.PutOn("cup.1")
		return float64(f.Value), known
	}
	_, known := put("heavy", "20 g")
	assert.False(t, known)
	_, known = put("heavy", "")
	assert.False(t, known)
	on, known := put("500 g", "500 g")
	assert.True(t, known)
	assert.Zero(t, on)
	_, known = put("500 g", "501 g")
	assert.False(t, known)
	p := plan.Make(document(t, "cup = 1\ncup.1.card = gelcoat\ncup.1.in = 100\ncup.1.ended = 400\ncup.1.end = spread\ncup.1.mixed = 500 g\ncup.1.left = 501 g"))
	var over *job.RangeError
	require.ErrorAs(t, p.RefusedAt("cup.1.left"), &over)
	assert.InDelta(t, 0.5, over.Field.Max, 1e-12, "no more than was mixed")
}

// Without an area there is nothing to compare with what the trade allows.
func TestWithoutAnAreaNothingStandsBesideTheTrade(t *testing.T) {
	s, _ := planSix(t, "surface.1.buildup = buildup.9").StepAt("buildup.1.step.1")
	_, _, known := s.CrossCheck()
	assert.False(t, known)
	films := planSix(t).Films("buildup.1")
	require.Len(t, films.Steps, 1)
	assert.Positive(t, films.Steps[0].After)
	assert.Empty(t, planSix(t).Films("buildup.9").Steps)
}

// A cup's mixed mass that can't be read says nothing of what was left in it.
func TestACupWithoutItsMixPutNothingOn(t *testing.T) {
	for mixed, isRefused := range map[string]bool{"junk": false, "": false, "20 g": true, "200 g": false} {
		p := plan.Make(document(t, gelCoated, "cup = 1\ncup.1.step = buildup.1.step.1\ncup.1.card = gelcoat\ncup.1.left = 30 g\ncup.1.in = 1790000000\ncup.1.ended = 1790000600\ncup.1.end = spread\ncup.1.mixed = "+mixed))
		assert.Equal(t, isRefused, p.RefusedAt("cup.1.left") != nil, "mixed %q", mixed)
		on, known := p.PutOn("cup.1")
		assert.Equal(t, mixed == "200 g", known, "mixed %q", mixed)
		if known {
			assert.InDelta(t, 0.17, float64(on.Value), 1e-12)
		}
	}
}
