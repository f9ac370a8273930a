package view

import (
	"math"
	"strconv"
	"strings"

	"shedreckoner/calc/air"
	"shedreckoner/calc/bench"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// airSheet is today's air, its curve, and whether it is fit to coat.
func airSheet(s *page.State) shown {
	return shown{Title: words.TodaysAir, Body: join(
		dial(s, today("read-temp"), dialLine{Name: "Air"}), dial(s, today("read-humidity"), dialLine{Name: "Humidity"}),
		fieldWith(s, today("read-at"), fieldExtras{Default: "now"}),
		dial(s, today("low"), dialLine{Name: "Lowest"}), dial(s, today("high"), dialLine{Name: "Highest"}),
		chips(s, today("sun"), "the part stands", nil), chips(s, today("colour"), "its colour", nil),
		fieldWith(s, today("sunrise"), fieldExtras{Default: "6:00"}),
		region("aheadfield", "div", nil, aheadField(s)),
		region("fit", "section", a("class", "fit"), fitSection(s)))}
}

// aheadField is the coldest hour ahead, where it isn't asked for beside the surface.
func aheadField(s *page.State) html {
	if s.AsksAhead() {
		return nothing
	}
	return field(s, at("ahead"))
}

// fitSection says if it is fit to coat: now, through the cure, and in which
// hours of today.
func fitSection(s *page.State) html {
	out := &s.Bench().Air
	head := el("h2", nil, txt("Fit to coat"))
	if !out.Known {
		return join(head, el("p", a("class", "hint"), txt("Told once today's air is typed: temperature and humidity now, lowest and highest of the day.")))
	}
	units := s.Plan.Job.Units
	dew := unit.Write(float64(air.RoundUp(out.DewPoint.Value, units.Scale(unit.Temperatures))), units.Scale(unit.Temperatures), 3)
	return join(head, fitVerdict(s),
		el("div", a("class", "figures"),
			figure(s, "dew", "Dew point", dew, out.DewPoint.Step),
			figure(s, "overdew", "Surface over the dew point", of(s, out.OverDew, unit.Differences), out.OverDew.Step)),
		readingOff(s), dayCurve(s), hoursOfToday(s), cardsToday(s))
}

// readingOff asks about a reading that the day's curve doesn't bear out.
func readingOff(s *page.State) html {
	off := s.Bench().Air.Day.ReadingOff()
	if off >= -air.MostOff && off <= air.MostOff {
		return nothing
	}
	text := unit.Write(math.Abs(float64(off)), s.Plan.Job.Units.Scale(unit.Differences), 2)
	return el("p", a("class", "ask"), txt("The air that was read lies "+text+" from the curve between the day's low and high. Look at all three, and at the hour."))
}

func fitVerdict(s *page.State) html {
	out := &s.Bench().Air
	units := s.Plan.Job.Units
	if len(out.Now)+len(out.Through) == 0 {
		return el("p", a("class", "good"), txt("Nothing speaks against it now, nor through the cure by today's curve."))
	}
	var lines []html
	for _, f := range out.Now {
		lines = append(lines, el("li", nil, txt("Now: "+words.FindingSentence(f, units))))
	}
	for _, f := range out.Through {
		lines = append(lines, el("li", nil, txt("From "+hour(f.At)+", while it cures: "+words.FindingSentence(f, units))))
	}
	return join(el("p", a("class", "bad"), txt("Not fit to coat now.")), el("ul", a("class", "reasons"), lines...))
}

// hour writes a time from midnight as a time of day.
func hour(t unit.Time) string {
	if t == unit.Day {
		return "midnight"
	}
	text := page.ClockText(int(t))
	if t >= unit.Day {
		text += " tomorrow"
	}
	return text
}

func hoursOfToday(s *page.State) html {
	out := &s.Bench().Air
	lines := []html{el("p", nil, txt("Hours of today for "+s.Bench().Card.Name+": "+hours(out.Windows)+"."))}
	for _, w := range out.Windows {
		latest, ok := w.LatestStart(s.Bench().Usable.Value)
		if ok && latest > w.From && s.Bench().HasHand {
			lines = append(lines, el("p", a("class", "hint"), txt("Latest start "+hour(latest)+", stop at "+hour(w.To)+".")))
		}
	}
	if !s.Bench().IsRatio {
		var spans []string
		for _, i := range out.DoseHours {
			spans = append(spans, hour(i.From)+" to "+hour(i.To))
		}
		text := "By today's curve no hour brings the surface inside the catalyst table."
		if len(spans) > 0 {
			text = "The surface lies inside the catalyst table from " + strings.Join(spans, ", and from ") + "."
		}
		lines = append(lines, el("p", a("class", "hint"), txt(text)))
	}
	return join(lines...)
}

func hours(windows []air.Window) string {
	var spans []string
	for _, w := range windows {
		spans = append(spans, hour(w.From)+" to "+hour(w.To))
	}
	if len(spans) == 0 {
		return "none"
	}
	return strings.Join(spans, ", ")
}

func cardsToday(s *page.State) html {
	var lines []html
	for _, c := range s.Bench().Air.Cards {
		text := hours(c.Windows)
		if c.Err != nil {
			text = words.Dose(c.Err, s.Plan.Job.Units)
		}
		lines = append(lines, el("li", nil, el("span", a("class", "label"), txt(c.Card.Name)), txt(" "), el("span", a("class", "value"), txt(text))))
	}
	return join(el("h3", nil, txt("What today would take")), el("ul", a("class", "today"), lines...))
}

// dayCurve is today's air and dew point with the hours that are fit to work in.
func dayCurve(s *page.State) html {
	out := &s.Bench().Air
	scale := s.Plan.Job.Units.Scale(unit.Temperatures)
	var airLine, dewLine []draw.Point
	low, high := out.Day.Dew(0), out.Day.Air(0)
	for i := range 49 {
		at := unit.Time(i) * unit.Hour / 2
		t, dew := out.Day.Air(at), out.Day.Dew(at)
		low, high = min(low, dew), max(high, t)
		airLine = append(airLine, draw.Point{X: float64(i) / 2, Y: scale.From(float64(t))})
		dewLine = append(dewLine, draw.Point{X: float64(i) / 2, Y: scale.From(float64(dew))})
	}
	var fit []draw.Interval
	for _, w := range out.Windows {
		fit = append(fit, draw.Interval{From: float64(w.From / unit.Hour), To: float64(w.To / unit.Hour)})
	}
	var latest *draw.Moment
	for _, w := range out.Windows {
		if at, ok := w.LatestStart(s.Bench().Usable.Value); ok && at > w.From && s.Bench().HasHand {
			latest = &draw.Moment{At: float64(at / unit.Hour), Text: "latest start " + hour(at)}
		}
	}
	return draw.Day(draw.DayPlot{
		Title:   "Air and dew point over today; fit to work: " + hours(out.Windows),
		Hours:   draw.Axis{Label: "hour", Ticks: []draw.Tick{{At: 0, Text: "0"}, {At: 6, Text: "6"}, {At: 12, Text: "12"}, {At: 18, Text: "18"}, {At: 24, Text: "24"}}},
		Degrees: draw.Axis{Label: "air, " + scale.Symbol(), Ticks: draw.NiceTicks(scale.From(float64(low)), scale.From(float64(high)), 5, tickText)},
		Air:     airLine, Dew: dewLine, Working: fit,
		Now:         &draw.Moment{At: float64(s.Now.Day) / 3600, Text: "now " + page.ClockText(s.Now.Day)},
		LatestStart: latest,
		AirName:     "air", DewName: "dew point", WorkingName: "fit to work",
	})
}

func tickText(n float64) string { return unit.Number(n, 4) }

// benchTable is the catalyst table of the card on the bench; a fixed ratio has
// none, nor has a card whose table can't be read.
func benchTable(b *bench.Bench) (cure.Table, bool) {
	if b.Card == nil || b.IsRatio {
		return cure.Table{}, false
	}
	table, err := chain.DoseTable(b.Card)
	return table, err == nil
}

// gelSection is the gel time over temperature, with today's point.
func gelSection(s *page.State) html {
	b := s.Bench()
	table, ok := benchTable(b)
	if !ok {
		return nothing
	}
	scale := s.Plan.Job.Units.Scale(unit.Temperatures)
	coldest, warmest := table.Ends()
	var line []draw.Point
	var band []draw.Span
	most := 0.0
	for i := range 21 {
		t := coldest + (warmest-coldest)*unit.Temperature(i)/20
		at := working.Given(t, "temperature", unit.InCelsius, "", source.Typed)
		share, err := table.At(at)
		if err != nil {
			continue
		}
		gel, err := b.Gel.At(at, share)
		if err != nil {
			continue
		}
		x := scale.From(float64(t))
		line = append(line, draw.Point{X: x, Y: unit.InMinute.From(float64(gel.Mid.Value))})
		span := draw.Span{X: x, Low: unit.InMinute.From(float64(gel.Early.Value)), High: unit.InMinute.From(float64(gel.Late.Value))}
		band, most = append(band, span), max(most, span.High)
	}
	if len(line) < 2 {
		return nothing
	}
	return join(el("h2", nil, txt("Gel time over temperature")), gelCurve(s, scale, line, band, most), fitWords(b))
}

func gelCurve(s *page.State, scale unit.Scale, line []draw.Point, band []draw.Span, most float64) html {
	plot := draw.CurvePlot{
		Title: "Gel time over the temperature of the surface, with the table's catalyst",
		X:     draw.Axis{Label: "surface, " + scale.Symbol(), Ticks: draw.NiceTicks(line[0].X, line[len(line)-1].X, 5, tickText)},
		Y:     draw.Axis{Label: "min", Ticks: draw.NiceTicks(0, most, 5, tickText)},
		Line:  line, Band: band, LineName: "middle", BandName: "early to late",
		Shaded: []draw.Interval{{From: scale.From(float64(s.Bench().Card.SurfaceLeast.Value)), To: scale.From(float64(s.Bench().Card.SurfaceMost.Value))}}, ShadedName: "the card's range",
	}
	if h := &s.Bench().Hand; s.Bench().HasHand {
		mid := h.Film.Mid.Value
		plot.Mark = &draw.Mark{Point: draw.Point{X: scale.From(float64(s.Plan.Job.Bench.Surface.Value)), Y: unit.InMinute.From(float64(mid))}, Text: "now " + minutes(mid)}
	}
	return draw.Curve(plot)
}

func fitWords(b *bench.Bench) html {
	text := map[cure.Fit]string{
		cure.FromCard: "By the card alone, 100 g. Your own cup tests replace it.", cure.Scaled: "Moved by your own cup tests; the steepness is the card's.",
		cure.Fitted: "Fitted to your own cup tests.", cure.FittedUnusual: "Fitted to your own cup tests, unusually: only between their temperatures.",
	}[b.Gel.Fit]
	return el("p", a("class", "hint"), txt(text))
}

// shedCardSheet is the card for the wall.
func shedCardSheet(s *page.State) shown {
	return shown{Title: words.ShedCard, Body: region("shedcard", "section", nil, shedCardSection(s))}
}

// shedCardSection is the card for the wall: doses by temperature and cup size.
func shedCardSection(s *page.State) html {
	b := s.Bench()
	table, ok := benchTable(b)
	if !ok {
		return nothing
	}
	if len(b.Reasons) > 0 || len(page.OpenCups(s.Doc(), page.Running)) > 0 || s.NextWaits() || s.Slot().Elsewhere != "" { // no dose stands beside a reason against it, nor beside a running cup
		return el("p", a("class", "hint"), txt("A shed card for the wall can be printed while a cup could be mixed, and none runs."))
	}
	rows := bench.ShedCard(&s.Plan, s.BenchNow(), table)
	if len(rows) == 0 {
		return el("p", a("class", "hint"), txt("A shed card for the wall can be printed once scale or syringe is typed."))
	}
	head := []html{el("th", a("scope", "col"), txt("Surface"))}
	for _, cup := range bench.ShedCups {
		head = append(head, el("th", a("scope", "col"), txt(unit.Write(float64(cup), unit.InGram, 4))))
	}
	var lines []html
	for _, r := range rows {
		cells := []html{el("th", a("scope", "row"), txt(unit.Write(float64(r.Surface), s.Plan.Job.Units.Scale(unit.Temperatures), 3)))}
		for _, d := range r.Doses {
			cells = append(cells, el("td", nil, txt(d)))
		}
		lines = append(lines, el("tr", nil, cells...))
	}
	return el("div", a("class", "shedcard"), el("h2", nil, txt("Shed card: "+b.Card.Name)),
		el("p", nil, txt("Catalyst by the temperature of the surface and the mass of all that cures. "+s.Now.Date)),
		wideTable("shed-table", words.ShedCard, el("thead", nil, el("tr", nil, head...)), el("tbody", nil, lines...)),
		el("p", nil, txt(shedLimits(s, table))),
		el("ul", a("class", "cautions"), el("li", nil, txt("Outside this table: no dose.")), el("li", nil, txt("Goggles and gloves on, eyewash in reach. Rinse at once and long.")),
			el("li", nil, txt("Never two kinds of peroxide, never peroxide on promoter.")), el("li", nil, txt("One dose a cup; nothing is added later.")),
			el("li", nil, txt("The maker's sheet stands above this card."))),
		el("div", a("class", "itemtools"), action("print", "", "shed", "Print the shed card", "quiet")))
}

func shedLimits(s *page.State, table cure.Table) string {
	scale := s.Plan.Job.Units.Scale(unit.Temperatures)
	c := s.Bench().Card
	return "Surface and product " + unit.Write(float64(c.SurfaceLeast.Value), scale, 3) + " to " + unit.Write(float64(c.SurfaceMost.Value), scale, 3) +
		". At least " + unit.Write(float64(c.Floor.Value), unit.InPercent, 3) + " by mass of all that cures, at most " + unit.Write(float64(c.Ceiling.Value), unit.InPercent, 3) +
		" by mass of the product. " + strconv.Itoa(len(table.Rows())) + " rows, straight lines between them."
}
