package page_test

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/fault"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// loggedDemo is the made-up job without its log, as the builder's own, and one
// cup of it spread.
func loggedDemo(t testing.TB) *page.State {
	t.Helper()
	madeUp, _ := page.Start(nil, moment(tenOClock))
	madeUp, _ = sent(madeUp, tenOClock, "demo", "", "")
	s, _ := page.Start(map[string]string{page.Prefix + "job.a": job.Save(unlogged(madeUp.Doc()), 1)}, moment(tenOClock))
	s = warm(t, s, tenOClock)
	for _, l := range []job.Line{{Path: "bench.now.card", Text: "gelcoat"}, {Path: "card.gelcoat.stock", Text: "4 kg"}} {
		s, _ = sent(s, tenOClock, "set", l.Path, l.Text)
	}
	require.True(t, s.Bench().HasDose, "%v %v", s.Bench().Reasons, s.Bench().Waiting)
	s, _ = sent(s, tenOClock, "weighed", "", "")
	s, _ = sent(s, tenOClock+60, "in", "cup.1", "")
	s, _ = sent(s, tenOClock+400, "end", "cup.1", "left")
	return s
}

// From the clock, two taps log a cup with what was left over; the stock falls
// by what went into it.
func TestTwoTapsFromTheClock(t *testing.T) {
	s := loggedDemo(t)
	text := shownText(s, "cup")
	require.Contains(t, text, "What was left over")
	require.Contains(t, text, `data-path="cup.1.left" data-text="25 g"`, "a quarter of 100 g")
	s, _ = sent(s, tenOClock+410, "set", "cup.1.left", "25 g")
	assert.NotContains(t, shownText(s, "cup"), "What was left over")
	d := s.Doc()
	assert.Equal(t, "100 g", d.Get("cup.1.product"))
	assert.Equal(t, "ketone-peroxide", d.Get("cup.1.catalyst"))
	assert.NotEmpty(t, d.Get("cup.1.catalyst-mass"))
	assert.Equal(t, "cup.0", d.Get("card.gelcoat.counted"))
	for _, l := range s.Order().Lines {
		if l.Card.Key == "gelcoat" {
			assert.Equal(t, "3.9", l.Stock.String())
		}
	}
	s, _ = sent(s, tenOClock+500, "set", "card.gelcoat.stock", "3.8 kg")
	for _, l := range s.Order().Lines {
		if l.Card.Key == "gelcoat" {
			assert.Equal(t, "3.8", l.Stock.String(), "counted anew, after the cup")
		}
	}
}

// A cup takes down what its area was to take: measured, it teaches by itself.
func TestACupTeachesByItself(t *testing.T) {
	s := loggedDemo(t)
	require.Regexp(t, `^[0-9.]+ g/m²$`, s.Doc().Get("cup.1.per-area"))
	require.Equal(t, "gravity-gun", s.Doc().Get("cup.1.method"), "as it ships")
	s, _ = sent(s, tenOClock, "set", "cup.1.left", "25 g")
	s, _ = sent(s, tenOClock, "set", "cup.1.covered", "0.01 m²")
	assert.Contains(t, shownText(underSheet(s, "cup.1"), "log"), "Is that right?")
	perArea, err := unit.Read(s.Doc().Get("cup.1.per-area"), unit.InGramPerSquareMetre)
	require.NoError(t, err)
	s, _ = sent(s, tenOClock, "set", "cup.1.covered", unit.Typed(0.075/perArea/1.1, unit.InSquareMetre)+" m²")
	text := shownText(underSheet(s, "cup.1"), "log")
	assert.Contains(t, text, "Used ÷ planned: 1.1.")
	assert.Contains(t, shownText(underSheet(s, page.HandSheet), "log"), "After 1 entry")
}

func TestFinishedWorkAndUndo(t *testing.T) {
	s := loggedDemo(t)
	const step = "buildup.2.step.1"
	s, _ = sent(s, tenOClock, "done", step, "surface.3")
	d := s.Doc()
	require.Equal(t, "1", d.Get("done"))
	assert.Equal(t, "gravity-gun", d.Get("done.1.method"))
	assert.NotEmpty(t, d.Get("done.1.planned"))
	assert.Empty(t, d.Get("done.1.cups"), "the cup was for no step")
	again, _ := sent(s, tenOClock, "done", step, "surface.3")
	assert.Equal(t, "1", again.Doc().Get("done"), "what is done isn't done twice")
	other, _ := sent(s, tenOClock, "done", step, "surface.1")
	assert.Equal(t, "1", other.Doc().Get("done"), "a surface of another build-up")

	s, _ = sent(s, tenOClock, "set", "done.1.used", d.Get("done.1.planned"))
	require.Len(t, s.Lessons().List, 1)
	require.Equal(t, 1, s.Lessons().List[0].Count)
	path := page.LessonPath(&s.Lessons().List[0])
	assert.Equal(t, "learn.gravity-gun.gelcoat", path)
	s, _ = sent(s, tenOClock, "learn", path, "")
	assert.NotEmpty(t, s.Doc().Get(path))
	undone, _ := sent(s, tenOClock, "undo", "", "")
	assert.Empty(t, undone.Doc().Get(path))
	s, _ = sent(s, tenOClock, "unlearn", path, "")
	assert.Empty(t, s.Doc().Get(path))
	s, _ = sent(s, tenOClock, "learn", "name", "")
	assert.NotEmpty(t, s.Doc().Get("name"), "only a lesson is taken over")
	s, _ = sent(s, tenOClock, "unlearn", "name", "")
	assert.NotEmpty(t, s.Doc().Get("name"))
}

// The CSV is read back by the standard library's reader, every cell as it was
// written, and none of them runs.
func TestLogCSV(t *testing.T) {
	s := loggedDemo(t)
	s, _ = sent(s, tenOClock, "set", "cup.1.note", "=HYPERLINK(\"x\"),\n\"two\" lines")
	s, _ = sent(s, tenOClock, "set", "cup.1.left", "1,5 g")
	s, _ = sent(s, tenOClock, "done", "buildup.2.step.1", "surface.3")
	text, found := strings.CutPrefix(page.LogCSV(s), "\ufeff")
	require.True(t, found)
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 3)
	at := func(row int, name string) string {
		for i, head := range rows[0] {
			if head == name {
				return rows[row][i]
			}
		}
		t.Fatal("no column " + name)
		return ""
	}
	assert.Equal(t, []string{"cup", "10:00", "Polyester gel coat", "100 g", "1,5 g", "spread"},
		[]string{at(1, "kind"), at(1, "hour"), at(1, "material"), at(1, "mixed"), at(1, "left over"), at(1, "how it ended")})
	assert.Equal(t, "'=HYPERLINK(\"x\"),\n\"two\" lines", at(1, "note"))
	assert.Equal(t, []string{"done", "Topsides"}, []string{at(2, "kind"), at(2, "surfaces")})
	assert.Equal(t, "24 °C", strings.ReplaceAll(at(1, "surface at"), "\u00a0", " "), "a bare figure with its unit")
	for _, row := range rows {
		for _, cell := range row {
			assert.NotContains(t, "=+-@", cell[:min(1, len(cell))]+"x")
		}
	}
}

func TestEveryCauseHasWords(t *testing.T) {
	for i := range fault.Causes {
		c := &fault.Causes[i]
		text := words.FaultText(&fault.Found{Cause: c})
		assert.NotEmpty(t, text.Cause, c.Key)
		assert.NotEmpty(t, text.Remedy, c.Key)
		assert.NotEmpty(t, text.Next, c.Key)
		assert.Equal(t, c.Sign == nil, text.Sign == "", "%s: a sign and its words", c.Key)
	}
}

// 'Wait' is told apart from 'it never will', with the figure that avoids it next
// time, and as common practice; no cause is ranked where the log has no sign.
func TestAFaultSaysIfWaitingHelps(t *testing.T) {
	s := loggedDemo(t)
	s, _ = sent(s, tenOClock, "set", "cup.1.fault", "tacky")
	s, _ = sent(s, tenOClock, "set", "cup.1.surface-temp", "12 °C")
	_, borne, found := strings.Cut(shownText(underSheet(s, "cup.1"), "log"), "What the log bears out")
	require.True(t, found)
	_, rest, found := strings.Cut(shownText(underSheet(s, page.Part("cup.1", page.CausesPart)), "log"), "No sign in the log, in no special order")
	require.True(t, found)
	assert.Contains(t, borne, "Wait: it may yet cure.")
	assert.Contains(t, borne, "Waiting won't fix it.")
	assert.Contains(t, borne, "Next time: keep the surface, through the cure too, at no less than 15\u00a0°C.")
	assert.Contains(t, rest, "common practice")
	s, _ = sent(s, tenOClock, "set", "cup.1.fault", "fish-eyes")
	text := shownText(underSheet(s, "cup.1"), "log")
	assert.Contains(t, text, "The log shows no sign. Possible causes, in no special order")
	assert.NotContains(t, text, "bears out")
}
