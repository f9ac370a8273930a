package order

import (
	"fmt"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// The limits of Choose.
const (
	MaxSizes = 6    // pack sizes of one product
	MaxPacks = 1000 // packs in one purchase
)

// The method of Choose, for goods by mass, by volume, by length and by the piece.
var (
	PacksByMass   = packsMethod(unit.InKilogram)
	PacksByVolume = packsMethod(unit.InLitre)
	PacksByLength = packsMethod(unit.InMetre)
	PacksByCount  = packsMethod(unit.InPure)
)

func packsMethod(scale unit.Scale) *working.Rule {
	return &working.Rule{Formula: "the packs that cover the need at the least cost; at the same cost the least left over, then the fewest packs; without prices, the fewest packs that leave no more over than a tenth of the need or one of the smallest pack, and of these the least left over",
		Source: source.Ref{Document: &source.House, Place: "exact search"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "B", Meaning: "bought", Scale: scale, Min: 0, Max: 1e9}, IsProse: true}
}

// Pack is a size in which a product is sold. A set of parts is one pack, its
// size that of the mix it makes.
type Pack struct {
	Size  decimal.Decimal     // in the unit of the need: kg, L, pieces
	Price decimal.NullDecimal // not valid: not known
}

// Purchase is how many packs of each size to buy.
type Purchase struct {
	Counts   []int           // in the order of the packs given
	Packs    int             // all packs together
	Bought   decimal.Decimal // in the unit of the need
	Left     decimal.Decimal // bought and not needed
	Cost     decimal.Decimal // where IsPriced
	IsPriced bool            // every size has a price, so that the cost could decide
}

// PackCause says why packs can't be chosen.
type PackCause int

// The causes of a PackError.
const (
	NoPacks      PackCause = iota // no size to choose from
	TooManySizes                  // more than MaxSizes
	BadSize                       // a size that isn't over zero: At says which
	BadPrice                      // a price below zero: At says which
	BadNeed                       // a need below zero
	TooManyPacks                  // the purchase takes more than MaxPacks
	TooFine                       // more digits than an exact search can carry
)

// PackError says why packs can't be chosen.
type PackError struct {
	Cause PackCause
	At    int // index of the pack, where one is to blame
}

// Error gives the cause for a programmer.
func (e *PackError) Error() string {
	return fmt.Sprintf("order: can't choose packs (cause %d at pack %d)", e.Cause, e.At)
}

// Choose is the cheapest purchase that covers a need: least cost, then least left
// over, then fewest packs. If a price is missing, prices don't count: the fewest
// packs that leave no more over than a tenth of the need or one of the smallest
// pack (then least left over), since least left over alone would buy 39 small tins.
// It is exact for any decimal sizes and prices; where no exact answer can be found
// in reasonable time, it gives an error.
// Range: need ≥ 0, 1–MaxSizes sizes over zero, prices ≥ 0, an answer of at
// most MaxPacks packs. Errors: *PackError.
// Source: our own branch and bound, checked against exhaustive search.
func Choose(need decimal.Decimal, packs []Pack) (Purchase, error) {
	if err := check(need, packs); err != nil {
		return Purchase{}, err
	}
	bought := Purchase{Counts: make([]int, len(packs)), IsPriced: priced(packs)}
	if need.Sign() > 0 {
		s, err := newSearch(need, packs, bought.IsPriced)
		if err != nil {
			return Purchase{}, err
		}
		if err := s.run(bought.Counts); err != nil {
			return Purchase{}, err
		}
	}
	for i, n := range bought.Counts {
		count := decimal.NewFromInt(int64(n))
		bought.Packs += n
		bought.Bought = bought.Bought.Add(packs[i].Size.Mul(count))
		if bought.IsPriced {
			bought.Cost = bought.Cost.Add(packs[i].Price.Decimal.Mul(count))
		}
	}
	bought.Left = bought.Bought.Sub(need)
	return bought, nil
}

func check(need decimal.Decimal, packs []Pack) error {
	switch {
	case len(packs) == 0:
		return &PackError{Cause: NoPacks}
	case len(packs) > MaxSizes:
		return &PackError{Cause: TooManySizes, At: MaxSizes}
	case need.Sign() < 0:
		return &PackError{Cause: BadNeed}
	}
	for i, p := range packs {
		if p.Size.Sign() <= 0 {
			return &PackError{Cause: BadSize, At: i}
		}
		if p.Price.Valid && p.Price.Decimal.Sign() < 0 {
			return &PackError{Cause: BadPrice, At: i}
		}
	}
	return nil
}

func priced(packs []Pack) bool {
	for _, p := range packs {
		if !p.Price.Valid {
			return false
		}
	}
	return true
}
