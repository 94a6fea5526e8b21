package tubular

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"github.com/stretchr/testify/require"
)

// The package's formulas typed from their statement and worked with 256 bits.

// psi is 1 lbf/in² by its definition.
const psi = "psi = 0.45359237*9.80665/pow(0.0254, 2)\n"

var (
	workedPipe = Pipe{OD: 0.0889, ID: 0.076, Weight: 136, Material: Material{Young: 2.068e11, Poisson: 0.29, Expansion: 1.24e-5, Density: 7850, Yield: 5.5e8, Tensile: 6.6e8}}
	workedOf   = precise.Values{"D": 0.0889, "d": 0.076, "E": 2.068e11, "nu": 0.29, "Y": 5.5e8, "U": 6.6e8, "F": 2.1e5, "pi1": 4e7, "po1": 2.5e7, "T": 900, "k": 0.02}
)

func TestCollapseCoefficientsWorked(t *testing.T) {
	for _, Y := range []float64{24000, 80000, 180000} {
		A, B, C := collapseCoefficients(Y)
		of := precise.Values{"Y": Y}
		const coefficients = `
			A = 2.8762 + 0.10679e-5*Y + 0.21301e-10*pow(Y, 2) - 0.53132e-16*pow(Y, 3)
			B = 0.026233 + 0.50609e-6*Y
			C = -465.93 + 0.030867*Y - 0.10483e-7*pow(Y, 2) + 0.36989e-13*pow(Y, 3)
			r = B/A
			F = 46.95e6*pow(3*r/(2 + r), 3)/(Y*(3*r/(2 + r) - r)*pow(1 - 3*r/(2 + r), 2))
			G = F*r
		`
		precise.Equal(t, A, coefficients+"A", of)
		precise.Equal(t, B, coefficients+"B", of)
		precise.Equal(t, C, coefficients+"C", of)
		c, err := PrepareCollapse(unit.Pressure(Y) * unit.PSI)
		require.NoError(t, err)
		precise.Within(t, 1e-11, c.F, coefficients+"F", of)
		precise.Within(t, 1e-11, c.G, coefficients+"G", of)
		precise.Within(t, 1e-11, c.YieldPlastic, coefficients+"(sqrt(pow(A - 2, 2) + 8*(B + C/Y)) + A - 2)/(2*(B + C/Y))", of)
		precise.Within(t, 1e-10, c.PlasticTransition, coefficients+"Y*(A - F)/(C + Y*(B - G))", of)
		precise.Within(t, 1e-11, c.TransitionElastic, coefficients+"(2 + r)/(3*r)", of)
		// on a limit the thicker regime, just above it the thinner
		for regime, x := range []float64{c.YieldPlastic, c.PlasticTransition, c.TransitionElastic} {
			require.Equal(t, CollapseRegime(regime), c.Regime(x))
			require.Equal(t, CollapseRegime(regime+1), c.Regime(math.Nextafter(x, 1e3)))
			body := slenderness(x * (1 + 1e-9))
			require.InEpsilon(t, float64(c.Pressure(x*(1+1e-9))), float64(unit.Pressure(body.pressure(Y))*unit.PSI), 1e-9)
			body = slenderness(x * (1 - 1e-9))
			require.InEpsilon(t, float64(c.Pressure(x*(1-1e-9))), float64(unit.Pressure(body.pressure(Y))*unit.PSI), 1e-9)
		}
		of["x"] = 60
		precise.Equal(t, c.Pressure(60).In(unit.PSI), "46.95e6/(x*pow(x - 1, 2))", of)
		require.True(t, math.IsNaN(float64(c.Pressure(2))))
		require.False(t, math.IsNaN(float64(c.Pressure(math.Nextafter(2, 3)))))
	}
	for _, Y := range []float64{24000 * (1 - 1e-9), 180000 * (1 + 1e-9)} {
		_, err := PrepareCollapse(unit.Pressure(Y) * unit.PSI)
		require.ErrorContains(t, err, "must be from 24000 psi to 180000 psi for API collapse")
	}
	for _, bad := range []CollapseRegime{-1, 4} {
		_, err := bad.MarshalText()
		require.ErrorContains(t, err, "CollapseRegime: is")
		require.Contains(t, bad.String(), "CollapseRegime(")
	}
}

func TestCollapseLoadWorked(t *testing.T) {
	precise.Equal(t, float64(EquivalentYield(5.5e8, 2e8)), "s = 2e8/Y\nY*(sqrt(1 - 0.75*s*s) - 0.5*s)", workedOf)
	require.Equal(t, unit.Pressure(0), EquivalentYield(5.5e8, 5.5e8))
	precise.Equal(t, float64(workedPipe.EquivalentExternalPressure(4e7, 3e7)), "4e7 - 3e7*(1 - (D - d)/D)", workedOf)
}

func TestStrengthsWorked(t *testing.T) {
	precise.Equal(t, float64(workedPipe.SecondMoment()), "pi/64*(pow(D, 4) - pow(d, 4))", workedOf)
	precise.Equal(t, float64(workedPipe.PolarMoment()), "pi/32*(pow(D, 4) - pow(d, 4))", workedOf)
	precise.Equal(t, float64(workedPipe.Material.ShearModulus()), "E/(2*(1 + nu))", workedOf)
	precise.Equal(t, float64(workedPipe.BuoyedWeight(1100, 1200)), "136 + 9.80665*pi/4*(1100*d*d - 1200*D*D)", workedOf)
	precise.Equal(t, float64(workedPipe.PlainEndWeight()), "9.80665*pi/4*7850*(D - d)*(D + d)", workedOf)
	precise.Equal(t, float64(workedPipe.InternalYield()), "0.875*Y*(D - d)/D", workedOf)
	const thin = "dw = D - 0.875*(D - d)\n"
	precise.Equal(t, float64(workedPipe.YieldOpenEnds(WallTolerance)), thin+"Y*(D*D - dw*dw)/sqrt(3*pow(D, 4) + pow(dw, 4))", workedOf)
	precise.Equal(t, float64(workedPipe.YieldClosedEnds(WallTolerance)), thin+"Y*(D*D - dw*dw)/(sqrt(3)*D*D)", workedOf)
	precise.Equal(t, float64(workedPipe.BodyYield()), "Y*pi/4*(D*D - d*d)", workedOf)

	// API Bul 5C3 (1985), 4.1, in inches and pounds
	const round = psi + `
		D = D/0.0254
		d = d/0.0254
		L = 3.1
		Y = Y/psi
		U = U/psi
		Aj = pi/4*(pow(D - 0.1425, 2) - d*d)
		lbf = 0.45359237*9.80665
	`
	r := workedPipe.RoundThread(3.1 * unit.Inch)
	precise.Equal(t, float64(r.Fracture), round+"0.95*Aj*U*lbf", workedOf)
	precise.Equal(t, float64(r.PullOut), round+"0.95*Aj*L*(0.74*pow(D, -0.59)*U/(0.5*L + 0.14*D) + Y/(L + 0.14*D))*lbf", workedOf)
	precise.Equal(t, float64(workedPipe.Buttress()), round+"0.95*pi/4*(D*D - d*d)*U*(1.008 - 0.0396*(1.083 - Y/U)*D)*lbf", workedOf)
	precise.Equal(t, float64(CouplingThread(0.1, 0.09, 6e8)), "0.95*pi/4*(0.01 - 0.0081)*6e8", nil)
	precise.Equal(t, float64(workedPipe.NonUpset(0.0014)), "Y*pi/4*(pow(D - 0.0028, 2) - d*d)", workedOf)

	// ISO/TR 10400:2007, ductile rupture
	precise.Equal(t, HardeningExponent(5.5e8), psi+"0.1693 - 8.12e-7*Y/psi", workedOf)
	const rupture = psi + `
		n = 0.1693 - 8.12e-7*Y/psi
		t = 0.875*(D - d)/2 - ka*0.0003
		2*(pow(0.5, n + 1) + pow(1/sqrt(3), n + 1))*U*t/(D - t)
	`
	p, err := workedPipe.DuctileRupture(Rupture{Imperfection: 0.0003, BurstFactor: 1})
	require.NoError(t, err)
	precise.Equal(t, float64(p), "ka = 1\n"+rupture, workedOf)
	p, err = workedPipe.DuctileRupture(Rupture{Imperfection: 0.0003})
	require.NoError(t, err)
	precise.Equal(t, float64(p), "ka = 2\n"+rupture, workedOf)
	for text, r := range map[string]Rupture{
		"Rupture.BurstFactor: is": {BurstFactor: 2.0000001}, "Rupture.Hardening: is": {Hardening: 0.5000001}, "Rupture.Imperfection: is": {Imperfection: -1e-9},
		"Rupture.Imperfection: is 0.22219488188976394": {BurstFactor: 1, Imperfection: unit.Length(0.875 * float64(workedPipe.Wall()))},
	} {
		_, err := workedPipe.DuctileRupture(r)
		require.ErrorContains(t, err, text)
	}
	_, err = workedPipe.DuctileRupture(Rupture{BurstFactor: 2, Hardening: 0.5})
	require.NoError(t, err, "the greatest of both")
}

// Lamé, bending, torsion and von Mises at both walls.
func TestStressesWorked(t *testing.T) {
	const walls = `
		As = pi/4*(D*D - d*d)
		J = pi/32*(pow(D, 4) - pow(d, 4))
		a = (pi1*d*d - po1*D*D)/(D*D - d*d)
		b = (pi1 - po1)*d*d*D*D/(D*D - d*d)/4
	`
	l := Load{Axial: 2.1e5, Inside: 4e7, Outside: 2.5e7, Curvature: 0.02, Torque: 900}
	s := workedPipe.Stresses(l)
	for r, w := range map[string]WallStress{"d/2": s.Inner, "D/2": s.Outer} {
		at := walls + "r = " + r + "\n"
		precise.Equal(t, float64(w.Radial), at+"a - b/(r*r)", workedOf)
		precise.Equal(t, float64(w.Hoop), at+"a + b/(r*r)", workedOf)
		precise.Equal(t, float64(w.Bending), at+"E*k*r", workedOf)
		precise.Equal(t, float64(w.Shear), at+"T*r/J", workedOf)
		precise.Equal(t, float64(w.VonMises), at+"x = a - b/(r*r)\ny = a + b/(r*r)\nz = F/As + E*k*r\ns = T*r/J\nsqrt((pow(x - y, 2) + pow(y - z, 2) + pow(z - x, 2))/2 + 3*s*s)", workedOf)
	}
	precise.Equal(t, float64(workedPipe.HelixCurvature(0.03, -5e4)), "0.03*5e4/(2*E*pi/64*(pow(D, 4) - pow(d, 4)))", workedOf)
	precise.Equal(t, float64(workedPipe.EffectiveForce(l)), "F - pi/4*(pi1*d*d - po1*D*D)", workedOf)

	b, err := workedPipe.Prepare()
	require.NoError(t, err)
	u := b.Usage(l, DesignFactors{Burst: 1.1, Collapse: 1.2, Axial: 1.3, Triaxial: 1.4})
	precise.Equal(t, u.Axial, walls+"1.3*(F/As + E*k*D/2)/Y", workedOf)
	precise.Equal(t, u.Burst, "1.1*(pi1 - po1)/(0.875*Y*(D - d)/D)", workedOf)
	precise.Equal(t, u.Triaxial, "1.4*s/Y", precise.Values{"s": float64(s.VonMises()), "Y": 5.5e8})
	l.Inside, l.Outside = l.Outside, l.Inside
	u = b.Usage(l, DesignFactors{Burst: 1.1, Collapse: 1.2, Axial: 1.3, Triaxial: 1.4})
	rating, err := workedPipe.CollapseUnderLoad(unit.Pressure(2.1e5/float64(workedPipe.SteelArea())), l.Inside)
	require.NoError(t, err)
	require.InEpsilon(t, 1.2*1.5e7/float64(rating.Pressure), u.Collapse, 1e-12)
	require.Zero(t, u.Burst)
	l.Outside = l.Inside
	u = b.Usage(l, WithoutReserve())
	require.Equal(t, []float64{0, 0}, []float64{u.Burst, u.Collapse}, "balanced")
	l.Inside = unit.Pressure(math.NaN())
	u = b.Usage(l, WithoutReserve())
	require.True(t, math.IsNaN(u.Burst) && math.IsNaN(u.Collapse))
}

// Practice as printed: factors, steel, and ASME's table of expansion.
func TestPrintedConstants(t *testing.T) {
	one := WithoutReserve()
	require.Equal(t, []float64{1, 1, 1, 1}, []float64{one.Burst, one.Collapse, one.Axial, one.Triaxial})
	norway := NorwegianShelf()
	require.Equal(t, []float64{1.10, 1.10, 1.25, 1.25}, []float64{norway.Burst, norway.Collapse, norway.Axial, norway.Triaxial})
	require.Equal(t, []float64{1.25, 0.80, 0.80, 0.875}, []float64{SuggestedTubingBurst, SourStressShare, BullheadBurstShare, WallTolerance})
	s := Steel()
	precise.Equal(t, float64(s.Young), psi+"30e6*psi", nil)
	precise.Equal(t, float64(s.Expansion), "6.9e-6*1.8", nil)
	require.Equal(t, []float64{0.3, 7850}, []float64{s.Poisson, float64(s.Density)})
	usual := UsualDerating()
	precise.Equal(t, usual.Rate.In(unit.PerFahrenheit), "0.0003", nil)
	precise.Equal(t, usual.From.Fahrenheit(), "70", nil)

	// ASME B31.1 and Section II-D, group 1 carbon steels, as the published cases have them: °F and 1e-6 1/°F
	x := CarbonSteel()
	table := [][2]float64{{70, 6.4}, {100, 6.5}, {150, 6.7}, {200, 6.9}, {250, 7.1}, {300, 7.3}, {350, 7.5}, {400, 7.7}, {450, 7.8}, {500, 8.0}, {550, 8.2}, {600, 8.4}, {650, 8.5}, {700, 8.6}}
	require.Len(t, x.temperature, len(table))
	sum := 0.0
	for i, row := range table {
		require.Equal(t, row[0], x.temperature[i])
		require.InEpsilon(t, row[1], x.coefficient[i]*1e6, 1e-14)
		if i > 0 {
			sum += (table[i-1][1] + row[1]) / 2 * 1e-6 * (row[0] - table[i-1][0])
			strain, err := x.Strain(unit.Fahrenheit(70), unit.Fahrenheit(row[0]))
			require.NoError(t, err)
			require.InEpsilon(t, sum, strain, 1e-10, "the table's straight lines, added up by hand")
		}
	}
	for _, f := range []float64{69.99999, 700.00001} {
		_, err := x.Strain(unit.Fahrenheit(f), unit.Fahrenheit(300))
		require.ErrorContains(t, err, "must be from 70 degF to 700 degF for expansion")
	}
}

// Each limit of the inputs: on it the answer, just beyond it a fault that names it.
func TestTubularLimits(t *testing.T) {
	kelvin := unit.Kelvin
	_, err := Derating{From: kelvin(399.9999), Rate: 0}.Factor(unit.Celsius(300))
	require.NoError(t, err)
	_, err = Derating{From: kelvin(200.0001), Rate: 0}.Factor(unit.Celsius(300))
	require.NoError(t, err)
	_, err = Derating{From: kelvin(300), Rate: 0.009999999}.Factor(kelvin(310))
	require.NoError(t, err)
	for text, d := range map[string]Derating{
		"Rate: is": {kelvin(300), 0.01}, "Rate: is -1e-09": {kelvin(300), -1e-9}, "From: is": {kelvin(400), 0}, "From: is -99.67": {kelvin(200), 0},
	} {
		_, err := d.Factor(kelvin(310))
		require.ErrorContains(t, err, text)
	}
	for _, temperature := range []unit.Temperature{kelvin(0), unit.Celsius(300.0001)} {
		_, err := UsualDerating().Factor(temperature)
		require.ErrorContains(t, err, "must be above absolute zero and at most 300 degC, for derating")
	}
	_, err = Derating{kelvin(300), 0.005}.Factor(kelvin(500))
	require.ErrorContains(t, err, "Rate: is 0.005")
	k, err := UsualDerating().Factor(unit.Fahrenheit(270))
	require.NoError(t, err)
	require.InDelta(t, 0.94, k, 1e-12, "by hand: 200 degF at 0.03 % each")

	whole := workedPipe.Wall() / 2
	_, err = workedPipe.Less(Allowance{whole, whole})
	require.ErrorContains(t, err, "Allowance: is")
	worn, err := workedPipe.Less(Allowance{0.001, 0.002})
	require.NoError(t, err)
	require.InDeltaSlice(t, []float64{0.0889 - 0.004, 0.076 + 0.002}, []float64{float64(worn.OD), float64(worn.ID)}, 1e-15)
	precise.Equal(t, float64(worn.Weight), "136 - 9.80665*7850*pi/4*(D*D - d*d - (pow(D - 0.004, 2) - pow(d + 0.002, 2)))", workedOf)

	full := DesignFactors{Burst: 10, Collapse: 10, Axial: 10, Triaxial: 10}
	require.NoError(t, full.Validate())
	full.Axial = 10.000001
	require.ErrorContains(t, full.Validate(), "Axial: is")
	require.True(t, Usage{Burst: 1}.Within())
	require.False(t, Usage{Burst: 1.0000001}.Within())
	limit, _ := Usage{Burst: 1, Collapse: 1, Axial: 1, Triaxial: 1}.Governing()
	require.Equal(t, BurstLimit, limit, "the first of equals")
	for i, name := range []string{"burst", "collapse", "axial", "triaxial", "connection"} {
		require.Equal(t, name, Limit(i).String())
	}
	for _, bad := range []Limit{-1, 5} {
		_, err := bad.MarshalText()
		require.ErrorContains(t, err, "must be from 0 to 4")
		require.Contains(t, bad.String(), "Limit(")
	}
	m := workedPipe.Material
	for poisson, ok := range map[float64]bool{0: true, math.Nextafter(0.5, 0): true, 0.5: false, -1e-9: false} {
		m.Poisson = poisson
		require.Equal(t, ok, m.Validate() == nil, "%v", poisson)
	}
	for n, ok := range map[int]bool{0: true, 7: false, 8: true, 100_001: false, -1: false} {
		_, err := workedPipe.Envelope(Outline{Factors: WithoutReserve(), Points: n})
		require.Equal(t, ok, err == nil, "%d points", n)
	}
}

// The collapse side of an envelope runs from full compression evenly to full
// tension, both over the axial factor, and each point is the rating under its load.
func TestCollapseOutlineWorked(t *testing.T) {
	o := Outline{Backing: 1e7, Factors: DesignFactors{Burst: 1, Collapse: 1.1, Axial: 1.25, Triaxial: 1}, Points: 11}
	e, err := workedPipe.Envelope(o)
	require.NoError(t, err)
	yield := float64(workedPipe.BodyYield()) / 1.25
	for i, at := range e.Collapse {
		require.InDelta(t, yield*(2*float64(i)/10-1), float64(at.Axial), 1e-9*yield)
		r, err := workedPipe.CollapseUnderLoad(unit.Pressure(float64(at.Axial)/float64(workedPipe.SteelArea())), 1e7)
		require.NoError(t, err)
		require.InEpsilon(t, -float64(r.Pressure)/1.1, float64(at.Differential), 1e-9)
	}
	_, err = workedPipe.CollapseUnderLoad(unit.Pressure(yield*(2*float64(len(e.Collapse))/10-1)/float64(workedPipe.SteelArea())), 1e7)
	if len(e.Collapse) < 11 {
		require.ErrorIs(t, err, ErrNoCollapse, "the outline ends where the formula does")
	}
}
