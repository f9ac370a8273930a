package view_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// Every figure of every card is typed in one place, and the notice of a refused one leads there.
func TestEveryFigureOfACardHasItsSheet(t *testing.T) {
	s := of(t, job.Document{})
	for _, card := range material.Cards {
		path := "card." + card.Key
		paths := []string{path + ".name", path + ".note", path + ".pack.1.price"}
		for _, f := range material.Fields {
			if f.Shown(card) {
				paths = append(paths, path+"."+f.Key)
			}
		}
		for _, path := range paths {
			at := s.PlaceOf(path)
			assert.Equal(t, "cards", at.Screen, path)
			open := *s
			open.Screen, open.Sheets = at.Screen, at.Sheets
			assert.Contains(t, view.Page(&open).String(), `id="f-`+path+`"`, path)
		}
	}
}

// The names of a card's parts are no card's own: a sheet's key can't mean both.
func TestPartsOfACardAreNoCards(t *testing.T) {
	var all []string
	for _, part := range page.CardParts {
		_, isCard := material.Find(part.Key)
		assert.False(t, isCard, part.Key)
		for _, key := range part.Fields {
			assert.False(t, slices.Contains(all, key), "%s stands in two parts", key)
			all = append(all, key)
		}
	}
}
