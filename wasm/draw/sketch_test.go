package draw_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/surface"
	"shedreckoner/wasm/draw"
)

func TestEveryShapeHasASketchThatCanBeRead(t *testing.T) {
	for _, shape := range surface.Shapes {
		t.Run(shape.Key, func(t *testing.T) {
			list := texts(read(t, draw.Sketch(shape.Sketch(surface.Input{}), shape.Name)))
			for _, d := range shape.Dims {
				if d.Letter != "" {
					assert.Contains(t, list, d.Letter, d.Name)
				}
			}
		})
	}
}
