package view

import (
	"slices"
	"strings"

	"shedreckoner/calc/fault"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// faultAnswer is what a fault of a cup may come from: what the log bears out
// first, with the sign that was found, then the rest, in no order, and what the
// log speaks against in short.
func faultAnswer(s *page.State, cup string) html {
	c := s.Plan.Job.CupByPath(cup)
	if c == nil || c.Fault == "" {
		return nothing
	}
	var borne, others, against []html
	found := fault.Of(&s.Plan, c)
	if len(found) == 0 {
		return nothing // of a material that is gone
	}
	for i := range found {
		switch f := &found[i]; {
		case f.IsBorne():
			borne = append(borne, faultItem(s, f))
		case f.IsAgainst():
			against = append(against, el("li", nil, el("p", nil, txt(words.FaultText(f).Cause)), hint(words.SignText(f, s.Plan.Job.Units))))
		default:
			others = append(others, faultItem(s, f))
		}
	}
	parts := []html{}
	if len(borne) > 0 {
		parts = append(parts, el("h3", nil, txt(words.BornOut)), el("ul", a("class", "causes borne"), borne...))
	}
	if len(others) > 0 {
		title := words.NoSignAmongOthers
		if len(borne) == 0 {
			title = words.NoSignAtAll
		}
		parts = append(parts, el("h3", nil, txt(title)), el("ul", a("class", "causes"), others...))
	}
	if len(against) > 0 {
		parts = append(parts, el("h3", nil, txt(words.SpokenAgainst)), el("ul", a("class", "causes"), against...))
	}
	return join(append(parts, hint(words.FaultSources(sourcesOf(found))))...)
}

// sourcesOf names the sources of causes, each once.
func sourcesOf(found []fault.Found) string {
	var list []string
	for _, f := range found {
		if text := f.Source.String(); !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	return strings.Join(list, "; ")
}

func faultItem(s *page.State, f *fault.Found) html {
	text, units := words.FaultText(f), s.Plan.Job.Units
	parts := []html{el("p", a("class", "what"), txt(text.Cause))}
	switch {
	case f.IsBorne():
		parts = append(parts, el("p", a("class", "sign"), txt(words.SignText(f, units))))
	case f.Known:
		parts = append(parts, hint(words.SignText(f, units)+" "+words.NoCombRead))
	}
	verdict := words.WaitingIsNoCure
	if f.Waits {
		verdict = words.WaitForIt
	}
	return el("li", nil, append(parts, el("p", nil, el("strong", nil, txt(verdict+" ")), txt(text.Remedy)), hint(words.NextText(f, units)))...)
}
