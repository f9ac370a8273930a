package module

import (
	"bytes"
	"encoding/binary"
)

// What only a trace reads, and the stopping of code that runs, which the browser doesn't do: runs and data of a function.
//
// Source: internal/abi/symtab.go and runtime/symtabinl.go (inlinedCall) of Go 1.26.
const (
	stopRun  = 0 // where it can be stopped
	inRun    = 2 // of the function that was compiled into this one, an entry of inData
	liveRun  = 3 // which arguments still hold
	inData   = 3
	argData  = 5 // how to print the arguments
	liveData = 6
	wrapData = 7

	inDataBytes = 16 // of an entry
	inDataName  = 4
)

// withoutTraces takes out what only traces need, but for the names of functions of ours and of the runtime: a run or data
// that isn't there is the runtime's own way to say that it knows none. What no record points to any more becomes zeros.
func withoutTraces(memory []byte) {
	s := symbolsOf(memory)
	s.checkFinding()
	inlined := s.inlinedCalls()
	s.withoutNames()
	clear(s.units)
	for _, entries := range inlined {
		clear(entries)
	}
	isUsed := make([]bool, len(s.runs))
	use := func(at uint32) {
		if at == 0 {
			return // none
		}
		end, _ := s.run(int(at))
		for i := int(at); i < end; i++ {
			isUsed[i] = true
		}
	}
	for i := range s.count {
		r := s.record(i)
		r.withoutTrace()
		use(r.at(stackRun))
		for n := range r.runs() {
			use(r.at(r.runAt(n)))
		}
	}
	for i, used := range isUsed {
		if !used {
			s.runs[i] = 0
		}
	}
	s.findCoarsely()
}

// withoutTrace takes runs and data out of a function's record.
func (r record) withoutTrace() {
	for _, at := range []int{fileRun, lineRun, unitOfFile, firstLine} {
		r.set(at, 0)
	}
	for _, n := range []int{stopRun, inRun, liveRun} {
		if n < r.runs() {
			r.set(r.runAt(n), 0)
		}
	}
	for _, n := range []int{inData, argData, liveData, wrapData} {
		if n < r.data() {
			r.set(r.dataAt(n), noData)
		}
	}
}

// withoutNames takes out the names of functions that are neither ours nor the runtime's own, which reads them, and of what
// is made for each of several types: those are half of all.
func (s *symbols) withoutNames() {
	for rest := s.names; len(rest) > 0; {
		name, after, _ := bytes.Cut(rest, []byte{0})
		isOurs := bytes.HasPrefix(name, []byte("shedreckoner/")) || bytes.HasPrefix(name, []byte("main.")) || bytes.HasPrefix(name, []byte("runtime."))
		if !isOurs || bytes.IndexByte(name, '[') >= 0 {
			clear(name)
		}
		rest = after
	}
}

// inlinedCalls gives the entries of what was compiled into each function, as many as its run counts. Nothing that the
// runtime still reads may begin among them.
func (s *symbols) inlinedCalls() (all [][]byte) {
	isEntry := make([]bool, len(s.pointed))
	for i := range s.count {
		r := s.record(i)
		if r.data() <= inData || r.runs() <= inRun || r.at(r.dataAt(inData)) == noData || r.at(r.runAt(inRun)) == 0 {
			continue
		}
		_, last := s.run(int(r.at(r.runAt(inRun))))
		from := int(r.at(r.dataAt(inData)))
		to := between(from, from+(last+1)*inDataBytes, len(s.pointed))
		for at := from; at < to; at += inDataBytes {
			s.checkInlined(i, s.pointed[at:at+inDataBytes])
		}
		for at := from; at < to; at++ {
			isEntry[at] = true
		}
		all = append(all, s.pointed[from:to])
	}
	for i := range s.count {
		r := s.record(i)
		for n := range r.data() {
			if to := r.at(r.dataAt(n)); n != inData && to != noData && isEntry[to] {
				damaged("function %d has data %d among what was compiled into another", i, n)
			}
		}
	}
	return all
}

// checkInlined checks an entry: which kind of function, three bytes of nothing, its name, the place, the line.
func (s *symbols) checkInlined(i int, entry []byte) {
	const mostKinds = 32
	if entry[0] >= mostKinds || entry[1]|entry[2]|entry[3] != 0 || !s.isName[binary.LittleEndian.Uint32(entry[inDataName:])] {
		damaged("function %d has no function compiled into it at % x", i, entry)
	}
}

// Rows for finding a function: 16 for each on this machine, of which the first is read, and tells where to begin to look.
const (
	rowBytes    = 20
	rowsEach    = 16
	beginsAlike = 16 // so many functions that follow each other begin at one place
)

// row is the number that the row at an index begins with.
func (s *symbols) row(i int) []byte { return s.find[i*rowBytes:][:4] }

// checkFinding checks that every row names its own function, and no other behind it.
func (s *symbols) checkFinding() {
	for i := range len(s.find) / rowBytes {
		if function := binary.LittleEndian.Uint32(s.row(i)); function != uint32(i/rowsEach) || !isClear(s.find[i*rowBytes+4:(i+1)*rowBytes]) {
			damaged("row %d for finding functions names function %d", i, function)
		}
	}
}

func isClear(b []byte) bool {
	for _, one := range b {
		if one != 0 {
			return false
		}
	}
	return true
}

// findCoarsely lets the runtime begin to look for a function a few functions earlier: rows that are alike compress well.
func (s *symbols) findCoarsely() {
	for i := range len(s.find) / rowBytes {
		begin := 0
		if i%rowsEach == 0 {
			function := i / rowsEach
			begin = function - function%beginsAlike
		}
		binary.LittleEndian.PutUint32(s.row(i), uint32(begin))
	}
}
