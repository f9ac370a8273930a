package surface

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// These tests hold for every entry of the table, the ones to come too.

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
