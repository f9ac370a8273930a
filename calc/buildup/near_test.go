package buildup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/unit"
)

const um1 = unit.WetFilm(unit.Micrometre)

// oneCoat checks a number of coats of one film, between a least and a most.
func oneCoat(t *testing.T, n int, each, least, most unit.WetFilm) *buildup.Finding {
	t.Helper()
	layer := buildup.Layer{Material: buildup.TwoPack, Wet: each * um1, Coats: n, WetLeast: least * um1, WetMost: most * um1}
	for _, f := range buildup.Check(buildup.Base{Ground: -1}, []buildup.Step{{Kind: buildup.Coat, Layer: layer}}) {
		if f.Rule == buildup.WetFilm {
			return &f
		}
	}
	return nil
}

// Where no number of coats holds a film, the nearest on both sides are named,
// and each of them holds.
func TestNearestFilmsOnBothSidesOfAGap(t *testing.T) {
	for _, c := range []struct {
		name              string
		n                 int
		each, least, most unit.WetFilm
		want              buildup.Near
	}{
		{"between one coat and two", 2, 250, 300, 410, buildup.Near{Below: 410, BelowCoats: 1, Above: 600, AboveCoats: 2}},
		{"the same laid in one", 1, 500, 300, 410, buildup.Near{Below: 410, BelowCoats: 1, Above: 600, AboveCoats: 2}},
		{"between two and three", 3, 280, 300, 410, buildup.Near{Below: 820, BelowCoats: 2, Above: 900, AboveCoats: 3}},
		{"under the least of all", 1, 250, 300, 410, buildup.Near{Above: 300, AboveCoats: 1}},
		{"one coat would hold it", 2, 200, 300, 410, buildup.Near{Coats: 1}},
		{"three would", 1, 1200, 300, 410, buildup.Near{Coats: 3}},
		{"a card that nothing holds on", 1, 500, 450, 410, buildup.Near{}},
	} {
		f := oneCoat(t, c.n, c.each, c.least, c.most)
		require.NotNil(t, f, c.name)
		assert.Equal(t, buildup.Refuse, f.Severity, c.name)
		assert.Equal(t, c.want.Coats, f.Near.Coats, c.name)
		assert.InDelta(t, float64(c.want.Below*um1), float64(f.Near.Below), 1e-9, c.name)
		assert.InDelta(t, float64(c.want.Above*um1), float64(f.Near.Above), 1e-9, c.name)
		assert.Equal(t, [2]int{c.want.BelowCoats, c.want.AboveCoats}, [2]int{f.Near.BelowCoats, f.Near.AboveCoats}, c.name)
		for _, holds := range []struct {
			film  unit.WetFilm
			coats int
		}{{f.Near.Below, f.Near.BelowCoats}, {f.Near.Above, f.Near.AboveCoats}, {c.each * um1 * unit.WetFilm(c.n), f.Near.Coats}} {
			if holds.film > 0 && holds.coats > 0 {
				assert.Nil(t, oneCoat(t, holds.coats, holds.film/um1/unit.WetFilm(holds.coats), c.least, c.most), c.name)
			}
		}
	}
}

// From the least up every film has a number of coats wherever the least is at
// most half of the most.
func TestNoGapWhereTheLeastIsHalfOfTheMost(t *testing.T) {
	for film := unit.WetFilm(200); film <= 5000; film++ {
		f := oneCoat(t, 1, film, 200, 400)
		assert.True(t, f == nil || f.Near.Coats > 1, "%g µm", float64(film))
	}
}
