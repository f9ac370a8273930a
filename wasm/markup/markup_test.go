package markup_test

import (
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/wasm/markup"
)

func TestWhatWasTypedStaysText(t *testing.T) {
	evil := `<script>alert("x")</script>&'` + "\x00\xff"
	h := markup.El("p", markup.A("title", evil), markup.Text(evil))
	assert.NotContains(t, h.String(), "<script")
	assert.NoError(t, wellFormed(h.String()))
	assert.Panics(t, func() { markup.El("p", markup.A("onclick", "x")) })
	assert.Panics(t, func() { markup.El("p", markup.A("style", "x")) })
}

func FuzzEscaping(f *testing.F) {
	f.Add("<b>", `"x"`)
	f.Fuzz(func(t *testing.T, text, attr string) {
		if strings.ContainsFunc(text+attr, func(r rune) bool { return r < ' ' && r != '\n' && r != '\t' || r == 0xFFFE || r == 0xFFFF }) {
			t.Skip("not a character of XML; HTML takes it")
		}
		s := markup.El("p", markup.A("title", attr), markup.Text(text)).String()
		if err := wellFormed(s); err != nil {
			t.Fatalf("%q: %v", s, err)
		}
	})
}

func page(a, b string) *markup.Page {
	return markup.Cut(markup.Region("root", "main", nil,
		markup.Region("list", "div", nil, markup.Text("list "+a), markup.Region("line", "p", nil, markup.Text(b))),
		markup.ControlFor("input", "surface.1.width", markup.Control{Value: "450"}, nil)))
}

func TestTheOutermostChangedRegionIsReplaced(t *testing.T) {
	before := page("x", "y")
	assert.Empty(t, page("x", "y").Patches(before))
	assert.Equal(t, []markup.Patch{{ID: "line", HTML: `<p id="line">z</p>`}}, page("x", "z").Patches(before))
	patches := page("w", "z").Patches(before)
	require.Len(t, patches, 1)
	assert.Equal(t, "list", patches[0].ID)
	assert.Contains(t, patches[0].HTML, `<p id="line">z</p>`)
	assert.Equal(t, map[string]markup.Control{"surface.1.width": {Value: "450"}}, before.Controls)
	assert.NotContains(t, before.HTML(), "450", "a control's value isn't markup")
}

func TestAKeptRegionIsMadeOnlyForANewKey(t *testing.T) {
	made := 0
	line := func(id, key string) markup.HTML {
		made++
		return markup.Region(id, "p", nil, markup.Text(key))
	}
	list := func(a, b string) markup.HTML {
		return markup.Region("root", "main", nil, markup.Kept("a", a, line), markup.Kept("b", b, line))
	}
	first := markup.Cut(list("x", "y"))
	assert.Equal(t, 2, made)
	next := first.Next(list("x", "z"))
	assert.Equal(t, 3, made)
	assert.Equal(t, []markup.Patch{{ID: "b", HTML: `<p id="b">z</p>`}}, next.Patches(first))
	assert.Equal(t, markup.Cut(list("x", "z")).HTML(), next.HTML())
	loud := markup.Way{Key: "loud", Write: func(string) string { return "X" }}
	written := next.Next(markup.EachText(list("x", "z"), loud))
	assert.Equal(t, `<main id="root"><p id="a">X</p><p id="b">X</p></main>`, written.HTML(), "written otherwise it isn't taken over")
	assert.Equal(t, 7, made, "three that were new, two for HTML from nothing, two as they are written")
	assert.Equal(t, written.HTML(), written.Next(markup.EachText(list("x", "z"), loud)).HTML())
	assert.Equal(t, 7, made, "written the same it is")
}

func TestAKeptRegionKeepsItsControls(t *testing.T) {
	list := func(c markup.Control) markup.HTML {
		return markup.Region("root", "main", nil, markup.Kept("c", c, func(id string, c markup.Control) markup.HTML {
			return markup.Region(id, "p", nil, markup.Region("in", "b", nil, markup.ControlFor("input", "name", c, nil)))
		}))
	}
	first := markup.Cut(list(markup.Control{Value: "1"}))
	same := first.Next(list(markup.Control{Value: "1"}))
	assert.Equal(t, first.Controls, same.Controls)
	other := same.Next(list(markup.Control{Value: "2", Invalid: true}))
	assert.Equal(t, map[string]markup.Control{"name": {Value: "2", Invalid: true}}, other.Controls)
	assert.Empty(t, other.Patches(same), "a control's value isn't markup")
}

func wellFormed(s string) error {
	d := xml.NewDecoder(strings.NewReader(s))
	for {
		if _, err := d.Token(); err == io.EOF {
			return nil
		} else if err != nil {
			return err
		}
	}
}
