package cure

import (
	"fmt"

	"shedreckoner/calc/unit"
)

// ClashError says that floor and ceiling leave no dose: with so much in the cup
// besides the product, the dose that cures the whole harms the product.
type ClashError struct {
	Floor   unit.ByMass // of all that cures
	Ceiling unit.ByMass // of the product alone
	Least   unit.Mass   // dose that the whole needs
	Most    unit.Mass   // dose that the product bears
}

// Error names both doses.
func (e *ClashError) Error() string {
	return fmt.Sprintf("cure: the floor needs %s of catalyst and the ceiling allows %s", grams(e.Least), grams(e.Most))
}

// OutsideError says that the table's dose lies outside the card's floor and
// ceiling, both taken to all that cures.
type OutsideError struct{ Share, Floor, Ceiling unit.ByMass }

// Error names the share and its limits.
func (e *OutsideError) Error() string {
	return fmt.Sprintf("cure: %s of catalyst is outside %s to %s", percent(e.Share), percent(e.Floor), percent(e.Ceiling))
}

// NoRoomError says that the dose stands on its floor or ceiling: no tool is so
// exact that its error would have room.
type NoRoomError struct{ Share, Floor, Ceiling unit.ByMass }

// Error names the share and its limits.
func (e *NoRoomError) Error() string {
	return fmt.Sprintf("cure: %s of catalyst leaves no room for an error within %s to %s", percent(e.Share), percent(e.Floor), percent(e.Ceiling))
}

// NotWithThisToolError says that the cup, or the largest cup, is smaller than
// the smallest that the tool can dose.
type NotWithThisToolError struct {
	Tool          Tool
	Cup, Smallest unit.Mass
}

// Error names both cups.
func (e *NotWithThisToolError) Error() string {
	return fmt.Sprintf("cure: a cup of %s is under the %s that this tool can dose", grams(e.Cup), grams(e.Smallest))
}

// CupTooLargeError says that the cup is larger than the largest.
type CupTooLargeError struct{ Cup, Largest unit.Mass }

// Error names both cups.
func (e *CupTooLargeError) Error() string {
	return fmt.Sprintf("cure: a cup of %s is over the largest, %s", grams(e.Cup), grams(e.Largest))
}
