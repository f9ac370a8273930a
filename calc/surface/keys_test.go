package surface

import (
	"math/rand/v2"
	"regexp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/working"
)

func TestKeysAreFitToBeSaved(t *testing.T) {
	good := regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	seen := map[string]bool{}
	for _, s := range Shapes {
		assert.Same(t, s, Find(s.Key))
		assert.Regexp(t, good, s.Key)
		assert.False(t, seen[s.Key], s.Key)
		assert.NotEmpty(t, s.Name)
		seen[s.Key] = true
		checkKeys(t, s, good)
	}
	assert.Nil(t, Find("no such shape"))
}

// A key stands for one kind of thing, since saved jobs have the keys of all
// shapes side by side.
func TestAKeyHasOneKind(t *testing.T) {
	kinds := map[string]Kind{CountDim.Key: Count, SidesDim.Key: Count}
	answers := map[string][]Option{}
	for _, s := range Shapes {
		for _, d := range s.Dims {
			kind, known := kinds[d.Key]
			assert.True(t, !known || kind == d.Kind, "%s %s", s.Key, d.Key)
			if known {
				assert.Equal(t, answers[d.Key], d.Options, "%s %s: one choice has the same answers everywhere", s.Key, d.Key)
			}
			kinds[d.Key], answers[d.Key] = d.Kind, d.Options
		}
	}
}

func checkKeys(t *testing.T, s *Shape, good *regexp.Regexp) {
	keys, letters := map[string]bool{FacesKey: true}, map[string]bool{}
	dims := slices.Clone(s.Dims)
	if s.Rows != nil {
		assert.Regexp(t, good, s.Rows.Key)
		assert.False(t, slices.ContainsFunc(s.Dims, func(d Dim) bool { return d.Key == s.Rows.Key }))
		dims = append(dims, s.Rows.Columns...)
	}
	for _, d := range dims {
		assert.Regexp(t, good, d.Key)
		if s.Key != direct.Key { // its area and edge are the ones that come out
			assert.False(t, d.Key == AreaKey || d.Key == EdgeKey, "%s %s", s.Key, d.Key)
		}
		assert.False(t, keys[d.Key], "%s %s twice", s.Key, d.Key)
		assert.NotEmpty(t, d.Name)
		keys[d.Key] = true
		for _, o := range d.Options {
			assert.Regexp(t, good, o.Key, "%s %s: what is saved of a choice", s.Key, d.Key)
			assert.NotEmpty(t, o.Name)
		}
		if d.Kind == Choice {
			assert.Empty(t, d.Letter)
			assert.GreaterOrEqual(t, len(d.Options), 2, d.Key)
			continue
		}
		assert.False(t, letters[d.Letter], "%s: letter %s twice", s.Key, d.Letter)
		assert.NotEmpty(t, d.Letter)
		letters[d.Letter] = true
	}
}

// The letters on the sketch are the letters of the formulas, and every rule
// that a shape uses stands in Rules.
func TestLettersAreThoseOfTheFormulas(t *testing.T) {
	random := rand.New(rand.NewPCG(19, 23))
	for _, s := range Shapes {
		used := map[string][]string{} // dim → symbols of the formulas that it goes into
		for range 50 {
			_, m := drawGood(t, s, random)
			walk(m.Area.Step, used, t)
			walk(m.Edge.Step, used, t)
		}
		for _, d := range s.Dims {
			if symbols := used[d.Key]; len(symbols) > 0 {
				assert.Contains(t, symbols, d.Letter, "%s %s", s.Key, d.Key)
			}
		}
	}
}

func walk(step *working.Step, used map[string][]string, t *testing.T) {
	if step == nil || step.Rule == nil {
		return
	}
	assert.Contains(t, Rules(), step.Rule)
	for i, from := range step.From {
		if from == nil {
			continue
		}
		if !step.Rule.IsProse && from.Rule == nil {
			used[from.Name] = append(used[from.Name], step.Rule.Args[i].Symbol)
		}
		walk(from, used, t)
	}
}
