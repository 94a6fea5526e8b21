package flow_test

import (
	"math"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// warm is an ideal gas by ρ = c·p/T, p gauge.
type warm float64

func (c warm) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	return unit.Density(float64(c) * float64(p) / t.Kelvin()), nil
}

// halved finds where f, rising, is zero.
func halved(f func(float64) float64, a, b float64) float64 {
	for range 200 {
		if m := (a + b) / 2; f(m) > 0 {
			b = m
		} else {
			a = m
		}
	}
	return (a + b) / 2
}

// A gas with weight, and warmer below than above, in a well without friction. The
// bubble's density is that of its middle, so ρ = c·(p − ρ·g·h/2)/T(middle) with h =
// m/(ρ·A): solved here for its height by halving.
func TestKillOfAHeavyGasWorked(t *testing.T) {
	const (
		area, depth = 0.020, 3000.0
		c           = 2.2e-3 // a heavy gas: some 250 kg/m³ at 360 bar
		old, heavy  = 1100.0, 1250.0
	)
	k := killed()
	k.Influx = flow.Influx{Volume: 4, Fluid: warm(c), Surface: unit.Kelvin(300), Bottom: unit.Kelvin(390)}
	// one nozzle so large that it takes nothing at this rate
	k.Well.Exit = flow.Orifices{Count: 1, Diameter: 1, Discharge: 1}
	s, err := k.Schedule()
	require.NoError(t, err)
	warmth := func(z float64) float64 { return 300 + 90*z/depth }
	// shut in: 4 m³ at the bottom, 200 m
	middle := depth - 100
	rho := c / warmth(middle) * 360e5 / (1 + c/warmth(middle)*g*100)
	mass := 4 * rho
	require.InDelta(t, 360e5-rho*g*200-old*g*(depth-200), float64(s.ShutIn.Choke), 2)
	require.InDelta(t, 360e5-rho*g*200-old*g*(depth-200-2000), float64(s.ShutIn.Weak), 2)

	greatest := 0.0
	require.Len(t, s.Points, 120+1+1, "a 120th each, and the top at the choke; the end of the way in is one of them")
	for i, p := range s.Points {
		v := float64(p.Pumped)
		if i > 0 {
			require.Greater(t, p.Pumped, s.Points[i-1].Pumped)
		}
		// from the bottom up: kill fluid, old fluid, the bubble, old fluid
		killUp := math.Min(60, math.Max(0, v-30))
		oldUp := math.Min(60, v) - killUp
		base := 370e5 - g*(heavy*killUp+old*oldUp)/area
		z := depth - (killUp+oldUp)/area
		if z < 1e-6 {
			require.InDelta(t, base, float64(p.Choke), 5, "nothing but what was pumped")
			require.InDelta(t, 0, float64(p.Bubble), 1e-9)
			continue
		}
		density := func(h float64) float64 { return c / warmth(z-h/2) * base / (1 + c/warmth(z-h/2)*g*h/2) }
		h := halved(func(h float64) float64 { return density(h)*h*area - mass }, 0, z)
		if density(z)*z*area < mass { // it comes out: what is left fills the rest
			// its density is settled with the height it has
			h = z
		}
		require.InDelta(t, h*area, float64(p.Bubble), 1e-9, "%v", v)
		require.InDelta(t, z-h, float64(p.TopTVD), 1e-4)
		above := old * g * (z - h)
		require.InDelta(t, base-density(h)*g*h-above, float64(p.Choke), 0.05, "at %v m³", v)
		weak := base - density(h)*g*math.Min(h, math.Max(0, z-2000))
		switch {
		case z <= 2000: // below the bubble
			weak = 370e5 - g*(heavy*math.Min(1000, killUp/area)+old*(1000-math.Min(1000, killUp/area)))
		case z-h > 2000:
			weak -= old * g * (z - h - 2000)
		}
		require.InDelta(t, weak, float64(p.Weak), 0.05, "weak point at %v m³", v)
		pump := 370e5 - g*(heavy*math.Min(v, 30)+old*(30-math.Min(v, 30)))/0.010
		require.InDelta(t, pump, float64(p.Pump), 1, "pump at %v m³", v)
		greatest = math.Max(greatest, float64(p.Choke))
	}
	require.Equal(t, greatest, float64(s.GreatestChoke.Choke))
	at := func(v float64) float64 { // room above the bubble when v is pumped
		killUp := math.Max(0, v-30)
		base, z := 370e5-g*(heavy*killUp+old*(v-killUp))/area, depth-v/area
		density := func(h float64) float64 { return c / warmth(z-h/2) * base / (1 + c/warmth(z-h/2)*g*h/2) }
		return density(z)*z*area - mass
	}
	require.InDelta(t, halved(func(v float64) float64 { return -at(v) }, 10, 59.9), float64(s.AtSurface), 1e-5)
}

// A nozzle at the end of the way in takes what Loss says of the liquid that is in it.
func TestKillThroughANozzle(t *testing.T) {
	k := killed()
	k.Influx, k.Rate = flow.Influx{}, 0.01
	open, err := k.Schedule()
	require.NoError(t, err)
	k.Well.Exit = flow.Orifices{Count: 1, Diameter: 0.02, Discharge: 0.9}
	s, err := k.Schedule()
	require.NoError(t, err)
	v := 0.01 / (0.9 * math.Pi / 4 * 0.02 * 0.02)
	for i, p := range s.Points {
		rho := 1100.0
		if p.Pumped >= s.Through {
			rho = 1250
		}
		require.InDelta(t, rho*v*v/2, float64(p.Pump-open.Points[i].Pump), 1e-3, "%v", p.Pumped)
		require.Equal(t, open.Points[i].Choke, p.Choke)
	}
	require.Equal(t, s.Whole, s.AtSurface)
	require.Equal(t, s.Points[0].Pump, s.Initial())
	for _, p := range s.Points {
		if p.Pumped == s.Through {
			require.Equal(t, p.Pump, s.Final())
		}
	}
	require.True(t, math.IsNaN(float64(flow.Killing{}.Final())))
}

// Two sizes of annulus in a bent well, with friction: the choke's pressure and that at a weak point in
// the lower one are what is left of the bottom's after weight and friction of each liquid where it stands,
// and what has come in stands on what was pumped.
func TestKillWithFrictionFollowed(t *testing.T) {
	mud := flow.PowerLaw(0.4, 0.8)
	k := killed()
	k.Well.Annulus = []flow.ConduitSection{{Name: "upper", Conduit: flow.Conduit{Outer: 0.22, Inner: 0.127}, Length: 1700, BottomTVD: 1700},
		{Name: "lower", Conduit: flow.Conduit{Outer: 0.2, Inner: 0.127}, Length: 1500, BottomTVD: 3000}}
	k.Well.Pipe[0].Length = 3200
	k.InWell.Rheology, k.Liquid.Rheology = mud, mud
	k.Rate, k.WeakTVD, k.Formation = 0.012, 2000, 420e5
	gas := 1e-12
	for _, influx := range []flow.Influx{{}, {Volume: 3, Fluid: ideal(gas), Surface: unit.Kelvin(300), Bottom: unit.Kelvin(300)}} {
		k.Influx = influx
		s, err := k.Schedule()
		require.NoError(t, err)
		if influx.Volume == 0 {
			require.Len(t, s.Points, 122, "a 120th each, and the end of the way in")
			require.InEpsilon(t, float64(s.Points[0].Choke), float64(s.GreatestChoke.Choke), 1e-12)
		}
		area := func(x flow.ConduitSection) float64 {
			return math.Pi / 4 * (float64(x.Conduit.Outer*x.Conduit.Outer) - float64(x.Conduit.Inner*x.Conduit.Inner))
		}
		upper, lower := k.Well.Annulus[0], k.Well.Annulus[1]
		loss := func(x flow.ConduitSection, rho unit.Density) float64 {
			f, err := flow.Stream{Conduit: x.Conduit, Rheology: mud, Density: rho, Rate: k.Rate}.Friction()
			require.NoError(t, err)
			return float64(f.Gradient)
		}
		bends := 1300.0 / 1500 // depth per length of the lower one
		// pressure lost on the way up from the bottom through a volume, of one liquid
		up := func(rho unit.Density, from, to float64) (dp float64) {
			split := area(lower) * 1500
			if a, b := from, math.Min(to, split); b > a {
				long := (b - a) / area(lower)
				dp += long * (bends*float64(rho)*g + loss(lower, rho))
			}
			if a, b := math.Max(from, split), to; b > a {
				dp += (b - a) / area(upper) * (float64(rho)*g + loss(upper, rho))
			}
			return dp
		}
		whole := area(lower)*1500 + area(upper)*1700
		weakAt := area(lower) * 1000 / bends
		for _, p := range s.Points {
			v := float64(p.Pumped)
			killed := math.Min(whole, math.Max(0, v-float64(s.Through)))
			old := math.Min(whole, v)
			base := 430e5 - up(1250, 0, killed) - up(1100, killed, old)
			top := math.Min(whole, old+float64(p.Bubble))
			if influx.Volume > 0 && top < whole*(1-1e-9) {
				require.InEpsilon(t, (420e5+101325)*3, (base+101325)*float64(p.Bubble), 1e-6, "at %v", v)
			}
			require.InDelta(t, base-up(1100, top, whole), float64(p.Choke), 50, "choke at %v", v)
			weak := 430e5 - up(1250, 0, math.Min(killed, weakAt)) - up(1100, math.Min(killed, weakAt), math.Min(old, weakAt))
			if top < weakAt {
				weak -= up(1100, top, weakAt)
			}
			require.InDelta(t, weak, float64(p.Weak), 50, "weak point at %v", v)
		}
	}
}

// dense is a gas whose density is no number below a pressure.
type dense struct{ below, density unit.Pressure }

func (d dense) Density(p unit.Pressure, _ unit.Temperature) (unit.Density, error) {
	if p < d.below {
		return unit.Density(d.density), nil
	}
	return unit.Density(p / 1e6), nil
}

// What has come in must have a density, where it comes in and on the way up.
func TestKillOfWhatHasNoDensity(t *testing.T) {
	for _, none := range []float64{0, -1, math.Inf(1), math.Inf(-1), math.NaN()} {
		for _, below := range []unit.Pressure{900e5, 200e5} {
			k := killed()
			k.Influx.Fluid = dense{below, unit.Pressure(none)}
			_, err := k.Schedule()
			require.ErrorContains(t, err, "flow: influx has a density of ", "%v below %v", none, below)
		}
	}
}
