package cure

import (
	"fmt"
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// CupTest is one test cup of the builder's: stirred for 60 s, and timed from
// catalyst in to the moment a lifted string of it snaps. For a fixed ratio Catalyst
// is left out.
type CupTest struct {
	Gel         working.Figure[unit.Time]
	Temperature working.Figure[unit.Temperature]
	Catalyst    working.Figure[unit.ByMass] // really used, of all that cures
	Mass        working.Figure[unit.Mass]
}

// Fit says what the builder's cup tests made of a product's gel time.
type Fit int

// The fits.
const (
	FromCard      Fit = iota // no tests
	Scaled                   // tests at about one temperature: they move the time, the energy is the card's
	Fitted                   // tests over MinSpan or more: they give the energy
	FittedUnusual            // the same, with an energy that is taken only between the tested temperatures
)

// The limits of a fit.
const (
	// MinSpan is the least span of temperatures from which tests give an energy:
	// over less, the watch and the thermometer decide it. Source: assumption.
	MinSpan unit.TemperatureDifference = 8

	// MaxTests bounds a fit.
	MaxTests = 500

	usualLeast = 30 * kilojoule
	usualMost  = 90 * kilojoule
	leastTaken = 20 * kilojoule
	mostTaken  = 130 * kilojoule
	kilojoule  = unit.MolarEnergy(1000)

	// leastHalfBand keeps lucky tests from faking certainty: fifteen per cent on
	// either side, the error left by stirring, watch and thermometer. Source:
	// assumption.
	leastHalfBand = 0.15
	// leastOff is the least error of a single time, for the slope. Source:
	// assumption.
	leastOff = 0.1
)

// TestFault says what is wrong with a cup test.
type TestFault int

// The faults of a test.
const (
	GelTimeFault     TestFault = iota // outside 0.5 min–24 h
	TemperatureFault                  // outside −20 to 60 °C
	CatalystFault                     // outside 0.1–6 %, or missing, or there with a fixed ratio
	MassFault                         // outside 5 g–20 kg
	UnlikeMass                        // over twice the lightest test: not to be compared
	TooManyTests                      // over MaxTests
)

// TestError says which cup test can't be used, and why.
type TestError struct {
	Test  int // from 0
	Fault TestFault
}

// Error names test and fault.
func (e *TestError) Error() string {
	return fmt.Sprintf("cure: cup test %d: fault %d", e.Test+1, e.Fault)
}

// EnergyError says that cup tests give an energy that no such product has: a slip
// in a temperature, a time or a dose. The card's times can't be used instead, since
// the tests contradict them.
type EnergyError struct{ Energy, Least, Most unit.MolarEnergy }

// Error names the energy and what is taken.
func (e *EnergyError) Error() string {
	return fmt.Sprintf("cure: the cup tests give an activation energy of %s; %s to %s is taken", kJ(e.Energy), kJ(e.Least), kJ(e.Most))
}

func kJ(e unit.MolarEnergy) string { return unit.Write(float64(e), unit.InKilojoulePerMole, 4) }

// The methods of Tested.
var (
	testedTime = &working.Rule{Formula: "mean of the logarithms of the tests' times, taken to their mean temperature and catalyst",
		Source: source.Ref{Document: &source.House, Place: "the builder's cup tests"}, Mark: source.Calculated, Result: reference, IsProse: true}
	testedEnd = &working.Rule{Formula: "the tested time less and more twice the tests' scatter; at least their farthest, and at least 15 %",
		Source: source.Ref{Document: &source.House, Place: "the builder's cup tests"}, Mark: source.Assumption, Result: reference, IsProse: true}
	testedEnergy = &working.Rule{Formula: "least squares of the logarithm of the time, corrected for catalyst, on 1 ÷ T; the slope is Ea ÷ R",
		Source: source.Ref{Document: &source.House, Place: "cup tests over 8 °C or more"}, Mark: source.Calculated, Result: energy, IsProse: true}
	testedEnergyEnd = &working.Rule{Formula: "the fitted energy less and more twice its standard error, over the range of n, and within 20–130 kJ/mol",
		Source: source.Ref{Document: &source.House, Place: "the builder's cup tests"}, Mark: source.Assumption, Result: energy, IsProse: true}
	meanTemperature = &working.Rule{Formula: "mean temperature of the tests, as 1 ÷ T",
		Source: source.Ref{Document: &source.House, Place: "the builder's cup tests"}, Mark: source.Calculated, Result: working.Arg{Symbol: "T_ref", Meaning: "temperature of the tests", Scale: unit.InCelsius, Min: coldestRead, Max: warmestRead}, IsProse: true}
	meanCatalyst = &working.Rule{Formula: "geometric mean of the tests' catalyst",
		Source: source.Ref{Document: &source.House, Place: "the builder's cup tests"}, Mark: source.Calculated, Result: share, IsProse: true}
	lightest = &working.Rule{Formula: "the lightest of the tests",
		Source: source.Ref{Document: &source.House, Place: "the builder's cup tests"}, Mark: source.Calculated, Result: working.Arg{Symbol: "m_0", Meaning: "tested mass", Scale: unit.InGram, Min: 5, Max: 20000}, IsProse: true}
)

// Tested corrects the card's gel time by the builder's cup tests. Their mean
// becomes the reference point. Tests that span MinSpan or more give the energy
// (least squares on ln t against 1/T, with n fixed at its middle): 30–90 kJ/mol is
// taken, 20–30 and 90–130 only between the tested temperatures, beyond is refused.
// Others leave the card's energy. The band holds the tests' scatter. With no test
// the card's own is returned; where tests are refused there are no minutes at all,
// since the tests contradict the card's.
// Errors: *TestError, *EnergyError, *GelError.
// Source: least squares; the limits are common sense about 40–60 kJ/mol in
// J. Appl. Polym. Sci. 102 (2006) 1870–1876.
func (g Gel) Tested(tests ...CupTest) (Gel, error) {
	if len(tests) == 0 {
		return g, nil
	}
	if !g.Time.isInOrder() || !g.Energy.isInOrder() || !g.isFixedRatio() && !g.Order.isInOrder() {
		return Gel{}, &GelError{"card"}
	}
	if err := g.checkTests(tests); err != nil {
		return Gel{}, err
	}
	line, fit, energies := g.line(tests, g.Order.Mid.Value), Scaled, g.Energy
	if line.span >= float64(MinSpan)-1e-9 {
		var err error
		if fit, energies, err = g.fitted(tests, line); err != nil {
			return Gel{}, err
		}
	} else {
		line = line.withSlope(float64(g.Energy.Mid.Value) / unit.GasConstant)
	}
	g = g.movedTo(tests, line)
	g.Fit, g.Energy, g.TestedAt = fit, energies, nil
	for _, t := range tests {
		g.TestedAt = append(g.TestedAt, t.Temperature.Value)
	}
	return g, nil
}

func (g Gel) checkTests(tests []CupTest) error {
	if len(tests) > MaxTests {
		return &TestError{MaxTests, TooManyTests}
	}
	for i, t := range tests {
		if fault, isBad := g.fault(t); isBad {
			return &TestError{i, fault}
		}
	}
	most := 2 * lightestOf(tests) * (1 + 1e-9)
	for i, t := range tests {
		if t.Mass.Value > most {
			return &TestError{i, UnlikeMass}
		}
	}
	return nil
}

func (g Gel) fault(t CupTest) (fault TestFault, isBad bool) {
	minutes, grams := unit.InMinute.From(float64(t.Gel.Value)), unit.InGram.From(float64(t.Mass.Value))
	percent := unit.InPercent.From(float64(t.Catalyst.Value))
	hasCatalyst := percent >= 0.1 && percent <= 6
	switch {
	case !(minutes >= 0.5 && minutes <= 1440):
		return GelTimeFault, true
	case !isTemperature(t.Temperature.Value):
		return TemperatureFault, true
	case g.isFixedRatio() && t.Catalyst.Step != nil || !g.isFixedRatio() && !hasCatalyst:
		return CatalystFault, true
	case !(grams >= 5 && grams <= 20000):
		return MassFault, true
	}
	return 0, false
}

// fitted is the energy that the tests give, with its range over that of n.
func (g Gel) fitted(tests []CupTest, mid line) (Fit, Range[unit.MolarEnergy], error) {
	ea := unit.MolarEnergy(mid.slope * unit.GasConstant)
	if !(ea >= leastTaken && ea <= mostTaken) {
		return 0, Range[unit.MolarEnergy]{}, &EnergyError{ea, leastTaken, mostTaken}
	}
	fit := Fitted
	if ea < usualLeast || ea > usualMost {
		fit = FittedUnusual
	}
	low, high := ea, ea
	for _, n := range g.Order.ends() {
		l := g.line(tests, n.Value)
		off := 2 * l.slopeError()
		low = min(low, unit.MolarEnergy((l.slope-off)*unit.GasConstant))
		high = max(high, unit.MolarEnergy((l.slope+off)*unit.GasConstant))
	}
	from := steps(tests)
	return fit, Range[unit.MolarEnergy]{
		Low:  working.By(testedEnergyEnd, max(low, leastTaken), from...),
		Mid:  working.By(testedEnergy, ea, from...),
		High: working.By(testedEnergyEnd, min(high, mostTaken), from...),
	}, nil
}

// movedTo makes the mean of the tests the reference point, with their scatter.
func (g Gel) movedTo(tests []CupTest, l line) Gel {
	from := steps(tests)
	low, high := max(l.halfBand(), -math.Log1p(-leastHalfBand)), max(l.halfBand(), math.Log1p(leastHalfBand))
	at := math.Exp(l.meanY - float64(g.Order.Mid.Value)*l.meanLnC)
	if !g.isFixedRatio() {
		g.Catalyst = working.By(meanCatalyst, unit.ByMass(math.Exp(l.meanLnC)), from...)
	}
	g.Time = Range[unit.Time]{
		Low:  working.By(testedEnd, unit.Time(at*math.Exp(-low)), from...),
		Mid:  working.By(testedTime, unit.Time(at), from...),
		High: working.By(testedEnd, unit.Time(at*math.Exp(high)), from...),
	}
	g.Temperature = working.By(meanTemperature, unit.Temperature(1/l.meanX), from...)
	g.Mass = working.By(lightest, lightestOf(tests), from...)
	return g
}

func lightestOf(tests []CupTest) unit.Mass {
	light := tests[0].Mass.Value
	for _, t := range tests {
		light = min(light, t.Mass.Value)
	}
	return light
}

func steps(tests []CupTest) []*working.Step {
	var list []*working.Step
	for _, t := range tests {
		list = append(list, t.Gel.Step, t.Temperature.Step, t.Catalyst.Step)
	}
	return list
}
