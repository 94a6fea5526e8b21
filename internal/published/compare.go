package published

import (
	"encoding"
	"errors"
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"

	"completion.example/hydrostatics/unit"
)

// Comparison is a computed answer beside the printed one.
type Comparison struct {
	Got, Want float64 // in the printed unit
	Tolerance float64
	Unit      string
}

// Met tells whether the difference is within tolerance. The comparison itself
// may cost a few last bits.
func (c Comparison) Met() bool {
	return math.Abs(c.Got-c.Want) <= c.Tolerance*(1+1e-9)+1e-14*math.Abs(c.Want)
}

// Relative is the deviation as a share of the printed answer, or the plain
// difference where zero was printed.
func (c Comparison) Relative() float64 {
	if c.Want == 0 {
		return math.Abs(c.Got)
	}
	return math.Abs(c.Got-c.Want) / math.Abs(c.Want)
}

func (c Comparison) String() string {
	return strings.TrimSpace(fmt.Sprintf("got %.10g, want %.10g ± %.2g %s", c.Got, c.Want, c.Tolerance, c.Unit))
}

// Compare holds a computed answer (a quantity, a temperature or a float64)
// against the printed one.
func (c Case) Compare(got any) (Comparison, error) {
	number, symbol, _ := strings.Cut(strings.TrimSpace(c.Printed), " ")
	symbol = strings.TrimSpace(symbol)
	want, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return Comparison{}, fmt.Errorf("printed answer %q has no number", c.Printed)
	}
	r := Comparison{Want: want, Unit: symbol}
	if r.Got, err = inUnit(got, symbol); err != nil {
		return r, err
	}
	if math.IsNaN(r.Got) || math.IsInf(r.Got, 0) {
		return r, fmt.Errorf("computed answer is %v", r.Got)
	}
	r.Tolerance, err = c.tolerance(number, want, got)
	return r, err
}

// tolerance reads the row's own, or takes half a unit of the last digit.
func (c Case) tolerance(number string, want float64, got any) (float64, error) {
	t := strings.TrimSpace(c.Tolerance)
	if t == "" {
		return halfDigit(number), nil
	}
	if percent, found := strings.CutSuffix(t, "%"); found {
		p, err := strconv.ParseFloat(strings.TrimSpace(percent), 64)
		return math.Abs(want) * p / 100, err
	}
	number, symbol, _ := strings.Cut(t, " ")
	_, printed, _ := strings.Cut(strings.TrimSpace(c.Printed), " ")
	if strings.TrimSpace(symbol) != strings.TrimSpace(printed) {
		return 0, fmt.Errorf("tolerance %q must be in the printed unit %q", t, printed)
	}
	return strconv.ParseFloat(number, 64)
}

// halfDigit is half a unit of the last digit of a printed number.
func halfDigit(number string) float64 {
	mantissa, exponent := strings.ToLower(number), 0
	if m, e, found := strings.Cut(mantissa, "e"); found {
		mantissa = m
		exponent, _ = strconv.Atoi(e)
	}
	if _, decimals, found := strings.Cut(mantissa, "."); found {
		exponent -= len(decimals)
	}
	return 0.5 * math.Pow(10, float64(exponent))
}

// inUnit returns a computed answer counted in the unit named.
func inUnit(got any, symbol string) (float64, error) {
	switch got := got.(type) {
	case float64:
		if symbol != "" && symbol != "%" {
			return 0, fmt.Errorf("answer has no unit, but %q was printed", symbol)
		}
		if symbol == "%" {
			return got * 100, nil
		}
		return got, nil
	case unit.Temperature:
		return degrees(got, symbol)
	}
	v := reflect.ValueOf(got)
	if !v.IsValid() || v.Kind() != reflect.Float64 {
		return 0, fmt.Errorf("%T is not a quantity", got)
	}
	one := reflect.New(v.Type())
	u, ok := one.Interface().(encoding.TextUnmarshaler)
	if !ok {
		return 0, fmt.Errorf("%T is not a quantity", got)
	}
	if err := u.UnmarshalText([]byte("1 " + symbol)); err != nil {
		return 0, err
	}
	return v.Float() / one.Elem().Float(), nil
}

func degrees(t unit.Temperature, symbol string) (float64, error) {
	switch symbol {
	case "K":
		return t.Kelvin(), nil
	case "degC":
		return t.Celsius(), nil
	case "degF":
		return t.Fahrenheit(), nil
	case "degR":
		return t.Rankine(), nil
	}
	return 0, errors.New("temperature printed in " + strconv.Quote(symbol))
}
