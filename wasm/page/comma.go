package page

import (
	"errors"
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
)

// locale learns which mark the phone writes decimals with. A job begun here keeps
// that mark, wherever it is opened: what a figure means
// must not change with the phone.
func locale(s *State, m Message) []Effect {
	s.Comma = m.Text == ","
	return nil
}

// begun gives the first lines of a job the phone's decimal mark.
func begun(s *State, doc job.Document) job.Document {
	if s.Comma && len(s.Doc().Lines()) == 0 {
		return job.SetComma(doc, true)
	}
	return doc
}

func setDecimal(s *State, m Message) []Effect {
	return edit(s, job.SetComma(s.Doc(), m.Text == "comma"), "")
}

// Local writes the figures of a text as the shown job writes them. Names
// that the builder gave keep their figures as they are, and so does refused text.
func (s *State) Local(text string) string {
	write, _ := s.Writer(func(name string) string { return name })
	return write(text)
}

// Writer is Local for many texts, with a key of all that it depends on; escape
// writes a name as it appears in the texts.
func (s *State) Writer(escape func(string) string) (write func(string) string, key string) {
	if !job.HasComma(s.Doc()) {
		return func(text string) string { return text }, ""
	}
	var names []string
	for _, l := range s.Doc().Lines() {
		if unit.Commas(l.Text) == l.Text {
			continue
		}
		if f := job.FieldAt(l.Path); f != nil && f.Kind == job.Words {
			names = append(names, escape(l.Text))
			continue
		}
		for _, cell := range job.Cells(l.Text) { // of a grid's row; any other text is one
			var read *unit.ReadError
			if errors.As(unit.CheckComma(cell), &read) { // its refusal names it
				names = append(names, read.Text)
			}
		}
	}
	return func(text string) string { return commasBut(text, names) }, "," + strings.Join(names, "\n")
}

// commasBut writes decimal commas everywhere but in the names.
func commasBut(text string, names []string) string {
	for i, name := range names {
		if before, after, found := strings.Cut(text, name); found {
			return commasBut(before, names[i+1:]) + name + commasBut(after, names[i:])
		}
	}
	return unit.Commas(text)
}
