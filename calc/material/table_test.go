package material_test

import (
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

var marks = map[string]source.Mark{"C": source.CommonPractice, "P": source.Published, "M": source.FromMemory, "X": source.Assumption}

// scales are those of the figures, by the symbol at the end.
var scales = []struct {
	symbol string
	scale  unit.Scale
}{
	{"m²/min", unit.InSquareMetrePerMinute}, {"kg/L", unit.InKilogramPerLitre}, {"kJ/mol", unit.InKilojoulePerMole}, {"g/m²", unit.InGramPerSquareMetre}, {"µm", unit.InMicrometre},
	{"min", unit.InMinute}, {"°C", unit.InCelsius}, {"%", unit.InPercent}, {"g", unit.InGram}, {"L", unit.InLitre}, {"h", unit.InHour}, {"d", unit.InDay},
}

func reads(t *testing.T, text string) float64 {
	t.Helper()
	scale := unit.InPure
	for _, s := range scales {
		if number, found := strings.CutSuffix(text, s.symbol); found {
			text, scale = number, s.scale
			break
		}
	}
	n, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err, text)
	return scale.SI(n)
}

// isNear compares two figures to a millionth of the wanted one; zero only with
// zero.
func isNear(t *testing.T, want, got float64, line string) {
	t.Helper()
	assert.InDelta(t, want, got, 1e-6*want, line)
}

// Every figure that ships is the one that was gathered, with its range and mark, and
// none ships that wasn't.
func TestCardsHoldTheTradesFigures(t *testing.T) {
	raw, err := os.ReadFile("testdata/cards.txt")
	require.NoError(t, err)
	gathered := map[string]bool{}
	for line := range strings.Lines(string(raw)) {
		if line = strings.TrimSpace(line); line == "" || line[0] == '#' {
			continue
		}
		words := strings.Fields(line)
		require.Len(t, words, 6, line)
		card, found := material.Find(words[0])
		require.True(t, found, line)
		var figure material.Figure
		for _, f := range material.Fields {
			if f.Key == words[1] {
				figure = f.Of(&card)
			}
		}
		require.True(t, figure.Known, line)
		isNear(t, reads(t, words[2]), figure.Value, line)
		isNear(t, reads(t, words[3]), figure.Low, line)
		isNear(t, reads(t, words[4]), figure.High, line)
		assert.Equal(t, marks[words[5]], figure.Mark, line)
		assert.False(t, gathered[words[0]+" "+words[1]], "%s stands twice", line)
		gathered[words[0]+" "+words[1]] = true
	}
	for _, c := range material.Cards {
		for _, f := range material.Fields {
			assert.True(t, gathered[c.Key+" "+f.Key] || !f.Of(c).Known, "%s: %s was gathered nowhere", c.Key, f.Key)
		}
	}
}

// methods is the same by method: speed, loss, held by the tool, texture, spread
// of the film from point to point and of a job's mean, usable share, minutes to
// lay off a stretch.
const methods = `
foam-roller 0.5 0.25 1.0 | 3 2 8 | 25 15 40 | 40 20 80 | 0.15 0.10 0.25 | 0.12 | 0.67 0.5 0.75 | 1.0
nap-roller 0.3 0.15 0.6 | 5 2 10 | 80 50 150 | 120 60 200 | 0.20 0.12 0.30 | 0.15 | 0.67 0.5 0.75 | 1.0
roll-and-tip 0.4 0.2 0.8 | 3 2 8 | 30 15 50 | 25 10 60 | 0.15 0.10 0.25 | 0.12 | 0.67 0.5 0.75 | 1.5
brush 0.15 0.08 0.30 | 5 3 10 | 15 10 25 | 150 80 250 | 0.25 0.15 0.40 | 0.20 | 0.67 0.5 0.75 | 1.0
hv-spray 0.8 0.4 1.5 | 42 35 50 | 30 20 60 | 15 5 30 | 0.15 0.10 0.25 | 0.15 | 0.67 0.5 0.75 | 0.3
cup-gun 0.25 0.12 0.5 | 70 50 85 | 30 20 60 | 100 50 200 | 0.25 0.15 0.35 | 0.20 | 0.6 0.5 0.75 | 0.3
gravity-gun 0.3 0.15 0.6 | 45 35 60 | 40 20 80 | 100 50 180 | 0.20 0.12 0.30 | 0.18 | 0.6 0.5 0.75 | 0.3
knife 0.12 0.05 0.25 | 5 2 10 | 30 20 80 | 200 100 400 | 0.40 0.25 0.60 | 0.20 | 0.67 0.5 0.75 | 0.5
`

func TestMethodsHoldTheTradesFigures(t *testing.T) {
	lines := strings.Split(strings.TrimSpace(methods), "\n")
	require.Len(t, lines, len(material.Methods))
	for _, line := range lines {
		key, rest, _ := strings.Cut(line, " ")
		m, found := material.FindMethod(key)
		require.True(t, found, line)
		parts := strings.Split(rest, "|")
		require.Len(t, parts, 8, line)
		holds(t, line, parts[0], m.Speed, unit.InSquareMetrePerMinute)
		holds(t, line, parts[1], m.Loss, unit.InPercent)
		holds(t, line, parts[2], m.Leftover, unit.InGram)
		holds(t, line, parts[3], m.Texture, unit.InMicrometre)
		holds(t, line, parts[4], m.FilmCV, unit.InPure)
		holds(t, line, parts[5], m.MeanCV, unit.InPure)
		holds(t, line, parts[6], m.Usable, unit.InPure)
		holds(t, line, parts[7], m.LayOff, unit.InMinute)
	}
}

func holds[Q unit.Quantity](t *testing.T, line, figures string, s material.Spec[Q], scale unit.Scale) {
	t.Helper()
	words := strings.Fields(figures)
	for i, got := range []Q{s.Value, s.Low, s.High} {
		want, err := strconv.ParseFloat(words[min(i, len(words)-1)], 64)
		require.NoError(t, err, line)
		assert.InEpsilon(t, want, scale.From(float64(got)), 1e-9, line)
	}
}

// The figures that no card and no method carries.
func TestWhatHoldsForAllWork(t *testing.T) {
	holds(t, "mixing", "1.5 1 3", material.Mixing, unit.InMinute)
	holds(t, "spell, polyester", "30", material.Polyester.Spell(), unit.InMinute)
	holds(t, "spell, vinyl ester", "30", material.VinylEster.Spell(), unit.InMinute)
	holds(t, "spell, epoxy", "90", material.Epoxy.Spell(), unit.InMinute)
	holds(t, "spell, two-pack", "90", material.TwoPack.Spell(), unit.InMinute)
	holds(t, "wall, 250 mL", "8 5 15", material.CupWall(0.25*unit.Litre), unit.InGram)
	holds(t, "wall, 500 mL", "15 10 25", material.CupWall(0.5*unit.Litre), unit.InGram)
	holds(t, "wall, 1 L", "25 15 40", material.CupWall(1*unit.Litre), unit.InGram)
	holds(t, "scratch", "0.333333333333 0.15 0.50", material.ScratchFactor, unit.InPure)
	holds(t, "sheets, P400", "5", material.SheetsCoarse, unit.InPure)
	holds(t, "sheets, finer", "2.5 1 5", material.SheetsFine, unit.InPure)
	holds(t, "board on filler", "1 0.4 2", material.BoardOnFiller, unit.InSquareMetrePerHour)
	holds(t, "machine", "3 1.5 6", material.DiscOnFilm, unit.InSquareMetrePerHour)
	holds(t, "wet by hand", "1.4 1 2", material.WetByHand, unit.InSquareMetrePerHour)
	holds(t, "edge strip", "25", material.EdgeStrip, unit.InMillimetre)
	holds(t, "film there", "0.7", material.EdgeFilm, unit.InPure)
	holds(t, "removal there", "2", material.EdgeTaking, unit.InPure)
	holds(t, "repairs", "0.5", material.RepairLeast, unit.InKilogram)
	assert.Equal(t, unit.Factor(2), material.AskStep)
	assert.Equal(t, unit.Factor(1.8), material.ProposedStep)
}

// What comes in grades: discs, strips for the long board and wet sheets. No pad, and nothing that is put on.
func TestWhatComesInGrades(t *testing.T) {
	var keys []string
	for _, c := range material.Cards {
		if c.IsAbrasive() {
			keys = append(keys, c.Key)
		}
	}
	assert.ElementsMatch(t, []string{"disc", "strip", "wet-sheet"}, keys)
}

// A card shows the figures that it is about, known or yet to be typed, and no others: nobody is asked for the
// gel time of a tape or the grit life of a gel coat.
func TestACardShowsWhatItIsAbout(t *testing.T) {
	shows := func(card, field string) bool {
		c, found := material.Find(card)
		require.True(t, found, card)
		at := slices.IndexFunc(material.Fields, func(f *material.Field) bool { return f.Key == field })
		require.GreaterOrEqual(t, at, 0, field)
		return material.Fields[at].Shown(&c)
	}
	for card, c := range map[string]struct{ about, beside []string }{
		"gelcoat":         {[]string{"density", "gel-time", "styrene", "floor"}, []string{"on-film", "kept-on", "ratio-mass"}},
		"topcoat":         {[]string{"density", "ratio-mass", "ratio-volume"}, []string{"gel-order", "styrene", "on-film", "kept-on", "floor"}},
		"tape":            {[]string{"kept-on", "kept-on-heat"}, []string{"density", "gel-time", "on-film", "styrene"}},
		"disc":            {[]string{"on-film"}, []string{"density", "gel-time", "kept-on", "styrene"}},
		"ketone-peroxide": {[]string{"density"}, []string{"gel-time", "on-film", "kept-on"}},
	} {
		for _, field := range c.about {
			assert.True(t, shows(card, field), "%s: %s", card, field)
		}
		for _, field := range c.beside {
			assert.False(t, shows(card, field), "%s: %s", card, field)
		}
	}
	topcoat, _ := material.Find("topcoat")
	require.False(t, topcoat.RatioByMass.Known, "its place waits for what stands on the tin")
}
