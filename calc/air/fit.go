package air

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// DewMargin is how far a surface must lie above the dew point where the maker
// says nothing. Source: ISO 8502-4 as reported.
var DewMargin = working.Given(unit.TemperatureDifference(3), "least margin over the dew point", unit.InCelsiusDifference,
	source.ISO8502_4.At("").String(), source.Published)

// Limits are what a card asks of the air and of the surface.
type Limits struct {
	Least, Most     unit.Temperature           // of the surface
	Driest, Dampest unit.Share                 // relative humidity of the air
	Margin          unit.TemperatureDifference // of the surface over the dew point
	Cure            unit.Time                  // how long after the last of the coat margin and least temperature must hold
}

// longestCure bounds the search through the cure.
const longestCure = 7 * unit.Day

// Validate says if the limits can be met at all.
// Range: Least ≤ Most ≤ 100 °C, 0 ≤ Driest ≤ Dampest ≤ 1, Margin 0 to 20 °C, Cure 0 to 7 days. Errors: *InputError.
func (l Limits) Validate() error {
	for _, err := range []error{
		checkRange(CardTemperature, float64(l.Least), 0, float64(l.Most)),
		checkRange(CardTemperature, float64(l.Most), float64(l.Least), float64(unit.ZeroCelsius+100)),
		checkRange(CardHumidity, float64(l.Driest), 0, float64(l.Dampest)),
		checkRange(CardHumidity, float64(l.Dampest), float64(l.Driest), 1),
		checkRange(CardMargin, float64(l.Margin), 0, 20),
		checkRange(CureTime, float64(l.Cure), 0, float64(longestCure)),
	} {
		if err != nil {
			return err
		}
	}
	return nil
}

// Conditions are what the limits are compared with, at one time. A surface that
// wasn't measured has a band.
type Conditions struct {
	At               unit.Time
	Coldest, Hottest unit.Temperature // of the surface
	Dew              unit.Temperature
	Humidity         unit.Share
}

// Condition is one of the demands on air and surface.
type Condition int

// The conditions, named by how they are missed.
const (
	TooCold    Condition = iota // surface under the card's least temperature
	TooHot                      // surface over the card's most
	TooDry                      // air under the card's humidity floor
	TooDamp                     // air over the card's humidity ceiling
	TooNearDew                  // surface too little above the dew point
)

// demand is how a condition is checked: its value, its limit and their scale, and
// whether the value must stay below the limit.
type demand struct {
	scale     unit.Scale
	value     func(Conditions) float64
	limit     func(Limits) float64
	isCeiling bool
}

var demands = [...]demand{
	TooCold: {unit.InCelsius, func(c Conditions) float64 { return float64(c.Coldest) }, func(l Limits) float64 { return float64(l.Least) }, false},
	TooHot:  {unit.InCelsius, func(c Conditions) float64 { return float64(c.Hottest) }, func(l Limits) float64 { return float64(l.Most) }, true},
	TooDry:  {unit.InPercent, func(c Conditions) float64 { return float64(c.Humidity) }, func(l Limits) float64 { return float64(l.Driest) }, false},
	TooDamp: {unit.InPercent, func(c Conditions) float64 { return float64(c.Humidity) }, func(l Limits) float64 { return float64(l.Dampest) }, true},
	TooNearDew: {unit.InCelsiusDifference, func(c Conditions) float64 { return float64(c.Coldest - c.Dew) },
		func(l Limits) float64 { return float64(l.Margin) }, false},
}

// Scale is the scale in which a finding of the condition is read.
func (k Condition) Scale() unit.Scale { return demands[k].scale }

// allConditions lists every condition; lasting lists those that must hold through
// the cure.
var (
	allConditions = []Condition{TooCold, TooHot, TooDry, TooDamp, TooNearDew}
	lasting       = []Condition{TooCold, TooNearDew}
)

// Finding says which condition is missed, by what value, and when.
type Finding struct {
	Condition    Condition
	Value, Limit float64   // SI, to be read in Condition.Scale
	At           unit.Time // from midnight, when it is first missed
}

// slack forgives the last bits of a conversion: a thousandth of a millidegree.
const slack = 1e-6

// room is how far the condition is from being missed; negative: it is missed.
func (l Limits) room(k Condition, c Conditions) float64 {
	d := demands[k]
	if d.isCeiling {
		return d.limit(l) - d.value(c) + slack
	}
	return d.value(c) - d.limit(l) + slack
}

func (l Limits) finding(k Condition, c Conditions) Finding {
	return Finding{k, demands[k].value(c), demands[k].limit(l), c.At}
}

// Findings lists the conditions that are missed. None found is no clearance: it
// says nothing of the cure to come.
func (l Limits) Findings(c Conditions) []Finding {
	var list []Finding
	for _, k := range allConditions {
		if !(l.room(k, c) >= 0) { // also for NaN
			list = append(list, l.finding(k, c))
		}
	}
	return list
}

// Fit compares a card's limits with a surface through a day.
type Fit struct {
	day     Day
	surface Surface
	limits  Limits
}

// NewFit makes a fit. Errors: those of Limits.Validate.
func NewFit(d Day, s Surface, l Limits) (Fit, error) { return Fit{d, s, l}, l.Validate() }

// Conditions are those of the day's curve at a time from midnight.
func (f Fit) Conditions(at unit.Time) Conditions { return f.under(f.surface.By(f.day, at), at) }

func (f Fit) under(o Offset, at unit.Time) Conditions {
	air := f.day.Air(at)
	dew := cappedDew(f.day.dew.Value, air)
	return Conditions{at, air + unit.Temperature(o.Least.Value), air + unit.Temperature(o.Most.Value), dew, humidityAt(dew, air)}
}

// Now lists the conditions that the day's curve misses at a time from midnight.
func (f Fit) Now(at unit.Time) []Finding { return f.limits.Findings(f.Conditions(at)) }

// Through lists which of margin and least temperature are missed between a time
// and the end of the cure after it: when first, and the worst value in it.
func (f Fit) Through(at unit.Time) []Finding {
	var list []Finding
	for _, k := range lasting {
		if found, missed := f.first(k, Interval{at, at + f.limits.Cure}); missed {
			list = append(list, found)
		}
	}
	return list
}

// first finds when a condition is first missed in an interval, and its worst value there.
func (f Fit) first(k Condition, within Interval) (Finding, bool) {
	since, missed := within.From, within.From < within.To
	if held := f.holding(within, k); len(held) > 0 && held[0].From == within.From {
		since, missed = held[0].To, held[0].To < within.To
	}
	if !missed {
		return Finding{}, false
	}
	worst := f.Conditions(since)
	for _, p := range pieces(f.day, f.surface, within) {
		for _, at := range []unit.Time{p.From, p.To} {
			if c := f.under(p.offset, at); f.limits.room(k, c) < f.limits.room(k, worst) {
				worst = c
			}
		}
	}
	found := f.limits.finding(k, worst)
	found.At = since
	return found, true
}
