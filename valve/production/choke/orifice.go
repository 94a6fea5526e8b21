package choke

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// Taps says where an orifice meter takes its pressures.
type Taps int

// The tappings of ISO 5167-2.
const (
	CornerTaps Taps = iota
	FlangeTaps      // one inch before and behind
	RadiusTaps      // one pipe diameter before, half behind: "D and D/2"
)

var tapNames = [...]string{"corner", "flange", "D and D/2"}

func (t Taps) String() string {
	if t < 0 || int(t) >= len(tapNames) {
		return fmt.Sprintf("Taps(%d)", int(t))
	}
	return tapNames[t]
}

// MarshalText writes the name of the tapping.
func (t Taps) MarshalText() ([]byte, error) {
	if t < 0 || int(t) >= len(tapNames) {
		return nil, fault.NewIn(scope, "", "taps are %d; must be one of %q", int(t), tapNames)
	}
	return []byte(t.String()), nil
}

// UnmarshalText reads the name of a tapping.
func (t *Taps) UnmarshalText(text []byte) error {
	for i, name := range tapNames {
		if string(text) == name {
			*t = Taps(i)
			return nil
		}
	}
	return fault.NewIn(scope, "", "taps are %q; must be one of %q", text, tapNames)
}

// Orifice is a concentric, square-edged metering orifice in a pipe.
// The zero value is an error.
type Orifice struct {
	Pipe unit.Length `json:"pipe"` // D and d, inside diameters at working temperature
	Bore unit.Length `json:"bore"`
	Taps Taps        `json:"taps"`
}

// beta is the diameter ratio d/D.
func (o Orifice) beta() float64 { return float64(o.Bore / o.Pipe) }

// Discharge is the discharge coefficient at a pipe Reynolds number, by Reader-
// Harris and Gallagher:
//
//	C = 0.5961 + 0.0261β² - 0.216β⁸ + 0.000521(10⁶β/Re)^0.7
//	  + (0.0188 + 0.0063A)·β^3.5·(10⁶/Re)^0.3
//	  + (0.043 + 0.080e^(-10L1) - 0.123e^(-7L1))·(1 - 0.11A)·β⁴/(1-β⁴)
//	  - 0.031(M2 - 0.8M2^1.1)·β^1.3
//	  + 0.011(0.75 - β)(2.8 - D/25.4 mm)       where D < 71.12 mm
//	A = (19000β/Re)^0.8      M2 = 2L2/(1-β)
//
// L1, L2 distances of the tappings over D: corner 0, 0; flange 25.4 mm/D; D and
// D/2: 1, 0.47. Re = 4W/(π·D·μ).
//
// Range: as Rate says, not checked here: infinite at a Reynolds number of zero,
// NaN below.
//
// Source: ISO 5167-2:2003, Eq. 4.
func (o Orifice) Discharge(reynolds float64) float64 {
	b, d := o.beta(), o.Pipe.In(unit.Inch)
	l1, l2 := 0.0, 0.0
	switch o.Taps {
	case FlangeTaps:
		l1, l2 = 1/d, 1/d
	case RadiusTaps:
		l1, l2 = 1, 0.47
	case CornerTaps:
	}
	b2 := b * b
	b4 := b2 * b2
	a := math.Pow(19000*b/reynolds, 0.8)
	m2 := 2 * l2 / (1 - b)
	c := 0.5961 + 0.0261*b2 - 0.216*b4*b4 + 0.000521*math.Pow(1e6*b/reynolds, 0.7) +
		(0.0188+0.0063*a)*math.Pow(b, 3.5)*math.Pow(1e6/reynolds, 0.3) +
		(0.043+0.080*math.Exp(-10*l1)-0.123*math.Exp(-7*l1))*(1-0.11*a)*b4/(1-b4) -
		0.031*(m2-0.8*math.Pow(m2, 1.1))*math.Pow(b, 1.3)
	if d < 2.8 {
		c += 0.011 * (0.75 - b) * (2.8 - d)
	}
	return c
}

// Expansibility is the factor for gas expanding through the orifice:
//
//	ε = 1 - (0.351 + 0.256β⁴ + 0.93β⁸)·(1 - (p2/p1)^(1/κ))
//
// ratio p2/p1 absolute, 0.75 or more; κ isentropic exponent. One for liquids.
//
// Range: not checked; NaN for a negative ratio, whose power is no number.
//
// Source: ISO 5167-2:2003, Eq. 5.
func (o Orifice) Expansibility(ratio, exponent float64) float64 {
	b4 := o.beta() * o.beta()
	b4 *= b4
	return 1 - (0.351+0.256*b4+0.93*b4*b4)*(1-math.Pow(ratio, 1/exponent))
}

// Metered is what an orifice meter feels.
type Metered struct {
	Density    unit.Density   `json:"density"` // at the upstream tapping
	Viscosity  unit.Viscosity `json:"viscosity"`
	Exponent   float64        `json:"exponent"` // κ, isentropic exponent; zero for liquid
	Upstream   unit.Pressure  `json:"upstream"`
	Downstream unit.Pressure  `json:"downstream"`
}

// OrificeFlow is the flow through an orifice meter with the terms that make it.
type OrificeFlow struct {
	Mass      unit.MassRate `json:"mass"`
	Rate      unit.FlowRate `json:"rate"`      // at upstream conditions
	Reynolds  float64       `json:"reynolds"`  // in the pipe
	Discharge float64       `json:"discharge"` // C
	Expansion float64       `json:"expansion"` // ε
	Outside   []string      `json:"outside"`   // what lies beyond the standard's range
}

// Rate computes the flow from the two pressures:
//
//	W = C/sqrt(1-β⁴)·ε·π/4·d²·sqrt(2·(p1-p2)·ρ1)
//
// C depends on the Reynolds number of the flow itself and is solved for. Range:
// d ≥ 12.5 mm, 50 mm ≤ D ≤ 1 m, 0.1 ≤ β ≤ 0.75, p2/p1 ≥ 0.75 for gas, Re ≥ 5,000
// and 170β²·D/mm. Errors: ErrNoFlow; faults of the inputs.
// Source: ISO 5167-2:2003, Eq. 1 and clause 5.3.
func (o Orifice) Rate(m Metered) (OrificeFlow, error) {
	p1, p2, err := pressures(m.Upstream, m.Downstream)
	faults := fault.In(scope)
	faults.Add(fault.Above("Pipe", o.Pipe, 0), fault.Above("Bore", o.Bore, 0), density(m.Density), fault.Between("Viscosity", m.Viscosity, leastViscosity, mostViscosity), err)
	if !(o.Bore < o.Pipe) {
		faults.New("Bore", "is %v; must be below the pipe of %v", o.Bore, o.Pipe)
	}
	if _, err := o.Taps.MarshalText(); err != nil {
		faults.At("Taps", err)
	}
	if m.Exponent != 0 {
		faults.Add(fault.AboveTo("Exponent", m.Exponent, 1, 2))
	}
	if err := faults.Err(); err != nil {
		return OrificeFlow{}, err
	}
	f := OrificeFlow{Expansion: 1}
	if m.Exponent != 0 && p1 > 0 {
		f.Expansion = o.Expansibility(p2/p1, m.Exponent)
	}
	b2 := o.beta() * o.beta()
	d := float64(o.Bore)
	perC := f.Expansion / math.Sqrt(1-b2*b2) * math.Pi / 4 * d * d * math.Sqrt(2*(p1-p2)*float64(m.Density))
	if perC == 0 {
		f.Outside = []string{"there is no flow"}
		return f, nil
	}
	reynolds := func(w float64) float64 { return 4 * w / (math.Pi * float64(o.Pipe) * float64(m.Viscosity)) }
	// C lies between 0.3 and 3 wherever the equation means anything.
	w, err := root.Find(func(w float64) float64 { return perC*o.Discharge(reynolds(w)) - w }, 0.3*perC, 3*perC, 0)
	if err != nil {
		return OrificeFlow{}, fmt.Errorf("choke: orifice at a Reynolds number near %.3g, far below the standard's range: %w", reynolds(0.6*perC), err)
	}
	f.Mass, f.Rate = unit.MassRate(w), unit.FlowRate(w/float64(m.Density))
	f.Reynolds = reynolds(w)
	f.Discharge = o.Discharge(f.Reynolds)
	f.Outside = o.outside(f.Reynolds, p2/p1, m.Exponent != 0)
	return f, nil
}

func (o Orifice) outside(reynolds, ratio float64, gas bool) []string {
	var s []string
	say := func(ok bool, format string, args ...any) {
		if !ok {
			s = append(s, fmt.Sprintf(format, args...))
		}
	}
	b := o.beta()
	say(o.Bore.In(unit.Millimetre) >= 12.5, "bore is %v; the standard covers 12.5 mm and more", o.Bore.Rounded(4))
	say(o.Pipe.In(unit.Millimetre) >= 50 && o.Pipe <= unit.Metre, "pipe is %v; the standard covers 50 mm to 1 m", o.Pipe.Rounded(4))
	say(b >= 0.1 && b <= 0.75, "diameter ratio is %.3f; the standard covers 0.1 to 0.75", b)
	say(!gas || ratio >= 0.75, "pressure ratio is %.3f; the standard covers 0.75 and more", ratio)
	least := max(5000, 170*b*b*o.Pipe.In(unit.Millimetre))
	say(reynolds >= least, "Reynolds number is %.4g; the standard covers %.4g and more", reynolds, least)
	return s
}
