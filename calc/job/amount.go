package job

import (
	"errors"
	"strconv"
	"strings"

	"shedreckoner/calc/unit"
)

// maxVolume is the largest amount that is measured out for one cup.
const maxVolume = 20 * unit.Litre

func isOtherUnit(err error) bool {
	var read *unit.ReadError
	return errors.As(err, &read) && (read.Cause == unit.OtherUnit || read.Cause == unit.UnknownUnit)
}

// IsVolume says if an amount's text is written in a unit of volume.
func IsVolume(text string) bool {
	_, err := unit.Read(text, unit.InMillilitre)
	return err == nil && !unit.IsBare(text)
}

func readVolume(text string, units Units) (float64, error) {
	si, err := unit.Read(text, units.Scale(unit.SmallVolumes))
	if err != nil {
		return 0, err
	}
	if !(si > 0 && si <= float64(maxVolume)) {
		return 0, &RangeError{&Field{Key: "amount", Name: "amount", Kind: Quantity, Measure: unit.SmallVolumes, Min: float64(unit.Millilitre), Max: float64(maxVolume)}, si}
	}
	return si, nil
}

// readClock reads a time of day, "6:30", "6.30" or "14", in seconds after
// midnight. Errors: *unit.ReadError.
func readClock(text string) (float64, error) {
	hours, minutes, _ := strings.Cut(strings.ReplaceAll(strings.TrimSpace(text), ".", ":"), ":")
	h, err := strconv.Atoi(hours)
	m := 0
	if err == nil && minutes != "" {
		m, err = strconv.Atoi(minutes)
	}
	if err != nil || h < 0 || h > 24 || m < 0 || m > 59 || h == 24 && m > 0 {
		return 0, &unit.ReadError{Text: text, Cause: unit.NotANumber}
	}
	return float64(unit.Time(h)*unit.Hour + unit.Time(m)*unit.Minute), nil
}
