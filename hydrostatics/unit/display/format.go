package display

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"completion.example/hydrostatics/unit"
)

// Reader's digits: at least leastDigits of a small value, and no more decimals
// than noise places beyond those of its unit, so that the rounding of a
// computation shows as 0.
const (
	leastDigits = 3
	freeDigits  = 4
	noise       = 3
)

// Format writes a quantity, or a band of one, for the reader: the unit of its
// purpose, and digits that can be used. What is no quantity is written as fmt
// does.
func (s System) Format(v any, p Purpose) string {
	return s.each(v, func(v any) string {
		n, c, _, ok := s.count(v, p)
		if !ok {
			return fmt.Sprint(v)
		}
		return readers(n, c.decimals) + " " + c.symbol
	})
}

// Number is Format without the unit, for a column whose head has it. Of a band
// it is least, nominal and greatest.
func (s System) Number(v any, p Purpose) string {
	return s.each(v, func(v any) string {
		n, c, _, ok := s.count(v, p)
		if !ok {
			return fmt.Sprint(v)
		}
		return readers(n, c.decimals)
	})
}

// Significant writes a quantity in the unit of its purpose to that many
// significant digits; whole units are never rounded away. It is for worked lines
// that are followed with a pocket calculator.
func (s System) Significant(v any, p Purpose, digits int) string {
	return s.each(v, func(v any) string {
		n, c, _, ok := s.count(v, p)
		if !ok {
			return fmt.Sprint(v)
		}
		return unit.Significant(n, digits) + " " + c.symbol
	})
}

// Exact writes a quantity in the unit of its purpose without loss, for machines:
// it reads back to the same bits, whatever its size. Only where no number in that
// unit does so, near the ends of what a float64 holds, and for NaN and infinities
// it is the quantity's own text. The scale of a temperature may be another where
// that is needed to lose nothing.
func (s System) Exact(v any, p Purpose) string {
	return s.each(v, func(v any) string {
		_, c, si, ok := s.count(v, p)
		if !ok {
			return fmt.Sprint(v)
		}
		if t, is := v.(unit.Temperature); is {
			return exactTemperature(t, c.symbol)
		}
		number, ok := unit.Count(si, c.size)
		if !ok {
			return fmt.Sprint(v)
		}
		return number + " " + c.symbol
	})
}

// In returns a quantity counted in the unit of its purpose, for axes and tables of
// numbers; NaN for what is no quantity.
func (s System) In(v any, p Purpose) float64 {
	n, _, _, ok := s.count(v, p)
	if !ok {
		return math.NaN()
	}
	return n
}

// UnitOf returns the symbol that Format writes v with.
func (s System) UnitOf(v any, p Purpose) string {
	if b, ok := v.(interface{ Values() [3]any }); ok {
		v = b.Values()[1]
	}
	_, c, _, _ := s.count(v, p)
	return c.symbol
}

// each writes the values of a band, or v alone.
func (s System) each(v any, write func(any) string) string {
	b, ok := v.(interface{ Values() [3]any })
	if !ok {
		return write(v)
	}
	values := b.Values()
	if values[0] == values[1] && values[1] == values[2] {
		return write(values[1])
	}
	return write(values[0]) + " .. " + write(values[1]) + " .. " + write(values[2])
}

// readers writes n with that many decimals, and more while it has fewer than
// leastDigits; zeros at the end are dropped.
func readers(n float64, decimals int) string {
	if n-n != 0 {
		return strconv.FormatFloat(n, 'g', -1, 64)
	}
	if decimals == free {
		return unit.Significant(n, freeDigits)
	}
	if math.Abs(n) >= 1e15 {
		return unit.Significant(n, leastDigits)
	}
	places := decimals
	if n != 0 {
		places = max(decimals, min(leastDigits-1-int(math.Floor(math.Log10(math.Abs(n)))), decimals+noise))
	}
	text := strconv.FormatFloat(n, 'f', places, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}

// exactTemperature finds the shortest number on a scale that reads back to t.
func exactTemperature(t unit.Temperature, symbol string) string {
	n := map[string]func() float64{"degF": t.Fahrenheit, "degC": t.Celsius, "K": t.Kelvin, "degR": t.Rankine}[symbol]()
	for digits := 1; digits <= 17; digits++ {
		rounded, err := strconv.ParseFloat(strconv.FormatFloat(n, 'g', digits, 64), 64)
		if err != nil {
			break
		}
		text := strconv.FormatFloat(rounded, 'g', -1, 64) + " " + symbol
		var back unit.Temperature
		if back.UnmarshalText([]byte(text)) == nil && back == t {
			return text
		}
	}
	return t.String()
}
