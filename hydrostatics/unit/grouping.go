package unit

import (
	"slices"
	"strconv"
	"strings"
)

// continuation returns how many bytes of rest, which follows number and a
// space, still belong to it: a fraction as in 5 1/2, or three digits as in
// 12 500. A unit that begins so, such as 1/psi, is left alone.
func continuation(number, rest string) int {
	digits := func(s string) int {
		return len(s) - len(strings.TrimLeft(s, "0123456789"))
	}
	if f := vulgar(rest); f != 0 {
		return f
	}
	n := digits(rest)
	switch {
	case n > 0 && strings.HasPrefix(rest[n:], "/"):
		end := n + 1 + digits(rest[n+1:])
		if end > n+1 && !strings.ContainsAny(number, "/.") {
			return end
		}
	case n == 3 && !strings.ContainsAny(number, "/.,eE"):
		if strings.HasPrefix(rest[n:], ".") {
			n += 1 + digits(rest[n+1:])
		}
		if firstSpace(rest[n:]) == 0 {
			return n
		}
	}
	return 0
}

// ungrouped takes the thousands separators out of a number with its unit:
// 3,000 psi and 12 500 ft. In a unit whose values seldom reach a thousand one
// comma may be a decimal one, as half of Europe writes it, and is refused.
func ungrouped(number, symbol string) (plain, problem string) {
	separator := ","
	if !strings.Contains(number, separator) {
		if separator = " "; !strings.Contains(number, separator) || hasFraction(number) {
			return number, ""
		}
	}
	whole, decimals, point := strings.Cut(number, ".")
	sign := whole[:len(whole)-len(strings.TrimLeft(whole, "+-"))]
	groups := strings.Split(whole[len(sign):], separator)
	good := len(sign) <= 1 && plainDigitsOnly(decimals)
	for i, g := range groups {
		good = good && plainDigitsOnly(g) && len(g) > 0 && len(g) <= 3 && (i == 0 || len(g) == 3) && (i > 0 || g[0] != '0')
	}
	plain = sign + strings.Join(groups, "")
	if point {
		plain += "." + decimals
	}
	switch {
	case !good && separator == ",":
		return "", strconv.Quote(number) + " is not a decimal number: a comma parts thousands, three digits a group; the decimal sign is a point"
	case !good:
		return "", strconv.Quote(number) + " is not a decimal number"
	case separator == "," && len(groups) == 2 && !point && !slices.Contains(reachThousands, symbol):
		return "", strconv.Quote(number) + " may be " + plain + " or " + groups[0] + "." + groups[1] + "; write the one that is meant"
	}
	return plain, ""
}

func plainDigitsOnly(s string) bool { return strings.Trim(s, "0123456789") == "" }

// reachThousands are the symbols of units in which a comma before three digits
// parts thousands and nothing else. Metres, litres, cubic metres, bar and
// inches are not among them: a joint of 12,345 m is one of twelve metres to a
// German.
var reachThousands = []string{"ft", "psi", "Pa", "kPa", "lbf", "lb", "N", "bbl", "gal", "ft3", "kg/m3",
	"bbl/d", "ft3/min", "Mcf/d", "m3/d", "ft-lbf", "lb/h", "kg/h"}
