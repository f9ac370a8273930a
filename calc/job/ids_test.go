package job_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
)

// What a card can be counted in: its own way, and mass for volume or volume for
// mass, since its density is known. Sets and what is sold by the litre are alike.
func TestWhatACardCanBeCountedIn(t *testing.T) {
	seen := map[material.Basis]bool{}
	for _, card := range material.Cards {
		seen[card.SoldBy] = true
		takes := map[material.Basis][]bool{
			material.ByMass: {true, card.Density.Known, false, false}, material.ByVolume: {card.Density.Known, true, false, false},
			material.BySet: {card.Density.Known, true, false, false}, material.ByLength: {false, false, true, false}, material.ByPiece: {false, false, false, true},
		}[card.SoldBy]
		for i, text := range []string{"2 kg", "2 L", "2 m", "2"} {
			d := job.Document{}.Set("card."+card.Key+".stock", text)
			read, problems := job.Read(d)
			if text == "2" { // a bare number is pieces, or in the unit beside the field
				continue
			}
			assert.Equal(t, takes[i], len(problems) == 0, "%s: %s: %v", card.Key, text, problems)
			if takes[i] {
				assert.Equal(t, "2", read.ShopByKey(card.Key).Stock.Amount.String())
			}
		}
	}
	assert.Len(t, seen, 5, "cards are sold in five ways")
}

// A copy of a card has the packs of the one that it was copied from.
func TestACopyKeepsThePacksThatShip(t *testing.T) {
	read, problems := job.Read(job.Document{}.Set("card", "mine").Set("card.mine.base", "gelcoat").Set("card.mine.pack.2.price", "50"))
	require.Empty(t, problems)
	mine, shipped := read.ShopByKey("mine"), read.ShopByKey("gelcoat")
	require.NotNil(t, mine)
	require.Len(t, mine.Packs, len(shipped.Packs))
	for i := range mine.Packs {
		assert.Equal(t, shipped.Packs[i].Size, mine.Packs[i].Size)
		assert.Equal(t, i == 1, mine.Packs[i].HasPrice)
	}
	assert.Equal(t, "gelcoat", read.CardByKey("mine").ShippedKey())
	assert.Equal(t, "gelcoat", read.CardByKey("gelcoat").ShippedKey())
}

// The part that a path belongs to: an item of surfaces, build-ups and cards by itself, what
// is bought of a card apart from the card, of all else the whole list. A plan that looked at another part would stay as it was.
func TestThePartThatAPathBelongsTo(t *testing.T) {
	for path, want := range map[string]string{
		"surface.1.length": "surface.1", "surface.12.cutout.1.width": "surface.12", "buildup.2.step.1.film": "buildup.2", "buildup.2": "buildup.2",
		"bench.now.card": "bench", "card.gelcoat.density": "card.gelcoat", "card.gelcoat.stock": "shop.gelcoat", "card.gelcoat.pack.2.price": "shop.gelcoat", "card": "card", "surface": "surface", "day.today.low": "day", "name": "name", "test.1.temp": "test",
	} {
		assert.Equal(t, want, job.PartOf(path), path)
	}
}

// An item is named by anything that can be written and read back: no spaces, ends
// of lines or signs of equality, and no name at all.
func TestWhatCanNameAnItem(t *testing.T) {
	for id, isField := range map[string]bool{"1": true, "b-2": true, "ß": true, "a b": false, " ": false, "a\n": false, "a=b": false, "": false, "\t": false} {
		assert.Equal(t, isField, job.FieldAt("surface."+id+".length") != nil, "%q", id)
	}
}
