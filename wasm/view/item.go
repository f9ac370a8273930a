package view

import "shedreckoner/wasm/words"

// itemLine is the line that opens an item: its name, and in a region of its
// own what it comes to.
func itemLine(path string, open bool, name, sum string) html {
	return el("button", a("class", "line", "type", "button", "id", path, "data-do", "open", "data-path", path, "aria-expanded", yesNo(open)),
		region("name-"+path, "span", a("class", "name"), txt(name)),
		region("sum-"+path, "span", a("class", "sum"), txt(sum)))
}

func itemTools(path string, at, count int) html {
	tools := []html{action("copy", path, "", "Copy", "quiet")}
	if at > 0 {
		tools = append(tools, action("move", path, "up", words.MoveUp, "quiet"))
	}
	if at < count-1 {
		tools = append(tools, action("move", path, "down", words.MoveDown, "quiet"))
	}
	tools = append(tools, action("remove", path, "", words.Remove, "quiet"))
	return el("div", a("class", "itemtools"), tools...)
}
