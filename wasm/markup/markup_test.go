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
	assert.Equal(t, `<main id="root"><p id="a">X</p><p id="b">X</p></main>`,
		next.Next(markup.EachText(list("x", "z"), func(string) string { return "X" })).HTML(), "written otherwise it isn't taken over")
	assert.Panics(t, func() {
		markup.Cut(markup.Region("root", "main", nil, markup.Kept("c", 1, func(id string, _ int) markup.HTML {
			return markup.Region(id, "p", nil, markup.ControlFor("input", "name", markup.Control{}, nil))
		})))
	}, "a control's value would be lost")
}

func TestAHiddenRegionStaysAsItIs(t *testing.T) {
	made := 0
	list := func(text, value string, hide bool) markup.HTML {
		under := func() markup.HTML {
			made++
			return markup.Region("under", "p", nil, markup.Text(text), markup.Region("inner", "b", nil, markup.ControlFor("input", "name", markup.Control{Value: value}, nil)))
		}
		if hide {
			return markup.Region("root", "main", nil, markup.Hidden("under", under))
		}
		return markup.Region("root", "main", nil, under())
	}
	first := markup.Cut(list("x", "1", true))
	assert.Equal(t, 1, made, "nothing was there")
	second := first.Next(list("y", "2", true))
	assert.Equal(t, 1, made)
	assert.Empty(t, second.Patches(first))
	assert.Equal(t, first.HTML(), second.HTML())
	assert.Equal(t, map[string]markup.Control{"name": {Value: "1"}}, second.Controls)
	third := second.Next(markup.EachText(list("z", "3", false), strings.ToUpper))
	assert.Equal(t, []markup.Patch{{ID: "under", HTML: `<p id="under">Z<b id="inner"><input data-path="name"/></b></p>`}}, third.Patches(second))
	assert.Equal(t, map[string]markup.Control{"name": {Value: "3"}}, third.Controls)
	assert.Equal(t, 2, made)
	assert.Empty(t, third.Next(markup.EachText(list("w", "4", true), strings.ToLower)).Patches(third), "nor is it written otherwise")
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
