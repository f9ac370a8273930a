package surface

import (
	"math"
	"slices"

	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Input holds what was measured, by the keys of the shape's Dims. Keys that the
// shape doesn't have are ignored: they may belong to the shape chosen before.
type Input struct {
	Lengths map[string]working.Figure[unit.Length]
	Areas   map[string]working.Figure[unit.Area]
	Counts  map[string]working.Figure[unit.Factor]
	Choices map[string]string // option keys; none: the first option
	Faces   []string          // chosen faces
	Rows    []Row
}

// Row is one line of a list, by column.
type Row map[string]working.Figure[unit.Length]

func (in Input) length(key string) working.Figure[unit.Length] { return in.Lengths[key] }

func (in Input) has(key string) bool { _, given := in.Lengths[key]; return given }

// chosen gives the chosen option of a dim that has been checked.
func (in Input) chosen(d Dim) string {
	if key := in.Choices[d.Key]; key != "" {
		return key
	}
	return d.Options[0].Key
}

// value gives what was entered for a dim that is a number.
func (in Input) value(d Dim) (v float64, given bool) {
	switch d.Kind {
	case Area:
		f, given := in.Areas[d.Key]
		return float64(f.Value), given
	case Count:
		f, given := in.Counts[d.Key]
		return float64(f.Value), given
	}
	f, given := in.Lengths[d.Key]
	return float64(f.Value), given
}

func (s *Shape) check(in Input) error {
	for _, d := range s.Dims {
		if d.Kind == Choice {
			if !hasOption(d.Options, in.chosen(d)) {
				return fault(d.Key, NotAnOption)
			}
			continue
		}
		v, given := in.value(d)
		if err := d.check(v, given); err != nil {
			return err
		}
	}
	if err := s.checkFaces(in.Faces); err != nil {
		return err
	}
	return s.Rows.check(in.Rows)
}

// check says what is wrong with a value of the dim.
func (d Dim) check(v float64, given bool) *Error {
	switch {
	case !given && d.Optional:
		return nil
	case !given || math.IsNaN(v):
		return fault(d.Key, Missing)
	case d.Min > 0 && v <= 0:
		return fault(d.Key, NotPositive)
	case v < d.Min:
		return limit(d.Key, TooSmall, d.Min)
	case v > d.Max:
		return limit(d.Key, TooLarge, d.Max)
	case d.Kind == Count && v != math.Trunc(v):
		return fault(d.Key, NotWhole)
	}
	return nil
}

func (s *Shape) checkFaces(chosen []string) error {
	if s.Faces == nil {
		return nil
	}
	if len(chosen) == 0 {
		return fault(FacesKey, Missing)
	}
	for _, face := range chosen {
		if !hasOption(s.Faces, face) {
			return fault(FacesKey, NotAnOption)
		}
	}
	return nil
}

func (r *Rows) check(rows []Row) error {
	switch {
	case r == nil:
		return nil
	case len(rows) < r.Min:
		return limit(r.Key, TooFew, float64(r.Min))
	case len(rows) > r.Max:
		return limit(r.Key, TooMany, float64(r.Max))
	}
	for i, row := range rows {
		for _, column := range r.Columns {
			f, given := row[column.Key]
			if err := column.check(float64(f.Value), given); err != nil {
				return err.in(i)
			}
		}
	}
	return nil
}

func hasOption(options []Option, key string) bool {
	return slices.ContainsFunc(options, func(o Option) bool { return o.Key == key })
}
