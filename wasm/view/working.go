package view

import (
	"strings"
	"unicode"

	"shedreckoner/calc/working"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// workings is how a figure was worked out: its last step first, which mostly is
// all that is asked for; behind a button the steps that lead to it, from the
// first computed on.
func workings(s *page.State, step *working.Step) html {
	texts := step.Texts()
	if len(texts) == 0 {
		return el("p", a("class", "working"), txt(words.NothingWorkedOut))
	}
	last := len(texts) - 1
	shown := texts[last:]
	if s.WholeWorking {
		shown = texts
	}
	var steps []html
	for _, t := range shown {
		steps = append(steps, el("li", nil, workingStep(t)))
	}
	attrs := a("class", "working")
	if !s.WholeWorking {
		attrs = append(attrs, a("start", number(last+1))...)
	}
	list := el("ol", attrs, steps...)
	if last == 0 {
		return list
	}
	name := words.StepsBefore(last)
	if s.WholeWorking {
		name = words.LastStepOnly
	}
	return join(list, action("whole", "", "", name, "quiet"))
}

func workingStep(t working.Text) html {
	parts := []html{el("p", a("class", "what"), txt(words.Capital(t.Name))), el("p", a("class", "numbers"), txt(t.Numbers))}
	if t.Formula != "" {
		parts = append(parts, el("p", a("class", "formula"), symbols(t.Formula)))
	}
	if len(t.Givens) > 0 {
		var givens []html
		for _, g := range t.Givens {
			givens = append(givens, el("li", nil, given(g)))
		}
		parts = append(parts, el("ul", a("class", "givens"), givens...))
	}
	source := t.Source
	if source != "" {
		source += " – "
	}
	return join(append(parts, el("p", a("class", "source"), markup.Verbatim(source+t.Mark)))...)
}

// given is what went into a formula, its sign first.
func given(text string) html {
	sign, meaning, found := strings.Cut(text, ": ")
	if !found || strings.Contains(sign, " ") {
		return txt(text)
	}
	return join(symbols(sign), txt(": "+meaning))
}

// symbols sets what stands behind a low line low, as people write T_1.
func symbols(text string) html {
	head, rest, found := strings.Cut(text, "_")
	parts := []html{txt(head)}
	for found {
		end := strings.IndexFunc(rest, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
		if end < 0 {
			end = len(rest)
		}
		low := rest[:end]
		head, rest, found = strings.Cut(rest[end:], "_")
		parts = append(parts, el("sub", nil, txt(low)), txt(head))
	}
	return join(parts...)
}
