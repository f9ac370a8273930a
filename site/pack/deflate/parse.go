package deflate

import (
	"math"
	"math/bits"
	"slices"
)

// Data is taken in parts, whose matches are in memory at one time, and those in pieces, of which blocks are made.
const (
	partSize  = 1 << 20
	pieceSize = 1 << 13
)

// Symbols of literals and lengths, and the limit of lengths.
const (
	endOfBlock  = 256
	firstLength = 257
	longest     = 258
)

// The symbols of lengths and distances. Source: RFC 1951, 3.2.5.
var (
	lengthBase    = [29]int{3, 4, 5, 6, 7, 8, 9, 10, 11, 13, 15, 17, 19, 23, 27, 31, 35, 43, 51, 59, 67, 83, 99, 115, 131, 163, 195, 227, 258}
	lengthExtra   = [29]int{0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 0}
	lengthSymbol  [longest + 1]int
	distanceBase  [30]int
	distanceExtra [30]int
)

func init() {
	for s, base := range lengthBase {
		for length := base; length <= longest; length++ {
			lengthSymbol[length] = firstLength + s
		}
	}
	for s := range distanceBase {
		distanceBase[s] = 1 + s
		if s > 3 {
			distanceExtra[s] = s/2 - 1
			distanceBase[s] = 1 + (2+s%2)<<distanceExtra[s]
		}
	}
}

func distanceSymbol(distance int) int {
	d := uint(distance - 1)
	n := max(0, bits.Len(d)-2)
	return 2*n + int(d>>n)
}

// token is a literal (its byte in length, no distance) or a match.
type token struct{ length, distance int }

func (t token) size() int {
	if t.distance == 0 {
		return 1
	}
	return t.length
}

// counts is how often each symbol stands in a block.
type counts struct {
	literals  [286]int
	distances [30]int
}

func countTokens(tokens []token) counts {
	var c counts
	c.literals[endOfBlock] = 1
	for _, t := range tokens {
		if t.distance == 0 {
			c.literals[t.length]++
			continue
		}
		c.literals[lengthSymbol[t.length]]++
		c.distances[distanceSymbol(t.distance)]++
	}
	return c
}

func (c counts) plus(d counts) counts {
	for i, n := range d.literals {
		c.literals[i] += n
	}
	for i, n := range d.distances {
		c.distances[i] += n
	}
	return c
}

// bits is about what a block with these counts takes: for each kind of symbol the entropy, and a little in the head.
func (c counts) bits() float64 {
	const inHead = 4
	sum := 0.0
	for _, counts := range [][]int{c.literals[:], c.distances[:]} {
		costs := costOf(counts)
		for s, n := range counts {
			if n > 0 {
				sum += inHead + float64(n)*float64(costs[s])
			}
		}
	}
	return sum
}

// costOf is what each symbol takes, in bits; one that was not used yet is taken for very rare.
func costOf(counts []int) []float32 {
	total := 1
	for _, n := range counts {
		total += n
	}
	costs := make([]float32, len(counts))
	for s, n := range counts {
		costs[s] = float32(math.Log2(float64(total) / max(float64(n), 0.5)))
	}
	return costs
}

// parser finds the cheapest tokens for a part of the data.
type parser struct {
	data    []byte
	from    int // of the part
	matches [][]token
}

// split gives the bounds of the blocks in which the part takes least: of pieces, the two neighbours that gain most by one
// code instead of two are joined until none gain.
func (p *parser) split() []int {
	bounds := []int{p.from}
	var pieces []counts
	tokens := p.parse(p.from, p.from+len(p.matches), counts{})
	for at := p.from; len(tokens) > 0; {
		n := 0
		for end := at + pieceSize; n < len(tokens) && at < end; n++ {
			at += tokens[n].size()
		}
		pieces = append(pieces, countTokens(tokens[:n]))
		bounds = append(bounds, at)
		tokens = tokens[n:]
	}
	if len(pieces) == 0 {
		return []int{p.from, p.from}
	}
	for {
		best, most := 0, 0.0
		for i := range len(pieces) - 1 {
			if gain := pieces[i].bits() + pieces[i+1].bits() - pieces[i].plus(pieces[i+1]).bits(); gain > most {
				best, most = i, gain
			}
		}
		if most == 0 {
			return bounds
		}
		pieces[best] = pieces[best].plus(pieces[best+1])
		pieces = slices.Delete(pieces, best+1, best+2)
		bounds = slices.Delete(bounds, best+1, best+2)
	}
}

// best parses a block again and again, each time with what the last has shown symbols to cost.
func (p *parser) best(from, to int) []token {
	const passes = 8
	var tokens []token
	for range passes {
		tokens = p.parse(from, to, countTokens(tokens))
	}
	return tokens
}

// parse gives the tokens that cost least in sum, found from the end: the best way from a place is a token and the best way
// from behind it.
func (p *parser) parse(from, to int, c counts) []token {
	literals, distances := costOf(c.literals[:]), costOf(c.distances[:])
	var lengths [longest + 1]float32
	for i, s := range lengthSymbol[3:] {
		lengths[3+i] = literals[s] + float32(lengthExtra[s-firstLength])
	}
	costs, choices := make([]float32, to-from+1), make([]token, to-from)
	for i := to - 1; i >= from; i-- {
		rest := costs[i-from:]
		least, choice := literals[p.data[i]]+rest[1], token{length: int(p.data[i])}
		length := 3
		for _, m := range p.matches[i-p.from] {
			d := distanceSymbol(m.distance)
			distance := distances[d] + float32(distanceExtra[d])
			for ; length <= m.length && length < len(rest); length++ {
				if cost := lengths[length] + distance + rest[length]; cost < least {
					least, choice = cost, token{length, m.distance}
				}
			}
		}
		rest[0], choices[i-from] = least, choice
	}
	var tokens []token
	for i := from; i < to; i += tokens[len(tokens)-1].size() {
		tokens = append(tokens, choices[i-from])
	}
	return tokens
}
