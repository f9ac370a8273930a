package calc_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/order"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// What must hold from end to end, over jobs drawn from a seed: the sums are right
// each by itself, these hold what joins them.

// tidy draws a job in which nearly all is typed and can be read.
func tidy(seed uint64) job.Document {
	r := jobtest.New(seed)
	r.Junk, r.Empty = 0, 0
	return r.Document()
}

func ordered(d job.Document) (plan.Plan, map[string]chance.Line) {
	p := plan.Make(d)
	lines := map[string]chance.Line{}
	for _, l := range chance.OrderOf(&p).Lines {
		lines[l.Key()] = l
	}
	return p, lines
}

// One surface more of a kind never needs less of anything, nor buys it cheaper.
func TestMoreAreaNeverBuysLess(t *testing.T) {
	held := 0
	for seed := range jobtest.Enough(t, 120, &held, 400) {
		d := tidy(seed)
		p, before := ordered(d)
		for i, s := range p.Surfaces() {
			at := s.Path + ".count"
			if !s.Known || p.RefusedAt(at) != nil {
				continue
			}
			many, err := strconv.Atoi(d.Get(at))
			if err != nil {
				continue
			}
			more, after := ordered(d.Set(at, strconv.Itoa(many+1)))
			if !more.Surfaces()[i].Known || len(more.Refused()) != len(p.Refused()) {
				continue // more than the limits of a job
			}
			require.Greater(t, more.Area().Value, p.Area().Value, "seed %d", seed)
			for key, l := range before {
				now, still := after[key]
				require.True(t, still || l.Need.IsZero(), "seed %d, %s: %s isn't needed any more", seed, at, key)
				require.False(t, now.Need.LessThan(l.Need), "seed %d, %s: %s %s, with one more %s", seed, at, key, l.Need, now.Need)
				if l.Err == nil && now.Err == nil && l.Bought.IsPriced && now.Bought.IsPriced {
					require.False(t, now.Bought.Cost.LessThan(l.Bought.Cost), "seed %d, %s: %s is cheaper with one more", seed, at, key)
				}
				held++
			}
		}
	}
}

// Sanding deeper, or once more, never leaves a thicker film or more on the boat.
func TestMoreSandingNeverLeavesMoreFilm(t *testing.T) {
	held := 0
	for seed := range jobtest.Enough(t, 120, &held, 30) {
		d := tidy(seed)
		p := plan.Make(d)
		for i, b := range p.Buildups() {
			for _, s := range b.Steps {
				if s.Job.Kind.Key != "sand" || s.Taken.Step == nil || d.Get(s.Path+".by") == job.ByGrades {
					continue
				}
				deeper := plan.Make(d.Set(s.Path+".taken", strconv.FormatFloat(unit.InMicrometre.From(float64(s.Taken.Value))+25, 'f', -1, 64)+" µm"))
				if deeper.RefusedAt(s.Path+".taken") != nil {
					continue
				}
				require.LessOrEqual(t, deeper.Buildups()[i].Left.Value, b.Left.Value+1e-15, "seed %d, %s", seed, s.Path)
				require.LessOrEqual(t, deeper.Kept().Value, p.Kept().Value+1e-12, "seed %d, %s", seed, s.Path)
				held++
			}
			more, step := d.Add(b.Path + ".step")
			more = more.Set(step+".kind", "sand").Set(step+".by", job.ByTaken).Set(step+".taken", "40 µm")
			again := plan.Make(more)
			require.LessOrEqual(t, again.Buildups()[i].Left.Value, b.Left.Value+1e-15, "seed %d, %s: sanded once more", seed, b.Path)
		}
	}
}

// What is bought covers what is to buy, and where all sizes are priced no other
// choice of packs that covers it costs less: all of them are tried beside it.
func TestTheOrderCoversTheNeedAtTheLeastCost(t *testing.T) {
	held := 0
	for seed := range jobtest.Enough(t, 60, &held, 20) {
		d := tidy(seed)
		p, _ := ordered(d)
		random := rand.New(rand.NewPCG(seed, 51))
		for _, n := range p.Needs() { // a price for every size, the larger ones cheaper by the litre
			for i, sold := range p.Job.ShopByKey(n.Card.Key).Packs {
				size := plan.InBasis(n.Card, sold.Size).InexactFloat64()
				d = d.Set(n.Card.Path+".pack."+strconv.Itoa(i+1)+".price", strconv.FormatFloat(math.Pow(size, 0.85)*(10+8*random.Float64()), 'f', 2, 64))
			}
		}
		_, lines := ordered(d)
		for key, l := range lines {
			if l.Err != nil || l.ToBuy.IsZero() {
				continue
			}
			require.False(t, l.Need.GreaterThan(l.Stock.Add(l.ToBuy)), "seed %d: %s: stock and what is to buy are the need", seed, key)
			sum, packs := decimal.Zero, []order.Pack{}
			for _, c := range l.Packs {
				sum = sum.Add(plan.InBasis(l.Card, c.Size).Mul(decimal.NewFromInt(int64(c.Count))))
			}
			for _, sold := range l.Shop.Packs {
				pack := order.Pack{Size: plan.InBasis(l.Card, sold.Size)}
				if sold.HasPrice {
					pack.Price = decimal.NewNullDecimal(decimal.RequireFromString(sold.Price))
				}
				packs = append(packs, pack)
			}
			require.False(t, sum.LessThan(l.ToBuy), "seed %d: %s", seed, key)
			if best, tried := leastCost(l.ToBuy, packs); tried && l.Bought.IsPriced && !l.SomePriced {
				require.True(t, l.Bought.Cost.Equal(best), "seed %d: %s of %s for %s, best %s", seed, key, l.ToBuy, l.Bought.Cost, best)
				held++
			}
		}
	}
	t.Logf("%d lines against all choices", held)
}

// leastCost tries every choice of packs; false where a size has no price or
// there are too many choices.
func leastCost(need decimal.Decimal, packs []order.Pack) (best decimal.Decimal, tried bool) {
	choices := 1.0
	for _, p := range packs {
		if !p.Price.Valid {
			return best, false
		}
		choices *= need.Div(p.Size).InexactFloat64() + 2
	}
	if choices > 20_000 || len(packs) == 0 {
		return best, false
	}
	var search func(left, cost decimal.Decimal, i int)
	search = func(left, cost decimal.Decimal, i int) {
		if left.Sign() <= 0 {
			if !tried || cost.LessThan(best) {
				best, tried = cost, true
			}
			return
		}
		if i == len(packs) {
			return
		}
		for ; ; left, cost = left.Sub(packs[i].Size), cost.Add(packs[i].Price.Decimal) {
			search(left, cost, i+1)
			if left.Sign() <= 0 {
				return
			}
		}
	}
	search(need, decimal.Zero, 0)
	return best, tried
}

// What is refused was typed: taken away it is refused no more, and nothing has to
// be typed for that. A choice is refused for its item: that goes with it.
func TestOnlyWhatIsTypedIsRefused(t *testing.T) {
	held := 0
	for seed := range jobtest.Enough(t, 80, &held, 100) {
		r := jobtest.New(seed)
		r.Junk, r.Empty = 0.05, 0.05
		d := r.Document()
		p := plan.Make(d)
		for _, refused := range p.Refused() {
			if d.Get(refused.Path) == "" {
				continue // a sum of several fields, named at one that stands for all
			}
			without := plan.Make(d.Set(refused.Path, ""))
			err := without.RefusedAt(refused.Path)
			isChoice := job.FieldAt(refused.Path) != nil && job.FieldAt(refused.Path).Kind == job.Choice // it stands for the figures of its item
			if item := refused.Path[:strings.LastIndex(refused.Path, ".")+1]; err != nil && isChoice {
				emptied := d
				for _, l := range d.Under(strings.TrimSuffix(item, ".")) {
					emptied = emptied.Set(l.Path, "")
				}
				without = plan.Make(emptied)
				err = without.RefusedAt(refused.Path)
			}
			assert.NoError(t, err, "seed %d: %s is refused with nothing typed", seed, refused.Path)
			held++
		}
	}
}

// What a need is made of adds up: the uses of all steps are the need of the
// material, each of its grade.
func TestNeedsAreTheSumOfTheirUses(t *testing.T) {
	for seed := range uint64(60) {
		p := plan.Make(tidy(seed))
		for _, n := range p.Needs() {
			mass := 0.0
			for _, m := range n.Mass {
				mass += float64(m.Value)
			}
			used := 0.0
			for _, b := range p.Buildups() {
				for _, s := range b.Steps {
					for _, u := range s.Used {
						if u.Card == n.Card && u.Grade == n.Grade {
							used += float64(u.Mass.Value)
						}
					}
				}
			}
			require.LessOrEqual(t, mass, used*(1+1e-9)+1e-12, "seed %d: %s: more needed than used", seed, n.Card.Key)
		}
		area := 0.0
		for _, s := range p.Surfaces() {
			if s.Known {
				area += float64(s.Area.Value)
			}
		}
		require.InDelta(t, area, float64(p.Area().Value), 1e-9*area, "seed %d", seed)
	}
}

// A log that went as planned moves a belief towards the plan and never widens what
// the next job may take, however many entries, of whatever sizes.
func TestLearningFromWorkAsPlannedNeverWidens(t *testing.T) {
	random := rand.New(rand.NewPCG(31, 32))
	for range 500 {
		prior := order.Belief{Mean: 0.6*random.Float64() - 0.3, SD: 0.05 + 0.4*random.Float64()}
		sigma := 0.1 + 0.3*random.Float64()
		var log []order.Entry
		last := prior
		for range 1 + random.IntN(6) {
			m := unit.Mass(0.1 + 5*random.Float64())
			log = append(log, order.Entry{Used: m, Planned: m, FilmOnly: m / 2, SD: sigma})
			now, err := order.Learn(prior, log)
			require.NoError(t, err)
			require.Less(t, now.SD, prior.SD)
			require.LessOrEqual(t, math.Abs(now.Mean), math.Abs(prior.Mean)+1e-15)
			require.LessOrEqual(t, widthOf(now, sigma), widthOf(prior, sigma)+1e-12)
			last = now
		}
		require.Less(t, last.SD, prior.SD)
	}
}

// widthOf is the ratio of what nine of ten next works stay under to what one of
// ten does.
func widthOf(b order.Belief, sigma float64) float64 {
	next := b.Next(sigma)
	return next.At(1.2816) / next.At(-1.2816)
}

// Warmer or with more catalyst, it gels sooner: early end, middle and late end.
func TestMinutesFallWithTemperatureAndCatalyst(t *testing.T) {
	random := rand.New(rand.NewPCG(41, 42))
	between := func(low, high float64) float64 { return low + (high-low)*random.Float64() }
	for range 500 {
		mid := between(5, 60)
		ea, n := between(35, 80), between(0.4, 1.2)
		g := cure.Gel{
			Time:        cure.Range[unit.Time]{Low: given[unit.Time](0.7*mid, unit.InMinute), Mid: given[unit.Time](mid, unit.InMinute), High: given[unit.Time](1.3*mid, unit.InMinute)},
			Temperature: given[unit.Temperature](between(20, 25), unit.InCelsius), Catalyst: given[unit.ByMass](1.8, unit.InPercent),
			Order:  cure.Range[unit.Factor]{Low: given[unit.Factor](n-0.1, unit.InPure), Mid: given[unit.Factor](n, unit.InPure), High: given[unit.Factor](n+0.1, unit.InPure)},
			Energy: cure.Range[unit.MolarEnergy]{Low: given[unit.MolarEnergy](ea-5, unit.InKilojoulePerMole), Mid: given[unit.MolarEnergy](ea, unit.InKilojoulePerMole), High: given[unit.MolarEnergy](ea+5, unit.InKilojoulePerMole)},
			Mass:   given[unit.Mass](100, unit.InGram),
		}
		at, share := between(17, 26), between(1.1, 2.3)
		band := func(at, share float64) [3]unit.Time {
			b, err := g.At(given[unit.Temperature](at, unit.InCelsius), given[unit.ByMass](share, unit.InPercent))
			require.NoError(t, err)
			require.True(t, b.Early.Value <= b.Mid.Value && b.Mid.Value <= b.Late.Value)
			return [3]unit.Time{b.Early.Value, b.Mid.Value, b.Late.Value}
		}
		was, warmer, stronger := band(at, share), band(at+0.7, share), band(at, share+0.1)
		for i := range was {
			require.Less(t, warmer[i], was[i], "%d at %v °C and %v %%", i, at, share)
			require.Less(t, stronger[i], was[i], "%d at %v °C and %v %%", i, at, share)
		}
	}
}

func given[Q unit.Quantity](n float64, s unit.Scale) working.Figure[Q] {
	return working.Given(unit.Of[Q](n, s), "given", s, "test", source.Typed)
}
