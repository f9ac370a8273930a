package plan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/fairing"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
)

// rubbed is gel coat of 400 µm by the brush, sanded by 200.
const rubbed = "buildup = 1\nbuildup.1.step = 1 2\nbuildup.1.step.1.kind = coat\nbuildup.1.step.1.card = gelcoat\nbuildup.1.step.1.method = brush\nbuildup.1.step.1.film = 400 µm\nbuildup.1.step.2.kind = sand\nbuildup.1.step.2.taken = 200 µm\n"

// What goes through where a film was measured is told of that surface's own area, else of all of them: of 6 m² and
// 2 m² beside it, without edges.
func TestWhatGoesThroughIsOfItsSurface(t *testing.T) {
	p := planOf(t, rubbed, "surface = 1 2\nsurface.1.shape = direct\nsurface.1.area = 6 m²\nsurface.1.buildup = buildup.1\nsurface.2.shape = direct\nsurface.2.area = 2 m²\nsurface.2.buildup = buildup.1",
		"buildup.1.step.1.comb = 1\nbuildup.1.step.1.comb.1.surface = surface.2\nbuildup.1.step.1.comb.1.last-wet = 300 µm\nbuildup.1.step.1.comb.1.first-dry = 340 µm")
	area := map[string]float64{"": 8, "surface.2": 2}
	budgets := p.Buildups()[0].Budgets()
	require.Len(t, budgets, 2)
	for _, w := range budgets {
		require.NotNil(t, w.Share.Step)
		require.Positive(t, float64(w.Share.Value))
		assert.InEpsilon(t, area[w.Surface]*float64(w.Share.Value), float64(w.Through.Value), 1e-9, "%q", w.Surface)
	}
}

// Of a layer that is sanded twice, with more of it between, the worst of both counts: what has gone through stays gone.
// Where nothing is sanded there is no share to tell.
func TestTheWorstOfALayerCounts(t *testing.T) {
	twice := rubbed + "buildup.1.step = 1 2 3 4\nbuildup.1.step.3.kind = coat\nbuildup.1.step.3.card = gelcoat\nbuildup.1.step.3.method = brush\nbuildup.1.step.3.film = 600 µm\nbuildup.1.step.4.kind = sand\nbuildup.1.step.4.taken = 5 µm"
	once := planOf(t, oneSurface, rubbed).Buildups()[0].Budgets()[0]
	w := planOf(t, oneSurface, twice).Buildups()[0].Budgets()[0]
	require.Positive(t, float64(once.Share.Value))
	last, _ := w.Last()
	require.Less(t, float64(last.Through.Value), float64(once.Share.Value)/2)
	assert.InEpsilon(t, float64(once.Share.Value), float64(w.Share.Value), 1e-9)
	bare := planOf(t, oneSurface, rubbed, "buildup.1.step = 1").Buildups()[0].Budgets()[0]
	assert.Nil(t, bare.Share.Step)
	assert.Nil(t, bare.Through.Step)
}

// The least film that the builder typed for a step counts there, and not the card's: 100 µm that are left pass where 90 are
// asked for, and not where 110 are.
func TestATypedLeastStandsAboveTheCards(t *testing.T) {
	for least, isShort := range map[string]bool{"90 µm": false, "110 µm": true, "": true} { // the card asks for more
		p := planOf(t, oneSurface, rubbed, "buildup.1.step.1.film = 300 µm\nbuildup.1.step.1.film-is = cured\nbuildup.1.step.2.least = "+least)
		w := p.Buildups()[0].Budgets()[0]
		last, _ := w.Last()
		require.InDelta(t, 100, micrometres(last.Mean.Value), 1e-9)
		short := hasFinding(w.Findings, buildup.MeanLeft)
		assert.Equal(t, isShort, short != nil, least)
		if least == "110 µm" {
			assert.InDelta(t, 110e-6, short.Limit, 1e-12)
		}
	}
}

// One reading of a film tells its mean and not how uneven it is: that is taken to be as the latest coat is laid. By hand,
// 1.644854 deviations below the mean at one part in twenty.
func TestOneReadingIsAsUnevenAsItsCoat(t *testing.T) {
	m, found := material.FindMethod("brush")
	require.True(t, found)
	require.NotEqual(t, 0.2, float64(m.FilmCV.Value), "else it says nothing")
	w := planOf(t, oneSurface, rubbed, "buildup.1.step.2.witness = 1\nbuildup.1.step.2.witness.1.film = 200 µm").Buildups()[0].Budgets()[0]
	last, _ := w.Last()
	assert.InDelta(t, 200*(1-1.644854*float64(m.FilmCV.Value)), micrometres(last.Thin.Value), 1e-3)
}

// A coat that others stand in for needs no film of its own, and none is proposed.
func TestNoFilmIsNeededWhereOthersHold(t *testing.T) {
	twice := rubbed + "buildup.1.step = 1 3 2\nbuildup.1.step.1.film = 3 mm\nbuildup.1.step.3.kind = coat\nbuildup.1.step.3.card = gelcoat\nbuildup.1.step.3.method = brush\nbuildup.1.step.3.film = 100 µm"
	b := planOf(t, oneSurface, twice).Buildups()[0]
	for _, need := range b.Needs() {
		assert.Nil(t, need.Uneven)
		assert.Positive(t, float64(need.Cured.Value), "step %d", need.Step)
	}
	require.Len(t, b.Needs(), 1)
	assert.Zero(t, b.Needs()[0].Step)
}

// A recipe without parts is waited for; beside it stands the cheapest litre of the bought filler of all that has a price.
func TestAPuttyBesideABoughtFiller(t *testing.T) {
	none := plan.Make(document(t, "putty = 1\nputty.1.wanted = 2 L"))
	assert.ErrorIs(t, none.WaitingAt("putty.1.part"), fairing.ErrNothing)
	assert.Empty(t, none.Refused())
	assert.False(t, none.Putties()[0].Known)
	for _, prices := range []string{"", "card.epoxy-filler.pack.2.price = 60", "card.epoxy-filler.pack.1.price = 40\ncard.epoxy-filler.pack.2.price = 60"} {
		p := plan.Make(puttyDocument(t, "1 L", prices))
		require.Empty(t, p.Refused())
		bought := p.Putties()[0].Bought
		assert.Equal(t, prices != "", bought.Valid, prices)
		best := 0.
		for i, pack := range p.Job.ShopByKey("epoxy-filler").Packs {
			if pack.HasPrice {
				litre := map[int]float64{0: 40, 1: 60}[i] / plan.InBasis(p.Job.CardByKey("epoxy-filler"), pack.Size).InexactFloat64()
				if best == 0 || litre < best {
					best = litre
				}
			}
		}
		assert.InDelta(t, best, bought.Decimal.InexactFloat64(), 1e-9, prices)
	}
}

// Rounds that aren't sanded back between add up whole: two of 300 µm wet are twice the film, the coats and the
// paint of one.
func TestRoundsWithoutSandingAddUp(t *testing.T) {
	of := func(goes string) plan.Step {
		return planOf(t, oneSurface, "buildup.1.step = 1", step("1", "coat", "card = gelcoat", "method = brush", "film = 300 µm", "goes = "+goes)).Buildups()[0].Steps[0]
	}
	one, two := of(""), of("2")
	assert.InEpsilon(t, 2*float64(one.Added.Value), float64(two.Added.Value), 1e-12)
	assert.InEpsilon(t, 2*float64(one.Coat.AllCoats.Value), float64(two.Coat.AllCoats.Value), 1e-12)
	assert.InEpsilon(t, 2*float64(one.Coat.Mix.Value), float64(two.Coat.Mix.Value), 1e-12)
	assert.InEpsilon(t, 2*float64(one.Cups.Count.Value), float64(two.Cups.Count.Value), 1e-12, "each coat is mixed by itself")
	assert.InEpsilon(t, 2*float64(one.Cups.Spells.Value), float64(two.Cups.Spells.Value), 1e-12)

	deep := planOf(t, oneSurface, "buildup.1.step = 1", step("1", "coat", "card = gelcoat", "method = brush", "film = 400 µm", "film-for = each", "coats = 2", "goes = 2", "go-takes = 400 µm")).Buildups()[0].Steps[0]
	assert.InDelta(t, 2*(800*0.83-400), micrometres(deep.Added.Value), 1e-6, "more than one coat may be sanded off a round of two")
}

// Of what a porous ground swallows nothing is film: of 400 µm and 100 µm swallowed four fifths are, less the roller's 5 %.
func TestWhatTheGroundSwallowsIsNoFilm(t *testing.T) {
	s, _ := planSix(t, "buildup.1.step.1.kind = porous", "buildup.1.step.1.swallowed = 100 µm", "buildup.1.step.1.coats = 1").StepAt("buildup.1.step.1")
	assert.InEpsilon(t, 0.95*0.8, float64(s.FilmOnly/s.Leaves.Value), 1e-9)
}

// 0.4 mil is hardly a film: 0.4 mm was meant, says the question.
func TestMillimetresTypedAsMilAreAskedAbout(t *testing.T) {
	var meant []float64
	for _, a := range planSix(t, "buildup.1.step.1.film = 0.4 mil").Asks() {
		for _, o := range a.Otherwise {
			meant = append(meant, 1e6*o.Value)
		}
	}
	require.NotEmpty(t, meant)
	for _, m := range meant {
		assert.Greater(t, m, 20.)
	}
	assert.InDelta(t, 400, meant[0], 1e-6, "%v", meant)
}

// A run of grades takes nothing for a polish where a coat comes next. Filler that goes on no surface yet leaves no volume.
func TestWhatIsNotThereCountsForNothing(t *testing.T) {
	run := func(last string) float64 {
		w := planOf(t, oneSurface, "buildup.1.step = 1 2 3", step("1", "coat", "card = gelcoat", "method = brush", "film = 2 mm"), step("2", "sand", "by = grades", "grades = P400 P600"), last).Buildups()[0].Budgets()[0]
		require.Len(t, w.Grades(), 1)
		require.True(t, w.Grades()[0].OK)
		return micrometres(w.Grades()[0].Takes.Value)
	}
	coated, polished := run(step("3", "coat", "card = primer", "method = brush", "film = 200 µm")), run(step("3", "polish", "card = compound"))
	assert.InDelta(t, 25.8/3, polished-coated, 0.1, "below the scratches of P600 only where it is polished")
	f := fillOf(t, "buildup.1.step.1.thickness = 2 mm")
	assert.Nil(t, f.Left.Step)
	assert.Zero(t, f.Dust.Value)
}
