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

// laidGel is a gel coat of 20 h ago, unsanded, and one more on it.
const laidGel = "buildup.1.step.1.card = gelcoat\nbuildup.1.step = 1 3\ndone = 1\ndone.1.step = buildup.1.step.1\ndone.1.surface = surface.1\ndone.1.at = 928000"

// A coat may go on an unsanded layer up to the very end of its window, and without a key at no moment
// after it, nor on a layer that never had a window: there no hour is told, and it waits for the
// sanding even if it could be begun at once. One that never gets hard enough for sanding takes no coat.
func TestAKeyIsCutOutsideOfTheWindow(t *testing.T) {
	filler := "buildup.1.step = 1 2 3\nbuildup.1.step.1.kind = fill\nbuildup.1.step.1.card = polyester-filler\nbuildup.1.step.1.thickness = 2 mm\nbuildup.1.step.2.by = grades\n" + // none typed yet
		"card.polyester-filler.recoat-from = 0 h\ncard.polyester-filler.sand-from = 2 h"
	for _, c := range []struct {
		name, lines  string
		from, closed float64 // h
		key          bool
	}{
		{"as it ends", "card.gelcoat.recoat-to = 20 h\ncard.gelcoat.sand-from = 25 h", 10, 0, false},
		{"a minute on", "card.gelcoat.recoat-to = 1199 min\ncard.gelcoat.sand-from = 25 h", 15, 10 - 1./60, true},
		{"hard by then", "card.gelcoat.recoat-to = 3 h\ncard.gelcoat.sand-from = 3 h", 10, -7, true},
		{"of a flow coat without wax, as it ends", "buildup.1.step.1.card = flowcoat\ncard.flowcoat.wax = 0 %\ncard.flowcoat.recoat-to = 20 h", 10, 0, false},
		{"never had one", filler + "\ndone.1.at = 1000000", 12, 0, true},
	} {
		_, s := scheduled(t, jobtest.Doc(t, topside, still("20 °C"), laidGel, c.lines), 10*h)
		require.NotEmpty(t, s.Works, "%s: %v", c.name, s.Stopped)
		first := s.Works[0]
		require.Equal(t, plan.LayCoat, first.Kind, c.name)
		assert.Equal(t, c.key, first.NeedsKey, c.name)
		assert.InDelta(t, c.closed, float64(first.Closed/h), 1e-9, c.name)
		assert.InDelta(t, c.from, float64(first.From/h), 1e-9, c.name)
	}
	frost := jobtest.Doc(t, topside, still("9 °C"), laidGel, "card.gelcoat.surface-least = 5 °C\ncard.gelcoat.recoat-to = 4 h\ncard.gelcoat.recoat-from = 0 h\ncard.gelcoat.sand-from = 90 h")
	p, s := scheduled(t, frost, 10*h)
	assert.Empty(t, s.Works, "under 10 °C nothing gets harder")
	gel, _ := p.StepAt("buildup.1.step.3")
	assert.Equal(t, []schedule.Stop{{Step: gel, Err: schedule.ErrNeverCures}}, s.Stopped)
}

// An hour that suits the material, but nobody's working hours, is none. By hand: 14 °C at 1:00 and 30 °C
// at 15:00 are 22 °C, this card's most, half way between, at 8:00, and again at 20:00. A coat too long for
// what is left of the morning is laid in the evening; cards whose own limits cross have no hour.
func TestTheHoursOfAHotDay(t *testing.T) {
	day := "day.today.low = 14 °C\nday.today.high = 30 °C\nday.today.read-temp = 22 °C\nday.today.read-humidity = 40 %\nday.today.sunrise = 1:00\nday.today.read-at = 8:00\nday.today.date = 1\ncard.flowcoat.surface-most = 22 °C\ncard.flowcoat.surface-least = 10 °C"
	hot := func(hour unit.Time, from, to string) schedule.Schedule {
		_, s := scheduled(t, jobtest.Doc(t, topside, day).Set("day.today.work-from", from).Set("day.today.work-to", to), hour)
		return s
	}
	for _, c := range []struct{ hour, from, stopBy float64 }{{5, 6, 8}, {7, 7, 8}, {7.5, 20, 22}, {12, 20, 22}, {21.5, 24 + 6, 24 + 8}} {
		s := hot(unit.Time(c.hour)*h, "6:00", "22:00")
		require.NotEmpty(t, s.Works, c.hour)
		assert.InDelta(t, c.from, float64(s.Works[0].From/h), 0.01, "at %v h", c.hour)
		assert.InDelta(t, c.stopBy, float64(s.Works[0].StopBy/h), 0.01, "at %v h", c.hour)
		assert.Equal(t, c.stopBy < 20 || c.stopBy > 24, len(s.Works[0].Closing) > 0, "the evening's hours end with the work")
	}
	for _, never := range []schedule.Schedule{hot(5*h, "9:00", "19:00"), hot(5*h, "8:00", "20:00")} {
		assert.Empty(t, never.Works)
		require.Len(t, never.Stopped, 1)
		assert.ErrorIs(t, never.Stopped[0].Err, schedule.ErrNoWindow)
	}
	p, s := scheduled(t, jobtest.Doc(t, topside, still("20 °C"), "card.gelcoat.surface-least = 30 °C\ncard.gelcoat.surface-most = 10 °C"), 10*h)
	assert.Len(t, s.Works, 2, "the flow coat and its sanding go on")
	gel, _ := p.StepAt("buildup.1.step.3")
	assert.Equal(t, []schedule.Stop{{Step: gel, Err: schedule.ErrNoWindow}}, s.Stopped)
}
