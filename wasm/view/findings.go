package view

import (
	"shedreckoner/calc/buildup"
	"shedreckoner/calc/plan"
	"shedreckoner/wasm/page"
)

// findingLines is what the checks have to say, the red first.
func findingLines(s page.State, b *plan.Buildup, list []plan.Finding) html {
	var lines []html
	for _, severity := range []buildup.Severity{buildup.Refuse, buildup.Ask, buildup.Note} {
		for i := range list {
			if list[i].Severity == severity {
				lines = append(lines, findingLine(s, b, &list[i]))
			}
		}
	}
	if len(lines) == 0 {
		return nothing
	}
	return el("ul", a("class", "findings"), lines...)
}

var severityClass = map[buildup.Severity]string{buildup.Refuse: "red", buildup.Ask: "asked", buildup.Note: "noted"}

// severityWords stand before a finding, for those who see no colour.
var severityWords = map[buildup.Severity]string{buildup.Refuse: "Stop:", buildup.Ask: "Check:", buildup.Note: "Note:"}

func findingLine(s page.State, b *plan.Buildup, f *plan.Finding) html {
	layer := "This layer"
	if f.Step < len(b.Steps) && b.Steps[f.Step].Card != nil {
		layer = b.Steps[f.Step].Card.Name
	}
	what, mend, rests := page.Finding(f, layer, s.Plan.Job.Units)
	parts := []html{el("p", nil, el("strong", nil, txt(severityWords[f.Severity])), txt(" "+capital(what)+" "+mend))}
	if where := onlyOn(s, b, f); where != "" {
		parts = append(parts, el("p", a("class", "source"), txt(where)))
	}
	parts = append(parts, el("p", a("class", "source"), txt(rests)))
	return el("li", a("class", "finding "+severityClass[f.Severity]), parts...)
}

// onlyOn names the surfaces that a finding holds for, where it isn't all of the
// build-up's.
func onlyOn(s page.State, b *plan.Buildup, f *plan.Finding) string {
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

// stepFindings stands below a step's line, open or not.
func stepFindings(s page.State, path string) html {
	for i := range s.Plan.Buildups {
		b := &s.Plan.Buildups[i]
		var list []plan.Finding
		for _, f := range append(b.Findings[:len(b.Findings):len(b.Findings)], plannedBudget(b).Findings...) {
			if f.Path == path {
				list = append(list, f)
			}
		}
		if len(list) > 0 {
			return region("findings-"+path, "div", nil, findingLines(s, b, list))
		}
	}
	return region("findings-"+path, "div", nil)
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
func surfaceFindings(s page.State, path string) html {
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
	parts = append(parts, findingLines(s, &b, red))
	if asked > 0 {
		parts = append(parts, el("p", a("class", "hint"), txt(counted(asked, "thing", "things")+" to check on the build-up.")))
	}
	if len(red)+asked > 0 {
		parts = append(parts, action("go", "buildup", b.Path, "See the build-up", "quiet"))
	}
	return join(parts...)
}
