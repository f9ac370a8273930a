package page_test

import (
	"fmt"
	"hash/crc32"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
)

const (
	keyA      = page.Prefix + "job.a"
	keyB      = page.Prefix + "job.b"
	keyPermit = page.Prefix + "job.permit"
)

func saved(name string, revision int) string {
	return job.Save(job.Document{}.Set("name", name), revision)
}

// Of the two stores the newer text that can be read counts, place by place.
func TestTheNewerOfTwoStoresIsRead(t *testing.T) {
	type held = map[string]string
	for _, c := range []struct {
		what           string
		quick, durable held
		name           string
	}{
		{"both the same", held{keyA: saved("Two", 2)}, held{keyA: saved("Two", 2)}, "Two"},
		{"the quick one lost its last seconds", held{keyA: saved("Two", 2), keyB: saved("One", 1)}, held{keyA: saved("Two", 2), keyB: saved("Three", 3)}, "Three"},
		{"the durable one lags", held{keyA: saved("Four", 4)}, held{keyA: saved("Two", 2), keyB: saved("Three", 3)}, "Four"},
		{"no quick one", held{}, held{keyA: saved("Two", 2)}, "Two"},
		{"no durable one", held{keyA: saved("Two", 2)}, nil, "Two"},
		{"the quick one can't be read", nil, held{keyA: saved("Two", 2)}, "Two"},
		{"the quick one's text cut", held{keyA: saved("Two", 2)[:40]}, held{keyA: saved("Two", 2)}, "Two"},
		{"the durable one's text cut", held{keyA: saved("Two", 2)}, held{keyA: saved("Two", 2)[:40]}, "Two"},
	} {
		s, _ := start(t, page.Merge(c.quick, c.durable))
		assert.Equal(t, c.name, s.Doc().Get("name"), c.what)
		assert.Empty(t, s.Aside, c.what)
	}
}

// A cup's permit counts only where the store that has it knows of the latest save; where both do, both must have it; and
// where one of them was there and can't be read, none does.
func TestAPermitNeedsTheLatestWord(t *testing.T) {
	type held = map[string]string
	with := func(revision int, permit string) held {
		all := held{keyA: saved("x", revision)}
		if permit != "" {
			all[keyPermit] = permit
		}
		return all
	}
	marked := with(2, "cup.1 100")
	marked[page.DurableMark] = "yes"
	wentOn := with(4, "cup.1 100")
	wentOn[page.DurableMark] = "alone"
	for _, c := range []struct {
		what           string
		quick, durable held
		want           string
	}{
		{"in both", with(2, "cup.1 100"), with(2, "cup.1 100"), "cup.1 100"},
		{"gone from the quick one", with(2, ""), with(2, "cup.1 100"), ""},
		{"gone from the durable one", with(2, "cup.1 100"), with(2, ""), ""},
		{"the quick one never heard of the catalyst", with(2, "cup.1 100"), with(4, ""), ""},
		{"the durable one doesn't know of the weighing yet", with(4, "cup.1 100"), with(2, ""), "cup.1 100"},
		{"no durable one ever", with(2, "cup.1 100"), nil, "cup.1 100"},
		{"a durable one that can't be read", marked, nil, ""},
		{"the quick one went on alone, and may have lost its last seconds", wentOn, with(2, "cup.1 100"), ""},
		{"a quick one that can't be read", nil, with(2, "cup.1 100"), ""},
	} {
		assert.Equal(t, c.want, page.Merge(c.quick, c.durable)[keyPermit], c.what)
	}
}

// What a newer version of the page has kept is told of, and nothing in the store is touched: at the start, while working,
// and when another tab saves it.
func TestWhatANewerVersionKeptIsNotTouched(t *testing.T) {
	newer := savedBy(job.Format+1, "Newer", 7)
	for what, kept := range map[string]map[string]string{
		"one copy":                  {keyA: saved("Older", 6), keyB: newer},
		"both":                      {keyA: newer, keyB: newer},
		"beside one that is broken": {keyA: "broken", keyB: newer},
	} {
		s, effects := start(t, kept)
		assert.True(t, s.IsKeptByNewer(), what)
		assert.Empty(t, changing(effects), what)
		for _, m := range []page.Message{{Verb: "set", Path: "name", Text: "x"}, {Verb: "go", Path: "cup"}, {Verb: "demo"}, {Verb: "own"}, {Verb: "undo"}} {
			s, effects = page.Update(s, m)
			assert.Empty(t, changing(effects), "%s: %s", what, m.Verb)
		}
		_, effects = page.StartAside(kept, page.Moment{})
		assert.Empty(t, changing(effects), what)
	}
	s, _ := start(t, map[string]string{keyA: saved("Older", 6)})
	s, _ = page.Update(s, page.Message{Verb: "elsewhere", Path: keyB, Text: newer})
	_, effects := page.Update(s, page.Message{Verb: "set", Path: "name", Text: "x"})
	assert.Empty(t, changing(effects), "another tab is newer")
}

func changing(effects []page.Effect) (list []page.Effect) {
	for _, e := range effects {
		if e.Kind == page.Keep || e.Kind == page.Forget || e.Kind == page.Revoke {
			list = append(list, e)
		}
	}
	return list
}

// savedBy is a text as a later format would write it: title and checksum stay.
func savedBy(format int, name string, revision int) string {
	counted := fmt.Sprintf("shed reckoner job\nformat = %d\nrevision = %d\n", format, revision)
	body := "name = " + name + "\n"
	return fmt.Sprintf("%schecksum = %08x\n\n%s", counted, crc32.ChecksumIEEE([]byte(counted+body)), body)
}

// Files that other programs have passed on are read.
func TestFilesFromOtherProgramsAreRead(t *testing.T) {
	text := saved("Tern", 3)
	for what, file := range map[string]string{
		"a byte-order mark":      "\ufeff" + text,
		"Windows' ends":          strings.ReplaceAll(text, "\n", "\r\n"),
		"empty lines at the end": text + "\n\n",
		"no last end":            strings.TrimSuffix(text, "\n"),
		"all of it":              "\ufeff" + strings.ReplaceAll(text, "\n", "\r\n") + "\r\n",
	} {
		s, _ := start(t, nil)
		s, _ = page.Update(s, page.Message{Verb: "import", Text: file})
		assert.Equal(t, "Tern", s.Doc().Get("name"), what)
	}
}

// A link is answered, whatever became of it on its way.
func TestAMangledLinkIsAnswered(t *testing.T) {
	link, err := page.Link(job.Document{}.Set("name", "Tern"), 3)
	require.NoError(t, err)
	for fragment, says := range map[string]string{
		"#" + link: "",
		"#" + strings.Replace(link, "=", "%3D", 1):         "",
		"#" + strings.Replace(link, "=1.", "%3d1%2E", 1):   "",
		"#" + strings.Replace(link, "job=1.", "job=2.", 1): "newer version",
		"#" + link[:len(link)-7]:                           "cut short",
		"#" + strings.Replace(link, "job=1.", "job=", 1):   "cut short",
		"#" + strings.Replace(link, "job=1.", "jb1.", 1):   "no job of this page",
		"#heading": "",
	} {
		s, _ := start(t, nil)
		s, _ = page.Update(s, page.Message{Verb: "opened", Text: fragment})
		assert.Equal(t, says == "" && strings.Contains(fragment, "job"), s.Pending != nil, fragment)
		assert.Contains(t, s.Notice, says, fragment)
	}
}

// Of a job that is put away too the newer valid copy of the two stores counts.
func TestAJobPutAwayIsReadFromTheNewerStore(t *testing.T) {
	key := page.Prefix + "away.1.a"
	older, newer := job.Save(job.Document{}.Set("name", "older"), 3), job.Save(job.Document{}.Set("name", "newer"), 4)
	for name, c := range map[string]struct{ quick, durable, want string }{
		"the quick one is newer":    {newer, older, newer},
		"the durable one is newer":  {older, newer, newer},
		"the quick one is spoilt":   {newer + "x", older, older},
		"the quick one lost it":     {"", older, older},
		"the durable one is spoilt": {older, newer + "x", older},
	} {
		quick, durable := map[string]string{key: c.quick}, map[string]string{key: c.durable}
		assert.Equal(t, c.want, page.Merge(quick, durable)[key], name)
	}
}
