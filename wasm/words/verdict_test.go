package words_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/air"
	"shedreckoner/calc/bench"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/words"
)

// plainly writes a text with plain spaces.
func plainly(text string) string {
	return strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace(text)
}

func celsius(t float64) unit.Temperature { return unit.Temperature(unit.InCelsius.SI(t)) }

func clock(hour, minute float64) unit.Time { return unit.Time(hour*3600 + minute*60) }

// american gives units with degrees Fahrenheit.
func american() job.Units {
	j, _ := job.Read(job.SetSystem(job.Document{}, true))
	return j.Units
}

// Each verdict says what was found and what it is held against, never the one for the other, by its subject and its kind; a
// later one says from when. Differences of temperature, 3 °C or 5.4 °F, are no temperatures. Worked here.
func TestEachVerdictSaysWhatWasFoundAndItsLimit(t *testing.T) {
	deg := func(c float64) float64 { return float64(celsius(c)) }
	kelvin, warm, share := unit.InCelsiusDifference, unit.InCelsius, unit.InPercent
	for _, c := range []struct {
		v           bench.Verdict
		first, rest string
	}{
		{bench.Verdict{Subject: bench.Dew, Kind: bench.Holds, Value: 4.19, Limit: 3, Scale: kelvin}, "No dew:", "surface 4.1 °C above the dew point."},
		{bench.Verdict{Subject: bench.Dew, Kind: bench.Holds, At: clock(21, 5), Value: 4, Limit: 3, Scale: kelvin}, "No dew until 21:05:", "surface 4 °C above the dew point."},
		{bench.Verdict{Subject: bench.Dew, Kind: bench.Asks, Value: 3.2, Limit: 3, Scale: kelvin}, "Dew is near:", "surface 3.2 °C above the dew point. Read it again before you spread."},
		{bench.Verdict{Subject: bench.Dew, Kind: bench.Stops, Value: 2.99, Limit: 3, Scale: kelvin}, "Too near the dew point:", "surface only 2.9 °C above the dew point; it must be 3 °C above."},
		{bench.Verdict{Subject: bench.Dew, Kind: bench.Stops, Value: -1, Limit: 3, Scale: kelvin}, "Too near the dew point:", "surface 1 °C below the dew point; it must be 3 °C above."},
		{bench.Verdict{Subject: bench.Dew, Kind: bench.Stops, IsLater: true, At: clock(20, 0), CupsBefore: 1, Value: 2, Limit: 3, Scale: kelvin}, "Dew from 20:00:", "by today's curve surface only 2 °C above the dew point; it must be 3 °C above. One such cup fits in before then."},
		{bench.Verdict{Subject: bench.Dew, Kind: bench.NotChecked}, "Dew not checked:", words.ReadTheAir},

		{bench.Verdict{Subject: bench.ColdEvening, Kind: bench.Holds, Value: deg(17), Limit: deg(15), Scale: warm}, "Warm enough:", "17 °C at the coldest; the cure needs 15 °C."},
		{bench.Verdict{Subject: bench.ColdEvening, Kind: bench.Holds, IsAssumed: true, Value: deg(17), Limit: deg(15), Scale: warm}, "Warm enough:", "taken to fall to 17 °C at the coldest; the cure needs 15 °C."},
		{bench.Verdict{Subject: bench.ColdEvening, Kind: bench.Asks, Value: deg(16), Limit: deg(15), Scale: warm}, "How cold will it get?", "The surface is near the card's lowest, 15 °C: type the coldest it will be."},
		{bench.Verdict{Subject: bench.ColdEvening, Kind: bench.Stops, Value: deg(12), Limit: deg(15), Scale: warm}, "Too cold for the cure:", "12 °C at the coldest; the cure needs 15 °C."},
		{bench.Verdict{Subject: bench.ColdEvening, Kind: bench.Stops, IsLater: true, At: clock(23, 30), CupsBefore: 2, Value: deg(12), Limit: deg(15), Scale: warm}, "Too cold from 23:30:", "by today's curve 12 °C at the coldest; the cure needs 15 °C. 2 such cups fit in before then."},
		{bench.Verdict{Subject: bench.ColdEvening, Kind: bench.NotChecked, Scale: warm}, "Evening not checked:", "type today's lowest air."},

		{bench.Verdict{Subject: bench.Humidity, Kind: bench.Holds, Value: 0.6, Limit: 0.8, Scale: share}, "Humidity 60 %:", "inside what the card takes."},
		{bench.Verdict{Subject: bench.Humidity, Kind: bench.Stops, Value: 0.85, Limit: 0.8, Scale: share}, "Air too damp:", "85 % humidity; the card takes up to 80 %."},
		{bench.Verdict{Subject: bench.Humidity, Kind: bench.Stops, Value: 0.2, Limit: 0.3, Scale: share}, "Air too dry:", "20 % humidity; the card takes 30 % at least."},
		{bench.Verdict{Subject: bench.Humidity, Kind: bench.Stops, IsLater: true, At: clock(19, 0), Value: 0.85, Limit: 0.8, Scale: share}, "Air too damp from 19:00:", "85 % humidity; the card takes up to 80 %. Not one such cup fits in before then."},
		{bench.Verdict{Subject: bench.Humidity, Kind: bench.NotChecked}, "Humidity not checked:", words.ReadTheAir},

		{bench.Verdict{Subject: bench.Explosive, Kind: bench.Holds}, "Not in a closed space:", "if it is, say how much air it holds."},
		{bench.Verdict{Subject: bench.Explosive, Kind: bench.Holds, Value: 0.05}, "Vapour:", "5 % of the explosive limit in the closed space. No clearance: the limit for the lungs is far lower."},
		{bench.Verdict{Subject: bench.Explosive, Kind: bench.Asks}, "How large is the closed space?", "Its vapour can be worked out then."},
		{bench.Verdict{Subject: bench.Explosive, Kind: bench.Asks, Value: 0.2}, "Hazardous space:", "20 % of the explosive limit in the closed space. Not without forced air at the lowest point and a second person outside."},
		{bench.Verdict{Subject: bench.Explosive, Kind: bench.Stops, Value: 1.2}, "Over the explosive limit:", "120 % of the explosive limit in the closed space. Don't."},
		{bench.Verdict{Subject: bench.Explosive, Kind: bench.NotChecked}, "Closed space not checked:", "type how much air it holds."},

		{bench.Verdict{Subject: bench.Apart, Kind: bench.Holds, Limit: 15, Scale: kelvin}, "Product and surface:", "at the same temperature."},
		{bench.Verdict{Subject: bench.Apart, Kind: bench.Holds, Value: -4, Limit: 15, Scale: kelvin}, "Product and surface:", "they differ by 4 °C."},
		{bench.Verdict{Subject: bench.Apart, Kind: bench.Stops, Value: 16, Limit: 15, Scale: kelvin}, "Product against surface:", "they differ by 16 °C, at most 15 °C."},
		{bench.Verdict{Subject: bench.Apart, Kind: bench.NotChecked, Scale: kelvin}, "Product not read:", "taken as warm as the surface."},

		{bench.Verdict{Subject: bench.Fire, Kind: bench.Asks, Value: deg(33), Limit: deg(30), Scale: warm}, "From 30 °C styrene vapour burns:", "no flame, no spark, no unvented heater."},
		{bench.Verdict{Subject: bench.Heat, Kind: bench.Holds, Value: deg(22), Limit: deg(35), Scale: warm}, "Surface 22 °C:", "inside what the card takes."},
		{bench.Verdict{Subject: bench.Readings, Kind: bench.Asks, At: clock(9, 7)}, "Surface read at 9:07:", "over two hours ago. Read it again."},
		{bench.Verdict{Subject: bench.Film, Kind: bench.Stops}, "Check the build-up for this coat:", "see what it says."},
	} {
		first, rest := words.Verdict(c.v, "", job.Units{})
		assert.Equal(t, c.first, plainly(first), "%+v", c.v)
		assert.Equal(t, c.rest, plainly(rest), "%+v", c.v)
		_, told := words.Verdict(c.v, "the sums' own reason.", job.Units{})
		assert.Equal(t, c.v.Kind == bench.Stops, strings.HasPrefix(told, "the sums' own reason."), "the reason of a stop, and of nothing else: %+v", c.v)
	}
	stop := bench.Verdict{Subject: bench.Heat, Kind: bench.Stops, Value: deg(38), Limit: deg(35), Scale: warm}
	first, rest := words.Verdict(stop, "The surface is at 38 °C.", job.Units{})
	assert.Equal(t, "Outside what the card takes: The surface is at 38 °C.", first+" "+rest)

	dew := bench.Verdict{Subject: bench.Dew, Kind: bench.Stops, Value: 2, Limit: 3, Scale: kelvin}
	_, rest = words.Verdict(dew, "", american())
	assert.Equal(t, "surface only 3.6 °F above the dew point; it must be 5.4 °F above.", plainly(rest), "a difference in the job's own degrees")
	fire := bench.Verdict{Subject: bench.Fire, Limit: deg(30), Scale: warm}
	first, _ = words.Verdict(fire, "", american())
	assert.Equal(t, "From 86 °F styrene vapour burns:", plainly(first))
}

// What holds is said in one line: of a cup that is fit to coat by when the dew comes, and what that takes to hold; beside something
// else in the order of the verdicts, without what a dial says.
func TestWhatHoldsIsSaidInOneLine(t *testing.T) {
	list := []bench.Verdict{{Subject: bench.Dew, At: clock(20, 0)}, {Subject: bench.ColdEvening, Value: float64(celsius(16)), Limit: float64(celsius(15)), Scale: unit.InCelsius},
		{Subject: bench.Humidity, Value: 0.62, Limit: 0.8}, {Subject: bench.Heat, Value: 1}, {Subject: bench.Explosive}}
	first, rest := words.Held(list, true, job.Units{})
	assert.Equal(t, "Fit to coat until 20:00.", first+" "+plainly(rest))
	first, rest = words.Held(list, false, job.Units{})
	assert.Equal(t, "Holds: no dew until 20:00, 16 °C at the coldest, humidity 62 %, not in a closed space.", first+" "+plainly(rest))
	list[0].At, list[1].IsAssumed = 0, true
	first, rest = words.Held(list, true, job.Units{})
	assert.Equal(t, "Fit to coat now, taken to stay over 16 °C.", first+" "+plainly(rest))
	first, rest = words.Held([]bench.Verdict{{Subject: bench.Dew}, {Subject: bench.ColdEvening, IsAssumed: true, Value: float64(celsius(16)), Scale: unit.InCelsius}}, false, job.Units{})
	assert.Equal(t, "Holds: no dew, taken to stay over 16 °C.", first+" "+plainly(rest))
}

// What holds is never rounded up to: 2.99 over the dew point is 2.9, and −0.01 is below it.
func TestOverTheDewPointIsRoundedDown(t *testing.T) {
	for over, want := range map[unit.TemperatureDifference]string{2.99: "2.9 °C", 3: "3 °C", 2.9999999: "2.9 °C", 0.05: "0 °C", -0.01: "−0.1 °C", 10.1: "10.1 °C"} {
		assert.Equal(t, want, plainly(words.OverDew(over, unit.InCelsiusDifference)), "%v", over)
	}
	assert.Equal(t, "Your reading is 4.5 °C off the curve between the day's low and high. Check all three, and the hour.", plainly(words.ReadingOff(-4.5, unit.InCelsiusDifference)))
}

// What brings a dose back says how product and part get there from where they are: cooled, warmed, or nothing; a tin that is
// cooled stays over the dew point.
func TestAWayBackSaysHowToGetThere(t *testing.T) {
	name, small := words.Way(bench.Way{Kind: bench.AtHours, From: clock(8, 0), To: clock(10, 30), Coldest: celsius(18), Warmest: celsius(24)}, celsius(30), celsius(33), job.Units{})
	assert.Equal(t, "From 8:00 to 10:30 / surface 18 °C to 24 °C by today's curve", plainly(name+" / "+small))

	to := func(product, surface float64, hasDew bool) bench.Way {
		w := bench.Way{Kind: bench.AtTemperatures, Product: working.Figure[unit.Temperature]{Value: celsius(product)}, Surface: working.Figure[unit.Temperature]{Value: celsius(surface)}}
		w.DewPoint.Value = celsius(14)
		if hasDew {
			w.DewPoint.Step = &working.Step{}
		}
		return w
	}
	for want, w := range map[string]bench.Way{
		"Product at 20 °C, part at 25 °C / closed tin in cold water, above the dew point of 14 °C · part in the shade": to(20, 25, true),
		"Product at 20 °C, part at 30 °C / closed tin in cold water":                                                   to(20, 30, false),
		"Product at 28 °C, part at 30.04 °C / ":                                                                        to(28, 30.04, true),
		"Product at 30 °C, part at 33 °C / closed tin in a warm room · part warmed through the cure":                   to(30, 33, true),
	} {
		name, small := words.Way(w, celsius(28), celsius(30), job.Units{})
		assert.Equal(t, strings.Replace(want, "30.04", "30", 1), plainly(name+" / "+small))
	}
	name, small = words.Way(bench.Way{Kind: bench.ByTimedTest, UpTo: celsius(40)}, celsius(38), celsius(38), job.Units{})
	assert.Equal(t, "A timed test at this temperature, with the card's least dose / if it leaves two minutes or more to spread, cups at up to 40 °C get a dose today", plainly(name+" / "+small))
}

// Each condition of the air is said with the figure and its limit, in the job's own degrees.
func TestWhyItIsNotFitSaysFigureAndLimit(t *testing.T) {
	deg := func(c float64) float64 { return float64(celsius(c)) }
	for _, c := range []struct {
		f         air.Finding
		want, inF string
	}{
		{air.Finding{Condition: air.TooCold, Value: deg(12), Limit: deg(15)}, "Surface 12 °C, below the card's lowest, 15 °C.", "Surface 53.6 °F, below the card's lowest, 59 °F."},
		{air.Finding{Condition: air.TooHot, Value: deg(37), Limit: deg(35)}, "Surface 37 °C, above the card's highest, 35 °C.", "Surface 98.6 °F, above the card's highest, 95 °F."},
		{air.Finding{Condition: air.TooDry, Value: 0.2, Limit: 0.3}, "Air 20 %, drier than the card's 30 %.", "Air 20 %, drier than the card's 30 %."},
		{air.Finding{Condition: air.TooDamp, Value: 0.9, Limit: 0.8}, "Air 90 %, damper than the card's 80 %.", "Air 90 %, damper than the card's 80 %."},
		{air.Finding{Condition: air.TooNearDew, Value: 1, Limit: 3}, "Surface only 1 °C above the dew point; it must be 3 °C above.", "Surface only 1.8 °F above the dew point; it must be 5.4 °F above."},
	} {
		assert.Equal(t, c.want, plainly(words.FindingSentence(c.f, job.Units{})))
		assert.Equal(t, c.inF, plainly(words.FindingSentence(c.f, american())))
	}
	assert.Equal(t, "Now: surface 12 °C, below.", words.UnfitNow("Surface 12 °C, below."))
	assert.Equal(t, "From 18:00, while it cures: air 90 %.", words.UnfitLater(clock(18, 0), "Air 90 %."))
}

// Hours of the day: none, all of them, or spans.
func TestHoursOfTheDayAreSaid(t *testing.T) {
	span := func(from, to float64) air.Window {
		return air.Window{Interval: air.Interval{From: clock(from, 0), To: clock(to, 0)}}
	}
	for want, list := range map[string][]air.Window{"none": nil, "all day": {span(0, 24)}, "0:00 to 23:00": {span(0, 23)}, "1:00 to midnight": {span(1, 24)},
		"9:00 to 11:00, 14:00 to 16:00": {span(9, 11), span(14, 16)}} {
		assert.Equal(t, want, words.Hours(list))
		assert.Equal(t, "Hours of today for gel coat: "+want+".", words.HoursFor("gel coat", list))
	}
	assert.Equal(t, "Latest start 13:30, stop at 16:00.", words.StartAndStop(clock(13, 30), clock(16, 0)))
	assert.Equal(t, words.NoDoseHour, words.DoseHours(nil))
	assert.Equal(t, "The surface is inside the catalyst table from 8:00 to 10:00, and from 17:00 to midnight.", words.DoseHours([]air.Interval{{From: clock(8, 0), To: clock(10, 0)}, {From: clock(17, 0), To: unit.Day}}))
	assert.Equal(t, "0:30 tomorrow", words.Hour(clock(24, 30)))
}
