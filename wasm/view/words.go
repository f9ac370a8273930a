package view

import (
	"slices"
	"strconv"
	"strings"

	"shedreckoner/calc/surface"
)

func hasPrefix(s, prefix string) bool { return strings.HasPrefix(s, prefix) }

func hasWord(words, word string) bool { return slices.Contains(strings.Fields(words), word) }

// toggled gives the chosen options with one switched, in the table's order.
func toggled(options []surface.Option, chosen, key string) string {
	var list []string
	for _, o := range options {
		if hasWord(chosen, o.Key) != (o.Key == key) {
			list = append(list, o.Key)
		}
	}
	return strings.Join(list, " ")
}

// number writes a whole number.
func number(n int) string { return strconv.Itoa(n) }
