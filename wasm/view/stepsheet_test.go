package view_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// whyOf is every figure of a step, in the order in which its sheet tells them: of a coat its films and how far it goes, of
// sanding what each grade takes, of a fill the datum, the passes and what stays, then what of each material goes on.
func whyOf(step *plan.Step) (list []fig) {
	p := step.Path
	add := func(has bool, id, label, value string) {
		if has {
			list = append(list, fig{p + id, label, value})
		}
	}
	if c := step.Coat; c != nil {
		add(true, ".coats", "Coats", unit.Number(float64(c.Coats.Value), 3))
		add(true, ".weteach", "Wet film of each: what a comb should read", shownAs(c.WetEach, unit.InMicrometre))
		add(true, ".wet", "Wet film in all", shownAs(c.Wet, unit.InMicrometre))
		add(true, ".cured", "Cured film in all", shownAs(c.Cured, unit.InMicrometre))
		add(true, ".theory", "A litre as sold covers, nothing lost", shownAs(c.Theory, unit.InSquareMetrePerLitre))
		add(true, ".practice", "A litre as sold covers, in practice", shownAs(c.Practice, unit.InSquareMetrePerLitre))
	}
	if r := step.Sand; r != nil {
		add(true, ".taken", words.FilmTaken, shownAs(step.Taken, unit.InMicrometre))
		add(true, ".flatten", words.ForTheTexture, shownAs(r.Flatten, unit.InMicrometre))
		for i, stage := range r.Stages {
			grade := stage.Grade.String()
			if stage.IsWet {
				grade += words.SandedWet
			}
			if stage.IsOwn {
				grade += words.ByOwnFigure
			}
			id := ".stage." + strconv.Itoa(i)
			add(true, id, words.TakesAtLeast(grade), shownAs(stage.Takes, unit.InMicrometre))
			if stage.Pieces.Step != nil {
				add(true, id+".pieces", stage.Abrasive.Name+", "+stage.Grade.String(), unit.Number(float64(stage.Pieces.Value), 3))
			}
		}
		hours, dust := "–", "–"
		if r.Hours.Step != nil {
			hours, dust = shownAs(r.Hours, unit.InHour), shownAs(r.Dust, unit.InKilogram)
		}
		add(true, ".hours", "Hours", hours)
		add(true, ".dust", "Dust", dust)
		add(len(r.Fewest) > 0, ".fewest", "", shownAs(r.FewTake, unit.InMicrometre))
	}
	add(step.Sand == nil && step.Taken.Step != nil, ".taken", words.FilmTaken, shownAs(step.Taken, unit.InMicrometre))
	if f := step.Fill; f != nil {
		if g := f.Grid; g != nil {
			add(true, ".cut", words.CutOffProudSpots, shownAs(g.Cut, unit.InLitre))
			add(len(g.Curve) > 0, ".best", words.RaiseDatumBy, shownAs(g.Best, unit.InMillimetre))
			add(len(g.Curve) > 0, ".bestfill", words.BestFills, shownAs(g.BestFill, unit.InLitre))
			add(len(g.Curve) > 0, ".bestcut", words.BestCuts, shownAs(g.BestCut, unit.InLitre))
		}
		add(true, ".passes", "Passes", unit.Number(float64(f.Passes.Value), 3))
		add(true, ".depth", words.DeepestPutOn, shownAs(f.Depth, unit.InMillimetre))
		add(true, ".left", words.FillerThatStaysOn, shownAs(f.Left, unit.InLitre))
		add(true, ".applied", words.PutOnInAll, shownAs(f.Applied, unit.InLitre))
		add(true, ".dust", "Dust", shownAs(f.Dust, unit.InKilogram))
		add(true, ".kept", words.MassThatStays, shownAs(step.Kept, unit.InKilogram))
	}
	for _, u := range step.Used {
		id := ".use." + u.Card.Key
		add(u.Mass.Step != nil, id+".mass", u.Card.Name, shownAs(u.Mass, unit.InKilogram))
		add(u.Volume.Step != nil, id+".volume", u.Card.Name+", by volume", shownAs(u.Volume, unit.InLitre))
	}
	return list
}

func TestEveryFigureOfAStepHasItsOwnName(t *testing.T) {
	steps := 0
	for _, s := range []*page.State{madeUp("buildup"), fairState(t)} {
		for _, b := range s.Plan.Buildups() {
			for i := range b.Steps {
				step := &b.Steps[i]
				want := whyOf(step)
				got := figuresOf(regionOf(t, view.Page(do(s, "sheet", page.Part(step.Path, page.WhyPart), "")).String(), "figures-"+step.Path))
				require.Len(t, got, len(want), step.Path)
				for i, f := range want {
					if strings.HasSuffix(f.id, ".fewest") {
						want[i].label = got[i].label
					}
					want[i].label, want[i].value = plain(want[i].label), plain(want[i].value)
					steps++
				}
				require.Equal(t, want, got, step.Path)
			}
		}
	}
	assert.Greater(t, steps, 60)
}

// What a step says besides stands in one line, and what was read on it in another.
func TestAStepsLinesSayWhatElseHolds(t *testing.T) {
	const coat, fill, sand, polish = "buildup.1.step.3", "buildup.1.step.1", "buildup.1.step.4", "buildup.1.step.5"
	fair := fairState(t)
	more := func(step string, lines ...string) *page.State { return do(with(fair, lines...), "sheet", step, "") }
	line := func(step, key string) string { return "setup-" + step + "." + key }
	saysEach(t, []saying{
		{more(coat), line(coat, "more"), "no thinner · 2 rounds, sanded back in between · open to the air · waiting time not set", "h after"},
		{more(coat, coat+".thinner = 5 %", coat+".goes = 1", coat+".wait = 12 h", coat+".release = film"), line(coat, "more"), "5 % thinner by mass · once · under release film · 12 h after the step before", "not set"},
		{more(coat, coat+".thinner = 5 %", coat+".thinner-by = volume"), line(coat, "more"), "5 % thinner by volume ·", "by mass"},
		{more(fill), line(fill, "more"), "30 % sanded off again · waiting time not set", "thinner"},
		{more(fill, fill+".wait = 3 h", fill+".sanded-off = 20 %"), line(fill, "more"), "20 % sanded off again · 3 h after the step before", ""},
		{more(sand), line(sand, "more"), "waiting time not set", "must leave"},
		{more(sand, sand+".least = 250"), line(sand, "more"), "must leave 250 µm · waiting time not set", ""},
		{more(polish), line(polish, "more"), "waiting time not set", "must leave"},
		{more(coat), line(coat, "readings"), "comb readings: 1", "measured"},
		{do(do(fair, "add", coat+".witness", ""), "sheet", coat, ""), line(coat, "readings"), "comb readings: 1, measured films: 1", ""},
		{do(do(fair, "remove", coat+".comb.1", ""), "sheet", coat, ""), line(coat, "readings"), words.NoReadings, ""},
		{more("buildup.1.step.2"), "name-buildup.1.step.2.spot.1", "1 A fillet in a corner", ""},
		{more(sand), line(sand, "readings"), "measured films: 1", "comb"},
		{do(do(fair, "remove", sand+".witness.1", ""), "sheet", sand, ""), line(sand, "readings"), words.NoCombHere, "comb"},
	})
}

// A step that can't be planned says what it waits for: first what is refused, then a card's figure that can't be read, then what
// isn't typed. Amounts that rest on a surface that can't be read are a dash; films aren't.
func TestAStepSaysWhatItWaitsFor(t *testing.T) {
	const coat, fill, sand = "buildup.1.step.3", "buildup.1.step.2", "buildup.1.step.4"
	fair := fairState(t)
	at := func(step string, lines ...string) *page.State { return do(with(fair, lines...), "sheet", step, "") }
	lost := "surface.1.length = none"
	polish := handy(fair.Plan.Buildups()[0].Steps[4].Used[0].Mass, unit.InKilogram)
	saysEach(t, []saying{
		{at(coat, coat+".film = none"), "answer-" + coat, "– " + words.StillWaits + "film", "µm"},
		{at(coat, coat+".film ="), "answer-" + coat, "– " + words.StillWaits, "µm"},
		{at(coat, "card.gelcoat.density = none"), "answer-" + coat, "– " + words.StillWaits + "density", "µm"},
		{at(coat, coat+".film ="), "findings-" + coat, words.NothingChecked, words.NothingRed + "|" + words.EveryFigure},
		{at(coat), "findings-" + coat, words.EveryFigure, words.NothingChecked},
		{at(coat), "answer-" + coat, "400 µm|cups of", words.WaitsForASize + "|– "},
		{at(coat, lost), "answer-" + coat, "400 µm each coat|– cured|" + words.WaitsForASize, "kg in all"},
		{at(fill, lost), "answer-" + fill, "– to mix|– put on|– stays on|" + words.WaitsForASize, "L "},
		{at(fill), "answer-" + fill, "to mix", words.WaitsForASize},
		{at("buildup.1.step.5"), "answer-buildup.1.step.5", polish + " in all", ""},
		{at(sand, lost), "answer-" + sand, "− |" + words.WaitsForASize, "– − "},
	})
	for step, label := range map[string]string{coat: "coat", fill: "fill", sand: "sand"} {
		box := regionOf(t, view.Page(at(step)).String(), "answer-"+step)
		assert.NotContains(t, strings.SplitN(box, ">", 2)[0], "data-is", step)
		assert.Contains(t, strings.ToLower(strings.SplitN(box, ">", 2)[0]), `aria-label="result: `+label)
	}
	assert.Contains(t, strings.SplitN(regionOf(t, view.Page(at(coat, coat+".film =")).String(), "answer-"+coat), ">", 2)[0], `data-is="stops"`)
	clean := do(of(t, jobtest.Doc(t, "surface = 1", "surface.1.length = 2 m", "surface.1.width = 1 m", "surface.1.ground = polyester", "surface.1.buildup = buildup.1", "buildup = 1", "buildup.1.step = 1",
		"buildup.1.step.1.kind = sand", "buildup.1.step.1.taken = 20")), "sheet", "buildup.1.step.1", "")
	assert.Contains(t, textOf(t, clean, "findings-buildup.1.step.1"), "Holds: "+words.NothingRed)
}

// A cup of a putty mixed by hand says what to weigh for one of them.
func TestACupOfPuttySaysItsParts(t *testing.T) {
	const fill = "buildup.1.step.2"
	s := with(fairState(t), "putty.1.part.1.what = resin", fill+".putty = putty.1", fill+".card = epoxy-filler")
	s = do(s, "sheet", fill, "")
	step := s.Plan.Buildups()[0].Steps[1]
	require.NotNil(t, step.Fill)
	require.Greater(t, float64(step.Cups.Count.Value), 0.)
	var parts []string
	for _, p := range step.Parts() {
		parts = append(parts, p.Name+" "+unit.Write(float64(p.Mass.Value)/float64(step.Cups.Count.Value), unit.InGram, 3))
	}
	require.Len(t, parts, 2)
	assert.Contains(t, textOf(t, s, "answer-"+fill), plain("A cup of it: "+strings.Join(parts, " · ")))
	assert.NotContains(t, textOf(t, do(fairState(t), "sheet", fill, ""), "answer-"+fill), "A cup of it")
}
