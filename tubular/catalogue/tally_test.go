package catalogue_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/catalogue"
	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

func TestTally(t *testing.T) {
	var tally catalogue.Tally
	require.NoError(t, tally.UnmarshalText([]byte(" 3-1/2 in, 9.3 lb/ft, 4000 ft;2-7/8 in,6.5 lb/ft, 900 m")))
	want := catalogue.Tally{{3.5 * unit.Inch, 9.3 * unit.PoundPerFoot, 4000 * unit.Foot}, {2.875 * unit.Inch, 6.5 * unit.PoundPerFoot, 900}}
	require.Empty(t, cmp.Diff(want, tally))
	text, err := tally.MarshalText()
	require.NoError(t, err)
	var back catalogue.Tally
	require.NoError(t, back.UnmarshalText(text))
	require.Empty(t, cmp.Diff(tally, back))

	l80, err := catalogue.FindGrade("L80")
	require.NoError(t, err)
	sections, err := standard(t).Sections(tally, l80)
	require.NoError(t, err)
	require.Len(t, sections, 2)
	require.InDelta(t, 2.992, sections[0].Pipe.ID.In(unit.Inch), 1e-9)

	tally[1].Weight = 99
	_, err = standard(t).Sections(tally, l80)
	require.ErrorIs(t, err, catalogue.ErrNotFound)
	require.ErrorContains(t, err, "part 2")

	err = back.UnmarshalText([]byte("3 in, 4 ft; 2 psi, 3 lb/ft, 4 ft"))
	require.ErrorContains(t, err, "part 1")
	require.ErrorContains(t, err, "part 2")
	require.Empty(t, cmp.Diff(want[0], back[0]), "a fault changes nothing")
	require.NoError(t, back.UnmarshalText(nil))
	require.Empty(t, back)
	_, err = catalogue.Tally{{OD: unit.Length(math.NaN())}}.MarshalText()
	require.Error(t, err)
}

func FuzzTally(f *testing.F) {
	f.Add("3-1/2 in, 9.3 lb/ft, 4000 ft; 2-7/8 in, 6.5 lb/ft, 3000 ft")
	f.Add(";,")
	f.Fuzz(func(t *testing.T, text string) {
		var tally, back catalogue.Tally
		if tally.UnmarshalText([]byte(text)) != nil {
			return
		}
		out, err := tally.MarshalText()
		require.NoError(t, err)
		require.NoError(t, back.UnmarshalText(out))
		require.Empty(t, cmp.Diff(tally, back))
	})
}

func ExampleTally() {
	var tally catalogue.Tally
	err := tally.UnmarshalText([]byte("3-1/2 in, 9.3 lb/ft, 4000 ft; 2-7/8 in, 6.5 lb/ft, 3000 ft"))
	fmt.Println(len(tally), tally, err)
	// Output: 2 3.5 in, 9.3 lb/ft, 4000 ft; 2.875 in, 6.5 lb/ft, 3000 ft <nil>
}
