package material

import "shedreckoner/calc/unit"

// Timing is when the next thing may be done to a layer, at 20 °C.
// Source: common practice.
type Timing struct {
	RecoatFrom Spec[unit.Time] // the next coat at the soonest
	RecoatTo   Spec[unit.Time] // and at the latest without sanding
	SandFrom   Spec[unit.Time] // sanding at the soonest
	PolishFrom Spec[unit.Time] // polishing at the soonest
	LaunchFrom Spec[unit.Time] // into the water at the soonest
}

// The cure goes on for days after the film is hard: what is polished or
// launched sooner shrinks, or takes up water.
// Source: common practice for polishing, assumption for launching.
var (
	polishFrom = spec(72*unit.Hour, 48*unit.Hour, 168*unit.Hour, c)
	launchFrom = spec(7*unit.Day, 5*unit.Day, 14*unit.Day, x)
)

// PaceCold and PaceWarm are how many times longer than at 20 °C a wait lasts at
// 10 and at 30 °C.
// Source: common practice, and activation energies near 55 kJ/mol.
var (
	PaceCold = exactly[unit.Factor](2, c)
	PaceWarm = exactly[unit.Factor](0.6, c)
)

// PaceInSun is the share of a window that is left to a film in hot sun: 4 of
// 24 hours.
// Source: common practice.
var PaceInSun = exactly[unit.Factor](4./24, c)

var (
	gelCoatTiming = Timing{
		RecoatFrom: spec(1*unit.Hour, 1*unit.Hour, 4*unit.Hour, c), // tacky, but it doesn't print
		RecoatTo:   exactly(24*unit.Hour, c),
		SandFrom:   spec(24*unit.Hour, 16*unit.Hour, 48*unit.Hour, c),
		PolishFrom: polishFrom,
		LaunchFrom: launchFrom,
	}
	primerTiming = Timing{
		RecoatFrom: exactly(6*unit.Hour, c),
		RecoatTo:   exactly(7*unit.Day, c),
		SandFrom:   exactly(24*unit.Hour, c),
		LaunchFrom: launchFrom,
	}
	topcoatTiming = Timing{
		RecoatFrom: exactly(16*unit.Hour, c),
		RecoatTo:   exactly(48*unit.Hour, c),
		SandFrom:   exactly(48*unit.Hour, c),
		PolishFrom: polishFrom,
		LaunchFrom: launchFrom,
	}
	polyesterFillerTiming = Timing{
		RecoatFrom: exactly(1*unit.Hour, c),
		SandFrom:   spec(30*unit.Minute, 20*unit.Minute, 60*unit.Minute, c),
		LaunchFrom: launchFrom,
	}
	epoxyFillerTiming = Timing{
		RecoatFrom: exactly(12*unit.Hour, c),
		RecoatTo:   exactly(7*unit.Day, c),
		SandFrom:   spec(24*unit.Hour, 16*unit.Hour, 72*unit.Hour, c),
		LaunchFrom: launchFrom,
	}
)
