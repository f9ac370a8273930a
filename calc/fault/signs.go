package fault

import (
	"slices"

	"shedreckoner/calc/air"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/film"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// atLeast and atMost make a sign of two figures.
func atLeast[Q unit.Quantity](got, limit Q, scale unit.Scale, known bool) (Sign, bool) {
	return Sign{Got: float64(got), Limit: float64(limit), Scale: scale}, known
}

func atMost[Q unit.Quantity](got, limit Q, scale unit.Scale, known bool) (Sign, bool) {
	return Sign{Got: float64(got), Limit: float64(limit), Scale: scale, IsCeiling: true}, known
}

func cold(e *evidence) (Sign, bool) {
	return atLeast(e.cup.SurfaceTemp.Value, e.card.SurfaceLeast.Value, unit.InCelsius, e.cup.SurfaceTemp.Step != nil && e.card.SurfaceLeast.Known)
}

// tableShare is the table's dose at the surface's temperature; false outside
// the table.
func (e *evidence) tableShare() (unit.ByMass, bool) {
	table, err := chain.DoseTable(e.card)
	if err != nil || e.cup.Share.Step == nil || e.cup.SurfaceTemp.Step == nil {
		return 0, false
	}
	share, err := table.At(e.cup.SurfaceTemp)
	return share.Value, err == nil
}

// nearTable is how far a dose may be from the table's: the error of scales and
// syringes.
// Source: assumption.
const nearTable = 0.1

func underTable(e *evidence) (Sign, bool) {
	share, known := e.tableShare()
	s, known := atLeast(e.cup.Share.Value, share, unit.InPercent, known)
	s.Within = nearTable
	return s, known
}

func underFloor(e *evidence) (Sign, bool) {
	return atLeast(e.cup.Share.Value, e.card.Floor.Value, unit.InPercent, e.cup.Share.Step != nil && e.card.Floor.Known)
}

func overDosed(e *evidence) (Sign, bool) {
	share, known := e.tableShare()
	if !known {
		return atMost(e.cup.Share.Value, e.card.Ceiling.Value, unit.InPercent, e.cup.Share.Step != nil && e.card.Ceiling.Known)
	}
	s, known := atMost(e.cup.Share.Value, share, unit.InPercent, true)
	s.Within = min(nearTable, max(0, float64(e.card.Ceiling.Value/share)-1))
	return s, known
}

// noWax is an open coat of polyester without wax: air keeps its surface from
// curing. The limit is the least wax solution that films over.
func noWax(e *evidence) (Sign, bool) {
	isPolyester := e.card.Kind <= material.FlowCoat && e.card.Chemistry.IsPolyester()
	isCovered := e.step != nil && e.step.Job.IsUnderFilm
	wax, _ := material.Find("flowcoat")
	return atLeast(e.waxShare(), wax.Wax.Low, unit.InPercent, isPolyester && !isCovered && e.cup.Product.Step != nil)
}

func (e *evidence) waxShare() unit.ByMass { return e.shareOf(e.cup.Wax.Value) }

func (e *evidence) shareOf(part unit.Mass) unit.ByMass {
	if e.cup.Product.Value <= 0 {
		return 0
	}
	return unit.ByMass(part / e.cup.Product.Value)
}

func tooMuchWax(e *evidence) (Sign, bool) {
	wax, _ := material.Find("flowcoat")
	return atMost(e.waxShare(), wax.Wax.High, unit.InPercent, e.cup.Product.Step != nil && e.cup.Wax.Step != nil)
}

func overThinned(e *evidence) (Sign, bool) {
	thinner := e.plan.Job.CardByKey(e.card.Thinner)
	if thinner == nil || !e.card.ThinnerAsk.Known || e.cup.Product.Step == nil {
		return Sign{}, false
	}
	got := unit.Share(e.shareOf(e.cup.Thinner.Value))
	if e.card.ThinnerBasis == material.ByVolume {
		got *= unit.Share(e.card.Density.Value / thinner.Density.Value)
	}
	return atMost(got, e.card.ThinnerAsk.Value, unit.InPercent, true)
}

// film is the wet film of one coat: as combs showed it, or else as planned.
func (e *evidence) film() (least, most unit.WetFilm, isPlanned, known bool) {
	least, most = e.cup.Film.Value, e.cup.Film.Value
	known = e.cup.Film.Step != nil
	if e.step == nil {
		return least, most, true, known
	}
	first := true
	for _, c := range e.step.Job.Combs {
		mid, err := film.CombMid.Figure(c.LastWet, c.FirstDry)
		if err != nil { // a comb that isn't whole
			continue
		}
		if first {
			least, most, first, known = mid.Value, mid.Value, false, true
		}
		least, most = min(least, mid.Value), max(most, mid.Value)
	}
	return least, most, first, known
}

func thin(e *evidence) (Sign, bool) {
	least, _, isPlanned, known := e.film()
	s, known := atLeast(least, e.card.CoatAsk.Value, unit.InMicrometre, known && e.card.CoatAsk.Known)
	s.IsPlanned = isPlanned
	return s, known
}

func thick(e *evidence) (Sign, bool) {
	_, most, isPlanned, known := e.film()
	method, isKnown := material.FindMethod(e.cup.Method)
	limit := plan.MostInOneCoat(e.card, isKnown && !method.IsSpray)
	if e.card.Kind == material.Filler {
		limit = e.card.PassMost
	}
	s, known := atMost(most, limit.Value, unit.InMicrometre, known && limit.Known)
	s.IsPlanned = isPlanned
	return s, known
}

// halfCured is the hours since the coat before, on the same build-up.
func halfCured(e *evidence) (Sign, bool) {
	if e.step == nil || !e.card.RecoatFrom.Known {
		return Sign{}, false
	}
	before := 0.
	for i := range e.plan.Job.Cups {
		c := &e.plan.Job.Cups[i]
		if _, b := e.plan.StepAt(c.Step); b == e.buildup && c.In > 0 && c.Ended < e.cup.In-3600/2 {
			before = max(before, c.Ended)
		}
	}
	return atLeast(unit.Time(e.cup.In-before), e.card.RecoatFrom.Value, unit.InHour, before > 0)
}

func damp(e *evidence) (Sign, bool) {
	return atMost(e.cup.Humidity.Value, e.card.HumidityMost.Value, unit.InPercent, e.cup.Humidity.Step != nil && e.card.HumidityMost.Known)
}

func nearDew(e *evidence) (Sign, bool) {
	dew, err := air.DewPoint(e.cup.AirTemp, e.cup.Humidity)
	if err != nil || e.cup.SurfaceTemp.Step == nil { // none without air and humidity
		return Sign{}, false
	}
	return atLeast(unit.TemperatureDifference(e.cup.SurfaceTemp.Value-dew.Value), air.DewMargin.Value, unit.InCelsiusDifference, true)
}

func fast(e *evidence) (Sign, bool) {
	return atLeast(e.cup.Gel.Value, e.cup.Early.Value, unit.InMinute, e.cup.Gel.Step != nil && e.cup.Early.Step != nil)
}

func isPolish(s *plan.Step) bool {
	return slices.ContainsFunc(s.Tasks(0), func(t plan.Task) bool { return t.Kind == plan.PolishLayer })
}

// polishedSoon is the hours from the cup to the first polish that was logged
// on its build-up, at about 20 °C.
func polishedSoon(e *evidence) (Sign, bool) {
	if e.buildup == nil || e.cup.Ended <= 0 || !e.card.PolishFrom.Known {
		return Sign{}, false
	}
	first := 0.
	for i := range e.plan.Job.Finished {
		f := &e.plan.Job.Finished[i]
		s, b := e.plan.StepAt(f.Step)
		if b == e.buildup && isPolish(s) && f.At > e.cup.Ended && (first == 0 || f.At < first) {
			first = f.At
		}
	}
	return atLeast(unit.Time(first-e.cup.Ended), e.card.PolishFrom.Value, unit.InHour, first > 0)
}

func darkInSun(e *evidence) (Sign, bool) { return Sign{IsFact: true}, e.cup.IsDark && e.cup.IsInSun }

// settled is how many cups came out of the same tin before this one: what settles
// at the bottom comes out last.
func settled(e *evidence) (Sign, bool) {
	before := 0
	for i := range e.plan.Job.Cups {
		if c := &e.plan.Job.Cups[i]; c.Card == e.cup.Card && c.Tin == e.cup.Tin && c.Weighed < e.cup.Weighed {
			before++
		}
	}
	return atMost(unit.Factor(before), 0, unit.InPure, e.cup.Tin != "")
}
