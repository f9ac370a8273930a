package cure_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"shedreckoner/calc/cure"
)

// The doses for product and surface may be half a point apart, no more: at 28.1 °C
// the table has 1.345 %, 0.505 points under the 1.85 % of a surface of 20 °C.
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

// Product and surface are each checked against the card's limits by their own
// reading: a cold surface isn't passed for a warm product, nor a warm surface for a
// cold product, and the one at fault is named.
func TestEachTemperatureIsCheckedByItself(t *testing.T) {
	limits := cure.Limits{Coldest: celsius(15).Value, Warmest: celsius(30).Value}
	for _, c := range []struct {
		product, surface float64
		at               cure.Reading
		is               float64
	}{{20, 14, cure.Surface, 14}, {14, 20, cure.Product, 14}, {28, 31, cure.Surface, 31}, {31, 28, cure.Product, 31}} {
		s := cure.Shed{Product: celsius(c.product), Surface: celsius(c.surface), ColdestAhead: celsius(20).Value}
		fault := refused[*cure.TemperatureError](t, s.Check(limits))
		require.Equal(t, c.at, fault.Of)
		require.InDelta(t, float64(celsius(c.is).Value), float64(fault.Value), 1e-9)
	}
	require.NoError(t, cure.Shed{Product: celsius(20), Surface: celsius(18), ColdestAhead: celsius(16).Value}.Check(limits))
}
