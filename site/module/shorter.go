package module

import "slices"

// The first locals of a function of Go's compiler.
const (
	placeLocal = 0 // the number of the place that the function's head goes on at
	stackLocal = 1 // a copy of the stack pointer
)

// stackGlobal is the stack pointer.
const stackGlobal = 0

// stackCopied begins a function, and goes on after each call.
var stackCopied = []instruction{{code: globalGet, n: stackGlobal}, {code: localSet, n: stackLocal}}

// shorter writes the functions of a code section so that they do the same in fewer instructions. Go's compiler makes them
// for a machine with registers; what that costs here it leaves to the browser, which pays at every start.
//
// Source: cmd/internal/obj/wasm (wasmobj.go: preprocess, assemble) and cmd/compile/internal/wasm (ssa.go) of Go 1.26.
func shorter(content []byte) []byte {
	r := newReader(content)
	count := r.number()
	to := appendNumber(nil, count)
	for range count {
		f := readFunction(r.vector())
		if is(f.code, stackCopied...) { // else written by hand, for locals of its own
			for _, step := range []func([]instruction) []instruction{jumpForward, foldOffsets, leaveAtOnce, pauseAlike} {
				f.code = step(f.code)
			}
		}
		to = appendVector(to, f.bytes())
	}
	return to
}

// is reports whether the instructions are those, in code and number, from the first on.
func is(code []instruction, want ...instruction) bool {
	if len(code) < len(want) {
		return false
	}
	for i, w := range want {
		if code[i].code != w.code || code[i].n != w.n {
			return false
		}
	}
	return true
}

// jumpForward lets a jump that goes forward leave the blocks before its target. Go's compiler sends each jump to the
// dispatch at the head of the function: a loop around nested blocks, at each of whose ends a place begins.
func jumpForward(code []instruction) []instruction {
	var kept []instruction
	var open []int   // the constructs around an instruction, by their beginnings
	var places []int // the block before each place
	head := slices.IndexFunc(code, func(in instruction) bool { return in.code == loop })
	for i := 0; i < len(code); i++ {
		in := code[i]
		switch in.code {
		case block, loop, ifTrue:
			open = append(open, i)
		case end:
			open = open[:max(0, len(open)-1)] // the last ends the function
		case brTable:
			if places == nil && is(code[i-1:], instruction{code: localGet, n: placeLocal}) {
				for _, depth := range in.table {
					places = append(places, open[len(open)-1-depth])
				}
			}
		case br:
			n := len(kept) - 2
			if places == nil || !is(kept[n+1:], instruction{code: localSet, n: placeLocal}) || kept[n].code != i32Const ||
				in.n >= len(open) || open[len(open)-1-in.n] != head || kept[n].n >= len(places) {
				break
			}
			target := slices.Index(open, places[kept[n].n])
			if target < 0 {
				break // already left: the jump goes back
			}
			in.n = len(open) - 1 - target
			kept = kept[:n]
			if kept[n-1].code == ifTrue && code[i+1].code == end {
				kept = kept[:n-1]
				open = open[:len(open)-1]
				in.code = brIf
				in.n--
				i++
			}
		}
		kept = append(kept, in)
	}
	return kept
}

// foldOffsets puts the offset of a place on the stack into the instruction that reads or writes there. Go's compiler adds
// it first, in 64 bits; all of the stack lies below 4 GiB, so that the sum is the same.
func foldOffsets(code []instruction) []instruction {
	var kept []instruction
	for i := 0; i < len(code); i++ {
		kept = append(kept, code[i])
		if len(code) < i+5 || !is(code[i:], instruction{code: localGet, n: stackLocal}, instruction{code: i64ExtendI32U}) ||
			code[i+2].code != i64Const || code[i+2].n < 0 || code[i+3].code != i64Add || code[i+4].code != i32WrapI64 {
			continue
		}
		offset := code[i+2].n
		i += 4
		if user := userOf(code[i+1:]); user != nil {
			user.n += offset
		} else {
			kept = append(kept, instruction{code: i32Const, n: offset}, instruction{code: i32Add})
		}
	}
	return kept
}

// userOf gives the instruction that takes the value on top of the stack for its address; nil if it takes it for anything
// else.
func userOf(code []instruction) *instruction {
	above := 0
	for i, in := range code {
		takes, gives, ok := in.effect()
		if !ok {
			return nil
		}
		if above < takes {
			if above == takes-1 && in.code >= firstLoad && in.code <= lastStore {
				return &code[i]
			}
			return nil
		}
		above += gives - takes
	}
	return nil
}

// leaveAtOnce takes a function's frame and its return address off the stack in one step.
func leaveAtOnce(code []instruction) []instruction {
	tail := []instruction{
		{code: localTee, n: stackLocal}, {code: globalSet, n: stackGlobal},
		{code: localGet, n: stackLocal}, {code: i32Const, n: 8}, {code: i32Add},
		{code: localTee, n: stackLocal}, {code: globalSet, n: stackGlobal}, {code: i32Const}, {code: ret},
	}
	var kept []instruction
	for i := 0; i < len(code); i++ {
		n := len(kept)
		if n < 2 || kept[n-1].code != i32Add || kept[n-2].code != i32Const || !is(code[i:], tail...) {
			kept = append(kept, code[i])
			continue
		}
		kept[n-2].n += 8
		kept = append(kept, tail[len(tail)-3:]...)
		i += len(tail) - 1
	}
	return kept
}

// pause is the end of every function: from where it is left in the midst of a call, so that another goroutine can run.
var pause = []instruction{{code: end}, {code: i32Const, n: 1}, {code: end}}

// pauseAlike leaves a function for another goroutine by the same instructions everywhere. Go's compiler branches to the
// function's end, over a depth that is another one at every call and so compresses badly.
func pauseAlike(code []instruction) []instruction {
	if len(code) < len(pause) || !is(code[len(code)-len(pause):], pause...) {
		return code
	}
	var kept []instruction
	depth := 0
	for i, in := range code {
		switch in.code {
		case block, loop, ifTrue:
			depth++
		case end:
			depth--
		case brIf:
			if in.n == depth-1 && afterCall(code[:i]) {
				kept = append(kept, instruction{code: ifTrue, rest: []byte{noResult}},
					instruction{code: i32Const, n: 1}, instruction{code: ret}, instruction{code: end})
				continue
			}
		}
		kept = append(kept, in)
	}
	return kept
}

// afterCall reports whether the code ends with a call, and the stack pointer copied again.
func afterCall(code []instruction) bool {
	n := len(code) - 3
	return n >= 0 && (code[n].code == call || code[n].code == callAt) && is(code[n+1:], stackCopied...)
}
