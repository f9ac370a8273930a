package view_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/view"
)

// Beside the film stands what it is on the other side of curing, and what it is meant as; beside the coats what one of them may
// be. A rolled gel coat of 400 µm wet cures to 332 µm (83 %); 332 µm cured are 400 µm wet. (Worked here.) Between 200 and 500 µm
// a coat may be rolled (common practice, on the card).
func TestTheFilmAndTheCoatsSayTheirOtherSide(t *testing.T) {
	const step = "buildup.1.step.3"
	small := regexp.MustCompile(`<label[^>]*>([^<]*)<small[^>]*>([^<]*)</small>`)
	said := func(key string, typed ...string) []string {
		s := fairState(t)
		for _, line := range typed {
			path, text, _ := strings.Cut(line, " = ")
			s = do(s, "set", step+"."+path, text)
		}
		html := strings.ReplaceAll(view.Page(opened(s, "sheet "+step)).String(), "\u00a0", " ")
		m := small.FindStringSubmatch(regionOf(t, html, "line-"+step+"."+key))
		require.NotNil(t, m, "%s %v", key, typed)
		return m[1:]
	}
	assert.Equal(t, []string{"Film, wet", "332 µm cured"}, said("film"))
	assert.Equal(t, []string{"Film, cured", "400 µm wet in all"}, said("film", "film-is = "+job.FilmCured, "film = 332"))
	assert.Equal(t, "Each coat, wet", said("film", "film-for = "+job.ForEach, "film = 300", "coats = 2")[0])
	assert.Equal(t, []string{"Coats", "200 µm to 500 µm each"}, said("coats"))
}
