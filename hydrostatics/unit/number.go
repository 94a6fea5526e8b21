package unit

import (
	"errors"
	"strconv"
	"strings"
)

// split parts "5000 psi" into its number and its unit. Without a space the
// unit begins at the first letter that isn't an exponent.
func split(text string) (number, unit string) {
	text = strings.TrimSpace(text)
	if i := strings.IndexAny(text, " \t\u00a0\u202f"); i >= 0 {
		number = text[:i]
		unit = strings.TrimFunc(text[i:], func(r rune) bool { return strings.ContainsRune(" \t\u00a0\u202f", r) })
		return number, unit
	}
	end := 0
	for end < len(text) {
		c := text[end]
		exponent := (c == 'e' || c == 'E') && end > 0 && isExponent(text[end+1:])
		if !exponent && !strings.ContainsRune("+-.0123456789/", rune(c)) {
			break
		}
		if exponent {
			end++ // and the sign or digit after it
		}
		end++
	}
	return text[:end], text[end:]
}

// isExponent tells whether s, which follows an e, begins as an exponent does.
func isExponent(s string) bool {
	s = strings.TrimLeft(s, "+-")
	return s != "" && s[0] >= '0' && s[0] <= '9'
}

// number reads a decimal number, or for lengths a number with a fraction as
// pipe sizes have it: 2-7/8.
func (t *table) number(s string) (v float64, problem string) {
	if t == &lengthUnits && strings.Contains(s, "/") {
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

// mixed reads "2-7/8" and "7/8".
func mixed(s string) (v float64, problem string) {
	bad := strconv.Quote(s) + " is neither a decimal number nor a size such as 2-7/8"
	whole, fraction, found := strings.Cut(s, "-")
	if !found {
		whole, fraction = "0", s
	}
	above, below, _ := strings.Cut(fraction, "/")
	w, err1 := strconv.ParseUint(whole, 10, 16)
	n, err2 := strconv.ParseUint(above, 10, 16)
	d, err3 := strconv.ParseUint(below, 10, 16)
	if err1 != nil || err2 != nil || err3 != nil || d == 0 || n >= d {
		return 0, bad
	}
	return float64(w) + float64(n)/float64(d), ""
}
