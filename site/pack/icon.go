package pack

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
)

// patch is a filled polygon of the icon, in a square of 64 units. What matters stays within the middle 80 %, which is
// what a phone leaves of a maskable icon.
type patch struct {
	fill    color.RGBA
	corners [][2]float64
}

// drawing is an open launch seen from the side, on a stack of films.
var drawing = []patch{
	{color.RGBA{0x0a, 0x53, 0x47, 0xff}, [][2]float64{{0, 0}, {64, 0}, {64, 64}, {0, 64}}},
	{color.RGBA{0xed, 0xf0, 0xe8, 0xff}, [][2]float64{ // hull, sheer line first, bow to the right
		{11, 22}, {18, 23.5}, {26, 24}, {34, 23.5}, {42, 22}, {49, 19.5}, {55, 16},
		{53, 22}, {50, 27.5}, {46, 32}, {41, 35}, {34, 36.5}, {24, 36.5}, {14, 35}}},
	{color.RGBA{0xf5, 0xe0, 0x9a, 0xff}, [][2]float64{{12, 40}, {52, 40}, {52, 44}, {12, 44}}},
	{color.RGBA{0xff, 0xa4, 0x8f, 0xff}, [][2]float64{{12, 45}, {52, 45}, {52, 48}, {12, 48}}},
	{color.RGBA{0x86, 0xd7, 0xbb, 0xff}, [][2]float64{{12, 49}, {52, 49}, {52, 54}, {12, 54}}},
}

// icons draws the icon in every form that phones ask for.
func icons() map[string][]byte {
	files := map[string][]byte{"icon.svg": svg()}
	for _, size := range []int{180, 192, 512} {
		files[fmt.Sprintf("icon-%d.png", size)] = raster(size)
	}
	return files
}

func svg() []byte {
	var b bytes.Buffer
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 64 64">`)
	for _, p := range drawing {
		fmt.Fprintf(&b, `<polygon fill="#%02x%02x%02x" points="`, p.fill.R, p.fill.G, p.fill.B)
		for _, c := range p.corners {
			fmt.Fprintf(&b, "%g,%g ", c[0], c[1])
		}
		b.WriteString(`"/>`)
	}
	b.WriteString("</svg>\n")
	return b.Bytes()
}

// raster draws the icon as a PNG, each pixel the mean of 3 × 3 points.
func raster(size int) []byte {
	const n = 3
	img := image.NewRGBA(image.Rect(0, 0, size, size))
	step := 64 / float64(size*n)
	for y := range size {
		for x := range size {
			var r, g, b int
			for i := range n * n {
				c := colourAt((float64(x*n+i%n)+0.5)*step, (float64(y*n+i/n)+0.5)*step)
				r, g, b = r+int(c.R), g+int(c.G), b+int(c.B)
			}
			img.SetRGBA(x, y, color.RGBA{uint8(r / (n * n)), uint8(g / (n * n)), uint8(b / (n * n)), 0xff})
		}
	}
	var out bytes.Buffer
	png.Encode(&out, img) // a bytes.Buffer takes everything, and the size is sound
	return out.Bytes()
}

// colourAt is the colour of the topmost patch at a point.
func colourAt(x, y float64) color.RGBA {
	for i := len(drawing) - 1; i > 0; i-- {
		if inside(drawing[i].corners, x, y) {
			return drawing[i].fill
		}
	}
	return drawing[0].fill
}

// inside counts the edges that a ray to the right crosses: odd means inside.
func inside(corners [][2]float64, x, y float64) bool {
	in := false
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		if (a[1] > y) != (b[1] > y) && x < a[0]+(y-a[1])*(b[0]-a[0])/(b[1]-a[1]) {
			in = !in
		}
	}
	return in
}
