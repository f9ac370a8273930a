package words

import (
	"strconv"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
)

// OfJobs writes a chance as people count: "95 of 100 such jobs".
func OfJobs(chance unit.Share) string { return Percent(chance) + " of 100 such jobs" }

// Percent writes a chance in hundredths, never up to a certainty that isn't.
func Percent(chance unit.Share) string {
	n := int(float64(chance)*100 + 0.5)
	if n == 100 && chance < 1 {
		n = 99
	}
	return strconv.Itoa(n)
}

// causes are what an amount may be off by, short enough for a bar, and how to be
// surer of each.
var causes = map[chance.CauseKind]struct{ name, advice string }{
	chance.AreaCause:      {"Area", "Measure it better, and the range gets narrower."},
	chance.FilmCause:      {"Film", "Read a wet-film comb as you go: it keeps the film, and so the need, to plan."},
	chance.LossCause:      {"Losses", "Weigh what the first cups really take, and order the rest by that."},
	chance.SandedOffCause: {"Share sanded off", "Skim thinner, and use a guide coat before you fill again: less is sanded off."},
	chance.UseCause:       {"Used per area", "Note how far the first tin goes."},
	chance.LearntCause:    {"What your log leaves open", "Log more finished work: every entry narrows it."},
}

// Cause names what an amount may be off by, with the method only where there are
// several of the kind.
func Cause(c chance.Cause, isOnly bool) string {
	name := causes[c.Kind].name
	switch {
	case c.Kind == chance.AreaCause:
		surface := c.Surface.Name
		if surface == "" {
			surface = lower(UnnamedSurface)
		}
		return name + " of " + surface
	case c.Method != nil && !isOnly:
		return name + ", " + ShortMethod(c.Method.Name)
	}
	return name
}

// Advice says how to be surer of a cause.
func Advice(c chance.Cause) string {
	text := causes[c.Kind].advice
	if c.Kind == chance.AreaCause {
		text = "This area was measured " + job.OptionName(job.MeasuredBy, c.Surface.By) + ". " + text
	}
	return text
}
