package view

import (
	"math"
	"strconv"

	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// datum is the map of a grid with its deepest and proudest places, and how high
// the datum is laid: a slider, and beside it what filler and cutting come to.
func datum(s *page.State, path string) html {
	step := plannedStep(s, path)
	if step.Fill == nil || step.Fill.Grid == nil {
		return region("datum-"+path, "div", a("hidden", ""))
	}
	g := step.Fill.Grid
	return region("datum-"+path, "div", a("class", "datum"),
		region("map-"+path, "div", nil, hollowMap(s, g), el("p", a("class", "strong"), txt(words.Extremes(g, s.Plan.Job.Units.Scale(unit.Fills))))),
		slider(s, path, g),
		region("trade-"+path, "div", nil, tradeBars(s, &step, g), bestDatum(s, path, g)))
}

// sliderStops is about how many heights of the datum a slider goes through.
const sliderStops = 40

// slider lays the datum: from where nothing is filled up to where nothing is cut,
// and to where the straight-edge lay in any case.
func slider(s *page.State, path string, g *plan.Grid) html {
	scale := s.Plan.Job.Units.Scale(unit.Fills)
	deepest, proudest := g.Deepest.Depth-g.Raise.Value, g.Proudest.Depth-g.Raise.Value
	// to the last digit but a few, so that the slider is the same wherever it stands
	rounded := func(n float64) float64 { return math.Round(n*1e6) / 1e6 }
	low, high := rounded(scale.From(min(0, -float64(deepest)))), rounded(scale.From(max(0, -float64(proudest))))
	ticks := draw.NiceTicks(low, high, sliderStops, func(float64) string { return "" })
	if len(ticks) < 2 {
		return nothing
	}
	at, name := path+".raise", words.DatumRaised(scale.Symbol())
	number := func(n float64) string { return strconv.FormatFloat(rounded(n), 'f', -1, 64) }
	return el("label", a("class", "slider"),
		el("span", nil, txt(name)),
		region("raise-"+path, "output", nil, txt(of(s, g.Raise, unit.Fills))),
		markup.ControlFor("input", at, markup.Control{Value: number(scale.From(float64(g.Raise.Value)))},
			a("id", "slide-"+at, "type", "range", "min", number(ticks[0].At), "max", number(ticks[len(ticks)-1].At), "step", number(ticks[1].At-ticks[0].At), "aria-label", name)))
}

// tradeBars is the filler left on and the cutting at this height, to one scale.
func tradeBars(s *page.State, step *plan.Step, g *plan.Grid) html {
	fill, cut := step.Fill.Left, g.Cut
	most := max(float64(fill.Value), float64(cut.Value))
	for _, d := range g.Curve {
		most = max(most, float64(d.Fill), float64(d.Cut))
	}
	return draw.Trade(draw.TradePlot{Title: words.TradeNow(roughly(s, fill, unit.Volumes), roughly(s, cut, unit.Volumes)), Most: most,
		Rows: [2]draw.TradeRow{{Name: words.FillerLine, Text: roughly(s, fill, unit.Volumes), Volume: float64(fill.Value)},
			{Name: words.CutLine, Text: roughly(s, cut, unit.Volumes), Volume: float64(cut.Value)}}})
}

// bestDatum offers the height at which both together cost least, unless it is
// this one.
func bestDatum(s *page.State, path string, g *plan.Grid) html {
	if len(g.Curve) == 0 || math.Abs(float64(g.Best.Value-g.Raise.Value)) < 1e-6 {
		return nothing
	}
	scale := s.Plan.Job.Units.Scale(unit.Fills)
	return action("set", path+".raise", unit.Typed(float64(g.Best.Value), scale)+" "+scale.Symbol(),
		words.UseBestDatum(of(s, g.Best, unit.Fills), roughly(s, g.BestFill, unit.Volumes), roughly(s, g.BestCut, unit.Volumes)), "quiet")
}

// gridFigures is how the datum was laid, figure by figure.
func gridFigures(s *page.State, path string, g *plan.Grid) html {
	parts := []html{figure(s, path+".cut", words.CutOffProudSpots, of(s, g.Cut, unit.Volumes), g.Cut.Step)}
	if len(g.Curve) > 0 {
		parts = append(parts, tradePlot(s, g),
			figure(s, path+".best", words.RaiseDatumBy, of(s, g.Best, unit.Fills), g.Best.Step),
			figure(s, path+".bestfill", words.BestFills, of(s, g.BestFill, unit.Volumes), g.BestFill.Step),
			figure(s, path+".bestcut", words.BestCuts, of(s, g.BestCut, unit.Volumes), g.BestCut.Step))
	}
	return join(parts...)
}

func hollowMap(s *page.State, g *plan.Grid) html {
	scale := s.Plan.Job.Units.Scale(unit.Fills)
	depths := make([][]float64, len(g.Depths))
	for r, row := range g.Depths {
		for _, d := range row {
			depths[r] = append(depths[r], float64(d))
		}
	}
	return draw.Map(draw.HollowMap{
		Title:  words.MapOfDepths(g, scale),
		Depths: depths,
		Text:   func(d float64) string { return unit.Number(scale.From(d), 2) },
		Coarse: words.CoarseMap,
		Names:  words.MapKey,
	})
}

// tradePlot is filler and cutting over the height of the datum, as it lies now and
// where it takes least of both.
func tradePlot(s *page.State, g *plan.Grid) html {
	height, litres := s.Plan.Job.Units.Scale(unit.Fills), s.Plan.Job.Units.Scale(unit.Volumes)
	var fill, cut []draw.Point
	most := 0.
	for _, d := range g.Curve {
		x := height.From(float64(d.Raise))
		f, c := draw.Point{X: x, Y: litres.From(float64(d.Fill))}, draw.Point{X: x, Y: litres.From(float64(d.Cut))}
		fill, cut, most = append(fill, f), append(cut, c), max(most, f.Y, c.Y)
	}
	best := draw.Point{X: height.From(float64(g.Best.Value)), Y: litres.From(float64(g.BestFill.Value))}
	return draw.Plot{
		Title: words.TradePicture(of(s, g.Best, unit.Fills), of(s, g.BestFill, unit.Volumes), of(s, g.BestCut, unit.Volumes)),
		X:     draw.Axis{Label: words.RaisedAxis(height.Symbol()), Ticks: draw.NiceTicks(fill[0].X, fill[len(fill)-1].X, 4, shortTick)},
		Y:     draw.Axis{Label: litres.Symbol(), Ticks: draw.NiceTicks(0, max(most, best.Y), 4, shortTick)},
		Lines: []draw.Line{{Name: words.FillerLine, Class: "curve", Points: fill}, {Name: words.CutLine, Class: "curve dashed", Points: cut}},
		Marks: []draw.Mark{{Point: best, Class: "today", Text: words.BestHeight}},
	}.Draw()
}

func shortTick(n float64) string { return unit.Number(n, 2) }
