package view

import (
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// settings is the job's name and currency, units, the look, and the job as a
// file. What is chosen once lies behind its line.
func settings(s *page.State) html {
	return join(
		el("div", a("class", "form"), field(s, "name"), fieldWith(s, "currency", fieldExtras{Default: words.None})),
		jobsLine(s),
		region("units", "section", a("class", "units"),
			el("h2", nil, txt(words.UnitsTitle)),
			el("div", a("class", "itemtools"), action("system", "", "metric", words.AllMetric, "quiet"), action("system", "", "us", words.AllUSCustomary, "quiet")),
			decimalMark(s.Plan.Job.Units.Comma),
			setup("units", words.UnitsLine, page.UnitsSheet)),
		region("looks", "section", nil, el("h2", nil, txt(words.LookTitle)), looks(s)),
		region("file", "section", nil, el("h2", nil, txt(words.TheJobAsAFile)),
			el("div", a("class", "itemtools"), action("export", "", "", words.ExportJob, "quiet"), action("pick", "", "", words.ImportAJob, "quiet"),
				action("link", "", "", words.ShareAsALink, "quiet")),
			el("p", a("class", "hint"), txt(words.ExportNowAndThen)),
			look("kept", words.KeptLine, page.KeptSheet)),
		region("madeup", "section", nil, action("demo", "", "", words.LookAtMadeUp, "quiet")),
		region("about", "section", nil, about(s)),
		offline(s),
	)
}

// unitsSheet is what a bare number means, measure by measure.
func unitsSheet(s *page.State) shown {
	return shown{Title: words.UnitsTitle, Body: region("measures", "section", a("class", "measures"),
		el("p", a("class", "hint"), txt(words.AnyUnit)),
		unitChoices(s))}
}

// keptSheet is where a job is kept, and who gets to see it.
func keptSheet(s *page.State) shown {
	var lines []html
	for _, text := range words.WhereKept {
		lines = append(lines, el("p", nil, txt(text)))
	}
	return shown{Title: words.KeptTitle, Body: join(lines...)}
}

// offline says whether the page works without a network. It is known a while after the start, so it stands last: nothing
// moves away under a thumb.
func offline(s *page.State) html {
	text := map[string]string{"yes": words.KeptOffline, "no": words.NotKeptOffline}[s.Offline]
	return region("offline", "p", a("class", "hint"), txt(text))
}

func unitChoices(s *page.State) html {
	units := s.Plan.Job.Units
	var rows []html
	for _, m := range unit.Choosable {
		var buttons []html
		for _, scale := range m.Scales() {
			buttons = append(buttons, el("button", a("class", "switch", "type", "button", "id", "unit-"+m.Key()+scale.Symbol(), "data-do", "unit",
				"data-path", m.Key(), "data-text", scale.Symbol(), "aria-pressed", yesNo(units.Scale(m) == scale)), txt(scale.Symbol())))
		}
		name := words.Capital(m.Name())
		rows = append(rows, el("div", a("class", "measure", "role", "group", "aria-label", name), el("span", nil, txt(name)), el("div", a("class", "switches"), buttons...)))
	}
	return join(rows...)
}

func decimalMark(isComma bool) html {
	choice := func(key, name string, on bool) html {
		return el("button", a("class", "switch", "type", "button", "id", "decimal-"+key, "data-do", "decimal", "data-text", key, "aria-pressed", yesNo(on)), txt(name))
	}
	return el("fieldset", a("class", "switches"), el("legend", nil, txt(words.DecimalsTitle)),
		choice("point", words.DecimalPoint, !isComma), choice("comma", words.DecimalComma, isComma),
		hint(words.EitherMark))
}

func looks(s *page.State) html {
	var buttons []html
	for _, l := range []struct{ key, name string }{{"", words.AsThePhone}, {"light", words.LookSun}, {"dark", words.LookDark}} {
		buttons = append(buttons, el("button", a("class", "switch", "type", "button", "id", "look-"+l.key, "data-do", "look", "data-text", l.key,
			"aria-pressed", yesNo(s.Look == l.key)), txt(l.name)))
	}
	return el("div", a("class", "switches"), buttons...)
}
