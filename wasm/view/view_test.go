package view_test

import (
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/material"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

var noon = page.Moment{Unix: 1_780_000_000, Day: 12 * 3600, Date: "2026-05-28"}

func do(s *page.State, verb, path, text string) *page.State {
	s, _ = page.Update(s, page.Message{Verb: verb, Path: path, Text: text, At: noon})
	return s
}

// of gives the page with a job of one's own.
func of(t *testing.T, d job.Document) *page.State {
	t.Helper()
	s, _ := page.Start(map[string]string{page.Prefix + "job.a": job.Save(d, 1)}, noon)
	return s
}

// evil is a name that would break a page that took it for markup.
const evil = `<script>alert("1")</script>&'"><b onclick=x>`

// states are the states that every screen must stand in.
func states(t *testing.T) map[string]*page.State {
	t.Helper()
	empty, _ := page.Start(nil, noon)
	demo := do(empty, "demo", "", "")
	failing := demo
	for path, text := range map[string]string{"surface.1.height": "1,500", "surface.3.count": "0", "buildup.1.step.4.thinner": "40 %",
		"buildup.2.step.2.taken": "5 mm", "card.gelcoat.pack.1.size": "0", "surface.1.cutout.1.diameter": "3 m", "name": evil} {
		failing = do(failing, "set", path, text)
	}
	require.NotEmpty(t, failing.Plan.Refused())
	named := demo
	for _, path := range []string{"name", "currency", "surface.1.name", "buildup.1.name", "card.gelcoat.name", "card.gelcoat.note"} {
		named = do(named, "set", path, evil)
	}
	all := map[string]*page.State{"empty": empty, "made up": demo, "failing": failing, "named": named, "asked": do(demo, "set", "surface.1.height", "20 mm"),
		"refused save": do(demo, "refused", "", ""), "dark": do(demo, "look", "", "dark")}
	for seed := range uint64(3) {
		r := jobtest.New(seed)
		r.Junk = 0.1
		all["drawn "+string(rune('a'+seed))] = of(t, printable(r.Document()))
	}
	for name, s := range all {
		all[name+", US"] = do(s, "system", "", "us")
	}
	return all
}

// printable leaves out characters that XML has no room for; HTML takes them.
func printable(d job.Document) job.Document {
	for _, l := range d.Lines() {
		d = d.Set(l.Path, strings.Map(func(r rune) rune {
			if r < ' ' && r != '\n' && r != '\t' {
				return -1
			}
			return r
		}, l.Text))
	}
	return d
}

// opened gives the state with the items at the paths open, or the sheet over the
// screen.
func opened(s *page.State, paths ...string) *page.State {
	for _, path := range paths {
		if key, isSheet := strings.CutPrefix(path, "sheet "); isSheet {
			s = do(s, "sheet", key, "")
			continue
		}
		if !s.IsOpen(path) {
			s = do(s, "open", path, "")
		}
	}
	return s
}

// everyView calls f with every screen of every state, with every item open in
// turn.
func everyView(t *testing.T, f func(t *testing.T, name string, s *page.State)) {
	t.Helper()
	for name, s := range states(t) {
		for _, screen := range page.Screens {
			s := do(s, "go", screen.Key, "")
			f(t, name+": "+screen.Key, s)
			for _, path := range openable(s, screen.Key) {
				f(t, name+": "+screen.Key+" "+path, opened(s, parents(path)...))
			}
		}
	}
}

// openable is every item that a screen can open.
func openable(s *page.State, screen string) []string {
	d := s.Doc()
	var list []string
	inner := func(list, item string) (paths []string) {
		for _, id := range d.Items(item + "." + list) {
			paths = append(paths, item+"."+list+"."+id)
		}
		return paths
	}
	switch screen {
	case "surfaces":
		list = append(list, "sheet "+page.ShapesSheet)
		for _, id := range d.Items("surface") {
			item := "surface." + id
			list = append(list, "sheet "+item)
			for _, part := range []string{page.ShapePart, page.GetsPart, page.GroundPart} {
				list = append(list, "sheet "+page.Part(item, part))
			}
			for _, cutout := range inner("cutout", item) {
				list = append(list, "sheet "+cutout)
			}
		}
	case "buildup":
		list = append(list, "sheet "+page.ReadySheet, "sheet "+page.RemovalsSheet, "sheet "+page.PuttiesSheet)
		for _, id := range d.Items("buildup") {
			item := "buildup." + id
			list = append(list, item)
			for _, part := range []string{page.AddPart, page.AboutPart, page.OnPart, page.BudgetPart, page.PointsPart, page.TermsPart} {
				list = append(list, "sheet "+page.Part(item, part))
			}
			for _, step := range inner("step", item) {
				list = append(list, "sheet "+step)
				for _, part := range []string{page.MorePart, page.ReadingsPart, page.WhyPart} {
					list = append(list, "sheet "+page.Part(step, part))
				}
			}
		}
	case "log":
		list = append(list, "sheet "+page.CupsSheet, "sheet "+page.RestSheet, "sheet "+page.BuyRestSheet, "sheet "+page.CalendarSheet, "sheet "+page.HoursSheet, "sheet "+page.LaterSheet, "sheet "+page.TestsSheet)
		for _, id := range d.Items("cup") {
			list = append(list, "sheet cup."+id, "sheet "+page.Part("cup."+id, page.CausesPart), "sheet "+page.Part("cup."+id, page.TakenPart))
		}
		for _, id := range d.Items("done") {
			list = append(list, "rest done."+id)
		}
		for _, id := range d.Items("test") {
			list = append(list, "tests test."+id)
		}
		for _, b := range s.Plan.Buildups() {
			for _, step := range b.Steps {
				list = append(list, "rest progress."+strings.ReplaceAll(step.Path, ".", "-"))
			}
		}
	case "cards":
		for _, c := range s.Plan.Job.Cards {
			if c.Own || c.Kind == material.GelCoat || c.Kind == material.Filler || c.Kind == material.Sundry { // one of each kind of form
				list = append(list, "sheet "+c.Path)
				for _, part := range page.CardParts {
					list = append(list, "sheet "+page.Part(c.Path, part.Key))
				}
			}
		}
	}
	return list
}

// parents is the path and what must be open for it to be seen.
func parents(path string) []string {
	if strings.HasPrefix(path, "sheet ") {
		return []string{path}
	}
	var list []string
	if sheet, item, isOn := strings.Cut(path, " "); isOn {
		list, path = append(list, "sheet "+sheet), item
	}
	parts := strings.Split(path, ".")
	for n := 2; n <= len(parts); n += 2 {
		list = append(list, strings.Join(parts[:n], "."))
	}
	return list
}

// element is what the tests look at of an element.
type element struct {
	tag   string
	attrs map[string]string
	inSVG bool
}

// elements reads a page as XML and gives every element in it.
func elements(t *testing.T, name, html string) []element {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(html))
	var list []element
	pictures := 0
	for {
		token, err := d.Token()
		if err == io.EOF {
			return list
		}
		require.NoError(t, err, name)
		if end, isEnd := token.(xml.EndElement); isEnd && end.Name.Local == "svg" {
			pictures--
		}
		if start, isStart := token.(xml.StartElement); isStart {
			e := element{start.Name.Local, map[string]string{}, pictures > 0}
			if e.tag == "svg" {
				pictures++
			}
			for _, a := range start.Attr {
				_, twice := e.attrs[a.Name.Local]
				require.False(t, twice, "%s: %s has %s twice", name, e.tag, a.Name.Local)
				e.attrs[a.Name.Local] = a.Value
			}
			list = append(list, e)
		}
	}
}

func TestEveryScreenStands(t *testing.T) {
	views := 0
	everyView(t, func(t *testing.T, name string, s *page.State) {
		views++
		p := markup.Cut(view.Page(s))
		require.Empty(t, p.Repeats, "%s: regions that stand twice", name)
		check(t, name, elements(t, name, p.HTML()))
	})
	assert.Greater(t, views, 200)
}

// check holds what every page must hold.
func check(t *testing.T, name string, all []element) {
	t.Helper()
	ids, labels := map[string]bool{}, map[string]bool{}
	for _, e := range all {
		if id := e.attrs["id"]; id != "" {
			require.False(t, ids[id], "%s: id %q stands twice", name, id)
			ids[id] = true
		}
		if e.tag == "label" {
			labels[e.attrs["for"]] = true
		}
		require.Regexp(t, `^[a-zA-Z][a-zA-Z0-9]*$`, e.tag, "%s: no element is called so", name)
		for attr := range e.attrs {
			require.False(t, attr == "style" || strings.HasPrefix(attr, "on"), "%s: %s", name, attr)
		}
		require.NotContains(t, []string{"script", "style", "iframe", "object", "link", "base"}, e.tag, name)
	}
	paths := map[string]bool{}
	for _, e := range all {
		switch e.tag {
		case "input", "select", "textarea":
			path := e.attrs["data-path"]
			require.NotEmpty(t, path, "%s: a control without a path", name)
			require.NotNil(t, job.FieldAt(path), "%s: %s leads nowhere", name, path)
			require.False(t, paths[path], "%s: two controls for %s", name, path)
			paths[path] = true
			require.True(t, labels[e.attrs["id"]] || e.attrs["aria-label"] != "", "%s: %s has no label", name, path)
			if describes := e.attrs["aria-describedby"]; describes != "" {
				require.True(t, ids[describes], "%s: %s is described by nothing", name, path)
			}
		case "button":
			require.NotEmpty(t, e.attrs["data-do"], "%s: a button that does nothing", name)
			require.Contains(t, verbs, e.attrs["data-do"], name)
			require.Equal(t, "button", e.attrs["type"], "%s: %s", name, e.attrs["id"])
		case "svg":
			require.True(t, e.inSVG || e.attrs["aria-label"] != "" || e.attrs["aria-hidden"] == "true", "%s: a picture for those who see it only", name)
		}
	}
}

// verbs is what buttons may ask for.
var verbs = []string{"set", "add", "copy", "remove", "move", "step", "open", "why", "whole", "sheet", "back", "like", "ready", "choose", "go", "unit", "decimal", "system", "undo", "redo", "demo", "own", "clear", "real", "look",
	"print", "bought", "text", "csv", "share", "export", "pick", "weighed", "in", "end", "take", "done", "learn", "unlearn", "log-csv", "link", "take-job", "drop-job", "fill", "find", "tool", "for", "front", "time-test"}

func TestWhatWasTypedStaysText(t *testing.T) {
	everyView(t, func(t *testing.T, name string, s *page.State) {
		html := view.Page(s).String()
		require.NotContains(t, html, "<script", name)
		require.NotContains(t, html, "<b onclick", name)
	})
}

// Two views of one state are the same, and what didn't change isn't replaced.
func TestTheSameStateGivesTheSamePage(t *testing.T) {
	for name, s := range states(t) {
		for _, screen := range page.Screens {
			s := do(s, "go", screen.Key, "")
			require.Empty(t, markup.Cut(view.Page(s)).Patches(markup.Cut(view.Page(s))), name)
		}
	}
}
