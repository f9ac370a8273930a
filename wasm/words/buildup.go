package words

import (
	"strconv"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/ready"
)

// The Build-up screen and a step's sheet.
const (
	Done              = "Done"
	BuildupIs         = "A build-up is the steps a surface gets, in order: fill, coat, sand, polish. Start from a usual one and change what differs."
	UnnamedBuildup    = "Unnamed build-up"
	AnotherBuildup    = "+ another"
	ReadySequences    = "Start from"
	AddAStep          = "Add a step"
	WhichStep         = "Which step?"
	FilmBudget        = "Film budget"
	StepByStep        = "the film step by step, and what the checks rest on"
	AssumedTerms      = "shares, unevenness and edges as assumed"
	DrawnShorter      = "drawn shorter"
	DrawnThicker      = "drawn thicker"
	LeftAtTheEnd      = "Left at the end"
	StackScale        = "Films are drawn to one scale: a layer with a break in it is thicker, a hairline thinner."
	WaitsForASize     = "Amounts wait for a size that can't be read."
	WaitsForASurface  = "– (a size can't be read)"
	OnNoSurface       = "on no surface yet"
	WhichSurfaces     = "Which surfaces get it?"
	NoSurfaceYet      = "No surface yet. Measure one on Surfaces."
	NameAndGround     = "Name and ground"
	AsPlanned         = "as planned"
	NoStepYet         = "No step yet."
	NotPlannedYet     = "not planned yet"
	MoreOfTheStep     = "More of this step"
	Readings          = "Readings"
	EachCoat          = "each coat, on the comb"
	EachCoatWithLoss  = "a coat, losses included"
	Material          = "material"
	FilmWetAll        = "Film, wet"
	FilmCuredAll      = "Film, cured"
	FilmWetEach       = "Each coat, wet"
	FilmCuredEach     = "Each coat, cured"
	CoatsName         = "Coats"
	AsNeeded          = "as needed"
	OwnRemovals       = "what a grade takes: assumed"
	OwnRemovalsTitle  = "What a grade takes"
	HandMixed         = "putty mixed by hand: none"
	HandMixedTitle    = "Putty mixed by hand"
	NoReadings        = "comb readings: none yet"
	NoCombHere        = "measured film: none yet"
	BoughtFiller      = "bought filler"
	StillWaits        = "Waits for: "
	Holds             = "Holds:"
	DoesNotHold       = "Doesn't hold:"
	Check             = "Check:"
	NothingChecked    = "Nothing to check yet."
	NothingRed        = "nothing to put right."
	AllLayers         = "Film left at the end, all layers"
	AreaName          = "Area"
	NoThinner         = "no thinner"
	OpenToAir         = "open to the air"
	UnderReleaseFilm  = "under release film"
	Once              = "once"
	MixedInCups       = "A cup of it: "
	LastWetFirstDry   = "Read the comb within seconds: the last tooth that is wet, the first that stayed dry."
	MeasuredFilmWords = "Cured film of the layer after this step, as measured"
	CuredAll          = "cured, all coats"
	InAll             = "in all"
	ToMix             = "to mix"
	PutOn             = "put on"
	StaysOn           = "stays on"
	DiscsAndSheets    = "discs and sheets"
	OfWork            = "of work"
	Dust              = "of dust"
	EveryFigure       = "Every figure"
	ThisLayer         = "This layer"
	Stop              = "Stop:"
	WaitNotSaid       = "waiting time not set"
)

// CupsOf says what the cups of a step hold; beside it stands how many there are.
func CupsOf(count, each string) string {
	if count == "1" {
		return "cup of " + each
	}
	return "cups of " + each
}

// EachOf says that a comb should read so on each of several coats.
func EachOf(n int) string { return "each of " + strconv.Itoa(n) + " coats, on the comb" }

// AnswerOf names the answer of a step for those who don't see it.
func AnswerOf(kind string) string { return "Result: " + kind }

// AtStep names a step by its place.
func AtStep(n int) string { return "Step " + strconv.Itoa(n) + "." }

// Passes counts the passes of a fill.
func Passes(n int) string { return Counted(n, "pass", "passes") }

// FilmName names the film that a coat is typed as.
func FilmName(cured, each bool) string {
	switch {
	case cured && each:
		return FilmCuredEach
	case cured:
		return FilmCuredAll
	case each:
		return FilmWetEach
	}
	return FilmWetAll
}

// Wet says what wet film a cured one takes.
func Wet(film string) string { return film + " wet in all" }

// FilmsOf counts the measured films of a step.
func FilmsOf(n int) string { return "measured films: " + strconv.Itoa(n) }

// After says how long after the step before this one comes.
func After(hours string) string { return hours + " after the step before" }

// ThinnerOf says how much thinner goes in.
func ThinnerOf(share string, byMass bool) string {
	if byMass {
		return share + " thinner by mass"
	}
	return share + " thinner by volume"
}

// SandedOff says what share of a filler is sanded off again.
func SandedOff(share string) string { return share + " sanded off again" }

// MustLeave says what film a step must leave.
func MustLeave(film string) string { return "must leave " + film }

// Listed joins what there is to say with points between; what is empty is left out.
func Listed(parts ...string) string {
	text := ""
	for _, p := range parts {
		if p != "" && text != "" {
			text += " · "
		}
		text += p
	}
	return text
}

// Sequence says in small what a ready sequence is made of.
func Sequence(s *ready.Sequence) string {
	layers := 0
	steps := s.Steps()
	for _, step := range steps {
		if kind := step[0].Text; kind == "coat" || kind == "fill" {
			layers++
		}
	}
	return Counted(layers, "layer", "layers") + ", " + Counted(len(steps), "step", "steps")
}

// OwnRemovalsOf counts the builder's own figures of what a grade takes.
func OwnRemovalsOf(n int) string {
	if n == 0 {
		return OwnRemovals
	}
	return "what a grade takes: " + Counted(n, "figure of your own", "figures of your own")
}

// HandMixedOf counts the putties mixed by hand.
func HandMixedOf(n int) string {
	if n == 0 {
		return HandMixed
	}
	return "putty mixed by hand: " + strconv.Itoa(n)
}

// Rounds says how often a coat is gone over.
func Rounds(n int) string {
	if n <= 1 {
		return Once
	}
	return strconv.Itoa(n) + " rounds, sanded back in between"
}

// Cured says what a wet film cures to.
func Cured(film string) string { return film + " cured" }

// EachFrom says what one coat may be.
func EachFrom(least, most string) string { return least + " to " + most + " each" }

// EachUpTo says what one coat may be at most.
func EachUpTo(most string) string { return "up to " + most + " each" }

// ReadingsOf counts the readings of a step.
func ReadingsOf(combs, films int) string {
	text := "comb readings: " + strconv.Itoa(combs)
	if films > 0 {
		text += ", measured films: " + strconv.Itoa(films)
	}
	return text
}

// CombSays is what a comb reading comes to, right where it is typed.
func CombSays(from, to string) string { return "Cures to " + from + "–" + to }

// CombMissing and CombOver say how the reading stands to the plan.
func CombMissing(film string) string { return "; about " + film + " wet short of the plan." }

// CombOver says by how much the film lies over the plan.
func CombOver(film string) string { return "; about " + film + " wet over the plan." }

// CombAsPlanned says that the film is the planned one.
const CombAsPlanned = "; as planned."

// LeftAtThinSide is the verdict of a build-up whose film holds.
func LeftAtThinSide(left, least string) string {
	if least == "" {
		return left + " left at the thin side"
	}
	return left + " left at the thin side, least " + least
}

// HoldsButEdges begins the verdict of a build-up that is thin at the edges only.
const HoldsButEdges = "Holds but for the edges:"

// EdgesThin says what the edge strips keep, and what helps.
func EdgesThin(left, least string) string {
	return left + " left, least " + least + ". One more pass along them, or keep the board off."
}

// CoatsWet is a coat's line in the stack: how, how many, and how thick each is wet.
func CoatsWet(method, coats, film string) string {
	return method + " · " + coats + " × " + film + " wet"
}

// OnGround says what a build-up lies on.
func OnGround(g buildup.Ground) string { return ", on " + g.String() }

// OnMeasured says on which surface a film was measured.
func OnMeasured(surface string) string { return " on " + AsMeasured(surface) }

// EndsFromTheLeft names the films that are left at the end as they are drawn, from
// the left; what isn't known is empty.
func EndsFromTheLeft(mean, thin, edge, least string) string {
	parts := []string{"mean\u00a0" + mean, "thin\u00a0side\u00a0" + thin}
	if edge != "" {
		parts = append(parts, "edges\u00a0"+edge)
	}
	if least != "" {
		parts = append(parts, LeastFilm(least))
	}
	return Listed(parts...)
}
