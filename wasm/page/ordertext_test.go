package page_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// An amount is said as a hand buys it: pieces whole and up, tape in whole metres from ten on, up; what is less than ten of its unit
// with two figures, the rest with three. (By hand.)
func TestAnAmountIsSaidAsItIsBought(t *testing.T) {
	units := job.Units{}
	for _, c := range []struct {
		amount float64
		scale  unit.Scale
		said   string
		rough  string
	}{
		{5.2, unit.InPure, "6", "5.2"}, {5, unit.InPure, "5", "5"}, {73.2, unit.InMetre, "74 m", "73 m"}, {10, unit.InMetre, "10 m", "10 m"}, {9.84, unit.InMetre, "9.8 m", "9.8 m"},
		{1.2345, unit.InKilogram, "1.2 kg", "1.2 kg"}, {12.345, unit.InKilogram, "12.3 kg", "12 kg"}, {9.996, unit.InKilogram, "10 kg", "10 kg"}, {0.8767, unit.InKilogram, "877 g", "877 g"}, {0.0616, unit.InLitre, "61.6 mL", "62 mL"},
	} {
		assert.Equal(t, c.said, plain(page.Said(c.amount, c.scale, units)), "%v", c)
		assert.Equal(t, c.rough, plain(page.Roughly(c.amount, c.scale, units)), "%v", c)
	}
	assert.Equal(t, []string{"6 months", "a month", "12 months"}, []string{plain(page.Months(180 * unit.Day)), plain(page.Months(31 * unit.Day)), plain(page.Months(365 * unit.Day))})
}

// The list as text has a line for each thing to buy, with its mark, its packs and its price; what is there already isn't on it.
func TestTheOrderAsTextIsLineByLine(t *testing.T) {
	s := do(do(do(demo(t), "set", "currency", "EUR"), "set", "card.tape.stock", "100 m"), "bought", "gloves", "")
	s = do(do(s, "set", "card.cup.pack.1.price", ""), "set", "card.cup.pack.2.price", "")
	want := []string{words.OrderTitle(s.Doc().Get("name")), ""}
	marks := map[string]int{}
	for _, thing := range s.Things() {
		for _, l := range thing.Lines {
			if l.ToBuy.IsZero() {
				marks["there"]++
				continue
			}
			mark, price := "•", ""
			if thing.Key == "gloves" {
				mark = "✓"
			}
			if l.Bought.IsPriced {
				price = " (" + l.Bought.Cost.StringFixed(2) + " EUR)"
			}
			marks[mark]++
			want = append(want, mark+" "+l.Name()+": "+words.Buy(l, s.Plan.Job.Units)+price)
		}
	}
	require.Len(t, marks, 3)
	want = append(want, "", "To pay: "+page.OrderMoney(s), "One more thing to buy has no price yet.", "", words.OrderFootnote, "")
	for i := range want {
		want[i] = plain(want[i])
	}
	assert.Equal(t, want, strings.Split(plain(page.OrderText(s)), "\n"))
	assert.True(t, strings.HasSuffix(plain(page.OrderMoney(s)), " EUR"))
	stopped := do(s, "set", "surface.3.ground", "polystyrene")
	require.NotEmpty(t, stopped.Stops())
	for _, text := range stopped.Stops() {
		assert.Contains(t, page.OrderText(stopped), "! "+words.StopsTheOrder+" "+text+"\n\n")
	}
	for verb, effect := range map[string]page.Effect{"text": {Kind: page.Copy, Text: page.OrderText(s)}, "share": {Kind: page.Share, Key: words.OrderList, Text: page.OrderText(s)}, "csv": {Kind: page.Download, Key: "order-list.csv", Text: page.OrderCSV(s)}} {
		_, effects := page.Update(s, page.Message{Verb: verb, At: noon})
		found := false
		for _, e := range effects {
			found = found || e.Kind == effect.Kind && e.Key == effect.Key && e.Text != ""
		}
		assert.True(t, found, verb)
	}
}

// A thing on the list says what is planned, what to buy and whether the shelf covers it; a tick holds for the packs that it was
// given for.
func TestAThingOfTheOrderIsItsOwn(t *testing.T) {
	s := do(demo(t), "set", "card.tape.stock", "100 m")
	kinds := map[string]bool{}
	for _, thing := range s.Things() {
		l := thing.Lines[0]
		var packs []string
		for _, l := range thing.Lines {
			if l.ToBuy.IsPositive() {
				packs = append(packs, words.GradePacks(l, words.Buy(l, s.Plan.Job.Units)))
			}
		}
		assert.Equal(t, strings.Join(packs, ", "), thing.Packs, thing.Key)
		assert.Equal(t, len(packs) > 0, thing.Buys, thing.Key)
		assert.Equal(t, l.Card.Name, thing.Name)
		need := plain(page.Said(l.Need.InexactFloat64(), l.Scale, s.Plan.Job.Units))
		small := "plan " + plain(page.Said(l.Planned(), l.Scale, s.Plan.Job.Units))
		switch {
		case l.Grade > 0:
			kinds["grades"] = true
			small = ""
			for i, l := range thing.Lines {
				if i > 0 {
					small += ", "
				}
				small += l.Grade.String() + " × " + plain(page.Said(l.Need.InexactFloat64(), l.Scale, s.Plan.Job.Units))
			}
		case !thing.Buys:
			kinds["shelf"] = true
			small = "needs " + need + ", has " + plain(page.Said(l.Stock.InexactFloat64(), l.Scale, s.Plan.Job.Units))
		}
		assert.Equal(t, small, plain(thing.Small), thing.Key)
		assert.False(t, thing.Ticked)
		ticked := do(s, "bought", thing.Key, "")
		assert.Equal(t, thing.Packs, ticked.Doc().Get("ticked."+thing.Key+".packs"))
		assert.Empty(t, do(ticked, "bought", thing.Key, "").Doc().Get("ticked."+thing.Key+".packs"))
	}
	assert.Len(t, kinds, 2)
}
