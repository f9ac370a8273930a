package view

import (
	"slices"
	"strings"
	"unicode"

	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// field is a form's line for the field at the path: label, control, unit, and
// below it a region for what is wrong with what was typed. The control's own
// markup never changes while it is typed in.
func field(s *page.State, path string) html { return fieldWith(s, path, fieldExtras{}) }

// fieldExtras is what a line may have besides.
type fieldExtras struct {
	Letter  string       // its name on the sketch
	Default string       // what holds while nothing is typed
	Hint    string       // a line below
	Options []job.Option // of a field whose answers depend on the job
	First   string       // what holds while nothing is chosen
	Holds   string       // the value that is proposed while none is typed
	Label   string       // instead of the field's own name
}

func fieldWith(s *page.State, path string, extra fieldExtras) html {
	f := job.FieldAt(path)
	label := f.Name
	if extra.Label != "" {
		label = extra.Label
	}
	id, say, units := "f-"+path, "say-"+path, s.Plan.Job.Units
	name := []html{txt(strings.ReplaceAll(capital(label), " °", "\u00a0°"))}
	if extra.Letter != "" {
		name = append(name, el("b", a("class", "letter"), txt(extra.Letter)))
	}
	parts := []html{
		el("label", a("for", id), name...),
		el("span", a("class", "entry"), control(s, path, f, extra), unitChip(s, path, f), stepper(units, path, label, f)),
	}
	if extra.Hint != "" {
		parts = append(parts, el("p", a("class", "hint"), txt(extra.Hint)))
	}
	parts = append(parts, region(say, "div", a("class", "say"), said(s, path, f)))
	return el("div", a("class", "field"), parts...)
}

func control(s *page.State, path string, f *job.Field, extra fieldExtras) html {
	attrs := a("id", "f-"+path, "aria-describedby", "say-"+path, "autocomplete", "off")
	state := markup.Control{Value: s.Doc().Get(path), Invalid: s.Plan.RefusedAt(path) != nil}
	if state.Value == "" {
		state.Value = extra.Holds
	}
	options := f.Options
	if extra.Options != nil {
		options = extra.Options
	}
	if options != nil {
		if state.Value == "" && f.Kind == job.Choice && !f.Optional {
			state.Value = options[0].Key
		}
		var list []html
		if f.Optional || f.Kind != job.Choice {
			first := "choose…"
			if extra.First != "" {
				first = extra.First
			}
			list = append(list, el("option", a("value", ""), txt(first)))
		}
		for _, o := range options {
			list = append(list, el("option", a("value", o.Key), txt(o.Name)))
		}
		return markup.ControlFor("select", path, state, attrs, list...)
	}
	if f.Kind == job.Pasted {
		return markup.ControlFor("textarea", path, state, append(attrs, a("class", "words", "rows", "4", "spellcheck", "false")...))
	}
	attrs = append(attrs, a("type", "text", "spellcheck", "false", "enterkeyhint", "next", "placeholder", placeholder(s, extra.Default))...)
	switch f.Kind {
	case job.Quantity, job.Money, job.Size:
		attrs = append(attrs, a("inputmode", inputMode(s, f))...)
	case job.Whole:
		attrs = append(attrs, a("inputmode", "numeric")...)
	default:
		attrs = append(attrs, a("class", "words")...)
	}
	return markup.ControlFor("input", path, state, attrs)
}

// placeholder writes what holds while nothing is typed: an attribute is no text.
func placeholder(s *page.State, text string) string {
	if job.HasComma(s.Doc()) {
		return unit.Commas(text)
	}
	return text
}

// inputMode is the number pad, but for feet and inches: their marks aren't on it.
func inputMode(s *page.State, f *job.Field) string {
	if f.Measure == unit.Sizes {
		if scale := s.Plan.Job.Units.Scale(f.Measure); scale == unit.InInch || scale == unit.InFoot {
			return "text"
		}
	}
	return "decimal"
}

// unitChip is the unit in which a bare number is read; nothing beside a number that has its own.
func unitChip(s *page.State, path string, f *job.Field) html {
	if f.Kind != job.Quantity && f.Kind != job.MassOrVolume {
		return nothing
	}
	symbol := s.Plan.Job.Units.Scale(f.Measure).Symbol()
	switch {
	case symbol == "":
		return nothing
	case strings.ContainsFunc(s.Doc().Get(path), isOfUnit):
		return region("unit-"+path, "span", a("class", "unit", "hidden", ""), txt(symbol))
	}
	return region("unit-"+path, "span", a("class", "unit"), txt(symbol))
}

// isOfUnit says if a sign is of a unit, not of a number.
func isOfUnit(r rune) bool { return unicode.IsLetter(r) || strings.ContainsRune(`°%'"′″`, r) }

// stepper is − and + beside a number that is mended by a little.
func stepper(units job.Units, path, label string, f *job.Field) html {
	if !page.HasSteps(path, f, units) {
		return nothing
	}
	button := func(way, sign, name string) html {
		return el("button", a("class", "quiet", "type", "button", "id", "do-step-"+path+way, "data-do", "step", "data-path", path,
			"data-text", way, "aria-label", name+": "+label), txt(sign))
	}
	return el("span", a("class", "stepper"), button("down", "−", "Less"), button("up", "+", "More"))
}

// said is what stands below a control: why its text is refused, or a question
// about it.
func said(s *page.State, path string, f *job.Field) html {
	units := s.Plan.Job.Units
	if err := s.Plan.RefusedAt(path); err != nil {
		return el("p", a("class", "bad"), txt(words.Sentence(err, f, units)))
	}
	if ask := s.AskAt(path); ask != nil {
		return question(ask, units)
	}
	return nothing
}

// saidOfItem is what is wrong with an item as a whole, and not with one field of it.
func saidOfItem(s *page.State, item string) html {
	return region("say-"+item, "div", a("class", "say"), said(s, item, nil))
}

// saidOfHidden is what is wrong with the fields of an item that have no control
// on it, as a file may bring them.
func saidOfHidden(s *page.State, item string, shown []string, here func(key string) bool) html {
	var parts []html
	for _, r := range s.Plan.Refused() {
		if of, key := job.Split(r.Path); of == item && here(key) && !slices.Contains(shown, key) {
			parts = append(parts, region("say-"+r.Path, "div", a("class", "say"), said(s, r.Path, job.FieldAt(r.Path))))
		}
	}
	return join(parts...)
}

func capital(text string) string {
	for i, r := range text {
		if 'a' <= r && r <= 'z' {
			return string(r-'a'+'A') + text[i+1:]
		}
		break
	}
	return text
}
