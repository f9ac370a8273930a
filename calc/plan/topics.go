package plan

import (
	"strconv"
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

// Checks says how often a topic's rule is checked, by kind: "16 published
// table, 10 reference library"; empty: by nothing.
// Source: testdata/published, counted.
func Checks(topic, rule int) string {
	var words []string
	lines := strings.Split(strings.TrimSpace(checked), "\n")
	for i, count := range strings.Split(strings.Fields(lines[topic])[rule], ",") {
		if n, err := strconv.Atoi(count); err == nil && n > 0 {
			words = append(words, count+" "+source.Checks[i])
		}
	}
	return strings.Join(words, ", ")
}
