package bench_test

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// warmMorning is a bench at 25 °C on which nothing is missing.
const warmMorning = `
bench.now.card = gelcoat
bench.now.amount = 100 g
bench.now.product-temp = 25
bench.now.surface-temp = 25
bench.now.scale-step = 0.1 g
bench.now.read-on = 2026-06-01
day.today.date = 2026-06-01
day.today.low = 17
day.today.high = 29
day.today.sunrise = 5:00
day.today.read-temp = 24
day.today.read-humidity = 55
day.today.read-at = 10:00
`

var tenOClock = bench.Now{Hour: 10 * unit.Hour, Date: "2026-06-01"}

func document(t testing.TB, lines ...string) job.Document {
	t.Helper()
	var d job.Document
	for _, line := range strings.Split(strings.Join(lines, "\n"), "\n") {
		if path, text, found := strings.Cut(line, " = "); found {
			d = d.Set(path, text)
		}
	}
	return d
}

func benchOf(t testing.TB, now bench.Now, lines ...string) bench.Bench {
	t.Helper()
	p := plan.Make(document(t, lines...))
	return bench.Make(&p, now)
}

// One typed line replaces one of the warm morning's; "" takes it away.
func morningWith(changes ...string) string {
	text := warmMorning
	for _, c := range changes {
		path, _, _ := strings.Cut(c, " = ")
		at := strings.Index(text, "\n"+path+" = ")
		if at >= 0 {
			end := at + 1 + strings.Index(text[at+1:], "\n")
			text = text[:at] + text[end:]
		}
		text += c + "\n"
	}
	return text
}

// 100 g at 25 °C: 1.5 % by mass of the table is 1.5 g; at 1.15 g/mL that is
// 1.304 mL. Source: the default table (common practice), definition of a share.
func TestTheDoseOfAWarmMorning(t *testing.T) {
	b := benchOf(t, tenOClock, warmMorning)
	require.Empty(t, b.Waiting)
	require.Empty(t, b.Reasons)
	require.True(t, b.HasDose)
	assert.Equal(t, "1.5\u00a0g", b.Dose.Grams.String())
	assert.Equal(t, "1.3\u00a0mL", b.Dose.Millilitres.String())
	assert.Equal(t, cure.ByUntimed, b.Hand.Bound(), "nobody has timed this tin")
	assert.InDelta(t, 250, unit.InGram.From(float64(b.Hand.Largest.Value)), 1e-9)
	assert.Positive(t, b.Covers.Value)
	assert.NotEmpty(t, b.Air.Hours().Windows)
	assert.True(t, b.Vapour.Known)
}

func TestNoDose(t *testing.T) {
	for name, c := range map[string]struct {
		now   bench.Now
		lines []string
		want  any
	}{
		"too hot":             {tenOClock, []string{"bench.now.surface-temp = 38", "bench.now.product-temp = 30"}, new(*cure.BeyondTableError)},
		"too cold":            {tenOClock, []string{"bench.now.surface-temp = 12", "bench.now.product-temp = 16"}, new(*cure.BeyondTableError)},
		"apart":               {tenOClock, []string{"bench.now.surface-temp = 32", "bench.now.product-temp = 16"}, new(*cure.ApartError)},
		"steep":               {tenOClock, []string{"bench.now.surface-temp = 16", "bench.now.product-temp = 29"}, new(*cure.SteepError)},
		"cold evening":        {bench.Now{Hour: 22 * unit.Hour, Date: "2026-06-01"}, []string{"day.today.low = 8"}, new(*cure.ColdEveningError)},
		"cold part, evening":  {bench.Now{Hour: 22 * unit.Hour, Date: "2026-06-01"}, []string{"bench.now.surface-temp = 17.5", "bench.now.product-temp = 20"}, new(*cure.ColdEveningError)},
		"coarse scale":        {tenOClock, []string{"bench.now.scale-step = 1 g"}, new(*cure.NotWithThisToolError)},
		"untested, too large": {tenOClock, []string{"bench.now.amount = 300 g"}, new(*cure.CupTooLargeError)},
		"wrong peroxide":      {tenOClock, []string{"bench.now.catalyst = benzoyl-paste"}, new(*cure.PeroxideError)},
		"one row":             {tenOClock, []string{"card.gelcoat.dose = 1", "card.gelcoat.dose.1.temp = 20", "card.gelcoat.dose.1.share = 2"}, new(*cure.TableError)},
	} {
		t.Run(name, func(t *testing.T) {
			b := benchOf(t, c.now, morningWith(c.lines...))
			assert.False(t, b.HasDose)
			found := false
			for _, r := range b.Reasons {
				found = found || errorIs(r, c.want)
			}
			assert.True(t, found, "%v", b.Reasons)
		})
	}
}

func TestNoDoseFromWhatCantBeRead(t *testing.T) {
	for _, line := range []string{
		"bench.now.surface-temp = warm", "bench.now.amount = lots", "day.today.low = 1,500", "card.gelcoat.floor = x",
		"card.ketone-peroxide.density = 0", "bench.now.scale-step = 1,500 g", "bench.now.read-on = 2026-05-31",
		"bench.now.product-temp = 80", "day.today.read-humidity = 120", "card.gelcoat.dose = 1", "test = 1\ntest.1.minutes = 0",
	} {
		assert.False(t, benchOf(t, tenOClock, morningWith(line)).HasDose, line)
	}
	for _, key := range []string{"bench.now.surface-temp", "bench.now.scale-step"} {
		b := benchOf(t, tenOClock, morningWith(key+" = "))
		assert.False(t, b.HasDose, key)
		assert.Contains(t, b.Waiting, key)
	}
}

func TestACupTestAllowsAWorkingCup(t *testing.T) {
	b := benchOf(t, tenOClock, morningWith("bench.now.amount = 300 g",
		"test = 1", "test.1.card = gelcoat", "test.1.mass = 100 g", "test.1.temp = 25", "test.1.share = 1.5", "test.1.minutes = 15"))
	require.Empty(t, b.Reasons)
	require.True(t, b.HasDose)
	assert.Equal(t, "4.5\u00a0g", b.Dose.Grams.String())
	b = benchOf(t, tenOClock, morningWith("bench.now.amount = 300 g", "bench.now.tin = May",
		"test = 1", "test.1.card = gelcoat", "test.1.mass = 100 g", "test.1.temp = 25", "test.1.share = 1.5", "test.1.minutes = 15"))
	assert.False(t, b.HasDose, "a new tin is not tested")
}

// errorIs says if err is of the type that want points to.
func errorIs(err error, want any) bool { return errors.As(err, want) }

// With a typed sunrise at 2:00 the air falls to its 14 °C there, within the four
// hours after midnight: an hour that ends so is no remedy, the card's least is
// 15 °C. With the sun taken to rise at 6:00 the coldest would be missed.
func TestACoolerHourKnowsTheTypedSunrise(t *testing.T) {
	b := benchOf(t, bench.Now{Hour: 12 * unit.Hour, Date: "2026-06-01"}, morningWith(
		"bench.now.product-temp = 31", "bench.now.surface-temp = 31", "day.today.low = 14", "day.today.high = 40",
		"day.today.sunrise = 2:00", "day.today.read-temp = 31", "day.today.read-humidity = 40", "day.today.read-at = 12:00"))
	at := slices.IndexFunc(b.Offers(), func(o cure.Offer) bool { return o.Remedy == cure.OtherHour })
	require.GreaterOrEqual(t, at, 0, "%v %v", b.Reasons, b.Waiting)
	o := b.Offers()[at]
	assert.Greater(t, float64(o.Hour), float64(26*unit.Hour), "after tomorrow's sunrise, not in the night before it")
	assert.GreaterOrEqual(t, float64(b.Air.Day.ColdestAhead(b.Air.Surface, o.Hour)), 288.15)
}

// 5 % by mass of styrene at 0.906 kg/L in gel coat at 1.25 kg/L is 6.898 % by
// volume. Source: exact, by the densities. Either way the cup holds the same; so
// does one whose coat says it.
func TestThinnerAtTheBenchByMassOrByVolume(t *testing.T) {
	thinned := []string{"card.gelcoat.density = 1.25", "card.styrene.density = 0.906"}
	cup := func(lines ...string) bench.Bench {
		return benchOf(t, tenOClock, morningWith(append(lines, thinned...)...))
	}
	byMass := cup("bench.now.thinner = 5 %")
	require.True(t, byMass.HasDose, "%v", byMass.Reasons)
	assert.InEpsilon(t, 0.05, float64(byMass.Mix.Thinner.Value/byMass.Mix.Product.Value), 1e-9)
	byVolume := cup("bench.now.thinner = 6.898 %", "bench.now.thinner-by = volume")
	require.True(t, byVolume.HasDose, "%v", byVolume.Reasons)
	assert.InEpsilon(t, float64(byMass.Mix.Thinner.Value), float64(byVolume.Mix.Thinner.Value), 1e-4)
	for _, lines := range [][]string{
		{"bench.now.thinner = 7.3 %"}, {"bench.now.thinner = 10.1 %", "bench.now.thinner-by = volume"},
	} {
		b := cup(lines...)
		assert.False(t, b.HasDose, lines)
		var over *plan.ThinnerError
		assert.ErrorAs(t, errors.Join(b.Reasons...), &over, lines)
	}
}

// The hand's own sum: gel coat of 35 % styrene gives off 0.445 × 35^1.675 g/kg by
// the rule for boats, more than rolled by the other; three cups of 100 g in the
// log of today, one of yesterday, and 100 g to come.
// Source: 40 CFR 63 Subpart VVVV, Table 3.
func TestVapourOfTheDayByMethod(t *testing.T) {
	cups := []string{"bench.now.method = nap-roller", "cup = 1 2 3 4"}
	for i, c := range []struct{ method, day string }{{"nap-roller", "2026-06-01"}, {"gravity-gun", "2026-06-01"}, {"gravity-gun", "2026-06-01"}, {"gravity-gun", "2026-05-31"}} {
		at := "cup." + strconv.Itoa(i+1)
		cups = append(cups, at+".card = gelcoat", at+".mixed = 100 g", at+".product = 100 g", at+".in = 1780300000", at+".method = "+c.method, at+".day = "+c.day)
	}
	b := benchOf(t, tenOClock, morningWith(cups...))
	v := b.Vapour
	require.True(t, v.Known)
	off := func(h float64) float64 { return 0.1 * 0.445 * math.Pow(h, 1.675) } // g from 100 g
	sprayed := 0.1 * 1000 * (1.03646*0.35 - 0.195)                             // 2000 lb per short ton is the unit
	assert.InEpsilon(t, off(35), unit.InGram.From(float64(v.GivenOff.Value)), 1e-9)
	assert.Nil(t, v.Coat.Step, "no coat is chosen")
	require.Len(t, v.Day, 2)
	assert.Equal(t, []any{"nap-roller", 2, "gravity-gun", 2}, []any{v.Day[0].Method.Key, v.Day[0].Cups, v.Day[1].Method.Key, v.Day[1].Cups})
	assert.InEpsilon(t, 2*off(35), unit.InGram.From(float64(v.Day[0].Mass.Value)), 1e-9)
	assert.InEpsilon(t, 2*max(off(35), sprayed), unit.InGram.From(float64(v.Day[1].Mass.Value)), 1e-9)
	assert.InEpsilon(t, float64(v.Air.Value)*float64((v.Day[0].Mass.Value+v.Day[1].Mass.Value)/v.GivenOff.Value)/8, float64(v.DayAir.Value), 1e-9)
}
