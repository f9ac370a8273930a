package cure_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"shedreckoner/calc/cure"
)

// Product and surface may want doses half a point apart, no more: at 28.1 °C the
// table has 1.345 %, 0.505 points under the 1.85 % of a surface of 20 °C.
func TestHalfAPointApartIsTheLimit(t *testing.T) {
	c := cup(t, 200, 20)
	for at, holds := range map[float64]bool{27.9: true, 28: true, 28.1: false} {
		c.Shed.Product = celsius(at)
		_, err := c.Dose()
		if holds {
			require.NoError(t, err, at)
		} else {
			refused[*cure.SteepError](t, err)
		}
	}
}
