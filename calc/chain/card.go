package chain

import (
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// OnCard gives a figure of a card, with the card's name and the figure's mark.
func OnCard[Q unit.Quantity](c *job.Card, s material.Spec[Q], name string, scale unit.Scale) working.Figure[Q] {
	return working.Given(s.Value, name, scale, c.Name, s.Mark)
}

// OfMethod gives a figure of a method, with the method's name and the figure's
// mark.
func OfMethod[Q unit.Quantity](m *material.Method, s material.Spec[Q], name string, scale unit.Scale) working.Figure[Q] {
	return working.Given(s.Value, name, scale, m.Name, s.Mark)
}

// DensityOf gives a card's density as sold.
func DensityOf(c *job.Card) working.Figure[unit.Density] {
	return OnCard(c, c.Density, "density", unit.InKilogramPerLitre)
}
