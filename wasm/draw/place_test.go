package draw_test

import (
	"encoding/xml"
	"io"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/wasm/markup"
)

type point struct{ x, y float64 }

// mark is one thing of a picture, at its place in the whole picture.
type mark struct {
	tag, class, text, anchor string
	left, top, right, bottom float64
	lines                    [][2]point // of a path
	isCut                    bool       // stands in a part that is cut off at its edges
}

func (m mark) middle() point { return point{(m.left + m.right) / 2, (m.top + m.bottom) / 2} }

// marksOf reads all marks of a picture in the order they are drawn, and its size.
func marksOf(t *testing.T, h markup.HTML) (list []mark, view [4]float64) {
	t.Helper()
	var origin []point
	d := xml.NewDecoder(strings.NewReader(h.String()))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return list, view
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			get := attributes(token)
			at := func(name string) float64 { return number(t, get[name]) }
			m := mark{tag: token.Name.Local, class: get["class"], anchor: get["text-anchor"], isCut: len(origin) > 1}
			var o point
			if len(origin) > 0 {
				o = origin[len(origin)-1]
			}
			switch m.tag {
			case "svg":
				box := strings.Fields(get["viewBox"])
				switch {
				case len(origin) == 0:
					for i, text := range box {
						view[i] = number(t, text)
					}
					origin = append(origin, point{})
				case len(box) == 0: // a part with an origin of its own
					origin = append(origin, point{o.x + at("x"), o.y + at("y")})
				default: // the coordinates go on, what lies outside is cut off
					require.Equal(t, []string{get["x"], get["y"], get["width"], get["height"]}, box)
					list = append(list, mark{tag: "window", left: at("x"), top: at("y"), right: at("x") + at("width"), bottom: at("y") + at("height")})
					origin = append(origin, o)
				}
				continue
			case "rect":
				m.left, m.top = o.x+at("x"), o.y+at("y")
				m.right, m.bottom = m.left+at("width"), m.top+at("height")
			case "circle":
				m.left, m.top, m.right, m.bottom = o.x+at("cx")-at("r"), o.y+at("cy")-at("r"), o.x+at("cx")+at("r"), o.y+at("cy")+at("r")
			case "path":
				m.lines = linesOf(t, get["d"], o)
				m.left, m.top, m.right, m.bottom = around(m.lines)
			case "text":
				m.left, m.top = o.x+at("x"), o.y+at("y")
				m.right, m.bottom = m.left, m.top
			}
			list = append(list, m)
		case xml.CharData:
			list[len(list)-1].text = string(token)
		case xml.EndElement:
			if token.Name.Local == "svg" {
				origin = origin[:len(origin)-1]
			}
		}
	}
}

var pathStep = regexp.MustCompile(`([A-Za-z])([^A-Za-z]*)`)

// linesOf is a path's straight lines; a dot is a line without length.
func linesOf(t *testing.T, d string, o point) (lines [][2]point) {
	var at, start point
	for _, step := range pathStep.FindAllStringSubmatch(d, -1) {
		var n []float64
		for _, text := range strings.Fields(step[2]) {
			n = append(n, number(t, text))
		}
		to := at
		switch step[1] {
		case "M":
			at = point{o.x + n[0], o.y + n[1]}
			start = at
			continue
		case "L":
			to = point{o.x + n[0], o.y + n[1]}
		case "H":
			to.x = o.x + n[0]
		case "V":
			to.y = o.y + n[0]
		case "h":
			to.x += n[0]
		case "Z":
			to = start
		default:
			t.Fatalf("%q in a path", step[1])
		}
		lines = append(lines, [2]point{at, to})
		at = to
	}
	return lines
}

func around(lines [][2]point) (left, top, right, bottom float64) {
	left, top, right, bottom = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, line := range lines {
		for _, p := range line {
			left, top, right, bottom = min(left, p.x), min(top, p.y), max(right, p.x), max(bottom, p.y)
		}
	}
	return left, top, right, bottom
}

// of gives the marks of a class, in the order they are drawn.
func of(list []mark, class string) (some []mark) {
	for _, m := range list {
		if m.class == class {
			some = append(some, m)
		}
	}
	return some
}

// saying gives the text of a picture, of which there is one.
func saying(t *testing.T, list []mark, text string) mark {
	t.Helper()
	at := slices.IndexFunc(list, func(m mark) bool { return m.text == text })
	require.NotEqual(t, -1, at, text)
	return list[at]
}

// lies holds a mark to its place, to the tenth that coordinates are written to.
func lies(t *testing.T, m mark, left, top, right, bottom float64, why ...any) {
	t.Helper()
	assert.InDeltaSlice(t, []float64{left, top, right, bottom}, []float64{m.left, m.top, m.right, m.bottom}, 0.101, why...)
}

// staysInside holds every mark to the picture; what is cut off at a part's edges need not end there.
func staysInside(t *testing.T, h markup.HTML) {
	t.Helper()
	list, view := marksOf(t, h)
	for _, m := range list {
		if m.isCut || m.tag == "path" && len(m.lines) == 0 {
			continue
		}
		assert.True(t, m.left > view[0]-0.1 && m.top > view[1]-0.1 && m.right < view[0]+view[2]+0.1 && m.bottom < view[1]+view[3]+0.1, "%+v lies outside %v", m, view)
	}
}
