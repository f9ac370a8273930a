package page_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// Keys typed in one field one after another are one change, from the first of the history on; another field, undo, or a cup begins
// a new one. What was undone can be redone until something is typed.
func TestKeysInOneFieldAreOneChange(t *testing.T) {
	s := lined(t, "surfaces", "", "surface = 1")
	for _, text := range []string{"2", "2.", "2.4", "2.4 m"} {
		s = do(s, "set", "surface.1.length", text)
	}
	require.Len(t, s.Own.Undo, 1)
	assert.Empty(t, do(s, "undo", "", "").Doc().Get("surface.1.length"))
	s = do(do(s, "set", "surface.1.width", "1"), "set", "surface.1.width", "1 m")
	s = do(s, "set", "surface.1.length", "3 m")
	require.Len(t, s.Own.Undo, 3)
	back := do(s, "undo", "", "")
	assert.Equal(t, "2.4 m", back.Doc().Get("surface.1.length"))
	assert.Equal(t, "3 m", do(back, "redo", "", "").Doc().Get("surface.1.length"))
	again := do(back, "set", "surface.1.length", "4 m")
	assert.Len(t, again.Own.Undo, 3, "after undo a change of its own")
	assert.Empty(t, again.Own.Redo)
	assert.Equal(t, again.Doc(), do(again, "redo", "", "").Doc())
	same := do(s, "set", "surface.1.length", "3 m")
	assert.Len(t, same.Own.Undo, 3, "nothing has changed")
	many := s
	for i := range 250 {
		many = do(many, "set", "surface.1."+[]string{"length", "width"}[i%2], strings.Repeat("1", 1+i%7)+" mm")
	}
	assert.Len(t, many.Own.Undo, 200)
}

// On the scale − and + move a cup by the gram that it shows; while it is planned by the dial's step.
func TestACupIsSteppedFinelyOnTheScale(t *testing.T) {
	planned := lined(t, "cup", "")
	for _, l := range warmBench {
		planned, _ = page.Update(planned, page.Message{Verb: "set", Path: l.Path, Text: l.Text, At: noon})
	}
	amount := func(s *page.State) string {
		return plain(do(s, "step", "bench.now.amount", "up").Doc().Get("bench.now.amount"))
	}
	assert.Equal(t, "101 g", amount(do(planned, "sheet", page.WeighSheet, "")))
	assert.Equal(t, unit.Typed(float64(planned.Bench().Size.Mass.Value+planned.Bench().Size.Step), unit.InGram)+" g", amount(planned))
	assert.Equal(t, "150 g", amount(planned))
	_, effects := page.Update(planned, page.Message{Verb: "set", Path: "name", Text: "x", At: noon})
	for _, e := range effects {
		assert.NotEqual(t, page.Persist, e.Kind, "the browser is asked once")
	}
	_, effects = page.Update(lined(t, "cup", ""), page.Message{Verb: "set", Path: "name", Text: "x", At: noon})
	asked := 0
	for _, e := range effects {
		if e.Kind == page.Persist {
			asked++
		}
	}
	assert.Equal(t, 1, asked)
}

// Once the builder has chosen, the job's next save is newer than both that were kept.
func TestAChosenJobIsNewerThanBoth(t *testing.T) {
	s := lined(t, "surfaces", "")
	for _, theirs := range []int{2, 40} {
		told := do(s, "elsewhere", page.Prefix+"job.a", named("theirs", theirs))
		require.NotEmpty(t, told.Own.Elsewhere)
		for _, choice := range []string{"mine", "theirs"} {
			chosen := do(told, choice, "", "")
			assert.GreaterOrEqual(t, chosen.Own.Revision, max(s.Own.Revision, theirs), "%s, %d", choice, theirs)
			assert.Greater(t, do(chosen, "set", "name", "on").Own.Revision, max(s.Own.Revision, theirs), "%s, %d", choice, theirs)
		}
		same := do(s, "elsewhere", page.Prefix+"job.a", named("", theirs))
		assert.Empty(t, same.Own.Elsewhere)
		assert.Equal(t, max(s.Own.Revision, theirs), same.Own.Revision)
	}
}

// The made-up job has its tool in hand, as the builder's own would after the first cup.
func TestTheMadeUpJobHasItsToolInHand(t *testing.T) {
	s := demo(t)
	assert.True(t, s.HasTool("scale 0.1 g"))
	assert.Equal(t, []string{"scale", "0.1 g"}, []string{s.Doc().Get("bench.now.tool"), s.Doc().Get("bench.now.scale-step")})
	for _, l := range s.Doc().Lines() {
		assert.NotContains(t, l.Text, "bench.now.tool")
		assert.Regexp(t, `^[a-z]`, l.Path)
	}
}

// Only a cup that gelled in a known time becomes a test, and none twice.
func TestOnlyATimedCupIsATest(t *testing.T) {
	s := demo(t)
	for message, has := range map[string]bool{"take cup.1 ": false, "take cup.2 ": false, "take cup.7 ": false, "take test.1 ": false, "take  ": false} {
		before := do(s, "set", "cup.1.gel", "")
		got := becomes(before, message)
		assert.Equal(t, has, got.lines != "", message)
		assert.Empty(t, got.notice, message)
	}
	assert.NotEmpty(t, becomes(do(s, "set", "cup.2.gel", "21 min"), "take cup.2 ").lines)
}

// − and + move a figure by what a hand corrects by, in its own unit, and never out of its range. (By hand.)
func TestAStepIsWhatAHandCorrectsBy(t *testing.T) {
	s := lined(t, "buildup", "", "buildup = 1", "buildup.1.step = 1", "buildup.1.step.1.kind = coat", "buildup.1.step.1.card = gelcoat", "surface = 1")
	const step = "buildup.1.step.1."
	for _, c := range []struct{ path, was, up, down string }{
		{step + "film", "400", "425", "375"}, {step + "film", "400 µm", "425 µm", "375 µm"}, {step + "film", "20 mil", "21 mil", "19 mil"}, {step + "wait", "4", "5", "3"}, {step + "wait", "4 h", "5 h", "3 h"},
		{step + "thinner", "5", "6", "4"}, {step + "thinner", "5 %", "6 %", "4 %"}, {step + "coats", "2", "3", "1"}, {step + "goes", "", "1", ""}, {"surface.1.count", "1", "2", "1"},
		{"bench.now.surface-temp", "24", "25", "23"}, {"bench.now.surface-temp", "75 °F", "76 °F", "74 °F"}, {"day.today.read-humidity", "55", "56", "54"}, {"bench.now.mixing", "2", "3", "1"},
	} {
		from := do(s, "set", c.path, c.was)
		up, down := do(from, "step", c.path, "up").Doc().Get(c.path), do(from, "step", c.path, "down").Doc().Get(c.path)
		assert.Equal(t, []string{c.up, c.down}, []string{plain(up), plain(down)}, "%s %q", c.path, c.was)
	}
	for _, path := range []string{"surface.1.length", "card.gelcoat.density", "surface.1.name", "nothing"} {
		got := becomes(do(s, "set", path, "5"), "step "+path+" up")
		assert.Empty(t, got.lines+got.focus, path)
	}
	assert.Equal(t, "f-"+step+"film", becomes(do(s, "set", step+"film", ""), "step "+step+"film up").focus, "no figure is guessed")
	assert.Empty(t, becomes(do(s, "set", "day.today.read-humidity", "100"), "step day.today.read-humidity up").lines)
}

// A cup's clock warns once a stage: a minute before the end of its usable time, and at the end; a timed test doesn't.
func TestAClockWarnsOnceAStage(t *testing.T) {
	s := inUse(t, tenOClock)
	usable := int64(secondsLeft(t, s.Doc(), "cup.1", moment(tenOClock)))
	card := "Polyester gel coat"
	var heard []string
	for left := int64(130); left > -200; left-- {
		next, effects := page.Update(s, page.Message{Verb: "tick", At: moment(tenOClock + usable - left)})
		s = next
		stage := "0"
		switch exact := s.TimesOf("cup.1").Left; {
		case exact <= 0:
			stage = "2"
		case exact <= 60:
			stage = "1"
		}
		var sounds, shakes []string
		for _, e := range effects {
			switch e.Kind {
			case page.Sound:
				sounds = append(sounds, e.Key)
			case page.Vibrate:
				shakes = append(shakes, e.Key)
			case page.Say:
				heard = append(heard, e.Text)
			}
		}
		assert.Equal(t, sounds, shakes)
		for _, sound := range sounds {
			assert.Equal(t, stage, sound, "%d s left", left)
		}
	}
	assert.Equal(t, []string{words.OneMinuteLeft(card), words.TimeIsOver(card)}, heard)
}
