package well

import (
	"errors"
	"testing"

	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve/sequence/internal/affine"
	"github.com/stretchr/testify/require"
)

var errOut = errors.New("out of its table")

// tabled is a fluid that is known up to a pressure.
type tabled struct {
	hydrostatics.Fluid
	most unit.Pressure
}

func (f tabled) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	if p > f.most {
		return 0, errOut
	}
	return f.Fluid.Density(p, t)
}

// asked is a fluid that answers so often.
type asked struct {
	hydrostatics.Fluid
	left *int
}

func (f asked) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	if *f.left--; *f.left < 0 {
		return 0, errOut
	}
	return f.Fluid.Density(p, t)
}

// Gas that is shut in and warmed needs more pressure than what it is known for: it is refused. The last
// pressure that is known, at which the mass is too small, is no answer.
func TestClosedGasIsNotHeatedBeyondWhatIsKnown(t *testing.T) {
	s := narrowed(t, cushion(t, fluid.Nitrogen{}, 1e7), []float64{0, 0, 0})
	s.Open[0] = false
	warm, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{TVD: 0, Temperature: unit.Celsius(150)}, {TVD: 3000, Temperature: unit.Celsius(190)}})
	require.NoError(t, err)
	heated := func(most unit.Pressure) error {
		x := s.Clone()
		hot := NewGas("nitrogen", tabled{fluid.Nitrogen{}, most}, warm, straightHole())
		x.Fluids = append([]Fluid{}, x.Fluids...)
		x.Fluids[0].Gases = append(x.Fluids[0].Gases[:1:1], &Gases{Gas: [3]*Gas{nil, hot, nil}})
		x.SetTemperature(1)
		if err := x.Solve(affine.Form{}); err != nil {
			return err
		}
		require.InDelta(t, 1.7e7, x.Top[0].F.C, 2e6, "ideal: 10.1 MPa·(443 K/319 K) at mid-height of the gas, and some more as nitrogen is less compressible")
		return nil
	}
	require.NoError(t, heated(9e7))
	require.ErrorContains(t, heated(1.3e7), "is more than its equation of state is good for")
}

// Gas at 10 MPa over 1,500 m of brine is pressed on from below through a liquid that isn't known at the
// pressure that it has at the shoe: it is refused, whatever level would seem to fit.
func TestClosedGasOnALiquidThatIsNotKnown(t *testing.T) {
	for _, x := range []struct {
		most unit.Pressure
		says string
	}{{9e7, ""}, {2.5e7, "out of its table"}} {
		s := narrowed(t, cushion(t, fluid.Nitrogen{}, 1e7), []float64{0, 0, 0})
		s.Fluids = append([]Fluid{}, s.Fluids...)
		col, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: tabled{steady(1100), x.most}, BottomTVD: 3000}}, warmth(t), hydrostatics.Reference{})
		if err != nil { // 33 MPa at its bottom are too much by themselves: a column of the upper part
			col, err = hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: tabled{steady(1100), x.most}, BottomTVD: 3000}}, warmth(t), hydrostatics.Reference{Pressure: -1e7})
		}
		require.NoError(t, err)
		s.Fluids[1].Columns, s.Fluids[1].Scale = []*hydrostatics.Column{col}, affine.Const(1)
		s.Surface[1], s.Open[0] = true, true
		const shoe = 2.9e7
		err = s.lift(0, 12, affine.Flat(affine.Const(shoe)))
		if x.says != "" {
			require.ErrorContains(t, err, x.says)
			require.ErrorContains(t, err, `compartment "tubing"`)
			continue
		}
		require.NoError(t, err)
		level := s.gas[0].Level.F.C
		require.InDelta(t, shoe-(3000-level)*Gravity*1100, s.gas[0].Foot.F.C, 1)
	}
}

type steady unit.Density

func (d steady) Density(unit.Pressure, unit.Temperature) (unit.Density, error) {
	return unit.Density(d), nil
}

// However often a gas has been asked for before it has no answer: what was asked of the well says so.
func TestNoAnswerOfAGasIsHandedOn(t *testing.T) {
	for _, x := range []struct {
		name string
		ask  func(s *State, n *Network) error
	}{
		{"close", func(s *State, n *Network) error {
			x := n.Start()
			if err := x.Solve(affine.Form{}); err != nil {
				return err
			}
			return x.Close()
		}},
		{"pressure under it", func(s *State, n *Network) error { _, err := s.At(0, 12); return err }},
		{"lift", func(s *State, n *Network) error { return s.lift(0, 12, affine.Flat(affine.Const(3e7))) }},
		{"gain of a swap", func(s *State, n *Network) error {
			s.Reopen(0)
			_, err := s.Gain(0, 0, 1, Depth{500, 500}, Depth{2000, 2000})
			return err
		}},
	} {
		t.Run(x.name, func(t *testing.T) {
			if x.name != "close" {
				long.Skip(t, "curves of a gas for each of its answers")
			}
			handed := 0
			for left := 0; ; left = left*long.Size(400, 3)/2 + 1 {
				s := narrowed(t, cushion(t, fluid.Nitrogen{}, 1e7), []float64{0, 0, 0})
				count := left
				fresh := NewGas("nitrogen", asked{fluid.Nitrogen{}, &count}, warmth(t), straightHole())
				s.Fluids[0].Gases[0].Gas[1] = fresh
				err := x.ask(s, s.Network)
				if err == nil {
					break
				}
				require.ErrorIs(t, err, errOut, "after %d answers", left)
				handed++
			}
			require.NotZero(t, handed)
		})
	}
}
