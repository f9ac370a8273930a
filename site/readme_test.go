package site_test

import (
	"os"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What README says to install is what the bare machine of .ci/run installs, and DEVELOPERS.md doesn't say it once more.
func TestWhatTheTestsNeedIsSaidOnce(t *testing.T) {
	read := func(name string) string {
		text, err := os.ReadFile("../" + name)
		require.NoError(t, err)
		return string(text)
	}
	installs := regexp.MustCompile(`apt-get install (?:--\S+ )*(.*)`)
	for name, commands := range map[string][]string{"README.md": {"    make run ", "    make test "}, ".ci/run": {"\nmake test\n"}} {
		for _, command := range commands {
			assert.Contains(t, read(name), command, name)
		}
	}
	run, readme := installs.FindStringSubmatch(read(".ci/run")), installs.FindStringSubmatch(read("README.md"))
	require.Len(t, run, 2)
	require.Len(t, readme, 2)
	assert.Equal(t, run[1], readme[1])
	assert.NotContains(t, read("DEVELOPERS.md"), "xvfb")
}
