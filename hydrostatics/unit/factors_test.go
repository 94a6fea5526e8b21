package unit

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// gnuRow is a unit as GNU Units has it; the file names the version.
type gnuRow struct {
	expression string
	factor     float64
}

func gnuUnits(t *testing.T) map[[2]string]gnuRow {
	t.Helper()
	f, err := os.Open("testdata/gnu-units.csv")
	require.NoError(t, err)
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	lines, err := r.ReadAll()
	require.NoError(t, err)
	rows := map[[2]string]gnuRow{}
	for _, l := range lines[1:] {
		factor, err := strconv.ParseFloat(l[4], 64)
		require.NoError(t, err, "%v", l)
		key := [2]string{l[0], l[1]}
		require.NotContains(t, rows, key, "twice in the file")
		rows[key] = gnuRow{l[2], factor}
	}
	return rows
}

// Every symbol of every quantity against GNU Units. Its own products of
// factors round differently, so a few units in the last place are allowed.
func TestEveryFactorAgainstGNUUnits(t *testing.T) {
	rows := gnuUnits(t)
	for _, table := range tables() {
		if table == &temperatureUnits {
			continue // a scale, not a factor: see below
		}
		require.Equal(t, 1.0, table.symbols[0].factor, "%s: the first symbol is SI", table.quantity)
		for _, s := range table.symbols {
			key := [2]string{table.quantity, s.text}
			row, ok := rows[key]
			if !ok {
				t.Errorf("%s %q has no line in testdata/gnu-units.sh", table.quantity, s.text)
				continue
			}
			delete(rows, key)
			if d := math.Abs(s.factor/row.factor - 1); !(d <= 1e-15) {
				t.Errorf("%s %q = %.17g, GNU Units has %.17g (%s), %.1e apart", table.quantity, s.text, s.factor, row.factor, row.expression, d)
			}
		}
	}
	for key, row := range rows {
		if key[0] != temperatureUnits.quantity {
			t.Errorf("%v (%s) is in the file but no symbol", key, row.expression)
		}
	}
}

func TestTemperatureScalesAgainstGNUUnits(t *testing.T) {
	rows := gnuUnits(t)
	for _, s := range temperatureUnits.symbols {
		row, ok := rows[[2]string{temperatureUnits.quantity, s.text}]
		require.True(t, ok, s.text)
		var got Temperature
		require.NoError(t, got.UnmarshalText([]byte("70 "+s.text)))
		require.InEpsilon(t, row.factor, got.Kelvin(), 1e-15, row.expression)
	}
}

// What the trade's units are printed in must be symbols that parse.
func TestTradeUnitsAreSymbols(t *testing.T) {
	for _, table := range tables() {
		for i, u := range table.trade {
			found := false
			for _, s := range table.symbols {
				found = found || s.text == u.text && s.factor == u.factor
			}
			require.True(t, found, "%s prints in %q", table.quantity, u.text)
			if i > 0 {
				require.LessOrEqual(t, u.from, table.trade[i-1].from, "%s: the largest threshold stands first", table.quantity)
			}
		}
		seen := map[string]bool{}
		for _, s := range table.symbols {
			require.False(t, seen[s.text], "%s has %q twice", table.quantity, s.text)
			seen[s.text] = true
			require.False(t, strings.ContainsAny(s.text, " ,;="), "%s %q", table.quantity, s.text)
		}
	}
}
