package page_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/air"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// Days are counted over the ends of months and years, leap years too.
// Source: any calendar.
func TestDaysAsPeopleWriteThem(t *testing.T) {
	s := &page.State{Now: page.Moment{Date: "2028-02-27"}}
	for ahead, want := range map[int]string{0: "Today, 27 February", 1: "Tomorrow, 28 February", 2: "In 2 days, 29 February", 3: "In 3 days, 1 March", 400: "In 400 days, 2 April"} {
		assert.Equal(t, want, words.DayAhead(ahead, s.Now.Date))
	}
	s.Now.Date = "2100-02-28"
	assert.Equal(t, "Tomorrow, 1 March", words.DayAhead(1, s.Now.Date), "2100 has no leap day")
	s.Now.Date = "2026-12-31"
	assert.Equal(t, "Tomorrow, 1 January", words.DayAhead(1, s.Now.Date))
	for date, want := range map[string]string{"2026-05-09": "9 May", "2024-05-10": "10 May 2024", "": "", "yesterday": "yesterday", "2026-13-01": "2026-13-01", "day 20000": "day 20000"} {
		assert.Equal(t, want, words.Date(date, s.Now.Date))
	}
	s.Now.Date = ""
	assert.Equal(t, "Today", words.DayAhead(0, s.Now.Date))
}

// What falls outside its window says that it is sanded first, and since when;
// what must be done before the evening says until when, and why.
func TestWhatToHeedOfAWork(t *testing.T) {
	s := &page.State{Now: page.Moment{Date: "2026-05-09"}}
	const hour = unit.Hour
	at := func(w schedule.Work) []string { return words.WorkNotes(&w, s.Now.Date) }
	assert.Empty(t, at(schedule.Work{Kind: plan.SandLayer, From: 9 * hour, To: 10 * hour}))
	assert.Equal(t, []string{"Outside its window, which ended tomorrow, 10 May at 14:30: sand a key first."},
		at(schedule.Work{NeedsKey: true, Closed: unit.Day + 14.5*hour}))
	assert.Equal(t, []string{"Outside its window, which ended before today: sand a key first."}, at(schedule.Work{NeedsKey: true, Closed: -3 * hour}))
	assert.Equal(t, []string{"Sand a key first: this ground is always sanded before the next layer."}, at(schedule.Work{NeedsKey: true}))
	assert.Equal(t, []string{"Begin by 15:00, stop at 16:00: dew comes before it has cured."},
		at(schedule.Work{From: 10 * hour, To: 11 * hour, BeginBy: 15 * hour, StopBy: 16 * hour, Closing: []air.Finding{{Condition: air.TooNearDew}}}))
	assert.Equal(t, []string{"Begin by 17:00, stop at 18:00: dark, or the end of the working day."},
		at(schedule.Work{From: 16 * hour, To: 17 * hour, BeginBy: 17 * hour, StopBy: 18 * hour}))
	assert.Empty(t, at(schedule.Work{From: 8 * hour, To: 9 * hour, BeginBy: 17 * hour, StopBy: 18 * hour}), "time enough")
	assert.Len(t, at(schedule.Work{IsLong: true}), 1)
	said := map[string]bool{}
	for _, err := range []error{schedule.ErrNeverCures, schedule.ErrNoWindow, schedule.ErrTooLong} {
		said[words.ScheduleStop(err)] = true
	}
	assert.Len(t, said, 3, "each stop has its own words")
}

// What is left to buy falls with what is done, and goes by what was taken over.
func TestWhatIsBoughtAgain(t *testing.T) {
	s := loggedDemo(t)
	toBuy := func() float64 {
		for _, l := range s.Order().Lines {
			if l.Card.Key == "gelcoat" {
				return l.ToBuy.InexactFloat64()
			}
		}
		return 0
	}
	whole := toBuy()
	s, _ = sent(s, tenOClock, "done", "buildup.2.step.1", "surface.3")
	rest := toBuy()
	assert.Less(t, rest, whole)
	assert.Contains(t, shownText(underSheet(s, page.BuyRestSheet), "log"), "Beyond what is in stock, as planned")
	sure, _ := sent(s, tenOClock, "go", "order", "")
	for sure.Working {
		sure, _ = sent(sure, tenOClock, "work", "", "")
	}
	assert.Contains(t, shownText(underSheet(sure, page.BuyRestSheet), "log"), "Beyond what is in stock, for the chance set on each card", "said, once the order is worked out for it")
	planned, err := unit.Read(s.Doc().Get("done.1.planned"), unit.InKilogram)
	require.NoError(t, err)
	s, _ = sent(s, tenOClock, "set", "done.1.used", unit.Typed(planned*1.3, unit.InKilogram)+" kg")
	assert.InDelta(t, rest, toBuy(), 1e-12, "nothing is reckoned with unasked")
	s, _ = sent(s, tenOClock, "learn", job.LearntPath("gravity-gun", "gelcoat"), "")
	assert.Greater(t, toBuy(), rest)
}

// Masking is due by the tape's days from the first cup of a coat: three, and one where the sun bakes it on (the tape's card,
// common practice).
func TestMaskingIsDueSoonerInHeat(t *testing.T) {
	s := loggedDemo(t)
	s, _ = sent(s, tenOClock+500, "set", "cup.1.step", "buildup.2.step.1")
	due := s.MaskingDue()
	require.Len(t, due, 1)
	assert.Contains(t, due[0].When, "in 3 days")
	for _, l := range []job.Line{{Path: "day.today.low", Text: "26"}, {Path: "day.today.high", Text: "38"}, {Path: "day.today.read-temp", Text: "36"}, {Path: "day.today.read-humidity", Text: "30"}, {Path: "day.today.sun", Text: "sun"}, {Path: "day.today.colour", Text: "dark"}} {
		s, _ = sent(s, tenOClock+500, "set", l.Path, l.Text)
	}
	due = s.MaskingDue()
	require.Len(t, due, 1)
	assert.Contains(t, due[0].When, "tomorrow")
}

func underSheet(s *page.State, key string) *page.State {
	s, _ = page.Update(s, page.Message{Verb: "sheet", Path: key})
	return s
}
