package job_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/unit"
)

// Shed and job together are the document: no line is in both, and none is lost.
func TestPartingIsExact(t *testing.T) {
	for seed := range uint64(80) {
		d := jobtest.New(seed).Document()
		shed, rest := job.SplitShed(d)
		require.NotEmpty(t, shed.Lines(), "seed %d", seed)
		require.NotEmpty(t, rest.Lines(), "seed %d", seed)
		require.Len(t, d.Lines(), len(shed.Lines())+len(rest.Lines()), "seed %d", seed)
		require.Equal(t, d.Lines(), job.Join(shed, rest).Lines(), "seed %d", seed)
		for _, l := range shed.Lines() {
			require.True(t, job.IsShed(l.Path) && rest.Get(l.Path) == "", l.Path)
		}
		again, _, err := job.Load(job.Save(job.PutAway(d), 3))
		require.NoError(t, err)
		require.Equal(t, d.Lines(), job.TakeUp(shed, again).Lines(), "seed %d: put away, kept and taken up", seed)
	}
}

// What stays when the job changes, and what goes with it.
func TestWhatIsOfTheShed(t *testing.T) {
	for _, path := range []string{"card", "card.7.stock", "real.card.7.density", "test.1.minutes", "removal", "learn.foam-roller.gelcoat", "units.size",
		"currency", "bench.now.tool", "bench.now.scale-step", "day.today.low"} {
		assert.True(t, job.IsShed(path), path)
	}
	for _, path := range []string{"name", "surface", "buildup.1.step.1.card", "cup.1.card", "done.1.used", "putty.1.name", "ticked.gelcoat.packs",
		"bench.now.card", "bench.now.surface-temp", "bench.now.tool-box", "day.today.sun", "real.surface.1.width", "cards", job.NumberPath} {
		assert.False(t, job.IsShed(path), path)
	}
}

// A job that was put away in inches means inches, whatever the shed measures in
// by the time it is taken up: to the last digit the same figures are read.
func TestAJobTakenUpInOtherUnitsMeansTheSame(t *testing.T) {
	for seed := range uint64(40) {
		r := jobtest.New(seed)
		r.Junk = 0
		d := r.Document()
		shed, _ := job.SplitShed(jobtest.New(seed + 500).Document())
		shed = job.SetSystem(shed, seed%2 == 0)
		up := job.TakeUp(shed, job.PutAway(d))
		was, is := job.ReadUnits(d), job.ReadUnits(up)
		for _, l := range d.Lines() {
			f := job.FieldAt(l.Path)
			if f == nil || f.Kind != job.Quantity || job.IsShed(l.Path) {
				continue
			}
			want, err1 := f.Read(l.Text, was)
			got, err2 := f.Read(up.Get(l.Path), is)
			require.Equal(t, err1 == nil, err2 == nil, "seed %d: %s = %q, then %q", seed, l.Path, l.Text, up.Get(l.Path))
			require.Equal(t, want, got, "seed %d: %s = %q, then %q", seed, l.Path, l.Text, up.Get(l.Path))
		}
		stays, _ := job.SplitShed(up)
		require.Equal(t, shed.Lines(), stays.Lines(), "the shed stays as it is")
	}
}

// What comes in never changes a line of the shed, and every figure of the cards
// that it uses is the one that it came with, but where the shed says more.
func TestWhatComesInLeavesTheShedAlone(t *testing.T) {
	for seed := range uint64(15) {
		here, incoming := jobtest.New(seed).Document(), jobtest.New(seed+1000).Document()
		d, _, err := job.Into(here, job.Portable(incoming))
		require.NoError(t, err)
		shed, _ := job.SplitShed(here)
		for _, l := range shed.Lines() {
			if l.Path != "card" {
				require.Equal(t, l.Text, d.Get(l.Path), "seed %d: %s", seed, l.Path)
			}
		}
		require.True(t, strings.HasPrefix(d.Get("card"), shed.Get("card")), "cards come in behind those that are there")
		theirs, _ := job.Read(incoming)
		got, _ := job.Read(d)
		require.Len(t, got.Surfaces, len(theirs.Surfaces))
		for i, b := range theirs.Buildups {
			for k, step := range b.Steps {
				was, is := theirs.CardByKey(step.Card), got.CardByKey(got.Buildups[i].Steps[k].Card)
				require.Equal(t, was == nil, is == nil, "seed %d: %s", seed, step.Path)
				if was != nil {
					require.Equal(t, was.ShippedKey(), is.ShippedKey(), "seed %d: %s", seed, step.Path)
				}
			}
		}
		again, brought, err := job.Into(d, job.Portable(incoming))
		require.NoError(t, err)
		require.Empty(t, brought, "seed %d: the same job once more brings no card twice", seed)
		require.Equal(t, d.Get("card"), again.Get("card"))
	}
}

const theirs = `
card = 2
card.2.base = gelcoat
card.2.name = Theirs, white
card.2.density = 1.3
card.2.stock = 9 kg
card.2.pack.1.price = 40
card.flowcoat.density = 1.31
card.filler.density = 0.7
test = 1
test.1.card = gelcoat
learn.foam-roller.gelcoat = 0.1 0.05 4
name = Theirs
buildup = 1
buildup.1.step = 1 2 3 4 5
buildup.1.step.1.card = 2
buildup.1.step.2.card = flowcoat
buildup.1.step.3.card = gelcoat
buildup.1.step.4.card = 5
buildup.1.step.5.card = 2
kept.number = 3
`

func TestACardThatSaysSomethingElseComesInBeside(t *testing.T) {
	d := jobtest.Doc(t, theirs)
	needed := job.Portable(d)
	for _, path := range []string{"card.2.stock", "card.filler.density", "test", "test.1.card", "learn.foam-roller.gelcoat", job.NumberPath} {
		assert.Empty(t, needed.Get(path), "%s stays at home", path)
	}
	assert.Equal(t, "1.3", needed.Get("card.2.density"))
	assert.Equal(t, "40", needed.Get("card.2.pack.1.price"))

	here := jobtest.Doc(t, "card = 2 5", "card.2.base = filler", "card.2.name = Mine", "card.5.base = disc", "card.gelcoat.density = 1.25", "card.2.stock = 1 kg", "ticked.gelcoat.packs = 5")
	got, brought, err := job.Into(here, needed)
	require.NoError(t, err)
	assert.Equal(t, []string{"Theirs, white", "Flow coat, white (theirs)"}[0], brought[0])
	assert.Len(t, brought, 2)
	shed, _ := job.SplitShed(here)
	for _, l := range shed.Lines() {
		if l.Path != "card" {
			assert.Equal(t, l.Text, got.Get(l.Path), l.Path)
		}
	}
	mine, flow := got.Get("buildup.1.step.1.card"), got.Get("buildup.1.step.2.card")
	assert.Equal(t, "Theirs, white", got.Get("card."+mine+".name"))
	assert.Equal(t, mine, got.Get("buildup.1.step.5.card"))
	assert.Equal(t, []string{"flowcoat", "1.31"}, []string{got.Get("card." + flow + ".base"), got.Get("card." + flow + ".density")})
	assert.Equal(t, "gelcoat", got.Get("buildup.1.step.3.card"), "nothing was typed on theirs: mine holds")
	dangling := got.Get("buildup.1.step.4.card")
	assert.NotContains(t, got.Items("card"), dangling, "it led to nothing, and finds no card of mine")
	assert.Empty(t, got.Get("ticked.gelcoat.packs"))

	bare, brought, err := job.Into(jobtest.Doc(t, "bench.now.tool = scale", "units.decimal = comma"), d)
	require.NoError(t, err)
	assert.Empty(t, brought)
	for _, path := range []string{"card", "card.2.stock", "card.filler.density", "test.1.card", "learn.foam-roller.gelcoat"} {
		assert.Equal(t, d.Get(path), bare.Get(path), "an empty shed takes all of a file: %s", path)
	}
	assert.True(t, job.HasComma(bare))
	assert.Empty(t, bare.Get(job.NumberPath))
}

// A card that came in says whose it is: by its own name, or by that which ships.
func TestACardThatCameInSaysWhoseItIs(t *testing.T) {
	here := jobtest.Doc(t, "card.flowcoat.density = 1.25")
	for name, want := range map[string]string{"": "Flow coat (gel coat with wax) (theirs)", "White flow coat": "White flow coat (theirs)"} {
		came := jobtest.Doc(t, "buildup = 1", "buildup.1.step = 1", "buildup.1.step.1.card = flowcoat", "card.flowcoat.density = 1.31").Set("card.flowcoat.name", name)
		d, brought, err := job.Into(here, came)
		require.NoError(t, err)
		assert.Equal(t, []string{want}, brought)
		assert.Equal(t, want, d.Get("card."+d.Get("buildup.1.step.1.card")+".name"))
	}
}

func TestTooManyCardsAreRefused(t *testing.T) {
	here := jobtest.Doc(t, "card = "+ids(job.MaxCards))
	_, _, err := job.Into(here, jobtest.Doc(t, theirs))
	var limit *job.LimitError
	require.ErrorAs(t, err, &limit)
	assert.Equal(t, job.MaxCards, limit.List.Max)
	_, brought, err := job.Into(jobtest.Doc(t, "card = "+ids(job.MaxCards-2)), jobtest.Doc(t, theirs))
	require.NoError(t, err)
	assert.Len(t, brought, 2, "the last that there is room for")
}

// Another job may refer to a card that is gone: its id isn't given again.
func TestAnOwnCardsIDIsNeverGivenAgain(t *testing.T) {
	d, item := jobtest.Doc(t, "card = 1", "card.1.base = gelcoat").Add("card")
	d = d.Set(item+".base", "disc")
	away := job.PutAway(d.Set("buildup.1.step.1.card", "2"))
	d = job.RetireCard(d.Remove(item), item)
	shed, _ := job.SplitShed(d)
	_, next := shed.Add("card")
	assert.Equal(t, "card.3", next)
	j, _ := job.Read(job.TakeUp(shed, away))
	assert.Nil(t, j.CardByKey("2"))
}

func TestAJobToBeDoneAgain(t *testing.T) {
	away := jobtest.Doc(t, "surface = 1", "surface.1.width = 2", "buildup.1.step.1.card = gelcoat", "buildup.1.step.1.comb = 1", "buildup.1.step.1.comb.1.last-wet = 350",
		"real.buildup.1.step.1.comb.1.last-wet = 350", "cup = 1", "cup.1.mixed = 100 g", "done.1.used = 1", "ticked.gelcoat.packs = 5", "bench.now.surface-temp = 20", "kept.number = 4", "units.size = m")
	assert.Equal(t, jobtest.Doc(t, "surface = 1", "surface.1.width = 2", "buildup.1.step.1.card = gelcoat", "units.size = m").Lines(), job.Repeat(away).Lines())
}

func TestNothingTypedYet(t *testing.T) {
	assert.True(t, job.IsBlank(jobtest.Doc(t, "card.gelcoat.density = 1.2", "bench.now.tool = scale", "kept.number = 2", "units.size = in")))
	assert.False(t, job.IsBlank(jobtest.Doc(t, "name = x")))
}

// A job of the first format is shed and job in one, and parts into them.
func TestTheFirstFormatParts(t *testing.T) {
	d := saved(t, 1)
	shed, rest := job.SplitShed(d)
	assert.Equal(t, d.Lines(), job.Join(shed, rest).Lines())
	assert.Equal(t, d.Get("currency"), shed.Get("currency"))
	assert.Equal(t, d.Get("surface"), rest.Get("surface"))
	assert.Equal(t, unit.InMillimetre, job.ReadUnits(job.TakeUp(shed, job.PutAway(rest))).Scale(unit.Sizes))
}
