package view_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// fairJob has everything that fairing, sanding and the film budget show.
const fairJob = `
surface = 1
surface.1.name = Foredeck
surface.1.length = 2 m
surface.1.width = 1 m
surface.1.buildup = buildup.1
surface.1.ground = paint
buildup = 1
buildup.1.step = 1 2 3 4 5
buildup.1.step.1.kind = fill
buildup.1.step.1.card = epoxy-filler
buildup.1.step.1.fill-by = grid
buildup.1.step.1.columns = 3
buildup.1.step.1.row-gap = 200
buildup.1.step.1.column-gap = 200
buildup.1.step.1.grid = 1 2
buildup.1.step.1.grid.1.z = 1; -2; 3
buildup.1.step.1.grid.2.z = 1; 2; 3
buildup.1.step.2.kind = fill
buildup.1.step.2.card = polyester-filler
buildup.1.step.2.fill-by = spots
buildup.1.step.2.spot = 1
buildup.1.step.2.spot.1.is = fillet
buildup.1.step.2.spot.1.radius = 30
buildup.1.step.2.spot.1.angle = 90
buildup.1.step.2.spot.1.length = 500
buildup.1.step.3.kind = coat
buildup.1.step.3.card = gelcoat
buildup.1.step.3.method = nap-roller
buildup.1.step.3.film = 400
buildup.1.step.3.goes = 2
buildup.1.step.3.go-takes = 50
buildup.1.step.3.comb = 1
buildup.1.step.3.comb.1.surface = surface.1
buildup.1.step.3.comb.1.last-wet = 300
buildup.1.step.3.comb.1.first-dry = 400
buildup.1.step.4.kind = sand
buildup.1.step.4.by = grades
buildup.1.step.4.first = P180
buildup.1.step.4.last = P1200
buildup.1.step.4.wet-from = P600
buildup.1.step.4.witness = 1
buildup.1.step.4.witness.1.film = 300
buildup.1.step.5.kind = polish
buildup.1.step.5.card = compound
removal = 1
removal.1.grade = P320
removal.1.way = directly
removal.1.takes = 20
putty = 1
putty.1.wanted = 2 L
putty.1.part = 1 2
putty.1.part.1.mass = 400
putty.1.part.2.what = balloons
putty.1.part.2.by = volume
putty.1.part.2.volume = 900
`

func fairState(t *testing.T) *page.State {
	t.Helper()
	var d job.Document
	for _, line := range strings.Split(fairJob, "\n") {
		if path, text, found := strings.Cut(line, " = "); found {
			d = d.Set(path, text)
		}
	}
	s := do(of(t, d), "go", "buildup", "")
	require.Empty(t, s.Plan.Refused())
	return s
}

// fairItems is what can be opened, each with what must be open for it.
var fairItems = [][]string{
	{"sheet buildup.1.terms"}, {"sheet buildup.1.step.1", "buildup.1.step.1.grid.1"}, {"sheet buildup.1.step.2", "buildup.1.step.2.spot.1"},
	{"sheet buildup.1.step.2.more"}, {"sheet buildup.1.step.3"}, {"sheet buildup.1.step.3.more"}, {"sheet buildup.1.step.3.readings"}, {"sheet buildup.1.step.4"},
	{"sheet buildup.1.step.4.more"}, {"sheet buildup.1.step.5"}, {"sheet removals", "removal.1"}, {"sheet putties", "putty.1"},
}

// Each id stands once, and typing in any control leaves it where it is.
func TestFairingIsTypedInPeace(t *testing.T) {
	for _, items := range fairItems {
		shown := opened(fairState(t), items...)
		assert.Empty(t, markup.Cut(view.Page(shown)).Repeats, items)
		typed := controls(t, shown)
		require.NotEmpty(t, typed)
		for _, path := range typed {
			f := job.FieldAt(path)
			if f != nil && (f.Kind == job.Choice || f.Key == "card") {
				continue
			}
			before := shown
			for _, text := range []string{"7", "1,500", "", "P240", "3"} {
				after := do(before, "set", path, text)
				for _, patch := range markup.Cut(view.Page(after)).Patches(markup.Cut(view.Page(before))) {
					assert.False(t, holdsControl(patch.HTML, path), "%s typed as %q in %s", path, text, patch.ID)
				}
				before = after
			}
		}
	}
}

func TestFiguresOfFairingOpenToTheirWorking(t *testing.T) {
	s := opened(fairState(t), "sheet buildup.1.budget")
	for _, id := range []string{"buildup.1.budget.0.thin", "buildup.1.budget.0.share", "buildup.1.need.2"} {
		html := view.Page(do(s, "why", id, "")).String()
		assert.Contains(t, html, `class="working"`, id)
	}
}

// Red is red on both screens, with what fixes it; a fixed one is gone.
func TestFindingsStandAtTheStepAndOnTheSurface(t *testing.T) {
	s := opened(fairState(t), "buildup.1")
	assert.Contains(t, view.Page(s).String(), "no test patch is logged")
	surfaces := opened(do(s, "go", "surfaces", ""), "sheet surface.1")
	assert.Contains(t, view.Page(surfaces).String(), "step 3 Coat: Polyester gel coat")
	assert.Contains(t, view.Page(surfaces).String(), "See the build-up")
}

// How a comb is read stands over its readings, and over no others.
func TestHowACombIsReadStandsOverItsReadings(t *testing.T) {
	html := view.Page(opened(fairState(t), "sheet buildup.1.step.3.readings")).String()
	assert.Equal(t, 1, strings.Count(html, words.LastWetFirstDry))
	assert.Contains(t, html, words.MeasuredFilmWords)
}

// The slider of the datum goes from where nothing is filled to where nothing is cut, by
// readings of 3 mm deep and 2 mm proud, wherever it stands.
func TestTheSliderGoesFromEndToEnd(t *testing.T) {
	d := jobtest.Doc(t, fairJob)
	for _, raise := range []string{"1", "-0.4", "2.5"} {
		s := do(of(t, d.Set("buildup.1.step.1.raise", raise)), "go", "buildup", "")
		slide := regexp.MustCompile(`<input[^>]*type="range"[^>]*>`).FindString(view.Page(do(s, "sheet", "buildup.1.step.1", "")).String() + view.Page(do(s, "sheet", "buildup.1.step.1.grid", "")).String())
		assert.Contains(t, slide, `min="-3" max="2"`, raise)
	}
}
