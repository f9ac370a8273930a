package words

import (
	"shedreckoner/calc/bench"
	"shedreckoner/calc/unit"
)

// SayWeigh reads out what goes into the cup, as the scale shows it.
func SayWeigh(lines []bench.Line) string {
	text := ""
	for _, l := range lines {
		if l.Part == bench.PartB {
			continue
		}
		card := ""
		if l.Card != nil {
			card = l.Card.Name
		}
		if text != "" {
			text += ", "
		}
		text += PartName(l.Part, card) + " to " + l.Shows.String()
	}
	if text == "" {
		return ""
	}
	return "Weigh: " + text + "."
}

// SayPour reads out the dose in both units; once it is poured, what the scale then shows.
func SayPour(p *bench.Pour, isPoured bool) string {
	text := "Catalyst "
	if isPoured {
		text = CatalystOnce + ": "
	}
	text += p.Amount.String()
	if p.Other.Scale != unit.NoScale {
		text += ", " + p.Other.String()
	}
	if isPoured && p.HasThen() {
		text += ", the scale then shows " + p.Then.Bare()
	}
	return text + "."
}

// SayParts reads out a fixed ratio's two parts.
func SayParts(lines []bench.Line) string {
	if len(lines) < 2 {
		return ""
	}
	first := "Part A "
	if lines[0].Part == bench.Resin {
		first = "Resin "
	}
	return first + lines[0].Own.String() + ", hardener " + lines[len(lines)-1].Own.String() + "."
}
