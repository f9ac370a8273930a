package plan

import (
	"cmp"
	"errors"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/film"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Coat is what a coat step comes to.
type Coat struct {
	CuredShare working.Figure[unit.SolidsByVolume] // of the mix as thinned
	Wet        working.Figure[unit.WetFilm]        // of all coats
	Cured      working.Figure[unit.DryFilm]
	Coats      working.Figure[unit.Factor]
	AllCoats   working.Figure[unit.Factor]  // in all rounds
	WetEach    working.Figure[unit.WetFilm] // what a comb should read
	CuredEach  working.Figure[unit.DryFilm]
	Theory     working.Figure[unit.SpreadingRate] // all coats, per litre as sold, nothing lost
	Practice   working.Figure[unit.SpreadingRate] // the same with the loss
	Extra      working.Figure[unit.ByVolume]      // thinner and wax solution per volume of product
	Mix        working.Figure[unit.Volume]        // leaves the cups: on the surface, or lost on the way
	Product    working.Figure[unit.Volume]        // as sold, with what stays behind in cups and tools
	PerCoat    working.Figure[unit.MassPerArea]   // of product, for a square metre and a coat, with all that is lost

	limits coatLimits
}

// Limits gives what the wet film of one coat may be, by the method and by the
// orientation of the surfaces; 0: the card has no limit.
func (c *Coat) Limits() (least, most unit.WetFilm) { return c.limits.least.Value, c.limits.most.Value }

// ThinnerError says that thinner, with wax solution, goes past the card's limit.
type ThinnerError struct {
	Share, Limit unit.Share
	ByMass       bool
	WithWax      bool
}

// Error names the shares.
func (e *ThinnerError) Error() string {
	return "plan: thinner " + unit.Write(float64(e.Share), unit.InPercent, 3) + " over the card's limit"
}

// CoatTooThickError says that a coat goes past the card's largest wet film.
type CoatTooThickError struct {
	Each, Most unit.WetFilm
	Coats      int       // how many would do; 0: the film is given for each coat
	Limit      CoatLimit // that it goes past
}

// Error names the films.
func (e *CoatTooThickError) Error() string {
	return "plan: a coat of " + unit.Write(float64(e.Each), unit.InMicrometre, 3) + " wet is over the card's largest"
}

// ErrNoThinner says that nothing may be added to the material.
var ErrNoThinner = errors.New("plan: this material takes no thinner")

// ErrNotSprayed says that the card has no figure for the method.
var ErrNotSprayed = errors.New("plan: the card has no cured share for this method")

var filmLeft = &working.Rule{Formula: "films added by the coats, less what sanding and polishing take", Source: source.Ref{Document: &source.House, Place: "film budget"}, Mark: source.Calculated,
	Result: working.Arg{Symbol: "F", Meaning: "film left", Scale: unit.InMicrometre, Min: -50000, Max: 50000}, IsProse: true}

func canCoat(c *job.Card) bool { return c.Kind <= material.Topcoat }

func coat(m *maker, s *Step) {
	if !m.needsCard(s, canCoat) || !m.needsTyped(s.Path, "film", s.Job.Film.Step) {
		return
	}
	with := coater{m}
	c, path, err := with.films(s)
	if err != nil {
		m.refuse(s.Path+"."+path, err)
		return
	}
	if !with.rounds(s, c) {
		return
	}
	s.Coat, s.Known = c, true
	if s.Job.RoundTakes.Value == 0 {
		s.face.texture = s.Job.Method
	}
	m.askFilm(s)
}

func coatAmounts(m *maker, s *Step, area working.Figure[unit.Area]) {
	if s.Coat == nil || area.Value <= 0 {
		return
	}
	var q chain.Run
	all := overRounds(&q, s.Job, area)
	if q.Err != nil {
		m.refuse(s.Path+".goes", q.Err)
		return
	}
	err := coater{m}.amounts(s, s.Coat, area, all)
	if err != nil {
		m.refuse(s.Path+".film", err)
	}
}

// coater works out a coat: its films, what is mixed for them, and what goes into
// the mix.
type coater struct{ *maker }

// films works out wet and cured films and coats from the typed film. With an error
// it gives the field at fault.
func (m coater) films(s *Step) (*Coat, string, error) {
	c, extraErr := &Coat{}, error(nil)
	if c.Extra, extraErr = m.extra(s); extraErr != nil {
		return nil, "thinner", extraErr
	}
	cured := s.Card.CuredRolled
	name := "cured share, rolled"
	if s.Job.Method.IsSpray {
		cured, name = s.Card.CuredSprayed, "cured share, sprayed"
	}
	if !cured.Known {
		return nil, "method", ErrNotSprayed
	}
	var q chain.Run
	stays, shrinks := m.keptThinner(s)
	c.CuredShare = chain.Do4(&q, film.Thinned, chain.OnCard(s.Card, cured, name, unit.InPercent), stays, c.Extra, shrinks)
	typed := chain.As[unit.WetFilm](s.Job.Film)
	if s.Job.FilmIsCured {
		typed = chain.Do2(&q, film.Wet, chain.As[unit.DryFilm](s.Job.Film), c.CuredShare)
	}
	if q.Err != nil {
		return nil, "film", q.Err
	}
	if field, err := m.coats(s, c, typed); err != nil {
		return nil, field, err
	}
	c.Cured = chain.Do2(&q, film.Dry, c.Wet, c.CuredShare)
	c.CuredEach = chain.Do2(&q, film.Dry, c.WetEach, c.CuredShare)
	c.Theory = chain.Do2(&q, film.RateAsSold, c.Extra, c.Wet)
	c.Practice = chain.Do2(&q, film.Practical, c.Theory, chain.OfMethod(s.Job.Method, s.Job.Method.Loss, "loss", unit.InPercent))
	return c, "film", q.Err
}

var allCoats = working.Rule2[unit.Factor, unit.WetFilm, unit.WetFilm]{Rule: &working.Rule{Formula: "WFT = n × WFT_n", Source: source.Ref{Document: &source.Geometry, Place: "equal coats"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "WFT", Meaning: "wet film of all coats", Scale: unit.InMicrometre, Min: 0, Max: 1e5},
	Args:   []working.Arg{{Symbol: "n", Meaning: "coats", Scale: unit.InPure, Min: 1, Max: 50}, {Symbol: "WFT_n", Meaning: "wet film of each coat", Scale: unit.InMicrometre, Min: 1, Max: 20000}}},
	Code: func(n unit.Factor, each unit.WetFilm) unit.WetFilm { return unit.WetFilm(n) * each }}

// coats settles how many coats of what film: typed for each or for all, with a
// number of coats or as many as the card's largest film requires.
func (m coater) coats(s *Step, c *Coat, typed working.Figure[unit.WetFilm]) (field string, err error) {
	limits := m.oneCoat(s)
	c.limits = limits
	most := limits.mostOn(s.Card)
	count, hasCount := s.Job.Coats, s.Job.Coats.Step != nil
	var q chain.Run
	if s.Job.FilmIsEach {
		if !hasCount {
			count = working.Given(unit.Factor(1), "coats", unit.InPure, "not typed", source.Assumption)
		}
		c.Coats, c.WetEach = count, typed
		c.Wet = chain.Do2(&q, allCoats, count, typed)
		return "film", cmp.Or(q.Err, limits.tooThick(c.WetEach.Value, 0))
	}
	c.Wet = typed
	fewest := chain.Do2(&q, film.CoatCount, typed, most)
	if c.Coats = fewest; hasCount {
		c.Coats = count
	}
	c.WetEach = chain.Do2(&q, film.FilmPerCoat, typed, c.Coats)
	if !hasCount {
		return "film", q.Err
	}
	return "coats", cmp.Or(q.Err, limits.tooThick(c.WetEach.Value, int(fewest.Value)))
}

// amounts works out what the coats take over the area: once, and in all rounds.
func (m coater) amounts(s *Step, c *Coat, once, area working.Figure[unit.Area]) error {
	var q chain.Run
	swallowed := s.Job.Swallowed
	if swallowed.Step == nil {
		swallowed = working.Given(unit.WetFilm(0), "film that the ground swallows", unit.InMicrometre, "a closed ground", source.Assumption)
	}
	c.Mix = chain.Do4(&q, film.Mix, area, c.Wet, swallowed, chain.OfMethod(s.Job.Method, s.Job.Method.Loss, "loss", unit.InPercent))
	density := m.mixDensity(&q, s.Card, c.Extra)
	s.Leaves = chain.Do2(&q, film.Weight, c.Mix, density)
	s.FilmOnly = s.Leaves.Value * unit.Mass(1-s.Job.Method.Loss.Value) * unit.Mass(c.Wet.Value/(c.Wet.Value+swallowed.Value))
	work := cupWorkOf(s.Card, s.Job.Method, c.WetEach, density)
	work.need, work.times, work.area = s.Leaves, c.AllCoats, once
	s.Cups = work.inCups(&q)
	c.Product = chain.Do2(&q, film.AsSold, chain.Do2(&q, VolumeOf, s.Cups.Mixed, density), c.Extra)
	mass := chain.Do2(&q, film.Weight, c.Product, chain.DensityOf(s.Card))
	c.PerCoat = chain.Do3(&q, perCoat, mass, once, c.AllCoats)
	s.Used = append(s.Used, Use{Name: "product", Card: s.Card, Mass: mass, Volume: c.Product})
	m.addThinner(&q, s, c)
	m.addByMass(&q, s, s.Card.Wax, material.WaxKey, "wax solution", mass)
	m.addByMass(&q, s, s.Card.HardenerShare, s.Card.Hardener, "catalyst", m.cures(s))
	return q.Err
}

var perCoat = working.Rule3[unit.Mass, unit.Area, unit.Factor, unit.MassPerArea]{Rule: &working.Rule{Formula: "w = m ÷ (A × n)", Source: source.Ref{Document: &source.Practice, Place: "mass for a square metre and a coat"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "w", Meaning: "product for a square metre and a coat", Scale: unit.InKilogramPerSquareMetre, Min: 0, Max: 1e6},
	Args: []working.Arg{
		{Symbol: "m", Meaning: "mass of product", Scale: unit.InKilogram, Min: 0, Max: 1e6},
		{Symbol: "A", Meaning: "area", Scale: unit.InSquareMetre, Min: 1e-6, Max: 1e5},
		{Symbol: "n", Meaning: "coats", Scale: unit.InPure, Min: 1, Max: 2500},
	}},
	Code: func(m unit.Mass, a unit.Area, n unit.Factor) unit.MassPerArea {
		return unit.MassPerArea(float64(m) / (float64(a) * float64(n)))
	}}

// CrossCheck is what a coat takes of its product, beside the figure that the trade
// allows for it; false where the trade has no figure, or nothing is planned yet.
func (s *Step) CrossCheck() (takes working.Figure[unit.MassPerArea], trade material.Spec[unit.MassPerArea], known bool) {
	if s.Coat == nil || s.Coat.PerCoat.Step == nil || s.Kind.IntoPores {
		return takes, trade, false
	}
	trade = s.Card.PerCoat(s.Job.Method)
	return s.Coat.PerCoat, trade, trade.Known
}

var sumCures = working.SumRule("all that cures", unit.InKilogram)

// cures is all of a step that catalyst has to cure: the product, and the styrene
// and wax solution in it.
func (m coater) cures(s *Step) working.Figure[unit.Mass] {
	var masses []working.Figure[unit.Mass]
	for _, u := range s.Used {
		if u.Card == s.Card || u.Card.Kind == material.WaxSolution || u.Card.Kind == material.Thinner && u.Card.Stays.Value > 0 {
			masses = chain.AppendKnown(masses, u.Mass)
		}
	}
	return working.Sum(sumCures, masses...)
}

func (m coater) addThinner(q *chain.Run, s *Step, c *Coat) {
	thinner := m.card(s.Card.Thinner)
	if s.Job.Thinner.Value == 0 || thinner == nil {
		return
	}
	share := chain.As[unit.ByVolume](s.Job.Thinner)
	if s.Job.ThinnerByMass {
		share = m.byVolume(q, s.Card, s.Card.Thinner, chain.As[unit.ByMass](s.Job.Thinner))
	}
	volume := chain.Do2(q, film.Thinner, c.Product, share)
	s.Used = append(s.Used, Use{Name: "thinner", Card: thinner, Volume: volume, Mass: chain.Do2(q, film.Weight, volume, chain.DensityOf(thinner))})
}

var shareOfMass = working.Rule2[unit.Mass, unit.ByMass, unit.Mass]{Rule: &working.Rule{Formula: "m_a = m × a ÷ 100", Source: source.Ref{Document: &source.Geometry, Place: "definition of a share"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "m_a", Meaning: "addition", Scale: unit.InKilogram, Min: 0, Max: 1e5},
	Args:   []working.Arg{{Symbol: "m", Meaning: "mass of product", Scale: unit.InKilogram, Min: 0, Max: 1e5}, {Symbol: "a", Meaning: "share by mass", Scale: unit.InPercent, Min: 0, Max: 10}}},
	Code: func(mass unit.Mass, share unit.ByMass) unit.Mass { return mass * unit.Mass(share) }}

// VolumeOf gives the volume of a mass by its density.
var VolumeOf = working.Rule2[unit.Mass, unit.Density, unit.Volume]{Rule: &working.Rule{Formula: "V = m ÷ ρ", Source: source.Ref{Document: &source.Geometry, Place: "definition of density"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "V", Meaning: "volume", Scale: unit.InLitre, Min: 0, Max: 1e6},
	Args:   []working.Arg{{Symbol: "m", Meaning: "mass", Scale: unit.InKilogram, Min: 0, Max: 1e5}, {Symbol: "ρ", Meaning: "density", Scale: unit.InKilogramPerLitre, Min: 0.1, Max: 3}}},
	Code: func(mass unit.Mass, density unit.Density) unit.Volume {
		return unit.Volume(float64(mass) / float64(density))
	}}

// addByMass adds a material that goes in as a share of the product's mass.
func (m coater) addByMass(q *chain.Run, s *Step, share material.Spec[unit.ByMass], key, name string, product working.Figure[unit.Mass]) {
	card := m.card(key)
	if !share.Known || card == nil {
		return
	}
	mass := withSpare(q, card, chain.Do2(q, shareOfMass, product, chain.OnCard(s.Card, share, name, unit.InPercent)))
	s.Used = append(s.Used, Use{Name: name, Card: card, Mass: mass, Volume: chain.Do2(q, VolumeOf, mass, chain.DensityOf(card))})
}
