package view_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// controls is the paths of the controls on the page, in their order.
func controls(t *testing.T, s *page.State) []string {
	t.Helper()
	var list []string
	for _, e := range elements(t, "", view.Page(s).String()) {
		if e.tag == "input" || e.tag == "select" || e.tag == "textarea" {
			list = append(list, e.attrs["data-path"])
		}
	}
	return list
}

// Typing in a control must leave it where it is: no region that is replaced may
// hold it. That goes for figures that change, for what is refused, for what is
// asked about, and for what is emptied. A choice that says which fields there
// are may be replaced with them: the focus goes back to it by its id.
func TestTypingNeverReplacesTheControl(t *testing.T) {
	empty, _ := page.Start(nil, noon)
	demo := do(empty, "demo", "", "")
	drawn := of(t, printable(jobtest.New(3).Document()))
	random := jobtest.New(11)
	random.Junk = 0
	replaced := map[string]bool{}
	for _, start := range []*page.State{do(demo, "system", "", "us"), drawn} {
		for _, screen := range page.Screens {
			s := do(start, "go", screen.Key, "")
			items := append(openable(s, screen.Key), "")
			items = items[max(0, len(items)-6):] // one surface or build-up is like another
			if screen.Key == "cards" {
				items = []string{"card.gelcoat", "card.epoxy-filler"}
			}
			for _, item := range items {
				shown := s
				if item != "" {
					shown = opened(s, parents(item)...)
				}
				for _, path := range controls(t, shown) {
					f := job.FieldAt(path)
					texts := []string{random.Text(f), "1,500", "", random.Text(f)}
					if f.Kind == job.Choice {
						texts = []string{f.Options[len(f.Options)-1].Key, f.Options[0].Key}
					}
					before := shown
					for _, text := range texts {
						after := do(before, "set", path, text)
						for _, patch := range markup.Cut(view.Page(after)).Patches(markup.Cut(view.Page(before))) {
							if holdsControl(patch.HTML, path) && !choosesFields(path) {
								replaced[generic(path)+" in "+generic(patch.ID)] = true
							}
						}
						before = after
					}
				}
			}
		}
	}
	for where := range replaced {
		assert.Fail(t, where)
	}
}

// choosesFields reports whether a control is a choice on which fields depend.
func choosesFields(path string) bool {
	_, key := job.Split(path)
	return slices.Contains([]string{"shape", "card", "tool", "for", "by", "fill-by", "way", "is"}, key)
}

func holdsControl(html, path string) bool {
	return strings.Contains(html, `id="f-`+path+`"`)
}

// generic leaves the ids out of a path.
func generic(path string) string {
	return strings.Map(func(r rune) rune {
		if '0' <= r && r <= '9' {
			return 'N'
		}
		return r
	}, path)
}

// A control's value isn't markup, but it is there for the border to set.
func TestControlsCarryWhatWasTyped(t *testing.T) {
	empty, _ := page.Start(nil, noon)
	s := opened(do(do(empty, "demo", "", ""), "go", "surfaces", ""), "sheet surface.1")
	s = do(s, "set", "surface.1.height", "1,500")
	p := markup.Cut(view.Page(s))
	assert.Equal(t, markup.Control{Value: "1,500", Invalid: true}, p.Controls["surface.1.height"])
	assert.Equal(t, "Foredeck", p.Controls["surface.1.name"].Value)
	assert.Contains(t, p.HTML(), "can be read two ways")
	assert.Contains(t, p.HTML(), "shows a dash until it is put right")
}

// What was just added is on the page, even while something else is refused.
func TestWhatIsAddedIsSeenWhileSomethingIsRefused(t *testing.T) {
	empty, _ := page.Start(nil, noon)
	s := do(do(empty, "demo", "", ""), "set", "surface.1.height", "1,500")
	s = do(do(s, "go", "cards", ""), "add", "card", "gelcoat")
	assert.Contains(t, view.Page(s).String(), `id="item-card.1"`)
	s = do(do(s, "go", "surfaces", ""), "add", "surface", "")
	assert.Contains(t, view.Page(s).String(), `id="item-surface.4"`)
}

func BenchmarkPage(b *testing.B) {
	empty, _ := page.Start(nil, noon)
	s := do(do(empty, "demo", "", ""), "open", "surface.1", "")
	for range b.N {
		next := do(s, "set", "surface.1.height", "1.8 m")
		markup.Cut(view.Page(next))
	}
}

var inputTag = regexp.MustCompile(`<input data-path="([^"]*)"[^>]*>`)

// Every field of figures brings up the number pad.
func TestFiguresAreTypedOnANumberPad(t *testing.T) {
	seen := 0
	empty, _ := page.Start(nil, noon)
	demo := do(empty, "demo", "", "")
	looks := []*page.State{demo}
	for _, screen := range page.Screens {
		looks = append(looks, do(demo, "go", screen.Key, ""))
	}
	for _, sheet := range []string{"surface.1", "buildup.1.step.1", "buildup.1.step.1.more", "card.gelcoat", "card.gelcoat.film", "card.gelcoat.minutes", "packs.gelcoat", "cup.1"} {
		looks = append(looks, do(demo, "sheet", sheet, ""))
	}
	for _, s := range looks {
		for _, m := range inputTag.FindAllStringSubmatch(view.Page(s).String(), -1) {
			f := job.FieldAt(m[1])
			if f == nil || !slices.Contains([]job.Kind{job.Quantity, job.Whole, job.Money}, f.Kind) {
				continue
			}
			seen++
			assert.Regexp(t, `inputmode="(decimal|numeric)"`, m[0])
		}
	}
	assert.Greater(t, seen, 20)
}
