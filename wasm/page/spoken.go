package page

import (
	"slices"

	"shedreckoner/wasm/words"
)

// Settled is the key of what is read out only when nothing else was to be said
// for a while: a dose changes with every key.
const Settled = "settled"

// spoken has what the step at hand acts on read out where it changed: one line,
// once what is typed has settled. It is taken back at once when the dose goes.
// What happened to a cup says more than that its dose is gone.
func spoken(s *State, effects []Effect) []Effect {
	text := ""
	switch {
	case s.Screen != "cup":
	case showsStep(s):
		text = stepText(s)
	case s.Spoken != "":
		text = behind
	}
	if text == s.Spoken {
		return effects
	}
	s.Spoken = text
	if text == behind {
		text = ""
	}
	if slices.ContainsFunc(effects, func(e Effect) bool { return e.Kind == Say }) {
		return effects
	}
	if text == "" && s.Screen == "cup" && showsStep(s) {
		text = words.NoDose + "."
	}
	return append(effects, Effect{Kind: Say, Key: Settled, Text: s.Local(text)})
}

// behind stands for a dose that a sheet has covered: what has become of it is said
// once it is in sight again.
const behind = "covered"

// showsStep reports whether on the Cup's screen a step is in sight: no sheet of anything else
// covers it.
func showsStep(s *State) bool {
	return !s.IsCovered() || slices.Contains(cupStepSheets, s.Sheet())
}

// stepText is what the step that is shown acts on, in one line; empty where there is nothing to act on.
func stepText(s *State) string {
	cup, may := s.DoseFor()
	if !may || cup == "" && s.NextWaits() {
		return ""
	}
	b := s.Bench()
	if s.Sheet() == WeighSheet {
		return words.SayWeigh(b.Weigh)
	}
	if p := s.PourFor(cup); p != nil && !b.IsRatio {
		return words.SayPour(p, s.Sheet() == CatalystSheet)
	}
	if s.Sheet() == WeighTestSheet || b.IsRatio && len(b.Weigh) == 0 {
		return ""
	}
	return words.SayParts(b.Weigh)
}

// inWords is read out once a cup's clock runs.
func inWords(s *State, cup string) string {
	t := s.TimesOf(cup)
	switch {
	case t.IsTest:
		return words.TestIsIn
	case t.Usable > 0:
		return words.CatalystIsIn(s.HourAfter(cup, t.Usable))
	}
	return words.CatalystIsIn("")
}
