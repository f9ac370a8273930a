package plan

import (
	"slices"
	"sort"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Finding is what a check has to say about a step, and on which surfaces.
type Finding struct {
	buildup.Finding
	Path     string   // of the step
	Surfaces []string // paths; empty: wherever the build-up goes
}

// IsRed says if the finding stays until it is fixed.
func (f *Finding) IsRed() bool { return f.Severity == buildup.Refuse }

// noGround is the ground of a surface for which none was typed: nothing is asked of
// it.
const noGround buildup.Ground = -1

// Findings is what the checks of the sequence have to say, by step.
func (b *Buildup) Findings() []Finding { return b.plan.findings(b.Path) }

// findings checks what may follow what, on the ground of each surface.
func (p *Plan) findings(path string) []Finding {
	return ask(p, "findings of "+path, func(m *maker) []Finding {
		out := &sequence{steps: m.plan.layers(path)}
		steps := walked(m.plan, path)
		known := map[groundOf][]buildup.Finding{} // many surfaces lie on one kind of ground
		on := m.typedOn(path)
		for _, s := range on {
			ground := m.plan.groundOf(s.Path)
			list, have := known[ground]
			if !have {
				list = buildup.Check(ground.base, ground.under(steps))
				known[ground] = list
			}
			out.find(list, s.Path)
		}
		if len(on) == 0 { // no surface yet: only the ground isn't looked at
			out.find(buildup.Check(buildup.Base{Ground: noGround}, steps), "")
		}
		sort.SliceStable(out.found, func(i, j int) bool { return out.found[i].Step < out.found[j].Step })
		return out.found
	})
}

// sequence gathers findings.
type sequence struct {
	steps []Step
	found []Finding
}

// find adds findings of a surface; what was found elsewhere too is reported once.
func (s *sequence) find(list []buildup.Finding, surface string) {
	for _, f := range list {
		at := slices.IndexFunc(s.found, func(have Finding) bool { return have.Finding == f })
		if at < 0 {
			at = len(s.found)
			s.found = append(s.found, Finding{Finding: f, Path: s.steps[f.Step].Path})
		}
		if surface != "" {
			s.found[at].Surfaces = append(s.found[at].Surfaces, surface)
		}
	}
}

// AllFindings is what was found of the sequence and of the film as planned.
func (b *Buildup) AllFindings() []Finding {
	list := slices.Clone(b.Findings())
	for _, budget := range b.Budgets() {
		if budget.Surface == "" {
			list = append(list, budget.Findings...)
		}
	}
	return list
}

// FindingsOn gives the findings that hold for a surface.
func (b *Buildup) FindingsOn(surface string) []Finding {
	var list []Finding
	for _, f := range b.Findings() {
		if len(f.Surfaces) == 0 || slices.Contains(f.Surfaces, surface) {
			list = append(list, f)
		}
	}
	return list
}

func baseOf(s *job.Surface) buildup.Base {
	ground, said := job.GroundByKey(s.Ground)
	if !said {
		ground = noGround
	}
	p := s.Prepared
	return buildup.Base{Ground: ground, IsBelowWater: p.IsBelowWater, IsWashed: p.IsWashed, IsSanded: p.IsSanded, Grit: p.Grade, Age: p.Age.Value}
}

// groundOf gives what the checks look at of a surface.
func (p *Plan) groundOf(surface string) groundOf {
	return askSmall(p, "ground of "+surface, func(m *maker) groundOf {
		for _, s := range m.job(surface).Surfaces {
			if s.Path == surface {
				return groundOf{baseOf(s), s.Prepared.Patch != ""}
			}
		}
		return groundOf{}
	})
}

// groundOf is all of a surface that the checks of a sequence look at.
type groundOf struct {
	base     buildup.Base
	hasPatch bool
}

// under gives the steps with the surface's own test patch on the first layer.
func (g groundOf) under(steps []buildup.Step) []buildup.Step {
	if !g.hasPatch {
		return steps
	}
	steps = slices.Clone(steps)
	for i := range steps {
		if steps[i].Kind == buildup.Coat || steps[i].Kind == buildup.Fill {
			steps[i].Layer.HasTestPatch = true
			break
		}
	}
	return steps
}

// walked gives the steps as the sums of a build-up see them, index by index.
func walked(p *Plan, path string) []buildup.Step {
	return ask(p, "walk of "+path, func(m *maker) []buildup.Step {
		steps := m.plan.layers(path)
		list := make([]buildup.Step, len(steps))
		cv := removalCV(m.typedBuildup(path))
		var top string // card of the coat before
		for i := range steps {
			s := &steps[i]
			list[i] = m.walkedStep(s, cv)
			switch {
			case list[i].Kind == buildup.Fill:
				top = ""
			case list[i].Kind == buildup.Coat:
				list[i].Film.NewLayer = s.Job.Card != top
				top = s.Job.Card
			}
		}
		m.leastLeft(steps, list)
		return list
	})
}

func (m *maker) walkedStep(s *Step, cv working.Figure[unit.Share]) buildup.Step {
	out := s.Kind.walk(m, s, cv)
	out.Wait, out.Rounds = s.Job.Wait.Value, int(s.Job.Rounds.Value)
	return out
}

func walkCoat(m *maker, s *Step, cv working.Figure[unit.Share]) buildup.Step {
	out := buildup.Step{Kind: buildup.Coat, Layer: m.layer(s)}
	if s.Coat != nil {
		out.Film.Adds = s.Coat.Cured
		out.Film.AddsCV = chain.OfMethod(s.Job.Method, shareSpec(s.Job.Method.FilmCV), "unevenness of the film, sd ÷ mean", unit.InPercent)
	}
	if s.Job.RoundTakes.Value > 0 {
		out.Film.Takes, out.Film.TakesCV = s.Job.RoundTakes, cv
	}
	return out
}

func walkFill(m *maker, s *Step, cv working.Figure[unit.Share]) buildup.Step {
	out := buildup.Step{Kind: buildup.Fill, Layer: m.layer(s)}
	if off := s.Job.SandedOff; off.Step == nil || off.Value > 0 {
		out.Film.Takes, out.Film.TakesCV = sandedFiller, cv
	}
	return out
}

func walkSand(m *maker, s *Step, cv working.Figure[unit.Share]) buildup.Step {
	return s.taking(buildup.Step{Kind: buildup.Sand, Grit: int(s.lastGrade())}, cv)
}

func walkPolish(m *maker, s *Step, cv working.Figure[unit.Share]) buildup.Step {
	return s.taking(buildup.Step{Kind: buildup.Polish}, cv)
}

func walkWash(*maker, *Step, working.Figure[unit.Share]) buildup.Step {
	return buildup.Step{Kind: buildup.Wash}
}

// taking adds to a walked step the film that it takes.
func (s *Step) taking(out buildup.Step, cv working.Figure[unit.Share]) buildup.Step {
	if s.Taken.Step != nil && s.Taken.Value > 0 {
		out.Film.Takes, out.Film.TakesCV = s.Taken, cv
	}
	return out
}

// sandedFiller says only that filler was sanded: its film isn't counted.
var sandedFiller = working.Given(unit.DryFilm(0), "film taken of the filler", unit.InMicrometre, "not counted", source.Exact)

// shareSpec reads a spread that is kept as a factor.
func shareSpec(s material.Spec[unit.Factor]) material.Spec[unit.Share] {
	return material.Spec[unit.Share]{Value: unit.Share(s.Value), Low: unit.Share(s.Low), High: unit.Share(s.High), Mark: s.Mark, Known: s.Known}
}

// layer is what the checks of a sequence ask of a coat or fill. Without a card
// it is a layer with no limits, and of a material that asks for nothing.
func (m *maker) layer(s *Step) buildup.Layer {
	l := buildup.Layer{Material: noMaterial, IsUnderFilm: s.Job.IsUnderFilm, HasTestPatch: s.Job.Patch != ""}
	c := s.Card
	if c == nil || !canCoat(c) && !canFill(c) {
		return l
	}
	l.Material = materialOf(c)
	l.IsWaxed, l.Wax = c.Wax.Value > 0, c.Wax.Value
	l.RecoatFrom, l.RecoatTo, l.SandingFrom = c.RecoatFrom.Value, c.RecoatTo.Value, c.SandFrom.Value
	limits := m.oneCoat(s)
	l.CuredMost, l.WetMost = c.LeftMost.Value, limits.most.Value
	l.ThinnerAsk, l.ThinnerMost = c.ThinnerAsk.Value, c.ThinnerRefuse.Value
	if share, err := thinnerShare(s.Job, c, m.card(c.Thinner)); err == nil {
		l.Thinner = share
	}
	if !s.Kind.IntoPores {
		l.WetLeast, l.WetAsk = limits.least.Value, limits.ask.Value
	}
	if s.Coat != nil {
		l.Wet, l.Coats = s.Coat.WetEach.Value, int(s.Coat.Coats.Value)
	}
	return l
}

// noMaterial is that of a step without a card.
const noMaterial buildup.Material = -1

func materialOf(c *job.Card) buildup.Material {
	switch {
	case canFill(c) && c.Chemistry == material.Epoxy:
		return buildup.EpoxyFiller
	case canFill(c):
		return buildup.PolyesterFiller
	}
	return map[material.Chemistry]buildup.Material{
		material.Polyester: buildup.Polyester, material.VinylEster: buildup.VinylEster,
		material.Epoxy: buildup.Epoxy, material.TwoPack: buildup.TwoPack,
	}[c.Chemistry]
}
