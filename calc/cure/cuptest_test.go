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

// synthetic is a cup test that follows the law, off by noise in ln t.
func synthetic(ea, n, c, p, noise float64) cure.CupTest {
	m := 13 * math.Pow(1.8/p, n) * math.Exp(ea*1000/8.314462618*(1/(c+273.15)-1/298.15)+noise)
	return cure.CupTest{Gel: minutes(m), Temperature: celsius(c), Catalyst: percent(p), Mass: grams(100)}
}

func TestOneTestScales(t *testing.T) {
	g, err := gel().Tested(synthetic(55, 0.8, 30, 1.3, math.Log(0.5)))
	require.NoError(t, err)
	assert.Equal(t, cure.Scaled, g.Fit)
	for _, at := range []float64{20, 25, 30, 38} { // the middle is half the card's everywhere
		assert.InEpsilon(t, 0.5*inMinutes(bandAt(t, gel(), at, 1.5).Mid), inMinutes(bandAt(t, g, at, 1.5).Mid), 1e-9)
	}
	for _, at := range []float64{25, 27.5, 30, 35} { // within 5 °C, and a dose like the test's
		band := bandAt(t, g, at, 1.45)
		assert.InEpsilon(t, 0.85, float64(band.Early.Value/band.Mid.Value), 1e-9, "±15 % at %v °C", at)
		assert.InEpsilon(t, 1.15, float64(band.Late.Value/band.Mid.Value), 1e-9, "±15 % at %v °C", at)
	}
	before := 0.
	for at := 15.; at <= 30; at += 0.05 { // and from there on it widens without a step
		band := bandAt(t, g, at, 1.3)
		width := float64(band.Late.Value / band.Early.Value)
		if before > 0 {
			assert.InDelta(t, before, width, 0.02, "at %v °C", at)
			assert.LessOrEqual(t, width, before+1e-9, "at %v °C", at)
		}
		before = width
	}
	_, err = g.At(celsius(14), percent(2.2))
	assert.InDelta(t, 303.15, float64(refused[*cure.FarError](t, err).Nearest), 1e-9, "only the tested temperature is known")
}

func TestScatterAtOneTemperatureShowsInTheBand(t *testing.T) {
	test := func(m float64) cure.CupTest {
		return cure.CupTest{Gel: minutes(m), Temperature: celsius(25), Catalyst: percent(1.8), Mass: grams(100)}
	}
	g, err := gel().Tested(test(8), test(10), test(12.5))
	require.NoError(t, err)
	b := bandAt(t, g, 25, 1.8)
	assert.InDelta(t, 10, inMinutes(b.Mid), 1e-9, "mean of the logarithms")
	sd := math.Log(1.25) // of −ln 1.25, 0, ln 1.25
	assert.InDelta(t, 10*math.Exp(-2*sd), inMinutes(b.Early), 1e-9)
	assert.InDelta(t, 10*math.Exp(2*sd), inMinutes(b.Late), 1e-9)

	g, err = gel().Tested(test(10), test(10), test(10), test(10))
	require.NoError(t, err)
	b = bandAt(t, g, 25, 1.8)
	assert.InDelta(t, 8.5, inMinutes(b.Early), 1e-9, "lucky tests don't fake certainty")
	assert.InDelta(t, 11.5, inMinutes(b.Late), 1e-9)
}

// The band holds each of a tin's tests, one too that lies farther off than twice the scatter of all: six gelled after 20 min,
// one after 12. The scatter alone would begin at 12.6.
func TestTheBandHoldsEveryTest(t *testing.T) {
	at := func(m float64) cure.CupTest {
		return cure.CupTest{Gel: minutes(m), Temperature: celsius(25), Catalyst: percent(1.8), Mass: grams(100)}
	}
	g, err := gel().Tested(at(20), at(20), at(20), at(12), at(20), at(20), at(20))
	require.NoError(t, err)
	assert.InDelta(t, 12, inMinutes(bandAt(t, g, 25, 1.8).Early), 1e-9)
}

// A line of two parameters through three tests leaves one degree of freedom:
// with two, the band would be 1.41 times too narrow, and the cup too large.
func TestALineThroughThreeTestsHasOneDegreeOfFreedom(t *testing.T) {
	tests := []cure.CupTest{synthetic(55, 0.8, 18, 1.8, 0.1), synthetic(55, 0.8, 24, 1.8, -0.2), synthetic(55, 0.8, 30, 1.8, 0.1)}
	var xs, ys []float64
	for _, test := range tests {
		xs, ys = append(xs, 1/float64(test.Temperature.Value)), append(ys, math.Log(float64(test.Gel.Value)))
	}
	mx, my, sxx, sxy, off := (xs[0]+xs[1]+xs[2])/3, (ys[0]+ys[1]+ys[2])/3, 0., 0., 0.
	for i := range xs {
		sxx, sxy = sxx+(xs[i]-mx)*(xs[i]-mx), sxy+(xs[i]-mx)*(ys[i]-my)
	}
	for i := range xs {
		rest := ys[i] - my - sxy/sxx*(xs[i]-mx)
		off += rest * rest
	}
	g, err := gel().Tested(tests...)
	require.NoError(t, err)
	assert.InEpsilon(t, math.Exp(-2*math.Sqrt(off/(3-2))), float64(g.Time.Low.Value/g.Time.Mid.Value), 1e-9)
}

// The working of a tin's time leads back to each of its tests: to what was timed, at
// which temperature, with how much catalyst.
func TestATestedTimeLeadsBackToItsTests(t *testing.T) {
	tests := []cure.CupTest{synthetic(55, 0.8, 18, 1.8, 0.1), synthetic(55, 0.8, 24, 1.8, -0.2)}
	g, err := gel().Tested(tests...)
	require.NoError(t, err)
	for _, test := range tests {
		for _, step := range []*working.Step{test.Gel.Step, test.Temperature.Step, test.Catalyst.Step} {
			assert.Contains(t, g.Time.Mid.Step.From, step)
		}
	}
}

func TestTestsOverTemperatureGiveTheEnergy(t *testing.T) {
	for _, ea := range []float64{35, 48, 60, 85} {
		g, err := gel().Tested(synthetic(ea, 0.8, 18, 2, 0), synthetic(ea, 0.8, 24, 1.6, 0), synthetic(ea, 0.8, 30, 1.25, 0))
		require.NoError(t, err)
		assert.Equal(t, cure.Fitted, g.Fit)
		assert.InDelta(t, ea, unit.InKilojoulePerMole.From(float64(g.Energy.Mid.Value)), 1e-6, "with n fixed, corrected for catalyst")
		assert.InDelta(t, inMinutes(synthetic(ea, 0.8, 26, 1.4, 0).Gel), inMinutes(bandAt(t, g, 26, 1.4).Mid), 1e-6)
	}
	// Two tests lie on any line: the energy still has a range.
	two, err := gel().Tested(synthetic(60, 0.8, 18, 1.5, 0), synthetic(60, 0.8, 30, 1.5, 0))
	require.NoError(t, err)
	assert.Less(t, unit.InKilojoulePerMole.From(float64(two.Energy.Low.Value)), 55.)
	assert.Greater(t, unit.InKilojoulePerMole.From(float64(two.Energy.High.Value)), 65.)
	// 8 °C is enough, less is not.
	g, err := gel().Tested(synthetic(70, 0.8, 20, 1.5, 0), synthetic(70, 0.8, 28, 1.5, 0))
	require.NoError(t, err)
	assert.Equal(t, cure.Fitted, g.Fit)
	g, err = gel().Tested(synthetic(70, 0.8, 20, 1.5, 0), synthetic(70, 0.8, 27.9, 1.5, 0))
	require.NoError(t, err)
	assert.Equal(t, cure.Scaled, g.Fit)
	assert.InDelta(t, 55, unit.InKilojoulePerMole.From(float64(g.Energy.Mid.Value)), 1e-9)
}

// Tests with 5 % noise: the energy is recovered within its range nearly always,
// and the band holds the true time.
func TestTheEnergyIsRecoveredFromNoisyTests(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	const runs = 400
	inRange, inBand, sum := 0, 0, 0.0
	for range runs {
		ea, n := 45+20*random.Float64(), 0.5+0.5*random.Float64()
		var tests []cure.CupTest
		for _, c := range []float64{16, 19, 22, 25, 28, 31} {
			tests = append(tests, synthetic(ea, n, c, 2.4-0.04*c+0.2*random.Float64(), 0.05*random.NormFloat64()))
		}
		g, err := gel().Tested(tests...)
		require.NoError(t, err)
		sum += unit.InKilojoulePerMole.From(float64(g.Energy.Mid.Value)) - ea
		if e := unit.Of[unit.MolarEnergy](ea, unit.InKilojoulePerMole); e >= g.Energy.Low.Value && e <= g.Energy.High.Value {
			inRange++
		}
		truth := unit.InMinute.From(float64(synthetic(ea, n, 27, 1.4, 0).Gel.Value))
		if b := bandAt(t, g, 27, 1.4); truth >= inMinutes(b.Early) && truth <= inMinutes(b.Late) {
			inBand++
		}
	}
	assert.Less(t, math.Abs(sum/runs), 3., "no lean to either side")
	assert.Greater(t, inRange, runs*95/100)
	assert.Greater(t, inBand, runs*98/100)
}

func TestUnusualEnergiesOnlyBetweenTheTests(t *testing.T) {
	for _, ea := range []float64{25, 110} {
		g, err := gel().Tested(synthetic(ea, 0.8, 18, 1.5, 0), synthetic(ea, 0.8, 28, 1.5, 0))
		require.NoError(t, err)
		assert.Equal(t, cure.FittedUnusual, g.Fit)
		bandAt(t, g, 18, 1.5)
		bandAt(t, g, 28, 1.5)
		for _, at := range []float64{17.9, 28.1} {
			_, err := g.At(celsius(at), percent(1.5))
			assert.True(t, refused[*cure.FarError](t, err).Unusual)
		}
	}
	g, err := gel().Tested(synthetic(22, 0.8, 18, 1.5, 0.1), synthetic(22, 0.8, 23, 1.5, -0.2), synthetic(22, 0.8, 28, 1.5, 0.1))
	require.NoError(t, err)
	assert.InDelta(t, 20, unit.InKilojoulePerMole.From(float64(g.Energy.Low.Value)), 1e-9, "the range keeps to what is taken at all")
	for _, ea := range []float64{-40, 0, 19, 131, 300} {
		_, err := gel().Tested(synthetic(ea, 0.8, 18, 1.5, 0), synthetic(ea, 0.8, 28, 1.5, 0))
		assert.InDelta(t, ea, unit.InKilojoulePerMole.From(float64(refused[*cure.EnergyError](t, err).Energy)), 1e-6)
	}
}

func TestCupTestsThatCantBeRight(t *testing.T) {
	good := synthetic(55, 0.8, 25, 1.5, 0)
	for _, c := range []struct {
		spoil func(*cure.CupTest)
		fault cure.TestFault
	}{
		{func(c *cure.CupTest) { c.Gel = minutes(0) }, cure.GelTimeFault},
		{func(c *cure.CupTest) { c.Gel = minutes(-3) }, cure.GelTimeFault},
		{func(c *cure.CupTest) { c.Gel = minutes(math.NaN()) }, cure.GelTimeFault},
		{func(c *cure.CupTest) { c.Gel = minutes(2000) }, cure.GelTimeFault},
		{func(c *cure.CupTest) { c.Temperature = celsius(77) }, cure.TemperatureFault},
		{func(c *cure.CupTest) { c.Catalyst = percent(0) }, cure.CatalystFault},
		{func(c *cure.CupTest) { c.Catalyst = working.Figure[unit.ByMass]{} }, cure.CatalystFault},
		{func(c *cure.CupTest) { c.Mass = grams(0) }, cure.MassFault},
		{func(c *cure.CupTest) { c.Mass = grams(201) }, cure.UnlikeMass},
	} {
		bad := good
		c.spoil(&bad)
		_, err := gel().Tested(good, bad)
		e := refused[*cure.TestError](t, err)
		assert.Equal(t, cure.TestError{Test: 1, Fault: c.fault}, *e)
	}
	_, err := gel().Tested(make([]cure.CupTest, cure.MaxTests+1)...)
	assert.Equal(t, cure.TooManyTests, refused[*cure.TestError](t, err).Fault)
	same, err := gel().Tested()
	require.NoError(t, err)
	assert.Equal(t, gel().Time.Mid.Value, same.Time.Mid.Value)
	assert.Equal(t, cure.FromCard, same.Fit)
}

// Of several tests the nearest counts, whichever stands first: a tin that was timed at 14
// and at 30 °C is known at 33, and not at 47.
func TestTheNearestTestCounts(t *testing.T) {
	for _, tested := range [][]float64{{14, 30}, {30, 14}, {14, 30, 15}} {
		g := gel()
		for _, at := range tested {
			g.TestedAt = append(g.TestedAt, celsius(at).Value)
		}
		_, err := g.At(celsius(33), percent(1.5))
		assert.NoError(t, err, "%v", tested)
		_, err = g.At(celsius(47), percent(1.5))
		assert.InDelta(t, float64(celsius(30).Value), float64(refused[*cure.FarError](t, err).Nearest), 1e-9, "%v", tested)
	}
}
