package fluid

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// VolumeCorrection are the factors that bring a volume of oil to 60 °F and
// atmospheric pressure, or its density from there.
type VolumeCorrection struct {
	Expansion   unit.Expansivity     `json:"expansion"`   // α60, of the volume at 60 °F
	Temperature float64              `json:"temperature"` // CTL
	Compression unit.Compressibility `json:"compression"` // Fp
	Pressure    float64              `json:"pressure"`    // CPL
}

// Total returns CTPL, the product of both factors.
//
// Range: any factors; nothing is checked.
//
// Source: definition; API MPMS 11.1.
func (v VolumeCorrection) Total() float64 { return v.Temperature * v.Pressure }

// vcfBaseShift is δ60, °F: what 60 °F moved between the temperature scales of
// 1968 and 1990. Source: API MPMS 11.1 (2004), 11.1.5.1.
const vcfBaseShift = 0.01374979547

// VolumeCorrection returns CTL and CPL without the standard's rounding:
//
//	CTL = exp(−α60·Δt·(1 + 0.8·α60·(Δt + δ60)))
//	α60 = (K0/ρ* + K1)/ρ* + K2
//	CPL = 1/(1 − Fp·p)
//	Fp  = 1e-5·exp(−1.9947 + 0.00013427·t* + (793920 + 2326·t*)/ρ*²)   1/psi
//
//	t*  temperature on the scale of 1968, °F;  Δt = t* − 60.0068749 °F
//	ρ*  density at 60 °F of 1968, kg/m³
//	p   gauge pressure, psi
//
// K0, K1, K2 go by commodity and, for refined products, density. Range and
// errors: see Oil. Uncertainty (95 %) of CTL on crude 0.05 % at 100 °F, 0.25 % at
// 200 °F.
//
// Source: API MPMS 11.1 (2004), 11.1.6.1.
func (o Oil) VolumeCorrection(p unit.Pressure, t unit.Temperature) (VolumeCorrection, error) {
	if err := o.check(p, t); err != nil {
		return VolumeCorrection{}, err
	}
	k := o.corrected(t)
	fp := unit.Compressibility(1e-5*math.Exp(-1.9947+0.00013427*k.t+(793920+2326*k.t)/(k.rho*k.rho))) * unit.PerPSI
	return VolumeCorrection{
		Expansion:   unit.Expansivity(k.alpha) * unit.PerFahrenheit,
		Temperature: math.Exp(-k.alpha * k.off * (1 + 0.8*k.alpha*(k.off+vcfBaseShift))),
		Compression: fp,
		Pressure:    1 / (1 - float64(fp)*float64(p)),
	}, nil
}

// corrected holds the state on the temperature scale of 1968.
type corrected struct {
	t, off    float64 // t*, t* − 60.0068749, °F
	perDegree float64 // dt*/dt
	rho       float64 // ρ*, kg/m³
	alpha     float64 // α60, 1/°F
}

func (o Oil) corrected(t unit.Temperature) corrected {
	// 11.1.5.3: from the scale of 1990 to that of 1968, °C.
	scale := [...]float64{-0.148759, -0.267408, 1.080760, 1.269056, -4.089591, -1.871251, 7.438081, -3.536296}
	x := t.Celsius() / 630
	shift, slope := 0.0, 0.0
	for i := len(scale) - 1; i >= 0; i-- {
		shift = (shift + scale[i]) * x
		slope = slope*x + float64(i+1)*scale[i]
	}
	k0, k1, k2 := o.coefficients()
	rho60 := float64(o.At60F)
	// 11.1.6.1 step 5: the density at 60 °F of 1968.
	a := vcfBaseShift / 2 * ((k0/rho60+k1)/rho60 + k2)
	b := (2*k0 + k1*rho60) / (k0 + (k1+k2*rho60)*rho60)
	rho := rho60 * (1 + math.Expm1(a*(1+0.8*a))/(1+a*(1+1.6*a)*b))
	tf := unit.Celsius(t.Celsius() - shift).Fahrenheit()
	const base = 60 + vcfBaseShift/2
	return corrected{t: tf, off: tf - base, perDegree: 1 - slope/630, rho: rho, alpha: (k0/rho+k1)/rho + k2}
}

// coefficients are K0, K1 and K2 of 11.1.6.1, Table 1, with α60 in 1/°F.
func (o Oil) coefficients() (k0, k1, k2 float64) {
	rho := float64(o.At60F)
	switch {
	case o.Commodity == Crude:
		return 341.0957, 0, 0
	case o.Commodity == LubricatingOil:
		return 0, 0.34878, 0
	case rho >= 838.3127: // fuel oils
		return 103.8720, 0.2701, 0
	case rho >= 787.5195: // jet fuels
		return 330.3010, 0, 0
	case rho >= 770.3520: // between jet fuels and gasolines
		return 1489.0670, 0, -0.00186840
	default: // gasolines
		return 192.4571, 0.2438, 0
	}
}
