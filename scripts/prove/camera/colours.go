package main

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"slices"
)

// fewColours writes a PNG anew with the 256 colours that it has most of: pages
// have few, and what lies between them at the edges of letters goes to the next.
func fewColours(data []byte) ([]byte, error) {
	from, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	box := from.Bounds()
	count := map[color.RGBA]int{}
	for y := box.Min.Y; y < box.Max.Y; y++ {
		for x := box.Min.X; x < box.Max.X; x++ {
			count[color.RGBAModel.Convert(from.At(x, y)).(color.RGBA)]++
		}
	}
	most := make([]color.RGBA, 0, len(count))
	for c := range count {
		most = append(most, c)
	}
	// By the colour itself where there are as many: the same each time.
	key := func(c color.RGBA) int { return int(c.R)<<16 | int(c.G)<<8 | int(c.B) }
	slices.SortFunc(most, func(a, b color.RGBA) int {
		if count[a] != count[b] {
			return count[b] - count[a]
		}
		return key(a) - key(b)
	})
	var palette color.Palette
	for _, c := range most[:min(256, len(most))] {
		palette = append(palette, c)
	}
	to := image.NewPaletted(box, palette)
	draw.Draw(to, box, from, box.Min, draw.Src)
	var out bytes.Buffer
	err = (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&out, to)
	return out.Bytes(), err
}
