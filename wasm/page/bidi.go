package page

import (
	"strings"

	"shedreckoner/calc/job"
)

// isBidiControl reports whether a character only turns the direction of what follows it
// round: a name or a figure with one in it can read as another.
//
// Source: Unicode Standard Annex #9, section 2 (the directional formatting
// characters).
func isBidiControl(r rune) bool {
	return r == '\u061c' || r == '\u200e' || r == '\u200f' || '\u202a' <= r && r <= '\u202e' || '\u2066' <= r && r <= '\u2069'
}

func withoutBidi(text string) string {
	return strings.Map(func(r rune) rune {
		if isBidiControl(r) {
			return -1
		}
		return r
	}, text)
}

// straight is a document that came in, without what would turn its names round.
func straight(doc job.Document) job.Document {
	var lines []job.Line
	for i, line := range doc.Lines() {
		if clean := withoutBidi(line.Text); clean != line.Text {
			if lines == nil {
				lines = append(lines, doc.Lines()...)
			}
			lines[i].Text = clean
		}
	}
	if lines == nil {
		return doc
	}
	return job.Of(lines)
}
