package job

import (
	"math"
	"strings"

	"shedreckoner/calc/fairing"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// The answers of a fill step's choice.
const (
	FillMean = "mean"
	FillGrid = "grid"
	FillSpot = "spots"
)

// Hollows is how the filler of a fill step was measured, other than by a mean
// thickness.
type Hollows struct {
	By    string
	Grid  Grid
	Spots []Spot
}

// Grid is readings from a straight-edge or batten to the surface.
type Grid struct {
	RowPaths          []string
	Rows              []string // the readings of each row, as typed
	Columns           int      // 0: not typed
	RowGap, ColumnGap working.Figure[unit.Length]
	Alike             working.Figure[unit.Factor]
	Raise             working.Figure[unit.Length] // of the datum; below zero: lower
	CutMost           working.Figure[unit.Length]
	CutCost           working.Figure[unit.Factor] // of a litre cut, in litres filled
}

// The answers of what a spot is.
const (
	BattenHollow = "batten"
	Trough       = "trough"
	Fillet       = "fillet"
)

// Spot is one hollow, trough or fillet, or several alike.
type Spot struct {
	Path                 string
	Kind                 string
	Length, Width, Depth working.Figure[unit.Length]
	Radius               working.Figure[unit.Length]
	Angle                working.Figure[unit.Angle]
	Alike                working.Figure[unit.Factor]
}

const maxDepth = 0.5 * float64(unit.Metre)

// fillFields are the fields of a fill step.
var fillFields = []*Field{
	{Key: "putty", Name: "mixed by hand as", Kind: Words, Optional: true},
	{Key: "fill-by", Name: "how much to fill", Kind: Choice, Options: []Option{
		{FillMean, "mean thickness"}, {FillGrid, "grid of readings"}, {FillSpot, "hollows, fillets"}}},
	{Key: "row-gap", Name: "from row to row", Kind: Quantity, Measure: unit.Sizes, Min: 1e-3, Max: 20},
	{Key: "column-gap", Name: "from reading to reading in a row", Kind: Quantity, Measure: unit.Sizes, Min: 1e-3, Max: 20},
	{Key: "columns", Name: "readings in a row", Kind: Whole, Min: fairing.MinSide, Max: fairing.MaxSide},
	{Key: "paste", Name: "rows from elsewhere", Kind: Pasted, Measure: unit.Fills, Max: fairing.MaxPaste, Optional: true},
	alike,
	{Key: "raise", Name: "datum raised by", Kind: Quantity, Measure: unit.Fills, Min: -maxDepth, Max: maxDepth, Optional: true},
	{Key: "cut-most", Name: "deepest cut allowed", Kind: Quantity, Measure: unit.Fills, Max: maxDepth, Optional: true},
	{Key: "cut-cost", Name: "litres filled for the cost of a litre cut", Kind: Quantity, Measure: unit.Numbers, Max: 1000, Optional: true},
}

var alike = &Field{Key: "alike", Name: "how many alike", Kind: Whole, Min: 1, Max: 500, Optional: true}

// gridRows are the rows of readings, each one line of text: cells separated by
// semicolons, as they were typed.
var gridRows = &List{Key: "grid", Max: fairing.MaxSide, Fields: []*Field{
	{Key: "z", Name: "readings of a row", Kind: Pasted, Measure: unit.Fills, Max: 4000, Optional: true},
}}

var spots = &List{Key: "spot", Max: 100, Fields: []*Field{
	{Key: "is", Name: "what it is", Kind: Choice, Options: []Option{
		{BattenHollow, "a hollow under a batten"}, {Trough, "a long trough"}, {Fillet, "a fillet in a corner"}}},
	{Key: "length", Name: "length", Kind: Quantity, Measure: unit.Sizes, Min: 1e-3, Max: 50},
	{Key: "width", Name: "width", Kind: Quantity, Measure: unit.Sizes, Min: 1e-3, Max: 20},
	{Key: "depth", Name: "greatest depth", Kind: Quantity, Measure: unit.Fills, Min: 1e-5, Max: maxDepth},
	{Key: "radius", Name: "radius", Kind: Quantity, Measure: unit.Sizes, Min: 1e-3, Max: 0.2},
	{Key: "angle", Name: "inside angle", Kind: Quantity, Measure: unit.Angles, Min: math.Pi / 9, Max: math.Pi * 8 / 9},
	alike,
}}

// SpotFields gives the measures that a kind of spot has.
func SpotFields(kind string) []string {
	if kind == Fillet {
		return []string{"radius", "angle", "length", "alike"}
	}
	return []string{"length", "width", "depth", "alike"}
}

func (r *reader) hollows(path string, at func(string) (string, *Field)) Hollows {
	h := Hollows{By: r.choice(at("fill-by"))}
	switch h.By {
	case FillGrid:
		h.Grid = r.grid(path, at)
	case FillSpot:
		for _, id := range r.doc.Items(path + ".spot") {
			h.Spots = append(h.Spots, r.spot(path+".spot."+id))
		}
	}
	return h
}

func (r *reader) grid(path string, at func(string) (string, *Field)) Grid {
	columns, _ := r.number(at("columns"))
	g := Grid{
		Columns:   int(columns),
		RowGap:    typed[unit.Length](r, at, "row-gap"),
		ColumnGap: typed[unit.Length](r, at, "column-gap"),
		Alike:     r.alike(at),
		Raise:     typed[unit.Length](r, at, "raise"),
		CutMost:   typed[unit.Length](r, at, "cut-most"),
		CutCost:   typed[unit.Factor](r, at, "cut-cost"),
	}
	for _, id := range r.doc.Items(path + ".grid") {
		row := path + ".grid." + id + ".z"
		g.RowPaths, g.Rows = append(g.RowPaths, row), append(g.Rows, r.doc.Get(row))
	}
	return g
}

// alike is how many such places there are; one where nothing was typed.
func (r *reader) alike(at func(string) (string, *Field)) working.Figure[unit.Factor] {
	if f := typed[unit.Factor](r, at, "alike"); f.Step != nil {
		return f
	}
	return one
}

func (r *reader) spot(path string) Spot {
	at := under(path, spots)
	s := Spot{Path: path, Kind: r.choice(at("is")), Alike: r.alike(at)}
	for _, key := range SpotFields(s.Kind) {
		switch key {
		case "length":
			s.Length = typed[unit.Length](r, at, key)
		case "width":
			s.Width = typed[unit.Length](r, at, key)
		case "depth":
			s.Depth = typed[unit.Length](r, at, key)
		case "radius":
			s.Radius = typed[unit.Length](r, at, key)
		case "angle":
			s.Angle = typed[unit.Angle](r, at, key)
		}
	}
	return s
}

// Cells cuts a row of readings into its cells.
func Cells(row string) []string {
	if strings.TrimSpace(row) == "" {
		return nil
	}
	cells := strings.Split(row, ";")
	for i := range cells {
		cells[i] = strings.TrimSpace(cells[i])
	}
	return cells
}

// Row makes a row of its cells. A semicolon within a cell would split it, and is
// replaced.
func Row(cells []string) string {
	clean := make([]string, len(cells))
	for i, c := range cells {
		clean[i] = strings.TrimSpace(strings.ReplaceAll(c, ";", " "))
	}
	return strings.Join(clean, "; ")
}

// eachInUnit writes the unit after every bare number in some rows.
func eachInUnit(text string, scale unit.Scale) string {
	rows, err := fairing.Split(text)
	if err != nil {
		return text
	}
	lines := make([]string, len(rows))
	for i, row := range rows {
		for j, cell := range row {
			if unit.IsBare(cell) {
				row[j] = cell + " " + scale.Symbol()
			}
		}
		lines[i] = Row(row)
	}
	return strings.Join(lines, "\n")
}
