package fluid

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
)

// Formulas of the package typed from their sources' statements and worked with
// 256 bits: every number in them counts.

func TestKellAndSolutionWorked(t *testing.T) {
	const kell = "(999.83952 + 16.945176*t - 7.9870401e-3*pow(t, 2) - 46.170461e-6*pow(t, 3) + 105.56302e-9*pow(t, 4) - 280.54253e-12*pow(t, 5))/(1 + 16.879850e-3*t)"
	for _, c := range []float64{4, 37, 99, 149} {
		precise.Equal(t, kellWater(c), kell, precise.Values{"t": c})
	}
	for _, row := range printedTable(t, "solution.csv") {
		var s Salt
		require.NoError(t, s.UnmarshalText([]byte(row[0])))
		c := numbers(t, row[1:])
		of := precise.Values{"c0": c[0], "c1": c[1], "c2": c[2], "c3": c[3], "c4": c[4], "w": 0.8 * c[5], "t": c[6] + 0.7*(c[7]-c[6])}
		const rho = "rw = " + kell + "\nra = (c0*w + c1)*exp(1e-6*pow(t + c4, 2))/(w + c2 + c3*t)\n"
		got, err := Solution{Salt: s, Fraction: of["w"]}.Density(0, unit.Celsius(of["t"]))
		require.NoError(t, err)
		precise.Within(t, 5e-12, float64(got), rho+"1/((1 - w)/rw + w/ra)", of)
		// expansivity against the slope of the same formula, by its values at 256 bits
		a, err := Solution{Salt: s, Fraction: of["w"]}.Expansivity(0, unit.Celsius(of["t"]))
		require.NoError(t, err)
		up, down := precise.Values{}, precise.Values{}
		for k, v := range of {
			up[k], down[k] = v, v
		}
		const h = 0x1p-20
		up["t"], down["t"] = of["t"]+h, of["t"]-h
		v := rho + "(1 - w)/rw + w/ra"
		slope := (precise.Float(t, v, up) - precise.Float(t, v, down)) / (2 * h)
		require.InEpsilon(t, slope*float64(got), float64(a), 1e-6, row[0])
	}
	l, _ := SodiumChloride.laliberte()
	// every coefficient of water's expansion counts: worked derivative of Kell's quotient
	for _, c := range []float64{30, 140} {
		precise.Within(t, 1e-10, l.expansivity(0, c), "n = 999.83952 + 16.945176*t - 7.9870401e-3*pow(t, 2) - 46.170461e-6*pow(t, 3) + 105.56302e-9*pow(t, 4) - 280.54253e-12*pow(t, 5)\n"+
			"dn = 16.945176 - 2*7.9870401e-3*t - 3*46.170461e-6*pow(t, 2) + 4*105.56302e-9*pow(t, 3) - 5*280.54253e-12*pow(t, 4)\n"+
			"16.879850e-3/(1 + 16.879850e-3*t) - dn/n", precise.Values{"t": c})
	}
	salt := precise.Values{"c0": l.c0, "c1": l.c1, "c2": l.c2, "c3": l.c3, "c4": l.c4, "t": 60}
	precise.Within(t, 1e-11, l.expansivity(1, 60), "c3/(1 + c2 + c3*t) - 2e-6*(t + c4)", salt)
}

func TestOsifWorked(t *testing.T) {
	k, err := Osif(5e7, 120, unit.Fahrenheit(212))
	require.NoError(t, err)
	precise.Equal(t, float64(k), "psi = 0.45359237*9.80665/pow(0.0254, 2)\n1/(7.033*(5e7 + 101325)/psi + 0.5415*120000 - 537*212 + 403300)/psi", nil)
}

// API MPMS 11.1 (2004), 11.1.6.1 in its own steps, all commodities and bands.
func TestVolumeCorrectionWorked(t *testing.T) {
	for _, c := range []struct {
		commodity  Commodity
		rho        float64
		k0, k1, k2 string
	}{
		{Crude, 850, "341.0957", "0", "0"}, {LubricatingOil, 880, "0", "0.34878", "0"},
		{RefinedProduct, 838.3127, "103.8720", "0.2701", "0"}, {RefinedProduct, 838.3126, "330.3010", "0", "0"},
		{RefinedProduct, 787.5195, "330.3010", "0", "0"}, {RefinedProduct, 787.5194, "1489.0670", "0", "-0.00186840"},
		{RefinedProduct, 770.3520, "1489.0670", "0", "-0.00186840"}, {RefinedProduct, 770.3519, "192.4571", "0.2438", "0"},
	} {
		for _, f := range []float64{-40, 140, 290} {
			temperature := unit.Fahrenheit(f)
			v, err := Oil{c.commodity, unit.Density(c.rho)}.VolumeCorrection(7e6, temperature)
			require.NoError(t, err)
			of := precise.Values{"tc": temperature.Celsius(), "rho": c.rho}
			steps := fmt.Sprintf("K0 = %s\nK1 = %s\nK2 = %s\n", c.k0, c.k1, c.k2) + `
				x = tc/630
				d = -0.148759*x - 0.267408*pow(x, 2) + 1.080760*pow(x, 3) + 1.269056*pow(x, 4) - 4.089591*pow(x, 5) - 1.871251*pow(x, 6) + 7.438081*pow(x, 7) - 3.536296*pow(x, 8)
				ts = 1.8*(tc - d) + 32
				d60 = 0.01374979547
				A = d60/2*((K0/rho + K1)/rho + K2)
				B = (2*K0 + K1*rho)/(K0 + (K1 + K2*rho)*rho)
				rs = rho*(1 + (exp(A*(1 + 0.8*A)) - 1)/(1 + A*(1 + 1.6*A)*B))
				a60 = (K0/rs + K1)/rs + K2
				dt = ts - 60.006874897735
				Fp = 1e-5*exp(-1.9947 + 0.00013427*ts + (793920 + 2326*ts)/pow(rs, 2))
				psi = 0.45359237*9.80665/pow(0.0254, 2)
			`
			precise.Equal(t, v.Expansion.In(unit.PerFahrenheit), steps+"a60", of)
			precise.Equal(t, v.Temperature, steps+"exp(-a60*dt*(1 + 0.8*a60*(dt + d60)))", of)
			precise.Equal(t, float64(v.Compression), steps+"Fp/psi", of)
			precise.Equal(t, v.Pressure, steps+"1/(1 - Fp*7e6/psi)", of)
			precise.Equal(t, v.Total(), steps+"exp(-a60*dt*(1 + 0.8*a60*(dt + d60)))/(1 - Fp*7e6/psi)", of)
			// expansivity by the slope of the density
			const h = 0x1p-12
			at := func(dt float64) float64 {
				rho, err := Oil{c.commodity, unit.Density(c.rho)}.Density(7e6, unit.Fahrenheit(f+dt))
				require.NoError(t, err)
				return math.Log(float64(rho))
			}
			a, err := Oil{c.commodity, unit.Density(c.rho)}.Expansivity(7e6, temperature)
			require.NoError(t, err)
			require.InEpsilon(t, -(at(h)-at(-h))/(2*h), a.In(unit.PerFahrenheit), 1e-7)
		}
	}
}

// Beggs and Robinson (1975).
func TestDeadOilViscosityWorked(t *testing.T) {
	mu, err := Oil{Crude, 870}.Viscosity(0, unit.Fahrenheit(180))
	require.NoError(t, err)
	precise.Equal(t, mu.In(unit.Centipoise), "api = 141.5*999.016/870 - 131.5\npow(10, pow(180, -1.163)*exp(6.9824 - 0.04658*api)) - 1", nil)
}

// IAPWS R14-08 Eq. 1, and R7-97 Eq. 30.
func TestPhaseLinesWorked(t *testing.T) {
	for _, k := range []float64{252, 262, 271} {
		precise.Equal(t, meltingPressure(k), "th = T/273.16\n611.657*(1 + 0.119539337e7*(1 - pow(th, 3)) + 0.808183159e5*(1 - pow(th, 25.75)) + 0.333826860e4*(1 - pow(th, 103.75)))", precise.Values{"T": k})
	}
	for _, k := range []float64{280, 450, 620} {
		precise.Within(t, 2e-12, boilingPressure(k), `
			th = T - 0.23855557567849/(T - 0.65017534844798e3)
			A = th*th + 0.11670521452767e4*th - 0.72421316703206e6
			B = -0.17073846940092e2*th*th + 0.12020824702470e5*th - 0.32325550322333e7
			C = 0.14915108613530e2*th*th - 0.48232657361591e4*th + 0.40511340542057e6
			1e6*pow(2*C/(-B + sqrt(B*B - 4*A*C)), 4)
		`, precise.Values{"T": k})
	}
}

// IAPWS R12-08, Eqs. 10 to 12 with Tables 1 and 2, row by row; the range is left
// so that the small rows count.
func TestWaterViscosityWorked(t *testing.T) {
	for _, at := range [][2]float64{{998, 300}, {100, 500}, {1200, 250}, {600, 1100}} {
		precise.Within(t, 1e-11, float64(WaterViscosity(unit.Density(at[0]), unit.Kelvin(at[1]))), `
			x = 647.096/T - 1
			y = rho/322 - 1
			b = T/647.096
			m0 = 100*sqrt(b)/(1.67752 + 2.20462/b + 0.6366564/pow(b, 2) - 0.241605/pow(b, 3))
			s = 0.520094 + 0.0850895*x - 1.08374*pow(x, 2) - 0.289555*pow(x, 3)
			s = s + y*(0.222531 + 0.999115*x + 1.88797*pow(x, 2) + 1.26613*pow(x, 3) + 0.120573*pow(x, 5))
			s = s + pow(y, 2)*(-0.281378 - 0.906851*x - 0.772479*pow(x, 2) - 0.489837*pow(x, 3) - 0.257040*pow(x, 4))
			s = s + pow(y, 3)*(0.161913 + 0.257399*x)
			s = s + pow(y, 4)*(-0.0325372 + 0.0698452*pow(x, 3))
			s = s + pow(y, 5)*0.00872102*pow(x, 4)
			s = s + pow(y, 6)*(-0.00435673*pow(x, 3) - 0.000593264*pow(x, 5))
			1e-6*m0*exp(rho/322*s)
		`, precise.Values{"rho": at[0], "T": at[1]})
	}
}

// Lemmon and Jacobsen (2004), Eqs. 1 to 4 with their tables.
func TestNitrogenViscosityWorked(t *testing.T) {
	for _, at := range [][2]float64{{300, 40}, {150, 12000}, {300, 25000}, {600, 20000}} {
		precise.Equal(t, nitrogenViscosity(at[0], at[1]), `
			x = log(T/98.94)
			omega = exp(0.431 - 0.4623*x + 0.08406*pow(x, 2) + 0.005341*pow(x, 3) - 0.00331*pow(x, 4))
			thin = 0.0266958*sqrt(28.01348*T)/(0.3656*0.3656*omega)
			tau = 126.192/T
			d = c/11183.9
			dense = 10.72*pow(tau, 0.1)*pow(d, 2) + 0.03989*pow(tau, 0.25)*pow(d, 10)*exp(-d) + 0.001208*pow(tau, 3.2)*pow(d, 12)*exp(-d)
			dense = dense - 7.402*pow(tau, 0.9)*pow(d, 2)*exp(-pow(d, 2)) + 4.620*pow(tau, 0.3)*d*exp(-pow(d, 3))
			1e-6*(thin + dense)
		`, precise.Values{"T": at[0], "c": at[1]})
	}
}

// Lee, Gonzalez and Eakin (1966).
func TestGasViscosityWorked(t *testing.T) {
	mu, err := gasViscosity("gas", 0.0195, 145, 2e7, unit.Fahrenheit(200))
	require.NoError(t, err)
	precise.Equal(t, float64(mu), `
		M = 19.5
		T = 659.67
		K = (9.4 + 0.02*M)*pow(T, 1.5)/(209 + 19*M + T)
		X = 3.5 + 986/T + 0.01*M
		1e-7*K*exp(X*pow(0.145, 2.4 - 0.2*X))
	`, nil)
}

// Wichert and Aziz (1972), and Sutton's (1985) pseudo-critical properties that it corrects.
func TestPseudoCriticalWorked(t *testing.T) {
	g := Gas{Gravity: 0.8, Nitrogen: 0.03, CarbonDioxide: 0.1, HydrogenSulphide: 0.05}
	pc, err := g.PseudoCritical()
	require.NoError(t, err)
	const sour = `
		c = 0.1
		h = 0.05
		dry = 1 - 0.03 - c - h
		g = (0.8 - (0.03*28.0134 + c*44.0095 + h*34.0809)/28.9625)/dry
		psi = 0.45359237*9.80665/pow(0.0254, 2)
		p = dry*(756.8 - 131.0*g - 3.6*g*g)*psi + 0.03*3.3958e6 + c*7.3773e6 + h*9e6
		T = 1.8*(dry*(169.2 + 349.5*g - 74.0*g*g)/1.8 + 0.03*126.192 + c*304.1282 + h*373.1)
		A = c + h
		e = 120*(pow(A, 0.9) - pow(A, 1.6)) + 15*(sqrt(h) - pow(h, 4))
	`
	precise.Equal(t, pc.Temperature.Rankine(), sour+"T - e", nil)
	precise.Equal(t, float64(pc.Pressure), sour+"p*(T - e)/(T + h*(1 - h)*e)", nil)
	sweet := PseudoCritical{4.6e6, unit.Kelvin(200)}
	same, err := sweet.WichertAziz(0, 0)
	require.NoError(t, err)
	require.Equal(t, sweet, same)
}

// Dranchuk and Abou-Kassem (1975): the Z found satisfies the equation as printed.
func TestZFactorWorked(t *testing.T) {
	for _, at := range [][2]float64{{0.5, 1.1}, {3, 1.3}, {8, 1.6}, {15, 2.4}, {29, 2.9}, {25, 1.06}} {
		z, err := ZFactor(at[0], at[1])
		require.NoError(t, err)
		precise.Within(t, 5e-12, z, `
			r = 0.27*ppr/(Z*T)
			C1 = 0.3265 - 1.0700/T - 0.5339/pow(T, 3) + 0.01569/pow(T, 4) - 0.05165/pow(T, 5)
			C2 = 0.5475 - 0.7361/T + 0.1844/pow(T, 2)
			C3 = 0.1056*(-0.7361/T + 0.1844/pow(T, 2))
			1 + C1*r + C2*pow(r, 2) - C3*pow(r, 5) + 0.6134*(1 + 0.7210*pow(r, 2))*pow(r, 2)/pow(T, 3)*exp(-0.7210*pow(r, 2))
		`, precise.Values{"Z": z, "ppr": at[0], "T": at[1]})
		// and its two slopes are those of r = ρ·Z(ρ)
		s := newIsotherm(at[1])
		rho := 0.27 * at[0] / (z * at[1])
		const h = 0x1p-13
		up, slopeUp, _ := s.ideal(rho + h)
		down, slopeDown, _ := s.ideal(rho - h)
		_, slope, bend := s.ideal(rho)
		require.InDelta(t, (up-down)/(2*h), slope, 1e-6)
		require.InDelta(t, (slopeUp-slopeDown)/(2*h), bend, 1e-5)
	}
}

// Millero (1978) as in UNESCO 44: freezing of seawater.
func TestFreezingPointWorked(t *testing.T) {
	f, err := Seawater{0.0351}.FreezingPoint(3e6)
	require.NoError(t, err)
	precise.Within(t, 1e-11, f.Kelvin(), "S = 0.0351*35000/35.16504\n273.15 - 0.0575*S + 1.710523e-3*pow(S, 1.5) - 2.154996e-4*S*S - 7.53e-4*300", nil)
	precise.Within(t, 1e-11, f.Celsius(), "S = 0.0351*35000/35.16504\n-0.0575*S + 1.710523e-3*pow(S, 1.5) - 2.154996e-4*S*S - 7.53e-4*300", nil)
}

func TestAverageGasColumnWorked(t *testing.T) {
	c := AverageGasColumn{Gravity: 0.7, Z: 0.92, Temperature: unit.Kelvin(350), Height: 2500}
	precise.Equal(t, c.Factor(), "exp(0.7*0.0289625*9.80665*2500/(0.92*8.31446261815324*350))", nil)
}

// Region 1 by its table of terms. States inside the range and far outside are
// searched until each of the 26 terms has weighed at least a thousandth of the
// sum: any number of the grouped form is noticed.
func TestRegion1Worked(t *testing.T) {
	formula := "a = 7.1 - p/16.53e6\nb = 1386/T - 1.222\ns = 0\n"
	for _, row := range printedTable(t, "water-region1.csv") {
		formula += fmt.Sprintf("s = s - %s*%s*pow(a, %s - 1)*pow(b, %s)\n", row[2], row[0], row[0], row[1])
	}
	weighed := make([]bool, len(region1Terms))
	missing := len(region1Terms)
	try := func(p, T float64, always bool) {
		a, b := 7.1-p/16.53e6, 1386/T-1.222
		terms := make([]float64, len(region1Terms))
		sum, all := 0.0, 0.0
		for i, r := range region1Terms {
			terms[i] = r.n * float64(r.i) * math.Pow(a, float64(r.i-1)) * math.Pow(b, float64(r.j))
			sum += terms[i]
			all += math.Abs(terms[i])
		}
		if all > 30*math.Abs(sum) {
			return // the sum keeps no digits here
		}
		fresh := always
		for i, x := range terms {
			if math.Abs(x) > 1e-3*math.Abs(sum) && !weighed[i] {
				weighed[i], fresh = true, true
				missing--
			}
		}
		if fresh {
			precise.Within(t, 1e-10, region1Density(p, T), formula+"16.53e6/(461.526*T*s)", precise.Values{"p": p, "T": T})
		}
	}
	try(1e6, 300, true)
	try(9e7, 280, true)
	try(5e6, 600, true)
	for T := 80.0; T < 1130; T *= 1.04 {
		for a := 1e-4; a < 1e4; a *= 1.5 {
			try((7.1-a)*16.53e6, T, false)
			try((7.1+a)*16.53e6, T, false)
		}
	}
	require.Zero(t, missing, "%v", weighed)
}
