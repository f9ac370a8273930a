package calc

import (
	"strings"

	"shedreckoner/calc/air"
	"shedreckoner/calc/bench"
	"shedreckoner/calc/buildup"
	"shedreckoner/calc/chance"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/fairing"
	"shedreckoner/calc/film"
	"shedreckoner/calc/order"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/source"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/working"
)

// Topic is a package of sums with its rules, which are listed when they are asked for.
type Topic struct {
	Package string // "film"
	Name    string // "films and coverage"
	Rules   func() []*working.Rule
}

// Topics is every package that has rules, in the order of the work.
var Topics = []Topic{
	{"surface", "areas and edges", surface.Rules},
	{"fairing", "filler and putty", fairing.Rules},
	{"film", "films and coverage", film.Rules},
	{"cure", "catalyst, gel time and cups", cure.Rules},
	{"sanding", "sanding and polishing", sanding.Rules},
	{"buildup", "the film budget", buildup.Rules},
	{"air", "dew, the day and vapour", air.Rules},
	{"order", "packs, confidence and learning", order.Rules},
	{"plan", "the job as a whole", plan.Rules},
	{"bench", "the cup on the bench", bench.Rules},
	{"schedule", "waits on the calendar", schedule.Rules},
	{"chance", "stock, and what the log teaches", chance.Rules},
}

// Counts is how often each rule is checked: a line a topic, a word a rule, in the
// order of Topics. A word has a letter for each kind of check, a for the first of
// source.CheckKinds, followed by the number of rows: "a1b18"; "-" is none.
type Counts string

// NoneOutside is written where no check of a rule is from outside the project.
const NoneOutside = "nothing from outside"

// Of says how often a topic's rule is checked, by kind, what is from outside the
// project first: "from outside: published table × 16; besides: worked here × 2".
// Source: testdata/published, counted into Checked.
func (c Counts) Of(topic, rule int) string {
	outside, besides := c.kinds(topic, rule)
	text := NoneOutside
	if len(outside) > 0 {
		text = "from outside: " + strings.Join(outside, ", ")
	}
	if len(besides) > 0 {
		text += "; besides: " + strings.Join(besides, ", ")
	}
	return text
}

func (c Counts) kinds(topic, rule int) (outside, besides []string) {
	lines := strings.Split(string(c), "\n")
	if topic >= len(lines) {
		return nil, nil
	}
	rules := strings.Fields(lines[topic])
	if rule >= len(rules) {
		return nil, nil
	}
	for i, kind := range source.CheckKinds {
		_, number, found := strings.Cut(rules[rule], string(rune('a'+i)))
		if !found {
			continue
		}
		said := kind + " × " + number[:len(number)-len(strings.TrimLeft(number, "0123456789"))]
		if i < source.OutsideKinds {
			outside = append(outside, said)
		} else {
			besides = append(besides, said)
		}
	}
	return outside, besides
}
