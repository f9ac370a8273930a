package cure

import (
	"fmt"
	"slices"

	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Family is a kind of organic peroxide. None may stand for another.
type Family int

// The families. The zero family is unknown, and gets no dose.
const (
	UnknownFamily             Family = iota
	Ketone                           // methyl ethyl ketone peroxide
	KetoneLowHydrogenPeroxide        // the same, low in hydrogen peroxide: for vinyl ester
	Cumene                           // cumene hydroperoxide
	Acetylacetone                    // acetylacetone peroxide
	BenzoylPaste                     // dibenzoyl peroxide paste
)

var familyNames = [...]string{"unknown", "ketone peroxide", "ketone peroxide low in hydrogen peroxide",
	"cumene hydroperoxide", "acetylacetone peroxide", "benzoyl peroxide paste"}

// String names the family.
func (f Family) String() string {
	if !f.isKnown() {
		return familyNames[UnknownFamily]
	}
	return familyNames[f]
}

func (f Family) isKnown() bool { return f > UnknownFamily && f <= BenzoylPaste }

// Peroxide is a catalyst as it is dosed.
type Peroxide struct {
	Family  Family
	Density working.Figure[unit.Density]
}

// Takes is what a product's card says of the peroxides it may be cured with.
type Takes struct {
	Families []Family
	Promoted bool // by its maker; nobody else adds promoter
}

// PeroxideCause says why a product gets none of a peroxide.
type PeroxideCause int

// The causes, in the order in which they are checked.
const (
	NotPromoted   PeroxideCause = iota // or not known to be
	FamilyUnknown                      // of the peroxide
	FamilyRefused                      // the card doesn't name it
)

// PeroxideError says why a product gets none of a peroxide.
type PeroxideError struct {
	Cause PeroxideCause
	Has   Family
	Takes []Family
}

// Error names the peroxide and what the product takes.
func (e *PeroxideError) Error() string {
	return fmt.Sprintf("cure: no dose of %s (cause %d; the product takes %v)", e.Has, e.Cause, e.Takes)
}

// Check refuses a peroxide that the product's card does not name, and any
// peroxide for a product that its maker did not promote. A family is taken only
// by its own name: a product for the ketone peroxide low in hydrogen peroxide
// doesn't take the other. Errors: *PeroxideError.
func (t Takes) Check(f Family) error {
	switch {
	case !t.Promoted:
		return &PeroxideError{NotPromoted, f, t.Families}
	case !f.isKnown():
		return &PeroxideError{FamilyUnknown, f, t.Families}
	case !slices.Contains(t.Families, f):
		return &PeroxideError{FamilyRefused, f, t.Families}
	}
	return nil
}
