package workingtest

import (
	"go/parser"
	"testing"

	"completion.example/hydrostatics/working"
	"github.com/stretchr/testify/assert"
)

// told keeps what a test is told.
type told struct {
	testing.TB
	text string
}

func (t *told) Helper()                           {}
func (t *told) Error(args ...any)                 { t.text += "error" }
func (t *told) Errorf(format string, args ...any) { t.text += format }

// What isn't arithmetic isn't worked out, and a step that says nothing, or is not its own value, is told.
func TestWordsOfRefusals(t *testing.T) {
	for text, says := range map[string]string{
		"x":          `no value for "x"`,
		"a.b":        "*ast.SelectorExpr is not arithmetic",
		"1 % 2":      "operator % is not arithmetic",
		"(a.b)(1)":   "*ast.ParenExpr is not a function",
		"mood(1, 2)": "mood",
	} {
		x, err := parser.ParseExpr(text)
		assert.NoError(t, err)
		_, err = evaluation{}.of(x)
		assert.ErrorContains(t, err, says, text)
	}
	var of told
	Check(&of, []working.Step{{}})
	assert.Contains(t, of.text, "name, symbol, equation or source is missing")
	of = told{}
	Check(&of, []working.Step{{Name: "sum", Symbol: "s", Equation: "1 + 1", Source: "arithmetic", Value: working.Number(3)}})
	assert.Contains(t, of.text, "step %q: %s = %.12g, but its value is %.12g (SI)")
}
