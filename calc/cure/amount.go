package cure

import (
	"github.com/shopspring/decimal"

	"shedreckoner/calc/unit"
)

// Grams is a mass as it is weighed out, exact to the last digit shown. Grams and
// Millilitres are separate types that can't stand for each other: 1 mL of catalyst
// weighs 1.1–1.2 g, and a wall chart that counts 1 mL as 1 g is wrong by that much.
type Grams struct{ n decimal.Decimal }

// Millilitres is a volume as it is measured out, exact to the last digit shown.
type Millilitres struct{ n decimal.Decimal }

// Number is the count of grams.
func (g Grams) Number() decimal.Decimal { return g.n }

// Number is the count of millilitres.
func (m Millilitres) Number() decimal.Decimal { return m.n }

// Mass is the same as a quantity.
func (g Grams) Mass() unit.Mass { return unit.Of[unit.Mass](g.n.InexactFloat64(), unit.InGram) }

// Volume is the same as a quantity.
func (m Millilitres) Volume() unit.Volume {
	return unit.Of[unit.Volume](m.n.InexactFloat64(), unit.InMillilitre)
}

// String writes it with its unit, so that it can't be misread.
func (g Grams) String() string { return written(g.n, unit.InGram) }

// String writes it with its unit, so that it can't be misread.
func (m Millilitres) String() string { return written(m.n, unit.InMillilitre) }

func written(n decimal.Decimal, s unit.Scale) string {
	return unit.WithUnit(unit.Group(unit.Plain(n.String())), s)
}

// The decimal places to which a computed float is rounded on its way into a
// decimal: far finer than any tool, and coarse enough to drop the noise in the last
// bits.
const (
	gramPlaces    = 5
	sharePlaces   = 9
	densityPlaces = 5
)

// gramsOf takes a mass to a decimal count of grams. The mass must be finite.
func gramsOf(m unit.Mass) decimal.Decimal {
	return decimal.NewFromFloat(unit.InGram.From(float64(m))).Round(gramPlaces)
}

func shareOf(c unit.ByMass) decimal.Decimal {
	return decimal.NewFromFloat(float64(c)).Round(sharePlaces)
}

// gramsPerMillilitre takes a density to a decimal count of grams in a millilitre.
func gramsPerMillilitre(rho unit.Density) decimal.Decimal {
	return decimal.NewFromFloat(unit.InKilogramPerLitre.From(float64(rho))).Round(densityPlaces)
}
