package job

import (
	"shedreckoner/calc/material"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Job is what a document says, in typed values. What wasn't typed or can't be
// read is missing.
type Job struct {
	Name, Currency string
	Units          Units
	Surfaces       []*Surface
	Buildups       []Buildup
	Cards          []*Card
	Shops          []*Shop // of the cards, in their order
	Bench          Bench
	Day            Day
	Tests          []Test
	Cups           []Cup
	Finished       []Finished
	Learnt         []Learnt
	Removals       []Removal
	Putties        []Putty
}

// Surface is one measured area.
type Surface struct {
	Path, Name  string
	Part        Part
	Cutouts     []Part
	Sides       working.Figure[unit.Factor]
	Buildup     string // path of the build-up; empty: none chosen
	Ground      string // key of Grounds; empty: not said
	Prepared    Prepared
	Orientation string
	Inside      bool
	By          string // key of MeasuredBy
}

// Part is a shape with its measures.
type Part struct {
	Path   string
	Shape  *surface.Shape
	Input  surface.Input
	Count  working.Figure[unit.Factor]
	RowIDs []string // of the rows, in order
}

// FieldPath gives the path of the field that a shape's error names: a dim, or
// a column in a row; of a row as a whole, its first column.
func (p *Part) FieldPath(dim string, row int) string {
	if row >= 0 && row < len(p.RowIDs) && p.Shape.Rows != nil {
		if dim == p.Shape.Rows.Key {
			dim = p.Shape.Rows.Columns[0].Key
		}
		return p.Path + "." + p.Shape.Rows.Key + "." + p.RowIDs[row] + "." + dim
	}
	return p.Path + "." + dim
}

// Buildup is the ordered steps that surfaces get.
type Buildup struct {
	Path, Name string
	Ground     string // key of Grounds that it is meant for; empty: not said
	Steps      []Step
	Budget     Budget
}

// Step is one step of a build-up. Figures without a Step were not typed.
type Step struct {
	Path          string
	Kind          *StepKind
	Card          string // key of the card; empty: none chosen
	Method        *material.Method
	Film          working.Figure[unit.Length]
	FilmIsCured   bool
	FilmIsEach    bool
	Coats         working.Figure[unit.Factor]
	Thinner       working.Figure[unit.Share]
	ThinnerByMass bool
	Thickness     working.Figure[unit.Length]
	SandedOff     working.Figure[unit.Share]
	Taken         working.Figure[unit.DryFilm]
	Sequence
	Sanding Sanding
	Hollows Hollows
	Putty   string // path of the putty that a fill is mixed as; empty: bought filler
}

// Card is a material of the job: what ships, with the builder's own figures
// over it. How it is bought is its Shop.
type Card struct {
	material.Card
	Path     string
	Own      bool               // a copy that the builder made
	Patch    string             // day of a test patch over 30 °C, as typed; empty: none
	DoseRows int                // typed, whole or not
	OwnDoses []material.DoseRow // a table from the maker's sheet; empty: the card's own holds
	DoseIDs  []string           // of the rows, in order
	Unread   string             // path of a figure that is refused: nothing is reckoned with what ships instead; empty: none
}

// Shop is how a card's material is bought and what is in stock of it. It is apart
// from the card, so that a price changes nothing that is put on the boat.
type Shop struct {
	Key        string // of the card
	Packs      []Pack
	Stock      PackSize
	Counted    string              // path of the latest cup when the stock was counted
	ByGrade    map[string]PackSize // of an abrasive: in stock, by grade ("P80")
	BuysAtOnce bool                // all of it, and not first what is enough in most jobs
	Unread     string              // path of what is refused of the stock or of a pack: no packs can be chosen; empty: none
}

// Pack is a size that the material can be bought in.
type Pack struct {
	Path     string // empty: ships on the card
	Size     PackSize
	Price    string // exact decimal as typed; empty: not known
	HasPrice bool
}

// Problem is a text that can't be read, by its path.
type Problem struct {
	Path string
	Err  error
}

// CardByKey finds a card of the job; nil: there is none.
func (j *Job) CardByKey(key string) *Card {
	for i := range j.Cards {
		if j.Cards[i].Key == key {
			return j.Cards[i]
		}
	}
	return nil
}

// ShopByKey finds how a card's material is bought; nil: there is no such card.
func (j *Job) ShopByKey(key string) *Shop {
	for _, s := range j.Shops {
		if s.Key == key {
			return s
		}
	}
	return nil
}

// ShippedKey is the key of the card that ships: its own, or that of the one it
// was copied from.
func (c *Card) ShippedKey() string {
	if c.Own {
		return c.Base
	}
	return c.Key
}
