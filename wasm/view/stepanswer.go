package view

import (
	"slices"
	"strconv"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// stepAnswer is what comes of a step: for a coat what a comb should read, for
// filler what to mix, for sanding the film it takes.
func stepAnswer(s *page.State, path string, step *plan.Step, kind *job.StepKind) html {
	if plan.KindOf(kind).Drawing == plan.NotDrawn {
		return nothing
	}
	box := answerBox{Label: words.AnswerOf(kind.Name), Hero: txt("–"), Stops: !step.Known, Twin: txt(waitsFor(s, path))}
	switch {
	case !step.Known:
	case step.Coat != nil:
		coatAnswer(s, step, &box)
	case step.Fill != nil:
		fillAnswer(s, step, &box)
	default:
		box.Hero, box.Twin = txt("− "+of(s, step.Taken, unit.Films)), txt(stepSmall(s, step, kind))
		takingFacts(s, step, &box)
	}
	if step.Known && s.Plan.IsWithheld(buildupOfStep(s, path).Path) {
		withhold(&box, step)
	}
	return answerOf("answer-"+path, box)
}

// withhold leaves a dash where an amount depends on a surface that can't be read.
func withhold(box *answerBox, step *plan.Step) {
	for i := range box.Facts {
		box.Facts[i].Value = "–"
	}
	if step.Fill != nil {
		box.Hero = txt("–")
	}
	box.More = el("p", a("class", "hint"), txt(words.WaitsForASize))
}

// waitsFor says in one line what keeps a step from being planned.
func waitsFor(s *page.State, path string) string {
	for _, r := range s.Plan.Refused() {
		if r.Path == path || hasPrefix(r.Path, path+".") {
			return words.StillWaits + fieldName(r.Path)
		}
	}
	if step := plannedStep(s, path); step.Card != nil && step.Card.Unread != "" {
		return words.StillWaits + fieldName(step.Card.Unread)
	}
	for _, w := range s.Plan.Waiting() {
		if hasPrefix(w.Path, path+".") {
			return words.StillWaits + fieldName(w.Path)
		}
	}
	return words.NotPlannedYet
}

func fieldName(path string) string {
	if f := job.FieldAt(path); f != nil {
		return f.Name
	}
	_, key := job.Split(path)
	return key
}

func coatAnswer(s *page.State, step *plan.Step, box *answerBox) {
	c := step.Coat
	box.Hero = txt(of(s, c.WetEach, unit.Films))
	twin := words.EachCoat
	if n := int(c.Coats.Value); n > 1 {
		twin = words.EachOf(n)
	}
	box.Twin = txt(twin)
	box.Facts = append(box.Facts, fact{of(s, c.Cured, unit.Films), words.CuredAll})
	if product := productOf(step); product.Mass.Step != nil {
		box.Facts[0] = fact{of(s, product.Mass, unit.Weights), words.InAll}
	}
	if c.PerCoat.Step != nil {
		box.Facts = append(box.Facts, fact{unit.Write(float64(c.PerCoat.Value), unit.InKilogramPerSquareMetre, 2), words.EachCoatWithLoss})
	}
	if step.Cups.Count.Step != nil {
		box.Facts = append(box.Facts, cupsOf(s, step))
	}
}

func productOf(step *plan.Step) plan.Use {
	for _, u := range step.Used {
		if u.Card == step.Card {
			return u
		}
	}
	return plan.Use{}
}

func fillAnswer(s *page.State, step *plan.Step, box *answerBox) {
	box.Hero = txt(of(s, step.Cups.Mixed, unit.Weights))
	box.Twin = txt(words.ToMix + " · " + words.Passes(int(step.Fill.Passes.Value)))
	box.Facts = append(box.Facts, fact{of(s, step.Fill.Applied, unit.Volumes), words.PutOn}, fact{of(s, step.Fill.Left, unit.Volumes), words.StaysOn})
	if step.Cups.Count.Step != nil {
		box.Facts = append(box.Facts, cupsOf(s, step))
	}
	if parts := cupOfPutty(s, step); parts != "" {
		box.More = el("p", a("class", "hint"), txt(parts))
	}
}

// cupsOf is how many cups a step takes, and what each holds.
func cupsOf(s *page.State, step *plan.Step) fact {
	count := unit.Number(float64(step.Cups.Count.Value), 4)
	return fact{count, words.CupsOf(count, of(s, step.Cups.Each, unit.CupWeights))}
}

// cupOfPutty is what to weigh for one cup of a putty mixed by hand.
func cupOfPutty(s *page.State, step *plan.Step) string {
	n := float64(step.Cups.Count.Value)
	if step.Job.Putty == "" || n == 0 {
		return ""
	}
	var parts []string
	for _, p := range step.Parts() {
		parts = append(parts, p.Name+" "+unit.Write(float64(p.Mass.Value)/n, s.Plan.Job.Units.Scale(unit.CupWeights), 3))
	}
	return words.MixedInCups + words.Listed(parts...)
}

// takingFacts is what sanding and polishing take beside the film.
func takingFacts(s *page.State, step *plan.Step, box *answerBox) {
	if r := step.Sand; r != nil {
		pieces := 0.0
		for _, stage := range r.Stages {
			pieces += float64(stage.Pieces.Value)
		}
		if pieces > 0 {
			box.Facts = append(box.Facts, fact{unit.Number(pieces, 3), words.DiscsAndSheets})
		}
		if r.Hours.Step != nil {
			box.Facts = append(box.Facts, fact{of(s, r.Hours, unit.Hours), words.OfWork})
		}
		if r.Dust.Step != nil {
			box.Facts = append(box.Facts, fact{of(s, r.Dust, unit.Weights), words.Dust})
		}
	}
	if product := productOf(step); product.Mass.Step != nil {
		box.Facts = append(box.Facts, fact{of(s, product.Mass, unit.Weights), words.InAll})
	}
}

// stepVerdicts is whether a step holds: what is red or asked about it, or that
// nothing is. The working of every figure lies behind it.
func stepVerdicts(s *page.State, path string, step *plan.Step) html {
	b := buildupOfStep(s, path)
	var lines []html
	for i, f := range pressing(&b) {
		if f.Path == path {
			lines = append(lines, findingVerdict(s, &b, &f, "finding-"+strconv.Itoa(i), false))
		}
	}
	why := page.Part(path, page.WhyPart)
	if len(restsOn(&b, path)) == 0 && !hasFigures(step) {
		why = "" // a wash has nothing to work out
	}
	switch {
	case !step.Known:
		lines = append(lines, verdict(unchecked, words.NothingChecked, "", why))
	case len(lines) == 0:
		lines = append(lines, verdict(holds, words.Holds, words.NothingRed, why))
	default:
		lines = append(lines, verdict(unchecked, words.EveryFigure, "", why))
	}
	return region("findings-"+path, "div", a("class", "verdicts"), lines...)
}

func buildupOfStep(s *page.State, step string) plan.Buildup {
	list, _ := job.Split(step)
	path, _ := job.Split(list)
	return plannedBuildup(s, path)
}

// whySheet is the working of every figure of a step, and what its checks rest on.
func whySheet(s *page.State, path string) shown {
	step, b := plannedStep(s, path), buildupOfStep(s, path)
	list := restsOn(&b, path)
	return shown{Title: words.EveryFigure, Body: join(
		region("findings-"+path, "div", a("class", "findings"), findingLines(s, &b, list, false, false)),
		stepFigures(s, path, step)), Act: act("back", "", "", words.Done)}
}

// restsOn gives what a build-up's checks found at a step.
func restsOn(b *plan.Buildup, path string) []plan.Finding {
	return slices.DeleteFunc(slices.Concat(b.Findings(), plannedBudget(b).Findings), func(f plan.Finding) bool { return f.Path != path })
}

// hasFigures reports whether there is anything that was worked out for a step.
func hasFigures(step *plan.Step) bool {
	return step.Coat != nil || step.Sand != nil || step.Fill != nil || step.Taken.Step != nil || len(step.Used) > 0
}

// pressing gives the findings of a build-up that are red or asked about, the red
// first.
func pressing(b *plan.Buildup) []plan.Finding {
	var list []plan.Finding
	for _, severity := range []buildup.Severity{buildup.Refuse, buildup.Ask} {
		for _, f := range slices.Concat(b.Findings(), plannedBudget(b).Findings) {
			if f.Severity == severity {
				list = append(list, f)
			}
		}
	}
	return list
}

// findingVerdict is one finding in a sentence with its way out; away from its
// step it names it and leads there.
func findingVerdict(s *page.State, b *plan.Buildup, f *plan.Finding, id string, away bool) html {
	is, strong := asks, words.Check
	if f.IsRed() {
		is, strong = stops, words.Stop
	}
	what, fix, _ := words.Finding(f, layerName(b, f), s.Plan.Job.Units)
	text := words.Capital(what) + " " + fix
	if where := onlyOn(s, b, f); where != "" {
		text += " " + where
	}
	if !away {
		return el("p", a("class", "verdict", "data-is", is), el("span", nil, el("b", nil, txt(strong)), txt(" "+text)))
	}
	return el("button", a("class", "verdict", "data-is", is, "type", "button", "id", id, "data-do", "sheet", "data-path", f.Path),
		el("span", nil, el("b", nil, txt(strong+" "+words.AtStep(f.Step+1))), txt(" "+text)))
}

// layerName is what a finding calls the layer that it is about.
func layerName(b *plan.Buildup, f *plan.Finding) string {
	if f.Step < len(b.Steps) && b.Steps[f.Step].Card != nil {
		return b.Steps[f.Step].Card.Name
	}
	return words.ThisLayer
}

// stepFigures is every figure of a step, each opening to its working.
func stepFigures(s *page.State, path string, step plan.Step) html {
	var parts []html
	if c := step.Coat; c != nil {
		parts = append(parts,
			figure(s, path+".coats", "Coats", unit.Number(float64(c.Coats.Value), 3), c.Coats.Step),
			figure(s, path+".weteach", words.WetFilmOfEach, of(s, c.WetEach, unit.Films), c.WetEach.Step),
			figure(s, path+".wet", words.WetFilmInAll, of(s, c.Wet, unit.Films), c.Wet.Step),
			figure(s, path+".cured", words.CuredFilmInAll, of(s, c.Cured, unit.Films), c.Cured.Step),
			figure(s, path+".theory", words.CoversInTheory, of(s, c.Theory, unit.Rates), c.Theory.Step),
			figure(s, path+".practice", words.CoversInPractice, of(s, c.Practice, unit.Rates), c.Practice.Step))
	}
	if step.Sand != nil {
		parts = append(parts, runFigures(s, path, step))
	}
	if step.Sand == nil && step.Taken.Step != nil { // as a number, or by a material
		parts = append(parts, figure(s, path+".taken", words.FilmTaken, of(s, step.Taken, unit.Films), step.Taken.Step))
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
			parts = append(parts, figure(s, id+".volume", words.ByVolumeOf(u.Card.Name), of(s, u.Volume, unit.Volumes), u.Volume.Step))
		}
	}
	return region("figures-"+path, "div", a("class", "figures"), append([]html{waits(s, path)}, parts...)...)
}
