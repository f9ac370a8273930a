package view_test

import (
	"fmt"
	"html"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// button is one that a page shows, with what it says.
type button struct{ do, path, text, label, pressed, disabled string }

var (
	buttonTag = regexp.MustCompile(`(?s)<button([^>]*)>(.*?)</button>`)
	anyTag    = regexp.MustCompile(`<[^>]*>`)
)

func buttonsOf(markup string) (list []button) {
	for _, m := range buttonTag.FindAllStringSubmatch(markup, -1) {
		get := func(name string) string {
			_, rest, _ := strings.Cut(m[1], " "+name+`="`)
			text, _, _ := strings.Cut(rest, `"`)
			return html.UnescapeString(text)
		}
		label := get("aria-label")
		if label == "" {
			label = html.UnescapeString(strings.Join(strings.Fields(anyTag.ReplaceAllString(m[2], " ")), " "))
		}
		list = append(list, button{get("data-do"), get("data-path"), get("data-text"), label, get("aria-pressed"), get("aria-disabled")})
	}
	return list
}

// seen is all of a state that a button may change.
func seen(s *page.State) string {
	return fmt.Sprint(job.Save(s.Doc(), 1), s.Screen, s.Sheets, s.Why, s.WholeWorking, s.Open, s.Notice, s.Look, s.InDemo, s.Pending != nil)
}

// saysSo are the labels that stand for one verb, wherever they are.
var saysSo = map[string]string{words.Remove: "remove", words.MoveUp: "move up", words.MoveDown: "move down", words.Undo: "undo", words.Done: "back", words.Close: "back", words.NextSurface: "like",
	words.ScrapCup: "end scrap", words.AllSpread: "end spread", words.SomeLeft: "end left", words.ItGelled: "end gelled", words.StringSnapped: "end gelled", words.ItWentOff: "end gelled", words.ScrapedOff: "end no-cure",
	words.CatalystIn: "in", words.ToCatalyst: "weighed", words.SaveCSV: "csv", words.CopyText: "text", words.PrintList: "print", words.ShareList: "share", words.SaveTheLogAsCSV: "log-csv", words.ExportJob: "export",
	words.UseLesson: "learn", words.ForgetIt: "unlearn", words.ItIsReal: "real", words.BackToMine: "own", words.LookAtMadeUp: "demo", words.ShareAsALink: "link", words.ImportAJob: "pick",
	words.TimeATest: "time-test", words.TakeAsACupTest: "take", words.AllMetric: "system metric", words.AllUSCustomary: "system us", words.DecimalPoint: "decimal point", words.DecimalComma: "decimal comma",
	words.LookSun: "look light", words.EmptyBuildup: "ready"}

// everywhere presses every button of the made-up job, of an empty phone and of a cup on its way, on each screen and on each
// sheet that a button leads to; it shows each page to look, and tells of each button once what it did. Either may be nil.
func everywhere(t *testing.T, look func(name, html string), tell func(name string, before, after *page.State, effects []page.Effect, b button)) {
	t.Helper()
	pressed, been := map[button]bool{}, map[string]bool{}
	var try func(name string, s *page.State)
	try = func(name string, s *page.State) {
		html := view.Page(s).String()
		if look != nil {
			look(name, html)
		}
		for _, b := range buttonsOf(html) {
			if pressed[b] || b.disabled == "true" || b.do == "why" {
				continue
			}
			pressed[b] = true
			after, effects := page.Update(s, page.Message{Verb: b.do, Path: b.path, Text: b.text, At: noon})
			if tell != nil {
				tell(name, s, after, effects, b)
			}
			if place := fmt.Sprint(after.Screen, after.Sheets, after.Open, s.InDemo); (b.do == "sheet" || b.do == "open") && !been[place] {
				been[place] = true
				try(name+" › "+b.path, after)
			}
		}
	}
	empty, _ := page.Start(nil, noon)
	demo := do(empty, "demo", "", "")
	for _, screen := range page.Screens {
		try("empty: "+screen.Key, do(empty, "go", screen.Key, ""))
		try(screen.Key, do(demo, "go", screen.Key, ""))
		for _, path := range openable(demo, screen.Key) {
			try(screen.Key+" "+path, opened(do(demo, "go", screen.Key, ""), parents(path)...))
		}
	}
	fair := of(t, jobtest.Doc(t, strings.Split(fairJob, "\n")...))
	for _, path := range openable(fair, "buildup") {
		try("fairing "+path, opened(do(fair, "go", "buildup", ""), parents(path)...))
	}
	for name, s := range cups(t) {
		try(name, s)
	}
	assert.Greater(t, len(pressed), 400)
}

// Every button does what it says: its verb is that of its words, and it changes what its verb stands for, at its path.
func TestEveryButtonDoesWhatItSays(t *testing.T) {
	said, moves, focused := map[string]bool{}, map[string]bool{}, map[string]bool{}
	everywhere(t, nil, func(name string, s, after *page.State, effects []page.Effect, b button) {
		if means, isFixed := saysSo[b.label]; isFixed {
			said[b.label] = true
			verb, text, hasText := strings.Cut(means, " ")
			assert.Equal(t, verb, b.do, "%s: %+v", name, b)
			assert.True(t, !hasText || text == b.text, "%s: %+v", name, b)
		}
		isSame := seen(s) == seen(after) && len(effects) == 0
		mayStay := b.pressed == "true" || b.do == "go" && b.path == s.Screen || b.do == "system"
		if b.do == "step" { // at the end of its range it stays
			mayStay, moves[b.path] = true, moves[b.path] || !isSame
		}
		assert.True(t, !isSame || mayStay, "%s: %+v does nothing", name, b)
		meant(t, name, s, after, b)
		for _, e := range effects {
			if e.Kind == page.Focus && !focused[e.Key] {
				focused[e.Key] = true
				assert.Contains(t, view.Page(after).String(), ` id="`+e.Key+`"`, "%s: %+v leads the focus nowhere", name, b)
			}
		}
	})
	assert.Greater(t, len(focused), 50)
	for path, isMoved := range moves {
		assert.True(t, isMoved, "%s goes neither up nor down", path)
	}
	for label := range saysSo {
		assert.True(t, said[label] || label == words.ItIsReal || label == words.TimeATest || label == words.ForgetIt, "nowhere in sight: %s", label)
	}
}

// meant holds a button to what its verb stands for.
func meant(t *testing.T, name string, before, after *page.State, b button) {
	t.Helper()
	items := func(s *page.State, list string) int { return len(s.Doc().Items(list)) }
	list, _ := job.Split(b.path)
	switch b.do {
	case "sheet":
		assert.Equal(t, b.path, after.Sheet(), "%s: %+v opens another sheet", name, b)
		shown := view.Page(after).String()
		_, sheet, _ := strings.Cut(shown, `data-sheet="`)
		assert.Regexp(t, `<h[12][^>]*>[^<]+`, sheet, "%s: %+v opens a sheet without a name", name, b)
	case "go":
		assert.Equal(t, b.path, after.Screen, "%s: %+v", name, b)
	case "set":
		require.NotNil(t, job.FieldAt(b.path), "%s: %+v", name, b)
		assert.Equal(t, b.text, after.Doc().Get(b.path), "%s: %+v", name, b)
	case "add":
		assert.Equal(t, items(before, b.path)+1, items(after, b.path), "%s: %+v", name, b)
	case "remove":
		assert.Equal(t, items(before, list)-1, items(after, list), "%s: %+v", name, b)
	case "copy", "like":
		assert.Equal(t, items(before, list)+1, items(after, list), "%s: %+v", name, b)
	case "ready":
		assert.NotContains(t, after.Sheets, page.ReadySheet, "%s: %+v: what was chosen from is shut", name, b)
		assert.Equal(t, items(before, "buildup")+1, items(after, "buildup"), "%s: %+v", name, b)
	case "back":
		assert.NotEqual(t, before.Sheet(), after.Sheet(), "%s: %+v", name, b)
	case "step":
		assert.Contains(t, map[string]string{"up": words.More, "down": words.Less}[b.text]+": ", strings.SplitAfter(b.label, ": ")[0], "%s: %+v", name, b)
	case "choose":
		assert.Equal(t, b.text, after.Doc().Get(b.path), "%s: %+v", name, b)
	}
}

// cups are states of a cup on its way: planned, on the scale, weighed, running, ended with some left, and a timed test.
func cups(t *testing.T) map[string]*page.State {
	t.Helper()
	s, _ := page.Start(nil, noon)
	for _, l := range [][2]string{{"bench.now.card", "gelcoat"}, {"bench.now.amount", "200 g"}, {"bench.now.surface-temp", "24"}, {"day.today.read-temp", "23"}, {"day.today.read-humidity", "55"},
		{"day.today.low", "17"}, {"day.today.high", "27"}, {"bench.now.tool", "scale"}, {"bench.now.scale-step", "0.1 g"}, {"bench.now.pigment", "3 %"}} {
		s = do(s, "set", l[0], l[1])
	}
	planned := do(s, "go", "cup", "")
	require.True(t, planned.Bench().HasDose, "%v %v", planned.Bench().Reasons, planned.Bench().Waiting)
	scale := do(planned, "sheet", page.WeighSheet, "")
	weighed := do(scale, "weighed", "", "")
	running := do(weighed, "in", "cup.1", "")
	timed := do(do(running, "end", "cup.1", "spread"), "set", "cup.1.gel", "35 min")
	timed = do(timed, "take", "cup.1", "")
	require.Equal(t, page.Running, page.CupPhase(running.Doc(), "cup.1"))
	test := do(do(do(planned, "time-test", "", ""), "weighed", "", ""), "in", "cup.1", "")
	return map[string]*page.State{"planned": planned, "on the scale": scale, "weighed": weighed, "running": running, "won't go off": do(running, "sheet", page.WontSheet, ""),
		"left over": do(running, "end", "cup.1", "left"), "spread": do(running, "end", "cup.1", "spread"), "test": test, "timed": do(do(timed, "go", "cup", ""), "sheet", "tin", "")}
}
