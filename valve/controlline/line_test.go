package controlline

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/dimension"
	"completion.example/tubular"

	"github.com/stretchr/testify/require"
)

// quarter is 3,000 m of 1/4 × 0.049 in line, vertical, of 316L.
var quarter = Line{
	OD: 0.25 * unit.Inch, Wall: 0.049 * unit.Inch, Length: 3000 * unit.Metre, TVD: 3000 * unit.Metre,
	Yield: 30 * unit.KSI, WallTolerance: 0.1,
}

var steel = func(l Line) Line {
	l.Young, l.Poisson = 28e6*unit.PSI, 0.3
	return l
}

var oil = LineFluid{
	Density: 870 * unit.KilogramPerCubicMetre, Viscosity: 10 * unit.Centipoise,
	Compressibility: unit.PerMegapascal / 1800, Expansivity: 7e-4 * unit.PerKelvin,
}

func ExampleLine_Storage() {
	s, err := quarter.Storage(oil, 3000*unit.PSI)
	if err != nil {
		panic(err)
	}
	fmt.Printf("%.2f L in the line, %.3f L to pressure it\n", s.Line.In(unit.Litre), s.Total().In(unit.Litre))
	// Output: 35.12 L in the line, 0.404 L to pressure it
}

func ExampleLine_Ratings() {
	r, err := quarter.Ratings()
	if err != nil {
		panic(err)
	}
	fmt.Printf("working %.0f psi, collapse %.0f psi\n", r.Working.In(unit.PSI), r.Collapse.In(unit.PSI))
	// Output: working 9261 psi, collapse 8717 psi
}

func ExampleLine_Head() {
	p, err := quarter.Head(oil)
	if err != nil {
		panic(err)
	}
	fmt.Printf("%.2f MPa; at constant density 25.59 MPa\n", p.In(unit.Megapascal))
	// Output: 25.78 MPa; at constant density 25.59 MPa
}

func ExampleLine_Warming() {
	w, err := steel(quarter).Warming(oil, 16e-6*unit.PerKelvin, 30*unit.KelvinDifference)
	if err != nil {
		panic(err)
	}
	fmt.Println(w.Rise.Rounded(3), "in a line that is blocked and warms by 30 K")
	// Output: 4891 psi in a line that is blocked and warms by 30 K
}

func ExampleLine_Load() {
	around := Outside{Bottom: 30 * unit.Megapascal}
	load, err := quarter.Load(oil, 5000*unit.PSI, around)
	if err != nil {
		panic(err)
	}
	fmt.Printf("burst %.0f %% of rating at 5,000 psi\n", 100*load.Burst)
	load, err = quarter.Load(oil, 0, around)
	if err != nil {
		panic(err)
	}
	fmt.Printf("collapse %.0f %% of rating when vented\n", 100*load.Collapse)
	// Output:
	// burst 54 % of rating at 5,000 psi
	// collapse 7 % of rating when vented
}

func ExampleLine_PanelFor() {
	p, err := quarter.PanelFor(oil, 40*unit.Megapascal)
	if err != nil {
		panic(err)
	}
	fmt.Println(p.Rounded(4))
	// Output: 2063 psi
}

// Collapse by API's regimes, by another package: in yield-strength collapse the
// two must agree to the last digits.
func TestCollapseAgreesWithTubular(t *testing.T) {
	for _, c := range [][2]float64{{0.25, 0.035}, {0.25, 0.049}, {0.375, 0.049}, {0.5, 0.083}} {
		l := quarter
		l.OD, l.Wall = unit.Length(c[0])*unit.Inch, unit.Length(c[1])*unit.Inch
		r, err := l.Ratings()
		require.NoError(t, err)
		p := tubular.Pipe{OD: l.OD, ID: l.OD - 2*r.ThinWall, Material: tubular.Steel().WithStrength(l.Yield, 0)}
		other, err := p.Collapse()
		require.NoError(t, err)
		require.Equal(t, tubular.YieldCollapse, other.Regime)
		require.InEpsilon(t, float64(other.Pressure), float64(r.Collapse), 1e-9)
		require.Empty(t, r.Beyond)
		require.InEpsilon(t, float64(p.YieldOpenEnds(1)), float64(r.YieldOpen), 1e-12)
		require.InEpsilon(t, float64(p.YieldClosedEnds(1)), float64(r.YieldClosed), 1e-12)
	}
	thin := quarter
	thin.Wall = 0.012 * unit.Inch
	r, err := thin.Ratings()
	require.NoError(t, err)
	require.NotEmpty(t, r.Beyond)
	p := tubular.Pipe{OD: thin.OD, ID: thin.OD - 2*r.ThinWall, Material: tubular.Steel().WithStrength(thin.Yield, 0)}
	other, err := p.Collapse()
	require.NoError(t, err)
	require.Less(t, other.Pressure, r.Collapse, "which is why Beyond is said")
}

// The compressible column is the limit of many thin layers.
func TestHeadAgreesWithLayers(t *testing.T) {
	const n = 200000
	p := 0.0
	dz := float64(quarter.TVD) / n
	for i := 0; i < n; i++ {
		mid := p + 0.5*float64(oil.Density)*math.Exp(float64(oil.Compressibility)*p)*9.80665*dz
		p += float64(oil.Density) * math.Exp(float64(oil.Compressibility)*mid) * 9.80665 * dz
	}
	head, err := quarter.Head(oil)
	require.NoError(t, err)
	require.InEpsilon(t, p, float64(head), 1e-10)

	stiff := oil
	stiff.Compressibility = 0
	head, err = quarter.Head(stiff)
	require.NoError(t, err)
	require.InEpsilon(t, 870*9.80665*3000, float64(head), 1e-14)

	stiff.Compressibility = 1e-18
	near, err := quarter.Head(stiff)
	require.NoError(t, err)
	require.InEpsilon(t, float64(head), float64(near), 1e-9)
}

// Thin-walled, the compliance of a free closed tube is (5/4 − ν)·D/(E·t), and of
// a clamped one (1 − ν²)·D/(E·t): the textbook results of water hammer (Wylie
// and Streeter, Fluid Transients, 1978: c1 = 5/4 − ν and 1 − ν²).
func TestWallComplianceThinWall(t *testing.T) {
	l := Line{OD: 100 * unit.Millimetre, Wall: 0.05 * unit.Millimetre, Young: 200e9, Poisson: 0.3}
	thin := float64(l.ID()/l.Wall) / float64(l.Young)
	require.InEpsilon(t, (1-0.3*0.3)*thin, float64(l.WallCompliance(confined.EndsFixed)), 2e-3)
	require.InEpsilon(t, (1.25-0.3)*thin, float64(l.WallCompliance(confined.EndsClosed)), 2e-3)

	// Thick-walled: a bore in endless rock widens by 2·(1 + ν)/E, whatever holds
	// the far ends (Jaeger and Cook).
	l.Wall = l.OD/2 - 0.05*unit.Millimetre
	require.InEpsilon(t, 2*1.3/200e9, float64(l.WallCompliance(confined.EndsFixed)), 1e-5)
	l.Young = 0
	require.Zero(t, l.WallCompliance(confined.EndsClosed))
}

// A line that can't give at all: the liquid's own pressure rise, αf/c per kelvin.
func TestWarmingRigid(t *testing.T) {
	w, err := quarter.Warming(oil, 0, 10)
	require.NoError(t, err)
	require.InEpsilon(t, 10*7e-4*1.8e9, float64(w.Rise), 1e-12)
	require.InEpsilon(t, float64(w.Free), 7e-3*float64(quarter.Volume()), 1e-12)
	// What came out when open is what must be pressed in again.
	s, err := quarter.Storage(oil, w.Rise)
	require.NoError(t, err)
	require.InEpsilon(t, float64(w.Free), float64(s.Total()), 1e-12)

	stiff := oil
	stiff.Compressibility = 0
	_, err = quarter.Warming(stiff, 0, 10)
	require.Error(t, err)
}

func TestLoadSigns(t *testing.T) {
	load, err := quarter.Load(oil, 0, Outside{})
	require.NoError(t, err)
	require.Zero(t, load.Top)
	require.Positive(t, load.Bottom, "inside minus outside")
	require.Zero(t, load.Collapse)
	load, err = quarter.Load(oil, 5000*unit.PSI, Outside{})
	require.NoError(t, err)
	require.InEpsilon(t, float64(-5000*unit.PSI/load.Ratings.Collapse), load.Collapse, 1e-12, "inside prevails everywhere")
	load, err = quarter.Load(oil, 0, Outside{Top: 10 * unit.Megapascal, Bottom: 50 * unit.Megapascal})
	require.NoError(t, err)
	require.Negative(t, load.Burst)
	require.InEpsilon(t, float64(-load.Bottom/load.Ratings.Collapse), load.Collapse, 1e-12)
	require.InDelta(t, -50+25.78, load.Bottom.In(unit.Megapascal), 0.005)
}

func TestLineScales(t *testing.T) {
	dimension.Check(t, dimension.Free, Line.Volume, steel(quarter))
	dimension.Check(t, dimension.Free, Line.Capacity, quarter)
	dimension.Check(t, dimension.Free, Line.LaminarLoss, quarter, oil.Viscosity, unit.LitrePerMinute)
	dimension.Check(t, dimension.Free, Line.WallCompliance, steel(quarter), confined.EndsClosed)
}

func TestLineRefuses(t *testing.T) {
	nan := math.NaN()
	for name, change := range map[string]func(*Line){
		"no OD":         func(l *Line) { l.OD = 0 },
		"NaN OD":        func(l *Line) { l.OD = unit.Length(nan) },
		"solid":         func(l *Line) { l.Wall = l.OD / 2 },
		"no wall":       func(l *Line) { l.Wall = 0 },
		"no length":     func(l *Line) { l.Length = 0 },
		"too deep":      func(l *Line) { l.TVD = l.Length + 1 },
		"upwards":       func(l *Line) { l.TVD = -1 },
		"Young":         func(l *Line) { l.Young = -1 },
		"NaN Young":     func(l *Line) { l.Young = unit.Pressure(nan) },
		"Poisson":       func(l *Line) { l.Poisson = 0.6 },
		"tolerance":     func(l *Line) { l.WallTolerance = 0.5 },
		"rough":         func(l *Line) { l.Roughness = l.OD },
		"endless":       func(l *Line) { l.Length = unit.Length(math.Inf(1)) },
		"NaN rough":     func(l *Line) { l.Roughness = unit.Length(nan) },
		"NaN Poisson":   func(l *Line) { l.Poisson = nan },
		"NaN depth":     func(l *Line) { l.TVD = unit.Length(nan) },
		"NaN wall":      func(l *Line) { l.Wall = unit.Length(nan) },
		"NaN tolerance": func(l *Line) { l.WallTolerance = nan },
	} {
		l := quarter
		change(&l)
		require.Error(t, l.Validate(), name)
		_, err := l.Head(oil)
		require.Error(t, err, name)
		_, err = l.Storage(oil, 1)
		require.Error(t, err, name)
		rated, err := l.Ratings() // asks for the wall alone
		if l.OD == quarter.OD && l.Wall == quarter.Wall && l.WallTolerance == quarter.WallTolerance {
			whole, ok := quarter.Ratings()
			require.NoError(t, errors.Join(err, ok), name)
			require.Equal(t, whole.Collapse, rated.Collapse, name)
		} else {
			require.Error(t, err, name)
		}
		_, err = l.Load(oil, 0, Outside{})
		require.Error(t, err, name)
		_, err = l.Friction(oil, 1e-6)
		require.Error(t, err, name)
		_, err = l.RateAt(oil, 1e6)
		require.Error(t, err, name)
		_, err = l.Response(oil)
		require.Error(t, err, name)
		_, err = l.Warming(oil, 0, 1)
		require.Error(t, err, name)
	}
	for name, q := range map[string]LineFluid{
		"zero":    {},
		"gas":     {Density: 100, Viscosity: 1e-5, Compressibility: 1e-6},
		"NaN":     {Density: unit.Density(nan), Viscosity: 1},
		"NaN mu":  {Density: 1, Viscosity: unit.Viscosity(nan)},
		"NaN c":   {Density: 1, Viscosity: 1, Compressibility: unit.Compressibility(nan)},
		"swells":  {Density: 1, Viscosity: 1, Expansivity: 1},
		"density": {Density: -1, Viscosity: 1},
	} {
		require.Error(t, q.Validate(), name)
		_, err := quarter.Head(q)
		require.Error(t, err, name)
	}
	soft := oil
	soft.Compressibility = maxCompressibility
	l := quarter
	l.Length, l.TVD = 20*unit.Kilometre, 20*unit.Kilometre
	_, err := l.Head(soft)
	require.ErrorContains(t, err, "Liquid.Compressibility: is")
	l = quarter
	l.Yield = 0
	_, err = l.Ratings()
	require.Error(t, err)
	_, err = quarter.Storage(oil, unit.Pressure(nan))
	require.Error(t, err)
	_, err = quarter.Warming(oil, 0, unit.TemperatureDifference(nan))
	require.Error(t, err)
}
