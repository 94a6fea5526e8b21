package unit

import (
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"
)

// split parts "5000 psi" into its number and its unit. Without a space the
// unit begins at the first letter that isn't an exponent. The number goes on
// after a space with a fraction, 5 1/2, and with groups of three digits, 12 500.
func split(text string) (number, unit string) {
	text = strings.TrimSpace(text)
	end := unitBegins(text)
	if i := firstSpace(text); i >= 0 && (end == i || end == 0) {
		number, unit = text[:i], trimSpaces(text[i:])
		for {
			more := continuation(number, unit)
			if more == 0 {
				return number, unit
			}
			number, unit = number+" "+unit[:more], trimSpaces(unit[more:])
		}
	}
	return text[:end], trimSpaces(text[end:])
}

const spaces = " \t\u00a0\u202f\u2009"

// firstSpace finds the first of spaces, -1 for none.
func firstSpace(s string) int {
	if i := strings.IndexByte(s, ' '); i >= 0 && ascii(s[:i]) {
		return i
	}
	return strings.IndexAny(s, spaces)
}

// trimSpaces takes spaces off both ends.
func trimSpaces(s string) string {
	for strings.HasPrefix(s, " ") {
		s = s[1:]
	}
	if s == "" || s[0] > ' ' && s[0] < utf8.RuneSelf && s[len(s)-1] > ' ' && s[len(s)-1] < utf8.RuneSelf {
		return s
	}
	return strings.Trim(s, spaces)
}

// ascii tells whether s has no tab and no letter beyond ASCII, which may be a
// space as well.
func ascii(s string) bool {
	for i := range len(s) {
		if s[i] >= utf8.RuneSelf || s[i] == '\t' {
			return false
		}
	}
	return true
}

// unitBegins finds the first byte of text that is no part of a number.
func unitBegins(text string) int {
	end := 0
	for end < len(text) {
		c := text[end]
		exponent := (c == 'e' || c == 'E') && end > 0 && isExponent(text[end+1:])
		if c >= utf8.RuneSelf {
			if f := vulgar(text[end:]); f != 0 {
				end += f
				continue
			}
			break
		}
		if !exponent && !strings.ContainsRune("+-.,0123456789/", rune(c)) {
			break
		}
		if exponent {
			end++ // and the sign or digit after it
		}
		end++
	}
	return end
}

// isExponent tells whether s, which follows an e, begins as an exponent does.
func isExponent(s string) bool {
	s = strings.TrimLeft(s, "+-")
	return s != "" && s[0] >= '0' && s[0] <= '9'
}

// number reads a decimal number, or for lengths a number with a fraction as
// pipe sizes have it: 2-7/8.
func (t *table) number(s string) (v float64, problem string) {
	if t == &lengthUnits && hasFraction(s) {
		return mixed(s)
	}
	if strings.ContainsAny(s, "xXpP_nNiI") {
		return 0, strconv.Quote(s) + " is not a decimal number"
	}
	v, err := strconv.ParseFloat(s, 64)
	switch {
	case errors.Is(err, strconv.ErrRange):
		return 0, "too large"
	case err != nil:
		return 0, strconv.Quote(s) + " is not a decimal number"
	}
	return v, ""
}
