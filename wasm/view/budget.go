package view

import (
	"strconv"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
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
			name := words.Capital(words.AsPlanned)
			if w.Surface != "" {
				name = words.AsMeasured(surfaceName(s, w.Surface))
			}
			parts = append(parts, el("h3", nil, txt(name)))
		}
		if w.Surface != "" { // the planned ones stand at their steps
			parts = append(parts, findingLines(s, b, w.Findings, false, true))
		}
		parts = append(parts, leftPicture(s, w), budgetEnd(s, b, w, id), affordableLines(s, b, w), needLines(s, b, w))
	}
	if len(parts) == 0 {
		return el("p", a("class", "hint"), txt(words.NoFilmYet))
	}
	return join(parts...)
}

// budgetEnd is what is left once all is done, and what is sanded through by then.
func budgetEnd(s *page.State, b *plan.Buildup, w *plan.Budget, id string) html {
	last, _ := w.Last()
	parts := []html{
		figure(s, id+".mean", words.EndMean, of(s, last.Mean, unit.Films), last.Mean.Step),
		figure(s, id+".thin", words.EndThin, of(s, last.Thin, unit.Films), last.Thin.Step),
	}
	if w.Share.Step != nil {
		parts = append(parts, figure(s, id+".share", words.SandedThrough, shareText(w.Share.Value), w.Share.Step))
	}
	if w.Through.Step != nil {
		parts = append(parts, figure(s, id+".gone", words.ThatIs, of(s, w.Through, unit.Areas), w.Through.Step))
	}
	if edge, isSanded := edgeLeft(w); isSanded {
		parts = append(parts,
			figure(s, id+".edge", words.EdgeMean, of(s, edge, unit.Films), edge.Step),
			figure(s, id+".edgeshare", words.EdgeSandedThrough, shareText(w.EdgeOff.Value), w.EdgeOff.Step))
		if w.EdgeGone.Step != nil {
			parts = append(parts, figure(s, id+".edgegone", words.ThatIs, of(s, w.EdgeGone, unit.Areas), w.EdgeGone.Step))
		}
		if w.EdgeOff.Value > 0.05 {
			parts = append(parts, el("p", a("class", "hint"), txt(words.KeepOffEdges)))
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

// affordableLines say which grade a run can still start with.
func affordableLines(s *page.State, b *plan.Buildup, w *plan.Budget) html {
	var lines []html
	for _, g := range w.Grades() {
		name, text, class := stepName(b, g.Step), "", "hint"
		switch {
		case !g.OK:
			text, class = words.NoGradeLeft(name, of(s, g.Left, unit.Films)), "bad"
		case g.Grade == b.Steps[g.Step].Sand.Grades[0]:
			text = words.GradeIsAffordable(name, g.Grade.String(), of(s, g.Takes, unit.Films))
		default:
			text = words.BeginNoCoarser(name, g.Grade.String(), of(s, g.Takes, unit.Films))
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
			lines = append(lines, el("p", a("class", "bad"), txt(words.MoreEven(name, unit.Write(float64(n.Uneven.CV), unit.InPercent, 2), unit.Write(float64(n.Uneven.Below), unit.InPercent, 2)))))
			continue
		}
		lines = append(lines, figure(s, id, words.PutOnAtLeast(name), words.Cured(of(s, n.Cured, unit.Films)), n.Cured.Step))
		if n.Wet.Step != nil {
			lines = append(lines, figure(s, id+".wet", words.WetThatIs, of(s, n.Wet, unit.Films), n.Wet.Step))
		}
		if n.Coats.Step != nil {
			lines = append(lines, figure(s, id+".coats", words.NumberOfCoats, unit.Number(float64(n.Coats.Value), 3), n.Coats.Step))
		}
		if n.Over.Step != nil {
			lines = append(lines, el("p", a("class", "bad"), txt(words.MayCrack(of(s, n.Over, unit.Films)))))
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
			figure(s, at+".mean", words.MeanOf(name), of(s, p.Mean, unit.Films), p.Mean.Step),
			figure(s, at+".thin", words.LeftThin, of(s, p.Thin, unit.Films), p.Thin.Step))
	}
	return join(el("p", a("class", "rowsname"), txt(words.PointByPoint)), join(parts...))
}

func pointName(b *plan.Buildup, p buildup.Point) string {
	name := stepName(b, p.Step)
	if b.Steps[p.Step].Job.Rounds.Value > 1 {
		name += words.Round(p.Round)
	}
	if p.IsTaking && b.Steps[p.Step].Job.Kind.IsCoat {
		name += words.SandedBack
	}
	return name
}
