package chain_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/air"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
)

// The air that a card takes is the card's own, each limit in its place and as typed: a
// limit of damp in the place of a dry one, or an end of a range for its middle, would
// pass a coat in air that its maker refuses.
func TestTheAirThatACardTakes(t *testing.T) {
	j, problems := job.Read(jobtest.Doc(t, "card.gelcoat.surface-least = 16 °C\ncard.gelcoat.surface-most = 31 °C\ncard.gelcoat.humidity-least = 25 %\ncard.gelcoat.humidity-most = 75 %"))
	require.Empty(t, problems)
	card := j.CardByKey("gelcoat")
	celsius := func(c float64) unit.Temperature { return unit.Of[unit.Temperature](c, unit.InCelsius) }
	limits := chain.AirLimits(card)
	assert.Equal(t, air.Limits{Least: celsius(16), Most: celsius(31), Driest: 0.25, Dampest: 0.75, Margin: air.DewMargin.Value, Cure: card.CureHours.Value}, limits)
	require.Less(t, card.CureHours.Low, card.CureHours.Value)
	require.Less(t, card.CureHours.Value, card.CureHours.High)
}

// A card without a table has no dose, and neither has one whose typed table is only
// half typed: the shipped rows never stand in for it.
func TestNoTableIsNoDose(t *testing.T) {
	_, err := chain.DoseTable(&job.Card{})
	assert.ErrorIs(t, err, chain.ErrNoTable)
	j, problems := job.Read(jobtest.Doc(t, "card.gelcoat.dose = 1 2\ncard.gelcoat.dose.1.temp = 20 °C\ncard.gelcoat.dose.1.share = 2 %\ncard.gelcoat.dose.2.temp = 25 °C"))
	require.Empty(t, problems)
	_, err = chain.DoseTable(j.CardByKey("gelcoat"))
	assert.ErrorIs(t, err, chain.ErrUnfinished)
	j, problems = job.Read(jobtest.Doc(t, "card.gelcoat.dose = 1\ncard.gelcoat.dose.1.temp = 20 °C\ncard.gelcoat.dose.1.share = 2 %"))
	require.Empty(t, problems)
	_, err = chain.DoseTable(j.CardByKey("gelcoat"))
	var few *cure.TableError
	require.ErrorAs(t, err, &few, "one row is no table")
	assert.Equal(t, cure.TooFewRows, few.Fault)
}

// A typed gel time keeps the card's usual spread, and where a card ships without one it
// has no spread: never a figure that isn't one.
func TestATypedGelTimeHasAnEarlyAndALateEnd(t *testing.T) {
	for _, shipped := range material.Cards {
		j, problems := job.Read(jobtest.Doc(t, "card."+shipped.Key+".gel-time = 20 min"))
		if len(problems) > 0 {
			continue
		}
		card := j.CardByKey(shipped.Key)
		if card == nil || card.GelTime.Value != 20*unit.Minute {
			continue
		}
		low, high := 20*unit.Minute, 20*unit.Minute
		if shipped.GelTime.Value > 0 {
			low, high = low*shipped.GelTime.Low/shipped.GelTime.Value, high*shipped.GelTime.High/shipped.GelTime.Value
		}
		g := chain.GelOf(card)
		assert.InDelta(t, float64(low), float64(g.Time.Low.Value), 1e-6, shipped.Key)
		assert.InDelta(t, float64(20*unit.Minute), float64(g.Time.Mid.Value), 1e-6, shipped.Key)
		assert.InDelta(t, float64(high), float64(g.Time.High.Value), 1e-6, shipped.Key)
	}
}
