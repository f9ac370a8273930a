package cure

import (
	"math"

	"shedreckoner/calc/unit"
)

// line is a straight line through cup tests: y = ln t + n·ln c over x = 1/T, so
// that its slope is Ea/R.
type line struct {
	xs, ys       []float64
	meanX, meanY float64
	meanLnC      float64
	sxx, slope   float64
	span         float64 // of the temperatures, K
	parameters   int     // that were taken from the tests
}

// line fits the tests by least squares, with n fixed.
func (g Gel) line(tests []CupTest, n unit.Factor) line {
	l := line{parameters: 2}
	count := float64(len(tests))
	coldest, warmest := math.Inf(1), math.Inf(-1)
	for _, t := range tests {
		x, y := 1/float64(t.Temperature.Value), math.Log(float64(t.Gel.Value))
		if !g.isFixedRatio() {
			lnC := math.Log(float64(t.Catalyst.Value))
			y += float64(n) * lnC
			l.meanLnC += lnC / count
		}
		l.xs, l.ys = append(l.xs, x), append(l.ys, y)
		l.meanX += x / count
		l.meanY += y / count
		coldest, warmest = min(coldest, float64(t.Temperature.Value)), max(warmest, float64(t.Temperature.Value))
	}
	sxy := 0.0
	for i, x := range l.xs {
		l.sxx += (x - l.meanX) * (x - l.meanX)
		sxy += (x - l.meanX) * (l.ys[i] - l.meanY)
	}
	l.span, l.slope = warmest-coldest, sxy/l.sxx
	return l
}

// withSlope is the line through the mean of the tests with a given slope.
func (l line) withSlope(slope float64) line {
	l.slope, l.parameters = slope, 1
	return l
}

// scatter is the standard deviation of the tests about the line, and how far the
// farthest lies; both in ln t. The first is zero where there are no more tests than
// parameters.
func (l line) scatter() (sd, farthest float64) {
	sum := 0.0
	for i, x := range l.xs {
		off := l.ys[i] - l.meanY - l.slope*(x-l.meanX)
		sum += off * off
		farthest = max(farthest, math.Abs(off))
	}
	if spare := len(l.xs) - l.parameters; spare > 0 {
		sd = math.Sqrt(sum / float64(spare))
	}
	return sd, farthest
}

// halfBand is how far the next cup may be from the line, by the scatter of the
// tests alone, in ln t.
func (l line) halfBand() float64 {
	sd, farthest := l.scatter()
	return max(2*sd, farthest)
}

// slopeError is the slope's standard error, with no less scatter than
// leastOff allows.
func (l line) slopeError() float64 {
	sd, _ := l.scatter()
	return max(sd, math.Log1p(leastOff)/2) / math.Sqrt(l.sxx)
}
