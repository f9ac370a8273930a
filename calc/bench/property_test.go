package bench_test

import (
	"fmt"
	"math"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// The default table's spreading minutes, 0.67 × early gel time − 1 minute for a
// stretch − 1.5 minutes of mixing, and the same with the product cooled to 20 °C,
// come out of the bench as they were worked out when the table was drawn up: gel
// time from 10–17 min at 25 °C and 1.8 % (published), n = 0.5–1, Ea = 40–85 kJ/mol;
// short nap roller (common practice). The sums were done outside this program and
// written to a tenth of a minute.
func TestSpreadingMinutesOfTheDefaultTable(t *testing.T) {
	const cold = "day.today.low = 15.1\nday.today.high = 32\nday.today.read-temp = 24"
	for _, row := range []struct{ surface, minutes, cooled float64 }{
		{15, 7.1, 0}, {18, 6.4, 0}, {20, 6.1, 0}, {22, 5.6, 6.5}, {25, 4.8, 6.8}, {28, 3.0, 6.8}, {30, 2.1, 6.8}, {32, 1.2, 6.4},
	} {
		for product, want := range map[float64]float64{row.surface: row.minutes, 20: row.cooled} {
			if want == 0 || product == 20 && row.surface == 20 && want != row.minutes {
				continue
			}
			b := benchOf(t, tenOClock, morningWith("bench.now.method = nap-roller", "bench.now.scale-step = 0.01 g"), cold,
				fmt.Sprintf("bench.now.surface-temp = %v\nbench.now.product-temp = %v", row.surface, product))
			require.True(t, b.HasHand, "%v °C: %v %v", row.surface, b.Reasons, b.Waiting)
			assert.InDelta(t, want, unit.InMinute.From(float64(b.Hand.Spreading.Value)), 0.051, "surface %v °C, product %v °C", row.surface, product)
		}
	}
}

// Whatever is typed, a dose is finite, on straight lines between rows of the card's
// table, inside the card's limits in grams and in millilitres, for a cup no larger
// than the largest; and there is none while a field that it depends on can't be
// read or its readings are of another day.
func TestNoDoseOutsideItsLimits(t *testing.T) {
	doses, spoilt := 0, 0
	for seed := range jobtest.Enough(t, 2400, &doses, 250) {
		runtime.Gosched() // as WebAssembly there is one thread: once the collector never got its turn in this loop, and memory ran out
		r := newBenches(seed)
		d := r.likely()
		fields := job.ListAt("bench").Fields
		for range r.IntN(3) { // anything anywhere
			f := fields[r.IntN(len(fields))]
			d = d.Set("bench.now."+f.Key, r.texts.Text(f))
		}
		if r.IntN(6) == 0 {
			f := material.Fields[r.IntN(len(material.Fields))]
			path := "card." + d.Get("bench.now.card") + "." + f.Key
			if field := job.FieldAt(path); field != nil { // none of a card whose name can't be one
				d = d.Set(path, r.texts.Text(field))
			}
		}
		now := bench.Now{Hour: unit.Time(r.IntN(24)) * unit.Hour, Date: tenOClock.Date}
		p := plan.Make(d)
		b := bench.Make(&p, now)
		if !b.HasDose {
			assert.Zero(t, b.Dose.Mass.Value, "seed %d", seed)
			continue
		}
		doses++
		checkDose(t, seed, &p, &b)
		if seed%12 != 0 {
			continue
		}
		spoilt++
		for _, path := range hangsOn(d, &b) {
			for _, junk := range []string{"warm", "1,500", "1e400", "-7 mil kg"} {
				p := plan.Make(d.Set(path, junk))
				assert.False(t, bench.Make(&p, now).HasDose, "seed %d: a dose with %s = %s", seed, path, junk)
			}
		}
		other := now
		other.Date = "2026-06-02"
		assert.False(t, bench.Make(&p, other).HasDose, "seed %d: a dose on another day", seed)
	}
	assert.Greater(t, spoilt, 15)
}

func checkDose(t *testing.T, seed uint64, p *plan.Plan, b *bench.Bench) {
	t.Helper()
	d, bench := b.Dose, &p.Job.Bench
	name := fmt.Sprintf("seed %d", seed)
	require.Empty(t, b.Reasons, name)
	require.Empty(t, b.Waiting, name)
	for _, v := range []float64{float64(d.Mass.Value), float64(d.Volume.Value), float64(d.OfWhole.Value), float64(d.Error.Value), float64(b.Usable.Value), float64(b.Covers.Value)} {
		require.False(t, math.IsNaN(v) || math.IsInf(v, 0) || v < 0, name)
	}
	whole, product := float64(b.Whole.Value), float64(b.Mix.Product.Value)
	parts := product + float64(b.Mix.Thinner.Value+b.Mix.Wax.Value+b.Mix.Pigment.Value)
	require.InEpsilon(t, whole, parts, 1e-9, name)

	surface, share := float64(bench.Surface.Value), float64(d.Share.Value)
	require.InDelta(t, byLines(t, b.Card, surface), share, 1e-9, name)

	least, most := float64(b.Card.Floor.Value)*whole, float64(b.Card.Ceiling.Value)*product
	rho := float64(p.Job.CardByKey(catalystOf(p, b)).Density.Value)
	const dust = 2e-8 // kg: decimals hold 0.01 mg
	for what, kg := range map[string]float64{"as measured": float64(d.Mass.Value), "grams": float64(d.Grams.Mass()), "millilitres": float64(d.Millilitres.Volume()) * rho} {
		require.GreaterOrEqual(t, kg, least-dust, "%s: %s", name, what)
		require.LessOrEqual(t, kg, most+dust, "%s: %s", name, what)
		require.InDelta(t, share*whole, kg, float64(d.Error.Value)*whole+1.01e-5, "%s: %s is further off than the tool", name, what)
	}
	for what, kg := range map[string]float64{"wanted": share * whole, "measured": float64(d.Mass.Value)} {
		require.GreaterOrEqual(t, kg-float64(d.Error.Value)*whole, least-dust, "%s: the tool's error carries what is %s under the floor", name, what)
		require.LessOrEqual(t, kg+float64(d.Error.Value)*whole, most+dust, "%s: the tool's error carries what is %s over the ceiling", name, what)
	}
	require.InDelta(t, float64(d.OfWhole.Value), float64(b.Hand.Catalyst.Value), 1e-12, "%s: the minutes go by the dose as measured", name)
	require.LessOrEqual(t, whole, float64(b.Hand.Largest.Value)*(1+1e-9), name)
	if b.Tin == cure.Untimed {
		require.LessOrEqual(t, whole, float64(cure.HotCup)*(1+1e-9), name)
	}
	for _, at := range []unit.Temperature{bench.Surface.Value, b.Product.Value} {
		require.True(t, at >= b.Card.SurfaceLeast.Value-1e-6 && at <= b.Card.SurfaceMost.Value+1e-6, "%s: %v K", name, at)
	}
	require.LessOrEqual(t, math.Abs(float64(bench.Surface.Value-b.Product.Value)), 15+1e-6, name)
	require.GreaterOrEqual(t, float64(b.Air.ColdestAhead), float64(b.Card.SurfaceLeast.Value)-1e-6, name)
}

func catalystOf(p *plan.Plan, b *bench.Bench) string {
	if p.Job.Bench.Catalyst != "" {
		return p.Job.Bench.Catalyst
	}
	return b.Card.Hardener
}

// byLines reads a card's table by hand.
func byLines(t *testing.T, card *job.Card, at float64) float64 {
	t.Helper()
	rows := card.DoseTable
	if card.DoseRows > 0 {
		rows = card.OwnDoses
	}
	for i := 1; i < len(rows); i++ {
		low, high := float64(rows[i-1].Surface), float64(rows[i].Surface)
		if at >= low-1e-6 && at <= high+1e-6 {
			from, to := float64(rows[i-1].Catalyst), float64(rows[i].Catalyst)
			return from + (to-from)*(at-low)/(high-low)
		}
	}
	t.Fatalf("a dose at %v K, beyond the table", at)
	return 0
}

// FuzzBench: one text in any field, and whatever dose comes is inside its limits.
func FuzzBench(f *testing.F) {
	f.Add(uint64(1), "bench.now.surface-temp", "31.9")
	f.Add(uint64(2), "card.gelcoat.ceiling", "1.2")
	f.Add(uint64(3), "day.today.low", "2")
	f.Fuzz(func(t *testing.T, seed uint64, path, text string) {
		p := plan.Make(newBenches(seed).likely().Set(path, text))
		if b := bench.Make(&p, tenOClock); b.HasDose {
			checkDose(t, seed, &p, &b)
		}
	})
}
