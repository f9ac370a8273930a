package unit

import (
	"math"
	"strconv"
	"strings"
)

// Write gives a quantity as text that can't be misread: a leading zero, no
// trailing zeros, digits from ten thousand on in groups, a space before the
// unit. digits is the number of significant digits (1–15); the whole
// part is always shown in full.
// What is not a finite number is written as a dash.
// Source: ISMP list of error-prone dose designations (from memory).
func Write(si float64, s Scale, digits int) string {
	return WithUnit(Number(s.From(si), digits), s)
}

// Number writes a bare number by the same rules as Write.
func Number(n float64, digits int) string {
	if math.IsNaN(n) || math.IsInf(n, 0) {
		return "–"
	}
	decimals := 0
	if n != 0 {
		decimals = digits - 1 - int(math.Floor(math.Log10(math.Abs(n))))
	}
	return Group(Plain(strconv.FormatFloat(n, 'f', min(max(decimals, 0), 15), 64)))
}

// Roughly is Write for what nobody weighs out: the whole part is rounded to the digits too (1–15), 162 651 to 163 000.
func Roughly(si float64, s Scale, digits int) string {
	n := s.From(si)
	if n != 0 && !math.IsNaN(n) && !math.IsInf(n, 0) {
		if step := math.Pow(10, math.Floor(math.Log10(math.Abs(n)))-float64(digits-1)); step > 1 {
			n = math.Round(n/step) * step
		}
	}
	return WithUnit(Number(n, digits), s)
}

// Handy is the scale in which people say an amount: grams of less than a
// kilogram, fluid ounces of less than a quart; the scale itself where there is
// no such habit, and of nothing.
// Source: common practice.
func Handy(si float64, s Scale) Scale {
	for _, h := range handy {
		if n := math.Abs(h.large.From(si)); h.large == s && n > 0 && n < h.from {
			return h.small
		}
	}
	return s
}

var handy = [...]struct {
	large Scale
	from  float64 // so many of the large one on
	small Scale
}{
	{InKilogram, 1, InGram},
	{InPound, 1, InOunce},
	{InLitre, 1, InMillilitre},
	{InUSGallon, 0.25, InUSFluidOunce},
	{InUSQuart, 1, InUSFluidOunce},
	{InUSPint, 1, InUSFluidOunce},
	{InImperialGallon, 0.25, InImperialFluidOunce},
	{InImperialQuart, 1, InImperialFluidOunce},
	{InImperialPint, 1, InImperialFluidOunce},
}

// Plain cuts the trailing zeros of a decimal number, and the sign of a zero.
func Plain(text string) string {
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}

// Group puts a narrow no-break space between groups of three digits where the
// whole part has five or more.
func Group(text string) string {
	whole, decimals, hasPoint := strings.Cut(text, ".")
	sign := ""
	if after, negative := strings.CutPrefix(whole, "-"); negative {
		sign, whole = "−", after
	}
	if len(whole) >= 5 {
		grouped := ""
		for len(whole) > 3 {
			grouped = "\u202f" + whole[len(whole)-3:] + grouped
			whole = whole[:len(whole)-3]
		}
		whole += grouped
	}
	if hasPoint {
		return sign + whole + "." + decimals
	}
	return sign + whole
}

// WithUnit puts the unit behind a written number, with a no-break space.
func WithUnit(number string, s Scale) string {
	switch s.Symbol() {
	case "":
		return number
	case "°":
		return number + "°"
	}
	return number + "\u00a0" + s.Symbol()
}

// Typed writes a quantity as a person would type it in the scale, so that it
// reads back as the same value to 12 digits.
func Typed(si float64, s Scale) string {
	return Plain(strconv.FormatFloat(round12(s.From(si)), 'f', -1, 64))
}

func round12(n float64) float64 {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(n, 'g', 12, 64), 64)
	if err != nil {
		return n
	}
	return rounded
}
