package surface

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/unit"
	"shedreckoner/calc/working/workingtest"
)

func TestPublishedAreas(t *testing.T) {
	workingtest.Published(t, "geometry.txt", map[string]workingtest.Case{
		"girths at stations": {Result: unit.InSquareMetre, Got: func(r workingtest.Row) (float64, error) {
			// The ship of the example is longer than our limit: a tenth of its
			// length has a tenth of its area.
			in := Input{Lengths: lengths(L{"spacing": r.Quantity("spacing", unit.InMetre) / 10})}
			for _, g := range numbers(r.Text("girths")) {
				in.Rows = append(in.Rows, Row{"girth": metres(g)})
			}
			area, err := bothSides(girths.Measure(in))
			return 10 * area, err
		}},
		"second rule": {Result: unit.InSquareMetre, Got: func(r workingtest.Row) (float64, error) {
			g := numbers(r.Text("girths"))
			last := r.Quantity("spacing", unit.InMetre) * float64(len(g)-1)
			return 2 * float64(secondRule.area(0, last, g)), nil
		}},
		"second rule by its sum of products": {Result: unit.InSquareMetre, Got: func(r workingtest.Row) (float64, error) {
			return 2 * float64(secondRule.area(0, 3*r.Quantity("spacing", unit.InMetre), []float64{0, r.Number("products") / 3, 0, 0})), nil
		}},
		"cone":                                 ofLengths(frustum, "large", "small", "height"),
		"dome":                                 ofLengths(sphericalCap, "rim=diameter", "height"),
		"ellipsoid":                            ofLengths(ellipsoid, "length", "width", "height"),
		"box, all faces":                       ofLengths(box, "length", "width", "height"),
		"three sides":                          ofLengths(threeSides, "a", "b", "c"),
		"Wigley hull, stations along the skin": {Result: unit.InSquareMetre, Got: wigleyAlongSkin},
		"polygon":                              {Result: unit.InSquareMetre, Got: areaOf(ofCorners)},
		"polygon, edge":                        {Result: unit.InMetre, Got: edgeOf(ofCorners)},
		"box, edge":                            {Result: unit.InMetre, Got: edgeOf(ofBox)},
		"trapezoids":                           {Result: unit.InSquareMetre, Got: areaOf(ofGirths)},
		"cut-outs":                             {Result: unit.InSquareMetre, Got: areaOf(ofCutOuts)},
		"edges of cut-outs":                    {Result: unit.InMetre, Got: edgeOf(ofCutOuts)},
		"Wigley hull, S/[L(2T + B)]": {Result: unit.InPure, Got: func(r workingtest.Row) (float64, error) {
			s, err := wigleyAlongSkin(r)
			return s / (2*wigleyT + wigleyB), err
		}},
	}, Rules()...)
}

// ofLengths measures a shape by lengths in the columns of the same name, or of
// another: "rim=diameter". Of a box all faces are taken.
func ofLengths(s *Shape, columns ...string) workingtest.Case {
	return workingtest.Case{Result: unit.InSquareMetre, Got: func(r workingtest.Row) (float64, error) {
		values := L{}
		for _, column := range columns {
			name, key, renamed := strings.Cut(column, "=")
			if !renamed {
				key = name
			}
			values[key] = r.Quantity(name, unit.InMetre)
		}
		m, err := s.Measure(Input{Lengths: lengths(values), Faces: keys(s.Faces)})
		return float64(m.Area.Value), err
	}}
}

func areaOf(measure func(workingtest.Row) (Measured, error)) func(workingtest.Row) (float64, error) {
	return func(r workingtest.Row) (float64, error) {
		m, err := measure(r)
		return float64(m.Area.Value), err
	}
}

func edgeOf(measure func(workingtest.Row) (Measured, error)) func(workingtest.Row) (float64, error) {
	return func(r workingtest.Row) (float64, error) {
		m, err := measure(r)
		return float64(m.Edge.Value), err
	}
}

func ofCorners(r workingtest.Row) (Measured, error) {
	var in Input
	for corner := range strings.SplitSeq(r.Text("corners"), ",") {
		at := numbers(corner)
		in.Rows = append(in.Rows, Row{"x": metres(at[0]), "y": metres(at[1])})
	}
	return polygon.Measure(in)
}

func ofBox(r workingtest.Row) (Measured, error) {
	in := Input{Lengths: lengths(L{}), Faces: strings.Fields(r.Text("faces")), Choices: map[string]string{"side": r.Text("side")}}
	for _, key := range []string{"length", "width", "height"} {
		in.Lengths[key] = metres(r.Quantity(key, unit.InMetre))
	}
	return box.Measure(in)
}

func ofGirths(r workingtest.Row) (Measured, error) {
	in := Input{Lengths: lengths(L{"spacing": r.Quantity("spacing", unit.InMetre)})}
	for _, g := range numbers(r.Text("girths")) {
		in.Rows = append(in.Rows, Row{"girth": metres(g)})
	}
	return girths.Measure(in)
}

// ofCutOuts adds up two square cut-outs.
func ofCutOuts(r workingtest.Row) (m Measured, err error) {
	var cutouts []Measured
	for _, column := range []string{"one", "other"} {
		side := r.Quantity(column, unit.InMetre)
		square, err := rectangle.Measure(Input{Lengths: lengths(L{"length": side, "width": side})})
		if err != nil {
			return m, err
		}
		cutouts = append(cutouts, square)
	}
	whole, err := rectangle.Measure(Input{Lengths: lengths(L{"length": 10, "width": 10})})
	if err != nil {
		return m, err
	}
	m.Area, m.Edge, err = sumCutOuts(whole, cutouts)
	return m, err
}

func keys(options []Option) (list []string) {
	for _, o := range options {
		list = append(list, o.Key)
	}
	return list
}

func numbers(text string) (list []float64) {
	for _, field := range strings.Fields(text) {
		v, err := strconv.ParseFloat(field, 64)
		if err != nil {
			panic(err)
		}
		list = append(list, v)
	}
	return list
}

func bothSides(m Measured, err error) (float64, error) {
	if err != nil {
		return 0, err
	}
	total, err := Total(m, nil, number(1), number(2))
	return float64(total.Area.Value), err
}

// The Wigley hull y = B/2·(1 − (2x/L)²)·(1 − (z/T)²) with L = 1, L/B = 10, B/T = 1.6.
const (
	wigleyB = 0.1
	wigleyT = wigleyB / 1.6
)

// wigleyGirth is the length of half a section, by the midpoint rule.
func wigleyGirth(x float64) float64 {
	const n = 4000
	sum := 0.0
	for i := range n {
		z := wigleyT * (float64(i) + 0.5) / n
		sum += math.Hypot(1, wigleyB/2*(1-4*x*x)*-2*z/(wigleyT*wigleyT)) * wigleyT / n
	}
	return sum
}

// wigleySkin is the way along the waterline at half the draught from midships to x.
func wigleySkin(x float64) float64 {
	k := 4 * wigleyB * 0.75 // dy/dx = k·x
	return (x*math.Hypot(1, k*x) + math.Asinh(k*x)/k) / 2
}

func wigleyAlongSkin(r workingtest.Row) (float64, error) {
	n := int(r.Number("stations"))
	half := wigleySkin(0.5)
	in := Input{Lengths: lengths(L{"length": 2 * half}), Choices: map[string]string{"along": "skin"}}
	for i := range n {
		way := half * (2*float64(i)/float64(n-1) - 1)
		in.Rows = append(in.Rows, Row{"girth": metres(wigleyGirth(bisect(wigleySkin, way, -0.5, 0.5)))})
	}
	return bothSides(girths.Measure(in))
}

// bisect finds where a rising function has a value.
func bisect(f func(float64) float64, value, low, high float64) float64 {
	for range 60 {
		if middle := (low + high) / 2; f(middle) < value {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}

// Stations measured straight leave out the skin's slope along the hull: 0.29 % of
// the slender Wigley hull. The girths rule must come down to that limit with the
// fourth power of the spacing, and stay there: girths are all that it sees.
func TestStraightStationsReadLow(t *testing.T) {
	const exact, limit = 0.148790630, 0.148362895 // by 2000 × 2000 midpoints
	for n, room := range map[int]float64{11: 1.2e-4, 21: 1.2e-5, 41: 1e-6, 81: 1e-7} {
		in := Input{Lengths: lengths(L{"length": 1})}
		for i := range n {
			in.Rows = append(in.Rows, Row{"girth": metres(wigleyGirth(float64(i)/float64(n-1) - 0.5))})
		}
		m, err := girths.Measure(in)
		s, err := bothSides(m, err)
		assert.NoError(t, err)
		assert.InEpsilon(t, limit, s, room, "%d stations", n)
		assert.InEpsilon(t, 0.0029, 1-s/exact, 0.05, "%d stations", n)
		assert.True(t, slices.Contains(m.Notes, GirthsReadLow))
	}
}
