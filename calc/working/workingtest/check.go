// Package workingtest compares a rule's shown formula with its code.
package workingtest

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"shedreckoner/calc/working"
)

// points is the number of places in its range at which a rule is compared;
// stepPoints is for a rule that goes in steps, since a shifted step shows only near
// it.
const points, stepPoints = 100, 4000

// Check fails the test for every rule whose formula and code disagree, that has
// no source, or of which a range ends before it begins or a letter is no letter.
func Check(t *testing.T, rules ...*working.Rule) {
	t.Helper()
	for _, r := range rules {
		if r.Source.Document == nil {
			t.Errorf("%s: no source", r.Formula)
		}
		for _, a := range append([]working.Arg{r.Result}, r.Args...) {
			if !(a.Min < a.Max) || a.Symbol == "" || strings.Contains(a.Symbol, " ") || len(a.Meaning) < len(a.Symbol) {
				t.Errorf("%s: %q, %s, from %g to %g", r.Formula, a.Symbol, a.Meaning, a.Min, a.Max)
			}
		}
		if err := Agrees(r); err != nil {
			t.Error(err)
		}
	}
}

// Agrees parses the rule's formula, evaluates it at seeded points in its range and
// compares it with the code to 1e-9. A method described in words has nothing to
// compare.
func Agrees(r *working.Rule) error {
	if r.IsProse {
		return nil
	}
	left, right, found := strings.Cut(r.Formula, "=")
	if !found || strings.TrimSpace(left) != r.Result.Symbol {
		return fmt.Errorf("%s: the left side is not the result %q", r.Formula, r.Result.Symbol)
	}
	for _, a := range r.Args {
		if !hasName(right, a.Symbol) {
			return fmt.Errorf("%s: argument %q doesn't occur", r.Formula, a.Symbol)
		}
	}
	random := rand.New(rand.NewPCG(1, 2))
	count := points
	if strings.Contains(right, "ceil(") || strings.Contains(right, "floor(") {
		count = stepPoints
	}
	for range count {
		if err := agreesAt(r, right, random); err != nil {
			return err
		}
	}
	return nil
}

func agreesAt(r *working.Rule, right string, random *rand.Rand) error {
	values := map[string]float64{}
	si := make([]float64, len(r.Args))
	for i, a := range r.Args {
		n := draw(a.Min, a.Max, random)
		values[a.Symbol], si[i] = n, a.Scale.SI(n)
	}
	shown, err := Evaluate(right, values)
	if err != nil {
		return err
	}
	code := r.Result.Scale.From(r.Eval(si...))
	if math.IsNaN(shown) && math.IsNaN(code) {
		return fmt.Errorf("%s: not a number at %v, inside its range", r.Formula, values)
	}
	if !(math.Abs(shown-code) <= 1e-9*math.Max(1e-6, math.Max(math.Abs(shown), math.Abs(code)))) {
		return fmt.Errorf("%s: shown gives %v, code gives %v at %v", r.Formula, shown, code, values)
	}
	return nil
}

// draw picks a point of the range, evenly in its logarithm where it is wide.
func draw(min, max float64, random *rand.Rand) float64 {
	if min > 0 && max/min > 100 {
		return math.Exp(math.Log(min) + random.Float64()*math.Log(max/min))
	}
	return min + random.Float64()*(max-min)
}

func hasName(formula, symbol string) bool {
	for _, tok := range working.Tokens(formula) {
		if tok.IsName && tok.Text == symbol {
			return true
		}
	}
	return false
}
