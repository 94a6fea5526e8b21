package fluid

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Osif returns the isothermal compressibility of sodium chloride brine without
// gas:
//
//	β = 1/(7.033·p + 0.5415·C − 537·T + 403300)   1/psi
//
//	p  absolute pressure, psi; the argument is gauge
//	C  mass of NaCl per volume of brine, mg/L
//	T  temperature, °F
//
// Range: 1,000 to 20,000 psi, 200 to 270 °F, C to 200 g/L. It was measured
// there; below 200 °F, down to 65 °F, it is used as the usual formula for
// formation water. Without salt it stays 14 % or less under fresh water by
// IAPWS-IF97. Errors: *RangeError.
//
// Source: Osif, SPE-13174 (1988).
func Osif(p unit.Pressure, concentration unit.Density, t unit.Temperature) (unit.Compressibility, error) {
	const (
		milligramPerLitre = unit.KilogramPerCubicMetre / 1000
		greatest          = 20000 * unit.PSI
		saltiest          = 200 * unit.KilogramPerCubicMetre
	)
	coldest, hottest := unit.Fahrenheit(65), unit.Fahrenheit(270)
	var faults []error
	if P := p + unit.Atmosphere; !within(float64(P), float64(1000*unit.PSI), float64(greatest)) {
		faults = append(faults, outside("compressibility by Osif", "pressure", p, 1000*unit.PSI-unit.Atmosphere, unit.Pressure(greatest-unit.Atmosphere)))
	}
	if !within(float64(concentration), 0, float64(saltiest)) {
		faults = append(faults, outside("compressibility by Osif", "concentration", concentration, unit.Density(0), saltiest))
	}
	if !within(t.Kelvin(), coldest.Kelvin(), hottest.Kelvin()) {
		faults = append(faults, outside("compressibility by Osif", "temperature", t, coldest, hottest))
	}
	if faults != nil {
		return 0, fault.Join(scope, faults...)
	}
	P := (p + unit.Atmosphere).In(unit.PSI)
	return unit.Compressibility(1/(7.033*P+0.5415*concentration.In(milligramPerLitre)-537*t.Fahrenheit()+403300)) * unit.PerPSI, nil
}
