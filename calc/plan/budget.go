package plan

import (
	"cmp"
	"errors"
	"slices"
	"sort"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Budget is the film of a build-up, point by point: as planned, or as it was
// measured on a surface.
type Budget struct {
	Surface  string // path; empty: as planned
	Flat     []buildup.Point
	Edge     []buildup.Point
	Findings []Finding                  // of the flat
	Share    working.Figure[unit.Share] // of the flat expected to go through the uppermost layer; without a step: nothing is sanded
	Through  working.Figure[unit.Area]  // the area that this is
	EdgeOff  working.Figure[unit.Share] // the same of the edge strips
	EdgeGone working.Figure[unit.Area]

	steps  []Step // of the build-up
	walked []buildup.Step
	terms  buildup.Terms
}

// Last is the film once all is done; false where none was put on.
func (w *Budget) Last() (buildup.Point, bool) {
	if len(w.Flat) == 0 {
		return buildup.Point{}, false
	}
	return w.Flat[len(w.Flat)-1], true
}

// Affordable is the coarsest grade with which a run can still be begun.
type Affordable struct {
	Step  int // index
	Grade sanding.Grade
	Takes working.Figure[unit.DryFilm] // the run begun there, polish included
	Left  working.Figure[unit.DryFilm] // on the thin side before it
	OK    bool                         // false: none of the grades
}

var (
	throughArea = working.Rule2[unit.Area, unit.Share, unit.Area]{Rule: &working.Rule{Formula: "G = A × p", Source: source.Ref{Document: &source.Geometry, Place: "share of an area"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "G", Meaning: "area expected to go through", Scale: unit.InSquareMetre, Min: 0, Max: 1e5},
		Args:   []working.Arg{{Symbol: "A", Meaning: "area", Scale: unit.InSquareMetre, Min: 0, Max: 1e5}, {Symbol: "p", Meaning: "share of the area expected to go through", Scale: unit.InPure, Min: 0, Max: 1}}},
		Code: func(a unit.Area, p unit.Share) unit.Area { return a * unit.Area(p) }}

	coatsAsRead = working.Rule2[unit.Factor, unit.DryFilm, unit.DryFilm]{Rule: &working.Rule{Formula: "F = n × f", Source: source.Ref{Document: &source.Geometry, Place: "equal coats"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "F", Meaning: "film of all coats as read", Scale: unit.InMicrometre, Min: 0, Max: 1e5},
		Args:   []working.Arg{{Symbol: "n", Meaning: "coats", Scale: unit.InPure, Min: 1, Max: 50}, {Symbol: "f", Meaning: "film of one coat as read", Scale: unit.InMicrometre, Min: 0, Max: 2e4}}},
		Code: func(n unit.Factor, f unit.DryFilm) unit.DryFilm { return unit.DryFilm(n) * f }}
)

func typedOr[Q unit.Quantity](typed working.Figure[Q], s material.Spec[Q], name string, scale unit.Scale) working.Figure[Q] {
	if typed.Step != nil {
		return typed
	}
	return working.Given(s.Value, name, scale, "not typed", s.Mark)
}

func removalCV(b *job.Buildup) working.Figure[unit.Share] {
	return typedOr(b.Budget.RemovalCV, material.RemovalCV, "how uneven sanding takes, sd ÷ mean", unit.InPercent)
}

func termsOf(b *job.Buildup) buildup.Terms {
	t := buildup.Terms{Thin: b.Budget.Thin, Unfairness: b.Budget.Unfairness}
	if t.Thin.Step == nil {
		t.Thin = working.Given(unit.Share(0.05), "share of the area that may go thinner", unit.InPercent, "not typed", source.Assumption)
	}
	if t.Unfairness.Step == nil {
		t.Unfairness = working.Given(unit.DryFilm(0), "unfairness that the board bridges, sd", unit.InMicrometre, "not typed", source.Assumption)
	}
	return t
}

// leastLeft sets what the card requires to be left at the end of the outermost
// layer, and what the builder typed for a step.
func (m *maker) leastLeft(steps []Step, list []buildup.Step) {
	last, top := -1, -1
	for i, s := range list {
		switch {
		case s.Kind == buildup.Coat:
			top, last = i, i
		case s.Kind == buildup.Sand || s.Kind == buildup.Polish:
			last = i
		}
		if own := steps[i].Job.Least; own.Step != nil {
			list[i].Film.Least.Mean = own
		}
	}
	if top < 0 || steps[top].Card == nil {
		return
	}
	card, least := steps[top].Card, &list[last].Film.Least
	if least.Mean.Step == nil && card.LeftLeast.Known {
		least.Mean = chain.OnCard(card, card.LeftLeast, "least mean film left", unit.InMicrometre)
	}
	if card.LeftThinnest.Known {
		least.Thinnest = chain.OnCard(card, card.LeftThinnest, "thinnest film left anywhere", unit.InMicrometre)
	}
}

// Budgets is the film point by point, as planned and as it was measured on
// surfaces; the thinnest first.
func (b *Buildup) Budgets() []Budget { return b.plan.budgets(b.Path) }

// budgets walks the film as planned, and as it was measured wherever it was. A step
// that isn't planned says so itself, and the film over it isn't known.
func (p *Plan) budgets(path string) []Budget {
	return ask(p, "budgets of "+path, func(m *maker) []Budget {
		steps, b := m.plan.layers(path), m.typedBuildup(path)
		if slices.ContainsFunc(steps, func(s Step) bool { return !s.Known }) {
			return nil
		}
		var list []Budget
		for _, surface := range measuredOn(b) {
			walked, ok := coater{m}.asMeasured(walked(m.plan, path), steps, surface)
			if !ok {
				continue
			}
			budget, err := m.walk(b, steps, walked, surface)
			if err != nil {
				m.refuseStep(path, steps, err)
				return list
			}
			list = append(list, budget)
		}
		sort.SliceStable(list, func(i, j int) bool {
			x, _ := list[i].Last()
			y, _ := list[j].Last()
			return y.Thin.Value-x.Thin.Value >= unit.DryFilm(unit.Micrometre)
		})
		return list
	})
}

func (m *maker) walk(b *job.Buildup, planned []Step, steps []buildup.Step, surface string) (Budget, error) {
	terms := termsOf(b)
	w := Budget{Surface: surface, steps: planned, walked: steps, terms: terms}
	var err error
	if w.Flat, err = buildup.Walk(steps, terms); err != nil {
		return w, err
	}
	for _, f := range buildup.Shortfalls(steps, w.Flat, terms) {
		w.Findings = append(w.Findings, Finding{Finding: f, Path: planned[f.Step].Path})
	}
	edge, err := buildup.InRegion(steps,
		working.Given(material.EdgeFilm.Value, "film of the strip ÷ film elsewhere", unit.InPure, "", material.EdgeFilm.Mark),
		working.Given(material.EdgeTaking.Value, "removal of the strip ÷ removal elsewhere", unit.InPure, "", material.EdgeTaking.Mark))
	if err != nil {
		return w, err
	}
	if w.Edge, err = buildup.Walk(edge, terms); err != nil {
		return w, err
	}
	top := topLayer(steps)
	w.Share, w.EdgeOff = worst(w.Flat, top), worst(w.Edge, top)
	return w, w.areas(m, b)
}

// areas divides the surface into flat and edge strips, and gives how much of each
// is expected to be sanded through.
func (w *Budget) areas(m *maker, b *job.Buildup) error {
	whole := m.plan.amounts(b.Path)
	area, edges := whole.Area, whole.Edge
	if w.Surface != "" {
		for _, s := range m.plan.Surfaces() {
			if s.Path == w.Surface {
				area, edges = s.Area, s.Edge
			}
		}
	}
	if area.Value <= 0 {
		return nil
	}
	parts, err := buildup.SplitRegions(area, edges, typedOr(b.Budget.Strip, material.EdgeStrip, "width of the edge strip", unit.InMillimetre))
	if err != nil {
		return nil // an edge no strip fits along: the flat is said alone
	}
	var q chain.Run
	if w.Share.Step != nil && parts.Flat.Step != nil {
		w.Through = chain.Do2(&q, throughArea, parts.Flat, w.Share)
	}
	if w.EdgeOff.Step != nil {
		w.EdgeGone = chain.Do2(&q, throughArea, parts.Edge, w.EdgeOff)
	}
	return q.Err
}

// topLayer is the step that opens the uppermost layer.
func topLayer(steps []buildup.Step) int {
	for i := len(steps) - 1; i >= 0; i-- {
		if steps[i].Film.NewLayer {
			return i
		}
	}
	return 0
}

// worst is the largest share that goes through at any point from a step on.
func worst(points []buildup.Point, from int) (share working.Figure[unit.Share]) {
	for _, p := range points {
		if p.Step >= from && p.Through.Step != nil && p.Through.Value >= share.Value {
			share = p.Through
		}
	}
	return share
}

// refuseStep puts an error of the walk at its step.
func (m *maker) refuseStep(path string, steps []Step, err error) {
	var at *buildup.StepError
	if errors.As(err, &at) {
		path = steps[at.Step].Path
		err = cmp.Or(at.Range, err)
	}
	m.refuse(path, err)
}
