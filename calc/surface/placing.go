package surface

import (
	"slices"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// places says where the stations stand, and by which steps that is known.
type places struct {
	at         []float64
	length     working.Figure[unit.Length] // over all
	spacing    []*working.Step             // of all; nil where positions were given
	byPosition bool
}

// placed finds where the stations stand, from what was given: the spacing, the
// length over all, or a position for each.
func placed(in Input) (places, error) {
	if slices.ContainsFunc(in.Rows, func(r Row) bool { _, given := r[PositionKey]; return given }) {
		return placedByPosition(in)
	}
	spacing, hasSpacing := in.Lengths[SpacingKey]
	switch {
	case hasSpacing && in.has("length"):
		return places{}, fault("length", GivenTwice)
	case !hasSpacing && !in.has("length"):
		return places{}, fault(SpacingKey, Missing)
	}
	atFirst, atLast := halfIntervals(in)
	n := len(in.Rows) - 1 - atFirst - atLast
	if n < 1 || n < atFirst+atLast {
		return places{}, limit(stationsKey, TooFew, float64(2*(atFirst+atLast)+1))
	}
	intervals := working.Given(unit.Factor(n), "full intervals", unit.InPure, "from the number of girths", source.Exact)
	if hasSpacing {
		if most := maxLength / float64(n); float64(spacing.Value) > most {
			return places{}, limit(SpacingKey, TooLarge, most)
		}
		length, err := overAll.Figure(spacing, intervals)
		return places{evenly(spacing.Value, n, atFirst, atLast), length, []*working.Step{spacing.Step}, false}, err
	}
	spacing, err := evenSpacing.Figure(in.length("length"), intervals)
	return places{evenly(spacing.Value, n, atFirst, atLast), in.length("length"), []*working.Step{spacing.Step}, false}, err
}

// halfIntervals counts the half-way stations at each end.
func halfIntervals(in Input) (atFirst, atLast int) {
	switch in.chosen(halfEnds) {
	case "first":
		return 1, 0
	case "last":
		return 0, 1
	case "both":
		return 1, 1
	}
	return 0, 0
}

// evenly places n full intervals, of which the first and the last may have a
// station half-way.
func evenly(spacing unit.Length, n, atFirst, atLast int) []float64 {
	var at []float64
	for i := range n + 1 {
		at = append(at, float64(spacing)*float64(i))
		if i == 0 && atFirst > 0 || i == n-1 && atLast > 0 {
			at = append(at, float64(spacing)*(float64(i)+0.5))
		}
	}
	return at
}

// placedByPosition takes the stations where they were measured.
func placedByPosition(in Input) (places, error) {
	for _, key := range []string{SpacingKey, "length"} {
		if in.has(key) {
			return places{}, fault(key, GivenTwice)
		}
	}
	if in.chosen(halfEnds) != "none" {
		return places{}, fault(halfEnds.Key, GivenTwice)
	}
	var at []float64
	for i, row := range in.Rows {
		x, given := row[PositionKey]
		if !given {
			return places{}, fault(PositionKey, Missing).in(i)
		}
		at = append(at, float64(x.Value))
		if i > 0 && at[i]-at[i-1] < minLength {
			return places{}, limit(PositionKey, NotAscending, at[i-1]).in(i)
		}
	}
	first, last := in.Rows[0][PositionKey], in.Rows[len(in.Rows)-1][PositionKey]
	length, err := fromFirstToLast.Figure(last, first)
	return places{at: at, length: length, byPosition: true}, err
}

// steps gives what goes into a run: the spacing or the positions, and the girths.
func (p places) steps(rows []Row, r run) []*working.Step {
	list := slices.Clone(p.spacing)
	for _, row := range rows[r.from : r.to+1] {
		if p.byPosition {
			list = append(list, row[PositionKey].Step)
		}
		list = append(list, row["girth"].Step)
	}
	return list
}
