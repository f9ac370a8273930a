package view

// wideTable is a table that may be wider than the glass: it has a name, and keys
// scroll it once the focus is on it.
func wideTable(id, name string, parts ...html) html {
	return el("div", a("class", "scroller", "id", id, "role", "region", "aria-label", name, "tabindex", "0"), el("table", nil, join(el("caption", a("class", "unseen"), txt(name)), join(parts...))))
}
