// Package plantest names the figures of a plan, for tests that compare them with
// what was worked out by hand.
package plantest

import (
	"strconv"
	"strings"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Figure is a value in SI base units, and the scale in which it is written.
type Figure struct {
	SI   float64
	Bare unit.Scale
}

// Figures gives the figures of a plan and its order by their names:
// "surface.1.area", "buildup.1.step.3.mix", "order.gelcoat".
func Figures(p *plan.Plan) map[string]Figure {
	all := map[string]Figure{}
	for _, s := range p.Surfaces() {
		put(all, s.Path+".area", s.Area, unit.InSquareMetre)
		put(all, s.Path+".edge", s.Edge, unit.InMetre)
	}
	for i := range p.Buildups() {
		b := &p.Buildups()[i]
		put(all, b.Path+".area", b.Area, unit.InSquareMetre)
		put(all, b.Path+".left", b.Left, unit.InMicrometre)
		for j := range b.Steps {
			ofStep(all, &b.Steps[j])
		}
	}
	put(all, "area", p.Area(), unit.InSquareMetre)
	put(all, "kept", p.Kept(), unit.InKilogram)
	order := chance.OrderOf(p)
	for _, l := range order.Lines {
		all["order."+l.Key()] = Figure{l.Scale.SI(l.Need.InexactFloat64()), l.Scale}
	}
	all["cost"] = Figure{order.Cost.InexactFloat64(), unit.InPure}
	return all
}

func put[Q unit.Quantity](all map[string]Figure, name string, f working.Figure[Q], scale unit.Scale) {
	if f.Step != nil {
		all[name] = Figure{float64(f.Value), scale}
	}
}

func ofStep(all map[string]Figure, s *plan.Step) {
	put(all, s.Path+".kept", s.Kept, unit.InKilogram)
	put(all, s.Path+".cups", s.Cups.Count, unit.InPure)
	if f := s.Fill; f != nil {
		put(all, s.Path+".depth", f.Depth, unit.InMillimetre)
		put(all, s.Path+".passes", f.Passes, unit.InPure)
		put(all, s.Path+".left", f.Left, unit.InLitre)
		put(all, s.Path+".applied", f.Applied, unit.InLitre)
	}
	if c := s.Coat; c != nil {
		put(all, s.Path+".share", c.CuredShare, unit.InPercent)
		put(all, s.Path+".coats", c.Coats, unit.InPure)
		put(all, s.Path+".wet", c.Wet, unit.InMicrometre)
		put(all, s.Path+".wet-each", c.WetEach, unit.InMicrometre)
		put(all, s.Path+".cured", c.Cured, unit.InMicrometre)
		put(all, s.Path+".cured-each", c.CuredEach, unit.InMicrometre)
		put(all, s.Path+".theory", c.Theory, unit.InSquareMetrePerLitre)
		put(all, s.Path+".practice", c.Practice, unit.InSquareMetrePerLitre)
		put(all, s.Path+".mix", c.Mix, unit.InLitre)
	}
}

// Packs gives what is bought of each line of the order: "2 × 5, 1 × 20".
func Packs(p *plan.Plan) map[string]string {
	all := map[string]string{}
	for _, l := range chance.OrderOf(p).Lines {
		var words []string
		for _, c := range l.Packs {
			words = append(words, strconv.Itoa(c.Count)+" × "+c.Size.Amount.String())
		}
		all["order."+l.Key()] = strings.Join(words, ", ")
	}
	return all
}
