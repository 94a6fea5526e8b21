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
	atmosphere := rows[[2]string{"pressure", "atm"}].factor
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
		for _, w := range spellings[table.quantity] {
			for _, text := range w.texts {
				key := [2]string{table.quantity, text}
				row, ok := rows[key]
				if !ok {
					t.Errorf("%s %q has no line in testdata/gnu-units.sh", table.quantity, text)
					continue
				}
				delete(rows, key)
				r, ok := table.read(text)
				require.True(t, ok, "%s %q", table.quantity, text)
				if d := math.Abs(r.factor/row.factor - 1); !(d <= 1e-15) {
					t.Errorf("%s %q = %.17g, GNU Units has %.17g (%s), %.1e apart", table.quantity, text, r.factor, row.factor, row.expression, d)
				}
				require.Contains(t, []float64{0, atmosphere}, r.offset, "%s %q", table.quantity, text)
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
	texts := []string{}
	for _, s := range temperatureUnits.symbols {
		texts = append(texts, s.text)
	}
	for _, w := range spellings[temperatureUnits.quantity] {
		texts = append(texts, w.texts...)
	}
	for _, text := range texts {
		row, ok := rows[[2]string{temperatureUnits.quantity, text}]
		require.True(t, ok, text)
		var got Temperature
		require.NoError(t, got.UnmarshalText([]byte("70 "+text)))
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

// A text says one thing: no spelling stands twice, is a symbol as well, or is
// refused as twofold, and each is in the letters that it is looked up in.
func TestSpellingsAreClosedAndDistinct(t *testing.T) {
	quantities := map[string]bool{}
	for _, table := range tables() {
		quantities[table.quantity] = true
		seen := map[string]bool{}
		for _, s := range table.symbols {
			seen[s.text] = true
		}
		for _, w := range spellings[table.quantity] {
			require.NotEqual(t, w.symbol == "", w.factor == 0, "%s %v: either a symbol or a factor", table.quantity, w.texts)
			for _, text := range w.texts {
				require.False(t, seen[text], "%s has %q twice", table.quantity, text)
				require.NotContains(t, twofold[table.quantity], text)
				require.Equal(t, text, plainLetters.Replace(text))
				seen[text] = true
			}
		}
		for text := range twofold[table.quantity] {
			require.False(t, seen[text], "%s %q", table.quantity, text)
			require.Equal(t, text, plainLetters.Replace(text))
		}
	}
	for quantity := range spellings {
		require.True(t, quantities[quantity], quantity)
	}
	for quantity := range twofold {
		require.True(t, quantities[quantity], quantity)
	}
	for _, symbol := range reachThousands {
		require.NotNil(t, ownerOf(symbol), symbol)
	}
}
