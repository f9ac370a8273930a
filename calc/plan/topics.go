package plan

import (
	"strings"

	"shedreckoner/calc/air"
	"shedreckoner/calc/buildup"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/fairing"
	"shedreckoner/calc/film"
	"shedreckoner/calc/order"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/source"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/working"
)

// Topic is a package of sums with its rules.
type Topic struct {
	Room  string // "film"
	Name  string // "films and coverage"
	Rules []*working.Rule
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
	{"plan", "the job as a whole", Rules},
}

// Counts is how often each rule is checked: a line a topic, a word a rule, in
// the order of Topics, with numbers in the order of source.Checks.
type Counts string

// Of says how often a topic's rule is checked, by kind: "published table × 16,
// reference library × 10"; empty: by nothing.
// Source: testdata/published, counted into Checked.
func (c Counts) Of(topic, rule int) string {
	lines := strings.Split(string(c), "\n")
	if topic >= len(lines) {
		return ""
	}
	rules := strings.Fields(lines[topic])
	if rule >= len(rules) {
		return ""
	}
	var words []string
	for i, count := range strings.Split(rules[rule], ",") {
		if count != "0" {
			words = append(words, source.Checks[i]+" × "+count)
		}
	}
	return strings.Join(words, ", ")
}
