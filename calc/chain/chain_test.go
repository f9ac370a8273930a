package chain_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

func arg(symbol string) working.Arg {
	return working.Arg{Symbol: symbol, Meaning: symbol, Scale: unit.InPure, Min: 0, Max: 1000}
}

func rule(args ...string) *working.Rule {
	r := &working.Rule{Formula: "made up for this test", Source: source.Ref{Document: &source.House, Place: "test"}, Mark: source.Exact, Result: arg("r")}
	for _, a := range args {
		r.Args = append(r.Args, arg(a))
	}
	return r
}

// Rules whose result tells its arguments apart: 2 and 3 give 23.
var (
	of1 = working.Rule1[unit.Factor, unit.Factor]{Rule: rule("a"), Code: func(a unit.Factor) unit.Factor { return a }}
	of2 = working.Rule2[unit.Factor, unit.Factor, unit.Factor]{Rule: rule("a", "b"), Code: func(a, b unit.Factor) unit.Factor { return 10*a + b }}
	of3 = working.Rule3[unit.Factor, unit.Factor, unit.Factor, unit.Factor]{Rule: rule("a", "b", "c"),
		Code: func(a, b, c unit.Factor) unit.Factor { return 100*a + 10*b + c }}
	of4 = working.Rule4[unit.Factor, unit.Factor, unit.Factor, unit.Factor, unit.Factor]{Rule: rule("a", "b", "c", "d"),
		Code: func(a, b, c, d unit.Factor) unit.Factor { return 100*a + 10*b + c + d/10 }}
)

// A chain gives what its rules give, each argument in its place; after the first error, which
// stays, nothing more comes of it, not even of what would have worked.
func TestTheFirstErrorStopsAChain(t *testing.T) {
	pure := func(n float64) working.Figure[unit.Factor] {
		return working.Given(unit.Factor(n), "test", unit.InPure, "", source.Typed)
	}
	one, two, three, four := pure(1), pure(2), pure(3), pure(4)
	all := func(q *chain.Run) []working.Figure[unit.Factor] {
		return []working.Figure[unit.Factor]{
			chain.Do1(q, of1, one), chain.Do2(q, of2, one, two), chain.Do3(q, of3, one, two, three), chain.Do4(q, of4, one, two, three, four), chain.Keep(q, four, nil),
		}
	}
	var q chain.Run
	for i, f := range all(&q) {
		assert.InDelta(t, []float64{1, 12, 123, 123.4, 4}[i], float64(f.Value), 1e-12)
		assert.NotNil(t, f.Step)
	}
	require.NoError(t, q.Err)
	for _, fails := range []func(*chain.Run){
		func(q *chain.Run) { chain.Do1(q, of1, pure(1001)) },
		func(q *chain.Run) { chain.Do2(q, of2, one, pure(1001)) },
		func(q *chain.Run) { chain.Do3(q, of3, one, two, pure(1001)) },
		func(q *chain.Run) { chain.Do4(q, of4, one, two, three, pure(1001)) },
		func(q *chain.Run) { chain.Keep(q, one, chain.ErrNoTable) },
	} {
		var q chain.Run
		fails(&q)
		first := q.Err
		require.Error(t, first)
		for _, f := range all(&q) {
			assert.Equal(t, working.Figure[unit.Factor]{}, f)
		}
		chain.Keep(&q, one, chain.ErrUnfinished)
		assert.Equal(t, first, q.Err, "the first error is the one that is told")
	}
}

// A figure that isn't known adds nothing to a list; one read as another kind keeps value and working.
func TestWhatIsKnownOfAFigure(t *testing.T) {
	known := working.Given(unit.Length(2), "test", unit.InMetre, "", source.Typed)
	assert.Equal(t, []working.Figure[unit.Length]{known}, chain.AppendKnown(chain.AppendKnown(nil, known), working.Figure[unit.Length]{}))
	film := chain.As[unit.WetFilm](known)
	assert.InDelta(t, 2, float64(film.Value), 1e-12)
	assert.Same(t, known.Step, film.Step)
}

// Each figure of a gel time is the card's own of that name, with the card's mark and scale. Without a
// peroxide there is none of what hangs on one. A typed figure outside of its range becomes its end.
func TestAGelTimeIsTheCardsOwn(t *testing.T) {
	j, problems := job.Read(jobtest.Doc(t, "card.gelcoat.gel-order = 0.3\ncard.topcoat.gel-energy = 86 kJ/mol"))
	require.Empty(t, problems)
	withPeroxide, without := 0, 0
	for _, c := range j.Cards {
		if c.Kind > material.Filler || !c.GelTime.Known {
			continue
		}
		g := chain.GelOf(c)
		holds := func(name string, scale unit.Scale, mark source.Mark, want float64, got *working.Step) {
			assert.Equal(t, &working.Step{Out: want, Name: name, Scale: scale, Origin: c.Name, Mark: mark}, got, "%s: %s", c.Key, name)
		}
		holds("gel time", unit.InMinute, c.GelTime.Mark, float64(c.GelTime.Value), g.Time.Mid.Step)
		holds("gel time, least", unit.InMinute, c.GelTime.Mark, float64(c.GelTime.Low), g.Time.Low.Step)
		holds("gel time, most", unit.InMinute, c.GelTime.Mark, float64(c.GelTime.High), g.Time.High.Step)
		holds("temperature of the timed cup", unit.InCelsius, c.GelAt.Mark, float64(c.GelAt.Value), g.Temperature.Step)
		holds("mass of the timed cup", unit.InGram, c.GelMass.Mark, float64(c.GelMass.Value), g.Mass.Step)
		holds("activation energy, least", unit.InKilojoulePerMole, c.GelEnergy.Mark, float64(min(c.GelEnergy.Low, c.GelEnergy.Value)), g.Energy.Low.Step)
		holds("activation energy", unit.InKilojoulePerMole, c.GelEnergy.Mark, float64(c.GelEnergy.Value), g.Energy.Mid.Step)
		holds("activation energy, most", unit.InKilojoulePerMole, c.GelEnergy.Mark, float64(max(c.GelEnergy.High, c.GelEnergy.Value)), g.Energy.High.Step)
		if len(c.Families) == 0 {
			without++
			assert.Equal(t, working.Figure[unit.ByMass]{}, g.Catalyst, c.Key)
			assert.Equal(t, working.Figure[unit.Factor]{}, g.Order.Mid, c.Key)
			continue
		}
		withPeroxide++
		holds("catalyst of the timed cup", unit.InPercent, c.GelWith.Mark, float64(c.GelWith.Value), g.Catalyst.Step)
		holds("power of the catalyst, least", unit.InPure, c.GelOrder.Mark, float64(min(c.GelOrder.Low, c.GelOrder.Value)), g.Order.Low.Step)
		holds("power of the catalyst", unit.InPure, c.GelOrder.Mark, float64(c.GelOrder.Value), g.Order.Mid.Step)
		holds("power of the catalyst, most", unit.InPure, c.GelOrder.Mark, float64(max(c.GelOrder.High, c.GelOrder.Value)), g.Order.High.Step)
	}
	assert.Positive(t, withPeroxide)
	assert.Positive(t, without)
	outside := chain.GelOf(j.CardByKey("gelcoat")).Order
	assert.InDelta(t, 0.3, float64(outside.Low.Value), 1e-12, "0.3 is under the 0.5 that ships")
	assert.Greater(t, outside.High.Value, outside.Mid.Value)
}

// A typed table is the card's table, with its rows as typed and what it is; else the one that ships.
func TestATypedTableIsTheTable(t *testing.T) {
	j, problems := job.Read(jobtest.Doc(t, "card.gelcoat.dose = 1 2\ncard.gelcoat.dose.1.temp = 18 °C\ncard.gelcoat.dose.1.share = 2.1 %\ncard.gelcoat.dose.2.temp = 28 °C\ncard.gelcoat.dose.2.share = 1.4 %"))
	require.Empty(t, problems)
	typed, err := chain.DoseTable(j.CardByKey("gelcoat"))
	require.NoError(t, err)
	require.Len(t, typed.Rows(), 2)
	for i, want := range [][2]float64{{18, 2.1}, {28, 1.4}} {
		assert.InDelta(t, want[0], unit.InCelsius.From(float64(typed.Rows()[i].Surface)), 1e-9)
		assert.InDelta(t, want[1], unit.InPercent.From(float64(typed.Rows()[i].Catalyst)), 1e-9)
	}
	flowcoat := j.CardByKey("flowcoat")
	shipped, err := chain.DoseTable(flowcoat)
	require.NoError(t, err)
	for i, row := range shipped.Rows() {
		assert.Equal(t, flowcoat.DoseTable[i].Surface, row.Surface)
		assert.Equal(t, flowcoat.DoseTable[i].Catalyst, row.Catalyst)
	}
	for table, origin := range map[*cure.Table]working.Step{&typed: {Origin: "your table", Mark: source.Typed}, &shipped: {Origin: flowcoat.Name, Mark: source.CommonPractice}} {
		share, err := table.At(working.Given(unit.Of[unit.Temperature](20, unit.InCelsius), "test", unit.InCelsius, "", source.Typed))
		require.NoError(t, err)
		assert.Equal(t, origin, working.Step{Origin: share.Step.From[0].Origin, Mark: share.Step.From[0].Mark})
	}
}

// A figure of a card or a method stands under the name of what it was taken from.
func TestAFigureNamesItsCardAndItsMark(t *testing.T) {
	j, problems := job.Read(jobtest.Doc(t, "name = test"))
	require.Empty(t, problems)
	c := j.CardByKey("gelcoat")
	assert.Equal(t, &working.Step{Out: float64(c.Density.Value), Name: "density", Scale: unit.InKilogramPerLitre, Origin: c.Name, Mark: c.Density.Mark}, chain.DensityOf(c).Step)
	m, found := material.FindMethod("nap-roller")
	require.True(t, found)
	assert.Equal(t, &working.Step{Out: float64(m.Loss.Value), Name: "loss", Scale: unit.InPercent, Origin: m.Name, Mark: m.Loss.Mark}, chain.OfMethod(m, m.Loss, "loss", unit.InPercent).Step)
}
