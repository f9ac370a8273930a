package plan

import (
	"shedreckoner/calc/air"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Air is today's air, and whether it is fit to coat.
type Air struct {
	Waiting      []string // paths of what is yet to be typed
	Err          error    // the figures don't make a day
	Known        bool
	Day          air.Day
	Surface      air.Surface // how the part stands against it
	DewPoint     working.Figure[unit.Temperature]
	OverDew      working.Figure[unit.TemperatureDifference]
	ColdestAhead unit.Temperature // coldest that air or part gets in the next four hours; zero: not known
	Now          []air.Finding    // what speaks against coating now
	Through      []air.Finding    // what speaks against it through the cure
	Windows      []air.Window     // hours of today in which a coat can be laid
	DoseHours    []air.Interval   // hours at which the surface lies inside the catalyst table
	Cards        []CardToday
}

// CardToday is what the day would do to one card.
type CardToday struct {
	Card    *job.Card
	Windows []air.Window
	Err     error
}

// defaultSunrise is taken where none was typed.
var defaultSunrise = working.Given(6*unit.Hour, "sunrise", unit.InHour, "not typed", source.Assumption)

func (b *bencher) sunrise() working.Figure[unit.Time] {
	if typed := b.plan.Job.Day.Sunrise; typed.Step != nil {
		return typed
	}
	return defaultSunrise
}

// air reads the day, its curve and its working hours for the card.
func (b *bencher) air() Air {
	d := &b.plan.Job.Day
	out := Air{}
	for _, need := range []struct {
		key  string
		step *working.Step
	}{{"read-temp", d.ReadTemp.Step}, {"read-humidity", d.ReadHumidity.Step}, {"low", d.Low.Step}, {"high", d.High.Step}} {
		if need.step == nil {
			out.Waiting = append(out.Waiting, job.DayPath+"."+need.key)
		}
	}
	b.out.Waiting = append(b.out.Waiting, out.Waiting...)
	if len(out.Waiting) > 0 {
		return out
	}
	sunrise := b.sunrise()
	at := b.now.Hour
	if d.ReadAt.Step != nil {
		at = d.ReadAt.Value
	}
	reading := air.Reading{Temperature: d.ReadTemp, Humidity: d.ReadHumidity, At: at}
	if out.Day, out.Err = air.NewDay(d.Low, d.High, sunrise, reading); out.Err == nil {
		out.DewPoint, out.Err = reading.DewPoint()
	}
	if out.Err != nil {
		b.refuse(out.Err)
		return out
	}
	if d.Date != b.now.Date {
		b.refuse(ErrOtherDay)
	}
	out.Known = true
	b.fit(&out)
	return out
}

// surface is how the part stands against the air: by the infrared reading, or
// by an allowance where there is none.
func (b *bencher) surface() (air.Surface, error) {
	d := &b.plan.Job.Day
	colour := map[string]air.Colour{"white": air.White, "mid": air.Mid, "dark": air.Dark}[d.Colour]
	if b.typed.Surface.Step == nil {
		if d.InSun {
			return air.InTheOpen(colour), nil
		}
		return air.Held(air.Allowance(colour, air.Shade)), nil
	}
	offset, err := air.Measured(b.typed.Surface, d.ReadTemp)
	if err != nil {
		return air.Surface{}, err
	}
	if d.InSun {
		return air.UntilSunset(offset)
	}
	return air.Held(offset), nil
}

// today is the hours that are asked for: from now, or from midnight for the
// picture, to the next midnight.
var today = air.Interval{From: 0, To: unit.Day}

func (b *bencher) fit(out *Air) {
	surface, err := b.surface()
	if err != nil {
		out.Err = err
		return
	}
	out.Surface = surface
	out.ColdestAhead = min(out.Day.ColdestAhead(surface, b.now.Hour), surface.ColdSide(b.plan.Job.Day.ReadTemp.Value))
	fit, err := air.NewFit(out.Day, surface, chain.AirLimits(b.out.Card))
	if err != nil {
		out.Err = err
		return
	}
	reading := air.Reading{Temperature: b.plan.Job.Day.ReadTemp, Humidity: b.plan.Job.Day.ReadHumidity, At: b.now.Hour}
	if b.typed.Surface.Step != nil {
		if here, err := air.Here(reading, b.typed.Surface); err == nil {
			out.Now = chain.AirLimits(b.out.Card).Findings(here)
		}
		var q chain.Run
		out.OverDew = chain.Do2(&q, air.OverDew, b.typed.Surface, out.DewPoint)
	} else {
		out.Now = fit.Now(b.now.Hour)
	}
	out.Through = fit.Through(b.now.Hour)
	out.Windows, out.Err = fit.Windows(today)
	if table, err := chain.DoseTable(b.out.Card); err == nil {
		least, most := table.Ends()
		out.DoseHours, _ = air.SurfaceWithin(out.Day, surface, least, most, today)
	}
	out.Cards = cardsToday(b.plan, out.Day, surface)
}

// cardsToday says for every material that is used in the job when today would
// take it; without a job, for all that can be coated.
func cardsToday(p *Plan, day air.Day, surface air.Surface) []CardToday {
	var list []CardToday
	for i := range p.Job.Cards {
		c := &p.Job.Cards[i]
		if c.Kind > material.Filler {
			continue
		}
		fit, err := air.NewFit(day, surface, chain.AirLimits(c))
		entry := CardToday{Card: c, Err: err}
		if err == nil {
			entry.Windows, entry.Err = fit.Windows(today)
		}
		list = append(list, entry)
	}
	return list
}

// means is what the builder could do about heat: iced water down to 20 °C, or
// as near as the dew point lets; shade; the coolest hour that still takes a
// dose; half the cup; a tray.
func (b *bencher) means() cure.Means {
	var m cure.Means
	a := &b.out.Air
	if !a.Known {
		return m
	}
	m.DewPoint = a.DewPoint
	cooled := unit.Of[unit.Temperature](20, unit.InCelsius)
	if b.typed.Product.Value > cooled {
		m.Cooled = working.Given(cooled, "product, cooled", unit.InCelsius, "iced water round the closed tin", source.CommonPractice)
	}
	if b.plan.Job.Day.InSun && b.typed.Surface.Value > b.plan.Job.Day.ReadTemp.Value {
		m.Shaded = b.plan.Job.Day.ReadTemp
	}
	b.earlier(&m)
	if b.out.Whole.Value > 0 {
		m.Smaller = working.Given(b.out.Whole.Value/2, "half the cup", unit.InGram, "", source.Assumption)
	}
	m.Tray = working.Given(unit.Factor(2), "how many times longer mix keeps in a tray", unit.InPure, "", source.CommonPractice)
	return m
}

// earlier is the coolest hour of today at which the surface lies inside the
// table, with product and surface at the air's temperature.
func (b *bencher) earlier(m *cure.Means) {
	for _, hours := range b.out.Air.DoseHours {
		at := hours.From
		t := b.out.Air.Day.Air(at)
		if t >= b.typed.Surface.Value {
			continue
		}
		f := working.Given(t, "air at that hour", unit.InCelsius, "today's curve", source.Assumption)
		m.Earlier = cure.Shed{Product: f, Surface: f, ColdestAhead: b.out.Air.Day.ColdestAhead(air.Surface{}, at)}
		return
	}
}
