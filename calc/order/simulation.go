package order

import (
	"errors"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"slices"

	"shedreckoner/calc/unit"
)

// Simulation draws a model many times, in slices: the answer depends on the model,
// the number of draws and the seed, and not on the slicing. Every key has a stream
// of its own, so that a change to one surface doesn't disturb the draws of the
// others: adding to a job never lowers its need.
type Simulation struct {
	model   Model
	streams []*rand.Rand // by Draw
	factors []float64    // of one draw, by Draw
	drawn   [][]float64  // by total
	draws   int
}

// Simulate starts a simulation. The model must not change while it runs.
// Range: draws × totals up to MaxSimulated. Errors: *ModelError, also those of
// Draw and Add.
func (m *Model) Simulate(draws int, seed uint64) (*Simulation, error) {
	if draws < 1 || draws > MaxSimulated/max(m.totals, 1) {
		m.fail("draws", float64(draws))
	}
	if m.err != nil {
		return nil, m.err
	}
	s := &Simulation{model: *m, streams: make([]*rand.Rand, len(m.spreads)), factors: make([]float64, len(m.spreads)), draws: draws}
	for key, d := range m.draws {
		s.streams[d] = stream(seed, key)
	}
	for range m.totals {
		s.drawn = append(s.drawn, make([]float64, 0, draws))
	}
	return s, nil
}

// stream is the random numbers of a key.
func stream(seed uint64, key string) *rand.Rand {
	h := fnv.New64a()
	h.Write([]byte(key)) // never fails
	return rand.New(rand.NewPCG(seed, h.Sum64()))
}

// Step draws up to n times more and says if the simulation is done.
func (s *Simulation) Step(n int) bool {
	for range min(n, s.draws-s.Drawn()) {
		s.draw()
	}
	return s.Drawn() == s.draws
}

// Drawn is how many draws have been made.
func (s *Simulation) Drawn() int {
	if len(s.drawn) == 0 {
		return s.draws // nothing to draw
	}
	return len(s.drawn[0])
}

func (s *Simulation) draw() {
	for i, spread := range s.model.spreads {
		s.factors[i] = spread.At(s.streams[i].NormFloat64())
	}
	at := s.Drawn()
	for i := range s.drawn {
		s.drawn[i] = append(s.drawn[i], 0)
	}
	for _, t := range s.model.terms {
		amount := t.amount
		for _, d := range t.draws {
			amount *= s.factors[d]
		}
		s.drawn[t.total][at] += amount
	}
}

// ErrUnfinished says that an outcome was asked for before the last draw.
var ErrUnfinished = errors.New("order: the simulation isn't done")

// Outcome is the distribution of one total.
type Outcome struct{ sorted []float64 }

// Outcome gives the distribution of a total once all draws are made.
// Errors: ErrUnfinished, *ModelError for a total that isn't there.
func (s *Simulation) Outcome(total int) (Outcome, error) {
	if total < 0 || total >= len(s.drawn) {
		return Outcome{}, &ModelError{"total", float64(total)}
	}
	if s.Drawn() < s.draws {
		return Outcome{}, ErrUnfinished
	}
	return Outcome{slices.Sorted(slices.Values(s.drawn[total]))}, nil
}

// Enough is the least amount that was enough in the wanted share of the draws.
// Range: chance over 0, up to 1. Errors: *ModelError.
func (o Outcome) Enough(chance unit.Share) (float64, error) {
	if !(chance > 0 && chance <= 1) || len(o.sorted) == 0 {
		return 0, &ModelError{"chance", float64(chance)}
	}
	return o.sorted[int(math.Ceil(float64(chance)*float64(len(o.sorted))))-1], nil
}

// Chance is the share of the draws for which an amount was enough.
func (o Outcome) Chance(amount float64) unit.Share {
	if len(o.sorted) == 0 {
		return 0
	}
	n, _ := slices.BinarySearchFunc(o.sorted, amount, func(v, amount float64) int {
		if v <= amount {
			return -1
		}
		return 1
	})
	return unit.Share(float64(n) / float64(len(o.sorted)))
}
