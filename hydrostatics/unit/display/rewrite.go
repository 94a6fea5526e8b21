package display

import (
	"regexp"
	"strings"

	"completion.example/hydrostatics/unit"
)

// inText finds a number, a space and what may be a unit.
var inText = regexp.MustCompile(`(^|[\s(=:])(-?[0-9][0-9.]*(?:e[-+][0-9]+)?) ([A-Za-z][A-Za-z0-9/^.-]*)`)

// Rewrite turns every quantity in a text, written as "12.3 psi", into the system's
// units, in as many digits as it has there, three at least. It is for words that a
// library has put together. What the system shows in that unit anyway stays as it
// is, and so does what the unit alone doesn't tell: a temperature or a difference of
// two, pounds of mass or of force. A full stop behind a unit is no part of it.
func (s System) Rewrite(text string) string {
	return inText.ReplaceAllStringFunc(text, func(match string) string {
		m := inText.FindStringSubmatch(match)
		symbol, tail := m[3], ""
		for strings.HasSuffix(symbol, ".") || strings.HasSuffix(symbol, "-") {
			symbol, tail = symbol[:len(symbol)-1], symbol[len(symbol)-1:]+tail
		}
		written := m[2] + " " + symbol
		quantity, u, ok := unit.Written(written)
		if !ok || u.Text != symbol || quantity == "mass" || strings.HasPrefix(quantity, "temperature") {
			return match
		}
		p := impliedBy(quantity, symbol)
		if p == Usual || s.Unit(p) == symbol {
			return match
		}
		x, err := unit.ParseNamed(quantity, written)
		if err != nil {
			return match
		}
		c := s.choice(p)
		return m[1] + unit.Significant(x/c.size, max(leastDigits, figures(m[2]))) + " " + c.symbol + tail
	})
}

// figures counts the digits of a number from the first that isn't nought.
func figures(number string) int {
	number, _, _ = strings.Cut(number, "e")
	return len(strings.TrimLeft(strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, number), "0"))
}
