package words

import (
	"errors"
	"strconv"
	"strings"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/fairing"
	"shedreckoner/calc/film"
	"shedreckoner/calc/job"
	"shedreckoner/calc/order"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Sentence says what is wrong and what to type, for the error of a field. It
// is the one place where errors become words for people.
func Sentence(err error, field *job.Field, units job.Units) string {
	var (
		read    *unit.ReadError
		outside *job.RangeError
		shape   *surface.Error
		ruled   *working.RangeError
		thick   *plan.CoatTooThickError
		thinner *plan.ThinnerError
		pack    *order.PackError
		whole   *job.WholeError
		words   *job.WordsError
		cups    *cure.CupsError
		door    *order.RoundUpError
		waits   *plan.WaitsError
		cell    *fairing.CellError
	)
	switch {
	case errors.As(err, &cell): // before what it holds: that doesn't know which reading it is
		return gridSentence(err, units)
	case errors.As(err, &read):
		return readSentence(read, field, units)
	case errors.As(err, &outside):
		return rangeSentence(outside, units)
	case errors.As(err, &whole):
		return "Type a whole number."
	case errors.As(err, &words):
		return "That is too long. Keep it under " + unit.Number(float64(words.Most), 4) + " letters."
	case errors.As(err, &shape):
		return shapeSentence(shape, field, units)
	case errors.As(err, &thick):
		return thickSentence(thick, units)
	case errors.As(err, &thinner):
		return thinnerSentence(thinner)
	case errors.As(err, &pack):
		return packSentence(pack)
	case errors.As(err, &cups):
		return "What stays behind in cup and tool (" + unit.Write(float64(cups.Leftover), unit.InGram, 3) + ") leaves nothing of the card's largest batch (" +
			unit.Write(float64(cups.Largest), unit.InGram, 3) + "). Type a larger batch on the card, or choose another method."
	case errors.As(err, &waits):
		return "Waits for " + heldBy(&waits.LeftOut) + "."
	case errors.As(err, &door):
		return "That is more than can be bought. Check the sizes of the surfaces."
	case errors.As(err, &ruled):
		return "This leads to a figure outside what can be worked out (" + ruled.Arg.Meaning + ", " +
			unit.Number(ruled.Arg.Min, 4) + " to " + unit.WithUnit(unit.Number(ruled.Arg.Max, 4), ruled.Arg.Scale) + "). Check the figures of this step and of its card."
	}
	if text := fairingSentence(err, units); text != "" {
		return text
	}
	if text := rareSentence(err); text != "" {
		return text
	}
	if text, known := plainSentences[err]; known {
		return text
	}
	return "Nothing can be worked out from this as it stands. Check the figures of this step and of its card."
}

// rareSentence is Sentence for what hardly any builder meets.
func rareSentence(err error) string {
	var (
		option  *job.OptionError
		limit   *job.LimitError
		step    *buildup.StepError
		uneven  *buildup.TooUnevenError
		gap     *fairing.GapError
		reading *fairing.ReadingError
		cost    *fairing.CostError
		price   *fairing.PriceError
		flow    *film.FlowError
		profile *film.ProfileError
		none    *sanding.NoSequenceError
		jump    *sanding.Jump
		model   *order.ModelError
		entry   *order.LogError
	)
	switch {
	case errors.As(err, &option):
		return "There is no such answer here. Choose one of those that are offered."
	case errors.As(err, &limit):
		return "A job holds at most " + strconv.Itoa(limit.List.Max) + " of these. Remove some, or start another job."
	case errors.As(err, &step):
		return stepSentence(step)
	case errors.As(err, &uneven):
		return "More film doesn't help here, a more even one does: its unevenness must come under " + unit.Write(float64(uneven.Below), unit.InPercent, 2) + "."
	case errors.As(err, &gap):
		return "Type how far apart the readings are: 1 mm to 20 m."
	case errors.As(err, &reading):
		return CellName(reading.Row, reading.Column) + " is further than a straight-edge ever stands off: at most 500 mm."
	case errors.As(err, &cost):
		return "Type what cutting costs against filling: more than zero."
	case errors.As(err, &price):
		return "Type a price for every part, none below zero."
	case errors.As(err, &flow):
		return "These two flow times don't say how much thinner it takes. Time it again, with more thinner in the second."
	case errors.As(err, &profile):
		return "No film is printed for so deep a profile. Type one up to 300 µm."
	case errors.As(err, &none):
		return "No usual grade stands between " + none.From.String() + " and " + none.To.String() + ". Type the grades one by one."
	case errors.As(err, &jump):
		return "From " + jump.From.String() + " to " + jump.To.String() + " is a wide step. Put a grade in between."
	case errors.As(err, &model):
		return "The chance can't be worked out from these figures. Check the sizes of the surfaces, and losses on the cards."
	case errors.As(err, &entry):
		return "Nothing can be learned from this entry. Check what was used and what was planned."
	}
	return ""
}

func stepSentence(e *buildup.StepError) string {
	switch e.Cause {
	case buildup.TooManySteps:
		return "A build-up has at most " + strconv.Itoa(buildup.MaxSteps) + " steps. Remove some."
	case buildup.TooManyRounds:
		return "A step is done at most " + strconv.Itoa(buildup.MaxRounds) + " times. Type fewer rounds."
	}
	return "The film of this step can't be worked out. Check what it adds and takes, and the steps before it."
}

var plainSentences = map[error]string{
	plan.ErrNoCard:      "Choose a material.",
	plan.ErrMissing:     "Type a figure.",
	plan.ErrWrong:       "This material can't be used for this step. Choose another.",
	plan.ErrNoThinner:   "This material takes no thinner. Empty the field.",
	order.ErrUnfinished: "The chance is still being worked out.",
	plan.ErrNotSprayed:  "The card has no cured share for this method. Choose another method, or type the share on the card.",
}

func readSentence(e *unit.ReadError, field *job.Field, units job.Units) string {
	example := exampleFor(field, units)
	switch e.Cause {
	case unit.TwoReadings:
		return e.Text + " can be read two ways. Type " + e.Readings[0] + " or " + e.Readings[1] + "."
	case unit.WhichUnit:
		return "Which one? Type " + either(e.Readings) + "."
	case unit.UnknownUnit:
		return "That unit isn't known. These are: " + strings.Join(e.Readings, ", ") + "."
	case unit.OtherUnit:
		return "That unit doesn't fit here. These do: " + strings.Join(e.Readings, ", ") + "."
	case unit.TooLong:
		return "That has more digits than any real figure. Type it again."
	case unit.MixedCompound:
		return "The parts don't fit together. Type it like " + example + "."
	}
	return "That isn't a number. Type it like " + example + "."
}

func either(list []string) string { return strings.Join(list, " or ") }

// exampleFor gives an answer that the field would take.
func exampleFor(field *job.Field, units job.Units) string {
	if field == nil {
		return "12.5"
	}
	switch {
	case field.Kind == job.Money:
		return "49.90"
	case field.Kind == job.Size:
		return "2.5 or 750 g"
	case field.Kind == job.Whole:
		return "3"
	case field.Measure == unit.Sizes:
		return "450 mm or 2 ft 6 in"
	case field.Measure == unit.NoMeasure:
		return "12.5"
	}
	n := "1.5"
	switch field.Measure {
	case unit.Films:
		n = "400"
		if units.Scale(field.Measure) != unit.InMicrometre {
			n = "16"
		}
	case unit.Percents:
		n = "5"
	case unit.Temperatures:
		n = "25"
	}
	scale := units.Scale(field.Measure)
	if at, err := strconv.ParseFloat(n, 64); err == nil && field.Max > field.Min && (scale.SI(at) < field.Min || scale.SI(at) > field.Max) {
		n = unit.Number(scale.From((field.Min+field.Max)/2), 2)
	}
	return n + " " + scale.Symbol()
}

func rangeSentence(e *job.RangeError, units job.Units) string {
	what := "That is too large."
	switch {
	case e.Field.Min > 0 && e.Value <= 0:
		what = "This must be more than zero."
	case e.Value < e.Field.Min:
		what = "That is too small."
	}
	return what + " Type a figure from " + shown(e.Field.Min, e.Field, units) + " to " + shown(e.Field.Max, e.Field, units) + "." +
		slipWords(e.Field.Measure, e.Value)
}

// slipWords names the slips that would explain a refused figure.
func slipWords(m unit.Measure, value float64) string {
	words := ""
	band, slips := plan.Slips(m, value)
	for _, s := range slips {
		words += " If that was " + s.Slip.Key + ", it is " + unit.Write(s.Value, band.Scale, 3) + "."
	}
	return words
}

func shown(si float64, f *job.Field, units job.Units) string {
	scale := unit.InPure
	if f != nil && f.Measure != unit.NoMeasure {
		scale = units.Scale(f.Measure)
	}
	return unit.Write(si, scale, 3)
}

func filmText[Q unit.Quantity](f Q, units job.Units) string {
	return unit.Write(float64(f), units.Scale(unit.Films), 3)
}

func thickSentence(e *plan.CoatTooThickError, units job.Units) string {
	text := "A coat of " + filmText(e.Each, units) + " wet is over the card's largest" + limitWords[e.Limit] + ", " + filmText(e.Most, units) + ". "
	if e.Coats > 0 {
		return text + "Type at least " + unit.Number(float64(e.Coats), 3) + " coats, or leave the field empty."
	}
	return text + "Type a thinner film for each coat, and more coats." + slipWords(unit.Films, float64(e.Each))
}

// limitWords say for what a card's largest wet film in one coat holds.
var limitWords = [...]string{plan.MostFlat: "", plan.MostRolled: " for a roller or brush", plan.MostWall: " on a wall", plan.MostOverhead: " overhead"}

func thinnerSentence(e *plan.ThinnerError) string {
	base := " by volume"
	if e.ByMass {
		base = " by mass"
	}
	with := ""
	if e.WithWax {
		with = " with the wax solution"
	}
	return "Thinner comes to " + unit.Write(float64(e.Share), unit.InPercent, 3) + base + with + ", over the card's limit of " +
		unit.Write(float64(e.Limit), unit.InPercent, 3) + base + ". Type less."
}

func packSentence(e *order.PackError) string {
	switch e.Cause {
	case order.NoPacks:
		return "No pack size is sold here. Type one on the card, or say there that one is sold."
	case order.TooManyPacks:
		return "That takes more than a thousand packs. Type a larger pack size on the card."
	case order.TooManySizes:
		return "At most six pack sizes can be compared."
	}
	return "The packs can't be chosen. Check their sizes and prices on the card."
}
