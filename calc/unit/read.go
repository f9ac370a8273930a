package unit

import (
	"fmt"
	"sort"
	"strings"
)

// Cause says why a text could not be read.
type Cause int

// The causes of a ReadError.
const (
	Empty         Cause = iota // nothing was typed
	NotANumber                 // no number where one should be
	TooLong                    // more digits than any real figure has
	TwoReadings                // "1,500": Readings names both
	UnknownUnit                // a unit that isn't known: Readings names what is
	OtherUnit                  // a unit of another dimension: Readings names what fits
	WhichUnit                  // "gal", "fl oz": Readings names the candidates
	MixedCompound              // parts that don't go together: "2 ft 3 kg", "6 in 2 ft"
)

// ReadError says what could not be read and what would have been.
type ReadError struct {
	Text     string   // the part that could not be read
	Cause    Cause    // why
	Readings []string // what would have been read, by cause
}

// Error gives the cause for a programmer; the page has its own sentences.
func (e *ReadError) Error() string {
	return fmt.Sprintf("unit: can't read %q (cause %d; %s)", e.Text, e.Cause, strings.Join(e.Readings, " or "))
}

// Read reads what people write for a quantity and gives it in SI base units:
// "450", "450 mm", "1.2 m", "2 ft 6 in", "2' 6 1/2\"", "3/4 in", "2½ in",
// "1,5 m", "95 F". A number without a unit is in the bare scale; a unit must be of the
// bare scale's dimension. No range is checked here.
// Errors: *ReadError.
func Read(text string, bare Scale) (float64, error) {
	rest := tidy(text)
	if rest == "" {
		return 0, &ReadError{Text: text, Cause: Empty}
	}
	var parts []part
	for rest != "" {
		n, after, err := scanNumber(rest)
		if err != nil {
			return 0, err
		}
		scale, after, err := scanUnit(strings.TrimLeft(after, " "), bare)
		if err != nil {
			return 0, err
		}
		parts = append(parts, part{n, scale})
		rest = strings.TrimLeft(after, " ")
	}
	return join(text, parts, bare)
}

// ReadRatio reads a pure number, or the ratio of two as a tin prints it:
// "100:33", "2.2 : 1", "100/33".
// Errors: *ReadError.
func ReadRatio(text string) (float64, error) {
	first, second, isRatio := strings.Cut(text, ":")
	a, err := Read(first, InPure)
	if err != nil || !isRatio {
		return a, err
	}
	b, err := Read(second, InPure)
	if err != nil {
		return 0, err
	}
	if b == 0 {
		return 0, &ReadError{Text: text, Cause: NotANumber}
	}
	return a / b, nil
}

// IsBare says if text is a number without a unit, so that its meaning changes with
// the unit beside its field.
func IsBare(text string) bool {
	_, rest, err := scanNumber(tidy(text))
	return err == nil && rest == ""
}

type part struct {
	number number
	scale  Scale // NoScale for a bare number
}

// join adds the parts of a compound such as 2 ft 6 in, largest unit first.
func join(text string, parts []part, bare Scale) (float64, error) {
	if len(parts) == 1 {
		scale := parts[0].scale
		if scale == NoScale {
			scale = bare
		}
		return scale.SI(parts[0].number.float()), nil
	}
	sum, sign := 0.0, 1.0
	for i, p := range parts {
		descends := i == 0 || p.scale != NoScale && parts[i-1].scale != NoScale && p.scale.row().factor < parts[i-1].scale.row().factor
		if p.scale == NoScale || p.scale.row().offset != 0 || !descends || i > 0 && strings.HasPrefix(p.number.digits, "-") {
			return 0, &ReadError{Text: text, Cause: MixedCompound}
		}
		if i == 0 && strings.HasPrefix(p.number.digits, "-") {
			sign = -1
			sum = p.scale.SI(-p.number.float())
			continue
		}
		sum += p.scale.SI(p.number.float())
	}
	return sign * sum, nil
}

// ambiguous units name several sizes: they are asked about, never guessed.
var ambiguous = []struct {
	words []string
	means []Scale
}{
	{[]string{"gal", "gallon", "gallons"}, []Scale{InUSGallon, InImperialGallon}},
	{[]string{"pt", "pint", "pints"}, []Scale{InUSPint, InImperialPint}},
	{[]string{"fl oz", "floz", "fluid ounce", "fluid ounces"}, []Scale{InUSFluidOunce, InImperialFluidOunce}},
	{[]string{"qt", "quart", "quarts"}, []Scale{InUSQuart, InImperialQuart}},
}

// scanUnit reads the unit that text starts with: the longest spelling of a
// scale of the bare scale's dimension, NoScale where a number or nothing follows.
func scanUnit(text string, bare Scale) (Scale, string, error) {
	if text == "" || isDigit(text[0]) {
		return NoScale, text, nil
	}
	if scale, rest := longest(text, func(s Scale) bool { return s.Dimension() == bare.Dimension() }); scale != NoScale {
		return scale, rest, nil
	}
	for _, a := range ambiguous {
		for _, word := range a.words {
			if _, ok := cutWord(text, word); ok && a.means[0].Dimension() == bare.Dimension() {
				return NoScale, text, &ReadError{Text: text, Cause: WhichUnit, Readings: symbols(a.means)}
			}
		}
	}
	var fits []Scale
	for _, s := range Scales {
		if s.Dimension() == bare.Dimension() {
			fits = append(fits, s)
		}
	}
	cause := UnknownUnit
	if other, _ := longest(text, func(Scale) bool { return true }); other != NoScale {
		cause = OtherUnit
	}
	return NoScale, text, &ReadError{Text: text, Cause: cause, Readings: symbols(fits)}
}

func longest(text string, fits func(Scale) bool) (Scale, string) {
	var best Scale
	rest := text
	for _, s := range Scales {
		if !fits(s) {
			continue
		}
		if after, ok := cutWord(text, s.Symbol()); ok && len(after) < len(rest) {
			best, rest = s, after
		}
		for _, word := range s.Also() {
			if after, ok := cutWord(text, word); ok && len(after) < len(rest) {
				best, rest = s, after
			}
		}
	}
	return best, rest
}

// cutWord cuts a unit off the front of text, in any case. A unit of letters
// ends where its letters end: "min" is not "m" and "in".
func cutWord(text, word string) (rest string, found bool) {
	if len(text) < len(word) || !strings.EqualFold(text[:len(word)], word) {
		return text, false
	}
	rest = text[len(word):]
	if rest != "" && isLetter(word[len(word)-1]) && !isDigit(rest[0]) && rest[0] != ' ' {
		return text, false
	}
	return rest, true
}

func isLetter(c byte) bool { return 'a' <= c|0x20 && c|0x20 <= 'z' }

func symbols(scales []Scale) []string {
	var list []string
	for _, s := range scales {
		if s.Symbol() != "" {
			list = append(list, s.Symbol())
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return len(list[i]) < len(list[j]) })
	return list
}

// tidy turns every kind of space into one space, trims both ends, and spells
// out fractions that are a single character: "2½" becomes "2 1/2".
func tidy(text string) string {
	for _, f := range fractions {
		text = strings.ReplaceAll(text, f.character, f.spelt)
	}
	return strings.Join(strings.Fields(text), " ")
}

// fractions are the single characters that keyboards offer for a fraction.
var fractions = []struct{ character, spelt string }{
	{"½", " 1/2"}, {"¼", " 1/4"}, {"¾", " 3/4"}, {"⅛", " 1/8"}, {"⅜", " 3/8"}, {"⅝", " 5/8"}, {"⅞", " 7/8"},
	{"⅓", " 1/3"}, {"⅔", " 2/3"}, {"⅕", " 1/5"}, {"⅖", " 2/5"}, {"⅗", " 3/5"}, {"⅘", " 4/5"}, {"⅙", " 1/6"}, {"⅚", " 5/6"},
	{"⅒", " 1/10"}, {"⁄", "/"},
}
