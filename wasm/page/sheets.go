package page

import (
	"slices"
	"strings"

	"shedreckoner/calc/job"
)

// The parts of a surface's, a build-up's, a step's and a cup's sheet that lie on a sheet
// of their own, behind a setup line: their keys end so.
const (
	GetsPart     = "gets"     // which build-up a surface gets
	GroundPart   = "under"    // a surface's ground, and how it lies
	ShapePart    = "shapes"   // which shape
	AboutPart    = "about"    // a build-up's name and usual ground
	BudgetPart   = "budget"   // a build-up's film budget
	TermsPart    = "terms"    // what the film budget is worked out with
	PointsPart   = "points"   // the film step by step, and what its checks rest on
	OnPart       = "on"       // the surfaces that get a build-up
	AddPart      = "add"      // which kind of step
	MorePart     = "more"     // what a step says besides
	ReadingsPart = "readings" // combs and measured films of a step
	WhyPart      = "why"      // the working of a step's figures
	CausesPart   = "causes"   // what else a cup's fault may come from
	TakenPart    = "taken"    // what was taken down of a cup
)

// Sheets that are nobody's part.
const (
	ReadySheet    = "ready"    // the ready sequences
	ShapesSheet   = "shapes"   // every shape, for a new surface
	RemovalsSheet = "removals" // what a grade takes
	PuttiesSheet  = "putties"  // putties mixed by hand
	CupsSheet     = "cups"     // every cup of the log
	RestSheet     = "rest"     // what is done of what is planned
	BuyRestSheet  = "rebuy"    // what the rest takes beyond what is in stock
	CalendarSheet = "calendar" // when the rest can be done
	LaterSheet    = "later"    // the days of it that its sheet has no room for
	HoursSheet    = "hours"    // the hours of work that it goes by
	HandSheet     = "takes"    // what the hand takes of what is planned
	TestsSheet    = "tests"    // the builder's own cup tests
	UnitsSheet    = "units"    // the unit of each measure
	KeptSheet     = "kept"     // where a job is kept
	JobsSheet     = "jobs"     // every job
	JobSheet      = "job"      // one of them, by its number: "job.3"
	NeedSheet     = "need"     // what the need of one thing on the order comes from
	PacksSheet    = "packs"    // the sizes that one thing is sold in
	PartsSheet    = "parts"    // every part in every state, for looking at: its address is #parts, and no link leads there
)

// Part gives the key of an item's part.
func Part(item, part string) string { return item + "." + part }

// stepsInSight are a step's fields that stand on its sheet; all others lie
// behind a setup line.
var stepsInSight = []string{
	"kind", "card", "method", "film", "coats", "putty", "fill-by", "thickness", "columns", "row-gap", "column-gap", "paste",
	"by", "taken", "first", "last", "tool", "swallowed",
}

// IsInSight reports whether a step's field stands on its sheet.
func IsInSight(key string) bool { return slices.Contains(stepsInSight, key) }

// onGroundSheet are the fields of a surface's ground, in their order.
var onGroundSheet = []string{"ground", "prepared", "prepared-grade", "ground-age", "patch", "water", "lies", "inside", "by"}

// GroundFields gives the keys of a surface's fields that say what it is made of,
// how it lies and how it was measured.
func GroundFields() []string { return onGroundSheet }

// sheetsOf gives the sheets that must lie open for a path to be seen, the
// lowest first; none for what stands on a screen or in a list of it.
func sheetsOf(path string) []string {
	parts := strings.Split(path, ".")
	upTo := func(n int) string { return strings.Join(parts[:min(n, len(parts))], ".") }
	item := upTo(2)
	switch parts[0] {
	case "surface":
		return surfaceSheets(item, parts[min(2, len(parts)):], upTo)
	case "buildup":
		if len(parts) > 3 && parts[2] == "step" {
			return stepSheets(upTo(4), parts[4:])
		}
		if job.IsBudget(path) {
			return []string{Part(item, BudgetPart), Part(item, TermsPart)}
		}
		return []string{Part(item, AboutPart)}
	case "cup":
		return []string{item}
	case "done":
		return []string{RestSheet}
	case "test":
		return []string{TestsSheet}
	case "removal":
		return []string{RemovalsSheet}
	case "putty":
		return []string{PuttiesSheet}
	}
	return nil
}

func surfaceSheets(item string, rest []string, upTo func(int) string) []string {
	switch {
	case len(rest) == 0:
	case rest[0] == "cutout":
		return []string{item, upTo(4)}
	case rest[0] == "buildup":
		return []string{item, Part(item, GetsPart)}
	case slices.Contains(onGroundSheet, rest[0]):
		return []string{item, Part(item, GroundPart)}
	}
	return []string{item}
}

func stepSheets(step string, rest []string) []string {
	switch {
	case len(rest) == 0:
	case rest[0] == "comb" || rest[0] == "witness":
		return []string{step, Part(step, ReadingsPart)}
	case rest[0] == "grid" || rest[0] == "spot" || IsInSight(rest[0]):
	default:
		return []string{step, Part(step, MorePart)}
	}
	return []string{step}
}

// hasSheet reports whether an item is opened as a sheet.
func hasSheet(item string) bool {
	list, _ := job.Split(item)
	_, key := job.Split(list)
	return list == "surface" || list == "cup" || list == "card" || key == "cutout" || isStepList(list)
}

// shownIn opens an item, in its list or as a sheet.
func shownIn(s *State, item string) {
	if hasSheet(item) {
		s.raise(item)
		return
	}
	s.opened(item)
}
