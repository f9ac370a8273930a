package plan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
)

// Every form of a step has its row in the plan and no row is without a form;
// what a new step starts with is text that its own fields take.
func TestEveryKindOfStepHasItsRow(t *testing.T) {
	assert.Len(t, plan.Kinds, len(job.StepKinds))
	for _, form := range job.StepKinds {
		kind := plan.KindOf(form)
		assert.Equal(t, form.Key, kind.Key)
		for _, fresh := range kind.Fresh {
			assert.Contains(t, form.Fields, fresh.Path, form.Key)
			_, err := job.FieldAt("buildup.1.step.1."+fresh.Path).Read(fresh.Text, job.Units{})
			assert.NoError(t, err, "%s: %s", form.Key, fresh.Path)
		}
	}
}
