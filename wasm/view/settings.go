package view

import (
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// settings is the job's name and units, the look, and the job as a file.
func settings(s *page.State) html {
	return join(
		el("div", a("class", "form"), field(s, "name"), fieldWith(s, "currency", fieldExtras{Default: "none"})),
		region("units", "section", a("class", "units"),
			el("h2", nil, txt("Units")),
			el("p", a("class", "hint"), txt("Any field takes any unit: 450\u00a0mm, 18\u00a0mil, 2\u00a0ft\u00a06\u00a0in. This is what a bare number means, and what figures are shown in.")),
			el("div", a("class", "itemtools"), action("system", "", "metric", "All metric", "quiet"), action("system", "", "us", "All US customary", "quiet")),
			unitChoices(s)),
		region("looks", "section", nil, el("h2", nil, txt("Look")), looks(s)),
		region("file", "section", nil, el("h2", nil, txt("The job as a file")),
			el("div", a("class", "itemtools"), action("export", "", "", "Export the job", "quiet"), action("pick", "", "", "Import a job", "quiet"),
				action("link", "", "", "Share as a link", "quiet")),
			el("p", a("class", "hint"), txt("A link carries the whole job, log and all, behind its #: no server gets to see it. Whoever has the link can read it.")),
			el("p", a("class", "hint"), txt("Everything is kept in this browser at every change. Some phones drop that after a week unused: add this page to the home screen, and export the job now and then.")),
			offline(s),
			el("p", a("class", "hint"), txt("Pages opened from the phone's own storage share one store with each other."))),
		region("madeup", "section", nil, el("h2", nil, txt("Made-up job")),
			el("p", a("class", "hint"), txt("An invented boat to look around in. Your own job stays as it is.")),
			action("demo", "", "", "Look at the made-up job", "quiet")),
		region("about", "section", nil, about(s)),
	)
}

// offline says if the page works without a network, once that is known.
func offline(s *page.State) html {
	switch s.Offline {
	case "yes":
		return el("p", a("class", "hint", "id", "offline"), txt(words.KeptOffline))
	case "no":
		return el("p", a("class", "hint", "id", "offline"), txt(words.NotKeptOffline))
	}
	return html{}
}

func unitChoices(s *page.State) html {
	units := s.Plan.Job.Units
	var rows []html
	for _, m := range unit.Chosen {
		var buttons []html
		for _, scale := range m.Scales() {
			buttons = append(buttons, el("button", a("class", "switch", "type", "button", "id", "unit-"+m.Key()+scale.Symbol(), "data-do", "unit",
				"data-path", m.Key(), "data-text", scale.Symbol(), "aria-pressed", yesNo(units.Scale(m) == scale)), txt(scale.Symbol())))
		}
		rows = append(rows, el("fieldset", a("class", "switches"), append([]html{el("legend", nil, txt(capital(m.Name())))}, buttons...)...))
	}
	return join(append(rows, decimalMark(units.Comma))...)
}

func decimalMark(isComma bool) html {
	choice := func(key, name string, on bool) html {
		return el("button", a("class", "switch", "type", "button", "id", "decimal-"+key, "data-do", "decimal", "data-text", key, "aria-pressed", yesNo(on)), txt(name))
	}
	return el("fieldset", a("class", "switches"), el("legend", nil, txt("Decimals")),
		choice("point", "Point", !isComma), choice("comma", "Comma", isComma),
		hint("Either is read. What could be taken for thousands is asked about."))
}

func looks(s *page.State) html {
	var buttons []html
	for _, l := range []struct{ key, name string }{{"", "As the phone"}, {"light", "Sun"}, {"dark", "Dark"}} {
		buttons = append(buttons, el("button", a("class", "switch", "type", "button", "id", "look-"+l.key, "data-do", "look", "data-text", l.key,
			"aria-pressed", yesNo(s.Look == l.key)), txt(l.name)))
	}
	return el("div", a("class", "switches"), buttons...)
}
