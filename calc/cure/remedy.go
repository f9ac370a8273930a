package cure

import (
	"fmt"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Remedy is something to do about heat or cold.
type Remedy int

// The remedies: against heat, then against cold.
const (
	CoolProduct    Remedy = iota // the closed tin in iced water
	Shade                        // over the part
	EarlierHour                  // by today's curve
	SmallerCup                   // weighed out beforehand, without catalyst
	Tray                         // poured out shallow at once
	LowerDose                    // no lower than floor and tool allow
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
	Undercured                // a film near the floor may stay soft
	WrongFamily               // never two families together, never on promoter
	Ignites                   // warmth near styrene and peroxide: no flame, no glowing wire; peroxide is never warmed
)

var riskOf = [...]Risk{
	CoolProduct: Sweats, Shade: SunComesRound, EarlierHour: DewIsNear, SmallerCup: MoreJoins, Tray: MoreVapour,
	LowerDose: Undercured, SlowerPeroxide: WrongFamily, WarmProduct: Ignites, WarmPart: Ignites, WarmShed: Ignites,
}

// Situation is a cup that runs out of time or of temperature.
type Situation struct {
	Cup  Cup // its Largest isn't looked at
	Gel  Gel
	Work Work
}

// Means is what the builder has at hand; what is left out isn't offered.
type Means struct {
	Cooled   working.Figure[unit.Temperature] // product, to be cooled to
	DewPoint working.Figure[unit.Temperature] // of the air at the tin
	Shaded   working.Figure[unit.Temperature] // surface in the shade
	Earlier  Shed                             // product, surface and air of an earlier hour
	Smaller  working.Figure[unit.Mass]        // a smaller cup
	Tray     working.Figure[unit.Factor]      // how many times longer mix keeps in a tray
}

// Offer is what one remedy does for this cup. Figures that don't apply are left
// out: their Step is nil.
type Offer struct {
	Remedy  Remedy
	Risk    Risk
	Minutes working.Figure[unit.Time]                  // spreading minutes gained
	Degrees working.Figure[unit.TemperatureDifference] // by which product or surface moves
	Missing working.Figure[unit.TemperatureDifference] // still to go until there can be a dose
	Err     error                                      // why it can't be done, or does nothing
}

// SweatError says that a tin cooled so far would sweat.
type SweatError struct{ Cooled, DewPoint unit.Temperature }

// Error names both temperatures.
func (e *SweatError) Error() string {
	return fmt.Sprintf("cure: cooled to %s the tin sweats, the dew point is %s", celsius(e.Cooled), celsius(e.DewPoint))
}

// NoGainError says that a remedy does nothing for this cup.
type NoGainError struct{ Gain unit.Time }

// Error names what it would do.
func (e *NoGainError) Error() string {
	return "cure: the remedy gains " + unit.Write(float64(e.Gain), unit.InMinute, 3)
}

var (
	gained    = working.In("G", "spreading minutes gained", unit.InMinute, -1e5, 1e5)
	gainRule  = source.House.At("spreading minutes after and before")
	coldRange = working.In("T_1", "colder", unit.InCelsius, coldestRead, warmestRead)
	warmRange = working.In("T_2", "warmer", unit.InCelsius, coldestRead, warmestRead)

	gain = working.Of2("G = S_2 − S_1", gainRule, source.Calculated, gained,
		[]working.Arg{
			working.In("S_2", "spreading minutes after", unit.InMinute, -1e4, 1e4),
			working.In("S_1", "spreading minutes before", unit.InMinute, -1e4, 1e4),
		},
		func(after, before unit.Time) unit.Time { return after - before })

	spared = working.Of4("G = (m_1 − m_2) ÷ (v × w)", source.House.At("a smaller cup is spread sooner"), source.Calculated, gained,
		[]working.Arg{
			working.In("m_1", "cup", unit.InGram, 0, 1e6),
			working.In("m_2", "smaller cup", unit.InGram, 0, 1e6),
			speed, perArea,
		},
		func(m, smaller unit.Mass, v unit.SpreadingSpeed, w unit.MassPerArea) unit.Time {
			return unit.Time(float64(m-smaller) / (float64(v) * float64(w)))
		})

	inTray = working.Of2("t_c = t × k_t", source.Practice.At("170 g spread over 0.19 m² doubled the time"), source.CommonPractice, cupTime,
		[]working.Arg{
			working.In("t", "early gel time in the cup", unit.InMinute, 0.1, 1e5),
			working.In("k_t", "how many times longer mix keeps in a tray", unit.InPure, 1, 3),
		},
		func(t unit.Time, k unit.Factor) unit.Time { return t * unit.Time(k) })

	lowest = working.Of3("c = c_min + 100 × e ÷ W", source.House.At("the tool's error over the floor"), source.Calculated, share,
		[]working.Arg{floor, toolErr, whole},
		func(least unit.ByMass, e, w unit.Mass) unit.ByMass { return least + unit.ByMass(e/w) })

	apart = working.Of2("d = T_2 − T_1", source.House.At("definition"), source.Exact,
		working.Arg{Symbol: "d", Meaning: "degrees", Scale: unit.InCelsiusDifference},
		[]working.Arg{warmRange, coldRange},
		func(warm, cold unit.Temperature) unit.TemperatureDifference {
			return unit.TemperatureDifference(warm - cold)
		})
)

// Remedies sets out side by side what can be done about heat or cold, with what
// each gains for this cup. Nothing here is a dose: the cup is reckoned anew with
// what was done.
// Source: the remedies are common practice; the gains are computed from the
// cup's own figures, but for the tray's factor.
func (s Situation) Remedies(m Means) []Offer {
	offers := []Offer{{Remedy: SlowerPeroxide}}
	if m.Cooled.Step != nil {
		offers = append(offers, s.cool(m))
	}
	if m.Shaded.Step != nil {
		shed := s.Cup.Shed
		shed.Surface = m.Shaded
		offers = append(offers, s.move(Shade, shed))
	}
	if m.Earlier.Surface.Step != nil {
		offers = append(offers, s.move(EarlierHour, m.Earlier))
	}
	if m.Smaller.Step != nil {
		offers = append(offers, s.smaller(m.Smaller))
	}
	if m.Tray.Step != nil {
		offers = append(offers, s.tray(m.Tray))
	}
	offers = append(offers, s.lower())
	offers = append(offers, s.warm()...)
	for i := range offers {
		offers[i].Risk = riskOf[offers[i].Remedy]
		if o := &offers[i]; o.Err == nil && o.Minutes.Step != nil && !(o.Minutes.Value > 0) {
			o.Err = &NoGainError{o.Minutes.Value}
		}
	}
	return offers
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
	cup, err := s.Gel.InCup(shed.Product, c, s.Cup.Mix.Whole().Value)
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

// gained puts the minutes gained on an offer. Where there are none before, for
// want of a dose, the offer has degrees only.
func (s Situation) gained(o *Offer, after working.Figure[unit.Time], err error) {
	if err != nil {
		o.Err = err
		return
	}
	before, err := s.minutes(s.Cup.Shed)
	if err != nil {
		return
	}
	o.Minutes, o.Err = gain.Figure(after, before)
}

func (s Situation) cool(m Means) Offer {
	o := Offer{Remedy: CoolProduct}
	if m.DewPoint.Step == nil || !(m.Cooled.Value > m.DewPoint.Value) {
		o.Err = &SweatError{m.Cooled.Value, m.DewPoint.Value}
		return o
	}
	shed := s.Cup.Shed
	shed.Product = m.Cooled
	o.Degrees, o.Err = apart.Figure(s.Cup.Shed.Product, m.Cooled)
	if o.Err == nil {
		after, err := s.minutes(shed)
		s.gained(&o, after, err)
	}
	return o
}

// move is a remedy that makes the surface cooler.
func (s Situation) move(r Remedy, to Shed) Offer {
	o := Offer{Remedy: r}
	if o.Degrees, o.Err = apart.Figure(s.Cup.Shed.Surface, to.Surface); o.Err != nil {
		return o
	}
	_, warmest := s.dosed()
	if to.Surface.Value > warmest.Value {
		if o.Missing, o.Err = apart.Figure(to.Surface, warmest); o.Err != nil {
			return o
		}
	}
	after, err := s.minutes(to)
	s.gained(&o, after, err)
	return o
}

// dosed is the temperatures of the surface between which there can be a dose.
func (s Situation) dosed() (coldest, warmest working.Figure[unit.Temperature]) {
	low, high := s.Cup.Card.Table.Ends()
	limits := s.Cup.Card.Limits
	return cardLimit(max(low, limits.Coldest), "coldest that the card allows"), cardLimit(min(high, limits.Warmest), "warmest that the card allows")
}

func cardLimit(t unit.Temperature, name string) working.Figure[unit.Temperature] {
	return working.Given(t, name, unit.InCelsius, "card", source.Calculated)
}

func (s Situation) smaller(m working.Figure[unit.Mass]) Offer {
	o := Offer{Remedy: SmallerCup}
	w, err := s.Work.PerArea()
	if err != nil {
		o.Err = err
		return o
	}
	c, err := s.Cup.share()
	if err != nil {
		o.Err = err
		return o
	}
	least, err := s.Cup.Card.Smallest(c, s.Cup.Mix, s.Cup.Tool, s.Cup.Peroxide)
	switch {
	case err != nil:
		o.Err = err
	case !(m.Value >= least.Value*(1-1e-9)):
		o.Err = &NotWithThisToolError{s.Cup.Tool, m.Value, least.Value}
	default:
		o.Minutes, o.Err = spared.Figure(s.Cup.Mix.Whole(), m, s.Work.Speed, w)
	}
	return o
}

func (s Situation) tray(times working.Figure[unit.Factor]) Offer {
	o := Offer{Remedy: Tray}
	c, err := s.Cup.share()
	if err != nil {
		o.Err = err
		return o
	}
	after, err := s.minutesWith(s.Cup.Shed, c, times)
	s.gained(&o, after, err)
	return o
}

// lower is the lowest dose that the tool can keep over the floor.
func (s Situation) lower() Offer {
	o := Offer{Remedy: LowerDose}
	if _, err := s.Cup.share(); err != nil {
		o.Err = err
		return o
	}
	off, err := s.Cup.Tool.Error(s.Cup.Peroxide.Density)
	if err != nil {
		o.Err = err
		return o
	}
	c, err := lowest.Figure(s.Cup.Card.Floor, off, s.Cup.Mix.Whole())
	if err != nil {
		o.Err = err
		return o
	}
	after, err := s.minutesWith(s.Cup.Shed, c, working.Figure[unit.Factor]{})
	s.gained(&o, after, err)
	return o
}

// warm is what cold asks for: only the degrees that are missing.
func (s Situation) warm() []Offer {
	shed, limits := s.Cup.Shed, s.Cup.Card.Limits
	coldest, _ := s.dosed()
	reach := max(limits.Coldest, shed.Surface.Value-unit.Temperature(MostApart))
	var offers []Offer
	add := func(r Remedy, has, needs working.Figure[unit.Temperature]) {
		if has.Value < needs.Value-lastBits {
			o := Offer{Remedy: r}
			o.Missing, o.Err = apart.Figure(needs, has)
			offers = append(offers, o)
		}
	}
	add(WarmProduct, shed.Product, cardLimit(reach, "coldest that the product may be"))
	add(WarmPart, shed.Surface, coldest)
	add(WarmShed, working.Given(shed.ColdestAhead, "coldest air ahead", unit.InCelsius, "today's curve", source.Calculated),
		cardLimit(limits.Coldest, "coldest that the card allows"))
	return offers
}
