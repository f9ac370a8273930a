package page_test

import (
	"testing"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/wasm/page"
)

// FuzzOneDose: any message, in the middle of a builder's morning. No panic, no
// second dose for a cup, none beside what can't be read or is of another day.
func FuzzOneDose(f *testing.F) {
	for i, m := range []page.Message{
		{Verb: "in", Path: "cup.1"}, {Verb: "end", Path: "cup.1", Text: "gelled"}, {Verb: "set", Path: "bench.now.surface-temp", Text: "1,500"},
		{Verb: "set", Path: "cup.1.in", Text: ""}, {Verb: "import", Text: job.Save(jobtest.New(1).Document(), 4)}, {Verb: "paste", Path: "buildup.1.step.1.grid", Text: "1\t2\n3"},
		{Verb: "opened", Text: "#" + page.LinkMark + "AA"}, {Verb: "unit", Path: "temperature", Text: "°F"}, {Verb: "take-job"},
	} {
		f.Add(uint64(i), m.Verb, m.Path, m.Text)
	}
	f.Fuzz(func(t *testing.T, seed uint64, verb, path, text string) {
		b := newBench(t, seed)
		for range 12 {
			b.step()
		}
		m := page.Message{Verb: verb, Path: path, Text: text, At: moment(b.now)}
		b.send(m)
		b.checkPage(m)
		b.reload()
		for range 4 {
			b.step()
		}
	})
}

// FuzzReadLink: whatever comes behind a #, nothing but a whole job is read out
// of it, and that goes into a link again.
func FuzzReadLink(f *testing.F) {
	for seed := range uint64(3) {
		if text, err := page.Link(jobtest.New(seed).Document(), 3); err == nil {
			f.Add(text)
		}
	}
	f.Add("#" + page.LinkMark + "AA")
	f.Fuzz(func(t *testing.T, fragment string) {
		doc, err := page.ReadLink(fragment)
		if err != nil {
			return
		}
		text, err := page.Link(doc, 1)
		if err == page.ErrLinkTooLong {
			return
		}
		again, err := page.ReadLink(text)
		if err != nil || len(job.Changes(doc, again)) > 0 {
			t.Fatalf("%q doesn't come back: %v", fragment, err)
		}
	})
}

// FuzzLink: any text in any field comes back out of a link as it was typed.
func FuzzLink(f *testing.F) {
	f.Add(uint64(1), "surface.1.name", "a\\nb = c\n")
	f.Fuzz(func(t *testing.T, seed uint64, path, text string) {
		if job.FieldAt(path) == nil {
			return
		}
		doc := jobtest.New(seed%16).Document().Set(path, text)
		link, err := page.Link(doc, 1)
		if err == page.ErrLinkTooLong {
			return
		}
		again, err := page.ReadLink(link)
		if err != nil || len(job.Changes(doc, again)) > 0 {
			t.Fatalf("%s = %q doesn't come back: %v", path, text, err)
		}
	})
}
