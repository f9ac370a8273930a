package buildup

import (
	"math"

	"shedreckoner/calc/unit"
)

// Near is what would do in place of a wet film, all coats together: a number of
// equal coats of it; or, where no number of coats will do, the nearest films below
// and above for which one does. A zero film: there is none.
type Near struct {
	Coats        int
	Below, Above unit.WetFilm
	BelowCoats   int
	AboveCoats   int
}

// near looks for the fewest equal coats of a film that are each between the least
// and the most of a coat; a most of zero is no limit.
func near(all, least, most unit.WetFilm) Near {
	const slack = unit.WetFilm(unit.Micrometre)
	if most > 0 && most < least {
		return Near{}
	}
	n := 1
	if most > 0 {
		n = int(math.Max(1, math.Ceil(float64((all-slack)/most))))
	}
	if all >= unit.WetFilm(n)*(least-slack) {
		return Near{Coats: n}
	}
	return Near{Below: unit.WetFilm(n-1) * most, BelowCoats: n - 1, Above: unit.WetFilm(n) * least, AboveCoats: n}
}
