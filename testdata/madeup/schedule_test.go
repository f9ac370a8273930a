package schedule_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// oiled is a job with the made-up kind of step between a waxed flow coat and the
// next coat.
func oiled(t *testing.T, steps string) job.Document {
	return jobtest.Doc(t, topside, still("20 °C"), "buildup.1.step.5.kind = oil\nbuildup.1.step.5.card = compound").Set("buildup.1.step", steps)
}

// A kind of step that is neither sanding nor washing keys no ground for the next
// coat: the sequence says so with it as without it.
func TestAMadeUpStepIsNoSanding(t *testing.T) {
	wanting := func(steps string) (list []buildup.Finding) {
		p := plan.Make(oiled(t, steps))
		for _, f := range p.Buildups()[0].Findings() {
			if f.Step == len(p.Buildups()[0].Steps)-1 {
				f.Step = 0
				list = append(list, f.Finding)
			}
		}
		return list
	}
	assert.Equal(t, wanting("1 3"), wanting("1 5 3"), "oiled, and still not sanded")
	assert.Equal(t, wanting("1 2 3"), wanting("1 2 5 3"), "sanded and oiled")
	assert.NotEqual(t, wanting("1 2 3"), wanting("1 3"), "sanding does make a difference")
}

// The film that it takes is a point of the budget.
func TestAMadeUpStepTakesItsFilm(t *testing.T) {
	p := plan.Make(oiled(t, "1 5"))
	b := &p.Buildups()[0]
	require.Len(t, b.Budgets(), 1)
	flat := b.Budgets()[0].Flat
	require.Len(t, flat, 2)
	assert.Equal(t, 1, flat[1].Step)
	assert.InDelta(t, 3e-6, float64(flat[0].Mean.Value-flat[1].Mean.Value), 1e-12)
	assert.InDelta(t, 3e-6, float64(flat[0].Mean.Value)-float64(b.Left.Value), 1e-12)
}

// By hand: 9 m² at 10 minutes each are 1.5 h, begun once its 2 h are over.
func TestAMadeUpStepIsOnTheCalendar(t *testing.T) {
	_, s := scheduled(t, oiled(t, "1 5").Set("buildup.1.step.5.wait", "2 h"), 10*h)
	require.Empty(t, s.Stopped)
	require.Len(t, s.Works, 3, "the coat, the oil, the launch")
	work := s.Works[1]
	assert.Equal(t, "oil", work.Step.Kind.Key)
	assert.Equal(t, plan.OtherWork, work.Kind)
	assert.InDelta(t, 90, float64((work.To-work.From)/unit.Minute), 1e-6)
	assert.InDelta(t, float64(s.Works[0].To+2*h), float64(work.From), 1)
}
