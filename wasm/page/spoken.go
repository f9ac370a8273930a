package page

import (
	"slices"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/unit"
)

// Settled is the key of what is read out only when nothing else was to be said
// for a while: a dose changes with every key.
const Settled = "settled"

// spoken has the dose that is shown read out where it changed: one line, once
// what is typed has settled. It is taken back at once when the dose goes. What
// happened to a cup says more than that its dose is gone.
func (s *State) spoken(effects []Effect) []Effect {
	text := ""
	if s.Screen == "cup" {
		text = s.doseText()
	}
	if text == s.Spoken {
		return effects
	}
	s.Spoken = text
	if slices.ContainsFunc(effects, func(e Effect) bool { return e.Kind == Say }) {
		return effects
	}
	if text == "" && s.Screen == "cup" {
		text = "No dose."
	}
	return append(effects, Effect{Kind: Say, Key: Settled, Text: s.Local(text)})
}

// doseText is the dose that is shown, in one line; empty where there is none.
func (s *State) doseText() string {
	cup, may := s.DoseFor()
	if !may || cup == "" && s.NextWaits() {
		return ""
	}
	b := s.Bench()
	if b.HasDose {
		return "Catalyst " + b.Dose.Grams.String() + ", " + b.Dose.Millilitres.String() + "."
	}
	return "Part A " + partText(b.Parts.A) + ", part B " + partText(b.Parts.B) + "."
}

func partText(p cure.Amount) string {
	if p.Mass.Step != nil {
		return unit.Write(float64(p.Mass.Value), unit.InGram, 4)
	}
	return unit.Write(float64(p.Volume.Value), unit.InMillilitre, 4)
}
