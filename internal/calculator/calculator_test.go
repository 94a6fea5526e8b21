package calculator_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"github.com/stretchr/testify/require"
)

func double(answer calculator.Answer, err error) calculator.Command {
	return calculator.Command{Name: "double", Question: "what is twice a length?", Picture: true,
		Setup: func(flags *flag.FlagSet) func() (calculator.Answer, error) {
			var l unit.Length
			flags.TextVar(&l, "length", 5*unit.Foot, "a length")
			flags.Float64("factor", 2, "a number")
			flags.Duration("wait", 0, "a time")
			return func() (calculator.Answer, error) {
				a := answer
				a.Results = append(a.Results, calculator.Result{Name: "twice", Value: 2 * l})
				return a, err
			}
		}}
}

func run(c calculator.Command, args ...string) (code int, out, errs string) {
	var o, e bytes.Buffer
	code = c.Run(args, &o, &e)
	return code, o.String(), e.String()
}

func TestExitCodes(t *testing.T) {
	code, out, errs := run(double(calculator.Answer{}, nil))
	require.Zero(t, code)
	require.Contains(t, out, "twice")
	require.Contains(t, out, "10 ft")
	require.Contains(t, strings.Join(strings.Fields(out), " "), calculator.Caution)
	require.Empty(t, errs)

	code, out, errs = run(double(calculator.Answer{}, errors.New("no level does it")))
	require.Equal(t, 1, code)
	require.Empty(t, out)
	require.Contains(t, errs, "no answer: no level does it")

	code, _, errs = run(double(calculator.Answer{}, calculator.BadInput{Err: errors.New("length is 5 ft; above 6 ft")}))
	require.Equal(t, 2, code)
	require.Contains(t, errs, "above 6 ft")

	code, out, _ = run(double(calculator.Answer{Failed: true}, nil))
	require.Equal(t, 1, code)
	require.Contains(t, out, "twice")
}

func TestEveryFaultOfTheFlagsIsReported(t *testing.T) {
	code, out, errs := run(double(calculator.Answer{}, nil), "-lenght", "7 ft", "-length", "7", "-factor", "NaN", "-length", "7 psi", "loose")
	require.Equal(t, 2, code)
	require.Empty(t, out, "nothing half-run")
	for _, want := range []string{"did you mean -length?", "no unit given", "-factor is NaN", `"psi" is a unit of pressure`, `"loose" belongs to no flag`} {
		require.Contains(t, errs, want)
	}
}

// What isn't a number, a time or a truth is answered with what is.
func TestFaultsSayWhatToWrite(t *testing.T) {
	code, _, errs := run(double(calculator.Answer{}, nil), "-factor", "two", "-wait", "long", "-explain=perhaps")
	require.Equal(t, 2, code)
	for _, want := range []string{`"two" for flag -factor: write a number such as 0.05`, `"long" for flag -wait: write a time such as 30m`, `"perhaps" for flag -explain: write true or false`} {
		require.Contains(t, errs, want)
	}
	require.NotContains(t, errs, "parse error")
}

// A sheet has the words of the printed page, and the flag of every fault.
func TestSheet(t *testing.T) {
	a := calculator.Answer{Notes: []string{"at 5000 psi"}, Draw: func(w io.Writer) error { _, err := w.Write([]byte("<svg/>")); return err },
		Tables:    []calculator.Table{{Name: "t", Header: []string{"a"}, Rows: [][]any{{3 * unit.Foot}}}},
		Published: &calculator.Published{Name: "a case", Printed: "3 ft", Ours: 3 * unit.Foot, Source: "a book"},
		Steps:     []working.Step{{Name: "n", Symbol: "y", Equation: "x", Inputs: []working.Input{{Symbol: "x", Value: working.Number(2)}}, Value: working.Number(2), Source: "s"}}}
	c := double(a, nil)
	s := c.Sheet([]string{"-length", "2 m", "-units", "si"})
	_, out, _ := run(c, "-length", "2 m", "-units", "si")
	require.Equal(t, out, s.Text)
	require.Equal(t, []calculator.Line{{Name: "twice", Text: "4 m"}}, s.Results)
	require.Equal(t, []string{"at 344.7 bar"}, s.Notes)
	require.Equal(t, [][]string{{"0.914 m"}}, s.Tables[0].Rows)
	require.Equal(t, "<svg/>", s.Picture)
	require.Contains(t, s.Published, "a case: printed 3 ft, here 3 ft (a book)")
	require.Equal(t, "y = x = 2 = 2", s.Working[0].Text)
	require.Contains(t, s.Inputs, calculator.Line{Name: "length", Text: "2 m"})

	s = c.Sheet([]string{"-lenght", "2 m", "-length", "2 foots", "-factor", "x"})
	require.Equal(t, 2, s.Code)
	require.Len(t, s.Faults, 3)
	require.Empty(t, s.Faults[0].Flag)
	require.Equal(t, "length", s.Faults[1].Flag)
	require.Contains(t, s.Faults[1].Says, `"2 foots"`)
	require.Equal(t, calculator.Wrong{Flag: "factor", Says: `"x": write a number such as 0.05`}, s.Faults[2])
	s = double(calculator.Answer{}, calculator.BadInput{Err: errors.New("length is 5 ft; above 6 ft")}).Sheet(nil)
	require.Equal(t, []calculator.Wrong{{Flag: "length", Says: "length is 5 ft; above 6 ft"}}, s.Faults)
}

func TestFields(t *testing.T) {
	want := []calculator.Field{{Name: "factor", Usage: "a number", Value: "2", Kind: calculator.Text}, {Name: "length", Usage: "a length", Value: "5 ft", Kind: calculator.Text}}
	all := double(calculator.Answer{}, nil).Fields()
	require.Equal(t, want, all[:2])
	require.Len(t, all, 4, "factor, length, units, wait")
}

func TestJSONKeepsQuantitiesWithoutLoss(t *testing.T) {
	odd := unit.Pressure(12345678.9012345)
	a := calculator.Answer{
		Results: []calculator.Result{{Name: "odd", Value: odd}, {Name: "share", Value: 1.0 / 3}},
		Steps:   []working.Step{{Name: "n", Symbol: "y", Equation: "x", Inputs: []working.Input{{Symbol: "x", Value: working.Number(2)}}, Value: working.Number(2), Source: "s"}},
		Tables:  []calculator.Table{{Name: "t", Header: []string{"a"}, Rows: [][]any{{3 * unit.Foot}, {true}}}},
	}
	_, out, _ := run(double(a, nil), "-json", "-explain")
	var d struct {
		Inputs  map[string]string
		Results []struct {
			Name  string
			Value json.RawMessage
		}
		Working []struct{ Equation string }
	}
	require.NoError(t, json.Unmarshal([]byte(out), &d))
	require.Equal(t, "5 ft", d.Inputs["length"])
	var p unit.Pressure
	require.NoError(t, json.Unmarshal(d.Results[0].Value, &p))
	require.Equal(t, odd, p)
	require.Len(t, d.Working, 1)
}

func TestPictureIsWrittenOrRefused(t *testing.T) {
	file := filepath.Join(t.TempDir(), "a.svg")
	code, _, errs := run(double(calculator.Answer{}, nil), "-picture", file)
	require.Equal(t, 1, code)
	require.Contains(t, errs, "no picture")
	a := calculator.Answer{Draw: func(w io.Writer) error { _, err := w.Write([]byte("<svg/>")); return err }}
	code, _, _ = run(double(a, nil), "-picture", file)
	require.Zero(t, code)
	b, err := os.ReadFile(file)
	require.NoError(t, err)
	require.Equal(t, "<svg/>", strings.TrimSpace(string(b)))
}

// The numbers of a column are for comparing; long inputs are for reading.
func TestColumnsAndInputsForPeople(t *testing.T) {
	a := calculator.Answer{Tables: []calculator.Table{{Name: "t", Header: []string{"seals", "pumped", "small"}, Rows: [][]any{
		{237.5 * unit.Inch, 30 * unit.Gallon, 0.003 * unit.Gallon}, {24 * unit.Foot, 2 * unit.Barrel, 2 * unit.Barrel}, {unit.Length(0), "none", unit.Volume(0)}, {},
	}}}}
	code, out, errs := run(double(a, nil), "-length", "1.2345678901234 in")
	require.Zero(t, code, errs)
	for _, want := range []string{"19.8 ft  0.714 bbl  0.00007 bbl\n", "24 ft    2 bbl      2 bbl\n", "0 ft     none       0 bbl\n", "length  1.2345679 in\n"} {
		require.Contains(t, out, want)
	}
	_, out, _ = run(double(a, nil), "-length", "1.2345678901234 in", "-json")
	require.Contains(t, out, `"length": "1.2345678901234 in"`, "machines get all of it")
}

// Water boils at 1.01325 bar absolute at 100 degC, which a gauge reads as nought.
func TestAbsolutePressuresStayAbsolute(t *testing.T) {
	for text, want := range map[string]unit.Pressure{"1.01325 bara": unit.Atmosphere, "0 barg": unit.Atmosphere, "101.325 kPa": unit.Atmosphere, "70.1 kPaa": 70.1 * unit.Kilopascal} {
		var p unit.Pressure
		flags := flag.NewFlagSet("", flag.ContinueOnError)
		calculator.AbsoluteVar(flags, &p, "vapour", unit.PSI, "")
		require.Equal(t, unit.PSI, p)
		require.NoError(t, calculator.Parse(flags, []string{"-vapour", text}))
		require.InEpsilon(t, float64(want), float64(p), 1e-15, text)
	}
}

// One unit for each quantity and purpose, in the whole of an output.
func TestUnits(t *testing.T) {
	a := calculator.Answer{
		Results: []calculator.Result{{Name: "bore", Value: 4 * unit.Inch, For: display.Diameter}, {Name: "stretch", Value: working.In(1*unit.Foot, unit.Inch, "in")},
			{Name: "band", Value: unit.Within(1000*unit.PSI, 0.1)}, {Name: "hot", Value: unit.Celsius(90)}},
		Steps:  []working.Step{{Name: "n", Symbol: "p", Equation: "r*g*h", Inputs: []working.Input{{Symbol: "r", Value: working.Of(1 * unit.GramPerCubicCentimetre)}, {Symbol: "h", Value: working.Of(100 * unit.Metre)}}, Value: working.Of(980665 * unit.Pascal), Source: "s"}},
		Tables: []calculator.Table{{Name: "t", Header: []string{"a", "b"}, Rows: [][]any{{1 * unit.Metre, 10 * unit.Millimetre}, {3 * unit.Kilometre, "|"}}, For: []display.Purpose{display.Depth, display.Diameter}}},
	}
	for _, c := range []struct {
		args []string
		want []string
	}{
		{nil, []string{"twice    10 ft", "bore     4 in", "stretch  12 in", "900 psi .. 1000 psi .. 1100 psi", "194 degF", "9842.5 ft", "length  5 ft"}},
		{[]string{"-units", "field"}, []string{"twice    10 ft", "length  5 ft"}},
		{[]string{"-units", "si", "-explain"}, []string{"twice    3.05 m", "bore     101.6 mm", "stretch  305 mm", "62.1 bar .. 68.9 bar .. 75.8 bar", "90 degC", "1 m", "3000 m", "10 mm", "length  1.524 m",
			"p = r*g*h = (1000 kg/m3)*g*(100 m) = 9.80665 bar"}},
		{[]string{"-length", "2 m"}, []string{"twice    4 m", "bore     101.6 mm", "length  2 m", "62.1 bar"}},
		{[]string{"-wait", "20m"}, []string{"twice    10 ft"}},
		{[]string{"-length", "20cm"}, []string{"twice    0.4 m", "bore     10.16 cm", "length  20 cm"}},
		{[]string{"-length", "3,000 ft", "-md"}, []string{"| twice | 6000 ft |", "| 3.28 ft | 0.394 in |", `| 9842.5 ft | \| |`, "| length | 3000 ft |", "> Caution"}},
		{[]string{"-length", "3 m", "-json"}, []string{`"units": "field"`, ` ft"`, `"length": "3 m"`}},
		{[]string{"-length", "3 m", "-json", "-units", "plan"}, []string{`"units": "plan"`, `"6 m"`, `"101.6 mm"`, `"90 degC"`}},
	} {
		code, out, errs := run(double(a, nil), c.args...)
		require.Zero(t, code, errs)
		for _, want := range c.want {
			require.Contains(t, out, want, c.args)
		}
	}
	code, _, errs := run(double(a, nil), "-units", "metric")
	require.Equal(t, 2, code)
	require.Contains(t, errs, "field, si, plan")
}

func TestUnitsOfASetWithoutThem(t *testing.T) {
	require.Equal(t, "field", calculator.UnitsOf(flag.NewFlagSet("", flag.ContinueOnError)).System.String())
}

func TestNotesAreInTheUnitsOfTheOutput(t *testing.T) {
	a := calculator.Answer{Notes: []string{"the packer holds 5000 psi at 9000 ft"}}
	for _, format := range []string{"-explain", "-md", "-json"} {
		_, out, _ := run(double(a, nil), format, "-units", "si")
		require.Contains(t, out, "the packer holds 344.7 bar at 2743 m", format)
		_, out, _ = run(double(a, nil), format)
		require.Contains(t, out, "the packer holds 5000 psi at 9000 ft", format)
	}
}
