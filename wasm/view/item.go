package view

import (
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/words"
)

// itemLine is the line that opens an item: its name, and in a region of its
// own what it comes to.
func itemLine(path string, open bool, name, sum string) html {
	return el("button", a("class", "line", "type", "button", "id", path, "data-do", "open", "data-path", path, "aria-expanded", yesNo(open)),
		region("name-"+path, "span", a("class", "name"), txt(name)),
		region("sum-"+path, "span", a("class", "sum"), txt(sum)))
}

// itemTools copies, moves and removes an item of a list.
func itemTools(path string, at, count int) html {
	return markup.Kept("tools-"+path, itemPlace{path, at == 0, at == count-1}, func(id string, of itemPlace) html {
		tools := []html{action("copy", of.path, "", "Copy", "quiet")}
		if !of.isFirst {
			tools = append(tools, action("move", of.path, "up", words.MoveUp, "quiet"))
		}
		if !of.isLast {
			tools = append(tools, action("move", of.path, "down", words.MoveDown, "quiet"))
		}
		tools = append(tools, action("remove", of.path, "", words.Remove, "quiet"))
		return region(id, "div", a("class", "itemtools"), tools...)
	})
}

// itemPlace is which item of a list is meant, and whether it can be moved.
type itemPlace struct {
	path            string
	isFirst, isLast bool
}
