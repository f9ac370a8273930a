package cure

import (
	"math"
	"slices"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Remedy is something to do about heat or cold.
type Remedy int

// The remedies: against heat, then against cold.
const (
	CoolProduct    Remedy = iota // the closed tin in cold water
	Shade                        // over the part
	OtherHour                    // by the day's curve
	SmallerCup                   // weighed out beforehand, without catalyst
	Tray                         // poured out shallow at once
	SlowerPeroxide               // only one that the product's maker names
	WarmProduct                  // the closed tin in a warm room
	WarmPart                     // before, and through the cure
	WarmShed                     // into the night
)

// Risk is what a remedy can spoil.
type Risk int

// The risks.
const (
	Sweats        Risk = iota // a cold tin takes up water from the air
	SunComesRound             // shade moves, and the film is lit while it gels
	DewIsNear                 // early hours lie close to the dew point
	MoreJoins                 // more cups: more joins, more doses to get right
	MoreVapour                // a wide surface gives off more styrene, and still gels
	WrongFamily               // never two families together, never on promoter
	Ignites                   // warmth near styrene and peroxide: no flame, no glowing wire; peroxide is never warmed
)

var riskOf = [...]Risk{
	CoolProduct: Sweats, Shade: SunComesRound, OtherHour: DewIsNear, SmallerCup: MoreJoins, Tray: MoreVapour,
	SlowerPeroxide: WrongFamily, WarmProduct: Ignites, WarmPart: Ignites, WarmShed: Ignites,
}

// Situation is a cup that runs out of time or of temperature.
type Situation struct {
	Cup  Cup // its Largest isn't looked at
	Gel  Gel
	Work Work
}

// Means is what the day offers; what is left out isn't suggested.
type Means struct {
	DewPoint working.Figure[unit.Temperature] // of the air at the tin
	Shaded   working.Figure[unit.Temperature] // surface in the shade
	Hour     unit.Time                        // of another hour, from midnight
	AtHour   Shed                             // product, surface and air then
}

// Offer is what one remedy does for this cup: each can be done now, and each
// gains something. Figures that don't apply are left out: their Step is nil.
type Offer struct {
	Remedy  Remedy
	Risk    Risk
	Target  working.Figure[unit.Temperature]           // what product or part is brought to
	Mass    working.Figure[unit.Mass]                  // of the smaller cup
	Hour    unit.Time                                  // of another hour, from midnight
	Minutes working.Figure[unit.Time]                  // spreading minutes gained
	Degrees working.Figure[unit.TemperatureDifference] // by which product or part moves
	Opens   bool                                       // there is no dose now, and there is one then
}

var (
	gained    = working.Arg{Symbol: "G", Meaning: "spreading minutes gained", Scale: unit.InMinute, Min: -1e5, Max: 1e5}
	gainRule  = source.Ref{Document: &source.House, Place: "spreading minutes after and before"}
	coldRange = working.Arg{Symbol: "T_1", Meaning: "colder", Scale: unit.InCelsius, Min: coldestRead, Max: warmestRead}
	warmRange = working.Arg{Symbol: "T_2", Meaning: "warmer", Scale: unit.InCelsius, Min: coldestRead, Max: warmestRead}

	gain = working.Rule2[unit.Time, unit.Time, unit.Time]{Rule: &working.Rule{Formula: "G = S_2 − S_1", Source: gainRule, Mark: source.Calculated, Result: gained,
		Args: []working.Arg{
			{Symbol: "S_2", Meaning: "spreading minutes after", Scale: unit.InMinute, Min: -1e4, Max: 1e4},
			{Symbol: "S_1", Meaning: "spreading minutes before", Scale: unit.InMinute, Min: -1e4, Max: 1e4},
		}},
		Code: func(after, before unit.Time) unit.Time { return after - before }}

	spared = working.Rule4[unit.Mass, unit.Mass, unit.SpreadingSpeed, unit.MassPerArea, unit.Time]{Rule: &working.Rule{Formula: "G = (m_1 − m_2) ÷ (v × w)", Source: source.Ref{Document: &source.House, Place: "a smaller cup is spread sooner"}, Mark: source.Calculated, Result: gained,
		Args: []working.Arg{
			{Symbol: "m_1", Meaning: "cup", Scale: unit.InGram, Min: 0, Max: 1e6},
			{Symbol: "m_2", Meaning: "smaller cup", Scale: unit.InGram, Min: 0, Max: 1e6},
			speed, perArea,
		}},
		Code: func(m, smaller unit.Mass, v unit.SpreadingSpeed, w unit.MassPerArea) unit.Time {
			return unit.Time(float64(m-smaller) / (float64(v) * float64(w)))
		}}

	inTray = working.Rule2[unit.Time, unit.Factor, unit.Time]{Rule: &working.Rule{Formula: "t_c = t × k_t", Source: source.Ref{Document: &source.Practice, Place: "170 g spread over 0.19 m² doubled the time"}, Mark: source.CommonPractice, Result: cupTime,
		Args: []working.Arg{
			{Symbol: "t", Meaning: "early gel time in the cup", Scale: unit.InMinute, Min: 0.1, Max: 1e5},
			{Symbol: "k_t", Meaning: "how many times longer mix keeps in a tray", Scale: unit.InPure, Min: 1, Max: 3},
		}},
		Code: func(t unit.Time, k unit.Factor) unit.Time { return t * unit.Time(k) }}

	apart = working.Rule2[unit.Temperature, unit.Temperature, unit.TemperatureDifference]{Rule: &working.Rule{Formula: "d = T_2 − T_1", Source: source.Ref{Document: &source.House, Place: "definition"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "d", Meaning: "degrees", Scale: unit.InCelsiusDifference, Min: 0, Max: warmestRead - coldestRead},
		Args:   []working.Arg{warmRange, coldRange}},
		Code: func(warm, cold unit.Temperature) unit.TemperatureDifference {
			return unit.TemperatureDifference(warm - cold)
		}}
)

// What the remedies assume.
const (
	// coolest is the lowest temperature to which a product is cooled. Source:
	// common practice (18–21 °C in use).
	coolest = unit.ZeroCelsius + 18
	// overDew is how far a cooled tin stays above the dew point. Source:
	// assumption.
	overDew unit.Temperature = 1
	// warmDay is the temperature from which heat is what shortens the time. Source:
	// assumption.
	warmDay = unit.ZeroCelsius + 20
)

// trayTimes is how many times longer mix keeps in a tray.
var trayTimes = working.Given(unit.Factor(2), "how many times longer mix keeps in a tray", unit.InPure, "", source.CommonPractice)

// Remedies sets out side by side what can be done about heat or cold, with what
// each gains for this cup: against cold what warms, and cooling a product that is too
// much warmer than its part; against heat only what lengthens the minutes; none that gains nothing or can't be done. Nothing here
// is a dose: after a remedy the cup is worked out again.
// Source: the remedies are common practice; the gains are computed from the
// cup's own figures, but for the tray's factor.
func (s Situation) Remedies(m Means) []Offer {
	if cold := s.warm(m); len(cold) > 0 {
		if o, helps := s.cool(m); helps && o.Opens {
			o.Risk = riskOf[o.Remedy]
			cold = append(cold, o)
		}
		return cold
	}
	if max(s.Cup.Shed.Product.Value, s.Cup.Shed.Surface.Value) < warmDay {
		return nil
	}
	var list []Offer
	for _, try := range []func(Means) (Offer, bool){s.cool, s.shade, s.otherHour, s.smaller, s.tray, s.slower} {
		if o, helps := try(m); helps {
			o.Risk = riskOf[o.Remedy]
			list = append(list, o)
		}
	}
	return list
}

// minutes is the spreading time in a shed, with the table's catalyst for it.
func (s Situation) minutes(shed Shed) (working.Figure[unit.Time], error) {
	cup := s.Cup
	cup.Shed = shed
	c, err := cup.share()
	if err != nil {
		return working.Figure[unit.Time]{}, err
	}
	return s.minutesWith(shed, c, working.Figure[unit.Factor]{})
}

func (s Situation) minutesWith(shed Shed, c working.Figure[unit.ByMass], tray working.Figure[unit.Factor]) (working.Figure[unit.Time], error) {
	cup, err := s.Gel.At(shed.Product, c)
	if err != nil {
		return working.Figure[unit.Time]{}, err
	}
	film, err := s.Gel.At(shed.Surface, c)
	if err != nil {
		return working.Figure[unit.Time]{}, err
	}
	inCup := cup.Early
	if tray.Step != nil {
		if inCup, err = inTray.Figure(inCup, tray); err != nil {
			return working.Figure[unit.Time]{}, err
		}
	}
	return s.Work.Spreading(inCup, film.Early)
}

// leastGain is the least gain that makes a remedy worth the work.
// Source: assumption.
const leastGain = 15 * unit.Second

// gained puts the minutes gained on an offer, and says if it helps: it gains
// something, or there is a dose where there was none.
func (s Situation) gained(o *Offer, after working.Figure[unit.Time], err error) bool {
	if err != nil || !(after.Value > 0) {
		return false
	}
	before, err := s.minutes(s.Cup.Shed)
	if err != nil {
		o.Opens = true
		return true
	}
	o.Minutes, err = gain.Figure(after, before)
	return err == nil && o.Minutes.Value >= leastGain
}

// CoolTo is the temperature to which the product may be cooled for a surface: not
// below coolest, the card's limit or the dew point plus a degree, nor further from
// the surface than MostApart; in whole degrees. A dew point that isn't known is
// left out.
func (c Cup) CoolTo(surface unit.Temperature, dew working.Figure[unit.Temperature]) working.Figure[unit.Temperature] {
	to := max(coolest, c.Card.Limits.Coldest, surface-unit.Temperature(MostApart))
	if dew.Step != nil {
		to = max(to, dew.Value+overDew)
	}
	whole := unit.Of[unit.Temperature](math.Ceil(unit.InCelsius.From(float64(to))-1e-9), unit.InCelsius)
	return working.Given(whole, "product, cooled", unit.InCelsius, "the closed tin in cold water", source.CommonPractice)
}

func (s Situation) cool(m Means) (Offer, bool) {
	o := Offer{Remedy: CoolProduct, Target: s.Cup.CoolTo(s.Cup.Shed.Surface.Value, m.DewPoint)}
	if !(o.Target.Value < s.Cup.Shed.Product.Value) {
		return o, false
	}
	var err error
	if o.Degrees, err = apart.Figure(s.Cup.Shed.Product, o.Target); err != nil {
		return o, false
	}
	shed := s.Cup.Shed
	shed.Product = o.Target
	after, err := s.minutes(shed)
	return o, s.gained(&o, after, err)
}

func (s Situation) shade(m Means) (Offer, bool) {
	shed := s.Cup.Shed
	shed.Surface = m.Shaded
	return s.move(Offer{Remedy: Shade, Target: m.Shaded}, shed)
}

func (s Situation) otherHour(m Means) (Offer, bool) {
	return s.move(Offer{Remedy: OtherHour, Target: m.AtHour.Surface, Hour: m.Hour}, m.AtHour)
}

// move is a remedy that makes the surface cooler.
func (s Situation) move(o Offer, to Shed) (Offer, bool) {
	if to.Surface.Step == nil || !(to.Surface.Value < s.Cup.Shed.Surface.Value) {
		return o, false
	}
	var err error
	if o.Degrees, err = apart.Figure(s.Cup.Shed.Surface, to.Surface); err != nil {
		return o, false
	}
	after, err := s.minutes(to)
	return o, s.gained(&o, after, err)
}

// smaller is half the cup, as long as the tool can dose it.
func (s Situation) smaller(Means) (Offer, bool) {
	whole := s.Cup.Mix.Whole()
	o := Offer{Remedy: SmallerCup, Mass: working.Given(whole.Value/2, "half the cup", unit.InGram, "", source.Assumption)}
	w, err := s.Work.PerArea()
	if err != nil {
		return o, false
	}
	c, err := s.Cup.share()
	if err != nil {
		return o, false
	}
	least, err := s.Cup.smallest(c)
	if err != nil || !(o.Mass.Value >= least.Value) {
		return o, false
	}
	o.Minutes, err = spared.Figure(whole, o.Mass, s.Work.Speed, w)
	return o, err == nil && o.Minutes.Value >= leastGain
}

func (s Situation) tray(Means) (Offer, bool) {
	o := Offer{Remedy: Tray}
	c, err := s.Cup.share()
	if err != nil {
		return o, false
	}
	after, err := s.minutesWith(s.Cup.Shed, c, trayTimes)
	return o, s.gained(&o, after, err)
}

// slower is another peroxide that the card names: no figure is known for it.
func (s Situation) slower(Means) (Offer, bool) {
	o := Offer{Remedy: SlowerPeroxide}
	if _, err := s.Cup.share(); err != nil {
		return o, false
	}
	return o, slices.Contains(s.Cup.Card.Takes.Families, Acetylacetone) && s.Cup.Peroxide.Family != Acetylacetone
}
