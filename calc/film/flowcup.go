package film

import (
	"fmt"
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// ISO 2431 cups: kinematic viscosity from the flow time, ν = a × t − b ÷ t
// (mm²/s, s), each for 30–100 s and for products that flow freely. Errors:
// *working.RangeError. Source: ISO 2431 (from memory).
var (
	Cup3 = isoCup("ν = 0.443 × t − 200 ÷ t", 0.443, 200) // 3 mm
	Cup4 = isoCup("ν = 1.37 × t − 200 ÷ t", 1.37, 200)   // 4 mm
	Cup5 = isoCup("ν = 3.28 × t − 220 ÷ t", 3.28, 220)   // 5 mm
	Cup6 = isoCup("ν = 6.90 × t − 570 ÷ t", 6.90, 570)   // 6 mm
)

// FlowCup is an ISO 2431 cup, by its orifice.
type FlowCup struct {
	Orifice   unit.Length
	Viscosity working.Rule1[unit.Time, unit.KinematicViscosity]
}

// FlowCups is every cup that a flow time can be read with.
var FlowCups = []FlowCup{
	{3 * unit.Millimetre, Cup3}, {4 * unit.Millimetre, Cup4}, {5 * unit.Millimetre, Cup5}, {6 * unit.Millimetre, Cup6},
}

func isoCup(formula string, a, b float64) working.Rule1[unit.Time, unit.KinematicViscosity] {
	const least, most = 30, 100 // s
	of := func(s float64) float64 { return a*s - b/s }
	return working.Rule1[unit.Time, unit.KinematicViscosity]{Rule: &working.Rule{Formula: formula, Source: source.Ref{Document: &source.ISO2431}, Mark: source.FromMemory,
		Result: working.Arg{Symbol: "ν", Meaning: "kinematic viscosity", Scale: unit.InSquareMillimetrePerSec, Min: of(least), Max: of(most)},
		Args:   []working.Arg{{Symbol: "t", Meaning: "flow time", Scale: unit.InSecond, Min: least, Max: most}}},
		Code: func(t unit.Time) unit.KinematicViscosity {
			return unit.KinematicViscosity(unit.InSquareMillimetrePerSec.SI(of(unit.InSecond.From(float64(t)))))
		}}
}

// ThinnerForTime is the method of ThinnerForFlow.
var ThinnerForTime = &working.Rule{Formula: "straight line through the logarithm of two flow times against thinner, read off at the wanted time, both timed at one temperature; only between them",
	Source: source.Ref{Document: &source.House, Place: "two timed readings"}, Mark: source.Assumption,
	Result: working.Arg{Symbol: "t", Meaning: "thinner per volume of product as sold", Scale: unit.InPercent, Min: 0, Max: 50}, IsProse: true}

// FlowReading is one flow-cup time that the builder took.
type FlowReading struct {
	Thinner     working.Figure[unit.ByVolume]
	Time        working.Figure[unit.Time]
	Temperature unit.Temperature
}

// The limits of ThinnerForFlow.
const (
	// SameTemperature is how far apart two readings may be and still count as one
	// temperature: a kelvin moves a flow time by about as much as the thumb on the
	// stopwatch.
	SameTemperature unit.TemperatureDifference = 1
	// LeastTimeRatio is the least ratio between two times: any closer, and their
	// line is made of reading errors.
	LeastTimeRatio = 1.1
	// BeyondReadings is the ratio up to which a wanted time past a reading still
	// counts as that reading: a repeated flow time differs by as much.
	BeyondReadings = 1.05
)

// FlowCause says why thinner can't be read from two flow times.
type FlowCause int

// The causes of a FlowError.
const (
	OtherTemperature FlowCause = iota // Got and Limit in K apart
	TimesTooClose                     // Got and Limit as ratios of the times
	TimeNotFalling                    // more thinner, but no shorter time
	OutsideReadings                   // Got the wanted time, Limit the nearest reading, s
	NoFlowTime                        // a time that isn't over zero, Got in s
)

// FlowError says why thinner can't be read from two flow times.
type FlowError struct {
	Cause      FlowCause
	Got, Limit float64 // by cause
}

// Error gives the cause for a programmer.
func (e *FlowError) Error() string {
	return fmt.Sprintf("film: no thinner from two flow times (cause %d: %.4g against %.4g)", e.Cause, e.Got, e.Limit)
}

// ThinnerForFlow is the thinner that brings a product to a wanted flow time, by
// the builder's own two readings of it in one cup:
// t = t₁ + (t₂ − t₁) × ln(T ÷ T₁) ÷ ln(T₂ ÷ T₁).
// Range: T between the two times; up to 5 % past one it counts as that one, and anything
// further is to be timed, not worked out. Errors: *FlowError.
// Source: assumption: over a small change of thinner the logarithm of the viscosity
// falls in a straight line.
func ThinnerForFlow(a, b FlowReading, wanted working.Figure[unit.Time]) (working.Figure[unit.ByVolume], error) {
	none := working.Figure[unit.ByVolume]{}
	if a.Thinner.Value > b.Thinner.Value {
		a, b = b, a
	}
	if err := checkFlow(a, b, float64(wanted.Value)); err != nil {
		return none, err
	}
	long, short := float64(a.Time.Value), float64(b.Time.Value)
	want := min(max(float64(wanted.Value), short), long)
	t := a.Thinner.Value + (b.Thinner.Value-a.Thinner.Value)*unit.ByVolume(math.Log(want/long)/math.Log(short/long))
	return working.By(ThinnerForTime, t, a.Thinner.Step, a.Time.Step, b.Thinner.Step, b.Time.Step, wanted.Step), nil
}

func checkFlow(a, b FlowReading, want float64) error {
	long, short := float64(a.Time.Value), float64(b.Time.Value)
	apart := math.Abs(float64(a.Temperature - b.Temperature))
	switch {
	case !(min(long, short, want) > 0):
		return &FlowError{NoFlowTime, min(long, short, want), 0}
	case !(apart <= float64(SameTemperature)):
		return &FlowError{OtherTemperature, apart, float64(SameTemperature)}
	case a.Thinner.Value == b.Thinner.Value || short >= long:
		return &FlowError{TimeNotFalling, short, long}
	case long/short < LeastTimeRatio:
		return &FlowError{TimesTooClose, long / short, LeastTimeRatio}
	case want > long*BeyondReadings:
		return &FlowError{OutsideReadings, want, long}
	case want < short/BeyondReadings:
		return &FlowError{OutsideReadings, want, short}
	}
	return nil
}
