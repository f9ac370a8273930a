package buildup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	b "shedreckoner/calc/buildup"
	"shedreckoner/calc/unit"
)

// put is a coat of a material; the edits change its step.
func put(m b.Material, edits ...func(*b.Step)) b.Step {
	s := b.Step{Kind: b.Coat, Layer: b.Layer{Material: m}}
	if m == b.PolyesterFiller || m == b.EpoxyFiller {
		s.Kind = b.Fill
	}
	for _, edit := range edits {
		edit(&s)
	}
	return s
}

func waxed(s *b.Step) { s.Layer.IsWaxed = true }

func patched(s *b.Step) { s.Layer.HasTestPatch = true }

func after(t unit.Time) func(*b.Step) { return func(s *b.Step) { s.Wait = t } }

func window(from, to unit.Time) func(*b.Step) {
	return func(s *b.Step) { s.Layer.RecoatFrom, s.Layer.RecoatTo = from, to }
}

func sandTo(grit int, edits ...func(*b.Step)) b.Step {
	s := b.Step{Kind: b.Sand, Grit: grit}
	for _, edit := range edits {
		edit(&s)
	}
	return s
}

var wash = b.Step{Kind: b.Wash}

// at gives the findings of a step, by rule.
func at(list []b.Finding, step int, rule b.Key) []b.Finding {
	var found []b.Finding
	for _, f := range list {
		if f.Step == step && f.Rule == rule {
			found = append(found, f)
		}
	}
	return found
}

func worst(list []b.Finding) b.Severity {
	w := b.Severity(-1)
	for _, f := range list {
		w = max(w, f.Severity)
	}
	return w
}

func TestAnUnwaxedCoatFollowsWhileTackyElseSanded(t *testing.T) {
	base := b.Base{Ground: b.Laminate, IsSanded: true, Grit: 120}
	first := put(b.Polyester, window(unit.Hour, 24*unit.Hour))
	for _, c := range []struct {
		steps []b.Step
		want  b.Severity
		fix   b.Fix
	}{
		{[]b.Step{first, put(b.Polyester, waxed, after(3*unit.Hour))}, -1, ""},
		{[]b.Step{first, put(b.Polyester, waxed, after(unit.Hour/2))}, b.Refuse, b.WaitLonger},
		{[]b.Step{first, put(b.Polyester, waxed, after(30*unit.Hour))}, b.Refuse, b.SandFirst},
		{[]b.Step{first, put(b.Polyester, waxed)}, b.Note, b.SandFirst},
	} {
		found := at(b.Check(base, c.steps), 1, b.OnGround)
		assert.Equal(t, c.want, worst(found), c.steps[1].Wait)
		if c.fix != "" {
			assert.Equal(t, c.fix, found[0].Fix)
		}
	}
	late := b.Check(base, []b.Step{first, sandTo(180, after(30*unit.Hour)), put(b.Polyester, waxed, after(unit.Hour))})
	assert.Empty(t, at(late, 2, b.OnGround), "sanded")
	assert.Len(t, at(late, 0, b.OpenCoat), 1, "but then the first should have had wax")
}

func TestAPolyesterCoatLeftOpenOrSandedIsWaxedOrUnderFilm(t *testing.T) {
	base := b.Base{Ground: b.Laminate, IsSanded: true, Grit: 120}
	underFilm := func(s *b.Step) { s.Layer.IsUnderFilm = true }
	goes := func(s *b.Step) { s.Rounds, s.Film = 2, sand(60, 0.4).Film }
	for name, c := range map[string]struct {
		steps []b.Step
		want  int
	}{
		"open":           {[]b.Step{put(b.Polyester)}, 1},
		"waxed":          {[]b.Step{put(b.Polyester, waxed)}, 0},
		"under film":     {[]b.Step{put(b.VinylEster, underFilm)}, 0},
		"sanded":         {[]b.Step{put(b.VinylEster), sandTo(220)}, 1},
		"washed, sanded": {[]b.Step{put(b.Polyester), wash, sandTo(220)}, 1},
		"covered":        {[]b.Step{put(b.Polyester), put(b.Polyester, waxed)}, 0},
		"goes":           {[]b.Step{put(b.Polyester, goes), put(b.Polyester, waxed)}, 1},
		"epoxy":          {[]b.Step{put(b.Epoxy)}, 0},
		"filler":         {[]b.Step{put(b.PolyesterFiller), sandTo(80)}, 0},
	} {
		assert.Len(t, at(b.Check(base, c.steps), 0, b.OpenCoat), c.want, name)
	}
}

func TestAWaxedCoatIsSandedBeforeTheNext(t *testing.T) {
	base := b.Base{Ground: b.Laminate, IsSanded: true, Grit: 120}
	found := at(b.Check(base, []b.Step{put(b.Polyester, waxed), put(b.Polyester, waxed)}), 1, b.OnGround)
	assert.Equal(t, b.Refuse, worst(found))
	assert.Equal(t, b.WaxedCoat, found[0].Ground)
	found = at(b.Check(base, []b.Step{put(b.Polyester, waxed), sandTo(220), wash, put(b.Polyester, waxed)}), 3, b.OnGround)
	assert.Empty(t, found)
	found = at(b.Check(base, []b.Step{put(b.Polyester, waxed), sandTo(400), wash, put(b.Polyester, waxed)}), 3, b.OnGround)
	assert.Equal(t, b.Ask, worst(found))
	assert.Equal(t, []float64{400, 240}, []float64{found[0].Got, found[0].Limit})
}

func TestEpoxyCuresBeforePolyester(t *testing.T) {
	base := b.Base{Ground: b.BareWood}
	steps := func(wait unit.Time, edits ...func(*b.Step)) []b.Step {
		return []b.Step{put(b.Epoxy), wash, sandTo(120, after(wait)), put(b.Polyester, append(edits, waxed, after(unit.Hour))...)}
	}
	young := steps(2*unit.Day, patched)
	young[1].Wait = unit.Hour
	found := at(b.Check(base, young), 3, b.OnGround)
	assert.Equal(t, b.Refuse, worst(found))
	assert.InDelta(t, 7, unit.InDay.From(found[0].Limit), 1e-9)
	cured := steps(8*unit.Day, patched)
	cured[1].Wait = unit.Hour
	assert.Empty(t, at(b.Check(base, cured), 3, b.OnGround))
	unsaid := steps(0, patched)
	found = at(b.Check(base, unsaid), 3, b.OnGround)
	assert.Equal(t, b.Refuse, worst(found), "an age that isn't said is no age")
	assert.True(t, found[0].IsUnknown)
	untried := steps(8 * unit.Day)
	untried[1].Wait = unit.Hour
	found = at(b.Check(base, untried), 3, b.OnGround)
	require.Len(t, found, 1)
	assert.Equal(t, b.LogTestPatch, found[0].Fix)
}

func TestLimitsOfACoat(t *testing.T) {
	base := b.Base{Ground: b.Laminate, IsSanded: true, Grit: 120}
	layer := b.Layer{
		Material: b.Polyester, IsWaxed: true,
		Wet: 400e-6, WetLeast: 300e-6, WetMost: 410e-6,
		Thinner: 0.04, ThinnerAsk: 0.05, ThinnerMost: 0.0725, Wax: 0.02,
	}
	for name, c := range map[string]struct {
		edit func(*b.Layer)
		rule b.Key
		want b.Severity
		fix  b.Fix
	}{
		"all well":       {func(*b.Layer) {}, b.WetFilm, -1, ""},
		"at the most":    {func(l *b.Layer) { l.Wet = 410e-6 }, b.WetFilm, -1, ""},
		"too thick":      {func(l *b.Layer) { l.Wet = 450e-6 }, b.WetFilm, b.Refuse, b.MoreCoats},
		"too thin":       {func(l *b.Layer) { l.Wet = 250e-6 }, b.WetFilm, b.Refuse, b.FewerCoats},
		"not said":       {func(l *b.Layer) { l.Wet = 0 }, b.WetFilm, -1, ""},
		"much thinner":   {func(l *b.Layer) { l.Thinner = 0.06 }, b.Thinning, b.Ask, b.LessThinner},
		"too much":       {func(l *b.Layer) { l.Thinner = 0.08 }, b.Thinning, b.Refuse, b.LessThinner},
		"at the limit":   {func(l *b.Layer) { l.Thinner = 0.05 }, b.Thinning, -1, ""},
		"little wax":     {func(l *b.Layer) { l.Wax = 0.005 }, b.Waxing, b.Ask, b.OtherWax},
		"much wax":       {func(l *b.Layer) { l.Wax = 0.035 }, b.Waxing, b.Ask, b.OtherWax},
		"too much wax":   {func(l *b.Layer) { l.Wax = 0.041 }, b.Waxing, b.Refuse, b.OtherWax},
		"wax in no coat": {func(l *b.Layer) { l.IsWaxed, l.Wax = false, 0.09 }, b.Waxing, -1, ""},
	} {
		l := layer
		c.edit(&l)
		found := at(b.Check(base, []b.Step{{Kind: b.Coat, Layer: l}}), 0, c.rule)
		assert.Equal(t, c.want, worst(found), name)
		if c.fix != "" {
			assert.Equal(t, c.fix, found[0].Fix, name)
			assert.NotNil(t, found[0].Scale, name)
		}
	}
}

func TestSandedNoSoonerThanItBears(t *testing.T) {
	base := b.Base{Ground: b.Laminate, IsSanded: true, Grit: 120}
	steps := func(wait unit.Time) []b.Step {
		return []b.Step{put(b.Polyester, waxed, func(s *b.Step) { s.Layer.SandingFrom = unit.Day }), sandTo(220, after(wait))}
	}
	assert.Len(t, at(b.Check(base, steps(10*unit.Hour)), 1, b.SandSoon), 1)
	assert.Empty(t, at(b.Check(base, steps(25*unit.Hour)), 1, b.SandSoon))
	assert.Empty(t, at(b.Check(base, steps(0)), 1, b.SandSoon), "not said")
}

// The foredeck of the launch Tern as it should be: faired in epoxy, primed, and
// a two-pack topcoat in two coats. Nothing is red.
func TestAnOrderlyBuildUpHasNothingRed(t *testing.T) {
	base := b.Base{Ground: b.Laminate, IsSanded: true, Grit: 80, Age: 30 * unit.Day}
	steps := []b.Step{
		put(b.EpoxyFiller), sandTo(80, after(unit.Day)),
		put(b.Epoxy, after(unit.Hour), window(6*unit.Hour, 7*unit.Day)), put(b.Epoxy, after(8*unit.Hour), window(6*unit.Hour, 7*unit.Day)),
		sandTo(220, after(unit.Day)), wash,
		put(b.TwoPack, after(unit.Hour), window(16*unit.Hour, 48*unit.Hour)), put(b.TwoPack, after(20*unit.Hour), window(16*unit.Hour, 48*unit.Hour)),
	}
	assert.Less(t, worst(b.Check(base, steps)), b.Refuse)
	steps[7].Wait = 3 * unit.Day
	assert.Equal(t, b.SandFirst, at(b.Check(base, steps), 7, b.OnGround)[0].Fix, "past its window")
}

func TestShortfalls(t *testing.T) {
	rules := func(steps []b.Step) (list []b.Key) {
		on := terms(0.05, 0)
		points, err := b.Walk(steps, on)
		require.NoError(t, err)
		for _, f := range b.Shortfalls(steps, points, on) {
			list = append(list, f.Rule)
		}
		return list
	}
	limited := func(film, most float64) b.Step {
		s := coat(film, 0.1)
		s.Layer.CuredMost = micrometres(most).Value
		return s
	}
	assert.Empty(t, rules([]b.Step{limited(800, 640), leaving(sand(177, 0.2), 400, 250)}))
	assert.Equal(t, []b.Key{b.CrackLimit}, rules([]b.Step{limited(900, 640), sand(177, 0.2)}), "too thick left")
	assert.Equal(t, []b.Key{b.MeanLeft}, rules([]b.Step{limited(500, 640), leaving(sand(177, 0.2), 400, 0)}))
	assert.Equal(t, []b.Key{b.ThinLeft}, rules([]b.Step{coat(640, 0.25), leaving(sand(177, 0.2), 400, 250)}))
	assert.Equal(t, []b.Key{b.GoThrough}, rules([]b.Step{coat(320, 0.25), sand(177, 0.4), sand(1, 0.4)}), "said once")
	topcoat := limited(90, 200)
	topcoat.Film.NewLayer = true
	assert.Equal(t, []b.Key{b.CrackLimit}, rules([]b.Step{limited(500, 400), topcoat}), "each layer by itself")
	assert.Empty(t, rules([]b.Step{limited(500, 640), {Kind: b.Fill}, limited(500, 640)}))
}
