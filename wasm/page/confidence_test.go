package page_test

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// demoOrder is the made-up job's order, opened.
func demoOrder(t *testing.T) (*page.State, []page.Effect) {
	t.Helper()
	s, _ := start(t, nil)
	s = do(s, "demo", "", "")
	return page.Update(s, page.Message{Verb: "go", Path: "order", At: noon})
}

func laters(effects []page.Effect) int {
	n := 0
	for _, e := range effects {
		if e.Kind == page.Later {
			n++
		}
	}
	return n
}

func TestTheOrderIsMadeSureInSlices(t *testing.T) {
	s, effects := demoOrder(t)
	require.Equal(t, 1, laters(effects))
	before := s.Order().Lines[0].Need
	slices := 0
	for !s.Confidence.Done {
		require.Equal(t, 1, laters(effects), "one slice asks for the next")
		s, effects = page.Update(s, page.Message{Verb: "work"})
		slices++
	}
	assert.Zero(t, laters(effects))
	assert.Greater(t, slices, 5)
	assert.True(t, s.Order().Lines[0].Need.GreaterThan(before), "more than the plan, for the chance")
	s, effects = page.Update(s, page.Message{Verb: "work"})
	assert.Zero(t, laters(effects), "a stray slice does nothing")
	s, _ = page.Update(s, page.Message{Verb: "go", Path: "surfaces"})
	_, effects = page.Update(s, page.Message{Verb: "go", Path: "order"})
	assert.Zero(t, laters(effects), "it stays done")
}

// A key pressed meanwhile begins anew with the new plan, without a second chain
// of slices.
func TestAKeyDuringTheWorkBeginsAnew(t *testing.T) {
	s, _ := demoOrder(t)
	s = do(s, "work", "", "")
	s, effects := page.Update(s, page.Message{Verb: "set", Path: "card.gelcoat.stock", Text: "2 kg", At: noon})
	assert.Zero(t, laters(effects), "the slice asked for is still to come")
	count := 0
	for !s.Confidence.Done {
		s, effects = page.Update(s, page.Message{Verb: "work"})
		require.LessOrEqual(t, laters(effects), 1)
		count++
		require.Less(t, count, 1000)
	}
	for _, l := range s.Order().Lines {
		if l.Card.Key == "gelcoat" {
			assert.Equal(t, "2", l.Stock.String())
		}
	}
}

// What leaves the page is bought for its chance, even if it is asked for at once.
func TestListsThatLeaveThePageAreFinished(t *testing.T) {
	for _, verb := range []string{"text", "csv", "share", "print"} {
		s, _ := demoOrder(t)
		s, _ = page.Update(s, page.Message{Verb: verb, At: noon})
		assert.True(t, s.Confidence.Done, verb)
	}
}

// RFC 4180: CRLF, every row as long as the heading, quotes doubled; a mark of
// UTF-8 first; a cell that a spreadsheet would run is defused, with spaces or
// full-width signs before it too; decimals have a point.
func TestOrderCSV(t *testing.T) {
	s, _ := demoOrder(t)
	for path, text := range map[string]string{"card.gelcoat.name": `=HYPERLINK("x","pay")`, "card.epoxy-filler.name": " ＋cmd, \"white\"\nsecond", "currency": "@SUM(A1)"} {
		s = do(s, "set", path, text)
	}
	_, effects := page.Update(s, page.Message{Verb: "csv", At: noon})
	text := effects[len(effects)-1].Text
	require.True(t, strings.HasPrefix(text, "\ufeff"))
	assert.NotContains(t, strings.ReplaceAll(text, "\r\n", ""), "\r")
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(text, "\ufeff"))).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 1+len(s.Order().Lines))
	names := map[string][]string{}
	for _, r := range rows {
		require.Len(t, r, len(rows[0]))
		names[r[0]] = r
	}
	gelcoat := names[`'=HYPERLINK("x","pay")`]
	require.NotNil(t, gelcoat)
	assert.Contains(t, names, "' ＋cmd, \"white\"\nsecond")
	assert.Equal(t, "'@SUM(A1)", gelcoat[9])
	assert.Equal(t, "0.8", gelcoat[2])
	assert.Regexp(t, `^[0-9]+(\.[0-9]+)?$`, gelcoat[1])
}

func TestOrderText(t *testing.T) {
	s, _ := demoOrder(t)
	_, effects := page.Update(s, page.Message{Verb: "text", At: noon})
	text := effects[len(effects)-1].Text
	assert.Contains(t, text, "Order list: Tern (made up)")
	assert.Contains(t, text, "• Polyester gel coat: ")
	assert.NotContains(t, text, "price yet")
	assert.Contains(t, text, words.OrderFootnote)
	for _, pack := range []string{"roller.pack.1", "roller.pack.2", "pad.pack.1"} {
		s = do(s, "set", "card."+pack+".price", "")
	}
	_, effects = page.Update(s, page.Message{Verb: "text", At: noon})
	assert.Contains(t, effects[len(effects)-1].Text, "2 more things to buy have no price yet.")
}

func TestChancesAreNeverRoundedUpToCertainty(t *testing.T) {
	assert.Equal(t, "99", words.Percent(0.9999))
	assert.Equal(t, "100", words.Percent(1))
	assert.Equal(t, "95", words.Percent(0.95))
	assert.Equal(t, "0", words.Percent(0))
}

// Every cause has words and an advice.
func TestCausesHaveWords(t *testing.T) {
	s, _ := demoOrder(t)
	s = do(s, "text", "", "")
	seen := map[chance.CauseKind]bool{}
	for _, l := range s.Order().Lines {
		if l.Confidence == nil {
			continue
		}
		for _, e := range l.Confidence.Effects {
			seen[e.Cause.Kind] = true
			assert.NotEmpty(t, words.Cause(e.Cause, false))
			assert.NotEmpty(t, words.Advice(e.Cause))
		}
	}
	assert.Len(t, seen, 5, "the made-up job has every kind of cause")
}
