package page_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/wasm/page"
)

var (
	fileName = regexp.MustCompile(`^[^\n/\\]{1,120}\.(txt|csv|json)$`)
	element  = regexp.MustCompile(`^[\w.\-]+$`)
)

// whole holds an effect against what the border does with it: a name where it wants a
// name, a text where it wants a text. The two are both texts, so that the compiler
// doesn't tell; the wrong way round a file is named after all that is in it, and a link
// that is shared opens nothing.
func whole(t *testing.T, m page.Message, e page.Effect) {
	t.Helper()
	switch e.Kind {
	case page.Keep:
		require.True(t, strings.HasPrefix(e.Key, page.Prefix) && !strings.Contains(e.Key, "\n"), "%s keeps under %q", m.Verb, e.Key)
	case page.Forget, page.Revoke:
		require.True(t, strings.HasPrefix(e.Key, page.Prefix) && e.Text == "", "%s drops %q", m.Verb, e.Key)
	case page.Download:
		require.Regexp(t, fileName, e.Key, m.Verb)
		require.NotEmpty(t, e.Text, m.Verb)
	case page.Copy, page.Share, page.Say:
		require.NotEmpty(t, e.Text, m.Verb)
		require.NotContains(t, e.Key, "\n", m.Verb)
	case page.ShareLink:
		_, err := page.ReadLink(e.Text)
		require.NoError(t, err, m.Verb)
	case page.Focus:
		require.Regexp(t, element, e.Key, m.Verb)
		require.Empty(t, e.Text, m.Verb)
	case page.Timer, page.Awake:
		require.Contains(t, []string{"on", "off"}, e.Key, m.Verb)
	case page.Theme:
		require.Empty(t, e.Text, m.Verb)
	case page.Sound, page.Vibrate:
		require.NotEmpty(t, e.Key, m.Verb)
		require.Empty(t, e.Text, m.Verb)
	}
}

// What leaves the page goes out under the job's name, and holds the job.
func TestALinkThatIsSharedHoldsTheJob(t *testing.T) {
	st := over(t, inShed, inJob)
	_, effects := page.Update(st.s, page.Message{Verb: "link", At: noon})
	require.Len(t, effects, 1)
	assert.Equal(t, page.ShareLink, effects[0].Kind)
	assert.Equal(t, "Deck", effects[0].Key)
	again, err := page.ReadLink(effects[0].Text)
	require.NoError(t, err)
	assert.Equal(t, "Deck", again.Get("name"))
	assert.Equal(t, "20", again.Get("surface.1.width"))
}

// Of jobs that are put away one may be spoilt: when the open one is removed, the next
// that can be read comes in its place, never an empty one under its number.
func TestASpoiltJobIsNotTakenUpAfterARemoval(t *testing.T) {
	for _, spoilt := range []string{"Deck", "Hull", "both"} {
		st := over(t, inShed, inJob)
		for _, name := range []string{"Hull", "Mast"} {
			st.do("job-new", "", "")
			st.do("set", "name", name)
		}
		number := map[string]string{}
		for _, row := range st.s.Jobs()[1:] {
			number[row.Name] = row.Number
		}
		require.Len(t, number, 2)
		for name, n := range number {
			for _, place := range []string{".a", ".b"} {
				if key := page.Prefix + "away." + n + place; st.kept[key] != "" && (spoilt == name || spoilt == "both") {
					st.kept[key] += "x"
				}
			}
		}
		st.s = st.start()
		require.Equal(t, "Mast", st.s.Doc().Get("name"))
		st.do("job-remove", "", "")
		if spoilt == "both" {
			assert.True(t, job.IsBlank(st.s.Doc()))
			assert.Empty(t, st.s.Doc().Get(job.NumberPath), "a new job has no number of one that can't be read")
			continue
		}
		want := map[string]string{"Deck": "Hull", "Hull": "Deck"}[spoilt]
		assert.Equal(t, want, st.s.Doc().Get("name"), "%s is spoilt", spoilt)
		assert.Equal(t, number[want], st.s.Doc().Get(job.NumberPath))
	}
}

// While something spoilt stands in the store that a full store doesn't set aside, no
// other job is taken up: it would be written over it.
func TestNoOtherJobOverWhatIsSpoilt(t *testing.T) {
	for name, kept := range spoiltStores() {
		st := &tightStore{kept, true}
		s := st.start()
		s = st.send(s, typing("Meanwhile"))
		require.NotEmpty(t, s.Own.Stuck, name)
		for _, verb := range []string{"job-new", "job-copy", "job-remove"} {
			next, _ := page.Update(s, page.Message{Verb: verb, At: noon})
			assert.Equal(t, "Meanwhile", next.Doc().Get("name"), "%s, %s", name, verb)
			assert.NotEmpty(t, next.Notice, "%s, %s", name, verb)
		}
	}
}

// A scale is meant where no tool is named, with the step that is typed and no other.
func TestWhichToolIsTyped(t *testing.T) {
	for _, c := range []struct {
		lines, has string
	}{
		{"bench.now.scale-step = 0.1 g", "scale 0.1 g"},
		{"bench.now.tool = scale\nbench.now.scale-step = 0.01 g", "scale 0.01 g"},
		{"bench.now.tool = syringe\nbench.now.scale-step = 0.1 g\nbench.now.syringe-step = 0.1 mL", "syringe 0.1 mL"},
		{"bench.now.tool = drops\nbench.now.scale-step = 0.1 g", ""},
	} {
		s, _ := page.Start(map[string]string{page.Prefix + "job.a": job.Save(jobtest.Doc(t, c.lines), 1)}, noon)
		for _, key := range []string{"scale 0.1 g", "scale 0.01 g", "syringe 0.1 mL", "syringe 0.2 mL"} {
			assert.Equal(t, key == c.has, s.HasTool(key), "%s: %s", c.lines, key)
		}
	}
}

// What a cup hasn't is not taken down as nothing of it: an entry of the log has no line
// of 0 g.
func TestACupTakesDownOnlyWhatIsInIt(t *testing.T) {
	s := inUse(t, tenOClock)
	for _, key := range []string{"thinner", "wax"} {
		assert.Empty(t, s.Doc().Get("cup.1."+key), key)
	}
	assert.Equal(t, "100 g", s.Doc().Get("cup.1.product"))
}
