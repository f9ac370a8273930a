package page_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/fault"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/plan/plantest"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
)

func demo(t *testing.T) *page.State {
	t.Helper()
	s, _ := page.Start(nil, page.Moment{})
	s, _ = page.Update(s, page.Message{Verb: "demo"})
	require.Empty(t, s.Plan.Refused())
	require.Empty(t, s.Plan.Waiting())
	require.Empty(t, s.Plan.Refused())
	return s
}

// The main job as a whole: the plan of the made-up job meets what was worked
// out by hand, and leaves no line of the order unexplained.
func TestTheDemoMeetsItsWorking(t *testing.T) {
	raw, err := os.ReadFile("../../testdata/demo.txt")
	require.NoError(t, err)
	logged := demo(t)
	p := plan.Make(unlogged(logged.Doc()))
	got, packs := plantest.Figures(&p), plantest.Packs(&p)
	named := map[string]bool{}
	room := 0.0
	for line := range strings.Lines(string(raw)) {
		name, want, found := strings.Cut(strings.TrimSpace(line), " = ")
		if !found || strings.HasPrefix(line, "#") {
			continue
		}
		switch {
		case name == "log": // from here on with what the log says
			checkNamed(t, p, named)
			before := got
			p, named = logged.Plan, map[string]bool{}
			got, packs = plantest.Figures(&p), plantest.Packs(&p)
			for same := range before {
				named[same] = before[same] == got[same]
			}
			continue
		}
		named[name] = true
		switch {
		case name == "tolerance":
			room, err = unit.Read(want, unit.InPercent)
			require.NoError(t, err)
		case strings.HasSuffix(name, ".packs"):
			assert.Equal(t, want, packs[strings.TrimSuffix(name, ".packs")], name)
		default:
			f, known := got[name]
			if assert.True(t, known, "%s isn't in the plan", name) {
				si, err := unit.Read(want, f.Bare)
				require.NoError(t, err, line)
				assert.InDelta(t, f.Bare.From(si), f.Bare.From(f.SI), room*math.Abs(f.Bare.From(si)), name)
			}
		}
	}
	checkNamed(t, p, named)
}

func checkNamed(t *testing.T, p plan.Plan, named map[string]bool) {
	t.Helper()
	for _, l := range chance.OrderOf(&p).Lines {
		assert.True(t, named["order."+l.Key()], "%s is ordered, but not worked out", l.Key())
		assert.NoError(t, l.Err)
	}
}

// unlogged is a job before anything of it was mixed.
func unlogged(d job.Document) job.Document {
	var lines []job.Line
	for _, l := range d.Lines() {
		if list, _, _ := strings.Cut(l.Path, "."); list != "cup" && list != "test" && list != "done" {
			lines = append(lines, l)
		}
	}
	return job.Of(lines)
}

// The log of the made-up job has something to show of all that a log is for.
func TestTheDemosLog(t *testing.T) {
	s := demo(t)
	assert.Empty(t, job.LogProblems(s.Doc()))
	require.Len(t, s.Lessons().List, 2)
	for i := range s.Lessons().List {
		l := &s.Lessons().List[i]
		require.Len(t, l.Log, 1)
		require.NoError(t, l.Log[0].Err, l.Card.Name)
		assert.Equal(t, 1, l.Count)
		assert.Nil(t, l.Taken, "nothing is taken over unasked")
	}
	planned, film, _, known := s.Plan.PlannedOn("buildup.1.step.1", []string{"surface.2"})
	require.True(t, known)
	assert.InDelta(t, 3.7218, float64(planned), 5e-4, "as it is frozen")
	assert.InDelta(t, 2.475, float64(film), 5e-4)
	found := fault.Of(&s.Plan, s.Plan.Job.CupByPath("cup.2"))
	require.NotEmpty(t, found)
	assert.True(t, found[0].IsBorneOut())
	assert.Equal(t, "no-wax", found[0].Key, "left open without wax it stays tacky")
	s = warm(t, s, tenOClock)
	assert.True(t, s.Bench().Tin == cure.Timed, "a cup test is logged")
}

// The made-up job opens with a full Cup, at whatever hour, and on a later day again.
func TestTheDemosCupIsFull(t *testing.T) {
	const midnight = tenOClock - 10*3600
	for hour := range int64(24) {
		s, _ := page.Start(nil, moment(midnight+hour*3600))
		s, _ = sent(s, midnight+hour*3600, "demo", "", "")
		b := s.Bench()
		require.True(t, b.HasDose, "%d:00: %v %v", hour, b.Reasons, b.Waiting)
		require.NotNil(t, b.Minutes)
		require.NotEmpty(t, b.Coat, "it is for a coat of the job")
		s, _ = sent(s, midnight+hour*3600+day, "own", "", "")
		s, _ = sent(s, midnight+hour*3600+day, "demo", "", "")
		require.True(t, s.Bench().HasDose, "%d:00 the day after: %v", hour, s.Bench().Reasons)
	}
}
