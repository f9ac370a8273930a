package chance_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
)

// What each kind of cup took of each stock, in the unit that it is counted in, by
// plain arithmetic:
//
//	gel coat, 530 g of it 500 g as sold and 30 g of styrene, 8 g of peroxide
//	topcoat, of an older job that doesn't say what was added: all 240 g are product, 240 ÷ 1.2 = 200 mL
//	flow coat, 200 g as sold, 4 g of wax solution, 4 ÷ 0.91 = 4.396 mL
//	a putty mixed by hand, 300 g of resin and 45 g of balloons
//	one that never got its catalyst, and one from before it was counted: nothing
//
// A stock that is counted too high stops a day's work for lack of a tin.
func TestWhatEachCupTookIsGoneFromItsStock(t *testing.T) {
	cups := `cup = 1 2 3 4 5 6
cup.1.card = gelcoat
cup.1.mixed = 530 g
cup.1.product = 500 g
cup.1.thinner = 30 g
cup.1.catalyst = ketone-peroxide
cup.1.catalyst-mass = 8 g
cup.1.in = 100
cup.2.card = topcoat
cup.2.mixed = 240 g
cup.2.in = 200
cup.3.card = flowcoat
cup.3.mixed = 204 g
cup.3.product = 200 g
cup.3.wax = 4 g
cup.3.in = 300
cup.4.card = epoxy-filler
cup.4.mixed = 345 g
cup.4.parts = putty-resin=300 microballoons=45
cup.4.in = 400
cup.5.card = gelcoat
cup.5.mixed = 500 g
cup.5.product = 500 g
cup.6.card = vinylester
cup.6.mixed = 500 g
cup.6.product = 500 g
cup.6.in = 50
card.vinylester.stock = 4 kg
card.vinylester.counted = cup.6
card.gelcoat.stock = 5 kg
card.styrene.stock = 1 L
card.ketone-peroxide.stock = 1 kg
card.topcoat.stock = 0.75 L
card.flowcoat.stock = 0.15 kg
card.wax-solution.stock = 100 mL
card.putty-resin.stock = 1 kg
card.microballoons.stock = 0.5 kg
card.epoxy-filler.stock = 1 L
card.cup.stock = 12
`
	p := plan.Make(jobtest.Doc(t, cups))
	require.Empty(t, p.Refused())
	left := chance.LeftInStock(&p.Job)
	want := map[string]struct {
		amount float64
		symbol string
	}{
		"gelcoat": {4.5, "kg"}, "styrene": {1 - 0.030/0.906, "L"}, "ketone-peroxide": {0.992, "kg"},
		"topcoat": {0.55, "L"}, "wax-solution": {0.1 - 0.004/0.91, "L"}, "putty-resin": {0.7, "kg"}, "microballoons": {0.455, "kg"},
	}
	for key, w := range want {
		size, err := job.ReadSize(left["card."+key+".stock"])
		require.NoError(t, err, "%s: %q", key, left["card."+key+".stock"])
		assert.Equal(t, w.symbol, size.Scale.Symbol(), key)
		assert.InDelta(t, w.amount, size.Amount.InexactFloat64(), 2e-6, key)
	}
	text, isTold := left["card.flowcoat.stock"]
	assert.True(t, isTold && text == "", "200 g of 150 g: nothing is left, and that is written down")
	assert.Len(t, left, len(want)+1, "%v", left)
}

// Of what was bought by the litre the working of the stock is by the litre too.
func TestTheStockOfALitreShowsItsWorking(t *testing.T) {
	p := plan.Make(jobtest.Doc(t, rolled, "buildup.1.step.1.card = topcoat\nbuildup.1.step.1.film = 100 µm\ncard.topcoat.stock = 0.75 L",
		"cup = 1\ncup.1.card = topcoat\ncup.1.mixed = 240 g\ncup.1.in = 200"))
	l := line(p, "topcoat")
	require.NotNil(t, l)
	assert.Equal(t, "0.55", l.Stock.String())
	assert.Equal(t, "0.2", l.Taken.String())
	found := false
	for _, text := range l.Buying().Texts() {
		found = found || text.Numbers == "max(0, 0.75 − 0.2)" && text.Result == "0.55\u00a0L"
	}
	assert.True(t, found, "%v", l.Buying().Texts())

	// before any cup it is what was typed
	unused := plan.Make(jobtest.Doc(t, rolled, "buildup.1.step.1.card = topcoat\nbuildup.1.step.1.film = 100 µm\ncard.topcoat.stock = 0.75 L"))
	shown := false
	for _, text := range line(unused, "topcoat").Buying().Texts() {
		for _, s := range text.From {
			shown = shown || s.Name == "in stock" && s.Value == "0.75\u00a0L"
		}
	}
	assert.True(t, shown)
}

// A grade of an abrasive is counted by itself: 50 discs of P80 are no use for
// P180. Its line is asked for by its grade.
func TestAGradeIsCountedByItself(t *testing.T) {
	sanded := append([]string{"buildup.1.step.2.kind = sand", "buildup.1.step.2.taken = 100 µm"}, rolledTwice...)
	of := func(grade string) *chance.Line {
		p := planned(t, append(sanded, "buildup.1.step = 1 2", job.GradeStock("card.disc", grade)+" = 4")...)
		return line(p, "disc")
	}
	own, other := of("P180"), of("P80")
	require.NotNil(t, own)
	assert.Equal(t, "7", own.ToBuy.String(), "11 − 4")
	assert.Equal(t, "11", other.ToBuy.String())
	assert.Equal(t, "disc-P180", own.Key())
	assert.Equal(t, own.Card.Name+", P180", own.Name())
	gel := line(planned(t, rolledTwice...), "gelcoat")
	assert.Equal(t, "gelcoat", gel.Key())
	assert.Equal(t, gel.Card.Name, gel.Name())
}

// What the order costs is the sum of what is bought of the priced lines; the others
// are counted, so that nobody takes it for the whole.
func TestTheCostIsTheSumOfItsLines(t *testing.T) {
	p := planned(t, append(append([]string{}, rolledTwice...), "card.gelcoat.pack.1.price = 20", "card.gelcoat.pack.2.price = 80", "card.gelcoat.pack.3.price = 300", "card.acetone.pack.1.price = 7")...)
	o := chance.OrderOf(&p)
	sum, unpriced := 0.0, 0
	for _, l := range o.Lines {
		switch {
		case l.ToBuy.IsZero():
		case l.Bought.IsPriced:
			sum += l.Bought.Cost.InexactFloat64()
		default:
			unpriced++
		}
	}
	require.Greater(t, sum, 100.)
	assert.InDelta(t, sum, o.Cost.InexactFloat64(), 1e-9)
	assert.Equal(t, unpriced, o.Unpriced)
	assert.Positive(t, unpriced)
}

// A cup that never got its catalyst went on nothing: it is passed over in what a
// finished surface took; one whose leftover isn't known leaves that open.
func TestACupWithoutCatalystIsPassedOver(t *testing.T) {
	d := entry(jobtest.Doc(t, rolled, "done = 1", "cup = 1 2\ncup.1.card = flowcoat\ncup.1.mixed = 2.2 kg\ncup.1.in = 5\ncup.1.ended = 9\ncup.1.end = spread\ncup.1.left = 0.1 kg",
		"cup.2.card = flowcoat\ncup.2.mixed = 500 g\ncup.2.ended = 9\ncup.2.end = scrapped"), "done.1", "2 kg", "1.9 kg", "").Set("done.1.cups", "cup.1 cup.2 cup.9")
	log := lessons(d)[0].Log[0]
	require.NoError(t, log.Err)
	assert.InDelta(t, 2.1, float64(log.Used.Value), 1e-9)
}

// A line whose need isn't known waits, and then there is no total either: half an
// order that looks whole is bought.
func TestALineThatWaitsMakesTheOrderPartial(t *testing.T) {
	whole := planned(t, rolledTwice...)
	o := chance.OrderOf(&whole)
	assert.False(t, o.IsPartial())
	assert.Nil(t, lineOf(&o, "gelcoat").Waits())
	again := []string{"buildup.1.step = 1 2", "buildup.1.step.2.kind = coat", "buildup.1.step.2.card = gelcoat", "buildup.1.step.2.method = brush", "buildup.1.step.2.film = thick"}
	p := plan.Make(jobtest.Doc(t, append(append(append([]string{}, sixSquareMetres...), rolledTwice...), again...)...))
	require.Error(t, p.RefusedAt("buildup.1.step.2.film"))
	o = chance.OrderOf(&p)
	assert.True(t, o.IsPartial())
	require.NotNil(t, lineOf(&o, "gelcoat"))
	assert.NotNil(t, lineOf(&o, "gelcoat").Waits())
}

// A filler's hand is learned as the knife's, with the spread of fillers: one batch
// of 400 g, 40 g left over, on 0.5 m² that were to take 600 g/m² is 360 of 300 g,
// x = ln 1.2 = 0.182322; s0 = 0.25, σ = 0.35: v = 1 ÷ (1 ÷ 0.0625 + 1 ÷ 0.1225) =
// 0.0413851, m = v × x ÷ 0.1225 = 0.0615948. Source: a normal prior with known
// spread, any textbook.
func TestOneBatchOfFillerTeaches(t *testing.T) {
	d := jobtest.Doc(t, "cup = 1\ncup.1.card = epoxy-filler\ncup.1.mixed = 400 g\ncup.1.in = 100\ncup.1.ended = 400\ncup.1.end = spread\ncup.1.left = 40 g",
		"cup.1.per-area = 600 g/m²\ncup.1.film = 800 µm\ncup.1.covered = 0.5 m²")
	list := lessons(d)
	require.Len(t, list, 1)
	require.NoError(t, list[0].Log[0].Err)
	assert.Equal(t, "knife", list[0].Method.Key)
	assert.EqualValues(t, 1, list[0].Before.Value, "as planned, before any entry")
	assert.InDelta(t, 0.0615948, list[0].Belief.Mean, 1e-6)
	assert.InDelta(t, math.Sqrt(0.0413851), list[0].Belief.SD, 1e-6)
	taken := job.Learnt{Mean: 0.0615948}
	assert.InDelta(t, 1.0635314, float64(chance.FactorOf(&taken)), 1e-6, "e^0.0615948")
}

// What goes on by the square metre may go on by more or less: its card's range,
// 5 to 95 %, is what moves its line. 6 m² of compound at 40 (25 to 80) g/m²: with
// a spread of ln(80 ÷ 25) ÷ 3.2897 it is 240 g, from √(25 ÷ 80) = 0.559 to 1.789 of
// that. Source: a log-normal between its quantiles.
func TestWhatGoesOnByTheSquareMetreMovesItsLine(t *testing.T) {
	polished := append([]string{"buildup.1.step.2.kind = polish", "buildup.1.step.2.card = compound"}, rolledTwice...)
	p := planned(t, append(polished, "buildup.1.step = 1 2")...)
	o := simulated(t, p, 1<<20)
	l := lineOf(&o, "compound")
	require.NotNil(t, l)
	require.NotNil(t, l.Confidence)
	need := l.Planned()
	assert.InDelta(t, 0.240, need, 1e-9)
	found := false
	for _, e := range l.Confidence.Effects {
		if e.Cause.Kind == chance.UseCause {
			found = true
			assert.InEpsilon(t, need*(math.Sqrt(25./80)-1), e.Low, 1e-6)
			assert.InEpsilon(t, need*(math.Sqrt(80./25)-1), e.High, 1e-6)
			assert.Equal(t, "compound", e.Cause.Card.Key)
		}
	}
	assert.True(t, found)
}
