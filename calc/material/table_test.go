package material_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// defaults is the trade's figures as they were gathered: card, figure, value,
// from, to, mark. C common practice, P published, M from memory, X assumption.
// A figure without a range stands three times.
const defaults = `
gelcoat density 1.25kg/L 1.15kg/L 1.40kg/L C
gelcoat cured 83% 76% 92% X
gelcoat cured-sprayed 78% 68% 88% X
gelcoat styrene 35% 28% 45% C
gelcoat coat-least 200µm 200µm 200µm X
gelcoat coat-ask 300µm 300µm 300µm C
gelcoat coat-most 600µm 600µm 600µm C
gelcoat coat-most-rolled 500µm 500µm 500µm C
gelcoat coat-most-wall 500µm 500µm 500µm C
gelcoat coat-most-overhead 400µm 400µm 400µm C
gelcoat pass 130µm 100µm 200µm C
gelcoat left-least 400µm 300µm 500µm X
gelcoat left-thinnest 250µm 250µm 250µm X
gelcoat left-most 640µm 640µm 640µm C
gelcoat thinner-ask 5% 5% 5% C
gelcoat thinner-most 7.25% 7.25% 7.25% C
gelcoat gel-time 13min 10min 17min P
gelcoat gel-energy 55kJ/mol 40kJ/mol 85kJ/mol C
gelcoat batch-most 500g 300g 1000g C
gelcoat surface-least 15°C 15°C 15°C C
gelcoat surface-most 32°C 32°C 32°C C
gelcoat humidity-least 40% 40% 40% P
gelcoat humidity-most 80% 80% 80% P
gelcoat recoat-from 1h 1h 4h C
gelcoat recoat-to 24h 24h 24h C
gelcoat sand-from 24h 16h 48h C
gelcoat shelf-life 180d 90d 360d C
gelcoat pigment-ask 5% 5% 5% C
gelcoat pigment-most 10% 10% 10% C
flowcoat density 1.25kg/L 1.15kg/L 1.40kg/L C
flowcoat cured 83% 76% 92% X
flowcoat styrene 36% 28% 45% C
flowcoat coat-least 200µm 200µm 200µm X
flowcoat coat-ask 300µm 300µm 300µm C
flowcoat coat-most 500µm 500µm 500µm C
flowcoat left-least 300µm 250µm 400µm X
flowcoat left-thinnest 200µm 200µm 200µm X
flowcoat left-most 640µm 640µm 640µm C
flowcoat wax 2% 1% 3% C
flowcoat surface-most 30°C 30°C 30°C C
vinylester density 1.20kg/L 1.10kg/L 1.30kg/L C
vinylester cured 78% 72% 88% X
vinylester cured-sprayed 72% 62% 82% X
vinylester styrene 42% 38% 48% C
vinylester coat-least 200µm 200µm 200µm X
vinylester coat-most 600µm 600µm 600µm C
vinylester left-least 400µm 300µm 500µm X
vinylester thinner-ask 3% 3% 3% X
vinylester thinner-most 5% 5% 5% X
vinylester gel-time 20min 12min 30min X
vinylester gel-energy 60kJ/mol 40kJ/mol 90kJ/mol X
vinylester batch-most 400g 400g 400g X
vinylester floor 1.25% 1.25% 1.25% C
vinylester ceiling 2.5% 2.5% 2.5% P
vinylester surface-least 18°C 18°C 18°C C
vinylester surface-most 30°C 30°C 30°C C
vinylester shelf-life 120d 90d 180d C
primer density 1.40kg/L 1.25kg/L 1.55kg/L C
primer cured 50% 42% 65% C
primer coat-ask 120µm 120µm 120µm C
primer coat-most 200µm 200µm 200µm C
primer left-least 100µm 80µm 150µm X
primer thinner-ask 10% 10% 10% C
primer thinner-most 20% 20% 20% C
primer gel-time 240min 120min 480min C
primer gel-energy 57kJ/mol 50kJ/mol 65kJ/mol C
primer batch-most 2000g 2000g 2000g X
primer surface-least 10°C 10°C 10°C C
primer surface-most 32°C 32°C 32°C C
primer humidity-most 85% 85% 85% P
primer recoat-from 6h 6h 6h C
primer recoat-to 168h 168h 168h C
primer sand-from 24h 24h 24h C
primer shelf-life 720d 720d 720d C
topcoat density 1.20kg/L 1.05kg/L 1.35kg/L C
topcoat cured 47% 40% 55% C
topcoat coat-ask 70µm 70µm 70µm C
topcoat coat-most 120µm 120µm 120µm C
topcoat left-least 70µm 50µm 100µm X
topcoat thinner-ask 25% 25% 25% C
topcoat thinner-most 35% 35% 35% C
topcoat gel-time 240min 120min 360min C
topcoat gel-energy 55kJ/mol 45kJ/mol 70kJ/mol X
topcoat surface-least 12°C 12°C 12°C C
topcoat surface-most 30°C 30°C 30°C C
topcoat humidity-least 35% 35% 35% C
topcoat humidity-most 80% 80% 80% C
topcoat recoat-from 16h 16h 16h C
topcoat recoat-to 48h 48h 48h C
topcoat sand-from 48h 48h 48h C
polyester-filler density 1.75kg/L 1.6kg/L 1.9kg/L C
polyester-filler cured 97% 95% 98% C
polyester-filler styrene 20% 15% 25% C
polyester-filler pass-most 5000µm 3000µm 10000µm C
polyester-filler gel-time 5min 3min 8min C
polyester-filler gel-energy 55kJ/mol 40kJ/mol 85kJ/mol X
polyester-filler hardener-share 2% 1% 3% C
polyester-filler batch-most 150g 100g 250g C
polyester-filler humidity-most 85% 85% 85% C
polyester-filler recoat-from 1h 1h 1h C
polyester-filler sand-from 0.5h 0.333333333h 1h C
polyester-filler sanded-off 30% 20% 50% C
polyester-filler shelf-life 360d 360d 360d C
light-polyester-filler density 1.15kg/L 1.0kg/L 1.3kg/L C
epoxy-filler density 0.75kg/L 0.6kg/L 0.95kg/L C
epoxy-filler cured 100% 98% 100% C
epoxy-filler pass-most 10000µm 6000µm 20000µm C
epoxy-filler gel-time 40min 20min 60min C
epoxy-filler gel-energy 57kJ/mol 50kJ/mol 65kJ/mol C
epoxy-filler batch-most 600g 600g 600g X
epoxy-filler humidity-most 80% 80% 80% C
epoxy-filler recoat-from 12h 12h 12h C
epoxy-filler recoat-to 168h 168h 168h C
epoxy-filler sand-from 24h 16h 72h C
epoxy-filler shelf-life 720d 720d 720d C
ketone-peroxide density 1.15kg/L 1.10kg/L 1.18kg/L M
ketone-peroxide spare 1.2 1.2 1.2 C
benzoyl-paste density 1.2kg/L 1.2kg/L 1.2kg/L C
styrene density 0.906kg/L 0.906kg/L 0.906kg/L P
wax-solution density 0.91kg/L 0.91kg/L 0.91kg/L C
wax-solution styrene 95% 94% 96% C
wax-solution stays 50% 0% 100% X
wax-solution shrinks 14% 14% 14% P
styrene styrene 100% 100% 100% P
styrene stays 50% 0% 100% X
styrene shrinks 14% 14% 14% P
styrene shelf-life 180d 180d 180d C
ketone-peroxide shelf-life 180d 180d 360d C
ketone-low-peroxide density 1.15kg/L 1.10kg/L 1.18kg/L M
ketone-low-peroxide spare 1.2 1.2 1.2 C
benzoyl-paste spare 1.2 1.2 1.2 C
benzoyl-paste shelf-life 360d 360d 360d C
gelcoat floor 1% 1% 1% P
gelcoat ceiling 2.5% 2.5% 2.5% P
gelcoat gel-at 25°C 25°C 25°C P
gelcoat gel-with 1.8% 1.8% 1.8% P
gelcoat gel-order 0.8 0.5 1 X
gelcoat gel-mass 100g 100g 100g C
flowcoat floor 1% 1% 1% P
flowcoat ceiling 2.5% 2.5% 2.5% P
flowcoat gel-time 13min 10min 17min P
flowcoat gel-at 25°C 25°C 25°C P
flowcoat gel-with 1.8% 1.8% 1.8% P
flowcoat gel-order 0.8 0.5 1 X
flowcoat gel-energy 55kJ/mol 40kJ/mol 85kJ/mol C
flowcoat gel-mass 100g 100g 100g C
flowcoat batch-most 500g 300g 1000g C
flowcoat surface-least 15°C 15°C 15°C C
flowcoat humidity-least 40% 40% 40% P
flowcoat humidity-most 80% 80% 80% P
flowcoat recoat-from 1h 1h 4h C
flowcoat recoat-to 24h 24h 24h C
flowcoat sand-from 24h 16h 48h C
flowcoat shelf-life 180d 90d 360d C
flowcoat coat-most-wall 500µm 500µm 500µm C
flowcoat coat-most-overhead 400µm 400µm 400µm C
flowcoat pigment-ask 5% 5% 5% C
flowcoat pigment-most 10% 10% 10% C
polyester-filler floor 1% 1% 1% C
polyester-filler ceiling 3% 3% 3% C
polyester-filler gel-at 20°C 20°C 20°C C
polyester-filler gel-with 2% 2% 2% C
polyester-filler surface-least 10°C 10°C 10°C C
polyester-filler surface-most 30°C 30°C 30°C C
light-polyester-filler floor 1% 1% 1% C
light-polyester-filler ceiling 3% 3% 3% C
light-polyester-filler gel-time 5min 3min 8min C
light-polyester-filler gel-with 2% 2% 2% C
light-polyester-filler pass-most 5000µm 3000µm 10000µm C
light-polyester-filler batch-most 150g 100g 250g C
light-polyester-filler sanded-off 30% 20% 50% C
epoxy-filler gel-at 20°C 20°C 20°C C
epoxy-filler gel-mass 500g 500g 500g C
epoxy-filler surface-least 12°C 12°C 12°C C
epoxy-filler surface-most 32°C 32°C 32°C C
epoxy-filler sanded-off 30% 20% 50% C
topcoat batch-most 2000g 2000g 2000g X
topcoat gel-at 20°C 20°C 20°C C
topcoat shelf-life 720d 720d 720d C
primer gel-at 20°C 20°C 20°C C
filter each-spell 1 1 1 C
acetone density 0.79kg/L 0.79kg/L 0.79kg/L C
acetone wash 0.1L 0.1L 0.1L C
acetone flush 0.25L 0.25L 0.25L C
compound used 40g/m² 25g/m² 80g/m² C
compound takes 3µm 2µm 6µm X
polish used 20g/m² 10g/m² 40g/m² C
polish takes 1µm 0.5µm 2µm X
gelcoat polish-from 72h 48h 168h C
disc on-filler 2 0.7 6 C
disc on-film 1.7 0.7 5 C
wet-sheet on-film 2.5 1 5 C
strip on-film 2 1 5 C
pad on-film 0.1 0.05 0.2 C
gelcoat chance 80% 80% 80% X
flowcoat chance 80% 80% 80% X
topcoat chance 80% 80% 80% X
gelcoat chance-at-once 95% 95% 95% X
flowcoat chance-at-once 95% 95% 95% X
topcoat chance-at-once 95% 95% 95% X
primer chance 80% 80% 80% X
epoxy-filler chance 80% 80% 80% X
acetone chance 80% 80% 80% X
gelcoat reserve 5% 5% 5% C
topcoat reserve 5% 5% 5% C
gloves each-spell 1 1 1 C
gloves each-hour 0.5 0.5 0.5 C
roller each-spell 1.1 1.1 1.1 C
brush each-spell 1.1 1.1 1.1 C
cup each-cup 1 1 1 C
cup each-snaps 0.333333333 0.333333333 0.333333333 C
tape spare 1.1 1.1 1.1 C
release-film over-coat 50µm 30µm 100µm C
cartridges lasts 8h 8h 8h C
mask lasts 8h 8h 8h C
`

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

// isNear holds two figures to a millionth of the wanted one; nothing to nothing.
func isNear(t *testing.T, want, got float64, line string) {
	t.Helper()
	assert.InDelta(t, want, got, 1e-6*want, line)
}

// Every figure that ships is the one that was gathered, with its range and mark.
func TestCardsHoldTheTradesFigures(t *testing.T) {
	for _, line := range strings.Split(strings.TrimSpace(defaults), "\n") {
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
