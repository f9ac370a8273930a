package material

import "shedreckoner/calc/unit"

// Timing is when the next thing may be done to a layer, at 20 °C.
// Source: common practice.
type Timing struct {
	RecoatFrom Spec[unit.Time] // earliest next coat
	RecoatTo   Spec[unit.Time] // latest next coat without sanding
	SandFrom   Spec[unit.Time] // earliest sanding
	PolishFrom Spec[unit.Time] // earliest polishing
	LaunchFrom Spec[unit.Time] // earliest launching
}

// The cure goes on for days after the film is hard: what is polished or
// launched sooner shrinks, or takes up water.
// Source: common practice for polishing, assumption for launching.
var (
	polishFrom = spec(72*unit.Hour, 48*unit.Hour, 168*unit.Hour, practice)
	launchFrom = spec(7*unit.Day, 5*unit.Day, 14*unit.Day, assumption)
)

// PaceCold and PaceWarm are how many times as long as at 20 °C a wait lasts at 10
// and at 30 °C.
// Source: common practice, and activation energies near 55 kJ/mol.
var (
	PaceCold = exactly[unit.Factor](2, practice)
	PaceWarm = exactly[unit.Factor](0.6, practice)
)

// PaceInSun is the share of a window that is left to a film in hot sun: 4 of
// 24 hours.
// Source: common practice.
var PaceInSun = exactly[unit.Factor](4./24, practice)

var (
	gelCoatTiming = Timing{
		RecoatFrom: spec(1*unit.Hour, 1*unit.Hour, 4*unit.Hour, practice), // tacky, but it doesn't print
		RecoatTo:   exactly(24*unit.Hour, practice),
		SandFrom:   spec(24*unit.Hour, 16*unit.Hour, 48*unit.Hour, practice),
		PolishFrom: polishFrom,
		LaunchFrom: launchFrom,
	}
	primerTiming = Timing{
		RecoatFrom: exactly(6*unit.Hour, practice),
		RecoatTo:   exactly(7*unit.Day, practice),
		SandFrom:   exactly(24*unit.Hour, practice),
		LaunchFrom: launchFrom,
	}
	topcoatTiming = Timing{
		RecoatFrom: exactly(16*unit.Hour, practice),
		RecoatTo:   exactly(48*unit.Hour, practice),
		SandFrom:   exactly(48*unit.Hour, practice),
		PolishFrom: polishFrom,
		LaunchFrom: launchFrom,
	}
	polyesterFillerTiming = Timing{
		RecoatFrom: exactly(1*unit.Hour, practice),
		SandFrom:   spec(30*unit.Minute, 20*unit.Minute, 60*unit.Minute, practice),
		LaunchFrom: launchFrom,
	}
	epoxyFillerTiming = Timing{
		RecoatFrom: exactly(12*unit.Hour, practice),
		RecoatTo:   exactly(7*unit.Day, practice),
		SandFrom:   spec(24*unit.Hour, 16*unit.Hour, 72*unit.Hour, practice),
		LaunchFrom: launchFrom,
	}
)
