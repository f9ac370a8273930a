package view

import (
	"strings"

	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// sheetOf makes the uppermost sheet; nothing where none lies open.
func sheetOf(s *page.State) shown {
	kind, _, _ := strings.Cut(s.Sheet(), ".")
	if kind == "menu" {
		return menu(s)
	}
	if make := cupSheets[kind]; make != nil {
		return make(s)
	}
	return shown{}
}

// laid is a sheet with its header: where the builder is, undo, and the way back.
func laid(s *page.State, sheet shown) html {
	if s.Sheet() == "" {
		return nothing
	}
	return join(
		el("div", a("class", "sheethead"),
			el("h2", a("id", page.SheetHeading, "tabindex", "-1"), txt(sheet.Title)),
			undoTool(s, "sheet-undo"),
			el("button", a("class", "tool", "id", "sheet-close", "type", "button", "data-do", "back", "data-path", "", "aria-label", words.Close), txt("✕"))),
		el("div", a("class", "sheetbody"), sheet.Body))
}

// menu is the way to all that isn't one of the five screens.
func menu(s *page.State) shown {
	redo := a("class", "quiet", "id", "tool-redo", "type", "button", "data-do", "redo", "data-path", "")
	if len(s.Slot().Redo) == 0 {
		redo = append(redo, a("aria-disabled", "true")...)
	}
	clearing := nothing
	if s.InDemo {
		clearing = join(el("p", a("class", "hint"), txt(words.MadeUpLong)), action("clear", "", "", words.ClearMadeUp, "quiet"))
	}
	return shown{Title: words.Menu, Body: el("div", a("class", "menu"),
		el("button", redo, txt(words.Redo)),
		action("go", "cards", "", words.Cards, "quiet"),
		action("go", "settings", "", words.Settings, "quiet"),
		action("go", "sources", "", words.Sources, "quiet"),
		clearing)}
}
