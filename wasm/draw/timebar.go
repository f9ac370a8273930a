package draw

import (
	"strings"

	"shedreckoner/wasm/markup"
)

// TimeBarPlot is a cup's time from catalyst in: mixed, spread, and when it gels.
// The ends are in one unit, each no sooner than the one before.
type TimeBarPlot struct {
	Title                      string // for those who don't see it
	Mixed, Spread, From, Until float64
	SpreadNames, GelNames      []string // of the two pieces, the fullest first: the first whose lines fit is written
	End                        string   // of the last end with its unit; the others are bare
	Text                       func(float64) string
}

const (
	timeBarWidth  = 300.
	timeBarHeight = 40.
)

// TimeBar draws a cup's time as one bar with its ends below. Of ends
// that are no numbers or out of order it draws nothing.
func TimeBar(p TimeBarPlot) markup.HTML {
	ends := []float64{0, p.Mixed, p.Spread, p.From, p.Until}
	for i := 1; i < len(ends); i++ {
		if !isFinite(ends[i]) || ends[i] < ends[i-1] || p.Until <= 0 {
			return markup.HTML{}
		}
	}
	x := func(t float64) float64 { return t / p.Until * timeBarWidth }
	parts := []markup.HTML{rect("ground", 0, 0, timeBarWidth, timeBarHeight)}
	if w := x(p.Mixed); w > 0 {
		parts = append(parts, rect("tone0", 0, 0, w, timeBarHeight), hatch(0, 0, w, timeBarHeight, 6))
	}
	parts = append(parts, rect("tone4", x(p.Mixed), 0, x(p.Spread)-x(p.Mixed), timeBarHeight), rect("gel", x(p.From), 0, x(p.Until)-x(p.From), timeBarHeight))
	name := func(class string, names []string, from, to float64) {
		for _, text := range names {
			lines, widest := strings.Split(text, "\n"), 0.
			for _, l := range lines {
				widest = max(widest, textWidth(l))
			}
			if width := x(to) - x(from); widest <= width {
				top := (timeBarHeight - lineHeight*float64(len(lines)-1)) / 2
				for i, l := range lines {
					parts = append(parts, words(class, "middle", l, x(from)+width/2, top+lineHeight*float64(i)))
				}
				return
			}
		}
	}
	name("on4 strong", p.SpreadNames, p.Mixed, p.Spread)
	name("", p.GelNames, p.From, p.Until)
	parts = append(parts, p.scale(ends, x)...)
	return picture("timebar", timeBarWidth, timeBarHeight+lineHeight+2, p.Title, parts...)
}

// scale writes the ends below the bar; of two that would touch the later one is
// left out, but for the last.
func (p TimeBarPlot) scale(ends []float64, x func(float64) float64) []markup.HTML {
	const y, gap = timeBarHeight + lineHeight/2 + 2, 4.
	last := len(ends) - 1
	parts := []markup.HTML{words("aside", "end", p.End, timeBarWidth, y)}
	free, until := -gap, timeBarWidth-textWidth(p.End)-gap
	for i, end := range ends[:last] {
		text, anchor, at := p.Text(end), "middle", x(end)
		from, to := at-textWidth(text)/2, at+textWidth(text)/2
		if i == 0 {
			anchor, from, to = "start", 0, textWidth(text)
		}
		if from >= free+gap && to <= until {
			parts = append(parts, words("aside", anchor, text, at, y))
			free = to
		}
	}
	return parts
}
