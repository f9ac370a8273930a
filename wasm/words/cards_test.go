package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
)

// A short name stands for one card only: two fillers that differ by what they are made of keep their whole names.
func TestAShortNameStandsForOneCard(t *testing.T) {
	seen := map[string]string{}
	for _, shipped := range material.Cards {
		card := &job.Card{Card: *shipped}
		short := ShortName(card)
		assert.Empty(t, seen[short], "%q is %s too", short, shipped.Key)
		seen[short] = shipped.Key
		assert.LessOrEqual(t, len(short), len(shipped.Name))

		card.Name += " of mine"
		assert.Equal(t, card.Name, ShortName(card), "an own name stays")
	}
	assert.Equal(t, "flowcoat", seen["Flow coat"])
	assert.Equal(t, "light-polyester-filler", seen["Polyester filler, light"])
}
