package view_test

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// A putty shows what its parts make and weigh, and what to weigh of each for the litres that are wanted; it is set against a bought
// filler, by weight, and by cost once both have a price. Over 55 % balloons it asks.
func TestAPuttyIsItsOwn(t *testing.T) {
	open := func(lines ...string) *page.State {
		return opened(with(fairState(t), lines...), "sheet "+page.PuttiesSheet, "putty.1")
	}
	for _, s := range []*page.State{open(), open("putty.1.wanted =")} {
		p := s.Plan.Putties()[0]
		require.True(t, p.Known)
		want := []fig{{"putty.1.volume", "The parts make", shownAs(p.Made.Volume, unit.InLitre)}, {"putty.1.mass", "and weigh", shownAs(p.Made.Mass, unit.InKilogram)},
			{"putty.1.density", "Density of the putty", shownAs(p.Made.Density, unit.InKilogramPerLitre)}, {"putty.1.balloons", "Balloons by volume", unit.Write(float64(p.Made.Balloons.Value), unit.InPercent, 3)}}
		for i, part := range p.Parts {
			id := "putty.1.part." + strconv.Itoa(i)
			if part.Weigh.Step != nil {
				want = append(want, fig{id + ".weigh", "Weigh " + part.Name, shownAs(part.Weigh, unit.InGram)})
			} else {
				want = append(want, fig{id + ".mass", words.Capital(part.Name) + " weighs", shownAs(part.Mass, unit.InGram)})
			}
		}
		figures(t, s, "figures-putty.1", want)
	}
	filler := "Epoxy fairing filler"
	priced := []string{"putty.1.part.1.price = 20", "putty.1.part.2.price = 30"}
	all := append(priced, "card.epoxy-filler.pack.1.price = 30", "card.epoxy-filler.density = 0.75")
	cost := open(all...).Plan.Putties()[0]
	require.True(t, cost.Cost.Valid && cost.Bought.Valid)
	saysEach(t, []saying{
		{open(), "figures-putty.1", "Density 0.692 kg/L; " + filler + ": 0.75 kg/L.|" + words.PriceThem(filler), words.DryPutty},
		{open(priced...), "figures-putty.1", words.LitreAlone(cost.Cost.Decimal.StringFixed(2), filler), words.PriceThem(filler)},
		{open(all...), "figures-putty.1", words.LitreAgainst(cost.Cost.Decimal.StringFixed(2), filler, cost.Bought.Decimal.StringFixed(2)), words.PriceThem(filler)},
		{open("putty.1.part.2.volume = 1.2 L"), "figures-putty.1", words.DryPutty, ""},
		{open("putty.1.part.1.mass ="), "figures-putty.1", "Still to be typed: ", "kg/L"},
		{open("putty.1.name = Light"), "name-putty.1", "Light", words.PuttyWithoutAName},
		{open(), "name-putty.1", words.PuttyWithoutAName, ""},
		{open(), "sum-putty.1", "0.692 kg/L", ""},
	})
	for chosen, name := range map[string]string{"": words.BoughtFiller, "putty.1": "Light"} {
		s := do(with(fairState(t), "putty.1.name = Light", "buildup.1.step.2.putty = "+chosen), "sheet", "buildup.1.step.2", "")
		assert.Equal(t, name, textOf(t, s, "picked-buildup.1.step.2.putty"))
		assert.Contains(t, view.Page(s).String(), `<option value="putty.1">Light</option>`)
	}
}

// What a grade takes by the builder's own figure stands on its line, and in the run that uses it.
func TestAnOwnRemovalIsItsOwn(t *testing.T) {
	open := func(lines ...string) *page.State {
		return opened(with(fairState(t), lines...), "sheet "+page.RemovalsSheet, "removal.1")
	}
	figures(t, open(), "figures-removal.1", []fig{{"removal.1.takes", words.ItTakes, "20 µm"}})
	saysEach(t, []saying{
		{open(), "name-removal.1", "P320", words.GradeNotTyped},
		{open("removal.1.grade ="), "name-removal.1", words.GradeNotTyped, "P320"},
		{open(), "sum-removal.1", "20 µm", ""},
		{open("removal.1.takes ="), "sum-removal.1", "–", "µm"},
		{open("removal.1.takes ="), "figures-removal.1", "Still to be typed: ", "µm"},
		{open("removal.1.way = gauged"), "item-removal.1", "", words.AsCuredGelCoat},
	})
	why := do(fairState(t), "sheet", "buildup.1.step.4.why", "")
	use := buttonsOf(regionOf(t, view.Page(why).String(), "figures-buildup.1.step.4"))
	last := use[len(use)-1]
	assert.Equal(t, button{do: "set", path: "buildup.1.step.4.grades", text: "P180 P320 P600 P1200", label: words.UseThese}, last)
	assert.Contains(t, textOf(t, why, "figures-buildup.1.step.4"), "The fewest grades, P180, P320, P600, P1200, take 44 µm")
	jump := do(with(fairState(t), "buildup.1.step.4.grades = P80 P400"), "sheet", "buildup.1.step.4.why", "")
	assert.Contains(t, textOf(t, jump, "figures-buildup.1.step.4"), "is a step of ")
	assert.NotContains(t, textOf(t, why, "figures-buildup.1.step.4"), "is a step of ")
}
