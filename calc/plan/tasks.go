package plan

import (
	"math"

	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
)

// washing is what a wash or wipe is taken to last.
// Source: assumption.
const washing = 30 * unit.Minute

// task is a work that is still to be placed.
type task struct {
	kind      WorkKind
	step      *Step
	which, of int
	takes     unit.Time
	wait      unit.Time // asked for by the builder, at 20 °C
}

// tasksOf takes a step apart into works that stand for themselves.
func tasksOf(step *Step, area unit.Area) []task {
	if step.Progress.Rest.Step != nil {
		area *= unit.Area(step.Progress.Rest.Value)
	}
	by := func(speed unit.SpreadingSpeed) unit.Time { return unit.Time(float64(area) / float64(speed)) }
	var list []task
	switch {
	case step.Coat != nil:
		n := int(step.Coat.AllCoats.Value)
		takes := by(step.Job.Method.Speed.Value) + mixing(step, n)
		inGo := max(1, int(step.Coat.Coats.Value))
		for i := range n {
			list = append(list, task{kind: LayCoat, step: step, which: i + 1, of: n, takes: takes})
			if isBack := (i+1)%inGo == 0 && step.Job.GoTakes.Value > 0; isBack {
				list = append(list, task{kind: SandIt, step: step, takes: by(material.DiscOnFilm.Value)})
			}
		}
	case step.Fill != nil:
		n := int(step.Fill.Passes.Value)
		for i := range n {
			list = append(list, task{kind: LayFiller, step: step, which: i + 1, of: n, takes: by(knife.Speed.Value) + mixing(step, n)},
				task{kind: SandIt, step: step, takes: by(material.BoardOnFiller.Value)})
		}
	case step.Sand != nil:
		list = append(list, task{kind: SandIt, step: step, takes: step.Sand.Hours.Value * unit.Time(restShareOf(step))})
	case step.Job.Kind.Key == "polish":
		list = append(list, task{kind: PolishIt, step: step, takes: by(material.DiscOnFilm.Value)})
	case step.Job.Kind.Key == "wash":
		list = append(list, task{kind: WashIt, step: step, takes: washing})
	default:
		list = append(list, task{kind: SandIt, step: step, takes: by(material.DiscOnFilm.Value)})
	}
	if len(list) > 0 {
		list[0].wait = step.Job.Wait.Value
	}
	return list
}

func restShareOf(step *Step) unit.Share {
	if step.Progress.Rest.Step == nil {
		return 1
	}
	return step.Progress.Rest.Value
}

// mixing is the minutes for each cup of one coat or pass. Kneading filler is in
// its speed.
func mixing(step *Step, n int) unit.Time {
	if step.Fill != nil {
		return 0
	}
	return material.Mixing.Value * unit.Time(math.Ceil(float64(step.Cups.Count.Value)/float64(max(1, n))))
}
