package plan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// fixOf is the finding with the fix; nil: there is none.
func fixOf(list []plan.Finding, fix buildup.Fix) *plan.Finding {
	for i := range list {
		if list[i].Fix == fix {
			return &list[i]
		}
	}
	return nil
}

// The hours of a card are those that its layer is checked by: other ones typed for each, so that none can stand for
// another. A coat after half an hour waits for 1.25 h, one after 30 h is past the 12 h of the window.
func TestALayerIsCheckedByItsCardsHours(t *testing.T) {
	after := func(wait string) []plan.Finding {
		return planSix(t, "buildup.1.step = 1 2", "card.gelcoat.recoat-from = 1.25 h\ncard.gelcoat.recoat-to = 12 h\ncard.gelcoat.sand-from = 20 h",
			step("2", "coat", "card = gelcoat", "method = brush", "film = 400 µm", "wait = "+wait)).Buildups()[0].AllFindings()
	}
	early := fixOf(after("0.5 h"), buildup.WaitLonger)
	require.NotNil(t, early)
	assert.InDelta(t, 1.25, unit.InHour.From(early.Limit), 1e-9)
	assert.InDelta(t, 0.5, unit.InHour.From(early.Got), 1e-9)
	assert.Nil(t, fixOf(after("6 h"), buildup.WaitLonger))
	late := false
	for _, f := range after("30 h") {
		late = late || f.Scale == unit.InHour && unit.InHour.From(f.Limit) == 12 && unit.InHour.From(f.Got) == 30
	}
	assert.True(t, late, "%+v", after("30 h"))
}

// Thinner is asked about above what its card asks about, wax solution counted in: of gel coat above 5 % by mass.
func TestMuchThinnerIsAskedAbout(t *testing.T) {
	asked := func(share string) *plan.Finding {
		return fixOf(planSix(t, "buildup.1.step.1.thinner-by = mass\nbuildup.1.step.1.thinner = "+share).Buildups()[0].AllFindings(), buildup.LessThinner)
	}
	assert.Nil(t, asked("5 %"))
	f := asked("6 %")
	require.NotNil(t, f)
	assert.InDelta(t, 0.06, f.Got, 1e-9)
	assert.InDelta(t, 0.05, f.Limit, 1e-9)
}

// A cup that opens a spell wets the tool with its material, and the next one of another finds it dry: rolled
// within minutes of each other, cups of two materials both leave in the roller what it holds.
func TestEachMaterialWetsItsOwnTool(t *testing.T) {
	cup := func(n, card, in string) string {
		at := "cup." + n + "."
		return at + "card = " + card + "\n" + at + "step = buildup.1.step.1\n" + at + "method = nap-roller\n" + at + "mixed = 500 g\n" + at + "in = " + in + "\n" + at + "ended = 900\n" + at + "end = spread\n"
	}
	p := plan.Make(document(t, rolledDeck, "cup = 1 2 3", cup("1", "gelcoat", "100"), cup("2", "flowcoat", "200"), cup("3", "gelcoat", "300")))
	on := func(path string) float64 {
		f, known := p.PutOn(path)
		require.True(t, known, path)
		return float64(f.Value)
	}
	assert.InDelta(t, on("cup.1"), on("cup.2"), 1e-9)
	assert.InDelta(t, 0.080, on("cup.3")-on("cup.1"), 1e-9, "the roller is wet with gel coat already")
}
