package words

// What stands about every screen.
const (
	Screens    = "Screens"
	UnnamedJob = "My job"
	Menu       = "More"
	Undo       = "Undo"
	Redo       = "Redo"
	Close      = "Close"
	Remove     = "Remove"
	Change     = "change"
	Look       = "look"
	Why        = "why"
	Less       = "Less"
	More       = "More"
	Cards      = "Cards"
	Settings   = "Settings"
	Sources    = "Sources"
	PartsTitle = "Every part"
	PartsAny   = "any words"
)
