package view_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// atBench is an empty page at the cup, with lines typed.
func atBench(lines ...string) *page.State {
	s, _ := page.Start(nil, noon)
	return with(do(s, "go", "cup", ""), lines...)
}

var (
	gelcoatCup = []string{"bench.now.card = gelcoat", "bench.now.amount = 200 g", "bench.now.surface-temp = 24", "day.today.read-temp = 23", "day.today.read-humidity = 55", "day.today.low = 17", "day.today.high = 27"}
	topcoatCup = []string{"card.topcoat.ratio-mass = 100:33", "bench.now.card = topcoat", "bench.now.amount = 532 g", "bench.now.surface-temp = 24", "day.today.read-temp = 23", "day.today.read-humidity = 55", "day.today.low = 17", "day.today.high = 27"}
)

func cupOf(lines []string, more ...string) *page.State { return with(atBench(lines...), more...) }

// Each state of the plan says what it must and hides what isn't so: a question that isn't asked any more, a dose beside a reason
// against it, a size where there is none.
func TestThePlanOfACupSaysWhatHolds(t *testing.T) {
	const tool = "bench.now.scale-step = 0.1 g"
	dose, top := cupOf(gelcoatCup, tool), cupOf(topcoatCup, tool)
	weighed := do(do(dose, "sheet", page.WeighSheet, ""), "weighed", "", "")
	hot := with(dose, "bench.now.surface-temp = 34", "bench.now.product-temp = 34", "bench.now.amount = 100 g")
	away := func(s *page.State) *page.State { // back on the plan
		for s.Sheet() != "" {
			s = do(s, "back", "", "")
		}
		return s
	}
	moved := with(away(weighed), "bench.now.amount = 250 g")
	saysEach(t, []saying{
		{cupOf(gelcoatCup), "tool", words.WhichTool + "|" + words.AskedOnce, words.WhichParts},
		{cupOf(topcoatCup), "tool", words.WhichParts, words.WhichTool},
		{dose, "tool", "", words.WhichTool},
		{do(dose, "sheet", "setup", ""), "toolfields", words.WhichTool, words.WhichParts},
		{do(top, "sheet", "setup", ""), "toolfields", words.WhichParts + "|Marks of the graduated cup", words.WhichTool + "|Catalyst"},
		{do(with(dose, "bench.now.mark = 10 mL"), "sheet", "setup", ""), "toolfields", "Marks of the graduated cup|Catalyst", ""},
		{do(with(top, "bench.now.catalyst = catalyst"), "sheet", "setup", ""), "toolfields", "Catalyst", ""},
		{with(atBench(gelcoatCup...), "bench.now.amount ="), "cupdial", "", words.CupDial}, // one question at a time
		{cupOf(gelcoatCup), "cupdial", words.CupDial, ""},
		{do(dose, "sheet", page.WeighSheet, ""), "cupdial", "", words.CupDial}, // it is on the scale's sheet
		{dose, "cupdial", "largest now 250 g", ""},
		{cupOf(gelcoatCup, tool, "bench.now.surface-temp ="), "cupdial", words.CupDial, "largest"},
		{dose, "line-bench.now.surface-temp", words.SameProduct, "product 2"},
		{with(dose, "bench.now.product-temp = 22"), "line-bench.now.surface-temp", "product 22 °C", words.SameProduct},
		{cupOf(gelcoatCup, tool, "bench.now.surface-temp ="), "answer", words.NoDoseYet + "|" + words.TypeSurface, words.TapTool + "|" + words.StillToType},
		{cupOf(gelcoatCup), "answer", words.NoDoseYet + "|" + words.TapTool, words.TypeSurface + "|" + words.StillToType},
		{with(dose, "bench.now.surface-temp = 40"), "answer", words.NoDose + " at 40 °C|" + words.BringsItBack, words.NoDoseYet + "|by mass"},
		{with(dose, "bench.now.pigment = none"), "answer", words.NoDose + " at 24 °C", words.BringsItBack},
		{moved, "answer", words.NoDose + " at 24 °C|" + words.FiguresMoved, "by mass"},
		{away(weighed), "answer", words.Catalyst, words.FiguresMoved},
		{away(do(do(hot, "time-test", "", ""), "weighed", "", "")), "answer", words.TestWeighed + "|" + words.NotForWork, words.Catalyst + " "},
		{top, "answer", words.Hardener + "|with 400 g of part A", words.Catalyst},
		{dose, "setups", "scale 0.1 g · tin never timed · no thinner", ""},
		{top, "setups", "scale 0.1 g · no thinner", "tin"},
		{with(dose, "bench.now.tin = A7", "bench.now.thinner = 5 %", "bench.now.scale-step = 0.01 g"), "setups", "scale 0.01 g · tin A7, never timed · 9.52 g thinner", ""},
		{cupOf(gelcoatCup, "bench.now.tool = syringe", "bench.now.syringe-step = 0.2 mL"), "setups", "syringe, marks of 0.2 mL ·", "scale"},
		{cupOf(gelcoatCup, "bench.now.tool = syringe"), "setups", "tin never timed", "syringe"},
		{cupOf(gelcoatCup, "bench.now.tool = drops", "bench.now.drops = 30"), "setups", "30 drops in 1 mL ·", "scale"},
		{cupOf(gelcoatCup, "bench.now.tool = drops"), "setups", "tin never timed", "drops"},
		{dose, "setups", "Largest 250 g: until this tin is timed", ""},
		{madeUpCup(), "answer", unit.Number(float64(madeUpCup().Bench().Facts.Cups.Value), 3) + " cups for this coat", "for this coat " + unit.Number(float64(madeUpCup().Bench().Facts.Cups.Value), 3)},
	})
	for want, s := range map[string]*page.State{"act-sheet weigh": dose, "act-sheet catalyst": away(weighed), "": cupOf(gelcoatCup), "act-time-test ": hot} {
		act, got := buttonsOf(regionOf(t, view.Page(s).String(), "act")), ""
		if len(act) > 0 {
			got = "act-" + act[0].do + " " + act[0].path
		}
		assert.Equal(t, want, got)
	}
}

// Each chip of a tool is pressed for the tool that is in hand, and for no other.
func TestTheToolInHandIsPressed(t *testing.T) {
	for key, lines := range map[string][]string{"scale 1 g": {"bench.now.scale-step = 1 g"}, "scale 0.01 g": {"bench.now.scale-step = 0.01 g"}, "syringe 0.1 mL": {"bench.now.tool = syringe", "bench.now.syringe-step = 0.1 mL"}} {
		s := do(cupOf(gelcoatCup), "tool", "", key)
		for _, line := range lines {
			path, text, _ := strings.Cut(line, " = ")
			assert.Equal(t, text, strings.ReplaceAll(s.Doc().Get(path), "\u00a0", " "))
		}
		assert.True(t, s.HasTool(key))
	}
	for _, b := range buttonsOf(regionOf(t, view.Page(cupOf(gelcoatCup)).String(), "tool")) {
		assert.Equal(t, "false", b.pressed, "none is chosen yet")
	}
}

// Every figure of a cup, each under its own name: those of the dose, of its minutes, of what bounds its size, of what is in it, of
// how far it goes. What there is none of isn't named.
func TestEveryFigureOfACupHasItsOwnName(t *testing.T) {
	for name, s := range map[string]*page.State{"of a coat": madeUpCup(), "with pigment": cups(t)["planned"], "with wax": cupOf(gelcoatCup, "bench.now.scale-step = 0.1 g", "bench.now.thinner = 4 %"),
		"of a ratio": cupOf(topcoatCup, "bench.now.scale-step = 0.1 g"), "flow coat": cupOf(gelcoatCup, "bench.now.card = flowcoat", "bench.now.scale-step = 0.1 g")} {
		b := s.Bench()
		require.True(t, b.HasDose || b.HasParts, "%s %v %v", name, b.Reasons, b.Waiting)
		m := b.Minutes
		list := []fig{
			{"dose.share", "Catalyst, of all that cures", unit.Write(float64(b.Dose.OfWhole.Value), unit.InPercent, 3) + " by mass"},
			{"usable", "Usable, from catalyst in", unit.Write(float64(m.Spread.Value), unit.InMinute, 2)},
			{"mixed", "Of that, mixing", unit.Write(float64(m.Mix.Value), unit.InMinute, 2)},
			{"gels.from", "Gels in the cup, earliest", unit.Write(float64(m.GelsFrom.Value), unit.InMinute, 2)},
			{"gels.until", "Gels in the cup, latest", unit.Write(float64(m.GelsUntil.Value), unit.InMinute, 2)}}
		has := []bool{b.HasDose, true, true, true, true}
		for i, l := range b.Size.Limits {
			list, has = append(list, fig{"largest." + strconv.Itoa(i), "Largest cup, " + words.Bound(l.Bound), shownAs(l.Mass, unit.InGram)}), append(has, true)
		}
		list = append(list, fig{"smallest", "Smallest cup with this tool", shownAs(b.Size.Smallest, unit.InGram)}, fig{"weigh.product", "Product in it", shownAs(b.Mix.Product, unit.InGram)},
			fig{"weigh.thinner", "Thinner in it", shownAs(b.Mix.Thinner, unit.InGram)}, fig{"weigh.wax", "Wax solution in it", shownAs(b.Mix.Wax, unit.InGram)},
			fig{"weigh.pigment", "Pigment paste in it", shownAs(b.Mix.Pigment, unit.InGram)}, fig{"weigh.whole", "All in the cup but the catalyst", shownAs(b.Whole, unit.InGram)},
			fig{"covers", "This cup covers", shownAs(b.Facts.Covers, unit.InSquareMetre)}, fig{"perarea", "Mix for an area", shownAs(b.PerArea, s.Plan.Job.Units.Scale(unit.AreaWeights))},
			fig{"cups", "Cups for one coat", unit.Number(float64(b.Facts.Cups.Value), 3)}, fig{"cuploss", "Stays behind in all of them", shownAs(b.Cups.Loss, unit.InGram)})
		has = append(has, b.Size.Smallest.Step != nil, b.Mix.Product.Step != nil, b.Mix.Thinner.Step != nil, b.Mix.Wax.Step != nil, b.Mix.Pigment.Step != nil, b.Whole.Step != nil,
			b.Facts.Covers.Step != nil, b.PerArea.Step != nil, b.Facts.Cups.Step != nil, b.Cups.Loss.Step != nil)
		figures(t, do(s, "sheet", "sums", ""), "sums", where(list, has...))
	}
	for _, s := range []*page.State{cupOf(gelcoatCup), cups(t)["weighed"], with(cups(t)["planned"], "bench.now.surface-temp = 40")} {
		sums := do(s, "sheet", "sums", "")
		if _, may := sums.DoseFor(); !may || !sums.Bench().HasHand {
			assert.Equal(t, words.NoFigures, textOf(t, sums, "sums"))
		}
	}
}
