package page_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/wasm/page"
)

func TestAStepMovesTheTypedFigure(t *testing.T) {
	for _, c := range []struct{ path, text, way, want string }{
		{"bench.now.surface-temp", "24", "up", "25"},
		{"bench.now.surface-temp", "24.5 C", "down", "23.5 C"},
		{"bench.now.surface-temp", "75 F", "up", "76 F"},
		{"bench.now.surface-temp", "60", "up", "60"},     // the warmest that is read
		{"bench.now.surface-temp", "-20", "down", "-20"}, // the coldest
		{"bench.now.surface-temp", "warm", "up", "warm"},
		{"bench.now.surface-temp", "", "up", ""}, // no reading is guessed
		{"bench.now.amount", "100 g", "up", "150 g"},
		{"bench.now.amount", "10", "down", "10"}, // a cup of nothing
		{"bench.now.amount", "80 mL", "up", "90 mL"},
		{"bench.now.amount", "1,5 kg", "down", "1,4 kg"},
		{"bench.now.amount", "3 oz", "up", "3.5 oz"},
		{"day.today.read-humidity", "55 %", "up", "56 %"},
		{"day.today.read-humidity", "100", "up", "100"},
		{"bench.now.thinner", "0", "down", "0"},
		{"bench.now.drops", "30", "up", "31"},
		{"buildup.1.step.1.coats", "2", "up", "3"},
		{"buildup.1.step.1.coats", "1", "down", "1"},
		{"buildup.1.step.1.coats", "", "up", "1"},
		{"buildup.1.step.1.film", "16 mil", "down", "15 mil"},
		{"buildup.1.step.1.film", "400", "up", "425"},
		{"test.1.share", "1.7", "up", "1.8"},
		{"bench.now.scale-step", "0.1 g", "up", "0.1 g"}, // what a tool shows isn't moved by ten grams
		{"surface.1.length", "2400", "up", "2400"},       // what is taped is typed
		{"card.gelcoat.density", "1.25", "up", "1.25"},   // nor is a sheet's figure moved
		{"name", "7", "up", "7"},
		{"nothing.1.here", "7", "up", ""},
	} {
		s, _ := start(t, nil)
		s = do(do(s, "set", c.path, c.text), "step", c.path, c.way)
		assert.Equal(t, c.want, s.Doc().Get(c.path), "%s = %s, %s", c.path, c.text, c.way)
	}
	s, _ := start(t, nil)
	_, effects := page.Update(s, page.Message{Verb: "step", Path: "bench.now.surface-temp", Text: "up", At: noon})
	assert.Equal(t, []page.Effect{{Kind: page.Focus, Key: "f-bench.now.surface-temp"}}, effects)
}

func TestAStepIsAChangeLikeAnyOther(t *testing.T) {
	s, _ := start(t, nil)
	s = do(do(s, "set", "name", "x"), "set", "day.today.read-temp", "23")
	next := do(s, "step", "day.today.read-temp", "up")
	assert.Equal(t, "24", next.Doc().Get("day.today.read-temp"))
	assert.Equal(t, noon.Date, next.Doc().Get("day.today.date"), "a reading of today")
	next = do(do(next, "undo", "", ""), "undo", "", "")
	assert.Empty(t, next.Doc().Get("day.today.read-temp"))
}

func plain(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }

// said is the last that is to be read out.
func said(effects []page.Effect) *page.Effect {
	for i := len(effects) - 1; i >= 0; i-- {
		if effects[i].Kind == page.Say {
			return &effects[i]
		}
	}
	return nil
}

func TestTheDoseIsReadOutOnceItHasSettled(t *testing.T) {
	s, _ := page.Start(nil, moment(tenOClock))
	s = warm(t, s, tenOClock)
	s, effects := sent(s, tenOClock, "go", "cup", "")
	require.NotNil(t, said(effects))
	assert.Equal(t, page.Settled, said(effects).Key)
	assert.Equal(t, "Catalyst 1.6 g, 1.39 mL.", plain(said(effects).Text))

	for _, c := range []struct{ path, text, says string }{
		{"bench.now.pigment", "0", "-"}, // the same dose: nothing
		{"bench.now.amount", "60 g", "Catalyst 0.9 g, 0.78 mL."},
		{"bench.now.amount", "2,000", "No dose."},
		{"bench.now.amount", "nonsense", "-"},
		{"bench.now.amount", "100 g", "Catalyst 1.6 g, 1.39 mL."},
		{"bench.now.tin", "A", "-"},
		{"bench.now.tin", "", "-"},
	} {
		s, effects = sent(s, tenOClock, "set", c.path, c.text)
		if c.says == "-" {
			assert.Nil(t, said(effects), "%s = %s", c.path, c.text)
			continue
		}
		require.NotNil(t, said(effects), "%s = %s", c.path, c.text)
		assert.Equal(t, page.Effect{Kind: page.Say, Key: page.Settled, Text: c.says}, page.Effect{Kind: page.Say, Key: said(effects).Key, Text: plain(said(effects).Text)}, "%s = %s", c.path, c.text)
	}

	away, effects := sent(s, tenOClock, "go", "order", "")
	require.NotNil(t, said(effects))
	assert.Empty(t, said(effects).Text, "nothing is left to read of a dose that isn't shown")
	_, effects = sent(away, tenOClock, "set", "bench.now.amount", "60 g")
	assert.Nil(t, said(effects))

	s, effects = sent(s, tenOClock, "sheet", page.WeighSheet, "")
	require.NotNil(t, said(effects))
	assert.Equal(t, "Weigh: Polyester gel coat to 100 g.", plain(said(effects).Text), "each step says what it acts on")
	s, effects = sent(s, tenOClock, "weighed", "", "")
	require.NotNil(t, said(effects))
	assert.Equal(t, "Catalyst, once: 1.6 g, 1.39 mL, the scale then shows 101.6.", plain(said(effects).Text))
	s, effects = sent(s, tenOClock, "in", "cup.1", "")
	require.NotNil(t, said(effects))
	assert.Equal(t, page.Effect{Kind: page.Say, Text: "Catalyst in. The clock runs. Stop spreading at 10:07."}, *said(effects), "not that its dose is gone")
	assert.Empty(t, s.Spoken)
}

// A sheet of something else hides the dose: nothing is read out of it, nor is it worked
// out, until it is in sight again; then what has become of it is.
func TestADoseBehindASheetIsReadOutOnceItIsSeenAgain(t *testing.T) {
	s, _ := page.Start(nil, moment(tenOClock))
	s = warm(t, s, tenOClock)
	s, _ = sent(s, tenOClock, "go", "cup", "")
	s.Covers = true
	for _, c := range []struct{ text, says string }{{"60 g", "Catalyst 0.9 g, 0.78 mL."}, {"nonsense", "No dose."}} {
		before := s
		opened, effects := sent(s, tenOClock, "sheet", "setup", "")
		require.NotNil(t, said(effects))
		assert.Empty(t, said(effects).Text, "what waits to be read out is taken back")
		typed, effects := sent(opened, tenOClock, "set", "bench.now.amount", c.text)
		assert.Nil(t, said(effects), c.text)
		_, effects = sent(typed, tenOClock, "back", "", "")
		require.NotNil(t, said(effects), c.text)
		assert.Equal(t, c.says, plain(said(effects).Text))

		beside := *before
		beside.Covers = false
		opened, _ = sent(&beside, tenOClock, "sheet", "setup", "")
		_, effects = sent(opened, tenOClock, "set", "bench.now.amount", c.text)
		require.NotNil(t, said(effects), "on a wide screen the dose stands beside the sheet")
		assert.Equal(t, c.says, plain(said(effects).Text))
	}
}
