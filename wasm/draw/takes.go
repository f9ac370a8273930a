package draw

import (
	"math"

	"shedreckoner/wasm/markup"
)

// TakesPlot is what was used as a multiple of what was planned: each entry, what
// they come to, and the band that the next work likely lies in.
type TakesPlot struct {
	Title   string // for those who don't see it
	Plan    string // the label at one
	Likely  string // what the band is
	Entries []float64
	Comes   float64 // what the entries come to
	Low     float64 // of the band
	High    float64
}

const (
	takesMiddle = lineHeight + 14.
	takesHeight = 2*lineHeight + 28.
	takesMargin = 12.
	takesBand   = 12.
	takesTick   = 9.
)

// Takes draws a line of factors, half of the plan as far from it as twice: the
// plan dashed, the band as a bar, the entries as rings, what they come to as a
// full diamond. Without a band it draws nothing.
func Takes(p TakesPlot) markup.HTML {
	if !isFinite(p.Low, p.High, p.Comes) || p.Low <= 0 || p.High <= p.Low || p.Comes <= 0 {
		return markup.HTML{}
	}
	reach := math.Log(1.25)
	far := func(factor float64) { reach = max(reach, math.Abs(math.Log(factor))) }
	far(p.Low)
	far(p.High)
	far(p.Comes)
	for _, e := range p.Entries {
		if isFinite(e) && e > 0 {
			far(e)
		}
	}
	const middle = plotWidth / 2
	x := func(factor float64) float64 { return middle + (middle-takesMargin)*math.Log(factor)/reach }
	parts := []markup.HTML{
		line("axis", 0, takesMiddle, plotWidth, takesMiddle),
		rect("likely", x(p.Low), takesMiddle-takesBand/2, x(p.High)-x(p.Low), takesBand),
		line("today dashed", middle, lineHeight, middle, takesMiddle+takesTick)}
	for _, e := range p.Entries {
		if isFinite(e) && e > 0 {
			parts = append(parts, circle("other", x(e), takesMiddle))
		}
	}
	likely := fitted(p.Likely, plotWidth)
	half := textWidth(likely) / 2
	return picture("takes", plotWidth, takesHeight, p.Title, append(parts,
		path("comes", diamond(x(p.Comes), takesMiddle, takesTick)),
		words("aside", "middle", fitted(p.Plan, plotWidth), middle, lineHeight/2),
		words("", "middle", likely, max(half, min((x(p.Low)+x(p.High))/2, plotWidth-half)), takesHeight-lineHeight/2))...)
}

func diamond(x, y, r float64) string {
	return "M" + num(x-r) + " " + num(y) + "L" + num(x) + " " + num(y-r) + "L" + num(x+r) + " " + num(y) + "L" + num(x) + " " + num(y+r) + "Z"
}
