package view_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// stackOf is a job of one surface with the steps, each "kind = card" or "kind", planned as far as their defaults go.
func stackOf(t *testing.T, steps ...string) *page.State {
	t.Helper()
	lines := []string{"surface = 1", "surface.1.name = Deck", "surface.1.length = 2 m", "surface.1.width = 1 m", "surface.1.ground = polyester", "surface.1.buildup = buildup.1", "buildup = 1"}
	var ids []string
	for i, step := range steps {
		id := strconv.Itoa(i + 1)
		ids = append(ids, id)
		kind, rest, _ := strings.Cut(step, " ")
		lines = append(lines, "buildup.1.step."+id+".kind = "+kind)
		for _, typed := range strings.Split(rest, "; ") {
			if typed != "" {
				lines = append(lines, "buildup.1.step."+id+"."+typed)
			}
		}
	}
	if len(ids) > 0 {
		lines = append(lines, "buildup.1.step = "+strings.Join(ids, " "))
	}
	return do(of(t, jobtest.Doc(t, lines...)), "go", "buildup", "")
}

// Each layer is drawn as what it is of: its hatching, its height, and on the topmost coat alone what must be left of it. What is
// washed is a mark between two layers, with nothing to say; what takes film is marked, and what stops more so.
func TestEachLayerIsDrawnAsWhatItIs(t *testing.T) {
	s := stackOf(t, "fill card = epoxy-filler; thickness = 1 mm", "wash", "coat card = primer; film = 200; method = nap-roller", "coat card = flowcoat; film = 400; method = nap-roller",
		"coat card = topcoat; film = 80; method = roll-tip", "coat card = gelcoat; film = 500; method = gravity-gun; release = film", "sand taken = 60", "polish card = compound; taken = 5")
	b := s.Plan.Buildups()[0]
	require.Len(t, b.Steps, 8)
	stuffs := []draw.Stuff{draw.Filling, draw.Washed, draw.PrimerFilm, draw.FlowCoatFilm, draw.TopcoatFilm, draw.GelCoatFilm, draw.Sanded, draw.Polished}
	html := view.Page(s).String()
	for i := range b.Steps {
		step := &b.Steps[i]
		item, film := regionOf(t, html, "item-"+step.Path), 0.
		swatch := draw.Swatch{Stuff: stuffs[i], Height: 52}
		switch {
		case step.Coat != nil:
			film = unit.InMicrometre.From(float64(step.Added.Value))
			if i == 5 {
				require.True(t, step.Card.LeftLeast.Known)
				swatch.Least = float64(step.Card.LeftLeast.Value) / float64(step.Added.Value)
			}
		case step.Fill != nil:
			swatch.Film, swatch.Broken, swatch.Height = 96, true, 96
		case step.Taken.Step != nil:
			film = unit.InMicrometre.From(float64(step.Taken.Value))
		}
		if film > 0 {
			swatch.Film = film * 0.15
			swatch.Height = max(52, swatch.Film)
		}
		if stuffs[i] == draw.Washed {
			swatch.Height = 4
			assert.Equal(t, strconv.Itoa(i+1)+" Wash or wipe", plain(textIn(item)), "nothing is drawn thicker or thinner")
		}
		assert.Contains(t, item, swatch.Layer().String(), "step %d", i+1)
		class := `class="layer"`
		switch {
		case stuffs[i] == draw.Washed:
			class = `class="layer mark"`
		case strings.Contains(item, `data-is="stops"`):
			class = `class="layer" data-is="stops"`
		case step.Taken.Step != nil:
			class = `class="layer" data-is="takes"`
		}
		assert.Contains(t, strings.SplitN(item, ">", 2)[0], class, "step %d", i+1)
		isRed := false
		for _, f := range append(b.Findings(), b.Budgets()[0].Findings...) {
			isRed = isRed || f.Path == step.Path && f.IsRed()
		}
		assert.Equal(t, isRed, strings.Contains(item, `data-is="stops"`), "step %d", i+1)
	}
}

// Each material is hatched as its kind wherever it is looked at.
func TestEachMaterialIsHatchedAsItsKind(t *testing.T) {
	s := do(madeUp("surfaces"), "go", "cards", "")
	of := map[material.Kind]draw.Stuff{material.GelCoat: draw.GelCoatFilm, material.FlowCoat: draw.FlowCoatFilm, material.Primer: draw.PrimerFilm, material.Topcoat: draw.TopcoatFilm, material.Filler: draw.Filling}
	seen := map[material.Kind]bool{}
	html := view.Page(s).String()
	for _, c := range s.Plan.Job.Cards {
		if stuff, isPutOn := of[c.Kind]; isPutOn {
			seen[c.Kind] = true
			assert.Contains(t, regionOf(t, html, "item-"+c.Path), draw.Swatch{Stuff: stuff, Height: 52}.Layer().String(), c.Name)
		}
	}
	assert.Len(t, seen, len(of))
}

// budgetOf is the figures of a film budget: what is left flat and on edges, what is sanded through, what each coat must add.
func budgetOf(b *plan.Buildup) (list []fig) {
	for i := range b.Budgets() {
		w := &b.Budgets()[i]
		if len(w.Flat) == 0 {
			continue
		}
		id := b.Path + ".budget." + strconv.Itoa(i)
		add := func(has bool, key, label, value string) {
			if has {
				list = append(list, fig{id + key, label, value})
			}
		}
		share := func(p unit.Share) string {
			if p < 0.0005 {
				return "under 0.1 %"
			}
			return unit.Write(float64(p), unit.InPercent, 2)
		}
		last, _ := w.Last()
		add(true, ".mean", "Left at the end, mean", shownAs(last.Mean, unit.InMicrometre))
		add(true, ".thin", "Left at the end, thin side", shownAs(last.Thin, unit.InMicrometre))
		add(w.Share.Step != nil, ".share", "Expected to be sanded through", share(w.Share.Value))
		add(w.Through.Step != nil, ".gone", "That is", shownAs(w.Through, unit.InSquareMetre))
		if len(w.Edge) > 0 && w.EdgeOff.Step != nil {
			add(true, ".edge", "Edge strips: left, mean", shownAs(w.Edge[len(w.Edge)-1].Mean, unit.InMicrometre))
			add(true, ".edgeshare", "Edge strips: expected to be sanded through", share(w.EdgeOff.Value))
			add(w.EdgeGone.Step != nil, ".edgegone", "That is", shownAs(w.EdgeGone, unit.InSquareMetre))
		}
		if w.Surface != "" {
			continue
		}
		for _, n := range b.Needs() {
			id = b.Path + ".need." + strconv.Itoa(n.Step)
			name := strconv.Itoa(n.Step+1) + " Coat: " + b.Steps[n.Step].Card.Name
			add(n.Uneven == nil, "", name+": put on at least", shownAs(n.Cured, unit.InMicrometre)+" cured")
			add(n.Uneven == nil && n.Wet.Step != nil, ".wet", "Wet, that is", shownAs(n.Wet, unit.InMicrometre))
			add(n.Uneven == nil && n.Coats.Step != nil, ".coats", "Number of coats", unit.Number(float64(n.Coats.Value), 3))
		}
	}
	return list
}

// The budget of each build-up shows its own figures, step by step too; the picture over them has the same.
func TestABudgetIsItsOwn(t *testing.T) {
	for _, s := range []*page.State{madeUp("buildup"), fairState(t), do(fairState(t), "system", "", "metric")} {
		for _, b := range s.Plan.Buildups() {
			want := budgetOf(&b)
			require.NotEmpty(t, want)
			figures(t, do(s, "sheet", page.Part(b.Path, page.BudgetPart), ""), "figures-"+b.Path+".budget", want)

			want = nil
			for i := range b.Budgets() {
				for j, p := range b.Budgets()[i].Flat {
					step := &b.Steps[p.Step]
					name := strconv.Itoa(p.Step+1) + " " + step.Job.Kind.Name
					if step.Card != nil {
						name += ": " + step.Card.Name
					}
					if step.Job.Rounds.Value > 1 {
						name += ", round " + strconv.Itoa(p.Round)
					}
					if p.IsTaking && step.Coat != nil {
						name += ", sanded back"
					}
					id := b.Path + ".budget." + strconv.Itoa(i) + ".point." + strconv.Itoa(j)
					want = append(want, fig{id + ".mean", name + ", mean", shownAs(p.Mean, unit.InMicrometre)}, fig{id + ".thin", "thin side", shownAs(p.Thin, unit.InMicrometre)})
				}
			}
			want = append(want, fig{b.Path + ".left", "Film left at the end, all layers", shownAs(b.Left, unit.InMicrometre)}, fig{b.Path + ".area", "Area", shownAs(b.Area, unit.InSquareMetre)})
			figures(t, do(s, "sheet", page.Part(b.Path, page.PointsPart), ""), "figures-"+b.Path+".points", want)
		}
	}
}

// What a budget asks for is said where it is so, and not elsewhere: edges that go through, a film that can't be made by more of
// it, the grade that a run may begin with.
func TestABudgetSaysWhatToDo(t *testing.T) {
	budget := func(s *page.State) *page.State { return do(s, "sheet", "buildup.1.budget", "") }
	region := "figures-buildup.1.budget"
	coat := "coat card = flowcoat; film = 400; method = nap-roller"
	graded := func(film string, more ...string) *page.State {
		return budget(with(stackOf(t, "coat card = flowcoat; film = "+film+"; method = nap-roller", "sand by = grades; first = P180; last = P1200"), more...))
	}
	saysEach(t, []saying{
		{budget(madeUp("buildup")), region, words.KeepOffEdges, "as planned"},
		{budget(stackOf(t, coat, "sand taken = 20")), region, "edge strip", words.KeepOffEdges},
		{budget(stackOf(t, coat)), region, words.EndMean, "edge strip|" + words.KeepOffEdges},
		{budget(stackOf(t, "wash")), region, words.NoFilmYet, words.EndMean},
		{budget(fairState(t)), region, "As planned|Foredeck, as measured", ""},
		{graded("900"), region, "Step 2 Sand: there is film enough for P180, which takes ", "no coarser|bad"},
		{graded("90"), region, "at the thin side, every grade of it takes too much. Put on more first.", "film enough"},
		{budget(stackOf(t, coat, "sand taken = 300")), region, "", "more film won't do it"},
		{budget(with(stackOf(t, coat, "sand taken = 300"), "buildup.1.thin-share = 0.1", "buildup.1.step.1.method = brush")), region, "it may crack", ""},
		{budget(with(stackOf(t, coat, "sand taken = 300"), "buildup.1.thin-share = 0.5", "buildup.1.step.1.method = knife")), region, "more film won't do it, a more even one will. Bring its unevenness down from ", "put on at least"},
	})
	fine := budget(with(stackOf(t, "coat card = flowcoat; film = 320; method = nap-roller", "sand by = grades; first = P80; last = P1200")))
	for _, g := range fine.Plan.Buildups()[0].Budgets()[0].Grades() {
		if g.OK && g.Grade.String() != "P80" {
			assert.Contains(t, textOf(t, fine, region), plain("start with "+g.Grade.String()+", no coarser. It takes "+shownAs(g.Takes, unit.InMicrometre)))
		}
	}
	html := view.Page(graded("90")).String()
	assert.Regexp(t, `<p class="bad">Step 2 Sand: with`, html)
	assert.Regexp(t, `<p class="hint">Step 2 Sand: there is film enough`, view.Page(graded("900")).String())
}

// A build-up's screen says what it is on, what else there is, and shows the one that was chosen.
func TestABuildUpSaysWhereItLies(t *testing.T) {
	demo, fair := madeUp("buildup"), fairState(t)
	second := do(demo, "go", "buildup", "buildup.2")
	none, _ := page.Start(nil, noon)
	lost := with(demo, "surface.1.height = none")
	saysEach(t, []saying{
		{demo, "setup-buildup.1.on", "5.15 m²: Foredeck, Engine box", "Topsides"},
		{lost, "setup-buildup.1.on", words.WaitsForASurface, "m²"},
		{stackOf(t, "wash"), "setup-buildup.1.on", "2 m²: Deck", ""},
		{with(stackOf(t, "wash"), "surface.1.buildup ="), "setup-buildup.1.on", words.OnNoSurface, "m²"},
		{demo, "setup-buildup.1.about", "New parts: fair, flow coat, gel coat", ", on"},
		{with(fair, "buildup.1.ground = epoxy", "buildup.1.name = Hull"), "setup-buildup.1.about", "Hull, on epoxy, cured", words.UnnamedBuildup},
		{with(fair, "buildup.1.ground = epoxy"), "ground-buildup.1", "Ground epoxy, cured", ""},
		{fair, "setup-buildup.1.about", words.UnnamedBuildup, ", on"},
		{demo, "chips-buildup", "Topsides: spray again|" + words.AnotherBuildup, "New parts"},
		{second, "chips-buildup", "New parts: fair, flow coat, gel coat|" + words.AnotherBuildup, "Topsides"},
		{second, "top", "Topsides: spray again", "New parts"},
		{do(none, "go", "buildup", ""), "screen", words.BuildupIs + "|" + words.EmptyBuildup, words.AddAStep},
		{stackOf(t), "list-buildup.1.step", words.NoStepYet, ""},
		{demo, "list-buildup.1.step", words.StackScale, words.NoStepYet},
		{fair, "setup-removals", words.OwnRemovalsOf(1), words.OwnRemovals + " "},
		{fair, "setup-putties", words.HandMixedOf(1), words.HandMixed},
		{demo, "item-buildup.1.step.2", "short nap roller · 1 × 400 µm wet", ""},
		{demo, "item-buildup.1.step.4", "gravity gel coat gun · 2 × 502 µm wet", ""},
		{demo, "setup-removals", words.OwnRemovals, ""},
		{demo, "setup-putties", words.HandMixed, ""},
	})
	for s, firstIsChips := range map[*page.State]bool{demo: true, fair: false} {
		list := regionOf(t, view.Page(s).String(), "list-buildup")
		assert.Equal(t, firstIsChips, strings.Index(list, `id="chips-buildup"`) < strings.Index(list, `id="verdict-buildup.1"`))
	}
	on := buttonsOf(regionOf(t, view.Page(do(demo, "sheet", "buildup.1.on", "")).String(), "on-buildup.1"))
	require.Len(t, on, 3)
	for i, want := range []button{{do: "set", path: "surface.1.buildup", text: "", label: "Foredeck", pressed: "true"}, {do: "set", path: "surface.2.buildup", text: "", label: "Engine box", pressed: "true"},
		{do: "set", path: "surface.3.buildup", text: "buildup.1", label: "Topsides", pressed: "false"}} {
		assert.Equal(t, want, on[i])
	}
	saysEach(t, []saying{{do(with(do(none, "add", "buildup", "")), "sheet", "buildup.1.on", ""), "on-buildup.1", words.NoSurfaceYet, ""}})
}
