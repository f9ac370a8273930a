package job

import (
	"slices"
	"strconv"
	"strings"

	"shedreckoner/calc/material"
	"shedreckoner/calc/order"
	"shedreckoner/calc/unit"
)

// cardKeys is every card's key, each once: those that ship, then the builder's own.
func cardKeys(d Document) []string {
	keys := make([]string, 0, len(material.Cards))
	for _, shipped := range material.Cards {
		keys = append(keys, shipped.Key)
	}
	for _, own := range d.Items(cards.Key) {
		if !slices.Contains(keys, own) {
			keys = append(keys, own)
		}
	}
	return keys
}

// cardAt reads the card at a path; nil: the builder's copy of a card that doesn't
// ship.
func (r *reader) cardAt(path string) *Card {
	r.doc = Document{slices.DeleteFunc(slices.Clone(r.doc.lines), func(l Line) bool { return PartOf(l.Path) != path })}
	_, key := Split(path)
	for _, shipped := range material.Cards {
		if shipped.Key == key {
			c := r.card(key, shipped, false)
			return &c
		}
	}
	base, found := material.Find(r.doc.Get(path + ".base"))
	if !found {
		return nil
	}
	base.Base, base.Key = base.Key, key
	c := r.card(key, &base, true)
	return &c
}

func (r *reader) card(key string, base *material.Card, own bool) Card {
	path := "card." + key
	if len(r.doc.Under(path)) == 0 { // nothing typed: most cards
		return Card{Card: *base, Path: path, Own: own}
	}
	card := Card{Card: *base, Path: path, Own: own}
	if name := r.words(path+".name", cards.field("name")); strings.TrimSpace(name) != "" {
		card.Name = name
	}
	before := len(r.problems)
	for _, f := range material.Fields {
		if !f.Shown(base) { // what isn't shown can't be wrong, and doesn't count
			continue
		}
		if si, ok := r.number(path+"."+f.Key, cards.field(f.Key)); ok {
			f.Put(&card.Card, si)
		}
	}
	card.Unread = firstPath(r.problems[before:])
	if len(base.Families) > 0 {
		card.OwnDoses, card.DoseIDs = r.doses(path)
		card.DoseRows = len(r.doc.Items(path + ".dose"))
	}
	card.Patch = r.words(path+".patch", cards.field("patch"))
	return card
}

// shopAt reads how the material of the card at a path is bought; nil: there is no
// such card.
func (r *reader) shopAt(path string) *Shop {
	card := r.next.cards.part(path).value.(*Card)
	if card == nil {
		return nil
	}
	shop := &Shop{Key: card.Key}
	if len(r.doc.Under(path)) == 0 {
		shop.Packs = shippedPacks(&card.Card)
		return shop
	}
	shop.Stock, _ = r.size(path+".stock", cards.field("stock"), &card.Card)
	shop.Counted = r.words(path+".counted", cards.field("counted"))
	shop.Packs = r.packs(path, &card.Card)
	if card.IsAbrasive() {
		shop.ByGrade = r.byGrade(path, &card.Card)
	}
	shop.Unread = firstPath(r.problems)
	shop.BuysAtOnce = r.choice(path+".buy", cards.field("buy")) == BuyAtOnce
	return shop
}

// firstPath gives where the first of some problems is; "" where there is none.
func firstPath(problems []Problem) string {
	if len(problems) > 0 {
		return problems[0].Path
	}
	return ""
}

// byGrade reads what is in stock of an abrasive; nil where nothing was typed.
func (r *reader) byGrade(path string, card *material.Card) map[string]PackSize {
	var stock map[string]PackSize
	for _, line := range r.doc.Under(path + ".grade") {
		grade, isStock := strings.CutSuffix(strings.TrimPrefix(line.Path, path+".grade."), ".stock")
		if !isStock {
			continue
		}
		if size, ok := r.size(line.Path, grades.field("stock"), card); ok {
			if stock == nil {
				stock = map[string]PackSize{}
			}
			stock[grade] = size
		}
	}
	return stock
}

// doses gives the complete rows of the builder's catalyst table.
func (r *reader) doses(path string) (rows []material.DoseRow, ids []string) {
	for _, id := range r.doc.Items(path + ".dose") {
		at := under(path+".dose."+id, doses)
		t, c := typed[unit.Temperature](r, at, "temp"), typed[unit.ByMass](r, at, "share")
		if t.Step != nil && c.Step != nil {
			rows, ids = append(rows, material.DoseRow{Surface: t.Value, Catalyst: c.Value}), append(ids, id)
		}
	}
	return rows, ids
}

// packs gives the sizes that ship, each replaced by what was typed in its place.
func (r *reader) packs(path string, card *material.Card) []Pack {
	list := cards.list("pack")
	shipped := shippedPacks(card)
	var packs []Pack
	for i := range order.MaxSizes {
		at := path + ".pack." + strconv.Itoa(i+1)
		var p Pack
		if i < len(shipped) {
			p = shipped[i]
		}
		if size, ok := r.size(at+".size", list.field("size"), card); ok {
			p.Size, p.Path = size, at
		}
		if _, ok := r.number(at+".price", list.field("price")); ok {
			p.Price, p.HasPrice, p.Path = r.doc.Get(at+".price"), true, at
		}
		if p.Size.Amount.IsPositive() && r.choice(at+".sold", list.field("sold")) != NotSold {
			packs = append(packs, p)
		}
	}
	return packs
}

// size reads what is in a pack, in a unit in which the card can be counted.
func (r *reader) size(path string, f *Field, card *material.Card) (PackSize, bool) {
	if _, ok := r.number(path, f); !ok {
		return PackSize{}, false
	}
	text := r.doc.Get(path)
	size, err := ReadSize(text)
	if r.units.Comma && err == nil {
		err = unit.CheckComma(text)
	}
	if err == nil && size.Scale != unit.NoScale && !countedIn(card, size.Scale.Dimension()) {
		err = &unit.ReadError{Text: text, Cause: unit.OtherUnit, Readings: sizeUnits(card)}
	}
	if err != nil {
		r.problems = append(r.problems, Problem{path, err})
		return PackSize{}, false
	}
	return size, true
}

// countedIn says if the card can be counted in a dimension: in its own, or where
// the density is known in mass for volume and volume for mass.
func countedIn(card *material.Card, dim unit.Dimension) bool {
	switch card.SoldBy {
	case material.ByMass:
		return dim == unit.MassDim || dim == unit.VolumeDim && card.Density.Known
	case material.ByVolume, material.BySet:
		return dim == unit.VolumeDim || dim == unit.MassDim && card.Density.Known
	case material.ByLength:
		return dim == unit.LengthDim
	}
	return false
}

func sizeUnits(card *material.Card) []string {
	var list []string
	for _, s := range sizeScales {
		if countedIn(card, s.Dimension()) {
			list = append(list, s.Symbol())
		}
	}
	return list
}

// shippedSizes is the packs on each card that ships, read once.
var shippedSizes = func() map[string][]Pack {
	sizes := map[string][]Pack{}
	for _, card := range material.Cards {
		for _, p := range card.Packs {
			if size, err := ReadSize(p.Size); err == nil {
				sizes[card.Key] = append(sizes[card.Key], Pack{Size: size})
			}
		}
	}
	return sizes
}()

// shippedPacks gives the packs that the card, or the one it was copied from,
// ships with. They must not be changed.
func shippedPacks(card *material.Card) []Pack {
	if card.Base != "" {
		return shippedSizes[card.Base]
	}
	return shippedSizes[card.Key]
}
