package job_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/job"
)

// Every field gives no number beside its refusal, whatever it refuses: for what comes after would
// reckon with it.
func TestNoNumberStandsBesideARefusal(t *testing.T) {
	refused := map[job.Kind]int{}
	everyField(func(path string, _ *job.List, f *job.Field) {
		for _, text := range []string{"", "twelve", "1,500", "-7", "1e5", "99999999", "1.5", "5 kg", "3 cubits", "25:10", "24:30", "P410", "4:0"} {
			for _, units := range []job.Units{{}, {Comma: true}} {
				if n, err := f.Read(text, units); err != nil {
					refused[f.Kind]++
					assert.Zero(t, n, "%s: %q", path, text)
				}
			}
		}
	})
	for _, kind := range []job.Kind{job.Quantity, job.MassOrVolume, job.Whole, job.Money, job.Size, job.Clock, job.Choice, job.Checked} {
		assert.Positive(t, refused[kind], "kind %d", kind)
	}
}
