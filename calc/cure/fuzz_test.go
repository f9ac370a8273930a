package cure_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// inputs is everything that a dose depends on, as bare numbers.
type inputs struct {
	product, thinner, wax, pigment, largest float64 // g
	surface, inTin, ahead                   float64 // °C
	coldest, warmest, dose1, dose2          float64 // of the table
	floor, ceiling                          float64 // %
	limitCold, limitWarm                    float64 // °C
	density, step                           float64
	kind, family                            int
	promoted                                bool
}

// hold asks for a dose and checks what comes: by its own arithmetic, not the package's.
func hold(t *testing.T, in inputs) (isDosed bool) {
	made, err := cure.NewTable("fuzz", source.Typed, row(in.coldest, in.dose1), row(in.warmest, in.dose2))
	if err != nil || math.IsNaN(in.step) || math.IsInf(in.step, 0) {
		return false
	}
	measure, err := cure.NewTool(cure.ToolKind(in.kind), decimal.NewFromFloat(in.step).Round(4))
	if err != nil {
		return false
	}
	takes := []cure.Family{cure.Ketone, cure.BenzoylPaste}
	c := cure.Cup{
		Mix: cure.Mix{Product: grams(in.product), Thinner: grams(in.thinner), Wax: grams(in.wax), Pigment: grams(in.pigment)},
		Card: cure.Card{Table: made, Floor: percent(in.floor), Ceiling: percent(in.ceiling),
			Limits: cure.Limits{Coldest: celsius(in.limitCold).Value, Warmest: celsius(in.limitWarm).Value},
			Takes:  cure.Takes{Families: takes, Promoted: in.promoted}},
		Peroxide: cure.Peroxide{Family: cure.Family(in.family), Density: density(in.density)},
		Shed:     cure.Shed{Product: celsius(in.inTin), Surface: celsius(in.surface), ColdestAhead: celsius(in.ahead).Value},
		Tool:     measure, Largest: upTo(in.largest),
	}
	d, err := c.Dose()
	if err != nil {
		if d.Grams.Number().Sign() != 0 || d.Millilitres.Number().Sign() != 0 || d.Mass.Value != 0 || d.Volume.Value != 0 {
			t.Fatalf("refused, and yet a dose: %+v", in)
		}
		return false
	}
	checkDose(t, in, d)
	return true
}

func checkDose(t *testing.T, in inputs, d cure.Dose) {
	t.Helper()
	const hair = 1e-6
	whole := in.product + in.thinner + in.wax + in.pigment
	least, most := in.floor/100*whole, in.ceiling/100*in.product
	for name, g := range map[string]float64{
		"grams":       d.Grams.Number().InexactFloat64(),
		"millilitres": d.Millilitres.Number().InexactFloat64() * in.density,
		"mass":        inGrams(d.Mass),
		"volume":      unit.InMillilitre.From(float64(d.Volume.Value)) * in.density,
		"wanted":      inGrams(d.Wanted),
	} {
		if !(g >= least*(1-1e-4/100)-hair && g <= most*(1+1e-4/100)+hair && g > 0) {
			t.Fatalf("%s %v g outside %v to %v: %+v", name, g, least, most, in)
		}
	}
	mark := map[cure.ToolKind]float64{cure.Scale: in.step, cure.Syringe: in.step * in.density, cure.Drops: in.density / in.step}[cure.ToolKind(in.kind)]
	off := map[cure.ToolKind]float64{cure.Scale: mark, cure.Syringe: mark / 2, cure.Drops: mark}[cure.ToolKind(in.kind)] + mark/2
	for name, g := range map[string]float64{"wanted": inGrams(d.Wanted), "measured": inGrams(d.Mass)} {
		if !(g-off >= least-1e-3 && g+off <= most+1e-3) {
			t.Fatalf("the tool's error %v carries the %s %v g outside %v to %v: %+v", off, name, g, least, most, in)
		}
	}
	if math.Abs(inGrams(d.Mass)-inGrams(d.Wanted)) > mark+1e-4 {
		t.Fatalf("measured %v for %v: %+v", inGrams(d.Mass), inGrams(d.Wanted), in)
	}
	isFit := in.surface >= in.coldest-hair && in.surface <= in.warmest+hair &&
		in.surface >= in.limitCold-hair && in.surface <= in.limitWarm+hair && in.inTin >= in.limitCold-hair && in.inTin <= in.limitWarm+hair &&
		math.Abs(in.surface-in.inTin) <= 15+hair && in.ahead >= in.limitCold-hair && whole <= in.largest*(1+hair) && in.wax <= 0.04*in.product*(1+hair)
	if !isFit || !in.promoted || in.family != int(cure.Ketone) && in.family != int(cure.BenzoylPaste) {
		t.Fatalf("dosed where nothing may be mixed: %+v", in)
	}
}

// Half of the draws are likely, so that many are dosed; the others are wild.
func draw(random *rand.Rand) inputs {
	number := func(low, high float64) float64 {
		if random.IntN(25) > 0 {
			return low + (high-low)*random.Float64()
		}
		wild := []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, 1e-300, low, high, low - 1e-9, high + 1e-9, 15, 32, 25}
		return wild[random.IntN(len(wild))]
	}
	in := inputs{
		product: number(10, 600), thinner: number(0, 20), wax: number(0, 10), pigment: number(0, 20), largest: number(100, 900),
		surface: number(14, 33), inTin: number(14, 33), ahead: number(12, 33), coldest: number(8, 20), warmest: number(25, 40),
		dose1: number(1.2, 2.6), dose2: number(0.8, 2), floor: number(0.5, 1.5), ceiling: number(1.8, 3),
		limitCold: number(8, 17), limitWarm: number(28, 40), density: number(1, 1.3),
		kind: 1 + random.IntN(3), family: random.IntN(7), promoted: random.IntN(10) > 0,
	}
	if random.IntN(3) > 0 {
		in.family = int(cure.Ketone)
	}
	in.step = map[int]float64{1: 0.1, 2: 0.2, 3: 27}[in.kind]
	if random.IntN(3) == 0 {
		in.step = math.Round(number(0.01, 40)*1e4) / 1e4
	}
	return in
}

func TestADoseIsAlwaysWithinAllLimits(t *testing.T) {
	random := rand.New(rand.NewPCG(15, 16))
	const draws = 40000
	dosed := 0
	for range draws {
		if hold(t, draw(random)) {
			dosed++
		}
	}
	if dosed < draws/50 {
		t.Fatalf("only %d of %d draws were dosed: the check has nothing to hold", dosed, draws)
	}
}

func FuzzDose(f *testing.F) {
	f.Add(350., 0., 7., 0., 500., 25., 22., 20., 15., 32., 2.2, 1.2, 1., 2.5, 15., 32., 1.15, 0.1, 1, 1, true)
	f.Add(100., 5., 0., 3., 500., 30., 20., 20., 15., 32., 2.2, 1.2, 1., 2.5, 15., 32., 1.15, 27., 3, 1, true)
	f.Fuzz(func(t *testing.T, product, thinner, wax, pigment, largest, surface, inTin, ahead, coldest, warmest, dose1, dose2,
		floor, ceiling, limitCold, limitWarm, density, step float64, kind, family int, promoted bool) {
		hold(t, inputs{product, thinner, wax, pigment, largest, surface, inTin, ahead, coldest, warmest, dose1, dose2,
			floor, ceiling, limitCold, limitWarm, density, math.Round(step*1e4) / 1e4, kind, family, promoted})
	})
}
