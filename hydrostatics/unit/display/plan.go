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
func Plan(texts ...string) System { return PlanOf(texts, nil) }

// PlanOf is Plan with texts that stand back, such as the defaults of a command
// line: they speak only where texts lean to neither system.
func PlanOf(texts, defaults []string) System {
	votes, lean := count(texts)
	var s System
	switch {
	case lean > 0:
		s = SI()
	case lean == 0 && len(defaults) > 0:
		s = Plan(defaults...)
	}
	s.name = namePlan
	for p := range s.chosen {
		best := 0
		for i, n := range votes[p] {
			if n > best {
				best = n
				s.chosen[p] = uint8(i)
			}
		}
	}
	return s
}

// count counts in which of its units each purpose is written, and how far the
// units lean to SI, or if negative to Field.
func count(texts []string) (votes [purposes][]int, lean int) {
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
			lean += leaning(w)
		}
	}
	return votes, lean
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

// leaning is 1 for a unit of SI, -1 for one of Field, and 0 for what both have,
// such as degrees of an angle.
func leaning(w one) int {
	for _, r := range rows {
		i := -1
		if r.quantity == w.quantity {
			i = index(r, w)
		}
		switch {
		case i < 0:
			continue
		case r.choices[0] == r.choices[1] && i < 2:
			return 0
		case i == 0 || slices.Contains(alsoField, r.choices[i].symbol):
			return -1
		}
		return 1
	}
	return 0
}

// alsoField are the units of the American oilfield that Field shows nothing in.
var alsoField = []string{"ksi", "ft3", "in3", "gal/min", "MMscf/d", "ft3/min", "ft2", "lb/h", "lb/min", "klbf", "lb/ft3", "lb/bbl", "degR", "degF/ft", "ft2/h"}
