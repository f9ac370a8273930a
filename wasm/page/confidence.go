package page

import (
	"shedreckoner/calc/chance"
)

// Confidence is how far the simulation has come that says how likely the order is
// enough. It goes on in slices, so that keys are answered meanwhile.
type Confidence struct {
	Run   *chance.Simulation // nil: not begun; shared by states, which is safe since it only goes on
	Done  bool               // its order has taken the plan's place
	Err   error              // it can't be had
	order *chance.Order      // that it is of, or that it came to
}

// sliceWork is the multiplications of one slice: a few milliseconds of a slow phone.
const sliceWork = 60_000

// confident asks for time to simulate the order, once it is looked at.
func confident(s *State, effects []Effect) []Effect {
	if s.Screen != "order" || s.Working || s.Confidence.Run != nil || !asksConfidence(s) {
		return effects
	}
	s.Working = true
	return append(effects, Effect{Kind: Later})
}

// asksConfidence reports whether the order is to be simulated.
func asksConfidence(s *State) bool {
	return s.Screen == "order" && s.Confidence.Err == nil && len(s.Order().Lines) > 0
}

// work begins, or does the next slice, and asks for one more, until all is done.
func work(s *State, _ Message) []Effect {
	s.Working = false
	switch {
	case s.Confidence.Done:
		return nil
	case s.Confidence.Run != nil:
		if s.Confidence.Run.Step(sliceWork) {
			assured(s)
			return nil
		}
	case !asksConfidence(s):
		return nil
	default:
		if simulate(s); s.Confidence.Err != nil {
			return nil
		}
	}
	s.Working = true
	return []Effect{{Kind: Later}}
}

// assured puts the finished simulation's order in the plan's place.
func assured(s *State) {
	o := s.Confidence.Run.Order()
	s.Confidence.order, s.Confidence.Done = &o, true
}

// simulate begins.
func simulate(s *State) {
	s.Confidence.order = s.Order()
	s.Confidence.Run, s.Confidence.Err = chance.Simulate(&s.Plan, *s.Confidence.order)
}

// finished does what is left of the simulation at once: a list that leaves the
// page gives what is to be bought for its chance.
func finished(s *State) {
	if s.Confidence.Run == nil && asksConfidence(s) {
		simulate(s)
	}
	if s.Confidence.Run == nil || s.Confidence.Done {
		return
	}
	for !s.Confidence.Run.Step(sliceWork) {
	}
	assured(s)
}
