package page_test

import (
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

var noon = page.Moment{Unix: 1_780_000_000, Day: 12 * 3600, Date: "2026-05-28"}

func start(t *testing.T, kept map[string]string) (*page.State, []page.Effect) {
	t.Helper()
	return page.Start(kept, noon)
}

func do(s *page.State, verb, path, text string) *page.State {
	s, _ = page.Update(s, page.Message{Verb: verb, Path: path, Text: text, At: noon})
	return s
}

// message draws a message: mostly one that a page could send, sometimes one
// that no page sends.
func message(random *rand.Rand, s *page.State, texts *jobtest.Random) page.Message {
	verbs := page.Verbs()
	m := page.Message{Verb: verbs[random.IntN(len(verbs))], At: noon}
	lines := s.Doc().Lines()
	lists := []string{"surface", "buildup", "card", "test", "cup", "surface.1.cutout", "buildup.1.step", "surface.1.stations", "card.1.dose", "nothing", "", "name"}
	switch random.IntN(3) {
	case 0:
		m.Path = lists[random.IntN(len(lists))]
	case 1:
		m.Path = lists[random.IntN(len(lists))] + "." + []string{"1", "2", "3", "x", "", "1.name"}[random.IntN(6)]
	default:
		if len(lines) > 0 {
			m.Path = lines[random.IntN(len(lines))].Path
		}
	}
	if f := job.FieldAt(m.Path); f != nil {
		m.Text = texts.Text(f)
	} else {
		m.Text = []string{"", "up", "down", "coat", "fill", "sand", "polish", "gelcoat", "us", "metric", "mm", "in", "dark", "gelled", "spread", "surface.1", "\x00 = \n"}[random.IntN(17)]
	}
	if m.Verb == "go" || m.Verb == "unit" {
		m.Path = []string{"surfaces", "order", "cup", "size", "film", "nowhere"}[random.IntN(6)]
	}
	return m
}

// Whatever comes, the page goes on: the state before stays as it was, the
// document saves and loads, and the plan is there.
func TestNoMessageBreaksThePage(t *testing.T) {
	for seed := range uint64(5) {
		random, texts := rand.New(rand.NewPCG(seed, 5)), jobtest.New(seed)
		texts.Junk = 0.1
		s, _ := start(t, map[string]string{page.Prefix + "job.a": job.Save(texts.Document(), 1)})
		for range 120 {
			m := message(random, s, texts)
			before, own, inDemo := s.Doc(), s.Own.Doc, s.InDemo
			next, effects := page.Update(s, m)
			for _, e := range effects {
				whole(t, m, e)
			}
			require.Equal(t, before.Lines(), s.Doc().Lines(), "%+v changed the state before", m)
			again, _, err := job.Load(job.Save(next.Doc(), next.Slot().Revision))
			require.NoError(t, err, "%+v", m)
			require.Empty(t, job.Changes(next.Doc(), again), "%+v", m)
			require.False(t, next.Plan.IsEmpty(), "%+v", m)
			require.NotEmpty(t, next.ScreenName(), "%+v", m)
			if inDemo && next.InDemo {
				require.Equal(t, own.Lines(), next.Own.Doc.Lines(), "%+v reached the own job from the made-up one", m)
			}
			for _, e := range effects {
				if e.Kind == page.Keep || e.Kind == page.Forget {
					require.True(t, strings.HasPrefix(e.Key, page.Prefix), "%+v keeps %s", m, e.Key)
				}
			}
			s = next
		}
	}
}

func TestAnUnknownVerbChangesNothing(t *testing.T) {
	s := demo(t)
	next, effects := page.Update(s, page.Message{Verb: "explode", Path: "surface.1", Text: "x"})
	assert.Equal(t, s.Doc(), next.Doc())
	assert.Empty(t, effects)
}

// Every change can be taken back, and made again, down to the first.
func TestUndoAndRedoRestoreTheDocument(t *testing.T) {
	edits := []string{"set", "add", "copy", "remove", "move", "unit", "system", "real", "meant", "import"}
	for seed := range uint64(5) {
		random, texts := rand.New(rand.NewPCG(seed, 6)), jobtest.New(seed)
		s, _ := start(t, map[string]string{page.Prefix + "job.a": job.Save(jobtest.New(seed).Document().Set("cup", ""), 1)})
		states := []job.Document{s.Doc()}
		for len(states) < 40 {
			m := message(random, s, texts)
			m.Verb = edits[random.IntN(len(edits))]
			undone := len(s.Own.Undo)
			s, _ = page.Update(s, m)
			if len(s.Own.Undo) > undone {
				states = append(states, s.Doc())
			} else if len(s.Own.Undo) > 0 {
				states[len(states)-1] = s.Doc() // typed on in the same field
			}
		}
		for i := len(states) - 2; i >= 0; i-- {
			s = do(s, "undo", "", "")
			require.Equal(t, states[i].Lines(), s.Doc().Lines(), "seed %d: undo to %d", seed, i)
		}
		s = do(s, "undo", "", "")
		assert.Equal(t, states[0].Lines(), s.Doc().Lines(), "nothing is left to take back")
		for _, want := range states[1:] {
			s = do(s, "redo", "", "")
			require.Equal(t, want.Lines(), s.Doc().Lines(), "seed %d", seed)
		}
	}
}

func TestTypingInOneFieldIsOneChange(t *testing.T) {
	s := do(demo(t), "own", "", "")
	s = do(s, "add", "surface", "")
	before := len(s.Own.Undo)
	for _, text := range []string{"4", "45", "450"} {
		s = do(s, "set", "surface.1.length", text)
	}
	s = do(s, "set", "surface.1.width", "2")
	assert.Len(t, s.Own.Undo, before+2)
	s = do(do(s, "undo", "", ""), "undo", "", "")
	assert.Empty(t, s.Doc().Get("surface.1.length"))
}

func TestNoFigureIsOlderThanWhatIsTyped(t *testing.T) {
	good := demo(t)
	bad := do(good, "set", "surface.1.height", "1,500")
	assert.Equal(t, "1,500", bad.Doc().Get("surface.1.height"), "what was typed stays")
	assert.Error(t, bad.Plan.RefusedAt("surface.1.height"))
	assert.False(t, bad.Plan.Surfaces()[0].Known, "the size before isn't reckoned with")
	assert.Equal(t, good.Plan.Surfaces()[1].Area.Value, bad.Plan.Surfaces()[1].Area.Value, "the rest goes on")
	again := do(bad, "set", "surface.1.height", "1.5 m")
	assert.NotEqual(t, good.Plan.Area().Value, again.Plan.Area().Value)
	assert.Equal(t, good.Plan.Area().Value, do(do(again, "undo", "", ""), "undo", "", "").Plan.Area().Value)
}

func TestTheMadeUpJobLeavesTheOwnAlone(t *testing.T) {
	s, _ := start(t, nil)
	s = do(do(s, "add", "surface", ""), "set", "surface.1.name", "Mine")
	own, revision := s.Own.Doc, s.Own.Revision
	s, effects := page.Update(s, page.Message{Verb: "demo", At: noon})
	assert.True(t, s.InDemo)
	assert.Equal(t, "Tern (made up)", s.Plan.Job.Name)
	for _, e := range effects {
		assert.NotContains(t, e.Key, "job.", "nothing of the own job is written")
	}
	s = do(do(s, "set", "surface.1.name", "Not mine"), "remove", "surface.2", "")
	assert.Equal(t, own.Lines(), s.Own.Doc.Lines())
	back := do(s, "own", "", "")
	assert.Equal(t, "Mine", back.Doc().Get("surface.1.name"))
	assert.Len(t, back.Plan.Surfaces(), 1)
	back = do(back, "demo", "", "")
	assert.Equal(t, "Not mine", back.Doc().Get("surface.1.name"), "what was tried out there is still there")
	cleared, effects := page.Update(s, page.Message{Verb: "clear", At: noon})
	assert.False(t, cleared.InDemo)
	assert.Zero(t, cleared.Demo.Revision)
	assert.Equal(t, own.Lines(), cleared.Doc().Lines())
	assert.Equal(t, revision, cleared.Own.Revision)
	var forgotten []string
	for _, e := range effects {
		if e.Kind == page.Forget {
			forgotten = append(forgotten, e.Key)
		}
	}
	assert.ElementsMatch(t, []string{page.Prefix + "demo.a", page.Prefix + "demo.b", page.Prefix + "demo.history"}, forgotten)
}

// A running cup must be able to warn: no other job is shown over it.
func TestTheMadeUpJobWaitsForAnOpenCup(t *testing.T) {
	s, _ := start(t, map[string]string{page.Prefix + "job.a": job.Save(job.Document{}.Set("cup", "1").Set("cup.1.card", "gelcoat").
		Set("cup.1.in", "1780000000").Set("cup.1.usable", "5 min"), 1)})
	s = do(s, "demo", "", "")
	assert.False(t, s.InDemo)
	assert.NotEmpty(t, s.Notice)
}

func TestListsAreBounded(t *testing.T) {
	for list, most := range map[string]int{"surface": job.MaxSurfaces, "buildup": job.MaxBuildups, "buildup.1.step": job.MaxSteps} {
		ids := strings.Repeat("x", 0)
		for i := range most - 1 {
			ids += " " + string(rune('a'+i%26)) + strings.Repeat("y", i/26)
		}
		d := job.Document{}.Set("buildup", "1").Set(list, strings.TrimSpace(ids))
		s, _ := start(t, map[string]string{page.Prefix + "job.a": job.Save(d, 1)})
		s = do(s, "add", list, "coat")
		assert.Len(t, s.Doc().Items(list), most)
		assert.Empty(t, s.Notice)
		for _, message := range []page.Message{{Verb: "add", Path: list, Text: "coat"}, {Verb: "copy", Path: list + ".a"}} {
			next, _ := page.Update(s, message)
			assert.Len(t, next.Doc().Items(list), most)
			assert.NotEmpty(t, next.Notice, "%+v", message)
		}
	}
}

// What couldn't be read back is never written: the text stays out, and it is said.
func TestNoJobGrowsPastWhatCanBeRead(t *testing.T) {
	s := demo(t)
	next := do(s, "set", "name", strings.Repeat("x", job.MaxSaved))
	_, _, err := job.Load(job.Save(next.Doc(), 1))
	assert.NoError(t, err)
	assert.Equal(t, s.Doc(), next.Doc())
	assert.NotEmpty(t, next.Notice)
}

// Each refusal has one plain sentence beside its field that says what to type.
func TestRefusalsSayWhatToType(t *testing.T) {
	s := demo(t)
	for _, c := range []struct{ path, text, says string }{
		{"surface.1.height", "1,500", "Type 1.5 or 1500."},
		{"surface.1.height", "40 km", "That unit isn't known. These are:"},
		{"surface.1.height", "0", "This must be more than zero. Type a figure from 1 mm to 100\u202f000 mm."},
		{"surface.1.height", "tall", "That isn't a number. Type it like 450 mm or 2 ft 6 in."},
		{"surface.3.count", "1.5", "Type a whole number."},
		{"surface.1.cutout.1.diameter", "3 m", "The cut-outs are as large as the surface, or larger."},
		{"buildup.1.step.4.film", "18 mm", "If that was mil typed as mm, it is 0.457 mm."},
		{"buildup.1.step.4.thinner", "-1 %", "That is too small. Type a figure from 0 % to 50 %."},
		{"buildup.1.step.4.thinner", "9 %", "over the card's limit of 7.25 % by mass. Type less."},
		{"buildup.1.step.2.film", "0.5 mm", ""},
		{"buildup.1.step.2.film", "600", "over the card's largest, 500 µm. Type a thinner film for each coat, and more coats."},
		{"card.gelcoat.density", "10.4", "If that was lb per US gallon typed as kg/L, it is 1.25 kg/L."},
		{"card.gelcoat.pack.1.size", "0", "This must be more than zero."},
		{"card.gelcoat.pack.1.size", "5 m", "That unit doesn't fit here. These do: kg, g, lb, oz, L"},
		{"card.topcoat.pack.1.size", "1 gal", "Which one? Type US gal or imp gal."},
		{"surface.1.name", strings.Repeat("x", 401), "Keep it under 400 letters."},
	} {
		bad := do(s, "set", c.path, c.text)
		if c.says == "" {
			assert.Empty(t, bad.Plan.Refused(), "%s = %q", c.path, c.text)
			continue
		}
		found := false
		for _, p := range bad.Plan.Refused() {
			says := strings.ReplaceAll(words.Sentence(p.Err, job.FieldAt(p.Path), bad.Plan.Job.Units), "\u00a0", " ")
			found = found || strings.Contains(says, c.says)
			assert.NotContains(t, says, "Nothing can be worked out from this", "%s = %q", c.path, c.text)
		}
		assert.True(t, found, "%s = %q: %v", c.path, c.text, bad.Plan.Refused())
	}
}

// What is wrong is named by where it stands, and found there: an outline that crosses itself as well as a film.
func TestWhatIsRefusedIsFound(t *testing.T) {
	s, _ := page.Start(nil, noon)
	s = do(do(do(s, "add", "surface", ""), "set", "surface.1.name", "Foredeck"), "set", "surface.1.shape", "polygon")
	for i, corner := range [][2]string{{"0", "0"}, {"1", "1"}, {"1", "0"}, {"0", "1"}} {
		row := "surface.1.corners." + strconv.Itoa(i+1)
		if i >= 3 { // three are there: the fewest
			s = do(s, "add", "surface.1.corners", "")
		}
		s = do(do(s, "set", row+".x", corner[0]), "set", row+".y", corner[1])
	}
	require.Len(t, s.Plan.Refused(), 1)
	path := s.Plan.Refused()[0].Path
	assert.Equal(t, page.Place{Screen: "surfaces", Sheets: []string{"surface.1"}, Name: "Foredeck, corner 1, along"}, s.PlaceOf(path))
	s = do(s, "go", "order", "")
	assert.False(t, s.IsShown(s.PlaceOf(path)))
	s, effects := page.Update(s, page.Message{Verb: "find", Path: path, At: noon})
	assert.True(t, s.IsShown(s.PlaceOf(path)))
	assert.Contains(t, effects, page.Effect{Kind: page.Focus, Key: "f-" + path})
}

// A card's copy is that card as it stands, a copy's copy too; the tins on the shelf aren't copied.
func TestACardIsCopiedAsItStands(t *testing.T) {
	s, _ := page.Start(nil, noon)
	s = do(do(s, "set", "card.gelcoat.density", "1.3"), "set", "card.gelcoat.stock", "5 kg")
	s = do(s, "add", "card", "gelcoat")
	s = do(do(s, "set", "card.1.name", "White"), "add", "card", "1")
	for _, key := range []string{"1", "2"} {
		c := s.Plan.Job.CardByKey(key)
		require.NotNil(t, c, key)
		assert.InDelta(t, 1300, float64(c.Density.Value), 1e-9, key)
		assert.Equal(t, "gelcoat", c.Base, key)
		assert.True(t, s.Plan.Job.ShopByKey(key).Stock.Amount.IsZero(), key)
	}
	assert.Equal(t, "White (copy)", s.Plan.Job.CardByKey("2").Name)
}

// The first key of a day's first reading puts older ones away, which is undone with it, however many keys follow.
func TestAReadingTypedByKeysIsOneChange(t *testing.T) {
	s := do(demo(t), "own", "", "")
	s = do(s, "set", "bench.now.ahead", "12")
	before := s.Doc().Lines()
	for _, text := range []string{"2", "24", "24.5"} {
		s = do(s, "set", "bench.now.surface-temp", text)
	}
	assert.Equal(t, before, do(s, "undo", "", "").Doc().Lines())
}
