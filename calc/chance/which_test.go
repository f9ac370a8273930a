package chance_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/order"
	"shedreckoner/calc/plan"
)

// A hand is learned by itself: what was used with the brush says nothing of the roller, and what a flow
// coat took nothing of a gel coat. What was adopted stays, though its entries are gone.
func TestEachHandHasItsOwnLesson(t *testing.T) {
	d := jobtest.Doc(t, rolled, "done = 1 2 3 4", job.LearntPath("foam-roller", "topcoat")+" = 0.1 0.1 3")
	for id, hand := range map[string][2]string{"1": {"nap-roller", "flowcoat"}, "2": {"brush", "flowcoat"}, "3": {"nap-roller", "gelcoat"}, "4": {"nap-roller", "flowcoat"}} {
		d = entry(d, "done."+id, "2 kg", "1.9 kg", "2.1 kg").Set("done."+id+".method", hand[0]).Set("done."+id+".card", hand[1])
	}
	of := map[string][]string{}
	for _, l := range lessons(d) {
		hand := l.Method.Key + " " + l.Card.Key
		require.NotContains(t, of, hand)
		of[hand] = []string{}
		for _, e := range l.Log {
			require.NoError(t, e.Err, hand)
			of[hand] = append(of[hand], e.Path)
		}
	}
	assert.Equal(t, map[string][]string{"nap-roller flowcoat": {"done.1", "done.4"}, "brush flowcoat": {"done.2"}, "nap-roller gelcoat": {"done.3"}, "foam-roller topcoat": {}}, of)
}

// What was adopted is current while the log says the same: not once another entry came, nor once all of
// them are gone; and what nobody adopted never is.
func TestWhatWasAdoptedIsCurrentOrIsNot(t *testing.T) {
	path := job.LearntPath("nap-roller", "flowcoat")
	one := entry(jobtest.Doc(t, rolled, "done = 1"), "done.1", "2 kg", "1.9 kg", "2.2 kg")
	adopted := one.Set(path, lessons(one)[0].Text())
	for name, c := range map[string]struct {
		d         job.Document
		isCurrent bool
	}{
		"adopted": {adopted, true}, "not adopted": {one, false}, "with another entry": {entry(adopted.Set("done", "1 2"), "done.2", "2 kg", "1.9 kg", "2.2 kg"), false},
		"of the same, changed": {adopted.Set("done.1.used", "2.3 kg"), false}, "without its entry": {adopted.Set("done", ""), false},
	} {
		list := lessons(c.d)
		require.Len(t, list, 1, name)
		assert.Equal(t, c.isCurrent, list[0].IsCurrent(), name)
	}
}

// The working of a lesson shows what was used and what was planned of every entry, and each spread once: that of one work
// to the next, and that of one cup to the next.
func TestTheWorkingOfALessonHasEachSpreadOnce(t *testing.T) {
	d := entry(entry(jobtest.Doc(t, rolled, "done = 1 2"), "done.1", "2 kg", "1.9 kg", "2.2 kg"), "done.2", "3 kg", "2.9 kg", "3.1 kg")
	assert.Len(t, lessons(d)[0].After.Step.From, 1+1+2*2, "the usual spread, σ, and two entries of two figures")
	cup := "cup.1.card = flowcoat\ncup.1.method = nap-roller\ncup.1.mixed = 500 g\ncup.1.in = 100\ncup.1.ended = 400\ncup.1.end = spread\ncup.1.left = 95 g\ncup.1.per-area = 500 g/m²\ncup.1.film = 400 µm\ncup.1.covered = 0.7 m²"
	both := jobtest.Doc(t, cup, "cup = 1")
	for _, l := range d.Lines() {
		both = both.Set(l.Path, l.Text)
	}
	assert.Len(t, lessons(both)[0].After.Step.From, 1+2+3*2)
}

// Why an entry doesn't count is the first thing that is wrong with it: with nothing planned there is nothing
// to compare with, and a film too thin is told as that, though it is far off as well.
func TestWhyAnEntryDoesNotCount(t *testing.T) {
	base := jobtest.Doc(t, rolled, "done = 1")
	err := func(d job.Document) error { return lessons(d)[0].Log[0].Err }
	assert.ErrorIs(t, err(entry(base, "done.1", "", "", "2 kg")), chance.ErrNoPlanned)
	thin := entry(base, "done.1", "2 kg", "1.9 kg", "0.8 kg")
	var refused *order.LogError
	require.ErrorAs(t, err(thin), &refused)
	assert.Equal(t, order.ThinFilm, refused.Cause)
	require.NotNil(t, askAt(thin, "done.1.used"), "0.4 of what was planned is asked about too")
}

// A comb counts on the surface that it was read on, or where none is named; one whose dry tooth isn't above
// the wet one says nothing: 1.7 kg of 2 is a thin film then.
func TestWhichCombsCount(t *testing.T) {
	thin := entry(jobtest.Doc(t, rolled, "done = 1"), "done.1", "2 kg", "1.9 kg", "1.7 kg")
	for _, c := range []struct {
		surface, wet, dry string
		counts            bool
	}{
		{"", "325 µm", "350 µm", true}, {"surface.1", "325 µm", "350 µm", true}, {"surface.2", "325 µm", "350 µm", false},
		{"surface.1", "350 µm", "325 µm", false}, {"surface.1", "350 µm", "350 µm", false}, {"surface.1", "350 µm", "", false}, {"surface.1", "", "350 µm", true},
	} {
		d := thin.Set(flowStep+".comb", "1").Set(flowStep+".comb.1.surface", c.surface).Set(flowStep+".comb.1.last-wet", c.wet).Set(flowStep+".comb.1.first-dry", c.dry)
		log := lessons(d)[0].Log[0]
		if c.counts {
			assert.NoError(t, log.Err, "%v", c)
			continue
		}
		var refused *order.LogError
		require.ErrorAs(t, log.Err, &refused, "%v", c)
		assert.InDelta(t, 2, float64(log.Planned.Value), 1e-12, "%v: nothing is planned anew", c)
	}
	two := thin.Set(flowStep+".comb", "1 2").Set(flowStep+".comb.1.last-wet", "325 µm").Set(flowStep+".comb.1.first-dry", "350 µm").Set(flowStep+".comb.2.last-wet", "375 µm").Set(flowStep+".comb.2.first-dry", "400 µm")
	assert.InDelta(t, 2*(337.5+387.5)/2/400, float64(lessons(two)[0].Log[0].Planned.Value), 1e-9, "the mean of two")
	noFilm := thin.Set("done.1.each", "").Set(flowStep+".comb", "1").Set(flowStep+".comb.1.last-wet", "325 µm").Set(flowStep+".comb.1.first-dry", "350 µm")
	assert.Error(t, lessons(noFilm)[0].Log[0].Err, "nobody knows what it was to be compared with")
}

// A cup whose leftover was weighed back went on but for that, though nobody noted when its catalyst went in.
func TestACupThatWasWeighedBackCounts(t *testing.T) {
	cup := "cup = 1\ncup.1.card = flowcoat\ncup.1.method = nap-roller\ncup.1.mixed = 500 g\ncup.1.ended = 400\ncup.1.end = spread\ncup.1.left = 95 g\ncup.1.per-area = 500 g/m²\ncup.1.film = 400 µm\ncup.1.step = " + flowStep
	one := jobtest.Doc(t, rolled, cup, "cup.1.covered = 0.7 m²")
	require.NoError(t, lessons(one)[0].Log[0].Err)
	assert.InDelta(t, 0.405/0.350, float64(lessons(one)[0].Log[0].Ratio), 1e-9)
	finished := entry(jobtest.Doc(t, rolled, cup, "done = 1"), "done.1", "0.35 kg", "0.3 kg", "").Set("done.1.cups", "cup.1")
	require.NoError(t, lessons(finished)[0].Log[0].Err)
	assert.InDelta(t, 0.405, float64(lessons(finished)[0].Log[0].Used.Value), 1e-9)
}

// What a cup of a material that is gone took of others can't be told: their stock stays as it was counted.
func TestACupOfAMaterialThatIsGone(t *testing.T) {
	p := plan.Make(jobtest.Doc(t, "card.styrene.stock = 2 L\ncup = 1\ncup.1.card = 9\ncup.1.mixed = 500 g\ncup.1.product = 470 g\ncup.1.thinner = 30 g\ncup.1.in = 100"))
	assert.Empty(t, chance.LeftInStock(&p.Job))
}
