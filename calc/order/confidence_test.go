package order_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/order"
	"shedreckoner/calc/unit"
)

func outcome(t *testing.T, s *order.Simulation, total int) order.Outcome {
	t.Helper()
	o, err := s.Outcome(total)
	require.NoError(t, err)
	return o
}

func enough(t *testing.T, o order.Outcome, chance unit.Share) float64 {
	t.Helper()
	v, err := o.Enough(chance)
	require.NoError(t, err)
	return v
}

// The standard error of a quantile of n draws of a normal is √(p(1−p)/n)/φ(z):
// at 90 % and 40 000 draws 0.0085 sd. Four of them are allowed.
func TestOneLogNormalHasItsClosedForm(t *testing.T) {
	const sd, mean = 0.25, 0.1
	m := order.NewModel(1)
	m.Add(0, 8, m.Draw("hand", order.LogNormal(mean, sd)))
	o := outcome(t, run(t, m, 40_000), 0)
	for p, z := range map[unit.Share]float64{0.5: 0, 0.8: 0.8416, 0.9: 1.2816, 0.95: 1.6449} {
		want := math.Log(8) + mean + z*sd
		assert.InDelta(t, want, math.Log(enough(t, o, p)), 4*0.012*sd, "%v", p)
		assert.InDelta(t, float64(p), float64(o.Chance(math.Exp(want))), 0.01)
	}
}

// Mean and variance of a sum: those of its own draws add up, those of a shared
// draw multiply. Mean of exp(s·z) is exp(s²/2), its mean square exp(2s²).
func TestSumsHaveTheirMoments(t *testing.T) {
	const area, hand = 0.1, 0.2
	amounts := []float64{3, 1, 6}
	m := order.NewModel(1)
	shared := m.Draw("hand", order.LogNormal(0, hand))
	sum, squares := 0.0, 0.0
	for i, a := range amounts {
		m.Add(0, a, m.Draw(fmt.Sprint("area ", i), order.LogNormal(0, area)), shared)
		sum, squares = sum+a, squares+a*a
	}
	const draws = 40_000
	o := outcome(t, run(t, m, draws), 0)
	mean, square := 0.0, 0.0
	for i := range draws {
		v := enough(t, o, unit.Share((float64(i)+0.5)/draws))
		mean, square = mean+v/draws, square+v*v/draws
	}
	sumMean := sum * math.Exp(area*area/2)
	sumSquare := sumMean*sumMean + squares*(math.Exp(2*area*area)-math.Exp(area*area))
	wantMean := sumMean * math.Exp(hand*hand/2)
	wantSquare := sumSquare * math.Exp(2*hand*hand)
	assert.InEpsilon(t, wantMean, mean, 0.005)
	assert.InEpsilon(t, wantSquare-wantMean*wantMean, square-mean*mean, 0.05)
}

// Sanded-off share: applied = left on ÷ (1 − p), p logit-normal.
func TestSandedOffHasItsClosedForm(t *testing.T) {
	const p, sd = 0.3, 0.35
	m := order.NewModel(1)
	m.Add(0, 5/(1-p), m.Draw("filler", order.SandedOff(p, sd)))
	o := outcome(t, run(t, m, 40_000), 0)
	for chance, z := range map[unit.Share]float64{0.2: -0.8416, 0.5: 0, 0.8: 0.8416} {
		logit := math.Log(p/(1-p)) + z*sd
		off := 1 / (1 + math.Exp(-logit))
		assert.InEpsilon(t, 5/(1-off), enough(t, o, chance), 0.01)
	}
}

func build(t *testing.T) *order.Model {
	m := order.NewModel(3)
	for i := range 20 {
		area := m.Draw(fmt.Sprint("area ", i), order.CV(0.03))
		m.Add(0, 1+float64(i), area, m.Draw("roller, gel coat", order.LogNormal(0, 0.25)))
		m.Add(1, 0.5, area, m.Draw("spray, topcoat", order.LogNormal(0.1, 0.36)))
	}
	m.Add(2, 0.25)
	return m
}

func TestTheAnswerIsTheSameWhateverTheSlicing(t *testing.T) {
	whole := run(t, build(t), 1000)
	for _, slice := range []int{1, 7, 333, 999} {
		s, err := build(t).Simulate(1000, 7)
		require.NoError(t, err)
		_, err = s.Outcome(0)
		assert.ErrorIs(t, err, order.ErrUnfinished)
		for !s.Step(slice) {
			assert.Less(t, s.Drawn(), 1000)
		}
		for total := range 3 {
			assert.Equal(t, outcome(t, whole, total), outcome(t, s, total))
		}
	}
	other, err := build(t).Simulate(1000, 8)
	require.NoError(t, err)
	other.Step(1000)
	assert.NotEqual(t, outcome(t, whole, 0), outcome(t, other, 0))
}

func TestWhatIsCertainStaysSo(t *testing.T) {
	o := outcome(t, run(t, build(t), 100), 2)
	assert.Equal(t, 0.25, enough(t, o, 0.95))
	assert.Equal(t, unit.Share(1), o.Chance(0.25))
	assert.Equal(t, unit.Share(0), o.Chance(0.2499))
}

// More confidence takes more, and the amount that is enough in a share of the
// draws is enough in that share.
func TestEnoughAndChanceAgree(t *testing.T) {
	o, last := outcome(t, run(t, build(t), 1000), 0), 0.0
	for p := unit.Share(0.05); p < 1; p += 0.05 {
		v := enough(t, o, p)
		assert.Greater(t, v, last)
		assert.GreaterOrEqual(t, o.Chance(v), p-1e-12)
		assert.Less(t, o.Chance(v*(1-1e-12)), p)
		last = v
	}
	for _, p := range []unit.Share{0, -1, 1.01, unit.Share(math.NaN())} {
		_, err := o.Enough(p)
		assert.Error(t, err)
	}
	assert.Zero(t, order.Outcome{}.Chance(1), "of nothing that was drawn nothing is likely")
	_, err := order.Outcome{}.Enough(0.5)
	assert.Error(t, err)
}

// The same key is the same draw: drawn apart, surfaces would even each other out.
func TestTheSameHandErrsTheSameWayEverywhere(t *testing.T) {
	shared, apart := order.NewModel(1), order.NewModel(1)
	for i := range 20 {
		shared.Add(0, 1, shared.Draw("hand", order.CV(0.2)))
		apart.Add(0, 1, apart.Draw(fmt.Sprint(i), order.CV(0.2)))
	}
	assert.Greater(t, enough(t, outcome(t, run(t, shared, 4000), 0), 0.9), enough(t, outcome(t, run(t, apart, 4000), 0), 0.9))
}

// Draws of different keys don't go together. The variance of their sum strays
// by √(2/n), here 1.4 %; four times that is allowed for the largest of 66 pairs.
func TestKeysAreIndependent(t *testing.T) {
	const keys, draws = 12, 10_000
	varianceOfSum := func(a, b int) float64 {
		m := order.NewModel(1)
		m.Add(0, 1, m.Draw(fmt.Sprint("area ", a), order.LogNormal(0, 0.1)), m.Draw(fmt.Sprint("area ", b), order.LogNormal(0, 0.1)))
		o := outcome(t, run(t, m, draws), 0)
		sum, squares := 0.0, 0.0
		for i := range draws {
			x := math.Log(enough(t, o, unit.Share((float64(i)+0.5)/draws)))
			sum, squares = sum+x, squares+x*x
		}
		return squares/draws - sum*sum/draws/draws
	}
	for a := range keys {
		for b := range a {
			assert.InEpsilon(t, 0.1*0.1+0.1*0.1, varianceOfSum(a, b), 0.057, "%d and %d", a, b)
		}
	}
}

// Adding a surface or widening one changes nothing else, so it never lowers
// what is enough.
func TestMoreWorkNeverNeedsLess(t *testing.T) {
	job := func(surfaces int) float64 {
		m := order.NewModel(1)
		for i := range surfaces {
			m.Add(0, 2, m.Draw(fmt.Sprint("area ", i), order.CV(0.03)), m.Draw("hand", order.CV(0.2)))
		}
		return enough(t, outcome(t, run(t, m, 500), 0), 0.95)
	}
	for n := 1; n < 10; n++ {
		assert.Greater(t, job(n+1), job(n))
	}
}

func BenchmarkSimulation(b *testing.B) {
	m := order.NewModel(10)
	for i := range 60 {
		m.Add(i%10, 1, m.Draw(fmt.Sprint("area ", i%12), order.CV(0.03)), m.Draw(fmt.Sprint("hand ", i%5), order.CV(0.2)))
	}
	for b.Loop() {
		s, err := m.Simulate(10_000, 1)
		if err != nil {
			b.Fatal(err)
		}
		s.Step(10_000)
	}
}

// Thousands of jobs of twenty surfaces, ± 20 % each. What is bought for 90 of
// 100, with one luck for the whole job, is enough in 90 of 100 such jobs, and
// what is bought as if each surface had its own in 90 of 100 of those: 1.29 and
// 1.06 times what is enough in half of them. But the latter, some 21.6, runs out
// in a third of the real jobs, where the hand is one: the share that holds is
// Φ(ln(21.6 ÷ 20) ÷ s), s = √ln(1 + 0.2²) = 0.198.
// Source: counting; the log-normal's closed form.
func TestNinetyOfAHundredJobs(t *testing.T) {
	const surfaces, cv, jobs = 20, 0.2, 8000
	bought := func(key func(i int) string) (ninety, half float64) {
		m := order.NewModel(1)
		for i := range surfaces {
			m.Add(0, 1, m.Draw(key(i), order.CV(cv)))
		}
		o := outcome(t, run(t, m, 10_000), 0)
		return enough(t, o, 0.9), enough(t, o, 0.5)
	}
	shared, half := bought(func(int) string { return "hand" })
	assert.InDelta(t, 1.29, shared/half, 0.012)
	apart, half := bought(func(i int) string { return fmt.Sprint(i) })
	assert.InDelta(t, 1.06, apart/half, 0.006)

	random := rand.New(rand.NewPCG(5, 6)) // not the program's draws
	s := math.Sqrt(math.Log1p(cv * cv))
	luck := func() float64 { return math.Exp(s * random.NormFloat64()) }
	holds := func(amount float64, job func() float64) float64 {
		n := 0
		for range jobs {
			if job() <= amount {
				n++
			}
		}
		return float64(n) / jobs
	}
	one := func() float64 { return surfaces * luck() }
	many := func() float64 {
		sum := 0.0
		for range surfaces {
			sum += luck()
		}
		return sum
	}
	const room = 0.015 // two standard errors of both counts
	assert.InDelta(t, 0.9, holds(shared, one), room)
	assert.InDelta(t, 0.9, holds(apart, many), room)
	assert.InDelta(t, 0.5*math.Erfc(-math.Log(apart/surfaces)/s/math.Sqrt2), holds(apart, one), room)
	assert.Less(t, holds(apart, one), 0.67, "false certainty")
	assert.Greater(t, holds(shared, many), 0.999, "and money on the shelf")
}
