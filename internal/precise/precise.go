// Package precise works formulas out with 256 bits, for tests: a value that
// shares neither code nor rounding with the formula it is held against.
//
// A formula is text in Go's syntax, one definition a line, the last line the
// answer:
//
//	β = d/D
//	1/sqrt(1 - pow(β, 4))
//
// Functions: sqrt, cbrt, pow, exp, log, log10, expm1, log1p, sin, cos, tan, atan,
// min, max, abs. Constant: pi. Numbers are taken as written; the given values
// as the float64 they are.
package precise

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math/big"
	"strings"
	"testing"
)

const bits = 256

// number returns x with all its bits.
func number(x float64) *big.Float { return new(big.Float).SetPrec(bits).SetFloat64(x) }

func zero() *big.Float { return new(big.Float).SetPrec(bits) }

// Values are what a formula's symbols stand for.
type Values map[string]float64

// Eval works a formula out.
func Eval(formula string, of Values) (v *big.Float, err error) {
	defer func() {
		if r := recover(); r != nil { // such as 0/0 in math/big
			v, err = nil, fmt.Errorf("precise: %s: %v", formula, r)
		}
	}()
	known := map[string]*big.Float{"pi": pi()}
	for name, x := range of {
		known[name] = number(x)
	}
	for _, line := range strings.Split(formula, "\n") {
		line = strings.TrimSpace(line)
		if line == "" {
			continue
		}
		name, code, defines := strings.Cut(line, " = ")
		if !defines {
			name, code = "", line
		}
		e, err := parser.ParseExpr(code)
		if err != nil {
			return nil, fmt.Errorf("precise: %q: %w", line, err)
		}
		v = eval(e, known)
		if defines {
			known[strings.TrimSpace(name)] = v
		}
	}
	return v, nil
}

// Float is Eval for a test, rounded once.
func Float(t testing.TB, formula string, of Values) float64 {
	t.Helper()
	v, err := Eval(formula, of)
	if err != nil {
		t.Fatal(err)
	}
	x, _ := v.Float64()
	return x
}

// Equal fails unless got is the formula's value within a relative 1e-12.
func Equal(t testing.TB, got float64, formula string, of Values) {
	t.Helper()
	Within(t, 1e-12, got, formula, of)
}

// Within is Equal with another relative tolerance, for formulas that lose
// digits by their nature.
func Within(t testing.TB, tolerance, got float64, formula string, of Values) {
	t.Helper()
	want := Float(t, formula, of)
	if d := got - want; !(d <= tolerance*abs(want) && -d <= tolerance*abs(want)) {
		t.Errorf("%s with %v: got %.17g, want %.17g, off by %.3g of it", formula, of, got, want, d/want)
	}
}

func abs(x float64) float64 { return max(x, -x) }

func eval(e ast.Expr, known map[string]*big.Float) *big.Float {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return eval(e.X, known)
	case *ast.BasicLit:
		v, _, err := big.ParseFloat(e.Value, 0, bits, big.ToNearestEven)
		if err != nil {
			panic(err)
		}
		return v
	case *ast.Ident:
		if v, ok := known[e.Name]; ok {
			return v
		}
		panic("nothing is called " + e.Name)
	case *ast.UnaryExpr:
		if e.Op == token.SUB {
			return zero().Neg(eval(e.X, known))
		}
	case *ast.BinaryExpr:
		x, y := eval(e.X, known), eval(e.Y, known)
		switch e.Op {
		case token.ADD:
			return zero().Add(x, y)
		case token.SUB:
			return zero().Sub(x, y)
		case token.MUL:
			return zero().Mul(x, y)
		case token.QUO:
			return zero().Quo(x, y)
		}
	case *ast.CallExpr:
		return call(e, known)
	}
	panic(fmt.Sprintf("%T is no arithmetic", e))
}

func call(e *ast.CallExpr, known map[string]*big.Float) *big.Float {
	var args []*big.Float
	for _, a := range e.Args {
		args = append(args, eval(a, known))
	}
	name := e.Fun.(*ast.Ident).Name
	if f, ok := ofOne[name]; ok && len(args) == 1 {
		return f(args[0])
	}
	if len(args) == 2 {
		switch name {
		case "pow":
			return pow(args[0], args[1])
		case "min", "max":
			if (args[0].Cmp(args[1]) < 0) == (name == "min") {
				return args[0]
			}
			return args[1]
		}
	}
	panic(fmt.Sprintf("no function %s of %d numbers", name, len(args)))
}
