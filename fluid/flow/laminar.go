package flow

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Laminar is the state at the wall of steady laminar flow.
type Laminar struct {
	WallStress unit.Pressure  `json:"wall_stress"` // τw, mean over both walls of an annulus
	WallRate   unit.ShearRate `json:"wall_rate"`   // γw, the fluid's shear rate at τw
	Index      float64        `json:"index"`       // n' = d ln τw / d ln V; n for a power law, 1 for a Newtonian fluid
}

// Gradient returns the friction gradient of the wall stress in a conduit of that
// hydraulic diameter, 4 τw/D: a balance of forces.
//
// Range: a diameter above zero, not checked: infinite at zero.
//
// Source: balance of forces on the fluid.
func (l Laminar) Gradient(hydraulic unit.Length) unit.Gradient {
	return unit.Gradient(4 * float64(l.WallStress) / float64(hydraulic))
}

// PipeLaminar solves steady laminar flow in a round pipe of diameter D at a
// mean velocity V, exactly for every Herschel–Bulkley fluid. With the excess
// stress x = τw - τ0 and m = 1/n, the Rabinowitsch–Mooney integral is
//
//	8V/D = 4 (x/K)^m x [x²/(m+3) + 2 τ0 x/(m+2) + τ0²/(m+1)] / τw³
//
// which is Poiseuille's law, the power law's and (n = 1) Buckingham and
// Reiner's equation in one. It is solved for x in logarithms, where the slope
// lies between m and m+1, to 1e-12 or better. Shear is the nominal rate 8V/D:
// not negative, no more than 1e8 1/s.
//
// Source: Buckingham, Proc. ASTM 21 (1921) 1154; Rabinowitsch, Z. Phys. Chem.
// A145 (1929) 1; Mooney, J. Rheology 2 (1931) 210.
func (r Rheology) PipeLaminar(shear unit.ShearRate) (Laminar, error) {
	if err := r.checkShear(shear); err != nil {
		return Laminar{}, err
	}
	return r.laminar(float64(shear), round), nil
}

// SlotLaminar solves steady laminar flow between parallel plates, the usual
// stand-in for an annulus of gap D - d, at the nominal shear rate 12V/(D - d):
//
//	12V/(D-d) = 3 (x/K)^m x [x/(m+2) + τ0/(m+1)] / τw²
//
// with x and m as in PipeLaminar. Against the exact concentric annulus the
// slot's wall stress is up to 1 % high for d/D above 0.5 and 3 % for d/D = 0.3;
// it serves as a check and as the trade's usual figure.
//
// Source: API RP 13D (2006), 7.4 (annulus as a slot); Bird, Stewart and
// Lightfoot, Transport Phenomena, problems on slit flow.
func (r Rheology) SlotLaminar(shear unit.ShearRate) (Laminar, error) {
	if err := r.checkShear(shear); err != nil {
		return Laminar{}, err
	}
	return r.laminar(float64(shear), slot), nil
}

const mostShear = 1e8 * unit.PerSecond

func (r Rheology) checkShear(shear unit.ShearRate) error {
	if r.valid() && shear >= 0 && shear <= mostShear {
		return nil
	}
	f := fault.In("flow")
	f.At("Rheology", r.Validate())
	f.Add(fault.Between("nominal shear rate", shear, 0, mostShear))
	return f.Err()
}

// shape tells the pipe's integral from the slot's.
type shape int

const (
	round shape = iota
	slot
)

// laminar needs a checked rheology and shear rate.
func (r Rheology) laminar(shear float64, s shape) Laminar {
	τ0, k, n := float64(r.Yield), float64(r.Consistency), r.Index
	if shear == 0 {
		return Laminar{WallStress: r.Yield, Index: n}
	}
	m := 1 / n
	// Where the yield stress is nothing: a closed form.
	if τ0 == 0 {
		rate := shear * (3*n + 1) / (4 * n)
		if s == slot {
			rate = shear * (2*n + 1) / (3 * n)
		}
		τw := k * rate
		if n != 1 {
			τw = k * math.Pow(rate, n)
		}
		return Laminar{unit.Pressure(τw), unit.ShearRate(rate), n}
	}
	if shear < 1e-300 { // whose logarithm is lost; the wall has the yield stress to all digits
		return Laminar{WallStress: r.Yield, Index: n}
	}
	ξ, slope, u := excess(shear, τ0, k, m, s)
	τw := τ0 * (1 + ξ)
	rate := τ0 / k * ξ
	if n != 1 {
		rate = math.Exp(m * u)
	}
	return Laminar{unit.Pressure(τw), unit.ShearRate(rate), ξ / ((1 + ξ) * slope)}
}

// nearer is where excess starts: both ends of its curve are straight in logarithms and
// give a ln ξ that is too low, so the nearer end gives the greater. It is most too low
// where the two give the same: most of that is added.
func nearer(target, m, a0, last float64) float64 {
	high, low := (target-math.Log(last))/m, (target-math.Log(a0))/(m+1)
	apart := m * (high - low)
	return max(high, low) + 0.42/(m*(1+1.8*apart*apart))
}

// excess returns ξ = (τw - τ0)/τ0, the slope d ln(shear)/d ln ξ there, and
// ln((τw - τ0)/K). The equation is
//
//	shear = c (τ0/K)^m ξ^(m+1) P(ξ)/(1+ξ)^j
//
// with c = j+1, j = 3 for the pipe and 2 for the slot.
func excess(shear, τ0, k, m float64, s shape) (ξ, slope, lnxk float64) {
	l := math.Log(τ0 / k)
	a0, a1, a2 := 1/(m+1), 1/(m+2), 1/(m+3)
	c, last := 4.0, a2
	if s == slot {
		c, last = 3, a1
	}
	target := math.Log(shear/c) - m*l
	u := nearer(target, m, a0, last)
	j, bent := 3.0, 2*a2
	if s == slot {
		j, bent = 2, 0
	}
	for range 50 {
		ξ = math.Exp(u)
		τw := 1 + ξ
		var p, dp, power float64 // P, ξ P' and (1+ξ)^j; bent ξ² is ξ² P''
		if s == slot {
			p, dp, power = a1*ξ+a0, a1*ξ, τw*τw
		} else {
			b := 2 * a1 * ξ
			p, dp, power = a2*ξ*ξ+b+a0, 2*a2*ξ*ξ+b, τw*τw*τw
		}
		h := math.Log(p / power)
		share, part := dp/p, ξ/τw
		slope = m + 1 + share - j*part
		bend := (dp+bent*ξ*ξ)/p - share*share - j*part/τw
		// Halley's step; its error is the cube of it, times less than a tenth.
		step := (target - (m+1)*u - h) / slope
		step /= 1 + step*bend/(2*slope)
		u += step
		slope += bend * step // at the new u
		if math.Abs(step) < 3e-5 {
			break
		}
	}
	return math.Exp(u), slope, u + l
}
