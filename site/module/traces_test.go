package module

import (
	"encoding/binary"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A trace still needs the names, and the collector the stack maps: all but what only traces need stays.
func TestWithoutTraces(t *testing.T) {
	before := proven(t)
	after, left, err := Small(before)
	require.NoError(t, err)
	require.Empty(t, left)
	was, is := slices.Clip(memoryOf(data(t, before))), memoryOf(data(t, after))
	require.Len(t, is, len(was))
	old := symbolsOf(was)
	s := symbolsOf(was) // where all parts stand
	s.memory, s.names, s.runs, s.records, s.pointed, s.find = is, moved(was, is, old.names), moved(was, is, old.runs), moved(was, is, old.records), moved(was, is, old.pointed), moved(was, is, old.find)

	changed := 0
	for i, b := range is {
		if b != was[i] {
			changed++
			require.GreaterOrEqual(t, i, len(was)-cap(old.names), "what stands before the table of names stays")
			require.Less(t, i, len(was)-cap(old.find)+len(old.find), "what stands behind the rows stays")
		}
	}
	assert.Greater(t, changed, 100_000)
	for i := range s.count {
		a, b := old.record(i), s.record(i)
		assert.Equal(t, a[:fileRun], b[:fileRun], "name, frame and its run")
		at := []int{stackRun}
		if a.runs() > 1 {
			at = append(at, a.runAt(1)) // the run of stack maps
		}
		for _, at := range at {
			if from := int(a.at(at)); from > 0 {
				end, _ := old.run(from)
				require.Equal(t, a.at(at), b.at(at))
				require.Equal(t, old.runs[from:end], s.runs[from:end], i)
			}
		}
		for n := range a.data() {
			if to := a.at(a.dataAt(n)); slices.Contains([]int{0, 1, 2, 4}, n) { // pointers in arguments, in locals, objects, what is put off
				require.Equal(t, to, b.at(b.dataAt(n)))
				if to != noData {
					require.Equal(t, old.pointed[to:][:8], s.pointed[to:][:8], "%d: data %d", i, n)
				}
			}
		}
		row := binary.LittleEndian.Uint32(s.row(i * rowsEach))
		require.LessOrEqual(t, row, uint32(i))
		require.Greater(t, row+beginsAlike, uint32(i))
	}
	for _, name := range []string{"main.main", "runtime.main", "runtime.gcBgMarkWorker"} {
		assert.Contains(t, string(s.names), "\x00"+name+"\x00")
	}
	assert.NotContains(t, string(s.names), "syscall/js.")
}

// moved is the same part of another memory.
func moved(from, to, part []byte) []byte { return to[len(from)-cap(part):][:len(part)] }

// A word of the layout that isn't what the linker writes there is an error, and then nothing is changed; or it is one that
// nothing here hangs on, and all else comes out as it would.
func TestShiftedWordsAreNoticed(t *testing.T) {
	whole := slices.Clip(memoryOf(data(t, proven(t))))
	start := only(whole, tableHeader)
	known := moduleData(whole, start)
	s := symbolsOf(whole)
	want := slices.Clone(whole)
	withoutTraces(want)

	shift := func(what string, at, size, by int, mayPass bool) (noticed bool) {
		memory := slices.Clone(whole)
		word := memory[at : at+size]
		var full [8]byte
		copy(full[:], word)
		binary.LittleEndian.PutUint64(full[:], binary.LittleEndian.Uint64(full[:])+uint64(by))
		copy(word, full[:size])
		untouched := slices.Clone(memory)
		if err := guarded(func() { withoutTraces(memory) }); err != nil {
			assert.True(t, slices.Equal(untouched, memory), "%s, %+d: changed before it was noticed", what, by)
			return true
		}
		if !mayPass {
			copy(memory[at:], want[at:at+size])
			assert.True(t, slices.Equal(want, memory), "%s, %+d: not noticed, and something else comes out", what, by)
		}
		return false
	}
	for _, by := range []int{-64, -8, -4, -1, 1, 4, 8, 64} {
		for i := 1; i <= functions; i++ {
			shift("header", start+8*i, 8, by, false)
		}
		for i := range tableWords {
			shift("moduledata", known+8*i, 8, by, false)
		}
	}
	for _, i := range []int{countWord, nameTable, unitTable, fileTable, pcTable, functions} {
		assert.True(t, shift("header", start+8*i, 8, 8, false), "header %d", i)
	}
	for _, i := range []int{0, namePart, namePart + 1, unitPart, filePart, pcPart, pcPart + 1, recordPart, pairPart, pairPart + 1, findWord, dataWord, tableEnd} {
		assert.True(t, shift("moduledata", known+8*i, 8, 64, false), "moduledata %d", i)
	}
	for i := 0; i < s.count; i += s.count / 20 {
		at := len(whole) - cap(s.records) + int(s.isRecord[i])
		for offset := 0; offset < s.record(i).size(); offset += 4 {
			for _, by := range []int{-4, 1, 4} {
				shifted := s.record(i).at(offset) + uint32(by)
				shift("record", at+offset, 4, by, s.isRun[shifted] || offset >= recordBytes)
			}
		}
		assert.True(t, shift("pair", len(whole)-cap(s.records)+pairBytes*i+4, 4, 4, false))
		assert.True(t, shift("row", len(whole)-cap(s.find)+i*rowsEach*rowBytes, 4, 1, false))
	}
}
