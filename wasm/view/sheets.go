package view

import (
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// sheetOf makes the uppermost sheet; nothing where none lies open.
func sheetOf(s *page.State) shown {
	kind, key, _ := strings.Cut(s.Sheet(), ".")
	if make := sheets[kind]; make != nil {
		return make(s)
	}
	if make := sheetsOf[kind]; make != nil {
		return make(s, key)
	}
	item, part := job.Split(s.Sheet())
	for _, p := range page.CardParts {
		if kind == "card" && p.Key == part {
			return cardPart(s, item, p)
		}
	}
	for _, p := range itemSheets {
		if p.of == kind && p.part == part {
			return p.sheet(s, item)
		}
	}
	for _, p := range itemSheets {
		if list, _ := job.Split(s.Sheet()); p.part == "" && p.of == listName(list) {
			return p.sheet(s, s.Sheet())
		}
	}
	if make := cupSheets[kind]; make != nil {
		return make(s)
	}
	return shown{}
}

// sheets are those that there is one of, by their kind.
var sheets = map[string]func(*page.State) shown{
	"menu": menu, page.CupsSheet: cupsSheet, page.RestSheet: restSheet, page.BuyRestSheet: buyRestSheet, page.CalendarSheet: calendarSheet, page.HoursSheet: hoursSheet, page.LaterSheet: laterSheet, page.TestsSheet: testsSheet, page.HandSheet: handTakesSheet,
	page.UnitsSheet: unitsSheet, page.KeptSheet: keptSheet, page.JobsSheet: jobsSheet, page.ShapesSheet: shapesSheet,
	page.ReadySheet: readySheet, page.RemovalsSheet: removalsSheet, page.PuttiesSheet: puttiesSheet, page.PartsSheet: partsSheet,
}

// sheetsOf are those of a thing on the order or of a job, by their kind; the key says of which.
var sheetsOf = map[string]func(s *page.State, key string) shown{
	"order": orderSheet, page.NeedSheet: needSheet, page.PacksSheet: packsSheet, page.JobSheet: jobSheet,
	page.CardsSheet: shelfSheet,
}

// itemSheets are the sheets of items and of their parts: of what, the part, and
// what it shows.
var itemSheets = []struct {
	of, part string
	sheet    func(s *page.State, item string) shown
}{
	{"surface", "", surfaceSheet},
	{"surface", page.ShapePart, shapeSheet},
	{"surface", page.GetsPart, getsSheet},
	{"surface", page.GroundPart, groundSheet},
	{"cutout", "", cutoutSheet},
	{"cup", "", loggedCup},
	{"cup", page.CausesPart, causesSheet},
	{"cup", page.TakenPart, takenSheet},
	{"card", "", cardSheet},
	{"buildup", page.AddPart, addStepSheet},
	{"buildup", page.AboutPart, aboutSheet},
	{"buildup", page.OnPart, onSheet},
	{"buildup", page.BudgetPart, budgetSheet},
	{"buildup", page.PointsPart, pointsSheet},
	{"buildup", page.TermsPart, termsSheet},
	{"step", "", stepSheet},
	{"buildup", page.MorePart, moreSheet},
	{"buildup", page.ReadingsPart, readingsSheet},
	{"buildup", page.WhyPart, whySheet},
}

// listName is the last word of a list's path.
func listName(list string) string {
	_, name := job.Split(list)
	return name
}

// laid is a sheet with its header: where the builder is, undo, and the way back.
func laid(s *page.State, sheet shown) html {
	switch {
	case s.Sheet() != "":
	case sheet.Body.IsEmpty():
		return nothing
	default: // beside a list of which nothing is open
		return el("div", a("class", "sheetbody"), sheet.Body)
	}
	return join(
		markup.Kept("sheethead", head{sheet.Title, canUndo(s)}, sheetHead),
		el("div", a("class", "sheetbody"), sheet.Body))
}

// head is all that a sheet's header shows.
type head struct {
	title   string
	canUndo bool
}

func sheetHead(id string, of head) html {
	return region(id, "div", a("class", "sheethead"),
		el("h2", a("id", page.SheetHeading, "tabindex", "-1"), txt(of.title)),
		undoTool("sheet-undo", of.canUndo),
		el("button", a("class", "tool", "id", "sheet-close", "type", "button", "data-do", "back", "data-path", "", "aria-label", words.Close), txt("✕")))
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
		action("sheet", page.JobsSheet, "", words.Jobs, "quiet"),
		action("go", "cards", "", words.Cards, "quiet"),
		action("go", "settings", "", words.Settings, "quiet"),
		action("go", "sources", "", words.Sources, "quiet"),
		clearing)}
}
