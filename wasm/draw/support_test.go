package draw_test

import (
	"encoding/xml"
	"io"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/wasm/markup"
)

// A character's width and a line's height that texts are checked with, in units
// of the picture: those of the widest of the usual system fonts.
const (
	runeWidth = 8.
	lineHigh  = 15.
)

type box struct {
	text                     string
	left, top, right, bottom float64
}

// read reads a picture: it is well-formed, all numbers are numbers, every mark
// lies in the picture, and no text over another.
func read(t *testing.T, h markup.HTML) []box {
	t.Helper()
	staysInside(t, h)
	var (
		boxes         []box
		width, height float64
		anchor, x, y  string
	)
	d := xml.NewDecoder(strings.NewReader(h.String()))
	for {
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			get := attributes(token)
			for name, value := range get {
				assert.NotContains(t, []string{"fill", "stroke", "stroke-width", "style", "color", "opacity"}, name, "a picture has no look of its own")
				if name != "aria-label" {
					assert.NotContains(t, value, "NaN", name)
					assert.NotContains(t, value, "Inf", name)
				}
			}
			if token.Name.Local == "svg" && width == 0 {
				view := strings.Fields(get["viewBox"])
				width, height = number(t, view[2]), number(t, view[3])
				assert.NotEmpty(t, get["aria-label"])
			}
			anchor, x, y = get["text-anchor"], get["x"], get["y"]
		case xml.CharData:
			boxes = append(boxes, textBox(string(token), anchor, number(t, x), number(t, y)))
		}
	}
	for i, b := range boxes {
		assert.True(t, b.left > -1 && b.right < width+1 && b.top > -1 && b.bottom < height+1, "%+v lies outside %g × %g", b, width, height)
		for _, other := range boxes[:i] {
			assert.False(t, b.left < other.right && other.left < b.right && b.top < other.bottom && other.top < b.bottom, "%+v lies over %+v", b, other)
		}
	}
	return boxes
}

func attributes(e xml.StartElement) map[string]string {
	get := map[string]string{}
	for _, attr := range e.Attr {
		get[attr.Name.Local] = attr.Value
	}
	return get
}

func number(t *testing.T, text string) float64 {
	n, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return n
}

func textBox(text, anchor string, x, y float64) box {
	width := float64(len([]rune(text))) * runeWidth
	left := map[string]float64{"start": x, "middle": x - width/2, "end": x - width}[anchor]
	return box{text, left, y - lineHigh/2, left + width, y + lineHigh/2}
}

func texts(boxes []box) []string {
	var list []string
	for _, b := range boxes {
		list = append(list, b.text)
	}
	return list
}
