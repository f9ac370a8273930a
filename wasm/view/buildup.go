package view

import (
	"slices"
	"strconv"
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// buildups is the screen of the ordered steps that surfaces get: one build-up,
// whose list is its drawing.
func buildups(s *page.State) shown {
	ids := s.Doc().Items("buildup")
	if len(ids) == 0 {
		return shown{Body: join(el("p", a("class", "lead"), txt(words.BuildupIs)), readyList("ready-", ""))}
	}
	path := chosenBuildup(s, ids)
	b := plannedBuildup(s, path)
	above, below := otherBuildups(s, ids, path), nothing
	if len(ids) == 1 { // the way to a second one is no reason to look further down for the first
		above, below = below, above
	}
	return shown{Title: buildupName(s, path), Body: region("list-buildup", "div", a("class", "buildup", "tabindex", "-1"),
		above,
		filmVerdict(s, path, &b),
		layers(s, path, &b),
		findingVerdicts(s, &b),
		setup(path+".on", onWords(s, &b), page.Part(path, page.OnPart)),
		setup(path+".about", aboutWords(s, path), page.Part(path, page.AboutPart)),
		setup("removals", words.OwnRemovalsOf(len(s.Doc().Items("removal"))), page.RemovalsSheet),
		setup("putties", words.HandMixedOf(len(s.Doc().Items("putty"))), page.PuttiesSheet),
		below),
		Act: act("sheet", page.Part(path, page.AddPart), "", words.AddAStep)}
}

// chosenBuildup is the build-up that is shown: the one that was chosen, or the
// first.
func chosenBuildup(s *page.State, ids []string) string {
	for _, id := range ids {
		if path := "buildup." + id; s.IsOpen(path) {
			return path
		}
	}
	return "buildup." + ids[0]
}

// otherBuildups are the ways to the others and to one more: the one that is shown
// has its name in the header.
func otherBuildups(s *page.State, ids []string, shown string) html {
	var list []html
	for _, id := range ids {
		if path := "buildup." + id; path != shown {
			list = append(list, el("button", a("class", "chip", "type", "button", "id", "show-"+path, "data-do", "go", "data-path", "buildup", "data-text", path), txt(buildupName(s, path))))
		}
	}
	return region("chips-buildup", "div", a("class", "chips"), append(list,
		el("button", a("class", "chip", "type", "button", "id", page.OpenerID(page.ReadySheet), "data-do", "sheet", "data-path", page.ReadySheet), txt(words.AnotherBuildup)))...)
}

func buildupName(s *page.State, path string) string {
	if name := s.Doc().Get(path + ".name"); name != "" {
		return name
	}
	return words.UnnamedBuildup
}

func plannedBuildup(s *page.State, path string) plan.Buildup {
	for _, b := range s.Plan.Buildups() {
		if b.Path == path {
			return b
		}
	}
	return plan.Buildup{}
}

func plannedStep(s *page.State, path string) plan.Step {
	for _, b := range s.Plan.Buildups() {
		for _, step := range b.Steps {
			if step.Path == path {
				return step
			}
		}
	}
	return plan.Step{}
}

func onWords(s *page.State, b *plan.Buildup) string {
	if len(b.Surfaces) == 0 {
		return words.OnNoSurface
	}
	area := of(s, b.Area, unit.Areas)
	if s.Plan.IsWithheld(b.Path) {
		area = words.WaitsForASurface
	}
	return area + ": " + strings.Join(b.Surfaces, ", ")
}

func aboutWords(s *page.State, path string) string {
	text := buildupName(s, path)
	if g, known := job.GroundByKey(s.Doc().Get(path + ".ground")); known {
		text += words.OnGround(g)
	}
	return text
}

// filmVerdict says what is left of the film at the end.
func filmVerdict(s *page.State, path string, b *plan.Buildup) html {
	sheet := page.Part(path, page.BudgetPart)
	is, strong, text := unchecked, words.FilmBudget+":", words.NothingChecked
	if w := thinnest(b); w != nil {
		last, _ := w.Last()
		least := ""
		if last.Least.Thinnest.Step != nil {
			least = of(s, last.Least.Thinnest, unit.Films)
		}
		on := ""
		if w.Surface != "" {
			on = words.OnMeasured(surfaceName(s, w.Surface))
		}
		is, strong, text = holds, words.Holds, words.LeftAtThinSide(of(s, last.Thin, unit.Films), least)+on
		edge, isSanded := edgeLeft(w)
		switch {
		case slices.ContainsFunc(w.Findings, func(f plan.Finding) bool { return f.IsRed() }):
			is, strong = stops, words.DoesNotHold
		case isSanded && edge.Value < last.Least.Thinnest.Value:
			is, strong, text = asks, words.HoldsButEdges, words.EdgesThin(of(s, edge, unit.Films)+on, least)
		}
	}
	return region("verdict-"+path, "div", a("class", "verdicts"), verdict(is, strong, text, sheet))
}

// findingVerdicts is what is red or asked about, the red first; each leads to
// its step.
func findingVerdicts(s *page.State, b *plan.Buildup) html {
	var lines []html
	for i, f := range pressing(b) {
		lines = append(lines, findingVerdict(s, b, &f, "finding-"+strconv.Itoa(i), true))
	}
	return region("findings-"+b.Path, "div", a("class", "verdicts"), lines...)
}

// layers is the build-up as its own list: the last step on top, the ground at
// the bottom, each as high as its film by a scale that says where it is broken.
func layers(s *page.State, path string, b *plan.Buildup) html {
	list := path + ".step"
	ids := s.Doc().Items(list)
	rows := []html{leftRow(s, path, b)}
	for i := len(ids) - 1; i >= 0; i-- {
		rows = append(rows, stepRow(s, list+"."+ids[i], i, b))
	}
	if len(ids) == 0 {
		rows = append(rows, el("p", a("class", "hint"), txt(words.NoStepYet)))
	}
	return region("list-"+list, "div", a("class", "layers", "tabindex", "-1"), append(rows, groundRow(s, path), el("p", a("class", "scale"), txt(words.StackScale)))...)
}

// addStepSheet asks which kind of step is added on top.
func addStepSheet(_ *page.State, path string) shown {
	var list []html
	for _, k := range job.StepKinds {
		list = append(list, el("button", a("class", "option", "type", "button", "id", "do-add-"+path+".step"+k.Key, "data-do", "add", "data-path", path+".step", "data-text", k.Key), txt(k.Name)))
	}
	return shown{Title: words.WhichStep, Body: el("div", a("class", "options"), list...)}
}

func readySheet(*page.State) shown {
	return shown{Title: words.ReadySequences, Body: readyList("another-", "")}
}

// aboutSheet is a build-up's name and the ground that it is meant for.
func aboutSheet(s *page.State, path string) shown {
	ids := s.Doc().Items("buildup")
	_, id := job.Split(path)
	return shown{Title: words.NameAndGround, Body: join(
		field(s, path+".name"), field(s, path+".ground"), saidOfItem(s, path),
		itemTools(path, slices.Index(ids, id), len(ids))), Act: act("back", "", "", words.Done)}
}

// onSheet is the surfaces that get a build-up.
func onSheet(s *page.State, path string) shown {
	var list []html
	for _, surface := range s.Plan.Job.Surfaces {
		on := surface.Buildup == path
		text := path
		if on {
			text = ""
		}
		list = append(list, el("button", a("class", "option", "type", "button", "id", "on-"+surface.Path, "data-do", "set", "data-path", surface.Path+".buildup", "data-text", text,
			"aria-pressed", yesNo(on)), txt(nameOf(surface))))
	}
	if len(list) == 0 {
		list = append(list, el("p", a("class", "hint"), txt(words.NoSurfaceYet)))
	}
	return shown{Title: words.WhichSurfaces, Body: region("on-"+path, "div", a("class", "options"), list...), Act: act("back", "", "", words.Done)}
}

// budgetSheet is the film through the steps: what is left at the end, what is
// expected to be sanded through, what has to be put on, and what that rests on.
func budgetSheet(s *page.State, path string) shown {
	b := plannedBuildup(s, path)
	return shown{Title: words.FilmBudget, Body: join(
		region("figures-"+path+".budget", "div", a("class", "figures"),
			budgets(s, &b)),
		look(path+".points", words.StepByStep, page.Part(path, page.PointsPart)),
		setup(path+".terms", words.AssumedTerms, page.Part(path, page.TermsPart))),
		Act: act("back", "", "", words.Done)}
}

// termsSheet is what the film budget is worked out with.
func termsSheet(s *page.State, path string) shown {
	return shown{Title: words.FilmBudget, Body: el("div", a("class", "form"), budgetFields(s, path)), Act: act("back", "", "", words.Done)}
}

// pointsSheet is the film step by step, and what its checks and those of the
// sequence rest on.
func pointsSheet(s *page.State, path string) shown {
	b := plannedBuildup(s, path)
	var points []html
	for i := range b.Budgets() {
		points = append(points, budgetPoints(s, &b, &b.Budgets()[i], b.Path+".budget."+strconv.Itoa(i)))
	}
	return shown{Title: words.FilmBudget, Body: join(
		region("figures-"+path+".points", "div", a("class", "figures"), join(points...),
			figure(s, path+".left", words.AllLayers, of(s, b.Left, unit.Films), b.Left.Step),
			figure(s, path+".area", words.AreaName, of(s, b.Area, unit.Areas), b.Area.Step)),
		region("rests-"+path, "div", a("class", "findings"), findingLines(s, &b, b.Findings(), false, true), findingLines(s, &b, plannedBudget(&b).Findings, false, true))),
		Act: act("back", "", "", words.Done)}
}

// removalsSheet is the builder's own film taken by each grade; puttiesSheet the
// fillers mixed by hand.
func removalsSheet(s *page.State) shown {
	return shown{Title: words.OwnRemovalsTitle, Body: removals(s), Act: act("back", "", "", words.Done)}
}

func puttiesSheet(s *page.State) shown {
	return shown{Title: words.HandMixedTitle, Body: putties(s), Act: act("back", "", "", words.Done)}
}
