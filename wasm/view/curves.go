package view

import (
	"math"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// dayCurve is today's air, surface and dew point, the hours that are fit to work
// in, and how long a cup that is put on now takes to cure.
func dayCurve(s *page.State) html {
	out := &s.Bench().Air
	scale := s.Plan.Job.Units.Scale(unit.Temperatures)
	var airLine, dewLine []draw.Point
	var surface []draw.Span
	low, high := out.Day.Dew(0), out.Day.Air(0)
	isApart := false
	for i := range 49 {
		at := unit.Time(i) * unit.Hour / 2
		x := float64(i) / 2
		t, dew, off := out.Day.Air(at), out.Day.Dew(at), out.Surface.By(out.Day, at)
		least, most := t+unit.Temperature(off.Least.Value), t+unit.Temperature(off.Most.Value)
		isApart = isApart || least < t || most > t
		low, high = min(low, dew, least), max(high, t, most)
		airLine = append(airLine, draw.Point{X: x, Y: scale.From(float64(t))})
		dewLine = append(dewLine, draw.Point{X: x, Y: scale.From(float64(dew))})
		surface = append(surface, draw.Span{X: x, Low: scale.From(float64(least)), High: scale.From(float64(most))})
	}
	if !isApart { // nothing but the air's own line
		surface = nil
	}
	var fit []draw.Interval
	for _, w := range out.Hours().Windows {
		fit = append(fit, draw.Interval{From: hoursOf(w.From), To: hoursOf(w.To)})
	}
	now := hoursOf(unit.Time(s.Now.Day))
	return draw.Plot{
		Title:  words.DayPicture(words.Hours(out.Hours().Windows)),
		X:      draw.Axis{Label: words.HourAxis, Ticks: []draw.Tick{{At: 0, Text: "0"}, {At: 6, Text: "6"}, {At: 12, Text: "12"}, {At: 18, Text: "18"}, {At: 24, Text: "24"}}},
		Y:      draw.Axis{Label: scale.Symbol(), Ticks: draw.NiceTicks(scale.From(float64(low)), scale.From(float64(high)), 5, tickText)},
		Lines:  []draw.Line{{Name: words.Air, Class: "curve", Points: airLine}, {Name: words.DewPoint, Class: "curve dashed", Points: dewLine}},
		Band:   draw.Band{Name: words.SurfaceName, Spans: surface},
		Shaded: []draw.Shade{{Name: words.FitHours, Class: "fit", Parts: fit}},
		Course: draw.Course{Name: words.CupCures, Interval: draw.Interval{From: now, To: min(now+hoursOf(chain.AirLimits(s.Bench().Card).Cure), 24)}},
		Marks:  dayMarks(s, now),
	}.Draw()
}

func hoursOf(t unit.Time) float64 { return float64(t / unit.Hour) }

// dayMarks are the window that counts, now, and the latest start.
func dayMarks(s *page.State, now float64) []draw.Mark {
	upright := func(class, text string, hour float64) draw.Mark {
		return draw.Mark{Point: draw.Point{X: hour, Y: math.NaN()}, Class: class, Text: text}
	}
	marks := []draw.Mark{upright("today", words.NowAt(words.Clock(s.Now.Day)), now)}
	for _, w := range s.Bench().Air.Hours().Windows {
		if hoursOf(w.To) <= now {
			continue
		}
		marks = append(marks, upright("edge", words.FitFrom(words.Hour(w.From), words.Hour(w.To)), hoursOf(w.From)))
		if at, ok := w.LatestStart(s.Bench().Usable.Value); ok && at > w.From && s.Bench().HasHand {
			marks = append(marks, upright("today dashed", words.LatestStart(words.Hour(at)), hoursOf(at)))
		}
		break
	}
	return marks
}

func tickText(n float64) string { return unit.Number(n, 4) }

// benchTable is the catalyst table of the card on the bench; a fixed ratio has
// none, nor has a card whose table can't be read.
func benchTable(b *bench.Bench) (cure.Table, bool) {
	if b.Card == nil || b.IsRatio {
		return cure.Table{}, false
	}
	table, err := chain.DoseTable(b.Card)
	return table, err == nil
}

// gelSection is the gel time over temperature, with today's point and the tin's
// own tests.
func gelSection(s *page.State) html {
	b := s.Bench()
	table, ok := benchTable(b)
	if !ok {
		return nothing
	}
	scale := s.Plan.Job.Units.Scale(unit.Temperatures)
	coldest, warmest := table.Ends()
	var line []draw.Point
	var band []draw.Span
	most := 0.0
	for i := range 21 {
		t := coldest + (warmest-coldest)*unit.Temperature(i)/20
		at := working.Given(t, "temperature", unit.InCelsius, "", source.Typed)
		share, err := table.At(at)
		if err != nil {
			continue
		}
		gel, err := b.Gel.At(at, share)
		if err != nil {
			continue
		}
		x := scale.From(float64(t))
		line = append(line, draw.Point{X: x, Y: unit.InMinute.From(float64(gel.Mid.Value))})
		span := draw.Span{X: x, Low: unit.InMinute.From(float64(gel.Early.Value)), High: unit.InMinute.From(float64(gel.Late.Value))}
		band, most = append(band, span), max(most, span.High)
	}
	if len(line) < 2 {
		return nothing
	}
	return join(el("h2", nil, txt(words.GelOverTemperature)), gelCurve(s, scale, line, band, most), hint(words.GelFit(b.Gel.Fit)))
}

func gelCurve(s *page.State, scale unit.Scale, line []draw.Point, band []draw.Span, most float64) html {
	b := s.Bench()
	point := func(t unit.Temperature, gel unit.Time) draw.Point {
		return draw.Point{X: scale.From(float64(t)), Y: unit.InMinute.From(float64(gel))}
	}
	low, high := line[0].X, line[len(line)-1].X
	var tests []draw.Point
	for _, t := range b.Tests {
		p := point(t.Temperature.Value, t.Gel.Value)
		tests, most, low, high = append(tests, p), max(most, p.Y), min(low, p.X), max(high, p.X)
	}
	plot := draw.Plot{
		Title:  words.GelPicture,
		X:      draw.Axis{Label: words.SurfaceAxis(scale.Symbol()), Ticks: draw.NiceTicks(low, high, 5, tickText)},
		Y:      draw.Axis{Label: unit.InMinute.Symbol(), Ticks: draw.NiceTicks(0, most, 5, tickText)},
		Lines:  []draw.Line{{Name: words.GelMiddle, Class: "curve", Points: line}},
		Band:   draw.Band{Name: words.GelBand, Spans: band},
		Dots:   []draw.Dots{{Name: words.TinsTests, Class: "tested", Points: tests}},
		Shaded: []draw.Shade{{Name: words.CardsRange, Parts: []draw.Interval{{From: scale.From(float64(b.Card.SurfaceLeast.Value)), To: scale.From(float64(b.Card.SurfaceMost.Value))}}}},
	}
	if b.HasHand {
		mid := b.Hand.Film.Mid.Value
		plot.Marks = []draw.Mark{{Point: point(s.Plan.Job.Bench.Surface.Value, mid), Class: "today", Text: words.NowAt(minutes(mid))}}
	}
	return plot.Draw()
}
