package module

import (
	"bytes"
	"encoding/binary"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// program compiles the least program that a page can run.
func program(t *testing.T) []byte {
	t.Helper()
	out := filepath.Join(t.TempDir(), "program.wasm")
	cmd := exec.Command("go", "build", "-ldflags=-s -w", "-o", out, "shedreckoner/site/browser/empty")
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	said, err := cmd.CombinedOutput()
	require.NoError(t, err, string(said))
	data, err := os.ReadFile(out)
	require.NoError(t, err)
	return data
}

func data(t *testing.T, module []byte) []segment {
	t.Helper()
	sections, err := Sections(module)
	require.NoError(t, err)
	for _, s := range sections {
		if s.ID == Data {
			return readSegments(s.Content)
		}
	}
	t.Fatal("no data section")
	return nil
}

func TestJoinedSegmentsFillTheSameMemory(t *testing.T) {
	list := data(t, program(t))
	fewer := joined(list)
	assert.Less(t, len(fewer), len(list)/100)
	assert.True(t, bytes.Equal(memoryOf(list), memoryOf(fewer)))
	assert.Equal(t, fewer, readSegments(writeSegments(fewer)))
}

func TestJoined(t *testing.T) {
	long := 10 + longestGap
	assert.Equal(t,
		[]segment{{5, []byte{1, 0, 0, 2}}, {long, []byte{3}}, {6, []byte{4}}},
		joined([]segment{{5, []byte{1}}, {8, []byte{2}}, {long, []byte{3}}, {6, []byte{4}}}), "what goes back stays as it is")
}

// A trace still needs the names, and the collector the stack maps: all but what only traces need stays.
func TestWithoutTraces(t *testing.T) {
	before := program(t)
	after, err := Small(before)
	require.NoError(t, err)
	was, is := memoryOf(data(t, before)), memoryOf(data(t, after))
	require.Len(t, is, len(was))
	old, ok := symbolsOf(was)
	require.True(t, ok, "this Go has another table: symbolsOf has to learn it")
	s, ok := symbolsOf(is)
	require.True(t, ok)

	changed := 0
	for i, b := range is {
		if b != was[i] {
			changed++
			require.GreaterOrEqual(t, i, len(was)-cap(old.names), "what stands before the table of names stays")
			require.Less(t, i, s.find+s.count*rowsEach*rowBytes, "what stands behind the rows stays")
		}
	}
	assert.Greater(t, changed, 100_000)
	for i := range s.count {
		a, b := old.record(i), s.record(i)
		assert.Equal(t, a[:fileRun], b[:fileRun], "name, frame and its run")
		runs := int(binary.LittleEndian.Uint32(a[runCount:]))
		for _, at := range []int{stackRun, recordBytes + 4} { // and the run of stack maps
			if at == stackRun || runs > 1 {
				from, to := old.run(binary.LittleEndian.Uint32(a[at:])), s.run(binary.LittleEndian.Uint32(b[at:]))
				require.Equal(t, from, to, i)
			}
		}
		for n := range min(inData, int(a[dataCount])) { // pointers in arguments, in locals, and objects
			at := recordBytes + 4*(runs+n)
			require.Equal(t, a[at:at+4], b[at:at+4])
			if info := old.at(a[at:]); info != nil {
				require.Equal(t, info[:8], s.at(b[at:])[:8], "%d: data %d", i, n)
			}
		}
		row := binary.LittleEndian.Uint32(is[s.find+i*rowsEach*rowBytes:])
		require.LessOrEqual(t, row, uint32(i))
		require.Greater(t, row+beginsAlike, uint32(i))
	}
	for _, name := range []string{"main.main", "runtime.main", "runtime.gcBgMarkWorker"} {
		assert.Contains(t, string(s.names), "\x00"+name+"\x00")
	}
	assert.NotContains(t, string(s.names), "syscall/js.")
	again, err := Small(after)
	require.NoError(t, err)
	assert.Equal(t, data(t, after), data(t, again))
}

// run gives the bytes of a run.
func (s symbols) run(start uint32) (run []byte) {
	s.eachRun(start, func(from, to, _ int) { run = s.runs[from:to] })
	return run
}
