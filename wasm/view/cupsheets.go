package view

import (
	"strings"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// cupSheets is what a cup needs only sometimes, by the kind of its sheet.
var cupSheets = map[string]func(*page.State) shown{
	page.WeighSheet: weigh, page.CatalystSheet: catalystStep, page.WontSheet: wont, page.NextCup: next,
	"what": what, "how": how, "setup": setupSheet, "remedies": remediesSheet, "sums": sumsSheet, "flow": flowSheet, "shedcard": shedCardSheet,
	page.FitSheet: fitSheet, bench.AirSheet: airSheet, page.AirMoreSheet: airMoreSheet, page.TodaySheet: todaySheet, bench.SpaceSheet: spaceSheet, bench.TinSheet: tinSheet, bench.HandSheet: handSheet,
}

func at(key string) string    { return job.BenchPath + "." + key }
func today(key string) string { return job.DayPath + "." + key }

// next plans another cup while one runs.
func next(s *page.State) shown {
	out := now(s, true)
	out.Title = words.NextCup
	return out
}

// what is what the cup is mixed for: a coat that the job has to do, or a material.
func what(s *page.State) shown {
	var rows []html
	for _, o := range stepOptions(s) {
		rows = append(rows, choiceRow("for", "coat "+o.Key, o.Name, o.Key == s.Chosen().Coat))
	}
	if len(rows) > 0 {
		rows = append([]html{el("h3", nil, txt(words.CoatsToDo))}, rows...)
	}
	rows = append(rows, el("h3", nil, txt(words.AnyAmount)))
	for _, o := range benchCards(s) {
		rows = append(rows, choiceRow("for", "card "+o.Key, o.Name, s.Chosen().Coat == "" && s.Chosen().Card != nil && s.Chosen().Card.Key == o.Key))
	}
	for _, key := range []string{"for", "step", "card"} {
		rows = append(rows, region("say-"+at(key), "div", a("class", "say"), said(s, at(key), job.FieldAt(at(key)))))
	}
	return shown{Title: words.WhatFor, Body: region("what", "div", a("class", "choices"), rows...)}
}

// choiceRow is one answer of a long choice: a tap takes it.
func choiceRow(do, text, name string, chosen bool) html {
	return el("button", a("class", "choice", "type", "button", "id", "choice-"+classOf(text), "data-do", do, "data-path", "", "data-text", text, "aria-pressed", yesNo(chosen)), txt(name))
}

// classOf makes an id's part of a text.
func classOf(text string) string {
	return strings.Map(func(r rune) rune {
		if 'a' <= r && r <= 'z' || '0' <= r && r <= '9' || r == '.' {
			return r
		}
		return '-'
	}, text)
}

// how is how the cup is put on.
func how(s *page.State) shown {
	return shown{Title: words.HowPutOn, Body: join(
		chips(s, at("method"), words.Method, methodKey(s)),
		fieldWith(s, at("film"), fieldExtras{Default: benchFilm(s)}),
		more(bench.HandSheet, words.MinutesToMix), more("flow", words.FlowTime))}
}

// methodKey is the method that the cup is planned with: what was chosen, or that of its coat.
func methodKey(s *page.State) string {
	if m := s.Bench().Method; m != nil {
		return m.Key
	}
	return ""
}

// handSheet is the minutes that the hand takes.
func handSheet(s *page.State) shown {
	return shown{Title: words.MinutesToMix, Body: join(dial(s, at("mixing"), dialLine{Default: "1.5"}), dial(s, at("stretch"), dialLine{Default: "1"}))}
}

// setupSheet is what is assumed of a cup, and the way to all that is needed only sometimes.
func setupSheet(s *page.State) shown {
	return shown{Title: words.AllElse, Body: join(
		dial(s, at("product-temp"), dialLine{Default: words.AsTheSurface}),
		toolFields(s),
		fieldWith(s, at("thinner"), fieldExtras{Default: words.None, Hint: words.ThinnerHint}), field(s, at("thinner-by")),
		fieldWith(s, at("pigment"), fieldExtras{Default: words.None}),
		markup.Kept("setup-more", struct{}{}, setupMore))}
}

// setupMore leads from the setup of a cup on to all that is needed only sometimes.
func setupMore(id string, _ struct{}) html {
	return region(id, "div", a("class", "menu"),
		more(bench.TinSheet, words.TinAndTests), more(bench.AirSheet, words.TodaysAir), more(bench.HandSheet, words.MinutesToMix), more("flow", words.FlowTime),
		more(bench.SpaceSheet, words.StyreneInAir), more("remedies", words.Remedies), more("sums", words.AllFigures), more("shedcard", words.ShedCard))
}

// toolFields is the tool and its step; a fixed ratio has no catalyst.
func toolFields(s *page.State) html {
	tool := s.Doc().Get(at("tool"))
	key := map[string]string{job.BySyringe: "syringe-step", job.ByDrops: "drops"}[tool]
	if key == "" {
		key = "scale-step"
	}
	hint := map[string]string{"drops": words.DropsHint, "scale-step": words.ScaleHint}[key]
	question := whichTool(s.Chosen().IsRatio)
	parts := []html{el("h3", nil, txt(question)), chips(s, at("tool"), question, ""), fieldWith(s, at(key), fieldExtras{Hint: hint})}
	if s.Chosen().IsRatio || s.Doc().Get(at("mark")) != "" {
		parts = append(parts, fieldWith(s, at("mark"), fieldExtras{Default: "1 mL"}))
	}
	if !s.Chosen().IsRatio || s.Doc().Get(at("catalyst")) != "" {
		parts = append(parts, fieldWith(s, at("catalyst"), fieldExtras{Options: catalystOptions(s), First: firstCatalyst(s)}))
	}
	return region("toolfields", "section", nil, parts...)
}

// tinSheet is the tin's name, how its gel time is known, and how it is timed.
func tinSheet(s *page.State) shown {
	var steps []html
	for _, t := range words.TestSteps {
		steps = append(steps, el("li", nil, txt(t)))
	}
	return shown{Title: words.TinAndTests, Body: join(
		fieldWith(s, at("tin"), fieldExtras{Hint: words.TinHint}),
		region("gelcurve", "section", nil, gelSection(s)),
		el("h3", nil, txt(words.HowToTime)), el("ol", nil, steps...)),
		Act: testAct(s)}
}

// more leads on to a sheet.
func more(sheet, name string) html {
	return el("button", a("class", "quiet", "type", "button", "id", page.OpenerID(sheet), "data-do", "sheet", "data-path", sheet), txt(name))
}

// benchCards is all that can be mixed.
func benchCards(s *page.State) []job.Option {
	return cardsBy(s, words.ShortName, func(c *job.Card) bool { return plan.Fits("coat", c) || plan.Fits("fill", c) })
}

// stepOptions is every coat of every build-up that has an area.
func stepOptions(s *page.State) []job.Option {
	options := []job.Option{}
	for _, b := range s.Plan.Buildups() {
		for _, step := range b.Steps {
			if step.Coat != nil && step.Coat.Mix.Step != nil && !step.Progress.IsDone() {
				options = append(options, job.Option{Key: step.Path, Name: s.StepName(step.Path)})
			}
		}
	}
	return options
}

func catalystOptions(s *page.State) []job.Option {
	return cardsBy(s, words.ShortName, func(c *job.Card) bool { return c.Kind == material.Catalyst })
}

func firstCatalyst(s *page.State) string {
	if s.Chosen().Card == nil {
		return ""
	}
	if c := s.Plan.Job.CardByKey(s.Chosen().Card.Hardener); c != nil {
		return words.ShortName(c)
	}
	return ""
}

// benchFilm says whose film holds while none is typed. It is no figure: a
// control's own markup must not change as it is typed in.
func benchFilm(s *page.State) string {
	if s.Chosen().Coat != "" {
		return words.CoatsOwn
	}
	return words.CardsLargest
}

// lastCups is what is wrong with figures that the page takes down itself, which
// only a file can make wrong: nobody types them.
func lastCups(s *page.State) html {
	var parts []html
	for _, key := range []string{"product-was", "surface-was", "read-at", "read-on"} {
		parts = append(parts, region("say-"+at(key), "div", a("class", "say"), said(s, at(key), job.FieldAt(at(key)))))
	}
	return join(parts...)
}
