package words

import (
	"strconv"
	"strings"

	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
)

// The order: a shopping list, and the sheet of one thing on it.
const (
	OrderTotal      = "To pay"
	OrderNoPrices   = "no prices yet"
	OrderEmpty      = "Nothing to order yet. The list follows from measured surfaces that have a build-up."
	MeasureSurfaces = "Measure surfaces"
	BuyFirst        = "Buy before you start"
	FromShelf       = "From the shelf"
	ShareList       = "Share the list"
	CopyText        = "Copy as text"
	SaveCSV         = "Save as CSV"
	PrintList       = "Print"
	NothingToBuy    = "Nothing to buy"
	StillWorking    = "Working out what may turn out differently: until then the list is as planned."
	TooLarge        = "This job is too large to work out how likely the list is to be enough. It is as planned, with nothing to spare: add your own."
	AirFed          = "Sprayed two-pack topcoat: no cartridge mask protects against it, so none is on the list. It takes an air-fed mask."
	OrderFootnote   = "An estimate. The maker's sheet overrules it."
	HowSimulated    = "Areas, films, losses and what is sanded off are drawn at random 10\u202f000 times, each within what is known of it. The same hand errs the same way over the whole job."
	WayStart        = "Before you start"
	WayOnce         = "All at once"
	WayStartWhy     = "The first cups show what your hand takes. The rest is bought then, of the same batch, with what is kept for repairs."
	WayOnceWhy      = "With a reserve for repairs: a later batch of a colour never quite matches."
	WayOnceElseWhy  = "Nothing is bought again."
	CommonPractice  = "common practice"
	MovesMost       = "What moves the need most"
	InSomeSizes     = "Only the sizes with a price were looked at."
	SheetHero       = "to buy"
	NothingMore     = "nothing more"
	SheetCovered    = "The shelf covers it."
	SheetNeed       = "needed"
	SheetStock      = "in stock"
	SheetLeft       = "likely left"
	SheetKeeps      = "Kept for repairs, of the same batch"
	SheetPlanned    = "Need as planned"
	SheetByVolume   = "Need as planned, by volume"
	NeedName        = "Need"
	StopsTheOrder   = "A build-up doesn't hold:"
	StopsFix        = "What it would take is on the list all the same: put the build-up right before you buy."
)

// PlannedLikely is a line's small print: what the plan needs, and what it may take.
func PlannedLikely(planned, low, high string) string {
	if low == "" {
		return "plan " + planned
	}
	return "plan " + planned + ", likely " + low + " to " + high
}

// NeedFrom leads to what a need comes from.
func NeedFrom(planned string) string { return planned + " as planned: where it goes" }

// NeedOf heads what the need of a thing comes from.
func NeedOf(name string) string { return name + ": the need" }

// PacksOf heads the sizes that a thing is sold in.
func PacksOf(name string) string { return name + ": packs" }

// SoldIn is the sizes that a thing is sold in, and how many of them have a price.
func SoldIn(sizes []string, unit string, priced int) string {
	if len(sizes) == 0 {
		return "no packs known"
	}
	text := "packs of " + strings.Join(sizes, ", ") + " " + unit
	if len(sizes) == 1 && sizes[0] == "1" && unit == BareSize(material.ByPiece) {
		text = "by the piece"
	}
	switch priced {
	case 0:
		return text + ", no price yet"
	case len(sizes):
		return text + ", all priced"
	}
	return text + ", " + strconv.Itoa(priced) + " priced"
}

// ShelfHas is the small print of what needn't be bought.
func ShelfHas(needs, has string) string { return "needs " + needs + ", has " + has }

// Unpriced says how much of the list has no price.
func Unpriced(n int) string {
	if n == 0 {
		return ""
	}
	return "+ " + strconv.Itoa(n) + " unpriced"
}

// UnpricedWhole is the same as a sentence.
func UnpricedWhole(n int) string {
	switch n {
	case 0:
		return ""
	case 1:
		return "One more thing to buy has no price yet."
	}
	return strconv.Itoa(n) + " more things to buy have no price yet."
}

// InJobs counts a chance in jobs: "1 job in 6".
func InJobs(chance float64) string {
	switch {
	case chance < 0.005:
		return "fewer than 1 job in 200"
	case chance >= 0.45:
		return "1 job in 2, or more"
	}
	return "1 job in " + strconv.Itoa(int(1/chance+0.5))
}

// RunsShort heads the verdict on a colour that is bought before the start.
func RunsShort(what string) string { return what + " may run short:" }

// AndLast sets names in a row, as a sentence begins with them.
func AndLast(names []string) string {
	text := ""
	for i, name := range names {
		switch {
		case i == 0:
			text = name
		case i < len(names)-1:
			text += ", " + lower(name)
		default:
			text += " and " + lower(name)
		}
	}
	return text
}

// RunsShortIn says how likely, and what to do about it.
func RunsShortIn(jobs string) string {
	return jobs + ". Weigh the first two cups: the Log then says whether more is needed, of the same batch."
}

// BoughtBox names a line's box to tick.
func BoughtBox(what string) string { return what + ": in the basket" }

// TickedFor says what was ticked when a line has changed since.
func TickedFor(packs string) string { return "was ticked for " + packs }

// ShortIn is the chance of running short, of one way to buy.
func ShortIn(jobs string) string { return "runs short in " + jobs }

// LeftOver is what a way to buy likely leaves, its worth, and how long it keeps.
func LeftOver(amount, worth, keeps string) string {
	text := "likely left: " + amount
	if worth != "" {
		text += ", worth " + worth
	}
	if keeps != "" {
		text += ", good for " + keeps
	}
	return text
}

// ForRepairs says what a way to buy keeps.
func ForRepairs(amount string) string { return amount + " of it for repairs" }

// Months writes a time on the shelf.
func Months(n int) string {
	if n == 1 {
		return "a month"
	}
	return strconv.Itoa(n) + " months"
}

// PerCoat is what a coat takes, and PerCoatTrade the trade's usual figure for it.
func PerCoat(takes string) string { return takes + " a coat:" }

// PerCoatTrade names the coat, too.
func PerCoatTrade(low, high, mark, coat string) string {
	return "usual in the trade: " + low + " to " + high + " (" + mark + "). " + coat + "."
}

// PerCoatIntended follows a coat outside the trade's figure once its builder has said that it is meant so.
const PerCoatIntended = "Outside that, as you said."

// AsIntended answers what is asked about such a coat.
const AsIntended = "It is intended"

// PerCoatOdd asks about a coat that lies outside.
func PerCoatOdd(isMore bool) string {
	if isMore {
		return "More than usual: is the film meant so thick, the loss so large?"
	}
	return "Less than usual: is the film meant so thin?"
}

// OffBy says how long masking may stay on, and in heat.
func OffBy(days, heat string) string {
	return "Off within " + days + ", at 40 °C within " + heat + ": after that paper tape and film bake on. Check your roll."
}

// ForPaper is the plan's totals below a printed list.
func ForPaper(bought, kept, surfaces, area string) string {
	return "Mass bought: " + bought + ". Mass that stays on the boat: " + kept + ". Surfaces: " + surfaces + ", " + area + " in all."
}

// The order as a list and as a table.
const (
	OrderList  = "Order list"
	ColumnBuy  = "Buy"
	ColumnCost = "Cost"
)

// EnoughIn labels the amount that is enough in so many of a hundred jobs.
func EnoughIn(chance unit.Share) string { return "enough in " + OfJobs(chance) }

// WithRepairs says that what is kept for repairs is in an amount too.
func WithRepairs(what string) string { return what + ", and repairs" }

// CupsHaveTaken says what went out of the stock with logged cups.
func CupsHaveTaken(amount string) string {
	return "Logged cups have taken " + amount + " of what was counted."
}

// InStock labels the stock of a grade, or of what is counted in a basis.
func InStock(of string) string { return "In stock, " + of }
