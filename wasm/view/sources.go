package view

import (
	"shedreckoner/calc"
	"shedreckoner/calc/source"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// sourcesScreen lists every rule with its formula, source, mark and checks, then
// the documents, all as the sums declare them.
func sourcesScreen(*page.State) html {
	parts := []html{el("p", a("class", "lead"), txt(words.SourcesLead))}
	for i, topic := range calc.Topics {
		var rules []html
		for j, r := range topic.Rules() {
			checks := calc.Checked.Of(i, j)
			if checks == "" {
				checks = words.NothingFromOutside
			}
			rules = append(rules, el("li", nil, el("p", a("class", "what"), txt(words.Capital(r.Result.Meaning))), el("p", a("class", "formula"), formulaOf(r.Formula, r.IsProse)),
				el("p", a("class", "source"), txt(words.RuleSource(r.Source.String(), r.Mark.String(), checks)))))
		}
		parts = append(parts, el("h2", nil, txt(words.Capital(topic.Name))), el("ul", a("class", "working"), rules...))
	}
	var documents []html
	for _, d := range source.Documents {
		by := d.By
		if !d.Seen {
			by += words.FromMemory
		}
		documents = append(documents, el("li", nil, el("p", a("class", "what"), txt(words.Capital(d.Title))), el("p", a("class", "source"), txt(by))))
	}
	return join(append(parts, el("h2", nil, txt(words.DocumentsTitle)), el("ul", a("class", "working"), documents...))...)
}

// about is which version this is, and where its sums come from.
func about(s *page.State) html {
	return join(el("h2", nil, txt(words.AboutThisPage)),
		el("p", a("class", "hint"), txt(words.Version), el("span", a("id", "version"), txt(s.Version))),
		action("go", "sources", "", words.SourcesOfTheSums, "quiet"))
}
