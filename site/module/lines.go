package module

import (
	"bytes"
	"encoding/binary"
)

// The table that leads a Go program from a place in its code to the function, and from there to stack maps, file and line.
// Source: runtime/symtab.go and runtime/runtime2.go (pcHeader, _func) of Go 1.26, pointers of eight bytes.
var tableHeader = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// Offsets in the table's header: eight words behind its mark.
const (
	countWord = 1 // functions
	unitTable = 5 // where the files of each package stand, and behind that table the files' names
	pcTable   = 7 // where the runs of values by place stand
	functions = 8 // the pairs of code and record, and the records
)

// Offsets in a function's record.
const (
	stackRun    = 16
	fileRun     = 20
	lineRun     = 24
	runCount    = 28 // of further runs, behind the record
	unitOfFile  = 32
	firstLine   = 36
	recordBytes = 44
)

// withoutLines takes files and lines out of the table, so that a trace names functions only: a run that isn't there is
// the runtime's own way to say that it knows none. What no record points to any more becomes zeros. A table of another
// make is left as it is.
func withoutLines(memory []byte) {
	start := bytes.Index(memory, tableHeader)
	if start < 0 {
		return
	}
	table := memory[start:]
	word := func(i int) int { return int(binary.LittleEndian.Uint64(table[8*i:])) }
	count, runs, records := word(countWord), table[word(pcTable):word(functions)], table[word(functions):]
	clear(table[word(unitTable):word(pcTable)])
	used := make([]bool, len(runs))
	for i := range count {
		record := records[binary.LittleEndian.Uint32(records[8*i+4:]):]
		for _, at := range []int{fileRun, lineRun, unitOfFile, firstLine} {
			clear(record[at : at+4])
		}
		markRun(runs, used, binary.LittleEndian.Uint32(record[stackRun:]))
		for more := range binary.LittleEndian.Uint32(record[runCount:]) {
			markRun(runs, used, binary.LittleEndian.Uint32(record[recordBytes+4*more:]))
		}
	}
	for i, isUsed := range used {
		if !isUsed {
			runs[i] = 0
		}
	}
}

// markRun marks a run: pairs of a change of value and a length of code, to a change of zero that isn't the first.
func markRun(runs []byte, used []bool, from uint32) {
	at := int(from)
	if at == 0 {
		return // none
	}
	for isFirst := true; ; isFirst = false {
		change, size := binary.Uvarint(runs[at:])
		at += size
		if change == 0 && !isFirst {
			break
		}
		_, size = binary.Uvarint(runs[at:])
		at += size
	}
	for i := int(from); i < at; i++ {
		used[i] = true
	}
}
