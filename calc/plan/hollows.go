package plan

import (
	"errors"
	"math"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/fairing"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Grid is what a grid of readings comes to.
type Grid struct {
	Raise             working.Figure[unit.Length] // of the datum, as chosen
	Cut               working.Figure[unit.Volume] // off the proud spots
	Deepest, Proudest fairing.Cell
	Depths            [][]unit.Length // below the datum; below zero proud

	Best     working.Figure[unit.Length] // height of the datum at which it costs least
	BestFill working.Figure[unit.Volume]
	BestCut  working.Figure[unit.Volume]
	Curve    []fairing.Datum // of all alike, from the least filler to the least cutting; empty: there is no trade-off
}

// ErrFewRows says that a grid has yet to get its rows.
var ErrFewRows = errors.New("plan: a grid needs two rows of two readings")

// ErrNoSpots says that no hollow was added yet.
var ErrNoSpots = errors.New("plan: no hollow added yet")

var (
	placesAlike = working.Rule2[unit.Factor, unit.Volume, unit.Volume]{Rule: &working.Rule{Formula: "V = n × v", Source: source.Ref{Document: &source.Geometry, Place: "equal places"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "V", Meaning: "volume of all alike", Scale: unit.InLitre, Min: 0, Max: 1e7},
		Args:   []working.Arg{{Symbol: "n", Meaning: "how many alike", Scale: unit.InPure, Min: 1, Max: 500}, {Symbol: "v", Meaning: "volume of one", Scale: unit.InLitre, Min: 0, Max: 1e6}}},
		Code: func(n unit.Factor, v unit.Volume) unit.Volume { return unit.Volume(n) * v }}

	filletDepth = working.Rule2[unit.Length, unit.Angle, unit.Length]{Rule: &working.Rule{Formula: "d = r × (1 ÷ sin(θ ÷ 2) − 1)", Source: source.Ref{Document: &source.Geometry, Place: "circle in a corner"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "d", Meaning: "depth at the corner", Scale: unit.InMillimetre, Min: 0, Max: 5000},
		Args:   []working.Arg{{Symbol: "r", Meaning: "radius", Scale: unit.InMillimetre, Min: 1, Max: 200}, {Symbol: "θ", Meaning: "inside angle", Scale: unit.InRadian, Min: math.Pi / 9, Max: math.Pi * 8 / 9}}},
		Code: func(r unit.Length, theta unit.Angle) unit.Length {
			return r * unit.Length(1/math.Sin(float64(theta)/2)-1)
		}}

	deepestReading = &working.Rule{Formula: "largest of the readings, the datum raised", Source: source.Ref{Document: &source.Geometry, Place: "maximum"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "d", Meaning: "depth at the deepest reading", Scale: unit.InMillimetre, Min: 0, Max: 1000}, IsProse: true}
	deepestSpot = &working.Rule{Formula: "largest of the depths", Source: source.Ref{Document: &source.Geometry, Place: "maximum"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "d", Meaning: "depth of the deepest place", Scale: unit.InMillimetre, Min: 0, Max: 1000}, IsProse: true}

	sumOfSpots = working.SumRule("filler left on, all places", unit.InLitre)
)

// filling is what has to be filled: the volume that stays on, and the depth of the
// deepest place. Field is where a failing sum is reported.
type filling struct {
	left  working.Figure[unit.Volume] // without a step: it follows from the area
	depth working.Figure[unit.Length]
	grid  *Grid
	field string
}

// hollowReader works out what hollows take, by how they were measured.
type hollowReader struct{ *maker }

// filling works out what the step fills; false: it waits, or is refused.
func (m hollowReader) filling(q *chain.Run, s *Step) (filling, bool) {
	switch s.Job.Hollows.By {
	case job.FillGrid:
		return m.fillGrid(q, s)
	case job.FillSpot:
		return m.fillSpots(q, s)
	}
	f := filling{depth: s.Job.Thickness, field: "thickness"}
	if !m.needsTyped(s.Path, "thickness", s.Job.Thickness.Step) {
		return f, false
	}
	m.ask(s.Path+".thickness", passBand, float64(s.Job.Thickness.Value))
	return f, true
}

func (m hollowReader) fillGrid(q *chain.Run, s *Step) (filling, bool) {
	f := filling{field: "columns"}
	grid, ok := m.readGrid(s)
	if !ok {
		return f, false
	}
	typed := s.Job.Hollows.Grid
	g := &Grid{Raise: typed.Raise}
	if g.Raise.Step == nil {
		g.Raise = working.Given(unit.Length(0), "datum raised by", unit.InMillimetre, "as the straight-edge lay", source.Typed)
	}
	g.Deepest, g.Proudest = grid.Extremes(g.Raise.Value)
	g.Depths = grid.Depths(g.Raise.Value)
	f.left = chain.Do2(q, placesAlike, typed.Alike, grid.Fill(g.Raise))
	g.Cut = chain.Do2(q, placesAlike, typed.Alike, grid.Cut(g.Raise))
	f.depth = working.By(deepestReading, max(g.Deepest.Depth, 0), g.Raise.Step)
	f.grid = g
	return f, m.trade(q, s, g, grid)
}

// trade finds the datum at which filler and cutting cost least.
func (m hollowReader) trade(q *chain.Run, s *Step, g *Grid, grid *fairing.Grid) bool {
	typed := s.Job.Hollows.Grid
	cost := typedOr(typed.CutCost, material.CutCost, "litres filled for the cost of a litre cut", unit.InPure)
	most := typed.CutMost.Value
	if typed.CutMost.Step == nil {
		_, proudest := grid.Extremes(0)
		most = max(-proudest.Depth, 0)
	}
	best, err := grid.Best(fairing.Cost{Fill: 1, Cut: cost.Value}, most)
	if err != nil {
		m.refuse(s.Path+".cut-most", err)
		return false
	}
	g.Best = best
	g.BestFill = chain.Do2(q, placesAlike, typed.Alike, grid.Fill(best))
	g.BestCut = chain.Do2(q, placesAlike, typed.Alike, grid.Cut(best))
	if most > 0 {
		g.Curve, err = grid.Curve(curvePoints, most)
	}
	for i := range g.Curve {
		g.Curve[i].Fill *= unit.Volume(typed.Alike.Value)
		g.Curve[i].Cut *= unit.Volume(typed.Alike.Value)
	}
	if err != nil {
		m.refuse(s.Path+".cut-most", err)
	}
	return err == nil
}

// curvePoints is how finely the trade-off is drawn.
const curvePoints = 25

// readGrid reads the rows; false: some are missing or can't be read.
func (m hollowReader) readGrid(s *Step) (*fairing.Grid, bool) {
	typed := s.Job.Hollows.Grid
	ok := m.needsTyped(s.Path, "row-gap", typed.RowGap.Step)
	ok = m.needsTyped(s.Path, "column-gap", typed.ColumnGap.Step) && ok
	rows := make([][]string, len(typed.Rows))
	columns := typed.Columns
	for i, row := range typed.Rows {
		rows[i] = job.Cells(row)
		if columns == 0 {
			columns = len(rows[i])
		}
		for len(rows[i]) < columns {
			rows[i] = append(rows[i], "")
		}
	}
	if len(rows) < fairing.MinSide || columns < fairing.MinSide {
		m.wait(s.Path+".grid", ErrFewRows)
		return nil, false
	}
	units := m.job().Units
	if units.Comma {
		if err := oneWay(rows); err != nil {
			m.badGrid(s, err)
			return nil, false
		}
	}
	readings, err := fairing.Read(rows, units.Scale(unit.Fills))
	if err != nil {
		m.badGrid(s, err)
		return nil, false
	}
	if !ok {
		return nil, false
	}
	grid, err := fairing.NewGrid(readings, typed.RowGap, typed.ColumnGap)
	if err != nil {
		m.badGrid(s, err)
	}
	return grid, err == nil
}

// oneWay refuses readings that mean two things to someone who writes a decimal
// comma, as every other field does.
func oneWay(rows [][]string) error {
	var bad fairing.CellErrors
	for r, row := range rows {
		for c, text := range row {
			if err := unit.CheckComma(text); err != nil {
				bad = append(bad, &fairing.CellError{Row: r, Column: c, Text: text, Cause: fairing.Unreadable, Read: err})
			}
		}
	}
	if bad == nil {
		return nil
	}
	return bad
}

// badGrid reports an error of the readings at the rows that it is about: blanks are
// waited for, anything else is refused.
func (m hollowReader) badGrid(s *Step, err error) {
	paths := s.Job.Hollows.Grid.RowPaths
	var (
		cells   fairing.CellErrors
		ragged  *fairing.RaggedError
		reading *fairing.ReadingError
	)
	switch {
	case errors.As(err, &cells):
		for _, cell := range cells {
			path := paths[cell.Row]
			if cell.Cause == fairing.Blank {
				m.wait(path, cell)
			} else {
				m.refuse(path, cell)
			}
		}
	case errors.As(err, &ragged):
		m.refuse(paths[ragged.Row], err)
	case errors.As(err, &reading):
		m.refuse(paths[reading.Row], err)
	default:
		m.refuse(s.Path+".columns", err)
	}
}

func (m hollowReader) fillSpots(q *chain.Run, s *Step) (filling, bool) {
	f := filling{field: "fill-by"}
	var volumes []working.Figure[unit.Volume]
	var depths []*working.Step
	var deepest unit.Length
	for i := range s.Job.Hollows.Spots {
		spot := &s.Job.Hollows.Spots[i]
		volume, depth, ok := m.spot(q, spot)
		if !ok {
			return f, false
		}
		volumes = append(volumes, chain.Do2(q, placesAlike, spot.Alike, volume))
		depths, deepest = append(depths, depth.Step), max(deepest, depth.Value)
	}
	if len(volumes) == 0 {
		m.wait(s.Path+".spot", ErrNoSpots)
		return f, false
	}
	f.left = working.Sum(sumOfSpots, volumes...)
	f.depth = working.By(deepestSpot, deepest, depths...)
	return f, true
}

// spot gives the volume and the depth of one place.
func (m hollowReader) spot(q *chain.Run, s *job.Spot) (volume working.Figure[unit.Volume], depth working.Figure[unit.Length], ok bool) {
	ok = m.needsTyped(s.Path, "length", s.Length.Step)
	if s.Kind == job.Fillet {
		ok = m.needsTyped(s.Path, "radius", s.Radius.Step) && m.needsTyped(s.Path, "angle", s.Angle.Step) && ok
		if ok {
			return chain.Do3(q, fairing.Fillet, s.Radius, s.Angle, s.Length), chain.Do2(q, filletDepth, s.Radius, s.Angle), true
		}
		return volume, depth, false
	}
	ok = m.needsTyped(s.Path, "width", s.Width.Step) && m.needsTyped(s.Path, "depth", s.Depth.Step) && ok
	switch {
	case !ok:
	case s.Kind == job.Trough:
		volume = chain.Do3(q, fairing.Trough, s.Width, s.Depth, s.Length)
	default:
		volume = chain.Do3(q, fairing.BattenHollow, s.Length, s.Width, s.Depth)
	}
	return volume, s.Depth, ok
}
