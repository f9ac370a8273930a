package view

import (
	"strconv"
	"strings"

	"shedreckoner/calc/film"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// runFigures is what a run of grades comes to, grade by grade.
func runFigures(s *page.State, path string, step plan.Step) html {
	r := step.Sand
	parts := []html{
		el("p", a("class", "hint"), txt(words.Grades(gradeWords(r.Grades)))),
		figure(s, path+".taken", words.FilmTaken, of(s, step.Taken, unit.Films), step.Taken.Step),
		figure(s, path+".flatten", words.ForTheTexture, of(s, r.Flatten, unit.Films), r.Flatten.Step),
	}
	for i, stage := range r.Stages {
		parts = append(parts, stageFigures(s, path+".stage."+strconv.Itoa(i), stage))
	}
	parts = append(parts,
		figure(s, path+".hours", "Hours", of(s, r.Hours, unit.Hours), r.Hours.Step),
		figure(s, path+".dust", "Dust", of(s, r.Dust, unit.Weights), r.Dust.Step))
	for _, j := range r.Jumps {
		parts = append(parts, el("p", a("class", "hint"), txt(words.GradeJump(j))))
	}
	if len(r.Fewest) > 0 {
		parts = append(parts, fewest(s, path, r))
	}
	return join(parts...)
}

func stageFigures(s *page.State, id string, stage plan.Stage) html {
	label := stage.Grade.String()
	if stage.IsWet {
		label += words.SandedWet
	}
	if stage.IsOwn {
		label += words.ByOwnFigure
	}
	parts := []html{figure(s, id, words.TakesAtLeast(label), of(s, stage.Takes, unit.Films), stage.Takes.Step)}
	if stage.Pieces.Step != nil {
		parts = append(parts, figure(s, id+".pieces", stage.Abrasive.Name+", "+stage.Grade.String(), unit.Number(float64(stage.Pieces.Value), 3), stage.Pieces.Step))
	}
	return join(parts...)
}

func fewest(s *page.State, path string, r *plan.Sanding) html {
	return join(
		figure(s, path+".fewest", words.FewestGrades(gradeWords(r.Fewest)), of(s, r.FewTake, unit.Films), r.FewTake.Step),
		action("set", path+".grades", strings.ReplaceAll(gradeWords(r.Fewest), ", ", " "), words.UseThese, "quiet"))
}

func gradeWords(grades []sanding.Grade) string {
	words := make([]string, len(grades))
	for i, g := range grades {
		words[i] = g.String()
	}
	return strings.Join(words, ", ")
}

// removals is the builder's own film taken by each grade.
func removals(s *page.State) html {
	var items []html
	ids := s.Doc().Items("removal")
	for i, id := range ids {
		items = append(items, removalItem(s, "removal."+id, i, len(ids)))
	}
	return join(el("p", a("class", "rowsname"), txt(words.WhatAGradeTakes)),
		el("p", a("class", "hint"), txt(words.HowToFindRemoval)),
		region("list-removal", "div", a("class", "list", "tabindex", "-1"), items...),
		action("add", "removal", "", words.AddOwnRemoval, "quiet"))
}

func removalItem(s *page.State, path string, at, count int) html {
	open := s.IsOpen(path)
	grade := s.Doc().Get(path + ".grade")
	if grade == "" {
		grade = words.GradeNotTyped
	}
	var takes plan.Removal
	for _, r := range s.Plan.Removals() {
		if r.Path == path {
			takes = r
		}
	}
	parts := []html{itemLine(path, open, grade, of(s, takes.Takes, unit.Films))}
	if open {
		parts = append(parts, fieldWith(s, path+".grade", fieldExtras{Default: "P320"}), field(s, path+".way"))
		for _, key := range job.RemovalFields(s.Doc().Get(path + ".way")) {
			extra := fieldExtras{}
			if key == "cured-density" {
				extra = fieldExtras{Default: words.AsCuredGelCoat}
			}
			parts = append(parts, fieldWith(s, path+"."+key, extra))
		}
		parts = append(parts, region("figures-"+path, "div", a("class", "figures"), waits(s, path),
			figure(s, path+".takes", words.ItTakes, of(s, takes.Takes, unit.Films), takes.Takes.Step)), itemTools(path, at, count))
	}
	return region("item-"+path, "div", a("class", "item", "data-open", yesNo(open)), parts...)
}

// readings is the films that were read on a step: combs on a coat, the film of
// the whole layer on any.
func readings(s *page.State, path string, kind *job.StepKind) html {
	var parts []html
	if kind.IsCoat {
		parts = append(parts, readingList(s, path+".comb", words.CombReadings, words.AddACombReading, "last-wet", "first-dry"))
	}
	if kind.HasWitnesses {
		parts = append(parts, readingList(s, path+".witness", words.MeasuredFilmWords, words.AddAMeasuredFilm, "film"))
	}
	return join(parts...)
}

func readingList(s *page.State, list, name, add string, keys ...string) html {
	how := ""
	if len(keys) > 1 {
		how = words.LastWetFirstDry
	}
	var lines []html
	for i, id := range s.Doc().Items(list) {
		row := list + "." + id
		var cells []html
		for _, key := range keys {
			cells = append(cells, dial(s, row+"."+key, dialLine{}))
		}
		if len(keys) > 1 {
			cells = append(cells, combAnswer(s, row, i))
		}
		cells = append(cells, fieldWith(s, row+".surface", fieldExtras{Options: surfaceOptions(s), First: words.AllOfIt}),
			action("remove", row, "", words.Remove, "quiet"))
		lines = append(lines, el("div", a("class", "reading", "id", row, "tabindex", "-1"), cells...))
	}
	return region("list-"+list, "div", a("class", "rows", "tabindex", "-1"),
		el("p", a("class", "rowsname"), txt(name)), hintIf(how), sayRegion(list, saidOf(s, list)),
		join(lines...), action("add", list, "", add, "quiet"))
}

// combAnswer is what a comb reading comes to, right at the comb: what it cures
// to, what is missing of the plan.
func combAnswer(s *page.State, row string, at int) html {
	list, _ := job.Split(row)
	path, _ := job.Split(list)
	step := plannedStep(s, path)
	text, is := "", holds
	if step.Coat != nil && at < len(step.Job.Combs) && step.Job.Combs[at].LastWet.Step != nil && step.Job.Combs[at].FirstDry.Step != nil {
		if read, err := step.Comb(at); err == nil {
			films := s.Plan.Job.Units.Scale(unit.Films)
			text = words.CombSays(unit.Number(films.From(float64(read.CuresLeast)), 3), unit.Write(float64(read.CuresMost), films, 3)) + combAgainstPlan(s, read)
			if read.IsCertainlyShort {
				is = asks
			}
		}
	}
	attrs := a("class", "verdict", "data-is", is)
	if text == "" {
		attrs = append(attrs, a("hidden", "")...)
	}
	return region("comb-"+row, "p", attrs, txt(text))
}

func combAgainstPlan(s *page.State, read film.CombReading) string {
	missing := float64(read.Missing.Value)
	text := unit.Write(max(missing, -missing), s.Plan.Job.Units.Scale(unit.Films), 2)
	switch {
	case missing > float64(unit.Micrometre):
		return words.CombMissing(text)
	case missing < -float64(unit.Micrometre):
		return words.CombOver(text)
	}
	return words.CombAsPlanned
}

// saidOf is what is wrong with a list as a whole.
func saidOf(s *page.State, list string) html {
	if err := s.Plan.RefusedAt(list); err != nil {
		return el("p", a("class", "bad"), txt(words.Sentence(err, nil, s.Plan.Job.Units)))
	}
	return nothing
}

func surfaceOptions(s *page.State) []job.Option {
	options := []job.Option{}
	for _, id := range s.Doc().Items("surface") {
		options = append(options, job.Option{Key: "surface." + id, Name: surfaceName(s, "surface."+id)})
	}
	return options
}
