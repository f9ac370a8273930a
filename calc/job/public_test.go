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

// What a cup of putty took of each part is written with the cup and read back: to
// a tenth of a gram, in the order of the keys, whatever order it came in.
func TestPartsOfACupAreReadBack(t *testing.T) {
	parts := map[string]unit.Mass{"putty-resin": 200 * unit.Gram, "microballoons": 30.04 * unit.Gram, "putty-hardener": 100 * unit.Gram}
	text := job.PartsText(parts)
	assert.Equal(t, "microballoons=30.0 putty-hardener=100.0 putty-resin=200.0", text)
	read, problems := job.Read(jobtest.Doc(t, "cup = 1\ncup.1.card = epoxy-filler\ncup.1.mixed = 330 g\ncup.1.parts = "+text))
	require.Empty(t, problems)
	require.Len(t, read.Cups[0].Parts, 3)
	for key, mass := range parts {
		assert.InDelta(t, float64(mass), float64(read.Cups[0].Parts[key]), 5e-5, key)
	}
	for _, bad := range []string{"putty-resin=-1", "putty-resin=21000", "putty-resin=much", "putty-resin=0"} {
		read, _ := job.Read(jobtest.Doc(t, "cup = 1\ncup.1.mixed = 330 g\ncup.1.parts = "+bad))
		assert.Empty(t, read.Cups[0].Parts, bad)
	}
	assert.Empty(t, job.PartsText(nil))
}

// Each way of measuring asks for its own fields, and each of them is a field.
func TestEachWayAsksForItsOwnFields(t *testing.T) {
	assert.Equal(t, []string{"mass", "true", "price"}, job.PuttyPartFields(job.PerMass))
	assert.Equal(t, []string{"volume", "bulk", "true", "price"}, job.PuttyPartFields(job.PerVolume))
	ways := map[string][]string{
		job.Weighed: {"before", "after", "area", "cured-density", "scale-step"}, job.Gauged: {"read-before", "read-after", "gauge-step"}, job.Directly: {"takes"},
		"": {"before", "after", "area", "cured-density", "scale-step"},
	}
	for way, want := range ways {
		assert.Equal(t, want, job.RemovalFields(way), way)
		for _, key := range want {
			assert.NotNil(t, job.FieldAt("removal.1."+key), key)
		}
	}
	for _, by := range []string{job.PerMass, job.PerVolume} {
		for _, key := range job.PuttyPartFields(by) {
			assert.NotNil(t, job.FieldAt("putty.1.part.1."+key), key)
		}
	}
}

// Only the fields of a build-up's own film budget open its sheet.
func TestWhatIsOfTheFilmBudget(t *testing.T) {
	for path, want := range map[string]bool{
		"buildup.1.thin-share": true, "buildup.12.strip": true, "buildup.1.unfair": true, "buildup.1.removal-cv": true,
		"buildup.1.name": false, "buildup.1.step.1.film": false, "surface.1.strip": false, "strip": false, "card.gelcoat.thin-share": false,
	} {
		assert.Equal(t, want, job.IsBudget(path), path)
	}
}

// A job that comes in is the one that is here if it says the same, and is then not
// taken up a second time: what stays at home doesn't count, nor where it is kept.
// What its cards say counts.
func TestWhichJobIsTheSame(t *testing.T) {
	here := jobtest.Doc(t, "name = Tern\nsurface = 1\nsurface.1.length = 2 m\nbuildup = 1\nbuildup.1.step = 1\nbuildup.1.step.1.kind = coat\nbuildup.1.step.1.card = gelcoat\ncard.gelcoat.stock = 3 kg")
	assert.True(t, job.IsSame(here, here))
	assert.True(t, job.IsSame(here, here.Set("card.gelcoat.stock", "1 kg")), "the stock stays at home")
	assert.True(t, job.IsSame(here, here.Set("kept", "file")))
	assert.False(t, job.IsSame(here, here.Set("surface.1.length", "2.1 m")))
	assert.False(t, job.IsSame(here, here.Set("card.gelcoat.density", "1.3")), "what a card says is of the job")
	assert.False(t, job.IsSame(here, job.Document{}))
	blank := job.Document{}.Set("card.gelcoat.stock", "3 kg")
	assert.False(t, job.IsSame(blank, blank.Set("card.gelcoat.stock", "1 kg")), "two sheds without a job are no one job")
}

// A text of several lines is kept on one, and read back.
func TestATextIsReadBackFromItsLine(t *testing.T) {
	for _, text := range []string{"plain", "two\nlines", "a\ttab", `a \ stroke`, "\\n is no end of a line", "", "\r\n"} {
		line := job.Escape(text)
		assert.NotContains(t, line, "\n")
		assert.NotContains(t, line, "\t")
		assert.Equal(t, text, job.Unescape(line))
	}
}

// What was adopted for a hand is read in its order: mean and spread of the
// logarithm, and how many entries it came from. One that can't be is as if it
// weren't there.
func TestWhatWasTakenOverIsRead(t *testing.T) {
	of := func(text string) *job.Learnt {
		j, _ := job.Read(jobtest.Doc(t, "learn.foam-roller.gelcoat = "+text))
		method, _ := material.FindMethod("foam-roller")
		return j.LearntOf(method, "gelcoat")
	}
	l := of("0.12 0.05 4")
	require.NotNil(t, l)
	assert.Equal(t, []float64{0.12, 0.05, 4}, []float64{l.Mean, l.SD, float64(l.Entries)})
	for _, spoilt := range []string{"1.62 0.05 4", "-1.62 0.05 4", "0.12 0 4", "0.12 1.01 4", "0.12 0.05 0", "0.12 0.05", "x 0.05 4", "0.12 0.05 4.5"} {
		assert.Nil(t, of(spoilt), spoilt)
	}
	for _, end := range []string{"1.61 1 1", "-1.61 1 1"} {
		assert.NotNil(t, of(end), end)
	}
}

// A choice is called by its name, an unknown one by none; an unknown kind of step is
// the first, so that a job of a newer page can be looked at.
func TestWhatAChoiceIsCalled(t *testing.T) {
	for _, o := range job.MeasuredBy {
		assert.Equal(t, o.Name, job.OptionName(job.MeasuredBy, o.Key))
		assert.NotEmpty(t, o.Name)
	}
	assert.Empty(t, job.OptionName(job.MeasuredBy, "by guess"))
	for _, k := range job.StepKinds {
		assert.Same(t, k, job.FindStepKind(k.Key))
	}
	assert.Same(t, job.StepKinds[0], job.FindStepKind("no such kind"))
}

// An amount in litres is measured out by volume, up to twenty: nothing, and more,
// is refused.
func TestAnAmountByVolume(t *testing.T) {
	for text, isRefused := range map[string]bool{"20 L": false, "20.1 L": true, "1 mL": false, "0 mL": true, "-1 L": true, "2 L of it": true} {
		_, problems := job.Read(jobtest.Doc(t, "bench.now.card = topcoat\nbench.now.amount = "+text))
		assert.Equal(t, isRefused, len(problems) > 0, text)
	}
	assert.True(t, job.IsVolume("300 mL"))
	assert.False(t, job.IsVolume("300 g"))
	assert.False(t, job.IsVolume("300"), "a bare number is a weight")
}
