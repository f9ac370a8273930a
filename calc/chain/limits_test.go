package chain_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/air"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
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
