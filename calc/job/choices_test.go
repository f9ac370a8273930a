package job_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
)

func read(t *testing.T, text string) *job.Job {
	t.Helper()
	j, problems := job.Read(jobtest.Doc(t, text))
	require.Empty(t, problems, text)
	return &j
}

// Each answer of a choice says what it says: how a ground was prepared, where the waterline is, how a putty's part is measured,
// how far a girth goes.
func TestEachAnswerOfAChoiceIsRead(t *testing.T) {
	for answer, want := range map[string][2]bool{"found": {false, false}, "washed": {true, false}, "sanded": {false, true}, "both": {true, true}} {
		p := read(t, "surface = 1\nsurface.1.prepared = "+answer).Surfaces[0].Prepared
		assert.Equal(t, want, [2]bool{p.IsWashed, p.IsSanded}, answer)
	}
	for answer, below := range map[string]bool{"above": false, "below": true} {
		assert.Equal(t, below, read(t, "surface = 1\nsurface.1.water = "+answer).Surfaces[0].Prepared.IsBelowWater, answer)
	}
	girth := read(t, "surface = 1\nsurface.1.shape = strip\nsurface.1.girth-is = round").Surfaces[0].Part.Input
	assert.Equal(t, "round", girth.Choices["girth-is"])

	const putty = "putty = 1\nputty.1.part = 1\nputty.1.part.1.mass = 300 g\nputty.1.part.1.volume = 2 L\nputty.1.part.1.by = "
	weighed, poured := read(t, putty+job.PerMass).Putties[0].Parts[0], read(t, putty+job.PerVolume).Putties[0].Parts[0]
	assert.False(t, weighed.IsBulk)
	assert.InDelta(t, 0.3, float64(weighed.Mass.Value), 1e-12)
	assert.Nil(t, weighed.Volume.Step)
	assert.True(t, poured.IsBulk)
	assert.InDelta(t, 0.002, float64(poured.Volume.Value), 1e-12)
	assert.Nil(t, poured.Mass.Step)
}

// A card has the name that was typed, and while none was its own; what was taken over from the log is that of its method and its
// card, both.
func TestNamesAndWhatWasTakenOver(t *testing.T) {
	shipped := read(t, "").CardByKey("gelcoat").Name
	assert.Equal(t, shipped, read(t, "card.gelcoat.density = 1.3").CardByKey("gelcoat").Name)
	assert.Equal(t, "White, tin 2", read(t, "card.gelcoat.name = White, tin 2").CardByKey("gelcoat").Name)

	roller, _ := material.FindMethod("nap-roller")
	brush, _ := material.FindMethod("brush")
	j := read(t, "learn.nap-roller.gelcoat = 0.1 0.2 4\nlearn.brush.flowcoat = 0.3 0.2 4")
	require.Len(t, j.Learnt, 2)
	assert.Nil(t, j.LearntOf(brush, "gelcoat"))
	assert.Nil(t, j.LearntOf(roller, "flowcoat"))
	require.NotNil(t, j.LearntOf(roller, "gelcoat"))
	assert.InDelta(t, 0.1, j.LearntOf(roller, "gelcoat").Mean, 1e-12)
}

// A unit that was chosen is that of its measure, of every one that can be chosen; what is none of its measure was never chosen.
func TestAChosenUnitIsTheBareOne(t *testing.T) {
	for _, m := range unit.Choosable {
		path := "units." + m.Key()
		for _, s := range m.Scales() {
			assert.Equal(t, s, job.ReadUnits(job.Document{}.Set(path, s.Symbol())).Scale(m), "%s: %s", m.Key(), s.Symbol())
		}
		assert.Equal(t, m.Scales()[0], job.ReadUnits(job.Document{}.Set(path, "cubits")).Scale(m), m.Key())
		assert.Equal(t, m.Scales()[0], job.ReadUnits(job.Document{}).Scale(m), m.Key())
	}
}
