package fault_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/fault"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
)

// Every fault has causes, no cause stands twice under one fault, each has its
// source, and the first things to look at are those of the trade (common
// practice: suppliers' pages and builders' logs).
func TestFaultsAreWhole(t *testing.T) {
	seen := map[string]bool{}
	of := map[string][]string{}
	for _, c := range fault.Causes {
		require.False(t, seen[c.Fault+" "+c.Key], "%s %s twice", c.Fault, c.Key)
		seen[c.Fault+" "+c.Key] = true
		of[c.Fault] = append(of[c.Fault], c.Key)
		assert.NotNil(t, c.Source.Document)
		// only what is cold, or short of catalyst within its limits, comes good by waiting:
		// the rest would be waited for in vain
		waits := c.Key == "cold" || c.Key == "under-table"
		assert.Equal(t, waits, c.Waits, "%s: %s", c.Fault, c.Key)
	}
	assert.Len(t, of, len(job.Faults))
	for _, f := range job.Faults {
		assert.NotEmpty(t, of[f.Key], f.Key)
	}
	for fault, keys := range map[string][]string{
		"tacky": {"no-wax", "cold", "under-table", "thin"}, "soft": {"over-dosed", "acetone"}, "wrinkled": {"thin", "half-cured"},
		"pinholes": {"thick", "pressure", "damp", "fast"}, "sag": {"thick", "over-thinned"}, "fish-eyes": {"too-much-wax", "silicone"},
		"print-through": {"post-cure", "dark"}, "chalky": {"settled", "unstirred"},
	} {
		for _, key := range keys {
			assert.Contains(t, of[fault], key)
		}
	}
}

// coldCup is a gel coat cup at 12 °C with 1.6 % (the table starts at 15 °C).
const coldCup = `cup = 1
cup.1.card = gelcoat
cup.1.mixed = 500 g
cup.1.product = 500 g
cup.1.surface-temp = 12 °C
cup.1.air-temp = 14 °C
cup.1.humidity = 60 %
cup.1.share = 1.6 %
cup.1.film = 400 µm
cup.1.in = 1000
cup.1.ended = 2000
cup.1.end = spread
`

func found(t *testing.T, d job.Document, kind string) []fault.Found {
	t.Helper()
	p := plan.Make(d.Set("cup.1.fault", kind))
	require.Empty(t, p.RefusedAt("cup.1.fault"))
	list := fault.Of(&p, &p.Job.Cups[0])
	require.NotEmpty(t, list, kind)
	for i := range list {
		assert.False(t, list[i].IsAgainst() && list[i].IsBorneOut(), "%s: what the log bears out it can't contradict", list[i].Key)
	}
	for i := 1; i < len(list); i++ {
		assert.False(t, list[i].IsBorneOut() && !list[i-1].IsBorneOut(), "borne out comes first")
	}
	return list
}

func borne(list []fault.Found) (keys []string) {
	for _, f := range list {
		if f.IsBorneOut() {
			keys = append(keys, f.Key)
		}
	}
	return keys
}

func TestFaultsAgainstTheLog(t *testing.T) {
	base := jobtest.Doc(t, coldCup)
	for _, c := range []struct {
		name  string
		set   map[string]string
		fault string
		want  []string
	}{
		{"cold, and no wax", nil, "tacky", []string{"cold", "no-wax"}},
		{"warm, with wax", map[string]string{"surface-temp": "20 °C", "share": "1.85 %", "wax": "10 g"}, "tacky", nil},
		{"half the table's dose", map[string]string{"surface-temp": "25 °C", "share": "0.75 %", "wax": "10 g"}, "tacky", []string{"under-table", "under-floor"}},
		{"a scale's error is no cause", map[string]string{"surface-temp": "25 °C", "share": "1.4 %", "wax": "10 g"}, "tacky", nil},
		{"twice the dose", map[string]string{"surface-temp": "25 °C", "share": "3 %"}, "soft", []string{"over-dosed"}},
		{"thin", map[string]string{"film": "200 µm"}, "wrinkled", []string{"thin"}},
		{"thick and damp", map[string]string{"film": "620 µm", "humidity": "90 %", "surface-temp": "20 °C"}, "pinholes", []string{"thick", "damp"}},
		{"thick for a roller", map[string]string{"film": "520 µm", "method": "nap-roller"}, "pinholes", []string{"thick"}},
		{"not for a gun", map[string]string{"film": "520 µm", "method": "gravity-gun"}, "pinholes", nil},
		{"over the dew point by less than 3 °C", map[string]string{"air-temp": "20 °C", "surface-temp": "14 °C"}, "pinholes", []string{"dew"}},
		{"gelled early", map[string]string{"surface-temp": "20 °C", "gel": "6 min", "early": "9 min"}, "pinholes", []string{"fast"}},
		{"thinned by 7 %", map[string]string{"thinner": "35 g"}, "sag", []string{"over-thinned"}},
		{"wax solution 4 %", map[string]string{"wax": "20 g"}, "fish-eyes", []string{"too-much-wax"}},
		{"dark in the sun", map[string]string{"sun": "sun dark"}, "print-through", []string{"dark"}},
		{"white in the sun", map[string]string{"sun": "sun white"}, "print-through", nil},
	} {
		d := base
		for key, text := range c.set {
			d = d.Set("cup.1."+key, text)
		}
		assert.Equal(t, c.want, borne(found(t, d, c.fault)), c.name)
	}
	empty := jobtest.Doc(t, "cup = 1\ncup.1.card = gelcoat\ncup.1.mixed = 500 g")
	for _, f := range job.Faults {
		assert.Empty(t, borne(found(t, empty, f.Key)), "an empty log bears nothing out: %s", f.Key)
	}
}

// A dose is too much where it lies over the card's ceiling, and over the table's by more
// than a tenth where the ceiling leaves so much room: at 15 °C the table has 2.2 %.
func TestADoseOverTableAndCeiling(t *testing.T) {
	for _, c := range []struct {
		ceiling, share string
		isOver         bool
	}{
		{"2.3 %", "2.29 %", false}, {"2.3 %", "2.31 %", true}, {"2.5 %", "2.41 %", false}, {"2.5 %", "2.43 %", true}, {"2.1 %", "2.19 %", false}, {"2.1 %", "2.21 %", true},
	} {
		d := jobtest.Doc(t, coldCup, "card.gelcoat.ceiling = "+c.ceiling).Set("cup.1.surface-temp", "15 °C").Set("cup.1.share", c.share)
		assert.Equal(t, c.isOver, slices.Contains(borne(found(t, d, "soft")), "over-dosed"), "%s under %s", c.share, c.ceiling)
	}
}

func TestFaultsOfOtherCups(t *testing.T) {
	d := jobtest.Doc(t, rolled, coldCup).Set("cup", "1 2").Set("cup.1.tin", "May").Set("cup.1.weighed", "900").Set("cup.1.step", flowStep).Set("cup.1.card", "flowcoat")
	for key, text := range map[string]string{"card": "flowcoat", "mixed": "500 g", "tin": "May", "weighed": "100", "step": flowStep, "in": "-1", "ended": "0"} {
		d = d.Set("cup.2."+key, text)
	}
	assert.Equal(t, []string{"settled"}, borne(found(t, d, "chalky")))
	assert.Empty(t, borne(found(t, d.Set("cup.2.tin", "June"), "chalky")))
	d = d.Set("cup.1.in", "10000").Set("cup.1.ended", "10600").Set("cup.2.in", "6000").Set("cup.2.ended", "7000")
	assert.Equal(t, []string{"half-cured"}, borne(found(t, d, "wrinkled")), "50 min after the coat before, where an hour is the least")
	assert.Empty(t, borne(found(t, d.Set("cup.1.in", "11000"), "wrinkled")))
}

// Only what was taken down speaks against a cause; a film that was planned and
// never read with a comb doesn't.
func TestWhatSpeaksAgainstACause(t *testing.T) {
	against := func(d job.Document, fault string) (keys []string) {
		for _, f := range found(t, d, fault) {
			assert.False(t, f.IsAgainst() && f.IsBorneOut(), f.Key)
			if f.IsAgainst() {
				keys = append(keys, f.Key)
			}
		}
		return keys
	}
	d := jobtest.Doc(t, rolled, coldCup).Set("cup.1.card", "flowcoat").Set("cup.1.step", flowStep).Set("cup.1.surface-temp", "20 °C")
	assert.Equal(t, []string{"damp", "dew"}, against(d, "pinholes"), "400 µm was planned, not read")
	combed := d.Set(flowStep+".comb", "1").Set(flowStep+".comb.1.last-wet", "400 µm").Set(flowStep+".comb.1.first-dry", "425 µm")
	assert.Equal(t, []string{"thick", "damp", "dew"}, against(combed, "pinholes"))
	assert.Empty(t, against(jobtest.Doc(t, "cup = 1\ncup.1.card = gelcoat\ncup.1.mixed = 500 g"), "pinholes"), "an empty log speaks against nothing")
}

// rolled is 10 m² of deck in two halves, a rolled flow coat of 400 µm on each.
const rolled = `surface = 1 2
surface.1.shape = direct
surface.1.area = 6 m²
surface.1.buildup = buildup.1
surface.2.shape = direct
surface.2.area = 4 m²
surface.2.buildup = buildup.1
buildup = 1
buildup.1.step = 1
buildup.1.step.1.kind = coat
buildup.1.step.1.card = flowcoat
buildup.1.step.1.method = nap-roller
buildup.1.step.1.film = 400 µm
buildup.1.step.1.film-is = wet
`

const flowStep = "buildup.1.step.1"
