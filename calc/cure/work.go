package cure

import (
	"math"
	"sort"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Work is how a film is laid on.
type Work struct {
	Speed    working.Figure[unit.SpreadingSpeed] // one coat, laying off included
	Stretch  working.Figure[unit.Time]           // τ: to lay off one stretch
	Mixing   working.Figure[unit.Time]           // from catalyst in; with a gun's flush
	Usable   working.Figure[unit.Share]          // of the early end of the gel time
	Film     working.Figure[unit.WetFilm]        // one coat
	Density  working.Figure[unit.Density]        // of the mix
	Loss     working.Figure[unit.Share]          // what never reaches the surface
	Leftover working.Figure[unit.Mass]           // stays in cup and tool
}

// The limits of a cup.
const (
	// LeastSpreading is the least spreading time that a timed test over the table's
	// end must leave to allow cups. Source: assumption.
	LeastSpreading = 2 * unit.Minute

	// TestCup is the cup for timing a gel.
	TestCup = 100 * unit.Gram
)

var (
	speed    = working.Arg{Symbol: "v", Meaning: "spreading speed", Scale: unit.InSquareMetrePerMinute, Min: 0.005, Max: 5}
	perArea  = working.Arg{Symbol: "w", Meaning: "mix for the area", Scale: unit.InGramPerSquareMetre, Min: 1, Max: 50000}
	leftover = working.Arg{Symbol: "L", Meaning: "left in cup and tool", Scale: unit.InGram, Min: 0, Max: 2000}
	spread   = working.Arg{Symbol: "S", Meaning: "spreading minutes", Scale: unit.InMinute, Min: -1e4, Max: 1e4}
	cupTime  = working.Arg{Symbol: "t_c", Meaning: "early gel time in the cup", Scale: unit.InMinute, Min: 0.1, Max: 1e5}
	filmTime = working.Arg{Symbol: "t_f", Meaning: "early gel time in the film", Scale: unit.InMinute, Min: 0.1, Max: 1e5}
	left     = working.Arg{Symbol: "u", Meaning: "share of the cup's time left for spreading", Scale: unit.InPure, Min: -1000, Max: 0.9}
	cupMass  = working.Arg{Symbol: "m", Meaning: "cup", Scale: unit.InGram, Min: 0, Max: 1e6}

	spreadMass = working.Arg{Symbol: "m_s", Meaning: "mix that can be spread in time", Scale: unit.InGram, Min: 0, Max: 1e6}
)

// usableLeft takes the share of the last stretch off the usable share: that gels on
// the surface, at the surface's pace.
var usableLeft = working.Rule3[unit.Share, unit.Time, unit.Time, unit.Share]{Rule: &working.Rule{Formula: "u = k − τ ÷ t_f", Source: source.Ref{Document: &source.House, Place: "times in cup and film add up"}, Mark: source.Assumption,
	Result: left,
	Args: []working.Arg{
		{Symbol: "k", Meaning: "usable share of the early gel time", Scale: unit.InPure, Min: 0.1, Max: 0.9},
		{Symbol: "τ", Meaning: "minutes to lay off a stretch", Scale: unit.InMinute, Min: 0, Max: 30},
		filmTime,
	}},
	Code: func(k unit.Share, stretch, film unit.Time) unit.Share { return k - unit.Share(stretch/film) }}

var spreading = working.Rule3[unit.Time, unit.Share, unit.Time, unit.Time]{Rule: &working.Rule{Formula: "S = t_c × u − m_x", Source: source.Ref{Document: &source.House, Place: "times in cup and film add up"}, Mark: source.Assumption,
	Result: spread,
	Args:   []working.Arg{cupTime, left, {Symbol: "m_x", Meaning: "minutes to mix", Scale: unit.InMinute, Min: 0, Max: 30}}},
	Code: func(cup unit.Time, u unit.Share, mixing unit.Time) unit.Time { return cup*unit.Time(u) - mixing }}

// forArea is the mix that leaves the cup for one area.
var forArea = working.Rule3[unit.WetFilm, unit.Density, unit.Share, unit.MassPerArea]{Rule: &working.Rule{Formula: "w = WFT × ρ ÷ (1 − loss)", Source: source.Ref{Document: &source.House, Place: "definition of density and loss"}, Mark: source.Exact,
	Result: perArea,
	Args: []working.Arg{
		{Symbol: "WFT", Meaning: "wet film", Scale: unit.InMicrometre, Min: 10, Max: 20000},
		{Symbol: "ρ", Meaning: "density of the mix", Scale: unit.InKilogramPerLitre, Min: 0.3, Max: 2.5},
		{Symbol: "loss", Meaning: "share that never reaches the surface", Scale: unit.InPure, Min: 0, Max: 0.9},
	}},
	Code: func(wft unit.WetFilm, rho unit.Density, loss unit.Share) unit.MassPerArea {
		return unit.MassPerArea(float64(wft) * float64(rho) / (1 - float64(loss)))
	}}

// inTime is what can be spread in time; it falls to nothing with the minutes.
var inTime = working.Rule3[unit.SpreadingSpeed, unit.Time, unit.MassPerArea, unit.Mass]{Rule: &working.Rule{Formula: "m_s = v × max(0, S) × w", Source: source.Ref{Document: &source.House, Place: "what can be spread in time"}, Mark: source.Calculated,
	Result: spreadMass, Args: []working.Arg{speed, spread, perArea}},
	Code: func(v unit.SpreadingSpeed, s unit.Time, w unit.MassPerArea) unit.Mass {
		return unit.Mass(float64(v) * max(0, float64(s)) * float64(w))
	}}

// largestByTime counts no more as left behind than is spread: a cup that is mostly
// lost is no cup.
var largestByTime = working.Rule2[unit.Mass, unit.Mass, unit.Mass]{Rule: &working.Rule{Formula: "m = m_s + min(L, m_s)", Source: source.Ref{Document: &source.House, Place: "what can be spread in time, and what stays behind"}, Mark: source.Calculated,
	Result: cupMass, Args: []working.Arg{spreadMass, leftover}},
	Code: func(spread, l unit.Mass) unit.Mass { return spread + min(l, spread) }}

// largestUntimed is the largest cup of a tin that was never timed.
var largestUntimed = working.Rule1[unit.Mass, unit.Mass]{Rule: &working.Rule{Formula: "m_u = min(250, m ÷ 2)", Source: source.Ref{Document: &source.House, Place: "a tin never timed: half of what the minutes allow"}, Mark: source.Assumption,
	Result: working.Arg{Symbol: "m_u", Meaning: "largest cup of a tin never timed", Scale: unit.InGram, Min: 0, Max: 250}, Args: []working.Arg{cupMass}},
	Code: func(m unit.Mass) unit.Mass { return min(HotCup, m/2) }}

// largestBatch falls with the gel time: a mass that gels sooner can't shed its
// heat.
var largestBatch = working.Rule3[unit.Mass, unit.Time, unit.Time, unit.Mass]{Rule: &working.Rule{Formula: "m_b = m_1 × min(1, t ÷ t_1)", Source: source.Ref{Document: &source.House, Place: "the batch falls with gel time"}, Mark: source.Assumption,
	Result: working.Arg{Symbol: "m_b", Meaning: "largest batch at this gel time", Scale: unit.InGram, Min: 0, Max: 20000},
	Args: []working.Arg{
		{Symbol: "m_1", Meaning: "largest batch on the card", Scale: unit.InGram, Min: 5, Max: 20000},
		{Symbol: "t", Meaning: "early gel time in the cup", Scale: unit.InMinute, Min: 0.1, Max: 1e5},
		{Symbol: "t_1", Meaning: "early gel time that the batch is stated for", Scale: unit.InMinute, Min: 0.1, Max: 1e5},
	}},
	Code: func(most unit.Mass, t, stated unit.Time) unit.Mass {
		return most * unit.Mass(math.Min(1, float64(t/stated)))
	}}

// Spreading is how long mix can be spread, from the end of mixing: what is left
// of the cup's usable time once the last stretch laid has had its share in the
// film, S = t_c × (k − τ ÷ t_f) − mixing. Both times are early ends. Zero or less:
// the cup gels before it can be spread.
// Range: times 0.1–1e5 min, k 0.1–0.9, τ and mixing 0–30 min. Errors: *working.RangeError.
// Source: assumption: shares of gel time used up in cup and film add up.
func (w Work) Spreading(cup, film working.Figure[unit.Time]) (working.Figure[unit.Time], error) {
	u, err := usableLeft.Figure(w.Usable, w.Stretch, film)
	if err != nil {
		return working.Figure[unit.Time]{}, err
	}
	return spreading.Figure(cup, u, w.Mixing)
}

// PerArea is the mix that leaves the cup for one area, w = WFT × ρ ÷ (1 − loss).
// Range: WFT 10 µm–20 mm, ρ 0.3–2.5 kg/L, loss 0–0.9. Errors: *working.RangeError.
func (w Work) PerArea() (working.Figure[unit.MassPerArea], error) {
	return forArea.Figure(w.Film, w.Density, w.Loss)
}

// Batch is a card's largest batch, and the early gel time that it is stated
// for: the card's own at the temperature it names, not a tested one.
type Batch struct {
	Most working.Figure[unit.Mass]
	Gel  working.Figure[unit.Time]
}

// Tin is how far a tin's gel time is known.
type Tin int

// The tins.
const (
	Untimed    Tin = iota // never timed: HotCup at most, and half of what the minutes allow
	Timed                 // by a test of its own
	TimedToday            // over the table's end, by a test of the same day: HotCup at most
)

// Bound says what limits the largest cup.
type Bound int

// The bounds.
const (
	ByTime       Bound = iota // what can be spread in time
	ByUntimed                 // the tin was never timed
	ByBatch                   // the card's largest batch
	ByTestedMass              // no gel time is known for a larger cup
	ByHeat                    // over the table's end
)

// Limit is a bound with the cup that it allows.
type Limit struct {
	Bound Bound
	Mass  working.Figure[unit.Mass]
}

// Hand is the time in hand and the cup that it allows.
type Hand struct {
	Catalyst  working.Figure[unit.ByMass] // that the times were reckoned with
	Cup, Film Band                        // gel times in cup and film
	Spreading working.Figure[unit.Time]   // below zero where the cup gels before it can be spread
	Largest   working.Figure[unit.Mass]   // in grams of mix; nothing where there is no time
	Limits    []Limit                     // all of them, the one that holds first
}

// Bound is what limits the largest cup.
func (h *Hand) Bound() Bound { return h.Limits[0].Bound }

// InHand is the time in hand with a product in this shed, and the largest cup: what can
// be spread in time, of a tin never timed half of that and HotCup at most, no more than
// the card's batch, which falls with gel time, and than the tested mass allows. It
// falls to nothing with the minutes, without a jump.
//
// The surface's temperature is the warmest that it will be while it is coated, since
// that is the first to gel; the dose goes by the coldest. Whether anything may be mixed
// at all isn't checked here: Cup.Dose does that, or for a fixed ratio, which has no
// catalyst figure, Shed.Check. Errors: as Gel.At; *working.RangeError.
// Source: assumption; the inputs carry their own marks.
func (w Work) InHand(g Gel, s Shed, catalyst working.Figure[unit.ByMass], b Batch, tin Tin) (Hand, error) {
	h := Hand{Catalyst: catalyst}
	var err error
	if h.Cup, err = g.At(s.Product, catalyst); err != nil {
		return Hand{}, err
	}
	if h.Film, err = g.At(s.Surface, catalyst); err != nil {
		return Hand{}, err
	}
	if h.Spreading, err = w.Spreading(h.Cup.Early, h.Film.Early); err != nil {
		return Hand{}, err
	}
	if err := h.bind(w, g, b, tin); err != nil {
		return Hand{}, err
	}
	return h, nil
}

// bind finds what each bound allows, and the least of these.
func (h *Hand) bind(w Work, g Gel, b Batch, tin Tin) error {
	byTime, err := w.byTime(h.Spreading)
	if err != nil {
		return err
	}
	byBatch, err := largestBatch.Figure(b.Most, h.Cup.Early, b.Gel)
	if err != nil {
		return err
	}
	byTested, err := MostMass.Figure(g.Mass)
	if err != nil {
		return err
	}
	h.Limits = []Limit{{ByTime, byTime}, {ByBatch, byBatch}, {ByTestedMass, byTested}}
	switch tin {
	case Untimed:
		half, err := largestUntimed.Figure(byTime)
		if err != nil {
			return err
		}
		h.Limits = append(h.Limits, Limit{ByUntimed, half})
	case TimedToday:
		h.Limits = append(h.Limits, Limit{ByHeat, hotCup})
	}
	sort.SliceStable(h.Limits, func(i, j int) bool { return h.Limits[i].Mass.Value < h.Limits[j].Mass.Value })
	h.Largest = h.Limits[0].Mass
	return nil
}

var hotCup = working.Given(HotCup, "largest cup over the table's end", unit.InGram, "", source.Assumption)

func (w Work) byTime(s working.Figure[unit.Time]) (working.Figure[unit.Mass], error) {
	perArea, err := w.PerArea()
	if err != nil {
		return working.Figure[unit.Mass]{}, err
	}
	spread, err := inTime.Figure(w.Speed, s, perArea)
	if err != nil {
		return working.Figure[unit.Mass]{}, err
	}
	return largestByTime.Figure(spread, w.Leftover)
}
