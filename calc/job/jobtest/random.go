// Package jobtest makes jobs for tests: documents over every field, list and
// shape that there is, drawn from a seed.
package jobtest

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
)

// Random draws documents.
type Random struct {
	*rand.Rand
	Junk  float64 // share of the texts that nobody can read
	Empty float64 // share of the fields that stay empty
	lines []job.Line
}

// New gives a source of documents that are mostly in order; the same seed gives
// the same documents.
func New(seed uint64) *Random {
	return &Random{Rand: rand.New(rand.NewPCG(seed, 7)), Junk: 0.005, Empty: 0.03}
}

// Document draws a job in metric, in US customary units, or in a mixture.
func (r *Random) Document() job.Document {
	r.lines = nil
	r.item(job.Root, "")
	for _, only := range []string{job.BenchPath, job.DayPath} {
		key, _ := job.Split(only)
		r.item(job.ListAt(key), only+".")
	}
	d := job.Of(r.lines)
	switch r.IntN(3) {
	case 0:
		d = job.SetSystem(d, true)
	case 1:
		m := unit.Choosable[r.IntN(len(unit.Choosable))]
		d = job.SetUnit(d, m, m.Scales()[r.IntN(len(m.Scales()))])
	}
	return d
}

// item fills the fields and lists under the prefix.
func (r *Random) item(l *job.List, prefix string) {
	kind := ""
	for _, f := range l.Fields {
		if r.Float64() >= r.Empty {
			text := r.Text(f)
			if f.Key == "kind" {
				kind = text
			}
			r.set(prefix+f.Key, text)
		}
	}
	if l.Key == "step" && r.IntN(8) > 0 {
		r.set(prefix+"card", r.card(kind))
	}
	for _, inner := range l.Lists {
		var ids []string
		for i := range r.count(inner) {
			id := strconv.Itoa(i + 1)
			ids = append(ids, id)
			r.item(inner, prefix+inner.Key+"."+id+".")
		}
		r.set(prefix+inner.Key, strings.Join(ids, " "))
	}
}

func (r *Random) set(path, text string) { r.lines = append(r.lines, job.Line{Path: path, Text: text}) }

// card draws a material that fits a kind of step.
func (r *Random) card(kind string) string {
	for {
		c := material.Cards[r.IntN(len(material.Cards))]
		switch {
		case kind == "fill" && c.Kind == material.Filler, kind == "polish" && c.Kind == material.Polish,
			kind != "fill" && kind != "polish" && c.Kind <= material.Topcoat:
			return c.Key
		}
	}
}

// count is how many items a list gets: none where there is only one, which has a
// path of its own, and enough rows for the rules that need some.
func (r *Random) count(l *job.List) int {
	switch {
	case l.Max == 1:
		return 0
	case l.Max == job.MaxRows:
		return r.IntN(9)
	case l.Key == "surface" || l.Key == "buildup" || l.Key == "step":
		return 1 + r.IntN(4)
	case l.Key == "cutout":
		return max(0, r.IntN(6)-3)
	}
	return min(r.IntN(4), l.Max)
}

// junk is what can't be read, or can be read two ways.
var junk = []string{"abc", "1,500", "-1", "0", "1e400", "NaN", "∞", "40 km", "4 m", "5 gal", "\\n\n", " = ", strings.Repeat("9", 30),
	"=1+1", "<script>", "3/0", "2 ft 3 kg", "'", strings.Repeat("x", 500), "\x00\xff", "½½", "--5", "1.2.3"}

// Text draws a text for a field.
func (r *Random) Text(f *job.Field) string {
	if r.Float64() < r.Junk {
		return junk[r.IntN(len(junk))]
	}
	switch f.Key {
	case "card":
		return material.Cards[r.IntN(len(material.Cards))].Key
	case "base":
		return material.Cards[r.IntN(len(material.Cards))].Key
	case "buildup":
		return "buildup." + strconv.Itoa(1+r.IntN(3))
	case "step":
		return "buildup.1.step." + strconv.Itoa(1+r.IntN(3))
	case surface.FacesKey:
		return "top front left"
	}
	switch f.Kind {
	case job.Checked:
		return f.Example
	case job.Pasted:
		return "2; 0.5; 3"
	case job.Choice:
		return f.Options[r.IntN(len(f.Options))].Key
	case job.Whole:
		return strconv.Itoa(int(f.Min) + r.IntN(4))
	case job.Money, job.Size:
		return strconv.FormatFloat(math.Round(r.Float64()*1e4)/100, 'f', -1, 64)
	case job.Clock:
		return strconv.Itoa(r.IntN(13)) + ":30"
	case job.Quantity, job.MassOrVolume, job.Moment:
		return r.quantity(f)
	}
	return "Name & <b> \"" + strconv.Itoa(r.IntN(100)) + "\" \\ = é"
}

// usually is what most jobs have, in SI base units: a job with films drawn over
// their whole range would have no plan.
var usually = map[string][2]float64{
	"film": {100e-6, 700e-6}, "taken": {0, 60e-6}, "thinner": {0, 0.05}, "thickness": {0.5e-3, 3e-3}, "sanded-off": {0.1, 0.5},
}

// quantity draws a figure inside the field's range, lengths as boats have them,
// in any scale of the field's measure, with its unit or bare.
func (r *Random) quantity(f *job.Field) string {
	low, high := f.Min, f.Max
	if usual, known := usually[f.Key]; known && r.IntN(5) > 0 {
		low, high = usual[0], usual[1]
	} else if f.Measure == unit.Sizes {
		low, high = max(low, 0.2), min(high, 3)
	}
	si := low + r.Float64()*(high-low)
	if low > 0 && high/low > 50 {
		si = low * math.Exp(r.Float64()*math.Log(high/low))
	}
	if f.Measure == unit.NoMeasure {
		return unit.Typed(si, unit.InPure)
	}
	scale := f.Measure.Scales()[r.IntN(len(f.Measure.Scales()))]
	text := strconv.FormatFloat(scale.From(si), 'f', 4, 64)
	if scale == f.Measure.Scales()[0] && r.IntN(2) == 0 {
		return text
	}
	return text + " " + scale.Symbol()
}
