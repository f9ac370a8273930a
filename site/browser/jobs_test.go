package browser_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/job"
	"shedreckoner/site/webdriver"
)

// aShed is what stays when the job changes: an own card with stock, a test of a tin, what the hand takes, and the tool.
const aShed = `
card = 1
card.1.base = gelcoat
card.1.name = Mine, grey
card.1.stock = 5 kg
card.1.counted = cup.0
card.gelcoat.stock = 3 kg
card.gelcoat.counted = cup.0
test = 1
test.1.card = gelcoat
test.1.tin = May
test.1.mass = 100 g
test.1.temp = 20 °C
test.1.share = 2 %
test.1.minutes = 15 min
learn.gravity-gun.gelcoat = 0.1 0.05 4
bench.now.tool = scale
bench.now.scale-step = 0.1 g
`

// toJobs opens the sheet of all jobs.
func toJobs(s *webdriver.Session) {
	closeSheets(s)
	tap(s, "#open-menu")
	do(s, "sheet", "jobs", "")
	s.Wait(onSheet("jobs"))
}

// openJob takes up the job under a number.
func openJob(s *webdriver.Session, number string) {
	toJobs(s)
	do(s, "job-open", number, "")
	s.Wait(`.sheet[data-sheet=""]`)
}

// withShed holds the shed that is kept against aShed.
func withShed(t *testing.T, s *webdriver.Session, where string) {
	t.Helper()
	doc, _ := newest(s)
	shed, _ := job.SplitShed(doc)
	want, _ := job.SplitShed(jobOf(aShed))
	assert.Equal(t, want.Lines(), shed.Lines(), where)
}

// A new job has the shed as it is, each job comes back as it was left, over a reload and a page that crashes; a copy has
// what is planned; a removed one is gone.
func TestSeveralJobsAndOneShed(t *testing.T) {
	page := servedReal(t)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(360, 740)
		s.Open(page.URL)
		ready(s)
		withJob(s, twoDecks+"name = Tern\n"+aShed)
		before, _ := newest(s)
		toJobs(s)
		assert.Contains(t, shown(s, ".sheet"), "Tern")
		do(s, "job-new", "", "")
		s.Wait(`.sheet[data-sheet=""]`)
		assert.Empty(t, figuresOfArea(s))
		withShed(t, s, "in a new job")
		goTo(s, "settings")
		fill(s, "name", "Dinghy")
		goTo(s, "cards")
		assert.Contains(t, shown(s, ".screen-cards"), "Mine, grey")
		s.Refresh()
		ready(s)
		withShed(t, s, "after a reload")

		toJobs(s)
		assert.Contains(t, shown(s, ".sheet"), "2 surfaces")
		openJob(s, "1")
		goTo(s, "surfaces")
		assert.Equal(t, "5.4 m²", figureText(s, "area"))
		back, _ := newest(s)
		assert.Equal(t, before.Lines(), withoutKept(back).Lines(), "as it was")
		crash(s)
		s.Open(page.URL)
		ready(s)
		back, _ = newest(s)
		assert.Equal(t, before.Lines(), withoutKept(back).Lines(), "after a crash")

		toJobs(s)
		do(s, "sheet", "job.1", "")
		do(s, "job-copy", "1", "")
		goTo(s, "surfaces")
		assert.Equal(t, "5.4 m²", figureText(s, "area"))
		do(s, "undo", "", "")
		assert.Equal(t, "5.4 m²", figureText(s, "area"), "undo stays in its job")
		toJobs(s)
		assert.Contains(t, shown(s, ".sheet"), "Tern (copy)")
		do(s, "sheet", "job.2", "")
		do(s, "job-remove", "2", "")
		s.Wait(onSheet("jobs"))
		s.Refresh()
		ready(s)
		toJobs(s)
		assert.NotContains(t, shown(s, ".sheet"), "Dinghy")
		assert.Contains(t, shown(s, ".sheet"), "Tern (copy)")
		withShed(t, s, "after all of it")
	})
}

// withoutKept is a job without what is noted of where it is kept.
func withoutKept(d job.Document) job.Document {
	return d.Set(job.NumberPath, "").Set(job.WorkedPath, "")
}
