package unit

import "strings"

// spelling is a unit as the trade writes it: read, never written.
type spelling struct {
	symbol string  // the symbol of the table that it is,
	factor float64 // or its size in SI where the table has none;
	offset float64 // what is taken off after: an atmosphere from an absolute pressure
	gauge  bool    // says that it is above the atmosphere
	texts  []string
}

// reading is what a unit's text says.
type reading struct {
	symbol         string
	factor, offset float64
	gauge          bool
}

// read looks a unit up among the symbols of t, then among its spellings.
func (t *table) read(text string) (r reading, ok bool) {
	for _, s := range t.symbols {
		if s.text == text {
			return reading{symbol: s.text, factor: s.factor}, true
		}
	}
	if plain := plainLetters.Replace(text); plain != text {
		return t.read(plain)
	}
	for _, w := range spellings[t.quantity] {
		for _, s := range w.texts {
			if s != text {
				continue
			}
			r = reading{w.symbol, w.factor, w.offset, w.gauge}
			for _, s := range t.symbols {
				if s.text == w.symbol {
					r.factor = s.factor
				}
			}
			return r, true
		}
	}
	return reading{}, false
}

// plainLetters turns what typesetting makes of a unit into the letters of the
// tables: °C is degC, m³ is m3.
var plainLetters = strings.NewReplacer("²", "2", "³", "3", "⁻¹", "-1", "·", ".", "⋅", ".", "°", "deg", "º", "deg",
	"℃", "degC", "℉", "degF", "µ", "u", "μ", "u", "″", `"`, "”", `"`, "′", "'", "’", "'")

// absolute tells whether text is a pressure with a unit such as psia. Of such a
// one no part and no multiple can be taken as gauge.
func absolute(text string) bool {
	_, unit := split(text)
	r, ok := pressureUnits.read(unit)
	return ok && r.offset != 0
}

// ParseAbsolute reads an absolute pressure, for the few inputs that are one,
// such as the vapour pressure of a liquid: with psia, bara or kPaa as it stands;
// with psig, barg or kPag an atmosphere of 101.325 kPa is added; with any other
// unit as it stands.
func ParseAbsolute(text string) (Pressure, error) {
	x, err := pressureUnits.parse(text)
	if err != nil {
		return 0, err
	}
	_, unit := split(text)
	if r, _ := pressureUnits.read(unit); r.gauge || r.offset != 0 {
		x += float64(Atmosphere)
	}
	if x < 0 {
		return 0, pressureUnits.fault(text, "below a vacuum")
	}
	return Pressure(x), nil
}
