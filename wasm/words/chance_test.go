package words_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/unit"
	"shedreckoner/wasm/words"
)

// A chance is counted in jobs, and never told as smaller than it is: nine in ten isn't every second one. (Exact.)
func TestAChanceCountedInJobs(t *testing.T) {
	for chance, want := range map[float64]string{
		0: "fewer than 1 job in 200", 0.004: "fewer than 1 job in 200", 0.01: "1 job in 100", 0.2: "1 job in 5", 0.3: "1 job in 3",
		0.5: "1 job in 2, or more", 0.9: "1 job in 2, or more", 1: "1 job in 2, or more",
	} {
		assert.Equal(t, want, words.InJobs(chance), "%v", chance)
	}
	for chance, want := range map[unit.Share]string{0.95: "95 of 100 such jobs", 0.999: "99 of 100 such jobs", 1: "100 of 100 such jobs"} {
		assert.Equal(t, want, words.OfJobs(chance), "%v", chance)
	}
}
