package view_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// Areas are said as people say them: no more than three figures, of less than a
// square metre no more than two. By hand: 1.23 × 1.98 = 2.4354, 0.31 × 0.21 =
// 0.0651, 2 × 6.4 = 12.8, 0.97 × 0.97 = 0.9409 m².
func TestAreasAreSaidAsPeopleSayThem(t *testing.T) {
	for _, c := range []struct{ length, width, said string }{
		{"1.23 m", "1.98 m", "2.44\u00a0m²"}, {"31 cm", "21 cm", "0.065\u00a0m²"}, {"2 m", "6.4 m", "12.8\u00a0m²"}, {"97 cm", "97 cm", "0.94\u00a0m²"}, {"30 cm", "20 cm", "0.06\u00a0m²"},
	} {
		s, _ := page.Start(nil, noon)
		s = do(do(do(s, "add", "surface", "rectangle"), "set", "surface.1.length", c.length), "set", "surface.1.width", c.width)
		assert.Contains(t, view.Page(s).String(), c.said, "%s × %s", c.length, c.width)
	}
}
