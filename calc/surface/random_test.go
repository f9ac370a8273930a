package surface

import (
	"math/rand/v2"
	"testing"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// draw makes a random input of a shape from its table entry alone.
func draw(s *Shape, random *rand.Rand) Input {
	in := Input{Lengths: lengths(nil), Areas: map[string]working.Figure[unit.Area]{},
		Counts: map[string]working.Figure[unit.Factor]{}, Choices: map[string]string{}}
	for _, d := range s.Dims {
		if d.Optional && random.IntN(2) == 0 {
			continue
		}
		switch d.Kind {
		case Length:
			in.Lengths[d.Key] = working.Given(unit.Length(drawLength(d, random)), d.Key, unit.InMetre, "drawn", source.Typed)
		case Area:
			in.Areas[d.Key] = working.Given(unit.Area(0.1+20*random.Float64()), d.Key, unit.InSquareMetre, "drawn", source.Typed)
		case Count:
			in.Counts[d.Key] = working.Given(unit.Factor(1+random.IntN(min(int(d.Max), 20))), d.Key, unit.InPure, "drawn", source.Typed)
		case Choice:
			in.Choices[d.Key] = d.Options[random.IntN(len(d.Options))].Key
		}
	}
	for _, f := range s.Faces {
		if random.IntN(2) == 0 {
			in.Faces = append(in.Faces, f.Key)
		}
	}
	in.Rows = drawRows(s.Rows, random)
	return in
}

func drawRows(r *Rows, random *rand.Rand) (list []Row) {
	if r == nil {
		return nil
	}
	var columns []Dim
	for _, c := range r.Columns {
		if !c.Optional || random.IntN(2) == 0 {
			columns = append(columns, c)
		}
	}
	for range r.Min + random.IntN(6) {
		row := Row{}
		for _, c := range columns {
			row[c.Key] = metres(drawLength(c, random))
		}
		list = append(list, row)
	}
	return list
}

func drawLength(d Dim, random *rand.Rand) float64 {
	if d.Min < 0 {
		return 10*random.Float64() - 5
	}
	return 0.2 + 5*random.Float64()
}

// drawGood draws until the measures fit each other: sides that close, corners
// in order.
func drawGood(t *testing.T, s *Shape, random *rand.Rand) (Input, Measured) {
	t.Helper()
	for range 1000 {
		in := draw(s, random)
		if m, err := s.Measure(in); err == nil {
			return in, m
		}
	}
	t.Fatalf("%s: nothing fits", s.Key)
	return Input{}, Measured{}
}

// scaled multiplies every length by k, and every area by k².
func scaled(in Input, k float64) Input {
	out := Input{Counts: in.Counts, Choices: in.Choices, Faces: in.Faces,
		Lengths: map[string]working.Figure[unit.Length]{}, Areas: map[string]working.Figure[unit.Area]{}}
	for key, f := range in.Lengths {
		out.Lengths[key] = metres(float64(f.Value) * k)
	}
	for key, f := range in.Areas {
		out.Areas[key] = working.Figure[unit.Area]{Value: f.Value * unit.Area(k*k)}
	}
	for _, row := range in.Rows {
		larger := Row{}
		for key, f := range row {
			larger[key] = metres(float64(f.Value) * k)
		}
		out.Rows = append(out.Rows, larger)
	}
	return out
}
