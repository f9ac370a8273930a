package schedule_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/unit"
)

// By hand: masked at 10:00 for the flow coat, off by 10:00 three days on. The gel
// coat is masked afresh and comes off after its second coat, three days from its
// first. Where the surface gets to 40 °C it is one day.
func TestMaskingComesOffInTime(t *testing.T) {
	_, s := scheduled(t, jobtest.Doc(t, topside, still("20 °C")), 10*h)
	require.Len(t, s.Works, 6)
	flow, first, second := s.Works[0], s.Works[2], s.Works[3]
	assert.InDelta(t, float64(82*h), float64(flow.Masking.Off), 1)
	assert.True(t, flow.Masking.IsLast)
	assert.False(t, flow.Masking.IsHot)
	require.Equal(t, plan.LayCoat, second.Kind)
	assert.False(t, first.Masking.IsLast)
	assert.True(t, second.Masking.IsLast)
	assert.InDelta(t, float64(first.From+72*h), float64(second.Masking.Off), 1)
	assert.Zero(t, s.Works[1].Masking.Off, "sanding needs none")

	short := jobtest.Doc(t, topside, still("20 °C")).Set("card.tape.kept-on", "0.05")
	_, s = scheduled(t, short, 10*h)
	assert.True(t, s.Works[3].Masking.IsLate, "masked afresh for the second coat, an hour on")

	hot := jobtest.Doc(t, topside, "day.today.low = 24 °C\nday.today.high = 32 °C\nday.today.read-temp = 28 °C\nday.today.read-humidity = 50 %\nday.today.sunrise = 6:00\nday.today.date = 1\nday.today.read-at = 10:00\nday.today.sun = sun\nday.today.colour = dark\ncard.flowcoat.surface-most = 60 °C\ncard.gelcoat.surface-most = 60 °C")
	_, s = scheduled(t, hot, 8*h)
	require.NotEmpty(t, s.Works, "%v %v", s.Waiting, s.Stopped)
	for _, w := range s.Works {
		if w.Kind == plan.LayCoat {
			assert.True(t, w.Masking.IsHot)
			assert.InDelta(t, float64(w.From+24*h), float64(w.Masking.Off), 1)
			break
		}
	}
	require.NotEmpty(t, s.Works)
}

// Masking that stays on just until the second coat is done needn't be put on afresh; one that bakes on a
// minute before that is. Two coats of half an hour and their cups, and the hour between them.
func TestMaskingThatJustLasts(t *testing.T) {
	d := jobtest.Doc(t, topside, still("20 °C"))
	_, s := scheduled(t, d, 10*h)
	minutes := float64((s.Works[3].To - s.Works[2].From) / unit.Minute)
	require.Greater(t, minutes, 30.+60+30)
	for short, isLate := range map[float64]bool{0: false, 1: true} {
		_, s := scheduled(t, d.Set("card.tape.kept-on", fmt.Sprintf("%v min", minutes-short)), 10*h)
		assert.Equal(t, isLate, s.Works[3].Masking.IsLate, "%v min", minutes-short)
		assert.Equal(t, isLate, s.Works[2].Masking.IsLast)
	}
}

// Each session is masked by itself: a coat that is sanded back before the next round is the last of its own,
// and what comes after is off by three days from its own first coat.
func TestEachSessionIsMaskedByItself(t *testing.T) {
	d := jobtest.Doc(t, topside, still("20 °C"), "buildup.1.step = 3\nbuildup.1.step.3.goes = 2\nbuildup.1.step.3.go-takes = 100 µm")
	_, s := scheduled(t, d, 10*h)
	sessions, first := 0, unit.Time(0)
	for i, w := range s.Works {
		if w.Kind != plan.LayCoat {
			continue
		}
		if i == 0 || s.Works[i-1].Kind == plan.SandLayer {
			sessions, first = sessions+1, w.From
		}
		assert.InDelta(t, float64(first+72*h), float64(w.Masking.Off), 1, "work %d", i)
		assert.Equal(t, s.Works[i+1].Kind != plan.LayCoat, w.Masking.IsLast, "work %d", i)
	}
	assert.Equal(t, 2, sessions)
}

// How long the tape says: three days, one from 40 °C on, the lesser where a builder typed more for the
// heat than for the cool. Of a day without its readings nobody knows that it is hot.
func TestHowLongATapeStaysOn(t *testing.T) {
	for _, c := range []struct {
		name, at, line string
		days           float64
		isHot          bool
	}{
		{"cool", "39 °C", "", 3, false},
		{"at 40 °C", "40 °C", "", 1, true},
		{"hot", "41 °C", "", 1, true},
		{"typed longer for heat", "41 °C", "card.tape.kept-on-heat = 5", 3, true},
		{"typed shorter", "41 °C", "card.tape.kept-on = 0.5", 0.5, true},
		{"a day that isn't known", "", "", 3, false},
	} {
		d := jobtest.Doc(t, c.line)
		if c.at != "" {
			d = jobtest.Doc(t, c.line, still(c.at))
		}
		p := plan.Make(d)
		require.Empty(t, p.Refused())
		now := bench.Now{Hour: 10 * h, Date: "1"}
		b := bench.Make(&p, now)
		day := today(&b.Air, now)
		require.Equal(t, c.at != "", day.Known)
		on, isHot := schedule.MaskingKept(&p.Job, &day)
		assert.InDelta(t, c.days, float64(on/unit.Day), 1e-9, c.name)
		assert.Equal(t, c.isHot, isHot, c.name)
	}
}
