package plan_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// coatAlone is a coat of a card, put on so, on two square metres that lie so.
func coatAlone(card *material.Card, method, lies string) job.Document {
	ground := map[material.Chemistry]string{material.TwoPack: "paint"}[card.Chemistry]
	if ground == "" {
		ground = "polyester"
	}
	return job.Of([]job.Line{
		{Path: "buildup", Text: "1"}, {Path: "buildup.1.step", Text: "1"},
		{Path: "buildup.1.step.1.kind", Text: "coat"}, {Path: "buildup.1.step.1.card", Text: card.Key},
		{Path: "buildup.1.step.1.method", Text: method}, {Path: "buildup.1.step.1.release", Text: "film"},
		{Path: "surface", Text: "1"}, {Path: "surface.1.buildup", Text: "buildup.1"}, {Path: "surface.1.lies", Text: lies},
		{Path: "surface.1.length", Text: "2 m"}, {Path: "surface.1.width", Text: "1 m"},
		{Path: "surface.1.ground", Text: ground}, {Path: "surface.1.prepared", Text: "both"}, {Path: "surface.1.prepared-grade", Text: "P120"},
		{Path: "surface.1.ground-age", Text: "60 d"}, {Path: "surface.1.patch", Text: "May"},
	})
}

// Every film of every card that ships, from its least coat up, can be put on
// in some number of coats, however it is put on and however it lies; and from
// the least that must be left to the most that may be, nothing is red.
func TestEveryFilmOfEveryCardHolds(t *testing.T) {
	walked := 0
	for _, card := range material.Cards {
		if card.Kind > material.Topcoat {
			continue
		}
		require.True(t, card.CoatLeast.Known && card.CoatMost.Known, card.Key)
		for _, method := range []string{"nap-roller", "gravity-gun"} {
			if method == "gravity-gun" && !card.CuredSprayed.Known {
				continue
			}
			for _, lies := range []string{job.FacingUp, job.OnWall, job.Overhead} {
				d := coatAlone(card, method, lies)
				p := plan.Make(d)
				for wet := unit.InMicrometre.From(float64(card.CoatLeast.Value)); wet <= 2000; wet += 7 {
					name := fmt.Sprintf("%s, %s, %s, %g µm", card.Key, method, lies, wet)
					p = p.Next(d.Set("buildup.1.step.1.film", fmt.Sprintf("%g µm", wet)))
					require.Empty(t, p.Refused(), name)
					b := &p.Buildups()[0]
					coat := b.Steps[0].Coat
					require.NotNil(t, coat, name)
					require.InDelta(t, wet, float64(coat.Coats.Value)*unit.InMicrometre.From(float64(coat.WetEach.Value)), 1e-6, name)
					isBetween := coat.Cured.Value >= card.LeftLeast.Value && (!card.LeftMost.Known || coat.Cured.Value <= card.LeftMost.Value)
					for _, f := range append(b.Findings(), b.Budgets()[0].Findings...) {
						if f.Rule == buildup.WetFilm || isBetween {
							assert.False(t, f.IsRed(), "%s: %s %g, limit %g", name, f.Rule, f.Got, f.Limit)
						}
					}
					walked++
				}
			}
		}
	}
	assert.Greater(t, walked, 5000)
}

// What the trade puts on as a matter of course isn't red.
func TestUsualFilmsHold(t *testing.T) {
	flow, _ := material.Find("flowcoat")
	perArea := 0.5 // kg/m² a coat
	d := coatAlone(&flow, "nap-roller", job.FacingUp).Set("buildup.1.step.1.film", fmt.Sprintf("%g µm", perArea/float64(flow.Density.Value)*1e6))
	p := plan.Make(d)
	require.Empty(t, p.Refused())
	for _, f := range append(p.Buildups()[0].Findings(), p.Buildups()[0].Budgets()[0].Findings...) {
		assert.NotEqual(t, buildup.Refuse, f.Severity, "%s: %g, limit %g", f.Rule, f.Got, f.Limit)
	}
}
