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

func field[Q unit.Quantity](key, name string, m unit.Measure, min, max Q, at func(*Card) *Spec[Q]) *Field {
	return &Field{key, name, m, float64(min), float64(max), func(c *Card) handle { return at(c) }}
}

// Fields is every figure that a card can hold, in the order of the form.
var Fields = []*Field{
	field("density", "density", unit.Densities, 200, 3000, func(c *Card) *Spec[unit.Density] { return &c.Density }),
	field("cured", "cured share of the wet film, rolled", unit.Percents, 0.05, 1, func(c *Card) *Spec[unit.SolidsByVolume] { return &c.CuredRolled }),
	field("cured-sprayed", "cured share of the wet film, sprayed", unit.Percents, 0.05, 1, func(c *Card) *Spec[unit.SolidsByVolume] { return &c.CuredSprayed }),
	field("cured-density", "density once cured", unit.Densities, 200, 3000, func(c *Card) *Spec[unit.Density] { return &c.CuredDensity }),
	field("styrene", "styrene in the product, by mass", unit.Percents, 0, 1, func(c *Card) *Spec[unit.ByMass] { return &c.Styrene }),
	field("coat-least", "least wet film in one coat", unit.Films, 1e-6, 5e-3, func(c *Card) *Spec[unit.WetFilm] { return &c.CoatLeast }),
	field("coat-most", "largest wet film in one coat", unit.Films, 1e-6, 5e-3, func(c *Card) *Spec[unit.WetFilm] { return &c.CoatMost }),
	field("pass-most", "largest pass of filler", unit.Fills, 1e-4, 0.05, func(c *Card) *Spec[unit.WetFilm] { return &c.PassMost }),
	field("left-least", "least mean film left", unit.Films, 0, 5e-3, func(c *Card) *Spec[unit.DryFilm] { return &c.LeftLeast }),
	field("left-thinnest", "thinnest film left anywhere", unit.Films, 0, 5e-3, func(c *Card) *Spec[unit.DryFilm] { return &c.LeftThinnest }),
	field("left-most", "most film left", unit.Films, 1e-6, 5e-3, func(c *Card) *Spec[unit.DryFilm] { return &c.LeftMost }),
	field("thinner-ask", "thinner, asked about above", unit.Percents, 0, 0.5, func(c *Card) *Spec[unit.Share] { return &c.ThinnerAsk }),
	field("thinner-most", "thinner, refused above", unit.Percents, 0, 0.5, func(c *Card) *Spec[unit.Share] { return &c.ThinnerRefuse }),
	field("stays", "share that stays in the film", unit.Percents, 0, 1, func(c *Card) *Spec[unit.Share] { return &c.Stays }),
	field("shrinks", "shrinkage of what stays", unit.Percents, 0, 1, func(c *Card) *Spec[unit.Share] { return &c.Shrinks }),
	field("wax", "wax solution, by mass", unit.Percents, 0, 0.04, func(c *Card) *Spec[unit.ByMass] { return &c.Wax }),
	field("hardener-share", "catalyst to order, by mass", unit.Percents, 0, 0.05, func(c *Card) *Spec[unit.ByMass] { return &c.HardenerShare }),
	field("floor", "least catalyst, of all that cures", unit.Percents, 0.002, 0.05, func(c *Card) *Spec[unit.ByMass] { return &c.Floor }),
	field("ceiling", "most catalyst, of the product alone", unit.Percents, 0.002, 0.05, func(c *Card) *Spec[unit.ByMass] { return &c.Ceiling }),
	field("gel-time", "gel time or pot life, timed", unit.Minutes, unit.Minute, 24*unit.Hour, func(c *Card) *Spec[unit.Time] { return &c.GelTime }),
	field("gel-at", "timed at", unit.Temperatures, 263.15, 323.15, func(c *Card) *Spec[unit.Temperature] { return &c.GelAt }),
	field("gel-with", "timed with catalyst, by mass", unit.Percents, 0.002, 0.05, func(c *Card) *Spec[unit.ByMass] { return &c.GelWith }),
	field("gel-order", "power of the catalyst", unit.Numbers, 0.2, 2, func(c *Card) *Spec[unit.Factor] { return &c.GelOrder }),
	field("gel-energy", "activation energy", unit.MolarEnergies, 20e3, 130e3, func(c *Card) *Spec[unit.MolarEnergy] { return &c.GelEnergy }),
	field("gel-mass", "timed in a cup of", unit.CupWeights, 0.005, 20, func(c *Card) *Spec[unit.Mass] { return &c.GelMass }),
	field("cure-hours", "hours until dew can't harm it", unit.Hours, unit.Hour/2, 48*unit.Hour, func(c *Card) *Spec[unit.Time] { return &c.CureHours }),
	field("pigment-ask", "pigment paste, asked about above", unit.Percents, 0, 0.2, func(c *Card) *Spec[unit.ByMass] { return &c.PigmentAsk }),
	field("pigment-most", "pigment paste, refused above", unit.Percents, 0, 0.2, func(c *Card) *Spec[unit.ByMass] { return &c.PigmentMost }),
	field("ratio-mass", "parts of resin to one of hardener, by mass", unit.Numbers, 0.1, 100, func(c *Card) *Spec[unit.ByMass] { return &c.RatioByMass }),
	field("ratio-volume", "parts of resin to one of hardener, by volume", unit.Numbers, 0.1, 100, func(c *Card) *Spec[unit.ByVolume] { return &c.RatioByVolume }),
	field("sanded-off", "share sanded off again", unit.Percents, 0, 0.9, func(c *Card) *Spec[unit.Share] { return &c.SandedOff }),
	field("takes", "least film that it takes", unit.Films, 0, 50e-6, func(c *Card) *Spec[unit.DryFilm] { return &c.Takes }),
	field("recoat-from", "next coat at the soonest, at 20 °C", unit.Hours, 0, 60*unit.Day, func(c *Card) *Spec[unit.Time] { return &c.RecoatFrom }),
	field("recoat-to", "next coat at the latest without sanding, at 20 °C", unit.Hours, unit.Hour, 60*unit.Day, func(c *Card) *Spec[unit.Time] { return &c.RecoatTo }),
	field("sand-from", "sanding at the soonest, at 20 °C", unit.Hours, 0, 60*unit.Day, func(c *Card) *Spec[unit.Time] { return &c.SandFrom }),
	field("polish-from", "polishing at the soonest, at 20 °C", unit.Hours, 0, 60*unit.Day, func(c *Card) *Spec[unit.Time] { return &c.PolishFrom }),
	field("launch-from", "launching at the soonest, at 20 °C", unit.Days, 0, 60*unit.Day, func(c *Card) *Spec[unit.Time] { return &c.LaunchFrom }),
	field("used", "used per area", unit.AreaWeights, 0.001, 0.5, func(c *Card) *Spec[unit.MassPerArea] { return &c.UsedPerArea }),
	field("spare", "bought for each one needed", unit.Numbers, 1, 3, func(c *Card) *Spec[unit.Factor] { return &c.Spare }),
	field("each-cup", "pieces for each cup mixed", unit.Numbers, 0, 10, func(c *Card) *Spec[unit.Factor] { return &c.EachCup }),
	field("each-hour", "pieces for each hour of sanding", unit.Numbers, 0, 10, func(c *Card) *Spec[unit.Factor] { return &c.EachHour }),
	field("lasts", "hours of work that one lasts", unit.Hours, unit.Hour/2, 1000*unit.Hour, func(c *Card) *Spec[unit.Time] { return &c.Lasts }),
	field("on-filler", "pieces for a square metre of filler", unit.Numbers, 0.01, 50, func(c *Card) *Spec[unit.Factor] { return &c.OnFiller }),
	field("on-film", "pieces for a square metre of film, each sanding", unit.Numbers, 0.01, 50, func(c *Card) *Spec[unit.Factor] { return &c.OnFilm }),
	field("wash", "for one wash of a roller, brush or knife", unit.Volumes, 0, 5*unit.Litre, func(c *Card) *Spec[unit.Volume] { return &c.Wash }),
	field("flush", "for one flush of a gun", unit.Volumes, 0, 5*unit.Litre, func(c *Card) *Spec[unit.Volume] { return &c.Flush }),
	field("chance", "wanted chance of not running out", unit.Percents, 0.5, 0.99, func(c *Card) *Spec[unit.Share] { return &c.Chance }),
	field("reserve", "kept for repairs", unit.Percents, 0, 0.5, func(c *Card) *Spec[unit.Share] { return &c.Reserve }),
	field("batch-most", "largest batch", unit.Weights, 0.01, 20, func(c *Card) *Spec[unit.Mass] { return &c.BatchMost }),
	field("surface-least", "coldest surface", unit.Temperatures, 253.15, 333.15, func(c *Card) *Spec[unit.Temperature] { return &c.SurfaceLeast }),
	field("surface-most", "warmest surface", unit.Temperatures, 253.15, 333.15, func(c *Card) *Spec[unit.Temperature] { return &c.SurfaceMost }),
	field("humidity-least", "driest air", unit.Percents, 0, 1, func(c *Card) *Spec[unit.Share] { return &c.HumidityLeast }),
	field("humidity-most", "dampest air", unit.Percents, 0, 1, func(c *Card) *Spec[unit.Share] { return &c.HumidityMost }),
	field("shelf-life", "shelf life, closed and cool", unit.Days, unit.Day, 3650*unit.Day, func(c *Card) *Spec[unit.Time] { return &c.ShelfLife }),
}
