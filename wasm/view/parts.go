package view

import (
	"shedreckoner/calc/job"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// The parts that every screen and sheet is put together from. Each is one
// function here and one block of style/05-parts.css; a screen has no size,
// colour or space of its own.

// dialLine is a figure between − and +, typed by tapping it.
type dialLine struct {
	Name    string // instead of the field's own
	Letter  string // on the sketch
	Small   string // what is assumed or meant, under the name; may change with figures
	Default string // what holds while nothing is typed
	Holds   string // the value that is proposed while none is typed: it is no markup
}

// dial is the line for the field at the path. Where the field has no step there
// is only the figure.
func dial(s *page.State, path string, of dialLine) html {
	f := job.FieldAt(path)
	key := lineOf(s, path, f)
	key.Name, key.Letter, key.Small, key.Default, key.Holds = of.Name, of.Letter, of.Small, of.Default, of.Holds
	if key.Name == "" {
		key.Name = f.Name
	}
	return markup.Kept("line-"+path, key, dialOf)
}

func dialOf(id string, key line) html {
	f, path := job.FieldAt(key.path), key.path
	label := []html{}
	if key.Letter != "" {
		label = append(label, el("b", a("class", "letter"), txt(key.Letter)))
	}
	label = append(label, txt(words.Capital(key.Name)), region("small-"+path, "small", nil, txt(key.Small)))
	less, more := nothing, nothing
	if page.HasSteps(path, f, key.units.scale) {
		less, more = nudge("nudge", key, "down", "−", words.Less+": "+key.Name), nudge("nudge", key, "up", "+", words.More+": "+key.Name)
	}
	return region(id, "div", a("class", "dial"),
		el("label", a("for", "f-"+path), label...),
		less,
		el("span", a("class", "entry"), control(f, key, nil), unitChip(f, key)),
		more,
		region("say-"+path, "div", a("class", "say"), key.say))
}

// chips is a choice among few: all are seen, the chosen one is filled.
// What holds is what is chosen, or else the first one; or, where it is given, what the page works with.
func chips(s *page.State, path, name, holds string) html {
	f := job.FieldAt(path)
	chosen := holds
	if chosen == "" {
		chosen = s.Doc().Get(path)
	}
	if chosen == "" && f.Kind == job.Choice && !f.Optional {
		chosen = f.Options[0].Key
	}
	return markup.Kept("f-"+path, chipsKey{path, name, chosen, said(s, path, f)}, func(id string, key chipsKey) html {
		var list []html
		for _, o := range f.Options {
			list = append(list, el("button", a("class", "chip", "type", "button", "id", "chip-"+path+"-"+o.Key, "data-do", "set", "data-path", path,
				"data-text", o.Key, "aria-pressed", yesNo(o.Key == chosen)), txt(words.Capital(o.Name))))
		}
		return region(id, "div", a("class", "chips", "role", "group", "tabindex", "-1", "aria-label", words.Capital(name)),
			append(list, sayRegion(path, key.say))...)
	})
}

// chipsKey is all that a row of chips shows.
type chipsKey struct {
	path, name, chosen string
	say                html
}

// chosenName is the name of what is chosen at the path, the first where nothing is.
func chosenName(s *page.State, path string, options []job.Option) string {
	for _, o := range options {
		if o.Key == s.Doc().Get(path) {
			return o.Name
		}
	}
	return options[0].Name
}

// plainLine is a dial's line for words.
func plainLine(s *page.State, path, name string) html {
	key := lineOf(s, path, job.FieldAt(path))
	key.Name = name
	return markup.Kept("line-"+path, key, func(id string, key line) html {
		return region(id, "div", a("class", "dial"),
			el("label", a("for", "f-"+key.path), txt(words.Capital(key.Name))),
			el("span", a("class", "entry"), control(job.FieldAt(key.path), key, nil)),
			region("say-"+key.path, "div", a("class", "say"), key.say))
	})
}

// picker is a choice among many that looks like a chip: the control is there for
// the hand and the ear, and lies unseen over what is chosen, which may take two
// lines where a control's own would be cut.
func picker(s *page.State, path, name string, options []job.Option, first, chosen string) html {
	f := job.FieldAt(path)
	key := lineOf(s, path, f)
	key.First = first
	return el("div", a("class", "picker"),
		el("label", a("for", "f-"+path, "class", "unseen"), txt(words.Capital(name))),
		control(f, key, options),
		region("picked-"+path, "span", a("class", "chip", "aria-hidden", "true"), txt(chosen)),
		region("say-"+path, "div", a("class", "say"), key.say))
}

// fact is a figure with what it is.
type fact struct{ Value, Name string }

// answerBox is one hero figure in the unit of the tool in the hand, its twin in
// small beside it, a picture, and up to three facts.
type answerBox struct {
	Label   string // for those who don't see it
	Stops   bool   // there is no figure
	Hero    html
	Twin    html
	Picture html
	Facts   []fact
	More    html
}

// answerOf is the answer box: a region of its own, since it changes as something
// is typed. It holds no control.
func answerOf(id string, box answerBox) html {
	attrs := a("class", "answer", "aria-label", box.Label)
	if box.Stops {
		attrs = append(attrs, a("data-is", "stops")...)
	}
	var facts []html
	for _, f := range box.Facts {
		facts = append(facts, el("span", nil, el("b", nil, txt(f.Value)), txt(f.Name)))
	}
	kids := []html{el("div", a("class", "hero"), el("strong", nil, box.Hero), el("span", nil, box.Twin)), box.Picture}
	if len(facts) > 0 {
		kids = append(kids, el("div", a("class", "facts"), facts...))
	}
	return region(id, "section", attrs, append(kids, box.More)...)
}

// What a verdict says.
const (
	holds     = "holds"
	asks      = "asks"
	stops     = "stops"
	unchecked = "unchecked"
)

// verdict is one sentence under an answer that bears on it. It opens a sheet
// that says why, where there is one.
func verdict(is, strong, text, sheet string) html {
	kids := []html{el("span", nil, el("b", nil, txt(strong)), txt(" "+text))}
	if sheet == "" {
		return el("p", a("class", "verdict", "data-is", is), kids...)
	}
	return el("button", a("class", "verdict", "data-is", is, "type", "button", "id", page.OpenerID(sheet), "data-do", "sheet", "data-path", sheet),
		append(kids, el("u", nil, txt(words.Why)))...)
}

// setup is what is assumed or remembered, and the way to change it.
func setup(id, text, sheet string) html { return setupLine(id, text, sheet, words.Change) }

// look is what there is more of, and the way to see it.
func look(id, text, sheet string) html { return setupLine(id, text, sheet, words.Look) }

func setupLine(id, text, sheet, does string) html {
	return markup.Kept("setup-"+id, setupKey{text, sheet, does}, func(id string, of setupKey) html {
		return region(id, "p", a("class", "setup"), el("span", nil, txt(of.text)),
			el("button", a("type", "button", "id", page.OpenerID(of.sheet), "data-do", "sheet", "data-path", of.sheet, "aria-label", words.Capital(of.does)+": "+of.text), txt(of.does)))
	})
}

// setupKey is all that a setup line shows.
type setupKey struct{ text, sheet, does string }

// act is the button of an act bar.
func act(do, path, text, name string) html {
	return el("button", a("class", "main", "type", "button", "id", "act-"+do, "data-do", do, "data-path", path, "data-text", text), txt(name))
}

// second is another way to go on beside the main one.
func second(do, path, text, name string) html {
	return el("button", a("class", "main second", "type", "button", "id", "act-"+do+"-"+text, "data-do", do, "data-path", path, "data-text", text), txt(name))
}

// listRow is a line of a list: what is seen of it, its name with a small line
// below, its figure. Tapping it opens its sheet.
func listRow(sheet string, seen html, name, small, figure string) html {
	return el("button", a("class", "listrow", "type", "button", "id", page.OpenerID(sheet), "data-do", "sheet", "data-path", sheet),
		el("span", a("class", "seen"), seen), el("span", a("class", "name"), txt(name), el("small", nil, txt(small))), el("b", nil, txt(figure)))
}

// total is the heading figure of a list.
func total(id, name, figure string) html {
	return region(id, "p", a("class", "grand"), el("span", nil, txt(name)), el("span", nil, txt(figure)))
}

// tape is a caution or a hint where the hand is about to act.
func tape(id string, lines ...string) html {
	var kids []html
	for _, l := range lines {
		kids = append(kids, el("p", nil, txt(l)))
	}
	return region(id, "div", a("class", "caution"), kids...)
}
