package words

import (
	"strconv"

	"shedreckoner/calc/working"
)

// How a figure was worked out.
const (
	NothingWorkedOut = "Nothing to work out yet."
	LastStepOnly     = "The last step only"
	ComesFrom        = " comes from "
	LastOfList       = " and "
)

// StepsBefore offers the steps that lead to the last one.
func StepsBefore(n int) string {
	if n == 1 {
		return "All of it: one step before"
	}
	return "All of it: " + strconv.Itoa(n) + " steps before"
}

// GivenAs says of a value that went into a step, behind its symbol, what it is
// and where it comes from.
func GivenAs(f working.Source) string {
	text := f.Name + " " + f.Value
	if f.Symbol != "" {
		text = ": " + text
	}
	if f.Origin != "" {
		text += ", " + f.Origin
	}
	return text
}

// AndMore says how many things of a list aren't shown.
func AndMore(n int) string { return "and " + strconv.Itoa(n) + " more" }

// SourceOf names the document that a step follows, and how it is known.
func SourceOf(t working.Text) string {
	if t.Source == "" {
		return t.Mark
	}
	return t.Source + " – " + t.Mark
}
