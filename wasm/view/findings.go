package view

import (
	"shedreckoner/calc/buildup"
	"shedreckoner/calc/plan"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// findingLines is what the checks have to say, the red first. In short only
// what is to be mended or looked at is said, and not what it rests on; away from
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
	layer := "This layer"
	if f.Step < len(b.Steps) && b.Steps[f.Step].Card != nil {
		layer = b.Steps[f.Step].Card.Name
	}
	what, mend, rests := words.Finding(f, layer, s.Plan.Job.Units)
	mark := severities[f.Severity]
	step := ""
	if away {
		step = "step " + stepName(b, f.Step) + ". "
	}
	parts := []html{el("p", a("class", mark.class), txt(mark.word+" "+step+capital(what)+" "+mend))}
	if where := onlyOn(s, b, f); where != "" && !away {
		parts = append(parts, el("p", a("class", "source"), txt(where)))
	}
	if !inShort {
		parts = append(parts, el("p", a("class", "source"), txt("Rests on: "+rests)))
	}
	return el("div", a("class", "finding"), parts...)
}

// onlyOn names the surfaces that a finding holds for, where it isn't all of the
// build-up's.
func onlyOn(s *page.State, b *plan.Buildup, f *plan.Finding) string {
	all := 0
	for i := range s.Plan.Job.Surfaces {
		if s.Plan.Job.Surfaces[i].Buildup == b.Path {
			all++
		}
	}
	if len(f.Surfaces) == 0 || len(f.Surfaces) == all {
		return ""
	}
	text := "Only on "
	for i, path := range f.Surfaces {
		if i > 0 {
			text += ", "
		}
		text += surfaceName(s, path)
	}
	return text + "."
}

// stepFindings stands below a step's line: in short while the step is shut.
func stepFindings(s *page.State, path string, open bool) html {
	for i := range s.Plan.Buildups {
		b := &s.Plan.Buildups[i]
		var list []plan.Finding
		for _, f := range append(b.Findings[:len(b.Findings):len(b.Findings)], plannedBudget(b).Findings...) {
			if f.Path == path {
				list = append(list, f)
			}
		}
		if lines := findingLines(s, b, list, !open, false); !lines.IsEmpty() {
			return region("findings-"+path, "div", a("class", "findings"), lines)
		}
	}
	return region("findings-"+path, "div", a("class", "findings", "hidden", ""))
}

// plannedBudget is the budget that isn't a surface's own.
func plannedBudget(b *plan.Buildup) plan.Budget {
	for _, budget := range b.Budgets {
		if budget.Surface == "" {
			return budget
		}
	}
	return plan.Budget{}
}

// surfaceFindings sums up on a surface what stops its build-up.
func surfaceFindings(s *page.State, path string) html {
	b := plannedBuildup(s, s.Doc().Get(path+".buildup"))
	if b.Path == "" {
		return nothing
	}
	var red []plan.Finding
	asked := 0
	for _, f := range b.FindingsOn(path) {
		switch {
		case f.IsRed():
			red = append(red, f)
		case f.Severity == buildup.Ask:
			asked++
		}
	}
	parts := []html{}
	if s.Doc().Get(path+".ground") == "" {
		parts = append(parts, el("p", a("class", "hint"), txt("Say the ground above: the build-up is checked against it.")))
	}
	parts = append(parts, findingLines(s, &b, red, true, true))
	if asked > 0 {
		parts = append(parts, el("p", a("class", "hint"), txt(counted(asked, "thing", "things")+" to check on the build-up.")))
	}
	if len(red)+asked > 0 {
		parts = append(parts, action("go", "buildup", b.Path, "See the build-up", "quiet"))
	}
	return join(parts...)
}
