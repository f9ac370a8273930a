package view

import (
	"strconv"
	"strings"

	"shedreckoner/calc/air"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// sumsSheet is every figure of the cup, each with its working.
func sumsSheet(s *page.State) shown {
	return shown{Title: words.AllFigures, Body: region("sums", "div", a("class", "figures"), cupFigures(s))}
}

func cupFigures(s *page.State) html {
	b := s.Bench()
	if _, may := s.DoseFor(); !may || !b.HasHand || s.NextWaits() {
		return el("p", a("class", "hint"), txt(words.NoFigures))
	}
	line := func(id, name, value string, step *working.Step) html {
		if step == nil {
			return nothing
		}
		return figure(s, id, name, value, step)
	}
	mass := func(id, name string, f working.Figure[unit.Mass]) html {
		return line(id, name, of(s, f, unit.CupWeights), f.Step)
	}
	parts := []html{}
	if b.HasDose {
		parts = append(parts, line("dose.share", words.OfAllThatCures, words.ByMass(unit.Write(float64(b.Dose.OfWhole.Value), unit.InPercent, 3)), b.Dose.OfWhole.Step))
	}
	if m := b.Minutes; m != nil {
		parts = append(parts, line("usable", words.UsableFromIn, minutes(m.Spread.Value), m.Spread.Step), line("mixed", words.OfTheseToMix, minutes(m.Mix.Value), m.Mix.Step),
			line("gels.from", words.GelsFromFigure, minutes(m.GelsFrom.Value), m.GelsFrom.Step), line("gels.until", words.GelsUntilFigure, minutes(m.GelsUntil.Value), m.GelsUntil.Step))
	}
	for i, l := range b.Size.Limits {
		parts = append(parts, mass("largest."+strconv.Itoa(i), words.LargestBy(words.Bound(l.Bound)), l.Mass))
	}
	return join(append(parts, mass("smallest", words.SmallestCup, b.Size.Smallest), mass("weigh.product", words.ProductInIt, b.Mix.Product), mass("weigh.thinner", words.ThinnerInIt, b.Mix.Thinner),
		mass("weigh.wax", words.WaxInIt, b.Mix.Wax), mass("weigh.pigment", words.PigmentInIt, b.Mix.Pigment), mass("weigh.whole", words.AllInTheCup, b.Whole),
		line("covers", words.Capital(words.Covers), of(s, b.Facts.Covers, unit.Areas), b.Facts.Covers.Step), line("perarea", words.MixForArea, of(s, b.PerArea, unit.AreaWeights), b.PerArea.Step),
		line("cups", words.CupsForCoat, unit.Number(float64(b.Facts.Cups.Value), 3), b.Facts.Cups.Step), mass("cuploss", words.StaysBehind, b.Cups.Loss))...)
}

// spaceSheet is the styrene of this cup, in the shed and in a closed space.
func spaceSheet(s *page.State) shown {
	options := []job.Option{}
	for _, e := range air.Exposures {
		options = append(options, job.Option{Key: e.Agency, Name: words.ExposureLimit(e.Agency, unit.Number(float64(e.EightHours)*1e6, 4), e.Dated)})
	}
	return shown{Title: words.StyreneInAir, Body: join(
		fieldWith(s, at("locker"), fieldExtras{Default: words.NotClosed}),
		region("vapourfigures", "div", a("class", "figures"), vapourFigures(s)),
		fieldWith(s, at("agency"), fieldExtras{Options: options, First: words.LowestListed(options[0].Name)}))}
}

func vapourFigures(s *page.State) html {
	v := &s.Bench().Vapour
	if !v.Known {
		return el("p", a("class", "hint"), txt(words.VapourWaits))
	}
	verdictText := words.VapourCaution
	if v.IsBeyond {
		verdictText = words.AirCantDoIt
	}
	parts := []html{
		figure(s, "vapour.off", words.CupGivesOff, roughly(s, v.GivenOff, unit.CupWeights), v.GivenOff.Step),
		coatVapour(s),
		figure(s, "vapour.air", words.AirToStayUnder(v.Limit.Agency), roughly(s, v.Air, unit.AirFlows), v.Air.Step),
		el("p", a("class", "caution"), txt(verdictText)),
	}
	if v.Space.Step != nil {
		parts = append(parts, figure(s, "vapour.locker", words.OfExplosiveLimit, unit.Write(float64(v.Space.Value), unit.InPercent, 3), v.Space.Step),
			el("p", a("class", "caution"), txt(words.Danger(v.Danger))))
	}
	return join(append(parts, dayVapour(s))...)
}

// coatVapour is all the cups of a coat, which leave within one hour.
func coatVapour(s *page.State) html {
	coat := s.Bench().Vapour.Coat
	if coat.Step == nil {
		return nothing
	}
	return figure(s, "vapour.coat", words.CupsToCome, roughly(s, coat, unit.CupWeights), coat.Step)
}

// dayVapour is what the day gives off by method, and the air for it.
func dayVapour(s *page.State) html {
	v := &s.Bench().Vapour
	parts := []html{el("h3", nil, txt(words.TodaysVapour))}
	for i, g := range v.Day {
		name := words.WayNotKnown
		if g.Method != nil {
			name = g.Method.Name
		}
		parts = append(parts, figure(s, "vapour.day."+strconv.Itoa(i), name+", "+words.Counted(g.Cups, "cup", "cups"), roughly(s, g.Mass, unit.CupWeights), g.Mass.Step))
	}
	return join(append(parts, figure(s, "vapour.dayair", words.DayAir, roughly(s, v.DayAir, unit.AirFlows), v.DayAir.Step))...)
}

// flowSheet is thinner towards a flow time.
func flowSheet(s *page.State) shown {
	return shown{Title: words.FlowTime, Body: join(el("p", a("class", "hint"), txt(words.FlowHint)),
		field(s, at("flow-thinner-1")), field(s, at("flow-seconds-1")), field(s, at("flow-thinner-2")), field(s, at("flow-seconds-2")), field(s, at("flow-wanted")), field(s, at("flow-cup")),
		region("flowfigures", "div", a("class", "figures"), flowFigures(s)))}
}

func flowFigures(s *page.State) html {
	f := s.Bench().Flow()
	parts := []html{}
	if f.Err != nil {
		parts = append(parts, el("p", a("class", "bad"), txt(words.Dose(f.Err, s.Plan.Job.Units))))
	} else if f.Thinner.Step != nil {
		parts = append(parts, figure(s, "flow.thinner", words.FlowThinner, unit.Write(float64(f.Thinner.Value), unit.InPercent, 3), f.Thinner.Step))
	}
	if f.Viscosity.Step != nil {
		parts = append(parts, figure(s, "flow.viscosity", words.Viscosity, unit.Write(float64(f.Viscosity.Value), unit.InSquareMillimetrePerSec, 3), f.Viscosity.Step))
	}
	return join(parts...)
}

// remediesSheet sets side by side what can be done about heat and cold.
func remediesSheet(s *page.State) shown {
	return shown{Title: words.Remedies, Body: region("remedies", "section", nil, remedies(s))}
}

func remedies(s *page.State) html {
	if len(s.Bench().Offers()) == 0 {
		return el("p", a("class", "hint"), txt(words.NoRemedies))
	}
	var rows []html
	for _, o := range s.Bench().Offers() {
		var gain []string
		if o.Remedy == cure.OtherHour {
			gain = append(gain, words.RemedyAt(words.Hour(o.Hour)))
		}
		switch {
		case o.Target.Step != nil:
			gain = append(gain, words.RemedyTo(of(s, o.Target, unit.Temperatures)))
		case o.Mass.Step != nil:
			gain = append(gain, words.RemedyTo(of(s, o.Mass, unit.CupWeights)))
		}
		switch {
		case o.Opens:
			gain = append(gain, words.RemedyOpens)
		case o.Minutes.Step != nil:
			gain = append(gain, words.RemedyGains(minutes(o.Minutes.Value)))
		}
		if len(gain) == 0 {
			gain = []string{words.RemedyBySheet}
		}
		rows = append(rows, el("li", nil, el("strong", nil, txt(words.RemedyWords[o.Remedy])), el("p", nil, txt(strings.Join(gain, " "))), el("p", a("class", "hint"), txt(words.Risk(o.Risk)))))
	}
	return el("ul", a("class", "remedies"), rows...)
}
