package plan_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// questions is all that a plan can be asked.
var questions = []struct {
	name string
	ask  func(p *plan.Plan) any
}{
	{"area", func(p *plan.Plan) any { return p.Area() }},
	{"kept", func(p *plan.Plan) any { return p.Kept() }},
	{"surfaces", func(p *plan.Plan) any { return p.Surfaces() }},
	{"removals", func(p *plan.Plan) any { return p.Removals() }},
	{"putties", func(p *plan.Plan) any { return p.Putties() }},
	{"needs", func(p *plan.Plan) any { return p.Needs() }},
	{"refused", func(p *plan.Plan) any { return p.Refused() }},
	{"unreadable", func(p *plan.Plan) any { return p.Unreadable() }},
	{"waiting", func(p *plan.Plan) any { return p.Waiting() }},
	{"asks", func(p *plan.Plan) any { return p.Asks() }},
	{"put on", func(p *plan.Plan) any {
		var list []any
		for _, c := range p.Job.Cups {
			on, known := p.PutOn(c.Path)
			list = append(list, on, known, p.IsClaimed(c.Path))
		}
		return list
	}},
	{"steps", func(p *plan.Plan) any {
		var list []any
		for _, b := range p.Buildups() {
			list = append(list, b.Path, b.Surfaces, b.Area, b.Edge, b.Left, b.Steps)
		}
		return list
	}},
	{"films", func(p *plan.Plan) any {
		var list []any
		for _, b := range p.Job.Buildups {
			list = append(list, p.Films(b.Path).Steps)
		}
		return list
	}},
	{"findings", func(p *plan.Plan) any {
		var list []any
		for _, b := range p.Buildups() {
			list = append(list, b.Findings())
		}
		return list
	}},
	{"budgets", func(p *plan.Plan) any {
		var list []any
		for _, b := range p.Buildups() {
			list = append(list, b.Budgets(), b.Needs())
		}
		return list
	}},
	{"beside every line", func(p *plan.Plan) any {
		var list []any
		for _, l := range p.Lines() {
			list = append(list, p.RefusedAt(l.Path), p.WaitingAt(l.Path), p.AskAt(l.Path))
		}
		return list
	}},
}

// A plan made after another answers as the plan made from nothing, whatever was
// changed between, whatever it and those before it were asked, and in whatever
// order: what is kept could not have come out otherwise.
func TestTheNextPlanIsTheSameAsOneFromNothing(t *testing.T) {
	for seed := range uint64(12) {
		r := jobtest.New(seed)
		r.Junk = 0.05
		d := r.Document()
		p := plan.Make(d)
		for n := range 60 {
			d = changed(r, d)
			p = p.Next(d)
			fresh := plan.Make(d)
			for _, i := range r.Perm(len(questions))[:r.IntN(len(questions)+1)] {
				q := questions[i]
				require.True(t, reflect.DeepEqual(q.ask(&fresh), q.ask(&p)), "seed %d, change %d: %s", seed, n, q.name)
			}
		}
	}
}

// What can't be read is reported by the next plan wherever it is, and reported no
// more once it can: also where nothing is worked out from it.
func TestTheNextPlanTellsWhatCantBeReadAnywhere(t *testing.T) {
	parts := []string{"card", "shop", "bench", "day", "cup"}
	told, all := map[string]bool{}, 0 // by part; how many of the parts
	for seed := range jobtest.Enough(t, 1, &all, len(parts)-1) {
		r := jobtest.New(seed)
		r.Junk = 0
		d := r.Document()
		p := plan.Make(d)
		p.Refused()
		seen := map[string]int{}
		for _, l := range d.Lines() {
			part := job.PartOf(l.Path)
			if seen[part]++; seen[part] > 8 {
				continue
			}
			junk := d.Set(l.Path, "junk")
			for _, now := range []job.Document{junk, d} {
				p = p.Next(now)
				fresh := plan.Make(now)
				require.Equal(t, fresh.Refused(), p.Refused(), l.Path)
			}
			list, _, _ := strings.Cut(part, ".")
			if job.FieldAt(l.Path) != nil && !told[list] && made(junk).RefusedAt(l.Path) != nil {
				told[list] = true
				if slices.Contains(parts, list) {
					all++
				}
			}
		}
	}
}

// changed makes one change as the page can make it.
func changed(r *jobtest.Random, d job.Document) job.Document {
	lines := d.Lines()
	path := lines[r.IntN(len(lines))].Path
	item, _ := job.Split(path)
	switch r.IntN(15) {
	case 0:
		return d.Set(path, "")
	case 1:
		d, _ = d.Copy(item)
		return d
	case 2:
		return d.Remove(item)
	case 3:
		return d.Move(item, r.IntN(5)-2)
	case 4:
		m := unit.Choosable[r.IntN(len(unit.Choosable))]
		return job.SetUnit(d, m, m.Scales()[r.IntN(len(m.Scales()))])
	case 5:
		return job.SetComma(d, !job.HasComma(d))
	case 6: // a question answered
		if p := made(d); len(p.Asks()) > 0 {
			ask := p.Asks()[r.IntN(len(p.Asks()))]
			return d.Set(job.Real(ask.Path), ask.Text)
		}
		return d
	case 7:
		return r.Document()
	case 8: // a card of one's own, or another base for it
		if own := d.Items("card"); len(own) > 0 && r.IntN(2) == 0 {
			return d.Set("card."+own[r.IntN(len(own))]+".base", []string{"", "primer", "disc", "none"}[r.IntN(4)])
		}
		d, path = d.Add("card")
		return d.Set(path+".base", material.Cards[r.IntN(len(material.Cards))].Key)
	case 9, 10: // a figure of any card
		keys := append(d.Items("card"), material.Cards[r.IntN(len(material.Cards))].Key)
		path = "card." + keys[r.IntN(len(keys))] + "." + []string{"density", "stock", "name", "gel-time", "cured", "cured-density", "each-spell", "takes"}[r.IntN(8)]
	}
	if f := job.FieldAt(path); f != nil {
		return d.Set(path, r.Text(f))
	}
	return d
}

// What is in stock of a material and what it costs changes nothing that goes on the
// boat: nothing of that is worked out again. What its sheet says does.
func TestAPriceLeavesThePlanAsItIs(t *testing.T) {
	d := deck()
	p := plan.Make(d)
	was := p.Buildups()
	require.NotNil(t, was[0].Steps[0].Coat)
	for _, typed := range []string{"stock = 3 kg", "counted = cup.1", "buy = once", "pack.1.size = 3", "pack.1.price = 40", "pack.2.sold = no"} {
		path, text, _ := strings.Cut(typed, " = ")
		d = d.Set("card.gelcoat."+path, text)
		p = p.Next(d)
		require.Same(t, was[0].Steps[0].Coat, p.Buildups()[0].Steps[0].Coat, path)
	}
	d = d.Set("card.gelcoat.density", "1.4")
	p = p.Next(d)
	require.Greater(t, p.Buildups()[0].Steps[0].Coat.PerCoat.Value, was[0].Steps[0].Coat.PerCoat.Value)
	require.Equal(t, made(d).Needs(), p.Needs())
}

// What follows from a plan is worked out once, and never outlives it.
func TestWhatFollowsFromAPlanIsWorkedOutOnce(t *testing.T) {
	d := jobtest.New(1).Document()
	p := plan.Make(d)
	made := 0
	ask := func(p *plan.Plan, minute int) int {
		return plan.Once(p, "count", minute, func(of *plan.Plan) int {
			require.Equal(t, p.Lines(), of.Lines(), "of the plan that is asked")
			made++
			return made
		})
	}
	require.Equal(t, []int{1, 1}, []int{ask(&p, 0), ask(&p, 0)})
	shared := p
	require.Equal(t, 1, ask(&shared, 0), "a copy is the same plan")
	require.Equal(t, []int{2, 3}, []int{ask(&p, 1), ask(&p, 0)}, "for what else it hangs on")
	same, other := p.Next(d), p.Next(d.Set("name", "another"))
	require.Equal(t, 4, ask(&same, 0), "another plan, though of the same lines")
	require.Equal(t, 5, ask(&other, 0))
	require.Equal(t, 3, ask(&p, 0), "the one before stands as it was")
}
