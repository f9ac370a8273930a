package words

import (
	"strconv"

	"shedreckoner/calc/cure"
)

// Pictures: what they say to those who don't see them, their axes and their keys.
const (
	HourAxis           = "hour"
	FitHours           = "fit to coat"
	CupCures           = "put on now, cures"
	GelOverTemperature = "Gel time over temperature"
	GelPicture         = "Gel time over the temperature of the surface, with the table's catalyst"
	GelMiddle          = "middle"
	GelBand            = "early to late"
	TinsTests          = "this tin, timed"
	CardsRange         = "the card's range"
	JobsAxis           = "jobs of 20 with enough"
	OtherPacks         = "other packs"
	EitherWay          = "Either way"
	FillerLine         = "filler"
	CutLine            = "cut off"
	BestHeight         = "best"
	LeftInTheEnd       = "Film left at the end, to scale"
	LeftMean           = "mean"
	LeftThin           = "thin side"
	LeftEdge           = "edge strip"
)

// DayPicture says what the day's curve shows.
func DayPicture(hours string) string {
	return "Air, surface and dew point over today; fit to coat: " + hours
}

// NowAt marks now: an hour, or minutes.
func NowAt(what string) string { return "now " + what }

// FitFrom marks the window that counts.
func FitFrom(from, to string) string { return "fit " + from + " to " + to }

// LatestStart marks the latest start of a cup.
func LatestStart(at string) string { return "latest start " + at }

// SurfaceAxis is the axis of the surface's temperature.
func SurfaceAxis(symbol string) string { return "surface, " + symbol }

// HaveAxis is the axis of what there is with what is bought.
func HaveAxis(symbol string) string { return "bought and in stock, " + symbol }

// GelFit says what own cup tests made of the card's gel time.
func GelFit(f cure.Fit) string {
	switch f {
	case cure.Scaled:
		return "Shifted to your own cup tests; the slope is the card's."
	case cure.Fitted:
		return "Fitted to your own cup tests."
	case cure.FittedUnusual:
		return "Fitted to your own cup tests, which are unusual: only between their temperatures."
	}
	return "From the card alone, for 100 g. Your own cup tests replace it."
}

// OfTwenty counts a chance in jobs of twenty, never up to a certainty that isn't.
func OfTwenty(chance float64) string {
	n := min(int(chance*20+0.5), 20)
	if n == 20 && chance < 1 {
		return "over 19 of 20 jobs"
	}
	return strconv.Itoa(n) + " of 20 jobs"
}

// ChancePicture says how many jobs have enough of a material, by the way it is bought.
func ChancePicture(what, start, once string) string {
	return "Enough of " + what + ": " + start + " with what is bought before the start, " + once + " with all bought at once"
}

// Moves says what an input may change the need by.
func Moves(what, low, high string) string { return what + ": " + low + " to " + high }

// RaisedAxis is the axis of the datum's height.
func RaisedAxis(symbol string) string { return "datum raised, " + symbol }

// MapKey names what the squares of a map of hollows look like.
var MapKey = [3]string{"to fill", "proud", "deepest"}

// DatumRaised names the slider that lays the datum.
func DatumRaised(symbol string) string { return "Datum raised by, " + symbol }

// TradeNow says what the datum takes where it lies.
func TradeNow(filler, cut string) string {
	return "Filler against cutting: " + filler + " of filler, " + cut + " cut off"
}

// UseBestDatum offers the height at which filler and cutting cost least.
func UseBestDatum(height, filler, cut string) string {
	return "Best: " + height + ", with " + filler + " of filler and " + cut + " cut"
}

// TradePicture says where the datum takes least filler and cutting.
func TradePicture(best, filler, cut string) string {
	return "Filler against cutting as the datum is raised: best at " + best + ", with " + filler + " of filler and " + cut + " cut"
}

// LeastFilm marks the least film that a step may leave.
func LeastFilm(film string) string { return "least " + film }
