package sleeve

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"

	"github.com/stretchr/testify/require"
)

func ExampleSystem_Combinations() {
	table, err := well(2).Combinations([]Position{Open, Open}, 3000*unit.PSI)
	if err != nil {
		panic(err)
	}
	for _, c := range Moving(table, 1) {
		fmt.Println("close line", c.Panel.Close.Mode, "- open lines", c.Panel.Open[0].Mode, "and", c.Panel.Open[1].Mode, "- for certain:", c.Certain())
	}
	fmt.Println(len(table), "ways in all; a system has at most", MaxSleeves, "sleeves")
	// Output:
	// close line pressured - open lines pressured and vented - for certain: true
	// 8 ways in all; a system has at most 10 sleeves
}

// The rule by hand, with nothing but yes and no: a sleeve closes if the close
// line is pressured and its own isn't; opens the other way round; else stays.
func TestCombinationsByLogic(t *testing.T) {
	s := well(3)
	for from := range 8 {
		before := make([]Position, 3)
		for i := range before {
			before[i] = Position(from >> i & 1)
		}
		table, err := s.Combinations(before, 3000*unit.PSI)
		require.NoError(t, err)
		require.Len(t, table, 16)
		for set, c := range table {
			shut := set&1 != 0
			require.True(t, c.Certain())
			for i, e := range c.Effects {
				own := set>>(i+1)&1 != 0
				want := before[i]
				switch {
				case own && !shut:
					want = Open
				case shut && !own:
					want = Closed
				}
				require.Equal(t, want, e.After, "set %b from %v sleeve %d", set, before, i)
			}
		}
	}
	table, err := s.Combinations([]Position{Closed, Closed, Open}, 500*unit.PSI)
	require.NoError(t, err)
	require.Empty(t, Moving(table, 0), "500 psi lies in the band")
	require.Equal(t, []int{2}, table[1].Perhaps)
	_, err = s.Combinations([]Position{Closed}, 1)
	require.Error(t, err)
	_, err = s.Combinations([]Position{Closed, Closed, Open}, unit.Pressure(math.NaN()))
	require.Error(t, err)
}
