package page_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/ready"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// A new item begins as the one before it, or as is usual: a surface lies and gets what the last one does, the first build-up is for
// all that is measured, a copy of a card says what its card says but for what is counted.
func TestANewItemBeginsAsIsUsual(t *testing.T) {
	one := []string{"surface = 1", "surface.1.name = Deck", "surface.1.length = 2 m", "surface.1.buildup = buildup.1", "surface.1.ground = epoxy", "surface.1.lies = wall", "buildup = 1", "buildup.1.name = Roll", "buildup.1.ground = paint"}
	bare := []string{"surface = 1 2", "surface.2.buildup = buildup.9", "surface.1.length = 2 m"}
	card := []string{"card = 1", "card.1.base = gelcoat", "card.1.name = Mine", "card.1.density = 1.3", "card.1.stock = 2 kg", "card.1.counted = cup.1", "card.1.pack.1.price = 9"}
	comesOf(t, []tap{
		{from: lined(t, "surfaces", "", one...), message: "add surface circle", is: "surfaces: surface.2", focus: "f-surface.2.diameter",
			lines: "surface = 1 2|surface.2.buildup = buildup.1|surface.2.ground = epoxy|surface.2.lies = wall|surface.2.name = Surface 2|surface.2.shape = circle"},
		{from: lined(t, "surfaces", "", one[6:]...), message: "add surface circle", is: "surfaces: surface.1", focus: "f-surface.1.diameter",
			lines: "surface = 1|surface.1.buildup = buildup.1|surface.1.ground = paint|surface.1.name = Surface 1|surface.1.shape = circle"},
		{from: lined(t, "surfaces", "", append(one[6:], "buildup = 1 2")...), message: "add surface nonsense", is: "surfaces: surface.1", focus: "f-surface.1.length", lines: "surface = 1|surface.1.name = Surface 1"},
		{from: lined(t, "buildup", "", bare...), message: "add buildup -", focus: "heading", lines: "buildup = 10|buildup.10.name = Build-up 10|surface.1.buildup = buildup.10"},
		{from: lined(t, "buildup", "", one...), message: "add buildup -", focus: "heading", lines: "buildup = 1 2|buildup.2.name = Build-up 2"},
		{from: lined(t, "cards", "", card...), message: "add card 1", is: "cards: card.2", focus: page.SheetHeading,
			lines: "card = 1 2|card.2.base = gelcoat|card.2.density = 1.3|card.2.name = Mine (copy)|card.2.pack.1.price = 9"},
		{from: lined(t, "cards", "", "card.gelcoat.density = 1.3"), message: "add card gelcoat", is: "cards: card.1", focus: page.SheetHeading, lines: "card = 1|card.1.base = gelcoat|card.1.density = 1.3"},
		{from: lined(t, "buildup", page.PuttiesSheet), message: "add putty -", focus: "putty.1",
			lines: "putty = 1|putty.1.name = Putty 1|putty.1.part = 1 2 3|putty.1.part.1.what = resin|putty.1.part.2.what = hardener|putty.1.part.3.what = balloons"},
		{from: lined(t, "buildup", "", one...), message: "add buildup.1.step coat", is: "buildup: buildup.1.step.1", focus: page.SheetHeading, lines: "buildup.1.step = 1|buildup.1.step.1.kind = coat"},
		{from: lined(t, "buildup", "", "step = 1"), message: "add step coat"},
	})
	for _, r := range ready.Sequences {
		from := lined(t, "surfaces", "surface.1 surface.1.gets", bare...)
		s := do(from, "ready", "surface.1", r.Key)
		assert.Equal(t, "buildup.10", s.Doc().Get("surface.1.buildup"), "a number that nothing leads to")
		assert.Equal(t, "buildup.9", s.Doc().Get("surface.2.buildup"))
		assert.Equal(t, s.Doc().Get("buildup.10.ground"), s.Doc().Get("surface.1.ground"), r.Key)
		assert.Len(t, s.Doc().Items("buildup.10.step"), len(r.Steps()))
		assert.Equal(t, "surfaces: surface.1", placeOf(s), "back where it was chosen")
		alone := do(lined(t, "buildup", page.ReadySheet, one...), "ready", "", r.Key)
		assert.Equal(t, "buildup: ", placeOf(alone))
		assert.True(t, alone.IsOpen("buildup.2"))
		assert.Equal(t, "buildup.1", alone.Doc().Get("surface.1.buildup"), "it has one")
	}
}

// What a coat takes beside the trade's usual figure asks only outside it, at neither end; once it is meant, it asks no more until
// it is another. (The trade's 0.8 to 1.5 kg/m² a coat of sprayed gel coat is common practice.)
func TestACoatAsksOnlyOutsideTheTradesFigure(t *testing.T) {
	s := demo(t)
	card := s.Plan.Job.CardByKey("gelcoat")
	film := func(text string) *page.State { return do(s, "set", "buildup.2.step.1.film", text) }
	of := func(s *page.State) page.PerCoat {
		for _, c := range s.Trade(card) {
			if c.Step == "buildup.2.step.1" {
				return c
			}
		}
		return page.PerCoat{}
	}
	usual, thin := of(s), of(film("300 µm"))
	assert.False(t, usual.Asks)
	assert.NotContains(t, usual.Text, words.PerCoatIntended)
	assert.True(t, thin.Asks)
	assert.True(t, strings.HasSuffix(thin.Text, words.PerCoatOdd(false)), thin.Text)
	meant := do(film("300 µm"), "intended", "buildup.2.step.1", "")
	assert.False(t, of(meant).Asks)
	assert.True(t, strings.HasSuffix(of(meant).Text, words.PerCoatIntended))
	assert.True(t, of(do(meant, "set", "buildup.2.step.1.film", "250 µm")).Asks)
	assert.Len(t, s.Trade(card), 2, "one a coat of it")
	assert.Empty(t, s.Trade(s.Plan.Job.CardByKey("tape")))
	for _, path := range []string{"buildup.2.step.2", "buildup.9.step.1", ""} {
		assert.Empty(t, becomes(s, "intended "+path+" ").lines, path)
	}
	us := do(s, "system", "", "us")
	require.NotEmpty(t, of(us).Takes)
	assert.Contains(t, of(us).Text, "oz/yd²")
	assert.Contains(t, of(s).Text, "kg/m²")
}

// A job that is put away, taken up, copied or removed leaves the others as they were, and says what was done.
func TestEachJobIsItsOwn(t *testing.T) {
	s := do(lined(t, "surfaces", "", "name = Tern", "surface = 1", "card.gelcoat.density = 1.3"), "job-new", "", "")
	assert.Equal(t, words.NewJob, s.Notice)
	assert.Equal(t, []string{"", "1.3"}, []string{s.Doc().Get("name"), s.Doc().Get("card.gelcoat.density")}, "the shed is the same")
	s = do(s, "set", "name", "Hull")
	rows := s.Jobs()
	require.Len(t, rows, 2)
	assert.Equal(t, []string{"Hull", "Tern"}, []string{rows[0].Name, rows[1].Name})
	assert.Equal(t, []int{0, 1}, []int{rows[0].Surfaces, rows[1].Surfaces})
	assert.True(t, rows[0].IsHere && !rows[1].IsHere)
	back := do(s, "job-open", rows[1].Number, "")
	assert.Equal(t, "Tern", back.Doc().Get("name"))
	assert.Equal(t, []string{"Tern", "Hull"}, []string{back.Jobs()[0].Name, back.Jobs()[1].Name})
	copied := do(back, "job-copy", "", "")
	assert.Equal(t, "Tern (copy)", copied.Doc().Get("name"))
	assert.Equal(t, words.CopiedJob, copied.Notice)
	assert.Len(t, copied.Jobs(), 3)
	other := do(back, "job-copy", back.Jobs()[1].Number, "")
	assert.Equal(t, "Hull (copy)", other.Doc().Get("name"))
	gone := do(do(back, "sheet", page.JobSheet+"."+back.Jobs()[1].Number, ""), "job-remove", back.Jobs()[1].Number, "")
	assert.Len(t, gone.Jobs(), 1)
	assert.Equal(t, "Tern", gone.Doc().Get("name"))
	assert.Equal(t, words.RemovedJob, gone.Notice)
	assert.Equal(t, []string{page.JobsSheet}, gone.Sheets)
	here := do(back, "job-remove", "", "")
	assert.Equal(t, "Hull", here.Doc().Get("name"), "the next one comes in its place")
	assert.Len(t, here.Jobs(), 1)
	assert.Equal(t, "1.3", here.Doc().Get("card.gelcoat.density"))
	assert.True(t, job.IsBlank(do(gone, "job-remove", "", "").Doc()))
	open := inUse(t, tenOClock)
	for _, verb := range []string{"job-new", "job-copy", "job-remove"} {
		next, _ := sent(open, tenOClock, verb, "", "")
		assert.Equal(t, words.EndTheCupFirst, next.Notice, verb)
		assert.Equal(t, open.Doc(), next.Doc())
	}
	told := do(s, "elsewhere", page.Prefix+"job.a", named("theirs", 90))
	assert.Equal(t, words.ChooseATabFirst, do(told, "job-new", "", "").Notice)
}
