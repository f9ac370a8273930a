package material

import "shedreckoner/calc/unit"

// What a run of grades is worked out with.
var (
	// ScratchFactor is how deep a grade scratches, as a share of its mean grain.
	// A third is the safe side for a film.
	ScratchFactor = spec[unit.Factor](1./3, 0.15, 0.50, assumption)
	// RemovalCV is how uneven a hand takes film, from point to point.
	RemovalCV = spec[unit.Share](0.40, 0.20, 0.60, assumption)

	SheetsCoarse = exactly[unit.Factor](5, published)     // wet sheets for a square metre, P400 and coarser: 0.2 m² a sheet
	SheetsFine   = spec[unit.Factor](2.5, 1, 5, practice) // finer than P400, each grade
	WetByHand    = spec(perHour(1.4), perHour(1), perHour(2), calculated)
)

// AskStep is the step between two grades, as a ratio of their mean grains, that
// is asked about; ProposedStep is the widest that is proposed.
const (
	AskStep      unit.Factor = 2.0
	ProposedStep unit.Factor = 1.8
)

// UsualGrades is what most sheds have in the drawer, coarse to fine.
// Source: common practice: the runs in use.
var UsualGrades = []int{40, 60, 80, 120, 180, 220, 320, 400, 600, 800, 1000, 1200, 1500, 2000}

// The grades that sanding is ordered in where no run of grades was typed: on
// filler, and on film between coats.
// Source: common practice: 36–80 shapes, P180–P240 keys a waxed coat.
const (
	GradeOnFiller = 80
	GradeOnFilm   = 180
)

// FinestCoarseSheet is the last grade that wears wet sheets as fast as SheetsCoarse.
const FinestCoarseSheet = 400

// CutCost is what a litre cut off proud spots costs, in litres of filler put on.
var CutCost = spec[unit.Factor](3, 1, 20, assumption)

// The strips along edges, where films run thin and boards dwell.
var (
	EdgeStrip  = exactly(25*unit.Millimetre, practice)
	EdgeFilm   = exactly[unit.Factor](0.7, assumption) // film there ÷ film elsewhere
	EdgeTaking = exactly[unit.Factor](2, assumption)   // removal there ÷ removal elsewhere
)

func wetSheet() *Card {
	return sundry("wet-sheet", "Wet sheets 230 × 280 mm", ByPiece, Sundries{OnFilm: SheetsFine}, "1", "10", "50")
}

func strip() *Card {
	return sundry("strip", "Board strips 70 × 400 mm", ByPiece,
		Sundries{OnFiller: spec[unit.Factor](2, 1, 5, practice), OnFilm: spec[unit.Factor](2, 1, 5, practice)}, "10", "50")
}
