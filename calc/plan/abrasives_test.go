package plan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/plan"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
)

// P220 to P1200 and polish take 76.8 µm beside the texture: a third of 68, 46.2,
// 35, 25.8, 21.8, 18.3 and 15.3. Source: exact, mean sizes of ISO 6344. The
// gun's texture is 100 µm: half of it lies over a mean film, all under its peaks.
func TestTheUsualRunTakesWhatPracticeAllows(t *testing.T) {
	b := planOf(t, gelCoated).Buildups()[0]
	assert.Equal(t, []sanding.Grade{220, 320, 400, 600, 800, 1000, 1200}, b.Steps[1].Sand.Grades)
	assert.InDelta(t, 50+71.7, micrometres(b.Steps[1].Taken.Value), 1e-9)
	assert.InDelta(t, 5.1, micrometres(b.Steps[2].Taken.Value), 1e-9)
	assert.InDelta(t, 760-50-76.8, micrometres(b.Left.Value), 1e-9)

	b = planOf(t, gelCoated, "buildup.1.step.2.texture-is = peak").Buildups()[0]
	assert.InDelta(t, 760-100-76.8, micrometres(b.Left.Value), 1e-9)
}

// 4 m² at 1.7 discs a grade dry; wet 5 sheets at P400 and 2.5 a grade from there
// on. Source: published (0.2 m² a sheet) and common practice. Wet by hand
// 1.4 m²/h, by machine 3 m²/h. Dust 4 m² × 121.7 µm × 1.30 kg/L.
func TestARunUsesAbrasivesAndHours(t *testing.T) {
	p := planOf(t, gelCoated, "buildup.1.step.2.wet-from = P400")
	r := p.Buildups()[0].Steps[1].Sand
	pieces := map[string]float64{}
	for _, stage := range r.Stages {
		pieces[stage.Abrasive.Key] += float64(stage.Pieces.Value)
	}
	assert.InDelta(t, 2*1.7*4, pieces["disc"], 1e-9)
	assert.InDelta(t, 5*4+4*2.5*4, pieces["wet-sheet"], 1e-9)
	assert.InDelta(t, 2*4/3.+5*4/1.4, float64(r.Hours.Value/unit.Hour), 1e-9)
	assert.InDelta(t, 4*121.7e-6*1300, float64(r.Dust.Value), 1e-9)

	own := planOf(t, gelCoated, "buildup.1.step.2.wet-from = P400\ncard.gelcoat.cured-density = 1.4\ncard.wet-sheet.on-film = 3").Buildups()[0].Steps[1].Sand
	assert.InDelta(t, 4*121.7e-6*1400, float64(own.Dust.Value), 1e-9, "of the coat right below, as its own sheet has it")
	wet := 0.0
	for _, stage := range own.Stages {
		if stage.Abrasive.Key == "wet-sheet" {
			wet += float64(stage.Pieces.Value)
		}
	}
	assert.InDelta(t, 5*3*4, wet, 1e-9, "what the builder has counted holds for every grade")
}

// Gloves go by the hours that are wet, of one grade as of all: 4 m² at 1.4 m²/h and half a pair an
// hour (common practice); by machine none is counted by the hour.
func TestGlovesGoByTheWetHours(t *testing.T) {
	for from, grades := range map[string]float64{"P1200": 1, "P1000": 2, "P800": 3, "P220": 7, "": 0} {
		p := planOf(t, gelCoated, "buildup.1.step.2.wet-from = "+from)
		pairs := 0.
		for _, u := range p.Buildups()[0].Steps[1].Used {
			if u.Card.Key == "gloves" {
				pairs += float64(u.Pieces.Value)
			}
		}
		assert.InDelta(t, grades*4/1.4*0.5, pairs, 1e-9, "wet from %q", from)
	}
}

// For a run with more grades than it needs the shortest one between its ends is
// given, with no step wider than what is proposed; a run that is as short as can
// be, none.
func TestTheShortestRunIsProposed(t *testing.T) {
	long := planOf(t, gelCoated, "buildup.1.step.2.grades = P220 P240 P280 P320 P360 P400 P500 P600 P800 P1000 P1200").Buildups()[0].Steps[1].Sand
	require.NotEmpty(t, long.Fewest)
	assert.Less(t, len(long.Fewest), len(long.Grades))
	assert.Equal(t, sanding.Grade(220), long.Fewest[0])
	assert.Equal(t, sanding.Grade(1200), long.Fewest[len(long.Fewest)-1])
	assert.Positive(t, long.FewTake.Value)
	for i := 1; i < len(long.Fewest); i++ {
		ratio, err := sanding.Ratio(long.Fewest[i-1], long.Fewest[i])
		require.NoError(t, err)
		assert.LessOrEqual(t, ratio, 1.8*(1+1e-3), "%v", long.Fewest)
	}
	assert.Empty(t, planOf(t, gelCoated, "buildup.1.step.2.grades = P320 P400").Buildups()[0].Steps[1].Sand.Fewest)
	three := planOf(t, gelCoated, "buildup.1.step.2.grades = P400 P500 P600").Buildups()[0].Steps[1].Sand
	assert.Equal(t, []sanding.Grade{400, 600}, three.Fewest, "35 ÷ 25.8 µm is a small step")
}

func TestRunsThatCantBe(t *testing.T) {
	for path, lines := range map[string]string{
		"buildup.1.step.2.grades":   "buildup.1.step.2.grades = P320 P220",
		"buildup.1.step.2.first":    "buildup.1.step.2.first = 320",
		"buildup.1.step.2.last":     "buildup.1.step.2.last = P80",
		"buildup.1.step.2.wet-from": "buildup.1.step.2.wet-from = US 180",
	} {
		p := plan.Make(document(t, gelCoated, lines))
		assert.Error(t, p.RefusedAt(path), lines)
	}
	p := planOf(t, gelCoated, "buildup.1.step.2.grades = P180 - P400 → US 600")
	r := p.Buildups()[0].Steps[1].Sand
	assert.Equal(t, []sanding.Grade{180, 400, 1200}, r.Grades)
	assert.Len(t, r.Jumps, 2, "82 ÷ 35 and 35 ÷ 15.3 are both over 2")
}

// An offcut of 0.06 m² loses 3 g of 1.25 kg/L: 40 µm. The next grade still takes
// what lies below P320's scratches.
func TestAnOwnRemovalStandsAboveTheAssumption(t *testing.T) {
	p := planOf(t, gelCoated, `removal = 1
removal.1.grade = P320
removal.1.before = 503 g
removal.1.after = 500 g
removal.1.area = 600 cm²
removal.1.cured-density = 1.25
removal.1.scale-step = 0.1 g`)
	require.Len(t, p.Removals(), 1)
	assert.InDelta(t, 40, micrometres(p.Removals()[0].Takes.Value), 1e-6)
	stages := p.Buildups()[0].Steps[1].Sand.Stages
	assert.True(t, stages[1].IsOwn)
	assert.InDelta(t, 40, micrometres(stages[1].Takes.Value), 1e-6)
	assert.InDelta(t, 46.2/3, micrometres(stages[2].Takes.Value), 1e-9)

	lost := plan.Make(document(t, gelCoated, "removal = 1\nremoval.1.grade = P320\nremoval.1.before = 500.1 g\nremoval.1.after = 500 g\nremoval.1.area = 600 cm²\nremoval.1.scale-step = 0.1 g"))
	var fine *sanding.TooFineError
	assert.ErrorAs(t, lost.RefusedAt("removal.1.after"), &fine)
}

const brushed = `
buildup = 1
buildup.1.step = 1 2
buildup.1.step.1.kind = coat
buildup.1.step.1.card = gelcoat
buildup.1.step.1.method = brush
buildup.1.step.1.film = 320 µm
buildup.1.step.1.film-is = cured
buildup.1.step.1.release = film
buildup.1.step.2.kind = sand
buildup.1.step.2.taken = 177 µm
`
