package page_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

const day = 86400

// amount is what a dose could be written as.
var amount = regexp.MustCompile(`[0-9]\x{00a0}(g|mL|oz|fl oz|drops|% by mass)`)

// dosed is what a dose alone could be written as: a remedy may aim at a cup of so many grams.
var dosed = regexp.MustCompile(`[0-9]\x{00a0}(mL|fl oz|drops|% by mass)`)

// region cuts an element with an id out of markup that closes it before the next section.
func region(t *testing.T, text, id string) string {
	t.Helper()
	_, rest, found := strings.Cut(text, `id="`+id+`"`)
	require.True(t, found, id)
	inside, _, _ := strings.Cut(rest, "</section>")
	return inside
}

// onSheet is the whole page on the cup's screen with a sheet on it.
func onSheet(s *page.State, sheet string) string {
	with := *s
	with.Sheets = []string{sheet}
	return shownText(&with, "cup")
}

func TestYesterdaysReadingsGiveNoDose(t *testing.T) {
	s, _ := page.Start(nil, moment(tenOClock))
	s = warm(t, s, tenOClock)
	require.True(t, s.Bench().HasDose)
	require.True(t, showsDose(shownText(s, "cup")))

	next, _ := sent(s, tenOClock+day, "tick", "", "")
	assert.False(t, next.Bench().HasDose, "the page was open all night")
	assert.Contains(t, next.Bench().Reasons, bench.ErrOtherDay)
	assert.False(t, showsDose(shownText(next, "cup")))
	weighed, _ := sent(s, tenOClock+day, "weighed", "", "")
	assert.Empty(t, weighed.Doc().Items("cup"), "nothing is weighed by a dose that is a day old")

	next, _ = sent(next, tenOClock+day, "set", "bench.now.product-temp", "22")
	assert.Empty(t, next.Doc().Get("bench.now.surface-temp"), "a new day's reading doesn't make yesterday's beside it new")
	next, _ = sent(next, tenOClock+day, "set", "day.today.low", "17")
	assert.Empty(t, next.Doc().Get("day.today.read-humidity"))
	assert.False(t, next.Bench().HasDose)
	for _, l := range warmBench[3:9] {
		next, _ = sent(next, tenOClock+day, "set", l.Path, l.Text)
	}
	assert.True(t, next.Bench().HasDose, "all read again: %v", next.Bench().Reasons)

	back, _ := sent(next, tenOClock+day, "undo", "", "")
	for range 10 {
		back, _ = sent(back, tenOClock+day, "undo", "", "")
	}
	assert.Equal(t, "24", back.Doc().Get("bench.now.surface-temp"), "undo brings back what was put away")
	assert.False(t, back.Bench().HasDose, "but not as of today")
}

func TestColdEveningComesWithoutATouch(t *testing.T) {
	s, _ := page.Start(nil, moment(tenOClock))
	s = warm(t, s, tenOClock)
	s, _ = sent(s, tenOClock, "set", "day.today.low", "12")
	require.True(t, s.Bench().HasDose, "%v", s.Bench().Reasons)
	s, _ = sent(s, tenOClock+13*3600, "tick", "", "")
	assert.False(t, s.Bench().HasDose)
	var evening *cure.ColdEveningError
	require.Len(t, s.Bench().Reasons, 1)
	assert.ErrorAs(t, s.Bench().Reasons[0], &evening)
}

// No dose stands on a page that refuses one: not as a figure, nor in a reason, a remedy or on the shed card.
func TestNoDoseAnywhereOnAHotDay(t *testing.T) {
	s, _ := page.Start(nil, moment(tenOClock))
	s = warm(t, s, tenOClock)
	require.Contains(t, onSheet(s, "shedcard"), `class="shedcard"`)
	for _, c := range [][2]string{{"surface-temp", "38"}, {"surface-temp", "12"}, {"surface-temp", "nonsense"}, {"product-temp", "38"}, {"amount", "0 g"}, {"scale-step", "x"}} {
		hot, _ := sent(s, tenOClock, "set", "bench.now."+c[0], c[1])
		for _, sheet := range []string{"", "sums", "weigh", "catalyst", "remedies", "shedcard", "setup", "air", "tin"} {
			text := onSheet(hot, sheet)
			assert.False(t, showsDose(text), "%v %s", c, sheet)
			assert.NotContains(t, text, `class="shedcard"`, "%v %s", c, sheet)
			assert.NotRegexp(t, amount, region(t, text, "answer"), "%v %s", c, sheet)
		}
		assert.NotRegexp(t, dosed, region(t, onSheet(hot, "remedies"), "remedies"), c)
	}
	steep, _ := sent(s, tenOClock, "set", "bench.now.surface-temp", "16")
	steep, _ = sent(steep, tenOClock, "set", "bench.now.product-temp", "29")
	assert.NotRegexp(t, amount, region(t, shownText(steep, "cup"), "answer"), "a reason names no dose")
	running := inUse(t, tenOClock)
	assert.NotContains(t, onSheet(running, "shedcard"), `class="shedcard"`)
}

func TestAJumpOfTemperatureIsAsked(t *testing.T) {
	s := inUse(t, tenOClock)
	s, _ = sent(s, tenOClock+60, "end", "cup.1", "spread")
	s, _ = sent(s, tenOClock+60, "set", "bench.now.surface-temp", "7")
	assert.Contains(t, shownText(s, "cup"), "at the last cup it was 24\u00a0°C. Is that right?")
	assert.Contains(t, s.Bench().Reasons, bench.ErrJump)
	s, _ = sent(s, tenOClock+60, "real", "bench.now.surface-temp", "7")
	assert.NotContains(t, s.Bench().Reasons, bench.ErrJump)
}

func TestAGelledCupMovesTheMinutes(t *testing.T) {
	s := inUse(t, tenOClock)
	before := s.Bench().Gel.Time.Mid.Value
	assert.InDelta(t, 250, unit.InGram.From(float64(s.Bench().Hand.Largest.Value)), 1e-9, "nobody has timed this tin")
	s, _ = sent(s, tenOClock+30*60, "end", "cup.1", "gelled")
	assert.Equal(t, "30 min", s.Doc().Get("cup.1.gel"))
	s, _ = sent(s, tenOClock+30*60, "take", "cup.1", "")
	require.Equal(t, []string{"1"}, s.Doc().Items("test"))
	assert.Equal(t, "30 min", s.Doc().Get("test.1.minutes"))
	assert.Equal(t, "100 g", s.Doc().Get("test.1.mass"))
	assert.Equal(t, cure.Scaled, s.Bench().Gel.Fit)
	assert.NotEqual(t, before, s.Bench().Gel.Time.Mid.Value)
	assert.Greater(t, float64(s.Bench().Hand.Largest.Value), 0.25, "a tested tin allows a working cup")
	s, _ = sent(s, tenOClock+30*60, "take", "cup.1", "")
	assert.Equal(t, []string{"1"}, s.Doc().Items("test"), "one cup is one test")
	assert.Contains(t, s.Notice, "already")
}

func TestACupThatWontGoOffGetsNothingAdded(t *testing.T) {
	s := inUse(t, tenOClock)
	s, _ = sent(s, tenOClock+3600, "end", "cup.1", "no-cure")
	text := shownText(underSheet(s, "cup.1"), "log")
	assert.Contains(t, text, "Add nothing: a second dose can run away")
	assert.False(t, showsDose(text))
	assert.Contains(t, shownText(underSheet(s, page.Part("cup.1", page.TakenPart)), "log"), "Catalyst that went in: ", "what is logged says that it is past")
}

// Undo and redo never lose a cup from the log, however the list was changed before.
func TestUndoKeepsEveryLoggedCup(t *testing.T) {
	s := inUse(t, tenOClock)
	s, _ = sent(s, tenOClock+60, "end", "cup.1", "spread")
	for _, change := range []string{"remove", "move"} {
		later := s
		for range 2 {
			later, _ = sent(later, tenOClock+120, "weighed", "", "")
			open := page.OpenCups(later.Doc(), page.Weighed)[0]
			later, _ = sent(later, tenOClock+180, "end", open, "scrap")
		}
		later, _ = sent(later, tenOClock+200, change, "cup.1", "down")
		later, _ = sent(later, tenOClock+220, "weighed", "", "")
		open := page.OpenCups(later.Doc(), page.Weighed)[0]
		later, _ = sent(later, tenOClock+240, "end", open, "scrap")
		for _, verb := range []string{"undo", "undo", "undo", "redo", "redo", "redo"} {
			later, _ = sent(later, tenOClock+300, verb, "", "")
			assert.Contains(t, page.OpenCups(later.Doc(), page.Ended), open, "%s after %s", verb, change)
		}
	}
}

// A reading far from the curve of low and high is asked about: one of them, or the hour, is wrong.
func TestAReadingOffTheDaysCurveIsAsked(t *testing.T) {
	s, _ := page.Start(nil, moment(tenOClock))
	s = warm(t, s, tenOClock)
	assert.NotContains(t, onSheet(s, "air"), "off the curve between")
	s, _ = sent(s, tenOClock, "set", "day.today.high", "50")
	s, _ = sent(s, tenOClock, "set", "day.today.low", "40")
	assert.Contains(t, onSheet(s, "air"), "off the curve between")
}

// What went on today stays in the air's sum by method, beside the next cup.
func TestTheDaysVapourStandsByMethod(t *testing.T) {
	s := inUse(t, tenOClock)
	s, _ = sent(s, tenOClock+60, "end", "cup.1", "spread")
	s, _ = sent(s, tenOClock+60, "set", "bench.now.method", "nap-roller")
	text := region(t, onSheet(s, "space"), "vapourfigures")
	require.Len(t, s.Bench().Vapour.Day, 2)
	for _, way := range s.Bench().Vapour.Day {
		assert.Contains(t, text, way.Method.Name+", 1 cup")
	}
}

// It won't go off: how long to wait at this temperature, what warming does, when
// to scrape; and nothing to add.
func TestWhatIsSaidOfACupThatWontGoOff(t *testing.T) {
	s := inUse(t, tenOClock)
	require.Equal(t, []string{"cup.1"}, page.OpenCups(s.Doc(), page.Running))
	s, _ = sent(s, tenOClock+20*60, "sheet", page.WontSheet, "")
	text := shownText(s, "cup")
	for _, part := range []string{"Add nothing.", "At this temperature it may take until", "Still soft at", "scrape it off"} {
		assert.Contains(t, text, part)
	}
	stuck, err := s.WontGoOff("cup.1")
	require.NoError(t, err)
	assert.Contains(t, text, "Still soft at "+s.HourAfter("cup.1", float64(stuck.Scrape.Value)))
}

// Of a surface that isn't read, or whose text can't be, nobody is told that it is fit to coat, nor how far it lies over
// the dew point.
func TestFitIsNotSaidOfASurfaceThatIsntRead(t *testing.T) {
	s, _ := page.Start(nil, moment(tenOClock))
	s = warm(t, s, tenOClock)
	figure := func(s *page.State) string { return region(t, onSheet(s, "air"), "fig-overdew") }
	require.Contains(t, onSheet(s, "air"), words.FitAllDay)
	require.Contains(t, figure(s), "10.5")
	for _, text := range []string{"", "nonsense"} {
		unread, _ := sent(s, tenOClock, "set", "bench.now.surface-temp", text)
		assert.NotContains(t, onSheet(unread, "air"), words.FitAllDay, "%q", text)
		assert.Contains(t, onSheet(unread, "air"), words.ReadTheSurface, "%q", text)
		assert.Contains(t, figure(unread), `class="value">–</span>`, "%q", text)
	}
}

// What brings a dose back is told as it is done: a cold part isn't put in the shade, nor a cold tin in cold water.
func TestAWayBackWarmsWhatIsCold(t *testing.T) {
	s, _ := page.Start(nil, moment(tenOClock))
	s = warm(t, s, tenOClock)
	for surface, want := range map[string]struct{ has, lacks string }{"12": {"part warmed", "shade"}, "38": {"part in the shade", "warmed"}} {
		s, _ := sent(s, tenOClock, "set", "bench.now.surface-temp", surface)
		answer := region(t, shownText(s, "cup"), "answer")
		require.Contains(t, answer, words.BringsItBack, surface)
		assert.Contains(t, answer, want.has, surface)
		assert.NotContains(t, answer, want.lacks, surface)
	}
}

// Under the dew point is said as under, not as a negative figure over it.
func TestASurfaceUnderTheDewPointIsSaidToBe(t *testing.T) {
	s, _ := page.Start(nil, moment(tenOClock))
	s = warm(t, s, tenOClock)
	s, _ = sent(s, tenOClock, "set", "bench.now.surface-temp", "12")
	for _, sheet := range []string{"fit", "air"} {
		assert.Contains(t, onSheet(s, sheet), "1.5\u00a0°C below the dew point", sheet)
		assert.NotContains(t, onSheet(s, sheet), "only −", sheet)
	}
}
