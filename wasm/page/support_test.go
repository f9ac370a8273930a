package page_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// moment is a time by a shed whose midnight is that of UTC.
func moment(unix int64) page.Moment {
	return page.Moment{Unix: unix, Day: int(unix % 86400), Date: "day " + strconv.FormatInt(unix/86400, 10)}
}

// tenOClock is ten in the morning of some day.
const tenOClock = int64(20_000)*86400 + 10*3600

// sent sends one message at a time.
func sent(s *page.State, at int64, verb, path, text string) (*page.State, []page.Effect) {
	return page.Update(s, page.Message{Verb: verb, Path: path, Text: text, At: moment(at)})
}

// warmBench is what is typed for a dose on a mild morning, in the order of the form.
var warmBench = []job.Line{
	{Path: "bench.now.card", Text: "gelcoat"}, {Path: "bench.now.for", Text: "amount"}, {Path: "bench.now.amount", Text: "100 g"},
	{Path: "bench.now.product-temp", Text: "22"}, {Path: "bench.now.surface-temp", Text: "24"},
	{Path: "day.today.read-temp", Text: "23"}, {Path: "day.today.read-humidity", Text: "55"}, {Path: "day.today.low", Text: "17"}, {Path: "day.today.high", Text: "27"},
	{Path: "bench.now.tool", Text: "scale"}, {Path: "bench.now.scale-step", Text: "0.1 g"}, {Path: "bench.now.syringe-step", Text: "0.1"}, {Path: "bench.now.drops", Text: "32"},
	{Path: "bench.now.pigment", Text: ""}, {Path: "bench.now.thinner", Text: ""}, {Path: "bench.now.tin", Text: ""}, {Path: "bench.now.film", Text: ""},
	{Path: "card.topcoat.ratio-mass", Text: "4"},
}

// warm types all of a mild morning's bench.
func warm(t testing.TB, s *page.State, at int64) *page.State {
	t.Helper()
	for _, l := range warmBench {
		s, _ = sent(s, at, "set", l.Path, l.Text)
	}
	return s
}

// inUse is a page with a cup that has its catalyst.
func inUse(t testing.TB, at int64) *page.State {
	t.Helper()
	s, _ := page.Start(nil, moment(at))
	s = warm(t, s, at)
	require.True(t, s.Bench().HasDose, "%v %v", s.Bench().Reasons, s.Bench().Waiting)
	s, _ = sent(s, at, "weighed", "", "")
	s, _ = sent(s, at, "in", "cup.1", "")
	require.Equal(t, page.Running, page.CupPhase(s.Doc(), "cup.1"))
	return s
}

// shownText is the whole page on a screen, as markup.
func shownText(s *page.State, screen string) string {
	s.Screen = screen
	return view.Page(s).String()
}

// showsDose reports whether markup has a dose in it, of catalyst or of parts.
func showsDose(text string) bool {
	return strings.Contains(text, `id="why-dose.`) || strings.Contains(text, `id="why-part.`) || strings.Contains(text, "by your own count")
}
