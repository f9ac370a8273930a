package page

import (
	"maps"
	"slices"

	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/words"
)

// Update takes a message to the next state and to what is to be done. It works
// on a copy: the state before stays as it was, whatever goes wrong on the way.
// A verb that isn't known changes nothing.
func Update(before *State, m Message) (*State, []Effect) {
	next := *before
	return &next, update(&next, m)
}

func update(s *State, m Message) []Effect {
	if !slices.Contains(unasked, m.Verb) {
		s.Notice, s.before = "", nil
	}
	if m.At.Date != "" {
		lookAtClock(s, m.At)
		s.Now = m.At
	}
	for _, verb := range verbs {
		if verb.name == m.Verb {
			return untouched(s, confident(s, spoken(s, verb.act(s, m))))
		}
	}
	return nil
}

// unasked are the messages that no builder sends: what is being told stays
// through them.
var unasked = []string{"tick", "work", "kept", "refused", "elsewhere", "newer", "offline", "audible", "mute", "awake", "may-sleep", "behind", "unsettled", "settled", "room"}

// verbs is everything that can be asked of the page.
var verbs = []struct {
	name string
	act  func(*State, Message) []Effect
}{
	{"set", set},
	{"step", step},
	{"add", add},
	{"copy", copyItem},
	{"remove", remove},
	{"move", move},
	{"open", open},
	{"why", why},
	{"whole", func(s *State, m Message) []Effect { s.WholeWorking = !s.WholeWorking; return nil }},
	{"like", like},
	{"ready", putReady},
	{"choose", choose},
	{"sheet", openSheet},
	{"back", back},
	{"go", goTo},
	{"unit", setUnit},
	{"decimal", setDecimal},
	{"locale", locale},
	{"room", func(*State, Message) []Effect { return nil }}, // the views are made for it,
	{"system", setSystem},
	{"undo", undo},
	{"redo", redo},
	{"demo", demo},
	{"own", own},
	{"clear", clearDemo},
	{"job-new", newJob},
	{"job-open", openJob},
	{"job-copy", copyJob},
	{"job-remove", removeJob},
	{"real", confirm},
	{"meant", meantIn},
	{"intended", intended},
	{"look", look},
	{"find", find},
	{"print", printed},
	{"bought", bought},
	{"text", orderText},
	{"csv", orderCSV},
	{"share", shareOrder},
	{"done", finish},
	{"learn", learn},
	{"unlearn", unlearn},
	{"log-csv", logCSV},
	{"link", shareLink},
	{"opened", openLink},
	{"take-job", takePending},
	{"drop-job", dropPending},
	{"elsewhere", elsewhere},
	{"theirs", takeTheirs},
	{"mine", keepMine},
	{"newer", newer},
	{"offline", func(s *State, m Message) []Effect { s.Offline = m.Text; return nil }},
	{"fell-back", func(s *State, m Message) []Effect { s.Notice = words.FellBack; return nil }},
	{"audible", func(s *State, m Message) []Effect { s.Audible = true; return nil }},
	{"mute", func(s *State, m Message) []Effect { s.Audible = false; return nil }},
	{"awake", func(s *State, m Message) []Effect { s.MaySleep = false; return nil }},
	{"may-sleep", func(s *State, m Message) []Effect { s.MaySleep = true; return nil }},
	{"behind", func(s *State, m Message) []Effect { s.Behind = true; return nil }},
	{"unsettled", func(s *State, m Message) []Effect { s.Unsettled = true; return nil }},
	{"settled", func(s *State, m Message) []Effect { s.Unsettled = false; return nil }},
	{"switch", switchVersion},
	{"aside", offerAside},
	{"copy-failed", func(s *State, m Message) []Effect {
		s.Notice = words.NotCopied
		return nil
	}},
	{"kept", kept},
	{"refused", refused},
	{"export", export},
	{"pick", func(s *State, m Message) []Effect { return []Effect{{Kind: PickFile}} }},
	{"import", importFile},
	{"tool", chooseTool},
	{"for", mixFor},
	{"front", bringFront},
	{"time-test", timeTest},
	{"weighed", weighed},
	{"in", catalystIn},
	{"end", endCup},
	{"take", takeTest},
	{"tick", tick},
	{"work", work},
	{"next", nextCell},
	{"sign", flipSign},
	{"paste", pasteCells},
	{"fill", fillGrid},
	{"did-copy", func(s *State, m Message) []Effect { s.Notice = words.Copied; return nil }},
}

func set(s *State, m Message) []Effect {
	m.Text = withoutBidi(m.Text)
	if row, column, ok := cellAt(m.Path); ok {
		return setCell(s, row, column, m.Text)
	}
	f := job.FieldAt(m.Path)
	if f == nil || f.Kind == job.Moment || IsCup(m.Path) && CupPhase(s.Doc(), cupOf(m.Path)) != Ended {
		return nil
	}
	return edit(s, noted(s, follow(s.Doc(), m.Path, m.Text), m.Path), m.Path)
}

func add(s *State, m Message) []Effect {
	list := job.ListAt(m.Path)
	if list == nil || IsCup(m.Path) {
		return nil
	}
	if len(s.Doc().Items(m.Path)) >= list.Max {
		s.Notice = words.ListFull(list)
		return nil
	}
	doc, item := s.Doc().Add(m.Path)
	doc = fresh(doc, m.Path, item, m.Text)
	return withItem(s, doc, item)
}

// withItem puts a document in place that has a new item, and shows the item: the
// cursor stands in its first measure, where there is one.
func withItem(s *State, doc job.Document, item string) []Effect {
	focus := item
	switch list, _ := job.Split(item); {
	case hasSheet(item):
		focus = SheetHeading
	case list == "buildup":
		focus = "heading"
	}
	if key := firstMeasure(doc, item); key != "" {
		focus = "f-" + key
	}
	effects := edit(s, doc, "", Effect{Kind: Focus, Key: focus})
	if exists(s.Doc(), item) {
		chosen(s)
		shownIn(s, item)
	}
	return effects
}

func copyItem(s *State, m Message) []Effect {
	under, _ := job.Split(m.Path)
	list := job.ListAt(under)
	if list == nil || IsCup(m.Path) {
		return nil
	}
	if len(s.Doc().Items(under)) >= list.Max {
		s.Notice = words.ListFull(list)
		return nil
	}
	doc, item := s.Doc().Copy(m.Path)
	if name := doc.Get(item + ".name"); name != "" {
		doc = doc.Set(item+".name", numbered(doc, under, name))
	}
	return inPlaceOf(s, m.Path, doc, item)
}

// inPlaceOf adds a new item and opens its sheet in the place of the one that it
// was made from: one way back leads to their list, however many were made.
func inPlaceOf(s *State, from string, doc job.Document, item string) []Effect {
	effects := withItem(s, doc, item)
	if exists(s.Doc(), item) {
		s.Sheets = slices.DeleteFunc(slices.Clone(s.Sheets), func(key string) bool { return key == from })
	}
	return effects
}

func remove(s *State, m Message) []Effect {
	list, _ := job.Split(m.Path)
	if job.ListAt(list) == nil || IsCup(m.Path) && CupPhase(s.Doc(), m.Path) != Ended {
		return nil
	}
	doc := s.Doc().Remove(m.Path)
	if list == "card" {
		doc = job.RetireCard(doc, m.Path)
	}
	effects := edit(s, doc, "", Effect{Kind: Focus, Key: "list-" + list})
	s.Notice = words.Removed
	return effects
}

func move(s *State, m Message) []Effect {
	if list, _ := job.Split(m.Path); job.ListAt(list) == nil {
		return nil
	}
	by := 1
	if m.Text == "up" {
		by = -1
	}
	doc := s.Doc().Move(m.Path, by)
	return edit(s, doc, "", Effect{Kind: Focus, Key: moverOf(doc, m)})
}

func open(s *State, m Message) []Effect {
	if s.IsOpen(m.Path) {
		list, _ := job.Split(m.Path)
		s.Open = maps.Clone(s.Open)
		delete(s.Open, list)
		return nil
	}
	s.opened(m.Path)
	return nil
}

func why(s *State, m Message) []Effect {
	s.WholeWorking = false
	if s.Why == m.Path {
		s.Why = ""
		return nil
	}
	s.Why = m.Path
	return nil
}

func goTo(s *State, m Message) []Effect {
	for _, screen := range Screens {
		if screen.Key == m.Path && m.Path != s.Screen {
			s.leave(m.Path)
			s.Screen = m.Path
		}
	}
	s.Sheets = nil
	if m.Text != "" {
		shownIn(s, m.Text)
	}
	resumed(s)
	return []Effect{keepView(s), {Kind: Focus, Key: "heading"}}
}

func look(s *State, m Message) []Effect {
	s.Look = m.Text
	return []Effect{keepView(s), {Kind: Theme, Key: m.Text}}
}

func setUnit(s *State, m Message) []Effect {
	for _, measure := range unit.Choosable {
		if scale := measure.Scale(m.Text); measure.Key() == m.Path && scale != unit.NoScale {
			return edit(s, job.SetUnit(s.Doc(), measure, scale), "")
		}
	}
	return nil
}

func setSystem(s *State, m Message) []Effect {
	return edit(s, job.SetSystem(s.Doc(), m.Text == "us"), "")
}

// printed prints what is meant for the paper of the message's text.
func printed(s *State, m Message) []Effect {
	finished(s)
	return []Effect{{Kind: Print, Key: m.Text}}
}
