package fluid

// The basic equation of IAPWS-IF97 region 1: the Gibbs free energy of liquid
// water,
//
//	g/(R·T) = γ(π, τ) = Σ n·(7.1 − π)^I·(τ − 1.222)^J,   π = p/16.53 MPa,  τ = 1386 K/T
//
// Source: IAPWS R7-97(2012), Eq. 7, Table 2 (coefficients), Table 3
// (relations).
const (
	region1Gas         = 461.526  // J/(kg·K), Eq. 1
	region1Pressure    = 16.53e6  // Pa
	region1Temperature = 1386.0   // K
	region1Pi          = 7.1      // shift of π
	region1Tau         = 1.222    // shift of τ
	waterTLeast        = 273.15   // K
	waterTGreatest     = 623.15   // K
	waterPGreatest     = 100e6    // Pa absolute
	waterPTriple       = 611.2126 // Pa, saturation at 273.15 K by Eq. 30
)

// region1Terms are the rows of Table 2 that carry pressure (I > 0); the others
// don't touch volume.
var region1Terms = [...]struct {
	i, j int
	n    float64
}{
	{1, -9, 0.28319080123804e-3}, {1, -7, -0.60706301565874e-3}, {1, -1, -0.18990068218419e-1},
	{1, 0, -0.32529748770505e-1}, {1, 1, -0.21841717175414e-1}, {1, 3, -0.52838357969930e-4},
	{2, -3, -0.47184321073267e-3}, {2, 0, -0.30001780793026e-3}, {2, 1, 0.47661393906987e-4},
	{2, 3, -0.44141845330846e-5}, {2, 17, -0.72694996297594e-15},
	{3, -4, -0.31679644845054e-4}, {3, 0, -0.28270797985312e-5}, {3, 6, -0.85205128120103e-9},
	{4, -5, -0.22425281908000e-5}, {4, -2, -0.65171222895601e-6}, {4, 10, -0.14341729937924e-12},
	{5, -8, -0.40516996860117e-6}, {8, -11, -0.12734301741641e-8}, {8, -6, -0.17424871230634e-9},
	{21, -29, -0.68762131295531e-18}, {23, -31, 0.14478307828521e-19}, {29, -38, 0.26335781662795e-22},
	{30, -39, -0.11947622640071e-22}, {31, -40, 0.18228094581404e-23}, {32, -41, -0.93537087292458e-25},
}

// region1Density returns the density, kg/m³, at p (absolute, Pa) and t (K):
// ρ = p*/(R·T·∂γ/∂π). The terms are those of region1Terms, grouped by the power
// of a = 7.1 − π so that no power is taken twice; b = τ − 1.222, c = 1/b, and
// f1 to f8 are the factors of 1, a, a², a³, a⁴ and a⁷.
func region1Density(p, t float64) float64 {
	a := region1Pi - p*(1/region1Pressure)
	b := region1Temperature/t - region1Tau
	c := t / (region1Temperature - region1Tau*t) // beside the other division instead of after it
	d := a * c
	a2, b2, c2, d2 := a*a, b*b, c*c, d*d
	b4, c4, d4 := b2*b2, c2*c2, d2*d2
	d8 := d4 * d4
	c5, c6, b6 := c4*c, c4*c2, b4*b2
	b10, c9, cd8 := b6*b4, c4*c5, c*d8

	f1 := c*(-0.18990068218419e-1+c6*(-0.60706301565874e-3+0.28319080123804e-3*c2)) - 0.32529748770505e-1 +
		b*(-0.21841717175414e-1-0.52838357969930e-4*b2)
	f2 := 2*-0.47184321073267e-3*(c2*c) + 2*-0.30001780793026e-3 +
		b*(2*0.47661393906987e-4-b2*(2*0.44141845330846e-5+b10*b4*(2*0.72694996297594e-15)))
	f3 := 3*-0.31679644845054e-4*c4 - 3*0.28270797985312e-5 - 3*0.85205128120103e-9*b6
	f4 := 4*-0.22425281908000e-5*c5 - 4*0.65171222895601e-6*c2 - 4*0.14341729937924e-12*b10
	f5 := 5 * -0.40516996860117e-6 * (c4 * c4)
	f8 := c6 * (8*-0.12734301741641e-8*c5 - 8*0.17424871230634e-9)
	high := d8 * d8 * (d4 * c9) * (21*-0.68762131295531e-18 + 23*0.14478307828521e-19*d2 +
		cd8*((29*0.26335781662795e-22+d*(30*-0.11947622640071e-22))+d2*(31*0.18228094581404e-23+d*(32*-0.93537087292458e-25))))

	slope := (f1 + a*f2) + a2*((f3+a*f4)+a2*(f5+a2*(a*f8))) + high
	return -region1Pressure / region1Gas / (t * slope)
}

// region1Slopes returns ∂γ/∂π, ∂²γ/∂π² and ∂²γ/∂π∂τ, straight from the table.
func region1Slopes(p, t float64) (gp, gpp, gpt float64) {
	a := region1Pi - p/region1Pressure
	b := region1Temperature/t - region1Tau
	const low, high = 42, 17
	var as [33]float64             // a^0 … a^32
	var bs [low + high + 1]float64 // b^-42 … b^17
	as[0], bs[low] = 1, 1
	for k := 1; k < len(as); k++ {
		as[k] = as[k-1] * a
	}
	for k := 1; k <= high; k++ {
		bs[low+k] = bs[low+k-1] * b
	}
	for k := 1; k <= low; k++ {
		bs[low-k] = bs[low-k+1] / b
	}
	for _, r := range region1Terms {
		i := float64(r.i)
		gp -= r.n * i * as[r.i-1] * bs[low+r.j]
		if r.i > 1 {
			gpp += r.n * i * (i - 1) * as[r.i-2] * bs[low+r.j]
		}
		gpt -= r.n * i * as[r.i-1] * float64(r.j) * bs[low+r.j-1]
	}
	return gp, gpp, gpt
}
