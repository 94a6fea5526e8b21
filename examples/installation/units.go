package main

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// purpose is what a value is for: it says which unit and how many digits.
type purpose int

const (
	depth purpose = iota
	stroke
	pressure
	volume
	smallVolume
	force
	rate
	density
)

// shownIn is the unit of a purpose.
type shownIn struct {
	symbol   string
	size     float64
	decimals int
}

// units are those that an output is written in.
type units struct{ metric bool }

var tables = map[bool][]shownIn{
	false: {{"ft", float64(unit.Foot), 1}, {"in", float64(unit.Inch), 1}, {"psi", float64(unit.PSI), 0}, {"bbl", float64(unit.Barrel), 2},
		{"gal", float64(unit.Gallon), 2}, {"lbf", float64(unit.PoundForce), 0}, {"bbl/d", float64(unit.BarrelPerDay), 0}, {"lb/gal", float64(unit.PoundPerGallon), 2}},
	true: {{"m", 1, 1}, {"mm", 1e-3, 0}, {"bar", 1e5, 1}, {"m3", 1, 2}, {"L", 1e-3, 2}, {"kN", 1e3, 1}, {"m3/d", float64(unit.CubicMetrePerDay), 1}, {"kg/m3", 1, 0}},
}

func (u units) row(p purpose) shownIn { return tables[u.metric][p] }

// usual is the purpose of a value by its type, and its size in SI.
func usual(v any) (purpose, float64, bool) {
	switch x := v.(type) {
	case unit.Length:
		return depth, float64(x), true
	case unit.Pressure:
		return pressure, float64(x), true
	case unit.Volume:
		return volume, float64(x), true
	case unit.Force:
		return force, float64(x), true
	case unit.FlowRate:
		return rate, float64(x), true
	case unit.Density:
		return density, float64(x), true
	case sequence.Level:
		if f, ok := x.Force(); ok {
			return force, float64(f), true
		}
		p, _ := x.Pressure()
		return pressure, float64(p), true
	}
	return 0, 0, false
}

// as writes a value for the reader.
func (u units) as(v any, p purpose) string { return u.number(v, p) + " " + u.row(p).symbol }

// of writes a value for what its type is usually for.
func (u units) of(v any) string {
	p, _, ok := usual(v)
	if !ok {
		return fmt.Sprint(v)
	}
	return u.as(v, p)
}

// number is as without the unit.
func (u units) number(v any, p purpose) string {
	return digitsOf(u.in(v, p), u.row(p).decimals)
}

// in counts a value in the unit of a purpose.
func (u units) in(v any, p purpose) float64 {
	_, si, ok := usual(v)
	if !ok {
		return math.NaN()
	}
	return si / u.row(p).size
}

// symbol of a purpose's unit.
func (u units) symbol(p purpose) string { return u.row(p).symbol }

// legend is the line that says which units are used.
func (u units) legend() string {
	names := []string{"depth", "stroke", "pressure", "volume", "small volume", "force", "rate", "density"}
	var parts []string
	for i, n := range names {
		parts = append(parts, n+" in "+u.row(purpose(i)).symbol)
	}
	return strings.Join(parts, ", ")
}

func digitsOf(n float64, decimals int) string {
	if n-n != 0 {
		return strconv.FormatFloat(n, 'g', -1, 64)
	}
	places := decimals
	if n != 0 {
		places = max(decimals, min(2-int(math.Floor(math.Log10(math.Abs(n)))), decimals+3))
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

// quantity finds a number with a unit in a sentence of the engine's.
var quantity = regexp.MustCompile(`(-?\d[\d,]*(?:\.\d+)?(?:e[-+]?\d+)?) (psi|ksi|ft|in|lbf|klbf|bbl/d|bbl|gal|lb/gal)\b`)

// text writes a sentence of the engine's in the reader's units.
func (u units) text(s string) string {
	return quantity.ReplaceAllStringFunc(s, func(found string) string {
		m := quantity.FindStringSubmatch(found)
		n, err := strconv.ParseFloat(strings.ReplaceAll(m[1], ",", ""), 64)
		if err != nil {
			return found
		}
		switch m[2] {
		case "psi":
			return u.of(unit.Pressure(n) * unit.PSI)
		case "ksi":
			return u.of(unit.Pressure(n) * unit.KSI)
		case "ft":
			return u.of(unit.Length(n) * unit.Foot)
		case "in":
			if !strings.Contains(m[1], ".") {
				return found // “2 in the annulus” is no length
			}
			return u.as(unit.Length(n)*unit.Inch, stroke)
		case "lbf":
			return u.of(unit.Force(n) * unit.PoundForce)
		case "klbf":
			return u.of(unit.Force(n) * unit.Kilopound)
		case "bbl/d":
			return u.of(unit.FlowRate(n) * unit.BarrelPerDay)
		case "bbl":
			return u.of(unit.Volume(n) * unit.Barrel)
		case "gal":
			return u.as(unit.Volume(n)*unit.Gallon, smallVolume)
		default:
			return u.of(unit.Density(n) * unit.PoundPerGallon)
		}
	})
}

// unitsNames are those that -units takes.
const unitsNames = "field, si or plan (those that the plan is written in)"

// unitsNamed are the units of a name; those of a plan are what most of its texts
// are written in.
func unitsNamed(name string, texts []string) (units, error) {
	switch name {
	case "field":
		return units{}, nil
	case "si":
		return units{metric: true}, nil
	case "plan":
		votes := map[bool]int{}
		for _, t := range texts {
			f := strings.Fields(t)
			for metric, table := range tables {
				for _, row := range table {
					if len(f) > 1 && f[1] == row.symbol {
						votes[metric]++
					}
				}
			}
		}
		return units{metric: votes[true] > votes[false]}, nil
	}
	return units{}, fmt.Errorf("-units is %q; there are %s", name, unitsNames)
}
