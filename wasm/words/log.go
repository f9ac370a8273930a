package words

import (
	"strconv"
)

// MaskingOff says by when masking comes off, after a session's last coat.
func MaskingOff(by string, isHot bool) string {
	text := "Masking off at the latest " + by
	if isHot {
		return text + ": in this heat paper tape and film bake on."
	}
	return text + ": then paper tape and film stick for good. Check your roll."
}

// MaskAfresh is said before a coat that old masking wouldn't come off after.
const MaskAfresh = "Mask afresh first: what was masked before would bake on by then."

// The head of the log.
const (
	NextTold    = "Shown once today's air is typed on Cup."
	NothingNext = "Nothing is left to do"
)

// NextWork heads the log: what comes next.
func NextWork(name string) string { return "Next: " + name }

// FromHour is when what is next may begin.
func FromHour(when string) string { return "from " + when }

// StepsDone counts the steps that are done.
func StepsDone(done, all string) string { return done + " of " + all + " steps done" }

// DaysLeft counts the days of work left, every day like today.
func DaysLeft(n int, days string) string {
	if n == 1 {
		return "one day of work left"
	}
	return days + " days of work left"
}

// MoreWanted is the verdict that leads from the log to the order.
func MoreWanted(amount string) string {
	return amount + " more is likely to be needed, of the same batch."
}

// What stands on the log and on its sheets.
const (
	LoggedCups  = "Cups"
	BuyRestLine = "What the rest takes beyond what is in stock."
	CupTests    = "Cup tests"
	HandTakes   = "What your hand takes"
	HandLine    = "What the log teaches: use it or not."
	NotYet      = "not yet"
)

// CupsLogged leads to the cups before the latest.
func CupsLogged(n int) string { return Counted(n, "earlier cup", "earlier cups") + "." }

// RestLine leads to what is done, and to where it is marked.
func RestLine(done int) string {
	if done == 0 {
		return "Nothing is marked as done yet: mark it here."
	}
	return Counted(done, "piece", "pieces") + " of work done."
}

// TestsLine leads to the builder's own cup tests.
func TestsLine(n int) string {
	if n == 0 {
		return "No cup tests of your own."
	}
	return Counted(n, "cup test", "cup tests") + " of your own."
}

// CupSmall is the line under a cup of the log: how it ended, when, how warm.
func CupSmall(end, day, surface string) string {
	text := end
	for _, more := range []string{surface, day} {
		if more != "" {
			text += " · " + more
		}
	}
	return text
}

// TimesPlan writes what was used as a multiple of what was planned.
func TimesPlan(factor string) string { return factor + " × the plan" }

// The log and its entries.
const (
	SaveTheLogAsCSV    = "Save the log as CSV"
	NothingLogged      = "Nothing logged yet. A cup lands here when it ends, with what was left over."
	GoToTheCup         = "Go to the cup"
	TheUsual           = "the usual"
	NothingWrong       = "nothing"
	NoneOfThePlan      = "none of the plan"
	WentOnFor          = "it went on for"
	MeasuredCounts     = "With its area typed, this cup counts at once; without, when its surface is done."
	NoCureWarm         = "Warm the part, and wait: on a cold part it may take hours."
	NoCureAddNothing   = "Add nothing: a second dose can run away, and doesn't mix in."
	NoCureScrape       = "Still wet the next day: scrape it off, wash, and coat again."
	WeighedAt          = "Weighed at"
	CatalystThatWentIn = "Catalyst that went in"
	CatalystByMass     = "Catalyst, by mass"
	UsableAsReckoned   = "Usable, expected"
	GelsSoonest        = "Earliest gel, expected"
	GelledAsExpected   = "as expected or later"
	GelledSooner       = "sooner than the early end that was expected"
	TakenDown          = "Noted when it was weighed"
	ItsCups            = "Its cups:"
	GelledShort        = "gelled"
	InFuture           = "By this phone's clock, this is in the future. Is one of the two clocks wrong?"
	TakeAsACupTest     = "Take as a cup test"
	CupTestHint        = "100 g, stirred 60 s, the clock from catalyst in, gelled when a lifted string snaps."
	AddACupTest        = "Add a cup test"
	TakenJobLong       = "If you take it, it becomes a job of its own: the one open here stays in Jobs, and the shed stays as it is."
	TakeIt             = "Take it"
	LeaveIt            = "Leave it"
	ToTheOrder         = "To the order"
)

// GelledAfter says after how long a cup gelled, and when it could have at the soonest.
func GelledAfter(after, soonest string) string {
	return " after " + after + " (earliest expected: " + soonest + ")"
}

// CupTestNumber names a cup test by its place.
func CupTestNumber(n int) string { return "Cup test " + strconv.Itoa(n) }

// What stands on a cup of the log.
const (
	LeftOverName = "left over"
	LeftSmall    = "weighed back"
	GelledName   = "gelled after"
	CoveredName  = "covered"
	NoteLine     = "note"
	CausesMore   = "What else it may come from"
)

// CoveredSmall says what a cup should take by plan.
func CoveredSmall(planned string) string {
	if planned == "" {
		return "measured"
	}
	return "plan " + planned
}

// TakenLine leads to what was taken down of a cup.
func TakenLine(hour string) string {
	if hour == "" {
		return TakenDown + "."
	}
	return TakenDown + ", at " + hour + "."
}

// CausesLine leads to the causes of a fault that the log doesn't bear out.
func CausesLine(others, against int) string {
	text := Counted(others, "other cause", "other causes") + " without a sign in the log"
	if against > 0 {
		text += ", " + strconv.Itoa(against) + " that it contradicts"
	}
	return text + "."
}

// HoursOfWork heads the sheet of the hours of work.
const HoursOfWork = "Hours of work"

// HoursLine says which hours of work the calendar goes by.
func HoursLine(from, to string) string { return "Work from " + from + " to " + to + "." }

// Later heads the days of the calendar that come after those in sight.
const Later = "The days after"

// LaterLine leads to the days after those in sight.
func LaterLine(days string) string { return days + " more." }

// NextLikely says what the next work likely takes of what is planned.
func NextLikely(low, high string) string { return "next likely " + low + " to " + high + " ×" }

// TakesTitle tells the picture to those who don't see it.
func TakesTitle(of, comes, low, high string, entries int) string {
	return of + ": " + TimesPlan(comes) + " after " + Counted(entries, "entry", "entries") + "; " + NextLikely(low, high) + "."
}
