package job

import (
	"fmt"
	"strings"

	"shedreckoner/calc/material"
	"shedreckoner/calc/order"
	"shedreckoner/calc/unit"
)

// List is a repeated part of the job: its items have fields and may have lists
// of their own.
type List struct {
	Key    string
	Max    int // items
	Fields []*Field
	Lists  []*List
}

// Root is the whole job.
var Root = &List{Fields: jobFields, Lists: []*List{surfaces, buildups, cards, bench, day, tests, cups, finished, removals, putties, ticks}}

var jobFields = []*Field{
	{Key: "name", Name: "name of the job", Kind: Words, Optional: true},
	{Key: "currency", Name: "currency", Kind: Words, Optional: true},
}

// Limits on what grows.
const (
	MaxSurfaces = 500
	MaxCutouts  = 50
	MaxBuildups = 50
	MaxSteps    = 40
	MaxCards    = 100
	MaxRows     = 200
)

var buildups = &List{Key: "buildup", Max: MaxBuildups,
	Fields: append([]*Field{
		{Key: "name", Name: "name", Kind: Words, Optional: true},
		{Key: "ground", Name: "usual ground", Kind: Choice, Options: Grounds, Optional: true},
	}, budgetFields...),
	Lists: []*List{{Key: "step", Max: MaxSteps, Fields: stepFields(), Lists: []*List{combs, witnesses, gridRows, spots}}},
}

var cards = &List{Key: "card", Max: MaxCards,
	Fields: cardFields(),
	Lists: []*List{doses, grades, {Key: "pack", Max: order.MaxSizes, Fields: []*Field{
		{Key: "size", Name: "size of pack", Kind: Size, Min: 1e-6, Max: 1e5, Optional: true},
		{Key: "price", Name: "price of a pack", Kind: Money, Max: 1e7, Optional: true},
		{Key: "sold", Name: "sold here", Kind: Choice, Options: []Option{{"yes", "sold here"}, {NotSold, "not sold here"}}},
	}}},
}

// ticks is what is in the basket: for each line of the order what was ticked, so
// that a tick counts only for what it was given for.
var ticks = &List{Key: "ticked", Max: MaxCards, Fields: []*Field{
	{Key: "packs", Name: "ticked on the order", Kind: Words, Optional: true},
}}

// doses is a catalyst table from the maker's sheet.
var doses = &List{Key: "dose", Max: 40, Fields: []*Field{
	{Key: "temp", Name: "temperature of the surface", Kind: Quantity, Measure: unit.Temperatures, Min: coldest, Max: warmest},
	{Key: "share", Name: "catalyst, by mass", Kind: Quantity, Measure: unit.Percents, Min: 0.002, Max: 0.05},
}}

// BuyAtOnce buys all of a card's material at once, and a reserve for repairs.
const BuyAtOnce = "once"

// grades is what is in stock of an abrasive, of each grade.
var grades = &List{Key: "grade", Max: 100, Fields: []*Field{
	{Key: "stock", Name: "in stock", Kind: Size, Max: 1e5, Optional: true},
}}

// GradeStock is where the stock of one grade of an abrasive is typed.
func GradeStock(card, grade string) string { return card + ".grade." + grade + ".stock" }

// NotSold leaves a pack out of the order.
const NotSold = "no"

// cardFields are the card's own and one for each figure of the sheet.
func cardFields() []*Field {
	list := []*Field{
		{Key: "name", Name: "name", Kind: Words, Optional: true},
		{Key: "base", Name: "kind of material", Kind: Words, Optional: true},
		{Key: "stock", Name: "in stock", Kind: Size, Max: 1e5, Optional: true},
		{Key: "counted", Name: "latest cup when the stock was counted", Kind: Words, Optional: true},
		{Key: "buy", Name: "how it is bought", Kind: Choice, Options: []Option{{"start", "before you start"}, {BuyAtOnce, "all at once"}}},
		{Key: "patch", Name: "test patch over 30 °C that cured, day", Kind: Words, Optional: true},
		{Key: "note", Name: "note from the sheet", Kind: Words, Optional: true},
	}
	for _, f := range material.Fields {
		list = append(list, &Field{Key: f.Key, Name: f.Name, Kind: Quantity, Measure: f.Measure, Min: f.Min, Max: f.Max, Optional: true})
	}
	return list
}

// LimitError says that a list holds more items than a job can.
type LimitError struct {
	Path  string
	List  *List
	Items int
}

// Error names the list and its limit.
func (e *LimitError) Error() string {
	return fmt.Sprintf("job: %d items in %s, more than %d", e.Items, e.Path, e.List.Max)
}

// checkLimits checks the lists inside an item of l, whose paths begin with prefix,
// against their limits. Errors: *LimitError.
func (l *List) checkLimits(d Document, prefix string) error {
	for _, inner := range l.Lists {
		path := prefix + inner.Key
		ids := d.Items(path)
		if len(ids) > inner.Max {
			return &LimitError{path, inner, len(ids)}
		}
		for _, id := range ids {
			if err := inner.checkLimits(d, path+"."+id+"."); err != nil {
				return err
			}
		}
	}
	return nil
}

// FieldAt finds the field that a path leads to; nil where it leads to none.
func FieldAt(path string) *Field {
	list := Root
	for {
		first, rest, more := strings.Cut(path, ".")
		if !more {
			return list.field(first)
		}
		inner := list.list(first)
		if inner == nil {
			return nil
		}
		id, beyond, more := strings.Cut(rest, ".")
		if !more || !isID(id) {
			return nil
		}
		path = beyond
		list = inner
	}
}

// isID says if a text can name an item: one with a space or a line break could be
// written, but not be read back.
func isID(id string) bool {
	return id != "" && !strings.ContainsFunc(id, func(r rune) bool { return r <= ' ' || r == '=' })
}

// ListAt finds the list that a path leads to ("surface.3.cutout"); nil where it
// leads to none.
func ListAt(path string) *List {
	list := Root
	for {
		first, rest, more := strings.Cut(path, ".")
		if list = list.list(first); list == nil || !more {
			return list
		}
		if _, path, more = strings.Cut(rest, "."); !more {
			return nil
		}
	}
}

func (l *List) field(key string) *Field {
	for _, f := range l.Fields {
		if f.Key == key {
			return f
		}
	}
	return nil
}

func (l *List) list(key string) *List {
	for _, inner := range l.Lists {
		if inner.Key == key {
			return inner
		}
	}
	return nil
}
