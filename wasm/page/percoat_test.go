package page_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/wasm/page"
)

// What a coat takes stands beside the trade's figure: inside its band, ends included, nothing is asked; above it the page asks
// whether so much is meant, below it whether so little; and no more once that was answered.
func TestACoatOutsideTheTradesBandIsAskedAbout(t *testing.T) {
	s, _ := page.Start(nil, noon)
	s = do(do(s, "add", "surface", "rectangle"), "ready", "", "rolled-gelcoat")
	s = do(do(s, "set", "surface.1.length", "2 m"), "set", "surface.1.width", "1 m")
	step := ""
	for _, id := range s.Doc().Items("buildup.1.step") {
		if s.Doc().Get("buildup.1.step."+id+".card") == "gelcoat" {
			step = "buildup.1.step." + id
		}
	}
	require.NotEmpty(t, step)
	s = do(do(s, "set", step+".coats", "1"), "set", step+".film-for", "each")
	seen := map[string]int{}
	for film := 150; film <= 600; film += 5 {
		s := do(s, "set", step+".film", strconv.Itoa(film)+" µm")
		planned, _ := s.Plan.StepAt(step)
		takes, trade, known := planned.CrossCheck()
		if !known {
			continue
		}
		told := s.Trade(s.Plan.Job.CardByKey("gelcoat"))
		require.Len(t, told, 1)
		is := "inside"
		switch {
		case takes.Value > trade.High:
			is = "More than usual"
		case takes.Value < trade.Low:
			is = "Less than usual"
		}
		seen[is]++
		assert.Equal(t, is != "inside", told[0].Asks, "%d µm", film)
		assert.Equal(t, is == "More than usual", strings.Contains(told[0].Text, "More than usual"), "%d µm: %s", film, told[0].Text)
		assert.Equal(t, is == "Less than usual", strings.Contains(told[0].Text, "Less than usual"), "%d µm: %s", film, told[0].Text)
	}
	assert.Len(t, seen, 3, "%v", seen)
}
