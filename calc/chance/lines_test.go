package chance_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// gelAndPaint is the hatch with two coats of gel coat, a run of grades, and one of paint by the litre.
var gelAndPaint = append([]string{"buildup.1.step = 1 2 3", "buildup.1.step.2.kind = sand", "buildup.1.step.2.by = grades", "buildup.1.step.2.grades = P240 P320 P400",
	"buildup.1.step.3.kind = coat", "buildup.1.step.3.card = topcoat", "buildup.1.step.3.method = foam-roller", "buildup.1.step.3.film = 100 µm", "buildup.1.step.3.film-for = each"}, rolledTwice[1:]...)

// The list goes in the order of the work: materials first, then what goes with them; grades of one abrasive
// stand together, from coarse to fine, though other things are used between them.
func TestTheOrderOfTheList(t *testing.T) {
	p := planned(t, gelAndPaint...)
	var keys []string
	goods := 0
	for _, l := range chance.OrderOf(&p).Lines {
		keys = append(keys, l.Key())
		isGoods := l.Card.Kind == material.Sundry || l.Card.Kind == material.Solvent
		require.False(t, !isGoods && goods > 0, "%s comes after what goes with it", l.Card.Key)
		if isGoods {
			goods++
		}
	}
	assert.Positive(t, goods)
	assert.Equal(t, []string{"gelcoat", "ketone-peroxide", "topcoat"}, keys[:3])
	text := " " + strings.Join(keys[3:], " ") + " "
	assert.Contains(t, text, " disc-P240 disc-P320 disc-P400 ")
	assert.Less(t, strings.Index(text, " tape "), strings.Index(text, " disc-P240 "), "%s: what the first coat needs comes before its sanding", text)
	assert.Less(t, strings.Index(text, " disc-P240 "), strings.Index(text, " mask "), text)
}

// What is bought weighs what its packs hold: kilograms as they are, litres by the density of their card, and of metres
// and pieces nobody knows it. A line
// whose packs can't be chosen buys nothing. What has no price is counted only where it is bought.
func TestWhatIsBoughtWeighs(t *testing.T) {
	p := planned(t, append([]string{"card.ketone-peroxide.stock = 1 kg", "card.tape.pack.1.price = 4"}, gelAndPaint...)...)
	o := chance.OrderOf(&p)
	sum, weighed, unpriced := 0., 0, 0
	for _, l := range o.Lines {
		amount := l.Bought.Bought.InexactFloat64()
		switch {
		case l.ToBuy.IsZero():
		case l.Scale == unit.InKilogram:
			sum, weighed = sum+amount, weighed+1
		case l.Scale == unit.InLitre:
			sum, weighed = sum+amount*unit.InKilogramPerLitre.From(float64(l.Card.Density.Value)), weighed+1
		}
		if !l.ToBuy.IsZero() && l.Card.Key != "tape" {
			unpriced++
		}
	}
	assert.True(t, lineOf(&o, "ketone-peroxide").ToBuy.IsZero())
	assert.GreaterOrEqual(t, weighed, 3)
	assert.InDelta(t, sum, unit.InKilogram.From(float64(o.Bought.Value)), 1e-9)
	assert.Len(t, o.Bought.Step.From, weighed)
	assert.Equal(t, unpriced, o.Unpriced)
	assert.InDelta(t, 4*lineOf(&o, "tape").Bought.Bought.InexactFloat64()/50, o.Cost.InexactFloat64(), 1e-9)

	none := planned(t, append([]string{"card.topcoat.pack.1.sold = no", "card.topcoat.pack.2.sold = no", "card.topcoat.pack.3.sold = no", "card.topcoat.pack.4.sold = no"}, gelAndPaint...)...)
	o = chance.OrderOf(&none)
	require.Error(t, lineOf(&o, "topcoat").Err)
	for _, s := range o.Bought.Step.From {
		assert.Positive(t, s.Out, s.Origin)
	}
	was := lineOf(&o, "topcoat").Need
	o = simulated(t, none, 1e6)
	l := lineOf(&o, "topcoat")
	assert.Error(t, l.Err)
	assert.Nil(t, l.Confidence, "no chance is told of what can't be bought")
	assert.True(t, was.Equal(l.Need))
}

// Filler that is put on counts in litres as mixed coats do: 1 mm on 6 m² are 6 L left on and 6 ÷ 0.7 = 8.5714 L
// put on, beside 5.0526 L of gel coat.
func TestWhatIsPutOnHasItsFiller(t *testing.T) {
	fill := []string{"buildup.1.step = 1 2", "buildup.1.step.2.kind = fill", "buildup.1.step.2.card = epoxy-filler", "buildup.1.step.2.thickness = 1 mm"}
	p := planned(t, append(fill, rolledTwice[1:]...)...)
	assert.InDelta(t, 5.0526+8.5714, unit.InLitre.From(float64(chance.OrderOf(&p).PutOn.Value)), 1e-4)
}

// An order is partial too where what is left out is refused without a line that waits for it.
func TestAStepThatIsRefusedMakesTheOrderPartial(t *testing.T) {
	lines := append(append([]string{}, sixSquareMetres...), rolledTwice...)
	p := plan.Make(jobtest.Doc(t, append(lines, "buildup.1.step = 1 2", "buildup.1.step.2.kind = sand", "buildup.1.step.2.taken = much")...))
	require.Error(t, p.RefusedAt("buildup.1.step.2.taken"))
	o := chance.OrderOf(&p)
	for _, l := range o.Lines {
		require.Nil(t, l.Waits(), l.Card.Key)
	}
	assert.True(t, o.IsPartial())
}

// A stock that cups took from shows what was counted and what they took, in the unit that it is sold by.
func TestTheStockOfAKilogramShowsItsWorking(t *testing.T) {
	p := plan.Make(jobtest.Doc(t, rolled, "card.flowcoat.stock = 3 kg\ncup = 1\ncup.1.card = flowcoat\ncup.1.mixed = 480 g\ncup.1.in = 100"))
	found := false
	for _, text := range line(p, "flowcoat").Buying().Texts() {
		found = found || text.Numbers == "max(0, 3 − 0.48)" && text.Result == "2.52\u00a0kg"
	}
	assert.True(t, found, "%v", line(p, "flowcoat").Buying().Texts())
}

// How the packs of a line were chosen ends with what they hold, in the unit that it is sold by: in kilograms,
// litres, metres and pieces.
func TestTheChoiceOfPacksOpensInTheLinesUnit(t *testing.T) {
	p := planned(t, gelAndPaint...)
	o := chance.OrderOf(&p)
	seen := map[unit.Scale]bool{}
	for i := range o.Lines {
		l := &o.Lines[i]
		if !l.ToBuy.IsZero() {
			step := l.Buying()
			assert.InDelta(t, l.Bought.Bought.InexactFloat64(), l.Scale.From(step.Out), 1e-9, l.Card.Key)
			assert.Equal(t, l.Scale, step.Rule.Result.Scale, l.Card.Key)
			seen[l.Scale] = true
		}
	}
	assert.Len(t, seen, 4)
}

// Bought for its chance, an order costs and weighs what its lines do, as it did before.
func TestASimulatedOrderIsTheSumOfItsLines(t *testing.T) {
	p := planned(t, append([]string{"card.gelcoat.pack.1.price = 20", "card.gelcoat.pack.2.price = 80", "card.gelcoat.pack.3.price = 300", "card.gelcoat.buy = once"}, rolledTwice...)...)
	before, o := chance.OrderOf(&p), simulated(t, p, 1e6)
	require.True(t, lineOf(&o, "gelcoat").Bought.Bought.GreaterThan(lineOf(&before, "gelcoat").Bought.Bought))
	assert.True(t, o.Cost.Equal(lineOf(&o, "gelcoat").Bought.Cost), "%v", o.Cost)
	assert.Greater(t, o.Bought.Value, before.Bought.Value)
	assert.Equal(t, before.Unpriced, o.Unpriced)
}
