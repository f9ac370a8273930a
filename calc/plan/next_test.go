package plan_test

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// A plan made after another is the plan made from nothing, whatever was changed
// between: what is taken over could not have come out otherwise.
func TestTheNextPlanIsTheSameAsOneFromNothing(t *testing.T) {
	for seed := range uint64(12) {
		r := jobtest.New(seed)
		r.Junk = 0.05
		d := r.Document()
		p := plan.Make(d)
		for n := range 60 {
			d = changed(r, d)
			p = p.Next(d)
			require.True(t, reflect.DeepEqual(plan.Make(d), p), "seed %d, change %d", seed, n)
		}
	}
}

// changed makes one change as the page can make it.
func changed(r *jobtest.Random, d job.Document) job.Document {
	lines := d.Lines()
	path := lines[r.IntN(len(lines))].Path
	item, _ := job.Split(path)
	switch r.IntN(12) {
	case 0:
		return d.Set(path, "")
	case 1:
		d, _ = d.Copy(item)
		return d
	case 2:
		return d.Remove(item)
	case 3:
		return d.Move(item, r.IntN(5)-2)
	case 4:
		m := unit.Chosen[r.IntN(len(unit.Chosen))]
		return job.SetUnit(d, m, m.Scales()[r.IntN(len(m.Scales()))])
	case 5:
		return job.SetComma(d, !job.HasComma(d))
	case 6: // a question answered
		if p := plan.Make(d); len(p.Asks) > 0 {
			ask := p.Asks[r.IntN(len(p.Asks))]
			return d.Set(job.Real(ask.Path), ask.Text)
		}
		return d
	case 7:
		return r.Document()
	}
	if f := job.FieldAt(path); f != nil {
		return d.Set(path, r.Text(f))
	}
	return d
}
