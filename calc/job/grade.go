package job

import (
	"strings"

	"shedreckoner/calc/sanding"
)

// checkGrade reads the grade of an abrasive: "P220", or "US 400".
func checkGrade(text string) (float64, error) {
	g, err := sanding.ReadGrade(text)
	return float64(g), err
}

// checkGrades reads a run of grades: "P220 P320 P400".
func checkGrades(text string) (float64, error) {
	_, err := readGrades(text)
	return 0, err
}

// readGrades reads grades one after another, separated by spaces, commas or dashes.
// The letters of an American grade belong to the number behind them.
// Errors: *sanding.GradeError, *OrderError.
func readGrades(text string) ([]sanding.Grade, error) {
	words := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" ,;–-→>\u00a0", r) })
	var list []sanding.Grade
	for i := 0; i < len(words); i++ {
		word := words[i]
		if i+1 < len(words) && (strings.EqualFold(word, "US") || strings.EqualFold(word, "P")) {
			i++
			word += words[i]
		}
		g, err := sanding.ReadGrade(word)
		if err != nil {
			return nil, err
		}
		list = append(list, g)
	}
	for i := 1; i < len(list); i++ {
		if list[i] <= list[i-1] {
			return nil, &OrderError{list[i-1], list[i]}
		}
	}
	return list, nil
}

// OrderError says that a grade in a run isn't finer than the one before it.
type OrderError struct{ Before, After sanding.Grade }

// Error names both grades.
func (e *OrderError) Error() string {
	return "job: " + e.After.String() + " after " + e.Before.String()
}

// grade reads a grade; 0 where none was typed or it can't be read.
func (r *reader) grade(path string, f *Field) int {
	n, _ := r.number(path, f)
	return int(n)
}
