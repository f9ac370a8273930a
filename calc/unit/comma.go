package unit

import "strings"

// CheckComma refuses a text with a number that means two things to someone who
// writes a decimal comma: 1.500 is one and a half, or fifteen hundred.
// Errors: *ReadError.
func CheckComma(text string) error {
	for _, raw := range numbersIn(text) {
		if whole, decimals, twoWays := likeThousands(raw); twoWays {
			return &ReadError{Text: raw, Cause: TwoReadings, Readings: []string{Commas(Plain(raw)), whole + decimals}}
		}
	}
	return nil
}

// Ungrouped appends a zero to every number in a text that CheckComma would refuse:
// 1.125 becomes 1.1250, which means the same with either mark.
func Ungrouped(text string) string {
	var b strings.Builder
	for text != "" {
		start := strings.IndexFunc(text, isOfNumber)
		if start < 0 {
			break
		}
		end := start
		for end < len(text) && isOfNumber(rune(text[end])) {
			end++
		}
		b.WriteString(text[:end])
		if _, _, twoWays := likeThousands(text[start:end]); twoWays {
			b.WriteByte('0')
		}
		text = text[end:]
	}
	return b.String() + text
}

// likeThousands cuts a number at its only point, and says if the three digits after
// it could be a group of thousands.
func likeThousands(raw string) (whole, decimals string, twoWays bool) {
	whole, decimals, found := strings.Cut(raw, ".")
	return whole, decimals, found && len(decimals) == 3 && isGroup(whole) && !strings.HasPrefix(whole, "0") && !strings.ContainsAny(decimals, ".,")
}

func isGroup(digits string) bool {
	return digits != "" && len(digits) <= 3 && !strings.Contains(digits, ",")
}

// numbersIn gives the runs of digits, points and commas in a text.
func numbersIn(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return !isOfNumber(r) })
}

func isOfNumber(r rune) bool { return isMark(r) || '0' <= r && r <= '9' }

func isMark(r rune) bool { return r == '.' || r == ',' }

// Commas writes the figures of a text with a decimal comma. What has several
// points, such as the number of a paragraph, stays as it is.
func Commas(text string) string {
	if !strings.Contains(text, ".") {
		return text
	}
	var b strings.Builder
	for len(text) > 0 {
		start := strings.IndexFunc(text, func(r rune) bool { return '0' <= r && r <= '9' })
		if start < 0 {
			break
		}
		end := start
		for end < len(text) && (isDigit(text[end]) || isMark(rune(text[end]))) {
			end++
		}
		raw := strings.TrimRight(text[start:end], ".,")
		b.WriteString(text[:start])
		if strings.Count(raw, ".") == 1 && !strings.Contains(raw, ",") && (start == 0 || text[start-1] != '.') {
			raw = strings.Replace(raw, ".", ",", 1)
		}
		b.WriteString(raw)
		text = text[start+len(raw):]
	}
	return b.String() + text
}
