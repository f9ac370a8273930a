package buildup_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	b "shedreckoner/calc/buildup"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// each is how a demand is written in the table below, "!" for what is refused while it isn't met, "?" for what is asked.
func each(d b.Demand) string {
	said := map[b.Requirement]string{
		b.Another: string(d.Fix), b.Sanding: "sand", b.Washing: "wash", b.TestPatch: "patch", b.Age: "wait", b.Window: "window", b.Dryness: "dry", b.Promptly: "at once",
	}[d.Requirement]
	if d.Coarsest > 0 {
		said += fmt.Sprintf(" P%d-%d", d.Coarsest, d.Finest)
	}
	if d.Least > 0 {
		said += fmt.Sprintf(" %.0f d", unit.InDay.From(float64(d.Least)))
	}
	return map[b.Severity]string{b.Refuse: "!", b.Ask: "?", b.Note: ""}[d.Severity] + said
}

// What each ground wants before styrene, epoxy and two-pack go on it, in the words of the trade: styrene and solvent dissolve
// polystyrene; bare wood and metal take epoxy first; on paint no gel coat holds; epoxy cures for seven days under styrene,
// polyester for three under epoxy; a waxed coat loses its wax with P180 to P240. (Common practice.)
func TestWhatEachGroundWants(t *testing.T) {
	for g, c := range map[b.Ground]struct {
		name  string
		wants [3]string // styrene; epoxy; two-pack
	}{
		b.PolystyreneFoam: {"polystyrene", [3]string{"!epoxy-instead", "", "!epoxy-between"}},
		b.OtherFoam:       {"polyurethane or PVC foam", [3]string{"skim-first", "", "!filler-between"}},
		b.BareWood:        {"bare wood", [3]string{"?epoxy-between", "dry", "!sealer-between"}},
		b.Laminate:        {"polyester laminate", [3]string{"!sand P80-180", "!wait 3 d, !sand P80-180", "!sand P80-180, ?primer-between"}},
		b.TalcFiller:      {"polyester filler", [3]string{"dry", "", "?primer-between"}},
		b.FreshEpoxy:      {"epoxy, under 7 days", [3]string{"!wait 7 d", "!window", "!window"}},
		b.CuredEpoxy:      {"epoxy, cured", [3]string{"!wash, !sand, !patch", "!sand", "wash, !sand"}},
		b.OldPaint:        {"old paint", [3]string{"!strip-paint", "!sand, ?patch", "?patch"}},
		b.BareMetal:       {"bare metal", [3]string{"!epoxy-between", "!sand, at once", "!primer-between"}},
		b.WaxedCoat:       {"waxed gel coat or flow coat", [3]string{"!sand P180-240, wash", "!sand P180-240, wash", "!sand P180-240, wash"}},
		b.UnwaxedCoat:     {"unwaxed gel coat", [3]string{"!window", "!wait 3 d, !sand P80-180", "!sand P80-180, ?primer-between"}},
		b.TwoPackCoat:     {"two-pack coat", [3]string{"!strip-paint", "!sand", "!window"}},
	} {
		for i, m := range []b.Material{b.Polyester, b.Epoxy, b.TwoPack} {
			var list []string
			for _, d := range b.Demands(g, m) {
				list = append(list, each(d))
			}
			assert.Equal(t, c.wants[i], strings.Join(list, ", "), "%s, under material %d", c.name, m)
		}
		assert.True(t, strings.HasPrefix(g.String(), c.name), "%q is no name for %s", g, c.name)
	}
}

// Every finding that compares names what was got and then the limit: told the other way round, the builder
// would wait for less than he has waited.
func TestAFindingNamesWhatWasGotAndThenTheLimit(t *testing.T) {
	base := b.Base{Ground: b.Laminate, IsSanded: true, Grit: 120}
	soon := []b.Step{put(b.Polyester, waxed, func(s *b.Step) { s.Layer.SandingFrom = unit.Day }), sandTo(220, after(10*unit.Hour))}
	assertFound(t, &found{b.Refuse, b.WaitLonger, 10, 24}, only(t, b.Check(base, soon), b.SandSoon), 10)
	young := b.Base{Ground: b.Laminate, IsSanded: true, Grit: 120, Age: 2 * unit.Day}
	assertFound(t, &found{b.Refuse, b.WaitLonger, 2, 3}, only(t, b.Check(young, []b.Step{put(b.Epoxy)}), b.OnGround), 2)

	steps := []b.Step{coat(320, 0.25), sand(177, 0.4), sand(1, 0.4)}
	points, err := b.Walk(steps, terms(0.05, 0))
	require.NoError(t, err)
	list := b.Shortfalls(steps, points, terms(0.05, 0))
	require.Len(t, list, 1)
	assert.Equal(t, 1, list[0].Step, "said where it first goes through")
	assert.InDelta(t, float64(points[1].Through.Value), list[0].Got, 1e-12)
	assert.InDelta(t, 0.05, list[0].Limit, 1e-12)
	assert.Greater(t, list[0].Got, list[0].Limit)
}

// stepBy is the step of a rule in the working of a figure.
func stepBy(step *working.Step, rule *working.Rule) *working.Step {
	if step == nil || step.Rule == rule {
		return step
	}
	for _, from := range step.From {
		if s := stepBy(from, rule); s != nil {
			return s
		}
	}
	return nil
}

// A working has each figure in the place of its letter, though the sum is the same the other way round; and the
// mean of readings goes back to each of them.
func TestAWorkingHasEachFigureInItsPlace(t *testing.T) {
	on := terms(0.05, 30)
	points, err := b.Walk([]b.Step{coat(400, 0.2), sand(100, 0.4)}, on)
	require.NoError(t, err)
	sigma := stepBy(points[1].Thin.Step, b.Spread.Rule)
	require.NotNil(t, sigma)
	require.Len(t, sigma.From, 3)
	assert.Same(t, on.Unfairness.Step, sigma.From[2])
	through := points[1].Through.Step
	require.Len(t, through.From, 4)
	assert.InDelta(t, 0, through.From[1].Out, 1e-12, "down to what lies below")

	readings := []working.Figure[unit.DryFilm]{micrometres(300), micrometres(320)}
	m, err := b.Measure(readings)
	require.NoError(t, err)
	assert.Equal(t, []*working.Step{readings[0].Step, readings[1].Step}, m.Mean.Step.From)
}

// A film that was measured is told at the step and the round after which it was measured.
func TestAFoundFilmIsToldAtItsStep(t *testing.T) {
	measured := coat(200, 0.2)
	measured.Rounds, measured.Film.Found, measured.Film.FoundCV = 3, micrometres(350), share(0.2)
	points, err := b.Walk([]b.Step{coat(400, 0.2), measured}, terms(0.05, 0))
	require.NoError(t, err)
	last := points[len(points)-1]
	assert.Equal(t, [2]int{1, 3}, [2]int{last.Step, last.Round})
}
