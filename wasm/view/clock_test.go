package view_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// later lets time go on, in seconds after noon.
func later(s *page.State, seconds float64) *page.State {
	at := noon
	at.Unix, at.Day = at.Unix+int64(seconds), at.Day+int(seconds)
	s, _ = page.Update(s, page.Message{Verb: "tick", At: at})
	return s
}

// textIn is what a piece of a page says, a space between its elements.
func textIn(markup string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(anyTag.ReplaceAllString(markup, " "), "\u00a0", " ")), " ")
}

// region gives the element with the id, with all that is in it.
func regionOf(t *testing.T, html, id string) string {
	t.Helper()
	at := strings.Index(html, `id="`+id+`"`)
	require.NotEqual(t, -1, at, "no region %s", id)
	from := strings.LastIndex(html[:at], "<")
	tag := regexp.MustCompile(`^<(\w+)`).FindStringSubmatch(html[from:])[1]
	ends, depth := regexp.MustCompile(`<(/?)`+tag+`\b`).FindAllStringSubmatchIndex(html[from:], -1), 0
	for _, e := range ends {
		if e[2] == e[3] {
			depth++
		} else {
			depth--
		}
		if depth == 0 {
			return html[from : from+e[0]]
		}
	}
	t.Fatal(id)
	return ""
}

// A cup's clock says what is left, as words, as a ring and by its class, and the hours at which to stop and at which it gels.
func TestACupsClockSaysWhatIsLeft(t *testing.T) {
	s := cups(t)["running"]
	length := func(key string) float64 {
		si, err := unit.Read(s.Doc().Get("cup.1."+key), unit.InMinute)
		require.NoError(t, err)
		return si
	}
	usable, early, late := length("usable"), length("early"), length("late")
	require.True(t, 120 < usable && usable < early && early < late)
	for _, since := range []float64{0, usable - 61, usable - 60, usable - 1, usable, usable + 65, usable + 6001} {
		since = math.Floor(since)
		shown := later(s, since)
		html := view.Page(shown).String()
		left := usable - since
		is, phase := "on", words.LeftToSpread
		switch {
		case left <= 0:
			is, phase = "over", words.TimeIsUp
		case left <= 60:
			is, phase = "last", words.LastMinute
		}
		n := int(math.Abs(left))
		time := fmt.Sprintf("%d:%02d", n/60, n%60)
		if n >= 6000 {
			time = fmt.Sprintf("%d h %d min", n/3600, n/60%60)
		}
		clock := regionOf(t, html, "clock")
		assert.Contains(t, clock, `data-is="`+is+`"`, "%v", since)
		assert.Equal(t, time+" "+phase, textIn(regionOf(t, html, "time-cup.1")))
		assert.Equal(t, len(time) > 4, strings.Contains(clock, `class="time long"`), time)
		dash := regexp.MustCompile(`stroke-dasharray="([\d.]+) `).FindStringSubmatch(clock)
		if left <= 0 {
			assert.Nil(t, dash)
		} else {
			assert.Equal(t, fmt.Sprintf("%.1f", 2*math.Pi*84*left/usable), fmt.Sprintf("%.1f", mustRead(t, dash[1])))
		}
		assert.NotContains(t, clock, "ring-mark")
		hour := func(after float64) string { return words.Clock(noon.Day + int(math.Floor(after))) }
		assert.Contains(t, textIn(clock), hour(usable)+" "+words.StopSpreading+" "+hour(early)+" "+words.GelsFrom+" "+hour(late)+" "+words.GelsUntil)
		assert.Equal(t, words.Warm+" "+words.SilentYet, textIn(regionOf(t, html, "clock-note")))
	}
	assert.Equal(t, words.Warm, textIn(regionOf(t, view.Page(do(s, "audible", "", "")).String(), "clock-note")))
	assert.Equal(t, words.Warm+" "+words.OwnTimer, textIn(regionOf(t, view.Page(do(do(s, "audible", "", ""), "may-sleep", "", "")).String(), "clock-note")))
	assert.NotContains(t, view.Page(later(s, 90000)).String(), words.StopSpreading, "an hour of another day would be taken for one of today")
	assert.Contains(t, textIn(regionOf(t, view.Page(later(s, 90000)).String(), "clock-note")), "went in 1 day ago")
	before := later(s, -120)
	assert.Contains(t, textIn(regionOf(t, view.Page(before).String(), "clock")), "– "+words.ClockUnknown, "the clock went back past the catalyst")
}

func mustRead(t *testing.T, text string) float64 {
	t.Helper()
	n, err := unit.Read(text, unit.InPure)
	require.NoError(t, err)
	return n
}

// A timed test counts up, its ring empties by the latest gel with the earliest marked on it, and it ends with the string.
func TestATimedTestCountsUp(t *testing.T) {
	s := cups(t)["test"]
	cup := page.OpenCups(s.Doc(), page.Running)[0]
	early, late := mustRead(t, strings.Fields(s.Doc().Get(cup + ".early"))[0]), mustRead(t, strings.Fields(s.Doc().Get(cup + ".late"))[0])
	html := view.Page(later(s, 125)).String()
	clock := regionOf(t, html, "clock")
	assert.Contains(t, clock, `data-is="test"`)
	assert.Equal(t, "2:05 "+words.SinceCatalyst, textIn(regionOf(t, html, "time-"+cup)))
	dash := regexp.MustCompile(`stroke-dasharray="([\d.]+) `).FindStringSubmatch(clock)
	assert.InDelta(t, 2*math.Pi*84*(1-125/(late*60)), mustRead(t, dash[1]), 0.06)
	mark := regexp.MustCompile(`class="ring-mark" d="M([\d.]+) ([\d.]+)`).FindStringSubmatch(clock)
	require.NotNil(t, mark)
	angle := 2 * math.Pi * (1 - early/late)
	assert.InDelta(t, 100+72*math.Sin(angle), mustRead(t, mark[1]), 0.06)
	assert.InDelta(t, 100-72*math.Cos(angle), mustRead(t, mark[2]), 0.06)
	assert.NotContains(t, textIn(clock), words.StopSpreading)
	assert.Contains(t, textIn(clock), words.GelsFrom)
	assert.Equal(t, textIn(words.TestHow), textIn(regionOf(t, html, "clock-note")))
	act := buttonsOf(regionOf(t, html, "act"))
	require.Len(t, act, 1)
	assert.Equal(t, button{do: "end", path: cup, text: "gelled", label: words.StringSnapped}, act[0])
}

// Of two cups the one with the least time left stands in front; the other is a chip with its own time and leads to its clock.
func TestTheCupThatRunsOutFirstStandsInFront(t *testing.T) {
	s := later(cups(t)["running"], 60)
	s = do(do(do(s, "sheet", page.NextCup, ""), "set", "bench.now.amount", "100 g"), "sheet", page.WeighSheet, "")
	at := noon
	at.Unix, at.Day = at.Unix+60, at.Day+60
	for _, m := range []page.Message{{Verb: "weighed", At: at}, {Verb: "in", Path: "cup.2", At: at}} {
		s, _ = page.Update(s, m)
	}
	require.Len(t, page.OpenCups(s.Doc(), page.Running), 2)
	assert.Contains(t, view.Page(s).String(), `id="time-cup.2"`, "the one that has just begun is looked at")
	none := *s
	none.Open, s = nil, &none
	left := func(cup string) float64 { return s.TimesOf(cup).Left }
	front, other := "cup.1", "cup.2"
	if left("cup.2") < left("cup.1") {
		front, other = other, front
	}
	html := view.Page(s).String()
	assert.Contains(t, html, `id="time-`+front+`"`)
	chip := buttonsOf(regionOf(t, html, "others"))
	require.Len(t, chip, 1)
	n := int(left(other))
	assert.Equal(t, "front "+other, chip[0].do+" "+chip[0].path)
	assert.Contains(t, chip[0].label, fmt.Sprintf("%d:%02d", n/60, n%60))
	assert.Contains(t, view.Page(do(s, "front", other, "")).String(), `id="time-`+other+`"`)
}

// What bears on a cup stands under its answer with the mark of its kind: what stops first, then what asks, then what wasn't
// looked at; nothing that stops or asks is left out, and none is told twice.
func TestEveryVerdictHasTheMarkOfItsKind(t *testing.T) {
	marks := map[bench.Kind]string{bench.Stops: "stops", bench.Asks: "asks", bench.NotChecked: "unchecked", bench.Holds: "holds"}
	rank := map[string]int{"stops": 0, "asks": 1, "unchecked": 2, "holds": 3}
	strip := regexp.MustCompile(`(?s)class="verdict" data-is="(\w+)"[^>]*>(.*?)</(?:p|button)>`)
	base := cups(t)["planned"]
	met := map[bench.Kind]map[bench.Subject]bool{}
	for _, set := range [][]string{{}, {"bench.now.surface-temp", "33"}, {"bench.now.surface-temp", "38"}, {"day.today.read-humidity", "90"}, {"day.today.read-humidity", "20"}, {"day.today.low", "8"},
		{"bench.now.product-temp", "31"}, {"bench.now.product-temp", "45"}, {"bench.now.locker", "3 m³"}, {"bench.now.locker", "0.3 m³"}, {"bench.now.locker", "20 L"}, {"day.today.read-temp", ""}, {"bench.now.surface-temp", "16"}, {"bench.now.surface-temp", "14", "day.today.read-humidity", "80"}} {
		s := base
		for i := 0; i < len(set); i += 2 {
			s = do(s, "set", set[i], set[i+1])
		}
		list := strip.FindAllStringSubmatch(regionOf(t, view.Page(s).String(), "verdicts"), -1)
		b, last, units := s.Bench(), 0, s.Plan.Job.Units
		told := map[string]string{}
		for _, m := range list {
			text := textIn(strings.Split(m[2], "<u>")[0])
			assert.Empty(t, told[text], "%v: told twice: %s", set, text)
			told[text] = m[1]
			if !strings.HasPrefix(text, words.EstimateFirst) {
				assert.GreaterOrEqual(t, rank[m[1]], last, "%v: %s", set, text)
				last = rank[m[1]]
			}
		}
		if slices.Contains(set, "day.today.read-temp") {
			assert.Equal(t, "unchecked", told[words.FitUnchecked+" "+words.ReadTheAir], "said once of dew and humidity")
			assert.NotContains(t, fmt.Sprint(told), "Dew not checked")
			assert.NotContains(t, fmt.Sprint(told), "Humidity not checked")
		}
		for _, v := range b.Verdicts() {
			why := ""
			if v.Err != nil {
				why = words.Dose(v.Err, units)
			}
			first, rest := words.Verdict(v, why, units)
			text := textIn(first + " " + rest)
			isSaidAbove := v.Subject == bench.Heat && v.Kind == bench.Stops && len(b.Reasons) > 0
			if v.Kind == bench.Stops && !isSaidAbove || v.Kind == bench.Asks {
				assert.Equal(t, marks[v.Kind], told[text], "%v: %s", set, text)
			} else if mark, isTold := told[text]; isTold {
				assert.Equal(t, marks[v.Kind], mark, "%v: %s", set, text)
			}
			if met[v.Kind] == nil {
				met[v.Kind] = map[bench.Subject]bool{}
			}
			met[v.Kind][v.Subject] = true
		}
	}
	assert.GreaterOrEqual(t, len(met[bench.Stops]), 4)
	assert.GreaterOrEqual(t, len(met[bench.Asks]), 2)
}
