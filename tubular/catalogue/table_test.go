package catalogue

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// The grades against a table kept apart, as text. Source: tensile requirements of
// API Spec 5CT in ksi and of ISO 11960 in MPa, both from memory: two prints of one
// table that must agree to their last digit.
func TestGradesAreThePrintedTable(t *testing.T) {
	f, err := os.Open("testdata/grades.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	grades := Grades()
	require.Len(t, grades, len(rows)-1)
	for i, row := range rows[1:] {
		g := grades[i]
		ksi := func(p unit.Pressure) string { return strconv.FormatFloat(p.In(unit.KSI), 'g', 12, 64) + " ksi" }
		require.Equal(t, row[:4], []string{g.Name, ksi(g.Yield), ksi(g.GreatestYield), ksi(g.Tensile)})
		for k, p := range []unit.Pressure{g.Yield, g.GreatestYield, g.Tensile} {
			printed, err := strconv.ParseFloat(row[4+k], 64)
			require.NoError(t, err)
			require.InDelta(t, printed, p.In(unit.Megapascal), 0.75, "%s: the standard rounds up where it suits it", g.Name)
			require.InDelta(t, p.In(unit.KSI), math.Round(p.In(unit.KSI)), 1e-12)
		}
	}
}

// Every figure of the catalogue has the digits that the trade prints: sizes whole
// thousandths of an inch, weights whole hundredths of a pound per foot; and the
// bore is OD less two walls to the printed digit.
func TestCataloguePrintedDigits(t *testing.T) {
	rows, err := csv.NewReader(strings.NewReader(pipes)).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 160)
	for _, row := range rows[1:] {
		for i, digits := range map[int]int{1: 3, 2: 2, 4: 3, 5: 3, 6: 3, 7: 3, 8: 3, 9: 3} {
			number, _, _ := strings.Cut(row[i], " ")
			_, decimals, _ := strings.Cut(number, ".")
			require.LessOrEqual(t, len(decimals), digits, "%s of %v", rows[0][i], row)
		}
	}
	c, err := Standard()
	require.NoError(t, err)
	for _, e := range c.Entries() {
		wall, id := e.Wall.In(unit.Inch), e.ID.In(unit.Inch)
		require.InDelta(t, e.OD.In(unit.Inch)-2*wall, id, 0.00051, e.String())
	}
}

// The drift mandrel on and beyond each size of its rule. Source: API Spec 5CT, drift mandrel, from memory.
func TestDriftSizes(t *testing.T) {
	const in, slack = unit.Inch, 0.001
	for _, c := range []struct {
		kind  Kind
		od    float64
		under string
	}{
		{Tubing, 1.05, "3/32"}, {Tubing, 2.875, "3/32"}, {Tubing, 2.875 + 0.9999*slack, "3/32"}, {Tubing, 2.875 + 1.0001*slack, "1/8"}, {Tubing, 2.876004, "1/8"}, {Tubing, 20, "1/8"},
		{Line, 2.8759999, "3/32"}, {Line, 2.8760001, "1/8"},
		{Casing, 2, "1/8"}, {Casing, 9.625 - 1.0001*slack, "1/8"}, {Casing, 9.6239999, "1/8"}, {Casing, 9.6240001, "5/32"}, {Casing, 9.625, "5/32"},
		{Casing, 13.375, "5/32"}, {Casing, 13.3759999, "5/32"}, {Casing, 13.3760001, "3/16"}, {Casing, 20, "3/16"},
	} {
		var a, b float64
		_, err := fmt.Sscanf(c.under, "%g/%g", &a, &b)
		require.NoError(t, err)
		require.InDelta(t, a/b, (unit.Length(19*in) - Drift(c.kind, unit.Length(c.od)*in, 19*in)).In(in), 1e-12, "%+v", c)
	}
}

// The mill's test on both sides of its limits. Source: API Spec 5CT, 10.12, from memory.
func TestStandardTestLimits(t *testing.T) {
	pipe := func(od, wall float64) Entry {
		return Entry{OD: unit.Length(od) * unit.Inch, ID: unit.Length(od-2*wall) * unit.Inch, Wall: unit.Length(wall) * unit.Inch}
	}
	yield := func(ksi float64) Grade {
		return Grade{Yield: unit.Pressure(ksi) * unit.KSI, Tensile: unit.Pressure(ksi) * unit.KSI * 2}
	}
	psi := func(e Entry, g Grade) float64 { return e.StandardTest(g).In(unit.PSI) }
	require.InDelta(t, 10000, psi(pipe(2, 0.5), yield(60)), 1e-9, "most for a strong grade")
	require.InDelta(t, 3000, psi(pipe(2, 0.5), yield(60*(1-1e-9))), 1e-9, "most for a weak one")
	// 2·0.8·50 ksi·t/D just under and over what rounds to the next hundred
	wall := 2050.0 / (2 * 0.8 * 50000) * 8
	require.InDelta(t, 2000, psi(pipe(8, wall*(1-4e-7)), yield(50)), 1e-9)
	require.InDelta(t, 2100, psi(pipe(8, wall*(1+4e-7)), yield(50)), 1e-9)
	// above 9-5/8 in the weak grades are tested at 0.6
	wall = 1450.0 / (2 * 0.6 * 50000) * 12
	require.InDelta(t, 1400, psi(pipe(12, wall*(1-4e-7)), yield(50)), 1e-9)
	require.InDelta(t, 1500, psi(pipe(12, wall*(1+4e-7)), yield(50)), 1e-9)
	border := 9.625 + 0.0006
	require.InDelta(t, 1700, psi(pipe(border-1e-6, 0.2), yield(50)), 1e-9)
	require.InDelta(t, 1200, psi(pipe(border+1e-6, 0.2), yield(50)), 1e-9)
	for od, height := range map[float64]float64{3.5: 0.0556, 3.500599: 0.0556, 3.500601: 0.07125, 4: 0.07125} {
		require.InDelta(t, height, pipe(od, 0.2).ThreadHeight().In(unit.Inch), 1e-15, "%v in", od)
	}
}

// Two prints of one pipe: the same within a printed digit, another beyond it.
func TestSameSize(t *testing.T) {
	e := Entry{OD: 3.5 * unit.Inch, Weight: 9.2 * unit.PoundPerFoot}
	for od, want := range map[float64]bool{3.5: true, 3.5005999: true, 3.4994001: true, 3.5006001: false, 3.4993999: false} {
		require.Equal(t, want, same(e, unit.Length(od)*unit.Inch, e.Weight), "%v in", od)
	}
	for weight, want := range map[float64]bool{9.2039999999: true, 9.2040000001: false, 9.1960000001: true, 9.1959999999: false} {
		require.Equal(t, want, same(e, e.OD, unit.WeightPerLength(weight)*unit.PoundPerFoot), "%v lb/ft", weight)
	}
	const digits = 1e-9
	for od, want := range map[float64]bool{3.5006 - digits: true, 3.5006 + digits: false} {
		require.Equal(t, want, sameSize(unit.Length(od)*unit.Inch, 3.5*unit.Inch), "%.10f in", od)
	}
}

// Each limit of an entry: on it no fault, just beyond it one that names the field.
func TestEntryLimits(t *testing.T) {
	ok := Entry{Kind: Tubing, OD: 3.5 * unit.Inch, Wall: 0.25 * unit.Inch, ID: 3 * unit.Inch, Drift: 3 * unit.Inch, Finish: PlainEnd, Status: User}
	steel := ok.Pipe(Grades()[0]).PlainEndWeight()
	ok.Weight = steel
	ok.Coupling, ok.ShortThread, ok.LongThread = 10.4999999*unit.Inch, 10.4999999*unit.Inch, 10.4999999*unit.Inch
	require.NoError(t, ok.Validate())
	for name, change := range map[string]func(*Entry){
		"lightest": func(e *Entry) { e.Weight = 0.985 * steel }, "heaviest": func(e *Entry) { e.Weight = 1.10 * steel },
		"no coupling": func(e *Entry) { e.Coupling, e.ShortThread, e.LongThread = 0, 0, 0 },
		"bore":        func(e *Entry) { e.ID, e.Drift = 3.00059999*unit.Inch, 3*unit.Inch },
	} {
		e := ok
		change(&e)
		require.NoError(t, e.Validate(), name)
	}
	for text, change := range map[string]func(*Entry){
		"ID: is 3.00060001 in; must be 3 in, the OD of 3.5 in less two walls of 0.25 in": func(e *Entry) { e.ID = 3.00060001 * unit.Inch },
		"Drift: is 0":             func(e *Entry) { e.Drift = 0 },
		"Drift: is 3":             func(e *Entry) { e.Drift = 3.000001 * unit.Inch },
		"0.985":                   func(e *Entry) { e.Weight = 0.985 * (1 - 1e-9) * steel },
		"of the plain-end weight": func(e *Entry) { e.Weight = 1.10 * (1 + 1e-9) * steel },
		"Coupling: is 3.5 in":     func(e *Entry) { e.Coupling = e.OD },
		"Coupling: is 10.5":       func(e *Entry) { e.Coupling = 3 * e.OD },
		"ShortThread: is 10.5":    func(e *Entry) { e.ShortThread = 3 * e.OD },
		"LongThread: is -1":       func(e *Entry) { e.LongThread = -1 * unit.Inch },
	} {
		e := ok
		change(&e)
		require.ErrorContains(t, e.Validate(), text)
	}
}
