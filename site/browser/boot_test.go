package browser_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
)

func TestPageStarts(t *testing.T) {
	page := served(t, emptyProgram)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.Open(page.URL)
		assert.Contains(t, s.Text("main"), "The maker's sheet and the local rules stand above")
		ready(s)
		assert.Equal(t, page.Version, s.Attr("html", "data-version"))
		assert.Empty(t, s.Text("#stopped"))
	})
}
