package words

import (
	"errors"
	"strconv"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/order"
	"shedreckoner/calc/unit"
)

// What is said of what the log teaches.
const (
	LessonTaken     = "In use: the order and what is left now go by it."
	LessonForgotten = "Forgotten: the plan goes by its own figures again."
)

// EntryDoesntTeach says why an entry of the log, a cup or a piece of finished work,
// isn't learned from, and what to do.
func EntryDoesntTeach(err error, isCup bool) string {
	var refused *order.LogError
	switch {
	case errors.As(err, &refused) && refused.Cause == order.ThinFilm:
		return "Less was used than the film alone needs: that is a thin film, not a low loss. Read a wet-film comb, type it at the step, and this counts."
	case errors.As(err, &refused) && refused.Cause == order.Unlikely:
		return "Used and planned are more than five times apart: more likely a wrong unit than your hand. Check what was used."
	case errors.Is(err, chance.ErrNoUse) && isCup:
		return "Not learned from: no catalyst went into it."
	case errors.Is(err, chance.ErrLeftOpen) && isCup:
		return "Not learned from yet: type what was left over."
	case errors.Is(err, chance.ErrNoUse):
		return "Not learned from: no cup was mixed for this step. Type what was put on."
	case errors.Is(err, chance.ErrLeftOpen):
		return "Not learned from yet: type what was left over of its cups that gelled or were left open."
	case errors.Is(err, chance.ErrUnlikely):
		return "Not learned from until you say that it is right."
	case errors.Is(err, chance.ErrNoPlanned) && isCup:
		return "Not learned from: what this area should have taken isn't known."
	case errors.Is(err, chance.ErrNoPlanned):
		return "Not learned from: nothing was planned when it was logged."
	}
	return "Not learned from: its figures can't be right."
}

// What the log teaches.
const (
	ColumnShare      = "catalyst by mass"
	ColumnProductAt  = "product at"
	ColumnSurfaceAt  = "surface at"
	ColumnAirAt      = "air at"
	ColumnEarlyGel   = "early gel"
	ColumnPerArea    = "planned per area"
	ColumnEnd        = "how it ended"
	ColumnFault      = "what went wrong"
	SurfaceGone      = "a removed surface"
	StepGone         = "a removed step"
	UsedOverPlanned  = "Used ÷ planned, before"
	EntryDoesntCount = "entry doesn't count yet: open it to see why."
	EntriesDontCount = "entries don't count yet: open them to see why."
	UseLesson        = "Use it"
	ForgetIt         = "Forget it"
)

// AfterEntries labels what the log says after so many entries.
func AfterEntries(n int) string { return "After " + Counted(n, "entry", "entries") }

// LikelyNext says what the next work will take, low and high, as a multiple of the plan.
func LikelyNext(likely [2]unit.Factor) string {
	return "The next work is likely to take " + unit.Number(float64(likely[0]), 2) + " to " + unit.Number(float64(likely[1]), 2) + " times what is planned."
}

// TakenOver says which lesson the order goes by.
func TakenOver(factor string, entries int) string {
	return "In use: " + factor + ", from " + Counted(entries, "entry", "entries") + ". The order and what is left go by it."
}

// UsedOver is an entry's use against its plan.
func UsedOver(ratio string) string { return "Used ÷ planned: " + ratio + "." }

// StepOf names a step by its build-up, its place there from 1 and its work.
func StepOf(buildup string, place int, work string) string {
	return buildup + ", step " + strconv.Itoa(place) + ": " + work
}
