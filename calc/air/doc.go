// Package air is the weather over the work, and what the work puts into the air.
//
//	humidity.go     vapour pressure, dew point, relative humidity, water in the air
//	day.go          the day's curve from its low, its high and one reading
//	surface.go      a surface against the air: measured, or an allowance
//	fit.go          a card's limits against the conditions, now and through the cure
//	window.go       the hours of a day in which work fits
//	styrene.go      styrene given off by a coat
//	ventilation.go  the air that keeps it under a limit; the explosive limit in a locker
//	exposure.go     limits by agency
//
// Dew points are over water. Printed tables give frost points below 0 °C, which
// lie a little higher; no coating work is done there, so the two aren't told
// apart. Times of day are a unit.Time from midnight; hours past 24 are those of
// a next day like this one.
//
// Nothing here is a clearance: an answer that finds no fault says that these
// sums find none.
package air

import "shedreckoner/calc/working"

// Rules lists every rule of the package.
func Rules() []*working.Rule {
	return working.List(
		&Vapour, &Dew, &HumidityAt, &WaterInAir,
		&Along, &Between, &CappedDew,
		&Difference, &ByNight, &SurfaceTemperature, &OverDew,
		&ThinnedContent, &BoatEmission, &SprayedEmission, &OtherEmission, &LargerEmission, &GivenOff, &Rate,
		&Concentration, &AirFor, &ShareOfLimit,
		&StyreneVapour, &Saturated, &CappedShare,
	)
}
