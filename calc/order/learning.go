package order

import (
	"fmt"
	"math"
	"slices"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Learning is the method of Learn.
var Learning = &working.Rule{Formula: "1 ÷ v = 1 ÷ s0² + n ÷ σ² and m = v × (m0 ÷ s0² + n × x̄ ÷ σ²), x = ln(used ÷ planned), x̄ its mean with the planned masses w as weights, n = (Σw)² ÷ Σw² the number of equal entries that say as much; the next job's factor is log-normal with m and √(v + σ²)",
	Source: source.Ref{Document: &source.BoxTiao, Place: "1.2, normal mean with known spread"}, Mark: source.FromMemory,
	Result: working.Arg{Symbol: "e^m", Meaning: "used ÷ planned, as learned", Scale: unit.InPure, Min: 0.01, Max: 100}, IsProse: true}

// Belief is what is known of the logarithm of used ÷ planned of a method and card:
// normal with this mean and standard deviation.
type Belief struct{ Mean, SD float64 }

// Reading is one observed logarithm and its own standard deviation.
type Reading struct{ X, SD float64 }

// Update is the belief after readings, 1/v = 1/s0² + Σ 1/σ², m = v·(m0/s0² + Σ
// x/σ²). It doesn't matter in how many batches they come.
// Range: standard deviations over zero. Errors: *LogError.
// Source: Box and Tiao 1.2 (from memory): conjugate normal update.
func (b Belief) Update(readings ...Reading) (Belief, error) {
	if !(b.SD > 0) {
		return Belief{}, &LogError{Cause: BadSpread}
	}
	precision := 1 / (b.SD * b.SD)
	weighted := b.Mean * precision
	for i, r := range readings {
		if !(r.SD > 0) || math.IsInf(r.SD, 0) || math.IsNaN(r.X) || math.IsInf(r.X, 0) {
			return Belief{}, &LogError{Cause: BadSpread, At: i}
		}
		precision += 1 / (r.SD * r.SD)
		weighted += r.X / (r.SD * r.SD)
	}
	return Belief{weighted / precision, math.Sqrt(1 / precision)}, nil
}

// Next is the spread of the next piece of work by this method and card: the
// belief's own uncertainty and σ, the spread from one piece of work to another.
func (b Belief) Next(sigma float64) Spread { return LogNormal(b.Mean, math.Hypot(b.SD, sigma)) }

// Factor is used ÷ planned as it is believed, exp(m).
func (b Belief) Factor() unit.Factor { return unit.Factor(math.Exp(b.Mean)) }

// Entry is one finished surface, or one cup, in the log. All masses are of the
// same product as sold.
type Entry struct {
	Used     unit.Mass
	Planned  unit.Mass // at the base factors frozen when it was logged
	FilmOnly unit.Mass // what the film itself takes with nothing lost
	HasComb  bool      // the plan is of a film that was read with a comb
	SD       float64   // σ: of one finished surface, or of one cup
}

// LogCause says why an entry can't be learned from.
type LogCause int

// The causes of a LogError.
const (
	BadMass   LogCause = iota // a mass that isn't over zero
	BadSpread                 // a standard deviation that isn't over zero
	Unlikely                  // used ÷ planned outside 1/MaxRatio to MaxRatio: Ratio
	ThinFilm                  // less used than the film takes, and no comb reading: Ratio
)

// MaxRatio is how far used may be from planned, either way: beyond it is a slip of
// the unit and not the hand.
const MaxRatio = 5

// LogError says which entry can't be learned from, and why.
type LogError struct {
	Cause LogCause
	At    int     // index of the entry
	Ratio float64 // used ÷ planned, or used ÷ film, by cause
}

// Error gives the cause for a programmer.
func (e *LogError) Error() string {
	return fmt.Sprintf("order: can't learn from entry %d (cause %d, ratio %.3g)", e.At, e.Cause, e.Ratio)
}

// Learn updates a belief by log entries of one method and card. An entry is weighted by
// its planned mass, so that a dab counts less than a deck, and a deck with ten dabs says
// little more than a deck: entries of one σ count as the effective number n = (Σw)² ÷ Σw².
// Less used than the film itself takes means a thin film and not a low loss: it is refused
// until the film was read with a comb and the plan made for that film.
// Errors: *LogError.
// Source: Belief.Update; the effective number is Kish's for unequal weights (from memory).
func Learn(prior Belief, log []Entry) (Belief, error) {
	var kinds []kindOfEntry
	for i, e := range log {
		if err := e.check(i); err != nil {
			return Belief{}, err
		}
		at := slices.IndexFunc(kinds, func(k kindOfEntry) bool { return k.sd == e.SD })
		if at < 0 {
			kinds, at = append(kinds, kindOfEntry{sd: e.SD}), len(kinds)
		}
		kinds[at].add(e)
	}
	readings := make([]Reading, len(kinds))
	for i, k := range kinds {
		readings[i] = Reading{k.x / k.w, k.sd / math.Sqrt(k.number())}
	}
	return prior.Update(readings...)
}

// kindOfEntry is the entries of one σ: surfaces, or cups.
type kindOfEntry struct{ sd, w, squares, x float64 }

func (k *kindOfEntry) add(e Entry) {
	w := float64(e.Planned)
	k.w += w
	k.squares += w * w
	k.x += w * math.Log(float64(e.Used/e.Planned))
}

// number is how many entries of equal weight say as much.
func (k *kindOfEntry) number() float64 { return k.w * k.w / k.squares }

func (e Entry) check(at int) error {
	if !(e.Used > 0 && e.Planned > 0 && e.FilmOnly >= 0) {
		return &LogError{Cause: BadMass, At: at}
	}
	if !(e.SD > 0) {
		return &LogError{Cause: BadSpread, At: at}
	}
	if ratio := float64(e.Used / e.Planned); !(ratio <= MaxRatio && ratio >= 1./MaxRatio) {
		return &LogError{Unlikely, at, ratio}
	}
	if e.Used < e.FilmOnly && !e.HasComb {
		return &LogError{ThinFilm, at, float64(e.Used / e.FilmOnly)}
	}
	return nil
}
