package draw

import "shedreckoner/wasm/markup"

// TradePlot is filler against cutting, to one scale.
type TradePlot struct {
	Title string // for those who don't see it
	Rows  [2]TradeRow
	Most  float64 // volume as long as the room
}

// TradeRow is one of the two: filler first, cutting second.
type TradeRow struct {
	Name, Text string
	Volume     float64
}

const (
	tradeName   = 64.
	tradeValue  = 84.
	tradeHeight = 26.
)

// Trade draws a bar each, hatched as in the map of hollows: dots are filled on,
// slants are cut off. A volume that is no number has no bar.
func Trade(p TradePlot) markup.HTML {
	const room = plotWidth - tradeName - tradeValue
	var parts []markup.HTML
	for i, r := range p.Rows {
		y := tradeHeight * float64(i)
		if isFinite(r.Volume, p.Most) && r.Volume > 0 && p.Most > 0 {
			wide := room * min(r.Volume/p.Most, 1)
			if i == 0 {
				parts = append(parts, rect("filler", tradeName, y+3, wide, tradeHeight-6), dots(tradeName, y+3, wide, tradeHeight-6, 8))
			} else {
				parts = append(parts, rect("tone0", tradeName, y+3, wide, tradeHeight-6), path("off", slants(tradeName, y+3, wide, tradeHeight-6, 6)))
			}
		}
		parts = append(parts, words("", "start", fitted(r.Name, tradeName-4), 0, y+tradeHeight/2),
			words("strong", "end", fitted(r.Text, tradeValue-4), plotWidth, y+tradeHeight/2))
	}
	return picture("trade", plotWidth, 2*tradeHeight, p.Title, parts...)
}
