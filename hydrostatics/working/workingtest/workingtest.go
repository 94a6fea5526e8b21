// Package workingtest holds worked lines against the results they explain.
package workingtest

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"strconv"
	"testing"

	"completion.example/hydrostatics/working"
)

// relative is how near the value of an equation must come to its step's value.
const relative = 1e-9

// Check evaluates each step's equation from the step's inputs, in SI, and
// fails t where it isn't the step's value, where a symbol is missing or
// unused, or where a line has no name or source.
func Check(t testing.TB, steps []working.Step) {
	t.Helper()
	if len(steps) == 0 {
		t.Error("no steps")
	}
	for _, s := range steps {
		if s.Name == "" || s.Symbol == "" || s.Equation == "" || s.Source == "" {
			t.Errorf("step %q: name, symbol, equation or source is missing: %+v", s.Name, s)
		}
		got, err := Evaluate(s)
		if err != nil {
			t.Errorf("step %q: %v", s.Name, err)
			continue
		}
		want := s.Value.SI()
		if math.Abs(got-want) > relative*math.Max(math.Abs(got), math.Abs(want)) && math.Abs(got-want) > scale(s)*1e-12 || math.IsNaN(got) {
			t.Errorf("step %q: %s = %.12g, but its value is %.12g (SI)", s.Name, s, got, want)
		}
	}
}

// scale is the largest input: differences of nearly equal inputs lose digits.
func scale(s working.Step) float64 {
	m := 0.0
	for _, in := range s.Inputs {
		m = math.Max(m, math.Abs(in.Value.SI()))
	}
	return m
}

// Evaluate returns the equation's value in SI.
func Evaluate(s working.Step) (float64, error) {
	tree, err := parser.ParseExpr(s.Equation)
	if err != nil {
		return 0, fmt.Errorf("equation %q: %w", s.Equation, err)
	}
	e := evaluation{values: map[string]float64{"pi": math.Pi, "g": 9.80665}, used: map[string]bool{}}
	for _, in := range s.Inputs {
		e.values[in.Symbol] = in.Value.SI()
	}
	v, err := e.of(tree)
	if err != nil {
		return 0, fmt.Errorf("equation %q: %w", s.Equation, err)
	}
	for _, in := range s.Inputs {
		if !e.used[in.Symbol] {
			return 0, fmt.Errorf("equation %q does not use its input %q", s.Equation, in.Symbol)
		}
	}
	return v, nil
}

type evaluation struct {
	values map[string]float64
	used   map[string]bool
}

func (e evaluation) of(x ast.Expr) (float64, error) {
	switch x := x.(type) {
	case *ast.BasicLit:
		return strconv.ParseFloat(x.Value, 64)
	case *ast.Ident:
		v, ok := e.values[x.Name]
		if !ok {
			return 0, fmt.Errorf("no value for %q", x.Name)
		}
		e.used[x.Name] = true
		return v, nil
	case *ast.ParenExpr:
		return e.of(x.X)
	case *ast.UnaryExpr:
		v, err := e.of(x.X)
		if x.Op == token.SUB {
			v = -v
		}
		return v, err
	case *ast.BinaryExpr:
		return e.binary(x)
	case *ast.CallExpr:
		return e.call(x)
	}
	return 0, fmt.Errorf("%T is not arithmetic", x)
}

func (e evaluation) binary(x *ast.BinaryExpr) (float64, error) {
	a, err := e.of(x.X)
	if err != nil {
		return 0, err
	}
	b, err := e.of(x.Y)
	if err != nil {
		return 0, err
	}
	switch x.Op {
	case token.ADD:
		return a + b, nil
	case token.SUB:
		return a - b, nil
	case token.MUL:
		return a * b, nil
	case token.QUO:
		return a / b, nil
	}
	return 0, fmt.Errorf("operator %s is not arithmetic", x.Op)
}

var functions = map[string]func(x []float64) float64{
	"sqrt":  func(x []float64) float64 { return math.Sqrt(x[0]) },
	"exp":   func(x []float64) float64 { return math.Exp(x[0]) },
	"ln":    func(x []float64) float64 { return math.Log(x[0]) },
	"log10": func(x []float64) float64 { return math.Log10(x[0]) },
	"sin":   func(x []float64) float64 { return math.Sin(x[0]) },
	"cos":   func(x []float64) float64 { return math.Cos(x[0]) },
	"tan":   func(x []float64) float64 { return math.Tan(x[0]) },
	"asin":  func(x []float64) float64 { return math.Asin(x[0]) },
	"acos":  func(x []float64) float64 { return math.Acos(x[0]) },
	"atan":  func(x []float64) float64 { return math.Atan(x[0]) },
	"abs":   func(x []float64) float64 { return math.Abs(x[0]) },
	"pow":   func(x []float64) float64 { return math.Pow(x[0], x[1]) },
	"min":   func(x []float64) float64 { return math.Min(x[0], x[1]) },
	"max":   func(x []float64) float64 { return math.Max(x[0], x[1]) },
}

func (e evaluation) call(x *ast.CallExpr) (float64, error) {
	name, ok := x.Fun.(*ast.Ident)
	if !ok {
		return 0, fmt.Errorf("%T is not a function", x.Fun)
	}
	f, ok := functions[name.Name]
	if !ok {
		return 0, fmt.Errorf("no function %q", name.Name)
	}
	want := 1
	if name.Name == "pow" || name.Name == "min" || name.Name == "max" {
		want = 2
	}
	if len(x.Args) != want {
		return 0, fmt.Errorf("%s takes %d arguments", name.Name, want)
	}
	var args []float64
	for _, a := range x.Args {
		v, err := e.of(a)
		if err != nil {
			return 0, err
		}
		args = append(args, v)
	}
	return f(args), nil
}
