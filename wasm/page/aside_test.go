package page_test

import (
	"maps"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// tightStore is a browser's store with so much room that it takes no new key;
// what is there already may be written over.
type tightStore struct {
	kept   map[string]string
	isFull bool
}

// carryOut does what the border does with effects, and gives the page the
// answers.
func (st *tightStore) carryOut(s *page.State, effects []page.Effect) *page.State {
	last := false // the latest that was to be kept, was
	for _, e := range effects {
		switch e.Kind {
		case page.Keep:
			if e.IfKept && !last {
				continue
			}
			_, isThere := st.kept[e.Key]
			last = isThere || !st.isFull
			verb := "refused"
			if last {
				st.kept[e.Key] = e.Kept()
				verb = "kept"
			}
			if verb == "refused" || !s.Stored {
				s = st.send(s, page.Message{Verb: verb, Path: e.Key, Text: e.Kept()})
			}
		case page.Forget:
			if last {
				delete(st.kept, e.Key)
			}
		case page.Revoke:
			delete(st.kept, e.Key)
		}
	}
	return s
}

func (st *tightStore) send(s *page.State, m page.Message) *page.State {
	s, effects := page.Update(s, m)
	return st.carryOut(s, effects)
}

func (st *tightStore) start() *page.State {
	s, effects := page.Start(maps.Clone(st.kept), page.Moment{Date: "2026-06-01"})
	return st.carryOut(s, effects)
}

// spoiltStores are stores without room in which one copy is spoilt, or both.
func spoiltStores() map[string]map[string]string {
	a, b := page.Prefix+"job.a", page.Prefix+"job.b"
	return map[string]map[string]string{
		"one of two": {a: named("Older", 6), b: "spoilt " + named("Newer", 7)},
		"one alone":  {a: "spoilt"},
		"both":       {a: "spoilt once", b: "spoilt twice"},
	}
}

func typing(name string) page.Message { return page.Message{Verb: "set", Path: "name", Text: name} }

// What a full store doesn't set aside stays where it is, whatever is typed, and
// this is said.
func TestASpoiltCopyIsNotOverwrittenInAFullStore(t *testing.T) {
	for name, kept := range spoiltStores() {
		st := &tightStore{maps.Clone(kept), true}
		s := st.start()
		for range 2 {
			for i := range 5 {
				s = st.send(s, typing(strings.Repeat("x", i+1)))
				s = st.send(s, page.Message{Verb: "undo"})
				s = st.send(s, page.Message{Verb: "redo"})
			}
			for key, text := range kept {
				assert.Equal(t, text, st.kept[key], name)
			}
			assert.False(t, s.Stored, name)
			shown := view.Page(s).String()
			assert.Contains(t, shown, "no room to set it aside", name)
			assert.Contains(t, shown, `data-do="aside"`, name)
			assert.Contains(t, shown, `data-do="export"`, name)
			s = st.start() // and over a reload
		}
		// The made-up job is kept meanwhile; that doesn't mean that this one is.
		st.isFull = false
		st.kept[page.Prefix+"demo.a"], st.kept[page.Prefix+"demo.b"] = "", ""
		st.isFull = true
		s = st.send(s, page.Message{Verb: "demo"})
		s = st.send(s, page.Message{Verb: "set", Path: "name", Text: "made up"})
		assert.False(t, s.Stored, name)
	}
}

// Once there is room, or once it has been saved as a file, everything that was
// typed meanwhile is kept.
func TestASpoiltCopyMakesWayOnceItIsSafe(t *testing.T) {
	for name, kept := range spoiltStores() {
		for _, way := range []string{"room", "file"} {
			st := &tightStore{maps.Clone(kept), true}
			s := st.start()
			s = st.send(s, typing("Meanwhile"))
			if way == "room" {
				st.isFull = false
				s = st.send(s, typing("Meanwhile, and then"))
			} else {
				next, effects := page.Update(s, page.Message{Verb: "aside"})
				require.Equal(t, page.Download, effects[0].Kind)
				for _, text := range kept {
					if _, _, err := job.Load(text); err != nil {
						assert.Contains(t, effects[0].Text, text, name)
					}
				}
				s = st.carryOut(next, effects)
				s = st.send(s, typing("Meanwhile, and then"))
			}
			assert.False(t, s.IsStuck(), name)
			assert.True(t, s.Stored, "%s, %s", name, way)
			again := st.start()
			assert.Equal(t, "Meanwhile, and then", again.Doc().Get("name"), "%s, %s", name, way)
			if way == "room" {
				for key, text := range kept {
					if _, _, err := job.Load(text); err != nil {
						assert.Contains(t, again.Aside, text, "%s, %s", name, key)
					}
				}
			}
		}
	}
}

// A job that makes the program fail is not overwritten in a full store either.
func TestAPoisonedJobIsNotOverwrittenInAFullStore(t *testing.T) {
	kept := map[string]string{page.Prefix + "job.a": named("Old", 6), page.Prefix + "job.b": named("New", 7)}
	st := &tightStore{maps.Clone(kept), true}
	s, effects := page.StartAside(st.kept, page.Moment{Date: "2026-06-01"})
	s = st.carryOut(s, effects)
	for range 3 {
		s = st.send(s, typing(s.Doc().Get("name")+"x"))
	}
	assert.Equal(t, kept[page.Prefix+"job.a"], st.kept[page.Prefix+"job.a"])
	assert.Equal(t, kept[page.Prefix+"job.b"], st.kept[page.Prefix+"job.b"])
}

// What is told outlives the messages that nobody sent.
func TestANoticeStaysUntilTheBuilderGoesOn(t *testing.T) {
	s := do(do(demo(t), "add", "surface", ""), "remove", "surface.1", "")
	require.NotEmpty(t, s.Notice)
	for _, verb := range []string{"tick", "work", "kept", "refused", "newer"} {
		s = do(s, verb, "", "")
		assert.NotEmpty(t, s.Notice, verb)
	}
	assert.Empty(t, do(s, "why", "area", "").Notice)
}
