package unit

import (
	"math"
	"strconv"
)

// Temperature is an absolute temperature. It is a struct so that the
// difference of two temperatures can't be taken for a temperature: use Sub.
// The zero value is absolute zero, outside every property range, and so shows
// up as an input that was forgotten.
type Temperature struct{ kelvin float64 }

// Zero points: the ice point in K and the offsets of the Fahrenheit scale.
// Source: NIST Special Publication 811 (2008), B.8; exact by definition.
const (
	iceKelvin           = 273.15
	fahrenheitToRankine = 459.67
	kelvinPerRankine    = 1 / 1.8
)

// Kelvin returns the temperature of k kelvin.
func Kelvin(k float64) Temperature { return Temperature{k} }

// Celsius returns the temperature of c °C.
func Celsius(c float64) Temperature { return Temperature{c + iceKelvin} }

// Fahrenheit returns the temperature of f °F.
func Fahrenheit(f float64) Temperature { return Temperature{(f + fahrenheitToRankine) / 1.8} }

// Rankine returns the temperature of r °R.
func Rankine(r float64) Temperature { return Temperature{r / 1.8} }

// Kelvin returns t in K.
func (t Temperature) Kelvin() float64 { return t.kelvin }

// Celsius returns t in °C.
func (t Temperature) Celsius() float64 { return t.kelvin - iceKelvin }

// Fahrenheit returns t in °F.
func (t Temperature) Fahrenheit() float64 { return t.kelvin*1.8 - fahrenheitToRankine }

// Rankine returns t in °R.
func (t Temperature) Rankine() float64 { return t.kelvin * 1.8 }

// Sub returns t - u.
func (t Temperature) Sub(u Temperature) TemperatureDifference {
	return TemperatureDifference(t.kelvin - u.kelvin)
}

// Add returns t + d.
func (t Temperature) Add(d TemperatureDifference) Temperature {
	return Temperature{t.kelvin + float64(d)}
}

var temperatureUnits = table{
	quantity: "temperature",
	symbols:  []symbol{{"K", 1}, {"degC", 1}, {"degF", kelvinPerRankine}, {"degR", kelvinPerRankine}},
}

// scale reads v on the scale of a symbol; ok is false for an unknown one.
func scale(v float64, symbol string) (t Temperature, ok bool) {
	switch symbol {
	case "K":
		return Kelvin(v), true
	case "degC":
		return Celsius(v), true
	case "degF":
		return Fahrenheit(v), true
	case "degR":
		return Rankine(v), true
	}
	return Temperature{}, false
}

// String writes t without loss, in °F or °C, whichever is shorter, or else in K.
func (t Temperature) String() string {
	best := ""
	for _, s := range [...]struct {
		symbol string
		v      float64
	}{{"degF", t.Fahrenheit()}, {"degC", t.Celsius()}} {
		for digits := 0; digits < 17; digits++ {
			d, err := strconv.ParseFloat(strconv.FormatFloat(s.v, 'e', digits, 64), 64)
			if u, _ := scale(d, s.symbol); err == nil && same(u.kelvin, t.kelvin) {
				text := strconv.FormatFloat(d, 'g', -1, 64) + " " + s.symbol
				if best == "" || len(text) < len(best) {
					best = text
				}
				break
			}
		}
	}
	if best == "" {
		best = strconv.FormatFloat(t.kelvin, 'g', -1, 64) + " K"
	}
	return best
}

// Rounded writes t in °F to that many significant digits; whole degrees are
// never rounded away.
func (t Temperature) Rounded(digits int) string { return Significant(t.Fahrenheit(), digits) + " degF" }

// MarshalText writes t without loss; NaN and infinities are errors.
func (t Temperature) MarshalText() ([]byte, error) {
	if math.IsNaN(t.kelvin) || math.IsInf(t.kelvin, 0) {
		return nil, temperatureUnits.fault(t.String(), "not a finite number")
	}
	return []byte(t.String()), nil
}

// UnmarshalText reads a number with K, degC, degF, degR or their spellings. Below absolute zero
// is an error.
func (t *Temperature) UnmarshalText(text []byte) error {
	// The table's reading checks number and unit; the scale then has its offset.
	if _, err := temperatureUnits.parse(string(text)); err != nil {
		return err
	}
	number, unit := split(string(text))
	r, _ := temperatureUnits.read(unit)
	number, _ = ungrouped(number, r.symbol)
	v, _ := temperatureUnits.number(number)
	u, _ := scale(v, r.symbol)
	if u.kelvin < 0 {
		return temperatureUnits.fault(string(text), "below absolute zero")
	}
	*t = u
	return nil
}
