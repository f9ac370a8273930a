package cure

import (
	"fmt"
	"math"
	"slices"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Range is a figure with the ends of what it may be.
type Range[Q unit.Quantity] struct{ Low, Mid, High working.Figure[Q] }

func (r Range[Q]) isInOrder() bool {
	return r.Low.Value > 0 && r.Low.Value <= r.Mid.Value && r.Mid.Value <= r.High.Value && !math.IsInf(float64(r.High.Value), 0)
}

func (r Range[Q]) ends() [2]working.Figure[Q] { return [2]working.Figure[Q]{r.Low, r.High} }

// Gel is what is known of how soon a product gels: a reference point and how
// the time moves from there. For a system of a fixed ratio, whose time moves
// with temperature only, Catalyst and Order are left out.
type Gel struct {
	Time        Range[unit.Time] // at the reference point
	Temperature working.Figure[unit.Temperature]
	Catalyst    working.Figure[unit.ByMass] // of all that cures
	Order       Range[unit.Factor]          // n: the time falls with catalyst to this power
	Energy      Range[unit.MolarEnergy]     // Ea
	Mass        working.Figure[unit.Mass]   // of the cup that the time was taken in

	Fit      Fit                // what Tested made of the builder's cup tests
	TestedAt []unit.Temperature // their temperatures
}

// How close to a test the ranges of energy and catalyst don't widen the band: what
// they leave open there is within the ±15 % of the test. Source: assumption.
const (
	nearTest  unit.TemperatureDifference = 5
	nearShare unit.ByMass                = 1.25 // times more catalyst or less
)

// Band is a gel time as the extremes over all that is not known.
type Band struct{ Early, Mid, Late working.Figure[unit.Time] }

// The limits of a gel time.
const (
	// MostFromKnown is how far from a known temperature minutes are still given.
	MostFromKnown unit.TemperatureDifference = 15
	// MostTimesTested is the largest cup, in multiples of the tested mass, for
	// which minutes are given: gel time depends on the mass. Source: ASTM D2471 for
	// the dependence; assumption for the factor.
	MostTimesTested = 5
)

// FarError says that a temperature is too far from every known one for minutes.
type FarError struct {
	Value, Nearest unit.Temperature // Nearest: of the known temperatures
	Unusual        bool             // the fitted energy is unusual: only between the tests
}

// Error names the temperature and the nearest known one.
func (e *FarError) Error() string {
	return fmt.Sprintf("cure: no minutes at %s, the nearest known temperature is %s", celsius(e.Value), celsius(e.Nearest))
}

// GelError says that a product's gel time can't be worked out: a range is out of
// order, or only one side has a catalyst.
type GelError struct{ What string }

// Error names the figure.
func (e *GelError) Error() string { return "cure: can't reckon a gel time with this " + e.What }

var (
	gelTime   = working.Arg{Symbol: "t", Meaning: "gel time", Scale: unit.InMinute, Min: 0, Max: 1e6}
	reference = working.Arg{Symbol: "t_ref", Meaning: "gel time at the reference point", Scale: unit.InMinute, Min: 0.5, Max: 1440}
	byCat     = working.Arg{Symbol: "f_c", Meaning: "factor for catalyst", Scale: unit.InPure, Min: 1e-3, Max: 1e3}
	byTemp    = working.Arg{Symbol: "f_T", Meaning: "factor for temperature", Scale: unit.InPure, Min: 1e-4, Max: 1e4}
	energy    = working.Arg{Symbol: "Ea", Meaning: "activation energy", Scale: unit.InKilojoulePerMole, Min: 10, Max: 150}
)

// byCatalyst is how gel time moves with catalyst.
var byCatalyst = working.Rule3[unit.ByMass, unit.ByMass, unit.Factor, unit.Factor]{Rule: &working.Rule{Formula: "f_c = (c_ref ÷ c) ^ n", Source: source.Ref{Document: &source.House, Place: "a power of the catalyst"}, Mark: source.Assumption,
	Result: byCat,
	Args: []working.Arg{
		{Symbol: "c_ref", Meaning: "catalyst at the reference point", Scale: unit.InPercent, Min: 0.1, Max: 6},
		share,
		{Symbol: "n", Meaning: "order in catalyst", Scale: unit.InPure, Min: 0.2, Max: 2},
	}},
	Code: func(ref, c unit.ByMass, n unit.Factor) unit.Factor {
		return unit.Factor(math.Pow(float64(ref/c), float64(n)))
	}}

// byTemperature is how gel time moves with temperature, after Arrhenius.
var byTemperature = working.Rule3[unit.MolarEnergy, unit.Temperature, unit.Temperature, unit.Factor]{Rule: &working.Rule{Formula: "f_T = exp(1000 × Ea ÷ 8.314462618 × (1 ÷ (T + 273.15) − 1 ÷ (T_ref + 273.15)))",
	Source: source.Ref{Document: &source.JAPS102}, Mark: source.Published,
	Result: byTemp,
	Args: []working.Arg{
		energy,
		{Symbol: "T", Meaning: "temperature", Scale: unit.InCelsius, Min: coldestRead, Max: warmestRead},
		{Symbol: "T_ref", Meaning: "temperature of the reference point", Scale: unit.InCelsius, Min: coldestRead, Max: warmestRead},
	}},
	Code: func(ea unit.MolarEnergy, t, ref unit.Temperature) unit.Factor {
		return unit.Factor(math.Exp(float64(ea) / unit.GasConstant * (1/float64(t) - 1/float64(ref))))
	}}

var gelOfDose = working.Rule3[unit.Time, unit.Factor, unit.Factor, unit.Time]{Rule: &working.Rule{Formula: "t = t_ref × f_c × f_T", Source: source.Ref{Document: &source.JAPS102, Place: "and a power of the catalyst"}, Mark: source.Calculated,
	Result: gelTime, Args: []working.Arg{reference, byCat, byTemp}},
	Code: func(ref unit.Time, c, t unit.Factor) unit.Time { return ref * unit.Time(c) * unit.Time(t) }}

var gelOfRatio = working.Rule2[unit.Time, unit.Factor, unit.Time]{Rule: &working.Rule{Formula: "t = t_ref × f_T", Source: source.Ref{Document: &source.TCA447}, Mark: source.Calculated,
	Result: gelTime, Args: []working.Arg{reference, byTemp}},
	Code: func(ref unit.Time, t unit.Factor) unit.Time { return ref * unit.Time(t) }}

// At is the gel time at a temperature with a share of catalyst, for the tested
// mass: t = t_ref (c_ref/c)^n · exp[(Ea/R)(1/T − 1/T_ref)], the middle and the
// extremes over all corners of the ranges of t_ref, n and Ea.
// Range: at most MostFromKnown from a known temperature; between the tested ones
// only, where their energy is unusual. Errors: *FarError, *GelError,
// *working.RangeError.
// Source: J. Appl. Polym. Sci. 102 (2006) 1870–1876 for the temperature;
// assumption for the power of the catalyst.
func (g Gel) At(t working.Figure[unit.Temperature], c working.Figure[unit.ByMass]) (Band, error) {
	if err := g.check(t.Value, c); err != nil {
		return Band{}, err
	}
	mid, err := g.corner(t, c, g.Time.Mid, g.Order.Mid, g.Energy.Mid)
	b := Band{mid, mid, mid}
	if err != nil {
		return Band{}, err
	}
	for i := range 8 { // the time is monotonic in each of the three: its extremes are corners
		at, err := g.corner(t, c, g.Time.ends()[i&1], g.Order.ends()[i>>1&1], g.Energy.ends()[i>>2])
		if err != nil {
			return Band{}, err
		}
		if at.Value < b.Early.Value {
			b.Early = at
		}
		if at.Value > b.Late.Value {
			b.Late = at
		}
	}
	return b, nil
}

// corner is the gel time for one choice of what isn't known.
func (g Gel) corner(t working.Figure[unit.Temperature], c working.Figure[unit.ByMass],
	ref working.Figure[unit.Time], n working.Figure[unit.Factor], ea working.Figure[unit.MolarEnergy]) (working.Figure[unit.Time], error) {
	fT, err := g.byTemperature(t, ea)
	if err != nil {
		return working.Figure[unit.Time]{}, err
	}
	if g.isFixedRatio() {
		return gelOfRatio.Figure(ref, fT)
	}
	fC, err := g.byCatalyst(c, n)
	if err != nil {
		return working.Figure[unit.Time]{}, err
	}
	return gelOfDose.Figure(ref, fC, fT)
}

// byTemperature is the factor from the reference point to a temperature: within
// nearTest of a test by the middle energy, beyond that by ea.
func (g Gel) byTemperature(t working.Figure[unit.Temperature], ea working.Figure[unit.MolarEnergy]) (working.Figure[unit.Factor], error) {
	if len(g.TestedAt) == 0 {
		return byTemperature.Figure(ea, t, g.Temperature)
	}
	test := g.nearest(t.Value)
	edge := min(max(t.Value, test-unit.Temperature(nearTest)), test+unit.Temperature(nearTest))
	if edge == t.Value {
		return byTemperature.Figure(g.Energy.Mid, t, g.Temperature)
	}
	at := working.Given(edge, "5 °C from the nearest test", unit.InCelsius, "", source.Assumption)
	near, err := byTemperature.Figure(g.Energy.Mid, at, g.Temperature)
	if err != nil {
		return near, err
	}
	far, err := byTemperature.Figure(ea, t, at)
	if err != nil {
		return far, err
	}
	return bothFactors.Figure(near, far)
}

// byCatalyst is the factor from the reference point to a share of catalyst: within
// a quarter of the tests' by the middle power, beyond that by n.
func (g Gel) byCatalyst(c working.Figure[unit.ByMass], n working.Figure[unit.Factor]) (working.Figure[unit.Factor], error) {
	if len(g.TestedAt) == 0 {
		return byCatalyst.Figure(g.Catalyst, c, n)
	}
	edge := min(max(c.Value, g.Catalyst.Value/nearShare), g.Catalyst.Value*nearShare)
	if edge == c.Value {
		return byCatalyst.Figure(g.Catalyst, c, g.Order.Mid)
	}
	at := working.Given(edge, "a quarter from the tests' catalyst", unit.InPercent, "", source.Assumption)
	near, err := byCatalyst.Figure(g.Catalyst, at, g.Order.Mid)
	if err != nil {
		return near, err
	}
	far, err := byCatalyst.Figure(at, c, n)
	if err != nil {
		return far, err
	}
	return bothFactors.Figure(near, far)
}

// bothFactors goes from the reference point by way of a place near the tests.
var bothFactors = working.Rule2[unit.Factor, unit.Factor, unit.Factor]{Rule: &working.Rule{Formula: "f = f_1 × f_2", Source: source.Ref{Document: &source.House, Place: "near a test by the middle, from there on by the range"}, Mark: source.Assumption,
	Result: working.Arg{Symbol: "f", Meaning: "factor", Scale: unit.InPure, Min: 1e-8, Max: 1e8},
	Args:   []working.Arg{{Symbol: "f_1", Meaning: "factor near the tests", Scale: unit.InPure, Min: 1e-4, Max: 1e4}, {Symbol: "f_2", Meaning: "factor from there on", Scale: unit.InPure, Min: 1e-4, Max: 1e4}}},
	Code: func(near, far unit.Factor) unit.Factor { return near * far }}

func (g Gel) isFixedRatio() bool { return g.Catalyst.Step == nil }

func (g Gel) check(t unit.Temperature, c working.Figure[unit.ByMass]) error {
	switch {
	case !g.Time.isInOrder():
		return &GelError{"range of times"}
	case !g.Energy.isInOrder():
		return &GelError{"range of energies"}
	case !g.isFixedRatio() && !g.Order.isInOrder():
		return &GelError{"range of orders"}
	case g.isFixedRatio() != (c.Step == nil):
		return &GelError{"catalyst: the reference point and the cup must both have one, or neither"}
	}
	return g.near(t)
}

// near refuses a temperature too far from every known one.
func (g Gel) near(t unit.Temperature) error {
	nearest := g.nearest(t)
	coldest, warmest := slices.Min(g.known()), slices.Max(g.known())
	isUnusual := g.Fit == FittedUnusual
	isFar := !(math.Abs(float64(t-nearest)) <= float64(MostFromKnown)+1e-9)
	if isFar || isUnusual && !(t >= coldest-lastBits && t <= warmest+lastBits) {
		return &FarError{t, nearest, isUnusual}
	}
	return nil
}

// nearest is the known temperature closest to another.
func (g Gel) nearest(t unit.Temperature) unit.Temperature {
	nearest := g.known()[0]
	for _, k := range g.known() {
		if math.Abs(float64(t-k)) < math.Abs(float64(t-nearest)) {
			nearest = k
		}
	}
	return nearest
}

// known is the temperatures at which a gel time was taken: those of the builder's
// tests, else the card's.
func (g Gel) known() []unit.Temperature {
	if len(g.TestedAt) > 0 {
		return g.TestedAt
	}
	return []unit.Temperature{g.Temperature.Value}
}

// MostMass is the largest cup for which the minutes hold, m_t = 5 × m_0.
// Range: m_0 5 g–20 kg. Errors: *working.RangeError.
// Source: ASTM D2471 for the dependence of gel time on the mass; the factor is an
// assumption.
var MostMass = working.Rule1[unit.Mass, unit.Mass]{Rule: &working.Rule{Formula: "m_t = 5 × m_0", Source: source.Ref{Document: &source.ASTMD2471, Place: "gel time depends on the volume mixed"}, Mark: source.Assumption,
	Result: working.Arg{Symbol: "m_t", Meaning: "largest cup that the gel time holds for", Scale: unit.InGram, Min: 25, Max: 1e5},
	Args:   []working.Arg{{Symbol: "m_0", Meaning: "tested mass", Scale: unit.InGram, Min: 5, Max: 20000}}},
	Code: func(m unit.Mass) unit.Mass { return MostTimesTested * m }}

// InCupError says that a cup is too large for the minutes of a tested one.
type InCupError struct{ Cup, Most unit.Mass }

// Error names both masses.
func (e *InCupError) Error() string {
	return fmt.Sprintf("cure: no minutes for a cup of %s, tested for up to %s", grams(e.Cup), grams(e.Most))
}

// InCup is the gel time in a cup of the given mass: At, and refused where the cup
// is over MostTimesTested times the tested mass. The pot life of a fixed ratio is
// InCup without catalyst.
// Errors: as At, and *InCupError.
func (g Gel) InCup(t working.Figure[unit.Temperature], c working.Figure[unit.ByMass], cup unit.Mass) (Band, error) {
	most, err := MostMass.Figure(g.Mass)
	if err != nil {
		return Band{}, err
	}
	if !(cup > 0 && cup <= most.Value*(1+1e-9)) {
		return Band{}, &InCupError{cup, most.Value}
	}
	return g.At(t, c)
}
