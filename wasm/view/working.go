package view

import (
	"strings"
	"unicode"
	"unicode/utf8"

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

// workingStep is one step: a sentence of what comes from what, the formula, the
// same with the numbers in it, and the result.
func workingStep(t working.Text) html {
	parts := []html{el("p", a("class", "what"), sentenceOf(t))}
	if t.Formula != "" && !t.IsProse {
		parts = append(parts, el("p", a("class", "formula"), formulaOf(t.Formula, false)))
	}
	numbers := []html{el("strong", nil, txt("= "+t.Result))}
	if t.Numbers != "" {
		numbers = []html{symbols("= " + t.Numbers), el("strong", nil, txt("= "+t.Result))}
	}
	parts = append(parts, el("p", a("class", "numbers"), numbers...))
	var givens []html
	for _, f := range t.From {
		if (t.IsProse || f.Origin != "") && len(givens) < mostGivens {
			givens = append(givens, el("li", nil, symbols(f.Symbol), txt(words.GivenAs(f))))
		}
	}
	if more := len(t.From) - mostGivens; t.IsProse && more > 0 {
		givens = append(givens, el("li", nil, txt(words.AndMore(more))))
	}
	if givens != nil {
		parts = append(parts, el("ul", a("class", "givens"), givens...))
	}
	return join(append(parts, el("p", a("class", "source"), markup.Verbatim(words.SourceOf(t))))...)
}

// mostGivens is how many of the values that went into a step are listed.
const mostGivens = 6

// sentenceOf says what a step works out and from what, each with its symbol; of a
// method it is the method.
func sentenceOf(t working.Text) html {
	switch {
	case t.IsProse:
		return join(txt(words.Capital(t.Name)+": "), formulaOf(t.Formula, true), txt("."))
	case len(t.From) == 0:
		return txt(words.Capital(t.Name) + ".")
	}
	parts := []html{txt(words.Capital(t.Name) + words.ComesFrom)}
	for i, f := range t.From {
		switch {
		case i == 0:
		case i == len(t.From)-1:
			parts = append(parts, txt(words.LastOfList))
		default:
			parts = append(parts, txt(", "))
		}
		parts = append(parts, txt(f.Name+"\u00a0"), symbols(f.Symbol))
	}
	return join(append(parts, txt("."))...)
}

// formulaOf sets a formula, or a method that is told in words.
func formulaOf(text string, isProse bool) html {
	if isProse {
		return lowered(text)
	}
	return symbols(text)
}

// symbols sets a formula as print does: a letter that stands for a quantity
// slanted, what is behind its low line low, a power high.
func symbols(formula string) html {
	tokens := working.Tokens(formula)
	var parts []html
	for i := 0; i < len(tokens); i++ {
		tok := tokens[i]
		isPower := tok.Text == "^" || tok.Text == " " && i+1 < len(tokens) && tokens[i+1].Text == "^"
		switch {
		case isPower:
			var power string
			power, i = powerAt(tokens, i)
			parts = append(parts, el("sup", nil, symbols(power)))
		case tok.IsName:
			head, low, isLow := strings.Cut(tok.Text, "_")
			parts = append(parts, letter(head))
			if isLow {
				parts = append(parts, el("sub", nil, txt(low)))
			}
		default:
			parts = append(parts, txt(tok.Text))
		}
	}
	return join(parts...)
}

// letter is a symbol: slanted if it is one letter, as quantities are, upright if
// it is short for words, a function, or π.
func letter(name string) html {
	if bare := strings.TrimRight(name, "'"); utf8.RuneCountInString(bare) > 1 || bare == "π" || bare == "Φ" || bare == "Σ" {
		return txt(name)
	}
	return el("i", nil, txt(name))
}

// powerAt reads what stands behind a ^, without the brackets about all of it, and
// gives the place of its last token.
func powerAt(tokens []working.Token, at int) (power string, last int) {
	for at++; at < len(tokens) && (tokens[at].Text == " " || tokens[at].Text == "^"); at++ {
	}
	switch {
	case at >= len(tokens):
		return "", at
	case tokens[at].Text != "(":
		return tokens[at].Text, at
	}
	depth := 0
	for last = at; last < len(tokens); last++ {
		switch tokens[last].Text {
		case "(":
			depth++
		case ")":
			depth--
		}
		if depth == 0 {
			return power, last
		}
		if last > at {
			power += tokens[last].Text
		}
	}
	return power, last
}

// lowered sets what stands behind a low line low in a method's sentence, as
// people write T_1.
func lowered(text string) html {
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
