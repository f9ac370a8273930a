package job

import (
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
)

// surfaces is built from the table of shapes: a shape's measures are fields,
// its rows a list, the same for a surface and for a cut-out.
var surfaces = &List{Key: "surface", Max: MaxSurfaces,
	Fields: append(append([]*Field{
		{Key: "name", Name: "name", Kind: Words, Optional: true},
		{Key: "buildup", Name: "build-up", Kind: Words, Optional: true},
		{Key: "lies", Name: "how it lies", Kind: Choice, Options: []Option{{FacingUp, "flat, facing up"}, {OnWall, "a wall"}, {Overhead, "overhead"}}},
		{Key: "inside", Name: "where it is", Kind: Choice, Options: []Option{{"open", "in the open"}, {"locker", "inside a locker or hull"}}},
		{Key: "by", Name: "how it was measured", Kind: Choice, Options: MeasuredBy},
		{Key: "sides", Name: "sides", Kind: Choice, Options: []Option{{"one", "one side"}, {"both", "both sides"}}},
	}, preparedFields...), partFields...),
	Lists: append([]*List{{Key: "cutout", Max: MaxCutouts, Fields: partFields, Lists: rowLists}}, rowLists...),
}

// The orientations of a surface.
const (
	FacingUp = "flat"
	OnWall   = "wall"
	Overhead = "overhead"
)

// MeasuredBy is how well an area is known.
var MeasuredBy = []Option{
	{"tape", "with a tape"}, {"girths", "by girths, with taper"}, {"drawing", "off a drawing"},
	{"paced", "paced out"}, {"formula", "by a rule for whole boats"},
}

// What belongs to anything that has a shape.
var (
	partFields = fieldsOfShapes()
	rowLists   = rowsOfShapes()
)

func fieldsOfShapes() []*Field {
	shape := &Field{Key: "shape", Name: "shape", Kind: Choice}
	list := []*Field{
		shape,
		{Key: surface.FacesKey, Name: "faces", Kind: Words, Optional: true},
		countField(surface.CountDim),
	}
	list[2].Optional = true
	known := map[string]bool{surface.CountDim.Key: true}
	for _, s := range surface.Shapes {
		shape.Options = append(shape.Options, Option{s.Key, s.Name})
		for _, d := range s.Dims {
			if !known[d.Key] {
				known[d.Key] = true
				list = append(list, DimField(d))
			}
		}
	}
	return list
}

// DimField is the field of a shape's measure.
func DimField(d surface.Dim) *Field {
	var f *Field
	switch d.Kind {
	case surface.Count:
		f = countField(d)
	case surface.Choice:
		f = &Field{Key: d.Key, Name: d.Name, Kind: Choice}
		for _, o := range d.Options {
			f.Options = append(f.Options, Option{o.Key, o.Name})
		}
	case surface.Area:
		f = &Field{Key: d.Key, Name: d.Name, Kind: Quantity, Measure: unit.Areas, Max: 1e4}
	default:
		f = &Field{Key: d.Key, Name: d.Name, Kind: Quantity, Measure: unit.Sizes, Min: d.Min, Max: d.Max}
	}
	f.Optional = d.Optional
	return f
}

func countField(d surface.Dim) *Field {
	return &Field{Key: d.Key, Name: d.Name, Kind: Whole, Min: d.Min, Max: d.Max}
}

func rowsOfShapes() []*List {
	var lists []*List
	known := map[string]bool{}
	for _, s := range surface.Shapes {
		if s.Rows == nil || known[s.Rows.Key] {
			continue
		}
		known[s.Rows.Key] = true
		list := &List{Key: s.Rows.Key, Max: MaxRows}
		for _, d := range s.Rows.Columns {
			list.Fields = append(list.Fields, DimField(d))
		}
		lists = append(lists, list)
	}
	return lists
}
