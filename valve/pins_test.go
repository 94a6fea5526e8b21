package valve

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

func ExamplePins_PressureOn() {
	pins := Pins{Count: 6, Strength: 4500 * unit.PoundForce, Tolerance: 0.05}
	p, err := pins.PressureOn(8 * unit.SquareInch)
	if err != nil {
		panic(err)
	}
	fmt.Printf("%.2f psi to %.2f psi\n", p.Least.In(unit.PSI), p.Greatest.In(unit.PSI))
	// Output: 3206.25 psi to 3543.75 psi
}

func ExamplePinCounts() {
	stock := []Pins{{Count: 12, Strength: 4500 * unit.PoundForce, Tolerance: 0.05}}
	window := ForceOn(unit.Band[unit.Pressure]{
		Least: 3000 * unit.PSI, Nominal: 3300 * unit.PSI, Greatest: 3600 * unit.PSI}, 8*unit.SquareInch)
	fits, err := PinCounts(stock, window)
	if err != nil {
		panic(err)
	}
	for _, f := range fits {
		fmt.Println(f.Pins.Count, "pins", f.Force.Rounded(5))
	}
	_, err = PinCounts(stock, unit.Band[unit.Force]{Least: 24500 * unit.PoundForce, Nominal: 25000 * unit.PoundForce, Greatest: 26000 * unit.PoundForce})
	fmt.Println(err)
	// Output:
	// 6 pins 25650 lbf .. 27000 lbf .. 28350 lbf
	// valve: no pin count does it: window 24500 lbf to 26000 lbf; 6 pins of 4500 lbf part at 25650 lbf to 28350 lbf, 2350 lbf too late
}

// By hand: 6 screws × 4,500 lbf on 8 in² is 3,375 psi, ±5 % is 168.75 psi, and
// for independent screws ±5 %/√6 is 68.9 psi.
func TestPinsBands(t *testing.T) {
	pins := Pins{Count: 6, Strength: 4500 * unit.PoundForce, Tolerance: 0.05, Correlation: Independent}
	psi := cmp.Comparer(func(a, b unit.Pressure) bool { return math.Abs(float64(a-b)) < float64(0.05*unit.PSI) })

	full, err := pins.PressureOn(8 * unit.SquareInch)
	require.NoError(t, err)
	want := unit.Band[unit.Pressure]{Least: 3206.25 * unit.PSI, Nominal: 3375 * unit.PSI, Greatest: 3543.75 * unit.PSI}
	require.Empty(t, cmp.Diff(want, full, psi), "independence doesn't narrow the bound")

	likely, err := pins.LikelyPressureOn(8 * unit.SquareInch)
	require.NoError(t, err)
	want = unit.Band[unit.Pressure]{Least: 3306.1 * unit.PSI, Nominal: 3375 * unit.PSI, Greatest: 3443.9 * unit.PSI}
	require.Empty(t, cmp.Diff(want, likely, psi))

	pins.Correlation = Lot
	lot, err := pins.LikelyPressureOn(8 * unit.SquareInch)
	require.NoError(t, err)
	require.Equal(t, full, lot)

	pins.TemperatureFactor = 0.9
	hot, err := pins.Force()
	require.NoError(t, err)
	require.InDelta(t, 24300, hot.Nominal.In(unit.PoundForce), 1e-9)
	require.InDelta(t, 24300*0.95, hot.Least.In(unit.PoundForce), 1e-9)
}

func TestPinsRefuse(t *testing.T) {
	good := Pins{Count: 1, Strength: unit.PoundForce}
	for name, p := range map[string]Pins{
		"no pins":           {Strength: unit.PoundForce},
		"negative count":    {Count: -1, Strength: unit.PoundForce},
		"no strength":       {Count: 1},
		"NaN strength":      {Count: 1, Strength: unit.Force(math.NaN())},
		"full tolerance":    {Count: 1, Strength: 1, Tolerance: 1},
		"NaN tolerance":     {Count: 1, Strength: 1, Tolerance: math.NaN()},
		"negative factor":   {Count: 1, Strength: 1, TemperatureFactor: -0.5},
		"huge factor":       {Count: 1, Strength: 1, TemperatureFactor: 2.5},
		"odd correlation":   {Count: 1, Strength: 1, Correlation: 9},
		"infinite strength": {Count: 1, Strength: unit.Force(math.Inf(1))},
	} {
		_, err := p.Force()
		require.Error(t, err, name)
		_, err = p.LikelyForce()
		require.Error(t, err, name)
		_, err = PinCounts([]Pins{p}, unit.Exactly(unit.Newton))
		require.Error(t, err, name)
		require.NotErrorIs(t, err, ErrNoPinCount, name)
	}
	for _, a := range []unit.Area{0, -1, unit.Area(math.NaN()), unit.Area(math.Inf(1)), 5e-324} {
		_, err := good.PressureOn(a)
		require.Error(t, err, "area %v", a)
	}
	_, err := PinCounts(nil, unit.Exactly(unit.Newton))
	require.Error(t, err)
	_, err = good.In(unit.Band[unit.Force]{Least: 2, Nominal: 1, Greatest: 3})
	require.Error(t, err)
}

// A window that is exactly the band of n pins is met by n and by no other.
func TestPinCountsInvertForce(t *testing.T) {
	for n := 1; n <= 12; n++ {
		p := Pins{Count: n, Strength: 12 * unit.Kilonewton, Tolerance: 0.03}
		band, err := p.Force()
		require.NoError(t, err)
		stock := p
		stock.Count = 12
		fits, err := PinCounts([]Pins{stock}, band)
		require.NoError(t, err)
		require.Len(t, fits, 1)
		require.Equal(t, n, fits[0].Pins.Count)
		require.Zero(t, fits[0].Margin())
	}
}

func TestPinCountsSayWhatWouldDo(t *testing.T) {
	stock := []Pins{
		{Count: 4, Strength: 1000 * unit.PoundForce, Tolerance: 0.1},
		{Count: 8, Strength: 700 * unit.PoundForce, Tolerance: 0.1},
	}
	window := unit.Band[unit.Force]{Least: 2000 * unit.PoundForce, Nominal: 2050 * unit.PoundForce, Greatest: 2200 * unit.PoundForce}
	_, err := PinCounts(stock, window)
	require.ErrorIs(t, err, ErrNoPinCount)
	var none *NoPinCountError
	require.ErrorAs(t, err, &none)
	require.Len(t, none.Nearest, 2)
	// 3 × 700 = 2,100 lbf, ±210: 110 too early and too late; 2 × 1,000 ± 200 is 200 too early.
	require.Equal(t, 3, none.Nearest[0].Pins.Count)
	require.InDelta(t, -110, none.Nearest[0].Margin().In(unit.PoundForce), 1e-9)
	require.InDelta(t, -200, none.Nearest[1].Margin().In(unit.PoundForce), 1e-9)
	require.InDelta(t, 100.0/2100, none.Tolerance, 1e-12)

	stock[1].Tolerance = none.Tolerance * (1 - 1e-12)
	fits, err := PinCounts(stock, window)
	require.NoError(t, err)
	require.Equal(t, 3, fits[0].Pins.Count)
	require.True(t, errors.Is(none, ErrNoPinCount))
}

func TestCorrelationText(t *testing.T) {
	for _, c := range []Correlation{Lot, Independent} {
		text, err := c.MarshalText()
		require.NoError(t, err)
		var back Correlation
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, c, back)
	}
	var c Correlation
	require.Error(t, c.UnmarshalText([]byte("some")))
	_, err := Correlation(7).MarshalText()
	require.Error(t, err)
}
