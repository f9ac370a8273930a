package unit

import (
	"strings"

	"github.com/shopspring/decimal"
)

// Step adds a step to the number in a text, in the text's own unit, and leaves the
// unit as it was typed: "24.5 C" and 1 give "25.5 C". by gives the step in a unit;
// a number without one is in the bare scale. A decimal comma stays one. ok is false
// for what isn't a single decimal number (2 ft 6 in, 3/4 in), and where by has no
// step for the unit.
func Step(text string, bare Scale, by func(Scale) (decimal.Decimal, bool)) (stepped string, ok bool) {
	whole := tidy(text)
	n, rest, err := scanNumber(whole)
	if err != nil || n.denominator != "" {
		return text, false
	}
	scale, after, err := scanUnit(strings.TrimLeft(rest, " "), bare)
	if err != nil || after != "" {
		return text, false
	}
	if scale == NoScale {
		scale = bare
	}
	step, known := by(scale)
	was, err := decimal.NewFromString(n.digits)
	if !known || err != nil {
		return text, false
	}
	next := was.Add(step).String()
	if raw := strings.TrimSuffix(whole, rest); strings.LastIndexByte(raw, ',') > strings.LastIndexByte(raw, '.') {
		next = withComma(next)
	}
	return next + rest, true
}

// withComma writes a decimal comma. Three digits after it could be taken for
// thousands: one more zero shows that they are not.
func withComma(number string) string {
	whole, decimals, found := strings.Cut(number, ".")
	switch {
	case !found:
		return number
	case len(decimals) == 3:
		decimals += "0"
	}
	return whole + "," + decimals
}
