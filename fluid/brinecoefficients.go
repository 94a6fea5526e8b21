package fluid

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// System is a clear brine as the trade blends it, for the tables of coefficients.
type System int

// The systems, from the lightest.
const (
	SystemNaCl System = iota + 1
	SystemCaCl2
	SystemNaBr
	SystemCaBr2
	SystemCaCl2CaBr2
	SystemZnBr2CaBr2CaCl2
	SystemZnBr2CaBr2
)

var systemNames = [...]string{"no brine", "NaCl", "CaCl2", "NaBr", "CaBr2", "CaCl2/CaBr2", "ZnBr2/CaBr2/CaCl2", "ZnBr2/CaBr2"}

// String returns the salts.
func (s System) String() string {
	if s <= 0 || int(s) >= len(systemNames) {
		return fmt.Sprintf("brine system %d", int(s))
	}
	return systemNames[s]
}

// MarshalText writes the salts.
func (s System) MarshalText() ([]byte, error) {
	if s <= 0 || int(s) >= len(systemNames) {
		return nil, fault.NewIn(scope, "", "brine system is %d; must be a known one", int(s))
	}
	return []byte(systemNames[s]), nil
}

// UnmarshalText reads the salts.
func (s *System) UnmarshalText(text []byte) error {
	for i, name := range systemNames {
		if i > 0 && name == string(text) {
			*s = System(i)
			return nil
		}
	}
	return fault.NewIn(scope, "", "brine system is %q; must be one of %q", text, systemNames[1:])
}

// coefficients is a row of a table: density in lb/gal, α in 1e-4 1/°F, β in
// 1e-6 1/psi.
type coefficients struct{ density, alpha, beta float64 }

// KrookBoyce returns the brine of a system and density at 70 °F with the mean
// coefficients measured from 76 to 345 °F at 12,000 psi, and from 2,000 to
// 12,000 psi at 198 °F: those that API RP 13J prints, and the better choice for
// a well.
//
// Each system was measured at one density: NaCl 9.49, CaCl2 11.46, NaBr 12.48,
// CaBr2 14.30, ZnBr2/CaBr2/CaCl2 16.0, ZnBr2/CaBr2 19.27 lb/gal. The coefficients
// serve within 5 % of it; outside is a *RangeError. A system not in the table is
// ErrNoData.
//
// Source: Krook and Boyce, SPE-12490 (1984), as printed in Well Control for
// Completions and Interventions (2018), Tables 5.2 and 5.3.
func KrookBoyce(system System, at70F unit.Density) (Brine, error) {
	const around = 0.05
	var c coefficients
	switch system {
	case SystemNaCl:
		c = coefficients{9.49, 2.54, 1.98}
	case SystemCaCl2:
		c = coefficients{11.46, 2.39, 1.50}
	case SystemNaBr:
		c = coefficients{12.48, 2.67, 1.67}
	case SystemCaBr2:
		c = coefficients{14.30, 2.33, 1.53}
	case SystemZnBr2CaBr2CaCl2:
		c = coefficients{16.0, 2.27, 1.39}
	case SystemZnBr2CaBr2:
		c = coefficients{19.27, 2.54, 1.64}
	default:
		return Brine{}, fmt.Errorf("%w: coefficients of Krook and Boyce for %v", ErrNoData, system)
	}
	least, greatest := unit.Density(c.density*(1-around))*unit.PoundPerGallon, unit.Density(c.density*(1+around))*unit.PoundPerGallon
	if !within(float64(at70F), float64(least), float64(greatest)) {
		return Brine{}, outside(system.String()+" by Krook and Boyce", "At70F", at70F, least, greatest)
	}
	return c.brine(at70F), nil
}

// Bridges returns the brine of a system and density at 70 °F with coefficients
// at atmospheric pressure and 77 °F, by straight lines between the densities of
// the table: NaCl 9.0 to 9.5, CaCl2 9.5 to 11.0, NaBr 12.0, CaCl2/CaBr2 12.0 to
// 14.5, ZnBr2/CaBr2/CaCl2 15.5 to 19.0 lb/gal. Outside is a *RangeError, a system
// not in the table ErrNoData.
//
// The expansion printed for NaCl of 9.5 lb/gal is half as large again as what
// composition gives (Solution): prefer KrookBoyce for it.
//
// Source: Bridges, Completion and Workover Fluids, as printed in Well Control
// for Completions and Interventions (2018), Table 5.4.
func Bridges(system System, at70F unit.Density) (Brine, error) {
	rows := system.bridges()
	if rows == nil {
		return Brine{}, fmt.Errorf("%w: coefficients of Bridges for %v", ErrNoData, system)
	}
	// A table of one row serves within what its density was rounded to.
	const rounding = 0.05
	first, last := rows[0].density-rounding, rows[len(rows)-1].density+rounding
	x := at70F.In(unit.PoundPerGallon)
	if !within(x, first, last) {
		return Brine{}, outside(system.String()+" by Bridges", "At70F", at70F,
			unit.Density(first)*unit.PoundPerGallon, unit.Density(last)*unit.PoundPerGallon)
	}
	return between(rows, x).brine(at70F), nil
}

func (s System) bridges() []coefficients {
	switch s {
	case SystemNaCl:
		return []coefficients{{9.0, 3.489, 2.100}, {9.5, 4.063, 1.979}}
	case SystemNaBr:
		return []coefficients{{12.0, 2.800, 1.583}}
	case SystemCaCl2:
		return []coefficients{{9.5, 3.000, 1.979}, {10.0, 2.890, 1.870}, {10.5, 2.600, 1.771}, {11.0, 2.400, 1.700}}
	case SystemCaCl2CaBr2:
		return []coefficients{{12.0, 2.708, 1.583}, {12.5, 2.640, 1.544}, {13.5, 2.541, 1.489}, {14.5, 2.497, 1.462}}
	case SystemZnBr2CaBr2CaCl2:
		return []coefficients{{15.5, 2.497, 1.458}, {16.5, 2.521, 1.358}, {17.5, 2.589, 1.509},
			{18.0, 2.639, 1.533}, {18.5, 2.708, 1.557}, {19.0, 2.779, 1.584}}
	}
	return nil
}

// between interpolates by density, and holds the end values beyond the ends.
func between(rows []coefficients, x float64) coefficients {
	i := 0
	for i < len(rows)-2 && x > rows[i+1].density {
		i++
	}
	if len(rows) == 1 {
		return rows[0]
	}
	a, b := rows[i], rows[i+1]
	share := math.Min(math.Max((x-a.density)/(b.density-a.density), 0), 1)
	return coefficients{x, a.alpha + share*(b.alpha-a.alpha), a.beta + share*(b.beta-a.beta)}
}

func (c coefficients) brine(at70F unit.Density) Brine {
	return Brine{
		At70F:       at70F,
		Expansion:   unit.Expansivity(c.alpha*1e-4) * unit.PerFahrenheit,
		Compression: unit.Compressibility(c.beta*1e-6) * unit.PerPSI,
	}
}
