package fault_test

import (
	"errors"
	"io"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
	public "completion.example/hydrostatics/unit/fault"
	"completion.example/internal/fault"
)

func TestWordsOfAFault(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		err  error
		want string // empty for no fault
	}{
		{fault.Between("p", 5*unit.PSI, 5*unit.PSI, 6*unit.PSI), ""},
		{fault.Between("p", 6*unit.PSI, 5*unit.PSI, 6*unit.PSI), ""},
		{fault.Between("p", 7*unit.PSI, 5*unit.PSI, 6*unit.PSI), "p: is 7 psi; must be from 5 psi to 6 psi"},
		{fault.Between("p", unit.Pressure(nan), 5*unit.PSI, 6*unit.PSI), "p: is NaN psi; must be from 5 psi to 6 psi"},
		{fault.Between("x", -1, 0, inf), "x: is -1; must be at least 0"},
		{fault.Between("x", 1, -inf, 0), "x: is 1; must be at most 0"},
		{fault.Between("x", inf, -inf, inf), "x: is +Inf; must be finite"},
		{fault.Between("x", inf, 0, inf), "x: is +Inf; must be at least 0"},
		{fault.Finite("x", 1e300), ""},
		{fault.Finite("x", nan), "x: is NaN; must be finite"},
		{fault.Above("d", 0*unit.Inch, 0), "d: is 0 ft; must be above 0 ft"},
		{fault.Above("d", unit.Inch, 0), ""},
		{fault.AtLeast("x", -0.1, 0), "x: is -0.1; must be at least 0"},
		{fault.AtLeast("x", 0., 0), ""},
		{fault.AtMost("x", 1.1, 1), "x: is 1.1; must be at most 1"},
		{fault.AtMost("x", 1., 1), ""},
		{fault.AboveTo("x", 0., 0, 1), "x: is 0; must be above 0 and at most 1"},
		{fault.AboveTo("x", 1., 0, 1), ""},
		{fault.Inside("x", 1., 0, 1), "x: is 1; must be above 0 and below 1"},
		{fault.Inside("x", 0.5, 0, 1), ""},
		{fault.AtMost("x", 1.0000000001, 1), "x: is 1.0000000001; must be at most 1"},
		{fault.Temperature("t", unit.Fahrenheit(700), unit.Fahrenheit(32), unit.Fahrenheit(300)), "t: is 700 degF; must be from 32 degF to 300 degF"},
		{fault.Temperature("t", unit.Fahrenheit(300.0000001), unit.Fahrenheit(32), unit.Fahrenheit(300)), "t: is 300.0000001 degF; must be from 32 degF to 300 degF"},
		{fault.Temperature("t", unit.Fahrenheit(32), unit.Fahrenheit(32), unit.Fahrenheit(300)), ""},
		{fault.AboveZero("t", unit.Kelvin(0)), "t: is -459.67 degF; must be above absolute zero"},
		{fault.AboveZero("t", unit.Kelvin(1)), ""},
		{fault.Duration("hold", -time.Second, 0, time.Hour), "hold: is -1s; must be from 0s to 1h0m0s"},
		{fault.Duration("hold", time.Hour, 0, time.Hour), ""},
		{fault.Whole("pins", 25, 1, 24), "pins: is 25; must be from 1 to 24"},
		{fault.Whole("pins", 24, 1, 24), ""},
		{fault.Plain("dial", -3, 0.01, 300, "rev/min"), "dial: is -3 rev/min; must be from 0.01 rev/min to 300 rev/min"},
		{fault.Plain("dial", 300, 0.01, 300, "rev/min"), ""},
		{fault.Given("name", ""), "name: is missing"},
		{fault.Given("name", "A"), ""},
	} {
		if c.want == "" {
			require.NoError(t, c.err)
		} else {
			require.EqualError(t, c.err, c.want)
		}
	}
}

func TestFaultsGatherWithTheirPaths(t *testing.T) {
	f := fault.In("outer")
	require.NoError(t, f.Err())
	require.False(t, f.Any())
	f.Add(nil, nil)
	f.At("parts[0]", nil)
	require.NoError(t, f.Err())

	inner := fault.In("inner")
	inner.Add(fault.Above("OD", 0*unit.Inch, 0), fault.Given("name", ""))
	f.At(fault.Index("parts", 1), inner.Err())
	f.At("table", io.ErrUnexpectedEOF)
	f.New("skin", "is %v; must be finite", math.NaN())
	f.Add(io.EOF)
	require.True(t, f.Any())
	err := f.Err()
	require.EqualError(t, err, "outer: parts[1].OD: is 0 ft; must be above 0 ft\nouter: parts[1].name: is missing\n"+
		"outer: table: unexpected EOF\nouter: skin: is NaN; must be finite\nouter: EOF")
	require.ErrorIs(t, err, io.EOF)
	require.ErrorIs(t, err, io.ErrUnexpectedEOF)
	var paths []string
	for _, x := range public.List(err) {
		paths = append(paths, x.Path)
	}
	require.Equal(t, []string{"parts[1].OD", "parts[1].name", "table", "skin", ""}, paths)
	require.EqualError(t, fault.Join("pkg", nil, errors.New("pkg: said already")), "pkg: said already")
	require.NoError(t, fault.Join("pkg", nil, nil))
}

func TestValidatingWhatIsRightAllocatesNothing(t *testing.T) {
	x, d, w := 0.5, unit.Inch, unit.Kelvin(300)
	require.Zero(t, testing.AllocsPerRun(100, func() {
		f := fault.In("pkg")
		f.Add(fault.Between("x", x, 0, 1), fault.Above("d", d, 0), fault.Temperature("t", w, unit.Kelvin(1), unit.Kelvin(1000)))
		if f.Err() != nil {
			panic("a fault")
		}
	}))
}
