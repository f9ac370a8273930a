package words

import (
	"strconv"

	"shedreckoner/calc/air"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/unit"
)

// Work names what is to be done.
func Work(w *schedule.Work) string {
	of := ""
	if w.Of > 1 {
		of = " " + strconv.Itoa(w.Which) + " of " + strconv.Itoa(w.Of)
	}
	switch w.Kind {
	case plan.LayCoat:
		return layer(w, "coat", of)
	case plan.LayFiller:
		return layer(w, "pass", of)
	case plan.PolishLayer:
		return "Polish"
	case plan.Launch:
		return "May be launched"
	case plan.OtherWork:
		return w.Step.Job.Kind.Name
	}
	if w.Step.Fill != nil {
		return "Board the filler"
	}
	return "Sand"
}

// layer names what is put on by its material, and which of several it is.
func layer(w *schedule.Work, what, of string) string {
	switch {
	case w.Step.Card == nil:
		return Capital(what + of)
	case of == "":
		return Capital(ShortName(w.Step.Card))
	}
	return Capital(ShortName(w.Step.Card) + ", " + what + of)
}

// WorkNotes says what there is to heed of a work.
func WorkNotes(w *schedule.Work, today string) []string {
	var notes []string
	if w.NeedsKey {
		text := "Sand a key first: this ground is always sanded before the next layer."
		if w.Closed != 0 {
			text = "Outside its window, which ended " + dayAndHour(w.Closed, today) + ": sand a key first."
		}
		notes = append(notes, text)
	}
	if w.IsLong {
		notes = append(notes, "More than one day's hours allow: split the surface where an edge hides it, or get a second pair of hands.")
	}
	switch off := w.Masking.Off; {
	case w.Masking.IsLate:
		notes = append(notes, MaskAfresh)
	case off > 0 && w.Masking.IsLast:
		notes = append(notes, MaskingOff(dayAndHour(off, today), w.Masking.IsHot))
	}
	if isClose := w.BeginBy-w.From < 2*unit.Hour; w.StopBy > 0 && (isClose || len(w.Closing) > 0) {
		notes = append(notes, "Begin by "+clockOf(w.BeginBy)+", stop at "+clockOf(w.StopBy)+": "+closing(w.Closing)+".")
	}
	return notes
}

// closing says what ends the hours that are fit to coat.
func closing(list []air.Finding) string {
	for _, f := range list {
		switch f.Condition {
		case air.TooNearDew:
			return "dew comes before it has cured"
		case air.TooCold:
			return "it gets too cold before it has cured"
		case air.TooHot:
			return "the surface gets too hot"
		case air.TooDamp:
			return "the air gets too damp"
		case air.TooDry:
			return "the air gets too dry"
		}
	}
	return "dark, or the end of the working day"
}

// ScheduleStop says why a build-up doesn't come to its end.
func ScheduleStop(err error) string {
	switch err {
	case schedule.ErrNeverCures:
		return "At these temperatures the layer below never cures: warm the shed."
	case schedule.ErrNoWindow:
		return "On a day like this no working hour is fit for the material: Cup says why."
	case schedule.ErrTooLong:
		return "The calendar ends here: there is more work than it holds."
	}
	return "The day's figures don't fit together."
}

// WorkHours writes from when to when a work goes on: "10:00–12:30", with the days
// between where it ends on another; of the launch only from when.
func WorkHours(w *schedule.Work) string {
	if w.Kind == plan.Launch {
		return "From " + clockOf(w.From)
	}
	to := clockOf(w.To)
	if days := w.LastDay() - w.Day(); days > 0 {
		to += " (" + Counted(days, "day", "days") + " on)"
	}
	return clockOf(w.From) + "–" + to
}

// What the calendar of the rest says of itself.
const (
	WhenTheRest       = "When can the rest be done?"
	ScheduleWaits     = "Shown once today's air is typed on Cup: low, high, a reading of temperature and humidity."
	NothingToSchedule = "Nothing is left to do, or nothing is measured yet."
	DaysLikeToday     = "Every day is taken to be like today, with one pair of hands. Waits are the card's at 20 °C, twice as long at 10 °C, 0.6 of it at 30 °C; under 10 °C nothing cures. " +
		"Common practice: the maker's sheet and a thumbnail test overrule it."
)
