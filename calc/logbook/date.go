package logbook

import "strconv"

// IsDate reports whether a text is a date, 2026-11-25, or a date with a time,
// 2026-11-25T10:03.
func IsDate(text string) bool {
	_, ok := days(text)
	return ok
}

// days returns the days since the beginning of 1970 of a date with or without a
// time. The clock is the device's own: no zone, no summer time.
func days(text string) (float64, bool) {
	n := len("2026-11-25")
	if len(text) != n && len(text) != n+len("T10:03") {
		return 0, false
	}
	year, ok1 := digits(text[0:4])
	month, ok2 := digits(text[5:7])
	day, ok3 := digits(text[8:10])
	if !ok1 || !ok2 || !ok3 || text[4] != '-' || text[7] != '-' ||
		month < 1 || month > 12 || day < 1 || day > daysIn(year, month) {
		return 0, false
	}
	d := float64(civil(year, month, day))
	if len(text) == n {
		return d, true
	}
	hour, ok1 := digits(text[11:13])
	minute, ok2 := digits(text[14:16])
	if !ok1 || !ok2 || text[10] != 'T' || text[13] != ':' || hour > 23 || minute > 59 {
		return 0, false
	}
	return d + (float64(hour)+float64(minute)/60)/24, true
}

func digits(s string) (int, bool) {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return 0, false
		}
	}
	n, err := strconv.Atoi(s)
	return n, err == nil
}

func daysIn(year, month int) int {
	switch month {
	case 2:
		if year%4 == 0 && (year%100 != 0 || year%400 == 0) {
			return 29
		}
		return 28
	case 4, 6, 9, 11:
		return 30
	}
	return 31
}

// civil counts the days since the beginning of 1970. The year begins with March
// here, so that the leap day is its last.
func civil(year, month, day int) int {
	if month <= 2 {
		year, month = year-1, month+12
	}
	return 365*year + floor(year, 4) - floor(year, 100) + floor(year, 400) + (153*(month-3)+2)/5 + day - 1 - 719468
}

// floor divides downwards.
func floor(a, b int) int {
	if a < 0 {
		return (a - b + 1) / b
	}
	return a / b
}
