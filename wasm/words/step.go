package words

// A step's answers and the hints of its fields.
const (
	WetFilmOfEach    = "Wet film of each: what a comb should read"
	WetFilmInAll     = "Wet film in all"
	CuredFilmInAll   = "Cured film in all"
	CoversInTheory   = "A litre as sold covers, nothing lost"
	CoversInPractice = "A litre as sold covers, in practice"
	NotSaid          = "not set"
	NotSaidOpen      = "Not set: what depends on it stays open."
	None             = "none"
	NoneYet          = "none yet"
	PatchHint        = "What needs a test patch stays red until its day is noted here or on the surface."
	RoundsHint       = "Spray, sand, find pinholes, spray again: how many times."
	SwallowedHint    = "Goes into the pores and leaves no film. Try a square on an offcut: what it took beyond its film."
	SuchAsP220       = "such as P220"
	SuchAsP1200      = "such as P1200"
	LastGradeHint    = "The scratch that the next layer or the polish starts from."
	TheUsualOnes     = "the usual ones"
	GradesHint       = "Left empty: the usual grades from the first to the last."
	AllDry           = "all dry"
	WetHint          = "An electric sander and water don't go together."
	ScratchHint      = "0.15 to 0.5: an assumption. Your own figures of what a grade takes replace it."
	ByTheMethod      = "by the method"
	TextureHint      = "What the coat before left: the first grade flattens it."
	AsItsCardSays    = "as its card says"
	AsRead           = "as read"
	RaiseHint        = "More filler, less to cut. Below zero: the other way."
	CutCostHint      = "For the best height of the datum: an assumption."
	ThinShareHint    = "The thin side is the film that all but this share of the area has."
	UnfairHint       = "How far the ground lies off the plane that the board sands to."
	StripHint        = "Along edges films run thin (× 0.7) and boards dwell (× 2): an assumption."
)

// ByVolumeOf labels a material's volume.
func ByVolumeOf(card string) string { return card + ", by volume" }

// ByMass writes a share with its base.
func ByMass(share string) string { return share + " by mass" }
