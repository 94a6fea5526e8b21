package fluid

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
)

// printedTable reads a table kept apart from the code, so that a slip in either
// shows. The brine table is what was collected from the printed page; the others
// are copies of the tables in the code, which name their prints: they catch slips
// and are no evidence from outside.
func printedTable(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open("testdata/coefficients/" + name)
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	return rows[1:]
}

func numbers(t *testing.T, row []string) []float64 {
	t.Helper()
	var x []float64
	for _, s := range row {
		v, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		x = append(x, v)
	}
	return x
}

func TestGibbsTable(t *testing.T) {
	rows := printedTable(t, "seawater-gibbs.csv")
	require.Len(t, gibbsTerms, len(rows))
	for i, row := range rows {
		g := gibbsTerms[i]
		require.Equal(t, numbers(t, row), []float64{float64(g.i), float64(g.j), float64(g.k), g.n})
	}
}

func TestRegion1Table(t *testing.T) {
	rows := printedTable(t, "water-region1.csv")
	require.Len(t, region1Terms, len(rows))
	for i, row := range rows {
		r := region1Terms[i]
		require.Equal(t, numbers(t, row), []float64{float64(r.i), float64(r.j), r.n})
	}
	require.Equal(t, []float64{461.526, 16.53e6, 1386, 7.1, 1.222, 273.15, 623.15, 100e6, 611.2126},
		[]float64{region1Gas, region1Pressure, region1Temperature, region1Pi, region1Tau, waterTLeast, waterTGreatest, waterPGreatest, waterPTriple})
}

func TestHelmholtzTables(t *testing.T) {
	for name, h := range map[string]*helmholtz{"nitrogen": &nitrogen, "methane": &methane} {
		rows := printedTable(t, name+"-terms.csv")
		require.Len(t, h.terms, len(rows))
		for i, row := range rows {
			r := h.terms[i]
			require.Equal(t, numbers(t, row), []float64{r.n, float64(r.d), float64(r.l), float64(r.eighths) / 8}, "%s %d", name, i)
		}
		rows = printedTable(t, name+"-bells.csv")
		require.Len(t, h.bells, len(rows))
		for i, row := range rows {
			r := h.bells[i]
			require.Equal(t, numbers(t, row), []float64{r.n, r.phi, r.beta, r.gamma, float64(r.d), float64(r.t)}, "%s %d", name, i)
		}
	}
	require.Equal(t, []float64{0.02801348, 8.31451, 126.192, 313.3}, []float64{nitrogen.molarMass, nitrogen.gasConstant, nitrogen.tCritical, nitrogen.rhoCritical})
	require.Equal(t, limits{1, 200e6, 150, 600}, nitrogen.limits)
	require.Equal(t, []float64{0.0160428, 8.31451, 190.564, 162.66}, []float64{methane.molarMass, methane.gasConstant, methane.tCritical, methane.rhoCritical})
	require.Equal(t, limits{1, 200e6, 200, 600}, methane.limits)
	require.Equal(t, 8.31446261815324, gasConstant, "SI Brochure, 9th ed.")
}

func TestSolutionTable(t *testing.T) {
	for _, row := range printedTable(t, "solution.csv") {
		var s Salt
		require.NoError(t, s.UnmarshalText([]byte(row[0])))
		l, ok := s.laliberte()
		require.True(t, ok)
		require.Equal(t, numbers(t, row[1:]), []float64{l.c0, l.c1, l.c2, l.c3, l.c4, l.most, l.least, l.greatest}, row[0])
		require.Less(t, l.least, l.greatest)
	}
}

func TestBrineTable(t *testing.T) {
	for _, row := range printedTable(t, "brine.csv") {
		var s System
		require.NoError(t, s.UnmarshalText([]byte(row[1])))
		x := numbers(t, row[2:])
		density := unit.Density(x[0]) * unit.PoundPerGallon
		of := Bridges
		if row[0] == "Krook-Boyce" {
			of = KrookBoyce
		}
		b, err := of(s, density)
		require.NoError(t, err)
		require.InEpsilon(t, x[1], b.Expansion.In(unit.PerFahrenheit), 1e-12, row)
		require.InEpsilon(t, x[2], b.Compression.In(unit.PerPSI), 1e-12, row)
		// held beyond the ends by what the print is rounded to, and no further
		edge := 0.05
		if row[0] == "Krook-Boyce" {
			edge = 0.05 * x[0]
			for _, sign := range []float64{-1, 1} {
				_, err = of(s, unit.Density(x[0]+sign*edge*(1-1e-8))*unit.PoundPerGallon)
				require.NoError(t, err)
				_, err = of(s, unit.Density(x[0]+sign*edge*(1+1e-8))*unit.PoundPerGallon)
				require.ErrorIs(t, err, ErrOutsideRange)
			}
		}
	}
	for s, ends := range map[System][2]float64{SystemNaCl: {9, 9.5}, SystemNaBr: {12, 12}, SystemCaCl2: {9.5, 11}, SystemCaCl2CaBr2: {12, 14.5}, SystemZnBr2CaBr2CaCl2: {15.5, 19}} {
		for i, sign := range []float64{-1, 1} {
			_, err := Bridges(s, unit.Density(ends[i]+sign*(0.05-1e-9))*unit.PoundPerGallon)
			require.NoError(t, err)
			_, err = Bridges(s, unit.Density(ends[i]+sign*(0.05+1e-9))*unit.PoundPerGallon)
			require.ErrorIs(t, err, ErrOutsideRange)
		}
	}
	// straight between two rows, by hand: CaCl2 10.2 lb/gal lies two fifths from 10.0 to 10.5
	b, err := Bridges(SystemCaCl2, 10.2*unit.PoundPerGallon)
	require.NoError(t, err)
	require.InEpsilon(t, 2.774e-4, b.Expansion.In(unit.PerFahrenheit), 1e-12)
	require.InEpsilon(t, 1.8304e-6, b.Compression.In(unit.PerPSI), 1e-12)
	for _, bad := range []System{0, 8, -1} {
		_, err := bad.MarshalText()
		require.Error(t, err)
		require.Contains(t, bad.String(), "brine system")
	}
}

// The points of NaCl, MgCl2 and CaCl2 come back through the interpolation.
func TestCrystallisationTable(t *testing.T) {
	for _, row := range printedTable(t, "crystallisation.csv") {
		var s Salt
		require.NoError(t, s.UnmarshalText([]byte(row[0])))
		x := numbers(t, row[2:])
		found := false
		for _, b := range s.branches() {
			for i, w := range b.fractions {
				if b.solid.String() == row[1] && w == x[0] {
					found = true
					require.Equal(t, x[1], b.celsius[i], row)
					at, err := b.at(w)
					require.NoError(t, err)
					require.InDelta(t, x[1], at, 1e-12, row)
				}
			}
		}
		require.True(t, found, row)
	}
}

// Pure components. Source: the reference equations of state named in the code;
// here in g/mol, MPa and K.
func TestPureComponents(t *testing.T) {
	for name, c := range map[string]struct {
		got          pure
		molar, mp, k float64
	}{
		"methane": {pureMethane, 16.0428, 4.5992, 190.564}, "ethane": {pureEthane, 30.0690, 4.8722, 305.322}, "propane": {purePropane, 44.0956, 4.2512, 369.89},
		"nitrogen": {pureNitrogen, 28.0134, 3.3958, 126.192}, "carbon dioxide": {pureCarbonDioxid, 44.0095, 7.3773, 304.1282}, "hydrogen sulphide": {pureHydrogenSulf, 34.0809, 9, 373.1},
	} {
		require.InEpsilonSlice(t, []float64{c.molar, c.mp, c.k}, []float64{c.got.molarMass * 1000, c.got.pressure / 1e6, c.got.temperature}, 1e-14, name)
	}
	require.InEpsilon(t, 28.9625, airMolarMass*1000, 1e-14)
	require.Equal(t, 9.80665, standardGravity)
	require.True(t, math.Abs(StandardSalinity-0.03516504) == 0)
}
