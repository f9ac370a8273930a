package view_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// What the whole page has to say is said with the ways out of it, and nothing is said of what isn't so.
func TestEachNoticeHasItsWaysOut(t *testing.T) {
	empty, _ := page.Start(nil, noon)
	empty = do(empty, "kept", "", "")
	with := func(change func(*page.State)) *page.State {
		s := *empty
		change(&s)
		return &s
	}
	type way struct{ do, label string }
	for _, c := range []struct {
		says string
		s    *page.State
		ways []way
	}{
		{"", empty, nil},
		{"Copied.", with(func(s *page.State) { s.Notice = words.Copied }), nil},
		{words.NotStored, with(func(s *page.State) { s.Stored = false }), []way{{"export", words.ExportJob}}},
		{words.NewVersion, with(func(s *page.State) { s.Newer = true }), []way{{"switch", words.UseItNow}}},
		{words.KeptAhead, with(func(s *page.State) { s.Own.Ahead = true }), []way{{"export", words.ExportJob}}},
		{words.ChangedElsewhere, with(func(s *page.State) { s.Own.Elsewhere = "theirs" }), []way{{"theirs", words.ShowTheirs}, {"mine", words.KeepMine}}},
		{words.NewerCame, with(func(s *page.State) { s.Own.Elsewhere, s.Own.IsLate = "theirs", true }), []way{{"theirs", words.ShowNewer}, {"mine", words.KeepMine}}},
		{words.SetAside, with(func(s *page.State) { s.Aside = []string{"a text"} }), []way{{"aside", words.SaveAside}}},
		{words.MadeUpJob, do(empty, "demo", "", ""), []way{{"own", words.BackToMine}}},
	} {
		notice := regionOf(t, view.Page(c.s).String(), "notice")
		assert.True(t, strings.HasPrefix(textIn(notice), textIn(c.says)), "%s: %s", c.says, textIn(notice))
		var ways []way
		for _, b := range buttonsOf(notice) {
			ways = append(ways, way{b.do, b.label})
		}
		assert.Equal(t, c.ways, ways, c.says)
		if c.says == "" {
			assert.Empty(t, textIn(notice))
		}
	}
	refused := do(do(empty, "add", "surface", "rectangle"), "set", "surface.1.length", "none")
	refused = do(refused, "go", "log", "")
	notice := regionOf(t, view.Page(refused).String(), "notice")
	assert.Contains(t, textIn(notice), words.CantRead)
	ways := buttonsOf(notice)
	require.Len(t, ways, 1, "the way to what can't be read")
	assert.Equal(t, "find surface.1.length", ways[0].do+" "+ways[0].path)
	many := do(empty, "add", "surface", "box")
	for _, key := range []string{"length", "width", "height", "count"} {
		many = do(many, "set", "surface.1."+key, "none")
	}
	many = do(many, "go", "log", "")
	require.Len(t, many.Refused(), 4)
	assert.Len(t, buttonsOf(regionOf(t, view.Page(many).String(), "notice")), 3, "no more ways than a thumb looks through")
	seenThere := do(refused, "find", "surface.1.length", "")
	assert.Empty(t, buttonsOf(regionOf(t, view.Page(seenThere).String(), "notice")), "it is seen here")
}

// What is done of each step is said by its own count, and a step can be logged for each surface that is open, and for all.
func TestEachStepSaysHowFarItIs(t *testing.T) {
	s := do(madeUp("log"), "sheet", page.RestSheet, "")
	met := map[string]bool{}
	for _, b := range s.Plan.Buildups() {
		for i := range b.Steps {
			step := &b.Steps[i]
			p, key := &step.Progress, "progress."+strings.ReplaceAll(step.Path, ".", "-")
			says := words.ToDo
			switch done, open := len(p.Done), len(p.Open); {
			case open == 0 && done > 0:
				says = "done"
			case done > 0:
				says = words.DoneOf(done, done+open)
			case len(p.Cups) > 0:
				says = words.Begun(len(p.Cups))
			}
			met[says] = true
			html := view.Page(do(s, "open", key, "")).String()
			item := regionOf(t, html, "item-"+key)
			assert.Contains(t, textIn(item), textIn(says), step.Path)
			var asks []string
			for _, b := range buttonsOf(item) {
				if b.do == "done" {
					assert.Equal(t, step.Path, b.path)
					asks = append(asks, b.text)
				}
			}
			want := append([]string{}, p.Open...)
			if len(p.Open) > 1 {
				want = append(want, strings.Join(p.Open, " "))
			}
			assert.ElementsMatch(t, want, asks, step.Path)
			if step.Leaves.Step != nil {
				assert.Contains(t, textIn(item), words.ToPutOn+" "+handy(step.Leaves, unit.InKilogram), step.Path)
			}
		}
	}
	assert.GreaterOrEqual(t, len(met), 2)
}

// Of the cups of finished work each is told by its own day, amount and end, and a gel only where one was timed.
func TestFinishedWorkTellsItsCups(t *testing.T) {
	d := madeUp("log").Doc()
	for path, text := range map[string]string{"done.1.cups": "cup.1 cup.2", "cup.1.gel": "31 min", "cup.1.early": "25 min", "cup.2.gel": "", "cup.2.early": "25 min"} {
		d = d.Set(path, text)
	}
	s := do(do(of(t, d), "go", "log", ""), "sheet", page.RestSheet, "")
	told := 0
	for _, id := range s.Doc().Items("done") {
		html := textIn(view.Page(do(s, "open", "done."+id, "")).String())
		for _, path := range strings.Fields(s.Doc().Get("done." + id + ".cups")) {
			c := s.Plan.Job.CupByPath(path)
			require.NotNil(t, c)
			line := words.Date(c.Day, noon.Date) + ": " + handy(c.Mixed, unit.InGram) + ", " + c.End
			if c.Gel.Step != nil && c.Early.Step != nil {
				if c.End != job.EndGelled {
					line += ", gelled"
				}
				line += " after " + written(c.Gel, unit.InMinute)
				told++
			}
			assert.Contains(t, html, line)
			if c.Gel.Step == nil {
				assert.NotContains(t, html, line+", gelled")
				assert.NotContains(t, html, line+" after")
			}
		}
	}
	assert.Equal(t, 1, told)
}
