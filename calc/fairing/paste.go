package fairing

import (
	"strings"
	"unicode"

	"shedreckoner/calc/unit"
)

// MaxPaste bounds a pasted text: 100 × 100 readings with units fit easily.
const MaxPaste = 256 << 10 // bytes

// SplitCause says why a pasted text can't be cut into cells.
type SplitCause int

// The causes of a SplitError.
const (
	NothingPasted   SplitCause = iota
	PasteTooLong               // over MaxPaste
	CommaTwoWays               // "1,5" in every row: two readings, or one with a decimal comma
	FractionTwoWays            // "6 1/2" between spaces: two readings, or six and a half
)

// SplitError says where a pasted text can be cut two ways. Row counts from 0.
type SplitError struct {
	Cause SplitCause
	Row   int
	Text  string
}

// Error names the place.
func (e *SplitError) Error() string {
	return "fairing: can't cut pasted readings at " + e.Text
}

// Split cuts a pasted text into rows of cells, each as it was typed. A row is a
// line; its cells are separated by tabs, else by semicolons, else by commas, else
// by spaces, the same way in all lines. Between spaces a comma is a decimal comma.
// Empty lines are ignored, empty cells are kept.
// Errors: *SplitError.
func Split(text string) ([][]string, error) {
	if len(text) > MaxPaste {
		return nil, &SplitError{Cause: PasteTooLong}
	}
	lines := lines(text)
	if len(lines) == 0 {
		return nil, &SplitError{Cause: NothingPasted}
	}
	switch all := strings.Join(lines, "\n"); {
	case strings.Contains(all, "\t"):
		return cut(lines, "\t"), nil
	case strings.Contains(all, ";"):
		return cut(lines, ";"), nil
	case isCommaSeparated(all):
		return cutCommas(lines)
	}
	return cutSpaces(lines)
}

// lines gives the lines that hold anything: tabs and semicolons count, since they
// may separate blanks.
func lines(text string) []string {
	var list []string
	for line := range strings.SplitSeq(strings.ReplaceAll(text, "\r", "\n"), "\n") {
		if line = strings.Trim(line, " \u00a0"); line != "" {
			list = append(list, line)
		}
	}
	return list
}

func cut(lines []string, mark string) [][]string {
	rows := make([][]string, len(lines))
	for i, line := range lines {
		for cell := range strings.SplitSeq(line, mark) {
			rows[i] = append(rows[i], strings.TrimSpace(cell))
		}
	}
	return rows
}

// isCommaSeparated says if commas separate the cells: a space, another comma or the
// end of the line follows one, or there are commas and no spaces.
func isCommaSeparated(all string) bool {
	if !strings.Contains(all, ",") {
		return false
	}
	for _, sign := range []string{", ", ",,", ",\n"} {
		if strings.Contains(all+"\n", sign) {
			return true
		}
	}
	return !strings.ContainsAny(all, " \u00a0")
}

// cutCommas refuses lines that may each be one number with a decimal comma.
func cutCommas(lines []string) ([][]string, error) {
	rows := cut(lines, ",")
	for i, row := range rows {
		isOneNumber := len(row) == 2 && isDigits(row[0]) && isDigits(row[1]) && !strings.Contains(lines[i], " ")
		if !isOneNumber {
			return rows, nil
		}
	}
	return nil, &SplitError{CommaTwoWays, 0, lines[0]}
}

func isDigits(s string) bool {
	s = strings.TrimLeft(s, "-−")
	return s != "" && strings.Trim(s, "0123456789") == ""
}

// cutSpaces joins a unit to the number before it, and refuses a fraction after a
// whole number.
func cutSpaces(lines []string) ([][]string, error) {
	rows := make([][]string, len(lines))
	for i, line := range lines {
		for _, word := range strings.Fields(line) {
			last := len(rows[i]) - 1
			switch {
			case last >= 0 && isUnit(word):
				rows[i][last] += " " + word
			case last >= 0 && isFraction(word) && isDigits(rows[i][last]):
				return nil, &SplitError{FractionTwoWays, i, rows[i][last] + " " + word}
			default:
				rows[i] = append(rows[i], word)
			}
		}
	}
	return rows, nil
}

// isFraction says if a word is a fraction, "1/2" or "½".
func isFraction(word string) bool {
	return strings.ContainsFunc(word, func(r rune) bool { return r == '/' || unicode.IsNumber(r) && !unicode.IsDigit(r) })
}

// isUnit says if a word is a unit of length on its own.
func isUnit(word string) bool {
	if strings.ContainsFunc(word, unicode.IsNumber) {
		return false
	}
	_, err := unit.Read("1 "+word, unit.InMillimetre)
	return err == nil
}
