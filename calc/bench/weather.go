package bench

import (
	"sync"

	"shedreckoner/calc/air"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Air is today's air, and whether it is fit to coat. Nothing of it is needed for
// a dose: what isn't typed is said not to be checked.
type Air struct {
	Waiting      []string // paths of what is yet to be typed before fit to coat is checked
	Err          error    // the figures don't make a day
	Known        bool     // of today, with air and humidity
	HasCurve     bool     // low and high are known: the day's curve can be drawn
	IsFresh      bool     // surface and air were read less than two hours ago
	Day          air.Day
	Surface      air.Surface // how warm the part is beside it
	DewPoint     working.Figure[unit.Temperature]
	OverDew      working.Figure[unit.TemperatureDifference]
	ColdestAhead unit.Temperature // coldest that air or part gets in the next four hours; zero: not known
	Now          []air.Finding    // what speaks against coating now

	hours func() Hours
}

// Hours is when today a coat can be laid. What isn't known of the day is empty.
type Hours struct {
	Through []air.Finding  // what speaks through the cure against a coat laid now
	Windows []air.Window   // in which a coat can be laid
	Dose    []air.Interval // at which the surface lies inside the catalyst table
	Err     error          // why none can be told
}

// Hours gives the hours of today, which are worked out when they are first asked for.
func (a *Air) Hours() Hours { return asked(a.hours) }

// Problem says why the figures don't make a day, or its hours can't be told; nil: there is none.
func (a *Air) Problem() error {
	if a.Err != nil {
		return a.Err
	}
	return a.Hours().Err
}

// CardToday is what the day would do to one card.
type CardToday struct {
	Card    *job.Card
	Windows []air.Window
	Err     error
}

// fresh is how long a reading holds: after that the sun has come round.
// Source: assumption.
const fresh = 2 * unit.Hour

// defaultSunrise is taken where none was typed.
var defaultSunrise = working.Given(6*unit.Hour, "sunrise", unit.InHour, "not typed", source.Assumption)

// weather settles what is known about today's air and the part in it.
type weather struct{ *bencher }

// air reads the day, its curve and its working hours for the card. Figures of
// another day don't count.
func (b weather) air() Air {
	d := &b.plan.Job.Day
	out := Air{IsFresh: b.sinceRead() < fresh && b.now.Hour-b.readAt(d.ReadAt) < fresh}
	isToday := d.Date == b.now.Date
	for _, need := range []struct {
		key  string
		step *working.Step
	}{{"read-temp", d.ReadTemp.Step}, {"read-humidity", d.ReadHumidity.Step}, {"low", d.Low.Step}, {"high", d.High.Step}} {
		if need.step == nil || !isToday {
			out.Waiting = append(out.Waiting, job.DayPath+"."+need.key)
		}
	}
	if !isToday || d.Low.Step == nil || d.High.Step == nil {
		return out
	}
	sunrise := d.Sunrise
	if sunrise.Step == nil {
		sunrise = defaultSunrise
	}
	reading := air.Reading{Temperature: d.ReadTemp, Humidity: d.ReadHumidity, At: b.readAt(d.ReadAt)}
	if out.Day, out.Err = air.NewDay(d.Low, d.High, sunrise, reading); out.Err != nil {
		b.refuse(out.Err)
		return out
	}
	out.HasCurve = true
	out.Surface = b.surface(out.Day)
	out.ColdestAhead = out.Day.ColdestAhead(out.Surface, b.now.Hour)
	if len(out.Waiting) == 0 {
		out.DewPoint, out.Err = reading.DewPoint()
		out.Known = out.Err == nil
		b.refuse(out.Err)
	}
	b.fit(&out)
	day := out
	out.hours = sync.OnceValue(func() Hours { return b.hours(&day) })
	return out
}

// readAt is the hour of a reading: now, where none was taken down.
func (b *bencher) readAt(at working.Figure[unit.Time]) unit.Time {
	if at.Step != nil {
		return at.Value
	}
	return b.now.Hour
}

// sinceRead is how long ago the surface was read.
func (b *bencher) sinceRead() unit.Time { return b.now.Hour - b.readAt(b.typed.ReadAt) }

// surface is how warm the part is beside the air: by the infrared reading compared
// with the air of the same hour, or by the allowance where there is none.
func (b weather) surface(day air.Day) air.Surface {
	d := &b.plan.Job.Day
	colour := map[string]air.Colour{"white": air.White, "mid": air.Mid, "dark": air.Dark}[d.Colour]
	allowed := air.Under(colour, d.InSun)
	if b.typed.Surface.Step == nil || b.typed.ReadOn != b.now.Date {
		return allowed
	}
	at := b.readAt(b.typed.ReadAt)
	w, err := day.Weather(at)
	if err != nil {
		return allowed
	}
	offset, err := air.Measured(b.typed.Surface, w.Air)
	if err != nil {
		return allowed
	}
	return allowed.MeasuredAt(offset, at)
}

// fit compares this hour with what the card takes.
func (b weather) fit(out *Air) {
	if !out.Known {
		return
	}
	fit, err := air.NewFit(out.Day, out.Surface, chain.AirLimits(b.out.Card))
	if err != nil {
		out.Err = err
		return
	}
	if b.typed.Surface.Step != nil {
		out.Now = b.findingsNow(out)
		var q chain.Run
		out.OverDew = chain.Do2(&q, air.OverDew, b.typed.Surface, out.DewPoint)
	} else {
		out.Now = fit.Now(b.now.Hour)
	}
}

// hours looks through the day for the hours that are fit.
func (b weather) hours(a *Air) (h Hours) {
	if table, err := chain.DoseTable(b.out.Card); err == nil {
		least, most := table.Ends()
		h.Dose, _ = air.SurfaceWithin(a.Day, a.Surface, least, most, air.WholeDay)
	}
	if !a.Known || a.Err != nil {
		return h
	}
	fit, err := air.NewFit(a.Day, a.Surface, chain.AirLimits(b.out.Card))
	if h.Err = err; err == nil {
		h.Through = fit.Through(b.now.Hour)
		h.Windows, h.Err = fit.Windows(air.WholeDay)
	}
	return h
}

// findingsNow compares the surface as measured with the air of this hour.
func (b weather) findingsNow(out *Air) []air.Finding {
	at := b.now.Hour
	return chain.AirLimits(b.out.Card).Findings(air.Conditions{
		At: at, Coldest: b.typed.Surface.Value, Hottest: b.typed.Surface.Value, Dew: out.Day.Dew(at), Humidity: out.Day.Humidity(at),
	})
}

// cardsToday says for every material that can be coated or filled when today would
// take it.
func (b weather) cardsToday() []CardToday {
	a := &b.out.Air
	if !a.Known {
		return nil
	}
	var list []CardToday
	for i := range b.plan.Job.Cards {
		c := b.plan.Job.Cards[i]
		if c.Kind > material.Filler {
			continue
		}
		fit, err := air.NewFit(a.Day, a.Surface, chain.AirLimits(c))
		entry := CardToday{Card: c, Err: err}
		if err == nil {
			entry.Windows, entry.Err = fit.Windows(air.WholeDay)
		}
		list = append(list, entry)
	}
	return list
}

// nearCold is how far above the card's least temperature a surface must be for the
// evening not to be asked about: no shed falls further in four hours.
// Source: assumption.
const nearCold unit.Temperature = 8

// ahead settles the coldest hour ahead: by the day's curve, as typed, or for a
// warm surface by what it falls at most; near the card's least temperature it is
// asked for.
func (b weather) ahead() {
	surface, least := b.typed.Surface, b.out.Card.SurfaceLeast.Value
	switch {
	case b.out.Air.HasCurve:
	case b.typed.Ahead.Step != nil && b.typed.ReadOn == b.now.Date:
		b.out.Air.ColdestAhead = min(b.typed.Ahead.Value, surface.Value)
	case surface.Step == nil:
	case surface.Value >= least+nearCold-1e-9:
		b.out.Air.ColdestAhead = surface.Value - nearCold
	default:
		b.out.AsksAhead = true
		b.wait("ahead")
	}
	b.out.AsksHumidity = !b.out.Air.Known
}

// IsNearCold says if the coldest hour ahead has to be typed: the surface is near
// the card's least temperature, and no curve of the day tells.
func (b *Bench) IsNearCold() bool {
	return b.Card != nil && b.Surface.Step != nil && !b.Air.HasCurve && b.Surface.Value < b.Card.SurfaceLeast.Value+nearCold-1e-9
}
