package plan_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/working"
)

// Jobs over every field and shape, in metric, US and mixed units, some of them
// half unreadable: whatever comes, a plan is made, and every figure in it is one.
func TestAnyJobHasAPlan(t *testing.T) {
	planned := 0
	for seed := range jobtest.Enough(t, 150, &planned, 40) {
		r := jobtest.New(seed)
		if seed%4 == 0 {
			r.Junk, r.Empty = 0.2, 0.3
		}
		p := plan.Make(r.Document())
		sane(t, seed, p)
		if len(chance.OrderOf(&p).Lines) > 0 {
			planned++
		}
	}
}

// sane checks that no figure is below nothing, endless, or not a number.
func sane(t *testing.T, seed uint64, p plan.Plan) {
	t.Helper()
	check := func(name string, step *working.Step) {
		if step == nil {
			return
		}
		require.False(t, math.IsNaN(step.Out) || math.IsInf(step.Out, 0) || step.Out < 0, "seed %d: %s = %v", seed, name, step.Out)
		for _, text := range step.Texts() {
			require.NotContains(t, text.Numbers+text.Result, "NaN", "seed %d: %s", seed, name)
		}
	}
	check("area", p.Area().Step)
	check("kept", p.Kept().Step)
	for _, b := range p.Buildups() {
		check(b.Path, b.Left.Step)
		for _, s := range b.Steps {
			for _, u := range s.Used {
				check(s.Path+" "+u.Name, u.Mass.Step)
				check(s.Path+" "+u.Name, u.Volume.Step)
				check(s.Path+" "+u.Name, u.Pieces.Step)
				check(s.Path+" "+u.Name, u.Length.Step)
			}
		}
	}
	for _, l := range chance.OrderOf(&p).Lines {
		check("order "+l.Card.Key, l.Why())
		require.False(t, l.Need.IsNegative() || l.ToBuy.IsNegative() || l.Bought.Cost.IsNegative(), "seed %d: %s", seed, l.Card.Key)
		if l.Err == nil && !l.ToBuy.IsZero() {
			require.False(t, l.Bought.Bought.LessThan(l.ToBuy), "seed %d: %s: %s bought of %s", seed, l.Card.Key, l.Bought.Bought, l.ToBuy)
		}
	}
	for _, list := range [][]job.Problem{p.Refused(), p.Waiting()} {
		for _, problem := range list {
			require.NotEmpty(t, problem.Path, "seed %d: %v", seed, problem.Err)
			require.Error(t, problem.Err)
		}
	}
}

// The same job gives the same plan, in any order of its lines.
func TestAPlanDependsOnNothingElse(t *testing.T) {
	for seed := range uint64(20) {
		d := jobtest.New(seed).Document()
		var backwards job.Document
		lines := d.Lines()
		for i := len(lines) - 1; i >= 0; i-- {
			backwards = backwards.Set(lines[i].Path, lines[i].Text)
		}
		assert.Equal(t, orderOf(d).Cost.String(), orderOf(backwards).Cost.String())
		assert.Equal(t, len(made(d).Refused()), len(made(backwards).Refused()))
	}
}

// The unit that a job is shown in changes no figure of it.
func TestUnitsChangeNoPlan(t *testing.T) {
	for seed := range uint64(20) {
		d := jobtest.New(seed).Document()
		metric, us := plan.Make(job.SetSystem(d, false)), plan.Make(job.SetSystem(d, true))
		require.Equal(t, len(metric.Refused()), len(us.Refused()), "seed %d", seed)
		assert.Equal(t, metric.Area().Value, us.Area().Value)
		assert.Equal(t, metric.Kept().Value, us.Kept().Value)
		require.Len(t, chance.OrderOf(&us).Lines, len(chance.OrderOf(&metric).Lines))
		for i, l := range chance.OrderOf(&metric).Lines {
			assert.True(t, l.Need.Equal(chance.OrderOf(&us).Lines[i].Need), "seed %d: %s", seed, l.Card.Key)
		}
	}
}

func FuzzMake(f *testing.F) {
	f.Add(uint64(1), "surface.1.length", "4 m")
	f.Add(uint64(2), "buildup.1.step.1.film", "1e9")
	f.Fuzz(func(t *testing.T, seed uint64, path, text string) {
		sane(t, seed, plan.Make(jobtest.New(seed%64).Document().Set(path, text)))
	})
}

func orderOf(d job.Document) chance.Order {
	p := plan.Make(d)
	return chance.OrderOf(&p)
}

func made(d job.Document) *plan.Plan {
	p := plan.Make(d)
	return &p
}
