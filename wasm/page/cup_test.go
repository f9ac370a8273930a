package page_test

import (
	"flag"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
)

// walks is how many builders of 500 messages TestOneDose follows.
var walks = flag.Uint64("walks", 30, "walks of 500 messages")

// secondsLeft is what a running cup has to the end of its usable time.
func secondsLeft(t *testing.T, d job.Document, cup string, now page.Moment) float64 {
	in, err := strconv.ParseInt(d.Get(cup+".in"), 10, 64)
	require.NoError(t, err)
	usable, err := unit.Read(d.Get(cup+".usable"), unit.InMinute)
	require.NoError(t, err)
	return float64(in) + usable - float64(now.Unix)
}

// checkAlarms holds the alarms against one for each cup and stage.
func (b *walker) checkAlarms(m page.Message, effects []page.Effect) {
	due, rung := 0, 0
	if m.Verb == "tick" {
		for _, path := range page.OpenCups(b.s.Doc(), page.Running) {
			if page.IsTestCup(b.s.Doc(), path) {
				continue // nothing is spread of it
			}
			left := secondsLeft(b.t, b.s.Doc(), path, b.s.Now)
			stage := 0
			if left <= 60 {
				stage = 1
			}
			if left <= 0 {
				stage = 2
			}
			if stage > b.alarms[b.id(path)] {
				b.alarms[b.id(path)] = stage
				due++
			}
		}
	}
	for _, e := range effects {
		if e.Kind == page.Sound {
			rung++
		}
	}
	require.Equal(b.t, due, rung, "alarms at %+v", m)
	b.seen.stages += rung
}

// checkCups holds every cup that has its catalyst against going back, and
// whatever dose may be shown against what it rests on.
func (b *walker) checkCups(m page.Message) {
	d, out := b.s.Doc(), b.s.Bench()
	for id, in := range b.in {
		if id.inDemo == b.s.InDemo && d.Get(id.path+".weighed") == id.weighed {
			require.NotEqual(b.t, page.Weighed, page.CupPhase(d, id.path), "%s is before its catalyst again after %+v", id.path, m)
			if page.CupPhase(d, id.path) == page.Running {
				require.Equal(b.t, in, d.Get(id.path+".in"), "the start of %s moved with %+v", id.path, m)
			}
		}
	}
	cup, may := b.s.DoseFor()
	if !may {
		return
	}
	if cup != "" {
		require.Empty(b.t, b.in[b.id(cup)], "a second dose for %s after %+v", cup, m)
	}
	if cup != "" && d.Get(cup+".kind") == job.TestCup && !out.HasDose {
		require.NotNil(b.t, b.s.TestWay(), "a timed test over the table's end after %+v", m)
	} else {
		require.True(b.t, out.HasDose || out.HasParts, "%+v", m)
		require.Empty(b.t, out.Reasons, "%+v", m)
		require.Empty(b.t, out.Waiting, "%+v", m)
	}
	for _, r := range b.s.Plan.Refused() {
		for _, under := range []string{"bench.", "day.", "test.", out.Card.Path + "."} {
			require.False(b.t, strings.HasPrefix(r.Path, under), "a dose beside the refused %s", r.Path)
		}
	}
	require.Equal(b.t, b.s.Now.Date, d.Get("bench.now.read-on"), "a dose by another day's readings")
	if d.Get("day.today.date") != b.s.Now.Date {
		require.False(b.t, out.Air.HasCurve, "a dose by another day's air")
	}
}

// steps is what may lie over the cup's screen: nothing, and each of its steps.
var steps = [][]string{nil, {page.WeighSheet}, {page.WeighTestSheet}, {page.WeighSheet, page.CatalystSheet}, {page.NextCup}, {page.NextCup, page.WeighSheet}, {page.WontSheet}, {"sums"}, {"shedcard"}, {"setup"}}

// checkPage looks for a dose in all that the cup's screen shows, at every step.
func (b *walker) checkPage(m page.Message) {
	cup, may := b.s.DoseFor()
	running := page.OpenCups(b.s.Doc(), page.Running)
	for _, sheets := range steps {
		s := *b.s
		s.Screen, s.Sheets = "cup", sheets
		top := s.Sheet()
		text := shownText(&s, "cup")
		// Beside a running cup, or one whose catalyst may be in, the next cup's dose is shown only where it was asked for.
		onPlan := may && b.s.PourFor("") != nil && (len(running) == 0 && !s.NextWaits() || slices.Contains(sheets, page.NextCup))
		onScreen := onPlan && (len(running) == 0 || top == page.NextCup) // a running cup's clock stands in its place
		onCatalyst := may && cup != "" && top == page.CatalystSheet
		require.Equal(b.t, onScreen || onCatalyst, showsDose(text), "%v after %+v", sheets, m)
		require.LessOrEqual(b.t, strings.Count(text, `id="why-dose.grams"`), 1, "a dose is seen once: %v after %+v", sheets, m)
		require.Equal(b.t, onCatalyst, strings.Contains(text, `id="catalyst-in"`), "%v after %+v", sheets, m)
		if onScreen || onCatalyst {
			b.seen.doses++
			continue
		}
		b.seen.refusals++
		for _, path := range running {
			if _, ml, found := strings.Cut(b.doses[b.id(path)], "("); found {
				require.NotContains(b.t, text, ">"+strings.TrimSuffix(ml, ")")+"<", "the dose of %s is on the page after %+v", path, m)
			}
		}
	}
}

// By no sequence of messages does a cup get a second dose: once catalyst is in,
// the page never shows one for it again, over undo, imports, jumps of the clock
// and reloads. What dose there is rests on nothing refused, missing or of
// another day, and each stage of a cup alarms once.
// (All of 200,000 messages: -walks 400.)
func TestOneDose(t *testing.T) {
	var seen walked
	for seed := range *walks {
		b := newBench(t, seed)
		for range 500 {
			b.step()
		}
		seen.add(b.seen)
	}
	t.Logf("%+v", seen)
	assert.Greater(t, seen.doses, int(*walks)*5, "the walks are worth it")
	assert.Greater(t, seen.running, int(*walks)*3)
	assert.Greater(t, seen.stages, int(*walks)*2)
}
