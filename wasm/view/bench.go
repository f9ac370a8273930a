package view

import (
	sums "shedreckoner/calc/bench"
	"strconv"

	"shedreckoner/calc/air"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
)

// bench is what is read and typed for the next cup. Its regions change with
// choices, never with what is typed.
func bench(s *page.State) html {
	at := func(key string) string { return job.BenchPath + "." + key }
	today := func(key string) string { return job.DayPath + "." + key }
	return region("bench", "section", a("class", "form bench"),
		el("h2", nil, txt("On the bench")),
		fieldWith(s, at("card"), fieldExtras{Options: benchCards(s), First: firstCard(s)}),
		amountFields(s),
		field(s, at("product-temp")),
		fieldWith(s, at("surface-temp"), fieldExtras{Hint: "By infrared, where it is coldest."}),
		el("h3", nil, txt("Today's air")),
		field(s, today("read-temp")), field(s, today("read-humidity")), fieldWith(s, today("read-at"), fieldExtras{Default: "now"}),
		field(s, today("low")), field(s, today("high")),
		fieldWith(s, today("sunrise"), fieldExtras{Default: "6:00"}),
		field(s, today("sun")), field(s, today("colour")),
		el("h3", nil, txt("How it is measured and put on")),
		catalystFields(s),
		field(s, at("method")),
		fieldWith(s, at("film"), fieldExtras{Default: benchFilm(s)}),
		fieldWith(s, at("thinner"), fieldExtras{Default: "none", Hint: "Counted with wax solution against the card's limit."}), field(s, at("thinner-by")),
		fieldWith(s, at("pigment"), fieldExtras{Default: "none"}),
		fieldWith(s, at("mixing"), fieldExtras{Default: "1.5"}), fieldWith(s, at("stretch"), fieldExtras{Default: "1"}),
		field(s, at("ahead")), field(s, at("mark")), field(s, at("read-at")),
		fieldWith(s, at("tin"), fieldExtras{Hint: "A new tin, a new name: it wants its own cup test."}),
		lastCups(s),
	)
}

// lastCups is what is wrong with the temperatures of the last cup, which only a
// file can make wrong: nobody types them.
func lastCups(s *page.State) html {
	var parts []html
	for _, key := range []string{"product-was", "surface-was"} {
		path := job.BenchPath + "." + key
		parts = append(parts, region("say-"+path, "div", a("class", "say"), said(s, path, job.FieldAt(path))))
	}
	return join(parts...)
}

func benchCards(s *page.State) []job.Option {
	var options []job.Option
	for i := range s.Plan.Job.Cards {
		if c := &s.Plan.Job.Cards[i]; plan.Fits("coat", c) || plan.Fits("fill", c) {
			options = append(options, job.Option{Key: c.Key, Name: c.Name})
		}
	}
	return options
}

func firstCard(s *page.State) string {
	if c := s.Plan.Job.CardByKey(sums.Card(&s.Plan)); c != nil {
		return c.Name
	}
	return ""
}

// amountFields is how much: an amount, or a coat of a build-up.
func amountFields(s *page.State) html {
	at := job.BenchPath
	if s.Doc().Get(at+".for") != job.ForStep {
		return join(field(s, at+".for"), fieldWith(s, at+".amount", fieldExtras{Hint: "In g, kg, oz, mL or fl oz."}))
	}
	return join(field(s, at+".for"), fieldWith(s, at+".step", fieldExtras{Options: stepOptions(s)}))
}

// stepOptions is every coat of every build-up that has an area.
func stepOptions(s *page.State) []job.Option {
	options := []job.Option{}
	for _, b := range s.Plan.Buildups {
		for i, step := range b.Steps {
			if step.Coat != nil && step.Coat.Mix.Step != nil {
				options = append(options, job.Option{Key: step.Path, Name: buildupName(s, b.Path) + ", step " + unit.Number(float64(i+1), 3) + ": " + step.Card.Name})
			}
		}
	}
	return options
}

// catalystFields is the peroxide and the tool; a fixed ratio has neither.
func catalystFields(s *page.State) html {
	if s.Bench().IsRatio {
		return nothing
	}
	at := job.BenchPath
	tool := s.Doc().Get(at + ".tool")
	key := map[string]string{job.BySyringe: "syringe-step", job.ByDrops: "drops"}[tool]
	if key == "" {
		key = "scale-step"
	}
	hint := map[string]string{"drops": "Count the drops in 1 mL yourself: bottles differ more than twofold.", "scale-step": "0.1\u00a0g is the tool for cups of 100 to 500\u00a0g."}[key]
	return join(
		fieldWith(s, at+".catalyst", fieldExtras{Options: catalystOptions(s), First: firstCatalyst(s)}),
		field(s, at+".tool"), fieldWith(s, at+"."+key, fieldExtras{Hint: hint}))
}

func catalystOptions(s *page.State) []job.Option {
	var options []job.Option
	for i := range s.Plan.Job.Cards {
		if c := &s.Plan.Job.Cards[i]; c.Kind == material.Catalyst {
			options = append(options, job.Option{Key: c.Key, Name: c.Name})
		}
	}
	return options
}

func firstCatalyst(s *page.State) string {
	if s.Bench().Card == nil {
		return ""
	}
	if c := s.Plan.Job.CardByKey(s.Bench().Card.Hardener); c != nil {
		return c.Name
	}
	return ""
}

// benchFilm says whose film holds while none is typed. It is no figure: a
// control's own markup must not change as it is typed in.
func benchFilm(s *page.State) string {
	if s.Doc().Get(job.BenchPath+".for") == job.ForStep {
		return "coat's own"
	}
	return "card's largest"
}

// vapourSection is the styrene of this cup. Its choice of limit stands outside
// of what changes.
func vapourSection(s *page.State) html {
	options := []job.Option{}
	for _, e := range air.Exposures {
		options = append(options, job.Option{Key: e.Agency, Name: e.Agency + ": " + unit.Number(float64(e.EightHours)*1e6, 4) + " ppm over 8 h (" + e.Dated + ")"})
	}
	return region("vapour", "section", a("class", "form"), el("h2", nil, txt("Styrene in the air")),
		fieldWith(s, job.BenchPath+".agency", fieldExtras{Options: options, First: "the lowest listed: " + options[0].Name}),
		fieldWith(s, job.BenchPath+".locker", fieldExtras{Default: "not in a closed space"}),
		region("vapourfigures", "div", a("class", "figures"), vapourFigures(s)))
}

func vapourFigures(s *page.State) html {
	v := &s.Bench().Vapour
	if !v.Known {
		return el("p", a("class", "hint"), txt("Told once the cup and the surface's temperature are typed."))
	}
	verdict := "Taken to leave within an hour. A caution, never a clearance: over a wet surface there is more than the shed's mean."
	if v.IsBeyond {
		verdict = "Air alone can't do it: no open door lets so much in. Wear a mask for organic vapours, and have others keep out."
	}
	parts := []html{
		figure(s, "vapour.off", "This cup gives off", of(s, v.GivenOff, unit.CupWeights), v.GivenOff.Step),
		coatVapour(s),
		figure(s, "vapour.air", "Fresh air to stay under "+v.Limit.Agency, of(s, v.Air, unit.AirFlows), v.Air.Step),
		el("p", a("class", "caution"), txt(verdict)),
	}
	if v.Space.Step != nil {
		parts = append(parts, figure(s, "vapour.locker", "Of the explosive limit, in the closed space", unit.Write(float64(v.Space.Value), unit.InPercent, 3), v.Space.Step),
			el("p", a("class", "caution"), txt(dangerWords[v.Danger])))
	}
	return join(append(parts, dayVapour(s))...)
}

// coatVapour is all the cups of a coat, which leave within one hour.
func coatVapour(s *page.State) html {
	coat := s.Bench().Vapour.Coat
	if coat.Step == nil {
		return nothing
	}
	return figure(s, "vapour.coat", "The cups of this coat still to come", of(s, coat, unit.CupWeights), coat.Step)
}

// dayVapour is what the day gives off by method, and the air for it.
func dayVapour(s *page.State) html {
	v := &s.Bench().Vapour
	parts := []html{el("h3", nil, txt("Today, with what is still to come"))}
	for i, g := range v.Day {
		name := "Way not known, taken as sprayed"
		if g.Method != nil {
			name = g.Method.Name
		}
		parts = append(parts, figure(s, "vapour.day."+strconv.Itoa(i), name+", "+counted(g.Cups, "cup", "cups"), of(s, g.Mass, unit.CupWeights), g.Mass.Step))
	}
	return join(append(parts, figure(s, "vapour.dayair", "Fresh air as a mean over 8 h, at the very least", of(s, v.DayAir, unit.AirFlows), v.DayAir.Step))...)
}

var dangerWords = map[air.Danger]string{
	air.BelowTenth: "Under a tenth of the explosive limit. That is no clearance: the lungs have theirs far below. Air at the lowest point, a second person outside.",
	air.Hazardous:  "A tenth of the explosive limit or more: a hazardous space. Not without forced air at the lowest point and a second person outside.",
	air.Explosive:  "Over the explosive limit. Don't.",
}

// flowSection is thinner towards a flow time.
func flowSection(s *page.State) html {
	at := func(key string) html { return field(s, job.BenchPath+"."+key) }
	return region("flow", "section", a("class", "form"), el("h2", nil, txt("Thinner for a flow time")),
		el("p", a("class", "hint"), txt("Two timed cups at one temperature, with different thinner, by volume.")),
		at("flow-thinner-1"), at("flow-seconds-1"), at("flow-thinner-2"), at("flow-seconds-2"), at("flow-wanted"), at("flow-cup"),
		region("flowfigures", "div", a("class", "figures"), flowFigures(s)))
}

func flowFigures(s *page.State) html {
	f := &s.Bench().Flow
	parts := []html{}
	if f.Err != nil {
		parts = append(parts, el("p", a("class", "bad"), txt(page.DoseSentence(f.Err, s.Plan.Job.Units))))
	} else if f.Thinner.Step != nil {
		parts = append(parts, figure(s, "flow.thinner", "Thinner, by volume of product", unit.Write(float64(f.Thinner.Value), unit.InPercent, 3), f.Thinner.Step))
	}
	if f.Viscosity.Step != nil {
		parts = append(parts, figure(s, "flow.viscosity", "Viscosity at that time, if it flows freely", unit.Write(float64(f.Viscosity.Value), unit.InSquareMillimetrePerSec, 3), f.Viscosity.Step))
	}
	return join(parts...)
}
