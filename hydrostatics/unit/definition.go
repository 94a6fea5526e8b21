package unit

import "strings"

// Symbol is one way to write a unit, and its size in SI: a number in it times
// Size is the value. Degrees Celsius and Fahrenheit have their zero elsewhere,
// Zero kelvin up.
type Symbol struct {
	Text string  `json:"text"`
	Size float64 `json:"size"`
	Zero float64 `json:"zero"`
}

// Quantity is a quantity with all of its units, SI first, and with the
// spellings that are only read. Absolute pressures, which are read as gauge, are
// left out.
type Quantity struct {
	Name      string   `json:"name"`
	Units     []Symbol `json:"units"`
	Spellings []Symbol `json:"spellings"`
}

// Quantities lists every quantity that this package reads.
func Quantities() []Quantity {
	var all []Quantity
	for _, t := range tables() {
		q := Quantity{Name: t.quantity}
		for _, s := range t.symbols {
			q.Units = append(q.Units, t.symbol(s.text, s.text, s.factor))
		}
		for _, w := range spellings[t.quantity] {
			if w.offset != 0 {
				continue
			}
			for _, text := range w.texts {
				r, _ := t.read(text)
				q.Spellings = append(q.Spellings, t.symbol(text, r.symbol, r.factor))
			}
		}
		all = append(all, q)
	}
	return all
}

func (t *table) symbol(text, canonical string, factor float64) Symbol {
	s := Symbol{Text: text, Size: factor}
	if t == &temperatureUnits {
		zero, _ := scale(0, canonical)
		s.Zero = zero.kelvin
	}
	return s
}

// Written tells which quantity a text such as "35 barg" is of and in which unit
// it is written. Of a unit that several quantities have, the first is told that
// writes it, and else the first that reads it: lb is a mass.
func Written(text string) (quantity string, u Symbol, ok bool) {
	number, written := split(text)
	owner := ownerOf(plainLetters.Replace(written))
	if number == "" || owner == nil {
		return "", Symbol{}, false
	}
	r, _ := owner.read(written)
	if plain, problem := ungrouped(number, r.symbol); problem != "" {
		return "", Symbol{}, false
	} else if _, problem := owner.number(plain); problem != "" {
		return "", Symbol{}, false
	}
	name := r.symbol
	switch {
	case name == "":
		name = plainLetters.Replace(written)
	case strings.EqualFold(written, "SG"):
		name = "SG" // a spelling that people want to have back
	}
	return owner.quantity, owner.symbol(name, r.symbol, r.factor), true
}

// Count writes a value in SI as a number of units of that size without loss:
// the shortest decimal that parses back to the same bits with that unit. It is
// false near the ends of what a float64 holds, where there may be none, and for
// what is not finite.
func Count(x, size float64) (number string, ok bool) {
	if x-x != 0 || !(size > 0) {
		return "", false
	}
	return shortest(x, size)
}

// ParseNamed reads a text as the quantity of a name, as Quantities has it, and returns
// its value in SI; a temperature in kelvin.
func ParseNamed(quantity, text string) (float64, error) {
	if quantity == temperatureUnits.quantity {
		var t Temperature
		err := t.UnmarshalText([]byte(text))
		return t.Kelvin(), err
	}
	for _, t := range tables() {
		if t.quantity == quantity {
			return t.parse(text)
		}
	}
	return 0, &ParseError{Quantity: quantity, Text: text, Problem: "there is no such quantity"}
}
