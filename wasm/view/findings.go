package view

import (
	"shedreckoner/calc/buildup"
	"shedreckoner/calc/plan"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// findingLines is what the checks have to say, the red first. In short only
// what is to be fixed or looked at is said, and not what it rests on; away from
// its step a finding names it.
func findingLines(s *page.State, b *plan.Buildup, list []plan.Finding, inShort, away bool) html {
	var lines []html
	for _, severity := range []buildup.Severity{buildup.Refuse, buildup.Ask, buildup.Note} {
		for i := range list {
			if list[i].Severity == severity && !(inShort && severity == buildup.Note) {
				lines = append(lines, findingLine(s, b, &list[i], inShort, away))
			}
		}
	}
	return join(lines...)
}

// severities are how firmly a finding stands, in a class and in a word for
// those who see no colour.
var severities = map[buildup.Severity]struct{ class, word string }{
	buildup.Refuse: {"bad", "Stop:"}, buildup.Ask: {"ask", "Check:"}, buildup.Note: {"hint", "Note:"},
}

// findingLine is one finding; away from its step it names it.
func findingLine(s *page.State, b *plan.Buildup, f *plan.Finding, inShort, away bool) html {
	what, fix, rests := words.Finding(f, layerName(b, f), s.Plan.Job.Units)
	mark := severities[f.Severity]
	step := ""
	if away {
		step = words.OfStep(stepName(b, f.Step))
	}
	parts := []html{el("p", a("class", mark.class), txt(mark.word+" "+step+words.Capital(what)+" "+fix))}
	if where := onlyOn(s, b, f); where != "" && !away {
		parts = append(parts, el("p", a("class", "source"), txt(where)))
	}
	if !inShort {
		parts = append(parts, el("p", a("class", "source"), txt(words.RestsOn(rests))))
	}
	return el("div", a("class", "finding"), parts...)
}

// onlyOn names the surfaces that a finding holds for, where it isn't all of the
// build-up's.
func onlyOn(s *page.State, b *plan.Buildup, f *plan.Finding) string {
	all := 0
	for _, typed := range s.Plan.Job.Surfaces {
		if typed.Buildup == b.Path {
			all++
		}
	}
	if len(f.Surfaces) == 0 || len(f.Surfaces) == all {
		return ""
	}
	text := words.OnlyOn
	for i, path := range f.Surfaces {
		if i > 0 {
			text += ", "
		}
		text += surfaceName(s, path)
	}
	return text + "."
}

// plannedBudget is the budget that isn't a surface's own.
func plannedBudget(b *plan.Buildup) plan.Budget {
	for _, budget := range b.Budgets() {
		if budget.Surface == "" {
			return budget
		}
	}
	return plan.Budget{}
}
