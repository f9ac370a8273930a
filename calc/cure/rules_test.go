package cure_test

import (
	"testing"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/working/workingtest"
)

func TestFormulasAndCodeAgree(t *testing.T) { workingtest.Check(t, cure.Rules()...) }
