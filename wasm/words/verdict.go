package words

import (
	"math"
	"strconv"
	"strings"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
)

// writer writes quantities in the job's units.
type writer struct{ units job.Units }

func (w writer) in(si float64, scale unit.Scale) string {
	switch scale {
	case unit.InCelsius:
		scale = w.units.Scale(unit.Temperatures)
	case unit.InCelsiusDifference:
		scale = w.units.Scale(unit.Differences)
	}
	return unit.Write(si, scale, 3)
}

// Hour writes a time from midnight as a time of day.
func Hour(t unit.Time) string {
	if t == unit.Day {
		return "midnight"
	}
	minute := int(float64(t) / 60)
	text := strconv.Itoa(minute/60%24) + ":" + twoDigits(minute%60)
	if t > unit.Day {
		text += " tomorrow"
	}
	return text
}

func twoDigits(n int) string {
	if n < 10 {
		return "0" + strconv.Itoa(n)
	}
	return strconv.Itoa(n)
}

// Verdict says what bears on a cup's answer, the first words to stand out. Why
// is the reason of a stop in words, where the sums gave one.
func Verdict(v bench.Verdict, why string, units job.Units) (first, rest string) {
	w := writer{units}
	switch v.Subject {
	case bench.Dew:
		first, rest = w.dew(v)
	case bench.ColdEvening:
		first, rest = w.evening(v)
	case bench.Humidity:
		first, rest = w.humidity(v)
	case bench.Explosive:
		first, rest = w.explosive(v)
	case bench.Apart:
		first, rest = w.apart(v)
	case bench.Fire:
		first, rest = "From "+w.in(v.Limit, v.Scale)+" styrene vapour burns:", "no flame, no spark, no unvented heater."
	case bench.Heat:
		first, rest = "Surface "+w.in(v.Value, v.Scale)+":", "inside what the card takes."
		if v.Kind == bench.Stops {
			first = "Outside what the card takes:"
		}
	case bench.Readings:
		first, rest = "Surface read at "+Hour(v.At)+":", "over two hours ago. Read it again."
	case bench.Film:
		first, rest = "Check the build-up for this coat:", "see what it says."
	}
	if v.Kind == bench.Stops && why != "" {
		rest = why
	}
	if v.Kind == bench.Stops && v.IsLater {
		rest += cupsBefore(v.CupsBefore)
	}
	return first, rest
}

// Held says in one sentence what holds of what bears on a cup. Where nothing else
// is said of it, it is fit to coat: by when the dew comes, and by what is only
// taken to hold. The rest stands on a sheet of its own.
func Held(list []bench.Verdict, isAll bool, units job.Units) (first, rest string) {
	w := writer{units}
	if isAll {
		return FitToCoat, w.fitUntil(list)
	}
	var parts []string
	for _, v := range list {
		if part := w.held(v); part != "" {
			parts = append(parts, part)
		}
	}
	return "Holds:", strings.Join(parts, ", ") + "."
}

// fitUntil is until when a cup is fit to coat, and what that takes to hold.
func (w writer) fitUntil(list []bench.Verdict) string {
	until, taken := "now", ""
	for _, v := range list {
		switch {
		case v.Subject == bench.Dew && v.At != 0:
			until = "until " + Hour(v.At)
		case v.Subject == bench.ColdEvening && v.IsAssumed:
			taken = ", " + w.held(v)
		}
	}
	return until + taken + "."
}

// held is a verdict that holds, in a few words; none where a dial says it.
func (w writer) held(v bench.Verdict) string {
	switch v.Subject {
	case bench.Dew:
		if v.At != 0 {
			return "no dew until " + Hour(v.At)
		}
		return "no dew"
	case bench.ColdEvening:
		if v.IsAssumed {
			return "taken to stay over " + w.in(v.Value, v.Scale)
		}
		return w.in(v.Value, v.Scale) + " at the coldest"
	case bench.Humidity:
		return "humidity " + unit.Write(v.Value, unit.InPercent, 2)
	case bench.Explosive:
		return "not in a closed space"
	}
	return ""
}

// cupsBefore says how many such cups still fit before a later stop.
func cupsBefore(n int) string {
	switch n {
	case 0:
		return " Not one such cup fits in before then."
	case 1:
		return " One such cup fits in before then."
	}
	return " " + strconv.Itoa(n) + " such cups fit in before then."
}

func (w writer) dew(v bench.Verdict) (first, rest string) {
	switch v.Kind {
	case bench.Holds:
		first = "No dew"
		if v.At != 0 {
			first += " until " + Hour(v.At)
		}
		return first + ":", "surface " + w.over(v) + " above the dew point."
	case bench.Stops:
		if v.IsLater {
			return "Dew from " + Hour(v.At) + ":", "by today's curve " + overLimit(unit.TemperatureDifference(v.Value), v.Limit, w.units)
		}
		return "Too near the dew point:", overLimit(unit.TemperatureDifference(v.Value), v.Limit, w.units)
	case bench.Asks:
		return "Dew is near:", "surface " + w.over(v) + " above the dew point. Read it again before you spread."
	}
	return "Dew not checked:", ReadTheAir
}

// overLimit says how far over the dew point a surface is, and must be.
func overLimit(over unit.TemperatureDifference, limit float64, units job.Units) string {
	scale := units.Scale(unit.Differences)
	must := "; it must be " + unit.Write(limit, scale, 3) + " above."
	if over < 0 {
		return "surface " + strings.TrimPrefix(OverDew(over, scale), "−") + " below the dew point" + must
	}
	return "surface only " + OverDew(over, scale) + " above the dew point" + must
}

// over is how far the surface lies over the dew point, to the tenth below: what holds isn't rounded up to.
func (w writer) over(v bench.Verdict) string {
	return OverDew(unit.TemperatureDifference(v.Value), w.units.Scale(unit.Differences))
}

// OverDew writes how far a surface lies over the dew point, to the tenth below.
func OverDew(d unit.TemperatureDifference, scale unit.Scale) string {
	const bits = 1e-7 // of a degree: forgives the last bits of a tenth
	return unit.Write(scale.SI(math.Floor(scale.From(float64(d))*10+bits)/10), scale, 3)
}

func (w writer) evening(v bench.Verdict) (first, rest string) {
	cold := w.in(v.Value, v.Scale) + " at the coldest; the cure needs " + w.in(v.Limit, v.Scale) + "."
	switch v.Kind {
	case bench.Holds:
		if v.IsAssumed {
			return "Warm enough:", "taken to fall to " + w.in(v.Value, v.Scale) + " at the coldest; the cure needs " + w.in(v.Limit, v.Scale) + "."
		}
		return "Warm enough:", cold
	case bench.Asks:
		return "How cold will it get?", "The surface is near the card's lowest, " + w.in(v.Limit, v.Scale) + ": type the coldest it will be."
	case bench.Stops:
		if v.IsLater {
			return "Too cold from " + Hour(v.At) + ":", "by today's curve " + cold
		}
		return "Too cold for the cure:", cold
	}
	return "Evening not checked:", "type today's lowest air."
}

func (w writer) humidity(v bench.Verdict) (first, rest string) {
	value, limit := unit.Write(v.Value, unit.InPercent, 2), unit.Write(v.Limit, unit.InPercent, 2)
	switch {
	case v.Kind == bench.NotChecked:
		return "Humidity not checked:", ReadTheAir
	case v.Kind == bench.Holds:
		return "Humidity " + value + ":", "inside what the card takes."
	case v.Value > v.Limit:
		first, rest = "Air too damp", value+" humidity; the card takes up to "+limit+"."
	default:
		first, rest = "Air too dry", value+" humidity; the card takes "+limit+" at least."
	}
	if v.IsLater {
		first += " from " + Hour(v.At)
	}
	return first + ":", rest
}

func (w writer) explosive(v bench.Verdict) (first, rest string) {
	share := unit.Write(v.Value, unit.InPercent, 2) + " of the explosive limit in the closed space."
	switch v.Kind {
	case bench.Holds:
		if v.Value == 0 {
			return "Not in a closed space:", "if it is, say how much air it holds."
		}
		return "Vapour:", share + " No clearance: the limit for the lungs is far lower."
	case bench.Asks:
		if v.Value > 0 {
			return "Hazardous space:", share + " Not without forced air at the lowest point and a second person outside."
		}
		return "How large is the closed space?", "Its vapour can be worked out then."
	case bench.Stops:
		return "Over the explosive limit:", share + " Don't."
	}
	return "Closed space not checked:", "type how much air it holds."
}

func (w writer) apart(v bench.Verdict) (first, rest string) {
	differ := "they differ by " + w.in(math.Abs(v.Value), v.Scale)
	switch v.Kind {
	case bench.Holds:
		if v.Value == 0 {
			return "Product and surface:", "at the same temperature."
		}
		return "Product and surface:", differ + "."
	case bench.NotChecked:
		return "Product not read:", "taken as warm as the surface."
	}
	return "Product against surface:", differ + ", at most " + w.in(v.Limit, v.Scale) + "."
}

// Way says what brings a dose back, and what stands below it: how product and
// surface get there from what they are now.
func Way(v bench.Way, product, surface unit.Temperature, units job.Units) (name, small string) {
	w := writer{units}
	temp := func(t unit.Temperature) string { return w.in(float64(t), unit.InCelsius) }
	switch v.Kind {
	case bench.AtHours:
		return "From " + Hour(v.From) + " to " + Hour(v.To), "surface " + temp(v.Coldest) + " to " + temp(v.Warmest) + " by today's curve"
	case bench.AtTemperatures:
		tin := toReach(product, v.Product.Value, "closed tin in cold water", "closed tin in a warm room")
		if tin != "" && v.Product.Value < product && v.DewPoint.Step != nil {
			tin += ", above the dew point of " + temp(v.DewPoint.Value)
		}
		part := toReach(surface, v.Surface.Value, "part in the shade", "part warmed through the cure")
		return "Product at " + temp(v.Product.Value) + ", part at " + temp(v.Surface.Value), Listed(tin, part)
	}
	return "A timed test at this temperature, with the card's least dose", "if it leaves two minutes or more to spread, cups at up to " + temp(v.UpTo) + " get a dose today"
}

// toReach says how a temperature is reached from another: by cooling, by warming, or "" where it is there.
func toReach(from, to unit.Temperature, cool, warm string) string {
	const near = 0.05 // K
	switch {
	case to < from-near:
		return cool
	case to > from+near:
		return warm
	}
	return ""
}
