package page

import (
	"shedreckoner/calc/chance"
)

// Sureness is how far the page has come with finding out how sure the order is.
// The simulation goes on in slices, so that keys are answered meanwhile.
type Sureness struct {
	Run   *chance.Simulation // nil: not begun; shared by states, which is safe since it only goes on
	Done  bool               // its order has taken the plan's place
	Err   error              // it can't be had
	order *chance.Order      // that it is of, or that it came to
}

// sliceWork is the multiplications of one slice: a few milliseconds of a slow phone.
const sliceWork = 60_000

// confident asks for time to find out how sure the order is, once it is looked at.
func confident(s *State, effects []Effect) []Effect {
	if s.Screen != "order" || s.Working || s.Sure.Run != nil || !asksHowSure(s) {
		return effects
	}
	s.Working = true
	return append(effects, Effect{Kind: Later})
}

// asksHowSure says if it is to be found out how sure the order is.
func asksHowSure(s *State) bool {
	return s.Screen == "order" && s.Sure.Err == nil && len(s.Order().Lines) > 0
}

// work begins, or does the next slice, and asks for one more, until all is done.
func work(s *State, _ Message) []Effect {
	s.Working = false
	switch {
	case s.Sure.Done:
		return nil
	case s.Sure.Run != nil:
		if s.Sure.Run.Step(sliceWork) {
			assured(s)
			return nil
		}
	case !asksHowSure(s):
		return nil
	default:
		if simulate(s); s.Sure.Err != nil {
			return nil
		}
	}
	s.Working = true
	return []Effect{{Kind: Later}}
}

// assured puts the finished simulation's order in the plan's place.
func assured(s *State) {
	o := s.Sure.Run.Order()
	s.Sure.order, s.Sure.Done = &o, true
}

// simulate begins.
func simulate(s *State) {
	s.Sure.order = s.Order()
	s.Sure.Run, s.Sure.Err = chance.Simulate(&s.Plan, *s.Sure.order)
}

// finished does what is left of the simulation at once: a list that leaves the
// page is bought for its chance.
func finished(s *State) {
	if s.Sure.Run == nil && asksHowSure(s) {
		simulate(s)
	}
	if s.Sure.Run == nil || s.Sure.Done {
		return
	}
	for !s.Sure.Run.Step(sliceWork) {
	}
	assured(s)
}
