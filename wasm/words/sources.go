package words

import (
	"strings"
)

// Where the sums come from.
const (
	SourcesLead        = "Every sum on this page. Where it says assumption, common practice or from memory, trust your own tests and the maker's sheet more."
	NothingFromOutside = "nothing from outside"
	FromMemory         = " – from memory"
	AboutThisPage      = "About this page"
	Version            = "Version "
	DocumentsTitle     = "Documents"
	SourcesOfTheSums   = "Sources of the sums"
)

// RuleSource says what a rule rests on, and by how many rows of what it is checked.
func RuleSource(source, mark, checks string) string {
	return Capital(source) + " – " + mark + ". Checked by: " + strings.ReplaceAll(checks, " × ", "\u00a0×\u00a0") + "."
}
