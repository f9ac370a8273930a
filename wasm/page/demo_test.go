package page_test

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/fault"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/page"
)

func demo(t *testing.T) *page.State {
	t.Helper()
	s, _ := page.Start(nil, page.Moment{})
	s, _ = page.Update(s, page.Message{Verb: "demo"})
	require.Empty(t, s.Plan.Refused)
	require.Empty(t, s.Plan.Waiting)
	require.Empty(t, s.Plan.Refused)
	return s
}

// figure is a value in SI base units and the scale it is written in.
type figure struct {
	si   float64
	bare unit.Scale
}

// figures is what the demo's working names.
type figures map[string]figure

func put[Q unit.Quantity](all figures, name string, f working.Figure[Q], scale unit.Scale) {
	if f.Step != nil {
		all[name] = figure{float64(f.Value), scale}
	}
}

func figuresOf(p plan.Plan) figures {
	all := figures{}
	for _, s := range p.Surfaces {
		put(all, s.Path+".area", s.Area, unit.InSquareMetre)
		put(all, s.Path+".edge", s.Edge, unit.InMetre)
	}
	for _, b := range p.Buildups {
		put(all, b.Path+".area", b.Area, unit.InSquareMetre)
		put(all, b.Path+".left", b.Left, unit.InMicrometre)
		for _, s := range b.Steps {
			stepFigures(all, s)
		}
	}
	put(all, "area", p.Area, unit.InSquareMetre)
	put(all, "kept", p.Kept, unit.InKilogram)
	for _, l := range chance.OrderOf(&p).Lines {
		all["order."+l.Key()] = figure{l.Scale.SI(l.Need.InexactFloat64()), l.Scale}
	}
	all["cost"] = figure{chance.OrderOf(&p).Cost.InexactFloat64(), unit.InPure}
	return all
}

func stepFigures(all figures, s plan.Step) {
	put(all, s.Path+".kept", s.Kept, unit.InKilogram)
	put(all, s.Path+".cups", s.Cups.Count, unit.InPure)
	if f := s.Fill; f != nil {
		put(all, s.Path+".depth", f.Depth, unit.InMillimetre)
		put(all, s.Path+".passes", f.Passes, unit.InPure)
		put(all, s.Path+".left", f.Left, unit.InLitre)
		put(all, s.Path+".applied", f.Applied, unit.InLitre)
	}
	if c := s.Coat; c != nil {
		put(all, s.Path+".share", c.CuredShare, unit.InPercent)
		put(all, s.Path+".coats", c.Coats, unit.InPure)
		put(all, s.Path+".wet", c.Wet, unit.InMicrometre)
		put(all, s.Path+".wet-each", c.WetEach, unit.InMicrometre)
		put(all, s.Path+".cured", c.Cured, unit.InMicrometre)
		put(all, s.Path+".cured-each", c.CuredEach, unit.InMicrometre)
		put(all, s.Path+".theory", c.Theory, unit.InSquareMetrePerLitre)
		put(all, s.Path+".practice", c.Practice, unit.InSquareMetrePerLitre)
		put(all, s.Path+".mix", c.Mix, unit.InLitre)
	}
}

func packsOf(p plan.Plan) map[string]string {
	all := map[string]string{}
	for _, l := range chance.OrderOf(&p).Lines {
		var words []string
		for _, c := range l.Packs {
			words = append(words, strconv.Itoa(c.Count)+" × "+c.Size.Amount.String())
		}
		all["order."+l.Key()+".packs"] = strings.Join(words, ", ")
	}
	return all
}

// The main job as a whole: the plan of the made-up job meets what was worked
// out by hand, and leaves no line of the order unexplained.
func TestTheDemoMeetsItsWorking(t *testing.T) {
	raw, err := os.ReadFile("../../testdata/demo.txt")
	require.NoError(t, err)
	logged := demo(t)
	p := plan.Make(unlogged(logged.Doc()))
	got, packs := figuresOf(p), packsOf(p)
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
			got, packs = figuresOf(p), packsOf(p)
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
			assert.Equal(t, want, packs[name], name)
		default:
			f, known := got[name]
			if assert.True(t, known, "%s isn't in the plan", name) {
				si, err := unit.Read(want, f.bare)
				require.NoError(t, err, line)
				assert.InDelta(t, f.bare.From(si), f.bare.From(f.si), room*math.Abs(f.bare.From(si)), name)
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
	planned, film, _, known := s.Plan.Share("buildup.1.step.1", []string{"surface.2"})
	require.True(t, known)
	assert.InDelta(t, 3.7218, float64(planned), 5e-4, "as it is frozen")
	assert.InDelta(t, 2.475, float64(film), 5e-4)
	found := fault.Of(&s.Plan, s.Plan.Job.CupByPath("cup.2"))
	require.NotEmpty(t, found)
	assert.True(t, found[0].IsBorne())
	assert.Equal(t, "no-wax", found[0].Key, "left open without wax it stays tacky")
	s = warm(t, s, tenOClock)
	assert.True(t, s.Bench().Tin == cure.Timed, "a cup test is logged")
}
