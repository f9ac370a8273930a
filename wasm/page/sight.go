package page

import (
	"maps"
	"slices"

	"shedreckoner/calc/job"
)

// Sight is what is in front of the eyes: the screen, the sheets over it, what is
// open in them.
type Sight struct {
	Screen       string
	Trail        []string          // the screens before, the latest last: Back goes there
	Sheets       []string          // what lies open over the screen, the uppermost last
	Open         map[string]string // list → the item that is open in it
	Covers       bool              // a sheet hides its screen, as on a phone
	Why          string            // the figure whose working is open
	WholeWorking bool              // all steps of that working are shown, not the last alone
	Cell         string            // the cell of a grid that was typed in last
}

func (s *Sight) raise(key string) {
	below := s.Sheets
	if i := slices.Index(below, key); i >= 0 {
		below = below[:i]
	}
	s.Sheets = append(below[:len(below):len(below)], key)
	s.Why = ""
}

// Sheet gives the key of the uppermost sheet; "" where none lies open.
func (s *Sight) Sheet() string {
	if n := len(s.Sheets); n > 0 {
		return s.Sheets[n-1]
	}
	return ""
}

// IsCovered reports whether nobody sees the screen for the sheet that lies over it.
func (s *Sight) IsCovered() bool { return s.Covers && len(s.Sheets) > 0 }

// leave notes the screen that is left, so that Back finds it again, each once.
func (s *Sight) leave(to string) {
	trail := slices.DeleteFunc(slices.Clone(s.Trail), func(key string) bool { return key == to || key == s.Screen })
	s.Trail = append(trail, s.Screen)
	s.Trail = s.Trail[max(0, len(s.Trail)-maxTrail):]
}

// IsOpen reports whether the item is the open one of its list.
func (s *Sight) IsOpen(item string) bool {
	list, _ := job.Split(item)
	return s.Open[list] == item
}

// ScreenName gives the name of the screen that is shown.
func (s *Sight) ScreenName() string {
	for _, screen := range Screens {
		if screen.Key == s.Screen {
			return screen.Name
		}
	}
	return ""
}

// opened opens the item in its list, or shuts it if it was open.
func (s *Sight) opened(item string) {
	list, _ := job.Split(item)
	s.Open = maps.Clone(s.Open)
	if s.Open == nil {
		s.Open = map[string]string{}
	}
	s.Open[list] = item
}
