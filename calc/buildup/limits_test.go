package buildup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	b "shedreckoner/calc/buildup"
	"shedreckoner/calc/unit"
)

// found is a finding in short: how bad, what fixes it, what was got against what.
type found struct {
	severity   b.Severity
	fix        b.Fix
	got, limit float64
}

func only(t *testing.T, list []b.Finding, rule b.Key) *found {
	t.Helper()
	var of []found
	for _, f := range list {
		if f.Rule == rule {
			of = append(of, found{f.Severity, f.Fix, f.Scale.From(f.Got), f.Scale.From(f.Limit)})
		}
	}
	if len(of) == 0 {
		return nil
	}
	require.Len(t, of, 1)
	return &of[0]
}

// holds checks one coat of waxed polyester on sanded laminate.
func holds(t *testing.T, rule b.Key, edit func(*b.Layer)) *found {
	t.Helper()
	return only(t, b.Check(b.Base{Ground: b.Laminate, IsSanded: true}, []b.Step{put(b.Polyester, waxed, func(s *b.Step) { edit(&s.Layer) })}), rule)
}

// Each limit of a coat: at it the coat holds, just past it the finding names what
// was got and the limit, in that order. The wrong way round a builder would thin
// more, wax more, or go thicker.
func TestTheLimitsOfACoat(t *testing.T) {
	wet := func(micrometres float64) func(*b.Layer) {
		return func(l *b.Layer) {
			l.Wet, l.WetLeast, l.WetAsk, l.WetMost = unit.WetFilm(micrometres*1e-6), 200e-6, 300e-6, 600e-6
		}
	}
	for film, want := range map[float64]*found{
		602: {b.Refuse, b.MoreCoats, 602, 600}, 600: nil, 300: nil,
		298: {b.Ask, b.FewerCoats, 298, 300}, 200: {b.Ask, b.FewerCoats, 200, 300}, 198: {b.Refuse, b.FewerCoats, 198, 200},
	} {
		assertFound(t, want, holds(t, b.WetFilm, wet(film)), film)
	}
	thinned := func(percent float64) func(*b.Layer) {
		return func(l *b.Layer) {
			l.Thinner, l.ThinnerAsk, l.ThinnerMost = unit.Share(percent/100), 0.05, 0.0725
		}
	}
	for percent, want := range map[float64]*found{
		5: nil, 5.1: {b.Ask, b.LessThinner, 5.1, 5}, 7.25: {b.Ask, b.LessThinner, 7.25, 5}, 7.3: {b.Refuse, b.LessThinner, 7.3, 7.25},
	} {
		assertFound(t, want, holds(t, b.Thinning, thinned(percent)), percent)
	}
	assert.Nil(t, holds(t, b.Thinning, func(l *b.Layer) { l.Thinner, l.ThinnerAsk, l.ThinnerMost = 0.04, 0, 0 }), "without a limit nothing is asked")
	waxes := func(percent float64) func(*b.Layer) {
		return func(l *b.Layer) { l.Wax = unit.ByMass(percent / 100) }
	}
	for percent, want := range map[float64]*found{
		0.9: {b.Ask, b.OtherWax, 0.9, 1}, 1: nil, 3: nil, 3.1: {b.Ask, b.OtherWax, 3.1, 3}, 4: {b.Ask, b.OtherWax, 4, 3}, 4.1: {b.Refuse, b.OtherWax, 4.1, 4},
	} {
		assertFound(t, want, holds(t, b.Waxing, waxes(percent)), percent)
	}
}

func assertFound(t *testing.T, want, got *found, at float64) {
	t.Helper()
	if want == nil || got == nil {
		assert.Equal(t, want, got, at)
		return
	}
	assert.Equal(t, []any{want.severity, want.fix}, []any{got.severity, got.fix}, at)
	assert.InDeltaSlice(t, []float64{want.got, want.limit}, []float64{got.got, got.limit}, 1e-9, "%v: got, and the limit", at)
}

// A recoat window is closed at both ends: 2 h and 24 h are in it.
func TestTheEndsOfARecoatWindow(t *testing.T) {
	second := func(wait unit.Time) *found {
		steps := []b.Step{put(b.TwoPack, window(2*unit.Hour, unit.Day)), put(b.TwoPack, after(wait))}
		list := at(b.Check(b.Base{Ground: b.CuredEpoxy, IsSanded: true, IsWashed: true}, steps), 1, b.OnGround)
		for _, f := range list {
			if f.Requirement == b.Window {
				return &found{f.Severity, f.Fix, unit.InHour.From(f.Got), unit.InHour.From(f.Limit)}
			}
		}
		return nil
	}
	for hours, want := range map[float64]*found{
		1.9: {b.Refuse, b.WaitLonger, 1.9, 2}, 2: nil, 24: nil, 24.1: {b.Refuse, b.SandFirst, 24.1, 24},
	} {
		assertFound(t, want, second(unit.Time(hours)*unit.Hour), hours)
	}
}

// Films that fall short name what is left and what must be, each in its finding.
func TestShortfallsNameWhatIsLeftAndWhatMustBe(t *testing.T) {
	of := func(mean, thinnest float64) []b.Finding {
		steps := []b.Step{coat(400, 0.2), leaving(sand(100, 0.4), mean, thinnest)}
		points, err := b.Walk(steps, terms(0.05, 0))
		require.NoError(t, err)
		return b.Shortfalls(steps, points, terms(0.05, 0))
	}
	thin := 300 - 1.6448536*89.4427191
	assert.Nil(t, only(t, of(300, 0), b.MeanLeft), "at its least")
	assertFound(t, &found{b.Refuse, b.MoreFilm, 300, 301}, only(t, of(301, 0), b.MeanLeft), 301)
	assert.Nil(t, only(t, of(0, thin-0.009), b.ThinLeft))
	got := only(t, of(0, 200), b.ThinLeft)
	require.NotNil(t, got)
	assert.Equal(t, b.MoreEvenFilm, got.fix)
	assert.InDelta(t, thin, got.got, 1e-4)
	assert.InDelta(t, 200, got.limit, 1e-9)
	assert.NotNil(t, only(t, of(0, thin+0.02), b.ThinLeft), "a fiftieth of a micrometre short is short")
}

// The crack limit of a layer is the least of its coats' limits, wherever it lies.
func TestTheStrictestCoatSetsTheCrackLimit(t *testing.T) {
	limited := func(film, most float64) b.Step {
		s := coat(film, 0.2)
		s.Layer.CuredMost = unit.DryFilm(most * 1e-6)
		return s
	}
	for _, steps := range [][]b.Step{
		{limited(400, 640), limited(300, 700)}, {limited(400, 700), limited(300, 640)}, {limited(400, 0), limited(300, 640)},
	} {
		points, err := b.Walk(steps, terms(0.05, 0))
		require.NoError(t, err)
		assertFound(t, &found{b.Refuse, b.LessFilm, 700, 640}, only(t, b.Shortfalls(steps, points, terms(0.05, 0)), b.CrackLimit), 700)
	}
	at := []b.Step{limited(640, 640)}
	points, err := b.Walk(at, terms(0.05, 0))
	require.NoError(t, err)
	assert.Nil(t, only(t, b.Shortfalls(at, points, terms(0.05, 0)), b.CrackLimit), "at its limit")
}

// A new layer has its own crack limit: that of the layer below it, which is
// stricter, doesn't apply to it, nor the other way round.
func TestEachLayerHasItsOwnCrackLimit(t *testing.T) {
	lower, upper := coat(300, 0.2), coat(500, 0.2)
	lower.Layer.CuredMost, upper.Layer.CuredMost, upper.Film.NewLayer = 400e-6, 640e-6, true
	steps := []b.Step{lower, upper}
	points, err := b.Walk(steps, terms(0.05, 0))
	require.NoError(t, err)
	assert.Nil(t, only(t, b.Shortfalls(steps, points, terms(0.05, 0)), b.CrackLimit))
	steps[0].Film.Adds = micrometres(450)
	points, err = b.Walk(steps, terms(0.05, 0))
	require.NoError(t, err)
	assertFound(t, &found{b.Refuse, b.LessFilm, 450, 400}, only(t, b.Shortfalls(steps, points, terms(0.05, 0)), b.CrackLimit), 450)
}

// Filler separates the layers: a stricter coat below it cracks on its own account.
// And a coat that goes on with the layer is no end of it: it is the end that is too
// thick.
func TestWhereALayerBeginsAndEnds(t *testing.T) {
	limited := func(film, most float64) b.Step {
		s := coat(film, 0.2)
		s.Layer.CuredMost = unit.DryFilm(most * 1e-6)
		return s
	}
	cracks := func(steps ...b.Step) (at []int) {
		points, err := b.Walk(steps, terms(0.05, 0))
		require.NoError(t, err)
		for _, f := range b.Shortfalls(steps, points, terms(0.05, 0)) {
			if f.Rule == b.CrackLimit {
				at = append(at, f.Step)
			}
		}
		return at
	}
	assert.Empty(t, cracks(limited(250, 300), b.Step{Kind: b.Fill}, limited(500, 640)))
	assert.Equal(t, []int{1}, cracks(limited(700, 640), limited(10, 640)))
}
