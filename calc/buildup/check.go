package buildup

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// Layer is what a coat or fill puts on. The limits are the card's; one of zero
// isn't known and isn't checked.
type Layer struct {
	Material     Material
	IsWaxed      bool // wax in the coat: flow coat
	IsUnderFilm  bool // cured under release film
	HasTestPatch bool // a patch of it on this ground was tried and logged

	Wet, WetLeast, WetAsk, WetMost    unit.WetFilm // in one coat
	Coats                             int          // of such a wet film, in one round
	CuredMost                         unit.DryFilm // left in the end, against cracks
	Thinner, ThinnerAsk, ThinnerMost  unit.Share   // wax solution counted in, one basis
	Wax                               unit.ByMass  // wax solution per product; 0: not said
	RecoatFrom, RecoatTo, SandingFrom unit.Time    // at 20 °C
}

// Base is what a build-up starts on, as its surface says.
type Base struct {
	Ground       Ground
	IsBelowWater bool
	IsWashed     bool
	IsSanded     bool
	Grit         int       // of that sanding: the last P grade; 0: not said
	Age          unit.Time // since the ground was put on, at 20 °C; 0: not said
}

// Key names a check; it never changes.
type Key string

// The checks of a sequence, and of the film through it.
const (
	OnGround   Key = "ground"
	UnderWater Key = "under-water"
	OpenCoat   Key = "open-coat"
	WetFilm    Key = "wet-film"
	Thinning   Key = "thinner"
	Waxing     Key = "wax"
	SandSoon   Key = "sanded-too-soon"
	MeanLeft   Key = "mean-left"
	ThinLeft   Key = "thin-left"
	GoThrough  Key = "through"
	CrackLimit Key = "crack-limit"
)

// Keys lists every check, so that each can be given its sentence.
var Keys = []Key{OnGround, UnderWater, OpenCoat, WetFilm, Thinning, Waxing, SandSoon, MeanLeft, ThinLeft, GoThrough, CrackLimit}

// Finding is what a check has to say about a step: which step and check, how
// firmly, on what ground, and what fixes it.
type Finding struct {
	Rule        Key
	Step        int // index
	Severity    Severity
	Fix         Fix
	Ground      Ground      // of OnGround
	Requirement Requirement // of OnGround

	Got, Limit float64    // SI
	Scale      unit.Scale // of both; NoScale: the finding has no figure
	IsUnknown  bool       // Got was never said
	Near       Near       // of WetFilm
	Source     source.Ref
	Mark       source.Mark
}

// finding has a figure against a limit.
func finding(s Severity, fix Fix, got, limit float64, scale unit.Scale) Finding {
	return Finding{Severity: s, Fix: fix, Got: got, Limit: limit, Scale: scale}
}

// check is one check of a sequence: it looks at a step and at what is below it.
type check struct {
	key    Key
	from   source.Ref
	mark   source.Mark
	kinds  []Kind // of the steps that it looks at
	search func(sight) []Finding
}

// sight is what a check sees: the step, those after it, and the ground as all
// before it have left it.
type sight struct {
	Step
	after []Step
	state
	isBelowWater bool
}

// Check runs every check on a sequence, step by step. It doesn't know the film:
// Shortfalls does.
func Check(base Base, steps []Step) []Finding {
	var list []Finding
	now := start(base)
	for i, s := range steps {
		now.wait(s.Wait)
		seen := sight{s, steps[i+1:], now, base.IsBelowWater}
		for _, c := range checks {
			for _, f := range c.of(seen) {
				f.Rule, f.Step, f.Source, f.Mark = c.key, i, c.from, c.mark
				list = append(list, f)
			}
		}
		now.do(s)
	}
	return list
}

func (c check) of(s sight) []Finding {
	for _, k := range c.kinds {
		if k == s.Kind {
			return c.search(s)
		}
	}
	return nil
}

// state is the ground as it is now.
type state struct {
	ground   Ground
	below    *Layer // the layer that is the ground; nil: the base
	isSanded bool
	grit     int
	isWashed bool
	age      unit.Time
	knowsAge bool
}

func start(b Base) state {
	return state{ground: b.Ground, isSanded: b.IsSanded, grit: b.Grit, isWashed: b.IsWashed, age: b.Age, knowsAge: b.Age > 0}
}

// wait ages the ground; a wait that isn't given leaves its age unknown.
func (s *state) wait(t unit.Time) {
	s.age += t
	s.knowsAge = s.knowsAge && (t > 0 || s.below == nil)
}

// do changes the ground as the step does.
func (s *state) do(step Step) {
	switch step.Kind {
	case Coat, Fill:
		layer := step.Layer
		*s = state{ground: layer.ground(), below: &layer, knowsAge: true, isSanded: step.Film.takes()}
	case Sand, Polish:
		s.isSanded, s.grit = true, step.Grit
	case Wash:
		s.isWashed = true
	}
}

// ground is what the layer is to the next one.
func (l Layer) ground() Ground {
	switch l.Material {
	case Epoxy, EpoxyFiller:
		return FreshEpoxy
	case TwoPack:
		return TwoPackCoat
	case PolyesterFiller:
		return TalcFiller
	}
	switch {
	case l.IsWaxed:
		return WaxedCoat
	case l.IsUnderFilm:
		return Laminate
	}
	return UnwaxedCoat
}

// now is the ground with its age: epoxy that is known to be cured, or known
// not to be.
func (s state) now() Ground {
	isEpoxy := s.ground == FreshEpoxy || s.ground == CuredEpoxy
	switch {
	case isEpoxy && s.knowsAge && s.age >= epoxyCured:
		return CuredEpoxy
	case isEpoxy && s.knowsAge:
		return FreshEpoxy
	}
	return s.ground
}
