package schedule

import (
	"math"

	"shedreckoner/calc/air"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

const (
	slot  = 10 * unit.Minute
	slots = int(unit.Day / slot)
)

// How many times longer than at 20 °C a wait lasts, between 10 and 30 °C.
// Source: common practice; the straight line of its logarithm is ours.
var (
	waitLonger = working.Rule1[unit.Temperature, unit.Factor]{Rule: &working.Rule{Formula: "k = 2 ^ ((20 − T) ÷ 10)", Source: source.Ref{Document: &source.Practice, Place: "times double at 10 °C"}, Mark: source.CommonPractice,
		Result: working.Arg{Symbol: "k", Meaning: "times longer than at 20 °C", Scale: unit.InPure, Min: 1, Max: 2},
		Args:   []working.Arg{{Symbol: "T", Meaning: "temperature of the surface", Scale: unit.InCelsius, Min: 10, Max: 20}}},
		Code: func(t unit.Temperature) unit.Factor {
			return unit.Factor(math.Pow(float64(material.PaceCold.Value), (20-unit.InCelsius.From(float64(t)))/10))
		}}
	waitShorter = working.Rule1[unit.Temperature, unit.Factor]{Rule: &working.Rule{Formula: "k = 0.6 ^ ((T − 20) ÷ 10)", Source: source.Ref{Document: &source.Practice, Place: "0.6 of the time at 30 °C"}, Mark: source.CommonPractice,
		Result: working.Arg{Symbol: "k", Meaning: "times as long as at 20 °C", Scale: unit.InPure, Min: 0.6, Max: 1},
		Args:   []working.Arg{{Symbol: "T", Meaning: "temperature of the surface", Scale: unit.InCelsius, Min: 20, Max: 30}}},
		Code: func(t unit.Temperature) unit.Factor {
			return unit.Factor(math.Pow(float64(material.PaceWarm.Value), (unit.InCelsius.From(float64(t))-20)/10))
		}}
)

// longer is how many times as long as at 20 °C a wait lasts; false outside 10 to 30
// °C, where nothing is known.
func longer(t unit.Temperature) (unit.Factor, bool) {
	k, err := waitLonger.Of(t)
	if err != nil {
		k, err = waitShorter.Of(t)
	}
	return k, err == nil
}

// pace is hours at 20 °C gained in an hour, for each slot of the day.
type pace [slots]float64

// paces gives the pace at which windows open and the pace at which they close, each
// on the safe side: under 10 °C nothing cures but windows run on; over 30 °C a cure
// gets no faster, and windows run out as in hot sun.
func paces(d air.Day, s air.Surface) (opens, closes pace) {
	const warmest, coldest = unit.ZeroCelsius + 30, unit.ZeroCelsius + 10
	for i := range opens {
		at := (unit.Time(i) + 0.5) * slot
		o := s.By(d, at)
		least, most := d.Air(at)+unit.Temperature(o.Least.Value), d.Air(at)+unit.Temperature(o.Most.Value)
		if k, known := longer(min(least, warmest)); known {
			opens[i] = 1 / float64(k)
		}
		if k, known := longer(max(most, coldest)); known {
			closes[i] = 1 / float64(k)
		} else {
			closes[i] = 1 / float64(material.PaceInSun.Value)
		}
	}
	return opens, closes
}

// when is the time at which a wait, begun at from, of the given hours at 20 °C is
// over; false: later than a calendar holds.
func (p *pace) when(from, hours unit.Time) (unit.Time, bool) {
	var whole unit.Time
	for _, gain := range p {
		whole += unit.Time(gain) * slot
	}
	if hours <= 0 {
		return from, true
	}
	days := math.Ceil(float64(hours/whole)) - 1 // the last is gone through slot by slot
	if days > 10*mostDays {
		return 0, false
	}
	at := from + unit.Time(days)*unit.Day
	hours -= unit.Time(days) * whole
	for hours > 1e-6 {
		i := int(math.Floor(float64(at / slot)))
		room := unit.Time(i+1)*slot - at
		gain := unit.Time(p[(i%slots+slots)%slots])
		if hours <= room*gain {
			return at + hours/gain, true
		}
		at, hours = unit.Time(i+1)*slot, hours-room*gain
	}
	return at, true
}
