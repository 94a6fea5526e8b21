package valve

import (
	"math"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// StandardState is the temperature and absolute pressure at which gas volumes
// count.
type StandardState struct {
	Temperature unit.Temperature `json:"temperature"`
	Pressure    unit.Pressure    `json:"pressure"` // absolute
}

// StandardUS is the standard state in the customary form of API RP 14B.
//
//	Tsc = 520 °R, psc = 14.7 psi
//
// Source: API RP 14B.
func StandardUS() StandardState { return StandardState{unit.Rankine(520), 14.7 * unit.PSI} }

// StandardSI is the standard state in the SI form of API RP 14B.
func StandardSI() StandardState { return StandardState{unit.Kelvin(288.15), unit.Atmosphere} }

// Constant is Tsc/psc in K/Pa, the constant of the leak-rate formula.
//
// Range: a pressure that isn't zero: infinite at zero.
//
// Source: definition.
func (s StandardState) Constant() float64 { return s.Temperature.Kelvin() / float64(s.Pressure) }

// GasLeak is a closed valve leaking gas into a closed volume above it.
type GasLeak struct {
	Start       unit.Pressure    `json:"start"` // gauge
	End         unit.Pressure    `json:"end"`
	StartFactor float64          `json:"start_factor"` // gas deviation factor Z at each
	EndFactor   float64          `json:"end_factor"`
	Duration    time.Duration    `json:"duration"`
	Volume      unit.Volume      `json:"volume"` // of gas space above the valve
	Temperature unit.Temperature `json:"temperature"`
	Standard    StandardState    `json:"standard"`
}

// LeakRate is a leak, counted at standard state.
type LeakRate struct {
	Rate unit.FlowRate `json:"rate"`
	Rise unit.Pressure `json:"rise"` // of p/Z, absolute

	test GasLeak
}

// Rate returns the rate at which gas leaks through the valve.
//
//	q = (Tsc/psc)·V/(T·t)·(p2/Z2 − p1/Z1)
//
//	p1, p2  absolute pressure at start and end
//	Z1, Z2  gas deviation factor at each
//	V, T    volume and absolute temperature of the gas space
//	t       duration
//
// The temperature is one all through. A negative rate is gas lost from the space
// above. Errors name what is out of range.
//
// Source: API RP 14B, 5th edition (2005) with the errata of 9 November 2010,
// E.1.7: 35.37 °R/psi; 2.84e3 K/MPa.
func (g GasLeak) Rate() (LeakRate, error) {
	if err := g.Validate(); err != nil {
		return LeakRate{}, err
	}
	rise := float64(g.End+unit.Atmosphere)/g.EndFactor - float64(g.Start+unit.Atmosphere)/g.StartFactor
	return LeakRate{
		Rate: unit.FlowRate(g.Standard.Constant() * float64(g.Volume) / (g.Temperature.Kelvin() * g.Duration.Seconds()) * rise),
		Rise: unit.Pressure(rise),
		test: g,
	}, nil
}

// RiseAt returns the rise of p/Z that a leak rate makes over the duration, the
// inverse of Rate: what a test may show at most. Pressures and factors aren't
// used. Errors name what is out of range.
func (g GasLeak) RiseAt(rate unit.FlowRate) (unit.Pressure, error) {
	if err := fault.Join(scope, g.space(), fault.AtLeast("rate", rate, 0)); err != nil {
		return 0, err
	}
	rise := unit.Pressure(float64(rate) * g.Temperature.Kelvin() * g.Duration.Seconds() / (g.Standard.Constant() * float64(g.Volume)))
	if math.IsInf(float64(rise), 0) {
		return 0, fault.NewIn(scope, "rate", "is %v into a volume of %v; must make a finite rise", rate, g.Volume)
	}
	return rise, nil
}

const (
	maxGas       = 500 * unit.Megapascal
	maxGasVolume = 1e6 * unit.CubicMetre
)

// Validate reports everything that is wrong with g.
func (g GasLeak) Validate() error {
	return fault.Join(scope, g.space(),
		fault.Between("Start", g.Start, -unit.Atmosphere, maxGas), fault.Inside("StartFactor", g.StartFactor, 0.05, 5),
		fault.Between("End", g.End, -unit.Atmosphere, maxGas), fault.Inside("EndFactor", g.EndFactor, 0.05, 5))
}

// space reports what is wrong with all but the readings.
func (g GasLeak) space() error {
	f := fault.In(scope)
	if !(g.Duration > 0) {
		f.New("Duration", "is %v; must be above 0s", g.Duration)
	}
	f.Add(fault.AboveTo("Volume", g.Volume, 0, maxGasVolume))
	if k := g.Temperature.Kelvin(); !(k > 100 && k < 1000) {
		f.New("Temperature", "is %v; must be above 100 K and below 1000 K", g.Temperature)
	}
	if k := g.Standard.Temperature.Kelvin(); !(k > 200 && k < 400) {
		f.New("Standard.Temperature", "is %v; must be above 200 K and below 400 K", g.Standard.Temperature)
	}
	if p := g.Standard.Pressure; !(p > 50*unit.Kilopascal && p < 200*unit.Kilopascal) {
		f.New("Standard.Pressure", "is %v; must be above 50 kPa and below 200 kPa, absolute", p)
	}
	return f.Err()
}

// LiquidLeak returns the rate at which liquid leaks into a closed space full of
// liquid whose pressure rises.
//
//	q = V·c·Δp/t
//
// V is the volume, c its compressibility with that of its walls, Δp the rise over
// the duration t. Temperature is constant: a warming space rises without a leak.
// NaN where t is zero. Source: definition of compressibility.
func LiquidLeak(volume unit.Volume, c unit.Compressibility, rise unit.Pressure, over time.Duration) unit.FlowRate {
	if over == 0 {
		return unit.FlowRate(math.NaN())
	}
	return unit.FlowRate(float64(volume) * float64(c) * float64(rise) / over.Seconds())
}

// Limits of practice for safety valves, each with its source. They are inputs to
// be chosen, not rules that this package applies.
const (
	// LeakLimitGas: 15 standard cubic feet a minute. ISO 10417:1993 = API RP 14B,
	// 3rd edition, 1990.
	LeakLimitGas = 15 * unit.CubicFootPerMinute

	// LeakLimitLiquid: 400 cm³ a minute. Source as for gas.
	LeakLimitLiquid = 400 * unit.CubicCentimetrePerMinute

	// ReopenMargin is what is added to the opening pressure recorded, to be sure
	// that the valve is fully open: 500 psi. API practice, quoted on a training
	// site (2021).
	ReopenMargin = 500 * unit.PSI

	// ClosingTime is how soon the valve must close after the surface valve. 30
	// CFR 250.821(b).
	ClosingTime = 2 * time.Minute

	// SurfaceClosingTime is how soon the surface valve must close. 30 CFR
	// 250.821(b).
	SurfaceClosingTime = 45 * time.Second

	// DepthBelowMudline is the least setting depth of a subsea well's valve. 30
	// CFR 250.828(a).
	DepthBelowMudline = 100 * unit.Foot
)
