// Package deflate writes gzip streams that are a twentieth smaller than those of compress/gzip at its best: it looks for
// the cheapest way to write the whole of a block, where that takes the longest match at hand. It is slow, and meant for
// what is packed once and loaded often.
//
// Source: RFC 1951 (deflate) and RFC 1952 (gzip).
package deflate

import (
	"encoding/binary"
	"hash/crc32"
	"math/bits"
	"slices"
)

// Gzip compresses data into a stream without name or time, so that equal data give equal bytes.
func Gzip(data []byte) []byte {
	w := writer{out: []byte{0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 2, 0xff}} // deflate, slowest, made on an unknown system
	f := newFinder(data)
	for from := 0; from < len(data) || from == 0; from += partSize {
		p := parser{data: data, from: from, matches: f.find(from, min(from+partSize, len(data)))}
		bounds := p.split()
		for i, end := range bounds[1:] {
			w.block(p.best(bounds[i], end), end == len(data))
		}
	}
	w.write(0, 7) // to the end of a byte
	w.out = binary.LittleEndian.AppendUint32(w.out, crc32.ChecksumIEEE(data))
	return binary.LittleEndian.AppendUint32(w.out, uint32(len(data)))
}

// writer writes bits, the lowest first.
type writer struct {
	out   []byte
	bits  uint64
	count int
}

func (w *writer) write(value, count int) {
	w.bits |= uint64(value) << w.count
	for w.count += count; w.count >= 8; w.count -= 8 {
		w.out = append(w.out, byte(w.bits))
		w.bits >>= 8
	}
}

// block writes a block with codes of its own. Source: RFC 1951, 3.2.7.
func (w *writer) block(tokens []token, isLast bool) {
	final := 0
	if isLast {
		final = 1
	}
	w.write(final+2<<1, 3)
	c := countTokens(tokens)
	literals, distances := newCode(c.literals[:], 15), newCode(c.distances[:], 15)
	w.lengths(slices.Concat(literals.lengths, distances.lengths))
	for _, t := range tokens {
		if t.distance == 0 {
			w.symbol(literals, t.length)
			continue
		}
		s, d := lengthSymbol[t.length], distanceSymbol(t.distance)
		w.symbol(literals, s)
		w.write(t.length-lengthBase[s-firstLength], lengthExtra[s-firstLength])
		w.symbol(distances, d)
		w.write(t.distance-distanceBase[d], distanceExtra[d])
	}
	w.symbol(literals, endOfBlock)
}

func (w *writer) symbol(c code, s int) { w.write(c.bits[s], c.lengths[s]) }

// lengths writes the lengths of a block's two codes, in a code of their own. Source: RFC 1951, 3.2.7.
func (w *writer) lengths(list []int) {
	runs := runsOf(list)
	counts := make([]int, 19)
	for _, r := range runs {
		counts[r.symbol]++
	}
	c := newCode(counts, 7)
	w.write(286-257, 5)
	w.write(30-1, 5)
	w.write(len(counts)-4, 4)
	for _, s := range []int{16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15} {
		w.write(c.lengths[s], 3)
	}
	for _, r := range runs {
		w.symbol(c, r.symbol)
		w.write(r.extra, r.bits)
	}
}

// run is a code length, or the repetition of one.
type run struct{ symbol, extra, bits int }

func runsOf(lengths []int) []run {
	var list []run
	for i, n := 0, 0; i < len(lengths); i += n {
		value := lengths[i]
		for n = 1; i+n < len(lengths) && lengths[i+n] == value && n < 138; n++ {
		}
		switch {
		case value == 0 && n > 10:
			list = append(list, run{18, n - 11, 7})
		case value == 0 && n > 2:
			list = append(list, run{17, n - 3, 3})
		case i > 0 && value == lengths[i-1] && n > 2:
			n = min(n, 6)
			list = append(list, run{16, n - 3, 2})
		default:
			n = 1
			list = append(list, run{symbol: value})
		}
	}
	return list
}

// code is a prefix code: for each symbol its bits, the first lowest, and how many.
type code struct{ bits, lengths []int }

// newCode makes the code by Huffman's construction. Where it would be too long, the counts are flattened until it isn't.
func newCode(counts []int, longest int) code {
	lengths := huffman(counts)
	for slices.Max(lengths) > longest {
		counts = slices.Clone(counts)
		for i, n := range counts {
			counts[i] = (n + 1) / 2
		}
		lengths = huffman(counts)
	}
	c := code{make([]int, len(counts)), lengths}
	next := uint32(0)
	for length := 1; length <= longest; length++ { // Source: RFC 1951, 3.2.2
		for s, l := range lengths {
			if l == length {
				c.bits[s] = int(bits.Reverse32(next) >> (32 - length))
				next++
			}
		}
		next <<= 1
	}
	return c
}

// huffman gives the length of each symbol's code: with each joining of the two rarest trees those of all their symbols
// grow by one.
func huffman(counts []int) []int {
	type tree struct {
		count   int
		symbols []int
	}
	var trees []tree // the most frequent first
	add := func(t tree) {
		at, _ := slices.BinarySearchFunc(trees, t.count, func(other tree, count int) int { return count - other.count })
		trees = slices.Insert(trees, at, t)
	}
	for s, n := range counts {
		if n > 0 {
			add(tree{n, []int{s}})
		}
	}
	for s := 0; len(trees) < 2; s++ { // readers want codes, even where there is nothing to tell apart
		if counts[s] == 0 {
			add(tree{1, []int{s}})
		}
	}
	lengths := make([]int, len(counts))
	for len(trees) > 1 {
		a, b := trees[len(trees)-1], trees[len(trees)-2]
		trees = trees[:len(trees)-2]
		both := tree{a.count + b.count, slices.Concat(a.symbols, b.symbols)}
		for _, s := range both.symbols {
			lengths[s]++
		}
		add(both)
	}
	return lengths
}
