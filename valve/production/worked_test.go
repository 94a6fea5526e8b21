package production

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
	"github.com/stretchr/testify/require"
)

// A zone with a bubble point behind a choke, in SI.
var (
	saturated   = Zone{Name: "only", Inflow: inflow.LiquidDeliverability{Reservoir: 3e7, Bubble: 2e7, Index: 1.3e-9}, Density: 800, VolumeFactor: 1.2, Chokes: choke.Table{{Name: "in", Coefficient: 2e-5}}}
	saturatedOf = precise.Values{"pr": 3e7, "pb": 2e7, "J": 1.3e-9, "rho": 800, "B": 1.2, "C": 2e-5}
)

// Vogel's curve below the bubble point and its continuation below vacuum, worked
// with 256 bits. Source: Vogel, JPT January 1968, with the straight line above the
// bubble point.
func TestVogelWorked(t *testing.T) {
	n := newNode(saturated, true, 0)
	const curve = "V = J*pb/1.8\nq0 = J*(pr - pb)\n"
	of := func(name string, x float64) precise.Values {
		v := precise.Values{name: x}
		for k, y := range saturatedOf {
			v[k] = y
		}
		return v
	}
	for _, p := range []float64{0, 1e6, 9e6, 19.9e6} {
		q, slope := n.open(p)
		precise.Equal(t, q, curve+"q0 + V*(1 - 0.2*p/pb - 0.8*pow(p/pb, 2))", of("p", p))
		precise.Equal(t, slope, curve+"-V/pb*(0.2 + 1.6*p/pb)", of("p", p))
		back, fall := n.inverse(q)
		require.InDelta(t, p, back, 1e-6)
		precise.Within(t, 1e-12, fall, "1/s", precise.Values{"s": slope})
	}
	for _, p := range []float64{-1e5, -3e6} {
		q, slope := n.open(p)
		precise.Equal(t, q, curve+"q0 + V*(1 - 0.2*p/pb)", of("p", p))
		precise.Equal(t, slope, curve+"-0.2*V/pb", of("p", p))
		back, fall := n.inverse(q)
		require.InDelta(t, p, back, 1e-6)
		precise.Within(t, 1e-12, fall, "1/s", precise.Values{"s": slope})
	}
	for _, q := range []float64{0.014, 0.02, 0.0262} {
		p, fall := n.inverse(q)
		precise.Within(t, 1e-11, p, curve+"x = (q - q0)/V\npb*(sqrt(0.04 + 3.2*(1 - x)) - 0.2)/1.6", of("q", q))
		precise.Within(t, 1e-11, fall, curve+"x = (q - q0)/V\n-pb/V/sqrt(0.04 + 3.2*(1 - x))", of("q", q))
	}
	// behind a choke: the zone's pressure is the tubing's and ρ·(B·q/C)² on top
	k := n.chokes[0]
	precise.Equal(t, k, "rho*pow(B/C, 2)", saturatedOf)
	for _, p := range []float64{-5e4, 2e6, 9e6} {
		for _, k := range []float64{k, k * 1e-4, k * 1e-8} {
			q, slope := n.onVogel(p, k)
			pressure, fall := n.inverse(q)
			if p+k*n.straight*n.straight >= n.bubble {
				pressure, fall = n.static-q*n.a, -n.a
			}
			precise.Within(t, 1e-11, pressure, "p + k*q*q", precise.Values{"p": p, "k": k, "q": q})
			precise.Within(t, 2e-8, slope, "1/(fall - 2*k*q)", precise.Values{"fall": fall, "k": k, "q": q})
		}
	}
	q, slope := n.onLine(2.5e7, k)
	precise.Equal(t, q, "a = 1/J\nk = rho*pow(B/C, 2)\n(sqrt(a*a + 4*k*5e6) - a)/(2*k)", saturatedOf)
	precise.Equal(t, slope, "a = 1/J\nk = rho*pow(B/C, 2)\n-1/sqrt(a*a + 4*k*5e6)", saturatedOf)
	require.True(t, n.shut(math.Inf(1)))
	require.False(t, n.shut(0))
}

// One step of advance is Newton's on p + k·q² = P(q): its slope is worked on each
// stretch of the curve, and the step lands where the tangent says.
func TestAdvanceWorked(t *testing.T) {
	n := newNode(saturated, true, 0)
	k := n.chokes[0]
	for _, q := range []float64{-0.002, 0.004, 0.0129, 0.0131, 0.02, 0.0273, 0.0275, 0.04} {
		c := cell{p: 4e6, q: q}
		off := n.advance(&c, k)
		at := func(q float64) float64 { // P(q) - k·q·|q|
			p := n.static - q*n.a
			if q > n.straight {
				p, _ = n.inverse(q)
			}
			return p - k*q*math.Abs(q)
		}
		h := 1e-6 * n.vogel
		require.InEpsilon(t, 2*h/(at(q+h)-at(q-h)), c.slope, 1e-5, "rate %v", q)
		require.InDelta(t, math.Abs(4e6-at(q)), off, 1e-6)
		require.InEpsilon(t, q+(4e6-at(q))*c.slope, c.q, 1e-9)
	}
	fresh := cell{p: 4e6, q: math.NaN()}
	n.advance(&fresh, k)
	straight, _ := n.onLine(4e6, k)
	again := cell{p: 4e6, q: straight}
	n.advance(&again, k)
	const fused = 1e-15 // a multiplication and an addition are one operation on some machines
	require.InEpsilon(t, again.q, fresh.q, fused, "begins from the straight line's rate, the lesser here")
	require.InEpsilon(t, again.slope, fresh.slope, fused)
	again.q, again.slope = fresh.q, fresh.slope
	require.Equal(t, again, fresh)
	wide := cell{p: 4e6, q: math.NaN()}
	n.advance(&wide, 0)
	open, _ := n.open(4e6)
	require.InEpsilon(t, open, wide.q, 1e-12, "and from Vogel's without a choke")
}

// A straight network is solved by one sweep, exactly, from anywhere: every term
// of the elimination counts.
func TestOneSweepSolvesAStraightNetwork(t *testing.T) {
	zone := func(static, a, head, linear float64) node {
		return node{shape: line, static: static, a: a, chokes: []float64{0, math.Inf(1)}, head: head, linear: linear}
	}
	n := &Network{outflow: outflow{kind: tubing, pressure: 1.1e7, linear: 3e8}, nodes: []node{
		zone(2.2e7, 6e8, 7e5, 2e8), zone(2.0e7, 9e8, 5e5, 4e8), zone(1.9e7, 4e8, 3e5, 1e8), zone(2.3e7, 5e8, 0, 0)}}
	for _, byRate := range []bool{false, true} {
		cells := []cell{{p: 1e7}, {p: 3e7}, {p: 1.7e7}, {p: 2.5e7}}
		for i := range cells {
			cells[i].q = math.NaN()
		}
		_, s := n.sweep(cells, []int{0, 0, 0, 0}, byRate, 0.012)
		sum := 0.0
		for i, c := range cells {
			node := n.nodes[i]
			require.InEpsilon(t, node.static-node.a*c.q, c.p, 1e-12)
			sum += c.q
			if i < 3 {
				require.InEpsilon(t, c.p-node.head-node.linear*sum, cells[i+1].p, 1e-12)
			}
		}
		require.InEpsilon(t, sum, s.rate, 1e-12)
		require.Equal(t, cells[3].p, s.top)
		if byRate {
			require.InEpsilon(t, 0.012, s.rate, 1e-12)
		} else {
			require.InEpsilon(t, 1.1e7+3e8*s.rate, s.top, 1e-12)
		}
	}
}

// Newton's method squares its error: with every slope right few passes do.
func TestPassesAreFew(t *testing.T) {
	zone := func(name string, depth unit.Length, reservoir, bubble unit.Pressure, c unit.FlowCoefficient) Zone {
		return Zone{Name: name, TVD: depth, Inflow: inflow.LiquidDeliverability{Reservoir: reservoir, Bubble: bubble, Index: 1.3e-9}, Density: 800, Chokes: choke.Table{{Name: "in", Coefficient: c}},
			Above: Interval{Density: 750, Loss: Loss{At: 0.01, Laminar: 1e4, Turbulent: 2e4}}}
	}
	w := Well{Zones: []Zone{zone("a", 2500, 3.0e7, 0, 3e-5), zone("b", 2400, 2.9e7, 2e7, 4e-5), zone("c", 2300, 2.8e7, 2.5e7, 8e-5)},
		Outflow: Tubing{Surface: 1e6, Height: 2300, Density: 600, Loss: Loss{At: 0.02, Turbulent: 4e5}}}
	f, err := w.Flow()
	require.NoError(t, err)
	require.LessOrEqual(t, f.Passes, 3)
	w.Outflow = FixedRate{f.Rate}
	g, err := w.Flow()
	require.NoError(t, err)
	require.LessOrEqual(t, g.Passes, 6)
	require.InEpsilon(t, float64(f.Pressure), float64(g.Pressure), 1e-10)
}

// Gas through a choke with its slopes. Source: IEC 60534-2-1:2011, compressible
// fluids, counted at standard conditions: 101,325 Pa and the standard temperature.
func TestGasNodeWorked(t *testing.T) {
	g := newGasNode(GasAtChoke{Density: 0.75, Standard: unit.Celsius(15), Temperature: unit.Celsius(90), Z: 0.91, HeatRatio: 1.27, Ratio: 0.66})
	of := precise.Values{"rs": 0.75, "k": 1.27, "xT": 0.66, "Z": 0.91, "C": 3e-5, "p1": 2e7, "p2": 1.6e7}
	const terms = "xc = k/1.4*xT\nN = sqrt(rs/101325*288.15/(363.15*Z))/rs\nx = (p1 - p2)/p1\n"
	q, byUp, byDown := g.through(3e-5, 2e7, 1.6e7)
	precise.Equal(t, q, terms+"C*N*(1 - x/(3*xc))*sqrt(x)*p1", of)
	precise.Equal(t, byUp, terms+"C*N*((1 - x/(3*xc))*sqrt(x) + (1 - x/xc)/(2*sqrt(x))*p2/p1)", of)
	precise.Equal(t, byDown, terms+"-C*N*(1 - x/xc)/(2*sqrt(x))", of)
	q, byUp, byDown = g.through(3e-5, 2e7, 1e6)
	precise.Equal(t, q, terms+"C*N*2/3*sqrt(xc)*p1", of)
	precise.Equal(t, byUp, terms+"C*N*2/3*sqrt(xc)", of)
	require.Zero(t, byDown)
	back, _, _ := g.out(1.6e7-float64(unit.Atmosphere), 2e7-float64(unit.Atmosphere), 3e-5)
	precise.Equal(t, back, terms+"-C*N*(1 - x/(3*xc))*sqrt(x)*p1", of)
	// the slope of the whole: choke and zone in series
	curve := inflow.LiquidDeliverability{Reservoir: 2.5e7, Index: 4e-9}
	for _, p := range []float64{1.5e7, 2e7, 2.4e7, 2.7e7} {
		q, slope := g.rate(curve, 2.5e7, p, 3e-5)
		const h = 2e3
		above, _ := g.rate(curve, 2.5e7, p+h, 3e-5)
		below, _ := g.rate(curve, 2.5e7, p-h, 3e-5)
		require.InEpsilon(t, (above-below)/(2*h), slope, 1e-5, "%v", p)
		require.Equal(t, p < 2.5e7, q > 0)
	}
}

func TestOutflowWorked(t *testing.T) {
	o := outflow{kind: tubing, pressure: 1e7, linear: 3e8, square: 2e10}
	for _, q := range []float64{-0.02, 0, 0.02} {
		p, slope := o.at(q)
		precise.Equal(t, p, "1e7 + 3e8*q + 2e10*q*abs(q)", precise.Values{"q": q})
		precise.Equal(t, slope, "3e8 + 4e10*abs(q)", precise.Values{"q": q})
	}
	prepared, err := OutflowTable{{0, 2e7}, {0.01, 1.5e7}, {0.02, 1.6e7}, {0.04, 2e7}}.prepare()
	require.NoError(t, err)
	require.Equal(t, 1.5e7, prepared.pressure)
	r := prepared.table
	require.Equal(t, []float64{0.01, 0.04, 1.5e7, 2e7}, []float64{r.first, r.last, r.firstP, r.lastP})
	p, slope := r.at(0.05) // straight on from the last point
	precise.Equal(t, p, "2e7 + s*0.01", precise.Values{"s": slope})
	p, slope = r.at(0.004)
	precise.Equal(t, p, "1.5e7 - s*0.006", precise.Values{"s": slope})
	p, _ = r.at(0.02)
	require.InEpsilon(t, 1.6e7, p, 1e-14)
}

func TestLossWorked(t *testing.T) {
	linear, square := Loss{At: 0.013, Laminar: 2e5, Turbulent: 5e5}.coefficients()
	precise.Equal(t, linear, "2e5/0.013", nil)
	precise.Equal(t, square, "5e5/(0.013*0.013)", nil)
}

// Gas limits: on each the answer, beyond it a fault that names the field.
func TestGasLimits(t *testing.T) {
	ok := GasAtChoke{Density: 100, Standard: unit.Kelvin(400), Temperature: unit.Kelvin(1000), Z: 5, HeatRatio: 2, Ratio: 1}
	require.NoError(t, ok.Validate())
	low := GasAtChoke{Density: 1e-9, Standard: unit.Kelvin(200.0001), Temperature: unit.Kelvin(100.00005), Z: 1e-9, HeatRatio: 1.0000005, Ratio: 1e-9}
	require.NoError(t, low.Validate())
	for text, change := range map[string]func(*GasAtChoke){
		"Density: is": func(g *GasAtChoke) { g.Density = 100.00001 }, "Standard: is": func(g *GasAtChoke) { g.Standard = unit.Kelvin(400.0001) },
		"Standard: is -99.67": func(g *GasAtChoke) { g.Standard = unit.Kelvin(200) }, "Temperature: is": func(g *GasAtChoke) { g.Temperature = unit.Kelvin(1000.0005) },
		"Temperature: is -279.67": func(g *GasAtChoke) { g.Temperature = unit.Kelvin(100) }, "Z: is": func(g *GasAtChoke) { g.Z = 5.000001 }, "HeatRatio: is 2.000001;": func(g *GasAtChoke) { g.HeatRatio = 2.000001 },
		"HeatRatio: is": func(g *GasAtChoke) { g.HeatRatio = 1 }, "Ratio: is": func(g *GasAtChoke) { g.Ratio = 1.0000001 },
	} {
		g := ok
		change(&g)
		require.ErrorContains(t, g.Validate(), text)
	}
}

// Faults name the zone or point by its number from one, and the limit.
func TestFaultTexts(t *testing.T) {
	good := inflow.LiquidDeliverability{Reservoir: 3e7, Index: 1e-9}
	w := Well{Outflow: FixedRate{}, Zones: []Zone{{Name: "a", TVD: 100, Inflow: good}, {Name: "b", TVD: 200, Inflow: good, WaterCut: 1.0000001}}}
	err := w.Validate()
	require.ErrorContains(t, err, `Zones[1].Depth: is 200 m; must be at most 100 m, as zones stand from the bottom up`)
	require.ErrorContains(t, err, `Zones[1].WaterCut: is 1.0000001; must be from 0 to 1`)
	w.Zones[1].TVD, w.Zones[1].WaterCut = 100, 1
	require.NoError(t, w.Validate(), "two zones at one depth, one that gives water alone")
	w.Zones[1].Above.Density = -1
	require.NoError(t, w.Validate(), "nothing stands above the topmost zone but the outflow")
	w.Zones[0].Above.Density = -1
	require.ErrorContains(t, w.Validate(), "Zones[0].Above.Density: is -1 kg/m3")
	w.Zones[0].Above.Density = 0
	for _, depth := range []unit.Length{-1, unit.Length(math.Inf(1))} {
		w.Zones[0].TVD = depth
		require.ErrorContains(t, w.Validate(), "must be at least 0 ft")
	}
	w.Zones[0].TVD = 100
	_, err = w.Flow(0, 7)
	require.ErrorContains(t, err, "positions[1]: is 7; must be from 0 to 0")
	require.EqualError(t, FixedPressure{-2 * unit.Atmosphere}.Validate(), "production: Pressure: is -2 atm; must be at least -14.6959 psi")
	require.NoError(t, FixedPressure{-unit.Atmosphere}.Validate())

	err = OutflowTable{{0, 2e7}, {0, 1.5e7}, {0.02, 1.4e7}, {0.03, 1.6e7}, {0.04, 1.5e7}, {-1, -5e6}}.Validate()
	for _, text := range []string{"[1].Rate: is 0 bbl/d; must be above the 0 bbl/d before it", "[4].Pressure: is 15 MPa; must be at least the 16 MPa", "[5].Rate: is -1 m3/s", "[5].Pressure"} {
		require.ErrorContains(t, err, text)
	}
	require.NoError(t, OutflowTable{{0, 2e7}, {0.01, 1.5e7}, {0.02, 1.6e7}}.Validate(), "two points on the rising branch are enough")
	require.ErrorContains(t, OutflowTable{{0, 2e7}, {0.01, 1.5e7}}.Validate(), "rising")
}
