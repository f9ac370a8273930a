package draw_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/wasm/draw"
)

var launch = []draw.Layer{
	{Name: "Epoxy filler", Film: 1.2e-3, Text: "1.2 mm", IsFill: true},
	{Name: "Flow coat", Film: 344e-6, Text: "344 µm"},
	{Name: "Sand", Film: -150e-6, Text: "150 µm"},
	{Name: "Gel coat, isophthalic and neopentyl glycol, sprayed", Film: 760e-6, Text: "760 µm"},
	{Name: "Sand", Film: -177e-6, Text: "177 µm"},
	{Name: "Polish", Film: -5e-6, Text: "5 µm"},
}

func TestStackLabelsEveryLayer(t *testing.T) {
	h := draw.Stack(launch)
	list := texts(read(t, h))
	for _, want := range []string{"ground", "1.2 mm", "344 µm", "− 150 µm", "760 µm", "− 177 µm", "− 5 µm", "Flow coat"} {
		assert.Contains(t, list, want)
	}
	assert.Contains(t, h.String(), "Sand takes 150 µm", "those who don't see it are told too")
}

func TestStackIsToScale(t *testing.T) {
	h := draw.Stack([]draw.Layer{{Name: "Primer", Film: 100e-6}, {Name: "Top coat", Film: 300e-6}}).String()
	assert.Contains(t, h, `class="tone0" x="0" y="131.5" width="76" height="42.5"`)
	assert.Contains(t, h, `class="tone3" x="0" y="4" width="76" height="127.5"`)
	h = draw.Stack([]draw.Layer{{Name: "Primer", Film: 400e-6}, {Name: "Sand", Film: -100e-6}}).String()
	assert.Contains(t, h, `class="tone0" x="0" y="46.5" width="76" height="127.5"`, "what is left")
	assert.Contains(t, h, `class="taken" x="76" y="4" width="22" height="42.5"`, "what was taken")
}

func TestStackStandsWhateverComes(t *testing.T) {
	many := []draw.Layer{}
	for range 30 {
		many = append(many, draw.Layer{Name: strings.Repeat("long name ", 20), Film: 1e-4, Text: strings.Repeat("9", 60)},
			draw.Layer{Name: "Sand", Film: -1e-4, Text: "100 µm"})
	}
	for name, layers := range map[string][]draw.Layer{
		"none": {}, "many": many,
		"only taken":        {{Name: "Sand", Film: -1, Text: "1 m"}},
		"more than there":   {{Name: "Coat", Film: 1e-4, Text: "100 µm"}, {Name: "Sand", Film: -1, Text: "1 m"}},
		"filler sanded":     {{Name: "Fill", Film: 1e-3, Text: "1 mm", IsFill: true}, {Name: "Sand", Film: -1, Text: "1 m"}, {Name: "Coat", Film: 1e-4, Text: "100 µm"}},
		"nothing":           {{Name: "Coat", Text: "0 µm"}},
		"not a number":      {{Name: "Coat", Film: math.NaN(), Text: "–"}, {Name: "Coat", Film: math.Inf(1), Text: "–"}},
		"very unlike films": {{Name: "Coat", Film: 1e-300, Text: "0 µm"}, {Name: "Coat", Film: 1e300, Text: "?"}},
	} {
		t.Run(name, func(t *testing.T) { read(t, draw.Stack(layers)) })
	}
}
