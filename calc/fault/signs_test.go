package fault_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/fault"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
)

func signOf(t *testing.T, d job.Document, kind, key string) fault.Found {
	t.Helper()
	for _, f := range found(t, d, kind) {
		if f.Key == key {
			return f
		}
	}
	require.Fail(t, "no such cause", key)
	return fault.Found{}
}

// A limit that the builder typed is the one that a figure is held against, and not what ships.
func TestATypedLimitIsHeldAgainst(t *testing.T) {
	d := jobtest.Doc(t, coldCup).Set("cup.1.thinner", "22 g").Set("cup.1.film", "300 µm").Set("cup.1.share", "2.45 %").Set("cup.1.surface-temp", "16 °C").Set("cup.1.humidity", "75 %")
	for _, c := range []struct {
		field, text string
		fault, key  string
		limit       float64
	}{
		{"surface-least", "17 °C", "tacky", "cold", 17}, {"floor", "1.2 %", "tacky", "under-floor", 1.2},
		{"coat-ask", "320 µm", "tacky", "thin", 320}, {"humidity-most", "70 %", "pinholes", "damp", 70}, {"thinner-ask", "4 %", "sag", "over-thinned", 4},
	} {
		before := signOf(t, d, c.fault, c.key)
		f := signOf(t, d.Set("card.gelcoat."+c.field, c.text), c.fault, c.key)
		require.True(t, f.Known, c.field)
		assert.InDelta(t, c.limit, f.Sign.Scale.From(f.Sign.Limit), 1e-9, c.field)
		assert.NotEqual(t, before.Sign.Limit, f.Sign.Limit, c.field)
	}
}

// What a cause names is the cup's own figure and the limit that it is compared
// with, in the scale in which it is shown: the limit is also what to keep to next
// time, so that a wrong one would be mixed to.
func TestASignNamesItsFigureAndItsLimit(t *testing.T) {
	base := jobtest.Doc(t, coldCup)
	for _, c := range []struct {
		set, text     string
		fault, key    string
		scale         string
		figure, limit float64
		isAgainst     bool
	}{
		{"surface-temp", "12 °C", "tacky", "cold", "°C", 12, 15, false},
		{"surface-temp", "15 °C", "tacky", "cold", "°C", 15, 15, true},
		{"surface-temp", "25 °C", "tacky", "under-table", "%", 1.6, 1.5, true},
		{"share", "0.9 %", "tacky", "under-floor", "%", 0.9, 1, false},
		{"share", "1 %", "tacky", "under-floor", "%", 1, 1, true},
		{"wax", "5 g", "tacky", "no-wax", "%", 1, 1, true},
		{"wax", "4.9 g", "tacky", "no-wax", "%", 0.98, 1, false},
		{"film", "250 µm", "tacky", "thin", "µm", 250, 300, false},
		{"share", "2.6 %", "soft", "over-dosed", "%", 2.6, 2.5, false},
		{"share", "2.5 %", "soft", "over-dosed", "%", 2.5, 2.5, true},
		{"surface-temp", "32 °C", "soft", "over-dosed", "%", 1.6, 1.2, false},
		{"surface-temp", "25 °C", "soft", "over-dosed", "%", 1.6, 1.5, true}, // a tenth over the table is what a scale errs by
		{"humidity", "81 %", "pinholes", "damp", "%", 81, 80, false},
		{"film", "610 µm", "pinholes", "thick", "µm", 610, 600, false},
		{"wax", "20 g", "fish-eyes", "too-much-wax", "%", 4, 3, false},
		{"thinner", "30 g", "sag", "over-thinned", "%", 6, 5, false},
		{"thinner", "25 g", "sag", "over-thinned", "%", 5, 5, true},
	} {
		d := base.Set("cup.1."+c.set, c.text)
		f := signOf(t, d, c.fault, c.key)
		require.True(t, f.Known, "%s = %s: %s", c.set, c.text, c.key)
		assert.Equal(t, c.scale, f.Sign.Scale.Symbol(), c.key)
		assert.InDelta(t, c.figure, f.Sign.Scale.From(f.Sign.Got), 1e-9, "%s = %s: %s", c.set, c.text, c.key)
		assert.InDelta(t, c.limit, f.Sign.Scale.From(f.Sign.Limit), 1e-9, "%s = %s: limit of %s", c.set, c.text, c.key)
		assert.Equal(t, c.isAgainst, !f.IsBorneOut(), "%s = %s: %s", c.set, c.text, c.key)
	}
	dew := signOf(t, base.Set("cup.1.air-temp", "20 °C").Set("cup.1.surface-temp", "15 °C"), "pinholes", "dew")
	assert.InDelta(t, 3, dew.Sign.Scale.From(dew.Sign.Got), 0.05, "15 °C over the 12.0 °C of 20 °C and 60 %: published")
	assert.InDelta(t, 3, dew.Sign.Scale.From(dew.Sign.Limit), 1e-9)
	fast := signOf(t, base.Set("cup.1.gel", "6 min").Set("cup.1.early", "9 min"), "pinholes", "fast")
	assert.InDelta(t, 6, fast.Sign.Scale.From(fast.Sign.Got), 1e-9)
	assert.InDelta(t, 9, fast.Sign.Scale.From(fast.Sign.Limit), 1e-9)
}

// Nothing is known of a cause while a figure that it needs wasn't taken down.
func TestACauseWithoutItsFiguresIsUnknown(t *testing.T) {
	whole := jobtest.Doc(t, coldCup, "cup.1.gel = 6 min\ncup.1.early = 9 min\ncup.1.surface-temp = 20 °C\ncup.1.wax = 10 g\ncup.1.thinner = 10 g")
	for key, needs := range map[[2]string][]string{
		{"tacky", "cold"}: {"surface-temp"}, {"tacky", "under-table"}: {"share", "surface-temp"}, {"tacky", "under-floor"}: {"share"},
		{"tacky", "no-wax"}: {"product"}, {"tacky", "thin"}: {"film"}, {"soft", "over-dosed"}: {"share"},
		{"pinholes", "thick"}: {"film"}, {"pinholes", "damp"}: {"humidity"}, {"pinholes", "dew"}: {"air-temp", "humidity", "surface-temp"},
		{"pinholes", "fast"}: {"gel", "early"}, {"sag", "over-thinned"}: {"product"}, {"fish-eyes", "too-much-wax"}: {"product", "wax"},
	} {
		require.True(t, signOf(t, whole, key[0], key[1]).Known, key)
		for _, need := range needs {
			assert.False(t, signOf(t, whole.Set("cup.1."+need, ""), key[0], key[1]).Known, "%v without %s", key, need)
		}
	}
}

// A limit that a card doesn't give is held against nothing: over all cards, those that are no
// coat too, the cause is known only where the card says its figure.
func TestNoCauseIsKnownByALimitThatTheCardLacks(t *testing.T) {
	whole := jobtest.Doc(t, rolled, coldCup, "cup.1.gel = 6 min\ncup.1.early = 9 min\ncup.1.wax = 10 g\ncup.1.thinner = 10 g").
		Set("cup.1.surface-temp", "20 °C").Set("cup.1.step", flowStep).Set("cup.1.in", "100000").Set("cup.1.ended", "100500").
		Set("cup", "1 2").Set("cup.2.card", "flowcoat").Set("cup.2.mixed", "500 g").Set("cup.2.step", flowStep).Set("cup.2.in", "1000").Set("cup.2.ended", "2000").
		Set("buildup.1.step", "1 2").Set("buildup.1.step.2.kind", "polish").Set("buildup.1.step.2.card", "compound").
		Set("done", "1").Set("done.1.step", "buildup.1.step.2").Set("done.1.surface", "surface.1").Set("done.1.at", "180000")
	p := plan.Make(whole)
	for key, says := range map[[2]string]func(c *job.Card) bool{
		{"tacky", "cold"}:        func(c *job.Card) bool { return c.SurfaceLeast.Known },
		{"tacky", "under-floor"}: func(c *job.Card) bool { return c.Floor.Known },
		{"tacky", "thin"}:        func(c *job.Card) bool { return c.CoatAsk.Known },
		{"soft", "over-dosed"}:   func(c *job.Card) bool { return c.Ceiling.Known },
		{"pinholes", "damp"}:     func(c *job.Card) bool { return c.HumidityMost.Known },
		{"sag", "over-thinned"}:  func(c *job.Card) bool { return c.ThinnerAsk.Known && c.Thinner != "" },
		{"pinholes", "thick"}: func(c *job.Card) bool {
			return c.CoatMost.Known && c.Kind != material.Filler || c.PassMost.Known && c.Kind == material.Filler
		},
		{"wrinkled", "half-cured"}:         func(c *job.Card) bool { return c.RecoatFrom.Known },
		{"print-through", "polished-soon"}: func(c *job.Card) bool { return c.PolishFrom.Known },
	} {
		with, without := 0, 0
		for _, c := range p.Job.Cards {
			if says(c) {
				with++
			} else {
				without++
			}
			assert.Equal(t, says(c), signOf(t, whole.Set("cup.1.card", c.Key), key[0], key[1]).Known, "%v of %s", key, c.Key)
		}
		assert.Positive(t, with, key)
		assert.Positive(t, without, key)
	}
}

// Wax is missed only where air keeps a face from curing: polyester and vinyl ester
// that are left open; epoxy and two-pack goods cure by themselves, release film
// keeps the air off.
func TestWhereWaxIsMissed(t *testing.T) {
	for card, isMissed := range map[string]bool{"gelcoat": true, "flowcoat": true, "vinylester": true, "topcoat": false, "primer": false, "polyester-filler": false, "epoxy-filler": false} {
		assert.Equal(t, isMissed, signOf(t, jobtest.Doc(t, coldCup).Set("cup.1.card", card), "tacky", "no-wax").Known, card)
	}
	onStep := jobtest.Doc(t, rolled, coldCup).Set("cup.1.card", "flowcoat").Set("cup.1.step", flowStep)
	assert.True(t, signOf(t, onStep, "tacky", "no-wax").Known)
	assert.False(t, signOf(t, onStep.Set(flowStep+".release", "film"), "tacky", "no-wax").Known)
}

// The thinnest of the combs says thin, the thickest thick; a comb of which the
// first dry tooth wasn't read says nothing. The middle of 300 and 350 is 325.
func TestCombsSayThinAndThick(t *testing.T) {
	d := jobtest.Doc(t, rolled, coldCup).Set("cup.1.card", "flowcoat").Set("cup.1.step", flowStep).Set(flowStep+".comb", "1 2 3 4")
	for id, teeth := range map[string][2]string{"1": {"300 µm", "350 µm"}, "2": {"225 µm", "250 µm"}, "3": {"500 µm", "550 µm"}, "4": {"100 µm", ""}} {
		d = d.Set(flowStep+".comb."+id+".last-wet", teeth[0]).Set(flowStep+".comb."+id+".first-dry", teeth[1])
	}
	thin, thick := signOf(t, d, "wrinkled", "thin"), signOf(t, d, "sag", "thick")
	assert.InDelta(t, 237.5, thin.Sign.Scale.From(thin.Sign.Got), 1e-9)
	assert.InDelta(t, 525, thick.Sign.Scale.From(thick.Sign.Got), 1e-9)
	assert.False(t, thin.Sign.IsPlanned || thick.Sign.IsPlanned)
	planned := signOf(t, jobtest.Doc(t, coldCup), "sag", "thick")
	assert.True(t, planned.Sign.IsPlanned, "a cup for no step has only its plan")
	filler := signOf(t, jobtest.Doc(t, coldCup).Set("cup.1.card", "polyester-filler").Set("cup.1.film", "6 mm"), "sag", "thick")
	assert.InDelta(t, 5000, filler.Sign.Scale.From(filler.Sign.Limit), 1e-9, "a pass of filler has its own limit")
}

// A thinner by volume is compared with a limit by volume: 100 g of a thinner of
// 0.87 kg/L in 1.2 kg/L.
func TestThinnerByVolumeIsComparedByVolume(t *testing.T) {
	d := jobtest.Doc(t, coldCup).Set("cup.1.card", "topcoat").Set("cup.1.thinner", "100 g")
	p := plan.Make(d)
	card := p.Job.CardByKey("topcoat")
	require.Equal(t, material.ByVolume, card.ThinnerBasis)
	thinner := p.Job.CardByKey(card.Thinner)
	f := signOf(t, d, "sag", "over-thinned")
	assert.InDelta(t, 0.2*float64(card.Density.Value)/float64(thinner.Density.Value), f.Sign.Got, 1e-9)
}

// The coat before is the latest that ended half an hour or more before this one
// began, of the same build-up.
func TestTheCoatBeforeIsTheLatestOne(t *testing.T) {
	d := jobtest.Doc(t, rolled, coldCup).Set("cup", "1 2 3 4").Set("cup.1.card", "flowcoat").Set("cup.1.step", flowStep).Set("cup.1.in", "100000").Set("cup.1.ended", "100500")
	for id, ended := range map[string]string{"2": "92800", "3": "80000", "4": "99000"} {
		for key, text := range map[string]string{"card": "flowcoat", "mixed": "500 g", "step": flowStep, "in": "1000", "ended": ended} {
			d = d.Set("cup."+id+"."+key, text)
		}
	}
	f := signOf(t, d, "wrinkled", "half-cured")
	require.True(t, f.Known)
	assert.InDelta(t, 2, f.Sign.Scale.From(f.Sign.Got), 1e-9, "7200 s after the second; the fourth is of the same coat")
	assert.False(t, signOf(t, d.Set("cup.1.in", ""), "wrinkled", "half-cured").Known)
	assert.False(t, signOf(t, d.Set("cup.1.step", ""), "wrinkled", "half-cured").Known)
	assert.False(t, signOf(t, d.Set("cup.1.card", "styrene"), "wrinkled", "half-cured").Known, "nobody says when it may be coated over")
	assert.False(t, signOf(t, d.Set("cup", "1 4"), "wrinkled", "half-cured").Known, "nothing before it")
	assert.False(t, signOf(t, d.Set("cup.1.step", "").Set("cup.2.step", ""), "wrinkled", "half-cured").Known, "two cups for no step are of no build-up")
	hours := func(d job.Document) float64 {
		f := signOf(t, d, "wrinkled", "half-cured")
		return f.Sign.Scale.From(f.Sign.Got)
	}
	assert.InDelta(t, 20000./3600, hours(d.Set("cup.2.in", "")), 1e-9, "what never had its catalyst is no coat")
	assert.InDelta(t, 20000./3600, hours(d.Set("cup.2.step", "")), 1e-9, "nor is one for another build-up")
	assert.InDelta(t, 2, hours(d.Set("cup.4.ended", "98200")), 1e-9, "half an hour ago is the same coat")
	assert.InDelta(t, 1801./3600, hours(d.Set("cup.4.ended", "98199")), 1e-9)
}

// Polish too soon is counted to the first polish logged after the cup, on its own
// build-up; 72 h at 20 °C are the least (common practice).
func TestPolishedTooSoon(t *testing.T) {
	d := jobtest.Doc(t, rolled, coldCup).Set("cup.1.card", "gelcoat").Set("cup.1.step", flowStep).Set("cup.1.ended", "36000").Set("buildup.1.step", "1 2").
		Set("buildup.1.step.1.card", "gelcoat").Set("buildup.1.step.2.kind", "polish").Set("buildup.1.step.2.card", "compound").
		Set("done", "1 2 3 4")
	for id, at := range map[string]string{"1": "180000", "2": "216000", "3": "7200", "4": "90000"} {
		step := "buildup.1.step.2"
		if id == "4" {
			step = flowStep // no polish
		}
		d = d.Set("done."+id+".step", step).Set("done."+id+".surface", "surface.1").Set("done."+id+".at", at)
	}
	f := signOf(t, d, "print-through", "polished-soon")
	require.True(t, f.Known)
	assert.InDelta(t, 40, f.Sign.Scale.From(f.Sign.Got), 1e-9, "from 10 to 50 h; the one before the cup is of another coat")
	assert.InDelta(t, 72, f.Sign.Scale.From(f.Sign.Limit), 1e-9)
	assert.True(t, f.IsBorneOut())
	assert.False(t, signOf(t, d.Set("cup.1.ended", ""), "print-through", "polished-soon").Known)
	assert.False(t, signOf(t, d.Set("done", "3 4"), "print-through", "polished-soon").Known)
	assert.False(t, signOf(t, d.Set("done", "3 4").Set("done.3.at", "36000"), "print-through", "polished-soon").Known, "nobody polishes a cup the moment it ends")
	p := plan.Make(d)
	gone := d.Set("cup.1.step", "").Set("done.1.step", "buildup.7.step.1")
	assert.False(t, signOf(t, gone, "print-through", "polished-soon").Known, "a cup for no step isn't polished, whatever was finished")
	assert.Empty(t, fault.Of(&p, &job.Cup{Card: "gone", Fault: "tacky"}), "of a material that is no longer there nothing is known")
	f = signOf(t, d.Set("done", "2 1 3 4"), "print-through", "polished-soon")
	assert.InDelta(t, 40, f.Sign.Scale.From(f.Sign.Got), 1e-9, "the first polish, whichever was written down first")
}

// Settled: how many cups came out of the same tin of the same material before this
// one; another material, another tin and later cups are nothing to it.
func TestCupsFromTheSameTinBefore(t *testing.T) {
	d := jobtest.Doc(t, coldCup).Set("cup.1.tin", "May").Set("cup.1.weighed", "500").Set("cup", "1 2 3 4 5")
	for id, set := range map[string][3]string{"2": {"gelcoat", "May", "400"}, "3": {"flowcoat", "May", "100"}, "4": {"gelcoat", "June", "100"}, "5": {"gelcoat", "May", "600"}} {
		d = d.Set("cup."+id+".card", set[0]).Set("cup."+id+".tin", set[1]).Set("cup."+id+".weighed", set[2]).Set("cup."+id+".mixed", "100 g")
	}
	f := signOf(t, d, "chalky", "settled")
	assert.True(t, f.Known)
	assert.InDelta(t, 1, f.Sign.Got, 1e-12)
	assert.False(t, signOf(t, d.Set("cup.1.tin", ""), "chalky", "settled").Known)
}

// Dark in the sun takes both.
func TestDarkInTheSunTakesBoth(t *testing.T) {
	for sun, want := range map[string]bool{"sun dark": true, "sun white": false, "shade dark": false, "": false} {
		assert.Equal(t, want, signOf(t, jobtest.Doc(t, coldCup).Set("cup.1.sun", sun), "print-through", "dark").Known, sun)
	}
}

// A cup with no product in it has no shares: nothing of what is shown is without a
// number.
func TestACupOfNoProductHasNoShares(t *testing.T) {
	d := jobtest.Doc(t, coldCup).Set("cup.1.product", "0 g").Set("cup.1.wax", "0 g").Set("cup.1.thinner", "0 g")
	for kind, key := range map[string]string{"tacky": "no-wax", "fish-eyes": "too-much-wax", "sag": "over-thinned"} {
		f := signOf(t, d, kind, key)
		assert.Zero(t, f.Sign.Got, key)
	}
}

// A ceiling that the builder typed is the limit itself, not the range that shipped beside
// the figure it replaces.
func TestATypedCeilingIsTheLimit(t *testing.T) {
	d := jobtest.Doc(t, coldCup).Set("cup.1.surface-temp", "").Set("cup.1.share", "2.2 %").Set("card.flowcoat.ceiling", "2 %").Set("card.gelcoat.ceiling", "2 %")
	f := signOf(t, d, "soft", "over-dosed")
	require.True(t, f.Known)
	assert.InDelta(t, 2, f.Sign.Scale.From(f.Sign.Limit), 1e-9)
	assert.True(t, f.IsBorneOut())
}
