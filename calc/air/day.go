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
	if err := r.checkTemperature(); err != nil {
		return none, err
	}
	if err := checkRange(ReadHumidity, float64(r.Humidity.Value), math.SmallestNonzeroFloat64, 1); err != nil {
		return none, err
	}
	return DewPoint(r.Temperature, r.Humidity)
}

// Day is the air of one day and of the next ones like it: lowest at sunrise,
// highest at 15:00, half cosines between, bent so that the curve passes through
// the reading at its hour. A reading beyond the low or the high moves that too.
// The dew point is that of the reading, held all day, but never above the air
// temperature.
// Mark: assumption; a front, a sea breeze or a heated shed breaks the curve.
type Day struct {
	low, high           working.Figure[unit.Temperature] // with the reading
	typedLow, typedHigh unit.Temperature
	sunrise             working.Figure[unit.Time]
	reading             Reading
	dew                 working.Figure[unit.Temperature]
}

// NewDay makes a day of its low, its high, the time of sunrise and one reading. A
// reading without a humidity leaves the dew point unknown, taken as −45 °C; one
// without a temperature counts as no reading. Range: temperatures −20 to 60 °C, low
// ≤ high; sunrise 0:00 to 12:00; the reading's own. Errors: *InputError, and those
// of Reading.DewPoint.
func NewDay(low, high working.Figure[unit.Temperature], sunrise working.Figure[unit.Time], r Reading) (Day, error) {
	if err := checkRange(DayLow, float64(low.Value), float64(coldestAir), float64(hottestAir)); err != nil {
		return Day{}, err
	}
	if err := checkRange(DayHigh, float64(high.Value), float64(low.Value), float64(hottestAir)); err != nil {
		return Day{}, err
	}
	if err := checkRange(Sunrise, float64(sunrise.Value), 0, float64(latestSunrise)); err != nil {
		return Day{}, err
	}
	d := Day{low, high, low.Value, high.Value, sunrise, r, noDew}
	if r.Temperature.Step == nil {
		d.reading.At = unit.Time(math.NaN()) // it is at no time
		return d, nil
	}
	if err := r.checkTemperature(); err != nil {
		return Day{}, err
	}
	if r.Humidity.Step != nil {
		var err error
		if d.dew, err = r.DewPoint(); err != nil {
			return Day{}, err
		}
	}
	if r.Temperature.Value < low.Value {
		d.low = r.Temperature
	}
	if r.Temperature.Value > high.Value {
		d.high = r.Temperature
	}
	return d, nil
}

// noDew is taken where no dew point is known: nothing is ever near it.
var noDew = working.Given(unit.ZeroCelsius-45, "dew point", unit.InCelsius, "not known", source.Assumption)

// checkTemperature refuses a temperature or an hour that can't be right.
func (r Reading) checkTemperature() error {
	if err := checkRange(ReadTemperature, float64(r.Temperature.Value), float64(coldestAir), float64(hottestAir)); err != nil {
		return err
	}
	return checkRange(ReadHour, float64(r.At), 0, float64(unit.Day))
}

// Sunset is taken as 24:00 less the time of sunrise, as if noon were at 12:00.
// Summer time and places west in their zone set it later: taken too early, the
// open sky cools a surface too early, which is the safe side.
func (d Day) Sunset() unit.Time { return unit.Day - d.sunrise.Value }

// Air is the air temperature at a time from midnight.
func (d Day) Air(at unit.Time) unit.Temperature {
	from, to := d.turns(at)
	return between(from.air.Value, to.air.Value, along(at-from.at, to.at-from.at))
}

// Dew is the dew point of the air at a time from midnight.
func (d Day) Dew(at unit.Time) unit.Temperature { return cappedDew(d.dew.Value, d.Air(at)) }

// Humidity is the relative humidity of the air at a time from midnight.
func (d Day) Humidity(at unit.Time) unit.Share { return humidityAt(d.Dew(at), d.Air(at)) }

// ahead is how long a film is watched for a cold evening.
const ahead = 4 * unit.Hour

// ColdestAhead is the coldest that the air gets within 4 h of a time from midnight,
// or the surface where that is colder. The sun's warmth doesn't count.
func (d Day) ColdestAhead(s Surface, at unit.Time) unit.Temperature {
	coldest := d.Air(at)
	for _, p := range pieces(d, s, Interval{at, at + ahead}) {
		coldest = min(coldest, min(d.Air(p.From), d.Air(p.To))+unit.Temperature(min(0, p.offset.Least.Value)))
	}
	return coldest
}

// ReadingOff is how far the reading's temperature is above the curve of low and
// high alone at its hour. Past MostOff the low, the high or the hour is wrong.
func (d Day) ReadingOff() unit.TemperatureDifference {
	from, to := d.base(d.reading.At)
	t := between(d.typed(from), d.typed(to), along(d.reading.At-from, to-from))
	return unit.TemperatureDifference(d.reading.Temperature.Value - t)
}

func (d Day) typed(turn unit.Time) unit.Temperature {
	if clock(turn) == highHour {
		return d.typedHigh
	}
	return d.typedLow
}

// MostOff is how far a reading may be from the curve, either way, before the
// builder is asked.
// Source: our own assumption.
const MostOff unit.TemperatureDifference = 4

// turn is a turning point of the curve, where a half cosine ends and the next
// begins.
type turn struct {
	at  unit.Time
	air working.Figure[unit.Temperature]
}

// base gives the times of low and high on either side of a time from midnight.
func (d Day) base(at unit.Time) (from, to unit.Time) {
	midnight := at - clock(at)
	sunrise, high := midnight+d.sunrise.Value, midnight+highHour
	switch {
	case at < sunrise:
		return high - unit.Day, sunrise
	case at < high:
		return sunrise, high
	}
	return high, sunrise + unit.Day
}

// turns gives the ends of the half cosine that a time from midnight lies on.
func (d Day) turns(at unit.Time) (from, to turn) {
	a, b := d.base(at)
	from, to = d.turnAt(a), d.turnAt(b)
	read := turn{d.reading.At, d.reading.Temperature}
	switch {
	case !(a < read.at && read.at < b) || isSame(a, read.at) || isSame(b, read.at):
	case at < read.at:
		to = read
	default:
		from = read
	}
	return from, to
}

// isSame says if two times are the same to within seconds.
func isSame(a, b unit.Time) bool { return math.Abs(float64(a-b)) < float64(10*unit.Second) }

// turnAt is the turn at a time of low or high; a reading taken just then replaces
// it.
func (d Day) turnAt(at unit.Time) turn {
	switch {
	case isSame(at, d.reading.At):
		return turn{at, d.reading.Temperature}
	case clock(at) == highHour:
		return turn{at, d.high}
	}
	return turn{at, d.low}
}

// Weather is the air at one time, with its working.
type Weather struct {
	Air, Dew working.Figure[unit.Temperature]
	Humidity working.Figure[unit.Share]
}

// Weather gives Air, Dew and Humidity with their working.
// Range: 0:00 to 48:00. Errors: *InputError.
func (d Day) Weather(at unit.Time) (w Weather, err error) {
	if err := checkRange(ConditionHour, float64(at), 0, 2*float64(unit.Day)); err != nil {
		return w, err
	}
	from, to := d.turns(at)
	since := working.Given(at-from.at, "hours since the turn before", unit.InHour, "", source.Exact)
	span := working.Given(to.at-from.at, "hours from turn to turn", unit.InHour, "", source.Exact)
	p, err := Along.Figure(since, span)
	if err != nil {
		return w, err
	}
	if w.Air, err = Between.Figure(from.air, to.air, p); err != nil {
		return w, err
	}
	if w.Dew, err = CappedDew.Figure(d.dew, w.Air); err != nil {
		return w, err
	}
	w.Humidity, err = HumidityAt.Figure(w.Dew, w.Air)
	return w, err
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
	curve   = source.Ref{Document: &source.House, Place: "the day's curve"}
	onCurve = working.Arg{Symbol: "t", Meaning: "air temperature", Scale: unit.InCelsius, Min: -20, Max: 60}
	way     = working.Arg{Symbol: "p", Meaning: "share of the way from turn to turn", Scale: unit.InPure, Min: 0, Max: 1}
)

// Along is how far a half cosine has come, p = (1 − cos(π × h ÷ s)) ÷ 2.
// Range: h 0 to 24 h, s 0.001 to 24 h. Errors: *working.RangeError. Source: our own method, assumption.
var Along = working.Rule2[unit.Time, unit.Time, unit.Share]{Rule: &working.Rule{Formula: "p = (1 − cos(π × h ÷ s)) ÷ 2", Source: curve, Mark: source.Assumption, Result: way,
	Args: []working.Arg{{Symbol: "h", Meaning: "hours since the turn before", Scale: unit.InHour, Min: 0, Max: 24}, {Symbol: "s", Meaning: "hours from turn to turn", Scale: unit.InHour, Min: 1e-3, Max: 24}}},
	Code: along}

// Between is the air temperature between two turns of the day: its low at
// sunrise, its high at 15:00, and what was read, t = t_1 + (t_2 − t_1) × p.
// Range: −20 to 60 °C. Errors: *working.RangeError. Source: our own method, assumption.
var Between = working.Rule3[unit.Temperature, unit.Temperature, unit.Share, unit.Temperature]{Rule: &working.Rule{Formula: "t = t_1 + (t_2 − t_1) × p", Source: curve, Mark: source.Assumption, Result: onCurve,
	Args: []working.Arg{
		{Symbol: "t_1", Meaning: "air at the turn before", Scale: unit.InCelsius, Min: -20, Max: 60},
		{Symbol: "t_2", Meaning: "air at the turn after", Scale: unit.InCelsius, Min: -20, Max: 60},
		way,
	}}, Code: between}

// CappedDew is the dew point while the air may have cooled below it: td = min(tr, t).
// Range: −45 to 60 °C. Errors: *working.RangeError. Source: our own method, assumption.
var CappedDew = working.Rule2[unit.Temperature, unit.Temperature, unit.Temperature]{Rule: &working.Rule{Formula: "td = min(tr, t)", Source: curve, Mark: source.Assumption,
	Result: working.Arg{Symbol: "td", Meaning: "dew point", Scale: unit.InCelsius, Min: -45, Max: 60},
	Args:   []working.Arg{{Symbol: "tr", Meaning: "dew point of the reading", Scale: unit.InCelsius, Min: -45, Max: 60}, airTemperature}},
	Code: cappedDew}

func cappedDew(read, air unit.Temperature) unit.Temperature { return min(read, air) }

func along(since, span unit.Time) unit.Share {
	return unit.Share((1 - math.Cos(math.Pi*float64(since/span))) / 2)
}

func between(from, to unit.Temperature, p unit.Share) unit.Temperature {
	return from + (to-from)*unit.Temperature(p)
}
