package view

import (
	"slices"
	"strconv"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// stepSheet is one step: what it is made of and how much, what comes of it,
// whether it holds. All else lies behind setup lines.
func stepSheet(s *page.State, path string) shown {
	list, id := job.Split(path)
	ids := s.Doc().Items(list)
	at := slices.Index(ids, id)
	kind := job.FindStepKind(s.Doc().Get(path + ".kind"))
	step := plannedStep(s, path)
	keys := kind.Shown(func(key string) string { return s.Doc().Get(path + "." + key) })
	parts := []html{
		stepForm(s, path, &step, kind, keys),
		saidOfItem(s, path), saidOfHidden(s, path, keys, page.IsInSight),
		hollows(s, path),
		stepAnswer(s, path, &step, kind),
		stepVerdicts(s, path, &step),
	}
	if text := moreWords(s, &step, kind); text != "" {
		parts = append(parts, setup(path+".more", text, page.Part(path, page.MorePart)))
	}
	if kind.HasWitnesses {
		parts = append(parts, setup(path+".readings", readingsWords(s, path, kind), page.Part(path, page.ReadingsPart)))
	}
	return shown{Title: strconv.Itoa(at+1) + " " + words.StepTitle(kind, step.Card), Body: join(append(parts, itemTools(path, at, len(ids)))...), Act: act("back", "", "", words.Done)}
}

// stepForm is the fields of a step that stand on its sheet: what it is made of
// and how it is put on side by side, then its figures.
func stepForm(s *page.State, path string, step *plan.Step, kind *job.StepKind, keys []string) html {
	var choices, figures []html
	for _, key := range keys {
		if !page.IsInSight(key) {
			continue
		}
		switch at := path + "." + key; key {
		case "card":
			choices = append(choices, picker(s, at, words.Material, cardOptions(s, kind.Key), words.ChooseMaterial, words.ChosenCard(s.Plan.Job.CardByKey(s.Doc().Get(at)))))
		case "method":
			methods := methodOptions(s, path)
			choices = append(choices, picker(s, at, words.Method, methods, "", words.Capital(words.ShortMethod(chosenName(s, at, methods)))))
		case "putty":
			if len(s.Doc().Items("putty")) > 0 {
				choices = append(choices, picker(s, at, words.HandMixedTitle, puttyOptions(s), words.BoughtFiller, puttyChosen(s, at)))
			} else {
				figures = append(figures, sayRegion(at, said(s, at, job.FieldAt(at))))
			}
		default:
			figures = append(figures, stepFigure(s, path, step, key))
		}
	}
	return region("form-"+path, "div", a("class", "sizes"), el("div", a("class", "chips"), choices...), join(figures...))
}

// stepFigure is a field in sight that is no choice of material or method.
func stepFigure(s *page.State, path string, step *plan.Step, key string) html {
	at := path + "." + key
	f := job.FieldAt(at)
	switch {
	case key == "film":
		return dial(s, at, filmLine(s, path, step))
	case key == "coats":
		return dial(s, at, coatsLine(s, step))
	case f.Kind == job.Choice:
		return chips(s, at, f.Name, "")
	case f.Kind == job.Pasted, f.Kind == job.Checked:
		return fieldWith(s, at, stepExtras(key))
	case key == "taken" && plan.KindOf(job.FindStepKind(s.Doc().Get(path+".kind"))).Drawing == plan.DrawnPolished:
		return dial(s, at, dialLine{Default: words.AsNeeded})
	}
	return dial(s, at, dialLine{Default: stepExtras(key).Default})
}

// filmLine names the film as it is meant, and says what it is on the other side
// of curing.
func filmLine(s *page.State, path string, step *plan.Step) dialLine {
	each := s.Doc().Get(path+".film-for") == job.ForEach
	cured := s.Doc().Get(path+".film-is") == job.FilmCured
	line := dialLine{Name: words.FilmName(cured, each)}
	if c := step.Coat; c != nil {
		if cured {
			line.Small = words.Wet(of(s, c.Wet, unit.Films))
		} else {
			line.Small = words.Cured(of(s, c.Cured, unit.Films))
		}
	}
	return line
}

func coatsLine(s *page.State, step *plan.Step) dialLine {
	line := dialLine{Name: words.CoatsName, Default: words.AsNeeded}
	if step.Coat != nil {
		least, most := step.Coat.Limits()
		films := s.Plan.Job.Units.Scale(unit.Films)
		if most > 0 {
			line.Small = words.EachUpTo(unit.Write(float64(most), films, 3))
		}
		if least > 0 && most > 0 {
			line.Small = words.EachFrom(unit.Write(float64(least), films, 3), unit.Write(float64(most), films, 3))
		}
	}
	return line
}

// methodOptions is how a card is put on as a rule, and how the step says.
func methodOptions(s *page.State, path string) []job.Option {
	card := s.Plan.Job.CardByKey(s.Doc().Get(path + ".card"))
	now := s.Doc().Get(path + ".method")
	var list []job.Option
	for _, m := range material.Methods {
		if card == nil || len(card.Methods) == 0 || slices.Contains(card.Methods, m.Key) || m.Key == now {
			list = append(list, job.Option{Key: m.Key, Name: m.Name})
		}
	}
	return list
}

// cardOptions is the cards for a kind of step, with what each is for.
func cardOptions(s *page.State, kind string) []job.Option {
	return cardsBy(s, func(c *job.Card) string { return c.Name }, func(c *job.Card) bool { return plan.Fits(kind, c) })
}

// cardsBy is the cards that fit, each by a name of it.
func cardsBy(s *page.State, name func(*job.Card) string, fits func(*job.Card) bool) []job.Option {
	var options []job.Option
	for _, c := range s.Plan.Job.Cards {
		if fits(c) {
			options = append(options, job.Option{Key: c.Key, Name: name(c)})
		}
	}
	return options
}

// moreSheet is what a step says besides.
func moreSheet(s *page.State, path string) shown {
	kind := job.FindStepKind(s.Doc().Get(path + ".kind"))
	keys := kind.Shown(func(key string) string { return s.Doc().Get(path + "." + key) })
	var fields []html
	for _, key := range keys {
		if page.IsInSight(key) {
			continue
		}
		if f := job.FieldAt(path + "." + key); f.Kind == job.Choice {
			fields = append(fields, chips(s, path+"."+key, f.Name, ""))
			continue
		}
		fields = append(fields, stepField(s, path, key))
	}
	hidden := saidOfHidden(s, path, keys, func(key string) bool { return !page.IsInSight(key) })
	return shown{Title: words.MoreOfTheStep, Body: el("div", a("class", "form"), append(fields, hidden)...), Act: act("back", "", "", words.Done)}
}

// readingsSheet is the films that were read on a step.
func readingsSheet(s *page.State, path string) shown {
	kind := job.FindStepKind(s.Doc().Get(path + ".kind"))
	return shown{Title: words.Readings, Body: readings(s, path, kind), Act: act("back", "", "", words.Done)}
}

func readingsWords(s *page.State, path string, kind *job.StepKind) string {
	combs, films := len(s.Doc().Items(path+".comb")), len(s.Doc().Items(path+".witness"))
	switch {
	case combs+films > 0 && kind.IsCoat:
		return words.ReadingsOf(combs, films)
	case films > 0:
		return words.FilmsOf(films)
	case kind.IsCoat:
		return words.NoReadings
	}
	return words.NoCombHere
}

// moreWords says in one line what the step says besides.
func moreWords(s *page.State, step *plan.Step, kind *job.StepKind) string {
	if step.Job == nil {
		return words.MoreOfTheStep
	}
	j := step.Job
	wait := words.WaitNotSaid
	if j.Wait.Step != nil {
		wait = words.After(of(s, j.Wait, unit.Hours))
	}
	switch plan.KindOf(kind).Drawing {
	case plan.DrawnFilm:
		thinner := words.NoThinner
		if j.Thinner.Value > 0 {
			thinner = words.ThinnerOf(unit.Write(float64(j.Thinner.Value), unit.InPercent, 3), j.ThinnerByMass)
		}
		air := words.OpenToAir
		if j.IsUnderFilm {
			air = words.UnderReleaseFilm
		}
		return words.Listed(thinner, words.Rounds(int(j.Rounds.Value)), air, wait)
	case plan.DrawnFiller:
		off := ""
		if step.Fill != nil {
			off = words.SandedOff(unit.Write(float64(step.Fill.SandedOff.Value), unit.InPercent, 2))
		}
		return words.Listed(off, wait)
	case plan.DrawnSanded:
		least := ""
		if j.Least.Step != nil {
			least = words.MustLeave(of(s, j.Least, unit.Films))
		}
		return words.Listed(least, wait)
	}
	return wait
}
