package view_test

import (
	"testing"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// FuzzPage: any text in any field of a job, on any screen, with the item open
// that it lies in: the page is well-formed, and what was typed stays text.
func FuzzPage(f *testing.F) {
	f.Add(uint64(1), "name", evil, uint8(0))
	f.Add(uint64(2), "surface.1.length", "1,500", uint8(0))
	f.Add(uint64(3), "buildup.1.step.1.film", evil, uint8(1))
	f.Add(uint64(4), "bench.now.surface-temp", "95 F", uint8(2))
	f.Add(uint64(5), "card.gelcoat.name", evil, uint8(5))
	f.Add(uint64(6), "cup.1.note", "<script>", uint8(4))
	f.Fuzz(func(t *testing.T, seed uint64, path, text string, screen uint8) {
		if job.FieldAt(path) == nil {
			return
		}
		s := of(t, printable(jobtest.New(seed%64).Document().Set(path, text)))
		s = do(s, "go", page.Screens[int(screen)%len(page.Screens)].Key, "")
		s = opened(s, parents(path)...)
		p := markup.Cut(view.Page(s))
		if len(p.Repeats) > 0 {
			t.Fatalf("regions that stand twice: %v", p.Repeats)
		}
		check(t, path, elements(t, path, p.HTML()))
	})
}
