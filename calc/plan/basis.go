package plan

import (
	"github.com/shopspring/decimal"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
)

// BasisScale is what a material's need is counted in.
func BasisScale(c *job.Card) unit.Scale {
	switch c.SoldBy {
	case material.ByMass:
		return unit.InKilogram
	case material.ByVolume, material.BySet:
		return unit.InLitre
	case material.ByLength:
		return unit.InMetre
	}
	return unit.InPure
}

// InBasis converts a typed size to the card's basis, exactly where both have one
// dimension, by the card's density where they don't; zero where neither is
// possible.
func InBasis(c *job.Card, size job.PackSize) decimal.Decimal {
	to := BasisScale(c)
	if size.Scale == unit.NoScale || size.Scale == to {
		return size.Amount
	}
	si := size.Amount.Mul(decimal.NewFromFloat(size.Scale.SI(1)))
	density := decimal.NewFromFloat(float64(c.Density.Value))
	switch {
	case size.Scale.Dimension() == to.Dimension():
	case size.Scale.Dimension() == unit.VolumeDim && to.Dimension() == unit.MassDim:
		si = si.Mul(density)
	case size.Scale.Dimension() == unit.MassDim && to.Dimension() == unit.VolumeDim && density.IsPositive():
		si = si.Div(density)
	default:
		return decimal.Zero
	}
	return si.Div(decimal.NewFromFloat(to.SI(1)))
}
