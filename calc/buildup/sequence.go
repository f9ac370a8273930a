package buildup

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// The wax solution in a coat, per product by mass. Source: common practice.
const (
	leastWax unit.ByMass = 0.01
	mostWax  unit.ByMass = 0.03
	overWax  unit.ByMass = 0.04 // refused over this: neither the next coat nor the sheen lasts
)

// checks are the checks of a sequence, in the order in which they are reported.
var checks = []check{
	{OnGround, source.Ref{Document: &source.Practice, Place: "ground against next layer"}, source.CommonPractice, []Kind{Coat, Fill}, onGround},
	{UnderWater, source.Ref{Document: &source.Practice, Place: "polyester filler takes up water"}, source.CommonPractice, []Kind{Coat, Fill}, underWater},
	{OpenCoat, source.Ref{Document: &source.Practice, Place: "air keeps an unwaxed polyester coat tacky"}, source.CommonPractice, []Kind{Coat}, openCoat},
	{WetFilm, source.Ref{Document: &source.Practice, Place: "wet film in one coat"}, source.CommonPractice, []Kind{Coat}, wetFilm},
	{Thinning, source.Ref{Document: &source.Practice, Place: "thinner and wax solution count together"}, source.CommonPractice, []Kind{Coat}, thinning},
	{Waxing, source.Ref{Document: &source.Practice, Place: "wax solution in flow coat"}, source.CommonPractice, []Kind{Coat}, waxing},
	{SandSoon, source.Ref{Document: &source.Practice, Place: "cured before it is sanded"}, source.CommonPractice, []Kind{Sand, Polish}, sandSoon},
}

// onGround checks the ground's demands before the layer.
func onGround(s sight) []Finding {
	var list []Finding
	ground := s.now()
	for _, d := range Demands(ground, s.Layer.Material) {
		if f := requirementChecks[d.Requirement](s, d); f != nil {
			f.Ground, f.Requirement = ground, d.Requirement
			list = append(list, *f)
		}
	}
	return list
}

// requirementChecks says how each requirement is checked; one that is met has no
// finding.
var requirementChecks = [...]func(sight, Demand) *Finding{
	Another:   open,
	Dryness:   open,
	Promptly:  open,
	Sanding:   sanding,
	Washing:   func(s sight, d Demand) *Finding { return unless(s.isWashed, d) },
	TestPatch: func(s sight, d Demand) *Finding { return unless(s.Layer.HasTestPatch, d) },
	Age:       age,
	Window:    window,
}

func open(_ sight, d Demand) *Finding { return unless(false, d) }

func unless(isMet bool, d Demand) *Finding {
	if isMet {
		return nil
	}
	return &Finding{Severity: d.Severity, Fix: d.Fix}
}

// sanding requires the ground to be sanded, and asks about a last grade that is
// known and out of range.
func sanding(s sight, d Demand) *Finding {
	if !s.isSanded {
		return unless(false, d)
	}
	if s.grit == 0 || d.Coarsest == 0 || s.grit >= d.Coarsest && s.grit <= d.Finest {
		return nil
	}
	limit := d.Coarsest
	if s.grit > d.Finest {
		limit = d.Finest
	}
	f := finding(Ask, OtherGrade, float64(s.grit), float64(limit), unit.InPure)
	return &f
}

func age(s sight, d Demand) *Finding {
	f := finding(d.Severity, d.Fix, float64(s.age), float64(d.Least), unit.InDay)
	switch {
	case !s.knowsAge:
		f.Severity, f.IsUnknown = d.Unknown, true
	case s.age >= d.Least:
		return nil
	}
	return &f
}

// window requires the next coat neither before the ground can take it nor after the
// ground takes it without sanding.
func window(s sight, d Demand) *Finding {
	if s.isSanded {
		return nil
	}
	if s.below == nil || s.below.RecoatTo == 0 {
		return &Finding{Severity: Ask, Fix: d.Fix, IsUnknown: true}
	}
	from, to := float64(s.below.RecoatFrom), float64(s.below.RecoatTo)
	f := finding(d.Severity, d.Fix, float64(s.age), to, unit.InHour)
	switch {
	case !s.knowsAge:
		f.Severity, f.IsUnknown = Note, true
	case f.Got < from:
		f.Fix, f.Limit = WaitLonger, from
	case f.Got <= to:
		return nil
	}
	return &f
}

// underWater refuses polyester filler below the waterline, and any layer on it.
func underWater(s sight) []Finding {
	isFilled := s.ground == TalcFiller || s.Layer.Material == PolyesterFiller
	if !s.isBelowWater || !isFilled {
		return nil
	}
	return []Finding{{Severity: Refuse, Fix: EpoxyFilling}}
}

// openCoat refuses an unwaxed polyester coat that is left open or sanded: air
// keeps its surface from curing.
func openCoat(s sight) []Finding {
	l := s.Layer
	if !l.Material.needsWax() || l.IsWaxed || l.IsUnderFilm {
		return nil
	}
	isCovered := false
	for _, next := range s.after {
		if next.Kind != Wash {
			isCovered = next.Kind == Coat || next.Kind == Fill
			break
		}
	}
	if isCovered && !s.Film.takes() {
		return nil
	}
	return []Finding{{Severity: Refuse, Fix: AddWax}}
}

func wetFilm(s sight) []Finding {
	l := s.Layer
	const slack = unit.WetFilm(unit.Micrometre)
	switch {
	case l.Wet == 0:
	case l.WetMost > 0 && l.Wet > l.WetMost+slack:
		return l.beside(finding(Refuse, MoreCoats, float64(l.Wet), float64(l.WetMost), unit.InMicrometre))
	case l.Wet < l.WetLeast-slack:
		return l.beside(finding(Refuse, FewerCoats, float64(l.Wet), float64(l.WetLeast), unit.InMicrometre))
	case l.Wet < l.WetAsk-slack:
		return []Finding{finding(Ask, FewerCoats, float64(l.Wet), float64(l.WetAsk), unit.InMicrometre)}
	}
	return nil
}

// beside adds to a finding about one coat what would do in its place.
func (l Layer) beside(f Finding) []Finding {
	f.Near = near(l.Wet*unit.WetFilm(max(l.Coats, 1)), l.WetLeast, l.WetMost)
	return []Finding{f}
}

func thinning(s sight) []Finding {
	l := s.Layer
	const slack = 1e-9
	switch {
	case l.ThinnerMost > 0 && l.Thinner > l.ThinnerMost+slack:
		return []Finding{finding(Refuse, LessThinner, float64(l.Thinner), float64(l.ThinnerMost), unit.InPercent)}
	case l.ThinnerAsk > 0 && l.Thinner > l.ThinnerAsk+slack:
		return []Finding{finding(Ask, LessThinner, float64(l.Thinner), float64(l.ThinnerAsk), unit.InPercent)}
	}
	return nil
}

func waxing(s sight) []Finding {
	const slack = 1e-9
	wax := s.Layer.Wax
	switch {
	case !s.Layer.IsWaxed || wax == 0:
	case wax > overWax+slack:
		return []Finding{finding(Refuse, OtherWax, float64(wax), float64(overWax), unit.InPercent)}
	case wax > mostWax+slack:
		return []Finding{finding(Ask, OtherWax, float64(wax), float64(mostWax), unit.InPercent)}
	case wax < leastWax-slack:
		return []Finding{finding(Ask, OtherWax, float64(wax), float64(leastWax), unit.InPercent)}
	}
	return nil
}

func sandSoon(s sight) []Finding {
	if s.below == nil || !s.knowsAge || s.age >= s.below.SandingFrom {
		return nil
	}
	return []Finding{finding(Refuse, WaitLonger, float64(s.age), float64(s.below.SandingFrom), unit.InHour)}
}
