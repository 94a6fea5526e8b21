package packer_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// An envelope that isn't there answers with NaN and with nothing held.
func TestNoEnvelope(t *testing.T) {
	var e *packer.Envelope
	m := e.Margin(packer.Load{})
	require.True(t, math.IsNaN(m.Usage) && math.IsNaN(m.Distance))
	least, greatest, ok := e.DifferentialAt(0)
	require.False(t, ok)
	require.True(t, math.IsNaN(float64(least)) && math.IsNaN(float64(greatest)))
	pull, push, ok := e.AxialAt(0)
	require.False(t, ok)
	require.True(t, math.IsNaN(float64(pull)) && math.IsNaN(float64(push)))
	require.Zero(t, e.Polygon())
	_, _, err := e.Tests(0, 0)
	require.ErrorContains(t, err, "packer: axial load 0 lbf is outside the envelope without any differential: it holds none")
	full, err := box().Envelope()
	require.NoError(t, err)
	require.Equal(t, box(), full.Polygon())
	lo, _, ok := full.DifferentialAt(unit.Force(math.NaN()))
	require.False(t, ok)
	require.True(t, math.IsNaN(float64(lo)))
}

func TestPolygonWithTooManyCorners(t *testing.T) {
	p := packer.Polygon{Vertices: make([]packer.Load, 10001)}
	_, err := p.Envelope()
	require.EqualError(t, err, "packer: Vertices: has 10001 corners; must be at most 10000")
	_, err = packer.ReadPolygon(brokenReader{})
	require.EqualError(t, err, "packer: envelope: the disk is gone")
}

type brokenReader struct{}

func (brokenReader) Read([]byte) (int, error) { return 0, errors.New("the disk is gone") }

// A case that can't be worked out is named; forces that no number holds are refused.
func TestConnectionFaults(t *testing.T) {
	v := packerExample()
	v.Seals = packer.Restraint(3.25*unit.Inch, 0)
	bad := v
	bad.Warming = unit.TemperatureDifference(math.NaN())
	_, err := packer.Seat{Casing: 6.094 * unit.Inch, Bore: 3.25 * unit.Inch}.Connections(packer.Case{Name: "cold", String: bad})
	require.ErrorContains(t, err, "packer: case cold.Warming: is NaN")
	_, err = packer.Seat{Casing: 1e308, Bore: 3.25 * unit.Inch}.Connections(packer.Case{Name: "wide", String: v, Below: 5e7})
	require.EqualError(t, err, "packer: the force on the casing overflows: the inputs are finite but too large together")
	path, err := hydrostatics.Vertical(100 * unit.Foot)
	require.NoError(t, err)
	state := movement.WellProfiles{Inside: v.Final.Inside, Outside: v.Final.Outside}
	_, err = packer.Seat{Casing: 6.094 * unit.Inch, Bore: 3.25 * unit.Inch}.ConnectionsAlong(packer.PathCase{Name: "short hole",
		String: movement.String{Sections: v.Sections, Path: path, Seals: v.Seals}, Reference: state, State: state})
	require.ErrorContains(t, err, "packer: ")
}

func TestPullFaults(t *testing.T) {
	p := taper()
	p.Below = 5
	p.Plugged = false
	p.Drag = unit.Band[unit.Force]{Least: -1, Nominal: 0, Greatest: 1}
	_, err := p.Balance(0)
	require.ErrorContains(t, err, "Below: is 5 Pa; must be 0 where the joint is open below")
	require.ErrorContains(t, err, "Drag: begins at ")
	n := notParted()
	n.Clearance, n.Intervals = 10*unit.Foot, nil
	o, err := n.Options()
	require.NoError(t, err)
	require.ErrorIs(t, o.NoCut, packer.ErrNowhereToCut)
}

func TestSettingFaults(t *testing.T) {
	s := setting(t)
	_, err := s.PressuresIn(nil, 100)
	require.EqualError(t, err, "packer: tubing column is missing")
	column, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: hydrostatics.Incompressible(1000), BottomTVD: 3000}}, isothermal(t), hydrostatics.Reference{})
	require.NoError(t, err)
	s.Stages = nil
	_, err = s.PressuresIn(column, 100)
	require.ErrorContains(t, err, "packer: ")
	require.Nil(t, packer.Pressures{}.Steps())
	_, err = packer.LockIn{}.Bitten(unit.Exactly(1 * unit.PSI))
	require.ErrorContains(t, err, "packer: ")
	_, err = packer.SealPlan{}.SpaceOut()
	require.ErrorContains(t, err, "packer: ")
	p := plan()
	p.Bore.ShoulderMD, p.Bore.TopMD, p.Bore.BottomMD = 1e308, 1e308, 1.7e308
	_, err = p.SpaceOut()
	require.Error(t, err)
}

// Slips bite from the pressure at which the first stage may act; with less applied
// they may not bite at all.
func TestBite(t *testing.T) {
	p, err := setting(t).Pressures()
	require.NoError(t, err)
	bite, ok := p.Bite(p.Complete.Greatest + unit.PSI)
	require.True(t, ok)
	require.Equal(t, p.Start.Least, bite.Least)
	require.Equal(t, p.Complete.Nominal, bite.Nominal)
	require.Equal(t, p.Complete.Greatest, bite.Greatest)
	bite, ok = p.Bite(p.Complete.Nominal)
	require.True(t, ok)
	require.Equal(t, p.Complete.Nominal, bite.Greatest)
	_, ok = p.Bite(p.Start.Least - unit.PSI)
	require.False(t, ok)
}

// A string that is heavy enough is said to be so, without a word of bleeding.
func TestNotPipeLight(t *testing.T) {
	u := packer.Unseating{Pull: taper(), Trapped: unit.Exactly(0 * unit.PSI), Reserve: unit.PoundForce}
	f, err := u.Freed()
	require.NoError(t, err)
	require.True(t, strings.HasPrefix(f.String(), "not pipe light: "), f.String())
	require.NotContains(t, f.String(), "bleed")
	u.Reserve = 1000 * unit.Kilopound
	f, err = u.Freed()
	require.NoError(t, err)
	require.True(t, f.Hopeless)
	require.Nil(t, f.Steps())
	u.Pull.Sections = nil
	_, err = u.Freed()
	require.ErrorContains(t, err, "packer: ")
}
