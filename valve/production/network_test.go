package production_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
	"github.com/stretchr/testify/require"
)

const (
	psi = unit.PSI
	bpd = unit.BarrelPerDay
	pi  = unit.BarrelPerDayPSI
	ppg = unit.PoundPerGallon
)

// twoLayers are those of reference IF6: 5 and 10 bbl/d/psi at 4,000 and 3,500
// psi, one datum, no chokes.
func twoLayers(o production.Outflow) production.Well {
	return production.Well{
		Zones: []production.Zone{
			{Name: "lower", Inflow: inflow.LiquidDeliverability{Reservoir: 4000 * psi, Index: 5 * pi}},
			{Name: "upper", Inflow: inflow.LiquidDeliverability{Reservoir: 3500 * psi, Index: 10 * pi}},
		},
		Outflow: o,
	}
}

func ExampleWell_Flow() {
	// Shut in at surface: the stronger zone feeds the weaker one.
	f, err := twoLayers(production.FixedRate{}).Flow()
	fmt.Println("shut in at", f.Pressure.Rounded(5), "crossflow", f.Crossflow.Rounded(5), err)
	f, err = twoLayers(production.FixedPressure{Pressure: 3600 * psi}).Flow()
	fmt.Println("at 3600 psi:", f.Zones[0].Rate.Rounded(4), f.Zones[1].Rate.Rounded(4), "to surface", f.Rate.Rounded(4), err)
	_, err = twoLayers(production.Tubing{Surface: 100 * psi, Height: 9000 * unit.Foot, Density: 9 * ppg}).Flow()
	fmt.Println(err)
	// Output:
	// shut in at 3666.7 psi crossflow 1666.7 bbl/d <nil>
	// at 3600 psi: 2000 bbl/d -1000 bbl/d to surface 1000 bbl/d <nil>
	// production: the network has no flow in this direction: without flow the zones hold 3666.7 psi at the topmost zone; the outflow asks for 4307.8 psi or more
}

// One straight zone through one choke at a fixed pressure is a quadratic:
// k·q² + q/J = pr - p.
func TestSingleZoneClosedForm(t *testing.T) {
	for _, c := range []unit.FlowCoefficient{0.5 * unit.Cv, 4 * unit.Cv, 60 * unit.Cv} {
		for _, p := range []unit.Pressure{500 * psi, 3000 * psi, 3999 * psi, 4200 * psi} {
			w := production.Well{
				Zones: []production.Zone{{Name: "only", Inflow: inflow.LiquidDeliverability{Reservoir: 4000 * psi, Index: 5 * pi}, Density: 7 * ppg, VolumeFactor: 1.2,
					Chokes: choke.Table{{Name: "one", Coefficient: c}}}},
				Outflow: production.FixedPressure{Pressure: p},
			}
			f, err := w.Flow()
			require.NoError(t, err)
			k := float64(7*ppg) * 1.2 * 1.2 / float64(c) / float64(c)
			a := 1 / float64(5*pi)
			d := math.Abs(float64(4000*psi - p))
			q := math.Copysign((math.Sqrt(a*a+4*k*d)-a)/(2*k), float64(4000*psi-p))
			require.InEpsilon(t, q, float64(f.Rate), 1e-9) // this form of the root cancels
			require.InEpsilon(t, q, float64(f.Rate), 1e-12*math.Max(1, a*a/(4*k*d)*4))
			require.Equal(t, p > 4000*psi, f.Zones[0].Takes)
		}
	}
}

// One saturated zone without a choke is Vogel's equation itself (reference IF1).
func TestSingleZoneVogel(t *testing.T) {
	zone, err := inflow.LiquidFromTest(2000*psi, 2000*psi, 1500*psi, 65*bpd)
	require.NoError(t, err)
	f, err := production.Well{Zones: []production.Zone{{Name: "only", Inflow: zone}}, Outflow: production.FixedPressure{Pressure: 1000 * psi}}.Flow()
	require.NoError(t, err)
	require.InEpsilon(t, 162.5*(1-0.1-0.2), f.Rate.In(bpd), 1e-13)
}

// random builds a network of any shape; the same seed gives the same well.
func random(r *rand.Rand, n int, gas bool) (production.Well, []int) {
	w := production.Well{}
	var positions []int
	depth := 12000.0
	for i := range n {
		z := production.Zone{
			Name: fmt.Sprint("zone ", i+1), TVD: unit.Length(depth) * unit.Foot, WaterCut: r.Float64(),
			Density: unit.Density(6.5+2*r.Float64()) * ppg, VolumeFactor: 1 + 0.4*r.Float64(),
			Above: production.Interval{Density: unit.Density(6.5+2*r.Float64()) * ppg, Loss: production.Loss{At: 3000 * bpd,
				Laminar: unit.Pressure(2*r.Float64()) * psi, Turbulent: unit.Pressure(20*r.Float64()) * psi}},
		}
		l := inflow.LiquidDeliverability{Reservoir: unit.Pressure(0.33*depth+2000*r.Float64()) * psi, Index: unit.ProductivityIndex(0.5+10*r.Float64()) * pi}
		switch r.IntN(3) {
		case 0:
			l.Bubble = l.Reservoir * unit.Pressure(r.Float64())
		case 1:
			l.Bubble = l.Reservoir
		}
		z.Inflow = l
		if r.IntN(5) > 0 {
			z.Chokes = choke.Table{{Name: "shut"}, {Name: "half", Travel: 0.5, Coefficient: unit.FlowCoefficient(1+5*r.Float64()) * unit.Cv}, {Name: "open", Travel: 1, Coefficient: 40 * unit.Cv}}
		}
		if gas {
			z.WaterCut, z.Above = 0, production.Interval{Density: 10, Loss: production.Loss{At: 1000 * unit.ThousandCubicFeetPerDay, Turbulent: psi}}
			z.Inflow = inflow.GasDeliverability{Reservoir: l.Reservoir, OpenFlow: unit.FlowRate(1000+20000*r.Float64()) * unit.ThousandCubicFeetPerDay, Exponent: 0.5 + r.Float64()/2}
			z.Gas = &production.GasAtChoke{Density: 0.8, Standard: unit.Fahrenheit(60), Temperature: unit.Fahrenheit(200), Z: 0.9, HeatRatio: 1.28, Ratio: 0.7}
		}
		positions = append(positions, max(0, len(z.Chokes)-1-r.IntN(2)))
		w.Zones = append(w.Zones, z)
		depth -= 50 + 400*r.Float64()
	}
	top := unit.Pressure(0.3*depth) * psi
	w.Outflow = production.FixedPressure{Pressure: top}
	switch r.IntN(3) {
	case 0:
		w.Outflow = production.FixedRate{Rate: unit.FlowRate(1000*r.Float64()) * bpd}
	case 1:
		if !gas {
			w.Outflow = production.Tubing{Surface: 100 * psi, Height: unit.Length(depth) * unit.Foot, Density: 4 * ppg,
				Loss: production.Loss{At: 5000 * bpd, Turbulent: 300 * psi}}
		}
	}
	return w, positions
}

// Every answer satisfies every law by the public formulas, each on its own.
func TestLawsHold(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	solved, cross := 0, 0
	for i := range 2000 {
		w, positions := random(r, 1+i%10, i%3 == 0)
		f, err := w.Flow(positions...)
		if err != nil {
			require.ErrorIs(t, err, production.ErrNoFlow, "well %d", i)
			continue
		}
		solved++
		var sum, water unit.FlowRate
		for j, z := range w.Zones {
			g := f.Zones[j]
			sum += g.Rate
			water += g.Water
			if g.Takes {
				cross++
			}
			scale := float64(f.Crossflow) + math.Abs(float64(g.Rate)) + 1e-9
			q, slope := z.Inflow.At(float64(g.Sandface))
			bits := math.Min(math.Abs(slope), 1e-6) * float64(g.Sandface) * 1e-15 // what the last bits of a pressure are worth
			require.InDelta(t, q, float64(g.Rate), 1e-12*scale+bits, "well %d zone %d: inflow", i, j)
			if len(z.Chokes) > 0 && z.Gas == nil {
				b := unit.FlowRate(z.VolumeFactor)
				drop := choke.LiquidDrop(z.Chokes[positions[j]].Coefficient, z.Density, b*g.Rate)
				require.InDelta(t, float64(drop), float64(g.Drop), 1e-12*float64(g.Sandface), "well %d zone %d: choke", i, j)
			}
			if len(z.Chokes) > 0 && z.Gas != nil {
				// The rate goes with the root of the drop: a small drop loses digits here, in the test.
				lost := 1e-14 * math.Abs(float64(g.Rate)*float64(g.Sandface)/float64(g.Drop))
				require.InDelta(t, gasChoke(t, z, positions[j], g), float64(g.Rate), 1e-10*scale+lost, "well %d zone %d: gas choke", i, j)
			}
			if len(z.Chokes) == 0 {
				require.Zero(t, g.Drop)
			}
			if j+1 < len(w.Zones) {
				x := float64(sum / z.Above.Loss.At)
				loss := z.Above.Loss.Laminar*unit.Pressure(x) + z.Above.Loss.Turbulent*unit.Pressure(x*math.Abs(x))
				want := g.Tubing - hydrostatics.Pressure(z.Above.Density, z.TVD-w.Zones[j+1].TVD) - loss
				require.InDelta(t, float64(want), float64(f.Zones[j+1].Tubing), 1e-12*float64(g.Tubing), "well %d zone %d: tubing", i, j)
			}
		}
		require.InDelta(t, float64(sum), float64(f.Rate), 1e-12*(math.Abs(float64(sum))+float64(f.Crossflow)))
		if f.Rate >= 0 {
			require.InDelta(t, float64(water), float64(f.Water), 1e-11*(math.Abs(float64(sum))+float64(f.Crossflow)), "well %d: water", i)
			require.True(t, f.WaterCut >= 0 && f.WaterCut <= 1)
		}
		switch o := w.Outflow.(type) {
		case production.FixedPressure:
			require.InDelta(t, float64(o.Pressure), float64(f.Pressure), 1e-12*float64(f.Bottom))
		case production.FixedRate:
			sensitive := 0.0 // of the rate to the last bits of a pressure
			for j, z := range w.Zones {
				_, slope := z.Inflow.At(float64(f.Zones[j].Sandface))
				sensitive += math.Abs(slope) * float64(f.Bottom) * 1e-15
			}
			require.InDelta(t, float64(o.Rate), float64(f.Rate), 1e-12*(math.Abs(float64(f.Rate))+float64(f.Crossflow))+sensitive)
		case production.Tubing:
			x := unit.Pressure(f.Rate / o.Loss.At)
			require.InDelta(t, float64(o.Surface+hydrostatics.Pressure(o.Density, o.Height)+o.Loss.Turbulent*x*x), float64(f.Pressure), 1e-12*float64(f.Bottom))
		}
	}
	require.Greater(t, solved, 1200)
	require.Greater(t, cross, 100, "crossflow must be among them")
	t.Logf("%d wells solved, %d zones that take", solved, cross)
}

// gasChoke is the rate of a gas choke by choke.Trim.Gas, in standard volumes.
func gasChoke(t *testing.T, z production.Zone, position int, g production.ZoneFlow) float64 {
	t.Helper()
	up, down, sign := g.Sandface, g.Tubing, 1.0
	if up < down {
		up, down, sign = down, up, -1
	}
	rho := float64(z.Gas.Density) * float64(up+unit.Atmosphere) / float64(unit.Atmosphere) * z.Gas.Standard.Kelvin() / z.Gas.Temperature.Kelvin() / z.Gas.Z
	f, err := choke.Trim{Coefficient: z.Chokes[position].Coefficient, GasRatio: z.Gas.Ratio}.Gas(choke.UpstreamGas{Density: unit.Density(rho), HeatRatio: z.Gas.HeatRatio}, up, down)
	require.NoError(t, err)
	return sign * float64(f.Mass) / float64(z.Gas.Density)
}

// Another way: plain halving of the pressure at the bottom, of the pressure in
// front of each zone inside it, and nothing shared with the solver.
func TestAgainstHalving(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for i := range 200 {
		w, positions := random(r, 1+i%5, false)
		w.Outflow = production.FixedPressure{Pressure: w.Zones[len(w.Zones)-1].Inflow.Static() * 9 / 10}
		f, err := w.Flow(positions...)
		require.NoError(t, err)
		p := halve(0, 1e9, func(p float64) bool {
			top, _ := upward(w, positions, p)
			return top > 0.9*float64(w.Zones[len(w.Zones)-1].Inflow.Static())
		})
		_, q := upward(w, positions, p)
		for j := range q {
			require.InDelta(t, q[j], float64(f.Zones[j].Rate), 1e-9*(math.Abs(float64(f.Rate))+float64(f.Crossflow)), "well %d zone %d", i, j)
		}
	}
}

// halve finds where above turns true.
func halve(lo, hi float64, above func(float64) bool) float64 {
	for range 200 {
		if m := (lo + hi) / 2; above(m) {
			hi = m
		} else {
			lo = m
		}
	}
	return lo
}

func upward(w production.Well, positions []int, p float64) (top float64, rates []float64) {
	q := 0.0
	for j, z := range w.Zones {
		one, _ := z.Inflow.At(p)
		if len(z.Chokes) > 0 {
			c := z.Chokes[positions[j]].Coefficient
			s := halve(-2e9, 2e9, func(s float64) bool {
				in, _ := z.Inflow.At(s)
				return s-float64(choke.LiquidDrop(c, z.Density, unit.FlowRate(z.VolumeFactor*in))) > p
			})
			if c == 0 {
				one = 0
			} else {
				one, _ = z.Inflow.At(s)
			}
		}
		rates = append(rates, one)
		q += one
		if j+1 < len(w.Zones) {
			x := q / float64(z.Above.Loss.At)
			p -= float64(hydrostatics.Pressure(z.Above.Density, z.TVD-w.Zones[j+1].TVD)) +
				float64(z.Above.Loss.Laminar)*x + float64(z.Above.Loss.Turbulent)*x*math.Abs(x)
		}
	}
	return p, rates
}
