package page

import (
	"strings"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
)

func gramText(m unit.Mass) string { return unit.Typed(float64(m), unit.InGram) + " g" }

// takenDown writes into a weighed cup what its clock and the log need of it later
// on. What the cup before it had and this one hasn't is taken away.
func takenDown(s *State, doc job.Document, cup string) job.Document {
	b := s.Bench()
	put := func(key, text string) { doc = doc.Set(cup+"."+key, text) }
	mass := func(key string, m unit.Mass) {
		text := ""
		if m > 0 {
			text = gramText(m)
		}
		put(key, text)
	}
	put("card", b.Card.Key)
	put("tin", doc.Get(job.BenchPath+".tin"))
	put("step", b.Coat)
	put("mixed", gramText(b.Whole.Value))
	mass("product", b.Mix.Product.Value)
	put("parts", job.PartsText(b.PuttyTakes()))
	mass("thinner", b.Mix.Thinner.Value)
	mass("wax", b.Mix.Wax.Value)
	put("day", s.Now.Date)
	put("film", "")
	if b.Film.Step != nil {
		put("film", unit.Typed(float64(b.Film.Value), unit.InMicrometre)+" µm")
	}
	put("per-area", "")
	if b.PerArea.Step != nil {
		put("per-area", unit.Typed(float64(b.PerArea.Value), unit.InGramPerSquareMetre)+" g/m²")
	}
	put("share", "")
	if b.HasDose {
		put("share", unit.Typed(float64(b.Dose.OfWhole.Value), unit.InPercent)+" %")
	}
	doc = timesDown(s, doc, cup)
	put("air-temp", WithUnit(s, job.DayPath+".read-temp"))
	put("sun", strings.TrimSpace(doc.Get(job.DayPath+".sun")+" "+doc.Get(job.DayPath+".colour")))
	put("method", "")
	if b.Method != nil {
		put("method", b.Method.Key)
	}
	surface, product := doc.Get(job.BenchPath+".surface-temp"), doc.Get(job.BenchPath+".product-temp")
	if product == "" {
		product = surface
	}
	put("surface-temp", surface)
	put("product-temp", product)
	put("humidity", doc.Get(job.DayPath+".read-humidity"))
	return doc
}

// timesDown writes a weighed cup's minutes, all from catalyst in.
func timesDown(s *State, doc job.Document, cup string) job.Document {
	b := s.Bench()
	minutes := map[string]unit.Time{}
	if m := b.Minutes; m != nil {
		minutes = map[string]unit.Time{"usable": m.Spread.Value, "early": m.GelsFrom.Value, "late": m.GelsUntil.Value}
	}
	for _, key := range []string{"usable", "early", "late"} {
		text := ""
		if t, known := minutes[key]; known {
			text = unit.Typed(float64(t), unit.InMinute) + " min"
		}
		doc = doc.Set(cup+"."+key, text)
	}
	return doc
}

// WithUnit is what was typed at a path, a bare number with its unit: the unit
// that is shown may change, what was taken down must not.
func WithUnit(s *State, path string) string {
	text := s.Doc().Get(path)
	if f := job.FieldAt(path); f != nil && f.Measure != unit.NoMeasure && text != "" && unit.IsBare(text) {
		return text + " " + s.Plan.Job.Units.Scale(f.Measure).Symbol()
	}
	return text
}

// testDown makes a weighed cup a timed test: of product alone over the table's end.
func testDown(s *State, doc job.Document, cup string) job.Document {
	doc = doc.Set(cup+".kind", job.TestCup).Set(cup+".step", "").Set(cup+".usable", "")
	w := s.TestWay()
	if w == nil {
		return doc
	}
	for _, key := range []string{"thinner", "wax", "early", "late", "per-area"} {
		doc = doc.Set(cup+"."+key, "")
	}
	return doc.Set(cup+".mixed", gramText(w.Mass.Value)).Set(cup+".product", gramText(w.Mass.Value)).
		Set(cup+".share", unit.Typed(float64(w.OfWhole.Value), unit.InPercent)+" %")
}

// PourFor is what starts the clock of a weighed cup, or of the next one (""): the
// catalyst, or a fixed ratio's hardener; nil: there is none.
func (s *State) PourFor(cup string) *bench.Pour {
	w := s.TestWay()
	if w == nil || cup != "" && !IsTestCup(s.Doc(), cup) {
		return s.Bench().Pour
	}
	p := &bench.Pour{Amount: w.Dose, Share: w.OfWhole}
	if w.Dose.Scale == unit.InGram {
		grams := decimal.NewFromFloat(unit.InGram.From(float64(w.Mass.Value))).Round(0)
		p.Then = bench.Measured{Number: grams.Add(w.Dose.Number), Scale: unit.InGram}
	}
	return p
}

// catalystDown writes which catalyst went in, and how much of it.
func catalystDown(s *State, doc job.Document, cup string) job.Document {
	b, w := s.Bench(), s.TestWay()
	var mass unit.Mass
	switch {
	case w != nil && IsTestCup(doc, cup):
		mass = unit.Mass(float64(w.OfWhole.Value) * float64(w.Mass.Value))
	case b.HasDose:
		mass = b.Dose.Mass.Value
	default:
		return doc
	}
	key := doc.Get(job.BenchPath + ".catalyst")
	if key == "" {
		key = b.Card.Hardener
	}
	return doc.Set(cup+".catalyst", key).Set(cup+".catalyst-mass", gramText(mass))
}
