package fluid

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/interp"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// Solid is what comes out of a brine when it is cooled.
type Solid int

// The solids.
const (
	Ice Solid = iota + 1
	SaltCrystals
)

func (s Solid) String() string {
	switch s {
	case Ice:
		return "ice"
	case SaltCrystals:
		return "salt"
	}
	return fmt.Sprintf("solid %d", int(s))
}

// CrystallisationPoint is where a brine begins to turn solid when it is cooled.
type CrystallisationPoint struct {
	Temperature unit.Temperature `json:"temperature"`
	Solid       Solid            `json:"solid"`  // what forms first
	Source      string           `json:"source"` // of the figures
}

// Crystallisation returns the true crystallisation temperature of a brine of one
// salt at mass fraction w and gauge pressure p: the warmest temperature at which
// a solid is stable in it.
//
// At atmospheric pressure it goes through published tables by smooth monotone
// interpolation: NaCl to the boiling point (26.29 % at 0 °C on the side of
// salt), MgCl2 to 30 % but for the gap at the eutectic between 20 and 22 %, CaCl2
// to 29 % on the side of ice. It is ErrNoData for the other salts and the zinc and
// calcium bromide blends: ask the supplier.
//
// Between its points the curve is good to 0.1 °C for ice out of NaCl and MgCl2
// and 0.02 °C for CaCl2 from 9 %, 0.3 °C for salt out of MgCl2. On the side of
// salt out of NaCl, which is steep, take 3 °C: there the mass fraction, not the
// temperature, is what the table knows. (A point left out is met so nearly by
// its neighbours, which lie twice as far apart as in use.) What the sources
// themselves know is another matter: they state no accuracy, and handbooks differ
// for CaCl2 by 0.5 °C at 25 % and 2 °C at 29 % (figure from memory), where a
// hundredth of mass fraction is worth 4 °C.
//
// Under pressure, on the side of ice, the point falls as that of pure ice does
// (IAPWS R14-08), which seawater bears out within 5 %; about 1 °C in 13 MPa
// (1,900 psi), up to 150 MPa. On the side of salt pressure moves it by amounts
// that nobody published for these brines in a form usable here, and upwards for
// most: ErrNoData.
//
// Errors: *RangeError, ErrNoData.
//
//	T = Ttable(w) − ΔT(p), the fall of the melting point of ice under pressure; no salt comes out under pressure
//
// Source: NaCl ice, MgCl2: Lange's Handbook of Chemistry, 15th ed., Table 5.13;
// NaCl solubility: the Salt Institute's table; CaCl2: Melinder, Properties of
// Secondary Working Fluids, IIR (2010), computed from its polynomial, which is for
// 9 to 29.4 %.
func Crystallisation(salt Salt, w float64, p unit.Pressure) (CrystallisationPoint, error) {
	const greatest = 150 * unit.Megapascal
	var faults []error
	if !within(float64(p), 0, float64(greatest)) {
		faults = append(faults, outside("crystallisation", "pressure", p, unit.Pressure(0), greatest))
	}
	branches := salt.branches()
	if branches == nil {
		faults = append(faults, fmt.Errorf("%w: crystallisation of %v brine", ErrNoData, salt))
		return CrystallisationPoint{}, fault.Join(scope, faults...)
	}
	most := last(branches[len(branches)-1].fractions)
	if !within(w, 0, most) {
		faults = append(faults, outside(salt.String()+" crystallisation", "Fraction", number(w), number(0), number(most)))
	}
	if faults != nil {
		return CrystallisationPoint{}, fault.Join(scope, faults...)
	}
	for _, b := range branches {
		if w < b.fractions[0] || w > last(b.fractions) {
			continue
		}
		if p != 0 && b.solid != Ice {
			return CrystallisationPoint{}, fmt.Errorf("%w: crystallisation of %v out of its brine under pressure", ErrNoData, salt)
		}
		t, err := b.at(w)
		if err != nil {
			return CrystallisationPoint{}, err
		}
		fall, err := iceFall(p)
		if err != nil {
			return CrystallisationPoint{}, err
		}
		return CrystallisationPoint{unit.Celsius(t - fall), b.solid, b.source}, nil
	}
	return CrystallisationPoint{}, fmt.Errorf("%w: crystallisation of %v brine of mass fraction %v, near its eutectic", ErrNoData, salt, number(w).Rounded(errorDigits))
}

// iceFall returns by how many K the melting point of ice falls from atmospheric
// pressure to gauge pressure p.
func iceFall(p unit.Pressure) (float64, error) {
	if p == 0 {
		return 0, nil
	}
	melting := func(p float64) (float64, error) {
		return root.Find(func(t float64) float64 { return meltingPressure(t) - p }, iceTLeast, tripleTemperature, 0)
	}
	atmospheric, err := melting(absolute(0))
	if err != nil {
		return 0, err
	}
	under, err := melting(absolute(p))
	return atmospheric - under, err
}

// branch is one side of a salt's phase diagram, rising in mass fraction.
type branch struct {
	solid              Solid
	fractions, celsius []float64
	source             string
}

func last(x []float64) float64 { return x[len(x)-1] }

// at interpolates with a cubic that doesn't swing beyond its points.
func (b branch) at(w float64) (float64, error) {
	var c interp.FritschButland
	if err := c.Fit(b.fractions, b.celsius); err != nil {
		return math.NaN(), fmt.Errorf("fluid: crystallisation: %w", err)
	}
	return c.Predict(w), nil
}

func (s Salt) branches() []branch {
	const lange = "Lange's Handbook of Chemistry, 15th ed., Table 5.13"
	switch s {
	case SodiumChloride:
		return []branch{
			{Ice,
				[]float64{0, 0.02, 0.04, 0.06, 0.08, 0.15, 0.17, 0.19, 0.21, 0.23, 0.2331},
				[]float64{0, -1.13, -2.35, -3.63, -5.03, -10.88, -12.93, -15.21, -17.78, -20.69, -21.12}, lange},
			{SaltCrystals,
				[]float64{0.2331, 0.2383, 0.2553, 0.2616, 0.2629, 0.2633, 0.2636, 0.26395, 0.2652, 0.2668, 0.2692, 0.2762, 0.2791, 0.2812, 0.2846},
				[]float64{-21.12, -17.78, -6.67, -1.1, 0, 4.44, 10, 15.56, 26.67, 37.78, 51.67, 79.44, 93.33, 100, 108.7}, "Salt Institute, solubility of NaCl"},
		}
	case MagnesiumChloride:
		return []branch{
			{Ice,
				[]float64{0, 0.06, 0.08, 0.10, 0.12, 0.14, 0.16, 0.18, 0.20},
				[]float64{0, -3.89, -5.67, -7.83, -10.50, -13.70, -17.60, -22.10, -27.40}, lange},
			{SaltCrystals,
				[]float64{0.22, 0.24, 0.26, 0.28, 0.30},
				[]float64{-32.80, -25.60, -21.10, -18.30, -16.70}, lange},
		}
	case CalciumChloride:
		return []branch{{Ice,
			[]float64{0, 0.09, 0.10, 0.11, 0.12, 0.15, 0.18, 0.20, 0.21, 0.22, 0.23, 0.24, 0.25, 0.26, 0.27, 0.28, 0.29},
			[]float64{0, -5.012, -5.842, -6.743, -7.715, -11.055, -15.086, -18.260, -20.038, -21.973, -24.095, -26.439, -29.046, -31.966, -35.254, -38.975, -43.201}, "Melinder, IIR (2010), computed from its polynomial"}}
	}
	return nil
}
