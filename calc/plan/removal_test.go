package plan_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
)

// A removal waits for each figure of its own way, and for none of another's: taken
// without one it would be worked out from nothing.
func TestAnOwnRemovalWaitsForItsFigures(t *testing.T) {
	figures := map[string]string{"before": "100 g", "after": "98 g", "area": "0.01 m²", "scale-step": "0.1 g",
		"read-before": "500 µm", "read-after": "440 µm", "gauge-step": "5 µm", "takes": "30 µm"}
	for way, needs := range map[string][]string{
		job.Weighed: {"before", "after", "area", "scale-step"}, job.Gauged: {"read-before", "read-after", "gauge-step"}, job.Directly: {"takes"},
	} {
		d := document(t, gelCoated, "removal = 1\nremoval.1.grade = P220\nremoval.1.way = "+way)
		for _, key := range needs {
			d = d.Set("removal.1."+key, figures[key])
		}
		waiting := func(d job.Document) (keys []string) {
			p := plan.Make(d)
			p.Buildups()
			for _, w := range p.Waiting() {
				if key, isRemoval := strings.CutPrefix(w.Path, "removal.1."); isRemoval {
					keys = append(keys, key)
				}
			}
			return keys
		}
		assert.Empty(t, waiting(d), way)
		p := plan.Make(d)
		without := plan.Make(document(t, gelCoated))
		assert.NotEqual(t, without.Buildups()[0].Steps[1].Taken.Value, p.Buildups()[0].Steps[1].Taken.Value, "%s: with all of them it counts", way)
		for _, key := range needs {
			assert.Contains(t, waiting(d.Set("removal.1."+key, "")), key, way)
		}
	}
}
