package buildup

import (
	"shedreckoner/calc/unit"
)

// Severity is how firmly a finding stands.
type Severity int

// The severities.
const (
	Note   Severity = iota // worth knowing; nothing is held up
	Ask                    // asked about
	Refuse                 // red until it is mended
)

// Want is what a ground asks for before a layer goes on.
type Want int

// The wants.
const (
	Another   Want = iota // something else in between, or instead: nothing done to the ground helps
	Sanding               // with a last grade between two
	Washing               // washed or wiped
	TestPatch             // a test patch that was logged
	Age                   // since the ground was put on
	Window                // within the ground's recoat window, or sanded
	Dryness               // can't be seen from here: said each time
	Promptly              // within the hour of abrading: said each time
)

// Mend says what would mend a finding: a stable word for the page's sentences.
type Mend string

// The mends.
const (
	EpoxyInstead  Mend = "epoxy-instead"
	EpoxyBetween  Mend = "epoxy-between"
	FillerBetween Mend = "filler-between"
	SealerBetween Mend = "sealer-between"
	PrimerBetween Mend = "primer-between"
	SkimFirst     Mend = "skim-first" // a thin layer first, for the heat
	StripPaint    Mend = "strip-paint"
	EpoxyFilling  Mend = "epoxy-filler-instead"
	SandFirst     Mend = "sand-first"
	OtherGrade    Mend = "other-grade"
	WashFirst     Mend = "wash-first"
	LogTestPatch  Mend = "log-test-patch"
	WaitLonger    Mend = "wait-longer"
	LetDry        Mend = "let-dry"
	CoatAtOnce    Mend = "coat-within-the-hour"
	AddWax        Mend = "add-wax-or-release-film"
	MoreCoats     Mend = "more-coats"
	FewerCoats    Mend = "thicker-coat"
	LessThinner   Mend = "less-thinner"
	OtherWax      Mend = "wax-in-range"
	MoreFilm      Mend = "more-film"
	MoreEvenFilm  Mend = "more-even-film"
	LessFilm      Mend = "less-film"
)

// Mends lists every mend, so that each can be given its sentence.
var Mends = []Mend{
	EpoxyInstead, EpoxyBetween, FillerBetween, SealerBetween, PrimerBetween, SkimFirst, StripPaint, EpoxyFilling,
	SandFirst, OtherGrade, WashFirst, LogTestPatch, WaitLonger, LetDry, CoatAtOnce, AddWax,
	MoreCoats, FewerCoats, LessThinner, OtherWax, MoreFilm, MoreEvenFilm, LessFilm,
}

// Demand is one thing that a ground asks for before a layer goes on.
type Demand struct {
	Want     Want
	Severity Severity // while it isn't met
	Mend     Mend
	Coarsest int       // of Sanding: the last P grade; 0: any
	Finest   int       // likewise
	Least    unit.Time // of Age, at 20 °C
	Unknown  Severity  // of Age, where it isn't said
}

// Fully cured epoxy, and a laminate that epoxy can go on, at 20 °C.
const (
	epoxyCured    = 7 * unit.Day // 5 to 7 in print
	laminateCured = 3 * unit.Day
)

func another(s Severity, m Mend) Demand {
	return Demand{Want: Another, Severity: s, Mend: m}
}

func sanded(coarsest, finest int) Demand {
	return Demand{Want: Sanding, Severity: Refuse, Mend: SandFirst, Coarsest: coarsest, Finest: finest}
}

func aged(least unit.Time, unknown Severity) Demand {
	return Demand{Want: Age, Severity: Refuse, Mend: WaitLonger, Least: least, Unknown: unknown}
}

var (
	keyed    = sanded(80, 180)  // for a bond on polyester
	flatted  = sanded(180, 240) // through the wax
	abraded  = sanded(0, 0)
	washed   = Demand{Want: Washing, Severity: Refuse, Mend: WashFirst}
	wiped    = Demand{Want: Washing, Severity: Note, Mend: WashFirst}
	patched  = Demand{Want: TestPatch, Severity: Refuse, Mend: LogTestPatch}
	ragged   = Demand{Want: TestPatch, Severity: Ask, Mend: LogTestPatch} // solvent rag
	inWindow = Demand{Want: Window, Severity: Refuse, Mend: SandFirst}
	dry      = Demand{Want: Dryness, Severity: Note, Mend: LetDry}
	promptly = Demand{Want: Promptly, Severity: Note, Mend: CoatAtOnce}
)
