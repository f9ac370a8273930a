package working

import (
	"unicode"
	"unicode/utf8"
)

// Token is a piece of a formula. The texts of all tokens make up the formula.
type Token struct {
	Text     string
	IsName   bool // a symbol or a function: "VS'", "t_ref", "ln"
	IsNumber bool
}

// Tokens cuts a formula into names, numbers and single signs.
func Tokens(formula string) []Token {
	var list []Token
	for formula != "" {
		first, size := utf8.DecodeRuneInString(formula)
		switch {
		case startsName(first):
			size = span(formula, func(r rune) bool { return startsName(r) || isDigit(r) || r == '_' || r == '\'' })
			list = append(list, Token{Text: formula[:size], IsName: true})
		case isDigit(first):
			size = span(formula, func(r rune) bool { return isDigit(r) || r == '.' })
			list = append(list, Token{Text: formula[:size], IsNumber: true})
		default:
			list = append(list, Token{Text: formula[:size]})
		}
		formula = formula[size:]
	}
	return list
}

func span(s string, in func(rune) bool) int {
	for i, r := range s {
		if !in(r) {
			return i
		}
	}
	return len(s)
}

// startsName says if a rune can start a symbol. To Unicode some superscripts are
// letters; here they are signs.
func startsName(r rune) bool {
	return unicode.IsLetter(r) && r != 'ⁿ' && r != 'ª' && r != 'º' || unicode.Is(unicode.Mn, r) || '₀' <= r && r <= '₉'
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }
