package packer

import (
	"fmt"
	"math"
	"math/bits"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Landing is a string whose locator was lowered onto its shoulder, and that is
// to be spaced out so that its hanger lands with the locator at a height above
// it.
//
// Lengths are of the pipe, unstressed: tag with little weight, since set-down
// shortens the string, and land in the same temperature.
type Landing struct {
	Tagged unit.Length `json:"tagged"` // length of the string below the rotary table with the locator on its shoulder
	Height unit.Length `json:"height"` // wanted, of the locator above the shoulder

	HangerDepth  unit.Length `json:"hanger_depth"`  // of the hanger's seat below the rotary table
	HangerLength unit.Length `json:"hanger_length"` // from the seat to the hanger's lower end

	Joints []unit.Length `json:"joints"` // on top of the string, which may be taken off, uppermost first
	Above  unit.Length   `json:"above"`  // of the uppermost of them, what stands above the rotary table
	Pups   []unit.Length `json:"pups"`   // at hand
}

// MakeUp is what to take off and put in to land the hanger.
type MakeUp struct {
	Joints int           `json:"joints"` // to take off
	Pups   []unit.Length `json:"pups"`   // to put in, longest first
	Height unit.Length   `json:"height"` // of the locator above its shoulder, so landed
	Off    unit.Length   `json:"off"`    // Height less the height wanted
}

// Most of a Landing's lists: the search tries every set of pups.
const (
	maxPups   = 16
	maxJoints = 64
)

// MakeUp returns the joints to take off and the pups to put in that bring the
// locator nearest to the height wanted, though never below its shoulder, and of
// equally good ones those with the fewest pieces.
//
//	pups = joints taken off - Above - Height - HangerDepth - HangerLength
//
// because the string below the seat must be Tagged - Height - HangerDepth long,
// and was Tagged + Above before joints came off. It is an error if the joints do not
// reach down to where the hanger goes. Source: geometry of a tally.
func (l Landing) MakeUp() (MakeUp, error) {
	if err := l.Validate(); err != nil {
		return MakeUp{}, err
	}
	if available, reach := sum(l.Joints), l.Above+l.Height+l.HangerDepth+l.HangerLength; available < reach {
		return MakeUp{}, fault.NewIn("packer", "Joints", "come to %s; must be at least %s, to reach from above the rotary table to the hanger's lower end",
			available.Rounded(5), reach.Rounded(5))
	}
	sums := make([]unit.Length, 1<<len(l.Pups))
	for set := 1; set < len(sums); set++ {
		low := bits.TrailingZeros(uint(set))
		sums[set] = sums[set&(set-1)] + l.Pups[low]
	}
	needed := -l.Above - l.Height - l.HangerDepth - l.HangerLength
	type choice struct{ joints, set int }
	var best choice
	least, pieces := unit.Length(math.Inf(1)), 0
	for n := 0; n <= len(l.Joints); n++ {
		if n > 0 {
			needed += l.Joints[n-1]
		}
		for set, sum := range sums {
			if sum-needed > l.Height {
				continue // so long that the locator meets its shoulder before the hanger lands
			}
			miss := unit.Length(math.Abs(float64(needed - sum)))
			count := n + bits.OnesCount(uint(set))
			if miss < least-tallyReading || miss < least+tallyReading && count < pieces {
				least, pieces, best = miss, count, choice{n, set}
			}
		}
	}
	m := MakeUp{Joints: best.joints}
	length := sums[best.set]
	for i, p := range l.Pups {
		if best.set>>i&1 == 1 {
			m.Pups = append(m.Pups, p)
		}
	}
	slices.Sort(m.Pups)
	slices.Reverse(m.Pups)
	for _, j := range l.Joints[:best.joints] {
		length -= j
	}
	// A string too long by so much stands so much lower.
	m.Height = -l.Above - l.HangerDepth - l.HangerLength - length
	m.Off = m.Height - l.Height
	if err := finiteResult("make-up", float64(m.Height), float64(m.Off)); err != nil {
		return MakeUp{}, err
	}
	return m, nil
}

// tallyReading is what a tally is read to; closer than that is the same length.
const tallyReading = unit.Millimetre

func sum(lengths []unit.Length) unit.Length {
	total := unit.Length(0)
	for _, l := range lengths {
		total += l
	}
	return total
}

// Validate reports everything that is wrong with l.
func (l Landing) Validate() error {
	f := fault.In(scope)
	f.Add(fault.Above("Tagged", l.Tagged, 0))
	f.Add(fault.AtLeast("Height", l.Height, 0))
	f.Add(fault.AtLeast("HangerDepth", l.HangerDepth, 0))
	f.Add(fault.AtLeast("HangerLength", l.HangerLength, 0))
	f.Add(fault.AtLeast("Above", l.Above, 0))
	if len(l.Joints) > maxJoints {
		f.New("Joints", "has %d; must be at most %d", len(l.Joints), maxJoints)
	}
	if len(l.Pups) > maxPups {
		f.New("Pups", "has %d; must be at most %d", len(l.Pups), maxPups)
	}
	for i, j := range l.Joints {
		f.Add(fault.Above(fmt.Sprintf("Joints[%d]", i), j, 0))
	}
	for i, p := range l.Pups {
		f.Add(fault.Above(fmt.Sprintf("Pups[%d]", i), p, 0))
	}
	if l.Tagged <= l.HangerDepth {
		f.New("Tagged", "is %v; must be below the hanger's seat at %v", l.Tagged, l.HangerDepth)
	}
	return f.Err()
}
