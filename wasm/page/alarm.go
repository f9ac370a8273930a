package page

import (
	"maps"
	"strconv"

	"shedreckoner/wasm/words"
)

// warnBefore is how long before the end of the usable time a cup warns.
const warnBefore = 60

// tick is the clock: it warns of cups about to run out, once for each stage.
func tick(s *State, m Message) []Effect {
	var effects []Effect
	for _, cup := range OpenCups(s.Doc(), Running) {
		t := s.TimesOf(cup)
		left, stage := t.Left, 0
		switch {
		case t.IsTest: // there is nothing to hurry for
		case left <= 0:
			stage = 2
		case left <= warnBefore:
			stage = 1
		}
		if key := warnKey(s, cup); stage > s.Warned[key] {
			warned(s, key, stage)
			inFront(s, cup)
			effects = append(effects, alarm(s, cup, stage)...)
		}
	}
	return effects
}

// warnKey tells a running cup from every other, the other job's too.
func warnKey(s *State, cup string) string {
	return strconv.FormatBool(s.InDemo) + " " + cup + " " + s.Doc().Get(cup+".in")
}

func warned(s *State, key string, stage int) {
	next := maps.Clone(s.Warned)
	if next == nil {
		next = map[string]int{}
	}
	next[key] = stage
	s.Warned = next
}

func alarm(s *State, cup string, stage int) []Effect {
	card := cardName(s, s.Doc().Get(cup+".card"))
	text := words.OneMinuteLeft(card)
	if stage == 2 {
		text = words.TimeIsOver(card)
	}
	return []Effect{{Kind: Sound, Key: strconv.Itoa(stage)}, {Kind: Vibrate, Key: strconv.Itoa(stage)}, {Kind: Say, Text: text}}
}
