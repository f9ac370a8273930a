package plan_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// lines makes a document of lines "path = text".
func lines(text string) job.Document {
	var d job.Document
	for line := range strings.Lines(text) {
		if path, text, found := strings.Cut(strings.TrimSpace(line), " = "); found {
			d = d.Set(path, text)
		}
	}
	return d
}

// rolledDeck is a rectangle of 2 × 1 m that gets gel coat by roller.
const rolledDeck = `surface = 1
surface.1.name = Deck
surface.1.length = 2 m
surface.1.width = 1 m
surface.1.buildup = buildup.1
buildup = 1
buildup.1.step = 1
buildup.1.step.1.kind = coat
buildup.1.step.1.card = gelcoat
buildup.1.step.1.method = nap-roller
buildup.1.step.1.film = 400 µm
`

func deck() job.Document { return lines(rolledDeck) }

func with(d job.Document, text string) job.Document {
	for line := range strings.Lines(text) {
		if path, text, found := strings.Cut(strings.TrimSpace(line)+" ", " = "); found {
			d = d.Set(path, strings.TrimSpace(text)) // nothing after the sign: what was there is emptied
		}
	}
	return d
}

func TestAPlainDeck(t *testing.T) {
	p := plan.Make(deck())
	require.Empty(t, p.Refused())
	require.Empty(t, p.Waiting())
	require.Empty(t, p.Asks())
	assert.InDelta(t, 2, float64(p.Area().Value), 1e-12)
	coat := p.Buildups()[0].Steps[0].Coat
	require.NotNil(t, coat)
	assert.InDelta(t, 400e-6*0.83, float64(coat.Cured.Value), 1e-12, "the cured share of a rolled gel coat")
	assert.InDelta(t, 2*400e-6/0.95, float64(coat.Mix.Value), 1e-12, "a loss of 5 %")
}

// Every refusal stands beside the field that it is about.
func TestWhatIsWrongIsRefusedAtItsField(t *testing.T) {
	for _, c := range []struct{ name, path, change string }{
		{"thinner over the card's limit", "buildup.1.step.1.thinner", "buildup.1.step.1.thinner = 7.3 %"},
		{"the same by volume", "buildup.1.step.1.thinner", "buildup.1.step.1.thinner = 10.1 %\nbuildup.1.step.1.thinner-by = volume"},
		{"thinner with the wax solution", "buildup.1.step.1.thinner", "buildup.1.step.1.card = flowcoat\nbuildup.1.step.1.thinner = 5.3 %"},
		{"each coat over the card's largest", "buildup.1.step.1.film", "buildup.1.step.1.film = 520 µm\nbuildup.1.step.1.film-for = each"},
		{"each sprayed coat over it", "buildup.1.step.1.film", "buildup.1.step.1.method = cup-gun\nbuildup.1.step.1.film = 620 µm\nbuildup.1.step.1.film-for = each"},
		{"each sprayed coat on a wall", "buildup.1.step.1.film", "buildup.1.step.1.method = cup-gun\nbuildup.1.step.1.film = 520 µm\nbuildup.1.step.1.film-for = each\nsurface.1.lies = wall"},
		{"each coat overhead", "buildup.1.step.1.film", "buildup.1.step.1.film = 420 µm\nbuildup.1.step.1.film-for = each\nsurface.1.lies = overhead"},
		{"too few coats for the film", "buildup.1.step.1.coats", "buildup.1.step.1.film = 1100 µm\nbuildup.1.step.1.coats = 2"},
		{"a method without a figure on the card", "buildup.1.step.1.method", "buildup.1.step.1.card = flowcoat\nbuildup.1.step.1.method = cup-gun"},
		{"a coat of filler", "buildup.1.step.1.card", "buildup.1.step.1.card = polyester-filler"},
		{"a card that isn't there", "buildup.1.step.1.card", "buildup.1.step.1.card = 99"},
		{"a film of 4 m", "buildup.1.step.1.film", "buildup.1.step.1.film = 4 m"},
		{"no film", "buildup.1.step.1.film", "buildup.1.step.1.film = 0"},
		{"a hull of 40 km", "surface.1.length", "surface.1.length = 40 km"},
		{"a hull of 40000 m", "surface.1.length", "surface.1.length = 40000 m"},
		{"two readings", "surface.1.width", "surface.1.width = 1,500"},
		{"nothing", "surface.1.width", "surface.1.width = 0"},
		{"below nothing", "surface.1.width", "surface.1.width = -1"},
		{"words", "surface.1.width", "surface.1.width = wide"},
		{"a cut-out larger than its surface", "surface.1.cutout.1.shape", "surface.1.cutout = 1\nsurface.1.cutout.1.length = 2 m\nsurface.1.cutout.1.width = 1 m"},
		{"two cut-outs that together are", "surface.1.cutout.2.shape", "surface.1.cutout = 1 2\nsurface.1.cutout.1.length = 1 m\nsurface.1.cutout.1.width = 1 m\n" +
			"surface.1.cutout.2.shape = circle\nsurface.1.cutout.2.diameter = 1.2 m"},
		{"as many alike as leave nothing", "surface.1.cutout.1.shape", "surface.1.cutout = 1\nsurface.1.cutout.1.length = 1 m\nsurface.1.cutout.1.width = 1 m\nsurface.1.cutout.1.count = 2"},
		{"a triangle that can't close", "surface.1.c", "surface.1.shape = three-sides\nsurface.1.a = 1 m\nsurface.1.b = 1 m\nsurface.1.c = 2 m"},
		{"a ring inside out", "surface.1.inner", "surface.1.shape = ring\nsurface.1.outer = 1 m\nsurface.1.inner = 1 m"},
		{"stations in the wrong order", "surface.1.stations.2.position", stations + "\nsurface.1.stations.2.position = 0 m"},
		{"a pack of nothing", "card.gelcoat.pack.1.size", "card.gelcoat.pack.1.size = 0"},
		{"a pack of below nothing", "card.gelcoat.pack.1.size", "card.gelcoat.pack.1.size = -5"},
		{"a price in words", "card.gelcoat.pack.1.price", "card.gelcoat.pack.1.price = cheap"},
		{"gallons of some kind", "card.topcoat.pack.1.size", "card.topcoat.pack.1.size = 1 gal"},
		{"a name too long", "surface.1.name", "surface.1.name = " + strings.Repeat("x", job.MaxWords+1)},
		{"a shape that there isn't", "surface.1.shape", "surface.1.shape = blob"},
	} {
		p := plan.Make(with(deck(), c.change))
		assert.Error(t, p.RefusedAt(c.path), "%s: refused %v, waiting %v", c.name, p.Refused(), p.Waiting())
		assert.NoError(t, p.WaitingAt(c.path), "%s waits for nothing", c.name)
	}
}

const stations = `surface.1.shape = girths
	surface.1.length = 
	surface.1.stations = 1 2 3
	surface.1.stations.1.position = 0 m
	surface.1.stations.2.position = 1 m
	surface.1.stations.3.position = 2 m
	surface.1.stations.1.girth = 1 m
	surface.1.stations.2.girth = 1 m
	surface.1.stations.3.girth = 1 m`

// At the limit itself nothing is refused.
func TestLimitsThemselvesAreTaken(t *testing.T) {
	for _, change := range []string{
		"buildup.1.step.1.thinner = 7.25 %",
		"buildup.1.step.1.card = flowcoat\nbuildup.1.step.1.thinner = 5.25 %",
		"buildup.1.step.1.film = 410 µm\nbuildup.1.step.1.film-for = each",
		"buildup.1.step.1.film = 820 µm\nbuildup.1.step.1.coats = 2",
		"buildup.1.step = 1 2\nbuildup.1.step.2.kind = sand\nbuildup.1.step.2.taken = 332 µm",
		stations,
	} {
		p := plan.Make(with(deck(), change))
		assert.Empty(t, p.Refused(), change)
	}
}

// What is yet to be typed is waited for and never refused.
func TestWhatIsMissingIsWaitedFor(t *testing.T) {
	for path, change := range map[string]string{
		"surface.1.length":           "surface.1.length = ",
		"surface.1.stations":         "surface.1.shape = girths\nsurface.1.stations = 1",
		"surface.1.a":                "surface.1.shape = three-sides",
		"surface.1.faces":            "surface.1.shape = box\nsurface.1.height = 1 m",
		"surface.1.cutout.1.length":  "surface.1.cutout = 1",
		"buildup.1.step.1.card":      "buildup.1.step.1.card = ",
		"buildup.1.step.1.film":      "buildup.1.step.1.film = ",
		"buildup.1.step.2.taken":     "buildup.1.step = 1 2\nbuildup.1.step.2.kind = sand",
		"buildup.1.step.2.card":      "buildup.1.step = 1 2\nbuildup.1.step.2.kind = polish\nbuildup.1.step.2.taken = 5 µm",
		"buildup.1.step.2.thickness": "buildup.1.step = 1 2\nbuildup.1.step.2.kind = fill\nbuildup.1.step.2.card = epoxy-filler",
	} {
		p := plan.Make(with(deck(), change))
		assert.Empty(t, p.Refused(), change)
		assert.Error(t, p.WaitingAt(path), "%s: waiting %v", change, p.Waiting())
	}
	empty := plan.Make(job.Document{})
	assert.Empty(t, empty.Refused())
	assert.Empty(t, chance.OrderOf(&empty).Lines)
	assert.False(t, empty.IsEmpty())
}

// Area × k² gives need × k², but for what stays behind in cups and tools.
func TestNeedsScaleWithTheSquareOfTheLength(t *testing.T) {
	for _, k := range []float64{0.5, 2, 3} {
		small, large := plan.Make(deck()), plan.Make(with(deck(), "surface.1.length = "+number(2*k)+" m\nsurface.1.width = "+number(k)+" m"))
		assert.InEpsilon(t, k*k, float64(large.Area().Value/small.Area().Value), 1e-12)
		assert.InEpsilon(t, k*k, float64(large.Kept().Value/small.Kept().Value), 1e-12)
		a, b := small.Buildups()[0].Steps[0], large.Buildups()[0].Steps[0]
		assert.InEpsilon(t, k*k, float64(b.Coat.Mix.Value/a.Coat.Mix.Value), 1e-12)
		assert.Equal(t, a.Coat.WetEach.Value, b.Coat.WetEach.Value, "a film doesn't scale")
	}
}

func number(n float64) string { return strconv.FormatFloat(n, 'f', -1, 64) }

func need(p plan.Plan, key string) chance.Line {
	for _, l := range chance.OrderOf(&p).Lines {
		if l.Card.Key == key {
			return l
		}
	}
	return chance.Line{}
}

// A larger surface never needs less of anything, nor costs less.
func TestMoreSurfaceNeverCostsLess(t *testing.T) {
	d := with(deck(), `card.gelcoat.pack.1.price = 19.50
		card.gelcoat.pack.2.price = 84
		card.gelcoat.pack.3.price = 299
		buildup.1.step = 1 2 3
		buildup.1.step.1.thinner = 4 %
		buildup.1.step.2.kind = sand
		buildup.1.step.2.taken = 30 µm
		buildup.1.step.3.kind = polish
		buildup.1.step.3.card = compound
		buildup.1.step.3.taken = 5 µm`)
	before := plan.Make(job.Document{})
	for mm := 200; mm < 20000; mm += 173 {
		p := plan.Make(d.Set("surface.1.length", strconv.Itoa(mm)+" mm"))
		require.Empty(t, p.Refused(), mm)
		for _, l := range chance.OrderOf(&before).Lines {
			require.False(t, need(p, l.Card.Key).Need.LessThan(l.Need), "%s at %d mm", l.Card.Key, mm)
		}
		require.False(t, chance.OrderOf(&p).Cost.LessThan(chance.OrderOf(&before).Cost), "at %d mm", mm)
		before = p
	}
}

func TestStockIsTakenOff(t *testing.T) {
	p := plan.Make(deck())
	all := need(p, "gelcoat")
	for _, stock := range []string{"500 g", "0.5", "0.5 kg", "0.4 L"} {
		l := need(plan.Make(deck().Set("card.gelcoat.stock", stock)), "gelcoat")
		assert.True(t, all.Need.Equal(l.Need), stock)
		assert.Equal(t, "0.5", all.ToBuy.Sub(l.ToBuy).String(), stock)
	}
	l := need(plan.Make(deck().Set("card.gelcoat.stock", "50 kg")), "gelcoat")
	assert.True(t, l.ToBuy.IsZero())
	assert.Empty(t, l.Packs)
}

// Three packs of 0.1 cover 0.1 + 0.2, whatever a float makes of it.
func TestTheLastBitBuysNoPack(t *testing.T) {
	d := lines(`surface = 1
		surface.1.shape = direct
		surface.1.area = 7.5 m²
		surface.1.buildup = buildup.1
		buildup = 1
		buildup.1.step = 1
		buildup.1.step.1.kind = polish
		buildup.1.step.1.card = compound
		buildup.1.step.1.taken = 0 µm
		card.compound.pack.1.size = 0.1
		card.compound.pack.1.price = 3`)
	l := need(plan.Make(d), "compound") // 7.5 × 0.040 = 0.3 kg
	assert.Equal(t, "0.3", l.Need.String())
	require.Len(t, l.Packs, 1)
	assert.Equal(t, 3, l.Packs[0].Count)
	assert.Equal(t, "9", l.Bought.Cost.String())
}

func TestUnlikelyFiguresAreAskedWithTheirSlips(t *testing.T) {
	for _, c := range []struct{ change, path, slip string }{
		{"surface.1.shape = rectangle\nsurface.1.length = 2 mm\nsurface.1.width = 1 mm", "surface.1", "sizes in m typed as mm"},
		{"surface.1.length = 200 mm\nsurface.1.width = 20 mm", "surface.1", "sizes in cm typed as mm"},
		{"surface.1.length = 80 mm\nsurface.1.width = 40 mm", "surface.1", "sizes in inches typed as mm"},
		{"surface.1.length = 90 m\nsurface.1.width = 30 m", "surface.1", "ft² typed as m²"},
		{"buildup.1.step = 1\nbuildup.1.step.1.kind = fill\nbuildup.1.step.1.card = epoxy-filler\nbuildup.1.step.1.thickness = 50 mm", "buildup.1.step.1.thickness", "mil typed as mm"},
		{"buildup.1.step.1.film = 16 µm", "buildup.1.step.1.film", "mil typed as µm"},
		{"buildup.1.step.1.film = 4.9 mm", "buildup.1.step.1.film", "mil typed as mm"},
		{"card.gelcoat.density = 2.9", "card.gelcoat.density", "lb per US gallon typed as kg/L"},
		{"card.gelcoat.density = 21 lb/US gal", "card.gelcoat.density", "lb per imperial gallon typed as lb per US gallon"},
		{"surface.1.length = 36 m\nsurface.1.width = 20 m", "surface.1", "the sum of both sides typed as one size, for a product that counts them again"},
		{"card.gelcoat.gel-time = 720", "card.gelcoat.gel-time", "seconds typed as minutes"},
		{"card.gelcoat.hardener-share = 0.02", "card.gelcoat.hardener-share", "a bare share typed as %"},
		{"test = 1\ntest.1.card = gelcoat\ntest.1.minutes = 900", "test.1.minutes", "seconds typed as minutes"},
	} {
		d := with(deck(), c.change)
		p := plan.Make(d)
		assert.Empty(t, p.Refused(), c.change)
		ask := p.AskAt(c.path)
		if !assert.NotNil(t, ask, "%s: %v", c.change, p.Asks()) {
			continue
		}
		var named []string
		for _, o := range ask.Otherwise {
			named = append(named, o.Slip.Key)
			assert.True(t, o.Value >= ask.Band.Low && o.Value <= ask.Band.High, "%s: %v", o.Slip.Key, o.Value)
		}
		assert.Contains(t, named, c.slip, c.change)
		confirmed := d.Set(job.Real(c.path), ask.Text)
		again := plan.Make(confirmed)
		assert.Nil(t, again.AskAt(c.path), "once it is real it isn't asked again: %s", c.change)
	}
}

// A refused figure is tried for slips too: 10.4 lb/US gal is gel coat.
func TestSlipsOfWhatIsRefused(t *testing.T) {
	band, slips := plan.Slips(unit.Densities, 10400)
	require.Len(t, slips, 2)
	assert.Equal(t, "lb per US gallon typed as kg/L", slips[0].Slip.Key)
	assert.InDelta(t, 1246.2, slips[0].Value, 0.1)
	assert.Equal(t, "lb per imperial gallon typed as kg/L", slips[1].Slip.Key)
	assert.InDelta(t, 1037.67, slips[1].Value, 0.01, "1 lb/imp gal is 0.0997764 kg/L. Source: NIST SP 811, App. B.8")
	assert.Equal(t, "density", band.Key)
	_, slips = plan.Slips(unit.Temperatures, 300)
	assert.Empty(t, slips)
}

func TestEveryFigureOpensToItsWorking(t *testing.T) {
	p := plan.Make(deck())
	for _, step := range []struct {
		name  string
		count int
	}{{"area", len(p.Area().Step.Texts())}, {"kept", len(p.Kept().Step.Texts())}, {"mix", len(p.Buildups()[0].Steps[0].Coat.Mix.Step.Texts())}} {
		assert.NotZero(t, step.count, step.name)
	}
	for _, l := range chance.OrderOf(&p).Lines {
		require.NotNil(t, l.Why(), l.Card.Key)
		assert.NotEmpty(t, l.Why().Texts(), l.Card.Key)
		assert.False(t, math.IsNaN(l.Why().Out))
	}
}
