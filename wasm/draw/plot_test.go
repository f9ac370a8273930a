package draw_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/unit"
	"shedreckoner/wasm/draw"
)

func with(symbol string) func(float64) string {
	return func(n float64) string { return unit.Number(n, 4) + " " + symbol }
}

// gel is a curve that halves every 10 °C, with a band of a quarter about it.
func gel() draw.Plot {
	p := draw.Plot{Title: "Gel time against temperature: 20 min at 25 °C today",
		X: draw.Axis{Label: "surface", Ticks: draw.NiceTicks(10, 40, 6, with("°C"))}, Y: draw.Axis{Label: "gels after", Ticks: draw.NiceTicks(0, 70, 5, with("min"))},
		Shaded: []draw.Shade{{Name: "the card's range", Parts: []draw.Interval{{From: 15, To: 30}}}}, Marks: []draw.Mark{{Point: draw.Point{X: 25, Y: 20}, Class: "today", Text: "today: 20 min at 25 °C"}},
		Lines: []draw.Line{{Name: "middle", Class: "curve"}}, Band: draw.Band{Name: "early to late"}, Dots: []draw.Dots{{Name: "tin", Class: "tested", Points: []draw.Point{{X: 22, Y: 25}}}}}
	for c := 10.; c <= 40; c++ {
		minutes := 20 * math.Exp2((25-c)/10)
		p.Lines[0].Points = append(p.Lines[0].Points, draw.Point{X: c, Y: minutes})
		p.Band.Spans = append(p.Band.Spans, draw.Span{X: c, Low: minutes * 0.75, High: minutes * 1.25})
	}
	return p
}

func TestCurve(t *testing.T) {
	h := gel().Draw()
	list := texts(read(t, h))
	for _, want := range []string{"surface", "gels after", "0 min", "80 min", "10 °C", "today: 20 min at 25 °C", "early to late", "the card's range", "middle"} {
		assert.Contains(t, list, want)
	}
	assert.Contains(t, h.String(), `class="dot today"`)
	assert.Contains(t, h.String(), `class="dot tested"`)
}

func TestCurveStandsWhateverComes(t *testing.T) {
	for name, change := range map[string]func(*draw.Plot){
		"no mark":         func(p *draw.Plot) { p.Marks = nil },
		"mark outside":    func(p *draw.Plot) { p.Marks[0].X = 1e300 },
		"mark at the end": func(p *draw.Plot) { p.Marks[0].X = 40 },
		"wild points": func(p *draw.Plot) {
			p.Lines[0].Points[3].Y, p.Lines[0].Points[4].X, p.Band.Spans[2].High = math.NaN(), math.Inf(1), 1e308
		},
		"wild mark": func(p *draw.Plot) { p.Marks[0].Y = math.NaN() },
		"wild range": func(p *draw.Plot) {
			p.Shaded[0].Parts = []draw.Interval{{From: math.NaN(), To: 3}, {From: 30, To: 20}, {From: -1e308, To: 1e308}}
		},
		"no line": func(p *draw.Plot) { p.Lines, p.Band = nil, draw.Band{} },
		"long texts": func(p *draw.Plot) {
			p.Marks[0].Text, p.X.Label, p.Y.Label = long, long, long
			p.Lines[0].Name, p.Band.Name = long, long
		},
		"many ticks": func(p *draw.Plot) {
			p.X.Ticks, p.Y.Ticks = draw.NiceTicks(0, 99, 99, with("°C")), draw.NiceTicks(0, 99, 99, with("min"))
		},
		"long ticks": func(p *draw.Plot) {
			p.X.Ticks, p.Y.Ticks = draw.NiceTicks(0, 40, 4, with(long)), draw.NiceTicks(0, 70, 4, with(long))
		},
		"a tick of no use": func(p *draw.Plot) { p.X.Ticks[1].At, p.Y.Ticks[1].At = math.NaN(), math.Inf(-1) },
	} {
		t.Run(name, func(t *testing.T) {
			p := gel()
			change(&p)
			read(t, p.Draw())
		})
	}
	for name, axis := range map[string]draw.Axis{
		"none": {}, "one tick": {Ticks: []draw.Tick{{}}}, "no range": {Ticks: []draw.Tick{{}, {}}},
		"backwards": {Ticks: []draw.Tick{{At: 2}, {At: 1}}}, "too wide": {Ticks: []draw.Tick{{At: -math.MaxFloat64}, {At: math.MaxFloat64}}},
		"not a number": {Ticks: []draw.Tick{{At: math.NaN()}, {At: 1}}},
	} {
		p := gel()
		p.X = axis
		assert.True(t, p.Draw().IsEmpty(), name)
	}
}

var long = strings.Repeat("a long text ", 20)

func TestDay(t *testing.T) {
	upright := func(hour float64, text string) draw.Mark {
		return draw.Mark{Point: draw.Point{X: hour, Y: math.NaN()}, Class: "today", Text: text}
	}
	p := draw.Plot{Title: "The day", X: draw.Axis{Label: "hour", Ticks: draw.NiceTicks(0, 24, 6, with("h"))},
		Y:      draw.Axis{Label: "°C", Ticks: draw.NiceTicks(4, 28, 5, with("°C"))},
		Shaded: []draw.Shade{{Name: "fit to coat", Class: "fit", Parts: []draw.Interval{{From: 9.5, To: 16.25}}}},
		Lines:  []draw.Line{{Name: "air", Class: "curve"}, {Name: "dew point", Class: "curve dashed"}},
		Course: draw.Course{Name: "cures", Interval: draw.Interval{From: 13, To: 17}},
		Marks:  []draw.Mark{upright(13, "now 13:00"), upright(9.5, "fit 9:30 to 16:15"), upright(13.5, "start no later than 13:30")}}
	for h := 0.; h <= 24; h++ {
		p.Lines[0].Points = append(p.Lines[0].Points, draw.Point{X: h, Y: 16 - 8*math.Cos(h/12*math.Pi)})
		p.Lines[1].Points = append(p.Lines[1].Points, draw.Point{X: h, Y: 9})
	}
	list := texts(read(t, p.Draw()))
	for _, want := range []string{"now 13:00", "fit 9:30 to 16:15", "start no later than 13:30", "air", "dew point", "fit to coat", "cures"} {
		assert.Contains(t, list, want)
	}
	p.Marks[0].X, p.Lines[0].Points[2].Y = math.NaN(), math.NaN()
	read(t, p.Draw())
	p.Marks = append(p.Marks, upright(24, long), upright(0, long), upright(12, long))
	read(t, p.Draw())
	assert.True(t, draw.Plot{}.Draw().IsEmpty())
}

func TestNiceTicks(t *testing.T) {
	at := func(ticks []draw.Tick) (list []float64) {
		for _, tick := range ticks {
			list = append(list, tick.At)
		}
		return list
	}
	assert.Equal(t, []float64{10, 15, 20, 25, 30, 35}, at(draw.NiceTicks(12, 34, 5, with("°C"))))
	assert.Equal(t, []float64{-20, 0, 20}, at(draw.NiceTicks(-20, 20, 3, with("°C"))))
	for _, span := range [][2]float64{{18, 34}, {-3.4, 2.2}, {0.07, 0.09}, {999, 1001}, {-7, -1}} {
		ticks := draw.NiceTicks(span[0], span[1], 5, with("°C"))
		assert.LessOrEqual(t, ticks[0].At, span[0], "an axis begins before what it measures")
		assert.GreaterOrEqual(t, ticks[len(ticks)-1].At, span[1], "and ends after it")
		assert.Greater(t, ticks[1].At, span[0], "no tick too many")
		assert.Less(t, ticks[len(ticks)-2].At, span[1])
	}
	for _, bad := range [][2]float64{{1, 1}, {2, 1}, {math.NaN(), 1}, {0, math.Inf(1)}, {-math.MaxFloat64, math.MaxFloat64}, {1e300, math.Nextafter(1e300, 2e300)}} {
		assert.Empty(t, draw.NiceTicks(bad[0], bad[1], 5, with("")), bad)
	}
	assert.Empty(t, draw.NiceTicks(0, 1, 0, with("")))
	assert.LessOrEqual(t, len(draw.NiceTicks(0, math.SmallestNonzeroFloat64, 5, with(""))), 8)
}

func FuzzPlots(f *testing.F) {
	f.Add(10., 40., 0., 70., 25., 20.)
	f.Fuzz(func(t *testing.T, x1, x2, y1, y2, x, y float64) {
		p := gel()
		p.X.Ticks, p.Y.Ticks = draw.NiceTicks(x1, x2, 5, with("°C")), draw.NiceTicks(y1, y2, 5, with("min"))
		p.Marks[0].X, p.Marks[0].Y = x, y
		p.Lines[0].Points = append(p.Lines[0].Points, draw.Point{X: x, Y: y})
		p.Band.Spans = append(p.Band.Spans, draw.Span{X: x, Low: y, High: y2})
		p.Shaded[0].Parts = []draw.Interval{{From: x, To: y}}
		h := p.Draw()
		if !h.IsEmpty() {
			read(t, h)
		}
	})
}

// What lasts without an end that is known has no bar.
func TestACourseWithoutAnEndIsNotDrawn(t *testing.T) {
	for to, drawn := range map[float64]bool{30: true, 20: false, 15: false, math.Inf(1): false, math.NaN(): false} {
		p := gel()
		p.Course = draw.Course{Interval: draw.Interval{From: 20, To: to}}
		assert.Equal(t, drawn, strings.Contains(p.Draw().String(), `<rect class="course"`), "%v", to)
	}
}
