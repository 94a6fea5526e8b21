// Package working holds lines of worked calculation: what a person would
// write on paper to check a result.
//
// A result offers Steps() []Step. The steps read fields that are already
// computed and compute nothing. Each equation is an expression that is true in
// SI for the values given with it, so that a test can hold every step against
// its field (package workingtest).
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package working

import (
	"strconv"
	"strings"
	"time"
	"unicode"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/clock"
)

// Step is one line: Symbol = Equation = numbers put in = Value.
type Step struct {
	Name     string  `json:"name"`               // in words, such as "piston effect"
	Symbol   string  `json:"symbol"`             // such as "dL1"
	Equation string  `json:"equation,omitempty"` // a Go expression in the inputs' symbols, true in SI
	Inputs   []Input `json:"inputs,omitempty"`   // every symbol of the equation, but for pi and g
	Value    Value   `json:"value"`
	Source   string  `json:"source"` // author or standard, year, equation or table
}

// Input is a symbol with its value.
type Input struct {
	Symbol string `json:"symbol"`
	Value  Value  `json:"value"`
}

// Value is a quantity that remembers how to print itself.
type Value struct {
	si       float64
	text     string
	quantity any // nil for a number and a time
}

// SI returns the value in SI: what the equation is true for.
func (v Value) SI() float64 { return v.si }

// String returns the value rounded for reading, with its unit.
func (v Value) String() string { return v.text }

// Quantity returns the quantity itself, nil for a number or a time, so that it
// can be written in another unit.
func (v Value) Quantity() any { return v.quantity }

// digits is how many significant digits a worked line shows: enough to follow
// the arithmetic with a pocket calculator.
const digits = 6

// Of is a quantity in the trade's unit.
func Of[Q unit.Scalar](q Q) Value { return Value{float64(q), q.Rounded(digits), q} }

// In is a quantity in a unit of the caller's choice, such as (l, unit.Inch, "in").
//
//	value = q/u
//
// Range: any quantity, in a unit that isn't zero.
//
// Source: definition of a unit.
func In[Q unit.Scalar](q, u Q, symbol string) Value {
	return Value{float64(q), unit.Significant(float64(q)/float64(u), digits) + " " + symbol, q}
}

// Temperature is a temperature in °F; its SI value is in kelvin.
func Temperature(t unit.Temperature) Value { return Value{t.Kelvin(), t.Rounded(digits), t} }

// Number is a number without a unit.
func Number(x float64) Value { return Value{x, unit.Significant(x, digits), nil} }

// Duration is a time; its SI value is in seconds.
func Duration(d time.Duration) Value {
	return Value{d.Seconds(), clock.Words(d), nil}
}

// Numbers returns the equation with each symbol replaced by its value in
// brackets, as one would write it down before reaching for the calculator.
func (s Step) Numbers() string { return s.NumbersAs(Value.String) }

// NumbersAs is Numbers with values written by the caller.
func (s Step) NumbersAs(write func(Value) string) string {
	values := map[string]string{}
	for _, in := range s.Inputs {
		values[in.Symbol] = write(in.Value)
	}
	var b strings.Builder
	for rest := s.Equation; rest != ""; {
		n := strings.IndexFunc(rest, isSymbol)
		if n < 0 {
			b.WriteString(rest)
			break
		}
		b.WriteString(rest[:n])
		rest = rest[n:]
		end := strings.IndexFunc(rest, func(r rune) bool { return !isSymbol(r) })
		if end < 0 {
			end = len(rest)
		}
		word := rest[:end]
		rest = rest[end:]
		if text, ok := values[word]; ok {
			word = bracket(text)
		}
		b.WriteString(word)
	}
	return b.String()
}

func isSymbol(r rune) bool { return r == '_' || r == '.' || unicode.IsLetter(r) || unicode.IsDigit(r) }

// bracket leaves plain numbers bare.
func bracket(text string) string {
	if _, err := strconv.ParseFloat(text, 64); err == nil && !strings.HasPrefix(text, "-") {
		return text
	}
	return "(" + text + ")"
}

// String writes the whole line.
func (s Step) String() string { return s.Text(Value.String) }

// Text writes the whole line with values written by the caller, as for a reader
// who counts in other units; the equation is true in any that fit together.
func (s Step) Text(write func(Value) string) string {
	if s.Equation == "" {
		return s.Symbol + " = " + write(s.Value)
	}
	return s.Symbol + " = " + s.Equation + " = " + s.NumbersAs(write) + " = " + write(s.Value)
}
