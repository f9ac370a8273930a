package page

import (
	"strconv"
	"strings"

	"shedreckoner/calc/job"
)

// The limits of the history that is kept over a reload.
const (
	keptChanges = 50
	keptHistory = 64 << 10 // bytes
)

func historyKey(demo bool) string {
	if demo {
		return Prefix + "demo.history"
	}
	return Prefix + "job.history"
}

// keepHistory keeps what can be undone and redone, with the revision that it
// belongs to: it is restored only beside that very save.
func keepHistory(s *State) Effect {
	slot := *s.Slot()
	made := func() string { return historyText(slot) }
	return Effect{Kind: Keep, Key: historyKey(s.InDemo), made: &made}
}

func historyText(slot Slot) string {
	var b strings.Builder
	b.WriteString(strconv.Itoa(slot.Revision) + "\n")
	write := func(mark string, list [][]job.Change) {
		for _, changes := range list[max(0, len(list)-keptChanges):] {
			b.WriteString(mark + "\n")
			for _, c := range changes {
				if b.Len() > keptHistory {
					return // none of it will be kept
				}
				b.WriteString(job.Escape(c.Path) + "\t" + job.Escape(c.Before) + "\t" + job.Escape(c.After) + "\n")
			}
		}
	}
	write("undo", slot.Undo)
	write("redo", slot.Redo)
	if b.Len() > keptHistory {
		return "" // an import: the history begins anew after the next reload
	}
	return b.String()
}

// loadHistory puts a kept history beside the save that it belongs to.
func loadHistory(slot Slot, text string) Slot {
	lines := strings.Split(text, "\n")
	if revision, err := strconv.Atoi(lines[0]); err != nil || revision != slot.Revision {
		return slot
	}
	var list *[][]job.Change
	for _, line := range lines[1:] {
		parts := strings.Split(line, "\t")
		switch {
		case line == "undo":
			list = &slot.Undo
			*list = append(*list, nil)
		case line == "redo":
			list = &slot.Redo
			*list = append(*list, nil)
		case len(parts) == 3 && list != nil:
			last := &(*list)[len(*list)-1]
			*last = append(*last, job.Change{Path: job.Unescape(parts[0]), Before: job.Unescape(parts[1]), After: job.Unescape(parts[2])})
		}
	}
	return slot
}
