package sequence_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// other is a string by another route than package movement's, slow and with its own
// numbers, in inches, feet, psi and lbf: it marches down from the hanger foot by foot,
// with a force at the top that it finds by halving an interval, and adds up the strain of
// Hooke's law under Lamé's three stresses,
//
//	ε = (σz − ν·(σr + σh))/E + α·T,  σr + σh = 2·(pi·ri² − po·ro²)/(ro² − ri²)
//
// instead of piston, ballooning and effective forces. A held string is as long as when it
// took hold; one that isn't has at its lower end what the pressures there make.
type other struct {
	pipes           []otherPipe // from the top down
	slant           float64     // inclination, rad
	inside, outside float64     // lb/gal
	seal            float64     // diameter at the lower end
	hot             func(tvd float64) float64
}

type otherPipe struct{ bottom, od, id, weight float64 }

// world is what acts: surface pressures, and how much warmer it is.
type otherWorld struct{ tubing, annulus, warmer float64 }

func (o *other) pressures(w otherWorld, tvd float64) (pi, po float64) {
	return w.tubing + column(o.inside, tvd), w.annulus + column(o.outside, tvd)
}

// along marches down with a wall force at the top: the wall force just above the lower
// end, and the length that the string has gained over nothing.
func (o *other) along(w otherWorld, top float64) (force, longer float64) {
	const e, nu, alpha = 30e6, 0.3, 6.9e-6
	f, md := top, 0.0
	for k, p := range o.pipes {
		ai, ao := math.Pi/4*p.id*p.id, math.Pi/4*p.od*p.od
		if k > 0 { // the shoulder bears the pressures on what is wider above or below
			was := o.pipes[k-1]
			pi, po := o.pressures(w, md*math.Cos(o.slant))
			f += pi*(ai-math.Pi/4*was.id*was.id) - po*(ao-math.Pi/4*was.od*was.od)
		}
		n := int(math.Ceil(p.bottom - md))
		step := (p.bottom - md) / float64(n)
		for range n {
			middle := (md + step/2) * math.Cos(o.slant)
			pi, po := o.pressures(w, middle)
			hangs := p.weight * step * math.Cos(o.slant)
			z := (f - hangs/2) / (ao - ai)
			sum := 2 * (pi*ai - po*ao) / (ao - ai)
			longer += 12 * step * ((z-nu*sum)/e + alpha*(o.hot(middle)+w.warmer))
			f -= hangs
			md += step
		}
	}
	return f, longer
}

// loose is the force at the top of a string that nothing holds.
func (o *other) loose(w otherWorld) float64 {
	last := o.pipes[len(o.pipes)-1]
	tvd := last.bottom * math.Cos(o.slant)
	pi, po := o.pressures(w, tvd)
	ai, ao, ap := math.Pi/4*last.id*last.id, math.Pi/4*last.od*last.od, math.Pi/4*o.seal*o.seal
	// Open to the tubing below its seals: pi on the pipe's end and the ring under the
	// seals pushes up, po on the ring above them down.
	end := pi*ai - pi*ap + po*(ap-ao)
	weight, md := 0.0, 0.0
	f := end
	for k := len(o.pipes) - 1; k >= 0; k-- {
		p := o.pipes[k]
		top := 0.0
		if k > 0 {
			top = o.pipes[k-1].bottom
			was := o.pipes[k-1]
			pi, po := o.pressures(w, top*math.Cos(o.slant))
			f -= pi*(math.Pi/4*(p.id*p.id-was.id*was.id)) - po*(math.Pi/4*(p.od*p.od-was.od*was.od))
		}
		weight += p.weight * (p.bottom - top) * math.Cos(o.slant)
		md = top
	}
	_ = md
	return f + weight
}

// held is the force at the top of a string that is as long as it was.
func (o *other) held(w otherWorld, long float64) float64 {
	low, high := -3e6, 3e6
	for range 70 {
		middle := (low + high) / 2
		if _, l := o.along(w, middle); l < long {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}

// The state of random strings at the end of every step - free, as the packer takes hold,
// bled off, pressured, cooled - is that of the other route: hanger load, wall force and
// load at the packer, travel of the seals.
func TestTheStringByAnotherRoute(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(20, 26))
	between := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
	for n := range long.Size(6, 30) {
		o := &other{inside: between(7, 12), outside: between(7, 12), seal: between(4.6, 6), slant: between(0, 60) * math.Pi / 180}
		sizes := [][3]float64{{4.5, 3.958, 12.6}, {3.5, 2.992, 9.3}, {2.875, 2.441, 6.5}}
		depth := math.Round(between(6000, 11000))
		at := 0.0
		for k := range 1 + random.IntN(3) {
			s := sizes[min(k+random.IntN(2), 2)]
			at += math.Round(between(0.2, 0.4) * depth)
			o.pipes = append(o.pipes, otherPipe{at, s[0], s[1], s[2]})
		}
		o.pipes[len(o.pipes)-1].bottom = depth
		hot, cold, rate := between(60, 90), -between(10, 60), between(0.8, 1.8)/100
		o.hot = func(tvd float64) float64 { return hot + rate*tvd }
		tvd := depth * math.Cos(o.slant)
		bites := between(800, 2500) + column(o.inside, tvd) - column(o.outside, tvd) // more than the columns make
		tests := [2]float64{between(0, 4000), between(0, 1500)}

		p := otherPlan(o, depth, hot, rate, cold, bites, tests)
		r, err := sequence.Check(t.Context(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.NoError(t, err, "string %d", n)
		require.Len(t, r.Steps[1].Events, 1, "string %d: %+v", n, r.Findings)

		landed := otherWorld{}
		_, first := o.along(landed, o.loose(landed))
		// The packer takes hold where the differential at its depth comes to its level.
		set := otherWorld{tubing: bites - column(o.inside, tvd) + column(o.outside, tvd)}
		_, long := o.along(set, o.loose(set))
		worlds := []otherWorld{{}, {}, {tubing: tests[0]}, {tubing: tests[0], annulus: tests[1], warmer: cold}}
		for k, w := range worlds {
			top := o.loose(w)
			if k > 0 {
				top = o.held(w, long)
			}
			bottom, l := o.along(w, top)
			free := o.loose(w)
			below, _ := o.along(w, free)
			x := lastString(r, k)
			name := fmt.Sprintf("string %d, step %d", n, k+1)
			require.InDelta(t, top, x.Hanger.In(unit.PoundForce), 1e-6*math.Abs(top)+0.3, "%s: hanger", name)
			require.InDelta(t, bottom, x.Wall.In(unit.PoundForce), 1e-6*math.Abs(top)+0.3, "%s: wall force", name)
			if k > 0 {
				require.InDelta(t, bottom-below, x.Packer.In(unit.PoundForce), 1e-6*math.Abs(top)+0.3, "%s: packer", name)
				l = long
			}
			require.InDelta(t, l-first, x.Seals[0].Travel.In(unit.Inch), 1e-4, "%s: travel", name)
		}
	}
}

// otherPlan is the same as a plan. The holes are as narrow as the pipes, so that nothing
// buckles that could show.
func otherPlan(o *other, depth, hot, rate, cold, bites float64, tests [2]float64) *sequence.Plan {
	feet := func(x float64) unit.Length { return unit.Length(x) * foot }
	p := mini()
	p.Well.MD = feet(depth)
	slant := unit.Angle(o.slant)
	p.Well.Path = []sequence.Station{{Inclination: slant}, {MD: feet(depth), Inclination: slant}}
	tvd := depth * math.Cos(o.slant)
	line := func(off float64) []sequence.MarkedTVD {
		return []sequence.MarkedTVD{{Temperature: unit.Fahrenheit(hot + off)}, {TVD: feet(tvd), Temperature: unit.Fahrenheit(hot + off + rate*tvd)}}
	}
	p.Well.Temperatures = map[string][]sequence.MarkedTVD{sequence.Undisturbed: line(0), "cooled": line(cold)}
	p.Fluids[0].Density, p.Fluids[1].Density = unit.Exactly(unit.Density(o.inside)*ppg), unit.Exactly(unit.Density(o.outside)*ppg)
	for i := range p.Compartments {
		p.Compartments[i].BottomMD = feet(depth)
	}
	p.Ports = nil
	a := &p.Devices[0].Actions[0]
	p.Devices = p.Devices[:1]
	p.Devices[0].MD = feet(depth)
	a.Holds, a.Opens, a.Closes, a.Inside, a.Outside = true, nil, nil, "tubing", "annulus"
	a.Triggers = []sequence.Trigger{rising(unit.Pressure(bites)*psi, unit.Pressure(bites)*psi)}
	p.String = &sequence.String{Inside: "tubing", Around: []string{"annulus"}, Below: "tubing", HeldMD: feet(depth),
		Seals: []sequence.Seal{{Name: "seals", MD: feet(depth), Bore: unit.Length(o.seal) * unit.Inch, Up: 100 * foot, Down: 100 * foot}}}
	for _, x := range o.pipes {
		p.String.Sections = append(p.String.Sections, sequence.StringSection{BottomMD: feet(x.bottom), Hole: unit.Length(x.od+0.002) * unit.Inch,
			Pipe: sequence.Pipe{Size: unit.Length(x.od) * unit.Inch, Bore: unit.Length(x.id) * unit.Inch, Weight: unit.WeightPerLength(x.weight) * unit.PoundPerFoot, Yield: 80000 * psi}})
	}
	ramp := func(tubing, annulus float64) map[string]unit.Pressure {
		return map[string]unit.Pressure{"tubing": unit.Pressure(tubing) * psi, "annulus": unit.Pressure(annulus) * psi}
	}
	p.Steps = []sequence.Step{
		{Name: "landed"},
		{Name: "set", Ramps: []map[string]unit.Pressure{{"tubing": unit.Pressure(bites+6000) * psi}, {"tubing": 0}}, Expect: []string{p.Devices[0].Name + ": " + a.Name}},
		{Name: "test", Ramps: []map[string]unit.Pressure{ramp(tests[0], 0)}},
		{Name: "cool", Temperature: "cooled", Ramps: []map[string]unit.Pressure{ramp(tests[0], tests[1])}},
	}
	return p
}
