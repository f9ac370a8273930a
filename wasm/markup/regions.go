package markup

import (
	"maps"
	"strings"
)

// Page is a page cut into its regions.
type Page struct {
	root     *region
	regions  map[string]*region // by id
	Controls map[string]Control // by path
	Repeats  []string           // ids that stand twice, but inside what was taken over: a bug in the views
}

type region struct {
	node     *node
	key      any    // of a Kept region
	own      string // its markup, nested regions left out but for a mark
	controls map[string]Control
	nested   []*region
}

// Patch is a region to be replaced.
type Patch struct {
	ID   string
	HTML string // the whole element, its own tag included
}

// Cut makes a page of a root region.
func Cut(root HTML) *Page { return new(Page).Next(root) }

// Next cuts another page, as Cut does, and takes over from this one the Kept
// regions with equal keys. The two pages share them.
func (p *Page) Next(root HTML) *Page {
	if root.node == nil || root.node.id == "" {
		panic("markup: a page has one root, a region")
	}
	c := cutter{page: &Page{Controls: map[string]Control{}, regions: make(map[string]*region, len(p.regions))}, before: p}
	c.page.root = c.cut(root.node)
	return c.page
}

type cutter struct{ page, before *Page }

func (c *cutter) cut(n *node) *region {
	if c.page.regions[n.id] != nil {
		c.page.Repeats = append(c.page.Repeats, n.id)
	}
	r := c.before.regions[n.id]
	size := 0
	if r != nil {
		size = len(r.own)
	}
	switch {
	case n.kept == nil:
		r = c.cutNow(n, size)
	case r != nil && r.key != nil && r.key == n.kept.key:
		n.kept.isMade(r.node)
		c.takeOver(r)
	default:
		r = c.cutNow(n.made(), size)
		r.key = n.kept.key
	}
	c.page.regions[n.id] = r
	return r
}

// takeOver takes what lies in a region of the page before.
func (c *cutter) takeOver(r *region) {
	maps.Copy(c.page.Controls, r.controls)
	for _, inner := range r.nested {
		c.page.regions[inner.node.id] = inner
		c.takeOver(inner)
	}
}

// cutNow cuts a region that will be about as long as it was.
func (c *cutter) cutNow(n *node, size int) *region {
	r := &region{node: n}
	var b strings.Builder
	b.Grow(size)
	n.write(&b, func(inner *node) {
		b.WriteString("<!")
		b.WriteString(inner.id)
		b.WriteString(">")
		r.nested = append(r.nested, c.cut(inner))
	})
	r.own = b.String()
	r.collect(n)
	maps.Copy(c.page.Controls, r.controls)
	return r
}

// collect takes the values of the controls that belong to the region itself.
func (r *region) collect(n *node) {
	for _, k := range n.kids {
		if k.id != "" {
			continue
		}
		if k.control != nil {
			if r.controls == nil {
				r.controls = map[string]Control{}
			}
			r.controls[k.control.path] = k.control.state
		}
		r.collect(k)
	}
}

// HTML is the whole page.
func (p *Page) HTML() string { return HTML{p.root.node}.String() }

// Patches lists the outermost regions that differ from the page before, in
// their order. With nothing on the page before it is the root.
func (p *Page) Patches(before *Page) []Patch {
	if before.root == nil {
		return []Patch{p.root.patch()}
	}
	return p.root.patches(before.root, nil)
}

func (r *region) patches(before *region, list []Patch) []Patch {
	if r == before { // taken over
		return list
	}
	if r.own != before.own {
		return append(list, r.patch())
	}
	for i, inner := range r.nested { // equal marks: the same ids in the same order
		list = inner.patches(before.nested[i], list)
	}
	return list
}

func (r *region) patch() Patch {
	return Patch{r.node.id, HTML{r.node}.String()}
}
