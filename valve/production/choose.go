package production

import (
	"errors"
	"fmt"
	"math"

	"completion.example/internal/fault"
)

// ErrNoSetting says that no combination of the positions that exist does what
// was asked.
var ErrNoSetting = errors.New("production: no choke setting does it")

// ErrTooMany says that there are more combinations than may be tried.
var ErrTooMany = errors.New("production: too many choke settings")

// Limits narrow a search.
type Limits struct {
	NoCrossflow bool `json:"no_crossflow"` // leave out settings in which a zone takes fluid
	Most        int  `json:"most"`         // combinations that may be tried; zero stands for a million
}

// million is about half a second of work for two zones.
const million = 1_000_000

// Choice is the setting found.
type Choice struct {
	Positions []int   `json:"positions"`
	Flow      Flow    `json:"flow"`
	Deviation float64 `json:"deviation"` // of MatchSplit: the greatest difference of a zone's share from its target
	Tried     int     `json:"tried"`     // combinations solved for, without those that shut every zone
	Solved    int     `json:"solved"`    // of them with an answer
	Allowed   int     `json:"allowed"`   // of those within the limits
}

// MatchSplit tries every combination of positions and returns the one whose
// zones' shares come nearest to targets, by the greatest difference of any
// zone; of equals the one with the greater rate. Targets are one per zone, zero
// or more, and are divided by their sum.
// Errors: ErrNoSetting; ErrTooMany; faults of the targets.
//
//	least max |si − ti|
//
// Source: exhaustive search.
func (n *Network) MatchSplit(targets []float64, limits Limits) (Choice, error) {
	if n == nil {
		return Choice{}, errUnprepared
	}
	if len(targets) != len(n.nodes) {
		return Choice{}, fault.NewIn(scope, "targets", "has %d for %d zones; must have one for each", len(targets), len(n.nodes))
	}
	sum := 0.0
	for i, t := range targets {
		if err := fault.AtLeast(fault.Index("targets", i), t, 0); err != nil {
			return Choice{}, fault.Join(scope, err)
		}
		sum += t
	}
	if !(sum > 0 && finite(sum)) {
		return Choice{}, fault.NewIn(scope, "targets", "add up to %v; must be above 0", sum)
	}
	deviation := func(f *Flow) float64 {
		worst := 0.0
		for i, t := range targets {
			worst = max(worst, math.Abs(f.Share(i)-t/sum))
		}
		return worst
	}
	c, err := n.choose(limits, func(f *Flow) (merit, bool) {
		// Differences below 1e-9 are rounding; the rate decides between those.
		return merit{-math.Round(deviation(f) * 1e9), float64(f.Rate)}, f.Rate > 0
	})
	if err != nil {
		return Choice{}, err
	}
	c.Deviation = deviation(&c.Flow)
	return c, nil
}

// LimitWater tries every combination of positions and returns the one that
// gives the most oil with a water cut of no more than most.
// Errors: ErrNoSetting with the least water cut that any setting gives;
// ErrTooMany; a limit outside 0 to 1.
func (n *Network) LimitWater(most float64, limits Limits) (Choice, error) {
	if err := fault.Between("most", most, 0, 1); err != nil {
		return Choice{}, fault.Join(scope, err)
	}
	least := math.Inf(1)
	c, err := n.choose(limits, func(f *Flow) (merit, bool) {
		if f.Rate > 0 && !(limits.NoCrossflow && f.Crossflow > 0) {
			least = min(least, f.WaterCut)
		}
		return merit{float64(f.Oil()), float64(f.Rate)}, f.Rate > 0 && f.WaterCut <= most
	})
	if errors.Is(err, ErrNoSetting) && !math.IsInf(least, 1) {
		err = fmt.Errorf("%w; the least water cut of all is %.4g, %.4g is allowed", err, least, most)
	}
	return c, err
}

// MostRate tries every combination of positions and returns the one that gives
// the greatest rate, oil and water together. With limits.NoCrossflow it need not
// be every choke wide open.
func (n *Network) MostRate(limits Limits) (Choice, error) {
	return n.choose(limits, func(f *Flow) (merit, bool) { return merit{float64(f.Rate), 0}, f.Rate > 0 })
}

// merit is what a setting is chosen for; the second counts between equals.
type merit [2]float64

func (m merit) above(o merit) bool { return m[0] > o[0] || m[0] == o[0] && m[1] > o[1] }

// choose tries every combination and keeps the one of the greatest merit; of
// equals the first.
func (n *Network) choose(limits Limits, judge func(*Flow) (merit, bool)) (Choice, error) {
	if n == nil {
		return Choice{}, errUnprepared
	}
	combinations, most := 1.0, limits.Most
	if most == 0 {
		most = million
	}
	for i := range n.nodes {
		combinations *= float64(len(n.nodes[i].chokes))
	}
	if combinations > float64(most) {
		return Choice{}, fmt.Errorf("%w: %.4g combinations; %d may be tried", ErrTooMany, combinations, most)
	}
	positions := make([]int, len(n.nodes))
	best := Choice{Positions: make([]int, len(n.nodes))}
	top := merit{math.Inf(-1), math.Inf(-1)}
	var f Flow
	var last error
	for {
		err := n.Solve(positions, &f)
		if !errors.Is(err, ErrShut) {
			best.Tried++
		}
		if err == nil {
			best.Solved++
			if m, ok := judge(&f); ok && !(limits.NoCrossflow && f.Crossflow > 0) {
				best.Allowed++
				if m.above(top) {
					top = m
					copy(best.Positions, positions)
				}
			}
		} else if !errors.Is(err, ErrShut) {
			last = err
		}
		if !n.next(positions) {
			break
		}
	}
	if best.Allowed == 0 {
		err := fmt.Errorf("%w: %d tried, %d flow", ErrNoSetting, best.Tried, best.Solved)
		if best.Solved == 0 && last != nil {
			err = fmt.Errorf("%w; the last: %w", err, last)
		}
		return Choice{}, err
	}
	return best, n.Solve(best.Positions, &best.Flow)
}

// next counts positions up; false after the last.
func (n *Network) next(positions []int) bool {
	for i := range positions {
		if positions[i]++; positions[i] < len(n.nodes[i].chokes) {
			return true
		}
		positions[i] = 0
	}
	return false
}

// Names returns the names of positions, one per zone; an open zone without a
// choke has none.
func (n *Network) Names(positions []int) []string {
	if n == nil {
		return nil
	}
	names := make([]string, len(n.nodes))
	for i := range min(len(positions), len(names)) {
		if t, p := n.well.Zones[i].Chokes, positions[i]; p >= 0 && p < len(t) {
			names[i] = t[p].Name
		}
	}
	return names
}
