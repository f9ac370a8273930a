package buildup

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

var budget = source.Ref{Document: &source.House, Place: "film budget"}

// Shortfalls says where the film of a walk falls short of its least, where it is
// first sanded through on more of the area than the chosen share, and where it is
// left so thick that it cracks.
func Shortfalls(steps []Step, points []Point, terms Terms) []Finding {
	var list []Finding
	say := func(k Key, at int, f Finding, mark source.Mark) {
		f.Rule, f.Step, f.Source, f.Mark = k, at, budget, mark
		list = append(list, f)
	}
	wasThrough := false
	for i, p := range points {
		mean, thin := p.Mean.Value, p.Thin.Value
		if p.isMeanShort() {
			say(MeanLeft, p.Step, finding(Refuse, MoreFilm, float64(mean), float64(p.Least.Mean.Value), unit.InMicrometre), source.Calculated)
		}
		if p.isThinShort() {
			say(ThinLeft, p.Step, finding(Refuse, MoreEvenFilm, float64(thin), float64(p.Least.Thinnest.Value), unit.InMicrometre), source.Assumption)
		}
		isThrough := p.Through.Value > terms.Thin.Value*(1+1e-9)
		if isThrough && !wasThrough {
			say(GoThrough, p.Step, finding(Ask, MoreFilm, float64(p.Through.Value), float64(terms.Thin.Value), unit.InPercent), source.Assumption)
		}
		wasThrough = isThrough
		if most := crackLimit(steps, points, i); most > 0 && mean > most+filmSlack {
			say(CrackLimit, p.Step, finding(Refuse, LessFilm, float64(mean), float64(most), unit.InMicrometre), source.CommonPractice)
		}
	}
	return list
}

// crackLimit is the most film that may be left at the end of a layer: the
// least of its coats' limits; 0 for a point that is no end, and for a layer
// without limits.
func crackLimit(steps []Step, points []Point, at int) unit.DryFilm {
	if at+1 < len(points) && !opensLayer(steps, points[at].Step, points[at+1].Step) {
		return 0
	}
	var most unit.DryFilm
	for i := points[at].Step; i >= 0; i-- {
		s := steps[i]
		if s.Kind == Fill {
			break
		}
		if limit := s.Layer.CuredMost; limit > 0 && (most == 0 || limit < most) {
			most = limit
		}
		if s.Film.NewLayer {
			break
		}
	}
	return most
}

// opensLayer says if a new layer is opened after one step and up to another.
func opensLayer(steps []Step, after, upTo int) bool {
	for i := after + 1; i <= upTo; i++ {
		if steps[i].Kind == Fill || steps[i].Film.NewLayer {
			return true
		}
	}
	return false
}
