package fault

import (
	"slices"
	"sort"

	"shedreckoner/calc/air"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/film"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// Cause is one thing that a fault may come from.
type Cause struct {
	Fault  string // key in job.Faults
	Key    string // of the cause; page has its words
	Sign   sign   // what the log would show of it; nil: no log shows it
	Waits  bool   // warmth and time may mend it; false: they never will
	Source source.Ref
	Mark   source.Mark
}

// Sign is what the log shows of a cause.
type Sign struct {
	Got, Limit float64 // SI, in Scale
	Scale      unit.Scale
	IsRoof     bool    // the figure should stay under its limit; false: over it
	IsFact     bool    // it is so, without a figure
	IsPlanned  bool    // what was planned: nobody measured it
	Within     float64 // how far past the limit, as a share of it, is still no sign
}

// IsBorne says if the log bears the cause out.
func (s Sign) IsBorne() bool {
	const slack = 1e-9
	switch {
	case s.IsFact:
		return true
	case s.IsRoof:
		return s.Got > s.Limit*(1+s.Within+slack)+slack*slack
	}
	return s.Got < s.Limit*(1-s.Within-slack)
}

// sign looks for a cause in what is known of a cup; false: nothing is known of it.
type sign func(*evidence) (Sign, bool)

// Causes is every cause of every fault, the first to look at first.
// Source: common practice.
var Causes = []Cause{
	cause("tacky", "cold", cold, true),
	cause("tacky", "under-table", underTable, true),
	cause("tacky", "under-floor", underFloor, false),
	cause("tacky", "no-wax", noWax, false),
	cause("tacky", "thin", thin, false),

	cause("soft", "cold", cold, true),
	cause("soft", "over-dosed", overDosed, false),
	cause("soft", "acetone", nil, false),

	cause("wrinkled", "thin", thin, false),
	cause("wrinkled", "half-cured", halfCured, false),

	cause("pinholes", "thick", thick, false),
	cause("pinholes", "damp", damp, false),
	cause("pinholes", "dew", nearDew, false),
	cause("pinholes", "fast", fast, false),
	cause("pinholes", "pressure", nil, false),

	cause("sag", "thick", thick, false),
	cause("sag", "over-thinned", overThinned, false),

	cause("fish-eyes", "too-much-wax", tooMuchWax, false),
	cause("fish-eyes", "silicone", nil, false),

	cause("print-through", "polished-soon", polishedSoon, false),
	cause("print-through", "dark", darkInSun, false),
	cause("print-through", "post-cure", nil, false),

	cause("chalky", "settled", settled, false),
	cause("chalky", "unstirred", nil, false),
}

func cause(fault, key string, s sign, waits bool) Cause {
	return Cause{fault, key, s, waits, source.Practice.At("faults and the first thing to check"), source.CommonPractice}
}

// Found is a cause held against the log of a cup and its day.
type Found struct {
	*Cause
	Sign  Sign // where IsKnown: its limit is also the figure to keep next time
	Known bool
}

// IsAgainst says if the log speaks against the cause: a figure that was taken
// down, and is as it should be. What was only planned speaks against nothing.
func (f *Found) IsAgainst() bool { return f.Known && !f.Sign.IsPlanned && !f.Sign.IsBorne() }

// IsBorne says if the log bears the cause out.
func (f *Found) IsBorne() bool { return f.Known && f.Sign.IsBorne() }

// Of holds the causes of a cup's fault against its log: those that it
// bears out first, the others after them, unranked.
func Of(p *plan.Plan, c *job.Cup) []Found {
	e := &evidence{plan: p, cup: c, card: p.Job.CardByKey(c.Card)}
	e.step, e.buildup = p.StepAt(c.Step)
	if e.card == nil {
		return nil
	}
	var list []Found
	for i := range Causes {
		if f := (Found{Cause: &Causes[i]}); f.Fault == c.Fault {
			if f.Cause.Sign != nil {
				f.Sign, f.Known = f.Cause.Sign(e)
			}
			list = append(list, f)
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return rank(list[i]) < rank(list[j]) })
	return list
}

func rank(f Found) int {
	if f.IsBorne() {
		return 0
	}
	return 1
}

// evidence is what is known of a cup and of its day.
type evidence struct {
	plan    *plan.Plan
	cup     *job.Cup
	card    *job.Card
	step    *plan.Step // nil: the cup was for no step
	buildup *plan.Buildup
}

// floor and roof make a sign of two figures.
func floor[Q unit.Quantity](got, limit Q, scale unit.Scale, known bool) (Sign, bool) {
	return Sign{Got: float64(got), Limit: float64(limit), Scale: scale}, known
}

func roof[Q unit.Quantity](got, limit Q, scale unit.Scale, known bool) (Sign, bool) {
	return Sign{Got: float64(got), Limit: float64(limit), Scale: scale, IsRoof: true}, known
}

func cold(e *evidence) (Sign, bool) {
	return floor(e.cup.SurfaceTemp.Value, e.card.SurfaceLeast.Value, unit.InCelsius, e.cup.SurfaceTemp.Step != nil && e.card.SurfaceLeast.Known)
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

// nearTable is how far a dose may lie from the table's: what scales and
// syringes err by.
// Source: assumption.
const nearTable = 0.1

func underTable(e *evidence) (Sign, bool) {
	share, known := e.tableShare()
	s, known := floor(e.cup.Share.Value, share, unit.InPercent, known)
	s.Within = nearTable
	return s, known
}

func underFloor(e *evidence) (Sign, bool) {
	return floor(e.cup.Share.Value, e.card.Floor.Value, unit.InPercent, e.cup.Share.Step != nil && e.card.Floor.Known)
}

func overDosed(e *evidence) (Sign, bool) {
	share, known := e.tableShare()
	if !known {
		return roof(e.cup.Share.Value, e.card.Ceiling.Value, unit.InPercent, e.cup.Share.Step != nil && e.card.Ceiling.Known)
	}
	s, known := roof(e.cup.Share.Value, share, unit.InPercent, true)
	s.Within = min(nearTable, max(0, float64(e.card.Ceiling.Value/share)-1))
	return s, known
}

// noWax is an open coat of polyester without wax: air keeps its face from
// curing. The limit is the least wax solution that films over.
func noWax(e *evidence) (Sign, bool) {
	isPolyester := e.card.Kind <= material.FlowCoat && (e.card.Chemistry == material.Polyester || e.card.Chemistry == material.VinylEster)
	isCovered := e.step != nil && e.step.Job.IsUnderFilm
	wax, _ := material.Find("flowcoat")
	return floor(e.waxShare(), wax.Wax.Low, unit.InPercent, isPolyester && !isCovered && e.cup.Product.Step != nil)
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
	return roof(e.waxShare(), wax.Wax.High, unit.InPercent, e.cup.Product.Step != nil && e.cup.Wax.Step != nil)
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
	return roof(got, e.card.ThinnerAsk.Value, unit.InPercent, true)
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
		if c.FirstDry.Step == nil || err != nil {
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
	s, known := floor(least, e.card.CoatAsk.Value, unit.InMicrometre, known && e.card.CoatAsk.Known)
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
	s, known := roof(most, limit.Value, unit.InMicrometre, known && limit.Known)
	s.IsPlanned = isPlanned
	return s, known
}

// halfCured is the hours since the coat before, on the same build-up.
func halfCured(e *evidence) (Sign, bool) {
	if e.step == nil || e.cup.In <= 0 || !e.card.RecoatFrom.Known {
		return Sign{}, false
	}
	before := 0.
	for i := range e.plan.Job.Cups {
		c := &e.plan.Job.Cups[i]
		if _, b := e.plan.StepAt(c.Step); b == e.buildup && b != nil && c.In > 0 && c.Ended > 0 && c.Ended < e.cup.In-3600/2 {
			before = max(before, c.Ended)
		}
	}
	return floor(unit.Time(e.cup.In-before), e.card.RecoatFrom.Value, unit.InHour, before > 0)
}

func damp(e *evidence) (Sign, bool) {
	return roof(e.cup.Humidity.Value, e.card.HumidityMost.Value, unit.InPercent, e.cup.Humidity.Step != nil && e.card.HumidityMost.Known)
}

func nearDew(e *evidence) (Sign, bool) {
	dew, err := air.DewPoint(e.cup.AirTemp, e.cup.Humidity)
	if err != nil || e.cup.AirTemp.Step == nil || e.cup.Humidity.Step == nil || e.cup.SurfaceTemp.Step == nil {
		return Sign{}, false
	}
	return floor(unit.TemperatureDifference(e.cup.SurfaceTemp.Value-dew.Value), air.DewMargin.Value, unit.InCelsiusDifference, true)
}

func fast(e *evidence) (Sign, bool) {
	return floor(e.cup.Gel.Value, e.cup.Early.Value, unit.InMinute, e.cup.Gel.Step != nil && e.cup.Early.Step != nil)
}

func isPolish(s *plan.Step) bool {
	return slices.ContainsFunc(s.Tasks(0), func(t plan.Task) bool { return t.Kind == plan.PolishIt })
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
		if s != nil && b == e.buildup && isPolish(s) && f.At > e.cup.Ended && (first == 0 || f.At < first) {
			first = f.At
		}
	}
	return floor(unit.Time(first-e.cup.Ended), e.card.PolishFrom.Value, unit.InHour, first > 0)
}

func darkInSun(e *evidence) (Sign, bool) { return Sign{IsFact: true}, e.cup.IsDark && e.cup.IsInSun }

// settled is how many cups came out of the same tin before this one: what lies
// at the bottom comes last.
func settled(e *evidence) (Sign, bool) {
	before := 0
	for i := range e.plan.Job.Cups {
		if c := &e.plan.Job.Cups[i]; c.Card == e.cup.Card && c.Tin == e.cup.Tin && c.Weighed < e.cup.Weighed {
			before++
		}
	}
	return roof(unit.Factor(before), 0, unit.InPure, e.cup.Tin != "")
}
