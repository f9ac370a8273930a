package schedule_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/material"
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

// How long the tape says: three days, one from 40 °C on, the lesser where a builder typed more for the
// heat than for the cool. A tape that says nothing of heat stays on as long in it, one that says
// nothing at all, and none, are not known; nor is a hot day without its readings.
func TestHowLongATapeStaysOn(t *testing.T) {
	hot, cool := 41., 39.
	kept := func(at float64, changes func(tape *job.Card, d *schedule.Today), lines ...string) (unit.Time, bool, bool) {
		p := plan.Make(jobtest.Doc(t, append(lines, still(fmt.Sprintf("%v °C", at)))...))
		require.Empty(t, p.Refused())
		now := bench.Now{Hour: 10 * h, Date: "1"}
		b := bench.Make(&p, now)
		day, tape := today(&b.Air, now), *p.Job.CardByKey("tape")
		if changes != nil {
			changes(&tape, &day)
		}
		return schedule.MaskingKept(&tape, &day)
	}
	for _, c := range []struct {
		name         string
		at           float64
		changes      func(tape *job.Card, d *schedule.Today)
		lines        []string
		days         float64
		isHot, known bool
	}{
		{"cool", cool, nil, nil, 3, false, true},
		{"at 40 °C", 40, nil, nil, 1, true, true},
		{"hot", hot, nil, nil, 1, true, true},
		{"typed longer for heat", hot, nil, []string{"card.tape.kept-on-heat = 5"}, 3, true, true},
		{"typed shorter", hot, nil, []string{"card.tape.kept-on = 0.5"}, 0.5, true, true},
		{"nothing of heat", hot, func(tape *job.Card, _ *schedule.Today) { tape.KeptOnHeat = material.Spec[unit.Time]{} }, nil, 3, true, true},
		{"nothing at all", hot, func(tape *job.Card, _ *schedule.Today) { tape.KeptOn = material.Spec[unit.Time]{} }, nil, 0, false, false},
		{"a day that isn't known", hot, func(_ *job.Card, d *schedule.Today) { d.Known = false }, nil, 3, false, true},
	} {
		on, isHot, known := kept(c.at, c.changes, c.lines...)
		assert.InDelta(t, c.days, float64(on/unit.Day), 1e-9, c.name)
		assert.Equal(t, c.isHot, isHot, c.name)
		assert.Equal(t, c.known, known, c.name)
	}
	_, _, known := schedule.MaskingKept(nil, &schedule.Today{})
	assert.False(t, known)
}
