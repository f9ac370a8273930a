package view

import (
	"strconv"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
)

// budgets is the film as planned and as it was measured, point by point.
func budgets(s *page.State, b *plan.Buildup) html {
	var parts []html
	for i := range b.Budgets() {
		w := &b.Budgets()[i]
		if len(w.Flat) == 0 {
			continue
		}
		id := b.Path + ".budget." + strconv.Itoa(i)
		if len(b.Budgets()) > 1 {
			name := "As planned"
			if w.Surface != "" {
				name = surfaceName(s, w.Surface) + ", as measured"
			}
			parts = append(parts, el("h3", nil, txt(name)))
		}
		if w.Surface != "" { // the planned ones stand at their steps
			parts = append(parts, findingLines(s, b, w.Findings, false, true))
		}
		parts = append(parts, budgetEnd(s, b, w, id), affordableLines(s, b, w), needLines(s, b, w))
	}
	if len(parts) == 0 {
		return el("p", a("class", "hint"), txt("No film yet: add a coat, and type what every step still lacks."))
	}
	return join(parts...)
}

// budgetEnd is what is left once all is done, and what is through by then.
func budgetEnd(s *page.State, b *plan.Buildup, w *plan.Budget, id string) html {
	last, _ := w.Last()
	parts := []html{
		figure(s, id+".mean", "Left in the end, mean", of(s, last.Mean, unit.Films), last.Mean.Step),
		figure(s, id+".thin", "Left in the end, thin side", of(s, last.Thin, unit.Films), last.Thin.Step),
	}
	if w.Share.Step != nil {
		parts = append(parts, figure(s, id+".share", "Expected to go through", shareText(w.Share.Value), w.Share.Step))
	}
	if w.Through.Step != nil {
		parts = append(parts, figure(s, id+".gone", "That is", of(s, w.Through, unit.Areas), w.Through.Step))
	}
	if n := len(w.Edge); n > 0 && w.EdgeOff.Step != nil {
		edge := w.Edge[n-1]
		parts = append(parts,
			figure(s, id+".edge", "Edge strips: left, mean", of(s, edge.Mean, unit.Films), edge.Mean.Step),
			figure(s, id+".edgeshare", "Edge strips: expected to go through", shareText(w.EdgeOff.Value), w.EdgeOff.Step))
		if w.EdgeGone.Step != nil {
			parts = append(parts, figure(s, id+".edgegone", "That is", of(s, w.EdgeGone, unit.Areas), w.EdgeGone.Step))
		}
		if w.EdgeOff.Value > 0.05 {
			parts = append(parts, el("p", a("class", "hint"), txt("Keep coarse paper off these strips, or tape the edges while the boards are out.")))
		}
	}
	return join(parts...)
}

// shareText writes a share that may be next to nothing.
func shareText(p unit.Share) string {
	if p < 0.0005 {
		return "under 0.1 %"
	}
	return unit.Write(float64(p), unit.InPercent, 2)
}

func stepName(b *plan.Buildup, step int) string {
	name := strconv.Itoa(step+1) + " " + b.Steps[step].Job.Kind.Name
	if card := b.Steps[step].Card; card != nil {
		name += ": " + card.Name
	}
	return name
}

// affordableLines say with which grade a run can still be begun.
func affordableLines(s *page.State, b *plan.Buildup, w *plan.Budget) html {
	var lines []html
	for _, g := range w.Grades() {
		text := "Step " + stepName(b, g.Step) + ": with " + of(s, g.Left, unit.Films) + " on the thin side none of its grades is still affordable. Put on more first."
		if g.OK {
			first := b.Steps[g.Step].Sand.Grades[0]
			text = "Step " + stepName(b, g.Step) + ": begin with " + g.Grade.String() + ", no coarser. It takes " + of(s, g.Takes, unit.Films) + " with what follows."
			if g.Grade == first {
				text = "Step " + stepName(b, g.Step) + ": " + first.String() + " is affordable, " + of(s, g.Takes, unit.Films) + " with what follows."
			}
		}
		class := "hint"
		if !g.OK {
			class = "bad"
		}
		lines = append(lines, el("p", a("class", class), txt(text)))
	}
	return join(lines...)
}

// needLines say what each coat has to add.
func needLines(s *page.State, b *plan.Buildup, w *plan.Budget) html {
	if w.Surface != "" {
		return nothing
	}
	var lines []html
	for _, n := range b.Needs() {
		id := b.Path + ".need." + strconv.Itoa(n.Step)
		name := stepName(b, n.Step)
		if n.Uneven != nil {
			lines = append(lines, el("p", a("class", "bad"), txt(name+": not by more film, by a more even one. Its unevenness, "+
				unit.Write(float64(n.Uneven.CV), unit.InPercent, 2)+", must come under "+unit.Write(float64(n.Uneven.Below), unit.InPercent, 2)+
				", or choose a larger share that may go thinner.")))
			continue
		}
		lines = append(lines, figure(s, id, name+": put on at least", of(s, n.Cured, unit.Films)+" cured", n.Cured.Step))
		if n.Wet.Step != nil {
			lines = append(lines, figure(s, id+".wet", "Wet, that is", of(s, n.Wet, unit.Films), n.Wet.Step))
		}
		if n.Coats.Step != nil {
			lines = append(lines, figure(s, id+".coats", "In so many coats", unit.Number(float64(n.Coats.Value), 3), n.Coats.Step))
		}
		if n.Over.Step != nil {
			lines = append(lines, el("p", a("class", "bad"), txt("With so much put on, more than "+of(s, n.Over, unit.Films)+" is left in the mean: it may crack. Take less, or put it on more evenly.")))
		}
	}
	return join(lines...)
}

// budgetPoints is the film after each thing that adds or takes some.
func budgetPoints(s *page.State, b *plan.Buildup, w *plan.Budget, id string) html {
	var parts []html
	for i, p := range w.Flat {
		at := id + ".point." + strconv.Itoa(i)
		name := pointName(b, p)
		parts = append(parts,
			figure(s, at+".mean", name+", mean", of(s, p.Mean, unit.Films), p.Mean.Step),
			figure(s, at+".thin", "thin side", of(s, p.Thin, unit.Films), p.Thin.Step))
	}
	return join(el("p", a("class", "rowsname"), txt("Step by step")), join(parts...))
}

func pointName(b *plan.Buildup, p buildup.Point) string {
	name := stepName(b, p.Step)
	if b.Steps[p.Step].Job.Goes.Value > 1 {
		name += ", go " + strconv.Itoa(p.Go)
	}
	if p.IsTaking && b.Steps[p.Step].Job.Kind.IsCoat() {
		name += ", sanded back"
	}
	return name
}
