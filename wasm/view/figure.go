package view

import (
	"math"

	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// figure is a number on the screen that opens to its working: a region of its
// own, since it changes as something is typed.
func figure(s *page.State, id, label, value string, step *working.Step) html {
	open := s.Why == id
	parts := []html{el("button", a("class", "figure", "type", "button", "id", "why-"+id, "data-do", "why", "data-path", id, "aria-expanded", yesNo(open)),
		el("span", a("class", "label"), txt(label)), el("span", a("class", "value"), txt(value)))}
	if open {
		parts = append(parts, workings(s, step))
	}
	return region("fig-"+id, "div", a("class", "fig"), parts...)
}

// of writes a figure's value in the job's unit for the measure.
func of[Q unit.Quantity](s *page.State, f working.Figure[Q], m unit.Measure) string {
	if f.Step == nil {
		return "–"
	}
	return unit.Write(float64(f.Value), unit.Handy(float64(f.Value), s.Plan.Job.Units.Scale(m)), digits(m, float64(f.Value)))
}

// digits is how many figures people say of a measure: of less than a square metre nobody says three.
func digits(m unit.Measure, si float64) int {
	if m == unit.Areas && math.Abs(si) < float64(unit.SquareMetre) {
		return 2
	}
	return 3
}

// roughly is of for what nobody weighs out.
func roughly[Q unit.Quantity](s *page.State, f working.Figure[Q], m unit.Measure) string {
	return unit.Roughly(float64(f.Value), s.Plan.Job.Units.Scale(m), 2)
}

// question asks about a figure that is unlikely.
func question(s *page.State, ask *plan.Ask) html {
	units := s.Plan.Job.Units
	if ask.Was != 0 {
		return jump(ask, units.Scale(unit.Temperatures))
	}
	band := ask.Band
	parts := []html{el("p", nil, txt(words.Unlikely(ask)))}
	for _, o := range ask.Otherwise {
		then, meant := unit.Write(o.Value, band.Scale, 3), o.Slip.Meant
		if meant != unit.NoScale && o.Slip.Read == units.Scale(unit.Sizes) && page.HasBareSizes(s, ask.Path) {
			parts = append(parts, action("meant", ask.Path, meant.Symbol(), words.TheyWereIn(meant.Symbol(), then), "quiet"))
			continue
		}
		parts = append(parts, el("p", a("class", "slip"), txt(words.IfThatWas(o.Slip.Key, then))))
	}
	parts = append(parts, action("real", ask.Path, ask.Text, words.ItIsReal, "quiet"))
	return el("div", a("class", "ask"), parts...)
}

// jump asks about a temperature far from the last cup's.
func jump(ask *plan.Ask, scale unit.Scale) html {
	return el("div", a("class", "ask"),
		el("p", nil, txt(words.Jumped(unit.Write(ask.Value, scale, 3), unit.Write(ask.Was, scale, 3)))),
		action("real", ask.Path, ask.Text, words.ItIsReal, "quiet"))
}

func yesNo(b bool) string {
	if b {
		return "true"
	}
	return "false"
}
