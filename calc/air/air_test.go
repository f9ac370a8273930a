package air_test

import (
	"testing"

	"shedreckoner/calc/air"
	"shedreckoner/calc/working/workingtest"
)

func TestFormulaAndCodeAgree(t *testing.T) { workingtest.Check(t, air.Rules()...) }
