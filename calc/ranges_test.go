package calc_test

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/chance"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// isIn says if a number lies in a declared range, but for the last bits of a
// conversion.
func isIn(a working.Arg, n float64) bool {
	wide := max(math.Abs(a.Min), math.Abs(a.Max))
	return a.Min-1e-9*max(math.Abs(a.Min), min(wide, 1000)) <= n && n <= a.Max+1e-9*wide
}

// atEnds draws arguments from their ranges, often from the ends.
func atEnds(r *working.Rule, random *rand.Rand) []float64 {
	si := make([]float64, len(r.Args))
	for i, a := range r.Args {
		n := a.Min + random.Float64()*(a.Max-a.Min)
		switch random.IntN(4) {
		case 0:
			n = a.Min
		case 1:
			n = a.Max
		}
		si[i] = a.Scale.SI(n)
	}
	return si
}

// Each rule declares the range of its result, and refuses one outside it, at either end,
// and nothing inside it: a film taken away may not come out as −20 µm, nor a share
// over the whole, and go on into a dose.
func TestEveryRuleHoldsItsResultToItsRange(t *testing.T) {
	beyond := 0
	for room, rules := range allRules {
		for _, r := range rules {
			require.Less(t, r.Result.Min, r.Result.Max, "%s: %s declares what it gives", room, r.Formula)
			if r.IsProse {
				continue
			}
			random := rand.New(rand.NewPCG(7, uint64(len(r.Formula))))
			for range 200 {
				si := atEnds(r, random)
				n := r.Result.Scale.From(r.Eval(si...))
				_, err := r.Compute(si...)
				if !isIn(r.Result, n) {
					var outside *working.RangeError
					require.ErrorAs(t, err, &outside, "%s: %s gives %v", room, r.Formula, n)
					require.Equal(t, r.Result.Symbol, outside.Arg.Symbol)
					beyond++
					continue
				}
				require.NoError(t, err, "%s: %s at %v", room, r.Formula, si)
			}
			// a range of the same width that ends short of the result, or begins past it
			for range 200 {
				si := atEnds(r, random)
				n, wide := r.Result.Scale.From(r.Eval(si...)), r.Result.Max-r.Result.Min
				if !isIn(r.Result, n) {
					continue
				}
				off := 1e-6 * max(1, math.Abs(n), wide)
				for _, ends := range [][2]float64{{n - off - wide, n - off}, {n + off, n + off + wide}} {
					moved := *r
					moved.Result.Min, moved.Result.Max = ends[0], ends[1]
					_, err := moved.Compute(si...)
					require.Error(t, err, "%s: %s gives %v, outside %v", room, r.Formula, n, ends)
				}
			}
		}
	}
	t.Logf("%d results drawn lay beyond the range of their rule", beyond)
	assert.Greater(t, beyond, 100, "the points drawn are worth it")
}

// steps finds every step of a working in what a room gives out.
func steps(v reflect.Value, seen map[*working.Step]bool, pointers map[uintptr]bool) {
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() || pointers[v.Pointer()] {
			return
		}
		pointers[v.Pointer()] = true
		if s, isStep := v.Interface().(*working.Step); isStep {
			seen[s] = true
			for _, f := range s.From {
				steps(reflect.ValueOf(f), seen, pointers)
			}
			return
		}
		steps(v.Elem(), seen, pointers)
	case reflect.Interface:
		if !v.IsNil() {
			steps(v.Elem(), seen, pointers)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			steps(v.Index(i), seen, pointers)
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			steps(v.MapIndex(k), seen, pointers)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				steps(v.Field(i), seen, pointers)
			}
		}
	}
}

// Whatever is typed, each step of each working that is shown lies in the range of
// its rule, also of a method described in words, which has no formula.
func TestEveryStepOfEveryWorkingLiesInItsRange(t *testing.T) {
	held, methods := 0, map[string]bool{}
	for seed := range jobtest.Enough(t, 60, &held, 4000) {
		r := jobtest.New(seed)
		r.Junk = 0.02
		p := plan.Make(r.Document())
		now := bench.Now{Hour: 11 * unit.Hour, Date: "2026-06-01"}
		b, order := bench.Make(&p, now), chance.OrderOf(&p)
		seen, pointers := map[*working.Step]bool{}, map[uintptr]bool{}
		shown := []any{p.Surfaces(), p.Buildups(), p.Area(), p.Kept(), p.Removals(), p.Putties(), p.Needs(), &b, b.Ways(), b.CardsToday(), b.Flow(), b.Offers(), b.PuttyTakes(), b.Verdicts(), order, chance.Learn(&p)}
		for i := range p.Buildups() {
			shown = append(shown, p.Buildups()[i].Budgets())
		}
		for _, v := range shown {
			steps(reflect.ValueOf(v), seen, pointers)
		}
		for s := range seen {
			if s.Rule == nil {
				require.False(t, math.IsNaN(s.Out) || math.IsInf(s.Out, 0), "seed %d: %s is no number", seed, s.Name)
				continue
			}
			n := s.Rule.Result.Scale.From(s.Out)
			require.True(t, isIn(s.Rule.Result, n), "seed %d: %s: %v is outside %v to %v", seed, s.Rule.Formula, n, s.Rule.Result.Min, s.Rule.Result.Max)
			if s.Rule.IsProse {
				methods[s.Rule.Formula] = true
			}
			held++
		}
	}
	t.Logf("%d steps, %d methods told in words", held, len(methods))
	assert.GreaterOrEqual(t, len(methods), 10)
}
