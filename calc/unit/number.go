package unit

import (
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
)

// maxDigits bounds a typed number: enough for every real figure, and short
// enough that no sum with it can hang (decimal takes exponents up to 10000, and
// the next addition writes all the zeros out, so they aren't read at all).
const maxDigits = 15

// number is a typed number: whole and fraction digits, or a mixed fraction.
type number struct {
	digits      string // canonical: "-1234.5"
	numerator   string // "1" of 6 1/2
	denominator string // "2" of 6 1/2
}

func (n number) float() float64 {
	v, _ := strconv.ParseFloat(n.digits, 64) // canonical digits always parse
	if n.denominator == "" {
		return v
	}
	num, _ := strconv.ParseFloat(n.numerator, 64)
	den, _ := strconv.ParseFloat(n.denominator, 64)
	if strings.HasPrefix(n.digits, "-") {
		return v - num/den
	}
	return v + num/den
}

// scanNumber reads the number that text starts with and gives what follows it.
func scanNumber(text string) (number, string, error) {
	sign, rest := "", text
	for _, minus := range []string{"-", "−"} {
		if after, found := strings.CutPrefix(rest, minus); found {
			sign, rest = "-", strings.TrimLeft(after, " ")
			break
		}
	}
	raw, rest := scanDigits(rest)
	if raw == "" {
		return number{}, text, &ReadError{Text: text, Cause: NotANumber}
	}
	if den, after, found := scanDenominator(rest); found {
		n, err := fraction(raw, den)
		if sign != "" {
			n.digits = sign + n.digits
		}
		return n, after, err
	}
	digits, err := canonical(raw)
	return number{digits: sign + digits}, rest, err
}

// scanDigits takes digits, marks between digits, and groups after a space
// ("12 500", "6 1/2"); none behind a mark ("1.000 010" is not read).
func scanDigits(text string) (digits, rest string) {
	end := 0
	for end < len(text) {
		c := text[end]
		switch {
		case isDigit(c):
			end++
		case (c == '.' || c == ',') && end+1 < len(text) && (isDigit(text[end+1])):
			end++
		case c == ' ' && end > 0 && !strings.ContainsAny(text[:end], ".,") && groupFollows(text[end+1:]):
			end++
		default:
			return text[:end], text[end:]
		}
	}
	return text, ""
}

// groupFollows says if text starts with a group of three digits, or with the
// numerator of a fraction: only these may follow a space within a number.
func groupFollows(text string) bool {
	n := 0
	for n < len(text) && isDigit(text[n]) {
		n++
	}
	if n == 0 {
		return false
	}
	_, _, isFraction := scanDenominator(text[n:])
	endsHere := n == len(text) || (text[n] != '.' && text[n] != ',')
	return isFraction || n == 3 && (endsHere || n+1 < len(text) && isDigit(text[n+1]))
}

func scanDenominator(text string) (digits, rest string, found bool) {
	after, found := strings.CutPrefix(strings.TrimLeft(text, " "), "/")
	if !found {
		return "", text, false
	}
	after = strings.TrimLeft(after, " ")
	n := 0
	for n < len(after) && isDigit(after[n]) {
		n++
	}
	return after[:n], after[n:], n > 0
}

// fraction makes a number of "6 1" and "2", or of "1" and "2".
func fraction(raw, den string) (number, error) {
	whole, num := "0", raw
	if at := strings.LastIndexByte(raw, ' '); at >= 0 {
		whole, num = strings.ReplaceAll(raw[:at], " ", ""), raw[at+1:]
	}
	if strings.ContainsAny(raw, ".,") || len(raw)+len(den) > maxDigits || strings.Trim(den, "0") == "" {
		return number{}, &ReadError{Text: raw + "/" + den, Cause: NotANumber}
	}
	return number{digits: whole, numerator: num, denominator: den}, nil
}

// canonical turns digits with marks into Go's spelling, or refuses what can be
// read two ways.
func canonical(raw string) (string, error) {
	raw = strings.ReplaceAll(raw, " ", "")
	if len(raw) > maxDigits+2 {
		return "", &ReadError{Text: raw, Cause: TooLong}
	}
	dots, commas := strings.Count(raw, "."), strings.Count(raw, ",")
	switch {
	case commas == 0 && dots <= 1:
		return raw, nil
	case commas == 1 && dots == 0:
		return loneComma(raw)
	case dots <= 1 && grouped(raw, ",", "."):
		return strings.ReplaceAll(raw, ",", ""), nil
	case commas <= 1 && grouped(raw, ".", ","):
		return strings.ReplaceAll(strings.ReplaceAll(raw, ".", ""), ",", "."), nil
	}
	return "", &ReadError{Text: raw, Cause: NotANumber}
}

// loneComma reads 1,5 as a decimal comma and refuses 1,500: it may be one and
// a half, or fifteen hundred.
func loneComma(raw string) (string, error) {
	whole, decimals, _ := strings.Cut(raw, ",")
	if len(decimals) == 3 && len(whole) <= 3 && !strings.HasPrefix(whole, "0") {
		return "", &ReadError{Text: raw, Cause: TwoReadings,
			Readings: []string{Plain(whole + "." + decimals), whole + decimals}}
	}
	return whole + "." + decimals, nil
}

// grouped says if the group mark stands before every three digits of the
// whole part, and nowhere after the decimal mark.
func grouped(raw, group, point string) bool {
	whole, decimals, _ := strings.Cut(raw, point)
	parts := strings.Split(whole, group)
	if len(parts[0]) == 0 || len(parts[0]) > 3 || strings.Contains(decimals, group) {
		return false
	}
	for _, part := range parts[1:] {
		if len(part) != 3 {
			return false
		}
	}
	return true
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// ReadDecimal reads a bare decimal number exactly, for what is paid, weighed
// out and counted in packs. Fractions (3/4), units and exponents are refused.
// Errors: *ReadError.
func ReadDecimal(text string) (decimal.Decimal, error) {
	trimmed := tidy(text)
	if trimmed == "" {
		return decimal.Zero, &ReadError{Text: text, Cause: Empty}
	}
	n, rest, err := scanNumber(trimmed)
	if err != nil {
		return decimal.Zero, err
	}
	if rest != "" || n.denominator != "" {
		return decimal.Zero, &ReadError{Text: text, Cause: NotANumber}
	}
	return decimal.NewFromString(n.digits)
}
