package module

import (
	"encoding/binary"
	"slices"
)

// Instructions of WebAssembly that are read or written here. Source: WebAssembly Core Specification, 5.4 Instructions.
const (
	unreachable = 0x00
	nop         = 0x01
	block       = 0x02
	loop        = 0x03
	ifTrue      = 0x04
	orElse      = 0x05
	end         = 0x0b
	br          = 0x0c
	brIf        = 0x0d
	brTable     = 0x0e
	ret         = 0x0f
	call        = 0x10
	callAt      = 0x11
	drop        = 0x1a
	choose      = 0x1b

	localGet  = 0x20
	localSet  = 0x21
	localTee  = 0x22
	globalGet = 0x23
	globalSet = 0x24

	firstLoad  = 0x28
	lastLoad   = 0x35
	firstStore = 0x36
	lastStore  = 0x3e
	memorySize = 0x3f
	memoryGrow = 0x40

	i32Const = 0x41
	i64Const = 0x42
	f32Const = 0x43
	f64Const = 0x44
	firstSum = 0x45 // what computes from one value or two, to lastSum
	i32Add   = 0x6a
	i64Add   = 0x7c
	lastSum  = 0xc4

	i32WrapI64    = 0xa7
	i64ExtendI32U = 0xad

	more       = 0xfc // the instruction's number follows
	lastCut    = 7    // of those that cut a floating-point number off, from 0
	memoryCopy = 10
	memoryFill = 11

	noResult = 0x40 // what follows block, loop or ifTrue
)

// instruction is what one does and to what: numbers, or bytes where those aren't looked into.
type instruction struct {
	code  byte
	n     int    // an index, a depth or a constant; the offset of what reads or writes memory
	align int    // of what reads or writes memory
	table []int  // depths of brTable, the last for all other values
	rest  []byte // what follows the code of any other instruction
}

// function is a function's body.
type function struct {
	locals []byte // as they are declared
	code   []instruction
}

func readFunction(body []byte) function {
	r := newReader(body)
	for range r.number() {
		r.number()
		r.next(1)
	}
	f := function{locals: body[:len(body)-r.Len()]}
	for r.Len() > 0 {
		f.code = append(f.code, r.instruction(body))
	}
	return f
}

// instruction reads the next one; body is all that the reader has.
func (r reader) instruction(body []byte) instruction {
	code := r.next(1)[0]
	in, from := instruction{code: code}, len(body)-r.Len()
	switch {
	case code == br || code == brIf || code >= localGet && code <= globalSet:
		in.n = r.number()
	case code == i32Const || code == i64Const:
		in.n = r.signed()
	case code >= firstLoad && code <= lastStore:
		in.align, in.n = r.number(), r.number()
	case code == brTable:
		for range r.number() + 1 {
			in.table = append(in.table, r.number())
		}
	default:
		r.passOver(code)
		in.rest = body[from : len(body)-r.Len()]
	}
	return in
}

// passOver reads what follows the code of an instruction that isn't looked at.
func (r reader) passOver(code byte) {
	switch {
	case code == block || code == loop || code == ifTrue || code == call || code == memorySize || code == memoryGrow:
		r.number()
	case code == callAt:
		r.number()
		r.number()
	case code == f32Const:
		r.next(4)
	case code == f64Const:
		r.next(8)
	case code == more:
		r.passOverMore(r.number())
	case code <= nop || code == orElse || code == end || code == ret || code == drop || code == choose || code >= firstSum && code <= lastSum:
	default:
		damaged("an instruction that isn't known: %#x", code)
	}
}

// passOverMore does the same for an instruction that has a further number.
func (r reader) passOverMore(kind int) {
	switch {
	case kind <= lastCut:
	case kind == memoryCopy:
		r.number()
		r.number()
	case kind == memoryFill:
		r.number()
	default:
		damaged("an instruction that isn't known: %#x %d", more, kind)
	}
}

// signed reads a signed number.
func (r reader) signed() int {
	n := int64(0)
	for shift := 0; ; shift += 7 {
		b := r.next(1)[0]
		if shift > 63 {
			damaged("a number is too long")
		}
		n |= int64(b&0x7f) << shift
		if b < 0x80 {
			if b&0x40 != 0 && shift+7 < 64 {
				n -= 1 << (shift + 7)
			}
			return int(n)
		}
	}
}

func appendNumber(to []byte, n int) []byte { return binary.AppendUvarint(to, uint64(n)) }

func appendSigned(to []byte, n int) []byte {
	for n < -0x40 || n >= 0x40 {
		to = append(to, byte(n)|0x80)
		n >>= 7
	}
	return append(to, byte(n)&0x7f)
}

func (f function) bytes() []byte {
	body := slices.Clone(f.locals)
	for _, in := range f.code {
		body = in.append(body)
	}
	return body
}

func (in instruction) append(to []byte) []byte {
	to = append(to, in.code)
	switch code := in.code; {
	case code == br || code == brIf || code >= localGet && code <= globalSet:
		return appendNumber(to, in.n)
	case code == i32Const || code == i64Const:
		return appendSigned(to, in.n)
	case code >= firstLoad && code <= lastStore:
		return appendNumber(appendNumber(to, in.align), in.n)
	case code == brTable:
		to = appendNumber(to, len(in.table)-1)
		for _, depth := range in.table {
			to = appendNumber(to, depth)
		}
		return to
	}
	return append(to, in.rest...)
}

// effect gives how many values an instruction takes off the stack and puts onto it; ok is false for one after which the
// code needn't go on with the next.
func (in instruction) effect() (takes, gives int, ok bool) {
	switch c := in.code; {
	case c == nop:
		return 0, 0, true
	case c == localGet || c == globalGet || c == memorySize || c >= i32Const && c <= f64Const:
		return 0, 1, true
	case c == localSet || c == globalSet || c == drop:
		return 1, 0, true
	case c == choose:
		return 3, 1, true
	case c >= firstStore && c <= lastStore:
		return 2, 0, true
	case c == more && in.rest[0] >= memoryCopy:
		return 3, 0, true
	case c == localTee || c == memoryGrow || c == more || c >= firstLoad && c <= lastLoad:
		return 1, 1, true
	case c >= firstSum && c <= lastSum:
		return 2 - unary(c), 1, true
	}
	return 0, 0, false
}

// unary is 1 for an instruction that computes from one value, 0 for one that takes two.
func unary(code byte) int {
	for _, from := range [][2]byte{{0x45, 0x45}, {0x50, 0x50}, {0x67, 0x69}, {0x79, 0x7b}, {0x8b, 0x91}, {0x99, 0x9f}, {0xa7, 0xc4}} {
		if code >= from[0] && code <= from[1] {
			return 1
		}
	}
	return 0
}
