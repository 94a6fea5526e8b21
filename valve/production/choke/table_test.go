package choke_test

import (
	"fmt"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/choke"
	"github.com/stretchr/testify/require"
)

const positions = `# invented choke of eight openings
position,travel,coefficient
shut,0,0 Cv
1,0.1,1.2 Cv
2,0.25,3 Cv
3,0.5,7.5 Cv
open,1,24 Cv
`

func ExampleReadTable() {
	table, err := choke.ReadTable(strings.NewReader(positions))
	fmt.Println(len(table), "positions,", err)
	i := table.Least(4.034 * unit.Cv)
	fmt.Println("least opening for 4.034 Cv:", table[i].Name)
	curve, _ := table.Curve()
	c, _ := curve.At(0.375)
	fmt.Println("halfway between 2 and 3:", c.Rounded(4))
	_, err = curve.At(1.2)
	fmt.Println(err)
	// Output:
	// 5 positions, <nil>
	// least opening for 4.034 Cv: 3
	// halfway between 2 and 3: 5.25 Cv
	// choke: outside the table: travel is 1.2; the table runs from 0 to 1
}

func TestReadTableByOpening(t *testing.T) {
	table, err := choke.ReadTable(strings.NewReader("position,travel,opening,discharge\nshut,0,0 in2,0.95\nopen,1,0.1117 in2,0.95\n"))
	require.NoError(t, err)
	require.InDelta(t, 4.03, table[1].Coefficient.In(unit.Cv), 0.01)
	require.True(t, table[0].Shut())
	require.Equal(t, 1, table.Index("open"))
	require.Equal(t, -1, table.Index("half"))
	require.Equal(t, -1, table.Least(5*unit.Cv))
}

func TestReadTableFaults(t *testing.T) {
	for text, want := range map[string]string{
		"":      "table is empty",
		"a,b\n": "must be position,travel,coefficient",
		"position,travel,coefficient\nx,0,5\ny,q,2 Cv\n":        "row 1",
		"position,travel,coefficient\nx,0,5 Cv\nx,0.1,6 Cv\n":   "like position 1",
		"position,travel,coefficient\nx,0.5,5 Cv\ny,0.1,6 Cv\n": "must be above the 0.5",
		"position,travel,coefficient\nx,0,5 Cv\ny,0.1,4 Cv\n":   "must be at least the 5 Cv before it",
		"position,travel,coefficient\nx,0,-5 Cv\n":              "must be at least 0",
		"position,travel,coefficient\nx,1.5,5 Cv\n":             "must be from 0 to 1",
		"position,travel,coefficient\n":                         "table is empty",
		"position,travel,opening,discharge\nx,0,1 in2,7\n":      "discharge: is 7",
	} {
		_, err := choke.ReadTable(strings.NewReader(text))
		require.ErrorContains(t, err, want, "%q", text)
	}
	_, err := choke.Table{{Name: "only", Coefficient: 1}}.Curve()
	require.ErrorContains(t, err, "two or more for a curve")
}

func FuzzReadTable(f *testing.F) {
	f.Add(positions)
	f.Add("position,travel,opening,discharge\nshut,0,0 in2,0.95\n")
	f.Fuzz(func(t *testing.T, text string) {
		table, err := choke.ReadTable(strings.NewReader(text))
		if err == nil {
			require.NoError(t, table.Validate())
		}
	})
}
