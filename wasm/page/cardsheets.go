package page

import (
	"slices"
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
)

// CardsSheet is a shelf of cards that the screen has no room for, by its key:
// "cards.tools".
const CardsSheet = "cards"

// The shelves of cards behind a line of their own: all that isn't put on the boat.
const (
	AdditionsShelf = "additions" // what else goes into a cup, and what cleans it
	SandingShelf   = "sanding"   // abrasives, compound, polish, pads
	ToolsShelf     = "tools"     // tools, masking, protection
	PuttyShelf     = "putty"     // what a putty is mixed from by hand
)

// CardShelves are the shelves, in the order of their lines.
var CardShelves = []string{AdditionsShelf, SandingShelf, ToolsShelf, PuttyShelf}

// ShelfOf is the shelf of a card; "" for what coats and fills: that is on the
// screen itself.
func ShelfOf(c *material.Card) string {
	switch c.Kind {
	case material.Catalyst, material.Thinner, material.WaxSolution, material.Solvent:
		return AdditionsShelf
	case material.Polish:
		return SandingShelf
	case material.Ingredient:
		return PuttyShelf
	case material.Sundry:
		if c.OnFilm.Known {
			return SandingShelf
		}
		return ToolsShelf
	}
	return ""
}

// The parts of a card's sheet that lie behind its lines.
const (
	FilmPart    = "film"    // of one coat or pass, wet
	LeftPart    = "left"    // what must be left of it
	MixPart     = "mix"     // what may go into it
	DosePart    = "dose"    // catalyst over temperature
	MinutesPart = "minutes" // its time in the cup
	FitPart     = "fit"     // when it may be put on
	WaitsPart   = "waits"   // waiting times
	BuyPart     = "buying"  // how much of it is bought
)

// CardPart is a part of a card's sheet, and the keys of its figures.
type CardPart struct {
	Key    string
	Fields []string
}

// CardParts are the parts in the order of their lines. What stands in none of them
// is what a builder changes first: it stands on the sheet itself.
var CardParts = []CardPart{
	{FilmPart, []string{"cured", "cured-sprayed", "usual-film", "coat-least", "coat-ask", "coat-most", "coat-most-rolled", "coat-most-wall", "coat-most-overhead", "pass", "pass-most", "sanded-off"}},
	{LeftPart, []string{"left-least", "left-thinnest", "left-most", "cured-density"}},
	{MixPart, []string{"styrene", "thinner-ask", "thinner-most", "stays", "shrinks", "wax", "hardener-share", "pigment-ask", "pigment-most"}},
	{DosePart, []string{"floor", "ceiling"}},
	{MinutesPart, []string{"gel-time", "gel-at", "gel-with", "gel-mass", "gel-order", "gel-energy", "batch-most"}},
	{FitPart, []string{"surface-least", "surface-most", "humidity-least", "humidity-most", "cure-hours", "patch"}},
	{WaitsPart, []string{"recoat-from", "recoat-to", "sand-from", "polish-from", "launch-from"}},
	{BuyPart, []string{"chance", "chance-at-once", "reserve", "shelf-life", "buy"}},
}

// PartOfCard is the part that a card's field stands in; "" on the sheet itself.
func PartOfCard(field string) string {
	for _, p := range CardParts {
		if slices.Contains(p.Fields, field) {
			return p.Key
		}
	}
	return ""
}

// cardSheets gives the sheets that must lie open for a card's text to be seen.
func cardSheets(s *State, parts []string) []string {
	item := strings.Join(parts[:2], ".")
	sheets := []string{item}
	if c := s.Plan.Job.CardByKey(parts[1]); c != nil {
		if shelf := ShelfOf(&c.Card); shelf != "" {
			sheets = []string{Part(CardsSheet, shelf), item}
		}
	}
	switch {
	case len(parts) == 2:
	case parts[2] == "pack":
		sheets = append(sheets, Part(PacksSheet, parts[1]))
	case parts[2] == "dose":
		sheets = append(sheets, Part(item, DosePart))
	case PartOfCard(parts[2]) != "":
		sheets = append(sheets, Part(item, PartOfCard(parts[2])))
	}
	return sheets
}

// hasCard reports whether there is a card of the key: one that ships, or a copy.
func hasCard(doc job.Document, item string) bool {
	_, key := job.Split(item)
	_, ships := material.Find(key)
	return ships || doc.Holds(item)
}
