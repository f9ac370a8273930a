package sanding

import (
	"fmt"
	"strconv"
	"strings"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Grade is a FEPA grade of coated abrasive by its number: Grade(220) is P220.
// Source: ISO 6344.
type Grade int

// sizes is the complete table of mean grain sizes, coarse to fine. The
// macrogrits up to P220 are sieved, the finer ones settled in a liquid.
// Source: ISO 6344 / FEPA 43.
var sizes = []struct {
	grade Grade
	size  unit.Length
}{
	{12, 1815 * unit.Micrometre}, {16, 1324 * unit.Micrometre}, {20, 1000 * unit.Micrometre}, {24, 764 * unit.Micrometre},
	{30, 642 * unit.Micrometre}, {36, 538 * unit.Micrometre}, {40, 425 * unit.Micrometre}, {50, 336 * unit.Micrometre},
	{60, 269 * unit.Micrometre}, {80, 201 * unit.Micrometre}, {100, 162 * unit.Micrometre}, {120, 125 * unit.Micrometre},
	{150, 100 * unit.Micrometre}, {180, 82 * unit.Micrometre}, {220, 68 * unit.Micrometre}, {240, 58.5 * unit.Micrometre},
	{280, 52.2 * unit.Micrometre}, {320, 46.2 * unit.Micrometre}, {360, 40.5 * unit.Micrometre}, {400, 35 * unit.Micrometre},
	{500, 30.2 * unit.Micrometre}, {600, 25.8 * unit.Micrometre}, {800, 21.8 * unit.Micrometre}, {1000, 18.3 * unit.Micrometre},
	{1200, 15.3 * unit.Micrometre}, {1500, 12.6 * unit.Micrometre}, {2000, 10.3 * unit.Micrometre}, {2500, 8.4 * unit.Micrometre},
}

// american gives the P grade that the trade puts beside an American grade. The
// median sizes of the American standard itself (UAMA) are finer by 15 to 31 %, so
// the P grade errs on the side of more film taken.
// Source: common practice.
var american = map[int]Grade{320: 400, 400: 800, 500: 1000, 600: 1200}

// Grades lists every grade, coarse to fine.
func Grades() []Grade {
	list := make([]Grade, len(sizes))
	for i, s := range sizes {
		list[i] = s.grade
	}
	return list
}

// String gives the grade as it is printed on the back of the sheet: "P220".
func (g Grade) String() string { return "P" + strconv.Itoa(int(g)) }

// index is the grade's place in the table, or -1.
func (g Grade) index() int {
	for i, s := range sizes {
		if s.grade == g {
			return i
		}
	}
	return -1
}

// MeanSize is the mean grain size. Range: P12 to P2500.
// Errors: *GradeError. Source: ISO 6344.
func (g Grade) MeanSize() (unit.Length, error) {
	i := g.index()
	if i < 0 {
		return 0, &GradeError{Text: g.String(), Cause: UnknownGrade}
	}
	return sizes[i].size, nil
}

// Size is the mean grain size as a figure. Errors: *GradeError.
func (g Grade) Size() (working.Figure[unit.Length], error) {
	size, err := g.MeanSize()
	return working.Given(size, "mean grain size of "+g.String(), unit.InMicrometre, source.ISO6344.At("").String(), source.Published), err
}

// GradeCause says why a grade could not be read.
type GradeCause int

// The causes of a GradeError.
const (
	UnknownGrade GradeCause = iota // no such grade
	WhichSystem                    // "320" without a letter: P and American grades differ
	NotMapped                      // an American grade with no published P grade
)

// GradeError says which grade could not be used, and what would have been.
type GradeError struct {
	Text     string
	Cause    GradeCause
	Readings []string // by WhichSystem: "P320", "US 320"
}

// Error gives the cause for a programmer; the page has its own sentences.
func (e *GradeError) Error() string {
	return fmt.Sprintf("sanding: can't use grade %q (cause %d; %s)", e.Text, e.Cause, strings.Join(e.Readings, " or "))
}

// ReadGrade reads "P220", "p 220" or, for an American grade, "US 400", which
// gives the P grade put beside it. A number alone can be read both ways and is
// refused. Errors: *GradeError.
func ReadGrade(text string) (Grade, error) {
	word := strings.ToUpper(strings.Join(strings.Fields(text), ""))
	digits := strings.TrimLeft(word, "PUS")
	number, err := strconv.Atoi(digits)
	if err != nil || number <= 0 {
		return 0, &GradeError{Text: text, Cause: UnknownGrade}
	}
	switch strings.TrimSuffix(word, digits) {
	case "P":
		if _, err := Grade(number).MeanSize(); err != nil {
			return 0, err
		}
		return Grade(number), nil
	case "US":
		return American(number)
	case "":
		return 0, &GradeError{text, WhichSystem, []string{"P" + digits, "US " + digits}}
	}
	return 0, &GradeError{Text: text, Cause: UnknownGrade}
}

// American gives the P grade that is published beside an American (CAMI,
// ANSI) grade: 320, 400, 500, 600. Errors: *GradeError for any other.
// Source: common practice.
func American(number int) (Grade, error) {
	g, mapped := american[number]
	if !mapped {
		return 0, &GradeError{Text: "US " + strconv.Itoa(number), Cause: NotMapped}
	}
	return g, nil
}
