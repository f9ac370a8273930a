package schedule_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/unit"
)

// still is a shed of one temperature all day, sunrise at six.
func still(temp string) string {
	return "day.today.low = " + temp + "\nday.today.high = " + temp + "\nday.today.read-temp = " + temp + "\nday.today.read-humidity = 50 %\nday.today.sunrise = 6:00\nday.today.read-at = 10:00\nday.today.date = 1"
}

func scheduled(t *testing.T, d job.Document, hour unit.Time) (plan.Plan, schedule.Schedule) {
	t.Helper()
	p := plan.Make(d)
	require.Empty(t, p.Refused())
	now := bench.Now{Hour: hour, Date: "1"}
	b := bench.Make(&p, now)
	return p, schedule.Make(&p, today(&b.Air, now))
}

// topside is 9 m² rolled with a flow coat, sanded, rolled with two coats of gel
// coat, sanded and polished.
const topside = `surface = 1
surface.1.shape = direct
surface.1.area = 9 m²
surface.1.buildup = buildup.1
buildup = 1
buildup.1.step = 1 2 3 4
buildup.1.step.1.kind = coat
buildup.1.step.1.card = flowcoat
buildup.1.step.1.method = nap-roller
buildup.1.step.1.film = 400 µm
buildup.1.step.2.kind = sand
buildup.1.step.2.taken = 100 µm
buildup.1.step.3.kind = coat
buildup.1.step.3.card = gelcoat
buildup.1.step.3.method = nap-roller
buildup.1.step.3.film = 700 µm
buildup.1.step.3.coats = 2
buildup.1.step.4.kind = polish
buildup.1.step.4.card = compound
buildup.1.step.4.taken = 5 µm
`

const h = unit.Hour

// By hand, at 20 °C from 10:00, hours of work 8 to 18: a coat takes 9 m² ÷ 0.3
// m² a minute = 30 min and 1.5 min for each cup; its sanding waits 24 h, and takes
// 9 ÷ 3 = 3 h; gel coat follows at once, its second coat after 1 h; polishing
// waits 72 h, launching 7 days.
func TestScheduleByHand(t *testing.T) {
	p, s := scheduled(t, jobtest.Doc(t, topside, still("20 °C")), 10*h)
	require.Empty(t, s.Waiting)
	require.Empty(t, s.Stopped)
	require.Len(t, s.Works, 6)
	flow, _ := p.StepAt("buildup.1.step.1")
	gel, _ := p.StepAt("buildup.1.step.3")
	takes := func(s *plan.Step, n float64) unit.Time {
		cups := float64(s.Cups.Count.Value) / n
		return 30*unit.Minute + 1.5*unit.Minute*unit.Time(int(cups+0.999))
	}
	at := 10 * h
	check := func(i int, kind plan.WorkKind, from, to unit.Time) {
		t.Helper()
		w := s.Works[i]
		assert.Equal(t, kind, w.Kind)
		assert.InDelta(t, float64(from/h), float64(w.From/h), 1e-6)
		assert.InDelta(t, float64(to/h), float64(w.To/h), 1e-6)
		assert.False(t, w.NeedsKey)
	}
	assert.Equal(t, [2]int{1, 2}, [2]int{s.Works[2].Which, s.Works[2].Of})
	assert.Equal(t, [2]int{2, 2}, [2]int{s.Works[3].Which, s.Works[3].Of})
	check(0, plan.LayCoat, at, at+takes(flow, 1))
	assert.InDelta(t, 18., float64(s.Works[0].StopBy/h), 1e-6, "the working day ends before dark, and no dew comes")
	laid := at + takes(flow, 1)
	check(1, plan.SandLayer, laid+24*h, laid+27*h)
	at = laid + 27*h
	check(2, plan.LayCoat, at, at+takes(gel, 2))
	at += takes(gel, 2) + h
	check(3, plan.LayCoat, at, at+takes(gel, 2))
	laid = at + takes(gel, 2)
	from := laid + 72*h // in the afternoon of the fifth day: what is left after 18:00 is done from 8:00 on the next
	require.Greater(t, float64(from), float64(4*unit.Day+15*h))
	check(4, plan.PolishLayer, from, 5*unit.Day+8*h+3*h-(4*unit.Day+18*h-from))
	check(5, plan.Launch, laid+7*unit.Day, laid+7*unit.Day)
	assert.Equal(t, []int{0, 1, 4, 8}, s.Days())
}

func TestOutsideTheWindow(t *testing.T) {
	late := jobtest.Doc(t, topside, still("20 °C")).Set("buildup.1.step", "3 5").Set("buildup.1.step.5.kind", "coat").Set("buildup.1.step.5.card", "gelcoat").
		Set("buildup.1.step.5.method", "nap-roller").Set("buildup.1.step.5.film", "400 µm").Set("buildup.1.step.5.wait", "30 h")
	_, s := scheduled(t, late, 8*h)
	require.GreaterOrEqual(t, len(s.Works), 3)
	last := s.Works[2]
	assert.True(t, last.NeedsKey, "30 h after a coat whose window is 24 h")
	assert.InDelta(t, float64((s.Works[1].To+24*h)/h), float64(last.Closed/h), 1e-6)
	_, s = scheduled(t, late.Set("buildup.1.step.5.wait", "20 h"), 8*h)
	assert.False(t, s.Works[2].NeedsKey)

	waxed := jobtest.Doc(t, topside, still("20 °C")).Set("buildup.1.step", "1 3")
	_, s = scheduled(t, waxed, 8*h)
	assert.True(t, s.Works[1].NeedsKey, "a waxed coat is always sanded first")
	assert.GreaterOrEqual(t, float64(s.Works[1].From), float64(s.Works[0].To+24*h))

	_, s = scheduled(t, jobtest.Doc(t, topside, still("12 °C")), 8*h)
	assert.Empty(t, s.Works, "colder than the card takes")
	require.Len(t, s.Stopped, 1)
	assert.ErrorIs(t, s.Stopped[0].Err, schedule.ErrNoWindow)
	cold := jobtest.Doc(t, topside, still("8 °C")).Set("card.flowcoat.surface-least", "5 °C").Set("buildup.1.step", "1 2")
	_, s = scheduled(t, cold, 8*h)
	require.Len(t, s.Works, 1)
	require.Len(t, s.Stopped, 1)
	assert.ErrorIs(t, s.Stopped[0].Err, schedule.ErrNeverCures)
	assert.Equal(t, "buildup.1.step.2", s.Stopped[0].Step.Path, "the work that can't be done, not the last")

	_, s = scheduled(t, jobtest.Doc(t, topside), 8*h)
	assert.NotEmpty(t, s.Waiting, "no day, no calendar")
}

// A window closes as fast as its layer cures: its 24 h at 20 °C are √2 times as many at
// 15 °C, √0.6 at 25, and a sixth of them over 30 °C, as in hot sun. A coat on a layer that has closed doesn't hold. Source: common
// practice; between, the straight line of the logarithm is ours.
func TestAWindowClosesSoonerInTheWarm(t *testing.T) {
	for temp, k := range map[string]float64{"10 °C": 2, "15 °C": 1.4142135624, "20 °C": 1, "25 °C": 0.7745966692, "30 °C": 0.6, "34 °C": 1. / 6} {
		d := jobtest.Doc(t, topside, still(temp), "day.today.work-from = 0:00\nday.today.work-to = 24:00",
			"buildup.1.step = 1 3\nbuildup.1.step.1.card = gelcoat\nbuildup.1.step.3.coats = 1\nbuildup.1.step.3.film = 400 µm\nbuildup.1.step.3.wait = 90 h\ncard.gelcoat.recoat-to = 24 h",
			"card.gelcoat.surface-least = 5 °C\ncard.gelcoat.surface-most = 40 °C")
		_, s := scheduled(t, d, 10*h)
		require.GreaterOrEqual(t, len(s.Works), 2, temp)
		assert.True(t, s.Works[1].NeedsKey, temp)
		assert.InEpsilon(t, 24*k, float64((s.Works[1].Closed-s.Works[0].To)/h), 1e-6, temp)
	}
}

// A coat ends before the evening's dew, and what is begun too late waits for
// tomorrow.
func TestDewEndsTheDay(t *testing.T) {
	damp := "day.today.low = 15 °C\nday.today.high = 24 °C\nday.today.read-temp = 24 °C\nday.today.read-humidity = 70 %\nday.today.sunrise = 6:00\nday.today.read-at = 15:00\nday.today.date = 1"
	d := jobtest.Doc(t, topside, damp)
	_, s := scheduled(t, d, 12*h)
	require.NotEmpty(t, s.Works)
	first := s.Works[0]
	require.Less(t, float64(first.StopBy), float64(18*h), "18.2 °C dew point: by evening the surface lies within 3 °C of it")
	require.NotEmpty(t, first.Closing)
	assert.InDelta(t, float64(first.StopBy-(first.To-first.From)), float64(first.BeginBy), 1)
	_, s = scheduled(t, d, first.BeginBy+unit.Minute)
	assert.GreaterOrEqual(t, float64(s.Works[0].From), float64(unit.Day), "too late today")
}

// Without a day there is no calendar, only what it waits for.
func TestWithoutADayThereIsNoCalendar(t *testing.T) {
	p := plan.Make(jobtest.Doc(t, topside, still("20 °C")))
	now := bench.Now{Hour: 10 * h, Date: "1"}
	b := bench.Make(&p, now)
	unknown := today(&b.Air, now)
	require.True(t, unknown.Known)
	unknown.Known, unknown.Waiting = false, []string{"day.today.low"}
	s := schedule.Make(&p, unknown)
	assert.Empty(t, s.Works)
	assert.Equal(t, []string{"day.today.low"}, s.Waiting)
}

// A coat that comes after the window of an unsanded layer needs a key, which is cut
// once the layer is hard enough: by the figures that the builder typed. Laid 20 h ago,
// with a window of 12 h; it can be sanded after 22 h: in two.
func TestALayerWhoseWindowIsOverIsSandedFirst(t *testing.T) {
	d := jobtest.Doc(t, topside, still("20 °C"), "done = 1\ndone.1.step = buildup.1.step.1\ndone.1.surface = surface.1\ndone.1.at = 928000",
		"buildup.1.step.1.card = gelcoat\nbuildup.1.step = 1 3\ncard.gelcoat.recoat-to = 12 h\ncard.gelcoat.sand-from = 22 h")
	_, s := scheduled(t, d, 10*h)
	require.NotEmpty(t, s.Works)
	first := s.Works[0]
	assert.True(t, first.NeedsKey)
	assert.InDelta(t, 10-20+12, float64(first.Closed/h), 1e-6, "when the window closed")
	assert.InDelta(t, 10-20+22, float64(first.From/h), 1e-6, "hard enough to be sanded")
	_, s = scheduled(t, d.Set("card.gelcoat.recoat-to", "21.5 h"), 10*h)
	assert.False(t, s.Works[0].NeedsKey)
	assert.InDelta(t, 10, float64(s.Works[0].From/h), 1e-6)
}

// Whatever the job, works stand in the order of time, never overlap, never lie in the
// past, and coats lie inside their hours.
func TestSchedulesAreSane(t *testing.T) {
	for seed := range uint64(40) {
		d := random(seed)
		for _, l := range jobtest.Doc(t, still("21 °C")).Lines() {
			d = d.Set(l.Path, l.Text)
		}
		p := plan.Make(d)
		now := bench.Now{Hour: 9 * h, Date: "1"}
		b := bench.Make(&p, now)
		s := schedule.Make(&p, today(&b.Air, now))
		free, before := now.Hour, now.Hour
		for _, w := range s.Works {
			require.GreaterOrEqual(t, float64(w.From), float64(before), "seed %d", seed)
			before = w.From
			require.GreaterOrEqual(t, float64(w.To), float64(w.From))
			require.GreaterOrEqual(t, float64(w.From), float64(now.Hour))
			if w.Kind == plan.Launch {
				continue
			}
			require.GreaterOrEqual(t, float64(w.From), float64(free)-1e-3, "seed %d: one pair of hands", seed)
			free = w.To
			if w.StopBy > 0 {
				require.LessOrEqual(t, float64(w.To), float64(w.StopBy)+1e-3)
			}
		}
	}
}

// Two hulls' worth of work and one pair of hands: while one coat is laid nothing is
// done to the other surface, and the wait of one is used for the other.
func TestTwoSurfacesShareOnePairOfHands(t *testing.T) {
	d := jobtest.Doc(t, topside)
	d, other := d.Copy("surface.1")
	d, build := d.Copy("buildup.1")
	d = d.Set(other+".buildup", build)
	for _, l := range jobtest.Doc(t, still("21 °C")).Lines() {
		d = d.Set(l.Path, l.Text)
	}
	_, alone := scheduled(t, d.Remove(other), 8*h)
	p, s := scheduled(t, d, 8*h)
	require.Len(t, p.Buildups(), 2)
	require.Equal(t, 2*len(alone.Works), len(s.Works), "the same work on each")
	turns, last := 0, ""
	for i, w := range s.Works {
		for _, other := range s.Works[:i] {
			if w.Kind != plan.Launch && other.Kind != plan.Launch {
				require.True(t, w.From >= other.To-1e-3 || other.From >= w.To-1e-3, "%v to %v h and %v to %v h", w.From/h, w.To/h, other.From/h, other.To/h)
			}
		}
		if _, b := p.StepAt(w.Step.Path); b.Path != last {
			turns, last = turns+1, b.Path
		}
	}
	assert.Greater(t, turns, 2, "one is gone on with while the other cures")
}

// Work goes on from the hour of work or from sunrise, whichever is later, to the
// end of work or to dark, whichever is earlier: nobody coats by a torch. Sunrise at
// six has sunset at eighteen.
func TestWorkEndsWithTheHoursOrTheLight(t *testing.T) {
	for _, c := range []struct {
		from, to    string
		begins, end float64
	}{
		{"", "", 8, 18}, {"7:00", "12:00", 7, 12}, {"4:00", "23:00", 6, 18}, {"10:00", "24:00", 10, 18}, {"9:00", "17:30", 9, 17.5}, {"9:00", "", 9, 18}, {"", "12:00", 8, 12},
	} {
		d := jobtest.Doc(t, topside, still("20 °C")).Set("day.today.work-from", c.from).Set("day.today.work-to", c.to)
		_, s := scheduled(t, d, h)
		require.NotEmpty(t, s.Works, "%s to %s", c.from, c.to)
		first := s.Works[0]
		assert.InDelta(t, c.begins, float64(first.From/h), 1e-6, "%s to %s", c.from, c.to)
		assert.InDelta(t, c.end, float64(first.StopBy/h), 1e-6, "%s to %s", c.from, c.to)
		assert.InDelta(t, c.end*60-float64((first.To-first.From)/unit.Minute), float64(first.BeginBy/unit.Minute), 1e-6)
	}
}

func random(seed uint64) job.Document { return jobtest.New(seed).Document() }

func today(a *bench.Air, now bench.Now) schedule.Today {
	return schedule.Today{Waiting: a.Waiting, Known: a.Known && a.Err == nil, Day: a.Day, Surface: a.Surface, Hour: now.Hour, Unix: 1e6}
}

// A work lies on the day that its hour is of, in the afternoon as in the morning, and one
// of yesterday on the day before today.
func TestAWorkLiesOnItsDay(t *testing.T) {
	for from, want := range map[float64]int{0: 0, 8: 0, 15: 0, 23.9: 0, 24: 1, 39: 1, 71: 2, -1: -1, -15: -1} {
		w := schedule.Work{From: unit.Time(from) * h, To: unit.Time(from+12) * h}
		assert.Equal(t, want, w.Day(), "%v h", from)
		late := schedule.Work{To: w.From}
		assert.Equal(t, want, late.LastDay(), "%v h", from)
	}
	s := schedule.Schedule{Works: []schedule.Work{{From: 15 * h}, {From: 16 * h}, {From: 39 * h}, {From: 60 * h}}}
	assert.Equal(t, []int{0, 1, 2}, s.Days())
}

// A long work that just fills its last day ends with it: 60 m² at 3 m² an hour are 20 h,
// two days from 8 to 18, and not 8 on the third.
func TestAWorkThatFillsItsDaysEndsWithThem(t *testing.T) {
	d := jobtest.Doc(t, topside, still("20 °C"), "surface.1.area = 60 m²\nbuildup.1.step = 1 2\nday.today.sunrise = 5:00\ndone = 1\ndone.1.step = buildup.1.step.1\ndone.1.surface = surface.1\ndone.1.at = 100000")
	_, s := scheduled(t, d, 8*h)
	require.NotEmpty(t, s.Works)
	w := s.Works[0]
	require.Equal(t, plan.SandLayer, w.Kind)
	assert.InDelta(t, 8, float64(w.From/h), 1e-6)
	assert.InDelta(t, 24+18, float64(w.To/h), 1e-6)
}
