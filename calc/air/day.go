package air

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

const (
	highHour      = 15 * unit.Hour
	latestSunrise = 12 * unit.Hour // nowhere does the sun come up after noon
	coldestAir    = unit.ZeroCelsius - 20
	hottestAir    = unit.ZeroCelsius + 60
)

// Reading is one reading of the air: its temperature and humidity, and when.
type Reading struct {
	Temperature working.Figure[unit.Temperature]
	Humidity    working.Figure[unit.Share]
	At          unit.Time // from midnight
}

// DewPoint is the dew point of the air that was read.
// Range: −20 to 60 °C, humidity over 0 to 100 %, 0:00 to 24:00.
// Errors: *InputError, and those of DewPoint for air drier than it covers.
func (r Reading) DewPoint() (working.Figure[unit.Temperature], error) {
	none := working.Figure[unit.Temperature]{}
	if err := within(ReadTemperature, float64(r.Temperature.Value), float64(coldestAir), float64(hottestAir)); err != nil {
		return none, err
	}
	if err := within(ReadHumidity, float64(r.Humidity.Value), math.SmallestNonzeroFloat64, 1); err != nil {
		return none, err
	}
	if err := within(ReadHour, float64(r.At), 0, float64(unit.Day)); err != nil {
		return none, err
	}
	return DewPoint(r.Temperature, r.Humidity)
}

// Day is the air of one day and of the next ones like it: lowest at sunrise,
// highest at 15:00, half cosines between. The dew point is that of one reading,
// held all day, but never above the air temperature.
// Mark: assumption; a front, a sea breeze or a heated shed breaks the curve.
type Day struct {
	low, high working.Figure[unit.Temperature]
	sunrise   working.Figure[unit.Time]
	reading   Reading
	dew       working.Figure[unit.Temperature]
}

// NewDay makes a day of its low, its high, the time of sunrise and one reading.
// Range: temperatures −20 to 60 °C, low ≤ high; sunrise 0:00 to 12:00; the
// reading's own. Errors: *InputError, and those of Reading.DewPoint.
func NewDay(low, high working.Figure[unit.Temperature], sunrise working.Figure[unit.Time], r Reading) (Day, error) {
	if err := within(DayLow, float64(low.Value), float64(coldestAir), float64(hottestAir)); err != nil {
		return Day{}, err
	}
	if err := within(DayHigh, float64(high.Value), float64(low.Value), float64(hottestAir)); err != nil {
		return Day{}, err
	}
	if err := within(Sunrise, float64(sunrise.Value), 0, float64(latestSunrise)); err != nil {
		return Day{}, err
	}
	dew, err := r.DewPoint()
	return Day{low, high, sunrise, r, dew}, err
}

// Sunset is taken as 24:00 less the time of sunrise, as if noon were at 12:00.
// Summer time and places west in their zone set it later: taken too early, the
// open sky cools a surface too early, which is the safe side.
func (d Day) Sunset() unit.Time { return unit.Day - d.sunrise.Value }

// Air is the air temperature at a time from midnight.
func (d Day) Air(at unit.Time) unit.Temperature {
	low, high, sunrise := d.low.Value, d.high.Value, d.sunrise.Value
	h, falls := branch(at, sunrise)
	if falls {
		return fall(low, high, sunrise, h)
	}
	return rise(low, high, sunrise, h)
}

// Dew is the dew point of the air at a time from midnight.
func (d Day) Dew(at unit.Time) unit.Temperature { return cappedDew(d.dew.Value, d.Air(at)) }

// Humidity is the relative humidity of the air at a time from midnight.
func (d Day) Humidity(at unit.Time) unit.Share { return humidityAt(d.Dew(at), d.Air(at)) }

// ahead is how long a film is watched for a cold evening.
const ahead = 4 * unit.Hour

// ColdestAhead is the coldest that the air, or a surface where it lies colder,
// gets within 4 h of a time from midnight: at either end, or at a sunrise between.
func (d Day) ColdestAhead(s Surface, at unit.Time) unit.Temperature {
	coldest := min(d.Air(at), d.Air(at+ahead))
	for _, dawn := range []unit.Time{d.sunrise.Value, d.sunrise.Value + unit.Day} {
		if dawn > at && dawn < at+ahead {
			coldest = min(coldest, d.low.Value)
		}
	}
	return s.ColdSide(coldest)
}

// ReadingOff is how far the reading's temperature lies above the curve at its
// hour. Past MostOff the low, the high or the hour is wrong.
func (d Day) ReadingOff() unit.TemperatureDifference {
	return unit.TemperatureDifference(d.reading.Temperature.Value - d.Air(d.reading.At))
}

// MostOff is how far a reading may lie from the curve unasked, either way.
// Source: our own assumption.
const MostOff unit.TemperatureDifference = 4

// Weather is the air at one time, with its working.
type Weather struct {
	Air, Dew working.Figure[unit.Temperature]
	Humidity working.Figure[unit.Share]
}

// Weather gives Air, Dew and Humidity with their working.
// Range: 0:00 to 48:00. Errors: *InputError.
func (d Day) Weather(at unit.Time) (w Weather, err error) {
	if err := within(ConditionHour, float64(at), 0, 2*float64(unit.Day)); err != nil {
		return w, err
	}
	h, falls := branch(at, d.sunrise.Value)
	hour := working.Given(h, "hour, counted on past midnight", unit.InHour, "", source.Exact)
	rule := Rise
	if falls {
		rule = Fall
	}
	if w.Air, err = rule.Figure(d.low, d.high, d.sunrise, hour); err != nil {
		return w, err
	}
	if w.Dew, err = CappedDew.Figure(d.dew, w.Air); err != nil {
		return w, err
	}
	w.Humidity, err = HumidityAt.Figure(w.Dew, w.Air)
	return w, err
}

// branch finds the half cosine that a time lies on, and the hour to read it at:
// before sunrise the air still falls from the day before, counted past 24:00.
func branch(at, sunrise unit.Time) (hour unit.Time, falls bool) {
	hour = clock(at)
	if hour < sunrise {
		return hour + unit.Day, true
	}
	return hour, hour > highHour
}

// clock is the time of day of a time from midnight.
func clock(at unit.Time) unit.Time {
	rest := unit.Time(math.Mod(float64(at), float64(unit.Day)))
	if rest < 0 {
		rest += unit.Day
	}
	return rest
}

var (
	curve     = source.House.At("the day's curve")
	curveArgs = []working.Arg{
		working.In("low", "low of the day", unit.InCelsius, -20, 60),
		working.In("high", "high of the day", unit.InCelsius, -20, 60),
		working.In("s", "sunrise", unit.InHour, 0, 12),
	}
	onCurve = working.In("t", "air temperature", unit.InCelsius, -20, 60)
)

// Rise is the air temperature between sunrise s and 15:00,
// t = low + (high − low) × (1 − cos(π × (h − s) ÷ (15 − s))) ÷ 2, hours in h.
// Range: −20 to 60 °C, s 0 to 12 h. Errors: *working.RangeError. Source: our own method, assumption.
var Rise = working.Of4("t = low + (high − low) × (1 − cos(π × (h − s) ÷ (15 − s))) ÷ 2", curve, source.Assumption, onCurve,
	append(curveArgs[:3:3], working.In("h", "hour", unit.InHour, 0, 15)), rise)

// Fall is the air temperature between 15:00 and the next sunrise at 24:00 + s,
// t = high − (high − low) × (1 − cos(π × (h − 15) ÷ (9 + s))) ÷ 2, hours in h.
// Range: −20 to 60 °C, s 0 to 12 h. Errors: *working.RangeError. Source: our own method, assumption.
var Fall = working.Of4("t = high − (high − low) × (1 − cos(π × (h − 15) ÷ (9 + s))) ÷ 2", curve, source.Assumption, onCurve,
	append(curveArgs[:3:3], working.In("h", "hour, counted on past midnight", unit.InHour, 15, 36)), fall)

// CappedDew is the dew point while the air may have cooled below it: td = min(tr, t).
// Range: −45 to 60 °C. Errors: *working.RangeError. Source: our own method, assumption.
var CappedDew = working.Of2("td = min(tr, t)", curve, source.Assumption,
	working.In("td", "dew point", unit.InCelsius, -45, 60),
	[]working.Arg{working.In("tr", "dew point of the reading", unit.InCelsius, -45, 60), airTemperature},
	cappedDew)

func cappedDew(read, air unit.Temperature) unit.Temperature { return min(read, air) }

func rise(low, high unit.Temperature, sunrise, at unit.Time) unit.Temperature {
	return low + (high-low)*halfCosine(at-sunrise, highHour-sunrise)
}

func fall(low, high unit.Temperature, sunrise, at unit.Time) unit.Temperature {
	return high - (high-low)*halfCosine(at-highHour, unit.Day-highHour+sunrise)
}

// halfCosine goes from 0 to 1 while t goes from 0 to span.
func halfCosine(t, span unit.Time) unit.Temperature {
	return unit.Temperature((1 - math.Cos(math.Pi*float64(t/span))) / 2)
}
