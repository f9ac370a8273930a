package view

import (
	"strings"
	"unicode"

	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
)

// figure is a number on the screen that opens to its working: a region of its
// own, since it changes as something is typed.
func figure(s *page.State, id, label, value string, step *working.Step) html {
	open := s.Why == id
	parts := []html{el("button", a("class", "figure", "type", "button", "id", "why-"+id, "data-do", "why", "data-path", id, "aria-expanded", yesNo(open)),
		el("span", a("class", "label"), txt(label)), el("span", a("class", "value"), txt(value)))}
	if open {
		parts = append(parts, workings(step))
	}
	return region("fig-"+id, "div", a("class", "fig"), parts...)
}

// of writes a figure's value in the job's unit for the measure.
func of[Q unit.Quantity](s *page.State, f working.Figure[Q], m unit.Measure) string {
	if f.Step == nil {
		return "–"
	}
	return unit.Write(float64(f.Value), s.Plan.Job.Units.Scale(m), 3)
}

// workings is the steps behind a figure, the first computed first.
func workings(step *working.Step) html {
	if step == nil {
		return el("p", a("class", "working"), txt("Nothing to work out yet."))
	}
	var steps []html
	for _, t := range step.Texts() {
		parts := []html{el("p", a("class", "what"), txt(capital(t.Name)))}
		if t.Formula != "" {
			parts = append(parts, el("p", a("class", "formula"), symbols(t.Formula)))
		}
		parts = append(parts, el("p", a("class", "numbers"), txt(t.Numbers)))
		if len(t.Givens) > 0 {
			var givens []html
			for _, g := range t.Givens {
				givens = append(givens, el("li", nil, given(g)))
			}
			parts = append(parts, el("ul", a("class", "givens"), givens...))
		}
		source := t.Source
		if source != "" {
			source += " – "
		}
		parts = append(parts, el("p", a("class", "source"), markup.Verbatim(source+t.Mark)))
		steps = append(steps, el("li", nil, parts...))
	}
	return el("ol", a("class", "working"), steps...)
}

// given is what went into a formula, its sign first.
func given(text string) html {
	sign, meaning, found := strings.Cut(text, ": ")
	if !found || strings.Contains(sign, " ") {
		return txt(text)
	}
	return join(symbols(sign), txt(": "+meaning))
}

// symbols sets what stands behind a low line low, as people write T_1.
func symbols(text string) html {
	head, rest, found := strings.Cut(text, "_")
	parts := []html{txt(head)}
	for found {
		end := strings.IndexFunc(rest, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
		if end < 0 {
			end = len(rest)
		}
		low := rest[:end]
		head, rest, found = strings.Cut(rest[end:], "_")
		parts = append(parts, el("sub", nil, txt(low)), txt(head))
	}
	return join(parts...)
}

// question asks about a figure that is unlikely.
func question(ask *plan.Ask, units job.Units) html {
	if ask.Was != 0 {
		return jump(ask, units.Scale(unit.Temperatures))
	}
	band := ask.Band
	parts := []html{el("p", nil, txt(capital(band.Key)+" comes to "+unit.Write(ask.Value, band.Scale, 3)+", outside the usual "+
		unit.Write(band.Low, band.Scale, 3)+" to "+unit.Write(band.High, band.Scale, 3)+". A slip, or real?"))}
	for _, o := range ask.Otherwise {
		parts = append(parts, el("p", a("class", "slip"), txt("If that was "+o.Slip.Key+", it is "+unit.Write(o.Value, band.Scale, 3)+".")))
	}
	parts = append(parts, action("real", ask.Path, ask.Text, "It is real", "quiet"))
	return el("div", a("class", "ask"), parts...)
}

// jump asks about a temperature far from the last cup's.
func jump(ask *plan.Ask, scale unit.Scale) html {
	return el("div", a("class", "ask"),
		el("p", nil, txt("That is "+unit.Write(ask.Value, scale, 3)+"; at the last cup it was "+unit.Write(ask.Was, scale, 3)+". A slip, or real?")),
		action("real", ask.Path, ask.Text, "It is real", "quiet"))
}

func yesNo(b bool) string {
	if b {
		return "true"
	}
	return "false"
}
