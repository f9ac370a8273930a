package schedule_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/unit"
)

// onlyFlow is one flow coat and its sanding.
const onlyFlow = "\nbuildup.1.step = 1 2"

// A work that would begin at the end of the hours begins the next morning: 30 m² at 3 m² an hour
// fill a day from 8 to 18, and what comes after them is of the day after.
func TestNothingBeginsAtTheEndOfTheHours(t *testing.T) {
	d := jobtest.Doc(t, topside, still("20 °C"), "surface.1.area = 30 m²\nbuildup.1.step = 1 2 5\nbuildup.1.step.5.kind = sand\nbuildup.1.step.5.taken = 20 µm\nday.today.sunrise = 5:00",
		"done = 1\ndone.1.step = buildup.1.step.1\ndone.1.surface = surface.1\ndone.1.at = 100000")
	_, s := scheduled(t, d, 8*h)
	require.GreaterOrEqual(t, len(s.Works), 2)
	assert.InDelta(t, 18, float64(s.Works[0].To/h), 1e-9)
	assert.InDelta(t, 24+8, float64(s.Works[1].From/h), 1e-9)
}

// A coat longer than the hours of any day is laid in parts, from morning to evening; one that takes just
// as long as they last isn't, and ends with them. By hand: at 0.3 m² a minute and 1.5 min for each cup.
func TestACoatLongerThanADayIsLaidInParts(t *testing.T) {
	coat := func(area, until string) schedule.Work {
		_, s := scheduled(t, jobtest.Doc(t, topside, still("20 °C"), onlyFlow).Set("surface.1.area", area).Set("day.today.work-to", until), 8*h)
		require.NotEmpty(t, s.Works, "%v", s.Stopped)
		require.Equal(t, plan.LayCoat, s.Works[0].Kind)
		return s.Works[0]
	}
	long := coat("200 m²", "18:00") // 11.1 h and its cups
	assert.True(t, long.IsLong)
	assert.InDelta(t, 8, float64(long.From/h), 1e-9)
	assert.Equal(t, 1, long.LastDay())
	assert.Zero(t, long.BeginBy, "what goes on tomorrow needn't be begun by an hour")
	short := coat("100 m²", "18:00")
	assert.False(t, short.IsLong)
	assert.Equal(t, 0, short.LastDay())

	whole := 0
	for area := 9.; area < 36; area += 0.9 {
		takes := coat(fmt.Sprintf("%.1f m²", area), "18:00")
		minutes := float64((takes.To - takes.From) / unit.Minute)
		if minutes != float64(int(minutes)) {
			continue
		}
		just := coat(fmt.Sprintf("%.1f m²", area), fmt.Sprintf("%d:%02d", 8+int(minutes)/60, int(minutes)%60))
		whole++
		assert.False(t, just.IsLong, "%v m²", area)
		assert.InDelta(t, minutes, float64((just.To-8*h)/unit.Minute), 1e-9, "%v m²: it fits", area)
	}
	assert.Positive(t, whole)
}

// Whichever of two surfaces can be begun first is, though it takes until the other could; the one that can't
// go on is told once, and the other is finished.
func TestWhicheverCanBeBegunFirstIs(t *testing.T) {
	d := jobtest.Doc(t, topside, still("20 °C"), onlyFlow)
	d, other := d.Copy("surface.1")
	d, build := d.Copy("buildup.1")
	d = d.Set(other+".buildup", build)
	p, s := scheduled(t, d.Set("buildup.1.step.1.wait", "30 min"), 10*h)
	require.NotEmpty(t, s.Works)
	_, first := p.StepAt(s.Works[0].Step.Path)
	assert.Equal(t, build, first.Path)
	require.Greater(t, float64(s.Works[0].To/h), 10.5)
	assert.InDelta(t, 10, float64(s.Works[0].From/h), 1e-9)

	never := d.Set(build+".step.1.card", "gelcoat").Set("card.gelcoat.surface-least", "25 °C")
	p, s = scheduled(t, never, 10*h)
	assert.Len(t, s.Works, 3, "coat, sanding and launch of the first")
	stopped, _ := p.StepAt(build + ".step.1")
	assert.Equal(t, []schedule.Stop{{Step: stopped, Err: schedule.ErrNoWindow}}, s.Stopped)
}

// Of two surfaces that could both be begun now the first is.
func TestTheFirstOfTwoSurfacesIsBegunFirst(t *testing.T) {
	d := jobtest.Doc(t, topside, still("20 °C"), onlyFlow)
	d, other := d.Copy("surface.1")
	d, build := d.Copy("buildup.1")
	p, s := scheduled(t, d.Set(other+".buildup", build), 10*h)
	require.NotEmpty(t, s.Works)
	_, first := p.StepAt(s.Works[0].Step.Path)
	assert.Equal(t, "buildup.1", first.Path)
}

// A calendar holds 600 works, and says where it ends for that.
func TestACalendarEndsWithItsSixHundredthWork(t *testing.T) {
	d := jobtest.Doc(t, topside, still("20 °C"), onlyFlow).Set("surface.1.area", "1 m²")
	steps := ""
	for n := range 13 { // of 50 coats each
		step := fmt.Sprintf("buildup.1.step.%d", n+1)
		steps += fmt.Sprintf(" %d", n+1)
		for key, text := range map[string]string{"kind": "coat", "card": "gelcoat", "method": "nap-roller", "film": "60 µm", "film-for": "each", "coats": "50", "taken": ""} {
			d = d.Set(step+"."+key, text)
		}
	}
	d = d.Set("buildup.1.step", strings.TrimSpace(steps))
	_, s := scheduled(t, d, 10*h)
	assert.Len(t, s.Works, 600)
	require.NotEmpty(t, s.Stopped)
	assert.ErrorIs(t, s.Stopped[len(s.Stopped)-1].Err, schedule.ErrTooLong)
}

// A boat that ends with its filler is launched too, and filler waits as a coat does for an hour that
// takes it: in the morning for the 16 °C of its card.
func TestFillerWaitsForItsHourAndIsLaunched(t *testing.T) {
	filler := "buildup.1.step = 1\nbuildup.1.step.1.kind = fill\nbuildup.1.step.1.card = polyester-filler\nbuildup.1.step.1.thickness = 2 mm"
	cold := "card.polyester-filler.surface-least = 16 °C\nday.today.low = 8 °C\nday.today.high = 24 °C\nday.today.read-temp = 14 °C\nday.today.read-humidity = 40 %\nday.today.sunrise = 6:00\nday.today.read-at = 9:00\nday.today.date = 1"
	_, s := scheduled(t, jobtest.Doc(t, topside, cold, filler).Set("buildup.1.step.1.film", "").Set("buildup.1.step.1.method", ""), 7*h)
	require.NotEmpty(t, s.Works, "%v", s.Stopped)
	first, last := s.Works[0], s.Works[len(s.Works)-1]
	require.Equal(t, plan.LayFiller, first.Kind)
	assert.Greater(t, float64(first.From/h), 8.5)
	_, warm := scheduled(t, jobtest.Doc(t, topside, still("20 °C"), filler).Set("buildup.1.step.1.film", "").Set("buildup.1.step.1.method", ""), 8*h)
	assert.InDelta(t, 8, float64(warm.Works[0].From/h), 1e-9)
	assert.Equal(t, plan.Launch, last.Kind)
}

// A layer without a window never closes at an hour: it is sanded, and no hour is told. Where today takes no
// coat at all, or the layer never gets hard enough to be sanded, the work stops there, and says which it is.
func TestALayerWithoutAWindowAndADayWithoutAnHour(t *testing.T) {
	done := "\ndone = 1\ndone.1.step = buildup.1.step.1\ndone.1.surface = surface.1\ndone.1.at = 928000\nbuildup.1.step.1.card = gelcoat\nbuildup.1.step = 1 3"
	d := jobtest.Doc(t, topside, still("20 °C"), done)
	p, s := scheduled(t, d.Set("buildup.1.step.1.card", "flowcoat"), 10*h)
	require.NotEmpty(t, s.Works)
	require.Positive(t, float64(p.Job.CardByKey("flowcoat").Wax.Value))
	assert.True(t, s.Works[0].NeedsKey)
	assert.Zero(t, s.Works[0].Closed, "waxed: it never had a window")

	_, s = scheduled(t, d.Set("card.gelcoat.surface-least", "24 °C"), 10*h)
	assert.Empty(t, s.Works)
	require.Len(t, s.Stopped, 1)
	assert.ErrorIs(t, s.Stopped[0].Err, schedule.ErrNoWindow)

	frost := jobtest.Doc(t, topside, still("9 °C"), done, "card.gelcoat.surface-least = 5 °C\ncard.gelcoat.recoat-to = 4 h\ncard.gelcoat.sand-from = 90 h\ncard.gelcoat.recoat-from = 0 h")
	_, s = scheduled(t, frost, 10*h)
	require.NotEmpty(t, s.Stopped, "%+v", s.Works)
	assert.ErrorIs(t, s.Stopped[0].Err, schedule.ErrNeverCures, "under 10 °C nothing gets harder")
}

// Of a tape that says nothing no hour is told; one that bakes on before the second coat comes off after the
// first, and is the last of its session.
func TestMaskingWithoutAndBeyondItsHours(t *testing.T) {
	d := jobtest.Doc(t, topside, still("20 °C"))
	_, s := scheduled(t, d.Set("card.tape.kept-on", "0.05"), 10*h)
	require.True(t, s.Works[3].Masking.IsLate)
	assert.True(t, s.Works[2].Masking.IsLast, "it comes off before it is put on afresh")
	assert.True(t, s.Works[3].Masking.IsLast)
	for _, w := range s.Works {
		assert.Equal(t, w.Kind == plan.LayCoat, w.Masking.Off > 0)
	}
}
