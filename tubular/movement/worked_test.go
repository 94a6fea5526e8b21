package movement

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"completion.example/tubular"
	"github.com/stretchr/testify/require"
)

// confinedPipe is 2-7/8 in pipe in a 6 in hole, in SI.
func confinedPipe() Confined {
	return Confined{Pipe: tubular.Pipe{OD: 0.073, ID: 0.062, Weight: 95, Material: tubular.Steel()}, Hole: 0.1524, Weight: 81, Inclination: 0.7}
}

func symbols(c Confined) precise.Values {
	return precise.Values{"E": float64(c.Pipe.Material.Young), "D": 0.073, "d": 0.062, "H": 0.1524, "w": 81, "θ": float64(c.Inclination), "μ": 0.3}
}

const stiff = `
	I = pi/64*(pow(D, 4) - pow(d, 4))
	r = (H - D)/2
`

// Loads of a pipe in a hole, with 256 bits, from the formulas as their sources have
// them: Lubinski 1950 (1.94), Wu 1992 (5.55), Dawson and Paslay 1984, Lubinski,
// Althouse and Logan 1962 (pitch).
func TestBucklingLoadsWorked(t *testing.T) {
	c := confinedPipe()
	of := symbols(c)
	precise.Equal(t, float64(c.VerticalSinusoidal()), stiff+"1.94*cbrt(E*I*w*w)", of)
	precise.Equal(t, float64(c.VerticalHelical()), stiff+"5.55*cbrt(E*I*w*w)", of)
	precise.Equal(t, float64(c.FrictionLimit(0.3)), stiff+"sqrt(4*E*I*w*cos(θ)/(μ*r))", of)
	precise.Equal(t, float64(c.Sinusoidal()), stiff+"2*sqrt(E*I*w*sin(θ)/r)", of)
	precise.Equal(t, float64(c.HelicalLeast()), stiff+"2*sqrt(2)*sqrt(E*I*w*sin(θ)/r)", of)
	precise.Equal(t, float64(c.Helical()), stiff+"2*(2*sqrt(2) - 1)*sqrt(E*I*w*sin(θ)/r)", of)
	precise.Equal(t, float64(c.HelicalMost()), stiff+"4*sqrt(2)*sqrt(E*I*w*sin(θ)/r)", of)

	h := Helix{Pipe: c.Pipe, Hole: c.Hole, Compression: 45000}
	of["F"] = 45000
	precise.Equal(t, float64(h.Pitch()), stiff+"pi*sqrt(8*E*I/F)", of)
	precise.Equal(t, h.Strain(), stiff+"-r*r*F/(4*E*I)", of)
	precise.Equal(t, float64(h.Contact()), stiff+"r*F*F/(4*E*I)", of)
	precise.Equal(t, float64(h.Curvature()), stiff+"r*F/(2*E*I)", of)
}

// A pipe that snakes: Mitchell 1999 (SPE 55039), strain 0.7285·r²/(4EI)·F^0.08·(F −
// Fp)^0.92, and the curvature of the turning 1.1227²·F^0.08·(F − Fp)^0.92·r/(2EI).
func TestSnakingWorked(t *testing.T) {
	c := confinedPipe()
	of := symbols(c)
	f := 1.7 * float64(c.Sinusoidal())
	of["F"] = f
	x := c.Under(unit.Force(-f))
	require.Equal(t, Sinusoidal, x.Mode)
	const by = stiff + `
		p = 2*sqrt(E*I*w*sin(θ)/r)
		s = F*exp(0.92*log(1 - p/F))
	`
	precise.Equal(t, x.Strain, by+"-0.7285*r*r/(4*E*I)*s", of)
	precise.Equal(t, float64(x.Curvature), by+"1.1227*1.1227*r/(2*E*I)*s", of)
	precise.Equal(t, float64(x.Onset), by+"p", of)
}

// The mean over a length whose lower part snakes, by three-point Gauss-Legendre, and
// how it changes: one with a straight end, worked; and one that passes into a helix.
func TestEquivalentLoadWorked(t *testing.T) {
	of := precise.Values{"fa": 500, "fb": 1900, "pa": 1000, "pb": 1100, "qa": 0.2, "qb": 0.3}
	e := ends{500, 1900, 1000, 1100, 0.2, 0.3}
	load, slope := e.equivalentLoad(2 * math.Sqrt2)
	const rule = `
		x = (pa - fa)/((fb - fa) - (pb - pa))
		g = sqrt(3/5)
		h = (1 - x)/2
		m = (1 + x)/2
		f1 = fa + (fb - fa)*(m - h*g)
		p1 = pa + (pb - pa)*(m - h*g)
		q1 = qa + (qb - qa)*(m - h*g)
		f2 = fa + (fb - fa)*m
		p2 = pa + (pb - pa)*m
		q2 = qa + (qb - qa)*m
		f3 = fa + (fb - fa)*(m + h*g)
		p3 = pa + (pb - pa)*(m + h*g)
		q3 = qa + (qb - qa)*(m + h*g)
		s1 = 0.7285*pow(f1, 0.08)*pow(f1 - p1, 0.92)
		s2 = 0.7285*pow(f2, 0.08)*pow(f2 - p2, 0.92)
		s3 = 0.7285*pow(f3, 0.08)*pow(f3 - p3, 0.92)
	`
	precise.Within(t, 1e-11, load, rule+"h/9*(5*s1 + 8*s2 + 5*s3)", of)
	precise.Within(t, 1e-11, slope, rule+`
		d1 = s1*(0.08/f1 + 0.92*(1 - q1)/(f1 - p1))
		d2 = s2*(0.08/f2 + 0.92*(1 - q2)/(f2 - p2))
		d3 = s3*(0.08/f3 + 0.92*(1 - q3)/(f3 - p3))
		h/9*(5*d1 + 8*d2 + 5*d3)`, of)

	// From all along snaking to a helix at the lower end: the middle rule doesn't
	// hold; the helix takes the compression itself, and its beginning moves.
	of = precise.Values{"fa": 1500, "fb": 3500, "p": 1000}
	e = ends{1500, 3500, 1000, 1000, 0, 0}
	load, slope = e.equivalentLoad(2)
	const both = `
		x = (2*p - fa)/(fb - fa)
		g = sqrt(3/5)
		f1 = fa + (fb - fa)*(x/2 - x/2*g)
		f2 = fa + (fb - fa)*x/2
		f3 = fa + (fb - fa)*(x/2 + x/2*g)
		s1 = 0.7285*pow(f1, 0.08)*pow(f1 - p, 0.92)
		s2 = 0.7285*pow(f2, 0.08)*pow(f2 - p, 0.92)
		s3 = 0.7285*pow(f3, 0.08)*pow(f3 - p, 0.92)
		snap = 0.7285*pow(2*p, 0.08)*pow(p, 0.92)
	`
	precise.Within(t, 1e-11, load, both+"x/18*(5*s1 + 8*s2 + 5*s3) + (2*p + fb)/2*(1 - x)", of)
	precise.Within(t, 1e-11, slope, both+`
		d1 = s1*(0.08/f1 + 0.92/(f1 - p))
		d2 = s2*(0.08/f2 + 0.92/(f2 - p))
		d3 = s3*(0.08/f3 + 0.92/(f3 - p))
		x/18*(5*d1 + 8*d2 + 5*d3) + (1 - x) + (2*p - snap)/(fb - fa)`, of)

	// Snaking all along: the middle alone.
	e = ends{1500, 1700, 1000, 1000, 0.1, 0.1}
	load, slope = e.equivalentLoad(2)
	precise.Equal(t, load, "0.7285*pow(1600, 0.08)*pow(600, 0.92)", nil)
	precise.Within(t, 1e-11, slope, "0.7285*pow(1600, 0.08)*pow(600, 0.92)*(0.08/1600 + 0.92*0.9/600)", nil)
	// Straight all along, and pulled.
	load, slope = (&ends{100, 200, 300, 300, 0, 0}).equivalentLoad(2)
	require.Zero(t, load)
	require.Zero(t, slope)
}

// Nodes lie 10 m apart where no spacing is given, and the string's own weight is by
// standard gravity (3rd CGPM, 1901).
func TestStandardValues(t *testing.T) {
	require.Equal(t, 10*unit.Metre, defaultSpacing)
	precise.Equal(t, gravity, "9.80665", nil)
	precise.Equal(t, gauss, "sqrt(3/5)", nil)
	require.Equal(t, 1.0, crossing(1, 2))
	require.Equal(t, 1.0, crossing(-1, -2))
	require.Equal(t, 0.25, crossing(-1, 3))
	require.True(t, alike(100, 101) && alike(101, 100) && !alike(100, 101.011) && !alike(101.011, 100))
}
