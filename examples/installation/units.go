package main

import (
	"encoding"
	"fmt"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/valve/sequence"
)

// The purposes that a programme's values have.
const (
	depth       = display.Depth
	stroke      = display.Stroke
	pressure    = display.Pressure
	volume      = display.Volume
	smallVolume = display.SmallVolume
	force       = display.Force
	rate        = display.ProductionRate
	density     = display.Density
)

// units are those that an output is written in.
type units struct{ display.System }

// unitsNames are those that -units takes.
const unitsNames = "field, si or plan (those that the plan is written in)"

// unitsNamed are the units of a name; those of a plan are what its texts are
// written in.
func unitsNamed(name string, texts []string) (units, error) {
	s, err := display.Named(name, texts...)
	if err != nil {
		return units{}, fmt.Errorf("-units is %q; there are %s", name, unitsNames)
	}
	return units{s}, nil
}

// plain is a level as the quantity that it is.
func plain(v any) any {
	l, ok := v.(sequence.Level)
	if !ok {
		return v
	}
	if f, axial := l.Force(); axial {
		return f
	}
	p, _ := l.Pressure()
	return p
}

// usual is what a value is for by its type: flow is a zone's.
func usual(v any) display.Purpose {
	if _, ok := v.(unit.FlowRate); ok {
		return rate
	}
	return display.Usual
}

// of writes a value for what its type is usually for.
func (u units) of(v any) string { return u.as(v, usual(v)) }

// as writes a value for the reader.
func (u units) as(v any, p display.Purpose) string { return u.Format(plain(v), p) }

// number is as without the unit.
func (u units) number(v any, p display.Purpose) string { return u.Number(plain(v), p) }

// in counts a value in the unit of a purpose.
func (u units) in(v any, p display.Purpose) float64 { return u.In(plain(v), p) }

// symbol of a purpose's unit.
func (u units) symbol(p display.Purpose) string { return u.Unit(p) }

// legend is the line that says which units are used.
func (u units) legend() string {
	return u.Legend(depth, stroke, pressure, volume, smallVolume, force, rate, density)
}

// few writes the text of a quantity in so many digits of the reader's units.
func (u units) few(text string, digits int) string {
	for _, read := range []func(string) (any, error){one[unit.Pressure], one[unit.Force], one[unit.Density], one[unit.Length]} {
		if q, err := read(text); err == nil {
			return u.Significant(q, display.Usual, digits)
		}
	}
	return text
}

func one[Q any, P interface {
	*Q
	encoding.TextUnmarshaler
}](text string) (any, error) {
	var q Q
	err := P(&q).UnmarshalText([]byte(text))
	return q, err
}

// text writes a sentence of the engine's in the reader's units. A unit alone doesn't tell a
// temperature from a difference of two; behind what the engine calls so it is one.
func (u units) text(s string) string {
	s = u.Rewrite(u.pressures(s))
	for _, head := range [...]string{"error of temperature ", "warming of "} {
		s = u.differences(s, head)
	}
	return s
}

// pressures are those that are shortest in a unit of stress, which here are none.
func (u units) pressures(s string) string {
	for _, symbol := range [...]string{" MPa", " ksi"} {
		if symbol[1:] == u.symbol(pressure) {
			continue
		}
		for at := strings.Index(s, symbol); at >= 0; at = strings.Index(s, symbol) {
			from := strings.LastIndexAny(s[:at], " (=:“\"") + 1
			written := s[from : at+len(symbol)]
			q, err := one[unit.Pressure](written)
			if err != nil {
				break
			}
			s = s[:from] + u.Significant(q, pressure, 4) + s[at+len(symbol):]
		}
	}
	return s
}

// differences are the differences of temperature behind each head, up to the end of what
// is said of it.
func (u units) differences(s, head string) string {
	at := strings.Index(s, head)
	if at < 0 {
		return s
	}
	at += len(head)
	end := at + strings.IndexAny(s[at:]+",", ",;'")
	if words := strings.Fields(s[at:end]); len(words) > 2 {
		written := strings.Join(words[len(words)-2:], " ")
		return s[:at] + strings.Replace(s[at:end], written, u.difference(written), 1) + u.differences(s[end:], head)
	}
	return s[:end] + u.differences(s[end:], head)
}

// difference is a difference of temperatures in the reader's units; other text stays.
func (u units) difference(text string) string {
	q, err := one[unit.TemperatureDifference](text)
	if err != nil {
		return text
	}
	return u.Significant(q, display.TemperatureDifference, 4)
}

// quoted is text of which parts stand in quotes, as the plan's JSON has them.
func (u units) quoted(s string) string {
	parts := strings.Split(s, `"`)
	for i := range parts {
		parts[i] = u.text(u.few(parts[i], 6))
	}
	return strings.Join(parts, `"`)
}
