package words_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/air"
	"shedreckoner/calc/bench"
	"shedreckoner/calc/chance"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/ready"
	"shedreckoner/calc/source"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/words"
)

// saying is a text as it comes, and as it should.
type saying struct{ want, is string }

func said(t *testing.T, list ...saying) {
	t.Helper()
	for _, s := range list {
		assert.Equal(t, s.want, plainly(s.is))
	}
}

func measured(number string, scale unit.Scale) bench.Measured {
	return bench.Measured{Number: decimal.RequireFromString(number), Scale: scale}
}

// What is said of a cup: each figure in its own place, and each way of having none.
func TestWhatIsSaidOfACup(t *testing.T) {
	gel := &job.Card{}
	gel.Name = "polyester gel coat"
	lines := []bench.Line{{Part: bench.Resin, Card: gel, Own: measured("300", unit.InGram), Shows: measured("300", unit.InGram)}, {Part: bench.Pigment, Own: measured("15", unit.InGram), Shows: measured("315", unit.InGram)}}
	parts := []bench.Line{{Part: bench.PartA, Card: gel, Own: measured("200", unit.InGram), Shows: measured("200", unit.InGram)}, {Part: bench.PartB, Card: gel, Own: measured("80", unit.InGram), Shows: measured("280", unit.InGram)}}
	pour := &bench.Pour{Amount: measured("4.5", unit.InGram), Other: measured("4.1", unit.InMillilitre), Then: measured("319.5", unit.InGram)}
	syringe := &bench.Pour{Amount: measured("4.1", unit.InMillilitre)}
	mixed := append([]bench.Line{{Part: bench.Resin, Own: measured("70", unit.InGram)}}, parts[1])
	said(t,
		saying{"Weigh: gel coat, 300 g", words.Heading(words.WeighStep, "Gel coat", "300 g")}, saying{"Timed test: PVA film", words.Heading(words.TestStep, "PVA film", "")},
		saying{"Polyester gel coat", words.PartName(bench.Resin, "polyester gel coat")}, saying{"Balloons", words.PartName(bench.Filler, "balloons")}, saying{"", words.PartName(bench.Resin, "")},
		saying{"Pigment paste", words.PartName(bench.Pigment, "x")}, saying{"Part A", words.PartName(bench.PartA, "x")}, saying{"Part B, the hardener", words.PartName(bench.PartB, "x")}, saying{"wax solution", words.PartName(bench.Wax, "wax solution")},
		saying{"15 g", words.LineSmall("15 g", "")}, saying{"15 g, 5 %", words.LineSmall("15 g", "5 %")},
		saying{"4.1 mL, 1.5 % by mass", words.Twin("4.1 mL", "1.5 %")}, saying{"4.1 mL, by a syringe", words.TwinAlone("4.1 mL", true)}, saying{"4.5 g, by a scale", words.TwinAlone("4.5 g", false)},
		saying{"none can be spread now", words.LargestNow("0 g", true)}, saying{"largest now 400 g", words.LargestNow("400 g", false)}, saying{"Largest 400 g: until this tin is timed", words.HeldBy("400 g", words.Bound(bench.ByUntimedTin))},
		saying{"1 cup", words.Cups("1")}, saying{"12 cups", words.Cups("12")},
		saying{"From catalyst in: mixed after 2 min, spread by 9 min, gels in the cup from 12 min to 20 min.", words.TimeBar("2 min", "9 min", "12 min", "20 min")},
		saying{"tin never timed", words.TinTimed("", false)}, saying{"tin timed", words.TinTimed("", true)}, saying{"tin B, never timed", words.TinTimed("B", false)}, saying{"tin B, timed", words.TinTimed("B", true)},
		saying{"no thinner", words.WithThinner("")}, saying{"5 % thinner", words.WithThinner("5 %")},
		saying{"No dose", words.NoDoseAt("")}, saying{"No dose at 38 °C", words.NoDoseAt("38 °C")},
		saying{"read now · inside, white · sunrise 6:00", words.OfTheDay("", "inside", "white", "6:00")}, saying{"read 7:30 · inside, white · sunrise 6:00", words.OfTheDay("7:30", "inside", "white", "6:00")},
		saying{"an agency: 20 ppm over 8 h (2020)", words.ExposureLimit("an agency", "20", "2020")},
		saying{"Weigh: Polyester gel coat to 300 g, Pigment paste to 315 g.", words.SayWeigh(lines)}, saying{"Weigh: Part A to 200 g.", words.SayWeigh(parts)}, saying{"", words.SayWeigh(parts[1:])},
		saying{"Catalyst 4.5 g, 4.1 mL.", words.SayPour(pour, false)}, saying{"Catalyst, once: 4.5 g, 4.1 mL, the scale then shows 319.5.", words.SayPour(pour, true)}, saying{"Catalyst, once: 4.1 mL.", words.SayPour(syringe, true)},
		saying{"", words.SayParts(parts[:1])}, saying{"Part A 200 g, hardener 80 g.", words.SayParts(parts)}, saying{"Resin 70 g, hardener 80 g.", words.SayParts(mixed)},
		saying{"Catalyst in. The clock runs.", words.CatalystIsIn("")}, saying{"Catalyst in. The clock runs. Stop spreading at 9:12.", words.CatalystIsIn("9:12")},
		saying{"Risk: a wide surface gives off more styrene.", words.Risk(cure.MoreVapour)},
	)
	first, rest := words.MinutesFromHere("8 min", "")
	said(t, saying{"8 min / to spread from here", first + " / " + rest})
	first, rest = words.MinutesFromHere("8 min", "2 m²")
	said(t, saying{"8 min / to spread from here, 2 m²", first + " / " + rest})
	for d, want := range map[air.Danger]string{air.Hazardous: "A tenth", air.Explosive: "Over the explosive limit. Don't.", 0: "Under a tenth"} {
		assert.True(t, strings.HasPrefix(words.Danger(d), want), want)
	}
	seen := map[string]bool{}
	for b := bench.ByMinutes; words.Bound(b) != ""; b++ {
		assert.False(t, seen[words.Bound(b)])
		seen[words.Bound(b)] = true
	}
	assert.Len(t, seen, 7, "every limit of a cup has its own words")
}

// What is said of an order.
func TestWhatIsSaidOfAnOrder(t *testing.T) {
	grit := &chance.Line{Grade: grade(t, "P220")}
	piece := chance.Line{Scale: unit.InKilogram, Packs: []chance.PackCount{{Count: 1, Size: job.PackSize{Amount: decimal.RequireFromString("0.5")}}}}
	isSet := chance.Line{ToBuy: decimal.NewFromInt(5), Packs: []chance.PackCount{{Count: 1, Size: job.PackSize{Amount: decimal.NewFromInt(5), Scale: unit.InKilogram}}}}
	said(t,
		saying{"1 × 500 g", words.Packs(piece)}, saying{"1 × 5 kg", words.Buy(&isSet, job.Units{})}, saying{words.NothingToBuy, words.Buy(&chance.Line{}, job.Units{})},
		saying{"Type a figure.", words.Buy(&chance.Line{Err: &surface.Error{Reason: surface.Missing}}, job.Units{})},
		saying{"Order list", words.OrderTitle("")}, saying{"Order list: Tern", words.OrderTitle("Tern")},
		saying{"P220: 3 × 10", words.GradePacks(grit, "3 × pack of 10")}, saying{"3 × pack of 10", words.GradePacks(&chance.Line{}, "3 × pack of 10")},
		saying{"plan 4 kg", words.PlannedLikely("4 kg", "", "")}, saying{"plan 4 kg, likely 3 kg to 6 kg", words.PlannedLikely("4 kg", "3 kg", "6 kg")},
		saying{"no packs known", words.SoldIn(nil, "kg", 0)}, saying{"packs of 1, 5 kg, 1 priced", words.SoldIn([]string{"1", "5"}, "kg", 1)}, saying{"packs of 1, 5 kg, all priced", words.SoldIn([]string{"1", "5"}, "kg", 2)},
		saying{"packs of 1 kg, no price yet", words.SoldIn([]string{"1"}, "kg", 0)}, saying{"packs of 10 pieces, all priced", words.SoldIn([]string{"10"}, "pieces", 1)},
		saying{"needs 3 kg, has 5 kg", words.ShelfHas("3 kg", "5 kg")},
		saying{"", words.AndLast(nil)}, saying{"Flow coat", words.AndLast([]string{"Flow coat"})}, saying{"Flow coat, top coat and gel coat", words.AndLast([]string{"Flow coat", "Top coat", "Gel coat"})},
		saying{"", words.Unpriced(0)}, saying{"+ 1 unpriced", words.Unpriced(1)}, saying{"", words.UnpricedWhole(0)}, saying{"One more thing to buy has no price yet.", words.UnpricedWhole(1)}, saying{"2 more things to buy have no price yet.", words.UnpricedWhole(2)},
		saying{"fewer than 1 job in 200", words.InJobs(0.0049)}, saying{"1 job in 200", words.InJobs(0.005)}, saying{"1 job in 2", words.InJobs(0.449)}, saying{"1 job in 2, or more", words.InJobs(0.45)}, saying{"1 job in 7", words.InJobs(0.15)},
		saying{"likely left: 2 kg", words.LeftOver("2 kg", "", "")}, saying{"likely left: 2 kg, worth 40", words.LeftOver("2 kg", "40", "")}, saying{"likely left: 2 kg, worth 40, good for 6 months", words.LeftOver("2 kg", "40", words.Months(6))}, saying{"a month", words.Months(1)},
		saying{"2 kg of it for repairs", words.ForRepairs("2 kg")}, saying{"usual in the trade: 500 g/m² to 900 g/m² (common practice). Gel coat.", words.PerCoatTrade("500 g/m²", "900 g/m²", "common practice", "Gel coat")},
		saying{"More than usual: is the film meant so thick, the loss so large?", words.PerCoatOdd(true)}, saying{"Less than usual: is the film meant so thin?", words.PerCoatOdd(false)},
		saying{"Off within 5 days, at 40 °C within 1 day: after that paper tape and film bake on. Check your roll.", words.OffBy("5 days", "1 day")},
		saying{"Mass bought: 9 kg. Mass that stays on the boat: 6 kg. Surfaces: 4, 12 m² in all.", words.ForPaper("9 kg", "6 kg", "4", "12 m²")},
		saying{"enough in 95 of 100 such jobs", words.EnoughIn(0.95)}, saying{"99", words.Percent(0.9951)}, saying{"0", words.Percent(0.004)}, saying{"50", words.Percent(0.495)},
		saying{"over 19 of 20 jobs", words.OfTwenty(0.999)}, saying{"20 of 20 jobs", words.OfTwenty(1)}, saying{"20 of 20 jobs", words.OfTwenty(1.2)}, saying{"19 of 20 jobs", words.OfTwenty(0.95)}, saying{"1 of 20 jobs", words.OfTwenty(0.05)},
	)
	hull, roller := &job.Surface{Name: "Hull", By: "tape"}, &material.Method{Name: "Roller, short nap"}
	said(t,
		saying{"Area of Hull", words.Cause(chance.Cause{Kind: chance.AreaCause, Surface: hull}, false)}, saying{"Area of unnamed surface", words.Cause(chance.Cause{Kind: chance.AreaCause, Surface: &job.Surface{}}, true)},
		saying{"Losses, Roller", words.Cause(chance.Cause{Kind: chance.LossCause, Method: roller}, false)}, saying{"Losses", words.Cause(chance.Cause{Kind: chance.LossCause, Method: roller}, true)},
		saying{"Film", words.Cause(chance.Cause{Kind: chance.FilmCause}, false)}, saying{"Share sanded off", words.Cause(chance.Cause{Kind: chance.SandedOffCause}, false)},
		saying{"Used per area", words.Cause(chance.Cause{Kind: chance.UseCause}, false)}, saying{"What your log leaves open", words.Cause(chance.Cause{Kind: chance.LearntCause}, false)},
		saying{"Note how far the first tin goes.", words.Advice(chance.Cause{Kind: chance.UseCause})},
		saying{"This area was measured " + job.OptionName(job.MeasuredBy, "tape") + ". Measure it better, and the range gets narrower.", words.Advice(chance.Cause{Kind: chance.AreaCause, Surface: hull})},
	)
	assert.NotEmpty(t, job.OptionName(job.MeasuredBy, "tape"))
}

// What is said of a card and its parts: every part of a card has its name, and none is a key.
func TestWhatIsSaidOfACard(t *testing.T) {
	said(t,
		saying{"Gel coat: film of a coat or pass", words.CardPart("Gel coat", "film")}, saying{"Gel coat: what must be left", words.CardPart("Gel coat", "left")}, saying{"Gel coat: what may go in", words.CardPart("Gel coat", "mix")},
		saying{"Gel coat: catalyst by temperature", words.CardPart("Gel coat", "dose")}, saying{"Gel coat: minutes in the cup", words.CardPart("Gel coat", "minutes")}, saying{"Gel coat: when it may go on", words.CardPart("Gel coat", "fit")},
		saying{"Gel coat: waiting times", words.CardPart("Gel coat", "waits")}, saying{"Gel coat: how much is bought", words.CardPart("Gel coat", "buying")},
		saying{"waiting times", words.CardPartLine("waits", "")}, saying{"waiting times, 4 h", words.CardPartLine("waits", "4 h")},
		saying{"Sanding and polishing: 1 card", words.ShelfLine("sanding", 1)}, saying{"Catalyst, thinner, wax, solvent: 9 cards", words.ShelfLine("additions", 9)}, saying{"Tools, masking, protection: 2 cards", words.ShelfLine("tools", 2)}, saying{"For putty mixed by hand", words.CardShelf("putty")},
		saying{"15 to 30 °C", words.Span("15\u00a0°C", "30\u00a0°C")}, saying{"900 g to 2 kg", words.Span("900\u00a0g", "2\u00a0kg")}, saying{"2 kg", words.Span("", "2\u00a0kg")}, saying{"900 g", words.Span("900\u00a0g", "")}, saying{"1 to 2", words.Span("1", "2")},
		saying{"", words.UpTo("", " wax")}, saying{"up to 5 % wax", words.UpTo("5 %", " wax")}, saying{"up to 5 % thinner", words.UpToThinner("5 %")},
		saying{"", words.TimedAt("", "25 °C")}, saying{"14 min", words.TimedAt("14 min", "")}, saying{"14 min at 25 °C", words.TimedAt("14 min", "25 °C")},
		saying{"", words.EnoughOften("")}, saying{"enough in 95 % of jobs", words.EnoughOften("95 %")},
		saying{words.MarkPractice, words.CardMark(source.CommonPractice)}, saying{words.MarkAssumption, words.CardMark(source.Assumption)}, saying{"Published.", words.CardMark(source.Published)}, saying{words.MarkFromMemory, words.CardMark(source.FromMemory)},
		saying{"kg", words.BareSize(material.ByMass)}, saying{"L", words.BareSize(material.ByVolume)}, saying{"L of mixed parts", words.BareSize(material.BySet)}, saying{"m", words.BareSize(material.ByLength)}, saying{"pieces", words.BareSize(material.ByPiece)},
		saying{"Pack 2, kg", words.PackNumber(2, material.ByMass)}, saying{"25 °C: 1.5 % by mass", words.DoseAt(material.DoseRow{Surface: celsius(25), Catalyst: 0.015}, unit.InCelsius)},
		saying{"Row 3 is outside the usual 0.5 to 4 %. A slip?", words.OddRow(3, true)}, saying{"Row 3 asks for more catalyst than the colder row before it. A slip?", words.OddRow(3, false)},
		saying{words.ChooseMaterial, words.ChosenCard(nil)}, saying{"Roller", words.ShortMethod("Roller, short nap")},
	)
	own := &job.Card{}
	own.Name = "My resin, slow"
	coat := job.FindStepKind("coat")
	said(t, saying{coat.Name, words.StepTitle(coat, nil)}, saying{"My resin, slow", words.StepTitle(coat, own)}, saying{"My resin, slow", words.ChosenCard(own)})
}

// What is said of surfaces.
func TestWhatIsSaidOfASurface(t *testing.T) {
	s := &job.Surface{Ground: "polyester"}
	under := func(change func()) string {
		change()
		return words.Under(s)
	}
	laminate, _ := job.GroundByKey("polyester")
	ground := "ground: " + laminate.String()
	said(t,
		saying{"ground: not set, as found, flat up", words.Under(&job.Surface{})},
		saying{ground + ", washed, flat up", under(func() { s.Prepared.IsWashed = true })}, saying{ground + ", washed and sanded, a wall", under(func() { s.Prepared.IsSanded, s.Orientation = true, job.OnWall })},
		saying{ground + ", as found, flat up, below the waterline", words.Under(&job.Surface{Ground: "polyester", Prepared: job.Prepared{IsBelowWater: true}})},
		saying{ground + ", sanded, flat up", words.Under(&job.Surface{Ground: "polyester", Prepared: job.Prepared{IsSanded: true}})},
		saying{ground + ", sanded, P120, overhead, below the waterline, inside", under(func() {
			s.Prepared.IsWashed, s.Prepared.Grade, s.Orientation, s.Prepared.IsBelowWater, s.Inside = false, 120, job.Overhead, true, true
		})},
		saying{"gets nothing yet", words.Gets("")}, saying{"gets Topsides", words.Gets("Topsides")}, saying{"gets nothing yet", words.SurfaceLine(&job.Surface{}, "")},
		saying{"Topsides · 1 cut-out", words.SurfaceLine(&job.Surface{Cutouts: make([]job.Part, 1)}, "Topsides")},
		saying{"Topsides · 2 cut-outs · 2 alike · both sides", words.SurfaceLine(&job.Surface{Cutouts: make([]job.Part, 2), Part: job.Part{Count: working.Figure[unit.Factor]{Value: 2}}, Sides: working.Figure[unit.Factor]{Value: 2}}, "Topsides")},
		saying{"Topsides", words.SurfaceLine(&job.Surface{Part: job.Part{Count: working.Figure[unit.Factor]{Value: 1}}, Sides: working.Figure[unit.Factor]{Value: 1}}, "Topsides")},
		saying{"1 thing to check on the build-up.", words.ThingsToCheck(1)}, saying{"2 things to check on the build-up.", words.ThingsToCheck(2)},
		saying{"1 layer", words.Counted(1, "layer", "layers")}, saying{"0 layers", words.Counted(0, "layer", "layers")}, saying{"", words.Capital("")}, saying{"Abc", words.Capital("abc")}, saying{"Zed", words.Capital("zed")}, saying{"äh", words.Capital("äh")},
	)
	notes := map[string]bool{}
	for n := surface.EdgeAtLeast; words.SurfaceNote(n) != ""; n++ {
		notes[words.SurfaceNote(n)] = true
	}
	assert.Len(t, notes, 7)
	for _, seq := range ready.Sequences {
		coats, steps := 0, seq.Steps()
		for _, lines := range steps {
			for _, l := range lines {
				if l.Key == "kind" && (l.Text == "coat" || l.Text == "fill") {
					coats++
				}
			}
		}
		assert.Equal(t, words.Counted(coats, "layer", "layers")+", "+words.Counted(len(steps), "step", "steps"), words.Sequence(&seq), seq.Name)
	}
}

// What comes in as a file or a link is refused with its own reason, and what was open is said to be untouched.
func TestWhatComesInIsRefusedWithItsReason(t *testing.T) {
	for err, has := range map[error]string{job.ErrNewer: "a newer version of this page", job.ErrDamaged: "its checksum doesn't fit", job.ErrTooLarge: "larger than 1 MB", errUnheard{}: "isn't a job saved by this page",
		&job.LimitError{List: &job.List{Key: "surface", Max: 500}, Items: 501}: "501 under surface, at most 500"} {
		assert.Contains(t, words.ImportFails(err), has)
		assert.Contains(t, words.ImportFails(err), words.NothingChanged)
		assert.Contains(t, words.LinkFails(errors.Join(err), false), words.NothingChanged)
	}
	for err, has := range map[error]string{job.ErrNewer: "link was made by a newer version", job.ErrDamaged: "link is cut short", job.ErrNotAJob: "link is cut short", job.ErrTooLarge: "link is longer than any"} {
		assert.Contains(t, words.LinkFails(err, false), has)
		assert.Contains(t, words.LinkFails(err, true), "link is longer than any")
	}
	said(t, saying{"This link holds a job: without a name, 1 surface, 2 cups.", words.LinkHolds("", 1, 2)}, saying{"This link holds a job: Tern, 2 surfaces, 1 cup.", words.LinkHolds("Tern", 2, 1)},
		saying{"Imported. Undo takes it out again.", words.Imported(nil, false)}, saying{"Imported. The job before is in Jobs. Its card a is now beside yours.", words.Imported([]string{"a"}, true)},
		saying{"Imported. Undo takes it out again. Its cards a, b and c are now beside yours.", words.Imported([]string{"a", "b", "c"}, false)},
		saying{"2 surfaces", words.JobSmall(2, "")}, saying{"2 surfaces · last worked on 3 May", words.JobSmall(2, "3 May")}, saying{"It holds 3 surfaces and 1 cup.", words.JobHolds(3, 1)},
		saying{"This is the only job.", words.JobsKept(0)}, saying{"1 other job kept.", words.JobsKept(1)})
}
