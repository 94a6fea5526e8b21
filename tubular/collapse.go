package tubular

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// CollapseRegime is the way in which a pipe collapses, by its slenderness.
type CollapseRegime int

// The regimes of API TR 5C3, from thick to thin wall.
const (
	YieldCollapse CollapseRegime = iota
	PlasticCollapse
	TransitionCollapse
	ElasticCollapse
)

var collapseRegimes = [...]string{"yield", "plastic", "transition", "elastic"}

// String returns the regime's name.
func (r CollapseRegime) String() string {
	if r < 0 || int(r) >= len(collapseRegimes) {
		return fmt.Sprintf("CollapseRegime(%d)", int(r))
	}
	return collapseRegimes[r]
}

// MarshalText writes the regime's name.
func (r CollapseRegime) MarshalText() ([]byte, error) {
	if r < 0 || int(r) >= len(collapseRegimes) {
		return nil, fault.NewIn("tubular", "CollapseRegime", "is %d; must be from 0 to %d", int(r), len(collapseRegimes)-1)
	}
	return []byte(collapseRegimes[r]), nil
}

// UnmarshalText reads a regime's name.
func (r *CollapseRegime) UnmarshalText(text []byte) error {
	for i, name := range collapseRegimes {
		if string(text) == name {
			*r = CollapseRegime(i)
			return nil
		}
	}
	return fault.NewIn("tubular", "", "collapse regime is %q; must be yield, plastic, transition or elastic", text)
}

// CollapseCurve is the collapse pressure of one yield strength against
// slenderness, its coefficients computed at full precision. API's tables print
// them rounded, and ratings made with the rounded ones differ by up to 10 psi
// (20 psi above 10,000 psi). Make it with PrepareCollapse.
type CollapseCurve struct {
	Yield unit.Pressure `json:"yield"`
	A     float64       `json:"a"` // plastic
	B     float64       `json:"b"`
	C     unit.Pressure `json:"c"` // plastic
	F     float64       `json:"f"` // transition
	G     float64       `json:"g"`

	// Slenderness D/t at which one regime gives way to the next; each limit
	// itself belongs to the thicker regime.
	YieldPlastic      float64 `json:"yield_plastic"`
	PlasticTransition float64 `json:"plastic_transition"`
	TransitionElastic float64 `json:"transition_elastic"`

	// Prepared products, Pa.
	twoY, yA, yBC, yF, yG float64
}

// The numbers of the elastic collapse formula, 46.95e6 psi, and the limits of
// yield strength within which the formulas are used.
const (
	elasticCollapse = 46.95e6 * unit.PSI
	leastYield      = 24_000 * unit.PSI
	greatestYield   = 180_000 * unit.PSI
)

// PrepareCollapse returns the collapse curve of a yield strength. With Y in psi
//
//	A = 2.8762 + 0.10679e-5 Y + 0.21301e-10 Y² - 0.53132e-16 Y³
//	B = 0.026233 + 0.50609e-6 Y
//	C = -465.93 + 0.030867 Y - 0.10483e-7 Y² + 0.36989e-13 Y³   psi
//	F = 46.95e6 r³ / (Y (r - B/A) (1 - r)²),  r = 3 (B/A) / (2 + B/A)
//	G = F B/A
//
// and the limits of the regimes are where neighbouring formulas meet.
//
//	yield to plastic        (√((A-2)² + 8 (B + C/Y)) + A - 2) / (2 (B + C/Y))
//	plastic to transition   Y (A - F) / (C + Y (B - G))
//	transition to elastic   (2 + B/A) / (3 B/A)
//
// It is an error when the yield strength is outside 24,000 to 180,000 psi: API
// gives the lower limit, the upper one is that of its tables. Above 160,000 psi
// the polynomials are at their end: at some slenderness a stronger steel comes
// out weaker, by up to 0.15 %.
//
// Source: API TR 5C3 (2008) / ISO/TR 10400:2007, clause 8; API Bul 5C3 (1985),
// section 2. The limits of yield strength are from memory of them.
func PrepareCollapse(yield unit.Pressure) (CollapseCurve, error) {
	const slack = 1e-12 // 24 * unit.KSI is a last bit below 24_000 * unit.PSI
	if !(yield >= leastYield*(1-slack) && yield <= greatestYield*(1+slack)) {
		return CollapseCurve{}, fault.NewIn("tubular", "Yield", "is %v; must be from %v to %v for API collapse", yield, leastYield, greatestYield)
	}
	var c CollapseCurve
	c.prepare(yield)
	return c, nil
}

// collapseCoefficients are A, B and C of a yield strength in psi.
func collapseCoefficients(Y float64) (A, B, C float64) {
	return 2.8762 + Y*(0.10679e-5+Y*(0.21301e-10-0.53132e-16*Y)),
		0.026233 + 0.50609e-6*Y,
		-465.93 + Y*(0.030867+Y*(-0.10483e-7+0.36989e-13*Y))
}

// transitionProduct is Y G in psi. With r put in, all but one division goes:
// F = 46.95e6 · 27 A B² / (4 Y (A - B)³), G = F B/A; A may be divided out.
func transitionProduct(A, B float64) float64 {
	ab := A - B
	return elasticCollapse.In(unit.PSI) * 6.75 * B * B / (ab * ab * ab)
}

func (c *CollapseCurve) prepare(yield unit.Pressure) {
	Y := yield.In(unit.PSI)
	A, B, C := collapseCoefficients(Y)
	yG := transitionProduct(A, B)
	yF := yG * A
	yG *= B
	F, G := yF/Y, yG/Y
	b := B + C/Y
	c.Yield, c.A, c.B, c.C, c.F, c.G = yield, A, B, unit.Pressure(C)*unit.PSI, F, G
	c.YieldPlastic = (math.Sqrt((A-2)*(A-2)+8*b) + A - 2) / (2 * b)
	c.PlasticTransition = (Y*A - yF) / (C + Y*B - yG)
	c.TransitionElastic = (2*A + B) / (3 * B)
	y := float64(yield)
	c.twoY, c.yA, c.yBC, c.yF, c.yG = 2*y, y*A, y*B+float64(c.C), yF*float64(unit.PSI), yG*float64(unit.PSI)
}

// Regime returns how a pipe of slenderness D/t collapses.
func (c *CollapseCurve) Regime(slenderness float64) CollapseRegime {
	switch {
	case slenderness <= c.YieldPlastic:
		return YieldCollapse
	case slenderness <= c.PlasticTransition:
		return PlasticCollapse
	case slenderness <= c.TransitionElastic:
		return TransitionCollapse
	}
	return ElasticCollapse
}

// Pressure returns the collapse pressure: the least outside pressure that
// collapses a pipe of slenderness x = D/t with nothing inside and no axial load.
//
//	yield        2 Y (x - 1) / x²
//	plastic      Y (A/x - B) - C
//	transition   Y (F/x - G)
//	elastic      46.95e6 psi / (x (x - 1)²)
//
// It is NaN unless x is above 2, that of a solid bar.
//
// Source: API TR 5C3 (2008), Eqs. for yield strength, plastic, transition and
// elastic collapse; API Bul 5C3 (1985), 2.2 to 2.5.
func (c *CollapseCurve) Pressure(slenderness float64) unit.Pressure {
	x := slenderness
	switch {
	case !(x > 2):
		return unit.Pressure(math.NaN())
	case x <= c.YieldPlastic:
		return unit.Pressure(c.twoY * (x - 1) / (x * x))
	case x <= c.PlasticTransition:
		return unit.Pressure(c.yA/x - c.yBC)
	case x <= c.TransitionElastic:
		return unit.Pressure(c.yF/x - c.yG)
	}
	return elasticCollapse / unit.Pressure(x*(x-1)*(x-1))
}
