package convert

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/practice"
	"completion.example/internal/calculator"
)

// digits of a converted number: more than any gauge has, fewer than the noise.
const digits = 10

func (in input) answer() (calculator.Answer, error) {
	q, x, others, err := in.find()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	a := calculator.Answer{Results: []calculator.Result{{Name: "quantity", Value: q.Name}}}
	for _, other := range others {
		a.Notes = append(a.Notes, fmt.Sprintf("it may also be a %s: -quantity %q", other, other))
	}
	from, hasFrom := lookUp(q, in.unit())
	if in.to != "" {
		to, ok := lookUp(q, in.to)
		if !ok {
			return a, calculator.BadInput{Err: fmt.Errorf("-in is %q, no unit of %s; there are %s", in.to, q.Name, list(q))}
		}
		a.Results = append(a.Results, calculator.Result{Name: "in " + to.Text, Value: count(x, to)})
		if hasFrom {
			a.Results = append(a.Results, factors(from, to)...)
		}
		costs(&a, q, x, from, to)
	}
	t := calculator.Table{Name: "In every unit", Header: []string{"unit", "number", "one of it in SI"}}
	for _, u := range q.Units {
		t.Rows = append(t.Rows, []any{u.Text, count(x, u), si(u, q)})
	}
	a.Tables = append([]calculator.Table{t}, a.Tables...)
	if q.Name == "pressure" {
		absolute := x + float64(unit.Atmosphere)
		a.Results = append(a.Results, calculator.Result{Name: "absolute, in a standard atmosphere", Value: number(absolute/float64(unit.PSI)) + " psia, " + number(absolute/float64(unit.Bar)) + " bara"})
	}
	return a, nil
}

// find reads the value as the quantity asked for, as the first that -in is a unit
// of, or as the first that it can be; a temperature before a difference of two.
// Others are what it might have been as well.
func (in input) find() (found unit.Quantity, value float64, others []string, err error) {
	var faults []error
	best := 0
	for _, q := range unit.Quantities() {
		if in.quantity != "" && q.Name != in.quantity {
			continue
		}
		x, err := unit.ParseNamed(q.Name, in.value)
		if err != nil {
			faults = append(faults, err)
			continue
		}
		rank := 2
		if _, fits := lookUp(q, in.to); fits || in.to == "" {
			rank += 2
		}
		if strings.HasSuffix(q.Name, "difference") {
			rank--
		}
		if rank > best {
			if best > 2 {
				others = append(others, found.Name)
			}
			found, value, best = q, x, rank
		} else if rank > 2 {
			others = append(others, q.Name)
		}
	}
	switch {
	case best > 0:
		return found, value, others, nil
	case in.quantity != "" && len(faults) == 0:
		return found, 0, nil, fmt.Errorf("-quantity is %q; there are %s", in.quantity, names())
	case in.quantity != "":
		return found, 0, nil, errors.Join(faults...)
	}
	return found, 0, nil, fmt.Errorf("-value is %q: no quantity is written so; %w", in.value, likeliest(faults))
}

// likeliest is the fault that says most: that of the quantity whose unit it is, or
// the first.
func likeliest(faults []error) error {
	for _, f := range faults {
		var p *unit.ParseError
		if errors.As(f, &p) && !strings.Contains(p.Problem, "is a unit of") && !strings.Contains(p.Problem, "not a unit here") {
			return f
		}
	}
	return faults[0]
}

// unit is the unit that the value is written in.
func (in input) unit() string {
	_, u, ok := unit.Written(in.value)
	if !ok {
		return ""
	}
	return u.Text
}

func lookUp(q unit.Quantity, text string) (unit.Symbol, bool) {
	for _, u := range slices.Concat(q.Units, q.Spellings) {
		if u.Text == text {
			return u, true
		}
	}
	return unit.Symbol{}, false
}

func count(x float64, u unit.Symbol) verbatim {
	return number((x - u.Zero) / u.Size)
}

func number(v float64) verbatim { return verbatim(unit.Significant(v, digits)) }

// verbatim is text that stays in the units that it is in.
type verbatim string

func si(u unit.Symbol, q unit.Quantity) verbatim {
	text := fmt.Sprintf("%.17g", u.Size)
	if short := fmt.Sprintf("%.15g", u.Size); len(short) < len(text) {
		text = short
	}
	text += " " + q.Units[0].Text
	if u.Zero != 0 {
		text += fmt.Sprintf(", from %.10g %s", u.Zero, q.Units[0].Text)
	}
	return verbatim(text)
}

// factors are the exact factor and its inverse, to all digits that a float64 has.
func factors(from, to unit.Symbol) []calculator.Result {
	if from.Zero != to.Zero {
		return []calculator.Result{{Name: "a scale, not a factor", Value: fmt.Sprintf("%s = (%s - %s)/%s", to.Text, "K", number(to.Zero), number(to.Size))}}
	}
	f := from.Size / to.Size
	return []calculator.Result{
		{Name: "exact factor, " + from.Text + " to " + to.Text, Value: fmt.Sprintf("%.15g", f)},
		{Name: "and back", Value: fmt.Sprintf("%.15g", 1/f)},
	}
}

// costs adds what the trade's factors between the two units make of the value.
func costs(a *calculator.Answer, q unit.Quantity, x float64, from, to unit.Symbol) {
	t := calculator.Table{Name: "The trade's rounded factors", Header: []string{"from", "to", "factor", "makes it", "off by", "which is", "source"}}
	for _, f := range practice.Factors(q.Name) {
		way := "times "
		if f.Divides {
			way = "divided by "
		}
		f1, ok1 := lookUp(q, f.From)
		f2, ok2 := lookUp(q, f.To)
		forward := same(f1, from) && same(f2, to)
		if !ok1 || !ok2 || !forward && !(same(f1, to) && same(f2, from)) {
			continue
		}
		exact, made := x/to.Size, f.Convert(x/f1.Size)
		if !forward { // the other way round
			made = x / f2.Size / f.Value()
			way = map[string]string{"times ": "divided by ", "divided by ": "times "}[way]
		}
		t.Rows = append(t.Rows, []any{from.Text, to.Text, verbatim(way + f.Written), number(made), number(round(made-exact, exact)) + verbatim(" "+to.Text),
			fmt.Sprintf("%+.3f %%", 100*(made/exact-1)), f.Source})
	}
	if t.Rows != nil && x != 0 {
		a.Tables = append(a.Tables, t)
	}
}

// same says whether two spellings are one unit.
func same(a, b unit.Symbol) bool { return math.Abs(a.Size-b.Size) <= 1e-12*b.Size }

// round takes the noise of a difference off.
func round(d, of float64) float64 {
	if math.Abs(d) < 1e-13*math.Abs(of) {
		return 0
	}
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(d)))-4)
	return math.Round(d/step) * step
}

func list(q unit.Quantity) string {
	var texts []string
	for _, u := range q.Units {
		texts = append(texts, u.Text)
	}
	return strings.Join(texts, ", ")
}

func names() string {
	var all []string
	for _, q := range unit.Quantities() {
		all = append(all, q.Name)
	}
	return strings.Join(all, ", ")
}
