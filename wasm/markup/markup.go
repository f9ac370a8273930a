// Package markup builds HTML and SVG. Text and attributes are always escaped:
// the HTML type has no other maker, so markup can't come from what was typed.
//
// A page is cut into regions, elements with an id that are compared and
// replaced on their own. The value of a control isn't markup: ControlFor keeps
// it beside the tree, and the border sets it where the control doesn't have the
// focus.
package markup

import "strings"

// HTML is a piece of markup. The zero value is nothing. It is one word, since
// views are little more than calls that hand it on.
type HTML struct{ node *node }

type node struct {
	text     string // escaped text; of an element "<tag" with its attributes, escaped
	tag      string // empty for text, and for pieces one after the other
	kids     []*node
	verbatim bool     // not for EachText
	id       string   // of a region
	control  *control // its path and state, of a control
	kept     *kept    // of a Kept region, whose markup is made only when it is needed
}

// Attr is an attribute. An empty name leaves it out.
type Attr struct{ Name, Value string }

// A makes attributes from pairs of name and value.
func A(pairs ...string) []Attr {
	list := make([]Attr, 0, len(pairs)/2)
	for i := 0; i+1 < len(pairs); i += 2 {
		list = append(list, Attr{pairs[i], pairs[i+1]})
	}
	return list
}

// Text is text between tags.
func Text(s string) HTML { return HTML{&node{text: escapeText(s)}} }

// El is an element. It panics on an attribute that would run as script or
// break the page's policy: style and on….
func El(tag string, attrs []Attr, kids ...HTML) HTML {
	return HTML{element(tag, attrs, kids)}
}

// Region is an element with an id that is compared and replaced on its own.
func Region(id, tag string, attrs []Attr, kids ...HTML) HTML {
	n := element(tag, append([]Attr{{"id", id}}, attrs...), kids)
	n.id = id
	return HTML{n}
}

// kept is what a region's markup is made from, and by which function.
type kept struct {
	key  any
	make func() HTML
	node *node // once it is made
}

// Kept is a region that follows from its key alone, the state of its controls
// too. It isn't made again while the page before has it with an equal key: a long
// list costs only what changed in it. The function makes the region with that id,
// and what it makes must depend on nothing but the key.
func Kept[K comparable](id string, key K, make func(id string, key K) HTML) HTML {
	return HTML{&node{id: id, kept: &kept{key: key, make: func() HTML { return make(id, key) }}}}
}

// made gives the node that a Kept region is made as.
func (n *node) made() *node {
	if n.kept.node == nil {
		n.kept.isMade(n.kept.make().node)
		if n.kept.node.id != n.id {
			panic("markup: " + n.id + " was made with another id")
		}
	}
	return n.kept.node
}

// isMade lets go of what it was made from.
func (k *kept) isMade(n *node) { k.node, k.make = n, nil }

// Control is what the border sets on a control: neither is markup, so that
// typing never replaces the control that is typed in.
type Control struct {
	Value   string
	Invalid bool
}

// ControlFor is an input, select or textarea for the path with its state.
func ControlFor(tag, path string, state Control, attrs []Attr, kids ...HTML) HTML {
	n := element(tag, append([]Attr{{"data-path", path}}, attrs...), kids)
	n.control = &control{path, state}
	return HTML{n}
}

type control struct {
	path  string
	state Control
}

// Way is a way of writing texts: Key is all that it depends on.
type Way struct {
	Key   string
	Write func(escaped string) string
}

// EachText gives the piece with every escaped text written in that way but those
// that are Verbatim. It changes the piece itself, which is for its maker to do.
func EachText(h HTML, way Way) HTML {
	if h.node != nil {
		h.node.eachText(way)
	}
	return h
}

func (n *node) eachText(way Way) {
	if n.kept != nil {
		plain := *n.kept
		n.kept = &kept{key: written{plain.key, way.Key}, make: func() HTML { return EachText(plain.make(), way) }}
		return
	}
	if n.tag == "" && n.text != "" && !n.verbatim {
		n.text = way.Write(n.text)
	}
	for _, k := range n.kids {
		k.eachText(way)
	}
}

// written is the key of what is kept as it was written in a way.
type written struct {
	key any
	way string
}

// Verbatim is text that EachText leaves alone.
func Verbatim(s string) HTML { return HTML{&node{text: escapeText(s), verbatim: true}} }

// Join puts pieces one after the other.
func Join(pieces ...HTML) HTML {
	kids := flat(pieces)
	if len(kids) == 0 {
		return HTML{}
	}
	return HTML{&node{kids: kids}}
}

// IsEmpty reports whether there is nothing to show.
func (h HTML) IsEmpty() bool { return h.node == nil }

// String is the whole markup, well-formed as XML.
func (h HTML) String() string {
	var b strings.Builder
	if h.node != nil {
		h.node.write(&b, nil)
	}
	return b.String()
}

// flat gives the nodes of pieces, those of joined pieces themselves.
func flat(pieces []HTML) []*node {
	list := make([]*node, 0, len(pieces))
	for _, p := range pieces {
		switch n := p.node; {
		case n == nil:
		case n.isJoined():
			list = append(list, n.kids...)
		default:
			list = append(list, n)
		}
	}
	return list
}

func (n *node) isJoined() bool { return n.tag == "" && n.kids != nil }

func element(tag string, attrs []Attr, kids []HTML) *node {
	n := &node{tag: tag, kids: flat(kids)}
	size := len("<") + len(tag)
	for _, a := range attrs {
		size += len(` =""`) + len(a.Name) + len(a.Value)
	}
	var b strings.Builder
	b.Grow(size)
	b.WriteString("<")
	b.WriteString(tag)
	for _, a := range attrs {
		if a.Name == "" {
			continue
		}
		if a.Name == "style" || strings.HasPrefix(a.Name, "on") {
			panic("markup: attribute " + a.Name + " isn't allowed")
		}
		b.WriteString(" ")
		b.WriteString(a.Name)
		b.WriteString(`="`)
		b.WriteString(escapeAttr(a.Value))
		b.WriteString(`"`)
	}
	n.text = b.String()
	return n
}

// write gives the node as text; for a region below the top it calls nested
// instead, if there is one.
func (n *node) write(b *strings.Builder, nested func(*node)) {
	if n.kept != nil {
		n = n.made()
	}
	b.WriteString(n.text)
	if n.tag != "" {
		if len(n.kids) == 0 && isVoid[n.tag] {
			b.WriteString("/>")
			return
		}
		b.WriteString(">")
	}
	for _, k := range n.kids {
		if k.id != "" && nested != nil {
			nested(k)
			continue
		}
		k.write(b, nested)
	}
	if n.tag != "" {
		b.WriteString("</")
		b.WriteString(n.tag)
		b.WriteString(">")
	}
}

// isVoid is the elements that have no end tag in HTML, and SVG's shapes.
var isVoid = map[string]bool{
	"br": true, "hr": true, "img": true, "input": true, "meta": true, "link": true,
	"path": true, "line": true, "rect": true, "circle": true, "ellipse": true, "polyline": true, "polygon": true,
}

var (
	textEscaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", "\x00", "\uFFFD")
	attrEscaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "\x00", "\uFFFD", "\n", "&#10;", "\t", "&#9;")
)

func escapeText(s string) string { return escaped(s, textEscaper) }
func escapeAttr(s string) string { return escaped(s, attrEscaper) }

func escaped(s string, by *strings.Replacer) string {
	if isPlain(s) {
		return s
	}
	return by.Replace(strings.ToValidUTF8(s, "\uFFFD"))
}

// isPlain says of nearly every text that nothing in it needs escaping.
func isPlain(s string) bool {
	for i := range len(s) {
		switch c := s[i]; {
		case c < ' ', c > '~', c == '&', c == '<', c == '>', c == '"':
			return false
		}
	}
	return true
}
