package material

import "shedreckoner/calc/unit"

// Timing is when the next thing may be done to a layer, at 20 °C.
// Source: common practice.
type Timing struct {
	RecoatFrom Spec[unit.Time] // the next coat at the soonest
	RecoatTo   Spec[unit.Time] // and at the latest without sanding
	SandFrom   Spec[unit.Time] // sanding at the soonest
}

var (
	gelCoatTiming = Timing{
		RecoatFrom: spec(1*unit.Hour, 1*unit.Hour, 4*unit.Hour, c), // tacky, but it doesn't print
		RecoatTo:   exactly(24*unit.Hour, c),
		SandFrom:   spec(24*unit.Hour, 16*unit.Hour, 48*unit.Hour, c),
	}
	primerTiming = Timing{
		RecoatFrom: exactly(6*unit.Hour, c),
		RecoatTo:   exactly(7*unit.Day, c),
		SandFrom:   exactly(24*unit.Hour, c),
	}
	topcoatTiming = Timing{
		RecoatFrom: exactly(16*unit.Hour, c),
		RecoatTo:   exactly(48*unit.Hour, c),
		SandFrom:   exactly(48*unit.Hour, c),
	}
	polyesterFillerTiming = Timing{
		RecoatFrom: exactly(1*unit.Hour, c),
		SandFrom:   spec(30*unit.Minute, 20*unit.Minute, 60*unit.Minute, c),
	}
	epoxyFillerTiming = Timing{
		RecoatFrom: exactly(12*unit.Hour, c),
		RecoatTo:   exactly(7*unit.Day, c),
		SandFrom:   spec(24*unit.Hour, 16*unit.Hour, 72*unit.Hour, c),
	}
)
