package page_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/wasm/page"
)

func TestBackClosesSheetsThenGoesToTheScreenBefore(t *testing.T) {
	s := demo(t)
	require.Zero(t, s.Depth())
	s = do(s, "go", "order", "")
	s = do(s, "sheet", "menu", "")
	s = do(s, "sheet", "surface.1", "")
	assert.Equal(t, 3, s.Depth())
	assert.Equal(t, "surface.1", s.Sheet())
	s = do(s, "back", "", "")
	assert.Equal(t, "menu", s.Sheet())
	s = do(s, "back", "", "")
	assert.Empty(t, s.Sheet())
	assert.Equal(t, "order", s.Screen)
	s = do(s, "back", "", "")
	assert.Equal(t, "surfaces", s.Screen)
	assert.Zero(t, s.Depth())
}

func TestScreensAreFoundAgainOnceEach(t *testing.T) {
	s := demo(t)
	for range 5 {
		for _, screen := range page.Screens {
			s = do(s, "go", screen.Key, "")
		}
	}
	assert.Equal(t, len(page.Screens)-1, s.Depth())
}

func TestASheetGoesWithItsItem(t *testing.T) {
	s := do(demo(t), "sheet", "surface.1", "")
	s = do(s, "remove", "surface.1", "")
	assert.Empty(t, s.Sheet())
	s = do(do(demo(t), "sheet", "buildup.1.step.4", ""), "sheet", "menu", "")
	s = do(s, "remove", "buildup.1", "")
	assert.Equal(t, []string{"menu"}, s.Sheets)
}

func TestASheetBelowComesUp(t *testing.T) {
	s := do(do(do(demo(t), "sheet", "surface.1", ""), "sheet", "menu", ""), "sheet", "surface.1", "")
	assert.Equal(t, []string{"surface.1"}, s.Sheets)
}
