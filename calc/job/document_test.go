package job_test

import (
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
)

// edits makes random changes of every kind to a document and gives each state.
func edits(seed uint64, count int) []job.Document {
	random := rand.New(rand.NewPCG(seed, 3))
	d := jobtest.New(seed).Document()
	states := []job.Document{d}
	for range count {
		lists := []string{"surface", "buildup", "card", "surface.1.cutout", "buildup.1.step", "surface.2.corners"}
		list := lists[random.IntN(len(lists))]
		item := list + "." + strconv.Itoa(1+random.IntN(4))
		switch random.IntN(6) {
		case 0:
			d, _ = d.Add(list)
		case 1:
			d, _ = d.Copy(item)
		case 2:
			d = d.Remove(item)
		case 3:
			d = d.Move(item, random.IntN(7)-3)
		case 4:
			d = d.Set(item+".name", strconv.Itoa(random.IntN(3)))
		default:
			d = d.Set(item+".name", "")
		}
		states = append(states, d)
	}
	return states
}

func TestWhatIsSetIsGot(t *testing.T) {
	d := job.Document{}
	model := map[string]string{}
	random := rand.New(rand.NewPCG(1, 1))
	for range 2000 {
		path := "surface." + strconv.Itoa(random.IntN(20)) + "." + []string{"name", "height", "width"}[random.IntN(3)]
		text := []string{"", "a", "450 mm"}[random.IntN(3)]
		before := d.Get(path)
		next := d.Set(path, text)
		require.Equal(t, before, d.Get(path), "the document before stays as it was")
		d, model[path] = next, text
	}
	lines := 0
	for path, text := range model {
		assert.Equal(t, text, d.Get(path))
		if text != "" {
			lines++
		}
	}
	assert.Len(t, d.Lines(), lines, "an empty text leaves no line")
	assert.True(t, slices.IsSortedFunc(d.Lines(), func(a, b job.Line) int { return strings.Compare(a.Path, b.Path) }))
}

func TestLinesInAnyOrderMakeOneDocument(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 2))
	for range 200 {
		var one job.Document
		var lines []job.Line
		for range random.IntN(30) {
			l := job.Line{Path: "surface." + strconv.Itoa(random.IntN(9)) + ".name", Text: []string{"", "a", "b"}[random.IntN(3)]}
			one, lines = one.Set(l.Path, l.Text), append(lines, l)
		}
		before := slices.Clone(lines)
		require.Empty(t, job.Changes(one, job.Of(lines)), "%v", lines)
		require.Equal(t, before, lines, "what was handed over stays as it was")
	}
}

func TestChangesGoBothWays(t *testing.T) {
	for seed := range uint64(40) {
		states := edits(seed, 30)
		first, last := states[0], states[len(states)-1]
		back := last
		for i := len(states) - 1; i > 0; i-- {
			changes := job.Changes(states[i-1], states[i])
			back = back.Undo(changes)
			require.Equal(t, states[i-1].Lines(), back.Lines(), "seed %d step %d", seed, i)
			require.Equal(t, states[i].Lines(), back.Redo(changes).Lines())
		}
		all := job.Changes(first, last)
		assert.Equal(t, last.Lines(), first.Redo(all).Lines())
		assert.Equal(t, first.Lines(), last.Undo(all).Lines())
		assert.Empty(t, job.Changes(last, last))
	}
}

// No line lies under an id that its list doesn't have, and no id stands twice.
func TestItemsAndTheirLinesStayTogether(t *testing.T) {
	for seed := range uint64(40) {
		for _, d := range edits(seed, 30)[1:] {
			for _, list := range []string{"surface", "buildup"} {
				ids := d.Items(list)
				slices.Sort(ids)
				require.Equal(t, ids, slices.Compact(slices.Clone(ids)))
				for _, id := range ids {
					require.True(t, d.Holds(list+"."+id))
				}
				require.False(t, d.Holds(list+".none"))
			}
		}
	}
}

func TestAnIDIsNotUsedAgainWhileAnythingRefersToIt(t *testing.T) {
	d, first := job.Document{}.Add("buildup")
	d, second := d.Add("buildup")
	assert.Equal(t, []string{"buildup.1", "buildup.2"}, []string{first, second})
	d = d.Set("surface", "1").Set("surface.1.buildup", second).Remove(second)
	d, third := d.Add("buildup")
	assert.Equal(t, "buildup.3", third, "or the surface would get a build-up that nobody chose")

	d, _ = d.Add("card")
	d = d.Set("buildup.1.step", "1").Set("buildup.1.step.1.card", "1").Remove("card.1")
	_, card := d.Add("card")
	assert.Equal(t, "card.2", card)

	d = d.Set("bench.now.step", "buildup.1.step.1").Remove("buildup.1.step.1")
	_, step := d.Add("buildup.1.step")
	assert.Equal(t, "buildup.1.step.2", step)

	d = job.Document{}.Set("surface.7.name", "left behind")
	_, item := d.Add("surface")
	assert.Equal(t, "surface.8", item)
}

func TestCopyIsTheSameUnderAnotherID(t *testing.T) {
	d := jobtest.New(5).Document().Set("surface", "1 2 3").Set("surface.2.name", "x")
	next, item := d.Copy("surface.2")
	list, id := job.Split(item)
	assert.Equal(t, []string{"1", "2", id, "3"}, next.Items(list))
	want, got := d.Under("surface.2"), next.Under(item)
	require.Len(t, got, len(want))
	for i := range want {
		assert.Equal(t, strings.TrimPrefix(want[i].Path, "surface.2"), strings.TrimPrefix(got[i].Path, item))
		assert.Equal(t, want[i].Text, got[i].Text)
	}
	same, _ := d.Copy("surface.99")
	assert.Equal(t, d, same, "what isn't there isn't copied")
	assert.Equal(t, d.Lines(), next.Remove(item).Lines(), "copy and remove leave nothing behind")
}

func TestRemoveTakesEverythingOfTheItem(t *testing.T) {
	d := job.Document{}.Set("surface", "1 11").Set("surface.1.name", "a").Set("surface.11.name", "b").
		Set(job.Real("surface.1"), "600").Set(job.Real("surface.1.height"), "3").Set(job.Real("surface.11"), "9")
	after := d.Remove("surface.1")
	assert.Equal(t, []job.Line{{Path: "real.surface.11", Text: "9"}, {Path: "surface", Text: "11"}, {Path: "surface.11.name", Text: "b"}}, after.Lines())
	for _, nothing := range []string{"", "surface", "surface.2", "surface.1.name", "name", "units.size"} {
		assert.Equal(t, d, d.Remove(nothing), nothing)
	}
}

func TestMoveStopsAtTheEnds(t *testing.T) {
	d := job.Document{}.Set("surface", "1 2 3")
	for _, c := range []struct {
		item string
		by   int
		want string
	}{
		{"surface.1", 1, "2 1 3"}, {"surface.1", 2, "2 3 1"}, {"surface.1", 9, "2 3 1"}, {"surface.3", -1, "1 3 2"},
		{"surface.1", -1, "1 2 3"}, {"surface.2", 0, "1 2 3"}, {"surface.9", 1, "1 2 3"},
	} {
		assert.Equal(t, c.want, d.Move(c.item, c.by).Get("surface"))
	}
}

func TestItemsAreEachOnceAndLeadNowhereElse(t *testing.T) {
	d := job.Document{}.Set("surface", "1 1  2.name 3")
	assert.Equal(t, []string{"1", "3"}, d.Items("surface"))
}

// Found by fuzzing: a field of an item whose name holds a line's end was written,
// and the job could not be read again.
func TestNoFieldOfAnItemThatCantBeNamed(t *testing.T) {
	for _, id := range []string{"\n", " ", "1 2", "a=b", "", "a\rb", "\t"} {
		assert.Nil(t, job.FieldAt("surface."+id+".name"), "%q", id)
	}
	assert.NotNil(t, job.FieldAt("surface.a-1.name"))
}

// Changes joined lead where the two lead, made one after another.
func TestChangesJoined(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 1))
	changed := func(d job.Document) job.Document {
		for range random.IntN(5) {
			d = d.Set("p."+strconv.Itoa(random.IntN(6)), []string{"", "a", "b"}[random.IntN(3)])
		}
		return d
	}
	for range 500 {
		a := changed(job.Document{})
		b := changed(a)
		c := changed(b)
		joined := job.JoinChanges(job.Changes(a, b), job.Changes(b, c))
		require.Len(t, joined, len(job.Changes(a, c)))
		require.Empty(t, job.Changes(c, a.Redo(joined)))
		require.Empty(t, job.Changes(a, c.Undo(joined)))
	}
}

// After a key only what lies at its path may be another part: the rest is known to be
// the same without a look, which is what keeps a key cheap. After many lines at once, or
// of another reading than the one before, nobody knows, and each part is asked for.
func TestAReadingKnowsWhatAKeyLeavesAlone(t *testing.T) {
	d := jobtest.Doc(t, "surface = 1 2\nsurface.1.length = 2 m\nsurface.2.length = 3 m")
	first := new(job.Reading).Next(d)
	second := first.Next(d.Set("surface.1.length", "2.5 m"))
	assert.True(t, second.Keeps(first.Mark, "surface.2"))
	assert.False(t, second.Keeps(first.Mark, "surface.1"), "its length is another")
	third := second.Next(d.Set("surface.1.length", "2.6 m"))
	assert.False(t, third.Keeps(first.Mark, "surface.2"), "not the one before")
	assert.True(t, third.Keeps(second.Mark, "surface.2"))
	inches := third.Next(d.Set("surface.1.length", "2.6 m").Set("units.length", "in"))
	assert.False(t, inches.Keeps(third.Mark, "surface.2"), "a unit is everybody's")
	many := d
	for n := range 20 {
		many = many.Set("card.gelcoat.note", "x").Set("done."+strconv.Itoa(n+1)+".note", "x")
	}
	assert.False(t, first.Next(many).Keeps(first.Mark, "surface.2"))
}
