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
func gel() draw.CurvePlot {
	p := draw.CurvePlot{Title: "Gel time against temperature: 20 min at 25 °C today",
		X: draw.Axis{Label: "surface", Ticks: draw.NiceTicks(10, 40, 6, with("°C"))}, Y: draw.Axis{Label: "gels after", Ticks: draw.NiceTicks(0, 70, 5, with("min"))},
		Shaded: []draw.Interval{{From: 15, To: 30}}, Mark: &draw.Mark{Point: draw.Point{X: 25, Y: 20}, Text: "today: 20 min at 25 °C"},
		LineName: "middle", BandName: "early to late", ShadedName: "the card's range"}
	for c := 10.; c <= 40; c++ {
		minutes := 20 * math.Exp2((25-c)/10)
		p.Line = append(p.Line, draw.Point{X: c, Y: minutes})
		p.Band = append(p.Band, draw.Span{X: c, Low: minutes * 0.75, High: minutes * 1.25})
	}
	return p
}

func TestCurve(t *testing.T) {
	h := draw.Curve(gel())
	list := texts(read(t, h))
	for _, want := range []string{"surface", "gels after", "0 min", "80 min", "10 °C", "today: 20 min at 25 °C", "early to late", "the card's range", "middle"} {
		assert.Contains(t, list, want)
	}
	assert.Contains(t, h.String(), `class="dot"`)
}

func TestCurveStandsWhateverComes(t *testing.T) {
	for name, change := range map[string]func(*draw.CurvePlot){
		"no mark":         func(p *draw.CurvePlot) { p.Mark = nil },
		"mark outside":    func(p *draw.CurvePlot) { p.Mark.X = 1e300 },
		"mark at the end": func(p *draw.CurvePlot) { p.Mark.X = 40 },
		"wild points":     func(p *draw.CurvePlot) { p.Line[3].Y, p.Line[4].X, p.Band[2].High = math.NaN(), math.Inf(1), 1e308 },
		"wild mark":       func(p *draw.CurvePlot) { p.Mark.Y = math.NaN() },
		"wild range": func(p *draw.CurvePlot) {
			p.Shaded = []draw.Interval{{From: math.NaN(), To: 3}, {From: 30, To: 20}, {From: -1e308, To: 1e308}}
		},
		"no line": func(p *draw.CurvePlot) { p.Line, p.Band = nil, nil },
		"long texts": func(p *draw.CurvePlot) {
			p.Mark.Text, p.X.Label, p.Y.Label = long, long, long
			p.LineName, p.BandName = long, long
		},
		"many ticks": func(p *draw.CurvePlot) {
			p.X.Ticks, p.Y.Ticks = draw.NiceTicks(0, 99, 99, with("°C")), draw.NiceTicks(0, 99, 99, with("min"))
		},
		"long ticks": func(p *draw.CurvePlot) {
			p.X.Ticks, p.Y.Ticks = draw.NiceTicks(0, 40, 4, with(long)), draw.NiceTicks(0, 70, 4, with(long))
		},
		"a tick of no use": func(p *draw.CurvePlot) { p.X.Ticks[1].At, p.Y.Ticks[1].At = math.NaN(), math.Inf(-1) },
	} {
		t.Run(name, func(t *testing.T) {
			p := gel()
			change(&p)
			read(t, draw.Curve(p))
		})
	}
	for name, axis := range map[string]draw.Axis{
		"none": {}, "one tick": {Ticks: []draw.Tick{{}}}, "no range": {Ticks: []draw.Tick{{}, {}}},
		"backwards": {Ticks: []draw.Tick{{At: 2}, {At: 1}}}, "too wide": {Ticks: []draw.Tick{{At: -math.MaxFloat64}, {At: math.MaxFloat64}}},
		"not a number": {Ticks: []draw.Tick{{At: math.NaN()}, {At: 1}}},
	} {
		p := gel()
		p.X = axis
		assert.True(t, draw.Curve(p).IsEmpty(), name)
	}
}

var long = strings.Repeat("a long text ", 20)

func TestDay(t *testing.T) {
	p := draw.DayPlot{Title: "The day", Hours: draw.Axis{Label: "hour", Ticks: draw.NiceTicks(0, 24, 6, with("h"))},
		Degrees: draw.Axis{Label: "°C", Ticks: draw.NiceTicks(4, 28, 5, with("°C"))},
		Working: []draw.Interval{{From: 9.5, To: 16.25}}, Now: &draw.Moment{At: 13, Text: "now 13:00"},
		LatestStart: &draw.Moment{At: 13.5, Text: "start no later than 13:30"}, AirName: "air", DewName: "dew point", WorkingName: "fit to work"}
	for h := 0.; h <= 24; h++ {
		p.Air = append(p.Air, draw.Point{X: h, Y: 16 - 8*math.Cos(h/12*math.Pi)})
		p.Dew = append(p.Dew, draw.Point{X: h, Y: 9})
	}
	list := texts(read(t, draw.Day(p)))
	for _, want := range []string{"now 13:00", "start no later than 13:30", "air", "dew point", "fit to work"} {
		assert.Contains(t, list, want)
	}
	p.Now, p.LatestStart.At, p.Air[2].Y = nil, math.NaN(), math.NaN()
	read(t, draw.Day(p))
	p.LatestStart = &draw.Moment{At: 24, Text: long}
	read(t, draw.Day(p))
	assert.True(t, draw.Day(draw.DayPlot{}).IsEmpty())
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
		p.Mark.X, p.Mark.Y = x, y
		p.Line = append(p.Line, draw.Point{X: x, Y: y})
		p.Band = append(p.Band, draw.Span{X: x, Low: y, High: y2})
		p.Shaded = []draw.Interval{{From: x, To: y}}
		h := draw.Curve(p)
		if !h.IsEmpty() {
			read(t, h)
		}
	})
}
