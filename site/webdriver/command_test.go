package webdriver_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
)

func TestRun(t *testing.T) {
	own := errors.New("its own")
	assert.NoError(t, webdriver.Run(func(webdriver.Failer) error { return nil }))
	assert.Equal(t, own, webdriver.Run(func(webdriver.Failer) error { return own }))
	assert.EqualError(t, webdriver.Run(func(t webdriver.Failer) error { t.Fatalf("no %s", "tab"); return nil }), "no tab")
	assert.PanicsWithValue(t, "a mistake", func() { webdriver.Run(func(webdriver.Failer) error { panic("a mistake") }) })
}
