package module

import (
	"bytes"
	"encoding/binary"
)

// The table that leads a Go program from a place in its code to the function, and from there to stack maps, file and line.
//
// Source: runtime/symtab.go, runtime/runtime2.go (pcHeader, moduledata) and cmd/link/internal/ld/pcln.go of Go 1.26, pointers
// of eight bytes.
var tableHeader = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// Words of the table's header, behind its mark.
const (
	countWord = 1 // functions
	nameTable = 4 // where the functions' names stand, each with a zero behind it
	unitTable = 5 // where the files of each package stand, four bytes each
	fileTable = 6 // the files' names
	pcTable   = 7 // where the runs of values by place stand
	functions = 8 // the pairs of code and record, and the records
)

// Words of what the runtime knows of the program (moduledata). It begins with the address of the table; a part is its
// address, its length and its length again.
const (
	namePart    = 1
	unitPart    = 4
	filePart    = 7
	pcPart      = 10
	recordPart  = 13 // the pairs and records
	pairPart    = 16 // the pairs alone, one more than there are functions
	findWord    = 19 // address of the rows by which the runtime finds a function's pair
	firstPlace  = 20 // of the code
	lastPlace   = 21
	textPart    = 22
	dataWord    = 40 // address of what records point to with offsets
	tableEnd    = 41
	tableWords  = 42
	placesEach  = 1 << 16 // of a function; a pair says its number alone
	pairBytes   = 8
	unitBytes   = 4
	placesInRow = 4096
)

// symbols are the parts of the table.
type symbols struct {
	memory   []byte
	count    int
	names    []byte
	units    []byte // and the files behind them
	runs     []byte
	records  []byte // the pairs, too: records are found by their offset from these
	pointed  []byte // what records point to with offsets
	find     []byte // the rows
	isName   map[uint32]bool
	isRun    map[uint32]bool
	isRecord []uint32 // their offsets, and at last where they end
}

// symbolsOf finds the table in the memory that the program starts with, and checks that everything in it is where the
// linker puts it.
func symbolsOf(memory []byte) symbols {
	start := only(memory, tableHeader)
	known := moduleData(memory, start)
	word := func(i int) int { return wordAt(memory, known+8*i) }
	head := func(i int) int { return wordAt(memory, start+8*i) }
	s := symbols{memory: memory, count: head(countWord)}
	if s.count < 1 || s.count > len(memory) {
		damaged("%d functions", s.count)
	}
	// The parts stand one behind the other in the order of the header, as moduledata says too.
	part := func(at, each, from, to int) []byte {
		length := word(at + 1)
		if word(at) != from || word(at+2) != length || from > to || to > len(memory) || length*each > to-from || length*each < to-from-31 {
			damaged("a part of the table at %d with a length of %d, not from %d to %d", word(at), length, from, to)
		}
		return memory[from : from+length*each]
	}
	end := word(dataWord)
	s.names = part(namePart, 1, start+head(nameTable), start+head(unitTable))
	part(unitPart, unitBytes, start+head(unitTable), start+head(fileTable))
	part(filePart, 1, start+head(fileTable), start+head(pcTable))
	s.units = memory[start+head(unitTable) : start+head(pcTable)]
	s.runs = part(pcPart, 1, start+head(pcTable), start+head(functions))
	s.records = part(recordPart, 1, start+head(functions), end)
	part(pairPart, pairBytes, start+head(functions), start+head(functions)+pairBytes*(s.count+1))
	s.pointed = memory[end:between(end, word(findWord), len(memory))]
	rows := (word(lastPlace) - word(firstPlace) + placesInRow - 1) / placesInRow
	if word(firstPlace)%placesEach != 0 || rows <= rowsEach*(s.count-1) || rows > rowsEach*s.count || word(textPart) > word(textPart+1) {
		damaged("places from %#x to %#x for %d functions", word(firstPlace), word(lastPlace), s.count)
	}
	s.find = memory[word(findWord):between(word(findWord), word(tableEnd), len(memory))]
	if size := rows * rowBytes; len(s.find) > size+8 || len(s.find) < size-rowBytes {
		damaged("%d bytes for finding functions, not about %d", len(s.find), size)
	}
	s.readNames()
	s.readRuns()
	s.readRecords()
	return s
}

// moduleData is where what the runtime knows of the program stands: it begins with where the table is, and its names.
func moduleData(memory []byte, start int) int {
	begin := binary.LittleEndian.AppendUint64(nil, uint64(start))
	return only(memory, binary.LittleEndian.AppendUint64(begin, uint64(start+wordAt(memory, start+8*nameTable))))
}

// only is where the bytes stand that are there once.
func only(memory, want []byte) int {
	at := bytes.Index(memory, want)
	if at < 0 || at%8 != 0 || bytes.Contains(memory[at+1:], want) {
		damaged("% x isn't there, or not once only", want)
	}
	return at
}

func wordAt(memory []byte, at int) int {
	if at < 0 || at+8 > len(memory) {
		damaged("a word at %d of %d bytes", at, len(memory))
	}
	return int(binary.LittleEndian.Uint64(memory[at:]))
}

// between is the second of three numbers that go up.
func between(from, to, most int) int {
	if from > to || to > most {
		damaged("%d isn't between %d and %d", to, from, most)
	}
	return to
}

// readNames notes where the names begin.
func (s *symbols) readNames() {
	s.isName = map[uint32]bool{0: true}
	for i, b := range s.names[:len(s.names)-1] {
		if b == 0 {
			s.isName[uint32(i+1)] = true
		}
	}
	if s.names[len(s.names)-1] != 0 {
		damaged("the last name doesn't end")
	}
}

// readRuns notes where the runs begin: the first byte is none, and what fills the last ones up begins nothing.
func (s *symbols) readRuns() {
	s.isRun = map[uint32]bool{}
	for at := 1; !isClear(s.runs[at:]); {
		s.isRun[uint32(at)] = true
		at, _ = s.run(at)
	}
}

// run gives where a run ends and the largest of its values: pairs of a change of value, from −1 on, and a length of code, to
// a change of zero that isn't the first.
func (s *symbols) run(at int) (end, most int) {
	value, most := -1, -1
	for isFirst := true; ; isFirst = false {
		change := s.varint(&at)
		if change == 0 && !isFirst {
			return at, most
		}
		value += int(change>>1) ^ -int(change&1)
		most = max(most, value)
		s.varint(&at)
	}
}

func (s *symbols) varint(at *int) uint64 {
	n, size := binary.Uvarint(s.runs[*at:])
	if size <= 0 {
		damaged("a run of values doesn't end")
	}
	*at += size
	return n
}
