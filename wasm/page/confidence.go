package page

import (
	"strconv"
	"strings"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
)

// Sureness is how far the page has come with finding out how sure the order is.
// The simulation goes on in slices, so that keys are answered meanwhile.
type Sureness struct {
	Run  *chance.Simulation // nil: not begun; shared by states, which is safe since it only goes on
	Done bool               // its order has taken the plan's place
	Err  error              // it can't be had
}

// sliceWork is the multiplications of one slice: a few milliseconds of a slow phone.
const sliceWork = 60_000

// confident begins to find out how sure the order is once it is looked at.
func (s *State) confident(effects []Effect) []Effect {
	if s.Screen != "order" || s.Sure.Run != nil || s.Sure.Err != nil || len(s.Order().Lines) == 0 {
		return effects
	}
	s.Sure.Run, s.Sure.Err = chance.Simulate(&s.Plan, *s.Order())
	if s.Sure.Err != nil || s.Working {
		return effects
	}
	s.Working = true
	return append(effects, Effect{Kind: Later})
}

// work does the next slice and asks for one more, until all is done.
func work(s *State, _ Message) []Effect {
	s.Working = false
	if s.Sure.Run == nil || s.Sure.Done {
		return nil
	}
	if s.Sure.Run.Step(sliceWork) {
		s.assured()
		return nil
	}
	s.Working = true
	return []Effect{{Kind: Later}}
}

// assured puts the finished simulation's order in the plan's place.
func (s *State) assured() {
	o := s.Sure.Run.Order()
	s.order, s.Sure.Done = func() *chance.Order { return &o }, true
}

// finished does what is left of the simulation at once: a list that leaves the
// page is bought for its chance.
func (s *State) finished() {
	s.confident(nil)
	if s.Sure.Run == nil || s.Sure.Done {
		return
	}
	for !s.Sure.Run.Step(sliceWork) {
	}
	s.assured()
}

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

// CauseWords names what an amount may be off by, short enough for a bar: with
// the method only where there are several of the kind.
func CauseWords(c chance.Cause, isOnly bool) string {
	words := causeWords[c.Kind]
	switch {
	case c.Kind == chance.AreaCause:
		return words + " of " + surfaceName(c)
	case c.Method != nil && !isOnly:
		return words + ", " + shortName(c.Method)
	}
	return words
}

var causeWords = map[chance.CauseKind]string{
	chance.AreaCause: "Area", chance.FilmCause: "Film", chance.LossCause: "Losses", chance.SandedOffCause: "Share sanded off", chance.UseCause: "Used per area",
	chance.LearntCause: "What your log left open",
}

func surfaceName(c chance.Cause) string {
	if c.Surface.Name == "" {
		return "a surface without a name"
	}
	return c.Surface.Name
}

// shortName is a method's name without what it is for.
func shortName(m *material.Method) string {
	name, _, _ := strings.Cut(m.Name, ",")
	return name
}

// Advice says how to be surer of a cause.
func Advice(c chance.Cause) string {
	switch c.Kind {
	case chance.AreaCause:
		return "This area was measured " + measuredBy(c.Surface.By) + ". Measure it better, and the range gets narrower."
	case chance.FilmCause:
		return "Read a wet-film comb as you go: it holds the film, and so the need."
	case chance.LossCause:
		return "Weigh what the first cups really take, and order the rest by that."
	case chance.LearntCause:
		return "Log more finished work: every entry narrows it."
	case chance.SandedOffCause:
		return "Skim thinner and scribble before you fill again: less is sanded off."
	}
	return "Note how far the first tin goes."
}

func measuredBy(key string) string {
	for _, o := range job.MeasuredBy {
		if o.Key == key {
			return o.Name
		}
	}
	return ""
}
