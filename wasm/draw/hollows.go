package draw

import (
	"math"

	"shedreckoner/wasm/markup"
)

// HollowMap is how deep a surface lies under its datum, row by row.
type HollowMap struct {
	Title  string
	Depths [][]float64                // not a number where nothing was read
	Text   func(depth float64) string // a depth as short as can be: the unit stands in the title or beside
	Coarse func(n int) string         // what stands below when a square is the deepest of n × n readings
	Names  [3]string                  // of the key: a hollow, a proud spot, the deepest of all
}

const (
	mapWidth    = 300.
	squareLeast = 26. // height of a square
	squareMost  = 60. // width of a square
)

// Map draws the depths as squares, each with its number, darker where deeper,
// slanted lines where proud; the deepest has a frame.
// Where the numbers of so many readings wouldn't fit, a square shows the deepest
// of its readings.
func Map(m HollowMap) markup.HTML {
	columns, rows, widest, deepest := m.size()
	if columns == 0 {
		return markup.HTML{}
	}
	n := blocks(columns, rows, widest)
	wide := min(mapWidth/math.Ceil(float64(columns)/float64(n)), squareMost)
	high := max(min(wide, squareLeast*1.5), squareLeast)
	var parts []markup.HTML
	y := 0.
	for r := 0; r < rows; r += n {
		for c, x := 0, 0.; c < columns; c, x = c+n, x+wide {
			parts = append(parts, m.square(x, y, wide, high, m.deepestOf(r, c, n), deepest))
		}
		y += high
	}
	if m.Names[0] != "" {
		y += lineHeight + 4
		parts = append(parts, m.key(y-lineHeight/2)...)
	}
	if n > 1 && m.Coarse != nil {
		for _, text := range wrapped(m.Coarse(n), mapWidth, 3) {
			y += lineHeight
			parts = append(parts, words("aside", "start", text, 0, y-lineHeight/2+4))
		}
	}
	return picture("map", mapWidth, y+6, m.Title, parts...)
}

// key names what the squares look like, below them.
func (m HollowMap) key(y float64) (parts []markup.HTML) {
	const wide, high, room = 18., 12., mapWidth / 3
	for i, name := range m.Names {
		x := room * float64(i)
		switch i {
		case 0:
			parts = append(parts, rect("tone2", x, y-high/2, wide, high))
		case 1:
			parts = append(parts, rect("tone0", x, y-high/2, wide, high), path("off", slants(x, y-high/2, wide, high, 5)))
		case 2:
			parts = append(parts, rect("tone4", x, y-high/2, wide, high), rect("frame", x+2, y-high/2+2, wide-4, high-4))
		}
		parts = append(parts, words("aside", "start", fitted(name, room-wide-8), x+wide+4, y))
	}
	return parts
}

// size gives the columns of the longest row, the rows, the width of the widest
// number and the largest depth.
func (m HollowMap) size() (columns, rows int, widest, deepest float64) {
	for _, row := range m.Depths {
		columns = max(columns, len(row))
		for _, d := range row {
			if isFinite(d) {
				widest, deepest = max(widest, textWidth(m.Text(d))), max(deepest, d)
			}
		}
	}
	return columns, len(m.Depths), widest, deepest
}

// blocks is how many readings a square stands for, each way: squares have room
// for their number, and the map isn't taller than twice its width.
func blocks(columns, rows int, widest float64) int {
	across := max(int(mapWidth/max(widest+6, squareLeast)), 1)
	down := int(math.Floor(2 * mapWidth / squareLeast))
	return max((columns+across-1)/across, (rows+down-1)/down, 1)
}

func (m HollowMap) deepestOf(row, column, n int) float64 {
	deepest := math.NaN()
	for _, cells := range m.Depths[row:min(row+n, len(m.Depths))] {
		for _, d := range cells[min(column, len(cells)):min(column+n, len(cells))] {
			if isFinite(d) && !(d <= deepest) {
				deepest = d
			}
		}
	}
	return deepest
}

const deepestTone = 4

func (m HollowMap) square(x, y, wide, high, depth, deepest float64) markup.HTML {
	if math.IsNaN(depth) {
		return rect("missing dashed", x, y, wide, high)
	}
	tone := 0.
	if deepest > 0 {
		tone = math.Round(deepestTone * (max(depth, 0) / deepest))
	}
	square := rect("tone"+num(tone), x, y, wide, high)
	switch {
	case depth < 0:
		square = markup.Join(square, path("off", slants(x, y, wide, high, 5)), rect("proud", x+1, y+1, wide-2, high-2))
	case depth > 0 && depth == deepest:
		square = markup.Join(square, rect("frame", x+2, y+2, wide-4, high-4))
	}
	label := "on" + num(tone)
	if depth < 0 {
		label = "haloed strong"
	}
	return markup.Join(square,
		words(label, "middle", fitted(m.Text(depth), wide), x+wide/2, y+high/2))
}
