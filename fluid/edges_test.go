package fluid

import (
	"errors"
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
)

// ends holds a range on both of its ends and just beyond them, and what the error names as permitted.
func ends(t *testing.T, name string, f func(x float64) error, least, greatest float64, printed func(x float64) string) {
	t.Helper()
	for _, x := range []float64{least, greatest} {
		require.NoError(t, f(x), "%s at %v", name, x)
	}
	for _, x := range []float64{least - 1e-7*math.Max(math.Abs(least), 1), greatest + 1e-7*math.Max(math.Abs(greatest), 1)} {
		err := f(x)
		var r *RangeError
		require.True(t, errors.As(err, &r), "%s at %v: %v", name, x, err)
		require.Equal(t, printed(least), r.Least, name)
		require.Equal(t, printed(greatest), r.Greatest, name)
	}
}

func psi(x float64) string     { return unit.Pressure(x).Rounded(errorDigits) }
func kelvins(x float64) string { return unit.Kelvin(x).Rounded(errorDigits) }
func plain(x float64) string   { return number(x).Rounded(errorDigits) }

// Pressures from vacuum, −1 atm gauge, up to where each correlation ends.
func TestRangesFromVacuum(t *testing.T) {
	at := unit.Fahrenheit(150)
	const atm = 101325.0
	b, err := KrookBoyce(SystemNaCl, 9.5*unit.PoundPerGallon)
	require.NoError(t, err)
	ends(t, "brine", func(p float64) error { _, err := b.Density(unit.Pressure(p), at); return err }, -atm, float64(brinePressure), psi)
	c := ControlFluid{Points: []ControlPoint{{Temperature: unit.Celsius(0), Density: 1000}, {Temperature: unit.Celsius(100), Density: 950}}, Compression: 4e-10}
	ends(t, "control fluid", func(p float64) error { _, err := c.Density(unit.Pressure(p), at); return err }, -atm, float64(controlPGreatest), psi)
	ends(t, "solution", func(p float64) error {
		_, err := Solution{Salt: SodiumChloride, Fraction: 0.1, Compression: 4e-10}.Density(unit.Pressure(p), unit.Celsius(60))
		return err
	}, -atm, float64(brinePressure), psi)
	ends(t, "Osif", func(p float64) error { _, err := Osif(unit.Pressure(p), 100, at); return err }, float64(1000*unit.PSI)-atm, float64(20000*unit.PSI)-atm, psi)
	ends(t, "viscosity of gas", func(p float64) error {
		_, err := gasViscosity("gas", 0.018, 50, unit.Pressure(p), at)
		return err
	}, -atm, float64(viscosityPGreatest)-atm, psi)
	g := GasMixture{Methane: 1}
	real, err := g.real()
	require.NoError(t, err)
	hot := 400.0
	require.NoError(t, errOf(real.density(unit.Pressure(-atm), unit.Kelvin(hot))))
	greatest := zPGreatest*real.pressure - atm
	ends(t, "real gas", func(p float64) error { return errOf(real.density(unit.Pressure(p), unit.Kelvin(hot))) }, -atm, greatest*(1-1e-12), psi)
	ends(t, "real gas", func(k float64) error { return errOf(real.density(1e6, unit.Kelvin(k))) }, zTLeast/real.reciproc*(1+1e-12), zTGreatest/real.reciproc*(1-1e-12), kelvins)
	z, err := real.zFactor(unit.Pressure(-atm), unit.Kelvin(hot))
	require.NoError(t, err)
	require.Equal(t, 1.0, z, "thin gas is ideal")
	e, err := real.expansivity(unit.Pressure(-atm), unit.Kelvin(hot))
	require.NoError(t, err)
	require.Equal(t, 1/hot, float64(e))
	_, err = real.compressibility(unit.Pressure(-atm), unit.Kelvin(hot))
	var r *RangeError
	require.True(t, errors.As(err, &r))
	require.Equal(t, unit.Pressure(1-atm).Rounded(errorDigits), r.Least)
	require.Equal(t, psi(zPGreatest*real.pressure-atm), r.Greatest)

	s := Seawater{Salinity: 0.035}
	const practice = 35.16504 / 35 / 1000
	ends(t, "freezing seawater", func(x float64) error { _, err := Seawater{Salinity: x}.FreezingPoint(0); return err }, 4*practice*(1+1e-12), 40*practice*(1-1e-12), plain)
	require.NoError(t, errOf(s.Density(0, unit.Celsius(20))))
	require.Error(t, errOf(s.Density(-1, unit.Celsius(20))), "below the atmosphere")
	ends(t, "bridges", func(x float64) error { _, err := Bridges(SystemNaCl, unit.Density(x)); return err },
		8.95*float64(unit.PoundPerGallon)*(1+1e-12), 9.55*float64(unit.PoundPerGallon)*(1-1e-12), func(x float64) string { return unit.Density(x).Rounded(errorDigits) })
}

func errOf[T any](_ T, err error) error { return err }

// The slopes of Krook and Boyce's straight formula, β/(1 − β·p) and α/(1 + α·(T − 70 °F)), and the
// averages of API RP 13J.
func TestBrineSlopesWorked(t *testing.T) {
	b := Brine{At70F: 1300, Expansion: 5e-4, Compression: 4e-10}
	of := precise.Values{"b": 4e-10, "a": 5e-4, "p": 6e7, "d": 50}
	k, err := b.Compressibility(6e7, unit.Fahrenheit(160))
	require.NoError(t, err)
	precise.Within(t, 1e-13, float64(k), "b/(1 - b*p)", of)
	e, err := b.Expansivity(6e7, unit.Fahrenheit(160))
	require.NoError(t, err)
	precise.Within(t, 1e-12, float64(e), "a/(1 + a*d)", of)
	w := WellAverage{Wanted: 1280, Surface: unit.Fahrenheit(80), Bottom: unit.Fahrenheit(250), BottomPressure: 5e7}
	s, err := b.SurfaceWeight(w)
	require.NoError(t, err)
	precise.Within(t, 1e-12, float64(s.Thermal), "1300*5e-4*(170/1.8)/2", nil)
	precise.Within(t, 1e-12, float64(s.Squeeze), "1300*4e-10*5e7/2", nil)
}

// Fractions that add up to a little more or less than one are scaled to it; how little, on both sides.
func TestMixtureScaledToOne(t *testing.T) {
	one := GasMixture{Methane: 0.8, Ethane: 0.1, CarbonDioxide: 0.06, HydrogenSulphide: 0.04}
	k := 1 + 9e-5
	more := GasMixture{Methane: 0.8 * k, Ethane: 0.1 * k, CarbonDioxide: 0.06 * k, HydrogenSulphide: 0.04 * k}
	a, err := one.PseudoCritical()
	require.NoError(t, err)
	b, err := more.PseudoCritical()
	require.NoError(t, err)
	require.InEpsilon(t, float64(a.Pressure), float64(b.Pressure), 1e-13)
	require.InEpsilon(t, a.Temperature.Kelvin(), b.Temperature.Kelvin(), 1e-13)
	require.InEpsilon(t, one.MolarMass(), more.MolarMass(), 1e-13)
	for methane, ok := range map[float64]bool{1 + 0.99999e-4: true, 1 + 1.00001e-4: false, 1 - 0.99999e-4: true, 1 - 1.00001e-4: false} {
		_, err := GasMixture{Methane: min(methane, 1), Ethane: max(methane-1, 0)}.PseudoCritical()
		require.Equal(t, ok, err == nil, "%v", methane)
		var r *RangeError
		if errors.As(err, &r) {
			require.Equal(t, plain(1-1e-4), r.Least)
			require.Equal(t, plain(1+1e-4), r.Greatest)
		}
	}
	_, err = GasMixture{Methane: math.Nextafter(1, 2)}.PseudoCritical()
	require.ErrorContains(t, err, "methane: is 1; must be from 0 to 1")

	// Sutton's gas: nothing dry is more than all, nor less than a tenth.
	_, err = Gas{Gravity: 0.7, Nitrogen: -1e-9}.PseudoCritical()
	require.Error(t, err)
	_, err = Gas{Gravity: 1.2, CarbonDioxide: mostContaminants + 1e-7}.PseudoCritical()
	require.ErrorContains(t, err, "together: is "+plain(mostContaminants+1e-7)+"; must be from 0 to "+plain(mostContaminants))
	_, err = PseudoCritical{Pressure: 4.6e6, Temperature: unit.Kelvin(200)}.WichertAziz(0.5, 0.6)
	require.ErrorContains(t, err, "sum of both: is 1.1; must be from 0 to 1")
}

// Tables that somebody gives: how many points at least, in which order, and which one is named.
func TestTablesThatAreGiven(t *testing.T) {
	m := Measured{Pressures: []unit.Pressure{0, 1e7}, Temperatures: []unit.Temperature{unit.Celsius(10), unit.Celsius(90)},
		Densities: [][]unit.Density{{1000, 960}, {1004, 965}}}
	require.NoError(t, m.Validate())
	few := Measured{Pressures: m.Pressures[:1], Temperatures: m.Temperatures[:1], Densities: [][]unit.Density{{1000}}}
	require.ErrorContains(t, few.Validate(), "Pressures: has 1 pressures; must have two or more")
	require.ErrorContains(t, few.Validate(), "Temperatures: has 1 temperatures; must have two or more")
	turned := Measured{Pressures: []unit.Pressure{1e7, 1e6}, Temperatures: []unit.Temperature{unit.Celsius(90), unit.Celsius(10)}, Densities: m.Densities}
	require.ErrorContains(t, turned.Validate(), "Pressures[1]: is "+psi(1e6)+"; must be above the one before, "+psi(1e7))
	require.ErrorContains(t, turned.Validate(), "Temperatures[1]: is "+unit.Celsius(10).Rounded(errorDigits)+"; must be above the one before, "+unit.Celsius(90).Rounded(errorDigits))
	ends(t, "measured", func(p float64) error { return errOf(m.Density(unit.Pressure(p), unit.Celsius(50))) }, 0, 1e7, psi)
	ends(t, "measured", func(c float64) error { return errOf(m.Density(1, unit.Celsius(c))) }, 10, 90, func(c float64) string { return unit.Celsius(c).Rounded(errorDigits) })

	c := ControlFluid{Points: []ControlPoint{{Temperature: unit.Celsius(50), Density: 1000}, {Temperature: unit.Celsius(20), Density: 950}}}
	require.ErrorContains(t, c.Validate(), "is "+unit.Celsius(20).Rounded(errorDigits)+"; must be above the point before, "+unit.Celsius(50).Rounded(errorDigits))
	require.Error(t, errOf(c.Density(0, unit.Celsius(30))))
	c.Points = c.Points[:1]
	require.ErrorContains(t, c.Validate(), "Points: has 1 points")
	require.ErrorContains(t, errOf(c.Density(0, unit.Celsius(50))), "Points: has 1 points")
}

// Names that are read, and the list that an unknown one is answered with: nought isn't one of them.
func TestNamesThatAreRead(t *testing.T) {
	var salt Salt
	var system System
	for _, x := range []interface{ UnmarshalText([]byte) error }{&salt, &system} {
		err := x.UnmarshalText([]byte("nothing"))
		require.Error(t, err)
		require.Error(t, x.UnmarshalText(nil))
		require.NotContains(t, err.Error(), `[""`)
	}
	for _, name := range saltNames[1:] {
		require.NoError(t, salt.UnmarshalText([]byte(name)))
		require.ErrorContains(t, salt.UnmarshalText([]byte("?")), name)
	}
	for _, name := range systemNames[1:] {
		require.NoError(t, system.UnmarshalText([]byte(name)))
		require.ErrorContains(t, system.UnmarshalText([]byte("?")), name)
	}
	require.Error(t, salt.UnmarshalText([]byte(saltNames[0])))
	require.Error(t, system.UnmarshalText([]byte(systemNames[0])))
	_, err := Oil{At60F: 850, Commodity: Commodity(99)}.Density(0, unit.Celsius(20))
	require.ErrorContains(t, err, commodityNames[0])
	require.ErrorContains(t, err, commodityNames[len(commodityNames)-1])
}

// What can't be mixed: nothing, and a density wanted that only the fluid added has.
func TestWhatCannotBeMixed(t *testing.T) {
	_, err := Blend()
	require.ErrorContains(t, err, "batches: is empty")
	one, err := Blend(Batch{Volume: 1, Density: 1100})
	require.NoError(t, err)
	require.Equal(t, Batch{Volume: 1, Density: 1100}, one)
	have := Batch{Volume: 2, Density: 1100}
	_, err = Adjust(have, 1500, 1500)
	require.ErrorIs(t, err, ErrOutsideRange)
	same, err := Adjust(have, 1100, 1100)
	require.NoError(t, err)
	require.Zero(t, same.Added.Volume)
	_, err = Adjust(have, 1300, 1500)
	require.NoError(t, err)
	_, err = Adjust(have, 1600, 1500)
	require.ErrorIs(t, err, ErrOutsideRange)

	// Nothing to add, nothing to show.
	for _, x := range []struct {
		t    Treatment
		step string
	}{{Treatment{SaltAdded: 1}, "dry salt"}, {Treatment{WaterAdded: 1}, "fresh water"}, {Treatment{}, ""}} {
		var names []string
		for _, s := range x.t.Steps() {
			names = append(names, s.Name)
		}
		all := strings.Join(names, ", ")
		require.Contains(t, all, x.step)
		require.Equal(t, x.step == "fresh water", strings.Contains(all, "fresh water"))
	}
	_, err = Treat(SodiumChloride, Batch{Volume: 1, Density: 1100}, unit.Density(kellWater(20)), unit.Celsius(20))
	require.Error(t, err, "no water makes water of brine")
}
