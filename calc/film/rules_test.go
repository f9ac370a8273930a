package film_test

import (
	"testing"

	"shedreckoner/calc/film"
	"shedreckoner/calc/working/workingtest"
)

func TestFormulasAndCodeAgree(t *testing.T) { workingtest.Check(t, film.Rules...) }
