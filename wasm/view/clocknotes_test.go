package view_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// A clock that was moved under a running cup is told of on it, with how much, to the minute: an hour that is read off the wrong
// clock costs the cup. Only one thing is told of a clock, beside the heat of the cup.
func TestAMovedClockIsToldOnTheCup(t *testing.T) {
	running := do(cups(t)["running"], "audible", "", "")
	at := func(s *page.State, seconds, jump, zone int64) *page.State {
		m := noon
		m.Unix, m.Day, m.Steady = m.Unix+seconds+jump, m.Day+int(seconds+jump+zone), noon.Unix+seconds
		s, _ = page.Update(s, page.Message{Verb: "tick", At: m})
		return s
	}
	first := at(running, 60, 0, 0)
	note := func(s *page.State) string { return textOf(t, s, "clock-note") }
	for minutes, says := range map[int64]string{20: "20 min", 1: "1 min"} {
		assert.Equal(t, plain(words.SetBack(says)+" "+words.Warm), note(at(first, 70, -60*minutes, 0)))
		assert.Equal(t, plain(words.SetOn(says)+" "+words.Warm), note(at(first, 70, 60*minutes, 0)))
	}
	assert.Equal(t, plain(words.SetBack("1 min")+" "+words.Warm), note(at(first, 70, -10, 0)), "never by 0 min")
	assert.Equal(t, plain(words.SetBack("2 min")+" "+words.Warm), note(at(first, 70, -100, 0)))
	assert.Equal(t, plain(words.Zone+" "+words.Warm), note(at(first, 70, 0, 3600)))
	assert.Equal(t, plain(words.Warm), note(at(first, 70, 0, 0)))
	assert.Equal(t, plain(words.Unsettled+" "+words.Warm), note(do(first, "unsettled", "", "")))
	assert.Equal(t, plain(words.Warm), note(do(do(first, "unsettled", "", ""), "settled", "", "")))
	assert.Equal(t, plain(words.SetBack("20 min")+" "+words.Warm), note(do(at(first, 70, -1200, 0), "may-sleep", "", "")), "two at most")
	assert.Equal(t, plain(words.Warm+" "+words.OwnTimer), note(do(first, "may-sleep", "", "")))
	assert.Equal(t, plain(words.Warm+" "+words.SilentYet), note(do(first, "mute", "", "")))
}

// What is to be done about a cup that doesn't go off is told by its own hours; nothing is ever added.
func TestACupThatWontGoOffIsNeverAddedTo(t *testing.T) {
	s := cups(t)["won't go off"]
	text := textOf(t, s, "sheet")
	assert.Contains(t, text, plain(words.AddNothing+" "+words.SecondDose))
	assert.Contains(t, text, plain(words.WarmThePart))
	stuck, err := s.WontGoOff("cup.1")
	assert.NoError(t, err)
	hour := func(after float64) string { return s.HourAfter("cup.1", after) }
	assert.True(t, stuck.Wait.Step != nil && stuck.Scrape.Step != nil)
	assert.Contains(t, text, plain(words.StillInTime(hour(float64(stuck.Wait.Value)), minutesOf(stuck.Wait.Value))))
	assert.Contains(t, text, plain(words.ThenScrape(hour(float64(stuck.Scrape.Value)))))
	assert.Equal(t, stuck.Warmed.Step != nil, stuck.Warm.Step != nil)
	if stuck.Warmed.Step != nil {
		assert.Contains(t, text, plain(words.OnceWarm(written(stuck.Warm, s.Plan.Job.Units.Scale(unit.Temperatures)), hour(float64(stuck.Warmed.Value)))))
	}
	var ways []button
	for _, b := range buttonsOf(regionOf(t, view.Page(s).String(), "act")) {
		ways = append(ways, button{do: b.do, path: b.path, text: b.text, label: b.label})
	}
	assert.Equal(t, []button{{do: "end", path: "cup.1", text: "gelled", label: words.ItWentOff}, {do: "end", path: "cup.1", text: "no-cure", label: words.ScrapedOff}}, ways)
	more := buttonsOf(regionOf(t, view.Page(cups(t)["running"]).String(), "clockmore"))
	assert.Equal(t, []string{"end gelled", "sheet wont", "sheet " + page.NextCup}, []string{more[0].do + " " + more[0].text, more[1].do + " " + page.WontSheet, more[2].do + " " + more[2].path})
	test := buttonsOf(regionOf(t, view.Page(cups(t)["test"]).String(), "clockmore"))
	assert.Equal(t, []string{"sheet", "end"}, []string{test[0].do, test[1].do})
	assert.Equal(t, "scrap", test[1].text)
	assert.Equal(t, "", textOf(t, do(cups(t)["planned"], "sheet", page.WontSheet, ""), "act"))
}

// The jobs that are kept are counted without the one that is open.
func TestTheOtherJobsAreCounted(t *testing.T) {
	s, _ := page.Start(nil, noon)
	s = do(with(s, "name = Tern"), "go", "settings", "")
	assert.Contains(t, textOf(t, s, "setup-jobs"), words.JobsKept(0))
	two := do(with(do(do(s, "job-new", "", ""), "go", "settings", ""), "name = Hull"), "go", "settings", "")
	assert.Contains(t, textOf(t, two, "setup-jobs"), "1 other job kept.")
	rows := buttonsOf(regionOf(t, view.Page(do(two, "sheet", page.JobsSheet, "")).String(), "list-jobs"))
	assert.Equal(t, []string{"job-open", "sheet", "job-open", "sheet", "demo"}, []string{rows[0].do, rows[1].do, rows[2].do, rows[3].do, rows[4].do})
	assert.Contains(t, rows[0].label, words.ThisJob)
	assert.NotContains(t, rows[2].label, words.ThisJob)
	assert.Equal(t, page.JobSheet+"."+rows[2].path, rows[3].path)
	assert.Contains(t, rows[4].label, words.MadeUpJob)
	assert.NotContains(t, rows[4].label, words.ThisJob)
	assert.Contains(t, rows[2].label, "Tern")
	demo := buttonsOf(regionOf(t, view.Page(do(do(two, "demo", "", ""), "sheet", page.JobsSheet, "")).String(), "list-jobs"))
	assert.NotContains(t, demo[0].label, words.ThisJob)
	assert.Contains(t, demo[4].label, words.ThisJob)
	one := textOf(t, do(two, "sheet", rows[3].path, ""), "sheet")
	assert.Contains(t, one, "Tern")
	assert.Contains(t, one, plain(words.JobHolds(0, 0)))
	assert.Contains(t, one, plain(words.CopyJob+" "+words.CopyJobLong+" "+words.RemoveIt+" "+words.RemoveJobLong))
}
