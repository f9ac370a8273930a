package plan

import (
	"slices"
	"strconv"

	"shedreckoner/calc/job"
)

// LeftOut is a surface or step that the needs don't include: something about it is
// refused, or has yet to be typed.
type LeftOut struct {
	Path      string // of the surface, or of the step
	Name      string // as the builder calls it
	By        string // path of the text that it waits for
	IsRefused bool   // that text can't be read or isn't possible; else it has yet to be typed
}

// WaitsError says that an amount depends on a text that is refused.
type WaitsError struct{ LeftOut }

// Error names what is waited for.
func (e *WaitsError) Error() string { return "plan: waits for " + e.By }

// LeftOut lists what the needs don't include, surfaces first. A surface that gets
// nothing, and a step on no surface, would add nothing.
func (p *Plan) LeftOut() []LeftOut {
	var list []LeftOut
	for _, s := range p.Job.Surfaces {
		if s.Buildup == "" || p.measured(s).Known {
			continue
		}
		if out, found := (noteReader{p}).waitsFor(s.Path); found {
			out.Name = s.Name
			list = append(list, out)
		}
	}
	buildups := p.Buildups()
	for i := range buildups {
		b := &buildups[i]
		if !isUsed(p, b.Path) {
			continue
		}
		for n := range b.Steps {
			if b.Steps[n].Known {
				continue
			}
			if out, found := (noteReader{p}).stepWaits(&b.Steps[n]); found {
				out.Name = "step " + strconv.Itoa(n+1)
				if n := p.Job.Buildups[i].Name; n != "" {
					out.Name += " of " + n
				}
				list = append(list, out)
			}
		}
	}
	return list
}

// IsWithheld says if the amounts of a build-up, or with "" those of the whole job,
// depend on a surface with a refused text.
func (p *Plan) IsWithheld(buildup string) bool {
	for _, s := range p.Job.Surfaces {
		if (buildup == "" || s.Buildup == buildup) && !p.measured(s).Known {
			if out, found := (noteReader{p}).waitsFor(s.Path); found && out.IsRefused {
				return true
			}
		}
	}
	return false
}

func isUsed(p *Plan, buildup string) bool {
	return slices.ContainsFunc(p.Job.Surfaces, func(s *job.Surface) bool { return s.Buildup == buildup })
}

// waitsFor finds what an item waits for: what is refused first.
func (p noteReader) waitsFor(item string) (LeftOut, bool) {
	refused, waiting := p.problemsIn(item)
	for _, list := range []struct {
		problems  []job.Problem
		isRefused bool
	}{{refused, true}, {waiting, false}} {
		if len(list.problems) > 0 {
			return LeftOut{Path: item, By: list.problems[0].Path, IsRefused: list.isRefused}, true
		}
	}
	return LeftOut{}, false
}

// stepWaits finds what a step waits for, on its card too.
func (p noteReader) stepWaits(s *Step) (LeftOut, bool) {
	if s.Card != nil && s.Card.Unread != "" {
		return LeftOut{Path: s.Path, By: s.Card.Unread, IsRefused: true}, true
	}
	return p.waitsFor(s.Path)
}

// Withheld gives why the need of a material isn't known: a refused text on its
// card, or on a surface or step that takes some of it; nil: it is known.
func (p *Plan) Withheld(card string, out []LeftOut) *WaitsError {
	if c := p.Job.CardByKey(card); c != nil && c.Unread != "" {
		return &WaitsError{LeftOut{Path: c.Path, Name: c.Name, By: c.Unread, IsRefused: true}}
	}
	for _, o := range out {
		if o.IsRefused && takes(p, o.Path, card) {
			return &WaitsError{o}
		}
	}
	return nil
}

// takes says if a surface's build-up, or a step, takes some of a material.
func takes(p *Plan, item, card string) bool {
	for _, s := range p.Job.Surfaces {
		if s.Path == item {
			item = s.Buildup
		}
	}
	buildups := p.Buildups()
	for i := range buildups {
		for n := range buildups[i].Steps {
			s := &buildups[i].Steps[n]
			if (buildups[i].Path == item || s.Path == item) && stepTakes(p, s, card) {
				return true
			}
		}
	}
	return false
}

// stepTakes says if a step takes some of a material: by its uses, or while it isn't
// planned, by what its card names.
func stepTakes(p *Plan, s *Step, card string) bool {
	if slices.ContainsFunc(s.Used, func(u Use) bool { return u.Card.Key == card }) {
		return true
	}
	return s.Card != nil && (s.Card.Key == card || s.Card.Hardener == card || s.Card.Thinner == card)
}
