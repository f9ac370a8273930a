package module

import "encoding/binary"

// Offsets in a function's record. Behind it stand its further runs, and then its data, four bytes each.
//
// Source: runtime/runtime2.go (_func), internal/abi/symtab.go and cmd/link/internal/ld/pcln.go (writeFuncs) of Go 1.26.
const (
	entryOfCode = 0
	nameOffset  = 4
	stackRun    = 16
	fileRun     = 20
	lineRun     = 24
	runCount    = 28
	unitOfFile  = 32
	firstLine   = 36
	dataCount   = 43
	recordBytes = 44

	mostRuns   = 4
	mostData   = 8
	fullRecord = 8 // the records' sizes are multiples of it
)

const noData = 0xffffffff

// record is what the table knows of a function.
type record []byte

func (r record) at(offset int) uint32      { return binary.LittleEndian.Uint32(r[offset:]) }
func (r record) set(offset int, to uint32) { binary.LittleEndian.PutUint32(r[offset:], to) }
func (r record) runs() int                 { return int(r.at(runCount)) }
func (r record) data() int                 { return int(r[dataCount]) }
func (r record) runAt(n int) (offset int)  { return recordBytes + 4*n }
func (r record) dataAt(n int) (offset int) { return recordBytes + 4*(r.runs()+n) }
func (r record) size() int                 { return r.dataAt(r.data()) }

// readRecords checks every function's record.
func (s *symbols) readRecords() {
	pair := func(i int) (code, at uint32) {
		return binary.LittleEndian.Uint32(s.records[pairBytes*i:]), binary.LittleEndian.Uint32(s.records[pairBytes*i+4:])
	}
	before, _ := pair(0)
	for i := range s.count {
		code, at := pair(i)
		s.isRecord = append(s.isRecord, at)
		if i > 0 && code <= before {
			damaged("function %d at %#x, behind %#x", i, code, before)
		}
		before = code
	}
	s.isRecord = append(s.isRecord, uint32(len(s.records)))
	for i, from := range s.isRecord[:s.count] {
		to := s.isRecord[i+1]
		if from%4 != 0 || from+recordBytes > to || to > uint32(len(s.records)) {
			damaged("the record of function %d stands from %d to %d", i, from, to)
		}
		code, _ := pair(i)
		s.checkRecord(i, code, s.records[from:to])
	}
}

// record is the one of a function.
func (s *symbols) record(function int) record {
	return s.records[s.isRecord[function]:s.isRecord[function+1]]
}

func (s *symbols) checkRecord(i int, code uint32, r record) {
	if r.at(entryOfCode) != code || !s.isName[r.at(nameOffset)] {
		damaged("the record of function %d says %#x, and a name at %d", i, r.at(entryOfCode), r.at(nameOffset))
	}
	if r.runs() > mostRuns || r.data() > mostData || r.size() > len(r) || r.size() <= len(r)-fullRecord {
		damaged("the record of function %d has %d bytes, %d runs and %d data", i, len(r), r.runs(), r.data())
	}
	for _, b := range r[r.size():] {
		if b != 0 {
			damaged("the record of function %d has more behind it", i)
		}
	}
	at := []int{stackRun, fileRun, lineRun}
	for n := range r.runs() {
		at = append(at, r.runAt(n))
	}
	for _, offset := range at {
		if run := r.at(offset); run != 0 && !s.isRun[run] {
			damaged("function %d has a run at %d, where none begins", i, run)
		}
	}
	for n := range r.data() {
		if to := r.at(r.dataAt(n)); to != noData && int(to) >= len(s.pointed) {
			damaged("function %d has data at %d of %d", i, to, len(s.pointed))
		}
	}
}
