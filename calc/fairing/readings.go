package fairing

import (
	"fmt"
	"strings"
	"unicode"

	"shedreckoner/calc/unit"
)

// CellCause says why a cell is not a reading.
type CellCause int

// The causes of a CellError.
const (
	Blank      CellCause = iota // nothing there: asked about, never zero
	Unreadable                  // Read holds the *unit.ReadError
	MixedUnit                   // another unit than the first reading's
	OutOfReach                  // further than a straight-edge ever stands off
)

// CellError says what is wrong with one cell. Row and column count from 0.
type CellError struct {
	Row, Column int
	Text        string
	Cause       CellCause
	Read        error  // by Unreadable
	First       string // by MixedUnit: the first reading
}

// Error names the cell and the cause.
func (e *CellError) Error() string {
	return fmt.Sprintf("fairing: row %d, column %d: %q (cause %d)", e.Row, e.Column, e.Text, e.Cause)
}

// Unwrap gives the reason a number could not be read.
func (e *CellError) Unwrap() error { return e.Read }

// CellErrors lists every cell that is not a reading.
type CellErrors []*CellError

// Error names the first and counts them.
func (e CellErrors) Error() string { return fmt.Sprintf("%v, of %d", e[0], len(e)) }

// Unwrap gives the cells one by one.
func (e CellErrors) Unwrap() []error {
	list := make([]error, len(e))
	for i, cell := range e {
		list[i] = cell
	}
	return list
}

// Read turns the texts of a grid into readings by the rules of unit.Read; a number
// alone is in the bare scale, a length. All cells must be in one unit.
// Errors: *SizeError, *RaggedError; CellErrors, every bad cell.
func Read(rows [][]string, bare unit.Scale) ([][]unit.Length, error) {
	if err := checkSize(rows); err != nil {
		return nil, err
	}
	var bad CellErrors
	readings := make([][]unit.Length, len(rows))
	first, firstUnit := "", 0.0
	for r, row := range rows {
		readings[r] = make([]unit.Length, len(row))
		for c, text := range row {
			z, size, err := readCell(text, bare)
			if err == nil && first == "" {
				first, firstUnit = text, size
			}
			if err == nil && size != firstUnit {
				err = &CellError{Cause: MixedUnit, First: first}
			}
			if err != nil {
				err.Row, err.Column, err.Text = r, c, text
				bad = append(bad, err)
			}
			readings[r][c] = z
		}
	}
	if bad != nil {
		return nil, bad
	}
	return readings, nil
}

// readCell gives a cell's reading and the size of the unit it is in.
func readCell(text string, bare unit.Scale) (unit.Length, float64, *CellError) {
	if !strings.ContainsFunc(text, func(r rune) bool { return unicode.IsNumber(r) || unicode.IsLetter(r) }) {
		return 0, 0, &CellError{Cause: Blank}
	}
	z, err := unit.Read(text, bare)
	if err != nil {
		return 0, 0, &CellError{Cause: Unreadable, Read: err}
	}
	if z > float64(mostReading) || z < -float64(mostReading) {
		return 0, 0, &CellError{Cause: OutOfReach}
	}
	size, err := unit.Read("1 "+unitWord(text), bare)
	if err != nil {
		return 0, 0, &CellError{Cause: Unreadable, Read: err}
	}
	return unit.Length(z), size, nil
}

// unitWord is the first unit in a cell's text, empty for a number alone.
func unitWord(text string) string {
	start := strings.IndexFunc(text, func(r rune) bool { return !unicode.IsNumber(r) && !strings.ContainsRune(".,-−/ \u00a0\u202f", r) })
	if start < 0 {
		return ""
	}
	word := text[start:]
	if end := strings.IndexFunc(word, unicode.IsNumber); end >= 0 {
		word = word[:end]
	}
	return word
}
