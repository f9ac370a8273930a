package page_test

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/page"
)

func demo(t *testing.T) page.State {
	t.Helper()
	s, _ := page.Start(nil, page.Moment{})
	s, _ = page.Update(s, page.Message{Verb: "demo"})
	require.Empty(t, s.Fresh.Refused)
	require.Empty(t, s.Fresh.Waiting)
	require.False(t, s.Older)
	return s
}

// figure is a value in SI base units and the scale it is written in.
type figure struct {
	si   float64
	bare *unit.Scale
}

// figures is what the demo's working names.
type figures map[string]figure

func put[Q unit.Quantity](all figures, name string, f working.Figure[Q], scale *unit.Scale) {
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
	for _, l := range p.Order.Lines {
		all["order."+l.Card.Key] = figure{l.Scale.SI(l.Need.InexactFloat64()), l.Scale}
	}
	all["cost"] = figure{p.Order.Cost.InexactFloat64(), unit.InPure}
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
	for _, l := range p.Order.Lines {
		var words []string
		for _, c := range l.Packs {
			words = append(words, strconv.Itoa(c.Count)+" × "+c.Size.Amount.String())
		}
		all["order."+l.Card.Key+".packs"] = strings.Join(words, ", ")
	}
	return all
}

// The main job as a whole: the plan of the made-up job meets what was worked
// out by hand, and leaves no line of the order unexplained.
func TestTheDemoMeetsItsWorking(t *testing.T) {
	raw, err := os.ReadFile("../../testdata/demo.txt")
	require.NoError(t, err)
	p := demo(t).Plan
	got, packs := figuresOf(p), packsOf(p)
	named := map[string]bool{}
	room := 0.0
	for line := range strings.Lines(string(raw)) {
		name, want, found := strings.Cut(strings.TrimSpace(line), " = ")
		if !found || strings.HasPrefix(line, "#") {
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
	for _, l := range p.Order.Lines {
		assert.True(t, named["order."+l.Card.Key], "%s is ordered, but not worked out", l.Card.Key)
		assert.NoError(t, l.Err)
	}
}
