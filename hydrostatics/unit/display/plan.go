package display

import (
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
)

// Plan returns the units that texts are written in, such as all strings of a plan
// file or the values of a command line. A text may hold several quantities, as
// "9.2 lb/gal to 3000 m" does; one without any counts for nothing. Where a purpose
// is written in several units the most frequent is taken, and of equals the one of
// Field, then of SI; a purpose that isn't written at all follows the system that the
// rest leans to, Field where it leans to neither.
func Plan(texts ...string) System {
	var votes [purposes][]int
	si, field := 0, 0
	for _, text := range texts {
		for _, w := range written(text) {
			for p := range rows {
				i := index(rows[p], w)
				if i < 0 {
					continue
				}
				if votes[p] == nil {
					votes[p] = make([]int, len(rows[p].choices))
				}
				votes[p][i]++
			}
			switch metric(w) {
			case leansSI:
				si++
			case leansField:
				field++
			}
		}
	}
	s := Field()
	if si > field {
		s = SI()
	}
	s.name = namePlan
	for p, v := range votes {
		best := 0
		for i, n := range v {
			if n > best {
				best = n
				s.chosen[p] = uint8(i)
			}
		}
	}
	return s
}

// one is a quantity written in a text.
type one struct {
	quantity string
	unit     unit.Symbol
}

// written finds the quantities in a text: a number and the word after it, or two
// words where the unit has two.
func written(text string) []one {
	words := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" \t\n\u00a0\u202f;:=()[]", r) })
	var found []one
	for i, w := range words {
		w = strings.TrimRight(w, ",")
		for _, candidate := range []string{w, w + " " + strings.TrimRight(next(words, i), ",.")} {
			if quantity, u, ok := unit.Written(candidate); ok {
				found = append(found, one{quantity, u})
				break
			}
		}
	}
	return found
}

func next(words []string, i int) string {
	if i+1 < len(words) {
		return words[i+1]
	}
	return ""
}

// index finds the choice of a row that is w: by its text, or else by its size.
func index(r row, w one) int {
	if r.quantity != w.quantity && !(r.quantity == "force" && w.quantity == "mass" && w.unit.Text == "t") &&
		!(r.quantity == "temperature" && w.quantity == "temperature difference") {
		return -1
	}
	for i, c := range r.choices {
		if c.symbol == w.unit.Text {
			return i
		}
	}
	for i, c := range r.choices {
		if r.quantity == w.quantity && c.size == w.unit.Size {
			return i
		}
	}
	return -1
}

// Which system a unit belongs to.
const (
	leansNowhere = iota
	leansField
	leansSI
)

// metric tells which system a unit leans to. What both have, such as degrees of
// an angle, leans nowhere.
func metric(w one) int {
	for _, r := range rows {
		i := -1
		if r.quantity == w.quantity {
			i = index(r, w)
		}
		switch {
		case i < 0:
			continue
		case r.choices[0] == r.choices[1] && i < 2:
			return leansNowhere
		case i == 0 || slices.Contains(alsoField, r.choices[i].symbol):
			return leansField
		}
		return leansSI
	}
	return leansNowhere
}

// alsoField are the units of the American oilfield that Field shows nothing in.
var alsoField = []string{"ksi", "ft3", "in3", "gal/min", "MMscf/d", "ft3/min", "ft2", "lb/h", "lb/min", "klbf", "lb/ft3", "lb/bbl", "degR", "degF/ft", "ft2/h"}
