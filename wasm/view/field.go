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

// fieldExtras is what else a line may have.
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
	key := lineOf(s, path, f)
	key.Letter, key.Default, key.Hint, key.First, key.Holds, key.Name = extra.Letter, extra.Default, extra.Hint, extra.First, extra.Holds, extra.Label
	if key.Name == "" {
		key.Name = f.Name
	}
	if extra.Options != nil { // they depend on the job
		return fieldLine("line-"+path, key, extra.Options)
	}
	return markup.Kept("line-"+path, key, func(id string, key line) html { return fieldLine(id, key, nil) })
}

// line is all that the line of a field shows: it is made anew only where that
// differs.
type line struct {
	path, Name, Letter, Small, Default, Hint, First, Holds string

	text    string // as typed
	refused bool
	units   lineUnits
	say     html // below it: nothing, or new each time
}

// lineUnits is what a line shows of the job's units.
type lineUnits struct {
	scale unit.Scale
	comma bool
}

func lineOf(s *page.State, path string, f *job.Field) line {
	units := s.Plan.Job.Units
	key := line{path: path, text: s.Doc().Get(path), refused: s.Plan.RefusedAt(path) != nil, units: lineUnits{comma: units.Comma}, say: said(s, path, f)}
	if f.Measure != unit.NoMeasure {
		key.units.scale = units.Scale(f.Measure)
	}
	return key
}

func fieldLine(id string, key line, options []job.Option) html {
	f, path := job.FieldAt(key.path), key.path
	name := []html{txt(strings.ReplaceAll(words.Capital(key.Name), " °", "\u00a0°"))}
	if key.Letter != "" {
		name = append(name, el("b", a("class", "letter"), txt(key.Letter)))
	}
	parts := []html{
		el("label", a("for", "f-"+path), name...),
		el("span", a("class", "entry"), control(f, key, options), unitChip(f, key), stepper(key, f)),
	}
	if key.Hint != "" {
		parts = append(parts, el("p", a("class", "hint"), txt(key.Hint)))
	}
	parts = append(parts, region("say-"+path, "div", a("class", "say"), key.say))
	return region(id, "div", a("class", "field"), parts...)
}

func control(f *job.Field, key line, options []job.Option) html {
	attrs := a("id", "f-"+key.path, "aria-describedby", "say-"+key.path, "autocomplete", "off")
	state := markup.Control{Value: key.text, Invalid: key.refused}
	if state.Value == "" {
		state.Value = key.Holds
	}
	if options == nil {
		options = f.Options
	}
	if options != nil {
		if state.Value == "" && f.Kind == job.Choice && !f.Optional {
			state.Value = options[0].Key
		}
		var list []html
		if f.Optional || f.Kind != job.Choice {
			first := "choose…"
			if key.First != "" {
				first = key.First
			}
			list = append(list, el("option", a("value", ""), txt(first)))
		}
		for _, o := range options {
			list = append(list, el("option", a("value", o.Key), txt(o.Name)))
		}
		return markup.ControlFor("select", key.path, state, attrs, list...)
	}
	if f.Kind == job.Pasted {
		return markup.ControlFor("textarea", key.path, state, append(attrs, a("class", "words", "rows", "4", "spellcheck", "false")...))
	}
	attrs = append(attrs, a("type", "text", "spellcheck", "false", "enterkeyhint", "next", "placeholder", placeholder(key))...)
	switch f.Kind {
	case job.Quantity, job.Money, job.Size:
		attrs = append(attrs, a("inputmode", inputMode(f, key.units.scale))...)
	case job.Whole:
		attrs = append(attrs, a("inputmode", "numeric")...)
	default:
		attrs = append(attrs, a("class", "words")...)
	}
	return markup.ControlFor("input", key.path, state, attrs)
}

// placeholder writes what holds while nothing is typed: an attribute is no text.
func placeholder(key line) string {
	if key.units.comma {
		return unit.Commas(key.Default)
	}
	return key.Default
}

// inputMode is the number pad, but for feet and inches: their marks aren't on it.
func inputMode(f *job.Field, scale unit.Scale) string {
	if f.Measure == unit.Sizes && (scale == unit.InInch || scale == unit.InFoot) {
		return "text"
	}
	return "decimal"
}

// unitChip is the unit in which a bare number is read; nothing beside a number that has its own.
func unitChip(f *job.Field, key line) html {
	if f.Kind != job.Quantity && f.Kind != job.MassOrVolume {
		return nothing
	}
	symbol := key.units.scale.Symbol()
	switch {
	case symbol == "":
		return nothing
	case strings.ContainsFunc(key.text, isOfUnit):
		return region("unit-"+key.path, "span", a("class", "unit", "hidden", ""), txt(symbol))
	}
	return region("unit-"+key.path, "span", a("class", "unit"), txt(symbol))
}

// isOfUnit reports whether a sign is of a unit, not of a number.
func isOfUnit(r rune) bool { return unicode.IsLetter(r) || strings.ContainsRune(`°%'"′″`, r) }

// stepper is − and + beside a number that is corrected by a little.
func stepper(key line, f *job.Field) html {
	if !page.HasSteps(key.path, f, key.units.scale) {
		return nothing
	}
	return el("span", a("class", "stepper"),
		nudge("quiet", key, "down", "−", words.Less+": "+key.Name), nudge("quiet", key, "up", "+", words.More+": "+key.Name))
}

func nudge(class string, key line, way, sign, name string) html {
	return el("button", a("class", class, "type", "button", "id", "do-step-"+key.path+way, "data-do", "step", "data-path", key.path,
		"data-text", way, "aria-label", name), txt(sign))
}

// said is what stands below a control: why its text is refused, or a question
// about it.
func said(s *page.State, path string, f *job.Field) html {
	units := s.Plan.Job.Units
	if err := s.Plan.RefusedAt(path); err != nil {
		return el("p", a("class", "bad"), txt(words.Sentence(err, f, units)))
	}
	if ask := s.AskAt(path); ask != nil {
		return question(s, ask)
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
