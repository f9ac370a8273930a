package page

import (
	"slices"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/wasm/words"
)

// A timed test is a cup of its own kind: 100 g of product for timing its gel. Past
// the table's end it takes the card's floor, as the bench works it out; inside it
// takes the dose that any cup of 100 g has.

// testGrams is what is typed for a timed test inside the table.
const testGrams = "100 g"

// TestWay is the timed test past the table's end; nil: none can be made now.
func (s *State) TestWay() *bench.Way {
	b := s.Bench()
	ways := b.Ways()
	for i := range ways {
		if w := &ways[i]; w.Kind == bench.ByTimedTest && w.Err == nil {
			return w
		}
	}
	return nil
}

// MayTest reports whether a timed test can be made of what is on the bench.
func (s *State) MayTest() bool {
	b := s.Bench()
	return s.Slot().Elsewhere == "" && len(OpenCups(s.Doc(), Weighed)) == 0 && (s.TestWay() != nil || b.HasDose && b.Tin == cure.Untimed)
}

// timeTest goes to the scale with a timed test.
func timeTest(s *State, m Message) []Effect {
	if !s.MayTest() {
		return nil
	}
	var effects []Effect
	if s.TestWay() == nil && s.Bench().Whole.Value != cure.TestCup {
		effects = edit(s, s.Doc().Set(job.BenchPath+".amount", testGrams), "")
	}
	s.raise(WeighTestSheet)
	return append(effects, Effect{Kind: Focus, Key: SheetHeading})
}

// IsTestCup reports whether a cup is for timing its gel.
func IsTestCup(d job.Document, cup string) bool { return d.Get(cup+".kind") == job.TestCup }

// takeTest makes a cup test of a cup that gelled: what was really used.
func takeTest(s *State, m Message) []Effect {
	d := s.Doc()
	if !isCup(d, m.Path) || d.Get(m.Path+".gel") == "" || len(d.Items("test")) >= job.ListAt("test").Max {
		return nil
	}
	if isTaken(d, m.Path) {
		s.Notice = words.IsATestAlready
		return nil
	}
	effects := edit(s, asTest(d, m.Path), "")
	s.Notice = words.TakenAsTest
	return effects
}

// testTaken takes a test cup that has just gelled at once.
func testTaken(s *State, doc job.Document, cup string) job.Document {
	if doc.Get(cup+".gel") == "" || isTaken(doc, cup) {
		return doc
	}
	if _, err := job.FieldAt("test.1.minutes").Read(doc.Get(cup+".gel"), s.Plan.Job.Units); err != nil {
		s.Notice = words.TestTooShort
		return doc
	}
	if s.TimesOf(cup).SetOn > 0 {
		s.Notice = words.TestJumped
		return doc
	}
	if len(doc.Items("test")) >= job.ListAt("test").Max {
		s.Notice = words.ListFull(job.ListAt("test"))
		return doc
	}
	s.Notice = words.TakenAsTest
	return asTest(doc, cup)
}

// asTest adds a cup to the cup tests.
func asTest(d job.Document, cup string) job.Document {
	doc, test := d.Add("test")
	for to, from := range ofTest {
		doc = doc.Set(test+"."+to, d.Get(cup+"."+from))
	}
	return doc
}

// ofTest is where a cup test's figures come from in the log's cup.
var ofTest = map[string]string{"card": "card", "tin": "tin", "mass": "mixed", "temp": "product-temp", "share": "share", "minutes": "gel", "day": "day"}

// isTaken reports whether a cup stands among the cup tests as it is: twice would weigh
// double.
func isTaken(d job.Document, cup string) bool {
	return slices.ContainsFunc(d.Items("test"), func(id string) bool {
		for to, from := range ofTest {
			if d.Get("test."+id+"."+to) != d.Get(cup+"."+from) {
				return false
			}
		}
		return true
	})
}
