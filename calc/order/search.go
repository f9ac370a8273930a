package order

import (
	"cmp"
	"math"
	"math/bits"
	"sort"

	"github.com/shopspring/decimal"
)

// search looks through how many of each size to buy, depth first, in whole units of
// which all sizes are multiples.
//
// Sizes are tried cheapest per unit first and, among equals, largest first.
// Then what is still missing costs at least its share of the next size's
// price, which cuts off every branch that can't be better. And no size is
// bought so often that some of it could be swapped for an earlier size: a/g
// packs of size b hold as much as b/g packs of size a (g their greatest common
// divisor), for no more money and, at the same cost, no more packs.
type search struct {
	sizes  []size
	need   uint64
	spare  uint64   // most that may be left over
	counts []uint64 // on the way
	best   choice
	found  []uint64 // counts of the best
	steps  int
}

// size is a pack in whole units, with what holds for it and all sizes after it.
type size struct {
	at           int // index in the packs given
	holds, price uint64
	most         uint64 // packs of it that can't be swapped for an earlier size
	gcd, largest uint64 // of this and the later sizes
}

// choice is what purchases are compared by, in this order.
type choice struct{ cost, left, packs uint64 }

func (c choice) before(d choice) bool {
	return cmp.Or(cmp.Compare(c.cost, d.cost), cmp.Compare(c.left, d.left), cmp.Compare(c.packs, d.packs)) < 0
}

const (
	// spareShare: without prices, one part in ten of the need may be left over.
	spareShare = 10
	// maxSteps ends a search that gets nowhere: some milliseconds.
	maxSteps = 1_000_000
	// maxUnits keeps every product of a count with a size or a price in 63 bits.
	maxUnits = 1 << 62
)

func newSearch(need decimal.Decimal, packs []Pack, isPriced bool) (*search, error) {
	amounts, prices := []decimal.Decimal{need}, []decimal.Decimal{}
	for _, p := range packs {
		amounts, prices = append(amounts, p.Size), append(prices, p.Price.Decimal)
	}
	units, err := whole(amounts)
	if err != nil {
		return nil, err
	}
	money, err := whole(prices)
	if err != nil {
		return nil, err
	}
	s := &search{need: units[0], spare: maxUnits, counts: make([]uint64, len(packs)), found: make([]uint64, len(packs))}
	for i := range packs {
		s.sizes = append(s.sizes, size{at: i, holds: units[1+i], price: money[i]})
	}
	if !isPriced {
		s.countPacks()
	}
	return s, s.prepare()
}

// countPacks makes each pack cost one, and bounds what may be left over.
func (s *search) countPacks() {
	smallest := uint64(maxUnits)
	for i := range s.sizes {
		s.sizes[i].price = 1
		smallest = min(smallest, s.sizes[i].holds)
	}
	s.spare = max(s.need/spareShare, smallest)
}

// whole turns decimals into whole multiples of one power of ten.
func whole(values []decimal.Decimal) ([]uint64, error) {
	places := int32(0)
	for _, v := range values {
		if v.Exponent() < -18 || v.Exponent() > 18 {
			return nil, &PackError{Cause: TooFine}
		}
		places = max(places, -v.Exponent())
	}
	list := make([]uint64, len(values))
	for i, v := range values {
		n := v.Shift(places).BigInt()
		if !n.IsUint64() || n.Uint64() > maxUnits {
			return nil, &PackError{Cause: TooFine}
		}
		list[i] = n.Uint64()
	}
	return list, nil
}

// prepare divides by the common unit, sorts the sizes and finds what bounds them.
func (s *search) prepare() error {
	common, largest, smallest, dearest := uint64(0), uint64(0), uint64(math.MaxUint64), uint64(0)
	for _, z := range s.sizes {
		common, largest, smallest = gcd(common, z.holds), max(largest, z.holds), min(smallest, z.holds)
		dearest = max(dearest, z.price)
	}
	most := (s.need + s.spare) / common
	s.need = ceilDiv(s.need, common)
	s.spare = most - s.need
	if ceilDiv(s.need, largest/common) > MaxPacks {
		return &PackError{Cause: TooManyPacks}
	}
	if high, low := bits.Mul64(ceilDiv(s.need, smallest/common), dearest); high > 0 || low > maxUnits {
		return &PackError{Cause: TooFine}
	}
	for i := range s.sizes {
		s.sizes[i].holds /= common
	}
	sort.SliceStable(s.sizes, func(i, j int) bool { return byUnitPrice(s.sizes[i], s.sizes[j]) < 0 })
	later := size{}
	for i := len(s.sizes) - 1; i >= 0; i-- {
		z := &s.sizes[i]
		z.gcd, z.largest, z.most = gcd(later.gcd, z.holds), max(later.largest, z.holds), math.MaxUint64
		for _, earlier := range s.sizes[:i] {
			z.most = min(z.most, earlier.holds/gcd(earlier.holds, z.holds)-1)
		}
		later = *z
	}
	return nil
}

// byUnitPrice sorts the cheaper per unit first, then the larger.
func byUnitPrice(a, b size) int {
	aHigh, aLow := bits.Mul64(a.price, b.holds)
	bHigh, bLow := bits.Mul64(b.price, a.holds)
	return cmp.Or(cmp.Compare(aHigh, bHigh), cmp.Compare(aLow, bLow), cmp.Compare(b.holds, a.holds))
}

// run puts the counts of the best purchase into counts, in the order of the packs
// given.
func (s *search) run(counts []int) error {
	s.best = choice{cost: math.MaxUint64}
	s.choose(0, s.need, choice{})
	if s.steps > maxSteps {
		return &PackError{Cause: TooFine}
	}
	if s.best.packs > MaxPacks {
		return &PackError{Cause: TooManyPacks}
	}
	for i, z := range s.sizes {
		counts[z.at] = int(s.found[i])
	}
	return nil
}

// choose tries every useful count of size i for what is still missing.
func (s *search) choose(i int, missing uint64, sofar choice) {
	z := s.sizes[i]
	enough := ceilDiv(missing, z.holds)
	n := min(enough, z.most)
	if i == len(s.sizes)-1 && n < enough {
		return
	}
	for n++; n > 0; {
		n--
		if s.steps++; s.steps > maxSteps {
			return
		}
		s.counts[i] = n
		next := choice{cost: sofar.cost + n*z.price, packs: sofar.packs + n}
		if n == enough {
			if next.left = n*z.holds - missing; next.left <= s.spare {
				s.offer(next)
			}
			continue
		}
		if i == len(s.sizes)-1 {
			break
		}
		rest := missing - n*z.holds
		least := s.sizes[i+1].atLeast(rest, next)
		if least.cost > s.best.cost { // and dearer still with fewer of this size
			break
		}
		if least.before(s.best) {
			s.choose(i+1, rest, next)
		}
	}
	s.counts[i] = 0
}

// atLeast bounds a choice whose rest is made of this and the later sizes.
func (z size) atLeast(rest uint64, c choice) choice {
	high, low := bits.Mul64(rest, z.price)
	money, over := bits.Div64(high, low, z.holds)
	if over > 0 {
		money++
	}
	return choice{c.cost + money, (z.gcd - rest%z.gcd) % z.gcd, c.packs + ceilDiv(rest, z.largest)}
}

func (s *search) offer(c choice) {
	if c.before(s.best) {
		s.best = c
		copy(s.found, s.counts)
	}
}

func ceilDiv(a, b uint64) uint64 { return (a + b - 1) / b }

func gcd(a, b uint64) uint64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
