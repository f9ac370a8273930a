package schedule_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/unit"
)

// Waits last 0.6 of the time at 30 °C, and between by a straight line of their
// logarithm: at 25 °C √0.6.
func TestWaitsFollowTheTemperature(t *testing.T) {
	for temp, k := range map[string]float64{"20 °C": 1, "25 °C": 0.7745966692, "30 °C": 0.6, "15 °C": 1.4142135624} {
		_, s := scheduled(t, jobtest.Doc(t, topside, still(temp)).Set("day.today.work-from", "0:00").Set("day.today.work-to", "24:00"), 10*h)
		require.NotEmpty(t, s.Works, temp)
		launch := s.Works[len(s.Works)-1]
		require.Equal(t, plan.Launch, launch.Kind)
		var laid unit.Time
		for _, w := range s.Works {
			if w.Kind == plan.LayCoat {
				laid = w.To
			}
		}
		assert.InEpsilon(t, 7*24*k, float64((launch.From-laid)/h), 1e-6, temp)
	}
}

// A wait that this weather would end only in years is none that ends: a day with ten
// minutes or so at 10 °C never cures what takes 400 h at 20.
func TestAWaitOfYearsNeverEnds(t *testing.T) {
	d := jobtest.Doc(t, topside, "day.today.low = 2\nday.today.high = 10.01\nday.today.read-temp = 4\nday.today.read-humidity = 50 %\nday.today.sunrise = 6:00\nday.today.read-at = 10:00\nday.today.date = 1",
		"card.gelcoat.surface-least = 1 °C", "buildup.1.step = 3 2\nbuildup.1.step.3.coats = 1\nbuildup.1.step.3.film = 400 µm\ncard.gelcoat.sand-from = 400 h",
		"done = 1\ndone.1.step = buildup.1.step.3\ndone.1.surface = surface.1\ndone.1.at = 928000")
	_, s := scheduled(t, d, 10*h)
	require.NotEmpty(t, s.Stopped, "%v", s.Works)
	assert.ErrorIs(t, s.Stopped[0].Err, schedule.ErrNeverCures)
}

// A filler that the log says is done goes on curing since, as a coat does: what comes
// next waits for its hours.
func TestAFillerThatIsDoneIsWaitedFor(t *testing.T) {
	filled := jobtest.Doc(t, topside, still("20 °C")).Set("buildup.1.step", "1 3").Set("buildup.1.step.1.kind", "fill").Set("buildup.1.step.1.card", "epoxy-filler").
		Set("buildup.1.step.1.thickness", "4 mm").Set("buildup.1.step.1.film", "").Set("buildup.1.step.3.card", "primer").Set("buildup.1.step.3.film", "150 µm").Set("buildup.1.step.3.coats", "").
		Set("card.epoxy-filler.recoat-from", "6 h").Set("done", "1").Set("done.1.step", "buildup.1.step.1").Set("done.1.surface", "surface.1").Set("done.1.at", "992800") // 1e6 − 2 h
	_, s := scheduled(t, filled, 9*h)
	require.NotEmpty(t, s.Works, "%v", s.Stopped)
	assert.InDelta(t, 13., float64(s.Works[0].From/h), 1e-6, "four of its six hours are left")
}

// Each work waits for the figure that the layer below has for it, as the builder
// typed it: here other hours for each, so that none can stand for another.
func TestEachWorkWaitsAsTheCardSays(t *testing.T) {
	d := jobtest.Doc(t, topside, still("20 °C"),
		"card.gelcoat.recoat-from = 1.25 h\ncard.gelcoat.sand-from = 1.5 h\ncard.gelcoat.polish-from = 2.5 h\ncard.gelcoat.launch-from = 3 d\ncard.gelcoat.recoat-to = 9 h")
	d = d.Set("surface.1.area", "1 m²").Set("buildup.1.step", "3 2 4").Set("buildup.1.step.2.taken", "30 µm")
	_, s := scheduled(t, d, 9*h)
	kinds := []plan.WorkKind{plan.LayCoat, plan.LayCoat, plan.SandLayer, plan.PolishLayer, plan.Launch}
	require.Len(t, s.Works, len(kinds))
	laid := s.Works[1].To
	for i, want := range []unit.Time{0, s.Works[0].To + 1.25*h, laid + 1.5*h, laid + 2.5*h, laid + 72*h} {
		assert.Equal(t, kinds[i], s.Works[i].Kind)
		if i > 0 {
			assert.InDelta(t, float64(want/h), float64(s.Works[i].From/h), 1e-6, "work %d", i)
		}
	}
	hard := d.Set("card.gelcoat.sand-from", "3.5 h")
	_, s = scheduled(t, hard, 9*h)
	assert.InDelta(t, float64((s.Works[1].To+3.5*h)/h), float64(s.Works[2].From/h), 1e-6)
	assert.GreaterOrEqual(t, s.Works[3].From, s.Works[2].To, "no polish before it can be sanded")

	filled := d.Set("buildup.1.step", "3").Set("buildup.1.step.3.kind", "fill").Set("buildup.1.step.3.card", "epoxy-filler").Set("buildup.1.step.3.thickness", "12 mm").
		Set("card.epoxy-filler.recoat-from", "1.75 h").Set("card.epoxy-filler.sand-from", "1 h").Set("buildup.1.step.3.film", "").Set("buildup.1.step.3.coats", "")
	_, s = scheduled(t, filled, 9*h)
	require.Equal(t, plan.LayFiller, s.Works[0].Kind)
	next := 1
	for s.Works[next].Kind != plan.LayFiller {
		next++
	}
	assert.InDelta(t, float64((s.Works[0].To+1.75*h)/h), float64(s.Works[next].From/h), 0.35, "the second pass, and its sanding before it")
	assert.GreaterOrEqual(t, s.Works[next].From, s.Works[0].To+1.75*h)
}

// What the log says is done goes on curing since: laid 20 h ago, it is sanded
// in 4 h.
func TestScheduleGoesOnFromTheLog(t *testing.T) {
	d := jobtest.Doc(t, topside, still("20 °C"), "done = 1\ndone.1.step = buildup.1.step.1\ndone.1.surface = surface.1\ndone.1.at = 928000") // 1e6 − 20 h
	_, s := scheduled(t, d, 10*h)
	require.NotEmpty(t, s.Works)
	assert.Equal(t, plan.SandLayer, s.Works[0].Kind)
	assert.InDelta(t, 14., float64(s.Works[0].From/h), 1e-6)
	_, s = scheduled(t, d.Set("done.1.at", ""), 10*h)
	require.NotEmpty(t, s.Works)
	assert.InDelta(t, 34., float64(s.Works[0].From/h), 1e-6, "nobody noted when: it may have been laid just now")
}

// What a builder waits for of his own is waited for on a layer that asks for nothing, and on none; where
// it never ends nothing is begun. At 30 °C it lasts 0.6 of the time.
func TestATypedWaitIsAWait(t *testing.T) {
	soon := "card.gelcoat.recoat-from = 0 h\ncard.gelcoat.surface-least = 5 °C\nbuildup.1.step.3.wait = 5 h"
	for name, lines := range map[string]string{"on a layer": laidGel, "on none": "buildup.1.step = 3"} {
		for temp, from := range map[string]float64{"20 °C": 15, "30 °C": 13, "9 °C": 0} {
			p, s := scheduled(t, jobtest.Doc(t, topside, still(temp), lines, soon), 10*h)
			if from > 0 {
				require.NotEmpty(t, s.Works, "%s, %s: %v", name, temp, s.Stopped)
				assert.InDelta(t, from, float64(s.Works[0].From/h), 1e-6, "%s, %s", name, temp)
				continue
			}
			assert.Empty(t, s.Works, name)
			gel, _ := p.StepAt("buildup.1.step.3")
			assert.Equal(t, []schedule.Stop{{Step: gel, Err: schedule.ErrNeverCures}}, s.Stopped, name)
		}
	}
}

// Under the open sky a part lies 5 °C colder by night than the air, and cures as much slower: at 20 °C its
// nights count 0.7071 of their hours (k = √2 at 15 °C), its days all. By hand, laid at 17:57, a launch
// after 24 h: 3 min, 12 h × 0.7071, 12 h, and of the second night 3.4647 ÷ 0.7071 = 4.8998 h.
func TestAWaitThroughTheNightOfTheOpenSky(t *testing.T) {
	open := jobtest.Doc(t, topside, still("20 °C"), "day.today.sun = sun\nbuildup.1.step = 1\ncard.flowcoat.launch-from = 1 d",
		"done = 1\ndone.1.step = buildup.1.step.1\ndone.1.surface = surface.1\ndone.1.at = 999820")
	_, s := scheduled(t, open, 18*h)
	require.Len(t, s.Works, 1, "%v", s.Stopped)
	assert.InDelta(t, 24+18+4.8998, float64(s.Works[0].From/h), 1e-4)
}

// A day gains as many hours at 20 °C every day: a wait that is a whole number of them ends at the hour at
// which it began, and each day more than a wait is its gain more. At 25 °C a day's gain is 24 ÷ √0.6 h;
// in frost nothing is gained, and a wait for nothing is over at once.
func TestAWaitOfWholeDays(t *testing.T) {
	launched := func(temp, launch string) []schedule.Work {
		_, s := scheduled(t, jobtest.Doc(t, topside, still(temp), "buildup.1.step = 1\ndone = 1\ndone.1.step = buildup.1.step.1\ndone.1.surface = surface.1\ndone.1.at = 1000000",
			"card.flowcoat.launch-from = "+launch), 10*h)
		return s.Works
	}
	for launch, days := range map[string]float64{"1.290994449 d": 1, "2.581988897 d": 2, "38.72983346 d": 30, "1.2 h": 0.0387298335, "32.183 h": 1.03870, "0 h": 0} {
		w := launched("25 °C", launch)
		require.Len(t, w, 1, launch)
		assert.InDelta(t, 10+24*days, float64(w[0].From/h), 1e-3, launch)
	}
	w := launched("9 °C", "0 h")
	require.Len(t, w, 1)
	assert.InDelta(t, 10, float64(w[0].From/h), 1e-9)
	assert.Empty(t, launched("9 °C", "1 h"))
}

// A typed wait is counted from the end of the work before it: a coat 5 h after a sanding of 3 h, which the log
// of the layer below doesn't shorten.
func TestATypedWaitBeginsWithTheEndOfTheWorkBefore(t *testing.T) {
	_, s := scheduled(t, jobtest.Doc(t, topside, still("20 °C"), "day.today.work-to = 24:00\nday.today.sunrise = 0:00\nbuildup.1.step.3.wait = 5 h"), 8*h)
	require.Equal(t, plan.SandLayer, s.Works[1].Kind)
	require.InDelta(t, 3, float64((s.Works[1].To-s.Works[1].From)/h), 1e-6)
	assert.InDelta(t, float64((s.Works[1].To+5*h)/h), float64(s.Works[2].From/h), 1e-6)
}

// What the log says is sanded takes the next coat without another key, long after its window.
func TestALayerThatIsSandedByTheLogNeedsNoKey(t *testing.T) {
	done := "done = 1 2\ndone.1.step = buildup.1.step.1\ndone.1.surface = surface.1\ndone.1.at = 100000\ndone.2.step = buildup.1.step.2\ndone.2.surface = surface.1\ndone.2.at = 900000"
	_, s := scheduled(t, jobtest.Doc(t, topside, still("20 °C"), done), 10*h)
	require.NotEmpty(t, s.Works)
	require.Equal(t, plan.LayCoat, s.Works[0].Kind)
	assert.False(t, s.Works[0].NeedsKey)
}
