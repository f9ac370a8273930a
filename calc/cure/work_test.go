package cure_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

func handAt(t *testing.T, w cure.Work, product, surface float64, tin cure.Tin) cure.Hand {
	t.Helper()
	s := cure.Shed{Product: celsius(product), Surface: celsius(surface)}
	c, err := table(t).At(s.Surface)
	require.NoError(t, err)
	h, err := w.InHand(gel(), s, c, batch(t), tin)
	require.NoError(t, err)
	return h
}

func TestWhatKeepsACupSmall(t *testing.T) {
	h := handAt(t, work(), 20, 20, cure.Timed)
	assert.Equal(t, cure.ByBatch, h.Bound())

	h = handAt(t, work(), 20, 20, cure.Untimed)
	assert.Equal(t, cure.ByUntimed, h.Bound())
	assert.InDelta(t, 250, inGrams(h.Largest), 1e-9)

	slow := work()
	slow.Speed = given[unit.SpreadingSpeed](0.05, unit.InSquareMetrePerMinute)
	h = handAt(t, slow, 20, 20, cure.Timed)
	assert.Equal(t, cure.ByTime, h.Bound())
	byTime := 0.05 * inMinutes(h.Spreading) * 500
	assert.InDelta(t, byTime, inGrams(h.Largest), 1e-6)
	h = handAt(t, slow, 20, 20, cure.Untimed)
	assert.InDelta(t, byTime/2, inGrams(h.Largest), 1e-6, "half of what the minutes allow")
}

// What stays behind makes a cup larger, but never one that is mostly lost.
func TestWhatStaysBehindInTheLargestCup(t *testing.T) {
	w := work()
	w.Leftover, w.Speed = grams(60), given[unit.SpreadingSpeed](0.05, unit.InSquareMetrePerMinute)
	h := handAt(t, w, 20, 20, cure.Timed)
	spread := 0.05 * inMinutes(h.Spreading) * 500
	assert.InDelta(t, spread+60, inGrams(h.Largest), 1e-6)
	w.Leftover = grams(500)
	assert.InDelta(t, 2*spread, inGrams(handAt(t, w, 20, 20, cure.Timed).Largest), 1e-6)
}

// Over every temperature the largest cup falls without a step, to nothing where
// the minutes do.
func TestTheLargestCupHasNoCliff(t *testing.T) {
	for _, tin := range []cure.Tin{cure.Untimed, cure.Timed} {
		w := work()
		w.Leftover, w.Mixing = grams(95), minutes(3)
		before, reached := -1., false
		for at := 15.; at <= 32; at += 0.01 {
			h := handAt(t, w, at, at, tin)
			if before >= 0 {
				assert.InDelta(t, before, inGrams(h.Largest), 4, "at %.2f °C", at)
			}
			before = inGrams(h.Largest)
			reached = reached || before == 0
			assert.Equal(t, h.Spreading.Value <= 0, before == 0, "at %.2f °C: %v", at, h.Spreading.Value)
		}
		assert.True(t, reached, "it goes to nothing")
	}
}

// A batch stated at 25 °C holds up to 25 °C, and falls from there on.
func TestTheBatchFallsWithGelTime(t *testing.T) {
	w := work()
	w.Mixing = minutes(0)
	h := handAt(t, w, 30, 30, cure.Timed)
	early := bandAt(t, gel(), 30, 1.25).Early
	assert.Equal(t, cure.ByBatch, h.Bound())
	assert.InDelta(t, 500*inMinutes(early)/inMinutes(batch(t).Gel), inGrams(h.Largest), 1e-6)
	assert.InDelta(t, 500, inGrams(handAt(t, w, 25, 25, cure.Timed).Largest), 1e-6)
	assert.Less(t, inGrams(handAt(t, w, 25.5, 25.5, cure.Timed).Largest), 500.)
}

func TestNoCupOverFiveTimesTheTestedMass(t *testing.T) {
	g := gel()
	g.Mass = grams(50)
	c, err := table(t).At(celsius(20))
	require.NoError(t, err)
	h, err := work().InHand(g, shed(20), c, batch(t), cure.Timed)
	require.NoError(t, err)
	assert.Equal(t, cure.ByTestedMass, h.Bound())
	assert.InDelta(t, 250, inGrams(h.Largest), 1e-9)
}

// No hand is given for work that can't be: a film, a speed, a batch or a tested mass
// outside what the sums hold for is refused by its name. A hand without limits would
// have no largest cup, and a dose that nothing holds.
func TestWorkOutsideItsRangeHasNoHand(t *testing.T) {
	c, err := table(t).At(celsius(25))
	require.NoError(t, err)
	for symbol, spoil := range map[string]func(w *cure.Work, g *cure.Gel, b *cure.Batch){
		"v": func(w *cure.Work, _ *cure.Gel, _ *cure.Batch) {
			w.Speed = given[unit.SpreadingSpeed](6, unit.InSquareMetrePerMinute)
		},
		"τ":    func(w *cure.Work, _ *cure.Gel, _ *cure.Batch) { w.Stretch = minutes(31) },
		"m_x":  func(w *cure.Work, _ *cure.Gel, _ *cure.Batch) { w.Mixing = minutes(31) },
		"k":    func(w *cure.Work, _ *cure.Gel, _ *cure.Batch) { w.Usable = given[unit.Share](0.95, unit.InPure) },
		"WFT":  func(w *cure.Work, _ *cure.Gel, _ *cure.Batch) { w.Film = given[unit.WetFilm](20001, unit.InMicrometre) },
		"ρ":    func(w *cure.Work, _ *cure.Gel, _ *cure.Batch) { w.Density = density(2.6) },
		"loss": func(w *cure.Work, _ *cure.Gel, _ *cure.Batch) { w.Loss = given[unit.Share](0.95, unit.InPure) },
		"L":    func(w *cure.Work, _ *cure.Gel, _ *cure.Batch) { w.Leftover = grams(2100) },
		"m_1":  func(_ *cure.Work, _ *cure.Gel, b *cure.Batch) { b.Most = grams(20001) },
		"t_1":  func(_ *cure.Work, _ *cure.Gel, b *cure.Batch) { b.Gel = minutes(0) },
		"m_0":  func(_ *cure.Work, g *cure.Gel, _ *cure.Batch) { g.Mass = grams(0) },
	} {
		for _, tin := range []cure.Tin{cure.Untimed, cure.Timed, cure.TimedToday} {
			w, g, b := work(), gel(), batch(t)
			spoil(&w, &g, &b)
			h, err := w.InHand(g, shed(25), c, b, tin)
			require.Error(t, err, symbol)
			assert.Equal(t, symbol, refused[*working.RangeError](t, err).Arg.Symbol)
			assert.Empty(t, h.Limits, symbol)
		}
	}
}

// Design: minutes in the cup over early gel there, and minutes to lay off over
// early gel on the surface, use up the usable share and no more.
func TestTimeInHandAddsUp(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 10))
	for range 200 {
		surface := 15 + 17*random.Float64()
		product := min(max(surface-10*random.Float64(), 15), 32)
		w := work()
		w.Mixing, w.Stretch = minutes(3*random.Float64()), minutes(2*random.Float64())
		h := handAt(t, w, product, surface, cure.Timed)
		inCup := float64(h.Spreading.Value + w.Mixing.Value)
		used := inCup/float64(h.Cup.Early.Value) + float64(w.Stretch.Value/h.Film.Early.Value)
		assert.InDelta(t, 0.67, used, 1e-9)
	}
}

func TestCupsOfADay(t *testing.T) {
	cups, err := cure.CupsFor(grams(1800), grams(500), grams(40), grams(80))
	require.NoError(t, err)
	assert.EqualValues(t, 5, cups.Count.Value) // 420 g leave each
	assert.InDelta(t, 440, inGrams(cups.Each), 1e-9)
	assert.InDelta(t, 400, inGrams(cups.Loss), 1e-9)

	cups, err = cure.CupsFor(grams(840), grams(500), grams(40), grams(80))
	require.NoError(t, err)
	assert.EqualValues(t, 2, cups.Count.Value, "exactly two")

	cups, err = cure.CupsFor(grams(50), grams(500), grams(200), grams(80)) // less than the tool can dose
	require.NoError(t, err)
	assert.InDelta(t, 200, inGrams(cups.Each), 1e-9)
	assert.InDelta(t, 150, inGrams(cups.Loss), 1e-9)

	_, err = cure.CupsFor(grams(500), grams(100), grams(154), grams(15))
	refused[*cure.NotWithThisToolError](t, err)
	_, err = cure.CupsFor(grams(500), grams(80), grams(40), grams(80))
	refused[*cure.CupsError](t, err)
	_, err = cure.CupsFor(grams(100000), grams(100), grams(40), grams(80))
	assert.InDelta(t, 5000, refused[*cure.CupsError](t, err).Count, 1e-9)
	for _, need := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		_, err = cure.CupsFor(grams(need), grams(500), grams(40), grams(80))
		refused[*working.RangeError](t, err)
	}
	_, err = cure.CupsFor(grams(100), grams(math.NaN()), grams(40), grams(80))
	assert.Error(t, err)
}

// The last bits of a sum take no gram off a cup: 0.7 kg less 0.4 kg are 300 g.
func TestTheLastBitsOfASumTakeNoGram(t *testing.T) {
	all, taken := 0.7, 0.4
	require.Less(t, all-taken, 0.3)
	cups, err := cure.CupsFor(grams(299), given[unit.Mass](all-taken, unit.InKilogram), grams(10), grams(1))
	require.NoError(t, err)
	assert.InDelta(t, 1, float64(cups.Count.Value), 1e-12)
	assert.InDelta(t, 300, inGrams(cups.Each), 1e-9)
}

func TestCupsCoverTheNeedWithinTheirLimits(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 12))
	for range 2000 {
		need, largest := 1+5000*random.Float64(), 100+900*random.Float64()
		smallest, left := 20+80*random.Float64(), 90*random.Float64()
		cups, err := cure.CupsFor(grams(need), grams(largest), grams(smallest), grams(left))
		if err != nil {
			refused[*cure.CupsError](t, err)
			continue
		}
		n, each := float64(cups.Count.Value), inGrams(cups.Each)
		assert.GreaterOrEqual(t, n*(each-left), need-1e-3)
		assert.LessOrEqual(t, each, largest)
		assert.GreaterOrEqual(t, each, smallest-1e-6)
		assert.InDelta(t, n*each-need, inGrams(cups.Loss), 1e-6)
		assert.Less(t, (n-1)*(math.Floor(largest)-left), need, "one cup fewer wouldn't do")
	}
}
