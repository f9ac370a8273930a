package page

import (
	"math"
	"strings"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/words"
)

// Thing is one line of the shopping list: a material, or an abrasive with all its
// grades.
type Thing struct {
	Key, Name string
	Short     string         // the name without what it is for, where that is plain enough
	Lines     []*chance.Line // one, or one a grade
	Small     string         // planned and likely
	Packs     string         // what to buy
	Buys      bool           // false: the shelf covers it
	WaitsFor  string         // path that the need waits for; empty: it is known
	Ticked    bool           // in the basket, as it stands
	WasFor    string         // ticked for these packs, which have changed since
}

// Things is the order as a shopping list. What was bought for work that is done
// isn't on it.
func (s *State) Things() []Thing {
	var list []Thing
	lines := s.Order().Lines
	for i := range lines {
		l := &lines[i]
		if !l.Need.IsPositive() && l.Err == nil {
			continue
		}
		if n := len(list) - 1; n >= 0 && l.Grade > 0 && list[n].Key == l.Card.Key {
			list[n].Lines = append(list[n].Lines, l)
			continue
		}
		list = append(list, Thing{Key: l.Card.Key, Name: l.Card.Name, Lines: []*chance.Line{l}})
	}
	times := map[string]int{}
	for i := range list {
		finishThing(s, &list[i])
		list[i].Short = words.ShortName(list[i].Lines[0].Card)
		times[list[i].Short]++
	}
	for i := range list {
		if times[list[i].Short] > 1 {
			list[i].Short = list[i].Name
		}
	}
	return list
}

func finishThing(s *State, t *Thing) {
	if waits := t.Lines[0].Waits(); waits != nil {
		t.Buys, t.WaitsFor, t.Packs, t.Small = true, waits.By, "–", words.Buy(t.Lines[0], s.Plan.Job.Units)
		return
	}
	var packs, small []string
	for _, l := range t.Lines {
		if !l.ToBuy.IsZero() || l.Err != nil {
			t.Buys = true
			packs = append(packs, words.GradePacks(l, words.Buy(l, s.Plan.Job.Units)))
		}
		small = append(small, gradeOf(l)+Said(l.Need.InexactFloat64(), l.Scale, s.Plan.Job.Units))
	}
	t.Packs = strings.Join(packs, ", ")
	switch l := t.Lines[0]; {
	case l.Grade > 0:
		t.Small = strings.Join(small, ", ")
	case !t.Buys:
		t.Small = words.ShelfHas(Said(l.Need.InexactFloat64(), l.Scale, s.Plan.Job.Units), Said(l.Stock.InexactFloat64(), l.Scale, s.Plan.Job.Units))
	default:
		t.Small = plannedLikely(s, l)
	}
	if was := s.Doc().Get(tickPath(t.Key)); was != "" {
		t.Ticked = was == t.Packs || !s.Confidence.Done && s.Confidence.Err == nil // what to buy isn't known yet
		if !t.Ticked {
			t.WasFor = was
		}
	}
}

func gradeOf(l *chance.Line) string {
	if l.Grade == 0 {
		return ""
	}
	return l.Grade.String() + "\u00a0×\u00a0"
}

func plannedLikely(s *State, l *chance.Line) string {
	units := s.Plan.Job.Units
	if l.Confidence == nil {
		return words.PlannedLikely(Said(l.Planned(), l.Scale, units), "", "")
	}
	shown := handyFor(l.Scale.From(l.Confidence.High), l.Scale, units) // one unit for all three
	planned, _, _ := strings.Cut(saidIn(l.Planned(), l.Scale, shown), "\u00a0")
	low, _, _ := strings.Cut(unit.Write(l.Confidence.Low, shown, 2), "\u00a0")
	return words.PlannedLikely(planned, low, unit.Write(l.Confidence.High, shown, 2))
}

// Said writes an amount of goods as people say it: 15.7 kg, 3.3 kg, 74 m, 14.
func Said(amount float64, scale unit.Scale, units job.Units) string {
	return saidIn(amount, scale, handyFor(amount, scale, units))
}

func saidIn(amount float64, scale, shown unit.Scale) string {
	switch {
	case scale == unit.InPure:
		return unit.Write(math.Ceil(amount-1e-9), unit.InPure, 6)
	case scale == unit.InMetre && amount >= 10:
		return unit.Write(shown.SI(math.Ceil(shown.From(scale.SI(amount))-1e-9)), shown, 6)
	case math.Abs(shown.From(scale.SI(amount))) < 10:
		return unit.Write(scale.SI(amount), shown, 2)
	}
	return unit.Write(scale.SI(amount), shown, 3)
}

// Roughly writes an amount that is only likely: two figures.
func Roughly(amount float64, scale unit.Scale, units job.Units) string {
	return unit.Write(scale.SI(amount), handyFor(amount, scale, units), 2)
}

// handyFor is the builder's scale for an amount of goods, or the smaller one in
// which so little is said.
func handyFor(amount float64, scale unit.Scale, units job.Units) unit.Scale {
	return unit.Handy(scale.SI(amount), ShownIn(scale, units))
}

// Worth writes what is left over in money; "" where no price is known.
func (s *State) Worth(c chance.Choice) string {
	if !c.Worth.Valid || !c.Worth.Decimal.IsPositive() {
		return ""
	}
	return Money(c.Worth.Decimal.Round(0).String(), s)
}

// ShortOf names the coloured goods that are bought before the start and may run
// short, and the worst chance of it.
func (s *State) ShortOf() (name string, chance float64) {
	var names []string
	lines := s.Order().Lines
	for i := range lines {
		l := &lines[i]
		if l.Confidence == nil || l.Shop.BuysAtOnce || !(l.Card.Reserve.Value > 0) || l.ToBuy.IsZero() {
			continue
		}
		if short := 1 - float64(l.Confidence.Buys.Chance); short >= 0.05 {
			names, chance = append(names, words.ShortName(l.Card)), max(chance, short)
		}
	}
	return words.AndLast(names), chance
}

// Stops says what stops the build-ups that surfaces get, one sentence each.
func (s *State) Stops() []string {
	var list []string
	for i := range s.Plan.Buildups() {
		b := &s.Plan.Buildups()[i]
		if len(b.Surfaces) == 0 {
			continue
		}
		said := map[string]bool{}
		for _, f := range b.AllFindings() {
			if !f.IsRed() {
				continue
			}
			layer := words.ThisLayer
			if f.Step < len(b.Steps) && b.Steps[f.Step].Card != nil {
				layer = b.Steps[f.Step].Card.Name
			}
			what, fix, _ := words.Finding(&f, layer, s.Plan.Job.Units)
			if text := s.StepName(f.Path) + ". " + words.Capital(what) + " " + fix; !said[text] {
				said[text] = true
				list = append(list, strings.TrimSpace(text))
			}
		}
	}
	return list
}

// tickPath is where a tick is kept: with the packs that it was given for.
func tickPath(key string) string { return "ticked." + key + ".packs" }

// bought puts a thing into the basket, or takes it out again.
func bought(s *State, m Message) []Effect {
	for _, t := range s.Things() {
		if t.Key != m.Path {
			continue
		}
		text := t.Packs
		if t.Ticked || text == "" {
			text = ""
		}
		sure := s.Confidence // what there is to buy doesn't depend on what was bought
		effects := edit(s, s.Doc().Set(tickPath(t.Key), text), "")
		s.Confidence = sure
		return effects
	}
	return nil
}
