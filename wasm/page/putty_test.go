package page_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/wasm/page"
)

const handMixed = jobtest.HandMixed + `putty.1.name = Deck putty
putty.1.part = 1 2 3
putty.1.part.3.what = balloons
putty.1.part.3.mass = 27 g
card.microballoons.stock = 1 kg
card.microballoons.counted = cup.0
card.epoxy-filler.stock = 2
bench.now.tool = scale
bench.now.scale-step = 0.1 g
bench.now.amount = 160 g
`

// A putty mixed by hand goes from the recipe to the clock, and its cup takes of
// the stock of its parts.
func TestAPuttyMixedByHandGoesToItsClock(t *testing.T) {
	s, _ := page.Start(map[string]string{page.Prefix + "job.a": job.Save(jobtest.Doc(t, handMixed), 3)}, moment(tenOClock))
	s, _ = sent(s, tenOClock, "set", "bench.now.surface-temp", "20 °C")
	s, _ = sent(s, tenOClock, "sheet", page.WeighSheet, "")
	text := plain(shownText(s, "cup"))
	for _, want := range []string{"Deck putty", "Resin", "Microballoons", "127"} {
		assert.Contains(t, text, want)
	}
	assert.NotContains(t, text, "art A")
	s, _ = sent(s, tenOClock, "weighed", "", "")
	text = plain(shownText(s, "cup"))
	assert.Contains(t, text, ">33 g<")
	assert.Contains(t, text, "the scale then shows 160")
	s, _ = sent(s, tenOClock, "in", "cup.1", "")
	require.Equal(t, page.Running, page.CupPhase(s.Doc(), "cup.1"))
	assert.Equal(t, "microballoons=27.0 putty-hardener=33.0 putty-resin=100.0", s.Doc().Get("cup.1.parts"))
	s, _ = sent(s, tenOClock+60, "end", "cup.1", "spread")
	for _, l := range s.Order().Lines {
		if l.Card.Key == "microballoons" {
			assert.Equal(t, "0.973", l.Stock.String())
		}
	}
	s, _ = sent(s, tenOClock+60, "job-new", "", "")
	assert.Equal(t, "0.973 kg", s.Doc().Get("card.microballoons.stock"))
	assert.Equal(t, "2", s.Doc().Get("card.epoxy-filler.stock"), "the bought filler stays in its tin")
}

// While its recipe can't be mixed there is no dose, of that or of anything else.
func TestAPuttyThatCantBeMixedIsNotWeighed(t *testing.T) {
	s, _ := page.Start(map[string]string{page.Prefix + "job.a": job.Save(jobtest.Doc(t, handMixed, "putty.1.part.2.mass = 33 quarts"), 3)}, moment(tenOClock))
	s, _ = sent(s, tenOClock, "set", "bench.now.surface-temp", "20 °C")
	_, may := s.DoseFor()
	assert.False(t, may)
	assert.Contains(t, shownText(s, "cup"), "Putty mixed by hand")
}
