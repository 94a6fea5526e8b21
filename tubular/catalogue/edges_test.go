package catalogue_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/catalogue"
	"github.com/stretchr/testify/require"
)

// Parts of a tally are numbered from one.
func TestPartsOfATallyThatAreWrong(t *testing.T) {
	good := catalogue.Joints{OD: 3.5 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Length: 100}
	bad := good
	bad.Length = unit.Length(math.NaN())
	_, err := catalogue.Tally{good, bad}.MarshalText()
	require.ErrorContains(t, err, "part 2")
	require.NotContains(t, err.Error(), "part 1")
	c, err := catalogue.Standard()
	require.NoError(t, err)
	g, err := catalogue.FindGrade("L80")
	require.NoError(t, err)
	_, err = c.Sections(catalogue.Tally{good, bad}, g)
	require.ErrorContains(t, err, "part 2")
	require.NotContains(t, err.Error(), "part 1")
	bad = good
	bad.Weight = 1
	_, err = c.Sections(catalogue.Tally{good, good, bad}, g)
	require.ErrorContains(t, err, "part 3")
}

// Of a table's columns the last three may be empty, and are read where they aren't.
func TestColumnsThatMayBeEmpty(t *testing.T) {
	c, err := catalogue.Standard()
	require.NoError(t, err)
	coupled := 0
	for _, e := range c.Entries() {
		if e.Coupling > e.OD {
			coupled++
		}
	}
	require.Greater(t, coupled, 10)
	text, err := os.ReadFile("pipes.csv")
	require.NoError(t, err)
	lines := strings.Split(string(text), "\n")
	fields := strings.Split(lines[1], ",")
	for column, ok := range map[int]bool{6: false, 7: true, 8: true, 9: true} {
		row := append([]string(nil), fields...)
		row[column] = ""
		_, err := catalogue.Read(strings.NewReader(lines[0] + "\n" + strings.Join(row, ",") + "\n"))
		require.Equal(t, ok, err == nil, "column %d: %v", column, err)
	}
	_, err = catalogue.Pipe("3.5 in of 9.3 lb/ft L80")
	require.ErrorContains(t, err, "3.5 in of 9.3 lb/ft L80")
}
