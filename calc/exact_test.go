package calc_test

import (
	"fmt"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/plan/plantest"
	"shedreckoner/calc/ready"
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/unit"
)

// widened gives every exact figure that ships on a card a range, from half of it to
// half as much again, until it is put back. Temperatures are moved by ten degrees.
func widened(t *testing.T) {
	for _, card := range material.Cards {
		was := *card
		t.Cleanup(func() { *card = was })
		widenIn(reflect.ValueOf(card).Elem())
	}
}

func widenIn(v reflect.Value) {
	for i := range v.NumField() {
		f := v.Field(i)
		if f.Kind() != reflect.Struct || !f.CanSet() {
			continue
		}
		value, low, high := f.FieldByName("Value"), f.FieldByName("Low"), f.FieldByName("High")
		if !value.IsValid() || !low.IsValid() || value.Kind() != reflect.Float64 {
			widenIn(f)
			continue
		}
		if n := value.Float(); low.Float() == n && high.Float() == n && n != 0 {
			if value.Type() == reflect.TypeFor[unit.Temperature]() {
				low.SetFloat(n - 10)
				high.SetFloat(n + 10)
				continue
			}
			low.SetFloat(n / 2)
			high.SetFloat(n * 1.5)
		}
	}
}

// outcome is everything that is shown of a job: plan, order, calendar and the next
// cup.
func outcome(d job.Document, now bench.Now) string {
	p := plan.Make(d)
	b := bench.Make(&p, now)
	text := fmt.Sprintln(plantest.Figures(&p), plantest.Packs(&p), p.Refused(), p.Waiting(), len(p.Asks()))
	for i := range p.Buildups() {
		built := &p.Buildups()[i]
		text += fmt.Sprintln(built.AllFindings())
	}
	text += fmt.Sprintln(b.HasDose, b.Dose.Grams, b.Reasons, b.Whole.Value, b.Covers.Value, b.Hand.Largest.Value, b.Vapour.GivenOff.Value, b.Waiting)
	for _, v := range b.Verdicts() {
		text += fmt.Sprintln(v.Subject, v.Kind, v.Value, v.Limit)
	}
	for _, w := range b.Ways() {
		text += fmt.Sprintln(w.Kind, w.From, w.To, w.Surface.Value, w.UpTo, w.Dose)
	}
	s := schedule.Make(&p, schedule.Today{Known: b.Air.Known && b.Air.Err == nil, Day: b.Air.Day, Surface: b.Air.Surface, Hour: now.Hour, Unix: 1e6})
	for _, w := range s.Works {
		text += fmt.Sprintln(w.Kind, w.From, w.To, w.NeedsKey, w.Masking)
	}
	for _, l := range chance.Learn(&p).List {
		text += fmt.Sprintln(l.Belief, l.Count)
	}
	return text
}

// A limit that a card states is that figure, and no end of a range: a builder who
// types another keeps the range that shipped beside it, which must mean nothing then.
// Every ready sequence and benches from cold to hot come out the same, whatever range
// stands beside the figures that ship without one.
func TestAFigureWithoutARangeStandsForItself(t *testing.T) {
	var docs []job.Document
	for i := range ready.Sequences {
		of := &ready.Sequences[i]
		d, path := job.Document{}.Add("buildup")
		d = of.Put(d, path)
		d, surface := d.Add("surface")
		for _, l := range []job.Line{{Path: "buildup", Text: path}, {Path: "length", Text: "2 m"}, {Path: "width", Text: "1.5 m"}, {Path: "ground", Text: of.Grounds()[0]}} {
			d = d.Set(surface+"."+l.Path, l.Text)
		}
		docs = append(docs, d)
	}
	var all []job.Document
	for i, at := range []string{"14", "17", "21", "25", "29", "33", "36"} {
		for j, key := range []string{"gelcoat", "flowcoat", "vinylester", "primer", "topcoat", "polyester-filler", "epoxy-filler"} {
			d := docs[(i+j)%len(docs)]
			for _, l := range []job.Line{{Path: "card", Text: key}, {Path: "surface-temp", Text: at}, {Path: "scale-step", Text: "0.1 g"}, {Path: "read-on", Text: "2026-06-01"}, {Path: "read-at", Text: "10:00"}, {Path: "pigment", Text: "4 %"}} {
				d = d.Set("bench.now."+l.Path, l.Text)
			}
			d = d.Set("card.topcoat.ratio-mass", "4:1").Set("card.primer.ratio-mass", "5:1").Set("card.epoxy-filler.ratio-mass", "2:1")
			for _, l := range []job.Line{{Path: "date", Text: "2026-06-01"}, {Path: "low", Text: "12"}, {Path: "high", Text: "34"}, {Path: "sunrise", Text: "6:00"}, {Path: "read-temp", Text: "22"}, {Path: "read-humidity", Text: "55"}, {Path: "read-at", Text: "10:00"}} {
				d = d.Set("day.today."+l.Path, l.Text)
			}
			all = append(all, d)
		}
	}
	now := bench.Now{Hour: 10 * unit.Hour, Date: "2026-06-01"}
	var before []string
	for _, d := range all {
		before = append(before, outcome(d, now))
	}
	widened(t)
	card, _ := material.Find("gelcoat")
	require.NotEqual(t, card.SurfaceMost.Value, card.SurfaceMost.High)
	seen := map[string]bool{}
	for i, d := range all {
		seen[before[i]] = true
		assert.Equal(t, before[i], outcome(d, now), "%s at %s", d.Get("bench.now.card"), d.Get("bench.now.surface-temp"))
	}
	assert.Greater(t, len(seen), 40, "the benches are worth it")
}
