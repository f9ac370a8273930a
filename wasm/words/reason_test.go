package words_test

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/air"
	"shedreckoner/calc/bench"
	"shedreckoner/calc/buildup"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/chance"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/fairing"
	"shedreckoner/calc/film"
	"shedreckoner/calc/job"
	"shedreckoner/calc/order"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/words"
)

func tool(t *testing.T, kind cure.ToolKind, step string) cure.Tool {
	t.Helper()
	made, err := cure.NewTool(kind, decimal.RequireFromString(step))
	require.NoError(t, err)
	return made
}

const gram = unit.Gram

// Why there is no dose: each reason names its own figures in their own places.
func TestWhyThereIsNoDoseNamesItsFigures(t *testing.T) {
	for _, c := range []struct {
		err  error
		want string
	}{
		{&cure.TemperatureError{Of: cure.Surface, Value: celsius(9), Coldest: celsius(15), Warmest: celsius(30)}, "The surface is at 9 °C. This material takes 15 °C to 30 °C."},
		{&cure.TemperatureError{Of: cure.Product, Value: celsius(9), Coldest: celsius(15), Warmest: celsius(30)}, "The product is at 9 °C. This material takes 15 °C to 30 °C."},
		{&cure.ColdEveningError{Coldest: celsius(15)}, "The next four hours aren't known. Type today's air first."},
		{&cure.ColdEveningError{Ahead: celsius(11), Coldest: celsius(15)}, "The air, or the part where it is colder, falls to 11 °C within four hours, below the 15 °C that the cure needs. Start earlier, or keep the shed warm through the night."},
		{&cure.BeyondTableError{Of: cure.Surface, Value: celsius(12), Coldest: celsius(15), Warmest: celsius(35)}, "The surface is at 12 °C. The catalyst table ends at 15 °C, and more catalyst doesn't cure a cold film. Warm the part and the shed first."},
		{&cure.BeyondTableError{Of: cure.EveningAir, Value: celsius(38), Coldest: celsius(15), Warmest: celsius(35)}, "The evening air is at 38 °C. The catalyst table ends at 35 °C, and no dose is guessed beyond it."},
		{&cure.TableError{Row: 2, Fault: cure.NotATemperature}, "Row 3 of your catalyst table: the temperature can't be right."},
		{&cure.TableError{Row: 2, Fault: cure.NotAShare}, "Row 3 of your catalyst table: catalyst from 0.2 to 5 % by mass."},
		{&cure.TableError{Row: 1, Fault: cure.SameTemperature}, "Row 2 of your catalyst table has the temperature of the row before it."},
		{&cure.TableError{Row: 1, Fault: cure.OutOfOrder}, "Row 2 of your catalyst table is colder than the row before it. Type the rows from cold to warm."},
		{&cure.TableError{Fault: cure.TooFewRows}, "A catalyst table needs two rows at least: nothing is read off a single one."},
		{&cure.TableError{Fault: cure.TooManyRows}, "A catalyst table has at most 40 rows."},
		{chain.ErrNoTable, "This card has no catalyst table. Type the one from the maker's sheet on the card."},
		{chain.ErrUnfinished, "A row of your catalyst table isn't finished. Type both temperature and catalyst, or remove the row."},
		{&cure.CupTooLargeError{Cup: 500 * gram, Largest: 300 * gram}, "The largest cup right now is 300 g. Mix less."},
		{&cure.NotWithThisToolError{Tool: tool(t, cure.Syringe, "0.1"), Cup: 20 * gram, Smallest: 80 * gram}, "Not with this syringe: it can dose cups of 80 g or more. Use a finer one, or mix a larger cup if the minutes allow."},
		{&cure.NotWithThisToolError{Tool: tool(t, cure.Scale, "1"), Cup: 20 * gram, Smallest: 80 * gram}, "Not with this scale: it can dose cups of 80 g or more. Use a finer one, or mix a larger cup if the minutes allow."},
		{&cure.ToolError{Least: "0.01 g", Most: "5 g"}, "That can't be a tool's step: 0.01 g to 5 g."},
		{&cure.CupsError{Largest: 30 * gram, Leftover: 2 * gram, Count: 900}, "This coat would take over 200 cups in a day. Split its surfaces, or find a cooler hour for larger cups."},
		{&cure.CupsError{Largest: 30 * gram, Leftover: 32 * gram}, "What stays behind in each cup leaves nothing to spread. The cups are too small: cool the product, or find a cooler hour."},
		{&cure.ClashError{}, "With so much added, the least catalyst that cures the whole cup is more than the product takes. Add less thinner, wax or pigment."},
		{&cure.OutsideError{}, "The table's dose is at the card's limit and leaves no room for the tool's error. Check floor, ceiling and table on the card."},
		{&cure.NoRoomError{}, "The table's dose is at the card's limit and leaves no room for the tool's error. Check floor, ceiling and table on the card."},
		{&cure.PartError{Part: cure.ThinnerPart, Value: 7 * gram, Least: 1 * gram, Most: 5 * gram}, "The amount of thinner can't be right: 7 g."},
		{&cure.TestTooCoarseError{Has: 0.004, Most: 0.0025}, "This tool errs by 0.4 % by mass in a cup this small, too much to time a gel by. Use a finer one."},
		{&cure.CoarseToolError{Least: decimal.NewFromInt(20), Scale: unit.InGram}, "The tool is too coarse for a part this small: it measures 20 g at least. Use a finer one, or mix a larger cup."},
		{bench.ErrTestCooler, "Let the product come to the part's temperature first: a cooler test doesn't count for it."},
		{bench.ErrPuttyResin, "The putty has no resin. Add it to the recipe: Build-up, Putty mixed by hand."},
		{bench.ErrPuttyRecipe, "The putty's recipe isn't whole yet, or can't be mixed as it is. Open it on Build-up, Putty mixed by hand."},
		{bench.ErrPuttyHardener, "The putty has no hardener. Add it to the recipe by the ratio on the resin's tin: so much hardener to so much resin, without the fillers."},
		{bench.ErrPuttyCatalyst, "A hand-mixed putty is dosed here only with a resin that has its hardener in a fixed ratio. Compare it with an epoxy filler, or use filler from the tin."},
		{bench.ErrOtherDay, "The readings are from another day. Read the temperatures and the humidity again."},
		{bench.ErrUnread, "A figure that the dose depends on can't be read, so there is no dose. The field says what is wrong."},
		{bench.ErrJump, "A temperature is more than 15 °C away from the last cup's. Say at its field if it is right."},
		{bench.ErrNoTime, "It would gel in the cup before it can be spread. Cool the product, or wait for a cooler hour."},
		{&cure.PeroxideError{Cause: cure.NotPromoted, Has: cure.Ketone, Takes: []cure.Family{cure.Ketone}}, "This product isn't promoted by its maker, or isn't known to be. No dose."},
		{&cure.PeroxideError{Cause: cure.FamilyUnknown, Has: cure.UnknownFamily, Takes: []cure.Family{cure.Ketone, cure.Cumene}}, "This product takes " + cure.Ketone.String() + " or " + cure.Cumene.String() + ", and the kind of this catalyst isn't known. Choose another."},
		{&cure.PeroxideError{Cause: cure.FamilyRefused, Has: cure.Cumene, Takes: []cure.Family{cure.Ketone}}, "This product takes " + cure.Ketone.String() + ", not " + cure.Cumene.String() + ". Never mix two kinds of peroxide."},
		{&cure.RatioError{Cause: cure.RatioMissing}, "No ratio is supplied for this product. Type it on the card, from the tin."},
		{&cure.RatioError{Cause: cure.DensityMissing}, "Millilitres can't be turned into grams without the densities of both parts. Type the ratio by mass, if the tin gives it."},
		{&bench.PigmentError{Share: 0.09, Limit: 0.05}, "Pigment paste comes to 9 % by mass, over the card's limit of 5 % by mass. Type less."},
		{&cure.FarError{Value: celsius(5), Nearest: celsius(25)}, "No minutes are given at 5 °C: the nearest known gel time was taken at 25 °C. Log a cup test nearer to it."},
		{&cure.EnergyError{Energy: 140e3, Least: 20e3, Most: 130e3}, "Your cup tests don't fit together: by them, temperature would change the gel time as in no such product (140 kJ/mol). Check them in the Log, or remove one."},
		{&cure.InCupError{Cup: 700 * gram, Most: 500 * gram}, "No minutes are known for a cup of 700 g: the largest tested allows 500 g."},
		{&bench.UnfitError{Findings: []air.Finding{{Condition: air.TooDamp, Value: 0.9, Limit: 0.8}, {Condition: air.TooHot, Value: float64(celsius(37)), Limit: float64(celsius(35))}}}, "Not fit to coat now. Air 90 %, damper than the card's 80 %. Surface 37 °C, above the card's highest, 35 °C."},
		{bench.ErrHotFlowCoat, "Over 35 °C the wax of a flow coat melts and doesn't film over: it stays tacky. Wait for a cooler hour, or shade and cool the part."},
		{bench.ErrNoPatch, "Over 30 °C a flow coat needs a test patch that has cured. Type its day on the card."},
		{&air.InputError{Input: air.DayHigh}, "The highest air of the day must not be under the lowest."},
		{&air.InputError{Input: air.DayLow}, "The lowest air of the day can't be right."},
		{&air.InputError{Input: air.CardHumidity}, "The card's humidities can't be met: check them."},
		{&air.InputError{Input: air.CardTemperature}, "The card's temperatures can't be met: check them."},
		{&working.RangeError{Arg: working.Arg{Meaning: "gel time", Scale: unit.InMinute, Min: 1, Max: 90}, Value: 95}, "The gel time comes to 95 min, outside what can be worked out."},
	} {
		assert.Equal(t, c.want, plainly(words.Dose(c.err, job.Units{})), "%T %+v", c.err, c.err)
	}
}

// What is wrong with a text names what was found and what it may be, each in its own place.
func TestARefusalNamesItsFigures(t *testing.T) {
	p80, p220 := grade(t, "P80"), grade(t, "P220")
	length, film_ := job.FieldAt("surface.1.length"), job.FieldAt("buildup.1.step.1.film")
	count := job.FieldAt("surface.1.count")
	for _, c := range []struct {
		err   error
		field *job.Field
		want  string
	}{
		{&unit.ReadError{Text: "1,500", Cause: unit.TwoReadings, Readings: []string{"1500", "1.5"}}, length, "1,500 can be read two ways. Type 1500 or 1.5."},
		{&unit.ReadError{Cause: unit.WhichUnit, Readings: []string{"US gal", "imp gal"}}, length, "Which one? Type US gal or imp gal."},
		{&unit.ReadError{Cause: unit.UnknownUnit, Readings: []string{"mm", "m"}}, length, "That unit isn't known. These are: mm, m."},
		{&unit.ReadError{Cause: unit.OtherUnit, Readings: []string{"mm", "m"}}, length, "That unit doesn't fit here. These do: mm, m."},
		{&unit.ReadError{Cause: unit.MixedCompound}, length, "The parts don't fit together. Type it like 450 mm or 2 ft 6 in."},
		{&unit.ReadError{Text: "abc", Cause: unit.NotANumber}, film_, "That isn't a number. Type it like 400 µm."},
		{&job.RangeError{Field: length, Value: 0}, length, "This must be more than zero. Type a figure from 1 mm to 100 000 mm."},
		{&job.RangeError{Field: length, Value: 1e-9}, length, "That is too small. Type a figure from 1 mm to 100 000 mm."},
		{&job.RangeError{Field: length, Value: 1e9}, length, "That is too large. Type a figure from 1 mm to 100 000 mm."},
		{&job.WordsError{Length: 900, Most: 400}, nil, "That is too long. Keep it under 400 letters."},
		{&surface.Error{Reason: surface.Missing}, length, "Type a figure."},
		{&surface.Error{Reason: surface.Missing, Dim: surface.FacesKey}, length, "Choose the faces that are coated."},
		{&surface.Error{Reason: surface.TooSmall, Limit: 0.02}, length, "That is too small: at least 20 mm."},
		{&surface.Error{Reason: surface.TooLarge, Limit: 3}, length, "That is too large: less than 3000 mm."},
		{&surface.Error{Reason: surface.TooLarge, Dim: surface.CutOutsKey}, length, "The cut-outs are as large as the surface, or larger. Check their sizes."},
		{&surface.Error{Reason: surface.TooLarge, Dim: surface.AreaKey}, length, "The area comes out larger than any boat's. Check the sizes and their units."},
		{&surface.Error{Reason: surface.TooFew, Limit: 3}, count, "Add more: at least 3 are needed."},
		{&surface.Error{Reason: surface.TooMany, Limit: 200}, count, "Too many: at most 200."},
		{&surface.Error{Reason: surface.CantClose, Limit: 2}, length, "These sides can't close: the longest must be shorter than the other two together (2000 mm)."},
		{&surface.Error{Reason: surface.NotAscending, Limit: 2}, length, "Each station must lie beyond the one before it (2000 mm)."},
		{&surface.Error{Reason: surface.GivenTwice}, length, "This is said twice, in two ways. Empty one of the two."},
		{&plan.CoatTooThickError{Each: 900e-6, Most: 600e-6, Coats: 3}, film_, "A coat of 900 µm wet is over the card's largest, 600 µm. Type at least 3 coats, or leave the field empty."},
		{&plan.CoatTooThickError{Each: 900e-6, Most: 600e-6, Limit: plan.MostWall}, film_, "A coat of 900 µm wet is over the card's largest on a wall, 600 µm. Type a thinner film for each coat, and more coats. If that was mil typed as mm, it is 0.0229 mm."},
		{&plan.CoatTooThickError{Each: 900e-6, Most: 600e-6, Limit: plan.MostOverhead, Coats: 2}, film_, "A coat of 900 µm wet is over the card's largest overhead, 600 µm. Type at least 2 coats, or leave the field empty."},
		{&plan.ThinnerError{Share: 0.12, Limit: 0.1, ByMass: true}, nil, "Thinner comes to 12 % by mass, over the card's limit of 10 % by mass. Type less."},
		{&plan.ThinnerError{Share: 0.12, Limit: 0.1, WithWax: true}, nil, "Thinner comes to 12 % by volume with the wax solution, over the card's limit of 10 % by volume. Type less."},
		{&order.PackError{Cause: order.NoPacks}, nil, "No pack size is sold here. Type one on the card, or say there that one is sold."},
		{&order.PackError{Cause: order.TooManySizes}, nil, "At most six pack sizes can be compared."},
		{&order.PackError{Cause: order.BadPrice}, nil, "The packs can't be chosen. Check their sizes and prices on the card."},
		{&cure.CupsError{Largest: 30 * gram, Leftover: 32 * gram}, nil, "What stays behind in cup and tool (32 g) leaves nothing of the card's largest batch (30 g). Type a larger batch on the card, or choose another method."},
		{&plan.WaitsError{LeftOut: plan.LeftOut{Name: "Hull", By: "surface.1.length"}}, nil, "Waits for Hull (" + length.Name + ")."},
		{&plan.WaitsError{}, nil, "Waits for Unnamed surface."},
		{&working.RangeError{Arg: working.Arg{Meaning: "wet film", Scale: unit.InMicrometre, Min: 10, Max: 5000}, Value: 9}, nil, "This leads to a figure outside what can be worked out (wet film, 10 to 5000 µm). Check the figures of this step and of its card."},
		{&job.LimitError{List: &job.List{Key: "surface", Max: 500}, Items: 501}, nil, "A job holds at most 500 of these. Remove some, or start another job."},
		{&buildup.StepError{Cause: buildup.TooManySteps}, nil, "A build-up has at most 40 steps. Remove some."},
		{&buildup.StepError{Cause: buildup.TooManyRounds}, nil, "A step is done at most 50 times. Type fewer rounds."},
		{&buildup.StepError{Cause: buildup.OutOfRange}, nil, "The film of this step can't be worked out. Check what it adds and takes, and the steps before it."},
		{&buildup.TooUnevenError{CV: 0.5, Below: 0.3}, nil, "More film doesn't help here, a more even one does: its unevenness must come under 30 %."},
		{&fairing.ReadingError{Row: 1, Column: 4}, nil, "Row 2, reading 5 is further than a straight-edge ever stands off: at most 500 mm."},
		{&sanding.NoSequenceError{From: p80, To: p220}, nil, "No usual grade stands between P80 and P220. Type the grades one by one."},
		{&sanding.Jump{From: p80, To: p220}, nil, "From P80 to P220 is a wide step. Put a grade in between."},
		{&job.OrderError{Before: p220, After: p80}, nil, "P80 after P220 scratches again. Type the grades from coarse to fine, each once."},
		{&plan.GradesError{First: p220, Last: p80}, nil, "The last grade, P80, is coarser than the first, P220. Swap them."},
		{&plan.RoundTakesError{Takes: 80e-6, Adds: 50e-6}, nil, "Each round puts on 50 µm and is sanded back by 80 µm. Take less than a round puts on."},
		{&film.CombError{LastWet: 500e-6, FirstDry: 400e-6}, nil, "The first dry tooth must stand higher than the last wet one (500 µm). Read the comb again."},
		{&sanding.GradeError{Text: "320", Cause: sanding.WhichSystem, Readings: []string{"P320", "US 320"}}, nil, "Two systems use that number, and they differ. Type P320 or US 320, whichever is printed on the back of the sheet."},
		{&sanding.GradeError{Text: "US 1000", Cause: sanding.NotMapped}, nil, "No printed table gives a P grade for US 1000, only for US 320, US 400, US 500 and US 600. Type a P grade."},
		{&sanding.GradeError{Text: "blue"}, nil, "There is no grade blue. Type one like P220, or US 400 for an American one."},
		{&fairing.SizeError{Rows: 1, Columns: 7}, nil, "A grid has 2 to 100 rows of 2 to 100 readings. This has 1 rows of 7."},
		{&fairing.RaggedError{Row: 2, Has: 4, First: 5}, nil, "Row 3 has 4 readings, the first row 5. Every row needs the same number."},
		{&fairing.CellError{Row: 0, Column: 2, Cause: fairing.Blank}, nil, "Row 1, reading 3 is empty. Type what you read there; 0 only if it was 0."},
		{&fairing.CellError{Row: 0, Column: 2, Text: "3 in", First: "4 mm", Cause: fairing.MixedUnit}, nil, "Row 1, reading 3 (3 in) is in another unit than the first reading (4 mm). Use one unit for the whole grid."},
		{&fairing.CellError{Row: 0, Column: 2, Text: "9 m", Cause: fairing.OutOfReach}, nil, "Row 1, reading 3 (9 m) is further than a straight-edge ever stands off: at most 500 mm."},
		{&fairing.CellError{Row: 3, Column: 0, Cause: fairing.Unreadable, Read: &unit.ReadError{Cause: unit.NotANumber}}, nil, "Row 4, reading 1: That isn't a number. Type it like 12.5."},
		{fairing.CellErrors{{Row: 0, Column: 0}, {Row: 1, Column: 1}, {Row: 2, Column: 2}}, nil, "Row 1, reading 1 is empty. Type what you read there; 0 only if it was 0. 2 more like it."},
		{fairing.CellErrors{{Row: 0, Column: 0}}, nil, "Row 1, reading 1 is empty. Type what you read there; 0 only if it was 0."},
		{&fairing.SplitError{Cause: fairing.CommaTwoWays, Text: "1,5"}, nil, "“1,5” can be two readings, or one with a decimal comma. Separate the readings with spaces or semicolons."},
		{&fairing.BalloonError{Share: 0.7, Most: 0.62}, nil, "Balloons would be 70 % of the putty by volume. Over 62 % the resin can't wet them. Add resin, or fewer balloons."},
	} {
		assert.Equal(t, c.want, plainly(words.Sentence(c.err, c.field, job.Units{})), "%T %+v", c.err, c.err)
	}
}

func grade(t *testing.T, text string) sanding.Grade {
	t.Helper()
	g, err := sanding.ReadGrade(text)
	require.NoError(t, err)
	return g
}

// What isn't learned from says so of a cup by its cup, of finished work by its step.
func TestWhatIsNotLearnedFromSaysWhy(t *testing.T) {
	for err, want := range map[error][2]string{
		chance.ErrNoUse:     {"no catalyst went into it", "no cup was mixed for this step"},
		chance.ErrLeftOpen:  {"type what was left over.", "of its cups that gelled or were left open"},
		chance.ErrNoPlanned: {"this area should have taken", "nothing was planned when it was logged"},
		chance.ErrUnlikely:  {"until you say that it is right", "until you say that it is right"},
		errUnheard{}:        {"its figures can't be right", "its figures can't be right"},
	} {
		assert.Contains(t, words.EntryDoesntTeach(err, true), want[0])
		assert.Contains(t, words.EntryDoesntTeach(err, false), want[1])
	}
	assert.Contains(t, words.EntryDoesntTeach(&order.LogError{Cause: order.ThinFilm}, true), "a thin film, not a low loss")
	assert.Contains(t, words.EntryDoesntTeach(&order.LogError{Cause: order.Unlikely}, true), "more than five times apart")
	assert.Contains(t, words.EntryDoesntTeach(&order.LogError{Cause: order.BadMass}, true), "its figures can't be right")
}
