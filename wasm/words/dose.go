package words

import (
	"errors"
	"strconv"
	"strings"

	"shedreckoner/calc/air"
	"shedreckoner/calc/bench"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/film"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Dose says why there is no dose, and what would bring it back.
func Dose(err error, units job.Units) string {
	w := writer{units}
	for _, say := range []func(error) string{w.temperatures, w.tables, w.cups, w.peroxides, w.gels, w.readings} {
		if text := say(err); text != "" {
			return text
		}
	}
	return Sentence(err, nil, units)
}

func (w writer) temp(t unit.Temperature) string {
	return unit.Write(float64(t), w.units.Scale(unit.Temperatures), 3)
}

func (w writer) grams(m unit.Mass) string {
	return unit.Write(float64(m), w.units.Scale(unit.CupWeights), 3)
}

func percent[Q unit.Quantity](c Q) string {
	return ByMass(unit.Write(float64(c), unit.InPercent, 3))
}

var whose = map[cure.Reading]string{cure.Surface: "The surface", cure.Product: "The product", cure.EveningAir: "The evening air"}

func (w writer) temperatures(err error) string {
	var limits *cure.TemperatureError
	var evening *cure.ColdEveningError
	var apart *cure.ApartError
	var steep *cure.SteepError
	switch {
	case errors.As(err, &limits):
		return whose[limits.Of] + " is at " + w.temp(limits.Value) + ". This material takes " + w.temp(limits.Coldest) + " to " + w.temp(limits.Warmest) + "."
	case errors.As(err, &evening):
		if evening.Ahead == 0 {
			return "The next four hours aren't known. Type today's air first."
		}
		return "The air, or the part where it is colder, falls to " + w.temp(evening.Ahead) + " within four hours, below the " + w.temp(evening.Coldest) + " that the cure needs. Start earlier, or keep the shed warm through the night."
	case errors.As(err, &apart):
		return "Product and surface differ by more than 15 °C: how it would gel isn't known. Bring the product to the surface's temperature."
	case errors.As(err, &steep):
		return "The product is warmer than the surface, and the two ask for doses too far apart: it would gel in the cup. Cool the product, or warm the surface."
	}
	return ""
}

func (w writer) tables(err error) string {
	var beyond *cure.BeyondTableError
	var table *cure.TableError
	switch {
	case errors.As(err, &beyond):
		text := whose[beyond.Of] + " is at " + w.temp(beyond.Value) + ". The catalyst table ends at "
		if beyond.IsCold() {
			return text + w.temp(beyond.Coldest) + ", and more catalyst doesn't cure a cold film. Warm the part and the shed first."
		}
		return text + w.temp(beyond.Warmest) + ", and no dose is guessed beyond it."
	case errors.As(err, &table):
		return tableSentence(table)
	case errors.Is(err, chain.ErrNoTable):
		return "This card has no catalyst table. Type the one from the maker's sheet on the card."
	case errors.Is(err, chain.ErrUnfinished):
		return "A row of your catalyst table isn't finished. Type both temperature and catalyst, or remove the row."
	}
	return ""
}

func tableSentence(e *cure.TableError) string {
	row := unit.Number(float64(e.Row+1), 3)
	switch e.Fault {
	case cure.TooFewRows:
		return "A catalyst table needs two rows at least: nothing is read off a single one."
	case cure.TooManyRows:
		return "A catalyst table has at most 40 rows."
	case cure.NotATemperature:
		return "Row " + row + " of your catalyst table: the temperature can't be right."
	case cure.NotAShare:
		return "Row " + row + " of your catalyst table: catalyst from 0.2 to 5 % by mass."
	case cure.SameTemperature:
		return "Row " + row + " of your catalyst table has the temperature of the row before it."
	}
	return "Row " + row + " of your catalyst table is colder than the row before it. Type the rows from cold to warm."
}

func (w writer) cups(err error) string {
	var large *cure.CupTooLargeError
	var tool *cure.NotWithThisToolError
	var step *cure.ToolError
	var day *cure.CupsError
	var clash *cure.ClashError
	var outside *cure.OutsideError
	var room *cure.NoRoomError
	var part *cure.PartError
	var coarse *cure.TestTooCoarseError
	var weigh *cure.CoarseToolError
	switch {
	case errors.Is(err, bench.ErrTestCooler):
		return "Let the product come to the part's temperature first: a cooler test doesn't count for it."
	case errors.Is(err, bench.ErrPuttyRecipe):
		return "The putty's recipe isn't whole yet, or can't be mixed as it is. Open it on Build-up, Putty mixed by hand."
	case errors.Is(err, bench.ErrPuttyResin):
		return "The putty has no resin. Add it to the recipe: Build-up, Putty mixed by hand."
	case errors.Is(err, bench.ErrPuttyHardener):
		return "The putty has no hardener. Add it to the recipe by the ratio on the resin's tin: so much hardener to so much resin, without the fillers."
	case errors.Is(err, bench.ErrPuttyCatalyst):
		return "A hand-mixed putty is dosed here only with a resin that has its hardener in a fixed ratio. Compare it with an epoxy filler, or use filler from the tin."
	case errors.Is(err, bench.ErrNoTime):
		return "It would gel in the cup before it can be spread. Cool the product, or wait for a cooler hour."
	case errors.As(err, &coarse):
		return "This tool errs by " + percent(coarse.Has) + " in a cup this small, too much to time a gel by. Use a finer one."
	case errors.As(err, &weigh):
		return "The tool is too coarse for a part this small: it measures " + unit.WithUnit(weigh.Least.String(), weigh.Scale) + " at least. Use a finer one, or mix a larger cup."
	case errors.As(err, &large):
		return "The largest cup right now is " + w.grams(large.Largest) + ". Mix less."
	case errors.As(err, &tool):
		return "Not with this " + toolWord(tool.Tool.Kind()) + ": it can dose cups of " + w.grams(tool.Smallest) + " or more. Use a finer one, or mix a larger cup if the minutes allow."
	case errors.As(err, &step):
		return "That can't be a tool's step: " + step.Least + " to " + step.Most + "."
	case errors.As(err, &day) && day.Count > 0:
		return "This coat would take over " + strconv.Itoa(cure.MaxCups) + " cups in a day. Split its surfaces, or find a cooler hour for larger cups."
	case errors.As(err, &day):
		return "What stays behind in each cup leaves nothing to spread. The cups are too small: cool the product, or find a cooler hour."
	case errors.As(err, &clash):
		return "With so much added, the least catalyst that cures the whole cup is more than the product takes. Add less thinner, wax or pigment."
	case errors.As(err, &outside), errors.As(err, &room):
		return "The table's dose is at the card's limit and leaves no room for the tool's error. Check floor, ceiling and table on the card."
	case errors.As(err, &part):
		return "The amount of " + part.Part.String() + " can't be right: " + w.grams(part.Value) + "."
	}
	return ""
}

func toolWord(k cure.ToolKind) string {
	return map[cure.ToolKind]string{cure.Scale: "scale", cure.Syringe: "syringe", cure.Drops: "drop count"}[k]
}

func (w writer) peroxides(err error) string {
	var peroxide *cure.PeroxideError
	var ratio *cure.RatioError
	var pigment *bench.PigmentError
	switch {
	case errors.As(err, &peroxide):
		if peroxide.Cause == cure.NotPromoted {
			return "This product isn't promoted by its maker, or isn't known to be. No dose."
		}
		var takes []string
		for _, f := range peroxide.Takes {
			takes = append(takes, f.String())
		}
		if peroxide.Has == cure.UnknownFamily {
			return "This product takes " + strings.Join(takes, " or ") + ", and the kind of this catalyst isn't known. Choose another."
		}
		return "This product takes " + strings.Join(takes, " or ") + ", not " + peroxide.Has.String() + ". Never mix two kinds of peroxide."
	case errors.As(err, &ratio):
		if ratio.Cause == cure.RatioMissing {
			return "No ratio is supplied for this product. Type it on the card, from the tin."
		}
		return "Millilitres can't be turned into grams without the densities of both parts. Type the ratio by mass, if the tin gives it."
	case errors.As(err, &pigment):
		return "Pigment paste comes to " + percent(pigment.Share) + ", over the card's limit of " + percent(pigment.Limit) + ". Type less."
	}
	return ""
}

func (w writer) gels(err error) string {
	var far *cure.FarError
	var test *cure.TestError
	var energy *cure.EnergyError
	var gel *cure.GelError
	var inCup *cure.InCupError
	switch {
	case errors.As(err, &far):
		return "No minutes are given at " + w.temp(far.Value) + ": the nearest known gel time was taken at " + w.temp(far.Nearest) + ". Log a cup test nearer to it."
	case errors.As(err, &test):
		return "A cup test can't be right. Check its mass, temperature, catalyst and minutes in the Log."
	case errors.As(err, &energy):
		return "Your cup tests don't fit together: by them, temperature would change the gel time as in no such product (" +
			unit.Write(float64(energy.Energy), unit.InKilojoulePerMole, 3) + "). Check them in the Log, or remove one."
	case errors.As(err, &gel):
		return "The card's gel time can't be used. Check its figures on the card."
	case errors.As(err, &inCup):
		return "No minutes are known for a cup of " + w.grams(inCup.Cup) + ": the largest tested allows " + w.grams(inCup.Most) + "."
	}
	return ""
}

func (w writer) readings(err error) string {
	var input *air.InputError
	var ruled *working.RangeError
	var flow *film.FlowError
	var unfit *bench.UnfitError
	var explosive *bench.ExplosiveError
	switch {
	case errors.As(err, &unfit) && len(unfit.Findings) > 0:
		text := NotFitNow
		for _, f := range unfit.Findings {
			text += " " + FindingSentence(f, w.units)
		}
		return text
	case errors.As(err, &explosive):
		return "In this closed space the vapour would reach its explosive limit. Open it up and move the air through it, or put on less at a time."
	case errors.Is(err, bench.ErrOtherDay):
		return "The readings are from another day. Read the temperatures and the humidity again."
	case errors.Is(err, bench.ErrUnread):
		return "A figure that the dose depends on can't be read, so there is no dose. The field says what is wrong."
	case errors.Is(err, bench.ErrHotFlowCoat):
		return "Over 35 °C the wax of a flow coat melts and doesn't film over: it stays tacky. Wait for a cooler hour, or shade and cool the part."
	case errors.Is(err, bench.ErrNoPatch):
		return "Over 30 °C a flow coat needs a test patch that has cured. Type its day on the card."
	case errors.Is(err, bench.ErrJump):
		return "A temperature is more than 15 °C away from the last cup's. Say at its field if it is right."
	case errors.As(err, &input):
		return dayWords[input.Input]
	case errors.As(err, &flow):
		return "The flow time can't be worked out from these readings: both at one temperature, at least a tenth apart, and the wanted time between them."
	case errors.As(err, &ruled):
		return "The " + ruled.Arg.Meaning + " comes to " + unit.WithUnit(unit.Number(ruled.Value, 3), ruled.Arg.Scale) + ", outside what can be worked out."
	}
	return ""
}

var dayWords = map[air.Input]string{
	air.DayLow: "The lowest air of the day can't be right.", air.DayHigh: "The highest air of the day must not be under the lowest.",
	air.Sunrise: "Sunrise must be before noon.", air.ReadTemperature: "The air temperature can't be right.",
	air.ReadHumidity: "Humidity goes from 1 to 100 %.", air.ReadHour: "The hour of the reading can't be right.",
	air.CardTemperature: "The card's temperatures can't be met: check them.", air.CardHumidity: "The card's humidities can't be met: check them.",
}

// FindingSentence says why it is not fit to coat.
func FindingSentence(f air.Finding, units job.Units) string {
	scale := f.Condition.Scale()
	switch scale {
	case unit.InCelsius:
		scale = units.Scale(unit.Temperatures)
	case unit.InCelsiusDifference:
		scale = units.Scale(unit.Differences)
	}
	value, limit := unit.Write(f.Value, scale, 3), unit.Write(f.Limit, scale, 3)
	switch f.Condition {
	case air.TooCold:
		return "Surface " + value + ", below the card's lowest, " + limit + "."
	case air.TooHot:
		return "Surface " + value + ", above the card's highest, " + limit + "."
	case air.TooDry:
		return "Air " + value + ", drier than the card's " + limit + "."
	case air.TooDamp:
		return "Air " + value + ", damper than the card's " + limit + "."
	}
	return Capital(overLimit(unit.TemperatureDifference(f.Value), f.Limit, units))
}

// RemedyWords names what can be done, and RiskWords what it can spoil.
var RemedyWords = map[cure.Remedy]string{
	cure.CoolProduct: "Cool the product, closed tin in iced water", cure.Shade: "Shade the part", cure.OtherHour: "Do it at another hour",
	cure.SmallerCup: "Half the cup; weigh out several beforehand, without catalyst", cure.Tray: "Pour it into a tray at once",
	cure.SlowerPeroxide: "A slower catalyst, if the maker of the product names one",
	cure.WarmProduct:    "Warm the closed tin in a warm room", cure.WarmPart: "Warm the part, before and through the cure",
	cure.WarmShed: "Keep the shed warm into the night",
}

// RiskWords says what a remedy can spoil.
var RiskWords = map[cure.Risk]string{
	cure.Sweats: "A tin colder than the dew point sweats: wipe it dry before you open it, so that no water gets in.", cure.SunComesRound: "The sun comes round while the film gels.",
	cure.DewIsNear: "Early in the day the dew point is near.", cure.MoreJoins: "More joins, and more doses to get right.",
	cure.MoreVapour:  "A wide surface gives off more styrene.",
	cure.WrongFamily: "Never two kinds of peroxide together.", cure.Ignites: "No flame, no glowing element, no unvented heater. Never warm peroxide.",
}
