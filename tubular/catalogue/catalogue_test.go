package catalogue_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/catalogue"
	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

func standard(t testing.TB) catalogue.Catalogue {
	t.Helper()
	c, err := catalogue.Standard()
	require.NoError(t, err)
	return c
}

func TestStandardSizes(t *testing.T) {
	c := standard(t)
	// Sizes of API Spec 5CT, tubing and casing, from memory but for those in the
	// published rows.
	want := []float64{1.05, 1.315, 1.66, 1.9, 2.063, 2.375, 2.875, 3.5, 4, 4.5, 5, 5.5, 6.625, 7, 7.625, 7.75, 8.625, 9.625, 10.75, 11.75, 13.375, 16, 18.625, 20}
	var got []float64
	for _, od := range c.Sizes() {
		got = append(got, od.In(unit.Inch))
	}
	require.InDeltaSlice(t, want, got, 1e-9)
	for _, e := range c.Entries() {
		require.NoError(t, e.Validate(), e.String())
	}
}

// TestEveryRowStands makes sure that each row is right by what the trade prints
// it with: drift is the bore less 3/32 in up to 2-7/8 in, 1/8 in to 8-5/8 in,
// 5/32 in to 13-3/8 in and 3/16 in above (API Spec 5CT, drift mandrels; tubing 1/8 in above 2-7/8 in).
func TestEveryRowStands(t *testing.T) {
	for _, e := range standard(t).Entries() {
		od := e.OD.In(unit.Inch)
		less := 0.125
		switch {
		case od <= 2.875:
			less = 3.0 / 32
		case od >= 16:
			less = 3.0 / 16
		case od >= 9.625:
			less = 5.0 / 32
		}
		require.InDelta(t, less, (e.ID - e.Drift).In(unit.Inch), 0.00051, e.String())
		require.InDelta(t, e.Drift.In(unit.Inch), catalogue.Drift(e.Kind, e.OD, e.ID).In(unit.Inch), 0.00051, e.String())
		g, err := catalogue.FindGrade("L80")
		require.NoError(t, err)
		_, err = e.Pipe(g).Ratings()
		require.NoError(t, err, e.String())
	}
}

func TestFind(t *testing.T) {
	c := standard(t)
	e, err := c.Find(2.875*unit.Inch, 6.5*unit.PoundPerFoot)
	require.NoError(t, err)
	require.Equal(t, catalogue.ExternalUpset, e.Finish)
	require.InDelta(t, 2.441, e.ID.In(unit.Inch), 1e-9)

	// Sizes as metric tables call them; ISO 11960:2014, table C.1 and others, has two digits
	// (from memory), offices one.
	for called, od := range map[unit.Length]unit.Length{244.48: 9.625, 244.5: 9.625, 244.4: 0, 244.6: 0, 298.5: 11.75, 177.8: 7, 73: 2.875, 60.3: 2.375, 114.3: 4.5} {
		found := c.OfSize(called * unit.Millimetre)
		require.Equal(t, od > 0, len(found) > 0, "%v mm", float64(called))
		if od > 0 {
			require.Equal(t, od*unit.Inch, found[0].OD)
			same, err := c.Find(called*unit.Millimetre, found[0].Weight)
			require.NoError(t, err)
			require.Equal(t, found[0], same)
		}
	}

	// And weights: 53.5 lb/ft are 79.617 kg/m, by the definitions of pound and foot.
	casing, err := c.Find(244.5*unit.Millimetre, 79.6*unit.KilogramPerMetre)
	require.NoError(t, err)
	require.Equal(t, 53.5*unit.PoundPerFoot, casing.Weight)
	_, err = c.Find(244.5*unit.Millimetre, 79.5*unit.KilogramPerMetre)
	require.ErrorContains(t, err, "9.625 in at ")

	_, err = c.Find(2.875*unit.Inch, 7*unit.PoundPerFoot)
	require.ErrorIs(t, err, catalogue.ErrNotFound)
	var missing *catalogue.NotFoundError
	require.True(t, errors.As(err, &missing))
	require.Len(t, missing.Have, 10)
	require.ErrorContains(t, err, "6.4 lb/ft, 6.5 lb/ft, 7.8 lb/ft")

	_, err = c.Find(3*unit.Inch, 7*unit.PoundPerFoot)
	require.ErrorIs(t, err, catalogue.ErrNotFound)
	require.ErrorContains(t, err, "2.875 in, 3.5 in")
}

func TestGrades(t *testing.T) {
	for _, name := range []string{"L80", "L-80", " l80 "} {
		g, err := catalogue.FindGrade(name)
		require.NoError(t, err)
		require.Equal(t, "L80", g.Name)
		require.Equal(t, 80*unit.KSI, g.Material().Yield)
	}
	_, err := catalogue.FindGrade("Z99")
	require.ErrorIs(t, err, catalogue.ErrNotFound)
	require.ErrorContains(t, err, "H40, J55, K55, M65, N80, L80, C90, R95, C95, T95, C110, P110, Q125")
	for _, g := range catalogue.Grades() {
		require.Less(t, g.Yield, g.GreatestYield, g.Name)
		require.Less(t, g.Yield, g.Tensile, g.Name)
		text, err := g.MarshalText()
		require.NoError(t, err)
		var back catalogue.Grade
		require.NoError(t, back.UnmarshalText(text))
		require.Empty(t, cmp.Diff(g, back))
	}
	_, err = catalogue.Grade{}.MarshalText()
	require.Error(t, err)
}

func TestWith(t *testing.T) {
	c := standard(t)
	own := catalogue.Entry{Kind: catalogue.Tubing, OD: 3.5 * unit.Inch, Weight: 11 * unit.PoundPerFoot, Finish: catalogue.PlainEnd,
		Wall: 0.31 * unit.Inch, ID: 2.88 * unit.Inch, Drift: 2.755 * unit.Inch, Status: catalogue.User}
	more, err := c.With(own)
	require.NoError(t, err)
	got, err := more.Find(own.OD, own.Weight)
	require.NoError(t, err)
	require.Empty(t, cmp.Diff(own, got))
	_, err = c.Find(own.OD, own.Weight)
	require.ErrorIs(t, err, catalogue.ErrNotFound, "the first catalogue must not change")

	_, err = more.With(own)
	require.ErrorIs(t, err, catalogue.ErrDuplicate)

	wrong := own
	wrong.Kind, wrong.Finish, wrong.Status = "", "welded", "hearsay"
	wrong.ID, wrong.Drift, wrong.Weight, wrong.Coupling, wrong.ShortThread = 2.9*unit.Inch, 3*unit.Inch, 20*unit.PoundPerFoot, 3*unit.Inch, -1
	_, err = c.With(wrong)
	for _, field := range []string{"Kind", "Finish", "Status", "entries[0].ID: is 2.9 in", "Drift: is 3 in", "Weight: is 20 lb/ft", "Coupling", "ShortThread"} {
		require.ErrorContains(t, err, field)
	}
	_, err = c.With(catalogue.Entry{})
	require.ErrorContains(t, err, "entries[0].OD: is")
}

func TestReadFaults(t *testing.T) {
	const head = "kind,od,weight,finish,wall,id,drift,coupling,short_thread,long_thread,status,source\n"
	for text, want := range map[string]string{
		"":                          "EOF",
		"od\n":                      "wrong number of fields",
		"a,b,c,d,e,f,g,h,i,j,k,l\n": "line 1: is",
		head + "tubing,2,6 lb/ft,non-upset,0.2 in,1.6 in,1.5 in,,,,user,\n":    "line 2.od: unit",
		head + "tubing,2 in,6 lb/ft,non-upset,0.2 in,1.5 in,1.4 in,,,,user,\n": "line 2.ID: is",
		head + "tubing,2 in\n": "wrong number of fields",
		head + "tubing,2 in,,non-upset,0.2 psi,1.6 in,1.5 in,x,,,user,\n": "wall",
	} {
		_, err := catalogue.Read(strings.NewReader(text))
		require.ErrorContains(t, err, want, text)
	}
	got, err := catalogue.Read(strings.NewReader(head + "tubing,2-7/8 in,6.5 lb/ft,external upset,0.217 in,2.441 in,2.347 in,,,,user,mine\n"))
	require.NoError(t, err)
	require.Len(t, got, 1)
}

func FuzzRead(f *testing.F) {
	f.Add("kind,od,weight,finish,wall,id,drift,coupling,short_thread,long_thread,status,source\ntubing,2-7/8 in,6.5 lb/ft,external upset,0.217 in,2.441 in,2.347 in,,,,user,mine\n")
	f.Add("\"")
	f.Fuzz(func(t *testing.T, text string) {
		entries, err := catalogue.Read(strings.NewReader(text))
		if err != nil {
			return
		}
		for _, e := range entries {
			require.NoError(t, e.Validate())
		}
	})
}

func ExampleCatalogue_Find() {
	c, err := catalogue.Standard()
	if err != nil {
		fmt.Println(err)
		return
	}
	e, err := c.Find(3.5*unit.Inch, 9.3*unit.PoundPerFoot)
	fmt.Println(e, "bore", e.ID, "drift", e.Drift, err)
	_, err = c.Find(3.5*unit.Inch, 9.4*unit.PoundPerFoot)
	fmt.Println(err)
	// Output:
	// 3.5 in 9.3 lb/ft external upset tubing bore 2.992 in drift 2.867 in <nil>
	// catalogue: 3.5 in at 9.4 lb/ft: not in the catalogue: there are 7.7 lb/ft, 9.2 lb/ft, 9.3 lb/ft, 10.2 lb/ft, 12.7 lb/ft, 12.95 lb/ft, 14.3 lb/ft, 15.5 lb/ft, 17 lb/ft
}

func ExampleDrift() {
	// 9-5/8 in 53.5 lb/ft casing: 8.379 in.
	fmt.Println(catalogue.Drift(catalogue.Casing, 9.625*unit.Inch, 8.535*unit.Inch).Rounded(4))
	// Output: 8.379 in
}

func BenchmarkStandard(b *testing.B) {
	for b.Loop() {
		if _, err := catalogue.Standard(); err != nil {
			b.Fatal(err)
		}
	}
}

func ExampleFindGrade() {
	g, err := catalogue.FindGrade("P-110")
	fmt.Println(g, g.Yield, g.Tensile, err)
	// Output: P110 110000 psi 125000 psi <nil>
}
