package words

import (
	"strconv"

	"shedreckoner/calc/fairing"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// Hollows and what fills them.
const (
	ReadingsTitle     = "Readings, from the straight-edge to the surface"
	ReadingsHint      = "A hollow is above zero, a proud spot below. Enter goes on to the next reading, and adds a row. Rows can be pasted into any reading."
	AddARow           = "Add a row"
	FillGrid          = "Fill the grid with the pasted rows"
	RowLengthFirst    = "Type above how many readings a row has."
	ProudButton       = "− Proud: the last reading"
	RemoveTheRow      = "Remove the row"
	PlacesToFill      = "Places to fill"
	AddAPlace         = "Add a place"
	BattenHollowHint  = "Length and width over all, the depth under the batten at its deepest."
	TroughHint        = "Width across, the depth in the middle, and how long it runs."
	FilletHint        = "The radius of the rounded corner, and the angle inside it: 90 degrees for a square corner."
	DeepestPutOn      = "Put on at the deepest place"
	FillerThatStaysOn = "Filler that stays on"
	PutOnInAll        = "Put on, with what is sanded off again"
	MassThatStays     = "Mass that stays on the boat"
	CutOffProudSpots  = "Cut off proud spots"
	RaiseDatumBy      = "Best height: raise the datum by"
	BestFills         = "There it takes filler"
	BestCuts          = "and cutting"
	NothingToFill     = "Nothing to fill."
)

// ReadingRow heads a row of readings.
func ReadingRow(n int, readings string) string { return "Row " + strconv.Itoa(n) + ": " + readings }

// CellName names a reading of a grid by its place, both counted from 0.
func CellName(row, column int) string {
	return "Row " + strconv.Itoa(row+1) + ", reading " + strconv.Itoa(column+1)
}

// Extremes names the deepest and the proudest place of a grid of readings.
func Extremes(g *plan.Grid, scale unit.Scale) string {
	place := func(c fairing.Cell) string { return lower(CellName(c.Row, c.Column)) }
	text := NothingToFill
	if g.Deepest.Depth > 0 {
		text = "Deepest: " + place(g.Deepest) + ", " + unit.Write(float64(g.Deepest.Depth), scale, 2) + " to fill."
	}
	if g.Proudest.Depth < 0 {
		return text + " Proudest: " + place(g.Proudest) + ", " + unit.Write(-float64(g.Proudest.Depth), scale, 2) + " to cut."
	}
	return text + " Nothing is proud."
}

// MapOfDepths says in words what the map of a grid shows.
func MapOfDepths(g *plan.Grid, scale unit.Scale) string {
	return "Map of depths in " + scale.Symbol() + ". " + Extremes(g, scale)
}

// CoarseMap says that a square of the map stands for n × n readings.
func CoarseMap(n int) string {
	return "Each square shows the deepest of " + strconv.Itoa(n) + " × " + strconv.Itoa(n) + " readings."
}
