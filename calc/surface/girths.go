package surface

import (
	"slices"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var girths = &Shape{
	Key: "girths", Name: "girths at stations",
	Dims: []Dim{
		{Key: SpacingKey, Name: "station spacing", Letter: "s", Optional: true, Min: minLength, Max: maxLength},
		{Key: "length", Name: "length over all stations", Letter: "L", Optional: true, Min: minLength, Max: maxLength},
		girthIs, halfEnds, measuredAlong,
	},
	Rows: &Rows{
		Key: stationsKey, Name: "stations, from one end to the other", Row: "station",
		Columns: []Dim{
			{Key: PositionKey, Name: "position along the length", Letter: "x", Optional: true, Max: maxLength},
			{Key: "girth", Name: "girth, along the skin", Letter: "g", Max: maxLength},
		},
		Min: 2, Max: maxRows,
	},
	measure: measureGirths,
	sketch: func(z sizes) Sketch {
		return z.stationsAlong([]Stroke{arc(21, 4.5, 6, 7.5, 0, 90), path(21, 4.5, 27, 4.5), hidden(path(21, 3, 21, 14))},
			along("girth", arc(21, 4.5, 5, 6.5, 0, 90), 22.8, 7.2))
	},
	round: func(z sizes) Sketch {
		return z.stationsAlong([]Stroke{arc(23.3, 4.5, 4, 7, 0, 180), path(19.3, 4.5, 27.3, 4.5)},
			along("girth", arc(23.3, 4.5, 3, 6, 0, 180), 23.3, 7))
	},
}

// stationsAlong is a hull from the side with its stations, each as long as its
// girth, as if the skin hung flat; beside it a section with the girth.
func (z sizes) stationsAlong(section []Stroke, girth Mark) Sketch {
	at, girths := []float64{0, 2, 4, 8, 12, 16}, []float64{0, 4.1, 5.3, 6.1, 6, 5.5}
	if z.in != nil {
		stand, _ := placed(*z.in) // which is known to go
		at, girths = stand.at, nil
		for _, row := range z.in.Rows {
			girths = append(girths, float64(row["girth"].Value))
		}
	}
	last := len(at) - 1
	long, deep := at[last]-at[0], slices.Max(girths)
	alongX, down := long, deep
	x, _, k, isOff := room{2, 4.5, 17.4, 10.6}.place(&long, &deep)
	alongX, down = k*long/alongX, k*deep/down
	const sheer, first, second = 4.5, 12.2, 14.8
	skin := Stroke{}
	sketch := Sketch{OffScale: isOff, Strokes: section}
	place := func(i int) float64 { return x + alongX*(at[i]-at[0]) }
	for i, g := range girths {
		foot := sheer + down*g
		skin.Points = append(skin.Points, Point{place(i), foot})
		sketch.Strokes = append(sketch.Strokes, path(place(i), sheer, place(i), foot))
	}
	middle := place(max((last+1)/2, 1))
	sketch.Strokes = append(sketch.Strokes, skin, path(x, sheer, place(last), sheer))
	sketch.Marks = []Mark{dimension(SpacingKey, lineOff, place(1), sheer, x, sheer), dimension(PositionKey, 0, x, first, middle, first),
		dimension("length", 0, x, second, place(last), second), girth}
	return sketch
}

// girthIs says how far a girth goes. It doubles nothing: a girth of one side is
// counted twice by the builder, as two alike.
var girthIs = Dim{Key: GirthKey, Name: "a girth goes", Kind: Choice, Options: []Option{{"side", "over one side, keel to sheer"}, {Round, "the whole way round"}}}

// Where a station stands: at so many times the spacing, or at a position of its own.
const (
	SpacingKey  = "spacing"
	PositionKey = "position"
)

// How far a girth goes, and its answer for both sides at once.
const (
	GirthKey = "girth-is"
	Round    = "round"
)

const stationsKey = "stations"

var (
	halfEnds = Dim{Key: "half-ends", Name: "half-way station in the end intervals", Kind: Choice, Options: []Option{{"none", "none"}, {"first", "in the first"},
		{"last", "in the last"}, {"both", "in both"}}}
	measuredAlong = Dim{Key: "along", Name: "stations measured", Kind: Choice, Options: []Option{{"straight", "straight, as on a drawing"},
		{"skin", "along the skin"}}}
)

var (
	evenSpacing = working.Rule2[unit.Length, unit.Factor, unit.Length]{Rule: &working.Rule{Formula: "s = L ÷ n", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "s", Meaning: "station spacing", Scale: unit.InMetre, Min: 0, Max: maxLength},
		Args:   []working.Arg{{Symbol: "L", Meaning: "length over all stations", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "n", Meaning: "full intervals", Scale: unit.InPure, Min: 1, Max: maxRows}}},
		Code: func(l unit.Length, n unit.Factor) unit.Length { return l / unit.Length(n) }}
	overAll = working.Rule2[unit.Length, unit.Factor, unit.Length]{Rule: &working.Rule{Formula: "L = s × n", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "L", Meaning: "length over all stations", Scale: unit.InMetre, Min: minLength, Max: maxLength},
		Args:   []working.Arg{{Symbol: "s", Meaning: "station spacing", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "n", Meaning: "full intervals", Scale: unit.InPure, Min: 1, Max: maxRows}}},
		Code: func(s unit.Length, n unit.Factor) unit.Length { return s * unit.Length(n) }}
	fromFirstToLast = working.Rule2[unit.Length, unit.Length, unit.Length]{Rule: &working.Rule{Formula: "L = z − x", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "L", Meaning: "length over all stations", Scale: unit.InMetre, Min: minLength, Max: maxLength},
		Args:   []working.Arg{{Symbol: "z", Meaning: "position of the last station", Scale: unit.InMetre, Min: 0, Max: maxLength}, {Symbol: "x", Meaning: "position of the first station", Scale: unit.InMetre, Min: 0, Max: maxLength}}},
		Code: func(z, x unit.Length) unit.Length { return z - x }}
	girthsArea = working.SumRule("area between the first and the last station", unit.InSquareMetre)
	girthsEdge = working.Rule3[unit.Length, unit.Length, unit.Length, unit.Length]{Rule: &working.Rule{Formula: "E = 2 × L + p + q", Source: source.Ref{Document: &source.Geometry, Place: "a straight line is the shortest"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "E", Meaning: "edge, at least", Scale: unit.InMetre, Min: 0, Max: maxEdge},
		Args:   []working.Arg{{Symbol: "L", Meaning: "length over all stations", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "p", Meaning: "first girth", Scale: unit.InMetre, Min: 0, Max: maxLength}, {Symbol: "q", Meaning: "last girth", Scale: unit.InMetre, Min: 0, Max: maxLength}}},
		Code: func(l, p, q unit.Length) unit.Length { return 2*l + p + q }}
)

func measureGirths(in Input) (Measured, error) {
	stand, err := placed(in)
	if err != nil {
		return Measured{}, err
	}
	m := Measured{Notes: []Note{EdgeAtLeast}}
	if in.chosen(measuredAlong) == "straight" {
		m.Notes = append(m.Notes, GirthsReadLow)
	}
	var girth []float64
	for _, row := range in.Rows {
		girth = append(girth, float64(row["girth"].Value))
	}
	var parts []working.Figure[unit.Area]
	for _, r := range runs(stand.at) {
		area := r.rule.area(stand.at[r.from], stand.at[r.to], girth[r.from:r.to+1])
		parts = append(parts, working.By(r.rule.Rule, area, stand.steps(in.Rows, r)...))
		m.Notes = addNote(m.Notes, r.rule.note)
	}
	m.Area = sum(girthsArea, parts)
	m.Edge, err = girthsEdge.Figure(stand.length, in.Rows[0]["girth"], in.Rows[len(in.Rows)-1]["girth"])
	return m, err
}
