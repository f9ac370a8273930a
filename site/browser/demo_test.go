package browser_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
)

// kept gives what the page keeps of the builder's own job, and how much of the made-up one.
func kept(s *webdriver.Session) (own string, madeUp int) {
	var all map[string]string
	s.Script(&all, `return Object.fromEntries(Object.entries(localStorage))`)
	for key, text := range all {
		switch {
		case strings.HasPrefix(key, "shedreckoner.job."):
			own += key + "\n" + text
		case strings.HasPrefix(key, "shedreckoner.demo."):
			madeUp++
		}
	}
	return own, madeUp
}

func TestTheMadeUpJob(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		withJob(s, foredeck)
		before, _ := kept(s)
		goTo(s, "settings")
		do(s, "demo", "", "")
		s.Wait(".notice .demo")
		assert.Contains(t, shown(s, ".notice"), "Made-up job")
		assert.Contains(t, shown(s, ".jobname"), "made up")
		goTo(s, "surfaces")
		assert.Contains(t, shown(s, ".screen"), "Topsides")
		unfold(s, "surface.3")
		fill(s, "surface.3.length", "8 m")
		_, madeUp := kept(s)
		assert.Positive(t, madeUp)

		s.Refresh()
		ready(s)
		assert.Contains(t, shown(s, ".notice"), "Made-up job", "also after a reload")
		do(s, "own", "", "")
		goTo(s, "surfaces")
		assert.Contains(t, shown(s, ".screen"), "Foredeck")
		assert.NotContains(t, shown(s, ".screen"), "Topsides")
		goTo(s, "settings")
		do(s, "demo", "", "")
		tap(s, "#open-menu")
		do(s, "clear", "", "")
		assert.False(t, s.Has(".notice .demo"))
		s.Until("nothing is left of the made-up one", func() bool { // a tap is answered before it is kept
			_, madeUp := kept(s)
			return madeUp == 0
		})
		after, _ := kept(s)
		assert.Equal(t, before, after, "the own job was not touched")
		goTo(s, "surfaces")
		assert.Contains(t, shown(s, ".screen"), "Foredeck")
	})
}
