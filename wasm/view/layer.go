package view

import (
	"strconv"
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// The heights of layers in a build-up's list, in units of about a CSS pixel: a
// row's own, and the film at its foot to scale as far as it goes.
const (
	rowHeight  = 52.
	markHeight = 4.
	mostHeight = 128.
	perMicron  = 0.15
)

// stepRow is one layer of a build-up's list.
func stepRow(s *page.State, path string, at int, b *plan.Buildup) html {
	kind := job.FindStepKind(s.Doc().Get(path + ".kind"))
	step := plannedStep(s, path)
	swatch := swatchOf(&step, kind, at, b)
	small := strings.TrimSpace(stepSmall(s, &step, kind))
	switch {
	case swatch.Broken:
		small = words.Listed(small, words.DrawnShorter)
	case swatch.Film > 0 && swatch.Film < 1:
		small = words.Listed(small, words.DrawnThicker)
	}
	attrs := a("class", "layer")
	switch {
	case step.Taken.Step != nil:
		attrs = a("class", "layer", "data-is", takes)
	case swatch.Stuff == draw.Washed: // a mark between two layers
		attrs = a("class", "layer mark")
		swatch.Height = markHeight
	}
	for _, f := range pressing(b) {
		if f.Path == path && f.IsRed() {
			attrs = a("class", "layer", "data-is", stops)
		}
	}
	return region("item-"+path, "div", attrs, listRow(path, swatch.Layer(), strconv.Itoa(at+1)+" "+words.StepTitle(kind, step.Card), small, stepFilm(s, &step, kind)))
}

// takes marks a layer that takes film.
const takes = "takes"

// groundRow is what a build-up is put on.
func groundRow(s *page.State, path string) html {
	text := ""
	if g, known := job.GroundByKey(s.Doc().Get(path + ".ground")); known {
		text = g.String()
	}
	return region("ground-"+path, "div", a("class", "layer ground"),
		el("span", a("class", "seen"), draw.Swatch{Stuff: draw.Ground, Height: rowHeight}.Layer()),
		el("span", a("class", "name"), txt(words.Ground), el("small", nil, txt(text))))
}

// stepSmall is the small line under a step's name.
func stepSmall(s *page.State, step *plan.Step, kind *job.StepKind) string {
	switch {
	case plan.KindOf(kind).Drawing == plan.NotDrawn:
		return ""
	case !step.Known:
		return words.NotPlannedYet
	case step.Coat != nil:
		return words.CoatsWet(words.ShortMethod(step.Job.Method.Name), unit.Number(float64(step.Coat.Coats.Value), 3), of(s, step.Coat.WetEach, unit.Films))
	case step.Fill != nil:
		return words.Passes(int(step.Fill.Passes.Value))
	case step.Sand != nil:
		return gradeWords(step.Sand.Grades)
	}
	return ""
}

// stepFilm is what a step adds or takes.
func stepFilm(s *page.State, step *plan.Step, kind *job.StepKind) string {
	switch {
	case plan.KindOf(kind).Drawing == plan.NotDrawn:
		return ""
	case !step.Known:
		return "–"
	case step.Coat != nil:
		return of(s, step.Added, unit.Films)
	case step.Fill != nil && step.Job.Hollows.By == job.FillMean:
		return of(s, step.Job.Thickness, unit.Fills)
	case step.Fill != nil:
		return of(s, step.Fill.Left, unit.Volumes)
	case step.Taken.Step == nil:
		return ""
	}
	return "− " + of(s, step.Taken, unit.Films)
}

// swatchOf is how a layer is drawn: what is put on and what is taken to one scale,
// as far as it goes; filler, many times thicker than any film, shorter.
func swatchOf(step *plan.Step, kind *job.StepKind, at int, b *plan.Buildup) draw.Swatch {
	w := draw.Swatch{Stuff: stuffOf(step, kind), Height: rowHeight}
	film := unit.Length(step.Added.Value)
	switch {
	case step.Coat != nil:
		if least := step.Card.LeftLeast; least.Known && film > 0 && isTopCoat(b, at) {
			w.Least = float64(least.Value) / float64(film)
		}
	case step.Fill != nil:
		film = step.Fill.Depth.Value
	case step.Taken.Step != nil:
		film = unit.Length(step.Taken.Value)
	}
	w.Film = unit.InMicrometre.From(float64(film)) * perMicron
	if w.Film > mostHeight {
		w.Film, w.Broken = mostHeight*0.75, true
	}
	w.Height = max(rowHeight, w.Film)
	return w
}

// isTopCoat reports whether no coat lies over the step.
func isTopCoat(b *plan.Buildup, at int) bool {
	for _, step := range b.Steps[at+1:] {
		if step.Coat != nil || step.Fill != nil {
			return false
		}
	}
	return true
}

func stuffOf(step *plan.Step, kind *job.StepKind) draw.Stuff {
	switch plan.KindOf(kind).Drawing {
	case plan.DrawnSanded:
		return draw.Sanded
	case plan.DrawnPolished:
		return draw.Polished
	case plan.DrawnFiller:
		return draw.Filling
	case plan.NotDrawn:
		return draw.Washed
	}
	if step.Card == nil {
		return draw.Washed
	}
	return stuffOfCard(step.Card.Kind)
}

// stuffOfCard is how a material is hatched that is put on.
func stuffOfCard(kind material.Kind) draw.Stuff {
	switch kind {
	case material.Filler:
		return draw.Filling
	case material.FlowCoat:
		return draw.FlowCoatFilm
	case material.Primer:
		return draw.PrimerFilm
	case material.Topcoat:
		return draw.TopcoatFilm
	}
	return draw.GelCoatFilm
}
