package words_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/buildup"
	"shedreckoner/calc/chance"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/fairing"
	"shedreckoner/calc/fault"
	"shedreckoner/calc/film"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/order"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/words"
)

// refusals is every error with which a text of a job can be refused, or a sum
// of it wait, by its name in the sums.
var refusals = map[string]error{
	"buildup.TooUnevenError": &buildup.TooUnevenError{},
	"buildup.ShareError":     &buildup.ShareError{},
	"buildup.StepError":      &buildup.StepError{},
	"buildup.ErrNoReadings":  buildup.ErrNoReadings,

	"fairing.BalloonError": &fairing.BalloonError{},
	"fairing.CellError":    &fairing.CellError{Cause: fairing.Blank},
	"fairing.CellErrors":   fairing.CellErrors{{Cause: fairing.Blank}},
	"fairing.CostError":    &fairing.CostError{},
	"fairing.CurveError":   &fairing.CurveError{},
	"fairing.GapError":     &fairing.GapError{},
	"fairing.PriceError":   &fairing.PriceError{},
	"fairing.RaggedError":  &fairing.RaggedError{},
	"fairing.ReadingError": &fairing.ReadingError{},
	"fairing.SizeError":    &fairing.SizeError{},
	"fairing.SplitError":   &fairing.SplitError{},
	"fairing.ErrNothing":   fairing.ErrNothing,

	"film.CombError":    &film.CombError{},
	"film.FlowError":    &film.FlowError{},
	"film.ProfileError": &film.ProfileError{},

	"job.LimitError":  &job.LimitError{List: job.Root.Lists[0]},
	"job.OptionError": &job.OptionError{Field: job.FieldAt("surface.1.shape"), Text: "blob"},
	"job.OrderError":  &job.OrderError{},
	"job.RangeError":  &job.RangeError{Field: job.FieldAt("surface.1.length"), Value: -1},
	"job.WholeError":  &job.WholeError{},
	"job.WordsError":  &job.WordsError{},

	"order.RoundUpError":  &order.RoundUpError{},
	"order.LogError":      &order.LogError{},
	"order.ModelError":    &order.ModelError{},
	"order.PackError":     &order.PackError{},
	"order.ErrUnfinished": order.ErrUnfinished,

	"plan.CoatTooThickError": &plan.CoatTooThickError{},
	"plan.RoundTakesError":   &plan.RoundTakesError{},
	"plan.GradesError":       &plan.GradesError{},
	"plan.ThinnerError":      &plan.ThinnerError{},
	"plan.WaitsError":        &plan.WaitsError{},
	"plan.ErrFewRows":        plan.ErrFewRows,
	"plan.ErrMissing":        plan.ErrMissing,
	"plan.ErrNoCard":         plan.ErrNoCard,
	"plan.ErrNoGrades":       plan.ErrNoGrades,
	"plan.ErrNoRecipe":       plan.ErrNoRecipe,
	"plan.ErrNoSpots":        plan.ErrNoSpots,
	"plan.ErrNoThinner":      plan.ErrNoThinner,
	"plan.ErrNotSprayed":     plan.ErrNotSprayed,
	"plan.ErrWrong":          plan.ErrWrong,

	"sanding.GradeError":      &sanding.GradeError{},
	"sanding.Jump":            &sanding.Jump{},
	"sanding.NoSequenceError": &sanding.NoSequenceError{},
	"sanding.TooFineError":    &sanding.TooFineError{},

	"surface.Error":      &surface.Error{},
	"unit.ReadError":     &unit.ReadError{},
	"working.RangeError": &working.RangeError{Arg: working.Arg{Symbol: "l", Meaning: "length", Scale: unit.InMetre, Min: 0, Max: 1}},

	"a cup's": &cure.CupsError{},
}

// errorsOf lists the errors that a package of the sums declares.
func errorsOf(t *testing.T, name string) []string {
	t.Helper()
	var list []string
	files, err := filepath.Glob("../../calc/" + name + "/*.go")
	require.NoError(t, err)
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		p, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		require.NoError(t, err)
		ast.Inspect(p, func(n ast.Node) bool {
			switch d := n.(type) {
			case *ast.FuncDecl:
				if d.Name.Name == "Error" && d.Recv != nil && len(d.Type.Params.List) == 0 {
					of := d.Recv.List[0].Type
					if star, isStar := of.(*ast.StarExpr); isStar {
						of = star.X
					}
					if id, isName := of.(*ast.Ident); isName {
						list = append(list, name+"."+id.Name)
					}
				}
			case *ast.ValueSpec:
				for _, id := range d.Names {
					if strings.HasPrefix(id.Name, "Err") && id.IsExported() {
						list = append(list, name+"."+id.Name)
					}
				}
			}
			return true
		})
	}
	return list
}

// Every refusal has its own sentence, and none says only that it can't be.
func TestEveryRefusalHasItsSentence(t *testing.T) {
	for _, name := range []string{"buildup", "fairing", "film", "job", "order", "plan", "sanding", "surface", "unit", "working"} {
		for _, e := range errorsOf(t, name) {
			if !strings.HasPrefix(e, "job.Err") { // of a file: told where it comes in
				assert.Contains(t, refusals, e, "an error without a sentence")
			}
		}
	}
	last := words.Sentence(errUnheard{}, nil, job.Units{})
	for name, err := range refusals {
		said := words.Sentence(err, nil, job.Units{})
		assert.NotEmpty(t, said, name)
		assert.NotEqual(t, last, said, "%s falls back to the last resort", name)
	}
}

type errUnheard struct{}

func (errUnheard) Error() string { return "unheard of" }

// The hours of a work are said with the days between where it ends on another, whatever
// the time of day.
func TestTheHoursOfAWorkSayHowManyDaysOn(t *testing.T) {
	const h = unit.Hour
	for want, of := range map[string][2]unit.Time{
		"10:00–12:30": {10 * h, 12.5 * h}, "14:00–17:00": {14 * h, 17 * h}, "15:00–9:00 (1 day on)": {15 * h, 33 * h}, "9:00–16:00 (2 days on)": {33 * h, 88 * h},
	} {
		assert.Equal(t, want, words.WorkHours(&schedule.Work{Kind: plan.LayCoat, From: of[0], To: of[1]}))
	}
	assert.Equal(t, "From 16:00", words.WorkHours(&schedule.Work{Kind: plan.Launch, From: 40 * h}))
}

// A cause is a sentence, and so is what to do; what the log shows of it is the name of a
// figure. The one in the place of the other reads as nonsense beside a spoilt coat.
func TestCausesAreSentencesAndSignsAreNames(t *testing.T) {
	for _, c := range fault.Causes {
		w := words.FaultText(&fault.Found{Cause: &c})
		assert.True(t, strings.HasSuffix(w.Cause, "."), "%s: %s", c.Key, w.Cause)
		assert.True(t, strings.HasSuffix(w.Remedy, "."), "%s: %s", c.Key, w.Remedy)
		assert.True(t, c.Key == "dark" || !strings.HasSuffix(w.Sign, "."), "%s: %s", c.Key, w.Sign) // of the sun there is no figure
		assert.Equal(t, c.Sign != nil, w.Sign != "", c.Key)
	}
}

func TestASourceIsSaidWhereThereIsOne(t *testing.T) {
	assert.Equal(t, "a handbook – published", words.SourceOf(working.Text{Source: "a handbook", Mark: "published"}))
	assert.Equal(t, "typed by you", words.SourceOf(working.Text{Mark: "typed by you", Numbers: "1 × 2"}))
}

// What fixes a finding is said by the word that matters in it: more for less, or a coat
// for a wait, and the builder does the opposite of what helps.
func TestEachFixIsSaidByItsOwnWords(t *testing.T) {
	for fix, has := range map[buildup.Fix]string{
		buildup.EpoxyInstead: "epoxy filler here instead", buildup.EpoxyBetween: "epoxy primer in between", buildup.FillerBetween: "epoxy filler in between",
		buildup.SealerBetween: "Seal it", buildup.PrimerBetween: "a primer in between", buildup.SkimFirst: "thin skim", buildup.StripPaint: "Take the paint off",
		buildup.EpoxyFilling: "epoxy filler here.", buildup.SandFirst: "sanding step", buildup.WashFirst: "a wash before", buildup.LogTestPatch: "Try a patch",
		buildup.WaitLonger: "Wait longer", buildup.LetDry: "dry first", buildup.CoatAtOnce: "within the hour of sanding", buildup.AddWax: "flow coat",
		buildup.MoreCoats: "more coats", buildup.FewerCoats: "fewer, thicker coats", buildup.LessThinner: "less thinner", buildup.OtherWax: "between 1 % and 3 %",
		buildup.MoreFilm: "more film, or take less", buildup.MoreEvenFilm: "a more even film", buildup.LessFilm: "less film.",
	} {
		for _, severity := range []buildup.Severity{buildup.Ask, buildup.Refuse} {
			_, said, _ := words.Finding(&plan.Finding{Finding: buildup.Finding{Rule: buildup.MeanLeft, Severity: severity, Fix: fix}}, "", job.Units{})
			assert.Contains(t, strings.ReplaceAll(said, "\u00a0", " "), has)
		}
	}
}

// A time from midnight is said as the phone says it: hours, then minutes.
func TestATimeOfDayIsSaidInHoursAndMinutes(t *testing.T) {
	for want, at := range map[string]float64{"0:05": 5, "9:30": 570, "15:00": 900, "23:59": 1439, "midnight": 1440, "6:31 tomorrow": 1440 + 391} {
		assert.Equal(t, want, words.Hour(unit.Time(at)*unit.Minute))
	}
}

// The films that hold lie on both sides of one that doesn't, each with its own coats.
func TestTheNearestFilmsAreSaidFromBelowAndAbove(t *testing.T) {
	f := plan.Finding{Finding: buildup.Finding{Rule: buildup.WetFilm, Severity: buildup.Refuse, Near: buildup.Near{Below: 600e-6, BelowCoats: 1, Above: 800e-6, AboveCoats: 2}}}
	_, said, _ := words.Finding(&f, "", job.Units{})
	below, above := strings.Index(said, "600"), strings.Index(said, "800")
	assert.True(t, 0 <= below && below < above, said)
}

// A jump names both of its grades, and a grid its deepest and its proudest place, each
// with its own depth.
func TestBothEndsAreNamed(t *testing.T) {
	from, err := sanding.ReadGrade("P80")
	require.NoError(t, err)
	to, err := sanding.ReadGrade("P320")
	require.NoError(t, err)
	said := words.GradeJump(sanding.Jump{From: from, To: to, Ratio: 4})
	assert.Contains(t, said, "From P80 to P320 is a step of 4")
	assert.Contains(t, said, "P320 may leave P80 scratches")

	g := &plan.Grid{Deepest: fairing.Cell{Row: 1, Column: 2, Depth: 3 * unit.Millimetre}, Proudest: fairing.Cell{Row: 0, Column: 4, Depth: -2 * unit.Millimetre}}
	said = strings.ReplaceAll(words.Extremes(g, unit.InMillimetre), "\u00a0", " ")
	assert.Contains(t, said, "row 2, reading 3, 3 mm to fill")
	assert.Contains(t, said, "row 1, reading 5, 2 mm to cut")
	for kind := chance.AreaCause; kind <= chance.LearntCause; kind++ {
		c := chance.Cause{Kind: kind, Surface: &job.Surface{}}
		assert.True(t, strings.HasSuffix(words.Advice(c), "."), "%s", words.Advice(c))
	}
}

// An answer that is given as an example is one that its field reads, in either system of
// units: a builder types it to see.
func TestEachExampleIsRead(t *testing.T) {
	like := regexp.MustCompile(`Type it like ([^.]*(?:\.\d[^.]*)*)\.`)
	asked := 0
	for _, system := range []string{"metric", "us"} {
		d := jobtest.Doc(t, "surface = 1\nbuildup = 1\nbuildup.1.step = 1\nbuildup.1.step.1.kind = coat\nbuildup.1.step.1.card = gelcoat\ncard.gelcoat.pack = 1\ncup = 1\ncup.1.card = gelcoat")
		if system == "us" {
			d = job.SetSystem(d, true)
		}
		for _, path := range []string{"surface.1.length", "surface.1.count", "card.gelcoat.pack.1.size", "card.gelcoat.pack.1.price", "card.gelcoat.density", "card.gelcoat.gel-time", "card.gelcoat.chance",
			"card.gelcoat.stock", "bench.now.surface-temp", "bench.now.amount", "bench.now.scale-step", "buildup.1.step.1.film", "buildup.1.step.1.coats", "buildup.1.step.1.thinner", "buildup.1.step.1.wait"} {
			field := job.FieldAt(path)
			require.NotNil(t, field, path)
			j, problems := job.Read(d.Set(path, "neither"))
			for _, p := range problems {
				said := like.FindStringSubmatch(words.Sentence(p.Err, field, j.Units))
				if p.Path != path || said == nil {
					continue
				}
				asked++
				for _, example := range strings.Split(said[1], " or ") {
					_, again := job.Read(d.Set(path, example))
					assert.Empty(t, again, "%s, %s: %s", path, system, example)
				}
			}
		}
	}
	assert.Greater(t, asked, 20)
}

// Damp and dry air are told apart, each with its own limit.
func TestDampAndDryAirAreToldApart(t *testing.T) {
	v := bench.Verdict{Subject: bench.Humidity, Kind: bench.Stops, Value: 0.85, Limit: 0.8, Scale: unit.InPercent}
	first, rest := words.Verdict(v, "", job.Units{})
	assert.Equal(t, "Air too damp:", first)
	assert.Contains(t, rest, "up to 80")
	v.Value, v.Limit = 0.2, 0.3
	first, rest = words.Verdict(v, "", job.Units{})
	assert.Equal(t, "Air too dry:", first)
	assert.Contains(t, rest, "at least")
}
