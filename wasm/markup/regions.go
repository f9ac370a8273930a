package markup

import "strings"

// Page is a page cut into its regions.
type Page struct {
	root     *region
	Controls map[string]Control // by path
	Repeats  []string           // ids that stand twice: a mistake of the views
}

type region struct {
	node   *node
	own    string // its markup, nested regions left out but for a mark
	nested []*region
}

// Patch is a region to be replaced.
type Patch struct {
	ID   string
	HTML string // the whole element, its own tag included
}

// Cut makes a page of a root region.
func Cut(root HTML) *Page {
	if root.node == nil || root.node.id == "" {
		panic("markup: a page has one root, a region")
	}
	p := &Page{Controls: map[string]Control{}}
	seen := map[string]bool{}
	p.root = p.cut(root.node, seen)
	return p
}

func (p *Page) cut(n *node, seen map[string]bool) *region {
	if seen[n.id] {
		p.Repeats = append(p.Repeats, n.id)
	}
	seen[n.id] = true
	r := &region{node: n}
	var b strings.Builder
	n.write(&b, func(inner *node) {
		b.WriteString("<!" + inner.id + ">")
		r.nested = append(r.nested, p.cut(inner, seen))
	})
	r.own = b.String()
	p.collect(n)
	return r
}

// collect takes the values of the controls that belong to the region itself.
func (p *Page) collect(n *node) {
	for _, k := range n.kids {
		if k.id != "" {
			continue
		}
		if k.path != "" {
			p.Controls[k.path] = k.state
		}
		p.collect(k)
	}
}

// HTML is the whole page.
func (p *Page) HTML() string { return HTML{p.root.node}.String() }

// Patches lists the outermost regions that differ from the page before, in
// their order. Without a page before it is the root.
func (p *Page) Patches(before *Page) []Patch {
	if before == nil {
		return []Patch{p.root.patch()}
	}
	return p.root.patches(before.root, nil)
}

func (r *region) patches(before *region, list []Patch) []Patch {
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
