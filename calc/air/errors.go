package air

import "fmt"

// Input names a value typed for the sums of this package.
type Input int

// The inputs that an InputError can name.
const (
	DayLow          Input = iota // temperature, K
	DayHigh                      // temperature, K; at least the low
	Sunrise                      // time from midnight, s
	ReadTemperature              // air temperature of the humidity reading, K
	ReadHumidity                 // relative humidity, 0–1; over 0
	ReadHour                     // time from midnight, s
	CardTemperature              // most temperature of a card or table, K; at least the least
	CardHumidity                 // humidity ceiling of a card, 0–1; over the floor
	CardMargin                   // least difference between surface and dew point, K
	CureTime                     // s
	AskedHours                   // end of the hours that are asked for, s; after their start
	ConditionHour                // hour for which conditions are asked, s from midnight
)

// InputError says that a typed value is outside what the sums can take.
type InputError struct {
	Input           Input
	Value, Min, Max float64 // SI base units
}

// Error names the input by its number; the page has its own sentences.
func (e *InputError) Error() string {
	return fmt.Sprintf("air: input %d is %g, outside %g to %g", e.Input, e.Value, e.Min, e.Max)
}

// checkRange returns an *InputError unless min ≤ v ≤ max.
func checkRange(in Input, v, min, max float64) error {
	if !(v >= min && v <= max) { // also refuses NaN
		return &InputError{in, v, min, max}
	}
	return nil
}
