package page

import "slices"

// Verbs is every verb that there is, in one order.
func Verbs() []string {
	var names []string
	for _, verb := range verbs {
		names = append(names, verb.name)
	}
	slices.Sort(names)
	return names
}

// CSVCell writes one cell.
func CSVCell(s string) string { return csvCell(s) }
