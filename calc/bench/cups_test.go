package bench_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
)

// A fixed ratio is that of the tin at every temperature, and there are no parts
// while it isn't typed.
func TestAFixedRatioNeverMoves(t *testing.T) {
	missing := benchOf(t, tenOClock, morningWith("bench.now.card = topcoat"))
	assert.False(t, missing.HasParts)
	require.Len(t, missing.Reasons, 1)
	var ratio *cure.RatioError
	require.ErrorAs(t, missing.Reasons[0], &ratio)
	assert.Equal(t, cure.RatioMissing, ratio.Cause)

	usable := map[string]unit.Time{}
	for _, at := range []string{"14", "20", "28"} {
		b := benchOf(t, tenOClock, morningWith("bench.now.card = topcoat", "card.topcoat.ratio-mass = 4", "day.today.read-humidity = 40",
			"bench.now.surface-temp = "+at, "bench.now.product-temp = "+at, "bench.now.amount = 100 g"))
		require.True(t, b.HasParts, "%v %v", b.Reasons, b.Waiting)
		assert.InDelta(t, 0.080, float64(b.Parts.A.Mass.Value), 1e-12, "4 of 5 parts")
		assert.InDelta(t, 0.020, float64(b.Parts.B.Mass.Value), 1e-12, "1 of 5 parts")
		assert.False(t, b.HasDose)
		usable[at] = b.Usable.Value
	}
	assert.Greater(t, usable["14"], usable["20"], "the pot life moves instead")
	assert.Greater(t, usable["20"], usable["28"])
	cold := benchOf(t, tenOClock, morningWith("bench.now.card = topcoat", "card.topcoat.ratio-mass = 4", "bench.now.surface-temp = 5"))
	assert.False(t, cold.HasParts)
}

// A cup for a coat depends on every surface: none is mixed for areas that can't all
// be read.
func TestACoatsCupDependsOnItsSurfaces(t *testing.T) {
	text := morningWith("bench.now.for = step", "bench.now.step = buildup.1.step.1", "surface = 1", "surface.1.length = 2 m", "surface.1.width = 1 m", "surface.1.buildup = buildup.1",
		"buildup = 1", "buildup.1.step = 1", "buildup.1.step.1.kind = coat", "buildup.1.step.1.card = gelcoat", "buildup.1.step.1.method = foam-roller", "buildup.1.step.1.film = 400 µm")
	whole := benchOf(t, tenOClock, text)
	require.True(t, whole.HasDose, "%v %v", whole.Reasons, whole.Waiting)
	require.True(t, whole.HasCups)
	cups := float64(whole.Cups.Count.Value)
	assert.InDelta(t, 0.25, float64(whole.Whole.Value), 1e-12, "the largest of a tin never timed")
	left := 0.025 + float64(material.CupWall(unit.Volume(0.5/1250)).Value)
	assert.InDelta(t, math.Ceil(2*400e-6*1250/0.97/(0.25-left)), cups, 1e-9, "2 m² of 400 µm at 1.25 kg/L, 3 % slung off, leave the cups")
	assert.InEpsilon(t, cups, float64(whole.Vapour.Coat.Value/whole.Vapour.GivenOff.Value), 1e-9, "a coat's styrene leaves within one hour")
	one := benchOf(t, tenOClock, text, "cup = 1", "cup.1.card = gelcoat", "cup.1.mixed = 100 g", "cup.1.in = 1780300000", "cup.1.day = 2026-06-01", "cup.1.step = buildup.1.step.1")
	assert.InEpsilon(t, cups-1, float64(one.Vapour.Coat.Value/one.Vapour.GivenOff.Value), 1e-9, "one is on already")
	for _, line := range []string{"surface.1.width = wide", "surface = 1 2\nsurface.2.length = 1,500\nsurface.2.width = 1\nsurface.2.buildup = buildup.1",
		"buildup.1.step.1.film = thick", "buildup.1.step.1.coats = many"} {
		assert.False(t, benchOf(t, tenOClock, text, line).HasDose, line)
	}
}

// A tin never timed gives half of what the minutes allow, 250 g at most; a timed
// one the card's batch, or what is left of the coat.
func TestTimingATinLiftsTheCup(t *testing.T) {
	text := morningWith("bench.now.for = step", "bench.now.step = buildup.1.step.1", "surface = 1", "surface.1.length = 2 m", "surface.1.width = 1 m", "surface.1.buildup = buildup.1",
		"buildup = 1", "buildup.1.step = 1", "buildup.1.step.1.kind = coat", "buildup.1.step.1.card = gelcoat", "buildup.1.step.1.method = nap-roller", "buildup.1.step.1.film = 400 µm")
	untested := benchOf(t, tenOClock, text)
	require.True(t, untested.HasDose, "%v", untested.Reasons)
	assert.Equal(t, bench.ByUntimedTin, untested.Size.Limits[0].Bound)
	assert.Equal(t, bench.TinSheet, untested.Size.Limits[0].Lifts)
	assert.InDelta(t, 0.25, float64(untested.Whole.Value), 1e-12)
	tested := benchOf(t, tenOClock, text, "test = 1", "test.1.card = gelcoat", "test.1.mass = 100 g", "test.1.temp = 22", "test.1.share = 1.7", "test.1.minutes = 18")
	assert.True(t, tested.HasDose, "%v", tested.Reasons)
	assert.Greater(t, float64(tested.Whole.Value), 0.25)
}
