// Package view turns the page's state into markup: one file a screen, and what
// they share. It is pure: the same state gives the same markup.
package view

import (
	"shedreckoner/calc/job"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
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

// screens is what each screen shows below its heading.
var screens = map[string]func(*page.State) html{
	"surfaces": surfaces,
	"buildup":  buildups,
	"cup":      cup,
	"order":    orderScreen,
	"log":      logScreen,
	"cards":    cards,
	"settings": settings,
	"sources":  sourcesScreen,
}

// Page is the whole page.
func Page(s *page.State) html {
	whole := region("page", "main", a("class", "page"),
		region("top", "header", a("class", "top"), top(s)),
		region("notice", "div", a("class", "notice"), notice(s)),
		region("screen", "section", a("class", "screen screen-"+s.Screen),
			el("h1", a("id", "heading", "tabindex", "-1"), txt(s.ScreenName())),
			screens[s.Screen](s)),
		region("bar", "nav", a("class", "bar", "aria-label", "Screens"), bar(s)),
	)
	if !job.HasComma(s.Doc()) {
		return whole
	}
	return markup.EachText(whole, s.Writer(func(name string) string { return txt(name).String() }))
}

// bar is the five screens, in reach of the thumb.
func bar(s *page.State) html {
	var items []html
	for _, screen := range page.Screens[:page.MainScreens] {
		attrs := a("class", "tab", "id", "tab-"+screen.Key, "data-do", "go", "data-path", screen.Key, "type", "button")
		if screen.Key == s.Screen {
			attrs = append(attrs, a("aria-current", "page")...)
		}
		items = append(items, el("button", attrs, txt(screen.Name)))
	}
	return join(items...)
}

func top(s *page.State) html {
	name := s.Doc().Get("name")
	if name == "" {
		name = "My job"
	}
	undo, redo := len(s.Slot().Undo) > 0, len(s.Slot().Redo) > 0
	return join(
		el("p", a("class", "jobname"), txt(name)),
		el("div", a("class", "tools"),
			tool("undo", "", "Undo", undo), tool("redo", "", "Redo", redo),
			tool("go", "cards", "Cards", true), tool("go", "settings", "Settings", true)),
	)
}

// tool is a small button of the top line; one that can do nothing is kept in
// place, so that the others don't jump under the thumb.
func tool(do, path, name string, usable bool) html {
	attrs := a("class", "tool", "id", "tool-"+do+path, "type", "button", "data-do", do, "data-path", path)
	if !usable {
		attrs = append(attrs, a("aria-disabled", "true")...)
	}
	return el("button", attrs, txt(name))
}

// notice is what the whole page has to say.
func notice(s *page.State) html {
	var lines []html
	if s.Notice != "" {
		lines = append(lines, el("p", a("class", "note"), txt(s.Notice)))
	}
	if !s.Stored {
		lines = append(lines, el("div", a("class", "ask"),
			el("p", a("class", "bad"), txt("This browser doesn't keep what is typed: it is full, or it lets this page keep nothing. Export the job as a file before you close the page.")),
			action("export", "", "now", "Export the job", "main")))
	}
	if s.Pending != nil {
		lines = append(lines, pending(s))
	}
	if s.Slot().Elsewhere != "" {
		lines = append(lines, el("div", a("class", "ask"), el("p", nil, txt("This job was changed in another tab. Until you choose, this tab keeps nothing.")),
			action("theirs", "", "", "Show the other tab's", "quiet"), action("mine", "", "", "Keep this one", "quiet")))
	}
	if len(s.Aside) > 0 {
		words := "Something kept earlier can't be read. It was set aside, not lost."
		if s.IsStuck() {
			words = "Something kept earlier can't be read, and there is no room to set it aside. Until you save it as a file, this page keeps nothing over it."
		}
		lines = append(lines, el("div", a("class", "ask"), el("p", nil, txt(words)), action("aside", "", "", "Save it as a file", "quiet")))
	}
	if s.Newer {
		lines = append(lines, el("div", a("class", "note"), el("p", nil, txt("A newer version of this page is ready.")),
			action("switch", "", "", "Use it now", "quiet")))
	}
	if s.InDemo {
		lines = append(lines, el("div", a("class", "demo"),
			el("p", nil, el("strong", nil, txt("Made-up job.")), txt(" Nobody measured this boat, and its log is invented. Your own job is untouched.")),
			action("own", "", "", "Back to my job", "quiet"), action("clear", "", "", "Clear it", "quiet")))
	}
	if len(s.Plan.Refused) > 0 {
		lines = append(lines, el("div", a("class", "refused"), el("p", nil, txt("Something typed can't be read. What follows from it shows a dash until it is put right.")), outOfSight(s)))
	}
	return join(lines...)
}

// outOfSight leads to what is refused where it can't be seen from here.
func outOfSight(s *page.State) html {
	const most = 3
	var ways []html
	for _, r := range s.Plan.Refused {
		if p := s.PlaceOf(r.Path); !s.IsShown(p) && len(ways) < most {
			ways = append(ways, action("find", r.Path, "", capital(p.Name), "quiet"))
		}
	}
	if len(ways) == 0 {
		return nothing
	}
	return join(el("p", nil, txt("To be put right:")), el("div", a("class", "itemtools"), ways...))
}

// action is a button that asks for something.
func action(do, path, text, name, class string) html {
	return el("button", a("class", class, "type", "button", "id", "do-"+do+"-"+path+text, "data-do", do, "data-path", path, "data-text", text), txt(name))
}
