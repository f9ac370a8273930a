package view_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// What is asked of a cup that has just ended is how much was left: a quarter, half or all of what was mixed, or the usual. A cup
// that was scrapped, or that a file brought, or of which it is known, is asked nothing.
func TestOfACupThatEndedItIsAskedWhatWasLeft(t *testing.T) {
	running := cups(t)["running"]
	ended := do(running, "end", "cup.1", "left")
	ask := regionOf(t, view.Page(ended).String(), "justended")
	assert.Contains(t, plain(textIn(ask)), plain(words.Logged("Polyester gel coat, 200 g")+" "+words.WhatWasLeft))
	assert.Equal(t, []button{{do: "open", path: "cup.1", label: words.OnlyClings}, {do: "set", path: "cup.1.left", text: "50 g", label: words.AQuarter},
		{do: "set", path: "cup.1.left", text: "100 g", label: words.Half}, {do: "set", path: "cup.1.left", text: "200 g", label: words.AllOfIt}, {do: "go", path: "log", label: words.WeighLater}}, buttonsOf(ask))
	for name, s := range map[string]*page.State{"scrapped": do(do(running, "end", "cup.1", "scrap"), "go", "cup", ""), "told": with(ended, "cup.1.left = 20 g"), "none": cups(t)["planned"],
		"running": running, "made up": do(madeUp("log"), "go", "cup", "")} {
		assert.NotContains(t, view.Page(s).String(), words.WhatWasLeft, name)
	}
}

// A cup's sheet says how it ended and asks on; what answers a cup that doesn't cure stands there alone.
func TestACupsSheetSaysWhatBecameOfIt(t *testing.T) {
	log := func(lines ...string) *page.State { return do(with(madeUp("log"), lines...), "sheet", "cup.2", "") }
	unread := log("cup.2.mixed = none")
	saysEach(t, []saying{
		{log(), "sheet", "spread, 12 May 2024|plan 1120 g/m²|" + words.MeasuredCounts, words.NoCureWarm + "|" + words.TakeAsACupTest + "|" + words.InFuture},
		{log("cup.2.end = " + job.EndNoCure), "sheet", words.NoCureWarm + "|" + words.NoCureAddNothing + "|" + words.NoCureScrape, ""},
		{log("cup.2.gel = 20 min"), "tools-cup.2", words.TakeAsACupTest, ""},
		{log("cup.2.fault ="), "fault-cup.2", "", words.BorneOut + "|" + words.NoSignAtAll},
		{do(madeUp("log"), "sheet", "cup.1", ""), "line-cup.1.covered", "Covered measured", "plan"},
		{unread, "sheet", "spread", ""},
	})
	taken := func(lines ...string) *page.State {
		return do(with(madeUp("log"), lines...), "sheet", "cup.1.taken", "")
	}
	saysEach(t, []saying{
		{taken(), "taken-cup.1", "It gelled: as expected or later", "sooner"},
		{taken("cup.1.gel = 3 min"), "taken-cup.1", "It gelled: " + words.GelledSooner, "or later"},
		{taken("cup.1.gel ="), "taken-cup.1", "Product: 21 °C Surface: 22 °C Air: 21 °C Humidity: 58 %", "It gelled"},
		{taken("cup.1.tin = A7"), "taken-cup.1", "Tin: A7", ""},
		{taken(), "taken-cup.1", "Usable, expected: 6.5 min Earliest gel, expected: 13 min", "Tin"},
	})
}

// The head of the log says what comes next, from when, and how far the job is: steps that are done of all, and the days that are
// left, once the day is known.
func TestTheLogSaysWhatIsNext(t *testing.T) {
	demo := madeUp("log")
	noDay := with(demo, "day.today.low =", "day.today.high =", "day.today.read-temp =", "day.today.read-humidity =")
	done := demo
	for _, b := range demo.Plan.Buildups() {
		for _, step := range b.Steps {
			done = do(done, "done", step.Path, strings.Join(step.Progress.Open, " "))
		}
	}
	empty, _ := page.Start(nil, noon)
	saysEach(t, []saying{
		{demo, "next", words.NextWork("Epoxy fairing filler") + " from 12:00|0 of 11 steps done|" + words.DaysLeft(9, "9"), words.NextTold},
		{noDay, "next", words.NextWork("Epoxy fairing filler") + "|0 of 11 steps done|" + words.NextTold, "from 12:00|days of work"},
		{done, "next", words.NothingNext + "|11 of 11 steps done", words.NextTold + "|days of work"},
		{do(empty, "go", "log", ""), "next", "", "steps done"},
		{do(empty, "go", "log", ""), "list-cup", words.NothingLogged, words.LoggedCups},
		{demo, "list-cup", words.LoggedCups, words.NothingLogged},
		{do(empty, "go", "log", ""), "wanted", "", "more is likely"},
		{demo, "wanted", "Flow coat: 2.8 kg more is likely to be needed, of the same batch.", ""},
		{with(demo, "card.flowcoat.stock = 50 kg", "card.gelcoat.stock = 300 kg"), "wanted", "", "more is likely"},
		{with(demo, "card.flowcoat.stock = 50 kg"), "wanted", "Polyester gel coat:", "Flow coat"},
	})
	bar := regionOf(t, view.Page(demo).String(), "next")
	assert.Contains(t, bar, `<progress max="11" value="0" aria-label="0 of 11 steps done">`)
	assert.Contains(t, regionOf(t, view.Page(done).String(), "next"), `<progress max="11" value="11"`)
}

// What is done of a step is told in figures once it is opened; what the rest takes is told beyond the stock, by weight or volume.
func TestWhatTheRestTakes(t *testing.T) {
	demo := do(madeUp("log"), "sheet", page.RestSheet, "")
	begun := 0
	logged := with(demo, "cup.2.step = buildup.2.step.1")
	for _, s := range []*page.State{demo, logged} {
		for _, b := range s.Plan.Buildups() {
			for i := range b.Steps {
				step := &b.Steps[i]
				key, id := "progress."+strings.ReplaceAll(step.Path, ".", "-"), "progress."+step.Path
				var want []fig
				if step.Leaves.Step != nil {
					want = append(want, fig{id + ".leaves", "To be put on, as planned", plain(shownAs(step.Leaves, unit.InKilogram))})
				}
				if step.Progress.PutOn.Value > 0 {
					begun++
					want = append(want, fig{id + ".on", "Put on by cups since", plain(shownAs(step.Progress.PutOn, unit.InKilogram))})
				}
				if step.Progress.Rest.Step != nil {
					want = append(want, fig{id + ".rest", "Left to do", plain(unit.Write(float64(step.Progress.Rest.Value), unit.InPercent, 2))})
				}
				open := do(s, "open", key, "")
				require.Equal(t, want, figuresOf(regionOf(t, view.Page(open).String(), "item-"+key)), step.Path)
				assert.True(t, strings.HasPrefix(textOf(t, open, "item-"+key), strconv.Itoa(i+1)+". "+s.WorkOf(step.Path)), step.Path)
			}
		}
	}
	assert.Positive(t, begun)

	buy := do(madeUp("log"), "sheet", page.BuyRestSheet, "")
	var lines []string
	for _, l := range buy.Order().Lines {
		if (l.Scale == unit.InKilogram || l.Scale == unit.InLitre) && l.ToBuy.IsPositive() {
			lines = append(lines, l.Card.Name+" "+page.Amount(l.ToBuy, l.Scale, buy.Plan.Job.Units)+" "+words.Buy(&l, buy.Plan.Job.Units))
		}
	}
	require.NotEmpty(t, lines)
	sure := do(settled(t, madeUp("order")), "sheet", page.BuyRestSheet, "")
	empty, _ := page.Start(nil, noon)
	saysEach(t, []saying{
		{buy, "tobuy", words.BeyondStock(words.AsPlanned) + " " + strings.Join(lines, " ") + " " + words.OrderSaysTheChance, ""},
		{sure, "tobuy", words.BeyondStock(words.ForCardsChance), words.OrderSaysTheChance},
		{do(do(empty, "go", "log", ""), "sheet", page.BuyRestSheet, ""), "tobuy", words.StockIsEnough(words.AsPlanned), words.GoToTheOrder},
	})
}

// A lesson says what was used over what was planned, before and after, on what that rests, and offers to use it, or to forget it
// once it is in use.
func TestALessonIsOfferedOnce(t *testing.T) {
	s := do(madeUp("log"), "sheet", page.HandSheet, "")
	list := s.Lessons().List
	require.Len(t, list, 2)
	all := func(s *page.State) string { return view.Page(s).String() }
	var want []fig
	for i := range list {
		l := &list[i]
		id := "lesson." + l.Method.Key + "." + l.Card.Key
		want = append(want, fig{id + ".before", "Used ÷ planned, before", unit.Number(float64(l.Before.Value), 3)}, fig{id + ".after", plain(words.AfterEntries(l.Count)), unit.Number(float64(l.After.Value), 3)})
	}
	require.Equal(t, want, figuresOf(all(s)))
	path := page.LessonPath(&list[1])
	used := do(s, "learn", path, "")
	l := &used.Lessons().List[1]
	require.NotNil(t, l.Taken)
	text := plain(textIn(all(used)))
	assert.Contains(t, text, plain(words.TakenOver(unit.Number(float64(chance.FactorOf(l.Taken)), 3), 1)))
	assert.Equal(t, 1, strings.Count(text, words.UseLesson), "the other one")
	assert.Equal(t, 1, strings.Count(text, words.ForgetIt))
	assert.NotContains(t, plain(textIn(all(s))), words.ForgetIt)
	assert.NotContains(t, plain(textIn(all(s))), "count yet")
	open := with(s, "done.1.used =", "done.1.cups =")
	for i := range open.Lessons().List {
		if l := &open.Lessons().List[i]; l.Count < len(l.Log) {
			assert.Contains(t, plain(textIn(all(open))), plain("1 "+words.EntryDoesntCount))
		}
	}
}
