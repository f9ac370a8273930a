package module

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func op(code byte, n int) instruction { return instruction{code: code, n: n} }

func do(code byte, rest ...byte) instruction { return instruction{code: code, rest: rest} }

func TestEveryFunctionIsReadAndWrittenAlike(t *testing.T) {
	sections, err := sectionsOf(program(t))
	require.NoError(t, err)
	count := 0
	for _, s := range sections {
		if s.id != codeSection {
			continue
		}
		r := newReader(s.content)
		for count = r.number(); r.Len() > 0; {
			body := r.vector()
			require.Equal(t, body, readFunction(body).bytes())
		}
	}
	assert.Greater(t, count, 1000)
}

// The numbers are those of the WebAssembly Core Specification, 5.2.2 Integers, and its examples' neighbours.
func TestAppendSigned(t *testing.T) {
	for n, want := range map[int][]byte{
		0: {0}, 63: {63}, 64: {0xc0, 0}, 8191: {0xff, 0x3f}, 8192: {0x80, 0xc0, 0}, -1: {0x7f}, -64: {0x40}, -65: {0xbf, 0x7f}, -128: {0x80, 0x7f},
		1<<63 - 1: {0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0}, -1 << 63: {0x80, 0x80, 0x80, 0x80, 0x80, 0x80, 0x80, 0x80, 0x80, 0x7f},
	} {
		assert.Equal(t, want, appendSigned(nil, n), n)
		assert.Equal(t, n, newReader(want).signed(), n)
	}
}

// head dispatches to three places; the loop is left by an outermost block.
var head = []instruction{do(block, noResult), do(loop, noResult), do(block, noResult), do(block, noResult), do(block, noResult),
	op(localGet, placeLocal), {code: brTable, table: []int{0, 1, 2}}, do(end)}

func jumpTo(place, depth int) []instruction {
	return []instruction{op(i32Const, place), op(localSet, placeLocal), op(br, depth)}
}

func chain(parts ...[]instruction) (all []instruction) {
	for _, p := range parts {
		all = append(all, p...)
	}
	return all
}

func one(in ...instruction) []instruction { return in }

func TestJumpForward(t *testing.T) {
	ifSo, ends := one(op(localGet, 2), do(ifTrue, noResult)), one(do(end), do(end), do(end))
	code := chain(head, ifSo, jumpTo(2, 3), one(do(end)), jumpTo(1, 2), one(do(end)), jumpTo(0, 1), ends)
	want := chain(head, one(op(localGet, 2), op(brIf, 1)), one(op(br, 0)), one(do(end)), jumpTo(0, 1), ends)
	assert.Equal(t, want, jumpForward(code), "to 2 if so, to 1, and back to 0")

	stays := chain(head, ifSo, jumpTo(2, 3), one(do(orElse), do(end)), ends)
	assert.Equal(t, chain(head, ifSo, one(op(br, 2), do(orElse), do(end)), ends), jumpForward(stays), "with an else, the if stays")
	other := chain(head, one(op(i32Const, 2), op(localSet, placeLocal), op(br, 0), do(end)), ends)
	assert.Equal(t, other, jumpForward(other), "no jump to the dispatch")
}

func TestFoldOffsets(t *testing.T) {
	at := func(n int) []instruction {
		return one(op(localGet, stackLocal), do(i64ExtendI32U), op(i64Const, n), do(i64Add), do(i32WrapI64))
	}
	stack := one(op(localGet, stackLocal))
	load := func(n int) []instruction { return one(instruction{code: firstLoad, align: 3, n: n}) }
	store := func(n int) []instruction { return one(instruction{code: lastStore, align: 3, n: n}) }
	assert.Equal(t, chain(stack, load(24)), foldOffsets(chain(at(16), load(8))))
	assert.Equal(t, chain(stack, stack, load(8), store(16)), foldOffsets(chain(at(16), at(8), load(0), store(0))), "one in another")
	assert.Equal(t, chain(stack, one(op(i32Const, 16), do(i32Add), op(localTee, 3))), foldOffsets(chain(at(16), one(op(localTee, 3)))), "no address there")
	assert.Equal(t, chain(stack, stack, one(op(i32Const, 16), do(i32Add)), store(0)), foldOffsets(chain(stack, at(16), store(0))), "it is what is stored")
	assert.Equal(t, at(-8), foldOffsets(at(-8)), "below the stack")
}

func TestLeaveAtOnce(t *testing.T) {
	set := one(op(localTee, stackLocal), op(globalSet, stackGlobal))
	up := func(n int) []instruction { return one(op(localGet, stackLocal), op(i32Const, n), do(i32Add)) }
	done := one(op(i32Const, 0), do(ret))
	assert.Equal(t, chain(up(48), set[1:], done), leaveAtOnce(chain(up(40), set, up(8), set, done)))
	assert.Equal(t, chain(up(40), set, up(8), set), leaveAtOnce(chain(up(40), set, up(8), set)))
}

func TestPauseAlike(t *testing.T) {
	called := chain(one(do(call, 7)), stackCopied)
	left := one(do(ifTrue, noResult), op(i32Const, 1), do(ret), do(end))
	code := func(way []instruction) []instruction {
		return chain(one(do(block, noResult), do(block, noResult)), called, way, one(do(end), op(brIf, 0)), pause)
	}
	assert.Equal(t, code(left), pauseAlike(code(one(op(brIf, 1)))))
	assert.Equal(t, code(one(op(brIf, 0))), pauseAlike(code(one(op(brIf, 0)))), "a branch to elsewhere")
}

func TestShorterTakesFewerInstructions(t *testing.T) {
	sections, err := sectionsOf(program(t))
	require.NoError(t, err)
	count := func(content []byte) (n int) {
		r := newReader(content)
		for r.number(); r.Len() > 0; {
			n += len(readFunction(r.vector()).code)
		}
		return n
	}
	for _, s := range sections {
		if s.id == codeSection {
			assert.Less(t, count(shorter(s.content)), count(s.content)*9/10)
		}
	}
}

// Instructions that nothing is known of would be passed over at a wrong length: all of them are refused.
func TestUnknownInstructionsAreRefused(t *testing.T) {
	known := map[byte]bool{}
	for code := range 256 {
		body := append([]byte{0, byte(code)}, make([]byte, 12)...) // no locals, and zeros for what may follow
		err := guarded(func() { readFunction(body) })
		known[byte(code)] = err == nil
		if err != nil {
			assert.ErrorContains(t, err, "an instruction that isn't known", "%#x", code)
		}
	}
	for code, want := range map[byte]bool{unreachable: true, lastSum: true, more: true, 0x06: false, 0x12: false, 0x1c: false, 0x25: false, 0xc5: false, 0xd0: false, 0xfd: false, 0xfe: false} {
		assert.Equal(t, want, known[code], "%#x", code)
	}
	assert.Error(t, guarded(func() { readFunction([]byte{0, more, 8, 0, 0}) }), "memory.init")
	assert.Error(t, guarded(func() { readFunction([]byte{0, i32Const, 0x80}) }), "cut off")
}
