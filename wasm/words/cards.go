package words

import (
	"strconv"
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// General stands over the cards.
const General = "These figures are general: none was tried in a cup. Check your tin, and type what its sheet says: your figure takes over."

// OwnCard marks a copy that the builder made.
const OwnCard = "your copy"

// named is what a key is called.
type named struct{ key, name string }

func nameIn(list []named, key string) string {
	for _, n := range list {
		if n.key == key {
			return n.name
		}
	}
	return ""
}

var cardShelves = []named{
	{"additions", "Catalyst, thinner, wax, solvent"}, {"sanding", "Sanding and polishing"},
	{"tools", "Tools, masking, protection"}, {"putty", "For putty mixed by hand"},
}

// CardShelf is what a shelf of cards is called.
func CardShelf(shelf string) string { return nameIn(cardShelves, shelf) }

// ShelfLine leads to a shelf of cards.
func ShelfLine(shelf string, n int) string {
	return CardShelf(shelf) + ": " + Counted(n, "card", "cards")
}

var cardParts = []named{
	{"film", "film of a coat or pass"}, {"left", "what must be left"}, {"mix", "what may go in"}, {"dose", "catalyst by temperature"},
	{"minutes", "minutes in the cup"}, {"fit", "when it may go on"}, {"waits", "waiting times"}, {"buying", "how much is bought"},
}

// CardPart heads the sheet of one part of a card.
func CardPart(card, part string) string { return card + ": " + nameIn(cardParts, part) }

// CardPartLine leads to a part of a card, with its main figures.
func CardPartLine(part, figures string) string {
	name := nameIn(cardParts, part)
	if figures != "" {
		name += ", " + figures
	}
	return name
}

// Span writes what lies between two figures, of which either may be missing; the
// unit that they share once.
func Span(least, most string) string {
	number, unit, _ := strings.Cut(least, "\u00a0")
	switch {
	case unit != "" && strings.HasSuffix(most, "\u00a0"+unit):
		return number + " to " + most
	case least == "":
		return most
	case most == "":
		return least
	}
	return least + " to " + most
}

// UpTo is the most of something; "" where nothing is known.
func UpTo(most, of string) string {
	if most == "" {
		return ""
	}
	return "up to " + most + of
}

// TimedAt is a gel time with the temperature that it was timed at.
func TimedAt(time, at string) string {
	if time == "" || at == "" {
		return time
	}
	return time + " at " + at
}

// EnoughOften is in how many jobs what is bought is enough; "" where nothing says so.
func EnoughOften(share string) string {
	if share == "" {
		return ""
	}
	return "enough in " + share + " of jobs"
}

// ACoat is the film that one coat may have.
func ACoat(film string) string { return film + " a coat" }

// APass is the largest pass of a filler.
func APass(film string) string { return "up to " + film + " a pass" }

// What stands on a card and on its parts.
const (
	CopyOfMyOwn    = "Make a copy of my own"
	FromTheTin     = "from the tin"
	NothingShips   = "No figure is supplied here. Type what the tin says."
	MarkPractice   = "Common practice: check your tin."
	MarkAssumption = "An assumption: log your own."
	MarkFromMemory = "Published, from memory: check your tin."
	PacksSold      = "Packs sold"
	OncePriced     = "Once one size has a price, only priced sizes are bought."
	InTheShop      = "in the shop"
	DoseBySurface  = "Catalyst by the temperature of the surface"
	DoseShips      = "As supplied (common practice, no maker's sheet):"
	DoseOwn        = "The maker's table, from cold to warm. It replaces the one supplied, all of it:"
)

// UpToThinner is the most thinner; "" where it isn't known.
func UpToThinner(most string) string { return UpTo(most, " thinner") }

// CardMark says how far a card's figure can be trusted.
func CardMark(m source.Mark) string {
	switch m {
	case source.CommonPractice:
		return MarkPractice
	case source.Assumption:
		return MarkAssumption
	case source.Published:
		return "Published."
	case source.FromMemory:
		return MarkFromMemory
	}
	return Capital(m.String()) + "."
}

// UsualRange is the range that a card's figure usually lies in.
func UsualRange(low, high string) string { return " Usual: " + low + " to " + high + "." }

// BareSize is what a bare pack size is read in.
func BareSize(b material.Basis) string {
	switch b {
	case material.ByMass:
		return "kg"
	case material.ByVolume:
		return "L"
	case material.BySet:
		return "L of mixed parts"
	case material.ByLength:
		return "m"
	}
	return "pieces"
}

// PackNumber labels a pack size by its place.
func PackNumber(n int, b material.Basis) string {
	return "Pack " + strconv.Itoa(n) + ", " + BareSize(b)
}

// RowNumber names a row of a table by its place.
func RowNumber(n int) string { return "Row " + strconv.Itoa(n) }

// DoseAt is a row of a table of doses.
func DoseAt(r material.DoseRow, scale unit.Scale) string {
	return unit.Write(float64(r.Surface), scale, 3) + ": " + ByMass(unit.Write(float64(r.Catalyst), unit.InPercent, 3))
}

// OddRow asks about a row of the builder's own table.
func OddRow(n int, isUnusual bool) string {
	if isUnusual {
		return RowNumber(n) + " is outside the usual 0.5 to 4 %. A slip?"
	}
	return RowNumber(n) + " asks for more catalyst than the colder row before it. A slip?"
}

// ShortName is a shipped card's name without what it is for; an own name stays, and one that would stand for two cards.
func ShortName(card *job.Card) string {
	short, isShipped := cutName(card.Name), false
	for _, shipped := range material.Cards {
		switch {
		case shipped.Key == card.ShippedKey():
			isShipped = shipped.Name == card.Name
		case cutName(shipped.Name) == short:
			return card.Name
		}
	}
	if !isShipped {
		return card.Name
	}
	return short
}

// ChosenCard is the material that a step has, if any.
func ChosenCard(card *job.Card) string {
	if card == nil {
		return ChooseMaterial
	}
	return ShortName(card)
}

// ShortMethod is a method's name without what it is for.
func ShortMethod(name string) string {
	short, _, _ := strings.Cut(name, ",")
	return short
}

func cutName(name string) string {
	for _, from := range []string{",", " (", " and ", " for the ", " in "} {
		name, _, _ = strings.Cut(name, from)
	}
	if rest, isLong := strings.CutPrefix(name, "Sanding "); isLong {
		return Capital(rest)
	}
	return name
}

// StepTitle names a step by its material; by what it does where it has none, and where that isn't plain from it.
func StepTitle(kind *job.StepKind, card *job.Card) string {
	switch {
	case card == nil:
		return kind.Name
	case plan.KindOf(kind).IntoPores:
		return kind.Name + ": " + ShortName(card)
	}
	return ShortName(card)
}
