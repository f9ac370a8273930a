package page_test

import (
	"encoding/csv"
	"maps"
	"math/rand/v2"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// store is the browser's store: it carries out what a state keeps.
func store(kept map[string]string, effects []page.Effect) {
	for _, e := range effects {
		switch e.Kind {
		case page.Keep:
			kept[e.Key] = e.Kept()
		case page.Forget, page.Revoke:
			delete(kept, e.Key)
		}
	}
}

func TestWhatIsKeptIsThereAgain(t *testing.T) {
	kept := map[string]string{}
	s, effects := start(t, kept)
	store(kept, effects)
	for _, m := range []page.Message{{Verb: "add", Path: "surface"}, {Verb: "set", Path: "surface.1.length", Text: "2 ft 6 in"},
		{Verb: "go", Path: "order"}, {Verb: "look", Text: "dark"}, {Verb: "undo"}, {Verb: "redo"}, {Verb: "set", Path: "surface.1.width", Text: "1,500"}} {
		s, effects = page.Update(s, m)
		store(kept, effects)
		again, _ := start(t, kept)
		require.Equal(t, s.Doc().Lines(), again.Doc().Lines(), "%+v", m)
		require.Equal(t, []any{s.Screen, s.Look, s.InDemo}, []any{again.Screen, again.Look, again.InDemo})
	}
	s, effects = page.Update(s, page.Message{Verb: "demo"})
	store(kept, effects)
	again, _ := start(t, kept)
	assert.True(t, again.InDemo)
	assert.Equal(t, s.Own.Doc.Lines(), again.Own.Doc.Lines())
}

func named(name string, revision int) string {
	return job.Save(job.Document{}.Set("name", name), revision)
}

func TestTheNewerGoodCopyIsRead(t *testing.T) {
	a, b := page.Prefix+"job.a", page.Prefix+"job.b"
	for _, c := range []struct {
		name, a, b, want string
		aside            int
	}{
		{"both good", named("old", 6), named("new", 7), "new", 0},
		{"the other way round", named("new", 8), named("old", 7), "new", 0},
		{"the newer one damaged", named("old", 6), strings.Replace(named("new", 7), "new", "nee", 1), "old", 1},
		{"the newer one cut", named("old", 6), named("new", 7)[:30], "old", 1},
		{"both damaged", "x", "y", "", 2},
		{"one alone", named("one", 4), "", "one", 0},
	} {
		kept := map[string]string{a: c.a}
		if c.b != "" {
			kept[b] = c.b
		}
		s, effects := start(t, kept)
		assert.Equal(t, c.want, s.Doc().Get("name"), c.name)
		assert.Len(t, s.Aside, c.aside, c.name)
		before := []string{c.a, c.b}
		store(kept, effects)
		set := 0
		for key, text := range kept {
			if strings.HasPrefix(key, page.Prefix+"aside.") {
				set++
				assert.Contains(t, before, text, "%s: kept as it was", c.name)
			}
		}
		assert.Equal(t, c.aside, set, c.name)
	}
}

// Wherever the newest copy stands, the next save leaves it alone.
func TestASaveGoesOverTheOlderCopy(t *testing.T) {
	a, b := page.Prefix+"job.a", page.Prefix+"job.b"
	for name, kept := range map[string]map[string]string{"in place": {a: named("old", 6), b: named("new", 7)}, "swapped": {a: named("new", 7), b: named("old", 6)},
		"one alone": {a: named("new", 6)}, "one alone elsewhere": {b: named("new", 6)}} {
		s, _ := start(t, kept)
		for i := range 3 {
			newest := ""
			for key, text := range kept {
				if d, r, _ := job.Load(text); d.Get("name") == s.Doc().Get("name") && r == s.Own.Revision {
					newest = key
				}
			}
			require.NotEmpty(t, newest, name)
			before := kept[newest]
			var effects []page.Effect
			s, effects = page.Update(s, page.Message{Verb: "set", Path: "name", Text: strings.Repeat("x", i+1)})
			store(kept, effects)
			assert.Equal(t, before, kept[newest], "%s, save %d", name, i)
		}
		again, _ := start(t, kept)
		assert.Equal(t, "xxx", again.Doc().Get("name"), name)
	}
}

// Any one bit that flips in a copy is noticed: the other copy is read, and the
// spoilt one set aside as it is.
func TestAFlippedBitIsNoticed(t *testing.T) {
	s := demo(t)
	older := s.Doc().Set("name", "Older")
	good := map[string]string{page.Prefix + "job.a": job.Save(older, 6), page.Prefix + "job.b": job.Save(older.Set("name", "Newer"), 7)}
	random := rand.New(rand.NewPCG(64, 1))
	for range 64 {
		for key, want := range map[string]string{page.Prefix + "job.b": "Older", page.Prefix + "job.a": "Newer"} {
			kept := maps.Clone(good)
			spoilt := []byte(kept[key])
			at, bit := random.IntN(len(spoilt)), random.IntN(8)
			spoilt[at] ^= 1 << bit
			kept[key] = string(spoilt)
			s, effects := start(t, kept)
			assert.Equal(t, want, s.Doc().Get("name"), "bit %d of byte %d of %s", bit, at, key)
			assert.Equal(t, []string{string(spoilt)}, s.Aside, "bit %d of byte %d of %s", bit, at, key)
			store(kept, effects)
			assert.NotContains(t, kept, key)
		}
	}
}

// Set aside once, never overwritten by what is set aside later.
func TestWhatIsSetAsideIsNeverOverwritten(t *testing.T) {
	kept := map[string]string{}
	for i, broken := range []string{"first", "second", "third"} {
		kept[page.Prefix+"job.a"] = broken
		_, effects := start(t, kept)
		store(kept, effects)
		var texts []string
		for key, text := range kept {
			if strings.HasPrefix(key, page.Prefix+"aside.") {
				texts = append(texts, text)
			}
		}
		assert.Len(t, texts, i+1)
		assert.Contains(t, texts, broken)
	}
}

// A save goes over the older copy, so that one cut short never costs both.
func TestASaveLeavesTheNewestCopyAlone(t *testing.T) {
	s, _ := start(t, nil)
	last := ""
	for i := range 6 {
		next, effects := page.Update(s, page.Message{Verb: "set", Path: "name", Text: strings.Repeat("x", i+1)})
		require.NotEmpty(t, effects)
		assert.NotEqual(t, last, effects[0].Key)
		last, s = effects[0].Key, next
	}
}

func TestImportChecksBeforeItReplaces(t *testing.T) {
	s := do(demo(t), "own", "", "")
	s = do(s, "set", "name", "mine")
	saved, err := os.ReadFile("../../testdata/saved/format-1.txt")
	require.NoError(t, err)
	for _, bad := range []string{"", "x", string(saved[:len(saved)/2]), strings.Replace(string(saved), "format = 1", "format = 3", 1), strings.Repeat("x", job.MaxSaved+1)} {
		next := do(s, "import", "", bad)
		assert.Equal(t, s.Doc(), next.Doc())
		assert.Contains(t, next.Notice, "Nothing was changed")
	}
	next := do(s, "import", "", string(saved))
	assert.Equal(t, "Tern, 7 m open launch (made up)", next.Doc().Get("name"))
	undone := do(next, "undo", "", "")
	assert.Equal(t, next.Doc().Lines(), undone.Doc().Lines(), "undo doesn't go over to another job")
	back := do(next, "job-open", "1", "")
	assert.Equal(t, "mine", back.Doc().Get("name"))
	exported, effects := page.Update(next, page.Message{Verb: "export"})
	require.Len(t, effects, 1)
	assert.Equal(t, "shed-reckoner-tern--7-m-open-launch--made-up.txt", effects[0].Key)
	blank, _ := start(t, nil)
	imported := do(blank, "import", "", effects[0].Text)
	assert.Empty(t, job.Changes(exported.Doc().Set(job.NumberPath, ""), imported.Doc()), "an empty phone has all of it again")
}

func TestARefusedSaveIsSaid(t *testing.T) {
	own, history := page.Prefix+"job.a", page.Prefix+"job.history"
	s, _ := start(t, nil)
	assert.True(t, do(s, "refused", history, "").Stored, "the job itself is kept")
	s, effects := page.Update(s, page.Message{Verb: "refused", Path: own})
	assert.False(t, s.Stored)
	assert.NotEmpty(t, said(effects).Text)
	shown := view.Page(s).String()
	assert.Contains(t, shown, "Export the job as a file before you close the page.")
	assert.Contains(t, shown, `data-do="export"`)
	assert.False(t, do(s, "kept", history, "").Stored, "small things find room in a store that is full")
	_, effects = page.Update(s, page.Message{Verb: "refused", Path: own})
	assert.Empty(t, effects, "said once")
	assert.True(t, do(s, "kept", own, "").Stored)
}

// The list reads back cell by cell, and none of its cells is run as a formula.
func TestTheOrderListAsCSV(t *testing.T) {
	s := demo(t)
	evil := []string{`=HYPERLINK("http://x","y")`, "+1", "-1", "@SUM(A1)", "\t=1", "a,b", `say "x"`, "two\nlines", "  =1", "＝1"}
	for i, name := range evil {
		s = do(s, "set", "card."+[]string{"gelcoat", "flowcoat", "styrene", "compound", "disc", "tape", "gloves", "cup", "roller", "mask"}[i]+".name", name)
	}
	s = do(s, "set", "currency", "=1")
	text := strings.TrimPrefix(page.OrderCSV(s), "\ufeff")
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, len(s.Order().Lines)+1)
	for i, l := range s.Order().Lines {
		assert.Contains(t, []string{l.Name(), "'" + l.Name()}, strings.ReplaceAll(rows[i+1][0], "\r\n", "\n"))
		assert.Equal(t, l.Need.String(), rows[i+1][1])
	}
	for _, row := range rows {
		for _, cell := range row {
			assert.False(t, strings.ContainsAny(strings.TrimSpace(cell)[:min(1, len(strings.TrimSpace(cell)))], "=+-@"), "%q", cell)
		}
	}
	for _, line := range strings.Split(strings.TrimSuffix(text, "\r\n"), "\r\n") {
		assert.True(t, strings.HasPrefix(line, `"`), line)
	}
}

// Pasted into a spreadsheet the order as text is text: no line or cell of it begins as a formula does.
func TestTheOrderAsTextRunsNowhere(t *testing.T) {
	s := demo(t)
	s = do(s, "set", "currency", "\t=1")
	for key, name := range map[string]string{"gelcoat": "=1", "flowcoat": "x\t=1", "styrene": "x\n+1", "tape": "-1", "gloves": "@x", "mask": "x\r=1"} {
		s = do(s, "set", "card."+key+".name", name)
	}
	text := page.OrderText(do(s, "set", "name", "Tern\n=1"))
	assert.Contains(t, text, "• =1: ")
	for _, cell := range regexp.MustCompile(`[\t\r\n\x{2028}]+`).Split(text, -1) {
		assert.NotRegexp(t, `^\s*[-=+@]`, cell)
	}
}

func FuzzCSVCell(f *testing.F) {
	f.Add("=1")
	f.Fuzz(func(t *testing.T, text string) {
		cell := page.CSVCell(text)
		rows, err := csv.NewReader(strings.NewReader(cell + "\r\n")).ReadAll()
		if err != nil || len(rows) != 1 {
			t.Fatalf("%q: %v", cell, err)
		}
		got, want := rows[0][0], strings.ReplaceAll(text, "\r\n", "\n") // the reader takes one line end for the other
		if got != want && got != "'"+want {
			t.Fatalf("%q came back as %q", text, got)
		}
	})
}
