package page_test

import (
	"strconv"
	"strings"
	"testing"
	"time"
	_ "time/tzdata" // for machines without a table of time zones

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// momentIn is a moment as a phone in a place tells it. The time zones are those of the IANA database.
func momentIn(place *time.Location, at time.Time) page.Moment {
	at = at.In(place)
	ahead := func(t time.Time) int { _, ahead := t.In(place).Zone(); return ahead }
	m := page.Moment{Unix: at.Unix(), Day: at.Hour()*3600 + at.Minute()*60 + at.Second(), Date: at.Format(time.DateOnly), Steady: at.Unix()}
	from, to := at.Unix()-86400, at.Unix()+86400
	if before := ahead(time.Unix(from, 0)); before != ahead(time.Unix(to, 0)) {
		m.Shift = ahead(time.Unix(to, 0)) - before
		for m.Turn = from; ahead(time.Unix(m.Turn, 0)) == before; m.Turn++ {
		}
	}
	return m
}

// withCup starts the page with a cup whose catalyst went in at a moment: usable for 20 minutes.
func withCup(in time.Time, now page.Moment) *page.State {
	at := strconv.FormatInt(in.Unix(), 10)
	doc := job.Document{}.Set("cup", "1").Set("cup.1.card", "gelcoat").Set("cup.1.weighed", at).Set("cup.1.in", at).
		Set("cup.1.usable", "20 min").Set("cup.1.early", "30 min").Set("cup.1.late", "50 min")
	s, _ := page.Start(map[string]string{page.Prefix + "job.a": job.Save(doc, 1), page.Prefix + "view": "screen = cup\n"}, now)
	return s
}

func place(t *testing.T, name string) *time.Location {
	t.Helper()
	place, err := time.LoadLocation(name)
	require.NoError(t, err)
	return place
}

// hour is a time of day as the page writes it.
func hour(t time.Time) string { return strings.TrimPrefix(t.Format("15:04"), "0") }

// nights are those on which summer time begins or ends, by places that turn at other hours and by other steps.
var nights = map[string][]string{
	"Europe/Berlin":       {"2026-03-29 01:00", "2026-10-25 01:00"},
	"America/New_York":    {"2026-03-08 07:00", "2026-11-01 06:00"},
	"Australia/Lord_Howe": {"2026-04-04 15:00", "2026-10-03 15:30"},
	"America/Santiago":    {"2026-04-05 03:00", "2026-09-06 04:00"},
}

// The hours of a cup are those that the phone will show, on a summer-time night too: none that isn't there.
func TestHoursOnASummerTimeNight(t *testing.T) {
	for name, turns := range nights {
		shed := place(t, name)
		for _, utc := range turns {
			turn, err := time.Parse("2006-01-02 15:04", utc)
			require.NoError(t, err)
			_, before := turn.Add(-time.Second).In(shed).Zone()
			_, after := turn.In(shed).Zone()
			require.NotEqual(t, before, after, "%s, %s: the clocks change then", name, utc)
			for in := turn.Add(-3 * time.Hour); in.Before(turn.Add(3 * time.Hour)); in = in.Add(17 * time.Minute) {
				for _, gone := range []time.Duration{0, 10 * time.Minute, time.Hour, 5 * time.Hour} {
					s := withCup(in, momentIn(shed, in.Add(gone)))
					for _, since := range []time.Duration{0, 20 * time.Minute, 50 * time.Minute, 3 * time.Hour} {
						assert.Equal(t, hour(in.Add(since).In(shed)), s.HourAfter("cup.1", since.Seconds()),
							"%s: catalyst in at %v, looked at after %v", name, in, gone)
					}
					assert.Equal(t, hour(in.In(shed)), s.HourOf("cup.1.in"))
				}
			}
		}
	}
}

// While the clocks change nothing is said of a clock that was set, and what is left goes on by the second.
func TestAClockThatChangesByItselfIsNone(t *testing.T) {
	shed, turn := place(t, "Europe/Berlin"), time.Date(2026, 3, 29, 1, 0, 0, 0, time.UTC)
	in := turn.Add(-10 * time.Minute)
	s := withCup(in, momentIn(shed, in))
	for at := in; at.Before(in.Add(40 * time.Minute)); at = at.Add(30 * time.Second) {
		s, _ = page.Update(s, page.Message{Verb: "tick", At: momentIn(shed, at)})
		times := s.TimesOf("cup.1")
		assert.Equal(t, (20*time.Minute - at.Sub(in)).Seconds(), times.Left)
		assert.Equal(t, [3]float64{}, [3]float64{times.SetBack, times.SetOn, times.Zone})
	}
}

// Another zone moves the hours and nothing else, and is said.
func TestAnotherZoneIsSaid(t *testing.T) {
	in := time.Date(2026, 6, 1, 21, 50, 0, 0, time.UTC)
	s := withCup(in, momentIn(place(t, "Europe/Lisbon"), in))
	assert.Equal(t, "23:10", s.HourAfter("cup.1", 20*60))
	assert.NotContains(t, view.Page(s).String(), words.Zone)
	for name, hour := range map[string]string{"Europe/Madrid": "0:10", "Asia/Kolkata": "3:40", "Pacific/Auckland": "10:10", "Pacific/Honolulu": "12:10"} {
		next, _ := page.Update(s, page.Message{Verb: "tick", At: momentIn(place(t, name), in.Add(5*time.Minute))})
		times := next.TimesOf("cup.1")
		assert.Equal(t, 15*60., times.Left, name)
		assert.Zero(t, times.SetBack+times.SetOn, name)
		assert.Equal(t, hour, next.HourAfter("cup.1", 20*60), name)
		assert.Contains(t, view.Page(next).String(), words.Zone, name)
	}
}

// A clock set while the page was shut can put a cup's catalyst into the future: no time is made up for it.
func TestACatalystThatIsYetToGoIn(t *testing.T) {
	shed := place(t, "Europe/Lisbon")
	now := time.Date(2026, 6, 1, 9, 0, 0, 0, time.UTC)
	s := withCup(now.Add(2*time.Hour), momentIn(shed, now))
	require.True(t, s.TimesOf("cup.1").IsUnknown)
	shown := view.Page(s).String()
	assert.Contains(t, shown, words.Ahead("12:00"))
	assert.NotContains(t, shown, words.StopSpreading)
}

// A cup that nobody ended for a week says so, and shows no hour as if it were today's.
func TestACupLeftForAWeek(t *testing.T) {
	shed := place(t, "Europe/Lisbon")
	in := time.Date(2026, 6, 1, 9, 0, 0, 0, time.UTC)
	s := withCup(in, momentIn(shed, in.Add(30*time.Minute)))
	assert.Contains(t, view.Page(s).String(), words.StopSpreading)
	s = withCup(in, momentIn(shed, in.Add(7*24*time.Hour)))
	shown := view.Page(s).String()
	assert.Contains(t, shown, words.DaysOld("7 days"))
	assert.NotContains(t, shown, words.StopSpreading)
	assert.NotContains(t, shown, words.GelsFrom)
}

// The hours of the log are those of its own days: a cup weighed in winter was weighed at the hour that the phone showed
// then, and is so by summer time and in another zone. One of an older job, which didn't take it down, has none after a day.
func TestAnOldLogKeepsItsHours(t *testing.T) {
	berlin, york := place(t, "Europe/Berlin"), place(t, "America/New_York")
	winter := time.Date(2026, 1, 20, 14, 5, 0, 0, berlin)
	logged := func(weighed time.Time) func(page.Moment) *page.State {
		s, _ := page.Start(nil, momentIn(berlin, weighed))
		send := func(at page.Moment, verb, path, text string) {
			s, _ = page.Update(s, page.Message{Verb: verb, Path: path, Text: text, At: at})
		}
		for _, l := range warmBench {
			send(momentIn(berlin, weighed), "set", l.Path, l.Text)
		}
		require.True(t, s.Bench().HasDose, "%v %v", s.Bench().Reasons, s.Bench().Waiting)
		send(momentIn(berlin, weighed), "weighed", "", "")
		send(momentIn(berlin, weighed.Add(time.Minute)), "in", "cup.1", "")
		send(momentIn(berlin, weighed.Add(6*time.Minute)), "end", "cup.1", "left")
		return func(at page.Moment) *page.State {
			send(at, "tick", "", "")
			return s
		}
	}
	midnight := time.Date(2026, 1, 20, 0, 0, 0, 0, berlin)
	afternoon, night := logged(winter), logged(midnight)
	for name, at := range map[string]page.Moment{"the same day": momentIn(berlin, winter.Add(time.Hour)), "in summer": momentIn(berlin, winter.AddDate(0, 6, 0)),
		"in another zone": momentIn(york, winter.Add(3*time.Hour)), "in another zone, in summer": momentIn(york, winter.AddDate(0, 6, 0))} {
		assert.Equal(t, "14:05", afternoon(at).HourOf("cup.1.weighed"), name)
		assert.Equal(t, "0:00", night(at).HourOf("cup.1.weighed"), name)
	}
	old := withCup(winter, momentIn(berlin, winter.AddDate(0, 6, 0)))
	assert.Empty(t, old.HourOf("cup.1.weighed"), "an hour off is worse than none")
	recent := withCup(winter, momentIn(berlin, winter.Add(20*time.Hour)))
	assert.Equal(t, "14:05", recent.HourOf("cup.1.weighed"))
}

// Where the phone doesn't let a page keep the screen awake, no alarm can be relied on: the clock says so, and never more
// than two things at once.
func TestAScreenThatMaySleepIsSaid(t *testing.T) {
	s := inUse(t, tenOClock)
	notes := func(s *page.State) string { return region(t, shownText(s, "cup"), "clock-note") }
	assert.NotContains(t, notes(s), words.OwnTimer)
	assert.Contains(t, notes(s), words.SilentYet)
	sleepy, _ := sent(s, tenOClock+1, "may-sleep", "", "")
	assert.Contains(t, notes(sleepy), words.OwnTimer)
	assert.Contains(t, notes(sleepy), words.Warm, "what the hand must know stays")
	assert.NotContains(t, notes(sleepy), words.SilentYet)
	awake, _ := sent(sleepy, tenOClock+2, "awake", "", "")
	assert.Equal(t, notes(s), notes(awake))
}
