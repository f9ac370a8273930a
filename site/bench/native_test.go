package main

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
)

func TestJobOf(t *testing.T) {
	for _, n := range []int{1, 10, mostSurfaces} {
		assert.Len(t, jobOf(n).Items("surface"), n)
		p := plan.Make(jobOf(n))
		assert.Empty(t, p.Refused())
	}
	assert.Greater(t, len(jobOf(0).Items("surface")), 1)
	saved, err := checkedJob()
	require.NoError(t, err)
	_, _, err = job.Load(saved)
	assert.NoError(t, err, "the page must take it")
}

func TestExponent(t *testing.T) {
	many := []int{1, 10, 100, 500}
	for _, k := range []float64{1, 2} {
		took := make([]float64, len(many))
		for i, n := range many {
			took[i] = 7 + 3*math.Pow(float64(n-1), k)
		}
		assert.InDelta(t, k, exponent(many, took), 1e-9)
	}
}
