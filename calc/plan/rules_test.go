package plan_test

import (
	"testing"

	"shedreckoner/calc/plan"
	"shedreckoner/calc/working/workingtest"
)

func TestFormulasAndCodeAgree(t *testing.T) { workingtest.Check(t, plan.Rules()...) }
