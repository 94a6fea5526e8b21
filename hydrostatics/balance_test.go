package hydrostatics

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"github.com/stretchr/testify/require"
)

func TestKill(t *testing.T) {
	s := ShutIn{Pressure: 450 * unit.PSI, Density: 12 * unit.PoundPerGallon, TVD: 9500 * unit.Foot}
	f := s.Formation()
	require.InEpsilon(t, float64(s.KillDensity(0)), float64(f.KillDensity(0)), 1e-14, "both ways to one density")
	require.InEpsilon(t, float64(s.KillDensity(200*unit.PSI)), float64(f.KillDensity(200*unit.PSI)), 1e-14)
	// The kill density gives just the margin.
	require.InDelta(t, 200, f.Overbalance(Pressure(f.KillDensity(200*unit.PSI), f.TVD)).In(unit.PSI), 1e-9)
	require.Negative(t, float64(f.Overbalance(Pressure(s.Density, s.TVD))), "a well with shut-in pressure is underbalanced")
	workingtest.Check(t, s.Steps(200*unit.PSI))
	workingtest.Check(t, f.Steps(200*unit.PSI))
	workingtest.Check(t, f.BalanceSteps(4500*unit.PSI))
}

func TestCushionClosedForm(t *testing.T) {
	c := Cushion{
		Formation: Formation{5000 * unit.PSI, 10000 * unit.Foot}, Underbalance: 500 * unit.PSI,
		Light: Incompressible(7 * unit.PoundPerGallon), Heavy: Incompressible(10 * unit.PoundPerGallon),
	}
	a, err := c.Length()
	require.NoError(t, err)
	full := Pressure(10*unit.PoundPerGallon, 10000*unit.Foot)
	want := float64(full-4500*unit.PSI) / (gravity * float64(3*unit.PoundPerGallon))
	require.InDelta(t, want, float64(a.LevelTVD), 1e-8)
	require.InDelta(t, 4500, a.Well.In(unit.PSI), 1e-9)
	require.InDelta(t, float64(Pressure(7*unit.PoundPerGallon, a.LevelTVD)), float64(a.Interface), 1e-6)
	workingtest.Check(t, c.LengthSteps(a))
	require.Len(t, c.LengthSteps(a), 4)

	// An empty hole: the fluid level.
	c.Light = nil
	a, err = c.Length()
	require.NoError(t, err)
	require.InDelta(t, float64(full-4500*unit.PSI)/float64(Gradient(10*unit.PoundPerGallon)), float64(a.LevelTVD), 1e-8)
	require.Zero(t, a.Interface)
	workingtest.Check(t, c.LengthSteps(a))
	require.Len(t, c.LengthSteps(a), 3, "no pressure at the level of an empty hole")
	// With pressure on top the level is lower by its head.
	c.Surface = 100 * unit.PSI
	b, err := c.Length()
	require.NoError(t, err)
	require.InDelta(t, float64(Head(100*unit.PSI, 10*unit.PoundPerGallon)), float64(b.LevelTVD-a.LevelTVD), 1e-8)
}

func TestCushionThatCannot(t *testing.T) {
	c := Cushion{
		Formation: Formation{5000 * unit.PSI, 10000 * unit.Foot}, Underbalance: 2000 * unit.PSI,
		Light: Incompressible(7 * unit.PoundPerGallon), Heavy: Incompressible(10 * unit.PoundPerGallon),
	}
	_, err := c.Length()
	require.ErrorIs(t, err, ErrNoBalance, "all light is still too heavy")
	require.ErrorContains(t, err, "3000 psi is wanted")
	c.Underbalance = -500 * unit.PSI
	_, err = c.Length()
	require.ErrorIs(t, err, ErrNoBalance, "all heavy is still too light")
	// The very ends are possible.
	for _, rho := range []unit.Density{7 * unit.PoundPerGallon, 10 * unit.PoundPerGallon} {
		c.Underbalance = 5000*unit.PSI - Pressure(rho, 10000*unit.Foot)
		a, err := c.Length()
		require.NoError(t, err)
		want := 0.0
		if rho == 7*unit.PoundPerGallon {
			want = 10000
		}
		require.InDelta(t, want, a.LevelTVD.In(unit.Foot), 1e-6)
	}
	// A surface pressure below zero can't be.
	c.Underbalance = 5000 * unit.PSI
	_, err = c.Pressure(0)
	require.ErrorIs(t, err, ErrNoBalance)
	_, err = c.Pressure(10000 * unit.Foot)
	require.ErrorIs(t, err, ErrNoBalance)
	_, err = Cushion{Light: Incompressible(-1), Surface: unit.Pressure(math.NaN())}.Length()
	for _, want := range []string{"Formation.TVD: is 0 ft", "Heavy: is missing", "Light.Density: is", "Surface: is NaN"} {
		require.ErrorContains(t, err, want)
	}
	_, err = Cushion{Formation: Formation{1, 100}, Heavy: Incompressible(1)}.Pressure(101)
	require.ErrorContains(t, err, "length: is")
}

// A gas cushion over brine: the pressure and the length are inverses, and the
// well stands at what was wanted.
func TestGasCushion(t *testing.T) {
	c := Cushion{
		Formation: Formation{30 * unit.Megapascal, 3000}, Underbalance: 5 * unit.Megapascal,
		Light: idealGas{0.028, 1}, Heavy: brine, Temperature: straight(t, 20, 0.03),
	}
	for _, l := range []unit.Length{700, 1500, 2900} {
		a, err := c.Pressure(l)
		require.NoError(t, err)
		require.InDelta(t, 25, a.Well.In(unit.Megapascal), 1e-6)
		require.Greater(t, a.Interface, a.Surface)
		workingtest.Check(t, c.PressureSteps(a))
		require.Len(t, c.PressureSteps(a), 3)
		c.Surface = a.Surface
		b, err := c.Length()
		require.NoError(t, err)
		require.InDelta(t, float64(l), float64(b.LevelTVD), 1e-3)
		workingtest.Check(t, c.LengthSteps(b))
	}
}

// The greatest density under a surface pressure is the inverse of the greatest
// surface pressure over a density.
func TestAllowableDensityIsTheInverse(t *testing.T) {
	fracture, shoe := 0.8*unit.PSIPerFoot, 6000*unit.Foot
	for _, rho := range []unit.Density{7 * unit.PoundPerGallon, 10 * unit.PoundPerGallon, 17 * unit.PoundPerGallon} {
		p := AllowableSurfacePressure(fracture, rho, shoe)
		require.InEpsilon(t, float64(rho), float64(AllowableDensity(fracture, p, shoe)), 1e-14)
	}
	require.Negative(t, float64(AllowableSurfacePressure(fracture, 17*unit.PoundPerGallon, shoe)), "17 lb/gal breaks it down alone")
}

func TestMaximumSurfacePressure(t *testing.T) {
	mud := 10 * unit.PoundPerGallon
	column, err := NewColumn([]Layer{{Incompressible(mud), 0, 10000 * unit.Foot}}, nil, Reference{})
	require.NoError(t, err)
	shoe := FracturePoint("shoe", 0.8*unit.PSIPerFoot, 6000*unit.Foot)
	casing := WeakPoint{Name: "casing head", TVD: 0, Rating: 3000 * unit.PSI, Share: 0.8}
	plug := WeakPoint{Name: "plug", TVD: 9000 * unit.Foot, Rating: 5000 * unit.PSI, Share: 1, Outside: 4000 * unit.PSI}
	l, err := MaximumSurfacePressure(column, []WeakPoint{casing, shoe, plug})
	require.NoError(t, err)
	require.Equal(t, 1, l.Weakest)
	both, err := MaximumSurfacePressure(column, []WeakPoint{casing, shoe, shoe})
	require.NoError(t, err)
	require.Equal(t, 1, both.Weakest, "of two alike the first is named")
	require.InDelta(t, float64(AllowableSurfacePressure(0.8*unit.PSIPerFoot, mud, 6000*unit.Foot)), float64(l.Pressure), 1e-6)
	require.InDelta(t, 2400, l.Points[0].Surface.In(unit.PSI), 1e-9)
	require.InDelta(t, 9000-9000*40./77, l.Points[2].Surface.In(unit.PSI), 1e-9)
	require.InDelta(t, 6000*40./77, l.Points[1].Hydrostatic.In(unit.PSI), 1e-9)
	workingtest.Check(t, l.Steps())
	require.Empty(t, SurfaceLimit{}.Steps())

	// The pressure it allows is at every point no more than the point bears, and
	// just that at the weakest; with a compressible column too.
	oil := SlightlyCompressible{Reference: 850, Compressibility: 1e-9, Temperature: unit.Celsius(15), Expansivity: 8e-4}
	column, err = NewColumn([]Layer{{oil, 0, 10000 * unit.Foot}}, straight(t, 15, 0.03), Reference{})
	require.NoError(t, err)
	l, err = MaximumSurfacePressure(column, []WeakPoint{casing, shoe, plug})
	require.NoError(t, err)
	under, err := column.WithReference(Reference{Pressure: l.Pressure})
	require.NoError(t, err)
	for i, w := range l.Points {
		p, err := under.At(w.TVD)
		require.NoError(t, err)
		require.LessOrEqual(t, float64(p), float64(w.Inside)*(1+1e-12))
		if i == l.Weakest {
			require.InEpsilon(t, float64(w.Inside), float64(p), 1e-11)
		}
	}

	_, err = MaximumSurfacePressure(column, nil)
	require.Error(t, err)
	_, err = MaximumSurfacePressure(column, []WeakPoint{{Name: "x", TVD: -1, Rating: -1, Share: 2}, {Name: "y", Rating: 1, Share: math.NaN()}})
	for _, want := range []string{"points[0].TVD: is", "points[0].Rating: is", "points[0].Share: is 2", "points[1].Share: is NaN"} {
		require.ErrorContains(t, err, want)
	}
	_, err = MaximumSurfacePressure(nil, []WeakPoint{casing})
	require.ErrorIs(t, err, ErrOutsideColumn)
}

func TestLayersAlong(t *testing.T) {
	p := path(t, []float64{0, 1000, 2000, 2500, 3000}, []float64{0, 0, 80, 95, 95}, []float64{0, 0, 0, 0, 0})
	at := func(md unit.Length) unit.Length {
		h, err := p.TVD(md)
		require.NoError(t, err)
		return h
	}
	layers, err := LayersAlong(p, []MeasuredLayer{{Incompressible(1000), 0, 900}, {Incompressible(1100), 900, 1800}, {Incompressible(1200), 1800, 3000}})
	require.NoError(t, err)
	require.Equal(t, unit.Length(900), layers[1].TopTVD)
	require.Equal(t, at(1800), layers[1].BottomTVD)
	require.Greater(t, layers[2].BottomTVD, at(2500)-1e-9, "down to the deepest point of the hole")
	require.Greater(t, layers[2].BottomTVD, at(3000))
	_, err = NewColumn(layers, nil, Reference{})
	require.NoError(t, err)
	// A boundary in the rising part leaves a fluid above and below another.
	_, err = LayersAlong(p, []MeasuredLayer{{Incompressible(1000), 0, 2800}, {Incompressible(1200), 2800, 3000}})
	require.ErrorContains(t, err, "must stay within the layer's ends")
	_, err = LayersAlong(p, []MeasuredLayer{{Incompressible(1000), 100, 50}, {Incompressible(1200), 60, 3001}})
	require.ErrorContains(t, err, "layers[0].BottomMD: is")
	require.ErrorIs(t, err, ErrOutsidePath)
	_, err = LayersAlong(nil, []MeasuredLayer{{Incompressible(1000), 0, 50}})
	require.ErrorIs(t, err, ErrOutsidePath)
}

func FuzzCushion(f *testing.F) {
	f.Add(3e7, 3000.0, 5e6, 0.0, 800.0, 1100.0, 1000.0)
	f.Add(1.0, 1e-9, 0.0, -1.0, 0.0, 1e300, 0.0)
	f.Fuzz(func(t *testing.T, p, h, under, surface, light, heavy, length float64) {
		c := Cushion{
			Formation: Formation{unit.Pressure(p), unit.Length(h)}, Underbalance: unit.Pressure(under), Surface: unit.Pressure(surface),
			Light: Incompressible(light), Heavy: Incompressible(heavy),
		}
		for _, f := range []func() (CushionAnswer, error){c.Length, func() (CushionAnswer, error) { return c.Pressure(unit.Length(length)) }} {
			a, err := f()
			if err != nil {
				continue
			}
			if !(a.LevelTVD >= 0 && a.LevelTVD <= c.Formation.TVD) {
				t.Fatalf("%+v of %+v", a, c)
			}
			for _, x := range []unit.Pressure{a.Surface, a.Interface, a.Well} {
				if math.IsNaN(float64(x)) || math.IsInf(float64(x), 0) {
					t.Fatalf("%+v of %+v", a, c)
				}
			}
			if math.Abs(float64(a.Well-(c.Formation.Pressure-c.Underbalance))) > 1e-6*(math.Abs(p)+math.Abs(under)+math.Abs(float64(a.Surface))+heavy*10*h+light*10*h) {
				t.Fatalf("%+v misses what %+v wanted", a, c)
			}
		}
	})
}
