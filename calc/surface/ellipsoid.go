package surface

import (
	"math"
	"slices"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var ellipsoid = &Shape{
	Key: "ellipsoid", Name: "ellipsoid",
	Dims: []Dim{
		{Key: "length", Name: "length", Letter: "l", Min: minLength, Max: maxLength},
		{Key: "width", Name: "width", Letter: "w", Min: minLength, Max: maxLength},
		{Key: "height", Name: "height", Letter: "h", Min: minLength, Max: maxLength},
		ellipsoidPart,
	},
	measure: func(in Input) (Measured, error) {
		l, w, h := in.length("length"), in.length("width"), in.length("height")
		whole := working.By(ellipsoidArea, ellipsoidSurface(l.Value, w.Value, h.Value), l.Step, w.Step, h.Step)
		if in.chosen(ellipsoidPart) == "whole" {
			return Measured{Area: whole}, nil
		}
		rim, err := ellipse.measure(in)
		if err != nil {
			return Measured{}, err
		}
		return join(halfArea.Figure(whole))(rim.Edge, nil)
	},
	usual:  []float64{20, 12, 12},
	sketch: sketchEllipsoid,
}

// sketchEllipsoid draws an ellipsoid from 30° above its length: a height is seen
// at cos 30° of it, a width at half.
func sketchEllipsoid(z sizes) Sketch {
	l, w, h := z.lengths[0], z.lengths[1], z.lengths[2]
	isOff := thicken(&l, &w, &h)
	tall, away := h*math.Cos(math.Pi/6), w/2
	spanX, spanY := l, math.Hypot(tall, away)
	x, y, k, _ := allAround.place(&spanX, &spanY)
	rx, ry, rw, rh := k*l/2, k*math.Hypot(tall, away)/2, k*away/2, k*tall/2
	middle, level := x+rx, y+ry
	height, guides := upright("height", middle+rx, middle, level+rh, middle, level-rh)
	width, more := dimension("width", lineOff, middle-rx, level-rw, middle-rx, level+rw), []Stroke{
		hidden(path(middle-rx-lineOff, level-rw, middle, level-rw)), hidden(path(middle-rx-lineOff, level+rw, middle, level+rw))}
	return Sketch{
		Strokes: append(append([]Stroke{
			oval(middle, level, rx, ry), arc(middle, level, rx, rw, 0, 180), hidden(arc(middle, level, rx, rw, 180, 360)),
		}, guides...), more...),
		Marks:    []Mark{dimension("length", lineOff, middle-rx, level+ry, middle+rx, level+ry), height, width},
		OffScale: isOff,
	}
}

var ellipsoidPart = Dim{Key: "part", Name: "how much of it", Kind: Choice, Options: []Option{{"whole", "whole"}, {"half", "half, cut along length and width"}}}

var (
	ellipsoidArea = &working.Rule{Formula: "4π × R_G(a²b², a²c², b²c²), half the length, width and height being a, b, c, by Carlson's duplication",
		Source: source.Ref{Document: &source.DLMF, Place: "19.33.1, 19.36"}, Mark: source.FromMemory, Result: working.Arg{Symbol: "A", Meaning: "area of an ellipsoid", Scale: unit.InSquareMetre, Min: minArea, Max: 4 * maxArea}, IsProse: true}
	halfArea = working.Rule1[unit.Area, unit.Area]{Rule: &working.Rule{Formula: "A = W ÷ 2", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area of half an ellipsoid", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
		Args:   []working.Arg{{Symbol: "W", Meaning: "area of the whole", Scale: unit.InSquareMetre, Min: minArea, Max: 4 * maxArea}}},
		Code: func(whole unit.Area) unit.Area { return whole / 2 }}
)

// ellipsoidSurface gives the area of a whole ellipsoid from its full length,
// width and height: 4π·R_G(a²b², a²c², b²c²) with a, b, c the halves, where
//
//	2·R_G(x, y, z) = z·R_F + (x − z)(z − y)·R_D ÷ 3 + √(x·y ÷ z).
//
// With z the middle one no term is negative, so that nothing cancels: slivers
// and plates come out to the last digits too.
//
// Range: positive lengths. Source: NIST DLMF 19.33.1, 19.21.10, 19.36.
func ellipsoidSurface(length, width, height unit.Length) unit.Area {
	a, b, c := float64(length/2), float64(width/2), float64(height/2)
	products := []float64{a * a * b * b, a * a * c * c, b * b * c * c}
	slices.Sort(products)
	y, z, x := products[0], products[1], products[2]
	rf, rd := carlson(x, y, z)
	return unit.Area(2 * math.Pi * (z*rf + (x-z)*(z-y)*rd/3 + math.Sqrt(x*y/z)))
}

// carlson gives the elliptic integrals R_F(x, y, z) and R_D(x, y, z) of positive
// arguments. Each duplication brings the three four times closer together; once
// they agree to 8 digits, the first term that is left out is under 1e-16.
func carlson(x, y, z float64) (rf, rd float64) {
	const alike = 1e-8
	sum, factor := 0.0, 1.0
	for max(x, y, z)-min(x, y, z) > alike*z {
		rx, ry, rz := math.Sqrt(x), math.Sqrt(y), math.Sqrt(z)
		lambda := rx*ry + rx*rz + ry*rz
		sum += factor / (rz * (z + lambda))
		factor /= 4
		x, y, z = (x+lambda)/4, (y+lambda)/4, (z+lambda)/4
	}
	mean, meanD := (x+y+z)/3, (x+y+3*z)/5
	return 1 / math.Sqrt(mean), 3*sum + factor/(meanD*math.Sqrt(meanD))
}
