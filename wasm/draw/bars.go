package draw

import "shedreckoner/wasm/markup"

// EffectBar is how much one input moves a total, at the low and at the high end
// of what it may be.
type EffectBar struct {
	Title             string // for those who don't see it
	Low, High         float64
	Reach             float64 // the longest reach of the bars beside it
	LowText, HighText string
}

const (
	effectHeight = 20.
	effectRoom   = 98. // for the text on either side
)

// Effect draws a bar about a line that is the plan, with what it comes to at its
// two ends; bars of one reach are to one scale.
func Effect(b EffectBar) markup.HTML {
	const middle, half = plotWidth / 2, plotWidth/2 - effectRoom
	parts := []markup.HTML{
		words("", "start", fitted(b.LowText, effectRoom-4), 0, effectHeight/2),
		words("", "end", fitted(b.HighText, effectRoom-4), plotWidth, effectHeight/2)}
	if b.Reach > 0 && isFinite(b.Low, b.High, b.Reach) {
		from := middle + half*max(-1, min(b.Low, b.High, 0)/b.Reach)
		to := middle + half*min(1, max(b.Low, b.High, 0)/b.Reach)
		parts = append(parts, rect("bar-of", from, 3, to-from, effectHeight-6))
	}
	return picture("effect", plotWidth, effectHeight, b.Title, append(parts, line("axis", middle, 0, middle, effectHeight))...)
}
