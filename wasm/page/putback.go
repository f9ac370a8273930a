package page

import (
	"maps"

	"shedreckoner/wasm/words"
)

// changed is what stood before another job was taken up.
type changed struct {
	job  Slot
	away map[string]string
}

// putBack takes the job before up again: the store had no room to put it away.
func putBack(s *State) []Effect {
	now := s.Away
	s.Own, s.Away, s.before = s.before.job, s.before.away, nil
	planAnew(s)
	s.Notice = words.NoRoomForJob
	var effects []Effect
	for key := range now {
		if _, was := s.Away[key]; !was {
			effects = append(effects, Effect{Kind: Revoke, Key: key})
		}
	}
	return effects
}

// heardAway hears that another tab has put a job away or taken one away.
func heardAway(s *State, key, text string) {
	s.Away = maps.Clone(s.Away)
	if s.Away == nil {
		s.Away = map[string]string{}
	}
	if text == "" {
		delete(s.Away, key)
		return
	}
	s.Away[key] = text
}
