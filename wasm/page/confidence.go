package page

import (
	"strconv"

	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// Sureness is how far the page has come with finding out how sure the order is.
// The simulation goes on in slices, so that keys are answered meanwhile.
type Sureness struct {
	Run  *plan.Simulation // nil: not begun
	Done bool             // its order has taken the plan's place
	Err  error            // it can't be had
}

// sliceWork is the multiplications of one slice: a few milliseconds of a slow phone.
const sliceWork = 200_000

// confident begins to find out how sure the order is once it is looked at.
func (s State) confident(effects []Effect) (State, []Effect) {
	if s.Screen != "order" || s.Sure.Run != nil || s.Sure.Err != nil || len(s.Plan.Order.Lines) == 0 {
		return s, effects
	}
	s.Sure.Run, s.Sure.Err = s.Plan.Simulate()
	if s.Sure.Err != nil || s.Working {
		return s, effects
	}
	s.Working = true
	return s, append(effects, Effect{Kind: Later})
}

// work does the next slice and asks for one more, until all is done.
func work(s State, _ Message) (State, []Effect) {
	s.Working = false
	if s.Sure.Run == nil || s.Sure.Done {
		return s, nil
	}
	if s.Sure.Run.Step(sliceWork) {
		return s.assured(), nil
	}
	s.Working = true
	return s, []Effect{{Kind: Later}}
}

// assured puts the finished simulation's order in the plan's place.
func (s State) assured() State {
	s.Plan.Order, s.Sure.Done = s.Sure.Run.Order(), true
	return s
}

// finished does what is left of the simulation at once: a list that leaves the
// page is bought for its chance.
func (s State) finished() State {
	s, _ = s.confident(nil)
	if s.Sure.Run == nil || s.Sure.Done {
		return s
	}
	for !s.Sure.Run.Step(sliceWork) {
	}
	return s.assured()
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

// CauseWords names what an amount may be off by.
func CauseWords(c plan.Cause) string {
	switch c.Kind {
	case plan.AreaCause:
		name := c.Surface.Name
		if name == "" {
			name = "a surface without a name"
		}
		return "Area of " + name + ", measured " + measuredBy(c.Surface.By)
	case plan.FilmCause:
		return "Film, " + c.Method.Name + ", " + c.Card.Name
	case plan.LossCause:
		return "Losses, " + c.Method.Name + ", " + c.Card.Name
	case plan.SandedOffCause:
		return "Sanded off again, " + c.Card.Name
	}
	return "Used per area, " + c.Card.Name
}

// Advice says how to be surer of a cause.
func Advice(c plan.Cause) string {
	switch c.Kind {
	case plan.AreaCause:
		return "Measure " + c.Surface.Name + " again, better, and the range gets narrower."
	case plan.FilmCause:
		return "Read a wet-film comb as you go: it holds the film, and so the need."
	case plan.LossCause:
		return "Log your cups: what your hand really takes replaces this guess."
	case plan.SandedOffCause:
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
