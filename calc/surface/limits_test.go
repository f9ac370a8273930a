package surface

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

// 200 stations or corners are measured, one more is refused, and the limit named.
func TestRowsAreBounded(t *testing.T) {
	stations := func(n int) Input {
		return Input{Lengths: lengths(L{"length": 10}), Rows: slices.Repeat(rows([]string{"girth"}, []float64{2}), n)}
	}
	m, err := girths.Measure(stations(200))
	assert.NoError(t, err)
	near(t, 20, float64(m.Area.Value), "2 m of girth over 10 m")
	_, err = girths.Measure(stations(201))
	assert.Equal(t, limit("stations", TooMany, 200), err)

	// A comb of 99 teeth, a metre wide: two corners each, and two for its back.
	comb := func(n int) (list [][]float64) {
		for i := range n - 2 {
			list = append(list, []float64{float64(i) / float64(n-3), 0.5 + 0.5*float64(i%2)})
		}
		return append(list, []float64{1, 0}, []float64{0, 0})
	}
	_, err = polygon.Measure(Input{Rows: rows([]string{"x", "y"}, comb(200)...)})
	assert.NoError(t, err)
	_, err = polygon.Measure(Input{Rows: rows([]string{"x", "y"}, comb(201)...)})
	assert.Equal(t, limit("corners", TooMany, 200), err)
}
