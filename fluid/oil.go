package fluid

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Commodity is the group of petroleum liquids that a volume correction was
// fitted for.
type Commodity int

// The groups of API MPMS 11.1.
const (
	Crude          Commodity = iota
	RefinedProduct           // gasoline, jet fuel, diesel, fuel oil
	LubricatingOil           // base oils refined as lubricating stock
)

var commodityNames = [...]string{"crude oil", "refined product", "lubricating oil"}

func (c Commodity) known() bool { return c >= 0 && int(c) < len(commodityNames) }

func (c Commodity) String() string {
	if !c.known() {
		return fmt.Sprintf("commodity %d", int(c))
	}
	return commodityNames[c]
}

// MarshalText writes the name.
func (c Commodity) MarshalText() ([]byte, error) {
	if !c.known() {
		return nil, fault.NewIn(scope, "", "commodity is %d; must be a known one", int(c))
	}
	return []byte(commodityNames[c]), nil
}

// UnmarshalText reads the name.
func (c *Commodity) UnmarshalText(text []byte) error {
	for i, name := range commodityNames {
		if name == string(text) {
			*c = Commodity(i)
			return nil
		}
	}
	return fault.NewIn(scope, "", "commodity is %q; must be one of %q", text, commodityNames)
}

// waterAt60F is the density of water at 60 °F that °API counts from, kg/m³.
// Source: API MPMS 11.1 (2004), 11.1.3.3.
const waterAt60F = 999.016

// gravity is °API of the oil's density at 60 °F: hydrostatics.APIGravity, which
// lies on this package's own floor.
func (o Oil) gravity() float64 { return waterAt60F*141.5/float64(o.At60F) - 131.5 }

// Oil is a petroleum liquid without dissolved gas: crude, diesel, base oil.
//
//	ρ = ρ60·CTL·CPL
//
// See VolumeCorrection for both factors.
//
// Range: −58 to 302 °F, 0 to 1,500 psi, density at 60 °F 610.6 to 1,163.5 kg/m³
// (lubricating oil from 800.9). For more pressure use a Measured table of the
// fluid: nothing in the standard backs its factor there.
//
// Errors: *RangeError. The zero value is an error.
//
// Source: API MPMS 11.1 (2004), also ASTM D1250-04 and IP 200/04, 11.1.6.1.
type Oil struct {
	Commodity Commodity    `json:"commodity"`
	At60F     unit.Density `json:"at60_f"` // at 60 °F and atmospheric pressure; of °API by hydrostatics.DensityOfAPIGravity
}

const (
	oilPGreatest    = 1500 * unit.PSI
	oilLightest     = 610.6 * unit.KilogramPerCubicMetre
	oilLightestLube = 800.9 * unit.KilogramPerCubicMetre
	oilHeaviest     = 1163.5 * unit.KilogramPerCubicMetre
)

var (
	oilTLeast    = unit.Fahrenheit(-58)
	oilTGreatest = unit.Fahrenheit(302)
)

func (o Oil) check(p unit.Pressure, t unit.Temperature) error {
	lightest := oilLightest
	if o.Commodity == LubricatingOil {
		lightest = oilLightestLube
	}
	if o.Commodity.known() && within(float64(o.At60F), float64(lightest), float64(oilHeaviest)) &&
		within(t.Kelvin(), oilTLeast.Kelvin(), oilTGreatest.Kelvin()) && within(float64(p), 0, float64(oilPGreatest)) {
		return nil
	}
	name := o.Commodity.String()
	var faults []error
	if !o.Commodity.known() {
		faults = append(faults, inRange(&RangeError{"an oil", "Commodity", name, commodityNames[0], commodityNames[len(commodityNames)-1]}))
	}
	if !within(float64(o.At60F), float64(lightest), float64(oilHeaviest)) {
		faults = append(faults, outside(name, "At60F", o.At60F, lightest, oilHeaviest))
	}
	if !within(t.Kelvin(), oilTLeast.Kelvin(), oilTGreatest.Kelvin()) {
		faults = append(faults, outside(name, "temperature", t, oilTLeast, oilTGreatest))
	}
	if !within(float64(p), 0, float64(oilPGreatest)) {
		faults = append(faults, outside(name, "pressure", p, unit.Pressure(0), oilPGreatest))
	}
	return fault.Join(scope, faults...)
}

// Density returns ρ60·CTL·CPL.
//
// Source: VolumeCorrection.
func (o Oil) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	vcf, err := o.VolumeCorrection(p, t)
	if err != nil {
		return 0, err
	}
	return o.At60F * unit.Density(vcf.Temperature*vcf.Pressure), nil
}

// Compressibility returns Fp/(1 − Fp·p), the slope of the same formula.
func (o Oil) Compressibility(p unit.Pressure, t unit.Temperature) (unit.Compressibility, error) {
	vcf, err := o.VolumeCorrection(p, t)
	if err != nil {
		return 0, err
	}
	return vcf.Compression * unit.Compressibility(vcf.Pressure), nil
}

// Expansivity returns −(∂ρ/∂T)/ρ of the same formula: of CTL, and of the
// compressibility that grows with temperature.
func (o Oil) Expansivity(p unit.Pressure, t unit.Temperature) (unit.Expansivity, error) {
	vcf, err := o.VolumeCorrection(p, t)
	if err != nil {
		return 0, err
	}
	k := o.corrected(t)
	ctl := k.alpha * (1 + 0.8*k.alpha*(2*k.off+vcfBaseShift))
	cpl := float64(vcf.Compression) * float64(p) * vcf.Pressure * (0.00013427 + 2326/(k.rho*k.rho))
	return unit.Expansivity((ctl-cpl)*k.perDegree) * unit.PerFahrenheit, nil
}

// Viscosity returns the viscosity of crude without dissolved gas at temperature
// t and atmospheric pressure:
//
//	μ = 10^x − 1 cP,  x = T^−1.163·exp(6.9824 − 0.04658·°API),  T in °F
//
// Range: 16 to 58 °API, 70 to 295 °F, no gauge pressure. Average error −0.6 %,
// standard deviation 13.5 % on its own data and more on others': an estimate.
// For refined products and lubricating oils it wasn't made: ErrNoData.
//
// Source: Beggs and Robinson, J. Pet. Tech. 27(9), 1975.
func (o Oil) Viscosity(p unit.Pressure, t unit.Temperature) (unit.Viscosity, error) {
	if err := o.check(p, t); err != nil {
		return 0, err
	}
	if o.Commodity != Crude {
		return 0, fmt.Errorf("%w: viscosity of %v", ErrNoData, o.Commodity)
	}
	const lightest, heaviest = 58.0, 16.0
	least, greatest := unit.Fahrenheit(70), unit.Fahrenheit(295)
	api := o.gravity()
	var faults []error
	if !within(api, heaviest, lightest) {
		faults = append(faults, outside("dead-oil viscosity", "At60F", degAPI(api), degAPI(heaviest), degAPI(lightest)))
	}
	if !within(t.Kelvin(), least.Kelvin(), greatest.Kelvin()) {
		faults = append(faults, outside("dead-oil viscosity", "temperature", t, least, greatest))
	}
	if p != 0 {
		faults = append(faults, outside("dead-oil viscosity", "pressure", p, unit.Pressure(0), unit.Pressure(0)))
	}
	if faults != nil {
		return 0, fault.Join(scope, faults...)
	}
	x := math.Pow(t.Fahrenheit(), -1.163) * math.Exp(6.9824-0.04658*api)
	return unit.Viscosity(math.Pow(10, x)-1) * unit.Centipoise, nil
}
