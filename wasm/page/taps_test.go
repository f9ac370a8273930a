package page_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// The readings of a grid are typed cell by cell: Enter goes on to the next, to the row below, and to a new one; a sign belongs to
// the cell that was typed in last; pasted rows fill from the cell they are pasted in, as far as there is room.
func TestEnterGoesThroughAGrid(t *testing.T) {
	const step = "buildup.1.step.1"
	grid := lined(t, "buildup", step, "buildup = 1", "buildup.1.step = 1", step+".kind = fill", step+".fill-by = grid", step+".columns = 2", step+".grid = 1 2", step+".grid.1.z = 1; 2", step+".grid.2.z = 3; -4")
	cell := func(row, column string) string { return step + ".grid." + row + ".z." + column }
	typed := do(grid, "set", cell("1", "1"), "5")
	again := do(grid, "set", cell("2", "1"), "−6")
	comesOf(t, []tap{
		{from: grid, message: "next " + cell("1", "0") + " ", focus: "f-" + cell("1", "1")},
		{from: grid, message: "next " + cell("1", "1") + " ", focus: "f-" + cell("2", "0")},
		{from: grid, message: "next " + cell("2", "1") + " ", focus: "f-" + cell("3", "0"), lines: step + ".grid = 1 2 3"},
		{from: grid, message: "next " + step + ".grid.1.y.0 "},
		{from: grid, message: "set " + cell("1", "1") + " 5", lines: step + ".grid.1.z = 1; 5"},
		{from: grid, message: "set " + cell("1", "3") + " 5", lines: step + ".grid.1.z = 1; 2; ; 5"},
		{from: do(grid, "set", cell("1", "0"), ""), message: "set " + cell("1", "1") + " ", lines: step + ".grid.1.z = "},
		{from: grid, message: "sign " + step + ".grid.1 ", notice: words.ReadingBeforeProud},
		{from: typed, message: "sign " + step + ".grid.2 ", notice: words.ReadingBeforeProud},
		{from: typed, message: "sign " + step + ".grid.1 ", lines: step + ".grid.1.z = 1; -5", focus: "f-" + cell("1", "1")},
		{from: again, message: "sign " + step + ".grid.2 ", lines: step + ".grid.2.z = 3; 6", focus: "f-" + cell("2", "1")},
		{from: do(grid, "set", cell("1", "1"), ""), message: "sign " + step + ".grid.1 ", notice: words.ReadingBeforeProud},
		{from: grid, message: "paste " + cell("2", "1") + " 7\t8\n9\t10", lines: step + ".columns = 3|" + step + ".grid = 1 2 3|" + step + ".grid.2.z = 3; 7; 8|" + step + ".grid.3.z = ; 9; 10", notice: words.Pasted([][]string{{"7", "8"}, {"9", "10"}})},
		{from: grid, message: "paste " + cell("1", "0") + " 7\t8", lines: step + ".grid.1.z = 7; 8", notice: words.Pasted([][]string{{"7", "8"}})},
		{from: do(grid, "set", step+".paste", "7 8\n9 10"), message: "fill " + step + " ", lines: step + ".grid.1.z = 7; 8|" + step + ".grid.2.z = 9; 10|" + step + ".paste = ", notice: words.Pasted([][]string{{"7", "8"}, {"9", "10"}})},
		{from: grid, message: "fill " + step + ".grid "},
	})
	assert.True(t, do(grid, "next", cell("1", "1"), "").IsOpen(step+".grid.2"))
}

// A finished step is logged with what was planned on its surfaces, its cups and the day; only surfaces that are open can be.
func TestWhatIsDoneIsLoggedWithItsPlan(t *testing.T) {
	s := demo(t)
	step, _ := s.Plan.StepAt("buildup.2.step.1")
	require.Equal(t, []string{"surface.3"}, step.Progress.Open)
	planned, film, each, known := s.Plan.PlannedOn(step.Path, []string{"surface.3"})
	require.True(t, known)
	grams := func(m unit.Mass) string { return unit.Typed(float64(m), unit.InGram) + " g" }
	lines := []string{"done = 1 2", "done.2.card = gelcoat", "done.2.day = 2026-06-01", "done.2.each = " + unit.Typed(float64(each), unit.InMicrometre) + " µm", "done.2.film = " + grams(film), "done.2.method = gravity-gun", "done.2.planned = " + grams(planned),
		"done.2.step = buildup.2.step.1", "done.2.surface = surface.3"}
	got := becomes(s, "done buildup.2.step.1 surface.3")
	assert.Equal(t, "done.2", got.focus)
	for _, line := range lines {
		if !strings.HasPrefix(line, "done.2.day") {
			assert.Contains(t, strings.Split(got.lines, "|"), line)
		}
	}
	comesOf(t, []tap{
		{from: s, message: "done buildup.2.step.1 surface.1"},
		{from: s, message: "done buildup.2.step.1 "},
		{from: s, message: "done buildup.9.step.1 surface.3"},
		{from: s, message: "done buildup.2.step.1 surface.3 surface.1"},
		{from: s, message: "unlearn surface.1.name "},
		{from: s, message: "learn learn.nothing "},
		{from: s, message: "bought nothing "},
		{from: s, message: "take cup.2 "},
		{from: s, message: "take cup.9 "},
		{from: do(do(s, "set", "cup.1.gel", "18 min"), "take", "cup.1", ""), message: "take cup.1 ", notice: words.IsATestAlready},
	})
	taken := becomes(do(s, "set", "cup.1.gel", "19 min"), "take cup.1 ")
	assert.Equal(t, words.TakenAsTest, taken.notice)
	d := s.Doc()
	for to, from := range map[string]string{"card": "card", "mass": "mixed", "temp": "product-temp", "share": "share", "day": "day"} {
		assert.Contains(t, strings.Split(taken.lines, "|"), "test.2."+to+" = "+d.Get("cup.1."+from))
	}
	assert.Contains(t, taken.lines, "test.2.minutes = 19 min")
	lesson := &s.Lessons().List[0]
	used := becomes(s, "learn "+page.LessonPath(lesson)+" ")
	assert.Equal(t, words.LessonTaken, used.notice)
	assert.Equal(t, page.LessonPath(lesson)+" = "+lesson.Text(), used.lines)
	forgotten := becomes(do(s, "learn", page.LessonPath(lesson), ""), "unlearn "+page.LessonPath(lesson)+" ")
	assert.Equal(t, words.LessonForgotten, forgotten.notice)
	assert.Equal(t, page.LessonPath(lesson)+" = ", forgotten.lines)
	stock := becomes(s, "set card.gelcoat.stock 2 kg")
	assert.Equal(t, "card.gelcoat.stock = 2 kg", stock.lines, "it was counted after cup 2 before")
	assert.Equal(t, "card.tape.counted = cup.2|card.tape.stock = 2 m", becomes(s, "set card.tape.stock 2 m").lines)
}

// The first reading of a day puts away those of the day before beside it; each says at which hour it was typed.
func TestAReadingIsOfItsDay(t *testing.T) {
	old := []string{"bench.now.surface-temp = 20", "bench.now.product-temp = 21", "bench.now.ahead = 15", "bench.now.read-on = 2020-01-01", "day.today.low = 10", "day.today.high = 20", "day.today.read-temp = 15", "day.today.read-humidity = 50", "day.today.date = 2020-01-01"}
	s := lined(t, "cup", "", old...)
	at := "bench.now.read-at = " + words.Clock(noon.Day)
	now := "day.today.read-at = " + words.Clock(noon.Day)
	date := noon.Date
	comesOf(t, []tap{
		{from: s, message: "set bench.now.surface-temp 24", lines: "bench.now.ahead = |bench.now.product-temp = |" + at + "|bench.now.read-on = " + date + "|bench.now.surface-temp = 24"},
		{from: s, message: "set bench.now.product-temp 24", lines: "bench.now.ahead = |bench.now.product-temp = 24|bench.now.read-on = " + date + "|bench.now.surface-temp = "},
		{from: s, message: "set day.today.low 12", lines: "day.today.date = " + date + "|day.today.high = |day.today.low = 12|day.today.read-humidity = |day.today.read-temp = "},
		{from: s, message: "set day.today.read-temp 16", lines: "day.today.date = " + date + "|day.today.high = |day.today.low = |" + now + "|day.today.read-humidity = |day.today.read-temp = 16"},
		{from: do(s, "set", "day.today.low", "12"), message: "set day.today.read-humidity 60", lines: now + "|day.today.read-humidity = 60"},
		{from: do(s, "set", "day.today.low", "12"), message: "set day.today.high 30", lines: "day.today.high = 30"},
		{from: s, message: "set day.today.sunrise 5:00", lines: "day.today.sunrise = 5:00"},
		{from: s, message: "tool - scale 0.1 g", lines: "bench.now.scale-step = 0.1 g|bench.now.tool = scale"},
		{from: s, message: "tool - syringe 0.1 mL", lines: "bench.now.syringe-step = 0.1 mL|bench.now.tool = syringe"},
		{from: s, message: "tool - spoon 1"},
	})
}

// What a cup is, from the scale to its end, is taken down step by step; each step does to the phone what it must, and no more.
func TestACupIsTakenDownStepByStep(t *testing.T) {
	planned := lined(t, "cup", "")
	for _, l := range warmBench {
		planned, _ = page.Update(planned, page.Message{Verb: "set", Path: l.Path, Text: l.Text, At: noon})
	}
	planned = do(planned, "sheet", page.WeighSheet, "")
	weighed := do(planned, "weighed", "", "")
	require.Equal(t, []string{page.WeighSheet, page.CatalystSheet}, weighed.Sheets)
	d := weighed.Doc()
	for key, text := range map[string]string{"card": "gelcoat", "mixed": "100 g", "product": "100 g", "day": noon.Date, "surface-temp": "24", "product-temp": "22", "humidity": "55", "method": "gravity-gun", "amount-was": "100 g",
		"thinner": "", "wax": "", "parts": "", "tin": "", "dose": "", "in": "", "ended": ""} {
		assert.Equal(t, text, d.Get("cup.1."+key), key)
	}
	assert.Equal(t, []string{"24", "22"}, []string{d.Get("bench.now.surface-was"), d.Get("bench.now.product-was")})
	in := becomes(weighed, "in cup.1 ")
	assert.Equal(t, "revoke "+page.Prefix+"job.permit|awake on|timer on|say|settle", in.effects)
	assert.Equal(t, "cup: ", in.is)
	running := do(weighed, "in", "cup.1", "")
	assert.Equal(t, "100 g", running.Doc().Get("bench.now.amount"))
	for how, want := range map[string]struct{ end, focus, opens string }{"spread": {job.EndSpread, "heading", ""}, "left": {job.EndSpread, "left-cup.1", "cup.1"}, "gelled": {job.EndGelled, "left-cup.1", "cup.1"},
		"no-cure": {job.EndNoCure, "left-cup.1", "cup.1"}, "scrap": {job.EndScrapped, "heading", ""}} {
		got := becomes(running, "end cup.1 "+how)
		assert.Equal(t, "awake off|timer off|say settled", got.effects, how)
		assert.Equal(t, want.focus, got.focus, how)
		ended := do(running, "end", "cup.1", how)
		assert.Equal(t, want.end, ended.Doc().Get("cup.1.end"))
		assert.Equal(t, want.opens == "cup.1", ended.IsOpen("cup.1"), how)
		assert.Equal(t, how == "gelled", ended.Doc().Get("cup.1.gel") != "", how)
		assert.Empty(t, becomes(ended, "end cup.1 spread").lines, "it ended once")
		assert.Equal(t, page.Ended, page.CupPhase(ended.Doc(), "cup.1"))
	}
	assert.Empty(t, becomes(running, "end cup.1 otherwise").lines)
	assert.Empty(t, becomes(running, "end cup.2 spread").lines)
	assert.Empty(t, becomes(running, "in cup.1 ").lines, "once")
	assert.Equal(t, words.EndTheCupFirst, becomes(do(running, "back", "", ""), "back - ").notice, "there is nothing to go back to, and the page must not be left")
	scrapped := do(weighed, "end", "cup.1", "scrap")
	assert.Equal(t, "100 g", scrapped.Doc().Get("bench.now.amount"))
	assert.Equal(t, []string{page.WeighSheet}, scrapped.Sheets, "back at the scale")
	moved := do(weighed, "set", "bench.now.amount", "120 g")
	assert.Empty(t, becomes(moved, "in cup.1 ").lines, "the figures moved")
	anew := do(do(moved, "back", "", ""), "weighed", "", "")
	assert.Equal(t, "120 g", anew.Doc().Get("cup.1.mixed"), "weighed again, the same cup")
	assert.Len(t, anew.Doc().Items("cup"), 1)
	other := do(weighed, "set", "bench.now.card", "flowcoat")
	assert.Empty(t, becomes(other, "weighed - ").lines, "another material is another cup")
}
