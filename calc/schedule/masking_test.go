package schedule_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
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
