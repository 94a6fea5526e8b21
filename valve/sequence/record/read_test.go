package record

import (
	"fmt"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/fault"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

const small = `# a comment
time [min],step,tubing pressure [psi],tubing in [bbl],weight [klbf]
within,,2 bar,,
offset,,10,0.5,
0,run in hole,110,1.5,25
1,,9.9 bar,1.5,
2,,210,,25
3,,310,1.7,25
`

func TestReadUnitsOffsetsAndGaps(t *testing.T) {
	r, err := Read([]byte(small), demo(t))
	require.NoError(t, err)
	require.Equal(t, 4, r.Rows())
	require.Equal(t, []int{0}, r.Steps())
	require.InDelta(t, 100*float64(unit.PSI), r.rows[0].cells[0], 1e-6, "110 psi shown, 10 psi too much")
	require.InDelta(t, 9.9e5-10*float64(unit.PSI), r.rows[1].cells[0], 1e-6, "a unit of its own")
	require.InDelta(t, 1*float64(unit.Barrel), r.rows[0].cells[1], 1e-12)
	require.NotEqual(t, r.rows[2].cells[1], r.rows[2].cells[1], "not read")
	require.Equal(t, 180., r.rows[3].time)
	require.Equal(t, 2e5, r.columns[0].within)
	require.False(t, r.columns[1].known)

	// The same with semicolons and decimal commas, and clock times over midnight.
	q, err := Read([]byte("\ufeff"+strings.ReplaceAll(`time;step;tubing pressure [psi];tubing in [bbl];weight [klbf]
offset;;10;0,5;
23:59:00;run in hole;110;1,5;25
00:00:00;;9,9 bar;1,5;
00:01;;210;;25
00:02:00;;310;1,7;25
`, "\n", "\r\n")), demo(t))
	require.NoError(t, err)
	require.Equal(t, r.rows[1].cells[0], q.rows[1].cells[0])
	require.Equal(t, r.rows[3].cells[1], q.rows[3].cells[1])
	require.Equal(t, 180., q.rows[3].time)
}

// TestReadSaysEveryFaultWithItsLine: nothing is guessed, and all faults come at once.
func TestReadSaysEveryFaultWithItsLine(t *testing.T) {
	for text, want := range map[string][]string{
		"":                                      {"file: is empty"},
		"a,b\n":                                 {"line 1, a: is no column", "line 1: names no column \"time\""},
		"time [d],step,x in\n":                  {"line 1, time: has the unit \"d\"", "line 1, x in: is of no compartment that reaches the surface"},
		"time [s],step,tubng pressure [psi]\n":  {"did you mean tubing?"},
		"time [s],step,tubing pressure [bbl]\n": {"line 1, tubing pressure"},
		"time [s],step,tubing pressure [psi],tubing pressure [bar]\n":                   {"stands twice"},
		"time [s],step,tubing pressure [psi]\n0,,1\n":                                   {"line 2, step: is empty; the first row must name its step"},
		"time [s],step,tubing pressure [psi]\n0,run in hol,1\n":                         {"line 2, step: is \"run in hol\"", "did you mean \"run in hole\"?"},
		"time [s],step,tubing pressure [psi]\n0,2,1\n1,1,1\n":                           {"line 3, step: is \"1\"; the plan has it before"},
		"time [s],step,tubing pressure [psi]\n0,1,1\n-1,1,1\n2,1,x\n3,1,NaN\n4,1,1,9\n": {"line 3, time: is -1; it must not go back", "line 4, tubing pressure", "line 5, tubing pressure", "line 6: has 4 cells"},
		"time [s],step,tubing pressure\n0,1,1\n":                                        {"line 2, tubing pressure: is \"1\" and has no unit; give one in the head of the column, such as tubing pressure [psi]"},
		"time,step,tubing pressure [psi]\n5,1,1\n":                                      {"line 2, time: is \"5\"; must be such as 15:04:05 or 2026-03-01T15:04:05Z; a number needs a unit in the head: time [min]"},
		"time [s],step,tubing pressure [psi]\n0,1,1\n1,,1\n":                            {"has 2 rows; must have at least 4"},
		"time [s],step,tubing pressure [psi]\nwithin,,-1 psi\n0,1,1\n":                  {"line 2, tubing pressure: is -1 psi; must not be negative"},
		"time [s],step,tubing pressure [psi]\n0,1,1\n1,,1\n2,,1\n3,,1\nwithin,,1\n":     {"line 6: within must stand before the first row that was read"},
		"time [s],step,tubing pressure [psi]\n0,1,\"1\n":                                {"line "},
		"time [s],step,tubing pressure [psi]\n" + strings.Repeat("x,1,x\n", 30):         {"line 2, time: is \"x\"", "file: has", " faults more"},
		"time [s],step" + strings.Repeat(",tubing pressure [psi]", 300) + "\n":          {"there may be 200"},
		"time [s],step,open line Z pressure [psi]\n":                                    {"is of no compartment"},
		"time [s],step,tubing pressure [psi]\n0,1,1e999\n1,,1\n2,,1\n3,,1\n":            {"line 2, tubing pressure"},
		"time [s],step,tubing pressure [psi]\n":                                         {"has no rows"},
		"time [s],step,annulus A pressure [psi]\n0,1,1\n":                               {"annulus A"},
		"time [s],step,tubing pressure [psi]\n0,1,1 SG\n1,,1\n2,,1\n3,,1\n":             {"line 2, tubing pressure"},
		"time [s],step,tubing pressure [psi]\n0,99,1\n1,,1\n2,,1\n3,,1\n":               {"line 2, step: is \"99\""},
		"time [s],step,weight [psi]\n0,1,1\n":                                           {"line 1, weight"},
		"time [s],step,tubing pressure [psi],,\n0,1,1\n":                                {"is no column"},
		"# only a comment\n": {"file: is empty"},
		"time [s],step,tubing pressure [psi]\n0,1,1\n,,1\n2,,1\n3,,1\n":                                       {"line 3, time: is missing or can't be read"},
		"time [s],step,tubing pressure [psi]\n0,\"open sleeve A for its valve\",1\n1,open sleeve A,1\n2,,1\n": {"the plan has it before"},
	} {
		_, err := Read([]byte(text), demo(t))
		require.Error(t, err, text)
		for _, w := range want {
			require.ErrorContains(t, err, w, text)
		}
		require.NotEmpty(t, fault.List(err))
	}
}

// A record without a plan, of another plan, or with what the plan doesn't have.
func TestRecordsWithoutTheirPlanAreRefused(t *testing.T) {
	_, err := Read([]byte(small), nil)
	require.EqualError(t, err, "record: no plan")
	r, err := Read([]byte("time [min],step,tubing pressure [psi]\n0,5,1\n1,,1\n2,,1\n3,,1\n"), demo(t))
	require.NoError(t, err)
	_, err = Diagnose(t.Context(), nil, nil, r, Options{})
	require.EqualError(t, err, "record: no plan")
	_, err = Diagnose(t.Context(), demo(t), nil, nil, Options{})
	require.EqualError(t, err, "record: no record")
	other := demo(t)
	other.Steps = other.Steps[:2]
	_, err = Diagnose(t.Context(), other, nil, r, Options{})
	require.EqualError(t, err, "record: it was read with another plan")
	bare := &sequence.Plan{Well: sequence.Well{MD: 1000}, Compartments: []sequence.Compartment{{Name: "tubing", Surface: true, BottomMD: 1000}}, Steps: []sequence.Step{{Name: "run in hole"}}}
	_, err = Read([]byte(small), bare)
	require.ErrorContains(t, err, "line 2, weight: can't be held against a plan without a string")
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(small))
	f.Add([]byte("time,step,tubing in [gal]\n10:00,1,5\n10:01,,5\n"))
	f.Add([]byte("time [s];step;tubing pressure [bar]\n0;1;1,5\n1;;2\n2;;2\n3;5;2\n4;;900\n5;;0\n6;;0\n"))
	p := demo(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 4000 {
			return
		}
		r, err := Read(data, p)
		if (r == nil) == (err == nil) {
			t.Fatalf("Read: record %v, error %v", r, err)
		}
		if err != nil {
			for _, x := range fault.List(err) {
				if x.Path == "" {
					t.Fatalf("a fault with no place: %v", x)
				}
			}
			return
		}
		if n := r.Steps(); n[len(n)-1] > 6 {
			return // walked elsewhere; it takes long
		}
		d, err := Diagnose(t.Context(), p, nil, r, Options{})
		if err != nil {
			return
		}
		if d.Says == "" || len(d.Steps) == 0 {
			t.Fatalf("a diagnosis that says nothing: %+v", d)
		}
		for _, e := range append(d.Explains, d.RuledOut...) {
			if e.Share != e.Share {
				t.Fatalf("NaN: %+v", e)
			}
		}
		if strings.Contains(fmt.Sprintf("%+v", d), "NaN") {
			t.Fatalf("NaN: %+v", d)
		}
	})
}
