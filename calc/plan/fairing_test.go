package plan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/fairing"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

const filled = `
buildup = 1
buildup.1.step = 1
buildup.1.step.1.kind = fill
buildup.1.step.1.card = epoxy-filler
buildup.1.step.1.sanded-off = 30 %
`

func fillOf(t *testing.T, lines ...string) *plan.Fill {
	t.Helper()
	p := plan.Make(document(t, append([]string{filled}, lines...)...))
	require.Empty(t, p.Refused())
	require.NotNil(t, p.Buildups()[0].Steps[0].Fill, "waits for %v", p.Waiting())
	return p.Buildups()[0].Steps[0].Fill
}

const grid3 = `
buildup.1.step.1.fill-by = grid
buildup.1.step.1.columns = 3
buildup.1.step.1.row-gap = 1 m
buildup.1.step.1.column-gap = 1 m
buildup.1.step.1.grid = 1 2 3
`

// x(2 − x) mm over 2 m × 2 m: 4/3 × 2 = 8/3 L, exact by Simpson's first rule.
// Source: elementary geometry. Put on 8/3 ÷ 0.7; 1 ÷ 0.7 mm at the deepest; dust
// 8/3 ÷ 0.7 × 0.3 × 0.75 kg/L, the card's density.
func TestAGridFills(t *testing.T) {
	f := fillOf(t, grid3, "buildup.1.step.1.grid.1.z = 0; 1; 0\nbuildup.1.step.1.grid.2.z = 0; 1; 0\nbuildup.1.step.1.grid.3.z = 0;1;0")
	assert.InDelta(t, 8./3, float64(f.Left.Value/unit.Litre), 1e-9)
	assert.InDelta(t, 8./3/0.7, float64(f.Applied.Value/unit.Litre), 1e-9)
	assert.InDelta(t, 1/0.7, float64(f.Depth.Value/unit.Millimetre), 1e-9)
	assert.Equal(t, unit.Factor(1), f.Passes.Value)
	assert.InDelta(t, 8./3/0.7*0.3*0.75, float64(f.Dust.Value), 1e-9)
	assert.Empty(t, f.Grid.Curve, "nothing is proud, nothing to trade")
}

// Two alike take twice as much; all 1 mm deeper takes 4 L more each; a proud
// corner is cut, and the best datum lies between cutting it and burying it.
func TestAGridTradesFillerForCutting(t *testing.T) {
	rows := "buildup.1.step.1.grid.1.z = -3; 1; 1\nbuildup.1.step.1.grid.2.z = 1; 1; 1\nbuildup.1.step.1.grid.3.z = 1; 1; 1"
	f := fillOf(t, grid3, rows, "buildup.1.step.1.alike = 2", "buildup.1.step.1.cut-cost = 3")
	require.NotEmpty(t, f.Grid.Curve)
	assert.Equal(t, fairing.Cell{Row: 0, Column: 0, Depth: -3 * unit.Millimetre}, f.Grid.Proudest)
	last := f.Grid.Curve[len(f.Grid.Curve)-1]
	assert.InDelta(t, 0, float64(last.Cut), 1e-12, "raised by 3 mm nothing is cut")
	// Simpson's weight of a corner of 3 × 3 is 1/9 m²: with the datum as it lay 3/9 L
	// are cut and (4 − 1/9) L filled, of each.
	assert.InDelta(t, 2*3./9, float64(f.Grid.Cut.Value/unit.Litre), 1e-9)
	assert.InDelta(t, 2*(4-1./9), float64(f.Left.Value/unit.Litre), 1e-9)
	cost := func(d fairing.Datum) float64 { return float64(d.Fill + 3*d.Cut) }
	best := float64(f.Grid.BestFill.Value + 3*f.Grid.BestCut.Value)
	for _, d := range f.Grid.Curve {
		assert.LessOrEqual(t, best, cost(d)+1e-12)
	}
}

// Rows of check-values 8a: trough 0.4 L, paraboloid 70.686 mL, fillet 0.214602 r².
// Source: exact.
func TestPlacesFill(t *testing.T) {
	const spots = "buildup.1.step.1.fill-by = spots\nbuildup.1.step.1.spot = 1"
	spot := "buildup.1.step.1.spot.1."
	for name, c := range map[string]struct {
		lines string
		litre float64
	}{
		"trough":     {spot + "is = trough\n" + spot + "width = 200 mm\n" + spot + "depth = 3 mm\n" + spot + "length = 1 m", 0.4},
		"paraboloid": {spot + "width = 200 mm\n" + spot + "depth = 3 mm\n" + spot + "length = 300 mm", 0.070686},
		"fillet":     {spot + "is = fillet\n" + spot + "radius = 50 mm\n" + spot + "angle = 90\n" + spot + "length = 2 m", 0.214602 * 2.5 * 2},
		"4 alike":    {spot + "is = trough\n" + spot + "width = 200 mm\n" + spot + "depth = 3 mm\n" + spot + "length = 1 m\n" + spot + "alike = 4", 1.6},
	} {
		assert.InDelta(t, c.litre, float64(fillOf(t, spots, c.lines).Left.Value/unit.Litre), 1e-5, name)
	}
}

func TestReadingsThatCantBeTaken(t *testing.T) {
	row := func(z string) string {
		return "buildup.1.step.1.grid.1.z = 1; 2; 3\nbuildup.1.step.1.grid.2.z = " + z + "\nbuildup.1.step.1.grid.3.z = 1; 2; 3"
	}
	at := "buildup.1.step.1.grid.2.z"
	for name, z := range map[string]string{"two readings": "1; 1,500; 2", "no number": "1; deep; 2", "mixed units": "1; 2 in; 2", "too long": "1;2;3;4", "out of reach": "1; 900; 2", "out of reach, first": "900; 1; 2", "out of reach, last": "1; 1; 900", "no number, first": "deep; 1; 2"} {
		p := plan.Make(document(t, filled, grid3, row(z)))
		assert.Error(t, p.RefusedAt(at), name)
		assert.Equal(t, "buildup.1.step.1", p.Buildups()[0].Steps[0].Path)
	}
	for name, z := range map[string]string{"blank": "1; ; 3", "short": "1; 2", "empty": ""} {
		p := plan.Make(document(t, filled, grid3, row(z)))
		assert.Empty(t, p.Refused(), name)
		var cell *fairing.CellError
		require.ErrorAs(t, p.WaitingAt(at), &cell, name)
		assert.Equal(t, fairing.Blank, cell.Cause, "%s: never taken for zero", name)
		assert.Nil(t, p.Buildups()[0].Steps[0].Fill)
	}
}

// A grid of one row, or of one column, has no area between its readings yet: more
// are waited for, and nothing is refused.
func TestAGridNeedsTwoBothWays(t *testing.T) {
	for name, lines := range map[string]string{
		"one row":    "buildup.1.step.1.grid = 1\nbuildup.1.step.1.grid.1.z = 1; 2; 3",
		"one column": "buildup.1.step.1.columns = \nbuildup.1.step.1.grid.1.z = 1\nbuildup.1.step.1.grid.2.z = 2\nbuildup.1.step.1.grid.3.z = 3",
	} {
		p := plan.Make(document(t, filled, grid3, lines))
		assert.ErrorIs(t, p.WaitingAt("buildup.1.step.1.grid"), plan.ErrFewRows, name)
		assert.Empty(t, p.Refused(), name)
	}
}

// A reading of 3 mm must never become 3 in.
func TestReadingsKeepTheirUnit(t *testing.T) {
	lines := []string{filled, grid3, "buildup.1.step.1.grid.1.z = 1; 2.5; 1\nbuildup.1.step.1.grid.2.z = 1; -3; 1\nbuildup.1.step.1.grid.3.z = 1; 1; 2 mm"}
	metric := document(t, lines...)
	before := made(metric).Buildups()[0].Steps[0].Fill
	require.NotNil(t, before)
	after := made(job.SetSystem(metric, true)).Buildups()[0].Steps[0].Fill
	require.NotNil(t, after)
	assert.InDelta(t, float64(before.Left.Value), float64(after.Left.Value), 1e-15)
}

// One volume of resin (1.15) and v of balloons as they lie (0.10, particles
// 0.25) make 0.893, 0.750, 0.659 kg/L and 1.40, 1.80, 2.20 volumes.
// Source: rule of mixtures, check-values section 4.
func TestPuttyByVolume(t *testing.T) {
	for v, want := range map[string][2]float64{"1 L": {0.893, 1.4}, "2 L": {0.750, 1.8}, "3 L": {0.659, 2.2}} {
		p := puttyOf(t, v, "putty.1.wanted = 2.8 L")
		require.True(t, p.Known)
		assert.InDelta(t, want[0], unit.InKilogramPerLitre.From(float64(p.Made.Density.Value)), 0.0005, v)
		assert.InDelta(t, want[1], float64(p.Made.Volume.Value/unit.Litre), 1e-9, v)
		// 1.15 kg of resin in want[1] litres, 2.8 L wanted
		assert.InDelta(t, 1.15*2.8/want[1], float64(p.Parts[0].Weigh.Value), 1e-9, v)
		// 1.15 kg at 20 and a tenth of a kilogram for each litre at 30, over the volume
		assert.True(t, p.Cost.Valid)
		cost, _ := p.Cost.Decimal.Float64()
		assert.InDelta(t, (1.15*20+0.1*float64(v[0]-'0')*30)/want[1], cost, 1e-9, v)
	}
}

// A putty that a fill is mixed as is bought by its parts, and weighs on the boat
// what it weighs: 2 m² × 1 mm = 2 L at 0.75 kg/L (2 volumes of balloons to one of
// resin). Mixed are 2 ÷ 0.7 ÷ 0.95 L × 0.75 kg/L in cups, 1.15 ÷ 1.35 of it resin.
func TestAFillMixedByHand(t *testing.T) {
	p := plan.Make(puttyDocument(t, "2 L", filled, "buildup.1.step.1.thickness = 1 mm\nbuildup.1.step.1.putty = putty.1",
		"surface = 1\nsurface.1.length = 2 m\nsurface.1.width = 1 m\nsurface.1.buildup = buildup.1"))
	require.Empty(t, p.Refused())
	s := p.Buildups()[0].Steps[0]
	assert.InDelta(t, 1.5, float64(s.Kept.Value), 1e-9)
	mixed := float64(s.Cups.Mixed.Value)
	assert.Greater(t, mixed, 2/0.7/0.95*0.75)
	used := map[string]float64{}
	for _, u := range s.Used {
		used[u.Card.Key] = float64(u.Mass.Value)
	}
	assert.NotContains(t, used, "epoxy-filler")
	assert.InDelta(t, mixed*1.15/1.35, used["putty-resin"], 1e-9)
	assert.InDelta(t, mixed*0.20/1.35, used["microballoons"], 1e-9)
	require.NotEmpty(t, chance.OrderOf(&p).Lines)

	p = plan.Make(document(t, filled, "buildup.1.step.1.thickness = 1 mm\nbuildup.1.step.1.putty = putty.1\nputty = 1"))
	assert.ErrorIs(t, p.WaitingAt("buildup.1.step.1.putty"), plan.ErrNoRecipe)
}

// 9 L of balloons in 1 L of resin: 3.6 of 4.6 by volume, over 62 %.
func TestPuttyThatResinCantWet(t *testing.T) {
	p := plan.Make(puttyDocument(t, "9 L"))
	var much *fairing.BalloonError
	require.ErrorAs(t, p.RefusedAt("putty.1.part"), &much)
	assert.InDelta(t, 3.6/4.6, float64(much.Share), 1e-9)

	p = plan.Make(document(t, "putty = 1"))
	assert.ErrorIs(t, p.WaitingAt("putty.1.part"), fairing.ErrNothing)
	for _, missing := range []string{"putty.1.part.1.price = ", "putty.1.part.2.price = "} {
		assert.False(t, puttyOf(t, "2 L", missing).Cost.Valid, "a litre has no cost while a part has none")
	}
}

func puttyDocument(t *testing.T, balloons string, more ...string) job.Document {
	t.Helper()
	return document(t, append([]string{`putty = 1
putty.1.part = 1 2
putty.1.part.1.what = resin
putty.1.part.1.by = volume
putty.1.part.1.volume = 1 L
putty.1.part.1.price = 20
putty.1.part.2.what = balloons
putty.1.part.2.by = volume
putty.1.part.2.volume = ` + balloons + `
putty.1.part.2.bulk = 0.10
putty.1.part.2.true = 0.25
putty.1.part.2.price = 30`}, more...)...)
}

func puttyOf(t *testing.T, balloons string, more ...string) plan.Putty {
	t.Helper()
	p := plan.Make(puttyDocument(t, balloons, more...))
	require.Empty(t, p.Refused())
	require.Len(t, p.Putties(), 1)
	return p.Putties()[0]
}

// A putty mixed by hand is planned and bought by its parts, with no bought
// filler chosen: the limits are those of the filler it is compared with.
func TestAPuttyMixedByHandIsPlannedAndBought(t *testing.T) {
	d := jobtest.Doc(t, `surface = 1
surface.1.length = 2 m
surface.1.width = 1 m
surface.1.buildup = buildup.1
buildup = 1
buildup.1.step = 1
buildup.1.step.1.kind = fill
buildup.1.step.1.putty = putty.1
buildup.1.step.1.thickness = 2 mm
putty = 1
putty.1.part = 1 2 3
putty.1.part.1.what = resin
putty.1.part.1.mass = 100 g
putty.1.part.2.what = hardener
putty.1.part.2.mass = 30 g
putty.1.part.3.what = balloons
putty.1.part.3.mass = 20 g`)
	p := plan.Make(d)
	require.Empty(t, p.Refused())
	require.Empty(t, p.Waiting())
	step := p.Buildups()[0].Steps[0]
	require.True(t, step.Known)
	var bought []string
	for _, line := range chance.OrderOf(&p).Lines {
		bought = append(bought, line.Card.Key)
	}
	assert.Subset(t, bought, []string{"putty-resin", "putty-hardener", "microballoons"})
	assert.NotContains(t, bought, "epoxy-filler", "none of it goes in")
	parts := map[string]float64{}
	for _, use := range step.Used {
		if use.Mass.Step != nil {
			parts[use.Card.Key] = float64(use.Mass.Value)
		}
	}
	assert.InEpsilon(t, 100./30, parts["putty-resin"]/parts["putty-hardener"], 1e-9)
	assert.InEpsilon(t, float64(step.Cups.Mixed.Value), parts["putty-resin"]+parts["putty-hardener"]+parts["microballoons"], 1e-9)
	p = plan.Make(d.Set("buildup.1.step.1.putty", ""))
	assert.Equal(t, plan.ErrNoCard, p.WaitingAt("buildup.1.step.1.card"), "with neither, one is asked for")
	p = plan.Make(d.Set("buildup.1.step.1.putty", "putty.7"))
	assert.Error(t, p.WaitingAt("buildup.1.step.1.card"))
}

// Two rows of two readings are a grid; a fillet waits for each of its figures, also for
// the one that stands first.
func TestTheLeastOfAGridAndOfAFillet(t *testing.T) {
	f := fillOf(t, grid3, "buildup.1.step.1.grid = 1 2\nbuildup.1.step.1.columns = 2\nbuildup.1.step.1.grid.1.z = 1; 1\nbuildup.1.step.1.grid.2.z = 1; 1")
	assert.InDelta(t, 1e-3, float64(f.Left.Value), 1e-9, "1 mm over a square metre is a litre")

	const spot = "buildup.1.step.1.fill-by = spots\nbuildup.1.step.1.spot = 1\nbuildup.1.step.1.spot.1.is = fillet"
	figures := map[string]string{"length": "500", "radius": "30", "angle": "90"}
	for missing := range figures {
		lines := []string{filled, spot}
		for key, text := range figures {
			if key != missing {
				lines = append(lines, "buildup.1.step.1.spot.1."+key+" = "+text)
			}
		}
		p := plan.Make(document(t, lines...))
		assert.Error(t, p.WaitingAt("buildup.1.step.1.spot.1."+missing), missing)
		assert.False(t, p.Buildups()[0].Steps[0].Known, "without %s", missing)
		assert.Empty(t, p.Refused(), missing)
	}
}
