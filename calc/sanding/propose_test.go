package sanding_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
)

// Every run that is proposed, between all pairs of grades and for three widest
// steps, against all runs that there are: the fewest grades, and of those the one
// whose widest step is the smallest. A wider one leaves scratches that the next
// grade doesn't reach.
func TestEveryProposalAgainstAllRuns(t *testing.T) {
	grades, tried := sanding.Grades(), 0
	for i, first := range grades {
		for j := i + 1; j < len(grades) && j < i+11; j++ {
			for _, most := range []unit.Factor{1.5, 1.8, 2.4} {
				steps, widest := bestRun(t, grades[i:j+1], most)
				got, err := sanding.Propose(first, grades[j], nil, most)
				if steps == 0 {
					assert.Error(t, err, "%v to %v by %v", first, grades[j], most)
					continue
				}
				require.NoError(t, err)
				tried++
				require.Len(t, got, steps+1, "%v to %v by %v", first, grades[j], most)
				wide := unit.Factor(0)
				for k := 1; k < len(got); k++ {
					ratio, err := sanding.Ratio(got[k-1], got[k])
					require.NoError(t, err)
					wide = max(wide, ratio)
				}
				require.InDelta(t, float64(widest), float64(wide), 1e-12, "%v", got)
			}
		}
	}
	assert.Greater(t, tried, 400)
}

// bestRun tries every choice of the grades between; 0: none keeps to the step.
func bestRun(t *testing.T, grades []sanding.Grade, most unit.Factor) (steps int, widest unit.Factor) {
	between := len(grades) - 2
	widest = unit.Factor(math.Inf(1))
	for set := range 1 << max(between, 0) {
		at, n, wide := grades[0], 0, unit.Factor(0)
		for i := 1; i < len(grades); i++ {
			if i <= between && set>>(i-1)&1 == 0 {
				continue
			}
			ratio, err := sanding.Ratio(at, grades[i])
			require.NoError(t, err)
			at, n, wide = grades[i], n+1, max(wide, ratio)
		}
		if wide <= most*(1+1e-9) && (steps == 0 || n < steps || n == steps && wide < widest) {
			steps, widest = n, wide
		}
	}
	return steps, widest
}
