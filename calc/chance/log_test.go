package chance_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
)

// By hand: 10 m² × 400 µm ÷ (1 − 0.05) = 4.2105 L of mix; at the density of
// flow coat with 2 % wax solution (1.25 and 0.91 kg/L: t = 0.02 × 1.25 ÷ 0.91 =
// 0.02747, (1.25 + 0.02747 × 0.91) ÷ 1.02747 = 1.2409 kg/L) 5.2249 kg. The styrene
// card stands for the wax solution: 0.906 kg/L, 1.2408.
func TestShareOfAStep(t *testing.T) {
	p := plan.Make(jobtest.Doc(t, rolled))
	require.Empty(t, p.Refused())
	planned, film, each, known := p.PlannedOn(flowStep, []string{"surface.1"})
	require.True(t, known)
	assert.InDelta(t, 0.6*5.2249, float64(planned), 0.002)
	assert.InDelta(t, 0.6*5.2249*0.95, float64(film), 0.002)
	assert.InDelta(t, 400e-6, float64(each), 1e-12)
	all, _, _, _ := p.PlannedOn(flowStep, []string{"surface.1", "surface.2"})
	assert.InDelta(t, 5.2249, float64(all), 0.002)
	_, _, _, known = p.PlannedOn(flowStep, []string{"surface.9"})
	assert.False(t, known)
}

// With the first half done, 4 of 10 m² are left: 0.4 of the need. Two cups of
// 500 g on the other half, 100 g and the usual 15 g left over, since the roller
// is wet from the cup before, have put on 400 + 485 g of its 2.09 kg:
// r = 0.4 − 0.885 ÷ 5.2249 = 0.2306.
func TestProgressByHand(t *testing.T) {
	whole := orderedNeed(t, plan.Make(jobtest.Doc(t, rolled)), "flowcoat")
	half := jobtest.Doc(t, rolled, "done = 1\ndone.1.step = "+flowStep+"\ndone.1.surface = surface.1")
	p := plan.Make(half)
	step, _ := p.StepAt(flowStep)
	assert.Equal(t, []string{"surface.1"}, step.Progress.Done)
	assert.Equal(t, []string{"surface.2"}, step.Progress.Open)
	assert.InDelta(t, 0.4, float64(step.Progress.Rest.Value), 1e-12)
	assert.InDelta(t, 0.4*whole, orderedNeed(t, p, "flowcoat"), 1e-9)

	cups := jobtest.Doc(t, rolled, "done = 1\ndone.1.step = "+flowStep+"\ndone.1.surface = surface.1\ndone.1.cups = cup.1",
		"cup = 1 2 3\ncup.1.mixed = 500 g\ncup.1.card = flowcoat\ncup.1.step = "+flowStep+"\ncup.1.in = 100\ncup.1.end = spread\ncup.1.method = nap-roller",
		"cup.2.mixed = 500 g\ncup.2.card = flowcoat\ncup.2.step = "+flowStep+"\ncup.2.in = 200\ncup.2.end = spread\ncup.2.method = nap-roller\ncup.2.left = 100 g",
		"cup.3.mixed = 500 g\ncup.3.card = flowcoat\ncup.3.step = "+flowStep+"\ncup.3.in = 300\ncup.3.method = nap-roller")
	p = plan.Make(cups)
	step, _ = p.StepAt(flowStep)
	assert.Equal(t, []string{"cup.2"}, step.Progress.Cups, "the first belongs to what is done, the third still runs")
	assert.InDelta(t, 0.885, float64(step.Progress.PutOn.Value), 1e-9)
	assert.InDelta(t, 0.2306, float64(step.Progress.Rest.Value), 2e-4)
	assert.InDelta(t, float64(step.Progress.Rest.Value)*whole, orderedNeed(t, p, "flowcoat"), 1e-9)
	sim, err := chance.Simulate(&p, chance.OrderOf(&p))
	require.NoError(t, err)
	for !sim.Step(1 << 20) {
	}
	for _, l := range sim.Order().Lines {
		if l.Card.Key == "flowcoat" {
			assert.Less(t, l.Confidence.Low, orderedNeed(t, p, "flowcoat"))
			assert.Greater(t, l.Confidence.High, orderedNeed(t, p, "flowcoat"))
			assert.Less(t, l.Confidence.High, whole)
		}
	}

	done := plan.Make(jobtest.Doc(t, rolled, "done = 1\ndone.1.step = "+flowStep+"\ndone.1.surface = surface.1 surface.2"))
	assert.Zero(t, orderedNeed(t, done, "flowcoat"))
	for _, l := range chance.OrderOf(&done).Lines {
		assert.True(t, l.ToBuy.IsZero(), l.Card.Key)
	}
}

// A cup that was scrapped before it was spread put nothing on, one that was spread
// all but what stays in it, one of which 120 g were weighed back the rest: 500 g
// each. Counted as put on, the scrapped one would leave a cup too few to buy.
func TestAScrappedCupPutsNothingOn(t *testing.T) {
	putOn := func(how string) float64 {
		p := plan.Make(jobtest.Doc(t, rolled, "cup = 1\ncup.1.mixed = 500 g\ncup.1.card = flowcoat\ncup.1.step = "+flowStep+
			"\ncup.1.in = 100\ncup.1.ended = 400\ncup.1.method = nap-roller\n"+how))
		step, _ := p.StepAt(flowStep)
		return float64(step.Progress.PutOn.Value)
	}
	assert.Zero(t, putOn("cup.1.end = scrapped"))
	assert.InDelta(t, 0.38, putOn("cup.1.end = scrapped\ncup.1.left = 120 g"), 1e-9, "weighed back after all")
	assert.InDelta(t, 0.38, putOn("cup.1.end = spread\ncup.1.left = 120 g"), 1e-9)
	assert.Greater(t, putOn("cup.1.end = spread"), 0.4)
}

// What is typed in the log can't be less than zero, nor absurdly large.
func TestTypedInTheLog(t *testing.T) {
	d := jobtest.Doc(t, "cup = 1\ncup.1.mixed = 500 g\ncup.1.in = 100\ncup.1.end = spread\ndone = 1\ndone.1.step = "+flowStep)
	for path, texts := range map[string][]string{
		"cup.1.left": {"-5 g", "25 kg", "some"}, "cup.1.gel": {"-3 min", "2 days and a bit"}, "cup.1.covered": {"-1 m²", "0 m²"},
		"done.1.used": {"-1 kg", "0 kg", "1e9 kg"}, "done.1.temp": {"-300 °C"},
	} {
		for _, text := range texts {
			p := plan.Make(d.Set(path, text))
			assert.Error(t, p.RefusedAt(path), "%s = %s", path, text)
		}
	}
}

func TestLogsThatCantBe(t *testing.T) {
	good := jobtest.Doc(t, "cup = 1\ncup.1.mixed = 500 g\ncup.1.weighed = 1780000000")
	assert.Empty(t, job.LogProblems(good))
	assert.InDelta(t, 1.78e9, job.Latest(good), 1)
	for path, text := range map[string]string{"cup.1.mixed": "-5 g", "cup.1.weighed": "-1", "cup.1.in": "later", "done.1.planned": "-1 kg"} {
		assert.NotEmpty(t, job.LogProblems(good.Set("done", "1").Set(path, text)), path)
	}
}
