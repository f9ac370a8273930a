package page_test

import (
	"maps"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/wasm/page"
)

const inShed = `
card = 1
card.1.base = gelcoat
card.1.name = Mine, grey
card.1.stock = 5 kg
card.1.counted = cup.0
card.gelcoat.density = 1.21
test = 1
test.1.card = gelcoat
test.1.minutes = 15
learn.gravity-gun.gelcoat = 0.1 0.05 4
removal = 1
removal.1.grade = P400
currency = EUR
units.size = in
bench.now.tool = scale
bench.now.scale-step = 0.1 g
`

const inJob = `
name = Deck
surface = 1
surface.1.width = 20
surface.1.length = 30
buildup = 1
buildup.1.step = 1
buildup.1.step.1.kind = coat
buildup.1.step.1.card = 1
cup = 1 2
cup.1.card = 1
cup.1.mixed = 1 kg
cup.1.product = 1 kg
cup.1.weighed = 1715422500
cup.1.in = 1715422620
cup.1.ended = 1715422740
cup.2.card = 1
cup.2.mixed = 500 g
cup.2.weighed = 1715422500
cup.2.in = 1715422620
cup.2.ended = 1715422740
bench.now.surface-temp = 20 °C
kept.worked = 2026-05-20
`

// tight is a store and the page over it.
type tight struct {
	tightStore
	t *testing.T
	s *page.State
}

func over(t *testing.T, lines ...string) *tight {
	st := &tight{tightStore: tightStore{kept: map[string]string{}}, t: t}
	if len(lines) > 0 {
		st.kept[page.Prefix+"job.a"] = job.Save(jobtest.Doc(t, lines...), 4)
	}
	st.s = st.start()
	return st
}

func (st *tight) do(verb, path, text string) {
	st.s = st.send(st.s, page.Message{Verb: verb, Path: path, Text: text, At: page.Moment{Date: "2026-06-01", Unix: 1780300000, Day: 36000}})
}

// reloads holds what is shown against what is kept.
func (st *tight) reloads() {
	st.t.Helper()
	again := (&tightStore{kept: maps.Clone(st.kept)}).start()
	require.Equal(st.t, st.s.Doc().Lines(), again.Doc().Lines())
	require.Equal(st.t, st.s.Jobs(), again.Jobs())
	st.s = again
}

func shedOf(s *page.State) []job.Line { shed, _ := job.SplitShed(s.Doc()); return shed.Lines() }

// A new job keeps the shed, the job before comes back as it was, and stock is
// what was counted less what the cups of all jobs took.
func TestANewJobHasTheShedAndTheOldComesBack(t *testing.T) {
	st := over(t, inShed, inJob)
	before := st.s.Doc()
	st.do("job-new", "", "")
	st.reloads()
	d := st.s.Doc()
	assert.Empty(t, d.Items("surface"))
	assert.Empty(t, d.Get("name"))
	assert.Empty(t, d.Get("bench.now.surface-temp"))
	for _, l := range jobtest.Doc(t, inShed).Lines() {
		if l.Path != "card.1.stock" {
			assert.Equal(t, l.Text, d.Get(l.Path), l.Path)
		}
	}
	assert.Equal(t, "3.5 kg", d.Get("card.1.stock"), "the cups of the other job took 1.5 kg")
	assert.True(t, st.s.HasTool("scale 0.1 g"), "the tool isn't asked for again")
	assert.Empty(t, st.s.Slot().Undo)
	st.do("undo", "", "")
	assert.Empty(t, st.s.Doc().Items("surface"), "undo doesn't go over to another job")

	st.do("set", "name", "Hull")
	st.do("unit", "size", "m")
	st.do("set", "card.gelcoat.density", "1.3")
	require.Len(t, st.s.Jobs(), 2)
	assert.Equal(t, page.JobRow{Number: "2", Name: "Hull", Worked: "2026-06-01", IsHere: true}, st.s.Jobs()[0])
	assert.Equal(t, page.JobRow{Number: "1", Name: "Deck", Surfaces: 1, Cups: 2, Worked: "2026-05-20"}, st.s.Jobs()[1])
	st.reloads()

	st.do("job-open", "1", "")
	st.reloads()
	d = st.s.Doc()
	_, was := job.SplitShed(before)
	for _, l := range was.Lines() {
		if l.Path != "surface.1.width" && l.Path != "surface.1.length" {
			assert.Equal(t, l.Text, d.Get(l.Path), l.Path)
		}
	}
	assert.Equal(t, "20 in", d.Get("surface.1.width"), "the shed measures in metres by now")
	assert.Equal(t, "1.3", d.Get("card.gelcoat.density"), "one shed for all jobs")
	assert.Equal(t, []string{"3.5 kg", "cup.2"}, []string{d.Get("card.1.stock"), d.Get("card.1.counted")}, "no cup takes of it twice")
	st.do("job-open", "2", "")
	assert.Equal(t, "Hull", st.s.Doc().Get("name"))
	assert.Equal(t, []string{"3.5 kg", "cup.0"}, []string{st.s.Doc().Get("card.1.stock"), st.s.Doc().Get("card.1.counted")})
	st.reloads()
}

func TestACopyHasWhatIsPlannedAndAnEmptyLog(t *testing.T) {
	st := over(t, inShed, inJob)
	st.do("job-copy", "", "")
	st.reloads()
	assert.Equal(t, "Deck (copy)", st.s.Doc().Get("name"))
	assert.Equal(t, "20", st.s.Doc().Get("surface.1.width"))
	assert.Empty(t, st.s.Doc().Items("cup"))
	st.do("set", "surface.1.width", "7")
	st.do("job-open", "1", "")
	assert.Equal(t, "20", st.s.Doc().Get("surface.1.width"))
	st.do("job-copy", "2", "")
	assert.Equal(t, "7", st.s.Doc().Get("surface.1.width"), "of one that isn't open too")
	assert.Len(t, st.s.Jobs(), 3)
	st.reloads()
}

func TestAJobIsRemoved(t *testing.T) {
	st := over(t, inShed, inJob)
	st.do("job-new", "", "")
	st.do("set", "name", "Hull")
	st.do("job-remove", "1", "")
	st.reloads()
	assert.Len(t, st.s.Jobs(), 1)
	for key := range st.kept {
		assert.NotContains(t, key, "away.1.")
	}
	st.do("job-copy", "", "")
	st.do("set", "name", "Hull again")
	st.do("job-remove", "", "")
	st.reloads()
	assert.Equal(t, "Hull", st.s.Doc().Get("name"), "the one before comes in its place")
	shed := shedOf(st.s)
	st.do("job-remove", "", "")
	st.reloads()
	assert.True(t, job.IsBlank(st.s.Doc()), "of the last one an empty one is left")
	assert.Equal(t, shed, shedOf(st.s), "the shed stays")
	assert.Len(t, st.s.Jobs(), 1)
}

// Where the store has no room for the job that is put away, nothing changes, in
// the page or in the store.
func TestAFullStoreKeepsTheJobThatIsOpen(t *testing.T) {
	st := over(t, inShed, inJob)
	st.do("set", "name", "Deck, forward")
	kept, doc := maps.Clone(st.kept), st.s.Doc()
	st.isFull = true
	for _, verb := range []string{"job-new", "job-copy"} {
		st.do(verb, "", "")
		assert.Equal(t, doc.Lines(), st.s.Doc().Lines())
		assert.Contains(t, st.s.Notice, "no room")
		delete(st.kept, page.Prefix+"view")
		delete(kept, page.Prefix+"view")
		assert.Equal(t, kept, st.kept, "not a byte")
		assert.Len(t, st.s.Jobs(), 1)
	}
	st.isFull = false
	st.do("job-new", "", "")
	st.reloads()
	assert.Len(t, st.s.Jobs(), 2)
}

// An end between any two writes loses neither job.
func TestAnEndWhileJobsChangeLosesNone(t *testing.T) {
	st := over(t, inShed, inJob)
	st.do("set", "name", "Deck")
	_, effects := page.Update(st.s, page.Message{Verb: "job-new"})
	kept := maps.Clone(st.kept)
	for i := 0; ; i++ {
		s, _ := page.Start(maps.Clone(kept), page.Moment{Date: "2026-06-01"})
		found := s.Doc().Get("name") == "Deck"
		for _, row := range s.Jobs() {
			if row.Name == "Deck" {
				found = true
				s, _ = page.Update(s, page.Message{Verb: "job-open", Path: row.Number})
			}
		}
		require.True(t, found, "after %d writes", i)
		require.Equal(t, "20", s.Doc().Get("surface.1.width"), "after %d writes", i)
		require.Equal(t, "Mine, grey", s.Doc().Get("card.1.name"), "after %d writes", i)
		if i == len(effects) {
			break
		}
		if e := effects[i]; e.Kind == page.Keep {
			kept[e.Key] = e.Kept()
		}
	}
}

// One spoilt copy of a job that is put away is no loss; of two it is said, and
// they are offered as a file.
func TestASpoiltJobThatIsPutAway(t *testing.T) {
	st := over(t, inShed, inJob)
	st.do("job-new", "", "")
	st.do("set", "name", "Hull")
	first := page.Prefix + "away.1.a"
	require.Contains(t, st.kept, first)
	st.kept[first] += "x"
	st.s = st.start()
	st.do("job-open", "1", "")
	assert.Equal(t, "Deck", st.s.Doc().Get("name"))

	for _, key := range []string{"away.2.a", "away.2.b"} {
		require.Contains(t, st.kept, page.Prefix+key)
		st.kept[page.Prefix+key] += "x"
	}
	st.s = st.start()
	require.True(t, st.s.Jobs()[1].Fails)
	st.do("job-open", "2", "")
	assert.Equal(t, "Deck", st.s.Doc().Get("name"))
	assert.Contains(t, st.s.Notice, "can't be read")
	assert.NotEmpty(t, st.s.Aside)
}

// What another tab puts away is in the list here too; another job there is
// another state of what is kept, and neither is lost whichever goes on.
func TestJobsInTwoTabs(t *testing.T) {
	for _, goesOn := range []string{"mine", "theirs"} {
		st := over(t, inShed, inJob)
		other := st.start()
		before := maps.Clone(st.kept)
		for _, m := range []page.Message{{Verb: "job-new"}, {Verb: "set", Path: "name", Text: "Hull"}} {
			st.do(m.Verb, m.Path, m.Text)
			for key, text := range st.kept {
				if before[key] != text {
					other, _ = page.Update(other, page.Message{Verb: "elsewhere", Path: key, Text: text})
				}
			}
			before = maps.Clone(st.kept)
		}
		require.NotEmpty(t, other.Own.Elsewhere)
		blocked, _ := page.Update(other, page.Message{Verb: "job-new"})
		assert.Equal(t, "Deck", blocked.Doc().Get("name"), "not before it is said which goes on")
		other = st.send(other, page.Message{Verb: goesOn})
		again := st.start()
		names := []string{}
		for _, row := range again.Jobs() {
			names = append(names, row.Name)
		}
		assert.Contains(t, names, "Deck", goesOn)
		assert.Contains(t, names, "Hull", goesOn)
		assert.Equal(t, other.Doc().Get("name"), again.Doc().Get("name"), goesOn)
	}
}

func TestNoOtherJobUnderAnOpenCup(t *testing.T) {
	s := inUse(t, tenOClock)
	require.NotEmpty(t, page.OpenCups(s.Doc(), page.Running))
	for _, verb := range []string{"job-new", "job-copy", "job-remove"} {
		next, effects := sent(s, tenOClock, verb, "", "")
		assert.Equal(t, s.Doc(), next.Doc(), verb)
		assert.Empty(t, effects, verb)
		assert.Contains(t, next.Notice, "A cup is open")
	}
}

func TestJobsAreCounted(t *testing.T) {
	st := over(t, inJob)
	for i := range job.MaxJobs {
		st.do("job-new", "", "")
		st.do("set", "name", strconv.Itoa(i))
	}
	assert.Len(t, st.s.Jobs(), job.MaxJobs)
	assert.Equal(t, strconv.Itoa(job.MaxJobs-1), st.s.Doc().Get("name"), "the last name was typed over")
	st.do("job-new", "", "")
	assert.Contains(t, st.s.Notice, "no more")
	st.reloads()
}

// A job that comes in stands beside those that are there, and leaves the shed
// alone.
func TestWhatComesInIsAnotherJob(t *testing.T) {
	st := over(t, inShed, inJob)
	shed := shedOf(st.s)
	incoming := jobtest.Doc(t, "name = Theirs", "surface = 1", "surface.1.width = 2 m", "card.gelcoat.density = 1.4", "buildup = 1", "buildup.1.step = 1",
		"buildup.1.step.1.kind = coat", "buildup.1.step.1.card = gelcoat", "currency = USD", "card.1.base = disc", "card.1.stock = 7")
	st.do("import", "", job.Save(incoming, 9))
	assert.Contains(t, st.s.Notice, "beside yours")
	d := st.s.Doc()
	assert.Equal(t, "Theirs", d.Get("name"))
	theirs := d.Get("buildup.1.step.1.card")
	assert.Equal(t, "1.4", d.Get("card."+theirs+".density"))
	for _, l := range shed {
		if !strings.HasPrefix(l.Path, "card.1.") && l.Path != "card" {
			assert.Equal(t, l.Text, d.Get(l.Path), l.Path)
		}
	}
	st.reloads()
	st.do("job-open", "1", "")
	assert.Equal(t, "Deck", st.s.Doc().Get("name"))
	st.do("import", "", job.Save(st.s.Doc(), 9))
	assert.Contains(t, st.s.Notice, "Nothing was changed", "its own job")

	empty := over(t)
	empty.do("import", "", job.Save(jobtest.Doc(t, inShed, inJob), 9))
	assert.Equal(t, jobtest.Doc(t, inShed, inJob).Set(job.WorkedPath, "").Lines(), empty.s.Doc().Lines(), "an empty phone takes all of it")
	empty.do("undo", "", "")
	assert.Empty(t, empty.s.Doc().Lines())
}

// What the first format kept is read, and the next save is of the second.
func TestTheFirstFormatIsKeptAsTheSecond(t *testing.T) {
	old := strings.Replace(job.Save(jobtest.Doc(t, "name = x"), 1), "format = 2", "format = 1", 1)
	_, _, err := job.Load(old)
	require.ErrorIs(t, err, job.ErrDamaged, "its checksum covers the format")
	st := over(t)
	st.kept[page.Prefix+"job.a"] = firstFormat(t)
	st.s = st.start()
	assert.Equal(t, "Tern, 7 m open launch (made up)", st.s.Doc().Get("name"))
	st.do("job-new", "", "")
	st.do("job-open", "1", "")
	assert.Len(t, st.s.Doc().Items("surface"), 3)
	st.reloads()
	assert.Contains(t, st.kept[page.Prefix+"job.b"]+st.kept[page.Prefix+"job.a"], "format = 2")
}

func firstFormat(t *testing.T) string {
	t.Helper()
	saved, err := os.ReadFile("../../testdata/saved/format-1.txt")
	require.NoError(t, err)
	return string(saved)
}
