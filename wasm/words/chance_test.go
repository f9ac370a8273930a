package words_test

import (
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
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

// Packs are said as in a shop: what is sold singly is counted, not multiplied.
func TestPacksAsInAShop(t *testing.T) {
	pack := func(count int, size string, scale unit.Scale) chance.PackCount {
		return chance.PackCount{Count: count, Size: job.PackSize{Amount: decimal.RequireFromString(size), Scale: scale}}
	}
	for want, packs := range map[string][]chance.PackCount{
		"2 × 5 kg, 1 × 1 kg":       {pack(2, "5", unit.InKilogram), pack(1, "1", unit.InKilogram)},
		"1 piece":                  {pack(1, "1", unit.InPure)},
		"3 × pack of 10, 2 pieces": {pack(3, "10", unit.InPure), pack(2, "1", unit.InPure)},
	} {
		assert.Equal(t, want, strings.ReplaceAll(words.Packs(chance.Line{Packs: packs}), "\u00a0", " "))
	}
	assert.Equal(t, "by the piece, all priced", words.SoldIn([]string{"1"}, "pieces", 1))
	assert.Equal(t, "packs of 1, 10 pieces, no price yet", words.SoldIn([]string{"1", "10"}, "pieces", 0))
}
