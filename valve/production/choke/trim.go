package choke

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Trim is a choke or valve at one opening, as IEC 60534-2-1 describes it.
// The factors come from its maker's tests. The zero value is an error.
type Trim struct {
	Coefficient unit.FlowCoefficient `json:"coefficient"` // at this opening, without fittings; zero is shut
	Recovery    float64              `json:"recovery"`    // FL, liquid pressure recovery factor, 0 < FL ≤ 1; only for liquid or viscous flow
	GasRatio    float64              `json:"gas_ratio"`   // xT, drop over inlet pressure at which gas becomes critical, 0 < xT ≤ 1; only for gas
	Style       float64              `json:"style"`       // Fd, valve style modifier, 0 < Fd ≤ 1; only for viscous flow

	Bore       unit.Length `json:"bore"`     // d, nominal size; zero where there are no fittings and flow is turbulent
	Upstream   unit.Length `json:"upstream"` // D1, D2, inside diameters of the pipe; zero stands for Bore
	Downstream unit.Length `json:"downstream"`
	Reduced    bool        `json:"reduced"` // the trim is reduced: its rated C/d² is below 0.016 Kv/mm²
}

// Ranges of the standard.
const (
	greatestRatio = 0.047 // of C/d² in Kv/mm²
	turbulent     = 10000 // valve Reynolds number from which flow is turbulent
)

// pipes returns D1 and D2.
func (t Trim) pipes() (d1, d2 float64) {
	d1, d2 = float64(t.Upstream), float64(t.Downstream)
	if d1 == 0 {
		d1 = float64(t.Bore)
	}
	if d2 == 0 {
		d2 = float64(t.Bore)
	}
	return d1, d2
}

// fittings are the loss coefficients of reducers: sum is Σζ = ζ1+ζ2+ζB1-ζB2,
// inlet is ζi = ζ1+ζB1.
//
//	ζ1 = 0.5·(1-(d/D1)²)²    ζ2 = (1-(d/D2)²)²    ζB = 1-(d/D)⁴
//
// Source: IEC 60534-2-1, short-length concentric reducers.
func (t Trim) fittings() (sum, inlet float64) {
	d1, d2 := t.pipes()
	if d1 == d2 && d1 == float64(t.Bore) {
		return 0, 0
	}
	b1, b2 := float64(t.Bore)/d1, float64(t.Bore)/d2
	b1 *= b1
	b2 *= b2
	inlet = 0.5*(1-b1)*(1-b1) + 1 - b1*b1
	return inlet + (1-b2)*(1-b2) - (1 - b2*b2), inlet
}

// size is C²/d⁴, without dimension in SI.
func (t Trim) size() float64 {
	if t.Bore == 0 {
		return 0
	}
	r := float64(t.Coefficient) / (float64(t.Bore) * float64(t.Bore))
	return r * r
}

// Velocity heads in SI: a loss coefficient ζ on the bore adds ζ·C²/(N2·d⁴),
// and on a gas that chokes ζ·C²/(N5·d⁴) with the expansion factor 2/3 and the
// density falling with the pressure, which makes N5 = 9/8·N2. The standard
// prints them rounded: N2 = 1.60e-3 and N5 = 1.80e-3 for Kv and mm.
const (
	n2 = math.Pi * math.Pi / 8
	n5 = n2 * 9 / 8
)

// PipingFactor is the ratio of the flow with fittings to the flow without:
//
//	FP = 1/sqrt(1 + Σζ/N2·(C/d²)²)
//
// One where the pipe is as wide as the bore. It is NaN where fittings with a
// negative Σζ recover more than there is. Source: IEC 60534-2-1, piping geometry
// factor.
func (t Trim) PipingFactor() float64 {
	sum, _ := t.fittings()
	return 1 / math.Sqrt(1+sum/n2*t.size())
}

// RecoveryWithFittings is FLP, the liquid pressure recovery factor of the
// choke together with its inlet fitting:
//
//	FLP = FL/sqrt(1 + FL²/N2·(ζ1+ζB1)·(C/d²)²)
//
// Range: what the fields of Trim say, not checked here; NaN where fittings
// recover more than there is.
//
// Source: IEC 60534-2-1.
func (t Trim) RecoveryWithFittings() float64 {
	_, inlet := t.fittings()
	return t.Recovery / math.Sqrt(1+t.Recovery*t.Recovery/n2*inlet*t.size())
}

// GasRatioWithFittings is xTP, the pressure ratio at which gas becomes critical
// in the choke together with its fittings:
//
//	xTP = xT/FP² / (1 + xT·(ζ1+ζB1)/N5·(C/d²)²)
//
// Range: what the fields of Trim say, not checked here; NaN where PipingFactor
// is.
//
// Source: IEC 60534-2-1.
func (t Trim) GasRatioWithFittings() float64 {
	_, inlet := t.fittings()
	fp := t.PipingFactor()
	return t.GasRatio / (fp * fp) / (1 + t.GasRatio*inlet/n5*t.size())
}

// check reports faults of the geometry; viscous asks for what viscous flow
// needs, too.
func (t Trim) check(viscous bool) error {
	f := fault.In(scope)
	f.Add(fault.AtLeast("Coefficient", t.Coefficient, 0), fault.AtLeast("Bore", t.Bore, 0),
		t.checkPipe("Upstream", t.Upstream), t.checkPipe("Downstream", t.Downstream))
	if viscous {
		f.Add(fault.AboveTo("Style", t.Style, 0, 1), fault.AboveTo("Recovery", t.Recovery, leastRecovery, 1))
		if t.Bore == 0 {
			f.New("Bore", "is 0 in; must be above 0 in for viscous flow")
		}
	}
	if f.Any() {
		return f.Err()
	}
	if fp := t.PipingFactor(); !finite(fp) || !(fp > 0) {
		return fault.NewIn(scope, "Coefficient", "is %v in a bore of %v with pipes of %v and %v, which has no piping factor; must be smaller",
			t.Coefficient, t.Bore, t.Upstream, t.Downstream)
	}
	return nil
}

func (t Trim) checkPipe(path string, d unit.Length) error {
	if d == 0 || finite(float64(d)) && d >= t.Bore && t.Bore > 0 {
		return nil
	}
	return fault.New(path, "is %v; must be at least the bore of %v, or 0 for the same", d, t.Bore)
}

// outside says what lies beyond the standard's range.
func (t Trim) outside(reynolds float64) []string {
	var s []string
	if r := t.ratio(); r > greatestRatio {
		s = append(s, fmt.Sprintf("C/d² is %.3g Kv/mm²; the standard covers up to %g", r, greatestRatio))
	}
	if d1, d2 := t.pipes(); reynolds < turbulent && (d1 != float64(t.Bore) || d2 != float64(t.Bore)) {
		s = append(s, fmt.Sprintf("valve Reynolds number is %.4g; below %d the standard knows no fittings", reynolds, turbulent))
	}
	return s
}

// ratio is C/d² in Kv/mm², as the standard counts it.
func (t Trim) ratio() float64 {
	if t.Bore == 0 {
		return 0
	}
	d := t.Bore.In(unit.Millimetre)
	return t.Coefficient.In(unit.Kv) / (d * d)
}
