package order

import (
	"fmt"
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// The method of a Simulation, for goods by mass and by volume.
var (
	ConfidenceByMass   = confidence(unit.InKilogram)
	ConfidenceByVolume = confidence(unit.InLitre)
)

func confidence(scale unit.Scale) *working.Rule {
	return &working.Rule{Formula: "the amount that is enough in the wanted share of many imagined jobs: every area drawn on its own, the hand with its tool and product drawn once for the whole job, all as factors about the plan",
		Source: source.Ref{Document: &source.House, Place: "seeded draws of log-normal factors"}, Mark: source.Calculated,
		Result: working.Arg{Symbol: "N", Meaning: "need at the wanted confidence", Scale: scale, Min: 0, Max: 1e9}, IsProse: true}
}

// Spread is a factor about the plan, 1 − w + w·exp(m + s·z) with z a standard
// normal draw: the share w of the planned amount varies with a log-normal factor,
// the rest is fixed.
type Spread struct {
	Moving float64 // w, 0–1
	Mean   float64 // m, mean of the logarithm
	SD     float64 // s, standard deviation of the logarithm
}

// LogNormal is the spread exp(mean + sd·z): half of all draws lie over exp(mean).
func LogNormal(mean, sd float64) Spread { return Spread{1, mean, sd} }

// CV is the log-normal spread about the plan with a coefficient of variation
// (0.03: areas measured by tape), s = √ln(1 + cv²).
// Source: moments of the log-normal distribution.
func CV(cv float64) Spread { return LogNormal(0, math.Sqrt(math.Log1p(cv*cv))) }

// SandedOff is the spread of what is applied where a share p of it is sanded
// off again: the logit of p is normal about the plan's, and applied = left on ÷
// (1 − p), so that only the share sanded off moves.
// Source: 1 ÷ (1 − p) = 1 + exp(logit p).
func SandedOff(planned unit.Share, logitSD float64) Spread {
	return Spread{float64(planned), 0, logitSD}
}

// At is the factor at a standard normal draw: 0 gives the middle.
func (s Spread) At(z float64) float64 { return 1 - s.Moving + s.Moving*math.Exp(s.Mean+s.SD*z) }

// The limits of a model and its simulation.
const (
	MaxLogMean   = 1.7     // ln 5.5: a hand five times off is a slip of unit
	MaxLogSD     = 1.5     // wider, the draws say nothing
	MaxTerms     = 20_000  // 500 surfaces of 40 steps
	MaxSimulated = 4 << 20 // draws × totals kept: 32 MB
)

// ModelError says what of a model can't be simulated.
type ModelError struct {
	What  string  // "spread", "amount", "total", "draw", "terms", "draws"
	Value float64 // what was given
}

// Error names what was wrong.
func (e *ModelError) Error() string {
	return fmt.Sprintf("order: can't simulate %s %g", e.What, e.Value)
}

// Model is a job as terms that vary. Its first error is kept and returned by
// Simulate.
type Model struct {
	totals  int
	spreads []Spread
	draws   map[string]Draw
	terms   []term
	err     error
}

// Draw is one source of chance in a Model.
type Draw int

type term struct {
	total  int
	amount float64
	draws  []Draw
}

// NewModel is a model of as many totals as there are goods to buy.
func NewModel(totals int) *Model {
	return &Model{totals: totals, draws: map[string]Draw{}}
}

// Draw is the source of chance with this key: asked for again, it is the same one.
// Give a surface's area a key of its own, and a method with its card one key for
// the whole job: the same hand with the same roller errs the same way everywhere,
// and 20 surfaces drawn independently would fake certainty.
func (m *Model) Draw(key string, s Spread) Draw {
	if !(s.Moving >= 0 && s.Moving <= 1 && math.Abs(s.Mean) <= MaxLogMean && s.SD >= 0 && s.SD <= MaxLogSD) {
		m.fail("spread", s.SD)
	}
	d, known := m.draws[key]
	if !known {
		d = Draw(len(m.spreads))
		m.draws[key] = d
		m.spreads = append(m.spreads, s)
	} else if m.spreads[d] != s { // one hand can't have two spreads
		m.fail("draw", float64(d))
	}
	return d
}

// Add adds a planned amount to a total; it varies with all draws given. An amount
// without draws is certain.
func (m *Model) Add(total int, amount float64, draws ...Draw) {
	switch {
	case total < 0 || total >= m.totals:
		m.fail("total", float64(total))
	case !(amount >= 0 && amount <= math.MaxFloat32):
		m.fail("amount", amount)
	case len(m.terms) == MaxTerms:
		m.fail("terms", MaxTerms+1)
	default:
		m.terms = append(m.terms, term{total, amount, draws})
	}
	for _, d := range draws {
		if d < 0 || int(d) >= len(m.spreads) {
			m.fail("draw", float64(d))
		}
	}
}

func (m *Model) fail(what string, value float64) {
	if m.err == nil {
		m.err = &ModelError{what, value}
	}
}
