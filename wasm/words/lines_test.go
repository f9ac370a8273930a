package words_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/words"
)

// Lines of the build-up: each of their figures in its own place, and one apart from several.
func TestLinesOfABuildup(t *testing.T) {
	said(t,
		saying{"each of 3 coats, on the comb", words.EachOf(3)}, saying{"Step 2.", words.AtStep(2)}, saying{"1 pass", words.Passes(1)}, saying{"2 passes", words.Passes(2)},
		saying{"Each coat, cured", words.FilmName(true, true)}, saying{"Film, cured", words.FilmName(true, false)}, saying{"Each coat, wet", words.FilmName(false, true)}, saying{"Film, wet", words.FilmName(false, false)},
		saying{"5 % thinner by mass", words.ThinnerOf("5 %", true)}, saying{"5 % thinner by volume", words.ThinnerOf("5 %", false)},
		saying{"a · c", words.Listed("", "a", "", "c", "")}, saying{"", words.Listed("", "")},
		saying{words.OwnRemovals, words.OwnRemovalsOf(0)}, saying{"what a grade takes: 1 figure of your own", words.OwnRemovalsOf(1)}, saying{"what a grade takes: 2 figures of your own", words.OwnRemovalsOf(2)},
		saying{words.HandMixed, words.HandMixedOf(0)}, saying{"putty mixed by hand: 1", words.HandMixedOf(1)},
		saying{"once", words.Rounds(0)}, saying{"once", words.Rounds(1)}, saying{"2 rounds, sanded back in between", words.Rounds(2)},
		saying{"300 µm to 600 µm each", words.EachFrom("300 µm", "600 µm")}, saying{"comb readings: 2", words.ReadingsOf(2, 0)}, saying{"comb readings: 2, measured films: 1", words.ReadingsOf(2, 1)},
		saying{"Cures to 200 µm–300 µm", words.CombSays("200 µm", "300 µm")}, saying{"400 µm left at the thin side", words.LeftAtThinSide("400 µm", "")}, saying{"400 µm left at the thin side, least 250 µm", words.LeftAtThinSide("400 µm", "250 µm")},
		saying{"90 µm left, least 250 µm. One more pass along them, or keep the board off.", words.EdgesThin("90 µm", "250 µm")}, saying{"roller · 2 × 300 µm wet", words.CoatsWet("roller", "2", "300 µm")},
		saying{", on " + buildup.Laminate.String(), words.OnGround(buildup.Laminate)}, saying{" on Hull, as measured", words.OnMeasured("Hull")},
		saying{"mean 500 · thin side 300", words.EndsFromTheLeft("500", "300", "", "")}, saying{"mean 500 · thin side 300 · edges 200 · least 250", words.EndsFromTheLeft("500", "300", "200", "250")},
		saying{"Step 3: with 90 µm at the thin side, every grade of it takes too much. Put on more first.", words.NoGradeLeft("3", "90 µm")}, saying{"Step 3: there is film enough for P120, which takes 60 µm, counting what follows.", words.GradeIsAffordable("3", "P120", "60 µm")},
		saying{"Step 3: start with P180, no coarser. It takes 40 µm, counting what follows.", words.BeginNoCoarser("3", "P180", "40 µm")},
		saying{"Gel coat: more film won't do it, a more even one will. Bring its unevenness down from 40 % to under 30 %, or allow a larger share to go thinner.", words.MoreEven("Gel coat", "40 %", "30 %")},
		saying{"P80 takes at least", words.TakesAtLeast("P80")}, saying{"Density 0.6 kg/L; my filler: 0.5 kg/L.", words.PuttyAgainst("0.6 kg/L", "my filler", "0.5 kg/L")}, saying{"A litre costs 9; of my filler 12.", words.LitreAgainst("9", "my filler", "12")},
		saying{"A litre costs 9. The card of my filler has no price yet.", words.LitreAlone("9", "my filler")}, saying{"Balloons weighs", words.PartWeighs("balloons")},
		saying{"2 of 5 done", words.DoneOf(2, 5)}, saying{"begun: 1 cup", words.Begun(1)}, saying{"my step, step 2: Sand", words.StepOf("my step", 2, "Sand")}, saying{"Row 2: 1 2 3", words.ReadingRow(2, "1 2 3")},
		saying{"2 × 3 readings pasted.", words.Pasted([][]string{{"1", "2", "3"}, {"1", "2", "3"}})}, saying{"3 × 2 readings pasted. Row 2 has 1: check what is missing.", words.Pasted([][]string{{"1", "2"}, {"1"}, {""}})},
	)
	gel := &job.Card{}
	gel.Name = "my gel coat"
	for _, kind := range job.StepKinds {
		want := "my gel coat"
		if plan.KindOf(kind).IntoPores {
			want = kind.Name + ": my gel coat"
		}
		said(t, saying{want, words.StepTitle(kind, gel)}, saying{kind.Name, words.StepTitle(kind, nil)})
	}
}

// Each remedy and each risk is said by the word that matters in it.
func TestEachRemedyIsSaidByItsOwnWords(t *testing.T) {
	for remedy, has := range map[cure.Remedy]string{cure.CoolProduct: "iced water", cure.Shade: "Shade", cure.OtherHour: "another hour", cure.SmallerCup: "Half the cup", cure.Tray: "tray", cure.SlowerPeroxide: "slower catalyst",
		cure.WarmProduct: "closed tin in a warm room", cure.WarmPart: "Warm the part", cure.WarmShed: "into the night"} {
		assert.Contains(t, words.RemedyWords[remedy], has)
	}
	for risk, has := range map[cure.Risk]string{cure.Sweats: "sweats", cure.SunComesRound: "sun comes round", cure.DewIsNear: "dew point is near", cure.MoreJoins: "More joins", cure.MoreVapour: "more styrene",
		cure.WrongFamily: "two kinds of peroxide", cure.Ignites: "No flame"} {
		assert.Contains(t, words.RiskWords[risk], has)
	}
	said(t, saying{"Weigh: balsa, 5 g", words.Heading(words.WeighStep, "Balsa", "5 g")}, saying{"Weigh: azure paste", words.Heading(words.WeighStep, "Azure paste", "")}, saying{"Weigh: zinc paste", words.Heading(words.WeighStep, "Zinc paste", "")},
		saying{"Weigh: MEKP", words.Heading(words.WeighStep, "MEKP", "")}, saying{"Weigh: B", words.Heading(words.WeighStep, "B", "")})
}

// Lines of the log and of the pictures.
func TestLinesOfTheLog(t *testing.T) {
	said(t,
		saying{"one day of work left", words.DaysLeft(1, "1")}, saying{"3 days of work left", words.DaysLeft(3, "3")}, saying{"2 of 9 steps done", words.StepsDone("2", "9")},
		saying{"1 earlier cup.", words.CupsLogged(1)}, saying{"Nothing is marked as done yet: mark it here.", words.RestLine(0)}, saying{"1 piece of work done.", words.RestLine(1)}, saying{"2 pieces of work done.", words.RestLine(2)},
		saying{"No cup tests of your own.", words.TestsLine(0)}, saying{"1 cup test of your own.", words.TestsLine(1)},
		saying{"spread", words.CupSmall("spread", "", "")}, saying{"spread · 22 °C · 3 May", words.CupSmall("spread", "3 May", "22 °C")}, saying{"spread · 3 May", words.CupSmall("spread", "3 May", "")}, saying{"spread · 22 °C", words.CupSmall("spread", "", "22 °C")},
		saying{" after 9 min (earliest expected: 12 min)", words.GelledAfter("9 min", "12 min")}, saying{"measured", words.CoveredSmall("")}, saying{"plan 2 m²", words.CoveredSmall("2 m²")},
		saying{"Noted when it was weighed.", words.TakenLine("")}, saying{"Noted when it was weighed, at 9:00.", words.TakenLine("9:00")},
		saying{"1 other cause without a sign in the log.", words.CausesLine(1, 0)}, saying{"3 other causes without a sign in the log, 1 that it contradicts.", words.CausesLine(3, 1)},
		saying{"Work from 8:00 to 17:00.", words.HoursLine("8:00", "17:00")}, saying{"next likely 0.8 to 1.3 ×", words.NextLikely("0.8", "1.3")},
		saying{"Roller: 1.1 × the plan after 2 entries; next likely 0.8 to 1.3 ×.", words.TakesTitle("Roller", "1.1", "0.8", "1.3", 2)},
		saying{"After 1 entry", words.AfterEntries(1)}, saying{"The next work is likely to take 0.8 to 1.3 times what is planned.", words.LikelyNext([2]unit.Factor{0.8, 1.3})},
		saying{"In use: 1.1, from 2 entries. The order and what is left go by it.", words.TakenOver("1.1", 2)},
		saying{"fit 9:00 to 16:00", words.FitFrom("9:00", "16:00")}, saying{"Enough of gel coat: 16 of 20 with what is bought before the start, 19 of 20 with all bought at once", words.ChancePicture("gel coat", "16 of 20", "19 of 20")},
		saying{"Film: 3 kg to 5 kg", words.Moves("Film", "3 kg", "5 kg")}, saying{"Filler against cutting: 2 L of filler, 1 L cut off", words.TradeNow("2 L", "1 L")}, saying{"Best: 3 mm, with 2 L of filler and 1 L cut", words.UseBestDatum("3 mm", "2 L", "1 L")},
		saying{"Filler against cutting as the datum is raised: best at 3 mm, with 2 L of filler and 1 L cut", words.TradePicture("3 mm", "2 L", "1 L")},
		saying{"Shifted to your own cup tests; the slope is the card's.", words.GelFit(cure.Scaled)}, saying{"Fitted to your own cup tests.", words.GelFit(cure.Fitted)}, saying{"Fitted to your own cup tests, which are unusual: only between their temperatures.", words.GelFit(cure.FittedUnusual)},
		saying{"From the card alone, for 100 g. Your own cup tests replace it.", words.GelFit(0)},
		saying{"That is 33 °C; at the last cup it was 15 °C. Is that right?", words.Jumped("33 °C", "15 °C")}, saying{"They are in cm: 2 m²", words.TheyWereIn("cm", "2 m²")}, saying{"If that was mil typed as mm, it is 16 mil.", words.IfThatWas("mil typed as mm", "16 mil")},
		saying{"Film comes to 9 µm, outside the usual 100 µm to 2000 µm. Is that right?", words.Unlikely(&plan.Ask{Value: 9e-6, Band: &plan.Band{Key: "film", Low: 100e-6, High: 2000e-6, Scale: unit.InMicrometre}})},
		saying{"Still soft at 9:00: scrape it off while it will come off, wipe with the solvent the maker names, and start again with a test cup.", words.ThenScrape("9:00")}, saying{"At this temperature it may take until 21:00: 90 min from catalyst in.", words.StillInTime("21:00", "90 min")},
		saying{"With the part at 20 °C it should have gone off by 15:00.", words.OnceWarm("20 °C", "15:00")}, saying{"At least 1 % by mass of all that cures, at most 2 % by mass of the product. 5 rows, straight lines between them.", words.ShedLimits("1 %", "2 %", 5)},
		saying{"Fit to coat: surface 15 °C to 30 °C and 3 °C above the dew point, air at 30 % to 80 % humidity, now and into the evening.", words.ShedFit("15 °C", "30 °C", "3 °C", "30 %", "80 %")},
		saying{"A handbook – published. Checked by: 2 × an example.", words.RuleSource("a handbook", "published", "2 × an example")}, saying{"That job wasn't taken: its log holds an impossible entry (cup.1.in = x). Nothing was changed.", words.LogFails("cup.1.in", "x")},
		saying{"Risk: no flame, no glowing element, no unvented heater. Never warm peroxide.", words.Risk(cure.Ignites)},
		saying{"Masking off at the latest noon: in this heat paper tape and film bake on.", words.MaskingOff("noon", true)}, saying{"X", words.Capital("x")},
	)
	assert.Equal(t, "", words.LeftOut(nil))
	assert.Equal(t, "Left out, since it waits: Hull ("+job.FieldAt("surface.1.length").Name+"); Unnamed surface.", words.LeftOut([]plan.LeftOut{{Name: "Hull", By: "surface.1.length"}, {}}))
}
