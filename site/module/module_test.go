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

// memory is what the program finds when it starts.
func memory(list []segment) []byte {
	var all []byte
	for _, s := range list {
		all = append(all, make([]byte, max(0, s.end()-len(all)))...)
		copy(all[s.at:], s.bytes)
	}
	return all
}

func TestJoinedSegmentsFillTheSameMemory(t *testing.T) {
	list := data(t, program(t))
	fewer := joined(list)
	assert.Less(t, len(fewer), len(list)/100)
	assert.True(t, bytes.Equal(memory(list), memory(fewer)))
	assert.Equal(t, fewer, readSegments(writeSegments(fewer)))
}

func TestJoined(t *testing.T) {
	long := 10 + longestGap
	assert.Equal(t,
		[]segment{{5, []byte{1, 0, 0, 2}}, {long, []byte{3}}, {6, []byte{4}}},
		joined([]segment{{5, []byte{1}}, {8, []byte{2}}, {long, []byte{3}}, {6, []byte{4}}}), "what goes back stays as it is")
}

// A trace still needs the names, and the collector the stack maps: all but the runs of files and lines stays.
func TestWithoutLines(t *testing.T) {
	before := program(t)
	after, err := Small(before)
	require.NoError(t, err)
	was, is := memory(data(t, before)), memory(data(t, after))
	require.Len(t, is, len(was))
	start := bytes.Index(was, tableHeader)
	require.Positive(t, start, "this Go has another table: withoutLines has to learn it")
	word := func(i int) int { return start + int(binary.LittleEndian.Uint64(was[start+8*i:])) }
	assert.True(t, bytes.Equal(was[:word(unitTable)], is[:word(unitTable)]), "types and names")
	kept := 0
	for i := word(pcTable); i < word(functions); i++ {
		if is[i] != 0 {
			require.Equal(t, was[i], is[i])
			kept++
		}
	}
	assert.Greater(t, kept, 10_000, "stack maps")
	assert.Less(t, kept, (word(functions)-word(pcTable))/2)
	again, err := Small(after)
	require.NoError(t, err)
	assert.Equal(t, data(t, after), data(t, again))
}

func TestSectionsRefusesWhatIsNoModule(t *testing.T) {
	_, err := Sections([]byte("\x1f\x8b"))
	assert.Error(t, err)
}
