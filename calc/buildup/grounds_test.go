package buildup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	b "shedreckoner/calc/buildup"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// The table of ground against next layer, unprepared and of unknown age.
// Common practice: refuse what dissolves, inhibits or has no bond; ask what may
// hold; note what can't be seen from here; -1 where nothing is said.
func TestUnpreparedGrounds(t *testing.T) {
	const no = b.Severity(-1)
	for ground, want := range map[b.Ground][3]b.Severity{ // polyester, epoxy, two-pack
		b.PolystyreneFoam: {b.Refuse, no, b.Refuse},
		b.OtherFoam:       {b.Note, no, b.Refuse},
		b.BareWood:        {b.Ask, b.Note, b.Refuse},
		b.Laminate:        {b.Refuse, b.Refuse, b.Refuse},
		b.TalcFiller:      {b.Note, no, b.Ask},
		b.FreshEpoxy:      {b.Refuse, b.Ask, b.Ask},
		b.CuredEpoxy:      {b.Refuse, b.Refuse, b.Refuse},
		b.OldPaint:        {b.Refuse, b.Refuse, b.Ask},
		b.BareMetal:       {b.Refuse, b.Refuse, b.Refuse},
		b.WaxedCoat:       {b.Refuse, b.Refuse, b.Refuse},
	} {
		for i, m := range []b.Material{b.Polyester, b.Epoxy, b.TwoPack} {
			found := at(b.Check(b.Base{Ground: ground}, []b.Step{put(m, waxed)}), 0, b.OnGround)
			assert.Equal(t, want[i], worst(found), "%s, material %d", ground, m)
			for _, f := range found {
				assert.NotEmpty(t, f.Fix)
				assert.Equal(t, source.CommonPractice, f.Mark)
				assert.NotNil(t, f.Source.Document)
			}
		}
	}
	for _, m := range []b.Material{b.VinylEster, b.PolyesterFiller} {
		assert.Equal(t, b.Refuse, worst(b.Check(b.Base{Ground: b.PolystyreneFoam}, []b.Step{put(m, waxed)})), "styrene is in all of them")
	}
}

// What the table asks for, done: nothing is left but what can't be seen.
func TestPreparedGrounds(t *testing.T) {
	for _, c := range []struct {
		base  b.Base
		layer b.Step
		left  b.Severity
	}{
		{b.Base{Ground: b.Laminate, IsSanded: true, Grit: 120}, put(b.Polyester, waxed), -1},
		{b.Base{Ground: b.Laminate, IsSanded: true, Grit: 320}, put(b.Polyester, waxed), b.Ask},
		{b.Base{Ground: b.Laminate, IsSanded: true}, put(b.Polyester, waxed), -1},
		{b.Base{Ground: b.Laminate, IsSanded: true, Age: 3 * unit.Day}, put(b.Epoxy), -1},
		{b.Base{Ground: b.Laminate, IsSanded: true, Age: 2 * unit.Day}, put(b.Epoxy), b.Refuse},
		{b.Base{Ground: b.Laminate, IsSanded: true, Grit: 120}, put(b.TwoPack), b.Ask}, // primer
		{b.Base{Ground: b.CuredEpoxy, IsSanded: true, IsWashed: true}, put(b.Polyester, waxed), b.Refuse},
		{b.Base{Ground: b.CuredEpoxy, IsSanded: true, IsWashed: true}, put(b.Polyester, waxed, patched), -1},
		{b.Base{Ground: b.CuredEpoxy, IsSanded: true, IsWashed: true, Age: 2 * unit.Day}, put(b.Polyester, waxed, patched), b.Refuse},
		{b.Base{Ground: b.FreshEpoxy, IsSanded: true, IsWashed: true, Age: 8 * unit.Day}, put(b.Polyester, waxed, patched), -1},
		{b.Base{Ground: b.OldPaint, IsSanded: true}, put(b.Epoxy, patched), -1},
		{b.Base{Ground: b.BareMetal, IsSanded: true}, put(b.Epoxy), b.Note},
		{b.Base{Ground: b.WaxedCoat, IsSanded: true, Grit: 220, IsWashed: true}, put(b.Polyester, waxed), -1},
	} {
		assert.Equal(t, c.left, worst(b.Check(c.base, []b.Step{c.layer})), "%+v", c.base)
	}
	for _, refused := range []b.Base{{Ground: b.PolystyreneFoam}, {Ground: b.OldPaint}, {Ground: b.BareMetal}} {
		refused.IsSanded, refused.IsWashed = true, true
		assert.Equal(t, b.Refuse, worst(b.Check(refused, []b.Step{put(b.Polyester, waxed, patched)})), "nothing done to it helps")
	}
}

// All that is cured by peroxide asks the same of a ground, and epoxy filler what epoxy does. (Common practice.)
func TestMaterialsOfOneKindAskTheSame(t *testing.T) {
	for g := b.PolystyreneFoam; g <= b.TwoPackCoat; g++ {
		assert.Equal(t, b.Demands(g, b.Epoxy), b.Demands(g, b.EpoxyFiller), g)
		for _, m := range []b.Material{b.VinylEster, b.PolyesterFiller} {
			assert.Equal(t, b.Demands(g, b.Polyester), b.Demands(g, m), g)
		}
	}
	assert.NotEqual(t, b.Demands(b.PolystyreneFoam, b.Polyester), b.Demands(b.PolystyreneFoam, b.EpoxyFiller), "styrene dissolves the foam, epoxy doesn't")
}

func TestAGroundThatThereIsntDemandsNothing(t *testing.T) {
	assert.Nil(t, b.Demands(b.Ground(99), b.Epoxy))
	assert.Equal(t, "unknown ground", b.Ground(-1).String())
}

func TestEveryDemandHasAListedFix(t *testing.T) {
	for g := b.PolystyreneFoam; g <= b.TwoPackCoat; g++ {
		for _, m := range []b.Material{b.Polyester, b.VinylEster, b.Epoxy, b.TwoPack, b.PolyesterFiller, b.EpoxyFiller} {
			for _, d := range b.Demands(g, m) {
				assert.Contains(t, b.Fixes, d.Fix)
			}
		}
	}
	for _, f := range b.Check(b.Base{}, []b.Step{put(b.Polyester)}) {
		assert.Contains(t, b.Keys, f.Rule)
	}
}

func TestBelowTheWaterline(t *testing.T) {
	base := b.Base{Ground: b.Laminate, IsBelowWater: true, IsSanded: true, Grit: 80}
	list := b.Check(base, []b.Step{put(b.PolyesterFiller), sandTo(80), put(b.Epoxy, after(5*unit.Day))})
	assert.Len(t, at(list, 0, b.UnderWater), 1)
	assert.Len(t, at(list, 2, b.UnderWater), 1, "nor anything over it")
	assert.Empty(t, at(b.Check(base, []b.Step{put(b.EpoxyFiller, after(4*unit.Day))}), 0, b.UnderWater))
	base.IsBelowWater = false
	assert.Empty(t, at(b.Check(base, []b.Step{put(b.PolyesterFiller)}), 0, b.UnderWater))
}
