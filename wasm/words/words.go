// Package words holds every sentence for people, and nothing else has one: names
// of screens, buttons and sheets, what is wrong with a text and what to type
// instead, cautions, what a figure means. It is pure Go, one file a subject, and
// knows neither state nor markup: what a sentence speaks of is handed to it.
//
// The manner: plain words that a native speaker would use, one idea to a line;
// an error says what is wrong and what to type; a caution stands where the hand
// is about to act, two at most at a time; percent always with its base; a
// temperature with its degree.
package words

import "strconv"

// Counted writes how many there are of something: "1 layer", "3 layers".
func Counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// Capital begins a text with a capital letter, where it begins with a plain small one.
func Capital(text string) string {
	if text == "" || text[0] < 'a' || 'z' < text[0] {
		return text
	}
	return string(text[0]-'a'+'A') + text[1:]
}
