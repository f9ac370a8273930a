package bench_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"runtime"
	"strconv"
	"strings"
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

// benches draws what is typed at a bench: mostly with a dose in reach, and some
// fields typed at random.
type benches struct {
	*rand.Rand
	texts *jobtest.Random
}

func newBenches(seed uint64) *benches {
	b := &benches{rand.New(rand.NewPCG(seed, 3)), jobtest.New(seed)}
	b.texts.Junk = 0.25
	return b
}

func (r *benches) pick(list ...string) string { return list[r.IntN(len(list))] }

func (r *benches) between(low, high float64) string {
	return strconv.FormatFloat(low+r.Float64()*(high-low), 'f', 1, 64)
}

// likely is a bench that a builder could have typed.
func (r *benches) likely() job.Document {
	var d job.Document
	set := func(path, text string) { d = d.Set(path, text) }
	for _, line := range strings.Split(strings.TrimSpace(warmMorning), "\n") {
		path, text, _ := strings.Cut(line, " = ")
		set(path, text)
	}
	card := r.pick("gelcoat", "gelcoat", "flowcoat", "vinylester", "polyester-filler")
	set("bench.now.card", card)
	set("bench.now.amount", r.pick("100 g", r.between(40, 100)+" g", r.between(1.5, 3.5)+" oz", r.between(30, 80)+" mL", r.between(100, 700)+" g", "0.2 lb", "2 US fl oz"))
	at := 14 + 19*r.Float64()
	set("bench.now.surface-temp", strconv.FormatFloat(at, 'f', 1, 64))
	set("bench.now.product-temp", strconv.FormatFloat(at+8*r.Float64()-5, 'f', 1, 64))
	set("day.today.low", r.between(12, 22))
	set("day.today.high", r.between(24, 34))
	set("bench.now.method", r.pick("nap-roller", "brush", "gravity-gun", "foam-roller"))
	tool := r.pick("scale", "syringe", "drops")
	set("bench.now.tool", tool)
	set("bench.now.scale-step", r.pick("0.1 g", "0.1 g", "0.01 g", "1 g"))
	set("bench.now.syringe-step", r.pick("0.1 mL", "0.2 mL", "0.5"))
	set("bench.now.drops", r.between(12, 45))
	if r.IntN(3) == 0 {
		set("bench.now.thinner", r.between(0, 6))
		set("bench.now.thinner-by", r.pick(job.PerMass, job.PerVolume))
	}
	if r.IntN(3) == 0 {
		set("bench.now.pigment", r.between(0, 9))
	}
	if r.IntN(2) == 0 {
		for key, text := range map[string]string{"card": card, "mass": "100 g", "temp": r.between(18, 28), "share": r.between(1.2, 2.2), "minutes": r.between(8, 25)} {
			set("test.1."+key, text)
		}
		set("test", "1")
	}
	if r.IntN(4) == 0 {
		r.ownTable(set, "card."+card)
	}
	return d
}

// ownTable types a table of a few rows, in order now and then.
func (r *benches) ownTable(set func(path, text string), card string) {
	ids, at, share := "", 12+6*r.Float64(), 2.4-0.4*r.Float64()
	for i := range 1 + r.IntN(4) {
		id := strconv.Itoa(i + 1)
		ids += " " + id
		set(card+".dose."+id+".temp", strconv.FormatFloat(at, 'f', 1, 64))
		set(card+".dose."+id+".share", strconv.FormatFloat(share, 'f', 2, 64))
		at, share = at+8*r.Float64()-1, share-0.4*r.Float64()
	}
	set(card+".dose", strings.TrimSpace(ids))
}

// hangsOn is every field that a catalyst dose can depend on.
func hangsOn(d job.Document, b *bench.Bench) []string {
	var list []string
	bench, day := job.ListAt("bench"), job.ListAt("day")
	tool := map[string]string{"scale": "scale-step", "syringe": "syringe-step", "drops": "drops"}
	for _, f := range bench.Fields {
		for kind, key := range tool {
			if f.Key == key && kind != d.Get("bench.now.tool") {
				f = nil
				break
			}
		}
		if f != nil && f.Kind != job.Words && !strings.HasPrefix(f.Key, "flow-") && f.Key != "locker" {
			list = append(list, "bench.now."+f.Key)
		}
	}
	for _, f := range day.Fields {
		if f.Kind != job.Words {
			list = append(list, "day.today."+f.Key)
		}
	}
	for _, f := range material.Fields {
		if f.Shown(&b.Card.Card) {
			list = append(list, b.Card.Path+"."+f.Key)
		}
	}
	list = append(list, "card."+b.Card.Hardener+".density")
	if b.Card.Thinner != "" {
		list = append(list, "card."+b.Card.Thinner+".density")
	}
	for _, l := range append(d.Under("test"), d.Under(b.Card.Path+".dose")...) {
		if f := job.FieldAt(l.Path); f != nil && f.Kind == job.Quantity {
			list = append(list, l.Path)
		}
	}
	return list
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

// A fixed ratio is that of the tin at every temperature, and there are no parts
// while it isn't typed.
func TestAFixedRatioNeverMoves(t *testing.T) {
	missing := benchOf(t, tenOClock, morningWith("bench.now.card = topcoat"))
	assert.False(t, missing.HasParts)
	require.Len(t, missing.Reasons, 1)
	var ratio *cure.RatioError
	require.ErrorAs(t, missing.Reasons[0], &ratio)
	assert.Equal(t, cure.RatioMissing, ratio.Cause)

	usable := map[string]unit.Time{}
	for _, at := range []string{"14", "20", "28"} {
		b := benchOf(t, tenOClock, morningWith("bench.now.card = topcoat", "card.topcoat.ratio-mass = 4", "day.today.read-humidity = 40",
			"bench.now.surface-temp = "+at, "bench.now.product-temp = "+at, "bench.now.amount = 100 g"))
		require.True(t, b.HasParts, "%v %v", b.Reasons, b.Waiting)
		assert.InDelta(t, 0.080, float64(b.Parts.A.Mass.Value), 1e-12, "4 of 5 parts")
		assert.InDelta(t, 0.020, float64(b.Parts.B.Mass.Value), 1e-12, "1 of 5 parts")
		assert.False(t, b.HasDose)
		usable[at] = b.Usable.Value
	}
	assert.Greater(t, usable["14"], usable["20"], "the pot life moves instead")
	assert.Greater(t, usable["20"], usable["28"])
	cold := benchOf(t, tenOClock, morningWith("bench.now.card = topcoat", "card.topcoat.ratio-mass = 4", "bench.now.surface-temp = 5"))
	assert.False(t, cold.HasParts)
}

// A cup for a coat depends on every surface: none is mixed for areas that can't all
// be read.
func TestACoatsCupDependsOnItsSurfaces(t *testing.T) {
	text := morningWith("bench.now.for = step", "bench.now.step = buildup.1.step.1", "surface = 1", "surface.1.length = 2 m", "surface.1.width = 1 m", "surface.1.buildup = buildup.1",
		"buildup = 1", "buildup.1.step = 1", "buildup.1.step.1.kind = coat", "buildup.1.step.1.card = gelcoat", "buildup.1.step.1.method = foam-roller", "buildup.1.step.1.film = 400 µm")
	whole := benchOf(t, tenOClock, text)
	require.True(t, whole.HasDose, "%v %v", whole.Reasons, whole.Waiting)
	require.True(t, whole.HasCups)
	cups := float64(whole.Cups.Count.Value)
	assert.InDelta(t, 0.25, float64(whole.Whole.Value), 1e-12, "the largest of a tin never timed")
	left := 0.025 + float64(material.CupWall(unit.Volume(0.5/1250)).Value)
	assert.InDelta(t, math.Ceil(2*400e-6*1250/0.97/(0.25-left)), cups, 1e-9, "2 m² of 400 µm at 1.25 kg/L, 3 % slung off, leave the cups")
	assert.InEpsilon(t, cups, float64(whole.Vapour.Coat.Value/whole.Vapour.GivenOff.Value), 1e-9, "a coat's styrene leaves within one hour")
	one := benchOf(t, tenOClock, text, "cup = 1", "cup.1.card = gelcoat", "cup.1.mixed = 100 g", "cup.1.in = 1780300000", "cup.1.day = 2026-06-01", "cup.1.step = buildup.1.step.1")
	assert.InEpsilon(t, cups-1, float64(one.Vapour.Coat.Value/one.Vapour.GivenOff.Value), 1e-9, "one is on already")
	for _, line := range []string{"surface.1.width = wide", "surface = 1 2\nsurface.2.length = 1,500\nsurface.2.width = 1\nsurface.2.buildup = buildup.1",
		"buildup.1.step.1.film = thick", "buildup.1.step.1.coats = many"} {
		assert.False(t, benchOf(t, tenOClock, text, line).HasDose, line)
	}
}

// A tin never timed gives half of what the minutes allow, 250 g at most; a timed
// one the card's batch, or what is left of the coat.
func TestTimingATinLiftsTheCup(t *testing.T) {
	text := morningWith("bench.now.for = step", "bench.now.step = buildup.1.step.1", "surface = 1", "surface.1.length = 2 m", "surface.1.width = 1 m", "surface.1.buildup = buildup.1",
		"buildup = 1", "buildup.1.step = 1", "buildup.1.step.1.kind = coat", "buildup.1.step.1.card = gelcoat", "buildup.1.step.1.method = nap-roller", "buildup.1.step.1.film = 400 µm")
	untested := benchOf(t, tenOClock, text)
	require.True(t, untested.HasDose, "%v", untested.Reasons)
	assert.Equal(t, bench.ByUntimedTin, untested.Size.Limits[0].Bound)
	assert.Equal(t, bench.TinSheet, untested.Size.Limits[0].Lifts)
	assert.InDelta(t, 0.25, float64(untested.Whole.Value), 1e-12)
	tested := benchOf(t, tenOClock, text, "test = 1", "test.1.card = gelcoat", "test.1.mass = 100 g", "test.1.temp = 22", "test.1.share = 1.7", "test.1.minutes = 18")
	assert.True(t, tested.HasDose, "%v", tested.Reasons)
	assert.Greater(t, float64(tested.Whole.Value), 0.25)
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
