package cure

import (
	"errors"
	"fmt"

	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Reading says whose temperature a figure is.
type Reading int

// The readings.
const (
	Surface    Reading = iota // of what is coated: the coldest it will be before the film gels
	Product                   // in the tin
	EveningAir                // the coldest that air or part gets in the next four hours
)

// String names the reading.
func (r Reading) String() string { return [...]string{"surface", "product", "evening air"}[r] }

// The widest range in which temperatures are read, in °C.
const (
	coldestRead = -20
	warmestRead = 60
)

func isTemperature(t unit.Temperature) bool {
	c := unit.InCelsius.From(float64(t))
	return c >= coldestRead-1e-9 && c <= warmestRead+1e-9
}

func celsius(t unit.Temperature) string { return unit.Write(float64(t), unit.InCelsius, 4) }

// Shed is the temperatures around a cup.
type Shed struct {
	Product working.Figure[unit.Temperature]
	Surface working.Figure[unit.Temperature] // the coldest it will be before the film gels

	// ColdestAhead is the coldest air of the next four hours by the day's curve.
	// Left at zero it refuses every dose: an unknown evening isn't a warm one.
	ColdestAhead unit.Temperature
}

// Limits is the temperatures that a card allows, for product and surface alike.
type Limits struct{ Coldest, Warmest unit.Temperature }

// The rules on two temperatures.
const (
	// MostApart is how far product and surface may differ: beyond that the film's
	// gel time follows neither.
	MostApart unit.TemperatureDifference = 15
	// MostSteep is how far the table's doses at the two may differ while the product is the
	// warmer one: the cup gets the dose of the colder surface.
	MostSteep unit.ByMass = 0.005
)

// TemperatureError says that a temperature can't be right, or lies outside the
// limits of the card.
type TemperatureError struct {
	Of               Reading
	Value            unit.Temperature
	Coldest, Warmest unit.Temperature
}

// Error names the temperature and its limits.
func (e *TemperatureError) Error() string {
	return fmt.Sprintf("cure: %s %s is outside %s to %s", e.Of, celsius(e.Value), celsius(e.Coldest), celsius(e.Warmest))
}

// ColdEveningError says that the air, or the part where it is colder, falls under the card's least temperature
// before the film is safe.
type ColdEveningError struct{ Ahead, Coldest unit.Temperature }

// Error names both temperatures.
func (e *ColdEveningError) Error() string {
	return fmt.Sprintf("cure: air or part falls to %s within four hours, under %s", celsius(e.Ahead), celsius(e.Coldest))
}

// ApartError says that product and surface differ too much.
type ApartError struct{ Product, Surface unit.Temperature }

// Error names both temperatures.
func (e *ApartError) Error() string {
	return fmt.Sprintf("cure: product %s and surface %s are more than %v °C apart", celsius(e.Product), celsius(e.Surface), float64(MostApart))
}

// SteepError says that the surface needs far more catalyst than the warmer product
// in the cup can take.
type SteepError struct{ AtProduct, AtSurface unit.ByMass }

// Error names both doses.
func (e *SteepError) Error() string {
	return fmt.Sprintf("cure: the table gives %s for the product and %s for the colder surface", percent(e.AtProduct), percent(e.AtSurface))
}

func percent(share unit.ByMass) string {
	return unit.Write(float64(share), unit.InPercent, 4) + " by mass"
}

// Check refuses temperatures at which nothing may be mixed, whatever it is
// cured by: outside the limits of the card, too far apart, or followed by a
// cold evening. All that is wrong is joined into one error.
// Errors: *TemperatureError, *ApartError, *ColdEveningError.
func (s Shed) Check(l Limits) error {
	errs := []error{l.check(Product, s.Product.Value), l.check(Surface, s.Surface.Value)}
	apart := unit.TemperatureDifference(s.Product.Value - s.Surface.Value)
	if !(apart <= MostApart+1e-9 && -apart <= MostApart+1e-9) {
		errs = append(errs, &ApartError{s.Product.Value, s.Surface.Value})
	}
	if !(s.ColdestAhead >= l.Coldest-lastBits) {
		errs = append(errs, &ColdEveningError{s.ColdestAhead, l.Coldest})
	}
	return errors.Join(errs...)
}

// check refuses a temperature outside the limits, and every temperature where
// the limits themselves can't be right.
func (l Limits) check(of Reading, t unit.Temperature) error {
	inside := t >= l.Coldest-lastBits && t <= l.Warmest+lastBits
	if isTemperature(l.Coldest) && isTemperature(l.Warmest) && inside {
		return nil
	}
	return &TemperatureError{of, t, l.Coldest, l.Warmest}
}

// checkSteep refuses a product that is warmer than the surface where the table
// is steep between the two.
func (s Shed) checkSteep(t Table, atSurface unit.ByMass) error {
	if s.Product.Value <= s.Surface.Value {
		return nil
	}
	atProduct, err := t.at(s.Product, Product)
	if err != nil {
		return err
	}
	apart := atSurface - atProduct.Value
	if !(apart <= MostSteep+1e-9 && -apart <= MostSteep+1e-9) {
		return &SteepError{atProduct.Value, atSurface}
	}
	return nil
}
