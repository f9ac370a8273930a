package buildup

import (
	"shedreckoner/calc/unit"
)

// Severity is how serious a finding is.
type Severity int

// The severities.
const (
	Note   Severity = iota // worth knowing; nothing is held up
	Ask                    // asked about
	Refuse                 // red until it is fixed
)

// Requirement is what a ground needs before a layer goes on.
type Requirement int

// The requirements.
const (
	Another   Requirement = iota // something else in between, or instead: nothing done to the ground helps
	Sanding                      // with a last grade between two
	Washing                      // washed or wiped
	TestPatch                    // a test patch that was logged
	Age                          // since the ground was put on
	Window                       // within the ground's recoat window, or sanded
	Dryness                      // can't be checked from here: said each time
	Promptly                     // within the hour of abrading: said each time
)

// Fix says what would fix a finding: a stable word for the page's sentences.
type Fix string

// The fixes.
const (
	EpoxyInstead  Fix = "epoxy-instead"
	EpoxyBetween  Fix = "epoxy-between"
	FillerBetween Fix = "filler-between"
	SealerBetween Fix = "sealer-between"
	PrimerBetween Fix = "primer-between"
	SkimFirst     Fix = "skim-first" // a thin layer first, for the heat
	StripPaint    Fix = "strip-paint"
	EpoxyFilling  Fix = "epoxy-filler-instead"
	SandFirst     Fix = "sand-first"
	OtherGrade    Fix = "other-grade"
	WashFirst     Fix = "wash-first"
	LogTestPatch  Fix = "log-test-patch"
	WaitLonger    Fix = "wait-longer"
	LetDry        Fix = "let-dry"
	CoatAtOnce    Fix = "coat-within-the-hour"
	AddWax        Fix = "add-wax-or-release-film"
	MoreCoats     Fix = "more-coats"
	FewerCoats    Fix = "thicker-coat"
	LessThinner   Fix = "less-thinner"
	OtherWax      Fix = "wax-in-range"
	MoreFilm      Fix = "more-film"
	MoreEvenFilm  Fix = "more-even-film"
	LessFilm      Fix = "less-film"
)

// Fixes lists every fix, so that each can be given its sentence.
var Fixes = []Fix{
	EpoxyInstead, EpoxyBetween, FillerBetween, SealerBetween, PrimerBetween, SkimFirst, StripPaint, EpoxyFilling,
	SandFirst, OtherGrade, WashFirst, LogTestPatch, WaitLonger, LetDry, CoatAtOnce, AddWax,
	MoreCoats, FewerCoats, LessThinner, OtherWax, MoreFilm, MoreEvenFilm, LessFilm,
}

// Demand is one requirement of a ground before a layer goes on, and how firmly it
// is made.
type Demand struct {
	Requirement Requirement
	Severity    Severity // while it isn't met
	Fix         Fix
	Coarsest    int       // of Sanding: the last P grade; 0: any
	Finest      int       // likewise
	Least       unit.Time // of Age, at 20 °C
	Unknown     Severity  // of Age, where it isn't said
}

// Fully cured epoxy, and a laminate that epoxy can go on, at 20 °C.
const (
	epoxyCured    = 7 * unit.Day // 5 to 7 in print
	laminateCured = 3 * unit.Day
)

var (
	keyed    = Demand{Requirement: Sanding, Severity: Refuse, Fix: SandFirst, Coarsest: 80, Finest: 180}  // for a bond on polyester
	flatted  = Demand{Requirement: Sanding, Severity: Refuse, Fix: SandFirst, Coarsest: 180, Finest: 240} // through the wax
	abraded  = Demand{Requirement: Sanding, Severity: Refuse, Fix: SandFirst}
	washed   = Demand{Requirement: Washing, Severity: Refuse, Fix: WashFirst}
	wiped    = Demand{Requirement: Washing, Severity: Note, Fix: WashFirst}
	patched  = Demand{Requirement: TestPatch, Severity: Refuse, Fix: LogTestPatch}
	ragged   = Demand{Requirement: TestPatch, Severity: Ask, Fix: LogTestPatch} // solvent rag
	inWindow = Demand{Requirement: Window, Severity: Refuse, Fix: SandFirst}
	dry      = Demand{Requirement: Dryness, Severity: Note, Fix: LetDry}
	promptly = Demand{Requirement: Promptly, Severity: Note, Fix: CoatAtOnce}
)
