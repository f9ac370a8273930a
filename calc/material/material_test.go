package material_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/order"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// A figure lies within its own range, carries a mark of how far it can be
// trusted, and could be typed in its field.
func TestEveryFigureLiesInItsRange(t *testing.T) {
	for _, c := range material.Cards {
		for _, f := range material.Fields {
			v := f.Of(c)
			name := c.Key + ", " + f.Key
			if !f.Shown(c) {
				assert.Equal(t, material.Figure{}, v, name)
				continue
			}
			if !v.Known {
				assert.Zero(t, v.Value, name)
				continue
			}
			assert.LessOrEqual(t, v.Low, v.Value, name)
			assert.LessOrEqual(t, v.Value, v.High, name)
			assert.GreaterOrEqual(t, v.Low, f.Min-1e-12, name)
			assert.LessOrEqual(t, v.High, f.Max+1e-12, name)
			assert.NotEqual(t, source.Typed, v.Mark, "%s: nothing that ships was typed", name)
		}
	}
}

// What a putty is mixed of has densities inside their own ranges, a bulk density no
// higher than that of its particles, and is bought by a card that ships. The
// figures are the trade's: kg/L, true and bulk; p published, c common practice, x
// assumption.
func TestPartsOfAPuttyHoldTheTradesFigures(t *testing.T) {
	const p, c, x = source.Published, source.CommonPractice, source.Assumption
	rows := []struct {
		key        string
		true, bulk [3]float64
		mark       source.Mark
	}{
		{"resin", [3]float64{1.15, 1.08, 1.20}, [3]float64{1.15, 1.08, 1.20}, c},
		{"hardener", [3]float64{1.00, 0.94, 1.05}, [3]float64{1.00, 0.94, 1.05}, c},
		{"balloons", [3]float64{0.25, 0.15, 0.60}, [3]float64{0.10, 0.07, 0.35}, p},
		{"silica", [3]float64{2.2, 2.2, 2.3}, [3]float64{0.04, 0.03, 0.05}, p},
		{"other", [3]float64{1.0, 0.8, 4}, [3]float64{1.0, 0.3, 4}, x},
	}
	require.Len(t, material.PuttyParts, len(rows))
	for _, row := range rows {
		part := material.FindPuttyPart(row.key)
		require.Equal(t, row.key, part.Key)
		for _, of := range []struct {
			want [3]float64
			got  material.Spec[unit.Density]
		}{{row.true, part.True}, {row.bulk, part.Bulk}} {
			for i, got := range []unit.Density{of.got.Value, of.got.Low, of.got.High} {
				assert.InDelta(t, of.want[i], unit.InKilogramPerLitre.From(float64(got)), 1e-9, row.key)
			}
			assert.True(t, of.got.Low <= of.got.Value && of.got.Value <= of.got.High, row.key)
			assert.Equal(t, row.mark, of.got.Mark, row.key)
		}
		assert.LessOrEqual(t, part.Bulk.Value, part.True.Value, "%s: a heap is never denser than its grains", row.key)
		card, ships := material.Find(part.Card)
		assert.Equal(t, part.Card != "", ships, row.key)
		if card.Density.Known {
			assert.Equal(t, part.True, card.Density, "%s: bought and mixed at one density", row.key)
		}
	}
	assert.Equal(t, "resin", material.FindPuttyPart("no such part").Key)
}

func TestFieldsAreWritableAndUnique(t *testing.T) {
	seen := map[string]bool{"name": true, "base": true, "stock": true, "note": true, "pack": true, "dose": true, "buy": true, "tick": true}
	for _, f := range material.Fields {
		assert.False(t, seen[f.Key], f.Key)
		seen[f.Key] = true
		assert.Less(t, f.Min, f.Max, f.Key)
		require.NotZero(t, f.Measure, f.Key)
		card := *material.Cards[0]
		f.Put(&card, f.Max)
		assert.Equal(t, material.Figure{Value: f.Max, Low: f.Of(&card).Low, High: f.Of(&card).High, Mark: source.Typed, Known: true}, f.Of(&card))
		for _, other := range material.Fields { // no two entries lead to one place
			if other != f {
				assert.Equal(t, other.Of(material.Cards[0]), other.Of(&card), "%s and %s", f.Key, other.Key)
			}
		}
	}
}

// What a card is put on with as a rule can put it on, and its usual film is
// one that may stay.
func TestUsualMethodsAndFilms(t *testing.T) {
	for _, c := range material.Cards {
		if c.Kind > material.Topcoat {
			assert.Empty(t, c.Methods, c.Key)
			continue
		}
		require.NotEmpty(t, c.Methods, c.Key)
		for i, key := range c.Methods {
			method, found := material.FindMethod(key)
			require.True(t, found, "%s: %s", c.Key, key)
			cured := c.CuredRolled
			if method.IsSpray {
				cured = c.CuredSprayed
			}
			require.True(t, cured.Known, "%s: %s", c.Key, key)
			left := unit.DryFilm(float64(c.UsualFilm.Value) * float64(cured.Value))
			if i == 0 {
				assert.GreaterOrEqual(t, left, c.LeftLeast.Value, c.Key)
				assert.True(t, !c.LeftMost.Known || left <= c.LeftMost.Value, c.Key)
			}
		}
	}
	gelcoat, _ := material.Find("gelcoat")
	assert.NotContains(t, gelcoat.Methods, "foam-roller", "styrene dissolves the foam of a roller")
}

func TestACopyLeavesWhatShipsAlone(t *testing.T) {
	card, found := material.Find("gelcoat")
	require.True(t, found)
	material.Fields[0].Put(&card, 999)
	again, _ := material.Find("gelcoat")
	assert.NotEqual(t, unit.Density(999), again.Density.Value)
	_, found = material.Find("no such card")
	assert.False(t, found)
}

func TestCardsReferToCards(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range material.Cards {
		assert.False(t, seen[c.Key], c.Key)
		seen[c.Key] = true
		assert.NotEmpty(t, c.Name)
		assert.NotContains(t, c.Key, ".", "a key is part of a path")
		assert.Empty(t, strings.Trim(c.Key, "abcdefghijklmnopqrstuvwxyz-"), "never a number: own cards have those")
		refers(t, c, c.Thinner, material.Thinner)
		refers(t, c, c.Hardener, material.Catalyst)
		if c.Thinner != "" {
			assert.True(t, c.ThinnerRefuse.Known && c.ThinnerAsk.Known, c.Key)
			assert.Less(t, c.ThinnerAsk.Value, c.ThinnerRefuse.Value, c.Key)
		}
		if c.Hardener != "" {
			assert.True(t, c.HardenerShare.Known, c.Key)
			hardener, _ := material.Find(c.Hardener)
			assert.Contains(t, c.Families, hardener.Family, "%s takes its own hardener", c.Key)
		}
	}
	for _, m := range material.Methods {
		if m.Tool != "" {
			_, found := material.Find(m.Tool)
			assert.True(t, found, m.Key)
		}
	}
}

func refers(t *testing.T, c *material.Card, key string, kind material.Kind) {
	t.Helper()
	if key == "" {
		return
	}
	other, found := material.Find(key)
	assert.True(t, found && other.Kind == kind && other.Density.Known, "%s: %s", c.Key, key)
}

// A coat's least and largest film leave room for one another, at every end of
// the temperature, humidity and film ranges.
func TestLowerLimitsLieBelowUpperOnes(t *testing.T) {
	for _, c := range material.Cards {
		below(t, c, "coat", c.CoatLeast, c.CoatAsk)
		for _, most := range []material.Spec[unit.WetFilm]{c.CoatMost, c.CoatMostRolled, c.CoatMostWall, c.CoatMostOverhead} {
			below(t, c, "coat", c.CoatAsk, most)
			if most.Known {
				assert.LessOrEqual(t, 2*c.CoatLeast.Value, most.Value, "%s: two coats of the least are never more than one may be", c.Key)
			}
		}
		below(t, c, "left", c.LeftLeast, c.LeftMost)
		below(t, c, "left", c.LeftThinnest, c.LeftLeast)
		below(t, c, "surface", c.SurfaceLeast, c.SurfaceMost)
		below(t, c, "humidity", c.HumidityLeast, c.HumidityMost)
		below(t, c, "catalyst", c.Floor, c.Ceiling)
		below(t, c, "pigment", c.PigmentAsk, c.PigmentMost)
	}
}

// Every card that is coated or filled with says in what air, and for how long: a
// limit that isn't there would pass any. One with wax takes a thinner, whose density
// stands for both.
func TestWhatIsCoatedSaysItsAir(t *testing.T) {
	for _, c := range material.Cards {
		if c.Kind <= material.Filler {
			assert.True(t, c.SurfaceLeast.Known && c.SurfaceMost.Known && c.HumidityMost.Known && c.CureHours.Known, c.Key)
		}
		if c.Wax.Known {
			assert.NotEmpty(t, c.Thinner, c.Key)
		}
	}
}

func below[Q unit.Quantity](t *testing.T, c *material.Card, name string, low, high material.Spec[Q]) {
	t.Helper()
	if low.Known && high.Known {
		assert.Less(t, low.Value, high.Value, "%s: %s", c.Key, name)
	}
}

// Epoxy and two-pack ratios are the tin's: none ships.
func TestRatiosShipEmpty(t *testing.T) {
	for _, c := range material.Cards {
		assert.False(t, c.RatioByMass.Known || c.RatioByVolume.Known, c.Key)
		if c.Chemistry == material.Epoxy || c.Chemistry == material.TwoPack {
			for _, f := range material.Fields {
				if strings.HasPrefix(f.Key, "ratio-") {
					assert.True(t, f.Shown(c), "%s has a place for its ratio", c.Key)
				}
			}
			assert.Empty(t, c.DoseTable, "%s: a ratio doesn't change with the weather", c.Key)
			assert.Empty(t, c.Families, c.Key)
		}
	}
}

func TestDoseTablesLieInsideTheirLimits(t *testing.T) {
	for _, c := range material.Cards {
		for i, row := range c.DoseTable {
			assert.GreaterOrEqual(t, row.Catalyst, c.Floor.Value, c.Key)
			assert.LessOrEqual(t, row.Catalyst, c.Ceiling.Value, c.Key)
			assert.GreaterOrEqual(t, row.Surface, c.SurfaceLeast.Value, c.Key)
			assert.LessOrEqual(t, row.Surface, c.SurfaceMost.Value, c.Key)
			if i > 0 {
				assert.Greater(t, row.Surface, c.DoseTable[i-1].Surface, c.Key)
				assert.LessOrEqual(t, row.Catalyst, c.DoseTable[i-1].Catalyst, "%s: warmer takes no more", c.Key)
			}
		}
	}
}

func TestEveryShippedPackReads(t *testing.T) {
	for _, c := range material.Cards {
		assert.NotEmpty(t, c.Packs, "%s can't be bought", c.Key)
		assert.LessOrEqual(t, len(c.Packs), order.MaxSizes)
		for _, p := range c.Packs {
			size, err := job.ReadSize(p.Size)
			require.NoError(t, err, "%s %q", c.Key, p.Size)
			assert.True(t, size.Amount.IsPositive() && size.Scale == unit.NoScale, "%s %q", c.Key, p.Size)
			assert.Empty(t, p.Price, "no price ships")
		}
	}
}

func TestMethodsLieInTheirRanges(t *testing.T) {
	seen := map[string]bool{}
	for _, m := range material.Methods {
		assert.False(t, seen[m.Key], m.Key)
		seen[m.Key] = true
		inRange(t, m.Key, m.Speed)
		inRange(t, m.Key, m.Loss)
		inRange(t, m.Key, m.Leftover)
		inRange(t, m.Key, m.Texture)
		inRange(t, m.Key, m.FilmCV)
		inRange(t, m.Key, m.MeanCV)
		inRange(t, m.Key, m.Usable)
		assert.Less(t, float64(m.Loss.High), 0.9, "%s: the sums take no more", m.Key)
		found, ok := material.FindMethod(m.Key)
		assert.True(t, ok && found == m)
	}
	for _, mix := range []unit.Volume{0.1, 0.25, 0.3, 0.5, 0.7, 1, 5} {
		inRange(t, "cup", material.CupWall(mix*unit.Litre))
		assert.GreaterOrEqual(t, material.CupWall(mix*unit.Litre).Value, material.CupWall(mix*unit.Litre/2).Value, "a larger cup holds no less back")
	}
}

func inRange[Q unit.Quantity](t *testing.T, name string, s material.Spec[Q]) {
	t.Helper()
	assert.True(t, s.Known && s.Low <= s.Value && s.Value <= s.High && s.Low >= 0, "%s: %+v", name, s)
}
