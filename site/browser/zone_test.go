package browser_test

import (
	"strconv"
	"testing"
	"time"
	_ "time/tzdata" // for machines without a table of time zones

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site/webdriver"
)

// On the night on which summer time begins, a cup's hours are those that the phone will show; and another zone moves them,
// and is said. (WebKit's driver sets no time zone; what the border asks of Date is the same there.)
func TestHoursOfACupByThePhonesZone(t *testing.T) {
	berlin, err := time.LoadLocation("Europe/Berlin")
	require.NoError(t, err)
	in := time.Date(2026, 3, 29, 1, 50, 0, 0, berlin) // ten minutes later it is three
	page := servedReal(t)
	inChromium(t, func(t *testing.T, s *webdriver.Session) {
		zone := func(name string) { s.CDP(nil, "Emulation.setTimezoneOverride", map[string]any{"timezoneId": name}) }
		zone("Europe/Berlin")
		s.SetSize(360, 740)
		s.Open(shed(t, page))
		ready(s)
		s.Script(nil, `localStorage.setItem("test.now", arguments[0])`, in.UnixMilli())
		at := strconv.FormatInt(in.Unix(), 10)
		withJob(s, "cup = 1\ncup.1.card = gelcoat\ncup.1.weighed = "+at+"\ncup.1.in = "+at+"\ncup.1.usable = 20 min\ncup.1.early = 30 min\ncup.1.late = 50 min\n")
		goTo(s, "cup")
		assert.Regexp(t, `^3:10\s+stop spreading\s+3:20\s+gels, earliest\s+3:40\s`, shown(s, ".until"))
		pass(s, 15*60)
		assert.Regexp(t, `^3:10\s`, shown(s, ".until"))
		assert.Equal(t, "5:00", shown(s, ".clock .time"))
		assert.NotContains(t, shown(s, "#clock-note"), "phone's")

		zone("Europe/Lisbon")
		pass(s, 0)
		assert.Regexp(t, `^2:10\s`, shown(s, ".until"))
		assert.Equal(t, "5:00", shown(s, ".clock .time"))
		assert.Contains(t, shown(s, "#clock-note"), "changed its time zone")
	})
}
