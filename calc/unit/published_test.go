package unit_test

import (
	"testing"

	"shedreckoner/calc/unit"
	"shedreckoner/calc/working/workingtest"
)

func TestPublishedConversions(t *testing.T) {
	typed := func(result unit.Scale) workingtest.Case {
		return workingtest.Case{Result: result, Got: func(r workingtest.Row) (float64, error) {
			return r.Quantity("typed", result), nil
		}}
	}
	workingtest.Published(t, "units.txt", map[string]workingtest.Case{
		"conversion":    typed(unit.InMicrometre),
		"volume":        typed(unit.InLitre),
		"mass":          typed(unit.InGram),
		"density":       typed(unit.InKilogramPerLitre),
		"mass per area": typed(unit.InGramPerSquareMetre),
	})
}
