package words

import (
	"math"
	"strings"

	"shedreckoner/calc/air"
	"shedreckoner/calc/unit"
)

// Today's air, and if it is fit to coat.
const (
	FitToCoat    = "Fit to coat"
	FitWaits     = "Type today's air first: temperature and humidity now, the day's lowest and highest."
	DewPoint     = "dew point"
	OverDewPoint = "Surface above the dew point"
	FitAllDay    = "Fit now and through the cure, going by today's curve."
	NotFitNow    = "Not fit to coat now."
	NoDoseHour   = "Going by today's curve, the surface never comes inside the catalyst table."
	AllDay       = "all day"
	NoHour       = "none"
)

// ReadingOff asks about a reading that the day's curve doesn't bear out.
func ReadingOff(off unit.TemperatureDifference, scale unit.Scale) string {
	return "Your reading is " + unit.Write(math.Abs(float64(off)), scale, 2) + " off the curve between the day's low and high. Check all three, and the hour."
}

// UnfitNow says why it is not fit to coat now.
func UnfitNow(finding string) string { return "Now: " + lower(finding) }

// UnfitLater says why it is not fit from a later hour on, while it cures.
func UnfitLater(at unit.Time, finding string) string {
	return "From " + Hour(at) + ", while it cures: " + lower(finding)
}

// Hours names spans of the day.
func Hours(windows []air.Window) string {
	var spans []string
	for _, w := range windows {
		spans = append(spans, fromTo(w.From, w.To))
	}
	switch {
	case len(spans) == 0:
		return NoHour
	case len(spans) == 1 && windows[0].From <= 0 && windows[0].To >= unit.Day:
		return AllDay
	}
	return strings.Join(spans, ", ")
}

// HoursFor says in which hours of today a material can be put on.
func HoursFor(card string, windows []air.Window) string {
	return "Hours of today for " + card + ": " + Hours(windows) + "."
}

// StartAndStop says when to start at the latest, and when to stop.
func StartAndStop(start, stop unit.Time) string {
	return "Latest start " + Hour(start) + ", stop at " + Hour(stop) + "."
}

// DoseHours says in which hours the surface lies inside the catalyst table.
func DoseHours(hours []air.Interval) string {
	if len(hours) == 0 {
		return NoDoseHour
	}
	var spans []string
	for _, i := range hours {
		spans = append(spans, fromTo(i.From, i.To))
	}
	return "The surface is inside the catalyst table from " + strings.Join(spans, ", and from ") + "."
}

func fromTo(from, to unit.Time) string { return Hour(from) + " to " + Hour(to) }

// OneMinuteLeft warns of a cup whose usable time ends.
func OneMinuteLeft(card string) string { return card + ": one minute left. Finish the stretch." }

// TimeIsOver says that it has ended.
func TimeIsOver(card string) string {
	return card + ": time is up. Stop, and put what is left outside."
}
