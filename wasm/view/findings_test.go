package view_test

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/buildup"
	"shedreckoner/wasm/view"
)

var finding = regexp.MustCompile(`<p class="(bad|ask|hint)">(Stop|Check|Note): `)

// What a check has to say bears the word and the colour of how firmly it stands, a stop first: one that looks like a note is
// read over.
func TestAFindingSaysHowFirmlyItStands(t *testing.T) {
	class := map[string]string{"Stop": "bad", "Check": "ask", "Note": "hint"}
	of := map[buildup.Severity]string{buildup.Refuse: "Stop", buildup.Ask: "Check", buildup.Note: "Note"}
	seen := map[string]int{}
	for _, ground := range []string{"paint", "epoxy", "polyester", "polystyrene"} {
		s := do(fairState(t), "set", "surface.1.ground", ground)
		b := s.Plan.Buildups()[0]
		want := map[string]int{}
		for _, f := range append(b.Findings(), b.Budgets()[0].Findings...) {
			want[of[f.Severity]]++
		}
		html := regionOf(t, view.Page(do(s, "sheet", "buildup.1.points", "")).String(), "rests-buildup.1")
		got := map[string]int{}
		for _, m := range finding.FindAllStringSubmatch(html, -1) {
			assert.Equal(t, class[m[2]], m[1], m[2])
			got[m[2]]++
			seen[m[2]]++
		}
		require.Equal(t, want, got, ground)
	}
	assert.Len(t, seen, 3, "all three were met")
}
