package hydrostatics

import (
	"math"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// HeatExchange is what a flowing well and the ground exchange heat by.
type HeatExchange struct {
	Rate         unit.MassRate     `json:"rate"`          // of the fluid in the tubing
	SpecificHeat unit.SpecificHeat `json:"specific_heat"` // of the fluid
	Radius       unit.Length       `json:"radius"`        // that Transfer is counted on, as a rule the tubing's inside
	Transfer     unit.HeatTransfer `json:"transfer"`      // overall, from the fluid to the hole's wall
	Hole         unit.Length       `json:"hole"`          // radius of the hole's wall
	Conductivity unit.Conductivity `json:"conductivity"`  // of the ground
	Diffusivity  unit.Diffusivity  `json:"diffusivity"`   // of the ground
	Time         time.Duration     `json:"time"`          // since flow began
}

// RelaxationDistance returns the length over which the fluid's temperature
// follows the ground's:
//
//	A = w·c·[1/(2π·r·U) + f(tD)/(2π·k)],  tD = α·t/rh²
//
// w is the mass rate, c the specific heat, r and U radius and overall heat
// transfer coefficient, k and α conductivity and diffusivity of the ground, rh
// the radius of the hole, t the time of flow; f see ThermalTime. The fluid is a
// liquid: neither friction nor the cooling of an expanding gas counts.
//
// Errors: those of Validate.
//
// Source: Ramey, Wellbore Heat Transmission, JPT April 1962, 427, in SI.
func (h HeatExchange) RelaxationDistance() (unit.Length, error) {
	if err := h.Validate(); err != nil {
		return 0, err
	}
	w, c, r, u := float64(h.Rate), float64(h.SpecificHeat), float64(h.Radius), float64(h.Transfer)
	td := float64(h.Diffusivity) * h.Time.Seconds() / (float64(h.Hole) * float64(h.Hole))
	a := w * c * (1/(2*math.Pi*r*u) + ThermalTime(td)/(2*math.Pi*float64(h.Conductivity)))
	return unit.Length(a), fault.Join(scope, fault.Above("", unit.Length(a), 0))
}

// Validate reports everything that is wrong with h.
func (h HeatExchange) Validate() error {
	f := fault.In(scope)
	f.Add(fault.Above("Rate", h.Rate, 0), fault.Above("SpecificHeat", h.SpecificHeat, 0), fault.Above("Radius", h.Radius, 0),
		fault.Above("Transfer", h.Transfer, 0), fault.Above("Hole", h.Hole, 0), fault.Above("Conductivity", h.Conductivity, 0),
		fault.Above("Diffusivity", h.Diffusivity, 0))
	if h.Time <= 0 {
		f.New("Time", "is %v; must be above 0 s", h.Time)
	}
	return f.Err()
}

// ThermalTime returns the transient heat conduction function of the ground
// around a well that takes heat at a constant rate:
//
//	f = 1.1281·√tD·(1 − 0.3·√tD)          tD ≤ 1.5
//	f = [0.4063 + ln(tD)/2]·(1 + 0.6/tD)  tD > 1.5
//
// tD = α·t/rh² is dimensionless time. Against the exact integral for a
// cylinder it is within 3 % up to tD = 1, up to 8 % low where the branches
// meet (a few hours in a usual hole), and within 0.5 % from tD = 5. For long
// times Ramey's own line, ln(2·√tD) − 0.290, is 0.003 less.
//
// Range: tD from zero up; NaN below.
//
// Source: Hasan and Kabir, SPE Production Engineering, August 1991, from
// memory; the branch of long times is that of a simulator's published benchmark
// (DuMux) to eight digits; the errors are measured against Carslaw and Jaeger, Conduction of
// Heat in Solids, 2nd ed. 1959, 13.5.
func ThermalTime(td float64) float64 {
	if td <= 1.5 {
		root := math.Sqrt(td)
		return 1.1281 * root * (1 - 0.3*root)
	}
	return (0.4063 + math.Log(td)/2) * (1 + 0.6/td)
}

// Flowing is a well that produces or injects a liquid, at a steady rate for
// long enough that the profile moves slowly.
type Flowing struct {
	Ground    *TemperatureProfile `json:"ground"`     // undisturbed
	Inlet     unit.Temperature    `json:"inlet"`      // of the fluid where it enters: at TopTVD injecting, at BottomTVD producing
	TopTVD    unit.Length         `json:"top_tvd"`    // TVD of the wellhead
	BottomTVD unit.Length         `json:"bottom_tvd"` // TVD of the formation
	Relaxing  unit.Length         `json:"relaxing"`   // relaxation distance, by TVD: of a hole at inclination I, A·cos I
}

// Producing returns the temperature of a liquid on its way up:
//
//	T = Te + a·A·(1 − e^(−y/A)) + (Tin − Te,in)·e^(−y/A)
//
// y is the height above the inlet, Te the ground's temperature at that depth,
// a its gradient, A the relaxation distance. Each straight interval of the
// ground's profile is solved in turn, and the points of the answer lie so
// close that what is straight between them misses by less than tolerance.
//
// Source: Ramey 1962, JPT April, 427; Hasan and Kabir 1991 for producers.
func (f Flowing) Producing(tolerance unit.TemperatureDifference) (*TemperatureProfile, error) {
	return f.profile(f.BottomTVD, f.TopTVD, tolerance)
}

// Injecting returns the temperature of a liquid on its way down:
//
//	T = a·z + b − a·A + (Tin + a·A − b)·e^(−z/A)
//
// for ground at a·z + b with z from the wellhead; else as Producing.
//
// Source: Ramey 1962, JPT April, 427.
func (f Flowing) Injecting(tolerance unit.TemperatureDifference) (*TemperatureProfile, error) {
	return f.profile(f.TopTVD, f.BottomTVD, tolerance)
}

func (f Flowing) profile(in, out unit.Length, tolerance unit.TemperatureDifference) (*TemperatureProfile, error) {
	faults := fault.In(scope)
	faults.Add(fault.AboveZero("Inlet", f.Inlet), fault.Finite("TopTVD", f.TopTVD), fault.Above("BottomTVD", f.BottomTVD, f.TopTVD),
		fault.Above("Relaxing", f.Relaxing, 0), fault.Between("tolerance", tolerance, 1e-4, 100))
	if f.Ground == nil || len(f.Ground.depth) == 0 {
		faults.New("Ground", "is missing")
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	a := float64(f.Relaxing)
	t := f.Inlet.Kelvin()
	points := []TemperaturePoint{{in, f.Inlet}}
	for z, end := float64(in), float64(out); z != end; {
		next := f.Ground.kink(z, end)
		t0, t1 := f.Ground.At(unit.Length(z)).Kelvin(), f.Ground.At(unit.Length(next)).Kelvin()
		l := math.Abs(next - z)
		slope := (t1 - t0) / l // along the flow
		// T − Te = −slope·A + c·e^(−s/A): its curvature is at most |c|/A², and a
		// straight line over a step h misses by curvature·h²/8.
		c := t - t0 + slope*a
		steps := math.Ceil(l / a * math.Sqrt(math.Abs(c)/(8*float64(tolerance))))
		n := int(min(max(steps, 1), 10000))
		for i := 1; i <= n; i++ {
			s := l * float64(i) / float64(n)
			t = t0 + slope*s - slope*a + c*math.Exp(-s/a)
			at := z + (next-z)*float64(i)/float64(n)
			if i == n {
				at = next
			}
			points = append(points, TemperaturePoint{unit.Length(at), unit.Kelvin(t)})
		}
		z = next
	}
	if in > out {
		for i, j := 0, len(points)-1; i < j; i, j = i+1, j-1 {
			points[i], points[j] = points[j], points[i]
		}
	}
	return NewTemperatureProfile(points)
}
