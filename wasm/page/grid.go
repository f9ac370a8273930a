package page

import (
	"slices"
	"strconv"
	"strings"

	"shedreckoner/calc/fairing"
	"shedreckoner/calc/job"
	"shedreckoner/wasm/words"
)

// A grid of readings is kept as one line for each row. Its cells have paths of
// their own, "buildup.1.step.2.grid.3.z.5": the row's field and the cell, from 0.

// CellPath gives the path of a cell.
func CellPath(row string, column int) string { return row + "." + strconv.Itoa(column) }

// cellAt splits the path of a cell into the row's field and the column.
func cellAt(path string) (row string, column int, ok bool) {
	row, last := job.Split(path)
	column, err := strconv.Atoi(last)
	f := job.FieldAt(row)
	return row, column, err == nil && f != nil && f.Key == "z" && column >= 0 && column < fairing.MaxSide
}

// Columns is how many readings a row of the step's grid has: as typed, or as
// many as its first row; 0: not known.
func Columns(doc job.Document, step string) int {
	path := step + ".columns"
	if n, err := job.FieldAt(path).Read(doc.Get(path), job.Units{}); err == nil {
		return int(n)
	}
	if ids := doc.Items(step + ".grid"); len(ids) > 0 {
		return len(job.Cells(doc.Get(step + ".grid." + ids[0] + ".z")))
	}
	return 0
}

// withCell puts a text into a cell; the row grows as far as the cell.
func withCell(doc job.Document, row string, column int, text string) job.Document {
	cells := job.Cells(doc.Get(row))
	for len(cells) <= column {
		cells = append(cells, "")
	}
	cells[column] = text
	if strings.Join(cells, "") == "" {
		return doc.Set(row, "")
	}
	return doc.Set(row, job.Row(cells))
}

func setCell(s *State, row string, column int, text string) []Effect {
	s.Cell = CellPath(row, column)
	return edit(s, withCell(s.Doc(), row, column, text), row)
}

// nextCell goes on to the next reading; from the last of a row to the next row,
// which is added where there is none.
func nextCell(s *State, m Message) []Effect {
	row, column, ok := cellAt(m.Path)
	if !ok {
		return nil
	}
	item, _ := job.Split(row)
	list, id := job.Split(item)
	step, _ := job.Split(list)
	if column+1 < Columns(s.Doc(), step) {
		s.Cell = CellPath(row, column+1)
		return []Effect{{Kind: Focus, Key: "f-" + s.Cell}}
	}
	ids := s.Doc().Items(list)
	at := slices.Index(ids, id)
	doc, next := s.Doc(), ""
	switch {
	case at+1 < len(ids):
		next = list + "." + ids[at+1]
	case len(ids) < fairing.MaxSide:
		doc, next = doc.Add(list)
	default:
		return nil
	}
	s.opened(next)
	s.Cell = CellPath(next+".z", 0)
	focus := Effect{Kind: Focus, Key: "f-" + s.Cell}
	if at+1 < len(ids) {
		return []Effect{focus}
	}
	return edit(s, doc, "", focus)
}

// flipSign makes the latest reading a proud spot, or a hollow again: number
// pads often have no minus.
func flipSign(s *State, m Message) []Effect {
	row, column, ok := cellAt(s.Cell)
	if item, _ := job.Split(row); !ok || item != m.Path {
		s.Notice = words.ReadingBeforeProud
		return nil
	}
	cells := job.Cells(s.Doc().Get(row))
	if column >= len(cells) || cells[column] == "" {
		s.Notice = words.ReadingBeforeProud
		return nil
	}
	text := strings.TrimLeft(cells[column], "-−")
	if text == cells[column] {
		text = "-" + text
	}
	return edit(s, withCell(s.Doc(), row, column, text), row, Effect{Kind: Focus, Key: "f-" + s.Cell})
}

// pasteCells puts pasted rows into the grid, the first at the cell of the path.
func pasteCells(s *State, m Message) []Effect {
	row, column, ok := cellAt(m.Path)
	if !ok {
		return nil
	}
	item, _ := job.Split(row)
	list, id := job.Split(item)
	return pasted(s, list, slices.Index(s.Doc().Items(list), id), column, m.Text)
}

// fillGrid fills the grid of a step with the rows of its paste box.
func fillGrid(s *State, m Message) []Effect {
	if job.FieldAt(m.Path+".paste") == nil {
		return nil
	}
	return pasted(s, m.Path+".grid", 0, 0, s.Doc().Get(m.Path+".paste"))
}

// pasted puts rows into a grid. A text that can't be cut is kept in the paste
// box, where it can be put right.
func pasted(s *State, list string, at, column int, text string) []Effect {
	step, _ := job.Split(list)
	box := step + ".paste"
	rows, err := fairing.Split(text)
	if err == nil {
		err = fits(rows, at, column)
	}
	if err != nil {
		s.Notice = words.Sentence(err, nil, job.ReadUnits(s.Doc()))
		if len(text) > fairing.MaxPaste {
			return nil
		}
		return edit(s, s.Doc().Set(box, text), "")
	}
	doc, wide := s.Doc().Set(box, ""), column
	for i, cells := range rows {
		var item string
		if ids := doc.Items(list); at+i < len(ids) {
			item = list + "." + ids[at+i]
		} else {
			doc, item = doc.Add(list)
		}
		for j, cell := range cells {
			doc = withCell(doc, item+".z", column+j, cell)
		}
		wide = max(wide, column+len(cells))
	}
	if wide > Columns(s.Doc(), step) {
		doc = doc.Set(step+".columns", strconv.Itoa(wide))
	}
	s.Notice = words.Pasted(rows)
	notice := s.Notice
	effects := edit(s, doc, "")
	s.Notice = notice
	return effects
}

// fits holds pasted rows against the largest grid.
func fits(rows [][]string, at, column int) error {
	wide := 0
	for _, r := range rows {
		wide = max(wide, len(r))
	}
	if at+len(rows) > fairing.MaxSide || column+wide > fairing.MaxSide {
		return &fairing.SizeError{Rows: at + len(rows), Columns: column + wide}
	}
	return nil
}
