package material_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
)

// How far off a plan may be, as the project's table of defaults has it: all of
// it assumed, but for the share of filler sanded off, which is common practice.
func TestSpreadsAreThoseOfTheTable(t *testing.T) {
	for by, cv := range map[string]float64{"tape": 0.03, "girths": 0.04, "drawing": 0.05, "paced": 0.10, "formula": 0.15} {
		assert.Equal(t, cv, float64(material.AreaCV[by].Value), by)
		assert.Equal(t, source.Assumption, material.AreaCV[by].Mark, by)
	}
	for _, m := range material.Methods {
		want := 0.15
		if m.IsSpray {
			want = 0.30
		}
		assert.Equal(t, want, float64(m.LossSD().Value), m.Name)
		assert.LessOrEqual(t, float64(m.MeanCV.Value), float64(m.FilmCV.Value), "%s: the mean of a job strays less than its points", m.Name)
	}
	assert.Equal(t, 0.25, float64(material.LossFiller.Value))
	assert.Equal(t, 0.20, float64(material.SurfaceSD.Value))
	assert.Equal(t, 0.35, float64(material.CupSD.Value), "one cup says less than a whole surface")
	assert.Equal(t, 0.35, float64(material.SandedOffSD.Value))
	assert.Equal(t, source.CommonPractice, material.SandedOffSD.Mark)
}
