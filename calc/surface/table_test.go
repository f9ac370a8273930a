package surface

import (
	"errors"
	"math"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// These tests hold for every entry of the table, the ones to come too.

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

func TestAreaGrowsWithTheSquareOfLength(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 5))
	for _, s := range Shapes {
		for range 50 {
			in, m := drawGood(t, s, random)
			k := 0.5 + 2*random.Float64()
			larger, err := s.Measure(scaled(in, k))
			require.NoError(t, err, s.Key)
			near(t, float64(m.Area.Value)*k*k, float64(larger.Area.Value), s.Key)
			assert.InDelta(t, float64(m.Edge.Value)*k, float64(larger.Edge.Value), 1e-9*float64(m.Edge.Value), s.Key)
			assert.Equal(t, m.Notes, larger.Notes, s.Key)
		}
	}
}

// No closed curve takes in more than a circle: 4π·A ≤ E² for a flat piece. Here
// for the shapes that are flat or can be rolled flat.
func TestNoFlatShapeBeatsACircle(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 11))
	for _, s := range []*Shape{rectangle, triangle, threeSides, trapezium, circle, ellipse, ring, polygon, strip} {
		for range 50 {
			in, m := drawGood(t, s, random)
			assert.LessOrEqual(t, 4*math.Pi*float64(m.Area.Value), math.Pow(float64(m.Edge.Value), 2)*(1+1e-9), "%s %v", s.Key, in)
		}
	}
}

func TestEveryMissingMeasureIsNamed(t *testing.T) {
	random := rand.New(rand.NewPCG(13, 17))
	for _, s := range Shapes {
		for _, d := range s.Dims {
			in, _ := drawGood(t, s, random)
			delete(in.Lengths, d.Key)
			delete(in.Areas, d.Key)
			delete(in.Counts, d.Key)
			if _, err := s.Measure(in); d.Kind != Choice && !d.Optional {
				assert.Equal(t, fault(d.Key, Missing), err, s.Key)
			}
		}
		if s.Rows == nil {
			continue
		}
		for _, c := range s.Rows.Columns {
			in, _ := drawGood(t, s, random)
			delete(in.Rows[1], c.Key)
			if _, err := s.Measure(in); !c.Optional {
				assert.Equal(t, fault(c.Key, Missing).in(1), err, s.Key)
			}
		}
	}
}

// Limits hold at the limit and one step over it.
func TestLimitsAreTheLastThatHold(t *testing.T) {
	for _, s := range Shapes {
		dims := s.Dims
		if s.Rows != nil {
			dims = append(slices.Clone(dims), s.Rows.Columns...)
		}
		for _, d := range dims {
			if d.Kind == Choice {
				continue
			}
			assert.Nil(t, d.check(d.Min, true), "%s %s", s.Key, d.Key)
			assert.Nil(t, d.check(d.Max, true), "%s %s", s.Key, d.Key)
			assert.Equal(t, limit(d.Key, TooLarge, d.Max), d.check(math.Nextafter(d.Max, math.Inf(1)), true), "%s %s", s.Key, d.Key)
			below := d.check(math.Nextafter(d.Min, math.Inf(-1)), true)
			assert.Equal(t, limit(d.Key, TooSmall, d.Min), below, "%s %s", s.Key, d.Key)
		}
	}
}

func TestKeysAreFitToBeSaved(t *testing.T) {
	good := regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	seen := map[string]bool{}
	for _, s := range Shapes {
		assert.Same(t, s, Find(s.Key))
		assert.Regexp(t, good, s.Key)
		assert.False(t, seen[s.Key], s.Key)
		assert.NotEmpty(t, s.Name)
		seen[s.Key] = true
		checkKeys(t, s, good)
	}
	assert.Nil(t, Find("no such shape"))
}

// A key stands for one kind of thing, since saved jobs have the keys of all
// shapes side by side.
func TestAKeyHasOneKind(t *testing.T) {
	kinds := map[string]Kind{CountDim.Key: Count, SidesDim.Key: Count}
	answers := map[string][]Option{}
	for _, s := range Shapes {
		for _, d := range s.Dims {
			kind, known := kinds[d.Key]
			assert.True(t, !known || kind == d.Kind, "%s %s", s.Key, d.Key)
			if known {
				assert.Equal(t, answers[d.Key], d.Options, "%s %s: one choice has the same answers everywhere", s.Key, d.Key)
			}
			kinds[d.Key], answers[d.Key] = d.Kind, d.Options
		}
	}
}

func checkKeys(t *testing.T, s *Shape, good *regexp.Regexp) {
	keys, letters := map[string]bool{FacesKey: true}, map[string]bool{}
	dims := slices.Clone(s.Dims)
	if s.Rows != nil {
		assert.Regexp(t, good, s.Rows.Key)
		assert.False(t, slices.ContainsFunc(s.Dims, func(d Dim) bool { return d.Key == s.Rows.Key }))
		dims = append(dims, s.Rows.Columns...)
	}
	for _, d := range dims {
		assert.Regexp(t, good, d.Key)
		if s.Key != direct.Key { // its area and edge are the ones that come out
			assert.False(t, d.Key == AreaKey || d.Key == EdgeKey, "%s %s", s.Key, d.Key)
		}
		assert.False(t, keys[d.Key], "%s %s twice", s.Key, d.Key)
		assert.NotEmpty(t, d.Name)
		keys[d.Key] = true
		if d.Kind == Choice {
			assert.Empty(t, d.Letter)
			assert.GreaterOrEqual(t, len(d.Options), 2, d.Key)
			continue
		}
		assert.False(t, letters[d.Letter], "%s: letter %s twice", s.Key, d.Letter)
		assert.NotEmpty(t, d.Letter)
		letters[d.Letter] = true
	}
}

// The letters on the sketch are the letters of the formulas, and every rule
// that a shape uses stands in Rules.
func TestLettersAreThoseOfTheFormulas(t *testing.T) {
	random := rand.New(rand.NewPCG(19, 23))
	for _, s := range Shapes {
		used := map[string][]string{} // dim → symbols of the formulas that it goes into
		for range 50 {
			_, m := drawGood(t, s, random)
			walk(m.Area.Step, used, t)
			walk(m.Edge.Step, used, t)
		}
		for _, d := range s.Dims {
			if symbols := used[d.Key]; len(symbols) > 0 {
				assert.Contains(t, symbols, d.Letter, "%s %s", s.Key, d.Key)
			}
		}
	}
}

func walk(step *working.Step, used map[string][]string, t *testing.T) {
	if step == nil || step.Rule == nil {
		return
	}
	assert.Contains(t, Rules(), step.Rule)
	for i, from := range step.From {
		if from == nil {
			continue
		}
		if !step.Rule.IsProse && from.Rule == nil {
			used[from.Name] = append(used[from.Name], step.Rule.Args[i].Symbol)
		}
		walk(from, used, t)
	}
}

// FuzzMeasure feeds every shape with whatever a float can be: it is measured in
// sound figures, or refused with an *Error.
func FuzzMeasure(f *testing.F) {
	for i := range Shapes {
		f.Add(uint8(i), uint64(i), []byte{})
		f.Add(uint8(i), uint64(i), []byte{1, 2, 3, 4, 5, 6, 7, 8})
	}
	odd := []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1), 1e-3, 100, 1e300, 5e-324, 1e-320}
	f.Fuzz(func(t *testing.T, shape uint8, seed uint64, spoil []byte) {
		s := Shapes[int(shape)%len(Shapes)]
		in := draw(s, rand.New(rand.NewPCG(seed, 29)))
		for i := 0; i+1 < len(spoil); i += 2 {
			spoilOne(s, in, int(spoil[i]), odd[int(spoil[i+1])%len(odd)])
		}
		checkSound(t, s, in)
	})
}

// spoilOne puts an odd value in place of one measure.
func spoilOne(s *Shape, in Input, which int, odd float64) {
	if s.Rows != nil && which >= 128 && len(in.Rows) > 0 {
		column := s.Rows.Columns[which%len(s.Rows.Columns)].Key
		in.Rows[which/2%len(in.Rows)][column] = metres(odd)
		return
	}
	if len(s.Dims) == 0 {
		return
	}
	switch d := s.Dims[which%len(s.Dims)]; d.Kind {
	case Length:
		in.Lengths[d.Key] = metres(odd)
	case Area:
		in.Areas[d.Key] = working.Figure[unit.Area]{Value: unit.Area(odd)}
	case Count:
		in.Counts[d.Key] = number(odd)
	case Choice:
		in.Choices[d.Key] = "no such option"
	}
}

func checkSound(t *testing.T, s *Shape, in Input) {
	m, err := s.Measure(in)
	if err != nil {
		var fault *Error
		assert.True(t, errors.As(err, &fault), "%s: %v", s.Key, err)
		assert.Equal(t, Measured{}, m)
		return
	}
	area, edge := float64(m.Area.Value), float64(m.Edge.Value)
	assert.True(t, area >= minArea && area <= maxArea, "%s: area %v of %v", s.Key, area, in)
	assert.True(t, edge >= 0 && edge <= maxEdge, "%s: edge %v of %v", s.Key, edge, in)
}

func TestUsualFacesAreTheBoxs(t *testing.T) {
	for _, o := range boxSide.Options {
		faces := strings.Fields(UsualFaces(o.Key))
		assert.Len(t, faces, len(boxFaces)-1)
		open := map[string]string{"outside": "bottom", "inside": "top"}[o.Key]
		assert.NotContains(t, faces, open, "outside it stands on its bottom, inside its top is open")
		for _, face := range faces {
			assert.True(t, hasOption(boxFaces, face), face)
		}
	}
}
