package words

import (
	"strconv"
	"strings"

	"shedreckoner/calc/unit"
)

var months = [...]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// Clock writes seconds after midnight as a time of day: "7:05".
func Clock(seconds int) string {
	return strconv.Itoa(seconds/3600%24) + ":" + twoDigits(seconds/60%60)
}

// clockOf writes a time from any midnight as a time of day, to the nearest minute.
func clockOf(at unit.Time) string {
	day := int(unit.Day)
	return Clock((int(at+30)%day + day) % day)
}

// DayAhead names a day so many days from today, a date of the log: "Tomorrow, 29 May".
func DayAhead(ahead int, today string) string {
	date := dateAfter(today, ahead)
	switch ahead {
	case 0:
		return "Today" + date
	case 1:
		return "Tomorrow" + date
	}
	return "In " + strconv.Itoa(ahead) + " days" + date
}

// Date writes a day of the log, "29 May", with its year where that isn't today's.
func Date(date, today string) string {
	year, month, day, isDate := dateParts(date)
	if !isDate {
		return date
	}
	text := strconv.Itoa(day) + " " + months[month-1]
	if now, _, _, known := dateParts(today); known && now != year {
		text += " " + strconv.Itoa(year)
	}
	return text
}

// Moment names a time from today's midnight: an hour today, else with its day.
func Moment(at unit.Time, today string) string {
	if at >= 0 && at < unit.Day {
		return clockOf(at)
	}
	return dayAndHour(at, today)
}

func dayAndHour(at unit.Time, today string) string {
	day := 0
	for ; at >= unit.Day; at -= unit.Day {
		day++
	}
	if at < 0 {
		return "before today"
	}
	name := DayAhead(day, today)
	return strings.ToLower(name[:1]) + name[1:] + " at " + clockOf(at)
}

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
