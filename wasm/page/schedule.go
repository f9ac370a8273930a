package page

import (
	"strconv"
	"strings"

	"shedreckoner/calc/air"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/unit"
	sentences "shedreckoner/wasm/words"
)

// Schedule puts what is left to do on a calendar, every day like today.
func (s *State) Schedule() schedule.Schedule { return schedule.Make(&s.Plan, s.today()) }

// today is the day as it was read.
func (s *State) today() schedule.Today {
	a := &s.Bench().Air
	return schedule.Today{Waiting: a.Waiting, Known: a.Known && a.Err == nil, Day: a.Day, Surface: a.Surface,
		Hour: unit.Time(s.Now.Day), Unix: float64(s.Now.Unix)}
}

// DayWords names a day so many days from today: "Tomorrow, 29 May".
func (s *State) DayWords(ahead int) string {
	date := dateAfter(s.Now.Date, ahead)
	switch ahead {
	case 0:
		return "Today" + date
	case 1:
		return "Tomorrow" + date
	}
	return "In " + strconv.Itoa(ahead) + " days" + date
}

var months = [...]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// dateParts reads a date as the log keeps it, "2026-05-29".
func dateParts(date string) (year, month, day int, isDate bool) {
	parts := strings.Split(date, "-")
	if len(parts) != 3 {
		return 0, 0, 0, false
	}
	year, err1 := strconv.Atoi(parts[0])
	month, err2 := strconv.Atoi(parts[1])
	day, err3 := strconv.Atoi(parts[2])
	return year, month, day, err1 == nil && err2 == nil && err3 == nil && month >= 1 && month <= 12
}

// DateWords writes a day of the log, "29 May", with its year where that isn't
// this one.
func (s *State) DateWords(date string) string {
	year, month, day, isDate := dateParts(date)
	if !isDate {
		return date
	}
	words := strconv.Itoa(day) + " " + months[month-1]
	if now, _, _, known := dateParts(s.Now.Date); known && now != year {
		words += " " + strconv.Itoa(year)
	}
	return words
}

// dateAfter writes the date so many days after one, with a comma before; ""
// after what is no date.
func dateAfter(date string, days int) string {
	year, month, day, isDate := dateParts(date)
	if !isDate {
		return ""
	}
	for day += days; day > daysIn(year, month); {
		day -= daysIn(year, month)
		if month++; month > 12 {
			year, month = year+1, 1
		}
	}
	return ", " + strconv.Itoa(day) + " " + months[month-1]
}

func daysIn(year, month int) int {
	switch {
	case month == 2 && (year%4 == 0 && year%100 != 0 || year%400 == 0):
		return 29
	case month == 2:
		return 28
	case month == 4 || month == 6 || month == 9 || month == 11:
		return 30
	}
	return 31
}

// Hour writes a time of a schedule as a time of day.
func Hour(at unit.Time) string {
	day := int(unit.Day)
	return ClockText((int(at+30)%day + day) % day)
}

// WorkName says what is to be done.
func (s *State) WorkName(w *schedule.Work) string {
	of := ""
	if w.Of > 1 {
		of = " " + strconv.Itoa(w.Which) + " of " + strconv.Itoa(w.Of)
	}
	card := ""
	if w.Step.Card != nil {
		card = ": " + w.Step.Card.Name
	}
	switch w.Kind {
	case plan.LayCoat:
		return "Coat" + of + card
	case plan.LayFiller:
		return "Filler, pass" + of + card
	case plan.PolishIt:
		return "Polish" + card
	case plan.LaunchIt:
		return "May be launched"
	}
	if w.Kind == plan.OtherWork {
		return w.Step.Job.Kind.Name
	}
	if w.Step.Fill != nil {
		return "Board the filler"
	}
	return "Sand"
}

// WorkNotes says what there is to heed of a work.
func (s *State) WorkNotes(w *schedule.Work) []string {
	var notes []string
	if w.NeedsKey {
		text := "Sand a key first: this ground is always sanded before the next layer."
		if w.Closed != 0 {
			text = "Outside its window, which ended " + s.moment(w.Closed) + ": sand a key first."
		}
		notes = append(notes, text)
	}
	if w.IsLong {
		notes = append(notes, "More than the hours of one day take: split the surface where an edge hides it, or get a second pair of hands.")
	}
	switch off := w.Masking.Off; {
	case w.Masking.IsLate:
		notes = append(notes, sentences.MaskAfresh)
	case off > 0 && w.Masking.IsLast:
		notes = append(notes, sentences.MaskingOff(s.moment(off), w.Masking.IsHot))
	}
	if isClose := w.BeginBy-w.From < 2*unit.Hour; w.StopBy > 0 && (isClose || len(w.Closing) > 0) {
		notes = append(notes, "Begin by "+Hour(w.BeginBy)+", stop at "+Hour(w.StopBy)+": "+closingWords(w.Closing)+".")
	}
	return notes
}

func (s *State) moment(at unit.Time) string {
	day := 0
	for ; at >= unit.Day; at -= unit.Day {
		day++
	}
	if at < 0 {
		return "before today"
	}
	return strings.ToLower(s.DayWords(day)[:1]) + s.DayWords(day)[1:] + " at " + Hour(at)
}

func closingWords(list []air.Finding) string {
	for _, f := range list {
		switch f.Condition {
		case air.TooNearDew:
			return "dew comes before it has cured"
		case air.TooCold:
			return "it gets too cold before it has cured"
		case air.TooHot:
			return "the surface gets too hot"
		case air.TooDamp:
			return "the air gets too damp"
		case air.TooDry:
			return "the air gets too dry"
		}
	}
	return "dark, or the end of the working day"
}

// StopSentence says why a build-up doesn't come to its end.
func StopSentence(err error) string {
	switch err {
	case schedule.ErrNeverCures:
		return "At these temperatures the layer below never cures: warm the shed."
	case schedule.ErrNoWindow:
		return "No working hour of a day like this takes the material: see on Cup what speaks against it."
	case schedule.ErrTooLong:
		return "The calendar ends here: there is more work than it holds."
	}
	return "The day's figures don't go together."
}
