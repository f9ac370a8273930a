package words

import (
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
)

// PutItRight leads to the text that something waits for.
const PutItRight = "Put it right"

// heldBy names what something waits for: whose text it is, and which.
func heldBy(o *plan.LeftOut) string {
	name := o.Name
	if name == "" {
		name = UnnamedSurface
	}
	if f := job.FieldAt(o.By); f != nil {
		name += " (" + f.Name + ")"
	}
	return name
}

// LeftOut says what a list is without, and why; "" where it is whole.
func LeftOut(list []plan.LeftOut) string {
	var names []string
	for i := range list {
		names = append(names, heldBy(&list[i]))
	}
	if len(names) == 0 {
		return ""
	}
	return "Left out, since it waits: " + strings.Join(names, "; ") + "."
}
