package page

import (
	"shedreckoner/calc/chance"
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
