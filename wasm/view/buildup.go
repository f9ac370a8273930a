package view

import (
	"strconv"
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
)

// buildups is the screen of the ordered steps that surfaces get.
func buildups(s *page.State) html {
	ids := s.Doc().Items("buildup")
	if len(ids) == 0 {
		return el("div", a("class", "empty"),
			el("p", nil, txt("A build-up is the ordered steps that a surface gets: fill, coat, sand, polish.")),
			el("p", nil, txt("Several surfaces can share one.")),
			action("add", "buildup", "", "Add a build-up", "main"))
	}
	var items []html
	for i, id := range ids {
		items = append(items, buildupItem(s, "buildup."+id, i, len(ids)))
	}
	return join(region("list-buildup", "div", a("class", "list", "tabindex", "-1"), items...),
		action("add", "buildup", "", "Add a build-up", "main"),
		removals(s), putties(s))
}

func buildupName(s *page.State, path string) string {
	if name := s.Doc().Get(path + ".name"); name != "" {
		return name
	}
	return "Build-up without a name"
}

func plannedBuildup(s *page.State, path string) plan.Buildup {
	for _, b := range s.Plan.Buildups {
		if b.Path == path {
			return b
		}
	}
	return plan.Buildup{}
}

func buildupItem(s *page.State, path string, at, count int) html {
	open := s.IsOpen(path)
	b := plannedBuildup(s, path)
	parts := []html{itemLine(path, open, buildupName(s, path), of(s, b.Area, unit.Areas))}
	if open {
		parts = append(parts, buildupForm(s, path, b), itemTools(path, at, count))
	}
	return region("item-"+path, "article", a("class", "item", "data-open", yesNo(open)), parts...)
}

func buildupForm(s *page.State, path string, b plan.Buildup) html {
	return el("div", a("class", "form"),
		field(s, path+".name"), field(s, path+".ground"), saidOfItem(s, path),
		region("stack-"+path, "div", a("class", "stack"), stack(s, b)),
		stepList(s, path),
		budgetItem(s, path, b),
		region("figures-"+path, "div", a("class", "figures"),
			figure(s, path+".left", "Film left in the end, all layers", of(s, b.Left, unit.Films), b.Left.Step),
			figure(s, path+".area", "Area", of(s, b.Area, unit.Areas), b.Area.Step),
			el("p", a("class", "hint"), txt(getsIt(b)))),
	)
}

func getsIt(b plan.Buildup) string {
	if len(b.Surfaces) == 0 {
		return "No surface gets this yet. Choose it on a surface, under build-up."
	}
	return "On: " + strings.Join(b.Surfaces, ", ") + "."
}

func stepList(s *page.State, path string) html {
	list := path + ".step"
	ids := s.Doc().Items(list)
	var items []html
	for i, id := range ids {
		items = append(items, stepItem(s, list+"."+id, i, len(ids)))
	}
	var adds []html
	for _, k := range job.StepKinds {
		adds = append(adds, action("add", list, k.Key, k.Name, "quiet"))
	}
	return region("list-"+list, "div", a("class", "steps", "tabindex", "-1"),
		el("p", a("class", "rowsname"), txt("Steps, from the ground up")), join(items...),
		el("div", a("class", "adds"), append([]html{el("span", a("class", "label"), txt("Add a step:"))}, adds...)...))
}

func plannedStep(s *page.State, path string) plan.Step {
	for _, b := range s.Plan.Buildups {
		for _, step := range b.Steps {
			if step.Path == path {
				return step
			}
		}
	}
	return plan.Step{}
}

func stepItem(s *page.State, path string, at, count int) html {
	open := s.IsOpen(path)
	kind := job.FindStepKind(s.Doc().Get(path + ".kind"))
	step := plannedStep(s, path)
	parts := []html{itemLine(path, open, strconv.Itoa(at+1)+" "+kind.Name+stepCard(s, path), stepSum(s, step)), stepFindings(s, path, open)}
	if open {
		var fields []html
		keys := kind.Shown(func(key string) string { return s.Doc().Get(path + "." + key) })
		for _, key := range keys {
			fields = append(fields, stepField(s, path, key))
		}
		parts = append(parts, join(fields...), saidOfItem(s, path), saidOfHidden(s, path, keys), hollows(s, path), readings(s, path, kind), stepFigures(s, path, step), itemTools(path, at, count))
	}
	return region("item-"+path, "div", a("class", "item inner", "data-open", yesNo(open)), parts...)
}

func stepCard(s *page.State, path string) string {
	if card := s.Plan.Job.CardByKey(s.Doc().Get(path + ".card")); card != nil {
		return ": " + card.Name
	}
	return ""
}

func stepSum(s *page.State, step plan.Step) string {
	switch {
	case !step.Known:
		return "not planned yet"
	case step.Coat != nil:
		return unit.Number(float64(step.Coat.Coats.Value), 3) + " × " + of(s, step.Coat.WetEach, unit.Films) + " wet"
	case step.Fill != nil && step.Job.Hollows.By == job.FillMean:
		return of(s, step.Job.Thickness, unit.Fills)
	case step.Fill != nil:
		return of(s, step.Fill.Left, unit.Volumes)
	case step.Taken.Step == nil:
		return ""
	}
	return "− " + of(s, step.Taken, unit.Films)
}

func stepField(s *page.State, path, key string) html {
	at := path + "." + key
	card := s.Plan.Job.CardByKey(s.Doc().Get(path + ".card"))
	switch key {
	case "card":
		return fieldWith(s, at, fieldExtras{Options: cardOptions(s, job.FindStepKind(s.Doc().Get(path+".kind")).Key)})
	case "coats":
		return fieldWith(s, at, fieldExtras{Default: "as needed", Hint: "Left empty: as many as the card's largest film asks for."})
	case "thinner":
		return fieldWith(s, at, fieldExtras{Default: "none"})
	case "sanded-off":
		if card != nil && card.SandedOff.Known {
			return fieldWith(s, at, fieldExtras{Default: unit.Number(float64(card.SandedOff.Value)*100, 3)})
		}
	case "putty":
		return fieldWith(s, at, fieldExtras{Options: puttyOptions(s), First: "bought filler", Hint: "Passes and batches stay those of the material above."})
	case "taken":
		if s.Doc().Get(path+".kind") == "polish" {
			return fieldWith(s, at, fieldExtras{Default: "as needed", Hint: "Left empty: below the scratches of the last grade, and no less than its card says."})
		}
	}
	return fieldWith(s, at, stepExtras(key))
}

// stepFieldExtras is what fields of a step have besides, by key.
var stepFieldExtras = []struct {
	key string
	fieldExtras
}{
	{"wait", fieldExtras{Default: "not said", Hint: "Not said: what depends on it stays open."}},
	{"patch", fieldExtras{Default: "none yet", Hint: "What needs a test patch stays red until its day is noted here or on the surface."}},
	{"goes", fieldExtras{Default: "1", Hint: "Spray, sand, find pinholes, spray again: how often."}},
	{"go-takes", fieldExtras{Default: "none"}},
	{"swallowed", fieldExtras{Default: "0", Hint: "Goes into the pores and leaves no film. Try a square on an offcut: what it took beyond its film."}},
	{"first", fieldExtras{Default: "such as P220"}},
	{"last", fieldExtras{Default: "such as P1200", Hint: "What the next layer and the polish find."}},
	{"grades", fieldExtras{Default: "the usual ones", Hint: "Left empty: the usual grades from the first to the last."}},
	{"wet-from", fieldExtras{Default: "all dry", Hint: "An electric sander and water don't go together."}},
	{"scratch", fieldExtras{Default: "0.33", Hint: "0.15 to 0.5: an assumption. Your own figures below the build-ups stand above it."}},
	{"texture", fieldExtras{Default: "by the method", Hint: "What the coat before left: the first grade flattens it."}},
	{"least", fieldExtras{Default: "as its card says"}},
	{"cut-most", fieldExtras{Default: "as read"}},
	{"raise", fieldExtras{Default: "0", Hint: "More filler, less to cut. Below zero: the other way."}},
	{"cut-cost", fieldExtras{Default: "3", Hint: "For the best height of the datum: an assumption."}},
	{"alike", fieldExtras{Default: "1"}},
}

func stepExtras(key string) fieldExtras {
	for _, row := range stepFieldExtras {
		if row.key == key {
			return row.fieldExtras
		}
	}
	return fieldExtras{}
}

func cardOptions(s *page.State, kind string) []job.Option {
	var options []job.Option
	for i := range s.Plan.Job.Cards {
		if c := &s.Plan.Job.Cards[i]; plan.Fits(kind, c) {
			options = append(options, job.Option{Key: c.Key, Name: c.Name})
		}
	}
	return options
}

func stepFigures(s *page.State, path string, step plan.Step) html {
	var parts []html
	if c := step.Coat; c != nil {
		parts = append(parts,
			figure(s, path+".coats", "Coats", unit.Number(float64(c.Coats.Value), 3), c.Coats.Step),
			figure(s, path+".weteach", "Wet film of each: what a comb should read", of(s, c.WetEach, unit.Films), c.WetEach.Step),
			figure(s, path+".wet", "Wet film in all", of(s, c.Wet, unit.Films), c.Wet.Step),
			figure(s, path+".cured", "Cured film in all", of(s, c.Cured, unit.Films), c.Cured.Step),
			figure(s, path+".theory", "A litre as sold covers, nothing lost", of(s, c.Theory, unit.Rates), c.Theory.Step),
			figure(s, path+".practice", "A litre as sold covers, in practice", of(s, c.Practice, unit.Rates), c.Practice.Step))
	}
	if step.Sand != nil {
		parts = append(parts, runFigures(s, path, step))
	}
	if step.Job != nil && step.Job.Kind.Key == "polish" && step.Taken.Step != nil {
		parts = append(parts, figure(s, path+".taken", "Film taken", of(s, step.Taken, unit.Films), step.Taken.Step))
	}
	if step.Fill != nil {
		parts = append(parts, fillFigures(s, path, step))
	}
	for _, u := range step.Used {
		id := path + ".use." + u.Card.Key
		if u.Mass.Step != nil {
			parts = append(parts, figure(s, id+".mass", u.Card.Name, of(s, u.Mass, unit.Weights), u.Mass.Step))
		}
		if u.Volume.Step != nil {
			parts = append(parts, figure(s, id+".volume", u.Card.Name+", by volume", of(s, u.Volume, unit.Volumes), u.Volume.Step))
		}
	}
	return region("figures-"+path, "div", a("class", "figures"), append([]html{waits(s, path)}, parts...)...)
}

// stack is the film to scale, the ground at the bottom.
func stack(s *page.State, b plan.Buildup) html {
	var layers []draw.Layer
	for _, step := range b.Steps {
		if !step.Known {
			continue
		}
		switch {
		case step.Coat != nil:
			layers = append(layers, draw.Layer{Name: step.Card.Name, Film: float64(step.Added.Value), Text: of(s, step.Added, unit.Films)})
		case step.Fill != nil:
			layers = append(layers, draw.Layer{Name: step.Card.Name, Text: stepSum(s, step), IsFill: true})
		case step.Taken.Value > 0:
			layers = append(layers, draw.Layer{Name: step.Job.Kind.Name, Film: -float64(step.Taken.Value), Text: of(s, step.Taken, unit.Films)})
		}
	}
	if len(layers) == 0 {
		return nothing
	}
	return draw.Stack(layers)
}
