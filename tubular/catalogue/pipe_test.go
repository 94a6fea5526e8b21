package catalogue_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/catalogue"
)

func TestPipeByItsText(t *testing.T) {
	c, err := catalogue.Standard()
	require.NoError(t, err)
	e, err := c.Find(2.875*unit.Inch, 6.5*unit.PoundPerFoot)
	require.NoError(t, err)
	g, err := catalogue.FindGrade("L80")
	require.NoError(t, err)
	for _, text := range []string{"2-7/8 in 6.5 lb/ft L80", "2.875in, 6.5lb/ft, l-80", " 2-7/8  in  6.5   lb/ft L80 ", "73.025 mm 6.5 lb/ft L80"} {
		p, err := catalogue.Pipe(text)
		require.NoError(t, err, text)
		require.Equal(t, e.Pipe(g), p, text)
	}
	for text, want := range map[string]string{
		"":                        "must be size, weight and grade",
		"2-7/8 in L80":            "must be size, weight and grade",
		"2-7/8 6.5 L80":           "must be size, weight and grade",
		"2-7/8 in 6.6 lb/ft L80":  "not in the catalogue: there are",
		"2-7/8 in 6.5 lb/ft L800": `grade "L800"`,
		"3 in 6.5 lb/ft Z9":       `grade "Z9"`,
	} {
		_, err := catalogue.Pipe(text)
		require.ErrorContains(t, err, want, text)
	}
	_, err = catalogue.Pipe("3 in 6.5 lb/ft Z9")
	require.ErrorIs(t, err, catalogue.ErrNotFound)
	require.ErrorContains(t, err, "OD 3 in", "both faults at once")
}

// The same wall from the table (API 5CT, 2-7/8 in 6.5 lb/ft: wall 0.217 in, ID
// 2.441 in) and from the size and wall.
func TestPipeOfWall(t *testing.T) {
	p, err := catalogue.Pipe("2-7/8 in 6.5 lb/ft L80")
	require.NoError(t, err)
	w := tubular.PipeOfWall(2.875*unit.Inch, 0.217*unit.Inch, p.Material)
	require.InDelta(t, p.ID.In(unit.Inch), w.ID.In(unit.Inch), 1e-12)
	require.NoError(t, w.Validate())
	require.Error(t, tubular.PipeOfWall(2*unit.Inch, unit.Inch, p.Material).Validate(), "no bore")
}

func ExamplePipe() {
	p, err := catalogue.Pipe("2-7/8 in 6.5 lb/ft L80")
	fmt.Println(p.ID, p.Capacity().Rounded(4), p.BodyYield().Rounded(4), err)
	// Output: 2.441 in 4.68 in2 144962 lbf <nil>
}

func ExampleCatalogue_Pipe() {
	c, err := catalogue.Standard()
	if err != nil {
		fmt.Println(err)
		return
	}
	_, err = c.Pipe("2-7/8 in 9.9 lb/ft L80")
	fmt.Println(err)
	// Output: catalogue: 2.875 in at 9.9 lb/ft: not in the catalogue: there are 6.4 lb/ft, 6.5 lb/ft, 7.8 lb/ft, 7.9 lb/ft, 8.6 lb/ft, 8.7 lb/ft, 9.35 lb/ft, 9.45 lb/ft, 10.5 lb/ft, 11.5 lb/ft
}

func ExampleGrades() {
	for _, g := range catalogue.Grades()[4:6] {
		fmt.Println(g.Name, g.Yield.In(unit.KSI), "to", g.GreatestYield.In(unit.KSI), "ksi, tensile", g.Tensile.In(unit.KSI))
	}
	// Output:
	// N80 80 to 110 ksi, tensile 100
	// L80 80 to 95 ksi, tensile 95
}
