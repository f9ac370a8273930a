package words

// Where the sums come from.
const (
	SourcesLead        = "Every sum of this page. What is marked as an assumption, common practice or from memory: trust your own tests and the maker's sheet more."
	NothingFromOutside = "nothing from outside"
	FromMemory         = " – from memory"
	AboutThisPage      = "About this page"
	Version            = "Version "
	SourcesOfTheSums   = "Sources of the sums"
)
