package module

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
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
	sections, err := sectionsOf(module)
	require.NoError(t, err)
	for _, s := range sections {
		if s.id == dataSection {
			return readSegments(s.content)
		}
	}
	t.Fatal("no data section")
	return nil
}

func TestJoinedSegmentsFillTheSameMemory(t *testing.T) {
	list := data(t, program(t))
	fewer := joined(memoryOf(list))
	assert.Less(t, len(fewer), len(list)/2)
	assert.True(t, bytes.Equal(memoryOf(list), memoryOf(fewer)))
	assert.Equal(t, fewer, readSegments(writeSegments(fewer)))
}

func TestJoined(t *testing.T) {
	long := 9 + longestGap
	assert.Equal(t,
		[]segment{{5, []byte{1, 4, 0, 2}}, {long + 1, []byte{3}}},
		joined(memoryOf([]segment{{5, []byte{1}}, {8, []byte{2, 0, 0}}, {long, []byte{0, 3, 0}}, {6, []byte{4}}})), "what comes later counts")
	assert.Equal(t, long, joined(memoryOf([]segment{{8, []byte{2}}, {long, []byte{3}}}))[0].end()-1, "no longer a gap")
}

func TestWhatIsNoModuleIsAnError(t *testing.T) {
	whole := program(t)
	for name, bad := range map[string][]byte{
		"nothing": nil, "other bytes": []byte("<!doctype html>"), "cut": whole[:len(whole)/2], "more": append(bytes.Clone(whole), 1), "a long section": append(bytes.Clone(whole[:8]), 0, 0xff, 0xff, 0xff, 0xff, 0x0f),
	} {
		_, _, err := Small(bad)
		assert.Error(t, err, name)
	}
}

// Another toolchain's program is joined, and else left as it is.
func TestOtherToolchainsProgramsAreLeftAsTheyAre(t *testing.T) {
	whole := program(t)
	other := bytes.Replace(whole, []byte("Go\b"+Proven), []byte("Go\bgo1.99.9"), 1)
	if runtime.Version() == Proven {
		require.NotEqual(t, whole, other)
	}
	small, left, err := Small(other)
	require.NoError(t, err)
	assert.Contains(t, left, Proven)
	assert.NotContains(t, left, "\n")
	was, err := sectionsOf(other)
	require.NoError(t, err)
	is, err := sectionsOf(small)
	require.NoError(t, err)
	require.Len(t, is, len(was))
	for i := range was {
		if was[i].id != dataSection {
			assert.True(t, bytes.Equal(was[i].content, is[i].content), "section %d", was[i].id)
		}
	}
	assert.True(t, bytes.Equal(memoryOf(data(t, other)), memoryOf(data(t, small))))
}

// proven gives a program of the toolchain that more may be done to.
func proven(t *testing.T) []byte {
	t.Helper()
	if runtime.Version() != Proven {
		t.Skipf("not run: made for %s, and this is %s; programs of this one are only joined", Proven, runtime.Version())
	}
	return program(t)
}
