package ready

import (
	"strings"

	"shedreckoner/calc/job"
)

// Sequence is a build-up that is named by what it leads to.
type Sequence struct {
	Key     string // stable word
	Name    string // what it leads to
	grounds string // keys of job.Grounds
	steps   []string
}

// Setting is a field of a step, and its text as it would be typed.
type Setting struct{ Key, Text string }

// Find gives the sequence with the key; nil: there is none.
func Find(key string) *Sequence {
	for i := range Sequences {
		if Sequences[i].Key == key {
			return &Sequences[i]
		}
	}
	return nil
}

// Grounds gives the grounds that the sequence is meant for, by their keys in
// job.Grounds, the usual one first.
func (s *Sequence) Grounds() []string { return strings.Fields(s.grounds) }

// Steps gives what each step says of itself, from the ground up.
func (s *Sequence) Steps() [][]Setting {
	list := make([][]Setting, len(s.steps))
	for i, step := range s.steps {
		for said := range strings.SplitSeq(step, ", ") {
			key, text, _ := strings.Cut(said, " ")
			list[i] = append(list[i], Setting{key, text})
		}
	}
	return list
}

// Put writes the sequence into a build-up, in place of its steps, as if it had been
// typed.
func (s *Sequence) Put(d job.Document, buildup string) job.Document {
	d = d.Set(buildup+".name", s.Name).Set(buildup+".ground", s.Grounds()[0])
	list := buildup + ".step"
	for _, id := range d.Items(list) {
		d = d.Remove(list + "." + id)
	}
	for _, step := range s.Steps() {
		var item string
		d, item = d.Add(list)
		for _, said := range step {
			d = d.Set(item+"."+said.Key, said.Text)
		}
	}
	return d
}
