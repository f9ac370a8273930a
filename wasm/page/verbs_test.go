package page_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
)

// tap is a message from a state, and all that comes of it: the lines that change, where the builder then is, and what the border
// is to do. What isn't named doesn't happen.
type tap struct {
	from    *page.State
	message string // "verb path text", the path - for none
	lines   string // "path = text", one behind the other by |
	is      string // "screen: sheets", where they change
	focus   string
	effects string // besides those that keep
	notice  string
}

var effectNames = map[page.EffectKind]string{page.Settle: "settle", page.Download: "download", page.Copy: "copy", page.Share: "share", page.ShareLink: "link", page.PickFile: "pick", page.Print: "print",
	page.Say: "say", page.Theme: "theme", page.Timer: "timer", page.Awake: "awake", page.Sound: "sound", page.Vibrate: "vibrate", page.Switch: "switch", page.Revoke: "revoke", page.Forget: "forget"}

func placeOf(s *page.State) string { return s.Screen + ": " + strings.Join(s.Sheets, " ") }

// becomes tells what came of a message, as a tap does.
func becomes(before *page.State, text string) tap {
	parts := append(strings.SplitN(text, " ", 3), "", "")
	if parts[1] == "-" {
		parts[1] = ""
	}
	after, effects := page.Update(before, page.Message{Verb: parts[0], Path: parts[1], Text: parts[2], At: noon})
	got := tap{message: text, notice: after.Notice}
	var lines, done []string
	for _, c := range job.Changes(before.Doc(), after.Doc()) {
		if c.Path != job.WorkedPath {
			lines = append(lines, c.Path+" = "+strings.ReplaceAll(c.After, "\u00a0", " "))
		}
	}
	slices.Sort(lines)
	got.lines = strings.Join(lines, "|")
	if placeOf(before) != placeOf(after) {
		got.is = placeOf(after)
	}
	for _, e := range effects {
		switch {
		case e.Kind == page.Focus:
			got.focus = e.Key
		case effectNames[e.Kind] != "":
			done = append(done, strings.TrimSpace(effectNames[e.Kind]+" "+e.Key))
		}
	}
	got.effects = strings.Join(done, "|")
	return got
}

func comesOf(t *testing.T, rows []tap) {
	t.Helper()
	for i, want := range rows {
		got := becomes(want.from, want.message)
		want.from = nil
		assert.Equal(t, want, got, fmt.Sprintf("row %d: %s", i, want.message))
	}
}

// lined is the page with a job of these lines, on a screen, with sheets open.
func lined(t *testing.T, screen, sheets string, lines ...string) *page.State {
	t.Helper()
	s, _ := start(t, map[string]string{page.Prefix + "job.a": job.Save(docOfLines(lines), 1)})
	s = do(s, "go", screen, "")
	for _, key := range strings.Fields(sheets) {
		s = do(s, "sheet", key, "")
	}
	return s
}

func docOfLines(lines []string) (d job.Document) {
	for _, line := range lines {
		path, text, _ := strings.Cut(line, " = ")
		d = d.Set(path, text)
	}
	return d
}

// A new item has its usual shape or material, is the last of its list, and is open where it is typed; a sheet that only asked what
// it is to be has gone.
func TestWhatIsAddedIsOpen(t *testing.T) {
	empty := lined(t, "surfaces", "")
	flat := []string{"surface = 1", "surface.1.name = Deck", "surface.1.length = 2 m", "surface.1.shape = rectangle", "surface.1.buildup = buildup.1", "surface.1.ground = epoxy", "surface.1.lies = wall", "surface.1.sides = 2",
		"buildup = 1", "buildup.1.name = Roll", "buildup.1.step = 1", "buildup.1.step.1.kind = coat", "buildup.1.step.1.card = gelcoat"}
	comesOf(t, []tap{
		{from: empty, message: "add surface rectangle", lines: "surface = 1|surface.1.name = Surface 1|surface.1.shape = rectangle", is: "surfaces: surface.1", focus: "f-surface.1.length"},
		{from: lined(t, "surfaces", page.ShapesSheet), message: "add surface circle", lines: "surface = 1|surface.1.name = Surface 1|surface.1.shape = circle", is: "surfaces: surface.1", focus: "f-surface.1.diameter"},
		{from: empty, message: "add nothing rectangle"},
		{from: empty, message: "add cup -"},
		{from: lined(t, "surfaces", "surface.1", flat...), message: "add surface.1.cutout -", lines: "surface.1.cutout = 1", is: "surfaces: surface.1 surface.1.cutout.1", focus: "f-surface.1.cutout.1.length"},
		{from: lined(t, "buildup", "buildup.1.add", flat...), message: "add buildup.1.step sand", lines: "buildup.1.step = 1 2|buildup.1.step.2.by = grades|buildup.1.step.2.kind = sand", is: "buildup: buildup.1.step.2", focus: page.SheetHeading},
		{from: lined(t, "surfaces", "surface.1", flat...), message: "remove surface.1 -", is: "surfaces: ", focus: "list-surface", notice: "Removed. Undo brings it back.",
			lines: "surface = |surface.1.buildup = |surface.1.ground = |surface.1.length = |surface.1.lies = |surface.1.name = |surface.1.shape = |surface.1.sides = "},
		{from: lined(t, "buildup", "", flat...), message: "move buildup.1 up", focus: ""},
	})
	two := lined(t, "surfaces", "surface.1", append(flat, "surface = 1 2", "surface.2.name = Deck 2")...)
	comesOf(t, []tap{
		{from: two, message: "copy surface.1 -", is: "surfaces: surface.3", focus: "f-surface.3.length",
			lines: "surface = 1 3 2|surface.3.buildup = buildup.1|surface.3.ground = epoxy|surface.3.length = 2 m|surface.3.lies = wall|surface.3.name = Deck 3|surface.3.shape = rectangle|surface.3.sides = 2"},
		{from: two, message: "like surface.1 -", is: "surfaces: surface.3", focus: "f-surface.3.length",
			lines: "surface = 1 2 3|surface.3.buildup = buildup.1|surface.3.ground = epoxy|surface.3.lies = wall|surface.3.name = Surface 3|surface.3.shape = rectangle|surface.3.sides = 2"},
		{from: two, message: "like surface.9 -"},
		{from: two, message: "like buildup.1 -"},
		{from: two, message: "move surface.1 down", lines: "surface = 2 1", focus: "do-move-surface.1up"},
		{from: two, message: "move surface.2 up", lines: "surface = 2 1", focus: "do-move-surface.2down"},
		{from: two, message: "move nothing.2 up"},
		{from: lined(t, "surfaces", "", append(flat, "surface = 1 2 3")...), message: "move surface.3 up", lines: "surface = 1 3 2", focus: "do-move-surface.3up"},
		{from: lined(t, "surfaces", "", append(flat, "surface = 1 2 3")...), message: "move surface.1 down", lines: "surface = 2 1 3", focus: "do-move-surface.1down"},
	})
}

// What goes with an answer follows it as long as nobody chose otherwise.
func TestWhatGoesWithAnAnswerFollowsIt(t *testing.T) {
	coat := func(lines ...string) *page.State {
		return lined(t, "buildup", "buildup.1.step.1", append([]string{"buildup = 1", "buildup.1.step = 1", "buildup.1.step.1.kind = coat"}, lines...)...)
	}
	const step = "buildup.1.step.1."
	box := lined(t, "surfaces", "surface.1", "surface = 1", "surface.1.shape = box", "surface.1.faces = top front back left right")
	bare := lined(t, "surfaces", "surface.1", "surface = 1", "surface.1.shape = rectangle", "buildup = 1 2", "buildup.1.ground = epoxy", "buildup.1.name = a", "buildup.2.name = b")
	comesOf(t, []tap{
		{from: coat(), message: "set " + step + "card gelcoat", lines: step + "card = gelcoat|" + step + "film = 750 µm|" + step + "method = gravity-gun|" + step + "release = film"},
		{from: coat(step + "method = brush"), message: "set " + step + "card gelcoat", lines: step + "card = gelcoat|" + step + "film = 750 µm|" + step + "release = film"},
		{from: coat(step+"card = gelcoat", step+"film = 750 µm", step+"method = gravity-gun", step+"release = film"), message: "set " + step + "card flowcoat",
			lines: step + "card = flowcoat|" + step + "film = 400 µm|" + step + "method = nap-roller|" + step + "release = "},
		{from: coat(step+"card = gelcoat", step+"film = 900", step+"method = brush", step+"release = film"), message: "set " + step + "card flowcoat", lines: step + "card = flowcoat|" + step + "release = "},
		{from: coat(step+"card = gelcoat", step+"film = 900"), message: "set " + step + "card nothing", lines: step + "card = nothing"},
		{from: box, message: "set surface.1.side inside", lines: "surface.1.faces = bottom front back left right|surface.1.side = inside"},
		{from: lined(t, "surfaces", "", "surface = 1", "surface.1.shape = box", "surface.1.faces = top"), message: "set surface.1.side inside", lines: "surface.1.side = inside"},
		{from: bare, message: "set surface.1.buildup buildup.1", lines: "surface.1.buildup = buildup.1|surface.1.ground = epoxy"},
		{from: bare, message: "set surface.1.buildup buildup.2", lines: "surface.1.buildup = buildup.2"},
		{from: lined(t, "surfaces", "", "surface = 1", "surface.1.ground = paint", "buildup = 1", "buildup.1.ground = epoxy"), message: "set surface.1.buildup buildup.1", lines: "surface.1.buildup = buildup.1"},
		{from: bare, message: "set surface.1.shape polygon", lines: "surface.1.corners = 1 2 3|surface.1.shape = polygon"},
		{from: bare, message: "set surface.1.shape girths", lines: "surface.1.shape = girths|surface.1.stations = 1 2"},
		{from: bare, message: "set surface.1.shape box", lines: "surface.1.faces = top front back left right|surface.1.shape = box"},
		{from: do(bare, "sheet", "surface.1.shapes", ""), message: "choose surface.1.shape circle", lines: "surface.1.shape = circle", is: "surfaces: surface.1", focus: "open-surface.1.shapes"},
		{from: do(bare, "sheet", "surface.1.gets", ""), message: "choose surface.1.buildup buildup.1", lines: "surface.1.buildup = buildup.1|surface.1.ground = epoxy", is: "surfaces: surface.1", focus: "open-surface.1.gets"},
		{from: bare, message: "set surface.1.nothing 2"},
		{from: bare, message: "set cup.1.weighed 2"},
		{from: bare, message: "set surface.1.name Deck", lines: "surface.1.name = Deck"},
	})
}

// Back, the screens and the sheets over them: each lies once, goes with what it is of, and Back finds the way through all.
func TestSheetsAndScreensFindTheirWay(t *testing.T) {
	two := lined(t, "surfaces", "surface.1 surface.1.under", "surface = 1 2", "surface.1.cutout = 1", "buildup = 1", "buildup.1.step = 1")
	comesOf(t, []tap{
		{from: two, message: "sheet surface.1 -", is: "surfaces: surface.1", focus: page.SheetHeading},
		{from: two, message: "sheet menu -", is: "surfaces: surface.1 surface.1.under menu", focus: page.SheetHeading},
		{from: two, message: "sheet - -"},
		{from: two, message: "back - -", is: "surfaces: surface.1", focus: "open-surface.1.under"},
		{from: two, message: "go order -", is: "order: ", focus: "heading"},
		{from: two, message: "go nowhere -", is: "surfaces: ", focus: "heading"},
		{from: two, message: "go buildup buildup.1", is: "buildup: ", focus: "heading"},
		{from: two, message: "go buildup buildup.1.step.1", is: "buildup: buildup.1.step.1", focus: "heading"},
		{from: do(two, "go", "order", ""), message: "back - -", is: "surfaces: ", focus: "heading"},
		{from: do(do(do(two, "go", "order", ""), "go", "log", ""), "go", "order", ""), message: "back - -", is: "log: ", focus: "heading"},
		{from: lined(t, "surfaces", ""), message: "back - -"},
		{from: two, message: "remove surface.1.cutout.1 -", lines: "surface.1.cutout = ", focus: "list-surface.1.cutout", notice: "Removed. Undo brings it back."},
		{from: two, message: "look - dark", effects: "theme dark"},
		{from: two, message: "print - shed", effects: "print shed"},
		{from: two, message: "pick - -", effects: "pick"},
	})
	s := do(two, "open", "surface.1", "")
	assert.True(t, s.IsOpen("surface.1"))
	assert.False(t, do(s, "open", "surface.1", "").IsOpen("surface.1"))
	assert.False(t, do(s, "open", "surface.2", "").IsOpen("surface.1"), "one of a list is open")
	s = do(do(two, "why", "surface.1.area", ""), "whole", "", "")
	assert.Equal(t, "surface.1.area true", fmt.Sprint(s.Why, " ", s.WholeWorking))
	assert.Equal(t, "surface.2.area false", fmt.Sprint(do(s, "why", "surface.2.area", "").Why, " ", do(s, "why", "surface.2.area", "").WholeWorking))
	assert.Empty(t, do(s, "why", "surface.1.area", "").Why)
	assert.Empty(t, do(s, "sheet", "menu", "").Why, "its working is covered")
	assert.Empty(t, do(s, "back", "", "").Why)
	assert.Equal(t, []int{2, 1, 0, 3}, []int{two.Depth(), do(two, "go", "order", "").Depth(), do(two, "go", "surfaces", "").Depth(), do(do(two, "go", "order", ""), "sheet", "order.tape", "").Depth() + 1})
	far := lined(t, "surfaces", "")
	for range 30 {
		for _, screen := range page.Screens {
			far = do(far, "go", screen.Key, "")
		}
	}
	assert.Equal(t, len(page.Screens)-1, far.Depth(), "each screen is on the way back once")
}
