package view_test

import (
	"math"
	"regexp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
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

// A figure of a card says what ships in its empty field, and under it on what that rests: one from memory doesn't pass for
// published, and where nothing ships nothing is made up.
func TestAFigureOfACardSaysWhatItRestsOn(t *testing.T) {
	marks := map[source.Mark]string{source.CommonPractice: "Common practice: check your tin.", source.Published: "Published.",
		source.Assumption: words.MarkAssumption, source.FromMemory: words.MarkFromMemory}
	ships, seen := regexp.MustCompile(`placeholder="([^"]*)"`), map[source.Mark]bool{}
	s := of(t, job.Document{})
	for _, card := range material.Cards {
		for _, f := range material.Fields {
			if !f.Shown(card) {
				continue
			}
			path := "card." + card.Key + "." + f.Key
			at, open := s.PlaceOf(path), *s
			open.Screen, open.Sheets = at.Screen, at.Sheets
			line := regionOf(t, view.Page(&open).String(), "line-"+path)
			said, v, scale := ships.FindStringSubmatch(line)[1], f.Of(card), s.Plan.Job.Units.Scale(f.Measure)
			if !v.Known {
				assert.Equal(t, words.FromTheTin, said, path)
				assert.Contains(t, line, words.NothingShips, path)
				continue
			}
			number, err := unit.Read(said, scale)
			require.NoError(t, err, path)
			assert.InDelta(t, v.Value, number, 1e-3*math.Abs(v.Value), path)
			if mark, is := marks[v.Mark]; is {
				seen[v.Mark] = true
				assert.Contains(t, line, `class="hint">`+mark, path)
			}
		}
	}
	assert.GreaterOrEqual(t, len(seen), 3)
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
