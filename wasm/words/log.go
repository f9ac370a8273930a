package words

// MaskingOff says by when masking comes off, after a session's last coat.
func MaskingOff(by string, isHot bool) string {
	text := "Masking off by " + by
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
func MoreWanted(amount string) string { return amount + " more is likely wanted, of the same batch." }

// What stands on the log and on its sheets.
const (
	LoggedCups  = "Cups"
	DoneAndRest = "Done, and the rest"
	CupTests    = "Cup tests"
	HandTakes   = "What your hand takes"
	HandLine    = "What the log teaches, to be reckoned with or not."
	NotYet      = "not yet"
)

// CupsLogged leads to the cups before the latest.
func CupsLogged(n int) string { return Counted(n, "cup", "cups") + " before these." }

// RestLine leads to what is done and when the rest can be.
func RestLine(done int) string {
	if done == 0 {
		return "Nothing is marked as done yet. Here it is, and when the rest can be done."
	}
	return Counted(done, "piece", "pieces") + " of work done; when the rest can be done."
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
