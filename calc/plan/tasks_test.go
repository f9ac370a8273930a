package plan_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// A fill of 14 mm left is 20 mm put on, two passes of 10 at the most: each is laid,
// and sanded before the next; the last too, unless a run of grades that follows
// sands it. A pass left out of the calendar would be laid on one that is still wet.
func TestEachPassOfAFillIsLaidAndSanded(t *testing.T) {
	const fill = "surface = 1\nsurface.1.name = Keel\nsurface.1.lies = wall\nsurface.1.length = 2 m\nsurface.1.width = 1 m\nsurface.1.buildup = buildup.1\nbuildup = 1\nbuildup.1.step.1.kind = fill\nbuildup.1.step.1.card = epoxy-filler\nbuildup.1.step.1.thickness = 14 mm\n"
	for steps, want := range map[string][]plan.WorkKind{
		"buildup.1.step = 1": {plan.LayFiller, plan.SandLayer, plan.LayFiller, plan.SandLayer},
		"buildup.1.step = 1 2\nbuildup.1.step.2.kind = sand\nbuildup.1.step.2.by = grades\nbuildup.1.step.2.first = P80\nbuildup.1.step.2.last = P120": {plan.LayFiller, plan.SandLayer, plan.LayFiller},
	} {
		b := planOf(t, fill, steps).Buildups()[0]
		assert.Equal(t, []string{"Keel"}, b.Surfaces, "the surfaces that get it, by their names")
		require.NotEmpty(t, b.Steps)
		var got []plan.WorkKind
		which := 0
		for _, task := range b.Steps[0].Tasks(2 * unit.SquareMetre) {
			got = append(got, task.Kind)
			if task.Kind == plan.LayFiller {
				which++
				assert.Equal(t, which, task.Which)
				assert.Equal(t, 2, task.Of)
			}
		}
		assert.Equal(t, want, got, steps)
	}
}

const oneSurface = "surface = 1\nsurface.1.length = 2 m\nsurface.1.width = 1 m\nsurface.1.buildup = buildup.1\nbuildup = 1"

// step is the lines of a step.
func step(id, kind string, fields ...string) string {
	at := "\nbuildup.1.step." + id + "."
	return strings.TrimPrefix(at, "\n") + "kind = " + kind + at + strings.Join(fields, at)
}

// What is waited for before a step is waited for once, before its first work: before
// each coat it would put the second a day late.
func TestAWaitStandsBeforeTheFirstWorkOfAStep(t *testing.T) {
	steps := planOf(t, oneSurface, "buildup.1.step = 1 2", step("1", "coat", "card = gelcoat", "method = brush", "film = 400 µm", "wait = 24 h"),
		step("2", "coat", "card = gelcoat", "method = brush", "film = 800 µm", "coats = 2", "wait = 30 h")).Buildups()[0].Steps
	var got []float64
	for i := range steps {
		for _, task := range steps[i].Tasks(unit.SquareMetre) {
			got = append(got, unit.InHour.From(float64(task.Wait)))
		}
	}
	assert.Equal(t, []float64{24, 30, 0}, got)
}

// The grade that counts for what comes next is the last of a run: primer wants a key
// of P80 to P180 on gel coat, and P400 is none, whatever the run began with.
func TestTheLastGradeOfARunIsTheKey(t *testing.T) {
	asked := func(first, last string) bool {
		b := planOf(t, oneSurface, "buildup.1.step = 1 2 3", step("1", "coat", "card = gelcoat", "method = brush", "film = 800 µm"),
			step("2", "sand", "by = grades", "first = "+first, "last = "+last), step("3", "coat", "card = primer", "method = brush", "film = 300 µm")).Buildups()[0]
		return slices.ContainsFunc(b.Findings(), func(f plan.Finding) bool { return f.Fix == buildup.OtherGrade })
	}
	assert.False(t, asked("P80", "P120"))
	assert.True(t, asked("P80", "P400"))
}

// Of cups logged for a step those that a finished piece of work counts are on with
// it; the ones after them still count. Filler that is logged without its tool was put
// on with a knife, which holds 30 g, and mixed on a board.
func TestCupsThatAPieceOfWorkCountsAreOnWithIt(t *testing.T) {
	two := "surface = 1 2\nsurface.1.length = 2 m\nsurface.1.width = 1 m\nsurface.1.buildup = buildup.1\nsurface.2.length = 2 m\nsurface.2.width = 1 m\nsurface.2.buildup = buildup.1\nbuildup = 1"
	const at = "buildup.1.step.1"
	cups := func(card string) string {
		var list []string
		for _, id := range []string{"1", "2"} {
			c := "cup." + id
			list = append(list, c+".card = "+card, c+".step = "+at, c+".mixed = 300 g", c+".in = 1780300000", c+".ended = 1780300900", c+".end = spread", c+".left = 20 g")
		}
		return "cup = 1 2\n" + strings.Join(list, "\n")
	}
	coat := planOf(t, two, "buildup.1.step = 1", step("1", "coat", "card = gelcoat", "method = brush", "film = 400 µm"), cups("gelcoat"),
		"done = 1\ndone.1.step = "+at+"\ndone.1.surface = surface.1\ndone.1.cups = cup.1\ndone.1.card = gelcoat")
	progress := coat.Buildups()[0].Steps[0].Progress
	assert.Equal(t, []string{"surface.1"}, progress.Done)
	assert.Equal(t, []string{"cup.2"}, progress.Cups)
	assert.InDelta(t, 0.280, float64(progress.PutOn.Value), 1e-9)
	fill := planOf(t, two, "buildup.1.step = 1", step("1", "fill", "card = polyester-filler", "thickness = 5 mm"), strings.ReplaceAll(cups("polyester-filler"), ".left = 20 g", ".left = "))
	assert.InDelta(t, 0.300-0.030+0.300, float64(fill.Buildups()[0].Steps[0].Progress.PutOn.Value), 1e-9, "the knife is wet for the second")
}

// A thinned mix weighs what product and thinner weigh together: 1.4 kg/L with a tenth
// of thinner at 0.87 kg/L. Source: exact, volumes added up.
func TestAThinnedMixWeighsItsParts(t *testing.T) {
	s := planOf(t, oneSurface, "buildup.1.step = 1", step("1", "coat", "card = primer", "method = brush", "film = 150 µm", "thinner = 10 %", "thinner-by = volume"),
		"card.primer.density = 1.4\ncard.primer-thinner.density = 0.87").Buildups()[0].Steps[0]
	assert.InEpsilon(t, (1400+0.1*870)/1.1, float64(s.Leaves.Value)/float64(s.Coat.Mix.Value), 1e-9)
}

// However soon a product gels, an order counts with cups of 100 g and no smaller: what
// can't be spread in time isn't ordered in thimbles, nor in cups without end.
func TestAnOrderCountsWithCupsOf100GramsAtTheLeast(t *testing.T) {
	const coat = "surface = 1\nsurface.1.length = 4 m\nsurface.1.width = 1 m\nsurface.1.buildup = buildup.1\nbuildup = 1\nbuildup.1.step = 1\nbuildup.1.step.1.kind = coat\nbuildup.1.step.1.card = gelcoat\nbuildup.1.step.1.method = nap-roller\nbuildup.1.step.1.film = 500 µm\n"
	for _, gel := range []string{"1 min", "4 min"} {
		p := planOf(t, coat, "card.gelcoat.gel-time = "+gel)
		c := p.Buildups()[0].Steps[0].Cups
		require.NotNil(t, c.Count.Step, gel)
		assert.InDelta(t, 95, float64(c.Each.Value)*1000, 5.001, "%s: as few as hold 100 g each", gel)
	}
	slow := planOf(t, coat, "card.gelcoat.gel-time = 25 min").Buildups()[0].Steps[0].Cups
	assert.Greater(t, float64(slow.Each.Value), 0.15)
}
