package plan

import (
	"shedreckoner/calc/buildup"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Kind is a kind of step: everything that the plan does with one. Its form is a row
// in job.StepKinds. Nothing else in the program distinguishes kinds.
type Kind struct {
	Key     string
	Drawing Drawing
	Fits    func(*job.Card) bool // the materials that it can use; nil: it uses none
	Fresh   []job.Line           // what a new one starts with: the field's key, its text

	films func(*maker, *Step) // works out the step's own figures, whatever its area
	// amounts works out what the step takes over an area; nil: nothing.
	amounts func(*maker, *Step, working.Figure[unit.Area])
	// extras adds what goes with a step over an area: abrasives, gloves; nil: nothing.
	extras func(*sundryAdder, working.Figure[unit.Area], working.Figure[unit.Length])
	// walk is the step as the checks of a sequence and the budget see it.
	walk func(*maker, *Step, working.Figure[unit.Share]) buildup.Step
	// tasks splits the step into separate pieces of work.
	tasks func(*Step, unit.Area) []Task

	IntoPores bool // it fills pinholes or pores: less than the card's least film will do
}

// Drawing is how a step is drawn among the layers of its build-up.
type Drawing int

// The drawings of a step.
const (
	NotDrawn      Drawing = iota // it leaves the film as it is
	DrawnFilm                    // a film put on
	DrawnFiller                  // filler, which isn't to the films' scale
	DrawnSanded                  // film taken, and scratches left
	DrawnPolished                // film taken, and the surface closed
)

// Kinds is every kind of step.
var Kinds = []*Kind{
	coatKind("coat"),
	{Key: "fill", Drawing: DrawnFiller, Fits: canFill, films: fill, amounts: fillAmounts, extras: (*sundryAdder).fill, walk: walkFill, tasks: fillTasks},
	{Key: "sand", Drawing: DrawnSanded, Fresh: []job.Line{{Path: "by", Text: job.ByGrades}},
		films: sand, amounts: sandAmounts, extras: (*sundryAdder).sandStep, walk: walkSand, tasks: sandTasks},
	{Key: "polish", Drawing: DrawnPolished, Fits: canPolish, films: polish, amounts: polishAmounts, extras: (*sundryAdder).polish, walk: walkPolish, tasks: polishTasks},
	{Key: "wash", films: wash, walk: walkWash, tasks: washTasks},
	intoPores(coatKind("squeegee"), "knife"),
	intoPores(coatKind("porous"), "brush"),
}

func coatKind(key string) *Kind {
	return &Kind{Key: key, Drawing: DrawnFilm, Fits: canCoat, films: coat, amounts: coatAmounts, extras: (*sundryAdder).coat, walk: walkCoat, tasks: coatTasks}
}

func intoPores(k *Kind, method string) *Kind {
	k.IntoPores, k.Fresh = true, []job.Line{{Path: "method", Text: method}}
	return k
}

// KindOf gives the kind of a step's form. Every form has one.
func KindOf(form *job.StepKind) *Kind {
	for _, k := range Kinds {
		if k.Key == form.Key {
			return k
		}
	}
	panic("plan: no kind of step for the form " + form.Key)
}

// Fits says if a card's material can be used for a kind of step, by its key.
func Fits(kind string, c *job.Card) bool {
	fits := KindOf(job.FindStepKind(kind)).Fits
	return fits != nil && fits(c)
}
