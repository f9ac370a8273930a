package words

import (
	"errors"
	"strings"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/fairing"
	"shedreckoner/calc/film"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// fairingSentence is Sentence for what belongs to fairing, sanding and the film
// budget; empty for anything else.
func fairingSentence(err error, units job.Units) string {
	var (
		grade *sanding.GradeError
		order *job.OrderError
		run   *plan.GradesError
		goes  *plan.RoundTakesError
		comb  *film.CombError
		fine  *sanding.TooFineError
		share *buildup.ShareError
	)
	switch {
	case errors.As(err, &grade):
		return gradeSentence(grade)
	case errors.As(err, &order):
		return order.After.String() + " after " + order.Before.String() + " scratches again. Type the grades from coarse to fine, each once."
	case errors.As(err, &run):
		return "The last grade, " + run.Last.String() + ", is coarser than the first, " + run.First.String() + ". Swap them."
	case errors.As(err, &goes):
		return "Each round puts on " + filmText(goes.Adds, units) + " and is sanded back by " + filmText(goes.Takes, units) + ". Take less than a round puts on."
	case errors.As(err, &comb):
		return "The first dry tooth must stand higher than the last wet one (" + filmText(comb.LastWet, units) + "). Read the comb again."
	case errors.As(err, &fine):
		return "The loss is too small for the scale or gauge to tell. Sand longer, sand a larger offcut, or use a finer scale or gauge."
	case errors.As(err, &share):
		return "Type a share from 0.1 % to 50 %."
	case errors.Is(err, buildup.ErrNoReadings):
		return "These readings can't be films: at least one must be more than zero."
	case errors.Is(err, plan.ErrNoGrades):
		return "Type the first and the last grade."
	case errors.Is(err, plan.ErrFewRows):
		return "A grid needs two rows of two readings, or more."
	case errors.Is(err, plan.ErrNoRecipe):
		return "This putty isn't whole yet: type what goes in, under putty mixed by hand on the Build-up screen."
	case errors.Is(err, plan.ErrNoSpots):
		return "Add the places to fill."
	}
	return gridSentence(err, units)
}

func gradeSentence(e *sanding.GradeError) string {
	switch e.Cause {
	case sanding.WhichSystem:
		return "Two systems use that number, and they differ. Type " + either(e.Readings) + ", whichever is printed on the back of the sheet."
	case sanding.NotMapped:
		return "No printed table gives a P grade for " + e.Text + ", only for US 320, US 400, US 500 and US 600. Type a P grade."
	}
	return "There is no grade " + e.Text + ". Type one like P220, or US 400 for an American one."
}

func gridSentence(err error, units job.Units) string {
	var (
		size    *fairing.SizeError
		ragged  *fairing.RaggedError
		cell    *fairing.CellError
		cells   fairing.CellErrors
		split   *fairing.SplitError
		curve   *fairing.CurveError
		balloon *fairing.BalloonError
	)
	switch {
	case errors.As(err, &cells):
		text := cellSentence(cells[0], units)
		if len(cells) > 1 {
			text += " " + unit.Number(float64(len(cells)-1), 4) + " more like it."
		}
		return text
	case errors.As(err, &cell):
		return cellSentence(cell, units)
	case errors.As(err, &size):
		return "A grid has 2 to 100 rows of 2 to 100 readings. This has " + unit.Number(float64(size.Rows), 4) + " rows of " + unit.Number(float64(size.Columns), 4) + "."
	case errors.As(err, &ragged):
		return "Row " + unit.Number(float64(ragged.Row+1), 4) + " has " + unit.Number(float64(ragged.Has), 4) + " readings, the first row " +
			unit.Number(float64(ragged.First), 4) + ". Every row needs the same number."
	case errors.As(err, &split):
		return splitSentence(split)
	case errors.As(err, &curve):
		return "The deepest cut must be no less than zero and under 500 mm."
	case errors.As(err, &balloon):
		return "Balloons would be " + unit.Write(float64(balloon.Share), unit.InPercent, 3) + " of the putty by volume. Over " +
			unit.Write(float64(balloon.Most), unit.InPercent, 3) + " the resin can't wet them. Add resin, or fewer balloons."
	case errors.Is(err, fairing.ErrNothing):
		return "The recipe adds up to nothing. Type how much of each part goes in."
	}
	return ""
}

func cellSentence(e *fairing.CellError, units job.Units) string {
	place := CellName(e.Row, e.Column)
	switch e.Cause {
	case fairing.Blank:
		return place + " is empty. Type what you read there; 0 only if it was 0."
	case fairing.MixedUnit:
		return place + " (" + e.Text + ") is in another unit than the first reading (" + e.First + "). Use one unit for the whole grid."
	case fairing.OutOfReach:
		return place + " (" + e.Text + ") is further than a straight-edge ever stands off: at most 500 mm."
	}
	return place + ": " + Sentence(e.Read, nil, units)
}

func splitSentence(e *fairing.SplitError) string {
	switch e.Cause {
	case fairing.PasteTooLong:
		return "That is more than 100 × 100 readings. Paste less."
	case fairing.CommaTwoWays:
		return "“" + e.Text + "” can be two readings, or one with a decimal comma. Separate the readings with spaces or semicolons."
	case fairing.FractionTwoWays:
		return "“" + e.Text + "” can be two readings, or one. Separate the readings with semicolons."
	}
	return "There is nothing in it. Paste rows of readings, one row a line."
}

// Finding says what a check has found, what fixes it, and what it rests on.
func Finding(f *plan.Finding, layer string, units job.Units) (what, fix, rests string) {
	what = findingWords(f, layer, units)
	fix = fixWords[f.Fix]
	if f.Rule == buildup.WetFilm && f.IsRed() {
		fix = nearWords(f.Near, units)
	}
	if f.Fix == buildup.OtherGrade {
		fix = "Sand with P" + unit.Number(f.Limit, 5) + "."
	}
	rests = f.Source.String()
	if f.Source.Document == &source.Practice { // the mark says so
		rests = f.Source.Place
	}
	return what, fix, rests + " – " + f.Mark.String()
}

func findingWords(f *plan.Finding, layer string, units job.Units) string {
	got, limit := inUnit(f, f.Got, units), inUnit(f, f.Limit, units)
	switch f.Rule {
	case buildup.OnGround:
		return groundWords(f, layer, got, limit)
	case buildup.UnderWater:
		return "Polyester filler takes up water: not below the waterline, whatever goes over it."
	case buildup.OpenCoat:
		return layer + " without wax stays tacky where air gets at it: it can't be left open or sanded."
	case buildup.WetFilm:
		if f.Got > f.Limit {
			return "A coat of " + got + " wet is over the card's largest, " + limit + ": it sags and traps air."
		}
		if f.Severity == buildup.Ask {
			return "A coat of " + got + " wet is thin: under " + limit + " it may wrinkle or stay soft."
		}
		return "A coat of " + got + " wet is under the card's least, " + limit + ": it wrinkles or stays soft."
	case buildup.Thinning:
		return "Thinner and wax solution together come to " + got + ", over " + limit + "."
	case buildup.Waxing:
		if f.Got > f.Limit {
			return "Wax solution at " + got + " is over " + limit + ": the next coat bonds badly."
		}
		return "Wax solution at " + got + " is under " + limit + ": the surface may stay tacky."
	case buildup.SandSoon:
		return "Sanded after " + got + ", before " + limit + " are up: too soft, the paper clogs."
	case buildup.MeanLeft:
		if f.Got < 0 {
			return "More is taken off here than there is."
		}
		return "Mean film left " + got + ", less than the " + limit + " asked for."
	case buildup.ThinLeft:
		return "The thin side is left with " + got + ", less than the " + limit + " asked for."
	case buildup.GoThrough:
		return got + " of the area is expected to be sanded through here; " + limit + " was allowed."
	case buildup.CrackLimit:
		return "Film left " + got + " is over " + limit + ": it may crack."
	}
	return "This step needs a look."
}

// nearWords name what would hold in the place of a wet film: another number of
// coats, or the nearest films on both sides.
func nearWords(n buildup.Near, units job.Units) string {
	coats := func(n int) string {
		if n == 1 {
			return "in one coat"
		}
		return "in " + unit.Number(float64(n), 3) + " coats"
	}
	above := filmText(n.Above, units) + " " + coats(n.AboveCoats)
	switch {
	case n.Coats > 0:
		return "Put it on " + coats(n.Coats) + "."
	case n.Above == 0:
		return "No film holds: the card's least is over its largest. Change one of the two on the card."
	case n.Below == 0:
		return "The least that holds is " + above + "."
	}
	return "The nearest wet films that hold are " + filmText(n.Below, units) + " " + coats(n.BelowCoats) + " and " + above + "."
}

func inUnit(f *plan.Finding, si float64, units job.Units) string {
	scale := f.Scale
	switch scale {
	case unit.NoScale:
		return ""
	case unit.InMicrometre, unit.InMillimetre:
		scale = units.Scale(unit.Films)
	}
	return unit.Write(si, scale, 3)
}

func groundWords(f *plan.Finding, layer, got, limit string) string {
	on := f.Ground.String()
	switch f.Requirement {
	case buildup.Sanding:
		if f.Fix == buildup.OtherGrade {
			return "The ground (" + on + ") was last sanded with P" + unit.Number(f.Got, 5) + "."
		}
		return "The ground (" + on + ") isn't sanded."
	case buildup.Washing:
		return "The ground (" + on + ") isn't washed."
	case buildup.TestPatch:
		return layer + " on " + on + ": no test patch is logged."
	case buildup.Age:
		if f.IsUnknown {
			return "The age of the ground (" + on + ") isn't given. It needs " + limit + " at 20 °C."
		}
		return "The ground (" + on + ") is " + got + " old. It needs " + limit + " at 20 °C."
	case buildup.Window:
		switch {
		case f.IsUnknown:
			return "The waiting time isn't given: was the coat below (" + on + ") still open for the next one?"
		case f.Fix == buildup.WaitLonger:
			return "After " + got + " the coat below can't take another yet: " + limit + " at the soonest."
		}
		return "After " + got + " the coat below no longer takes another without sanding: " + limit + " at the latest."
	case buildup.Dryness:
		return layer + " on " + on + ": the ground must be dry right through."
	case buildup.Promptly:
		return layer + " on " + on + ": it rusts or dulls at once."
	}
	if text, known := reasons[f.Fix]; known {
		return strings.Replace(strings.Replace(text, "{layer}", layer, 1), "{ground}", on, 1)
	}
	return layer + " doesn't go straight on " + on + "."
}

// reasons say why a layer doesn't go on a ground, by what fixes it.
var reasons = map[buildup.Fix]string{
	buildup.EpoxyInstead:  "Styrene dissolves {ground}.",
	buildup.EpoxyBetween:  "{layer} bonds badly to {ground}.",
	buildup.FillerBetween: "{layer} goes on {ground} over filler only.",
	buildup.SealerBetween: "{ground} soaks up resin and moves under {layer}.",
	buildup.PrimerBetween: "{layer} on {ground} usually needs a primer in between.",
	buildup.SkimFirst:     "{ground} holds the heat of a curing layer in.",
	buildup.StripPaint:    "{layer} never goes on {ground}: it lifts.",
}

var fixWords = map[buildup.Fix]string{
	buildup.EpoxyInstead:  "Use epoxy and epoxy filler here instead.",
	buildup.EpoxyBetween:  "Put a coat of epoxy or epoxy primer in between.",
	buildup.FillerBetween: "Put epoxy filler in between.",
	buildup.SealerBetween: "Seal it first.",
	buildup.PrimerBetween: "Put a primer in between.",
	buildup.SkimFirst:     "Put a thin skim on first and let it cool.",
	buildup.StripPaint:    "Take the paint off down to what is sound.",
	buildup.EpoxyFilling:  "Use epoxy filler here.",
	buildup.SandFirst:     "Add a sanding step before this one, or say on the surface that it is sanded.",
	buildup.WashFirst:     "Add a wash before this step, or say on the surface that it is washed.",
	buildup.LogTestPatch:  "Try a patch; once it holds, note its day on this step or on the surface.",
	buildup.WaitLonger:    "Wait longer, and say how long on the step.",
	buildup.LetDry:        "Let it dry first.",
	buildup.CoatAtOnce:    "Coat within the hour of sanding.",
	buildup.AddWax:        "Use flow coat, or say that it cures under release film.",
	buildup.MoreCoats:     "Put it on in more coats.",
	buildup.FewerCoats:    "Put it on in fewer, thicker coats.",
	buildup.LessThinner:   "Add less thinner.",
	buildup.OtherWax:      "Keep the wax solution between 1 % and 3 % by mass.",
	buildup.MoreFilm:      "Put on more film, or take less.",
	buildup.MoreEvenFilm:  "Put on more, or a more even film; start with a finer grade.",
	buildup.LessFilm:      "Put on less film.",
}
