package order

import (
	"fmt"
	"math"
	"sort"
)

// Input is a value with its stated uncertainty: the ends of where it may lie.
type Input struct{ Value, Low, High float64 }

// Bar is how one input alone moves a total.
type Bar struct {
	Input     int     // index in the inputs
	Low, High float64 // change of the total with the input at its low and high end
}

// Reach is the larger of the two changes, without its sign.
func (b Bar) Reach() float64 { return math.Max(math.Abs(b.Low), math.Abs(b.High)) }

// Sensitivity moves one input at a time to the ends of its uncertainty, all
// others as planned, and sorts by what moves the total most; equals keep their
// order. Errors: those of total.
// Source: one-at-a-time sensitivity; effects that inputs have only together
// don't show.
func Sensitivity(inputs []Input, total func(values []float64) (float64, error)) ([]Bar, error) {
	values := make([]float64, len(inputs))
	for i, in := range inputs {
		values[i] = in.Value
	}
	planned, err := total(values)
	if err != nil {
		return nil, err
	}
	change := func(i int, v float64) (float64, error) {
		values[i] = v
		moved, err := total(values)
		values[i] = inputs[i].Value
		if err != nil {
			return 0, fmt.Errorf("order: input %d at %g: %w", i, v, err)
		}
		return moved - planned, nil
	}
	bars := make([]Bar, len(inputs))
	for i, in := range inputs {
		low, err := change(i, in.Low)
		if err != nil {
			return nil, err
		}
		high, err := change(i, in.High)
		if err != nil {
			return nil, err
		}
		bars[i] = Bar{i, low, high}
	}
	sort.SliceStable(bars, func(i, j int) bool { return bars[i].Reach() > bars[j].Reach() })
	return bars, nil
}
