package view_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// unset takes away how a formula is set.
var unset = strings.NewReplacer("<i>", "", "</i>", "", "<strong>", " ", "</strong>", "")

// A made-up shape, kind of step, figure of a card and rule are found wherever the page shows such a thing, by their entries
// alone. By hand: 0.7 × 2 m × 1.5 m = 2.1 m²; at 30 g/m² 63 g of oil.
func TestMadeUpEntriesAreFoundEverywhere(t *testing.T) {
	s, _ := page.Start(nil, noon)
	s = do(s, "add", "surface", "")
	s = do(s, "set", "surface.1.shape", "made-up")
	s = do(s, "add", "buildup", "")
	s = do(s, "add", "buildup.1.step", "oil")
	s = do(s, "set", "surface.1.buildup", "buildup.1")
	show := func(s *page.State, screen string, open ...string) string {
		return strings.ReplaceAll(view.Page(opened(do(s, "go", screen, ""), open...)).String(), "\u00a0", " ")
	}

	shapes := show(s, "surfaces", "sheet surface.1.shapes")
	assert.Contains(t, shapes, `data-path="surface.1.shape" data-text="made-up"`, "form: the choice")
	surfaces := show(s, "surfaces", "sheet surface.1")
	assert.Contains(t, surfaces, `data-path="surface.1.sprit"`, "form: its measure")
	assert.Contains(t, surfaces, `class="letter"`, "sketch")
	assert.Contains(t, surfaces, ">j</text>", "sketch: its letter")
	assert.Equal(t, "2 h", s.Doc().Get("buildup.1.step.1.wait"), "what a new one starts with")
	assert.Contains(t, show(s, "buildup", "sheet buildup.1.add"), `data-text="oil"`, "form: the kind of step")
	steps := show(s, "buildup", "sheet buildup.1.step.1")
	assert.Contains(t, steps, "Oil it in", "form: its name")
	assert.Contains(t, steps, `<option value="compound"`, "form: the materials that fit it")
	cards := show(s, "cards", "sheet card.compound")
	assert.Contains(t, cards, `data-path="card.compound.thirst"`, "form: the figure of a card")

	for path, text := range map[string]string{"surface.1.sprit": "2 km", "card.compound.thirst": "5 kg/m²"} {
		wrong := do(s, "set", path, text)
		require.Error(t, wrong.Plan.RefusedAt(path), "check: %s", path)
	}
	assert.NotEmpty(t, s.Plan.WaitingAt("surface.1.sprit"), "check: what isn't typed is waited for")

	for path, text := range map[string]string{"surface.1.sprit": "2 m", "surface.1.girth": "1.5 m", "buildup.1.step.1.card": "compound", "card.compound.thirst": "30 g/m²"} {
		s = do(s, "set", path, text)
	}
	require.Empty(t, s.Plan.Refused())
	saved := job.Save(s.Doc(), 1)
	for _, line := range []string{"surface.1.shape = made-up\n", "surface.1.sprit = 2 m\n", "buildup.1.step.1.kind = oil\n", "card.compound.thirst = 30 g/m²\n"} {
		assert.Contains(t, saved, line, "saved text")
	}
	again, _, err := job.Load(saved)
	require.NoError(t, err)
	s = of(t, again)

	assert.InDelta(t, 2.1, float64(s.Plan.Area().Value), 1e-12)
	assert.Contains(t, unset.Replace(show(do(do(s, "why", "area", ""), "whole", "", ""), "surfaces")), "0.7 × 2 × 1.5 = 2.1 m²", "working")
	require.Len(t, s.Plan.Buildups()[0].Steps[0].Used, 1)
	assert.InDelta(t, 0.063, float64(s.Plan.Buildups()[0].Steps[0].Used[0].Mass.Value), 1e-12)
	order := do(do(do(do(s, "go", "order", ""), "sheet", "need.compound", ""), "why", "order.compound.mass", ""), "whole", "", "")
	told := unset.Replace(strings.ReplaceAll(view.Page(order).String(), "\u00a0", " "))
	assert.Contains(t, told, "m = A × o", "working: the formula")
	assert.Contains(t, told, "2.1 × 0.03 = 0.063 kg", "working: the numbers in it")

	sources := show(s, "sources")
	told = unset.Replace(sources)
	assert.Contains(t, told, "A = 0.7 × j × g", "sources")
	assert.Contains(t, told, "m = A × o", "sources")
	check(t, "sources", elements(t, "sources", sources))
}
