package view_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// handy writes a figure in the scale that suits its size, with three digits.
func handy[Q unit.Quantity](f working.Figure[Q], scale unit.Scale) string {
	return written(f, unit.Handy(float64(f.Value), scale))
}

// A step's answer is its own figures, each beside its own name: of a coat the comb, what goes on in all, a coat's weight, its
// cups; of a fill what to mix, put on and left; of sanding what it takes.
func TestAStepsAnswerIsItsOwnFigures(t *testing.T) {
	coats, fills, takings := 0, 0, 0
	for _, s := range []*page.State{madeUp("buildup"), do(of(t, jobtest.Doc(t, strings.Split(fairJob, "\n")...)), "go", "buildup", "")} {
		for _, b := range s.Plan.Buildups() {
			for i := range b.Steps {
				step := &b.Steps[i]
				html := view.Page(do(s, "sheet", step.Path, "")).String()
				if plan.KindOf(step.Job.Kind).Drawing == plan.NotDrawn || !step.Known {
					continue
				}
				answer := textIn(regionOf(t, html, "answer-"+step.Path))
				var used *plan.Use
				for i := range step.Used {
					if step.Used[i].Card == step.Card {
						used = &step.Used[i]
					}
				}
				says := func(value, name string) { assert.Contains(t, answer, value+" "+name, step.Path) }
				if step.Cups.Count.Step != nil && (step.Coat != nil || step.Fill != nil) {
					count, cups := unit.Number(float64(step.Cups.Count.Value), 4), "cups of "
					if count == "1" {
						cups = "cup of "
					}
					says(count, cups+handy(step.Cups.Each, s.Plan.Job.Units.Scale(unit.CupWeights)))
				}
				switch {
				case step.Coat != nil:
					coats++
					n, each := int(step.Coat.Coats.Value), words.EachCoat
					if n > 1 {
						each = words.EachOf(n)
					}
					assert.True(t, strings.HasPrefix(answer, written(step.Coat.WetEach, unit.InMicrometre)+" "+each+" "), answer)
					says(handy(used.Mass, unit.InKilogram), words.InAll)
					says(strings.ReplaceAll(unit.Write(float64(step.Coat.PerCoat.Value), unit.InKilogramPerSquareMetre, 2), "\u00a0", " "), words.EachCoatWithLoss)
				case step.Fill != nil:
					fills++
					assert.True(t, strings.HasPrefix(answer, handy(step.Cups.Mixed, unit.InKilogram)+" "+words.ToMix+" · "+words.Passes(int(step.Fill.Passes.Value))), answer)
					says(handy(step.Fill.Applied, unit.InLitre), words.PutOn)
					says(handy(step.Fill.Left, unit.InLitre), words.StaysOn)
				default:
					takings++
					assert.True(t, strings.HasPrefix(answer, "− "+written(step.Taken, unit.InMicrometre)), answer)
					if step.Sand != nil && step.Sand.Hours.Step != nil {
						says(handy(step.Sand.Hours, unit.InHour), words.OfWork)
						says(handy(step.Sand.Dust, unit.InKilogram), words.Dust)
						pieces := 0.
						for _, stage := range step.Sand.Stages {
							pieces += float64(stage.Pieces.Value)
						}
						says(unit.Number(pieces, 3), words.DiscsAndSheets)
					}
				}
			}
		}
	}
	assert.True(t, coats > 2 && fills > 2 && takings > 2, "%d %d %d", coats, fills, takings)
}

// A cup's answer is its dose in the tool's unit, the same in the other, how far it goes, how many there are; its bar is to the
// scale of its minutes.
func TestACupsAnswerIsItsOwnFigures(t *testing.T) {
	s := cups(t)["planned"]
	b := s.Bench()
	html := regionOf(t, view.Page(s).String(), "answer")
	text := textIn(html)
	share := strings.ReplaceAll(unit.Write(float64(b.Pour.Share.Value), unit.InPercent, 3), "\u00a0", " ")
	plain := strings.NewReplacer("\u00a0", " ")
	assert.Contains(t, text, plain.Replace(b.Pour.Amount.String())+" "+words.Catalyst+" "+plain.Replace(b.Pour.Other.String())+", "+share+" by mass")
	require.Less(t, float64(b.Facts.Covers.Value), 1., "of less than a square metre two digits are said")
	assert.Contains(t, text, plain.Replace(unit.Write(float64(b.Facts.Covers.Value), unit.InSquareMetre, 2))+" "+words.Covers)
	assert.Contains(t, text, written(b.Facts.Comb, unit.InMicrometre)+" "+words.Comb)
	m := b.Minutes
	end := float64(m.GelsUntil.Value)
	for class, span := range map[string][2]unit.Time{"tone0": {0, m.Mix.Value}, "tone4": {m.Mix.Value, m.Spread.Value}, "gel": {m.GelsFrom.Value, m.GelsUntil.Value}} {
		got := regexp.MustCompile(`<rect class="` + class + `" x="([\d.]+)" y="0" width="([\d.]+)"`).FindStringSubmatch(html)
		require.NotNil(t, got, class)
		assert.InDelta(t, 300*float64(span[0])/end, mustRead(t, got[1]), 0.06, class)
		assert.InDelta(t, 300*float64(span[1]-span[0])/end, mustRead(t, got[2]), 0.06, class)
	}
	assert.Contains(t, text, minutesOf(m.GelsUntil.Value))
	assert.Contains(t, text, "spread "+minutesOf(m.Spread.Value-m.Mix.Value))

	scale := view.Page(cups(t)["on the scale"]).String()
	var lines []string
	for _, l := range b.Weigh {
		name := ""
		if l.Card != nil {
			name = l.Card.Name
		}
		small := l.Own.String()
		if l.Share.Step != nil {
			small += ", " + unit.Write(float64(l.Share.Value), unit.InPercent, 2) + " by mass"
		}
		lines = append(lines, plain.Replace(words.PartName(l.Part, name)+" "+small+" "+l.Shows.Bare()+" g"))
	}
	require.Len(t, lines, 2, "gel coat and pigment")
	assert.Equal(t, strings.Join(lines, " "), textIn(regionOf(t, scale, "lines")))
	amount := plain.Replace(unit.Write(float64(b.Size.Mass.Value), unit.InGram, 3))
	assert.Contains(t, textIn(regionOf(t, scale, "sheet")), "Weigh: polyester gel coat, "+amount)
	weighed := cups(t)["weighed"]
	assert.Contains(t, textIn(regionOf(t, view.Page(weighed).String(), "sheet")), "Catalyst: polyester gel coat, "+amount)
	dose := textIn(regionOf(t, view.Page(weighed).String(), "dose"))
	assert.Contains(t, dose, words.CatalystOnce+" "+plain.Replace(b.Pour.Amount.String())+" the scale then shows "+b.Pour.Then.Bare())
	assert.Contains(t, textIn(regionOf(t, view.Page(weighed).String(), "from-here")), minutesOf(m.Spread.Value-m.Mix.Value)+" to spread from here")
}

func minutesOf(t unit.Time) string {
	return strings.ReplaceAll(unit.Write(float64(t), unit.InMinute, 2), "\u00a0", " ")
}

// Each thing's sheet is its own need and stock, its bars are what each input moves its need by, to one scale, and its picture
// marks both ways to buy.
func TestAThingsSheetIsItsOwn(t *testing.T) {
	s := sureOrder(t, "metric")
	amount := func(l *chance.Line, si float64) string { return page.AmountOf(max(0, si), l.Scale, s.Plan.Job.Units) }
	moved, likely := 0, 0
	for _, thing := range s.Things() {
		l := thing.Lines[0]
		html := view.Page(do(s, "sheet", "order."+thing.Key, "")).String()
		require.Contains(t, html, `data-sheet="order.`+thing.Key+`"`)
		if c := l.Confidence; c != nil {
			likely++
			part := regionOf(t, html, "likely-"+thing.Key)
			assert.Contains(t, part, strings.ReplaceAll(words.ChancePicture(l.Card.Name, words.OfTwenty(float64(c.Start.Buys.Chance)), words.OfTwenty(float64(c.AtOnce.Buys.Chance))), "&", "&amp;"))
			reach := 0.
			for _, e := range c.Effects {
				reach = max(reach, e.Low, -e.Low, e.High, -e.High)
			}
			bars := regexp.MustCompile(`<rect class="bar-of" x="([\d.]+)" y="3" width="([\d.]+)"`).FindAllStringSubmatch(part, -1)
			for i, bar := range bars {
				moved++
				e := c.Effects[i]
				low, high := "−"+amount(l, -e.Low), "+"+amount(l, e.High)
				assert.Contains(t, part, low+"</text>", "%s: %v", thing.Key, e)
				assert.Contains(t, part, high+"</text>", "%s: %v", thing.Key, e)
				assert.InDelta(t, 150+52*min(e.Low, e.High, 0)/reach, mustRead(t, bar[1]), 0.06)
				assert.InDelta(t, 52*(max(e.Low, e.High, 0)-min(e.Low, e.High, 0))/reach, mustRead(t, bar[2]), 0.11)
			}
			assert.LessOrEqual(t, len(bars), 3)
		} else if thing.WaitsFor == "" && l.Grade == 0 {
			text := textIn(html)
			assert.Contains(t, text, strings.ReplaceAll(page.Amount(l.Need, l.Scale, s.Plan.Job.Units), "\u00a0", " ")+" "+words.SheetNeed, thing.Key)
			assert.Contains(t, text, strings.ReplaceAll(page.Amount(l.Stock, l.Scale, s.Plan.Job.Units), "\u00a0", " ")+" "+words.SheetStock, thing.Key)
		}
		row := textIn(regionOf(t, view.Page(s).String(), "order."+thing.Key))
		assert.Contains(t, row, textIn(thing.Short)+" "+textIn(thing.Small), thing.Key)
		for _, pack := range strings.Split(thing.Packs, ", ") {
			assert.Contains(t, row, textIn(pack), thing.Key)
		}
	}
	assert.True(t, moved > 3 && likely > 1, "%d %d", moved, likely)
}

// What is left at the end is the last of the thinnest budget, by its names, and drawn 0.15 for a micron.
func TestWhatIsLeftIsTheLastOfTheBudget(t *testing.T) {
	s := madeUp("buildup")
	drawn := 0
	for _, b := range s.Plan.Buildups() {
		html := view.Page(do(s, "go", "buildup", b.Path)).String()
		for i := range b.Budgets() {
			w := &b.Budgets()[i]
			if len(w.Flat) == 0 {
				continue
			}
			last, _ := w.Last()
			left := regionOf(t, html, "left-"+b.Path)
			assert.Contains(t, textIn(left), "mean "+written(last.Mean, unit.InMicrometre)+" · thin side "+written(last.Thin, unit.InMicrometre))
			if last.Least.Thinnest.Step != nil {
				assert.Contains(t, textIn(left), "least "+written(last.Least.Thinnest, unit.InMicrometre))
			}
			heights := regexp.MustCompile(`<svg x="[\d.]+" y="[\d.]+" width="[\d.]+" height="([\d.]+)"`).FindAllStringSubmatch(left, -1)
			require.GreaterOrEqual(t, len(heights), 2)
			for i, f := range []unit.DryFilm{last.Mean.Value, last.Thin.Value} {
				assert.InDelta(t, max(2, 0.15*unit.InMicrometre.From(float64(f))), mustRead(t, heights[i][1]), 0.06)
				drawn++
			}
			break
		}
	}
	assert.Greater(t, drawn, 2)
}
