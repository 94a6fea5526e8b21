package production

import (
	"errors"
	"math"
	"strings"
	"testing"

	"completion.example/fluid"
	"completion.example/fluid/flow"
	"completion.example/fluid/gasflow"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
	"github.com/stretchr/testify/require"
)

// A network that was never prepared, and a flow that was never solved, answer with
// nothing or with the one error.
func TestNothingOfNothing(t *testing.T) {
	var n *Network
	require.Nil(t, n.Open())
	require.Nil(t, n.Names([]int{0}))
	require.Nil(t, n.Steps(&Flow{}))
	require.ErrorIs(t, n.Solve(nil, &Flow{}), errUnprepared)
	_, err := n.MatchSplit(nil, Limits{})
	require.ErrorIs(t, err, errUnprepared)
	_, err = n.LimitWater(0.5, Limits{})
	require.ErrorIs(t, err, errUnprepared)
	require.EqualError(t, two().Solve([]int{0, 0}, nil), "production: there is no Flow to put the answer in")
	require.Nil(t, two().Steps(nil))

	var f *Flow
	require.Zero(t, f.Oil())
	require.Zero(t, f.Share(0))
	require.Nil(t, f.Taking())
	require.Zero(t, (&Flow{Zones: make([]ZoneFlow, 1)}).Share(0), "nothing flows: no shares")
	require.Equal(t, []int{1}, (&Flow{Zones: []ZoneFlow{{Rate: 1}, {Rate: -1, Takes: true}}}).Taking())
}

// nowhere is an inflow without a number: the search says so rather than answer.
type nowhere struct{ pressure unit.Pressure }

func (nowhere) Validate() error         { return nil }
func (n nowhere) Static() unit.Pressure { return n.pressure }
func (nowhere) At(float64) (q, slope float64) {
	return math.NaN(), math.NaN()
}

func TestSearchWithoutNumbers(t *testing.T) {
	w := Well{Zones: []Zone{{Name: "lost", Inflow: nowhere{2e7}, Density: 800, Chokes: choke.Table{{Name: "one", Coefficient: unit.Cv}}}},
		Outflow: Tubing{Surface: 1e6, Loss: Loss{At: 0.001, Turbulent: 1e5}}}
	_, err := w.Flow()
	require.ErrorIs(t, err, ErrUnresolved)
	n := two()
	var f Flow
	f.Zones, f.cells = make([]ZoneFlow, 2), make([]cell, 2)
	_, _, err = n.search(0, state{}, 0, math.Inf(1), []int{0, 0}, false, 0, &f)
	require.ErrorIs(t, err, ErrUnresolved)
	require.ErrorContains(t, err, "pressures in the network overflow")
	require.ErrorContains(t, n.report(1, state{top: math.NaN()}, []int{0, 0}, &f), "pressures in the network overflow")
	require.ErrorContains(t, n.report(1e7, state{top: 1e7, excess: 1e6}, []int{0, 0}, &f), "is left over")
}

// A choice among more settings than permitted is refused before any is tried.
func TestChoiceOfTooMany(t *testing.T) {
	w := Well{Outflow: Tubing{Surface: 1e6, Loss: Loss{At: 0.001, Turbulent: 1e5}}}
	for range 3 {
		w.Zones = append(w.Zones, Zone{Name: string(rune('a' + len(w.Zones))), TVD: unit.Length(3000 - 100*len(w.Zones)), Density: 800, Inflow: inflow.LiquidDeliverability{Reservoir: 2e7, Index: 1e-9},
			Chokes: choke.Table{{Name: "shut"}, {Name: "one", Travel: 1, Coefficient: unit.Cv}}})
	}
	n, err := w.Prepare()
	require.NoError(t, err)
	_, err = n.MatchSplit([]float64{1, 1, 1}, Limits{Most: 2})
	require.ErrorIs(t, err, ErrTooMany)
}

func TestTablesThatCannotBeRead(t *testing.T) {
	_, err := ReadOutflowTable(strings.NewReader("rate,pressure\n1,\"2\n"))
	require.ErrorContains(t, err, "production: outflow table: ")
	_, err = choke.ReadTable(strings.NewReader("position,travel,coefficient\n1,\"2\n"))
	require.ErrorContains(t, err, "choke: table: ")
}

// stubborn is a gas that answers until it is asked too high.
type stubborn struct {
	fluid.Gas
	above unit.Pressure
}

var errTooHigh = errors.New("too high for this gas")

func (s stubborn) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	if p > s.above {
		return 0, errTooHigh
	}
	return s.Gas.Density(p, t)
}

// What the gas refuses in the tubing is the answer of the well.
func TestGasWellSaysWhatTheGasRefuses(t *testing.T) {
	w := GasWell{
		Inflow: inflow.GasDeliverability{Reservoir: 280 * unit.Bar, OpenFlow: 60000 * unit.ThousandCubicFeetPerDay, Exponent: 0.8},
		Tubing: gasflow.Tubing{Gas: stubborn{fluid.Gas{Gravity: 0.65}, 1000 * unit.Bar}, Wellhead: unit.Celsius(50), Bottom: unit.Celsius(100),
			Sections: []flow.ConduitSection{{Name: "tubing", Conduit: flow.Conduit{Outer: 0.1}, Length: 3000, BottomTVD: 2800}}},
		Choke: choke.Hole(1, 20*unit.Millimetre), Discharge: 0.85, HeatRatio: 1.27, Line: 70 * unit.Bar, Standard: unit.Fahrenheit(60),
	}
	_, err := w.Flow()
	require.NoError(t, err)
	w.Tubing.Gas = stubborn{fluid.Gas{Gravity: 0.65}, 200 * unit.Bar}
	_, err = w.Flow()
	require.ErrorIs(t, err, errTooHigh)
	w.Tubing.Gas = stubborn{fluid.Gas{Gravity: 0.65}, 1000 * unit.Bar}
	w.Line = 300 * unit.Bar
	_, err = w.Flow()
	require.ErrorIs(t, err, ErrDead)
}

// The working of a zone below its bubble point has Vogel's curve in it.
func TestStepsBelowTheBubblePoint(t *testing.T) {
	w := Well{Zones: []Zone{{Name: "sand", Density: 800, Inflow: inflow.LiquidDeliverability{Reservoir: 2e7, Index: 1e-9, Bubble: 1.8e7},
		Chokes: choke.Table{{Name: "one", Coefficient: 30 * unit.Cv}}}},
		Outflow: Tubing{Surface: 5e6, Loss: Loss{At: 0.01, Turbulent: 1e5}}}
	n, err := w.Prepare()
	require.NoError(t, err)
	var f Flow
	require.NoError(t, n.Solve(n.Open(), &f))
	steps := n.Steps(&f)
	require.NotEmpty(t, steps)
	found := false
	for _, s := range steps {
		found = found || s.Source == "Vogel 1968, below the bubble point"
	}
	require.True(t, found)
}

// The limits of a gas well's figures, on them and just beyond.
func TestLimitsOfAGasWell(t *testing.T) {
	well := GasWell{
		Inflow: inflow.GasDeliverability{Reservoir: 280 * unit.Bar, OpenFlow: 15, Exponent: 0.8},
		Tubing: gasflow.Tubing{Gas: fluid.Gas{Gravity: 0.65}, Wellhead: unit.Celsius(50), Bottom: unit.Celsius(100),
			Sections: []flow.ConduitSection{{Name: "tubing", Conduit: flow.Conduit{Outer: 0.1}, Length: 3000, BottomTVD: 2800}}},
		Choke: 1, Discharge: 1.5, HeatRatio: 2, Line: 1e9, Standard: unit.Celsius(45),
	}
	_, err := well.check()
	require.NoError(t, err)
	for name, change := range map[string]func(*GasWell){
		"Choke":     func(w *GasWell) { w.Choke = unit.Area(math.Nextafter(1, 2)) },
		"Discharge": func(w *GasWell) { w.Discharge = math.Nextafter(1.5, 2) },
		"HeatRatio": func(w *GasWell) { w.HeatRatio = math.Nextafter(2, 3) },
		"Line":      func(w *GasWell) { w.Line = unit.Pressure(math.Nextafter(1e9, 2e9)) },
		"Standard":  func(w *GasWell) { w.Standard = unit.Kelvin(math.Nextafter(unit.Celsius(45).Kelvin(), 400)) },
	} {
		w := well
		change(&w)
		_, err := w.check()
		require.ErrorContains(t, err, name+": is ", name)
	}
	low := well
	low.HeatRatio, low.Standard = 1, unit.Celsius(-20)
	_, err = low.check()
	require.ErrorContains(t, err, "HeatRatio: is 1; must be above 1")
	low.HeatRatio = math.Nextafter(1, 2)
	_, err = low.check()
	require.NoError(t, err)
	low.Standard = unit.Kelvin(math.Nextafter(unit.Celsius(-20).Kelvin(), 0))
	_, err = low.check()
	require.ErrorContains(t, err, "Standard: is ")
}
