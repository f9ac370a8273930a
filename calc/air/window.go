package air

import (
	"slices"

	"shedreckoner/calc/unit"
)

// Interval is a stretch of time from midnight, its end excluded.
type Interval struct{ From, To unit.Time }

// WholeDay is from one midnight to the next.
var WholeDay = Interval{From: 0, To: unit.Day}

// Window is a stretch in which material may go on: throughout it every condition
// holds, and margin and least temperature hold through the cure that follows.
type Window struct {
	Interval           // From: earliest start; To: time to stop
	Closing  []Finding // why it ends; none where it ends with the hours that were asked for
}

// LatestStart is when a coat that takes the given time to lay must have been begun.
// It is false where the window is shorter than that.
func (w Window) LatestStart(laying unit.Time) (unit.Time, bool) {
	return w.To - laying, laying >= 0 && w.To-laying >= w.From
}

// longestAsked bounds the hours that can be asked for: today and tomorrow.
const longestAsked = 2 * unit.Day

// Windows lists when material may go on within the asked hours.
// Range: 0:00 ≤ From < To ≤ 48:00. Errors: *InputError.
func (f Fit) Windows(asked Interval) ([]Window, error) {
	if err := asked.validate(); err != nil {
		return nil, err
	}
	cure := f.limits.Cure
	var starts []Interval
	for _, held := range f.holding(Interval{asked.From, asked.To + cure}, lasting...) {
		if held.To -= cure; held.To > held.From {
			starts = append(starts, held)
		}
	}
	var list []Window
	for _, open := range intersect(f.holding(asked, allConditions...), starts) {
		list = append(list, Window{open, f.closing(open.To, asked.To)})
	}
	return list, nil
}

// SurfaceWithin lists when the whole of a surface's band is between two
// temperatures, such as the ends of a dose table.
// Range: least ≤ most; 0:00 ≤ From < To ≤ 48:00. Errors: *InputError.
func SurfaceWithin(d Day, s Surface, least, most unit.Temperature, asked Interval) ([]Interval, error) {
	if err := asked.validate(); err != nil {
		return nil, err
	}
	f, err := NewFit(d, s, Limits{Least: least, Most: most, Dampest: 1})
	if err != nil {
		return nil, err
	}
	return f.holding(asked, TooCold, TooHot), nil
}

func (i Interval) validate() error {
	if err := checkRange(AskedHours, float64(i.From), 0, float64(longestAsked)); err != nil {
		return err
	}
	if i.From == i.To {
		return &InputError{AskedHours, float64(i.To), float64(i.From), float64(longestAsked)}
	}
	return checkRange(AskedHours, float64(i.To), float64(i.From), float64(longestAsked))
}

// closing finds why a window ends, a moment after its end.
func (f Fit) closing(end, askedEnd unit.Time) []Finding {
	if end >= askedEnd {
		return nil
	}
	const moment = unit.Second
	if now := f.Now(end + moment); len(now) > 0 {
		return now
	}
	return f.Through(end + moment)
}

// piece is a stretch between two turns of the day. On it the air only rises or only
// falls and the offset is constant, so that every condition, which follows from the
// air temperature, begins or ceases to hold at most once.
type piece struct {
	Interval
	offset Offset
}

// pieces cuts an interval at sunrise, 15:00 and sunset, at the reading of the air,
// and where a measured offset begins and ceases to hold.
func pieces(d Day, s Surface, whole Interval) []piece {
	cuts := []unit.Time{whole.From, whole.To}
	for _, at := range []unit.Time{d.reading.At, s.at, s.at + HoldsFor} {
		if at > whole.From && at < whole.To {
			cuts = append(cuts, at)
		}
	}
	for day := unit.Time(0); day < whole.To; day += unit.Day {
		for _, turn := range []unit.Time{d.sunrise.Value, highHour, d.Sunset()} {
			if at := day + turn; at > whole.From && at < whole.To {
				cuts = append(cuts, at)
			}
		}
	}
	slices.Sort(cuts)
	cuts = slices.Compact(cuts)
	var list []piece
	for i := range cuts[1:] {
		stretch := Interval{cuts[i], cuts[i+1]}
		list = append(list, piece{stretch, s.By(d, (stretch.From+stretch.To)/2)})
	}
	return list
}

// holding lists when all the conditions hold.
func (f Fit) holding(whole Interval, conditions ...Condition) []Interval {
	var list []Interval
	for _, p := range pieces(f.day, f.surface, whole) {
		held := p.Interval
		for _, k := range conditions {
			held = held.Intersect(f.heldOn(p, k))
		}
		switch last := len(list) - 1; {
		case held.From >= held.To:
		case last >= 0 && list[last].To == held.From:
			list[last].To = held.To
		default:
			list = append(list, held)
		}
	}
	return list
}

// heldOn halves a piece until it knows, to a millisecond, where the condition
// begins or ceases to hold on it.
func (f Fit) heldOn(p piece, k Condition) Interval {
	holds := func(at unit.Time) bool { return f.limits.room(k, f.under(p.offset, at)) >= 0 }
	first, last := holds(p.From), holds(p.To)
	if first == last {
		if first {
			return p.Interval
		}
		return Interval{p.From, p.From}
	}
	low, high := p.From, p.To
	for high-low > unit.Second/1000 {
		if middle := (low + high) / 2; holds(middle) == first {
			low = middle
		} else {
			high = middle
		}
	}
	if first {
		return Interval{p.From, high}
	}
	return Interval{high, p.To}
}

// Intersect is the stretch that both intervals cover; one that ends before it begins
// is empty.
func (i Interval) Intersect(other Interval) Interval {
	return Interval{max(i.From, other.From), min(i.To, other.To)}
}

// intersect gives what two lists of separate intervals have in common.
func intersect(a, b []Interval) []Interval {
	var list []Interval
	for _, x := range a {
		for _, y := range b {
			if both := x.Intersect(y); both.From < both.To {
				list = append(list, both)
			}
		}
	}
	return list
}
