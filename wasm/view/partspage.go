package view

import (
	"math"

	"shedreckoner/calc/job"
	"shedreckoner/calc/surface"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// partsSheet shows every part in every state, made by the functions that make the
// screens: for looking at. No link leads to it, and its figures stand for any.
func partsSheet(s *page.State) shown {
	const any = words.PartsAny
	box := answerBox{Label: any, Hero: txt("3.9 g"), Twin: txt(any), Picture: partsTimeBar(), Facts: []fact{{"0.6 m²", any}, {"4", any}, {"334 µm", any}}}
	stopped := answerBox{Label: any, Stops: true, Hero: txt("–"), Twin: txt(any)}
	parts := []html{
		el("h3", nil, txt(words.PartsTitle)),
		dial(s, at("surface-temp"), dialLine{Small: any}), dial(s, at("amount"), dialLine{Small: any, Default: "100 g"}), plainLine(s, "name", any),
		chips(s, at("tool"), any, ""), picker(s, at("catalyst"), any, []job.Option{{Key: "a", Name: any}}, any, any),
		answerOf("parts-answer", box), answerOf("parts-stopped", stopped)}
	for _, is := range []string{holds, asks, stops, unchecked} {
		parts = append(parts, verdict(is, is+":", any, ""), verdict(is, is+":", any, page.PartsSheet+"."+is))
	}
	parts = append(parts, setup("parts", any, page.PartsSheet+".setup"), tape("parts-tape", any), total("parts-total", any, "412.00"),
		listRow(page.PartsSheet+".row", draw.Thumb(surface.Find("box").Sketch(surface.Input{})), any, any, "2.4 m²"),
		action("go", "cup", "parts", any, "quiet"), second("go", "cup", "parts", any))
	return shown{Title: words.PartsTitle, Body: join(append(parts, partsPictures()...)...), Act: act("back", "", "", words.Done)}
}

func partsTimeBar() html {
	return draw.TimeBar(draw.TimeBarPlot{Title: words.PartsAny, Mixed: 2, Spread: 9, From: 12, Until: 20, SpreadNames: []string{words.PartsAny}, GelNames: []string{words.PartsAny}, End: "20 min", Text: tickText})
}

// partsPictures is every picture, and every layer of a stack.
func partsPictures() []html {
	ticks := draw.NiceTicks(0, 30, 3, tickText)
	curve := []draw.Point{{X: 0, Y: 25}, {X: 15, Y: 12}, {X: 30, Y: 8}}
	plot := draw.Plot{Title: words.PartsAny, X: draw.Axis{Label: "x", Ticks: ticks}, Y: draw.Axis{Label: "y", Ticks: ticks},
		Lines:  []draw.Line{{Name: "curve", Class: "curve", Points: curve}, {Name: "dashed", Class: "curve dashed", Points: []draw.Point{{X: 0, Y: 3}, {X: 30, Y: 4}}}},
		Band:   draw.Band{Name: "band", Spans: []draw.Span{{X: 0, Low: 20, High: 29}, {X: 30, Low: 5, High: 11}}},
		Shaded: []draw.Shade{{Name: "fit", Class: "fit", Parts: []draw.Interval{{From: 5, To: 25}}}},
		Dots:   []draw.Dots{{Name: "tested", Class: "tested", Points: []draw.Point{{X: 10, Y: 18}}}, {Name: "other", Class: "other", Points: curve}},
		Course: draw.Course{Name: "course", Interval: draw.Interval{From: 12, To: 18}},
		Marks: []draw.Mark{{Point: curve[1], Class: "today", Text: "today"}, {Point: draw.Point{X: 22, Y: math.NaN()}, Class: "today dashed", Text: "later"},
			{Point: draw.Point{X: 5, Y: math.NaN()}, Class: "edge", Text: "edge"}}}
	list := []html{plot.Draw(),
		draw.Ring(draw.RingPlot{Title: words.PartsAny, Left: 0.6, Marks: []float64{0.7, 0.9}}), draw.Ring(draw.RingPlot{Title: words.PartsAny, Left: 0.2, Class: "last"}),
		draw.Left(draw.LeftPlot{Title: words.PartsAny, Least: 2, Text: "2", Rows: []draw.LeftRow{{Name: "a", Text: "4", Film: 4}, {Name: "b", Text: "1", Film: 1}}}),
		draw.Takes(draw.TakesPlot{Title: words.PartsAny, Plan: words.PartsAny, Likely: words.PartsAny, Entries: []float64{0.9, 1.3}, Comes: 1.1, Low: 0.8, High: 1.5}),
		draw.Effect(draw.EffectBar{Title: words.PartsAny, Low: -1, High: 2, Reach: 2, LowText: "−1 kg", HighText: "+2 kg"}),
		draw.Map(draw.HollowMap{Title: words.PartsAny, Text: tickText, Depths: [][]float64{{0, 1, 2, 3, 4}, {-2, -1, math.NaN(), 4, 5}}, Names: words.MapKey})}
	var layers []html
	for stuff := draw.Ground; stuff <= draw.Washed; stuff++ {
		swatch := draw.Swatch{Stuff: stuff, Height: rowHeight, Broken: stuff == draw.Filling}
		if stuff == draw.GelCoatFilm {
			swatch.Least = 0.3
		}
		layers = append(layers, el("div", a("class", "layer ground"), el("span", a("class", "seen"), swatch.Layer()), el("span", a("class", "name"), txt(words.PartsAny))))
	}
	layers = append(layers, el("div", a("class", "layer ground"), el("span", a("class", "seen"), draw.Ends{Stuff: draw.GelCoatFilm, Films: []float64{60, 40, 20}, Least: 30}.Layer()), el("span", a("class", "name"), txt(words.PartsAny))))
	list = append(list, el("div", a("class", "layers"), layers...),
		draw.Trade(draw.TradePlot{Title: words.PartsAny, Most: 2, Rows: [2]draw.TradeRow{{Name: words.FillerLine, Text: "2 L", Volume: 2}, {Name: words.CutLine, Text: "1 L", Volume: 1}}}),
		draw.Sketch(surface.Find("trapezium").Sketch(surface.Input{}), words.PartsAny))
	var tiles []html
	for _, shape := range surface.Shapes {
		tiles = append(tiles, tile("parts-", "go", "cup", shape.Key, "", draw.Thumb(shape.Sketch(surface.Input{})), words.ShapeTile(shape)))
	}
	return append(list, el("div", a("class", "tiles"), tiles...))
}
