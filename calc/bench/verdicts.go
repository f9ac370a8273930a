package bench

import (
	"fmt"
	"math"
	"slices"

	"shedreckoner/calc/air"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/unit"
)

// UnfitError says that air and surface, as they were read just now, aren't fit
// to coat.
type UnfitError struct{ Findings []air.Finding }

// Error counts the findings.
func (e *UnfitError) Error() string {
	return fmt.Sprintf("bench: unfit to coat now: %d findings", len(e.Findings))
}

// ExplosiveError says that the vapour of what is put on in a closed space reaches
// its lower explosive limit.
type ExplosiveError struct{ Share unit.Share }

// Error names the share of the limit.
func (e *ExplosiveError) Error() string {
	return fmt.Sprintf("bench: %.2g times the explosive limit", float64(e.Share))
}

// unfit refuses a dose on a surface that is unfit by fresh readings.
func (b *bencher) unfit() {
	a := &b.out.Air
	if !a.Known || !a.IsFresh || b.out.Surface.Step == nil {
		return
	}
	var found []air.Finding
	for _, f := range a.Now {
		if f.Condition != air.TooCold && f.Condition != air.TooHot { // those the dose refuses by itself
			found = append(found, f)
		}
	}
	if len(found) > 0 {
		b.refuse(&UnfitError{found})
	}
}

// explosive refuses a dose where the vapour can explode.
func (b *bencher) explosive() {
	if b.out.Vapour.Danger == air.Explosive {
		b.refuse(&ExplosiveError{b.out.Vapour.Space.Value})
	}
}

// judge looks at a cup that was settled.
type judge struct{ *bencher }

// verdicts lists all that bears on the answer.
func (b judge) verdicts() []Verdict {
	list := []Verdict{b.dewVerdict(), b.coldVerdict(), b.humidityVerdict()}
	if givesStyrene(b.out.Card) {
		list = append(list, b.explosiveVerdict(), b.fireVerdict())
	}
	list = append(append(list, b.apartVerdict(), b.heatVerdict()), b.filmVerdicts()...)
	if since := b.sinceRead(); b.out.Surface.Step != nil && since >= fresh {
		list = append(list, Verdict{
			Subject: Readings, Kind: Asks, At: b.readAt(b.typed.ReadAt), Value: float64(since), Limit: float64(fresh), Scale: unit.InHour,
			Opens: "bench.now.surface-temp",
		})
	}
	return list
}

// dewVerdict is that of the surface over the dew point, now and through the cure.
func (b judge) dewVerdict() Verdict {
	v := Verdict{Subject: Dew, Kind: NotChecked, Scale: unit.InCelsiusDifference, Limit: float64(air.DewMargin.Value), Opens: AirSheet}
	a := &b.out.Air
	if !a.Known || b.out.Surface.Step == nil {
		return v
	}
	v.Kind, v.Value, v.Why = Holds, float64(a.OverDew.Value), a.OverDew.Step
	return b.withFindings(v, air.TooNearDew)
}

// withFindings changes a verdict by what was found now, else by when the hours that
// fit end, or by what is missed through the cure.
func (b judge) withFindings(v Verdict, kinds ...air.Condition) Verdict {
	a := &b.out.Air
	if f, found := findingOf(a.Now, kinds); found {
		v = v.found(f, false)
		if !a.IsFresh {
			v.Kind = Asks
		}
		return v
	}
	return b.later(v, kinds...)
}

// later says until when a verdict holds. It is red where the cups of the coat don't
// all fit before then, and where a film laid now meets what it can't take.
func (b judge) later(v Verdict, kinds ...air.Condition) Verdict {
	if f, found := findingOf(b.out.Air.Hours().Through, kinds); found {
		v = v.found(f, true)
		v.CupsBefore = b.cupsBefore(f.At)
		return v
	}
	w, open := b.windowNow()
	if !open {
		return v
	}
	v.At, v.CupsBefore = w.To, b.cupsBefore(w.To)
	if f, found := findingOf(w.Closing, kinds); found && (b.isEndless || b.out.HasCups && v.CupsBefore < int(b.out.Cups.Count.Value)) {
		at := v.At
		v = v.found(f, true)
		v.At = at
	}
	return v
}

// found makes a verdict red by a finding, now or later.
func (v Verdict) found(f air.Finding, isLater bool) Verdict {
	v.Kind, v.IsLater, v.At = Stops, isLater, f.At
	v.Value, v.Limit, v.Scale = f.Value, f.Limit, f.Condition.Scale()
	return v
}

func findingOf(list []air.Finding, kinds []air.Condition) (air.Finding, bool) {
	at := slices.IndexFunc(list, func(f air.Finding) bool { return slices.Contains(kinds, f.Condition) })
	if at < 0 {
		return air.Finding{}, false
	}
	return list[at], true
}

// cupsBefore is how many such cups can be mixed and spread between now and an hour.
func (b judge) cupsBefore(until unit.Time) int {
	each := b.spreads()
	if !(each > 0) || until <= b.now.Hour {
		return 0
	}
	return int(math.Floor(float64((until-b.now.Hour)/each) + 1e-9))
}

// windowNow is the stretch of today in which material may go on and in which this
// hour lies; false: none.
func (b judge) windowNow() (air.Window, bool) {
	for _, w := range b.out.Air.Hours().Windows {
		if w.From <= b.now.Hour+1 && b.now.Hour < w.To {
			return w, true
		}
	}
	return air.Window{}, false
}

// coldVerdict is that of the evening: the coldest hour ahead for the dose, the
// card's least temperature through the cure.
func (b judge) coldVerdict() Verdict {
	least, ahead := b.out.Card.SurfaceLeast.Value, b.out.Air.ColdestAhead
	v := Verdict{Subject: ColdEvening, Kind: NotChecked, Value: float64(ahead), Limit: float64(least), Scale: unit.InCelsius, Opens: AirSheet}
	switch {
	case ahead == 0 || b.out.Surface.Step == nil:
		return v
	case ahead < least-1e-9:
		v.Kind, v.Err = Stops, &cure.ColdEveningError{Ahead: ahead, Coldest: least}
		return v
	}
	v.Kind, v.IsAssumed = Holds, b.isAssumedAhead()
	if !b.out.Air.Known {
		return v
	}
	return b.later(v, air.TooCold)
}

// isAssumedAhead says if the coldest hour ahead is only assumed.
func (b judge) isAssumedAhead() bool {
	return !b.out.Air.HasCurve && b.typed.Ahead.Step == nil
}

func (b judge) humidityVerdict() Verdict {
	card := b.out.Card
	v := Verdict{Subject: Humidity, Kind: NotChecked, Scale: unit.InPercent, Limit: float64(card.HumidityMost.Value), Opens: AirSheet}
	if !b.out.Air.Known {
		return v
	}
	v.Kind, v.Value = Holds, float64(b.out.Air.Day.Humidity(b.now.Hour))
	return b.withFindings(v, air.TooDamp, air.TooDry)
}

func (b judge) apartVerdict() Verdict {
	v := Verdict{Subject: Apart, Kind: NotChecked, Scale: unit.InCelsiusDifference, Limit: float64(cure.MostApart), Opens: "bench.now.product-temp"}
	if b.out.Surface.Step == nil {
		return v
	}
	v.Kind, v.Value = Holds, float64(b.out.Product.Value-b.out.Surface.Value)
	for _, err := range b.out.Reasons {
		switch e := err.(type) {
		case *cure.ApartError:
			v.Kind, v.Err = Stops, e
		case *cure.SteepError:
			v.Kind, v.Err = Stops, e
		}
	}
	return v
}

// heatVerdict compares surface and product with the card's own limits.
func (b judge) heatVerdict() Verdict {
	card := b.out.Card
	v := Verdict{Subject: Heat, Kind: NotChecked, Scale: unit.InCelsius, Limit: float64(card.SurfaceMost.Value), Opens: AirSheet}
	if b.out.Surface.Step == nil {
		return v
	}
	v.Kind, v.Value = Holds, float64(b.out.Surface.Value)
	for _, err := range b.out.Reasons {
		switch e := err.(type) {
		case *cure.TemperatureError:
			v.Kind, v.Err, v.Value = Stops, e, float64(e.Value)
			v.Limit = float64(e.Warmest)
			if e.Value < e.Coldest {
				v.Limit = float64(e.Coldest)
			}
		case *cure.BeyondTableError:
			v.Kind, v.Err, v.Value = Stops, e, float64(e.Value)
			v.Limit = float64(e.Warmest)
			if e.IsCold() {
				v.Limit = float64(e.Coldest)
			}
		}
	}
	return v
}

func (b judge) explosiveVerdict() Verdict {
	v := Verdict{Subject: Explosive, Kind: Holds, Limit: 1, Scale: unit.InPure, Opens: SpaceSheet}
	switch vapour := &b.out.Vapour; {
	case vapour.IsInside && vapour.Space.Step == nil:
		v.Kind = Asks
	case vapour.Space.Step != nil:
		v.Value, v.Why = float64(vapour.Space.Value), vapour.Space.Step
		switch vapour.Danger {
		case air.Explosive:
			v.Kind, v.Err = Stops, &ExplosiveError{vapour.Space.Value}
		case air.Hazardous:
			v.Kind = Asks
		}
	}
	return v
}

// burnable is the temperature from which styrene gives off a vapour that burns.
// Source: flash point of 31 °C, and a degree to spare.
const burnable = unit.ZeroCelsius + 30

func (b judge) fireVerdict() Verdict {
	warmest := max(b.out.Surface.Value, b.out.Product.Value)
	v := Verdict{Subject: Fire, Kind: Holds, Value: float64(warmest), Limit: float64(burnable), Scale: unit.InCelsius, Opens: SpaceSheet}
	if b.out.Surface.Step == nil {
		v.Kind = NotChecked
	} else if warmest >= burnable-1e-9 {
		v.Kind = Asks
	}
	return v
}

// filmVerdicts is what the build-up says of this coat: a red finding is one
// verdict, however many there are.
func (b judge) filmVerdicts() []Verdict {
	if b.step == nil {
		return nil
	}
	_, built := b.plan.StepAt(b.step.Path)
	if built == nil {
		return nil
	}
	for i := range built.Findings() {
		if f := &built.Findings()[i]; f.Path == b.step.Path && f.IsRed() {
			return []Verdict{{Subject: Film, Kind: Stops, Value: f.Got, Limit: f.Limit, Scale: f.Scale, Opens: b.step.Path, Finding: &built.Findings()[i]}}
		}
	}
	return nil
}
