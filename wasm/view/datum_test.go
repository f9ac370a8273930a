package view_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/unit"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/view"
)

var (
	sliderEnds = regexp.MustCompile(`type="range" min="([^"]*)" max="([^"]*)" step="([^"]*)"`)
	tradeTexts = regexp.MustCompile(`text-anchor="end"[^>]*>([^<]*)<`)
	tradeRects = regexp.MustCompile(`<rect class="(filler|tone0)"[^>]* width="([^"]*)"`)
	raisedTo   = regexp.MustCompile(`<output id="raise-[^"]*">([^<]*)<`)
	bestSaid   = regexp.MustCompile(`data-text="([^"]*)">Best: ([^,]*), with (\S+) L of filler and (\S+) L cut`)
)

// Of a grid of readings 1, −2, 3 and 1, 2, 3 mm the slider goes from the proudest, where nothing is filled, to the deepest,
// where nothing is cut; it stands where the datum lies. The bars say what is filled and what is cut there, filler first, to one
// scale, and what is offered as best is what the plan found best.
func TestTheDatumsSliderAndItsBars(t *testing.T) {
	const step = "buildup.1.step.1"
	for _, raise := range []string{"0", "1", "1.6"} {
		s := do(opened(fairState(t), "sheet "+step), "set", step+".raise", raise)
		page := view.Page(s)
		html := page.String()
		ends := sliderEnds.FindStringSubmatch(html)
		require.NotNil(t, ends)
		assert.Equal(t, []string{"-3", "2"}, ends[1:3], raise)
		assert.InDelta(t, 5./40, mustRead(t, ends[3]), 5./40, "some forty stops")
		assert.Equal(t, raise, markup.Cut(page).Controls[step+".raise"].Value)
		shown, err := unit.Read(raisedTo.FindStringSubmatch(html)[1], unit.InMetre)
		require.NoError(t, err)
		fill := s.Plan.Buildups()[0].Steps[0].Fill
		assert.InDelta(t, float64(fill.Grid.Raise.Value), shown, 1e-9)

		trade := strings.ReplaceAll(regionOf(t, html, "trade-"+step), "\u00a0", " ")
		volumes := []float64{float64(fill.Left.Value), float64(fill.Grid.Cut.Value)}
		texts, bars := tradeTexts.FindAllStringSubmatch(trade, -1), tradeRects.FindAllStringSubmatch(trade, -1)
		require.Len(t, texts, 2)
		for i, m := range texts {
			litres, err := unit.Read(m[1], unit.InLitre)
			require.NoError(t, err)
			assert.InDelta(t, volumes[i], litres, 0.06*volumes[i], raise)
		}
		require.Len(t, bars, 2, raise)
		assert.Equal(t, "filler", bars[0][1])
		assert.InDelta(t, volumes[0]/volumes[1], mustRead(t, bars[0][2])/mustRead(t, bars[1][2]), 0.1*volumes[0]/volumes[1], "to one scale")

		best := bestSaid.FindStringSubmatch(trade)
		require.NotNil(t, best)
		for _, text := range best[1:3] {
			at, err := unit.Read(text, unit.InMetre)
			require.NoError(t, err)
			assert.InDelta(t, float64(fill.Grid.Best.Value), at, 1e-6)
		}
		assert.InDelta(t, float64(fill.Grid.BestFill.Value)*1000, mustRead(t, best[3]), 0.01)
		assert.InDelta(t, float64(fill.Grid.BestCut.Value)*1000, mustRead(t, best[4]), 0.01)
	}
}
