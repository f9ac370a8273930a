package plan

import (
	"math"

	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
)

// washing is what a wash or wipe is taken to last.
// Source: assumption.
const washing = 30 * unit.Minute

// WorkKind is what is done.
type WorkKind int

// The kinds of work.
const (
	OtherWork WorkKind = iota // what the step's kind is called
	LayCoat                   // in hours that take its material
	LayFiller                 // the same
	SandLayer                 // the layer is keyed for the next
	PolishLayer
	Launch // nothing to do but wait
)

// Task is a separate piece of work in a step, still to be placed on a calendar.
type Task struct {
	Kind      WorkKind
	Step      *Step
	Which, Of int // coat or pass, and their number; zero: there is only one
	Takes     unit.Time
	Wait      unit.Time // that the builder typed before it, at 20 °C
}

// Tasks splits what is left of a step into separate pieces of work.
func (s *Step) Tasks(area unit.Area) []Task {
	if s.Progress.Rest.Step != nil {
		area *= unit.Area(s.Progress.Rest.Value)
	}
	list := s.Kind.tasks(s, area)
	if len(list) > 0 {
		list[0].Wait = s.Job.Wait.Value
	}
	return list
}

// inTime is the time for an area at a speed.
func inTime(area unit.Area, speed unit.SpreadingSpeed) unit.Time {
	return unit.Time(float64(area) / float64(speed))
}

func coatTasks(step *Step, area unit.Area) []Task {
	if step.Coat == nil {
		return nil
	}
	var list []Task
	n := int(step.Coat.AllCoats.Value)
	takes := inTime(area, step.Job.Method.Speed.Value) + mixing(step, n)
	inGo := max(1, int(step.Coat.Coats.Value))
	for i := range n {
		list = append(list, Task{Kind: LayCoat, Step: step, Which: i + 1, Of: n, Takes: takes})
		if isBack := (i+1)%inGo == 0 && step.Job.RoundTakes.Value > 0; isBack {
			list = append(list, Task{Kind: SandLayer, Step: step, Takes: inTime(area, material.DiscOnFilm.Value)})
		}
	}
	return list
}

func fillTasks(step *Step, area unit.Area) []Task {
	if step.Fill == nil {
		return nil
	}
	var list []Task
	n := int(step.Fill.Passes.Value)
	for i := range n {
		list = append(list, Task{Kind: LayFiller, Step: step, Which: i + 1, Of: n, Takes: inTime(area, knife.Speed.Value) + mixing(step, n)})
		if i < int(step.Fill.Sanded.Value) {
			list = append(list, Task{Kind: SandLayer, Step: step, Takes: inTime(area, material.BoardOnFiller.Value)})
		}
	}
	return list
}

func sandTasks(step *Step, area unit.Area) []Task {
	takes := inTime(area, material.DiscOnFilm.Value)
	if step.Sand != nil {
		takes = step.Sand.Hours.Value * unit.Time(restShareOf(step))
	}
	return []Task{{Kind: SandLayer, Step: step, Takes: takes}}
}

func polishTasks(step *Step, area unit.Area) []Task {
	return []Task{{Kind: PolishLayer, Step: step, Takes: inTime(area, material.DiscOnFilm.Value)}}
}

func washTasks(step *Step, _ unit.Area) []Task {
	return []Task{{Kind: OtherWork, Step: step, Takes: washing}}
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
