package view_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// sureOrder is the made-up job's order, finished, in one of the unit systems.
func sureOrder(t *testing.T, system string) *page.State {
	t.Helper()
	s, _ := page.Start(nil, page.Moment{Date: "2026-05-28", Day: 12 * 3600})
	s = do(do(do(s, "demo", "", ""), "system", "", system), "go", "order", "")
	for range 1000 {
		if s.Sure.Done {
			return s
		}
		s = do(s, "work", "", "")
	}
	require.Fail(t, "the work never ends")
	return s
}

// paper is the part that is printed.
func paper(t *testing.T, s *page.State) string {
	t.Helper()
	_, after, found := strings.Cut(markup.Cut(view.Page(s)).HTML(), `id="paper"`)
	require.True(t, found)
	before, _, _ := strings.Cut(after, "<nav")
	return before
}

func TestThePrintedListHoldsEverythingAndNothingToPress(t *testing.T) {
	for _, system := range []string{"metric", "us"} {
		s := sureOrder(t, system)
		list := paper(t, s)
		assert.NotContains(t, list, "<button")
		assert.NotContains(t, list, "<input")
		for i := range s.Order().Lines {
			l := &s.Order().Lines[i]
			assert.Contains(t, list, markup.Text(l.Card.Name).String())
			assert.Contains(t, list, page.BuyWords(l, s.Plan.Job.Units))
			assert.Contains(t, list, page.Amount(l.Need, l.Scale, s.Plan.Job.Units))
		}
		assert.Contains(t, list, page.OrderMoney(s))
	}
	assert.Contains(t, paper(t, sureOrder(t, "us")), "\u00a0lb")
}

// Until the work is done the list says that it is as planned; then each line
// opens to its choices and to what moves it.
func TestALineSaysHowSureItIs(t *testing.T) {
	s, _ := page.Start(nil, page.Moment{})
	s = do(do(s, "demo", "", ""), "go", "order", "")
	assert.Contains(t, view.Page(s).String(), "as planned, with nothing for what goes otherwise")
	s = sureOrder(t, "metric")
	html := view.Page(s).String()
	assert.Contains(t, html, "Enough in 80 of 100 such jobs")
	assert.NotContains(t, html, "What moves the need most")
	html = view.Page(do(s, "open", "order.gelcoat", "")).String()
	assert.Contains(t, html, "What moves the need most")
	assert.Contains(t, html, "likely left over")
	assert.Regexp(t, `[0-9.]+\x{00a0}kg likely left over, worth [0-9.]+`, html, "what waits on the shelf has its price")
	assert.Contains(t, html, "Keeps 6 months, closed and cool.")
	assert.Contains(t, html, ">Losses<")
}

// A size that isn't sold here, and sizes without a price, are said.
func TestWhatWasNotLookedAtIsSaid(t *testing.T) {
	s := do(sureOrder(t, "metric"), "set", "card.gelcoat.pack.2.price", "")
	assert.Contains(t, view.Page(s).String(), "Only the sizes with a price were looked at.")
	for _, n := range []string{"1", "2", "3"} {
		s = do(s, "set", "card.gelcoat.pack."+n+".sold", "no")
	}
	assert.Contains(t, view.Page(s).String(), "No pack size is sold.")
}

// A sprayed two-pack topcoat puts a caution on the list instead of cartridges.
func TestNoCartridgeForASprayedTopcoat(t *testing.T) {
	s := sureOrder(t, "metric")
	assert.NotContains(t, view.Page(s).String(), "air-fed")
	s = do(s, "set", "buildup.2.step.1.card", "topcoat")
	s = do(s, "set", "buildup.2.step.1.method", "hv-spray")
	s = do(s, "set", "buildup.2.step.1.thinner", "")
	s = do(s, "set", "buildup.2.step.1.coats", "")
	s = do(s, "set", "buildup.2.step.2.taken", "5 µm")
	assert.Contains(t, view.Page(s).String(), "air-fed")
}
