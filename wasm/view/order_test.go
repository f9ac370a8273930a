package view_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// sureOrder is the made-up job's order, finished, in one of the unit systems.
func sureOrder(t *testing.T, system string) *page.State {
	t.Helper()
	s, _ := page.Start(nil, page.Moment{Date: "2026-05-28", Day: 12 * 3600})
	return settled(t, do(do(do(s, "demo", "", ""), "system", "", system), "go", "order", ""))
}

// settled is a state whose order is known.
func settled(t *testing.T, s *page.State) *page.State {
	t.Helper()
	for range 1000 {
		if s.Confidence.Done {
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
	before, _, _ := strings.Cut(after, "</section>")
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
			assert.Contains(t, list, words.Buy(l, s.Plan.Job.Units))
			assert.Contains(t, list, page.Amount(l.Need, l.Scale, s.Plan.Job.Units))
		}
		assert.Contains(t, list, page.OrderMoney(s))
	}
	assert.Contains(t, paper(t, sureOrder(t, "us")), "\u00a0lb")
}

// Until the work is done the list says that it is as planned; then each line
// opens to its two ways to buy, its choices and what moves it.
func TestALineSaysHowSureItIs(t *testing.T) {
	s, _ := page.Start(nil, page.Moment{})
	s = do(do(s, "demo", "", ""), "go", "order", "")
	assert.Contains(t, view.Page(s).String(), "until then the list is as planned")
	s = sureOrder(t, "metric")
	html := view.Page(s).String()
	assert.NotContains(t, html, "until then the list is as planned")
	assert.Regexp(t, `plan 30\.1, likely \d+ to \d+\x{00a0}kg`, html)
	assert.Regexp(t, `may run short:</b> 1 job in \d`, html)
	assert.NotContains(t, html, "What moves the need most")
	html = view.Page(do(s, "sheet", "order.gelcoat", "")).String()
	assert.Contains(t, view.Page(do(s, "sheet", "need.gelcoat", "")).String(), "Enough in 80 of 100 such jobs")
	assert.Contains(t, html, "What moves the need most")
	assert.Contains(t, html, "Before you start")
	assert.Contains(t, html, "All at once")
	assert.Regexp(t, `likely left: [0-9.]+\x{00a0}kg, worth [0-9]+, good for 6 months`, html, "what waits on the shelf has its price")
	assert.Contains(t, html, "of it for repairs")
	assert.Contains(t, html, ">Losses<")
	assert.Contains(t, html, "Weigh what the first cups really take", "and what to measure")
	assert.Regexp(t, `>1[5-9] of 20 jobs<`, html, "the picture says how many jobs have enough")
	assert.Regexp(t, `>(19|over 19) of 20 jobs<`, html)
	once := settled(t, do(do(s, "sheet", "order.gelcoat", ""), "set", "card.gelcoat.buy", "once"))
	html = view.Page(once).String()
	assert.Contains(t, html, `id="way-once-gelcoat" data-do="set" data-path="card.gelcoat.buy" data-text="once" aria-pressed="true"`)
	assert.NotRegexp(t, `(?i)polyester gel coat[^<]* may run short`, html, "nothing waits for the first cups")
}

// A size that isn't sold here, and sizes without a price, are said.
func TestWhatWasNotLookedAtIsSaid(t *testing.T) {
	s := do(sureOrder(t, "metric"), "set", "card.gelcoat.pack.2.price", "")
	assert.Contains(t, view.Page(do(s, "sheet", "need.gelcoat", "")).String(), "Only the sizes with a price were looked at.")
	for _, n := range []string{"1", "2", "3"} {
		s = do(s, "set", "card.gelcoat.pack."+n+".sold", "no")
	}
	assert.Contains(t, view.Page(s).String(), "No pack size is sold here.")
}

// The list is a line a thing: abrasives of all grades on one, what the shelf
// covers apart. A tick holds for what it was given for: it is kept, undone, and
// said to be old once the packs change.
func TestTheListIsALineAThing(t *testing.T) {
	s := sureOrder(t, "metric")
	things := s.Things()
	seen := map[string]bool{}
	for _, thing := range things {
		assert.False(t, seen[thing.Key], thing.Key)
		seen[thing.Key] = true
		if thing.Key == "disc" {
			require.Len(t, thing.Lines, 2, "P80 and P180")
			assert.Contains(t, thing.Small, "P180\u00a0×\u00a033")
		}
	}
	row := func(s *page.State, key string) string {
		html := view.Page(s).String()
		_, after, found := strings.Cut(html, `id="order.`+key+`"`)
		require.True(t, found, key)
		before, _, _ := strings.Cut(after, "</div>")
		return before
	}
	assert.Contains(t, row(s, "gelcoat"), `aria-pressed="false"`)
	ticked := do(s, "bought", "gelcoat", "")
	assert.Contains(t, row(ticked, "gelcoat"), `aria-pressed="true"`)
	assert.NotEmpty(t, ticked.Doc().Get("ticked.gelcoat.packs"))
	assert.Contains(t, page.OrderText(ticked), "\n✓ Polyester gel coat: ")
	assert.Contains(t, row(do(ticked, "bought", "gelcoat", ""), "gelcoat"), `aria-pressed="false"`)
	assert.Contains(t, row(settled(t, do(ticked, "undo", "", "")), "gelcoat"), `aria-pressed="false"`)
	assert.True(t, ticked.Confidence.Done, "the order needn't be worked out again for a tick")
	more := settled(t, do(ticked, "set", "card.gelcoat.pack.3.sold", "no"))
	assert.Contains(t, row(more, "gelcoat"), "was ticked for "+ticked.Doc().Get("ticked.gelcoat.packs"))

	stocked := do(s, "set", "card.tape.stock", "100 m")
	assert.Contains(t, row(stocked, "tape"), "needs 74\u00a0m, has 100\u00a0m")
	assert.NotContains(t, row(stocked, "tape"), "<button class=\"tick\"")
	assert.NotContains(t, page.OrderText(stocked), "Masking tape")
	one := do(s, "set", "card.disc.grade.P80.stock", "20")
	assert.NotContains(t, page.OrderText(one), "Sanding discs 150 mm, P80")
	assert.Contains(t, page.OrderText(one), "Sanding discs 150 mm, P180", "one grade is no use for the other")
}

// What stops a build-up, and what waits to be typed, stands on the list, on paper,
// in text and in CSV.
func TestAStopStandsOnTheOrder(t *testing.T) {
	s := sureOrder(t, "metric")
	assert.Empty(t, s.Warnings())
	s = do(s, "set", "surface.3.ground", "polystyrene")
	require.NotEmpty(t, s.Stops(), "polyester on polystyrene")
	stop := markup.Text(s.Stops()[0]).String()
	assert.Contains(t, view.Page(s).String(), stop)
	assert.Contains(t, paper(t, s), stop)
	assert.Contains(t, page.OrderText(s), s.Stops()[0])
	assert.Contains(t, page.OrderCSV(s), strings.Split(s.Stops()[0], "\"")[0])
	s = do(sureOrder(t, "metric"), "set", "surface.1.height", "tall")
	left := s.Warnings()
	require.Len(t, left, 1)
	assert.Contains(t, page.OrderText(s), left[0])
	assert.Contains(t, paper(t, s), markup.Text(left[0]).String())
}

// What a coat takes stands beside the trade's figure, which is asked about where
// the plan lies outside.
func TestACoatBesideTheTradesFigure(t *testing.T) {
	s := do(sureOrder(t, "metric"), "sheet", "order.flowcoat", "")
	assert.Regexp(t, `0\.54\x{00a0}kg/m² a coat:</b> usual in the trade: 0\.4 to 0\.6\x{00a0}kg/m² \(common practice\)`, view.Page(s).String())
	asked := func() []page.PerCoat {
		return slices.DeleteFunc(s.Trade(s.Plan.Job.CardByKey("flowcoat")), func(c page.PerCoat) bool { return !c.Asks })
	}
	assert.Empty(t, asked())
	s = do(s, "set", "buildup.1.step.2.film", "250 µm")
	require.Len(t, asked(), 1)
	assert.Contains(t, asked()[0].Text, "Less than usual")
	assert.Contains(t, view.Page(s).String(), "It is intended")
	s = do(s, "intended", asked()[0].Step, "")
	assert.Empty(t, asked(), "it is asked once")
	assert.Contains(t, view.Page(s).String(), "Outside that, as you said.")
	s = do(s, "set", "buildup.1.step.2.film", "240 µm")
	assert.Len(t, asked(), 1, "another figure is asked about again")
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

// The picture of a chance names both ways to buy in its key, and says at each mark how
// many jobs of twenty have enough: the one in the place of the other tells nothing.
func TestThePictureOfAChanceNamesItsWays(t *testing.T) {
	s := sureOrder(t, "metric")
	marked, named := regexp.MustCompile(`<text[^>]*class="strong haloed"[^>]*>([^<]*)`), regexp.MustCompile(`<text[^>]*class="aside"[^>]*>([^<]*)`)
	pictures := 0
	for _, l := range s.Order().Lines {
		if l.Confidence == nil {
			continue
		}
		html := view.Page(do(s, "sheet", "order."+l.Key(), "")).String()
		var all, names []string
		for _, m := range marked.FindAllStringSubmatch(html, -1) {
			all = append(all, m[1])
		}
		for _, m := range named.FindAllStringSubmatch(html, -1) {
			names = append(names, m[1])
		}
		if len(all) == 0 {
			continue
		}
		pictures++
		for _, buys := range []float64{float64(l.Confidence.Start.Buys.Chance), float64(l.Confidence.AtOnce.Buys.Chance)} {
			assert.Contains(t, all, words.OfTwenty(buys))
		}
		isNamed := slices.Contains(names, words.EitherWay) || slices.Contains(names, words.WayStart) && slices.Contains(names, words.WayOnce)
		assert.True(t, isNamed, "%s: %v", l.Card.Name, names)
	}
	assert.Greater(t, pictures, 2)
}

// What stands beside the list says where the area lies, and nothing where there is none.
func TestNothingLiesAnywhereInAnEmptyJob(t *testing.T) {
	empty, _ := page.Start(nil, noon)
	assert.NotContains(t, view.Page(do(empty, "go", "surfaces", "")).String(), `id="lies"`)
	assert.Contains(t, view.Page(do(do(empty, "demo", "", ""), "go", "surfaces", "")).String(), `id="lies"`)
}
