package module

import (
	"bytes"
	"encoding/binary"
)

// The table that leads a Go program from a place in its code to the function, and from there to stack maps, file and line.
// Source: runtime/symtab.go, runtime/symtabinl.go, runtime/runtime2.go (pcHeader, _func) and internal/abi/symtab.go of Go
// 1.26, pointers of eight bytes.
var tableHeader = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// Offsets in the table's header: eight words behind its mark.
const (
	countWord = 1 // functions
	nameTable = 4 // the functions' names, each with a zero behind it
	unitTable = 5 // where the files of each package stand, and behind that table the files' names
	pcTable   = 7 // where the runs of values by place stand
	functions = 8 // the pairs of code and record, and the records
)

// Words of what the runtime knows of the program (moduledata). It begins with the address of the table.
const (
	recordsWord = 13 // address of the pairs and records
	findWord    = 19 // address of the rows by which the runtime finds a function's pair
	dataWord    = 40 // address of what records point to with offsets
)

// Offsets in a function's record. Behind it stand its further runs, and then its data.
const (
	stackRun    = 16
	fileRun     = 20
	lineRun     = 24
	runCount    = 28
	unitOfFile  = 32
	firstLine   = 36
	dataCount   = 43
	recordBytes = 44
)

// What only a trace reads, and the stopping of code that runs, which the browser doesn't do.
const (
	stopRun  = 0 // where it can be stopped
	inRun    = 2 // of the function that was compiled into this one, an entry of inData
	liveRun  = 3 // which arguments still hold
	inData   = 3
	argData  = 5 // how to print the arguments
	liveData = 6
	wrapData = 7

	inDataBytes = 16   // of an entry
	argDataEnd  = 0xff // the last byte
	noData      = 0xffffffff
)

// symbols are the parts of the table that are written to.
type symbols struct {
	memory  []byte
	count   int
	runs    []byte
	records []byte
	names   []byte
	units   []byte
	find    int
	data    int
}

// symbolsOf finds the table in the memory that the program starts with.
func symbolsOf(memory []byte) (s symbols, ok bool) {
	start := bytes.Index(memory, tableHeader)
	known := bytes.Index(memory, binary.LittleEndian.AppendUint64(nil, uint64(max(start, 0))))
	if start < 0 || known < 0 {
		return s, false
	}
	table := memory[start:]
	word := func(from, i int) int { return int(binary.LittleEndian.Uint64(memory[from+8*i:])) }
	head := func(i int) int { return word(start, i) }
	if word(known, recordsWord) != start+head(functions) {
		return s, false
	}
	return symbols{memory, head(countWord), table[head(pcTable):head(functions)], table[head(functions):],
		table[head(nameTable):head(unitTable)], table[head(unitTable):head(pcTable)], word(known, findWord), word(known, dataWord)}, true
}

// withoutTraces takes out what only traces need, but for the names of functions of ours and of the runtime: a run or data that isn't there is the
// runtime's own way to say that it knows none. What no record points to any more becomes zeros. A table of another make is
// left as it is.
func withoutTraces(memory []byte) {
	s, ok := symbolsOf(memory)
	if !ok {
		return
	}
	clear(s.units)
	s.withoutNames()
	used := make([]bool, len(s.runs))
	for i := range s.count {
		record := s.record(i)
		for _, at := range []int{fileRun, lineRun, unitOfFile, firstLine} {
			clear(record[at : at+4])
		}
		s.withoutData(record)
		s.eachRun(binary.LittleEndian.Uint32(record[stackRun:]), func(from, to, _ int) { markUsed(used[from:to]) })
		for n := range binary.LittleEndian.Uint32(record[runCount:]) {
			s.eachRun(binary.LittleEndian.Uint32(record[recordBytes+4*n:]), func(from, to, _ int) { markUsed(used[from:to]) })
		}
		if i < s.count-1 { // the last has fewer rows
			s.coarseFind(i)
		}
	}
	for i, isUsed := range used {
		if !isUsed {
			s.runs[i] = 0
		}
	}
}

// withoutNames takes out the names of functions that are neither ours nor the runtime's own, which reads them, and of what
// is made for each of several types: those are half of all.
func (s symbols) withoutNames() {
	for rest := s.names; len(rest) > 0; {
		name, after, _ := bytes.Cut(rest, []byte{0})
		isOurs := bytes.HasPrefix(name, []byte("shedreckoner/")) || bytes.HasPrefix(name, []byte("main.")) || bytes.HasPrefix(name, []byte("runtime."))
		if !isOurs || bytes.IndexByte(name, '[') >= 0 {
			clear(name)
		}
		rest = after
	}
}

// record is what the table knows of a function, and what follows.
func (s symbols) record(function int) []byte {
	return s.records[binary.LittleEndian.Uint32(s.records[8*function+4:]):]
}

func markUsed(used []bool) {
	for i := range used {
		used[i] = true
	}
}

// withoutData takes runs and data out of a function's record.
func (s symbols) withoutData(record []byte) {
	runs, data := int(binary.LittleEndian.Uint32(record[runCount:])), int(record[dataCount])
	run := func(n int) []byte { return record[recordBytes+4*n:][:4] }
	if inData < data && inRun < runs {
		last := -1
		s.eachRun(binary.LittleEndian.Uint32(run(inRun)), func(_, _, most int) { last = most })
		clear(s.at(run(runs + inData))[:(last+1)*inDataBytes])
	}
	if argData < data {
		info := s.at(run(runs + argData))
		clear(info[:max(0, bytes.IndexByte(info, argDataEnd))]) // the end stays: functions share it
	}
	for _, n := range []int{stopRun, inRun, liveRun} {
		if n < runs {
			clear(run(n))
		}
	}
	for _, n := range []int{inData, argData, liveData, wrapData} {
		if n < data {
			binary.LittleEndian.PutUint32(run(runs+n), noData)
		}
	}
}

// at gives what an offset points to, up to the end of memory; nothing for noData.
func (s symbols) at(offset []byte) []byte {
	n := binary.LittleEndian.Uint32(offset)
	if n == noData {
		return nil
	}
	return s.memory[s.data+int(n):]
}

// eachRun tells where a run stands and the largest of its values: pairs of a change of value, from −1 on, and a length of
// code, to a change of zero that isn't the first.
func (s symbols) eachRun(start uint32, tell func(from, to, most int)) {
	at := int(start)
	if at == 0 {
		return // none
	}
	value, most := -1, -1
	for isFirst := true; ; isFirst = false {
		change, size := binary.Uvarint(s.runs[at:])
		at += size
		if change == 0 && !isFirst {
			break
		}
		value += int(change>>1) ^ -int(change&1)
		most = max(most, value)
		_, size = binary.Uvarint(s.runs[at:])
		at += size
	}
	tell(int(start), at, most)
}

// Rows for finding a function: 16 for each on this machine, of which the first is read, and tells where to begin to look.
const (
	rowBytes    = 20
	rowsEach    = 16
	beginsAlike = 16 // so many functions that follow each other begin at one place
)

// coarseFind lets the runtime begin to look for a function a few functions earlier: rows that are alike compress well.
func (s symbols) coarseFind(function int) {
	row := s.memory[s.find+function*rowsEach*rowBytes:][:rowsEach*rowBytes]
	if binary.LittleEndian.Uint32(row) != uint32(function) {
		return
	}
	clear(row)
	binary.LittleEndian.PutUint32(row, uint32(function-function%beginsAlike))
}
