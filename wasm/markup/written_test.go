package markup_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/wasm/markup"
)

// Markup is written as HTML (13.3, serialising) and XML both read it: an element without content has an end tag, but for those
// that never have content; what would end a text or an attribute is escaped, and nothing else.
func TestEachPieceIsWrittenAsItIs(t *testing.T) {
	text := markup.Text
	for want, h := range map[string]markup.HTML{
		"":                                     {},
		"a":                                    text("a"),
		"<p></p>":                              markup.El("p", nil),
		`<p class="x" id="y">ab</p>`:           markup.El("p", markup.A("class", "x", "id", "y"), text("a"), text("b")),
		`<p id="r" class="x"><b></b></p>`:      markup.Region("r", "p", markup.A("class", "x"), markup.El("b", nil)),
		`<p></p><p>a</p>`:                      markup.Join(markup.El("p", nil), markup.HTML{}, markup.El("p", nil, text("a"))),
		`<p>abc</p>`:                           markup.El("p", nil, markup.Join(text("a"), markup.Join(text("b"), text("c")))),
		`<p hidden="">x</p>`:                   markup.El("p", []markup.Attr{{Name: "hidden"}, {Value: "left out"}}, text("x")),
		`<p a="1">x</p>`:                       markup.El("p", markup.A("a", "1", "b"), text("x")),
		`<svg><path d="M0 0"/></svg>`:          markup.El("svg", nil, markup.El("path", markup.A("d", "M0 0"))),
		`<path><b></b></path>`:                 markup.El("path", nil, markup.El("b", nil)),
		`<input data-path="a.b" type="text"/>`: markup.ControlFor("input", "a.b", markup.Control{Value: "7"}, markup.A("type", "text")),
		`<select data-path="a"><option value=""></option></select>`: markup.ControlFor("select", "a", markup.Control{}, nil, markup.El("option", markup.A("value", ""))),
	} {
		assert.Equal(t, want, h.String())
		assert.Equal(t, want == "", h.IsEmpty())
	}
	assert.True(t, markup.Join().IsEmpty())
	assert.True(t, markup.Join(markup.HTML{}, markup.Join()).IsEmpty())
	for _, tag := range strings.Fields("br hr img input meta link path line rect circle ellipse polyline polygon") {
		assert.Equal(t, "<"+tag+"/>", markup.El(tag, nil).String())
	}
	for _, tag := range strings.Fields("p div span textarea select svg text g table td button") {
		assert.Equal(t, "<"+tag+"></"+tag+">", markup.El(tag, nil).String())
	}
	for raw, c := range map[string]struct{ text, attr string }{
		"&": {"&amp;", "&amp;"}, "<": {"&lt;", "&lt;"}, ">": {"&gt;", "&gt;"}, `"`: {`"`, "&quot;"}, "'": {"'", "'"}, "\n": {"\n", "&#10;"}, "\t": {"\t", "&#9;"}, "\x00": {"\uFFFD", "\uFFFD"},
		"\xff": {"\uFFFD", "\uFFFD"}, "°": {"°", "°"}, "~": {"~", "~"}, " ": {" ", " "}, "&amp;": {"&amp;amp;", "&amp;amp;"}, "\x7f": {"\x7f", "\x7f"},
	} {
		assert.Equal(t, "<p>a"+c.text+"b</p>", markup.El("p", nil, text("a"+raw+"b")).String(), "%q", raw)
		assert.Equal(t, `<p title="a`+c.attr+`b"></p>`, markup.El("p", markup.A("title", "a"+raw+"b")).String(), "%q", raw)
		assert.Equal(t, "a"+c.text+"b", markup.Verbatim("a"+raw+"b").String(), "%q", raw)
	}
	for _, name := range []string{"style", "on", "onclick", "onx"} {
		assert.Panics(t, func() { markup.El("p", markup.A(name, "x")) }, name)
	}
	for _, name := range []string{"styles", "no", "o", "data-on"} {
		assert.NotPanics(t, func() { markup.El("p", markup.A(name, "x")) }, name)
	}
}

// Every text is written in the way that is asked for, also in what is made later; what is verbatim, a tag or an attribute isn't.
func TestEachTextIsWrittenInItsWay(t *testing.T) {
	way := markup.Way{Key: "comma", Write: func(s string) string { return strings.ReplaceAll(s, ".", ",") }}
	kept := func(id string, key string) markup.HTML { return markup.Region(id, "i", nil, markup.Text(key)) }
	h := markup.Region("r", "main", markup.A("title", "1.5"), markup.Text("1.5"), markup.Verbatim("1.5"), markup.El("b", nil, markup.Text("2.5")), markup.Kept("k", "3.5", kept))
	assert.Equal(t, `<main id="r" title="1.5">1,51.5<b>2,5</b><i id="k">3,5</i></main>`, markup.EachText(h, way).String())
	assert.True(t, markup.EachText(markup.HTML{}, way).IsEmpty())
}

// A page has one root with an id; a region with another id than it was kept by, and one that stands twice, are told.
func TestRegionsAreToldApart(t *testing.T) {
	region := func(id string, kids ...markup.HTML) markup.HTML { return markup.Region(id, "div", nil, kids...) }
	assert.Panics(t, func() { markup.Cut(markup.HTML{}) })
	assert.Panics(t, func() { markup.Cut(markup.El("p", nil)) })
	assert.Panics(t, func() {
		markup.Cut(region("r", markup.Kept("a", 1, func(string, int) markup.HTML { return region("b") })))
	})
	assert.Empty(t, markup.Cut(region("r", region("a"), region("b"))).Repeats)
	assert.Equal(t, []string{"a"}, markup.Cut(region("r", region("a"), region("b", region("a")))).Repeats)
	first := markup.Cut(region("r", region("a", markup.Text("1")), region("b", markup.Text("1")), region("c", markup.Text("1"))))
	second := markup.Cut(region("r", region("a", markup.Text("2")), region("b", markup.Text("1")), region("c", markup.Text("2"))))
	assert.Equal(t, []markup.Patch{{ID: "a", HTML: `<div id="a">2</div>`}, {ID: "c", HTML: `<div id="c">2</div>`}}, second.Patches(first), "in their order")
	assert.Equal(t, []markup.Patch{{ID: "r", HTML: first.HTML()}}, first.Patches(new(markup.Page)), "with nothing before, the root")
	moved := markup.Cut(region("r", region("b", markup.Text("1")), region("a", markup.Text("1")), region("c", markup.Text("1"))))
	assert.Equal(t, "r", moved.Patches(first)[0].ID, "what lies otherwise is another page")
	assert.Len(t, moved.Patches(first), 1)
}

// What is taken over brings the regions and the controls that lie in it, however deep; what replaces it doesn't.
func TestWhatIsTakenOverBringsWhatLiesInIt(t *testing.T) {
	control := func(path, value string) markup.HTML {
		return markup.ControlFor("input", path, markup.Control{Value: value}, nil)
	}
	made := 0
	deep := func(id string, key string) markup.HTML {
		made++
		return markup.Region(id, "div", nil, markup.El("p", nil, control("outer", key)), markup.Region(id+".in", "div", nil, markup.Region(id+".in.in", "div", nil, control("inner", key), markup.Text(key))))
	}
	root := func(key, other string) markup.HTML {
		return markup.Region("r", "main", nil, markup.Kept("k", key, deep), markup.Region("o", "p", nil, markup.Text(other)))
	}
	first := markup.Cut(root("x", "1"))
	second := first.Next(root("x", "2"))
	third := second.Next(root("x", "3"))
	assert.Equal(t, 1, made)
	want := map[string]markup.Control{"outer": {Value: "x"}, "inner": {Value: "x"}}
	assert.Equal(t, want, second.Controls)
	assert.Equal(t, want, third.Controls)
	assert.Equal(t, []markup.Patch{{ID: "o", HTML: `<p id="o">3</p>`}}, third.Patches(second))
	other := third.Next(root("y", "3"))
	assert.Equal(t, map[string]markup.Control{"outer": {Value: "y"}, "inner": {Value: "y"}}, other.Controls)
	assert.Equal(t, []markup.Patch{{ID: "k.in.in", HTML: `<div id="k.in.in"><input data-path="inner"/>y</div>`}}, other.Patches(third), "the outermost that differs, not all of it")
	plain := third.Next(markup.Region("r", "main", nil, markup.Region("k", "div", nil), markup.Region("o", "p", nil, markup.Text("3"))))
	assert.Empty(t, plain.Controls)
	assert.Equal(t, "k", plain.Patches(third)[0].ID)
	assert.Equal(t, root("x", "3").String(), third.HTML())
}
