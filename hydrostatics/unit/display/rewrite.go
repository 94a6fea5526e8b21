package display

import (
	"strings"

	"completion.example/hydrostatics/unit"
)

// Rewrite turns every quantity in a text, written as "12.3 psi", into the system's
// units, in as many digits as it has there, three at least. It is for words that a
// library has put together. What the system shows in that unit anyway stays as it
// is, and so does what the unit alone doesn't tell: a temperature or a difference of
// two, pounds of mass or of force. A full stop behind a unit is no part of it. What
// stands in “ ” is a name, and stays.
func (s System) Rewrite(text string) string {
	var b strings.Builder
	done, name := 0, 0
	for i := range len(text) {
		if i >= name && strings.HasPrefix(text[i:], "“") {
			if quoted, _, closed := strings.Cut(text[i:], "”"); closed {
				name = i + len(quoted)
			}
		}
		if i < max(done, name) || i > 0 && !strings.ContainsRune(" \t\n\r(=:", rune(text[i-1])) {
			continue
		}
		number, symbol := quantityAt(text[i:])
		if symbol == "" {
			continue
		}
		b.WriteString(text[done:i])
		b.WriteString(s.rewritten(number, symbol))
		done = i + len(number) + 1 + len(symbol)
	}
	return b.String() + text[done:]
}

// quantityAt reads a number, a space and what may be a unit, as "-1.5e+06 lb/gal". By
// hand: a regular expression would bring its machine into every page that shows a text.
func quantityAt(text string) (number, symbol string) {
	n := digitsFrom(text, len(text)-len(strings.TrimPrefix(text, "-")), "")
	if n == 0 {
		return "", ""
	}
	n = digitsFrom(text, n, ".")
	if n+1 < len(text) && text[n] == 'e' && (text[n+1] == '-' || text[n+1] == '+') {
		n = digitsFrom(text, n+2, "")
	}
	rest, spaced := strings.CutPrefix(text[n:], " ")
	if !spaced || rest == "" || !letter(rest[0]) {
		return "", ""
	}
	behind := strings.TrimLeft(rest, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789/^.-")
	return text[:n], rest[:len(rest)-len(behind)]
}

// digitsFrom tells where digits from a place on end, with others among them; 0 where
// there is none.
func digitsFrom(text string, from int, others string) int {
	end := from
	for end < len(text) && (text[end] >= '0' && text[end] <= '9' || strings.IndexByte(others, text[end]) >= 0) {
		end++
	}
	if end == from && others == "" {
		return 0
	}
	return end
}

func letter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

// rewritten is one quantity in the system's units, or as it was.
func (s System) rewritten(number, symbol string) string {
	was := number + " " + symbol
	bare := strings.TrimRight(symbol, ".-")
	tail := symbol[len(bare):]
	written := number + " " + bare
	quantity, _, ok := unit.Written(written)
	if !ok || quantity == "mass" || strings.HasPrefix(quantity, "temperature") {
		return was
	}
	p := impliedBy(quantity, bare)
	if p == Usual || s.Unit(p) == bare {
		return was
	}
	x, err := unit.ParseNamed(quantity, written)
	if err != nil {
		return was
	}
	c := s.choice(p)
	return unit.Significant(x/c.size, max(leastDigits, figures(number))) + " " + c.symbol + tail
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
