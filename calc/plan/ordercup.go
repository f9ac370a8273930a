package plan

import (
	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// The cup that an order is counted in is the working cup of a timed tin on a mild
// day: the day is not known yet, and a tin is timed before the first panel.
var (
	mildDay = working.Given(unit.Of[unit.Temperature](22, unit.InCelsius), "temperature that an order is counted at", unit.InCelsius, "a mild day", source.Assumption)

	timedEarly = working.Rule1[unit.Time, unit.Time]{Rule: &working.Rule{Formula: "t = 0.85 × t_m", Source: source.Ref{Document: &source.House, Place: "±15 % once the tin is timed"}, Mark: source.Assumption,
		Result: working.Arg{Symbol: "t", Meaning: "early gel time of a timed tin", Scale: unit.InMinute, Min: 0, Max: 1e6},
		Args:   []working.Arg{{Symbol: "t_m", Meaning: "gel time, the middle", Scale: unit.InMinute, Min: 0, Max: 1e6}}},
		Code: func(mid unit.Time) unit.Time { return 0.85 * mid }}

	cupInTime = working.Rule3[unit.SpreadingSpeed, unit.Time, unit.MassPerArea, unit.Mass]{Rule: &working.Rule{Formula: "m = v × max(0, S) × w", Source: source.Ref{Document: &source.House, Place: "what can be spread in time"}, Mark: source.Calculated,
		Result: working.Arg{Symbol: "m", Meaning: "cup that can be spread in time", Scale: unit.InGram, Min: 0, Max: 1e9},
		Args: []working.Arg{
			{Symbol: "v", Meaning: "spreading speed", Scale: unit.InSquareMetrePerMinute, Min: 0.005, Max: 5},
			{Symbol: "S", Meaning: "spreading minutes", Scale: unit.InMinute, Min: -1e4, Max: 1e4},
			{Symbol: "w", Meaning: "mix for the area", Scale: unit.InGramPerSquareMetre, Min: 1, Max: 50000},
		}},
		Code: func(v unit.SpreadingSpeed, s unit.Time, w unit.MassPerArea) unit.Mass {
			return unit.Mass(float64(v) * max(0, float64(s)) * float64(w))
		}}

	smallestCounted = working.Given(cure.TestCup, "smallest cup that is counted with", unit.InGram, "", source.Assumption)
	noMixing        = working.Given(unit.Time(0), "minutes to mix", unit.InMinute, "kneading is in the speed", source.CommonPractice)
	usualMixing     = working.Given(material.Mixing.Value, "minutes to mix", unit.InMinute, "", material.Mixing.Mark)
)

// cupWorkOf is the work of a step for counting its cups. WFT is the wet film of one
// coat or pass, and area what one of them covers. The largest cup is the card's
// batch, or what can be spread in time where that is known and less.
func cupWorkOf(card *job.Card, method *material.Method, wft working.Figure[unit.WetFilm], density working.Figure[unit.Density]) cupWork {
	w := cupWork{card: card, method: method, takes: usualMixing}
	if canFill(card) {
		w.takes = noMixing
	}
	w.most = chain.OnCard(card, card.BatchMost, "largest batch", unit.InGram)
	if inTime, known := w.inTime(wft, density); known && inTime.Value < w.most.Value {
		w.most = inTime
		if w.most.Value < smallestCounted.Value {
			w.most = smallestCounted
		}
	}
	return w
}

// inTime is the cup that can be spread in time on a mild day; false where no gel
// time is known for it.
func (w cupWork) inTime(wft working.Figure[unit.WetFilm], density working.Figure[unit.Density]) (working.Figure[unit.Mass], bool) {
	var share working.Figure[unit.ByMass]
	if len(w.card.Families) > 0 {
		table, err := chain.DoseTable(w.card)
		if err == nil {
			share, err = table.At(mildDay)
		}
		if err != nil {
			return working.Figure[unit.Mass]{}, false
		}
	}
	band, err := chain.GelOf(w.card).At(mildDay, share)
	if err != nil {
		return working.Figure[unit.Mass]{}, false
	}
	var q chain.Run
	early := chain.Do1(&q, timedEarly, band.Mid)
	work := cure.Work{
		Stretch: chain.OfMethod(w.method, w.method.LayOff, "minutes to lay off a stretch", unit.InMinute),
		Mixing:  w.takes,
		Usable:  chain.OfMethod(w.method, w.method.Usable, "usable share of the early gel time", unit.InPercent),
		Film:    wft, Density: density,
		Loss: chain.OfMethod(w.method, w.method.Loss, "loss", unit.InPercent),
	}
	spreading, err := work.Spreading(early, early)
	spreading = chain.Keep(&q, spreading, err)
	perArea, err := work.PerArea()
	perArea = chain.Keep(&q, perArea, err)
	cup := chain.Do3(&q, cupInTime, chain.OfMethod(w.method, w.method.Speed, "spreading speed", unit.InSquareMetrePerMinute), spreading, perArea)
	return cup, q.Err == nil
}
