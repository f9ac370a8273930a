package view_test

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// readPlot is a plot as a reader takes it: its lines in figures of its axes.
type readPlot struct {
	t      *testing.T
	markup string
	x, y   func(px float64) float64
}

var (
	upTick   = regexp.MustCompile(`<path class="grid" d="M([\d.]+) [\d.]+L([\d.]+) [\d.]+"/><text [^>]*text-anchor="middle"[^>]*>([^<]+)<`)
	sideTick = regexp.MustCompile(`<path class="grid" d="M[\d.]+ ([\d.]+)L[\d.]+ ([\d.]+)"/><text [^>]*text-anchor="end"[^>]*>([^<]+)<`)
	xy       = regexp.MustCompile(`(-?[\d.]+) (-?[\d.]+)`)
)

// plotNamed reads the plot whose title begins so.
func plotNamed(t *testing.T, s *page.State, title string) readPlot {
	t.Helper()
	for _, part := range strings.Split(view.Page(s).String(), `<svg class="picture plot"`)[1:] {
		_, label, _ := strings.Cut(part, `aria-label="`)
		if !strings.HasPrefix(label, title) {
			continue
		}
		p := readPlot{t: t, markup: part}
		p.x, p.y = p.scale(upTick), p.scale(sideTick)
		return p
	}
	require.Fail(t, "no such plot", title)
	return readPlot{}
}

// scale reads an axis off its first and last tick.
func (p readPlot) scale(tick *regexp.Regexp) func(float64) float64 {
	all := tick.FindAllStringSubmatch(p.markup, -1)
	require.GreaterOrEqual(p.t, len(all), 2)
	first, last := all[0], all[len(all)-1]
	px0, px1, at0, at1 := mustRead(p.t, first[1]), mustRead(p.t, last[1]), mustRead(p.t, strings.ReplaceAll(first[3], "−", "-")), mustRead(p.t, last[3])
	return func(px float64) float64 { return at0 + (px-px0)*(at1-at0)/(px1-px0) }
}

// line is the points of the n-th path of a class.
func (p readPlot) line(class string, n int) (points []draw.Point) {
	all := regexp.MustCompile(`<path class="`+class+`" d="([^"]*)"`).FindAllStringSubmatch(p.markup, -1)
	require.Greater(p.t, len(all), n, class)
	for _, m := range xy.FindAllStringSubmatch(all[n][1], -1) {
		points = append(points, draw.Point{X: p.x(mustRead(p.t, m[1])), Y: p.y(mustRead(p.t, m[2]))})
	}
	return points
}

// same holds drawn points to what they stand for, within a pixel's worth.
func (p readPlot) same(want, got []draw.Point, what string) {
	p.t.Helper()
	require.Len(p.t, got, len(want), what)
	nearX, nearY := math.Abs(p.x(0.6)-p.x(0)), math.Abs(p.y(0.6)-p.y(0))
	for i := range want {
		assert.InDelta(p.t, want[i].X, got[i].X, nearX, "%s, point %d", what, i)
		assert.InDelta(p.t, want[i].Y, got[i].Y, nearY, "%s, point %d", what, i)
	}
}

// Filler and cutting over the height of the datum, with the best of them marked where it is.
func TestThePlotOfADatumIsThePlans(t *testing.T) {
	s := do(fairState(t), "sheet", "buildup.1.step.1.why", "")
	g := s.Plan.Buildups()[0].Steps[0].Fill.Grid
	p := plotNamed(t, s, "Filler against cutting")
	var fill, cut []draw.Point
	for _, d := range g.Curve {
		fill = append(fill, draw.Point{X: float64(d.Raise) * 1000, Y: float64(d.Fill) * 1000})
		cut = append(cut, draw.Point{X: float64(d.Raise) * 1000, Y: float64(d.Cut) * 1000})
	}
	p.same(fill, p.line("curve", 0), "filler")
	p.same(cut, p.line("curve dashed", 0), "cut")
	dot := regexp.MustCompile(`<circle class="dot today" cx="([\d.]+)" cy="([\d.]+)"`).FindStringSubmatch(p.markup)
	require.NotNil(t, dot)
	p.same([]draw.Point{{X: float64(g.Best.Value) * 1000, Y: float64(g.BestFill.Value) * 1000}}, []draw.Point{{X: p.x(mustRead(t, dot[1])), Y: p.y(mustRead(t, dot[2]))}}, "best")
	assert.Contains(t, p.markup, ">best</text>")
	assert.Contains(t, plain(p.markup), plain(words.TradePicture(shownAs(g.Best, unit.InMillimetre), shownAs(g.BestFill, unit.InLitre), shownAs(g.BestCut, unit.InLitre))))
}

// The day's air, its dew point and the surface between them, the hours that are fit, and how long what is put on now takes to cure.
func TestThePlotOfADayIsTheDays(t *testing.T) {
	for _, lines := range [][]string{nil, {"day.today.low = 8", "day.today.high = 33", "day.today.sun = sun"}, {"day.today.read-humidity = 85"}} {
		s := do(with(cups(t)["planned"], lines...), "sheet", "air", "")
		out := &s.Bench().Air
		p := plotNamed(t, s, "Air, surface and dew point")
		var airLine, dew []draw.Point
		isApart := false
		for i := range 49 {
			at := unit.Time(i) * 1800
			off := out.Surface.By(out.Day, at)
			isApart = isApart || off.Least.Value < 0 || off.Most.Value > 0
			airLine = append(airLine, draw.Point{X: float64(i) / 2, Y: unit.InCelsius.From(float64(out.Day.Air(at)))})
			dew = append(dew, draw.Point{X: float64(i) / 2, Y: unit.InCelsius.From(float64(out.Day.Dew(at)))})
		}
		p.same(airLine, p.line("curve", 0), "air")
		p.same(dew, p.line("curve dashed", 0), "dew")
		assert.Equal(t, isApart, strings.Contains(p.markup, `<path class="band"`))
		if isApart {
			band := p.line("band", 0)
			for i := range 49 {
				at := unit.Time(i) * 1800
				off := out.Surface.By(out.Day, at)
				assert.InDelta(t, float64(off.Most.Value), band[i].Y-airLine[i].Y, 0.15, "hour %v", float64(i)/2)
				assert.InDelta(t, float64(off.Least.Value), band[97-i].Y-airLine[i].Y, 0.15, "hour %v", float64(i)/2)
			}
		}
		fit := regexp.MustCompile(`<rect class="shaded fit" x="([\d.]+)" y="[\d.]+" width="([\d.]+)"`).FindAllStringSubmatch(p.markup, -1)
		windows := out.Hours().Windows
		require.GreaterOrEqual(t, len(fit), len(windows)) // and one in the key
		for i, w := range windows {
			from := mustRead(t, fit[i][1])
			assert.InDelta(t, float64(w.From)/3600, p.x(from), 0.06)
			assert.InDelta(t, float64(w.To)/3600, p.x(from+mustRead(t, fit[i][2])), 0.06)
		}
		mark := regexp.MustCompile(`<path class="today" d="M([\d.]+) `).FindStringSubmatch(p.markup)
		assert.InDelta(t, 12, p.x(mustRead(t, mark[1])), 0.06, "now")
		assert.Contains(t, plain(p.markup), ">now 12:00</text>")
		course := regexp.MustCompile(`<rect class="course" x="([\d.]+)" y="[\d.]+" width="([\d.]+)"`).FindStringSubmatch(p.markup)
		require.NotNil(t, course)
		begin := mustRead(t, course[1])
		assert.InDelta(t, 12, p.x(begin), 0.06)
		assert.InDelta(t, min(12+float64(chain.AirLimits(s.Bench().Card).Cure)/3600, 24), p.x(begin+mustRead(t, course[2])), 0.06)
		for _, w := range windows {
			if float64(w.To) <= 12*3600 {
				continue
			}
			if latest, ok := w.LatestStart(s.Bench().Usable.Value); ok && latest > w.From && s.Bench().HasHand {
				assert.Contains(t, plain(p.markup), plain(words.LatestStart(words.Hour(latest))))
				late := regexp.MustCompile(`<path class="today dashed" d="M([\d.]+) `).FindStringSubmatch(p.markup)
				require.NotNil(t, late)
				assert.InDelta(t, float64(latest)/3600, p.x(mustRead(t, late[1])), 0.06)
			}
			break
		}
	}
}

// Gel time over temperature by the card's table, its band, today's point and the tin's own tests.
func TestThePlotOfAGelIsTheCards(t *testing.T) {
	for name, s := range map[string]*page.State{"made up": do(madeUpCup(), "sheet", "tin", ""), "untimed": do(cups(t)["planned"], "sheet", "tin", ""), "cold": do(with(cups(t)["planned"], "bench.now.surface-temp = 5"), "sheet", "tin", "")} {
		b := s.Bench()
		table, err := chain.DoseTable(b.Card)
		require.NoError(t, err)
		coldest, warmest := table.Ends()
		var mid, early, late []draw.Point
		for i := range 21 {
			at := working.Given(coldest+(warmest-coldest)*unit.Temperature(i)/20, "temperature", unit.InCelsius, "", source.Typed)
			share, err := table.At(at)
			require.NoError(t, err)
			gel, err := b.Gel.At(at, share)
			require.NoError(t, err)
			x := unit.InCelsius.From(float64(at.Value))
			mid, early, late = append(mid, draw.Point{X: x, Y: float64(gel.Mid.Value) / 60}), append(early, draw.Point{X: x, Y: float64(gel.Early.Value) / 60}), append(late, draw.Point{X: x, Y: float64(gel.Late.Value) / 60})
		}
		p := plotNamed(t, s, words.GelPicture)
		p.same(mid, p.line("curve", 0), name)
		band := p.line("band", 0)
		require.Len(t, band, 42)
		assert.InDelta(t, early[0].Y+late[0].Y, band[0].Y+band[41].Y, 0.5)
		assert.InDelta(t, late[20].Y-early[20].Y, math.Abs(band[21].Y-band[20].Y), 0.5)
		tests := regexp.MustCompile(`<circle class="dot tested" cx="([\d.]+)" cy="([\d.]+)"`).FindAllStringSubmatch(p.markup, -1)
		for i, test := range b.Tests {
			p.same([]draw.Point{{X: unit.InCelsius.From(float64(test.Temperature.Value)), Y: float64(test.Gel.Value) / 60}}, []draw.Point{{X: p.x(mustRead(t, tests[i][1])), Y: p.y(mustRead(t, tests[i][2]))}}, name)
		}
		dot := regexp.MustCompile(`<circle class="dot today" cx="([\d.]+)" cy="([\d.]+)"`).FindStringSubmatch(p.markup)
		require.Equal(t, b.HasHand, dot != nil, name)
		if b.HasHand {
			p.same([]draw.Point{{X: unit.InCelsius.From(float64(b.Surface.Value)), Y: float64(b.Hand.Film.Mid.Value) / 60}}, []draw.Point{{X: p.x(mustRead(t, dot[1])), Y: p.y(mustRead(t, dot[2]))}}, name)
		}
		shaded := regexp.MustCompile(`<rect class="shaded[^"]*" x="([\d.]+)" y="[\d.]+" width="([\d.]+)"`).FindStringSubmatch(p.markup)
		require.NotNil(t, shaded)
		ends := regexp.MustCompile(`<svg x="([\d.]+)" y="[\d.]+" width="([\d.]+)"`).FindStringSubmatch(p.markup)
		left, right := p.x(mustRead(t, ends[1])), p.x(mustRead(t, ends[1])+mustRead(t, ends[2]))
		assert.InDelta(t, max(left, unit.InCelsius.From(float64(b.Card.SurfaceLeast.Value))), p.x(mustRead(t, shaded[1])), 0.1)
		assert.InDelta(t, min(right, unit.InCelsius.From(float64(b.Card.SurfaceMost.Value))), p.x(mustRead(t, shaded[1])+mustRead(t, shaded[2])), 0.1)
		assert.Contains(t, plain(view.Page(s).String()), plain(words.GelFit(b.Gel.Fit)))
	}
	assert.NotContains(t, view.Page(do(cupOf(topcoatCup), "sheet", "tin", "")).String(), words.GelOverTemperature, "a fixed ratio has no table")
}
