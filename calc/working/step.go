package working

import (
	"strings"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// Figure is a value with the step that made it.
type Figure[Q unit.Quantity] struct {
	_     incomparable
	Value Q
	Step  *Step
}

// incomparable keeps the compiler from writing a comparison for every kind of
// figure and for all that holds figures: nothing here is compared as a whole,
// and together they are a tenth of the page's functions.
type incomparable [0]func()

// Step is one computation, or a given value at its beginning.
type Step struct {
	Rule *Rule   // nil for a given value
	From []*Step // what went in, in the order of the rule's arguments
	Out  float64 // SI base units

	// For a given value: what it is, and where it comes from.
	Name   string // "dry film"
	Scale  unit.Scale
	Origin string // "typed", the name of a card
	Mark   source.Mark
}

// Given makes a figure of a value that isn't computed.
func Given[Q unit.Quantity](value Q, name string, scale unit.Scale, origin string, mark source.Mark) Figure[Q] {
	return Figure[Q]{Value: value, Step: &Step{Out: float64(value), Name: name, Scale: scale, Origin: origin, Mark: mark}}
}

// By makes a figure of a value that a prose method gave from other steps.
func By[Q unit.Quantity](method *Rule, value Q, from ...*Step) Figure[Q] {
	return Figure[Q]{Value: value, Step: &Step{Rule: method, From: from, Out: float64(value)}}
}

// SumRule is the sum of figures of one kind, none of them below zero.
func SumRule(meaning string, scale unit.Scale) *Rule {
	return &Rule{Formula: "sum of the parts", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: Arg{Symbol: "Σ", Meaning: meaning, Scale: scale, Min: 0, Max: 1e9}, IsProse: true}
}

// Sum adds figures and keeps their working.
func Sum[Q unit.Quantity](rule *Rule, parts ...Figure[Q]) Figure[Q] {
	var total Q
	from := make([]*Step, 0, len(parts))
	for _, p := range parts {
		total += p.Value
		from = append(from, p.Step)
	}
	return By(rule, total, from...)
}

// Text is a step in words, made when a working is opened.
type Text struct {
	Name    string   // what is computed: "wet film"
	Formula string   // "WFT = DFT × (1 + t) ÷ VS"; prose for a method
	IsProse bool     // Formula is a method in words
	Numbers string   // "400 × (1 + 0) ÷ 0.8"; none of a method
	Result  string   // "500 µm"
	From    []Source // what went in, in the order of the rule
	Source  string
	Mark    string
}

// Source is one of the values that went into a step.
type Source struct {
	Symbol     string // in the formula; none of a method
	Name       string // "dry film"
	Value      string // "400 µm"
	Origin     string // of a given value, with its mark: "gel coat (common practice)"; none of what was typed or computed
	IsComputed bool   // it is a step of its own
}

// Texts gives the steps behind the figure, the first computed first, each once.
func (s *Step) Texts() []Text {
	var list []Text
	seen := map[*Step]bool{}
	var walk func(*Step)
	walk = func(s *Step) {
		if s == nil || s.Rule == nil || seen[s] {
			return
		}
		seen[s] = true
		for _, f := range s.From {
			walk(f)
		}
		list = append(list, s.text())
	}
	walk(s)
	if s != nil && s.Rule == nil {
		return []Text{{Name: s.Name, Result: s.value(), Source: s.Origin, Mark: s.Mark.String()}}
	}
	return list
}

func (s *Step) text() Text {
	t := Text{Name: s.Rule.Result.Meaning, Formula: s.Rule.Formula, IsProse: s.Rule.IsProse, Result: s.value(),
		Source: s.Rule.Source.String(), Mark: s.Rule.Mark.String()}
	if !s.Rule.IsProse {
		t.Numbers = s.substituted()
	}
	for i, f := range s.From {
		if f == nil {
			continue
		}
		in := f.describe()
		if !s.Rule.IsProse {
			in.Symbol = s.Rule.Args[i].Symbol
		}
		t.From = append(t.From, in)
	}
	return t
}

func (s *Step) describe() Source {
	if s.Rule != nil {
		return Source{Name: s.Rule.Result.Meaning, Value: s.value(), IsComputed: true}
	}
	in := Source{Name: s.Name, Value: s.value()}
	if s.Mark != source.Typed {
		in.Origin = s.Origin
	}
	if s.Mark != source.Typed && s.Mark != source.Exact {
		in.Origin = strings.TrimSpace(in.Origin + " (" + s.Mark.String() + ")")
	}
	return in
}

// shownDigits is how many digits a working shows: enough to check by hand.
const shownDigits = 5

func (s *Step) value() string {
	scale := s.Scale
	if s.Rule != nil {
		scale = s.Rule.Result.Scale
	}
	return unit.Write(s.Out, scale, shownDigits)
}

// substituted puts the numbers in place of the symbols on the right side.
func (s *Step) substituted() string {
	_, right, _ := strings.Cut(s.Rule.Formula, "=")
	var b strings.Builder
	for _, tok := range Tokens(right) {
		text := tok.Text
		if tok.IsName {
			for i, a := range s.Rule.Args {
				if a.Symbol == tok.Text && s.From[i] != nil {
					text = unit.Number(a.Scale.From(s.From[i].Out), shownDigits)
					if strings.HasPrefix(text, "−") {
						text = "(" + text + ")"
					}
				}
			}
		}
		b.WriteString(text)
	}
	return strings.TrimSpace(b.String())
}
