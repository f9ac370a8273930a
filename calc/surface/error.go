package surface

import (
	"fmt"
	"strconv"
)

// Reason says what is wrong with a measure.
type Reason int

// The reasons.
const (
	Missing      Reason = iota + 1 // not given, or not a number
	NotPositive                    // nought or less, where something must be
	TooSmall                       // under Limit
	TooLarge                       // over Limit, or not under it where Limit is another measure
	NotWhole                       // a count with a fraction
	NotAnOption                    // a choice or face that the shape doesn't have
	TooFew                         // fewer rows than Limit
	TooMany                        // more rows than Limit
	CantClose                      // the longest side is as long as the others, Limit, together
	Crosses                        // the side that starts at the row meets another side
	Repeated                       // the corner lies on the one before it, or the last on the first
	NotAscending                   // a station that isn't beyond the one before it, at Limit
	GivenTwice                     // said in another way already
)

var reasonNames = [...]string{"", "missing", "not positive", "too small", "too large", "not whole", "not an option",
	"too few", "too many", "can't close", "crosses another side", "repeated", "not ascending", "given twice"}

// String names the reason.
func (r Reason) String() string {
	if r < 0 || int(r) >= len(reasonNames) {
		return "unknown"
	}
	return reasonNames[r]
}

// Error says which measure is at fault, and why.
type Error struct {
	Dim    string // key of the dim, the rows, or the column; "area": the area that comes out
	Row    int    // index of the row, or of the cut-out; −1: not in a row
	Reason Reason
	Limit  float64 // in SI base units, where the reason has one
}

// What an Error names that isn't a dim of the shape. Area and edge that come out
// are named like those that are typed in one measured directly.
const (
	AreaKey    = "area"
	EdgeKey    = "edge"
	FacesKey   = "faces"
	CutOutsKey = "cut-outs"
)

// Error names the measure, the reason and the limit.
func (e *Error) Error() string {
	text := "surface: " + e.Dim
	if e.Row >= 0 {
		text += " in row " + strconv.Itoa(e.Row)
	}
	text += ": " + e.Reason.String()
	if e.Limit != 0 {
		text += fmt.Sprintf(", limit %g", e.Limit)
	}
	return text
}

func fault(dim string, reason Reason) *Error { return &Error{Dim: dim, Row: -1, Reason: reason} }

func limit(dim string, reason Reason, limit float64) *Error {
	return &Error{Dim: dim, Row: -1, Reason: reason, Limit: limit}
}

// in puts the error into a row.
func (e *Error) in(row int) *Error { e.Row = row; return e }
