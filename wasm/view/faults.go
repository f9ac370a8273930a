package view

import (
	"slices"
	"strings"

	"shedreckoner/calc/fault"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// faultAnswer is which causes of a cup's fault the log bears out, with the sign that
// was found, and the way to the rest. Where it bears none out, the rest stands here.
func faultAnswer(s *page.State, cup string) html {
	found := foundOf(s, cup)
	borne, others, against := sortedCauses(s, found)
	switch {
	case len(found) == 0:
		return nothing
	case len(borne) == 0:
		return join(append(otherCauses(words.NoSignAtAll, others, against), sourceHint(found))...)
	}
	return join(el("h3", nil, txt(words.BorneOut)), el("ul", a("class", "causes borne"), borne...), sourceHint(found),
		look("causes", words.CausesLine(len(others), len(against)), page.Part(cup, page.CausesPart)))
}

// causesSheet is what else a fault may come from: first what the log shows no sign
// of, in no order, then what it contradicts, in short.
func causesSheet(s *page.State, cup string) shown {
	found := foundOf(s, cup)
	_, others, against := sortedCauses(s, found)
	return shown{Title: words.CausesMore, Body: el("div", a("class", "fault"), append(otherCauses(words.NoSignAmongOthers, others, against), sourceHint(found))...)}
}

// foundOf is the causes of a cup's fault; none without one, or of a material that is
// gone.
func foundOf(s *page.State, cup string) []fault.Found {
	if c := s.Plan.Job.CupByPath(cup); c != nil && c.Fault != "" {
		return fault.Of(&s.Plan, c)
	}
	return nil
}

// sortedCauses are those that the log bears out, those that it is silent on, and
// those that it contradicts.
func sortedCauses(s *page.State, found []fault.Found) (borne, others, against []html) {
	for i := range found {
		switch f := &found[i]; {
		case f.IsBorneOut():
			borne = append(borne, faultItem(s, f))
		case f.IsAgainst():
			against = append(against, el("li", nil, el("p", nil, txt(words.FaultText(f).Cause)), hint(words.SignText(f, s.Plan.Job.Units))))
		default:
			others = append(others, faultItem(s, f))
		}
	}
	return borne, others, against
}

func otherCauses(title string, others, against []html) (parts []html) {
	if len(others) > 0 {
		parts = append(parts, el("h3", nil, txt(title)), el("ul", a("class", "causes"), others...))
	}
	if len(against) > 0 {
		parts = append(parts, el("h3", nil, txt(words.Contradicted)), el("ul", a("class", "causes"), against...))
	}
	return parts
}

func sourceHint(found []fault.Found) html { return hint(words.FaultSources(sourcesOf(found))) }

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
	case f.IsBorneOut():
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
