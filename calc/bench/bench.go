package bench

import (
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Bench is the next cup. It is made of few inputs: the temperature of the
// surface alone must be typed, everything else has a default on the safe side.
type Bench struct {
	plan.Bench

	Origin  Origin
	Coat    string // path of the step that the cup is for; empty: none
	Surface working.Figure[unit.Temperature]
	Product working.Figure[unit.Temperature] // as the surface until typed
	IsSame  bool                             // the product's temperature wasn't typed

	AsksTool     bool // the tool has yet to be chosen: four choices
	AsksAhead    bool // the surface is near the card's least temperature: today's low is asked for
	AsksHumidity bool // fit to coat can't be checked without

	Size     Size
	Weigh    []Line
	Pour     *Pour // nil: no dose
	Minutes  *Minutes
	Facts    Facts
	Verdicts []Verdict
	Back     []Way // what brings a dose back
}

// Make plans the next cup of a planned job at a moment.
func Make(p *plan.Plan, now plan.Now) Bench {
	return Bench{Bench: plan.MakeBench(p, now)}
}
