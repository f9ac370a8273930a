// Package view turns the page's state into markup: one file a screen, and what
// they share. It is pure: the same state gives the same markup.
package view

import (
	"sync"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

type html = markup.HTML

// Functions rather than variables: the compiler then knows that they keep no
// arguments, and builds the lists of these without the heap.

func el(tag string, attrs []markup.Attr, kids ...html) html { return markup.El(tag, attrs, kids...) }
func a(pairs ...string) []markup.Attr                       { return markup.A(pairs...) }
func txt(s string) html                                     { return markup.Text(s) }
func join(pieces ...html) html                              { return markup.Join(pieces...) }
func region(id, tag string, attrs []markup.Attr, kids ...html) html {
	return markup.Region(id, tag, attrs, kids...)
}

// nothing is left out where there is nothing to show.
var nothing html

// shown is what a screen or a sheet shows.
type shown struct {
	Title string // of a sheet, in its header
	Body  html
	Act   html // the one thing to do next, above the tabs
}

// screens is what each screen shows below its heading.
var screens = map[string]func(*page.State) shown{
	"surfaces": surfaces,
	"buildup":  buildups,
	"cup":      cup,
	"order":    orderScreen,
	"log":      plain(logScreen),
	"cards":    plain(cards),
	"settings": plain(settings),
	"sources":  plain(sourcesScreen),
}

// plain is a screen without an act of its own.
func plain(body func(*page.State) html) func(*page.State) shown {
	return func(s *page.State) shown { return shown{Body: body(s)} }
}

// Page is the whole page. On a phone a sheet covers the screen, by the style: then
// the screen isn't made, and nothing of it is there that the sheet may have too.
func Page(s *page.State) html {
	screen := sync.OnceValue(func() shown { return screens[s.Screen](s) })
	sheet := sheetOf(s)
	if s.Sheet() == "" && !s.Covers {
		sheet.Body = beside(s)
	}
	act := sheet.Act
	if s.Sheet() == "" {
		act = screen().Act
	}
	sheetAttrs := a("class", "sheet", "data-sheet", s.Sheet())
	if s.Sheet() != "" {
		sheetAttrs = append(sheetAttrs, a("aria-labelledby", page.SheetHeading)...)
	}
	whole := region("page", "main", a("class", "page"),
		region("top", "header", a("class", "top"), unless(s.IsCovered(), func() html { return top(s, screen().Title) })),
		region("notice", "div", a("class", "notice"), notice(s)),
		region("screen", "section", a("class", "screen screen-"+s.Screen), unless(s.IsCovered(), func() html {
			return join(el("h1", a("id", "heading", "tabindex", "-1", "class", headingClass(screen())), txt(s.ScreenName())), screen().Body)
		})),
		region("sheet", "section", sheetAttrs, laid(s, sheet)),
		region("act", "div", a("class", "act"), act),
		markup.Kept("bar", s.Screen, bar),
	)
	if !job.HasComma(s.Doc()) {
		return whole
	}
	write, key := s.Writer(func(name string) string { return txt(name).String() })
	return markup.EachText(whole, markup.Way{Key: key, Write: write})
}

// unless makes markup but where it would be seen by nobody.
func unless(nobodySees bool, make func() html) html {
	if nobodySees {
		return nothing
	}
	return make()
}

// headingClass leaves the heading to those who listen where the header says what is shown.
func headingClass(screen shown) string {
	if screen.Title != "" {
		return "unseen"
	}
	return ""
}

// bar is the five screens, in reach of the thumb.
func bar(id, chosen string) html {
	var items []html
	for _, screen := range page.Screens[:page.MainScreens] {
		attrs := a("class", "tab", "id", "tab-"+screen.Key, "data-do", "go", "data-path", screen.Key, "type", "button")
		if screen.Key == chosen {
			attrs = append(attrs, a("aria-current", "page")...)
		}
		items = append(items, el("button", attrs, txt(screen.Name)))
	}
	return region(id, "nav", a("class", "bar", "aria-label", words.Screens), items...)
}

// top is where the builder is, what can be taken back, and the way to everything
// else.
func top(s *page.State, name string) html {
	if name == "" {
		name = s.Doc().Get("name")
	}
	if name == "" {
		name = words.UnnamedJob
	}
	return join(
		el("p", a("class", "jobname"), txt(name)),
		undoTool("undo", canUndo(s)),
		el("button", a("class", "tool", "id", page.OpenerID("menu"), "type", "button", "data-do", "sheet", "data-path", "menu", "aria-label", words.Menu), txt("⋯")))
}

// undoTool takes the last change back. Where there is none it is kept in place,
// so that what stands beside it doesn't jump under the thumb.
func undoTool(id string, canUndo bool) html {
	attrs := a("class", "tool", "id", "tool-"+id, "type", "button", "data-do", "undo", "data-path", "", "aria-label", words.Undo)
	if !canUndo {
		attrs = append(attrs, a("aria-disabled", "true")...)
	}
	return el("button", attrs, txt("↶"))
}

func canUndo(s *page.State) bool { return len(s.Slot().Undo) > 0 }

// action is a button that asks for something.
func action(do, path, text, name, class string) html {
	return el("button", a("class", class, "type", "button", "id", "do-"+do+"-"+path+text, "data-do", do, "data-path", path, "data-text", text), txt(name))
}
