package sleeve

import (
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Combination is one way to set all lines, each vented or pressured alike.
type Combination struct {
	Panel   Panel    `json:"panel"`
	Effects []Effect `json:"effects"`
	Moves   []int    `json:"moves"`   // the sleeves that move for certain
	Perhaps []int    `json:"perhaps"` // the sleeves that the band doesn't decide
}

// Certain tells whether every sleeve certainly moves or certainly stays.
func (c Combination) Certain() bool { return len(c.Perhaps) == 0 }

// Combinations returns every combination of vented and pressured lines at one
// panel pressure, with what it moves from where the sleeves are: all vented
// first, then counting up with the close line as the lowest digit.
//
// It is a table for the panel: an intended shift is the row that moves those
// sleeves, for certain, and no other. How to get there line by line is Plan's
// and Run's business. Errors: the system's, positions or pressure out of range.
func (s System) Combinations(before []Position, pressure unit.Pressure) ([]Combination, error) {
	heads, err := s.prepare()
	on := Setting{Pressured, pressure}
	if err := fault.Join(scope, err, fault.At("before", s.checkPositions(before)), s.checkPanel(Panel{Close: on})); err != nil {
		return nil, err
	}
	n := len(s.Sleeves)
	table := make([]Combination, 0, 2<<n)
	for set := range 2 << n {
		c := Combination{Panel: Panel{Open: make([]Setting, n)}}
		if set&1 != 0 {
			c.Panel.Close = on
		}
		for i := range n {
			if set&(2<<i) != 0 {
				c.Panel.Open[i] = on
			}
		}
		l := s.hold(c.Panel)
		c.Effects = s.apply(heads, before, &l)
		for i, e := range c.Effects {
			switch e.Motion {
			case Stays:
			case Opens, Closes:
				c.Moves = append(c.Moves, i)
			default:
				c.Perhaps = append(c.Perhaps, i)
			}
		}
		table = append(table, c)
	}
	return table, nil
}

// Moving returns the rows of a table that move just these sleeves, for certain.
func Moving(table []Combination, sleeves ...int) []Combination {
	want := slices.Sorted(slices.Values(sleeves))
	var rows []Combination
	for _, c := range table {
		if c.Certain() && slices.Equal(c.Moves, want) {
			rows = append(rows, c)
		}
	}
	return rows
}
