package plan

import (
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Ask is a question about a figure that is taken but unlikely.
type Ask struct {
	Path      string
	Band      *Band
	Value     float64 // SI
	Text      string  // what is kept under "real." when the builder confirms it
	Otherwise []Otherwise
	Was       float64 // of a jump: the reading of the last cup, SI; zero for a band
}

// Otherwise is what a figure would be if it was a slip.
type Otherwise struct {
	Slip  *Slip
	Value float64 // SI
}

// Band is the range in which a figure usually is.
type Band struct {
	Key       string
	Scale     unit.Scale
	Low, High float64 // SI
	Slips     []*Slip
}

// Slip is a way to type a figure wrong: Factor takes what was typed to what was
// meant. Of bare sizes Read is the unit that they were read in, Meant the one
// that they were meant in.
type Slip struct {
	Key         string
	Factor      float64
	Read, Meant unit.Scale
}

// The slips that the bands try.
var (
	milForMM    = &Slip{Key: "mil typed as mm", Factor: float64(unit.Mil / unit.Millimetre)}
	mmForMil    = &Slip{Key: "mm typed as mil", Factor: float64(unit.Millimetre / unit.Mil)}
	milForUM    = &Slip{Key: "mil typed as µm", Factor: float64(unit.Mil / unit.Micrometre)}
	mmForUM     = &Slip{Key: "mm typed as µm", Factor: 1000}
	umForMM     = &Slip{Key: "µm typed as mm", Factor: 1e-3}
	mmForM      = &Slip{Key: "sizes in mm typed as m", Factor: 1e-6, Read: unit.InMetre, Meant: unit.InMillimetre}
	cmForMM     = &Slip{Key: "sizes in cm typed as mm", Factor: 100, Read: unit.InMillimetre, Meant: unit.InCentimetre}
	mForMM      = &Slip{Key: "sizes in m typed as mm", Factor: 1e6, Read: unit.InMillimetre, Meant: unit.InMetre}
	inForMM     = &Slip{Key: "sizes in inches typed as mm", Factor: 25.4 * 25.4, Read: unit.InMillimetre, Meant: unit.InInch}
	sqftForSqm  = &Slip{Key: "ft² typed as m²", Factor: float64(unit.SquareFoot)}
	bothSides   = &Slip{Key: "the sum of both sides typed as one size, for a product that counts them again", Factor: 0.5}
	usForImp    = &Slip{Key: "lb per imperial gallon typed as lb per US gallon", Factor: float64(unit.USGallon / unit.ImperialGallon)}
	sForMin     = &Slip{Key: "seconds typed as minutes", Factor: 1. / 60}
	hForMin     = &Slip{Key: "hours typed as minutes", Factor: 60}
	shareForPct = &Slip{Key: "a bare share typed as %", Factor: 100}
	permille    = &Slip{Key: "‰ or mL per L typed as %", Factor: 0.1}
	lbPerUSGal  = &Slip{Key: "lb per US gallon typed as kg/L", Factor: 0.119826427317}
	lbPerImpGal = &Slip{Key: "lb per imperial gallon typed as kg/L", Factor: 0.0997763726}
)

// The bands.
// Source: common practice.
var (
	filmBand    = &Band{"film", unit.InMillimetre, 0.02e-3, 2e-3, []*Slip{milForMM, mmForMil, milForUM, mmForUM, umForMM}}
	areaBand    = &Band{"area of one surface", unit.InSquareMetre, 0.01, 500, []*Slip{mmForM, cmForMM, mForMM, inForMM, sqftForSqm, bothSides}}
	densityBand = &Band{"density", unit.InKilogramPerLitre, 300, 2500, []*Slip{lbPerUSGal, lbPerImpGal, usForImp}}
	gelBand     = &Band{"gel time", unit.InMinute, float64(2 * unit.Minute), float64(6 * unit.Hour), []*Slip{sForMin, hForMin}}
	shareBand   = &Band{"catalyst by mass", unit.InPercent, 0.005, 0.04, []*Slip{shareForPct, permille}}
	passBand    = &Band{"pass of filler", unit.InMillimetre, 0.2e-3, 15e-3, []*Slip{milForMM, mmForMil, umForMM}}
)

// Question asks about a value outside its band; false: it is inside, or the builder
// has confirmed it.
func (p *Plan) Question(path string, b *Band, value float64) (Ask, bool) {
	if value >= b.Low && value <= b.High {
		return Ask{}, false
	}
	text := p.doc.Get(path)
	if text == "" {
		text = unit.Typed(value, b.Scale)
	}
	if p.doc.Get(job.Real(path)) == text {
		return Ask{}, false
	}
	return Ask{Path: path, Band: b, Value: value, Text: text, Otherwise: b.otherwise(value)}, true
}

// otherwise tries the band's slips and gives those that bring the value into it.
func (b *Band) otherwise(value float64) []Otherwise {
	var list []Otherwise
	for _, s := range b.Slips {
		if v := value * s.Factor; v >= b.Low && v <= b.High {
			list = append(list, Otherwise{s, v})
		}
	}
	return list
}

// Slips gives what a refused figure of the measure would be if it was a slip, and
// the band in which it would then be; nil: no slip is known.
func Slips(m unit.Measure, value float64) (*Band, []Otherwise) {
	band := map[unit.Measure]*Band{unit.Films: filmBand, unit.Fills: passBand, unit.Densities: densityBand}[m]
	if band == nil {
		return nil, nil
	}
	return band, band.otherwise(value)
}

func (m *maker) askArea(path string, a unit.Area) { m.ask(path, areaBand, float64(a)) }

// askFilm asks about a film as it was typed: the slips are tried on what the
// builder sees in the field.
func (m *maker) askFilm(s *Step) { m.ask(s.Path+".film", filmBand, float64(s.Job.Film.Value)) }

// typedCards asks about what was typed on cards.
func typedCards(p *Plan) bool {
	return ask(p, "cards", func(m *maker) bool {
		cards := m.cards()
		for i := range cards {
			c := cards[i]
			askCard(m, c, "density", c.Density, densityBand)
			askCard(m, c, "cured-density", c.CuredDensity, densityBand)
			askCard(m, c, "gel-time", c.GelTime, gelBand)
			askCard(m, c, "gel-with", c.GelWith, shareBand)
			askCard(m, c, "hardener-share", c.HardenerShare, shareBand)
		}
		return true
	})
}

// typedTests asks about what was typed for cup tests.
func typedTests(p *Plan) bool {
	return ask(p, "tests", func(m *maker) bool {
		for _, t := range m.job("test").Tests {
			if t.Gel.Step != nil {
				m.ask(t.Path+".minutes", gelBand, float64(t.Gel.Value))
			}
			if t.Catalyst.Step != nil {
				m.ask(t.Path+".share", shareBand, float64(t.Catalyst.Value))
			}
		}
		return true
	})
}

// askCard asks about one figure of a card, if it is the builder's own.
func askCard[Q unit.Quantity](m *maker, c *job.Card, key string, s material.Spec[Q], b *Band) {
	if s.Mark == source.Typed {
		m.ask(c.Path+"."+key, b, float64(s.Value))
	}
}

// mostJump is how far a temperature may be from the last cup's before the builder
// is asked.
const mostJump unit.Temperature = 15

// jumps asks about temperatures far from those of the last cup.
func jumps(p *Plan) bool {
	return ask(p, "jumps", func(m *maker) bool {
		b := &m.job("bench").Bench
		for _, t := range []struct {
			key      string
			now, was working.Figure[unit.Temperature]
		}{{"product-temp", b.Product, b.ProductWas}, {"surface-temp", b.Surface, b.SurfaceWas}} {
			path := job.BenchPath + "." + t.key
			text := m.plan.doc.Get(path)
			far := t.now.Value-t.was.Value > mostJump || t.was.Value-t.now.Value > mostJump
			if t.now.Step == nil || t.was.Step == nil || !far || m.plan.doc.Get(job.Real(path)) == text {
				continue
			}
			m.answer.notes.asks = append(m.answer.notes.asks, Ask{Path: path, Value: float64(t.now.Value), Text: text, Was: float64(t.was.Value)})
		}
		return true
	})
}
