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
