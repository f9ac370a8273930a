package fairing

import (
	"fmt"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// The limits of a grid.
const (
	MinSide = 2   // rows, and columns
	MaxSide = 100 // rows, and columns
)

// mostReading bounds a reading: no straight-edge is further off a hull.
const mostReading = 0.5 * unit.Metre

// Grid is a table of readings at even spacing, rows by columns.
type Grid struct {
	readings          [][]unit.Length
	rowGap, columnGap working.Figure[unit.Length]
	rows, columns     []float64 // weights for the integral
}

// SizeError says that a grid has too few or too many rows or columns.
type SizeError struct{ Rows, Columns int }

// Error names the size and the limits.
func (e *SizeError) Error() string {
	return fmt.Sprintf("fairing: %d × %d readings; %d to %d each way", e.Rows, e.Columns, MinSide, MaxSide)
}

// ReadingError says which reading can't be one. Row and column count from 0.
type ReadingError struct {
	Row, Column int
	Value       unit.Length
	Most        unit.Length // readings lie between −Most and Most
}

// Error names the reading and the limit.
func (e *ReadingError) Error() string {
	return fmt.Sprintf("fairing: reading %g m in row %d, column %d; at most %g m", float64(e.Value), e.Row, e.Column, float64(e.Most))
}

// GapError says that the distance between rows or columns isn't one.
type GapError struct {
	Rows  bool // between rows; false: between columns
	Value unit.Length
}

// Error names the distance.
func (e *GapError) Error() string {
	return fmt.Sprintf("fairing: spacing of %g m (rows: %t); 1 mm to 20 m", float64(e.Value), e.Rows)
}

// NewGrid takes readings, row by row, and the distances between rows and
// between columns. Range: 2 × 2 to 100 × 100 readings within ±500 mm, spacing
// 1 mm to 20 m. Errors: *SizeError, *RaggedError, *ReadingError, *GapError.
func NewGrid(readings [][]unit.Length, rowGap, columnGap working.Figure[unit.Length]) (*Grid, error) {
	if err := checkSize(readings); err != nil {
		return nil, err
	}
	for r, row := range readings {
		for c, z := range row {
			if !(z >= -mostReading && z <= mostReading) {
				return nil, &ReadingError{r, c, z, mostReading}
			}
		}
	}
	for i, gap := range []unit.Length{rowGap.Value, columnGap.Value} {
		if !(gap >= unit.Millimetre && gap <= 20*unit.Metre) {
			return nil, &GapError{i == 0, gap}
		}
	}
	return &Grid{readings, rowGap, columnGap,
		weights(len(readings), float64(rowGap.Value)), weights(len(readings[0]), float64(columnGap.Value))}, nil
}

// RaggedError says that a row has more or fewer readings than the first.
type RaggedError struct {
	Row        int // from 0
	Has, First int
}

// Error names the row.
func (e *RaggedError) Error() string {
	return fmt.Sprintf("fairing: row %d has %d readings, the first %d", e.Row, e.Has, e.First)
}

// checkSize is for readings and for their texts.
func checkSize[T any](rows [][]T) error {
	if len(rows) < MinSide || len(rows) > MaxSide || len(rows[0]) < MinSide || len(rows[0]) > MaxSide {
		size := &SizeError{Rows: len(rows)}
		if len(rows) > 0 {
			size.Columns = len(rows[0])
		}
		return size
	}
	for r, row := range rows {
		if len(row) != len(rows[0]) {
			return &RaggedError{r, len(row), len(rows[0])}
		}
	}
	return nil
}

// Cell is one place of the grid, from 0, with its depth below the datum.
type Cell struct {
	Row, Column int
	Depth       unit.Length // below zero: proud, to be cut
}

// Depths is the map of the grid with the datum raised: to fill above zero, to
// cut below.
func (g *Grid) Depths(raise unit.Length) [][]unit.Length {
	out := make([][]unit.Length, len(g.readings))
	for r, row := range g.readings {
		out[r] = make([]unit.Length, len(row))
		for c, z := range row {
			out[r][c] = z + raise
		}
	}
	return out
}

// Extremes gives the deepest and the proudest cell with the datum raised, the
// first of equals.
func (g *Grid) Extremes(raise unit.Length) (deepest, proudest Cell) {
	deepest = Cell{0, 0, g.readings[0][0] + raise}
	proudest = deepest
	for r, row := range g.readings {
		for c, z := range row {
			if z+raise > deepest.Depth {
				deepest = Cell{r, c, z + raise}
			}
			if z+raise < proudest.Depth {
				proudest = Cell{r, c, z + raise}
			}
		}
	}
	return deepest, proudest
}

// volumeMethod says how both volumes of a grid are worked out.
const volumeMethod = "integral over the grid by Simpson's rules both ways, by trapezoids where there are only two rows or columns"

// FillVolume and CutVolume are the methods of Grid.Fill and Grid.Cut. Where a grid
// has fill and cut, the line between them runs through its cells and both are
// accurate only to second order in the spacing; their difference keeps Simpson's
// accuracy. Source: elementary geometry (Newton–Cotes).
var (
	FillVolume = &working.Rule{Formula: volumeMethod + "; hollows only", Source: source.Ref{Document: &source.Geometry, Place: "Newton–Cotes"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "V", Meaning: "filler left on", Scale: unit.InLitre, Min: 0, Max: 1e5}, IsProse: true}
	CutVolume = &working.Rule{Formula: volumeMethod + "; proud spots only", Source: source.Ref{Document: &source.Geometry, Place: "Newton–Cotes"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "V", Meaning: "cut off proud spots", Scale: unit.InLitre, Min: 0, Max: 1e5}, IsProse: true}
)

// Fill is the volume to fill with the datum raised.
func (g *Grid) Fill(raise working.Figure[unit.Length]) working.Figure[unit.Volume] {
	return working.By(FillVolume, g.At(raise.Value).Fill, g.steps(raise)...)
}

// Cut is the volume of the proud spots with the datum raised.
func (g *Grid) Cut(raise working.Figure[unit.Length]) working.Figure[unit.Volume] {
	return working.By(CutVolume, g.At(raise.Value).Cut, g.steps(raise)...)
}

func (g *Grid) steps(raise working.Figure[unit.Length]) []*working.Step {
	count := func(n int, name string) *working.Step {
		return working.Given(unit.Factor(n), name, unit.InPure, "counted", source.Typed).Step
	}
	return []*working.Step{count(len(g.rows), "rows"), count(len(g.columns), "columns"), g.rowGap.Step, g.columnGap.Step, raise.Step}
}
