package working_test

import (
	"fmt"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/hydrostatics/working/workingtest"
	"github.com/stretchr/testify/require"
)

// hooke is a line that can be done by hand: 10,000 lbf on 10,000 ft of 1 in²
// of steel of 30e6 psi stretches it 40 in.
func hooke() working.Step {
	f, l, a, e := 10000*unit.PoundForce, 10000*unit.Foot, 1*unit.SquareInch, 30e6*unit.PSI
	return working.Step{
		Name: "stretch", Symbol: "dL", Equation: "F*L/(A*E)",
		Inputs: []working.Input{{"F", working.Of(f)}, {"L", working.Of(l)}, {"A", working.Of(a)}, {"E", working.Of(e)}},
		Value:  working.In(40*unit.Inch, unit.Inch, "in"),
		Source: "Hooke's law",
	}
}

func ExampleStep_String() {
	fmt.Println(hooke())
	// Output:
	// dL = F*L/(A*E) = (10000 lbf)*(10000 ft)/((1 in2)*(30000000 psi)) = 40 in
}

func TestCheckHoldsALineAgainstItsValue(t *testing.T) {
	workingtest.Check(t, []working.Step{hooke()})
	wrong := hooke()
	wrong.Equation = "F*L/A*E"
	v, err := workingtest.Evaluate(wrong)
	require.NoError(t, err)
	require.NotEqual(t, wrong.Value.SI(), v)
	for _, equation := range []string{"F*L/(A*Q)", "F*L/A", "F*L/(A*E", "F %E", "what(F)", "pow(F)", `"F"`} {
		wrong.Equation = equation
		_, err = workingtest.Evaluate(wrong)
		require.Error(t, err, equation)
	}
}

func TestEvaluateKnowsItsFunctions(t *testing.T) {
	for equation, want := range map[string]float64{
		"pow(2,3)+sqrt(16)": 12, "max(1,2)-min(1,2)": 1, "ln(exp(1))": 1, "log10(1e3)": 3, "abs(-2)": 2,
		"sin(pi/2)+cos(0)+tan(0)": 2, "asin(1)+acos(1)+atan(0)-pi/2": 0, "g": 9.80665,
	} {
		v, err := workingtest.Evaluate(working.Step{Equation: equation})
		require.NoError(t, err, equation)
		require.InDelta(t, want, v, 1e-12, equation)
	}
}
