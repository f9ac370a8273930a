package page

import (
	"maps"
	"slices"
)

// Verbs is every verb that there is, in one order.
func Verbs() []string { return slices.Sorted(maps.Keys(verbs)) }

// CSVCell writes one cell.
func CSVCell(s string) string { return csvCell(s) }
