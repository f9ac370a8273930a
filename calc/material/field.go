package material

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// Field is one figure of a card as the page handles it: what it is called, how
// it is typed, the limits outside which it is refused, and where it lies.
type Field struct {
	Key, Name string
	Measure   unit.Measure
	Min, Max  float64 // SI; outside: refused
	at        func(*Card) handle
}

// Figure is a field's value on one card, in SI base units.
type Figure struct {
	Value, Low, High float64
	Mark             source.Mark
	Known            bool
}

type handle interface {
	get() Figure
	put(float64)
}

func (s *Spec[Q]) get() Figure {
	return Figure{float64(s.Value), float64(s.Low), float64(s.High), s.Mark, s.Known}
}

func (s *Spec[Q]) put(si float64) { s.Value, s.Mark, s.Known = Q(si), source.Typed, true }

// Of gives the field's figure on the card.
func (f *Field) Of(c *Card) Figure { return f.at(c).get() }

// Put writes the builder's own figure on the card.
func (f *Field) Put(c *Card, si float64) { f.at(c).put(si) }

// Shown says if the field belongs on the card: it ships with a figure, or with
// a place for one that must be typed.
func (f *Field) Shown(c *Card) bool {
	v := f.Of(c)
	return v.Known || v.High > 0
}

// Fields is every figure that a card can hold, in the order of the form.
var Fields = []*Field{
	{"density", "density", unit.Densities, 200, 3000, func(c *Card) handle { return &c.Density }},
	{"cured", "cured share of the wet film, rolled", unit.Percents, 0.05, 1, func(c *Card) handle { return &c.CuredRolled }},
	{"cured-sprayed", "cured share of the wet film, sprayed", unit.Percents, 0.05, 1, func(c *Card) handle { return &c.CuredSprayed }},
	{"cured-density", "density once cured", unit.Densities, 200, 3000, func(c *Card) handle { return &c.CuredDensity }},
	{"styrene", "styrene in the product, by mass", unit.Percents, 0, 1, func(c *Card) handle { return &c.Styrene }},
	{"coat-least", "least wet film in one coat", unit.Films, 1e-6, 5e-3, func(c *Card) handle { return &c.CoatLeast }},
	{"coat-ask", "wet film in one coat, asked about below", unit.Films, 1e-6, 5e-3, func(c *Card) handle { return &c.CoatAsk }},
	{"coat-most", "largest wet film in one coat", unit.Films, 1e-6, 5e-3, func(c *Card) handle { return &c.CoatMost }},
	{"coat-most-rolled", "the same, rolled or brushed", unit.Films, 1e-6, 5e-3, func(c *Card) handle { return &c.CoatMostRolled }},
	{"coat-most-wall", "the same, on a wall", unit.Films, 1e-6, 5e-3, func(c *Card) handle { return &c.CoatMostWall }},
	{"coat-most-overhead", "the same, overhead", unit.Films, 1e-6, 5e-3, func(c *Card) handle { return &c.CoatMostOverhead }},
	{"usual-film", "usual wet film, all coats together", unit.Films, 1e-6, 5e-3, func(c *Card) handle { return &c.UsualFilm }},
	{"pass", "wet film of one pass of the gun", unit.Films, 1e-6, 1e-3, func(c *Card) handle { return &c.Pass }},
	{"pass-most", "largest pass of filler", unit.Fills, 1e-4, 0.05, func(c *Card) handle { return &c.PassMost }},
	{"left-least", "least mean film left", unit.Films, 0, 5e-3, func(c *Card) handle { return &c.LeftLeast }},
	{"left-thinnest", "thinnest film left anywhere", unit.Films, 0, 5e-3, func(c *Card) handle { return &c.LeftThinnest }},
	{"left-most", "most film left", unit.Films, 1e-6, 5e-3, func(c *Card) handle { return &c.LeftMost }},
	{"thinner-ask", "thinner, asked about above", unit.Percents, 0, 0.5, func(c *Card) handle { return &c.ThinnerAsk }},
	{"thinner-most", "thinner, refused above", unit.Percents, 0, 0.5, func(c *Card) handle { return &c.ThinnerRefuse }},
	{"stays", "share that stays in the film", unit.Percents, 0, 1, func(c *Card) handle { return &c.Stays }},
	{"shrinks", "shrinkage of what stays", unit.Percents, 0, 1, func(c *Card) handle { return &c.Shrinks }},
	{"wax", "wax solution, by mass", unit.Percents, 0, 0.04, func(c *Card) handle { return &c.Wax }},
	{"hardener-share", "catalyst to order, by mass", unit.Percents, 0, 0.05, func(c *Card) handle { return &c.HardenerShare }},
	{"floor", "least catalyst, of all that cures", unit.Percents, 0.002, 0.05, func(c *Card) handle { return &c.Floor }},
	{"ceiling", "most catalyst, of the product alone", unit.Percents, 0.002, 0.05, func(c *Card) handle { return &c.Ceiling }},
	{"gel-time", "gel time or pot life, timed", unit.Minutes, float64(unit.Minute), float64(24 * unit.Hour), func(c *Card) handle { return &c.GelTime }},
	{"gel-at", "timed at", unit.Temperatures, 263.15, 323.15, func(c *Card) handle { return &c.GelAt }},
	{"gel-with", "timed with catalyst, by mass", unit.Percents, 0.002, 0.05, func(c *Card) handle { return &c.GelWith }},
	{"gel-order", "power of the catalyst", unit.Numbers, 0.2, 2, func(c *Card) handle { return &c.GelOrder }},
	{"gel-energy", "activation energy", unit.MolarEnergies, 20e3, 130e3, func(c *Card) handle { return &c.GelEnergy }},
	{"gel-mass", "timed in a cup of", unit.CupWeights, 0.005, 20, func(c *Card) handle { return &c.GelMass }},
	{"cure-hours", "hours until dew can't harm it", unit.Hours, float64(unit.Hour / 2), float64(48 * unit.Hour), func(c *Card) handle { return &c.CureHours }},
	{"pigment-ask", "pigment paste, asked about above", unit.Percents, 0, 0.2, func(c *Card) handle { return &c.PigmentAsk }},
	{"pigment-most", "pigment paste, refused above", unit.Percents, 0, 0.2, func(c *Card) handle { return &c.PigmentMost }},
	{"ratio-mass", "parts of resin to one of hardener, by mass", unit.Numbers, 0.1, 100, func(c *Card) handle { return &c.RatioByMass }},
	{"ratio-volume", "parts of resin to one of hardener, by volume", unit.Numbers, 0.1, 100, func(c *Card) handle { return &c.RatioByVolume }},
	{"sanded-off", "share sanded off again", unit.Percents, 0, 0.9, func(c *Card) handle { return &c.SandedOff }},
	{"takes", "least film that it takes", unit.Films, 0, 50e-6, func(c *Card) handle { return &c.Takes }},
	{"recoat-from", "earliest next coat, at 20 °C", unit.Hours, 0, float64(60 * unit.Day), func(c *Card) handle { return &c.RecoatFrom }},
	{"recoat-to", "latest next coat without sanding, at 20 °C", unit.Hours, float64(unit.Hour), float64(60 * unit.Day), func(c *Card) handle { return &c.RecoatTo }},
	{"sand-from", "earliest sanding, at 20 °C", unit.Hours, 0, float64(60 * unit.Day), func(c *Card) handle { return &c.SandFrom }},
	{"polish-from", "earliest polishing, at 20 °C", unit.Hours, 0, float64(60 * unit.Day), func(c *Card) handle { return &c.PolishFrom }},
	{"launch-from", "earliest launching, at 20 °C", unit.Days, 0, float64(60 * unit.Day), func(c *Card) handle { return &c.LaunchFrom }},
	{"used", "used per area", unit.AreaWeights, 0.001, 0.5, func(c *Card) handle { return &c.UsedPerArea }},
	{"spare", "bought for each one needed", unit.Numbers, 1, 3, func(c *Card) handle { return &c.Spare }},
	{"each-cup", "pieces for each cup mixed", unit.Numbers, 0, 10, func(c *Card) handle { return &c.EachCup }},
	{"each-snaps", "pieces for each cup of polyester", unit.Numbers, 0, 10, func(c *Card) handle { return &c.EachPolyesterCup }},
	{"each-spell", "pieces for each spell with one wet tool", unit.Numbers, 0, 10, func(c *Card) handle { return &c.EachSpell }},
	{"each-hour", "pieces for each hour of wet sanding", unit.Numbers, 0, 10, func(c *Card) handle { return &c.EachHour }},
	{"lasts", "hours of work that one lasts", unit.Hours, float64(unit.Hour / 2), float64(1000 * unit.Hour), func(c *Card) handle { return &c.Lasts }},
	{"on-filler", "pieces for a square metre of filler", unit.Numbers, 0.01, 50, func(c *Card) handle { return &c.OnFiller }},
	{"on-film", "pieces for a square metre of film, each time", unit.Numbers, 0.01, 50, func(c *Card) handle { return &c.OnFilm }},
	{"wash", "for hands, brush or knife, each spell", unit.Volumes, 0, float64(5 * unit.Litre), func(c *Card) handle { return &c.Wash }},
	{"flush", "for a gun, each spell", unit.Volumes, 0, float64(5 * unit.Litre), func(c *Card) handle { return &c.Flush }},
	{"over-coat", "over a coat, wet", unit.Films, 1e-6, 1e-3, func(c *Card) handle { return &c.OverCoat }},
	{"kept-on", "may stay on", unit.Days, float64(unit.Hour), float64(60 * unit.Day), func(c *Card) handle { return &c.KeptOn }},
	{"kept-on-heat", "may stay on from 40 °C", unit.Days, float64(unit.Hour), float64(60 * unit.Day), func(c *Card) handle { return &c.KeptOnHeat }},
	{"chance", "chance of having enough, bought before the start", unit.Percents, 0.5, 0.99, func(c *Card) handle { return &c.Chance }},
	{"chance-at-once", "chance of having enough, all bought at once", unit.Percents, 0.5, 0.99, func(c *Card) handle { return &c.AtOnce }},
	{"reserve", "kept for repairs", unit.Percents, 0, 0.5, func(c *Card) handle { return &c.Reserve }},
	{"batch-most", "largest batch", unit.Weights, 0.01, 20, func(c *Card) handle { return &c.BatchMost }},
	{"surface-least", "coldest surface", unit.Temperatures, 253.15, 333.15, func(c *Card) handle { return &c.SurfaceLeast }},
	{"surface-most", "warmest surface", unit.Temperatures, 253.15, 333.15, func(c *Card) handle { return &c.SurfaceMost }},
	{"humidity-least", "driest air", unit.Percents, 0, 1, func(c *Card) handle { return &c.HumidityLeast }},
	{"humidity-most", "dampest air", unit.Percents, 0, 1, func(c *Card) handle { return &c.HumidityMost }},
	{"shelf-life", "shelf life, closed and cool", unit.Days, float64(unit.Day), float64(3650 * unit.Day), func(c *Card) handle { return &c.ShelfLife }},
}
