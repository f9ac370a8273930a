package jobtest

import (
	"iter"
	"testing"
)

// Enough gives seeds from 0 on: at least so many, and on until more than want of
// what the draws are for was met. A card or a kind of step more changes every
// draw: no test may hang on what one row of seeds brings. Ten times as many that
// still don't meet it fail the test.
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
