package page_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

func step(t *testing.T, s *page.State, kept map[string]string, messages ...page.Message) *page.State {
	t.Helper()
	for _, m := range messages {
		var effects []page.Effect
		s, effects = page.Update(s, m)
		store(kept, effects)
	}
	return s
}

func TestUndoOutlivesAReload(t *testing.T) {
	kept := map[string]string{}
	s, _ := start(t, kept)
	s = step(t, s, kept, page.Message{Verb: "add", Path: "surface"}, page.Message{Verb: "set", Path: "surface.1.length", Text: "2.4 m"},
		page.Message{Verb: "set", Path: "surface.1.name", Text: "a\tb\\c\nd"}, page.Message{Verb: "undo"})
	again, _ := start(t, kept)
	require.Equal(t, s.Doc(), again.Doc())
	again = step(t, again, kept, page.Message{Verb: "redo"})
	assert.Equal(t, "a\tb\\c\nd", again.Doc().Get("surface.1.name"))
	again = step(t, again, kept, page.Message{Verb: "undo"}, page.Message{Verb: "undo"}, page.Message{Verb: "undo"})
	assert.Empty(t, again.Doc().Lines())
	again = step(t, again, kept, page.Message{Verb: "undo"})
	assert.Empty(t, again.Doc().Lines())
}

func TestAHistoryOfAnotherSaveIsNotTaken(t *testing.T) {
	kept := map[string]string{}
	s, _ := start(t, kept)
	step(t, s, kept, page.Message{Verb: "add", Path: "surface"})
	key := page.Prefix + "job.history"
	kept[key] = strings.Replace(kept[key], "1\n", "7\n", 1)
	again, _ := start(t, kept)
	assert.Empty(t, again.Own.Undo)
}

func TestTwoTabsDontOverwriteEachOther(t *testing.T) {
	mine, theirs := map[string]string{}, map[string]string{}
	s, _ := start(t, mine)
	s = step(t, s, mine, page.Message{Verb: "add", Path: "surface"})
	other, _ := start(t, mine)
	other = step(t, other, theirs, page.Message{Verb: "set", Path: "surface.1.name", Text: "theirs"})
	var key string
	for k, text := range theirs {
		if _, _, err := job.Load(text); err == nil {
			key = k
		}
	}
	s = step(t, s, mine, page.Message{Verb: "elsewhere", Path: key, Text: theirs[key]})
	before := len(mine)
	keptBefore := mine[key]
	s = step(t, s, mine, page.Message{Verb: "set", Path: "surface.1.name", Text: "mine"})
	assert.Equal(t, keptBefore, mine[key], "nothing is kept until the builder chooses")
	assert.Len(t, mine, before)

	taken := step(t, s, map[string]string{}, page.Message{Verb: "theirs"})
	assert.Equal(t, other.Doc(), taken.Doc())
	kept := step(t, s, mine, page.Message{Verb: "mine"})
	assert.Equal(t, "mine", kept.Doc().Get("surface.1.name"))
	assert.Greater(t, kept.Own.Revision, other.Own.Revision, "the next start finds the chosen one")
}

func TestNoNewVersionUnderAnOpenCup(t *testing.T) {
	s, _ := start(t, map[string]string{})
	s = step(t, s, map[string]string{}, page.Message{Verb: "newer"})
	assert.True(t, s.Newer)
	_, effects := page.Update(s, page.Message{Verb: "switch"})
	assert.Equal(t, []page.Effect{{Kind: page.Switch}}, effects)
	s.Own.Doc = s.Own.Doc.Set("cup", "1").Set("cup.1.weighed", "5")
	s, effects = page.Update(s, page.Message{Verb: "switch"})
	assert.Empty(t, effects)
	assert.NotEmpty(t, s.Notice)
}

func TestAJobThatCantBeShownIsSetAside(t *testing.T) {
	kept := map[string]string{}
	s, _ := start(t, kept)
	step(t, s, kept, page.Message{Verb: "add", Path: "surface"}, page.Message{Verb: "add", Path: "surface"})
	s, effects := page.StartAside(kept, page.Moment{Date: "2026-06-01"})
	assert.Empty(t, s.Doc().Lines())
	assert.Len(t, s.Aside, 2, "both copies")
	store(kept, effects)
	again, _ := start(t, kept)
	assert.Empty(t, again.Doc().Lines())
	assert.Len(t, again.Aside, 2)
}

// saveOf is what a page keeps of its shown job by a message, as the other tab
// hears of it.
func saveOf(t *testing.T, s *page.State, m page.Message) (*page.State, page.Message) {
	t.Helper()
	s, effects := page.Update(s, m)
	for _, e := range effects {
		if e.Kind == page.Keep && (strings.HasSuffix(e.Key, ".a") || strings.HasSuffix(e.Key, ".b")) {
			return s, page.Message{Verb: "elsewhere", Path: e.Key, Text: e.Kept()}
		}
	}
	t.Fatal("nothing was kept")
	return s, m
}

// A tab that was told and typed on takes the latest of the other, not the save
// that it was told of first.
func TestTheOtherTabsLatestIsTaken(t *testing.T) {
	mine, _ := start(t, nil)
	theirs := mine
	mine, m := saveOf(t, mine, typing("begun"))
	theirs = do(theirs, m.Verb, m.Path, m.Text)
	theirs, _ = page.Update(theirs, page.Message{Verb: "theirs"})
	require.Equal(t, "begun", theirs.Doc().Get("name"))
	for range 6 {
		mine = do(mine, "set", "name", mine.Doc().Get("name")+"x")
	}
	theirs, m = saveOf(t, theirs, typing("theirs"))
	mine = do(mine, m.Verb, m.Path, m.Text)
	for range 6 {
		mine = do(mine, "set", "name", mine.Doc().Get("name")+"y")
	}
	theirs, m = saveOf(t, theirs, typing("theirs at last"))
	mine = do(mine, m.Verb, m.Path, m.Text)
	taken := do(mine, "theirs", "", "")
	assert.Equal(t, "theirs at last", taken.Doc().Get("name"))

	// Once the other has come back to what is here, there is nothing to choose.
	_, m = saveOf(t, theirs, typing(mine.Doc().Get("name")))
	mine = do(mine, m.Verb, m.Path, m.Text)
	assert.Empty(t, mine.Own.Elsewhere)
	next, _ := saveOf(t, mine, typing("on"))
	assert.Equal(t, "on", next.Doc().Get("name"))
}

// The job behind the made-up one is watched too, and the made-up one behind it.
func TestTheJobBehindIsToldApartToo(t *testing.T) {
	for _, mineInDemo := range []bool{true, false} {
		s, _ := start(t, nil)
		s = do(do(s, "set", "name", "begun"), "demo", "", "")
		mine, theirs := s, do(s, "own", "", "")
		if !mineInDemo {
			mine, theirs = theirs, mine
		}
		_, m := saveOf(t, theirs, typing("theirs"))
		mine = do(mine, m.Verb, m.Path, m.Text)
		assert.NotContains(t, view.Page(mine).String(), "in another tab", "not what is shown")
		mine = do(mine, map[bool]string{true: "own", false: "demo"}[mineInDemo], "", "")
		assert.Contains(t, view.Page(mine).String(), "in another tab")
		_, effects := page.Update(mine, typing("mine"))
		for _, e := range effects {
			assert.NotEqual(t, page.Keep, e.Kind, e.Key)
		}
	}
}

// A pot goes off whichever tab goes on: its clock runs in the job that is chosen.
func TestARunningCupOutlivesTheChoiceOfATab(t *testing.T) {
	kept := map[string]string{}
	mine := weighedCup(t, kept)
	theirs := mine
	mine = step(t, mine, kept, catalystIn())
	_, m := saveOf(t, theirs, typing("theirs"))
	mine = do(mine, m.Verb, m.Path, m.Text)
	next, effects := page.Update(mine, page.Message{Verb: "theirs"})
	assert.Equal(t, "theirs", next.Doc().Get("name"))
	assert.Equal(t, []string{"cup.1"}, page.OpenCups(next.Doc(), page.Running))
	assert.Contains(t, effects, page.Effect{Kind: page.Timer, Key: "on"})
	assert.Equal(t, page.Keep, effects[0].Kind, "and is kept")

	// The other way round: the tab without the cup goes on, under another cup of the same number.
	empty, _ := start(t, nil)
	empty = do(empty, "set", "name", "empty")
	_, m = saveOf(t, mine, page.Message{Verb: "mine"})
	empty = do(empty, m.Verb, m.Path, m.Text)
	empty, effects = page.Update(empty, page.Message{Verb: "mine"})
	assert.Equal(t, "empty", empty.Doc().Get("name"))
	assert.Equal(t, []string{"cup.1"}, page.OpenCups(empty.Doc(), page.Running))
	assert.Contains(t, effects, page.Effect{Kind: page.Timer, Key: "on"})
	empty.Own.Doc = empty.Own.Doc.Set("cup.1.weighed", "999").Set("cup.1.in", "999")
	empty = do(empty, m.Verb, m.Path, m.Text)
	empty = do(empty, "mine", "", "")
	assert.Len(t, page.OpenCups(empty.Doc(), page.Running), 2)
}

// Where a full store refuses the save that tells of the catalyst, the permit
// that is gone tells the other tab.
func TestAPermitThatIsGoneTakesTheDoseFromTheOtherTab(t *testing.T) {
	kept := map[string]string{}
	mine := weighedCup(t, kept)
	theirs, effects := page.Update(mine, catalystIn())
	require.Equal(t, page.Revoke, effects[0].Kind)
	require.Equal(t, page.Running, page.CupPhase(theirs.Doc(), "cup.1"))
	mine, effects = page.Update(mine, page.Message{Verb: "elsewhere", Path: effects[0].Key})
	assert.Empty(t, effects, "nothing is kept over the other tab's save")
	cup, may := mine.DoseFor()
	assert.False(t, cup != "" && may)
	mine = do(mine, "in", "cup.1", "")
	assert.NotEqual(t, page.Running, page.CupPhase(mine.Doc(), "cup.1"))
}

// Nothing is weighed before the builder has chosen a tab.
func TestNoCupIsWeighedBetweenTwoTabs(t *testing.T) {
	s := do(weighedCup(t, map[string]string{}), "end", "cup.1", "scrap")
	_, m := saveOf(t, s, typing("theirs"))
	s = do(s, m.Verb, m.Path, m.Text)
	next, effects := page.Update(s, page.Message{Verb: "weighed", At: catalystIn().At})
	assert.Empty(t, page.OpenCups(next.Doc(), page.Weighed))
	assert.NotEmpty(t, next.Notice)
	for _, e := range effects {
		assert.NotEqual(t, page.Keep, e.Kind)
	}
}
