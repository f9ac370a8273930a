package ready_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/ready"
)

// onGround is a job of one surface of a number of square metres, on a ground as
// found, that gets the sequence.
func onGround(s *ready.Sequence, ground, lies string, width string) job.Document {
	d, path := job.Document{}.Add("buildup")
	d = s.Put(d, path)
	d, surface := d.Add("surface")
	for key, text := range map[string]string{"buildup": path, "length": "2 m", "width": width, "ground": ground, "lies": lies} {
		d = d.Set(surface+"."+key, text)
	}
	return d
}

// Every step says what its kind shows, in texts that its fields take.
func TestEveryStepCouldBeTyped(t *testing.T) {
	seen := map[string]bool{}
	for i := range ready.Sequences {
		s := &ready.Sequences[i]
		assert.False(t, seen[s.Key] || seen[s.Name], s.Key)
		seen[s.Key], seen[s.Name] = true, true
		assert.Same(t, s, ready.Find(s.Key))
		for _, ground := range s.Grounds() {
			_, known := job.GroundByKey(ground)
			assert.True(t, known, "%s: %s", s.Key, ground)
		}
		for n, step := range s.Steps() {
			kind := job.FindStepKind(step[0].Text)
			require.Equal(t, ready.Setting{Key: "kind", Text: kind.Key}, step[0], "%s, step %d", s.Key, n+1)
			get := func(key string) string {
				for _, said := range step {
					if said.Key == key {
						return said.Text
					}
				}
				return ""
			}
			for _, said := range step[1:] {
				assert.Contains(t, kind.Shown(get), said.Key, "%s, step %d", s.Key, n+1)
				_, err := job.FieldAt("buildup.1.step.1."+said.Key).Read(said.Text, job.Units{})
				assert.NoError(t, err, "%s, step %d: %s", s.Key, n+1, said.Key)
			}
		}
	}
	assert.Nil(t, ready.Find("no such sequence"))
}

// Each is whole: on every ground that it is meant for, however the surface
// lies, nothing is red, nothing waits, and there is an order.
func TestNothingIsRedOnAnyGroundItIsMeantFor(t *testing.T) {
	for i := range ready.Sequences {
		s := &ready.Sequences[i]
		for _, ground := range s.Grounds() {
			for _, lies := range []string{job.FacingUp, job.OnWall, job.Overhead} {
				for _, width := range []string{"0.3 m", "1 m", "5 m"} {
					name := s.Key + ", " + ground + ", " + lies + ", " + width
					p := plan.Make(onGround(s, ground, lies, width))
					require.Empty(t, p.Refused(), name)
					require.Empty(t, p.Waiting(), name)
					require.NotEmpty(t, chance.OrderOf(&p).Lines, name)
					b := &p.Buildups()[0]
					red := b.Findings()
					for _, budget := range b.Budgets() {
						red = append(red, budget.Findings...)
					}
					for _, f := range red {
						assert.Less(t, f.Severity, buildup.Refuse, "%s: step %d, %s %s: %g, limit %g", name, f.Step+1, f.Rule, f.Fix, f.Got, f.Limit)
					}
				}
			}
		}
	}
}

// A sequence isn't meant for a ground that stops it: what a surface on another
// ground is told is that ground's own.
func TestAGroundThatStopsItIsNone(t *testing.T) {
	p := plan.Make(onGround(ready.Find("foam-to-gloss"), "polystyrene", job.FacingUp, "1 m"))
	require.NotEmpty(t, p.Buildups()[0].Findings())
	assert.Equal(t, buildup.EpoxyInstead, p.Buildups()[0].Findings()[0].Fix)
}

// The kilograms of mix for each square metre and coat lie in the trade's band.
// Source: common practice, flow coat about 0.5, gel coat 0.4–0.6 rolled and
// 0.8–1.5 by the gun, its loss in it.
func TestKilogramsASquareMetreAreTheTrades(t *testing.T) {
	bands := map[string][2]float64{"flowcoat nap-roller": {0.4, 0.7}, "gelcoat nap-roller": {0.4, 0.6}, "gelcoat gravity-gun": {0.8, 1.5}}
	held := 0
	for i := range ready.Sequences {
		s := &ready.Sequences[i]
		p := plan.Make(onGround(s, s.Grounds()[0], job.FacingUp, "5 m"))
		for _, step := range p.Buildups()[0].Steps {
			if step.Coat == nil {
				continue
			}
			if band, known := bands[step.Card.Key+" "+step.Job.Method.Key]; known {
				held++
				each := float64(step.Leaves.Value) / 10 / float64(step.Coat.AllCoats.Value)
				assert.True(t, band[0] <= each && each <= band[1], "%s, %s: %.2f kg/m² a coat", s.Key, step.Card.Name, each)
			}
		}
	}
	assert.Equal(t, 5, held)
}

// Putting one into a build-up takes the place of what was there.
func TestASequenceTakesThePlaceOfTheStepsBefore(t *testing.T) {
	d, path := job.Document{}.Add("buildup")
	d = ready.Find("foam-to-gloss").Put(d, path)
	once := ready.Find("fair-only").Put(d, path)
	assert.Len(t, once.Items(path+".step"), len(ready.Find("fair-only").Steps()))
	assert.Equal(t, "Fair only", once.Get(path+".name"))
	assert.Equal(t, "polyester", once.Get(path+".ground"))
	for _, card := range material.Cards {
		assert.NotContains(t, card.Key, ", ", "a key stands in a step's text")
	}
}
