package view_test

import (
	"errors"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// cells are the cells of each row of a table.
func cells(table string) (rows [][]string) {
	for _, row := range regexp.MustCompile(`<tr>(.*?)</tr>`).FindAllStringSubmatch(table, -1) {
		var list []string
		for _, c := range regexp.MustCompile(`<t[dh][^>]*>(.*?)</t[dh]>`).FindAllStringSubmatch(row[1], -1) {
			list = append(list, plain(c[1]))
		}
		rows = append(rows, list)
	}
	return rows
}

// On paper each line stands in its columns: a box to tick or ticked, what it is, its need, what is there, what to buy, what that
// costs. What waits has a dash and nothing that could pass for an amount.
func TestEachLineOnPaperStandsInItsColumns(t *testing.T) {
	sure := do(sureOrder(t, "metric"), "bought", "flowcoat", "")
	shelf := settled(t, with(sure, "card.tape.stock = 100 m", "card.gloves.pack.1.price =", "card.gloves.pack.2.price ="))
	waits := settled(t, with(sure, "card.gelcoat.density = none"))
	boxes := map[string]int{}
	for _, s := range []*page.State{sure, shelf, waits} {
		rows := cells(paper(t, s))
		require.Equal(t, []string{"", "Material", "Need", "In stock", "Buy", "Cost"}, rows[0])
		want := [][]string{}
		for _, thing := range s.Things() {
			for _, l := range thing.Lines {
				buy := plain(words.Buy(l, s.Plan.Job.Units))
				if l.Waits() != nil {
					want = append(want, []string{"", plain(l.Name()), "–", "–", buy, ""})
					boxes["waits"]++
					continue
				}
				box, cost := "", ""
				switch {
				case thing.Ticked:
					box = "☑"
				case thing.Buys:
					box = "☐"
				}
				boxes[box]++
				if l.Bought.IsPriced && l.ToBuy.IsPositive() {
					cost = l.Bought.Cost.StringFixed(2)
				}
				want = append(want, []string{box, plain(l.Name()), plain(page.Amount(l.Need, l.Scale, s.Plan.Job.Units)), plain(page.Amount(l.Stock, l.Scale, s.Plan.Job.Units)), buy, cost})
			}
		}
		require.Equal(t, want, rows[1:])
	}
	assert.Len(t, boxes, 4, "%v", boxes)
}

// The list says what it costs, what has no price, what it waits for and how sure it is, each only where it is so.
func TestTheListSaysWhatHolds(t *testing.T) {
	sure := sureOrder(t, "metric")
	fresh := madeUp("order")
	large := *sure
	large.Confidence.Err = errors.New("too large")
	empty, _ := page.Start(nil, noon)
	one := settled(t, with(sure, "card.gloves.pack.1.price =", "card.gloves.pack.2.price ="))
	free := sure
	for _, line := range sure.Doc().Lines() {
		if strings.HasSuffix(line.Path, ".price") {
			free = with(free, line.Path+" =")
		}
	}
	free = settled(t, free)
	saysEach(t, []saying{
		{sure, "totals", words.OrderTotal + " " + page.OrderMoney(sure), "unpriced"},
		{one, "totals", words.OrderTotal + "|+ 1 unpriced", words.OrderNoPrices},
		{free, "totals", words.OrderNoPrices, words.OrderTotal + "|unpriced"},
		{fresh, "sureness", words.StillWorking, words.TooLarge},
		{&large, "sureness", words.TooLarge, words.StillWorking},
		{sure, "sureness", "", words.StillWorking},
		{sure, "list-order", words.BuyFirst, words.FromShelf},
		{sure, "list-shelf", "", words.FromShelf},
		{settled(t, with(sure, "card.tape.stock = 100 m")), "list-shelf", words.FromShelf + " Masking tape", words.BuyFirst},
		{do(empty, "go", "order", ""), "screen", words.OrderEmpty, words.BuyFirst},
		{sure, "order-short", "Flow coat and polyester gel coat may run short: 1 job in 5.", ""},
		{fresh, "order-short", "", "run short"},
	})
	way := buttonsOf(regionOf(t, view.Page(do(empty, "go", "order", "")).String(), "screen"))
	require.Len(t, way, 1)
	assert.Equal(t, button{do: "go", path: "surfaces", label: words.MeasureSurfaces}, way[0])
	waits := settled(t, with(sure, "card.gelcoat.density = none"))
	var waiting page.Thing
	for _, thing := range waits.Things() {
		if thing.WaitsFor != "" {
			waiting = thing
		}
	}
	require.NotEmpty(t, waiting.Key)
	row := regionOf(t, view.Page(waits).String(), "order."+waiting.Key)
	assert.NotContains(t, row, `class="tick"`, "what waits can't be ticked")
	assert.Contains(t, regionOf(t, view.Page(sure).String(), "order.gelcoat"), `class="tick"`)
	assert.Contains(t, regionOf(t, view.Page(do(sure, "bought", "gelcoat", "")).String(), "order.gelcoat"), `data-ticked="true"`)
	assert.Contains(t, regionOf(t, view.Page(do(sure, "bought", "gelcoat", "")).String(), "order.gelcoat"), ">✓</button>")
	left := regionOf(t, view.Page(settled(t, with(sure, "surface.1.height = none"))).String(), "left-out")
	ways := buttonsOf(left)
	require.Len(t, ways, 1)
	assert.Equal(t, button{do: "find", path: "surface.1.height", text: "first", label: words.PutItRight}, ways[0])
	sheet := do(waits, "sheet", "order."+waiting.Key, "")
	assert.Contains(t, textOf(t, sheet, "sheet"), "Need –")
	find := buttonsOf(regionOf(t, view.Page(sheet).String(), "sheet"))
	var verbs []string
	for _, b := range find {
		verbs = append(verbs, b.do+" "+b.path)
	}
	assert.Contains(t, verbs, "find "+waiting.WaitsFor)
	assert.Contains(t, textOf(t, do(sure, "sheet", "order.nothing", ""), "sheet"), words.NothingToBuy)
	assert.Contains(t, textOf(t, do(sure, "sheet", "need.nothing", ""), "sheet"), words.NothingToBuy)
	assert.Contains(t, textOf(t, do(sure, "sheet", "packs.nothing", ""), "sheet"), words.NothingToBuy)
}

// Each thing's need is told in every measure that there is of it, then what is enough, kept and bought.
func TestEachNeedIsToldInItsMeasures(t *testing.T) {
	sure := sureOrder(t, "metric")
	kept := settled(t, with(sure, "card.gelcoat.buy = once"))
	taken := madeUp("order")
	measures := map[string]bool{}
	for _, s := range []*page.State{sure, kept, taken} {
		for _, thing := range s.Things() {
			region := do(s, "sheet", "need."+thing.Key, "")
			html := view.Page(region).String()
			for _, l := range thing.Lines {
				id, units := "order."+l.Key(), s.Plan.Job.Units
				var want []fig
				add := func(has bool, key, label, value string) {
					if has {
						want = append(want, fig{id + key, plain(label), plain(value)})
						measures[key] = true
					}
				}
				add(l.Mass.Value > 0, ".mass", "Need as planned", shownAs(l.Mass, unit.InKilogram))
				add(l.Volume.Value > 0, ".volume", "Need as planned, by volume", shownAs(l.Volume, unit.InLitre))
				add(len(want) == 0, "", "Need", page.Said(l.Need.InexactFloat64(), l.Scale, units))
				if c := l.Confidence; c != nil {
					shown := func(si float64) string { return page.AmountOf(l.Scale.From(si), l.Scale, units) }
					add(true, ".enough", words.Capital(words.EnoughIn(c.Chance)), shown(float64(c.Enough.Value)))
					add(c.Reserve.Step != nil, ".reserve", "Kept for repairs, of the same batch", shown(float64(c.Reserve.Value)))
				}
				add(l.ToBuy.IsPositive() && l.Err == nil, ".bought", "To buy", page.Amount(l.Bought.Bought, l.Scale, units))
				part := regionOf(t, html, "line-"+l.Key())
				require.Equal(t, want, figuresOf(part), thing.Key)
				assert.Equal(t, l.Grade > 0, strings.Contains(part, "<h3>"+l.Grade.String()+"</h3>"))
				if l.Taken.IsPositive() {
					assert.Contains(t, plain(textIn(part)), plain(words.CupsHaveTaken(page.Amount(l.Taken, l.Scale, units))))
				} else {
					assert.NotContains(t, part, "cups have taken")
				}
			}
		}
	}
	assert.Len(t, measures, 6, "%v", measures)
}

// Each way to buy says its own packs, price, chance and what is left; what isn't known of it isn't said. The one that the list
// goes by is pressed.
func TestEachWayToBuyIsItsOwn(t *testing.T) {
	sure := sureOrder(t, "metric")
	ways := 0
	unpriced := with(sure, "card.flowcoat.pack.1.price =", "card.flowcoat.pack.2.price =", "card.flowcoat.pack.3.price =")
	for _, s := range []*page.State{sure, settled(t, with(sure, "card.gelcoat.buy = once")), settled(t, unpriced)} {
		for _, l := range s.Order().Lines {
			if l.Confidence == nil {
				continue
			}
			list := buttonsOf(regionOf(t, view.Page(do(s, "sheet", "order."+l.Key(), "")).String(), "ways-"+l.Key()))
			require.Len(t, list, 2)
			for i, c := range []struct {
				key, name, why string
				way            chance.Way
				pressed        bool
			}{{"start", "Before you start", words.WayStartWhy, l.Confidence.Start, !l.Shop.BuysAtOnce}, {job.BuyAtOnce, "All at once", words.WayOnceElseWhy, l.Confidence.AtOnce, l.Shop.BuysAtOnce}} {
				ways++
				other := l
				other.Packs = c.way.Buys.Packs
				text := c.name + " " + words.NothingMore
				if len(c.way.Buys.Packs) > 0 {
					text = c.name + " " + words.Packs(other)
				}
				if c.way.Buys.Bought.IsPriced && c.way.Buys.Bought.Cost.IsPositive() {
					text += " " + c.way.Buys.Bought.Cost.StringFixed(2)
				}
				left, keeps := c.way.Buys.Left, ""
				if l.Card.ShelfLife.Known && left.IsPositive() {
					keeps = page.Months(l.Card.ShelfLife.Value)
				}
				text += " " + words.ShortIn(words.InJobs(1-float64(c.way.Buys.Chance))) + " " + words.LeftOver(page.Roughly(left.InexactFloat64(), l.Scale, s.Plan.Job.Units), s.Worth(c.way.Buys), keeps)
				if c.way.Reserve.Step != nil {
					text += " " + words.ForRepairs(page.Roughly(l.Scale.From(float64(c.way.Reserve.Value)), l.Scale, s.Plan.Job.Units))
					c.why = words.WayOnceWhy
				}
				pressed := map[bool]string{true: "true", false: "false"}[c.pressed]
				got := list[i]
				got.label = plain(got.label)
				assert.Equal(t, button{do: "set", path: l.Card.Path + ".buy", text: c.key, label: plain(text + " " + c.why), pressed: pressed}, got, l.Card.Name)
			}
			answer := textOf(t, do(s, "sheet", "order."+l.Key(), ""), "thing-"+l.Key())
			name := words.EnoughIn(l.Confidence.Chance)
			if l.Confidence.Reserve.Step != nil {
				name = words.WithRepairs(name)
			}
			left := page.Roughly(l.Confidence.Buys.Left.InexactFloat64(), l.Scale, s.Plan.Job.Units)
			assert.Contains(t, answer, plain(page.Amount(l.Need, l.Scale, s.Plan.Job.Units)+" "+name+" "+page.Amount(l.Stock, l.Scale, s.Plan.Job.Units)+" in stock "+left+" likely left"))
		}
	}
	assert.Greater(t, ways, 20)
}

// The sizes that are sold stand in a line and in a form: those that ship, those that were typed, and one to type; no more.
func TestThePacksOfAThing(t *testing.T) {
	sure := madeUp("order")
	rows := func(s *page.State) (shown, hidden int) {
		html := view.Page(do(s, "sheet", "packs.gelcoat", "")).String()
		return strings.Count(html, `class="row pack"`), len(regexp.MustCompile(`id="row-[^"]*" hidden`).FindAllString(html, -1))
	}
	for typed, want := range map[string]int{"": 4, "card.gelcoat.pack.4.size = 2": 5, "card.gelcoat.pack.5.size = 2": 5, "card.gelcoat.pack.6.size = 2": 5} {
		s := sure
		if typed != "" {
			s = with(s, typed)
		}
		shown, hidden := rows(s)
		assert.Equal(t, 6, shown+hidden, typed)
		if typed == "card.gelcoat.pack.5.size = 2" { // and the one after it
			want = 6
		}
		assert.Equal(t, want, shown, typed)
	}
	saysEach(t, []saying{
		{do(sure, "sheet", "order.gelcoat", ""), "setup-packs", "packs of 1, 5, 20 kg, all priced", ""},
		{do(with(sure, "card.gelcoat.pack.2.price ="), "sheet", "order.gelcoat", ""), "setup-packs", "packs of 1, 5, 20 kg, 2 priced", ""},
		{do(with(sure, "card.gelcoat.pack.1.sold = no"), "sheet", "order.gelcoat", ""), "setup-packs", "packs of 5, 20 kg, all priced", ""},
		{do(sure, "sheet", "order.tape", ""), "off-tape", words.OffBy("3 days", "1 day"), ""},
	})
	assert.NotContains(t, view.Page(do(sure, "sheet", "order.gelcoat", "")).String(), `id="off-`)
}
