package words

// What stands in the settings.
const (
	UnitsTitle       = "Units"
	LookTitle        = "Look"
	DecimalsTitle    = "Decimals"
	DecimalPoint     = "Point"
	DecimalComma     = "Comma"
	UnitsLine        = "The unit of each measure."
	KeptTitle        = "Where it is kept"
	ExportNowAndThen = "Some phones drop what is kept after a week unused: add this page to the home screen, and export the job now and then."
	KeptLine         = "Where it is kept, and who sees it."
)

// WhereKept says where jobs are kept, and what a file and a link carry.
var WhereKept = []string{
	"Everything is kept in this browser at every change, and nothing is sent anywhere.",
	"A file holds the job that is open, its log and the whole shed. An empty phone takes all of it; a phone with cards of its own takes the job, and puts the cards it uses beside its own.",
	"A link carries the job, log and all, and what the sheets of its cards say, after its #: no server sees it. Whoever has the link can read it.",
	"Pages opened from the phone's own storage share one store with each other.",
}

// Settings.
const (
	AllMetric      = "All metric"
	AllUSCustomary = "All US customary"
	TheJobAsAFile  = "The job as a file"
	ImportAJob     = "Import a job"
	ShareAsALink   = "Share as a link"
	AnyUnit        = "Any field takes any unit: 450\u00a0mm, 18\u00a0mil, 2\u00a0ft\u00a06\u00a0in. This is what a bare number means, and what figures are shown in."
	EitherMark     = "Either is read. What could be taken for thousands is asked about."
	AsThePhone     = "As the phone"
	LookSun        = "Sun"
	LookDark       = "Dark"
)
