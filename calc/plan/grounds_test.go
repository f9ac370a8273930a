package plan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
)

// Source: table of grounds, common practice.
func TestGroundsAreCheckedAndRedUntilFixed(t *testing.T) {
	for _, c := range []struct {
		name, ground string
		fixes        []buildup.Fix // red ones
	}{
		{"styrene on polystyrene foam", "surface.1.ground = polystyrene", []buildup.Fix{buildup.EpoxyInstead}},
		{"on old paint", "surface.1.ground = paint", []buildup.Fix{buildup.StripPaint}},
		{"on cured epoxy", "surface.1.ground = epoxy\nsurface.1.ground-age = 30", []buildup.Fix{buildup.WashFirst, buildup.SandFirst, buildup.LogTestPatch}},
		{"washed and sanded", "surface.1.ground = epoxy\nsurface.1.ground-age = 30\nsurface.1.prepared = both", []buildup.Fix{buildup.LogTestPatch}},
		{"with a patch", "surface.1.ground = epoxy\nsurface.1.ground-age = 30\nsurface.1.prepared = both\nsurface.1.patch = 3 May", nil},
		{"patch on the step", "surface.1.ground = epoxy\nsurface.1.ground-age = 30\nsurface.1.prepared = both\nbuildup.1.step.1.patch = 3 May", nil},
		{"filler first, with a patch", "surface.1.ground = epoxy\nsurface.1.ground-age = 30\nsurface.1.prepared = both\nsurface.1.patch = 3 May\nbuildup.1.step.1.kind = fill\nbuildup.1.step.1.card = polyester-filler\nbuildup.1.step.1.thickness = 2 mm", nil},
		{"filler first, with none", "surface.1.ground = epoxy\nsurface.1.ground-age = 30\nsurface.1.prepared = both\nbuildup.1.step.1.kind = fill\nbuildup.1.step.1.card = polyester-filler\nbuildup.1.step.1.thickness = 2 mm", []buildup.Fix{buildup.LogTestPatch}},
		{"fresh epoxy", "surface.1.ground = fresh-epoxy\nsurface.1.ground-age = 3\nsurface.1.prepared = both\nsurface.1.patch = yes", []buildup.Fix{buildup.WaitLonger}},
		{"under water on filler", "surface.1.ground = polyester-filler\nsurface.1.water = below", []buildup.Fix{buildup.EpoxyFilling}},
		{"nothing said", "", nil},
	} {
		p := planOf(t, overGround, c.ground)
		var red []buildup.Fix
		for _, f := range p.Buildups()[0].FindingsOn("surface.1") {
			if f.IsRed() {
				red = append(red, f.Fix)
				assert.NotEmpty(t, f.Source.String(), c.name)
			}
		}
		assert.Equal(t, c.fixes, red, c.name)
		assert.NotEmpty(t, chance.OrderOf(p).Lines, "%s: red stops no order", c.name)
	}
}

// The same build-up on two grounds: each finding says where.
func TestFindingsNameTheirSurfaces(t *testing.T) {
	p := planOf(t, overGround, "surface = 1 2\nsurface.1.ground = paint\nsurface.2.length = 1 m\nsurface.2.width = 1 m\nsurface.2.buildup = buildup.1\nsurface.2.ground = polyester\nsurface.2.prepared = sanded\nsurface.2.prepared-grade = P120")
	f := p.Buildups()[0].Findings()
	require.Len(t, f, 1)
	assert.Equal(t, []string{"surface.1"}, f[0].Surfaces)
	assert.Empty(t, p.Buildups()[0].FindingsOn("surface.2"))
}

// Unwaxed gel coat can't be sanded; under release film it can. A wash and a
// sanding step between epoxy and gel coat count, and so does the waiting.
func TestStepsFixWhatComesAfter(t *testing.T) {
	open := planOf(t, brushed, "buildup.1.step.1.release = open").Buildups()[0]
	require.NotNil(t, hasFinding(open.Findings(), buildup.OpenCoat))
	assert.Nil(t, hasFinding(planOf(t, brushed).Buildups()[0].Findings(), buildup.OpenCoat))

	steps := `buildup = 1
buildup.1.step = 1 2 3 4
buildup.1.step.1.kind = fill
buildup.1.step.1.card = epoxy-filler
buildup.1.step.1.thickness = 2 mm
buildup.1.step.2.kind = wash
buildup.1.step.2.wait = 168
buildup.1.step.3.kind = sand
buildup.1.step.3.taken = 0
buildup.1.step.3.last = P120
buildup.1.step.3.wait = 1
buildup.1.step.4.kind = coat
buildup.1.step.4.card = flowcoat
buildup.1.step.4.method = nap-roller
buildup.1.step.4.film = 400 µm
buildup.1.step.4.wait = 1
`
	b := planOf(t, steps).Buildups()[0]
	require.Len(t, b.Findings(), 1)
	assert.Equal(t, buildup.LogTestPatch, b.Findings()[0].Fix)
	assert.Empty(t, planOf(t, steps, "buildup.1.step.4.patch = 1 May").Buildups()[0].Findings())
	soon := planOf(t, steps, "buildup.1.step.2.wait = 24", "buildup.1.step.4.patch = 1 May").Buildups()[0]
	require.Len(t, soon.Findings(), 1)
	assert.Equal(t, buildup.WaitLonger, soon.Findings()[0].Fix)
}

func TestStepsOfTheirOwn(t *testing.T) {
	for _, kind := range []string{"squeegee", "porous"} {
		p := planOf(t, overGround, "surface.1.ground = wood\nbuildup.1.step.1.kind = "+kind)
		require.NotNil(t, p.Buildups()[0].Steps[0].Coat, kind)
	}
	base := planOf(t, overGround, "buildup.1.step.1.kind = porous").Buildups()[0].Steps[0].Coat
	drinks := planOf(t, overGround, "buildup.1.step.1.kind = porous\nbuildup.1.step.1.swallowed = 100 µm").Buildups()[0].Steps[0].Coat
	// 2 m² × 100 µm ÷ 0.95 more leave the cups, and no film comes of it
	assert.InDelta(t, 0.2/0.95, float64((drinks.Mix.Value-base.Mix.Value)/unit.Litre), 1e-9)
	assert.Equal(t, base.Cured.Value, drinks.Cured.Value)
	assert.True(t, job.FindStepKind("porous").IsCoat)
}
