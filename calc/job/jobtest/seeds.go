package jobtest

import (
	"iter"
	"testing"
)

// Enough gives seeds from 0 on: at least the given number, and then more until met
// exceeds want, met being what the draws are for. One more card or kind of step
// changes every draw, so no test may depend on what one run of seeds brings. If ten
// times as many don't meet it, the test fails.
func Enough(t *testing.T, least uint64, met *int, want int) iter.Seq[uint64] {
	return func(yield func(uint64) bool) {
		for seed := uint64(0); seed < least || *met <= want; seed++ {
			if seed == 10*least {
				t.Errorf("of %d draws only %d were worth it", seed, *met)
				return
			}
			if !yield(seed) {
				return
			}
		}
	}
}
