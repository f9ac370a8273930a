package plan_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
)

// A temperature more than 15 °C from the last cup's is asked about, up and down:
// it may be a slip of unit. Product and surface are each asked by themselves; what
// isn't typed, or was confirmed, isn't.
func TestAJumpOfTemperatureIsAsked(t *testing.T) {
	for lines, want := range map[string]string{
		"surface-temp = 35.1 | surface-was = 20":                                      "surface-temp",
		"surface-temp = 35 | surface-was = 20":                                        "",
		"surface-temp = 4.9 | surface-was = 20":                                       "surface-temp",
		"surface-temp = 5 | surface-was = 20":                                         "",
		"product-temp = 36 | product-was = 20":                                        "product-temp",
		"product-temp = 36 | product-was = 20 | surface-temp = 40 | surface-was = 20": "product-temp surface-temp",
		"product-temp = 36 | surface-temp = 40 | surface-was = 20":                    "surface-temp",
		"product-temp = 22 | product-was = 20 | surface-temp = 40 | surface-was = 20": "surface-temp",
		"surface-temp = 40": "",
		"surface-was = 20":  "",
		"surface-temp = 40 | surface-was = 20 | product-temp = 20 | product-was = 21":         "surface-temp",
		"surface-temp = 40 | surface-was = 20 | product-temp = 36 | product-was = 20 | real!": "",
	} {
		d := jobtest.Doc(t, "bench.now.card = gelcoat")
		for line := range strings.SplitSeq(lines, " | ") {
			if key, text, typed := strings.Cut(line, " = "); typed {
				d = d.Set(job.BenchPath+"."+key, text)
				continue
			}
			for _, key := range []string{"product-temp", "surface-temp"} {
				d = d.Set(job.Real(job.BenchPath+"."+key), d.Get(job.BenchPath+"."+key))
			}
		}
		p := plan.Make(d)
		var asked []string
		for _, ask := range p.Asks() {
			if key, isBench := strings.CutPrefix(ask.Path, job.BenchPath+"."); isBench && strings.HasSuffix(key, "-temp") {
				asked = append(asked, key)
			}
		}
		assert.Equal(t, want, strings.Join(asked, " "), lines)
	}
}
