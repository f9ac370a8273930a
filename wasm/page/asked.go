package page

import (
	"slices"

	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/words"
)

// What a builder answers where a figure is unlikely.

// confirm notes that a figure that was asked about is right as it stands.
func confirm(s *State, m Message) []Effect {
	if s.AskAt(m.Path) == nil {
		return nil
	}
	return edit(s, s.Doc().Set(job.Real(m.Path), m.Text), "")
}

// meantIn reads the bare sizes of an item in the unit that they were meant in, and
// from then on every bare size.
func meantIn(s *State, m Message) []Effect {
	scale := unit.Sizes.Scale(m.Text)
	if scale == unit.NoScale || !HasBareSizes(s, m.Path) {
		return nil
	}
	doc := job.SetUnit(job.InUnit(s.Doc(), m.Path, unit.Sizes, scale), unit.Sizes, scale)
	effects := edit(s, doc, "", Effect{Kind: Focus, Key: SheetHeading})
	s.Notice = words.SizesAreIn(scale.Symbol())
	return effects
}

// HasBareSizes reports whether an item holds a size without a unit.
func HasBareSizes(s *State, item string) bool {
	return slices.ContainsFunc(s.Doc().Under(item), func(line job.Line) bool {
		f := job.FieldAt(line.Path)
		return f != nil && f.Kind == job.Quantity && f.Measure == unit.Sizes && unit.IsBare(line.Text)
	})
}
