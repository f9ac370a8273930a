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

// README's photographs are there, said in words too, and small: they are fetched with every clone.
func TestPicturesOfTheReadme(t *testing.T) {
	text, err := os.ReadFile("../README.md")
	require.NoError(t, err)
	pictures := regexp.MustCompile(`<img src="site/(pictures/[a-z]+\.png)"[^>]* alt="([^"]{20,})"`).FindAllSubmatch(text, -1)
	require.Len(t, pictures, 3)
	for _, p := range pictures {
		info, err := os.Stat(string(p[1]))
		require.NoError(t, err)
		assert.Less(t, info.Size(), int64(60_000), "%s", p[1])
	}
	files, err := os.ReadDir("pictures")
	require.NoError(t, err)
	assert.Len(t, files, len(pictures), "and no other stands there")
}
