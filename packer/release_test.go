package packer_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// fluid is the pressure in a column of one fluid with a pressure at surface.
func fluid(rho unit.Density, surface unit.Pressure) func(unit.Length) unit.Pressure {
	return func(tvd unit.Length) unit.Pressure { return surface + hydrostatics.Pressure(rho, tvd) }
}

// overpull is 9,000 ft of 3-1/2 in 9.3 lb/ft L-80 in 9.5 lb/gal, made fast at a
// joint with pins of 60,000 lbf ± 5 %.
func overpull() packer.Release {
	mud := fluid(9.5*unit.PoundPerGallon, 0)
	return packer.Release{
		Pull: packer.Pull{
			Sections: []movement.StringSection{{Pipe: tubing(), BottomMD: 9000 * unit.Foot}},
			Inside:   mud, Outside: mud, Seal: 4 * unit.Inch,
			Drag: unit.Exactly(5000 * unit.PoundForce),
		},
		Pins:       unit.Within(60000*unit.PoundForce, 0.05),
		Components: []packer.Component{{Name: "tubing body at surface", Rating: 207215 * unit.PoundForce, Share: 0.8}},
		Rig:        250 * unit.Kilopound, RigShare: 0.9,
	}
}

func ExampleRelease_Parting() {
	mud := func(tvd unit.Length) unit.Pressure { return hydrostatics.Pressure(9.5*unit.PoundPerGallon, tvd) }
	pipe := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: tubular.Steel()}
	p, err := packer.Release{
		Pull: packer.Pull{
			Sections: []movement.StringSection{{Pipe: pipe, BottomMD: 9000 * unit.Foot}},
			Inside:   mud, Outside: mud, Seal: 4 * unit.Inch,
			Drag: unit.Exactly(5000 * unit.PoundForce),
		},
		Pins:       unit.Within(60000*unit.PoundForce, 0.05),
		Components: []packer.Component{{Name: "tubing body", Rating: 207215 * unit.PoundForce, Share: 0.8}},
		Rig:        250 * unit.Kilopound, RigShare: 0.9,
	}.Parting()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("reading:", p.Reading.Rounded(4))
	fmt.Println("stretch:", p.Stretch.Rounded(4))
	for _, u := range p.Parts {
		fmt.Printf("%s: %.1f %% of its rating\n", u.Name, 100*u.Usage)
	}
	fmt.Println("parts:", p.State)
	// Output:
	// reading: 134196 lbf .. 137196 lbf .. 140196 lbf
	// stretch: 82.7 in .. 86.87 in .. 91.04 in
	// tubing body: 67.7 % of its rating
	// rig: 56.1 % of its rating
	// parts: acted
}

// taper is an invented string of two pipes with a pressure at surface inside.
func taper() packer.Pull {
	big := tubular.Pipe{OD: 4.5 * unit.Inch, ID: 3.958 * unit.Inch, Weight: 12.6 * unit.PoundPerFoot, Material: tubular.Steel()}
	return packer.Pull{
		Sections: []movement.StringSection{{Pipe: big, BottomMD: 4000 * unit.Foot}, {Pipe: tubing(), BottomMD: 9000 * unit.Foot}},
		Inside:   fluid(10*unit.PoundPerGallon, 1500*unit.PSI), Outside: fluid(9*unit.PoundPerGallon, 200*unit.PSI),
		Seal: 4 * unit.Inch, Drag: unit.Band[unit.Force]{Least: 2 * unit.Kilopound, Nominal: 4 * unit.Kilopound, Greatest: 9 * unit.Kilopound},
		Block: 20 * unit.Kilopound,
	}
}

// Two ways: the sum of real forces, and the effective force carried up the
// string by the buoyed weight of each section, which knows no shoulders.
func TestBalanceByEffectiveForce(t *testing.T) {
	p := taper()
	load := 50 * unit.Kilopound
	b, err := p.Balance(load)
	require.NoError(t, err)
	bottom := 9000 * unit.Foot
	pi, po := p.Inside(bottom), p.Outside(bottom)
	fe := float64(load) - float64(pi-po)*math.Pi/4*math.Pow(float64(p.Seal), 2)
	top := unit.Length(0)
	for _, s := range p.Sections {
		w := float64(s.Pipe.WeightInAir()) + 9.80665*(float64(10*unit.PoundPerGallon)*float64(s.Pipe.InnerArea())-float64(9*unit.PoundPerGallon)*float64(s.Pipe.OuterArea()))
		fe += w * float64(s.BottomMD-top)
		top = s.BottomMD
	}
	// At surface the real force is Fe + pi Ai - po Ao, and the cap takes pi Ai.
	want := unit.Force(fe) - packer.Push(200*unit.PSI, p.Sections[0].Pipe.OuterArea()) + p.Block
	require.InEpsilon(t, float64(want), float64(b.Reading), 1e-12)
}

// The string without drag is the one that package movement lands.
func TestBalanceAgreesWithTheLandedString(t *testing.T) {
	p := taper()
	sections := []movement.StringSection{p.Sections[0], p.Sections[1]}
	for i := range sections {
		sections[i].Hole = 8.5 * unit.Inch
	}
	path, err := hydrostatics.Vertical(9000 * unit.Foot)
	require.NoError(t, err)
	s := movement.String{Sections: sections, Path: path, Seals: movement.SealBore{Bore: p.Seal, Restraint: movement.Anchored}}
	landed, err := s.Land(movement.WellProfiles{Inside: p.Inside, Outside: p.Outside}, -50*unit.Kilopound)
	require.NoError(t, err)
	c := landed.AsSet()
	b, err := p.Balance(50 * unit.Kilopound)
	require.NoError(t, err)
	hook := c.HangerLoad
	require.InEpsilon(t, float64(hook+b.Cap+p.Block), float64(b.Reading), 1e-9)
}

// Two ways on a curved path: what a component bears is the real force at its
// depth in the string that package movement lands with the same pull.
func TestComponentsBearTheForceAtTheirDepth(t *testing.T) {
	path, err := hydrostatics.NewPath([]hydrostatics.Station{
		{MD: 0}, {MD: 2000 * unit.Foot}, {MD: 6000 * unit.Foot, Inclination: 70 * unit.Degree}, {MD: 9000 * unit.Foot, Inclination: 70 * unit.Degree}})
	require.NoError(t, err)
	p := taper()
	p.Path, p.Drag = path, unit.Band[unit.Force]{}
	r := packer.Release{Pull: p, Pins: unit.Exactly(50 * unit.Kilopound), Rig: 500 * unit.Kilopound, RigShare: 1}
	for _, md := range []float64{100, 3000, 5000, 8000, 9000} {
		r.Components = append(r.Components, packer.Component{Name: "c", MD: unit.Length(md) * unit.Foot, Rating: 500 * unit.Kilopound, Share: 1})
	}
	parting, err := r.Parting()
	require.NoError(t, err)
	sections := []movement.StringSection{p.Sections[0], p.Sections[1]}
	for i := range sections {
		sections[i].Hole = 8.5 * unit.Inch
	}
	landed, err := movement.String{Sections: sections, Path: path, Seals: movement.SealBore{Bore: p.Seal, Restraint: movement.Anchored}}.
		Land(movement.WellProfiles{Inside: p.Inside, Outside: p.Outside}, -50*unit.Kilopound)
	require.NoError(t, err)
	c := landed.AsSet()
	for _, u := range parting.Parts[:len(r.Components)] {
		n, err := c.At(u.MD)
		require.NoError(t, err)
		// Between its nodes movement draws a straight line.
		require.InDelta(t, n.True.In(unit.PoundForce), u.Load.In(unit.PoundForce), 2, "at %v", u.MD)
	}
}

// On a slant the weight counts by vertical depth.
func TestBalanceOnASlant(t *testing.T) {
	p := overpull().Pull
	slant := 60 * unit.Degree
	path, err := hydrostatics.NewPath([]hydrostatics.Station{{MD: 0, Inclination: slant}, {MD: 9000 * unit.Foot, Inclination: slant}})
	require.NoError(t, err)
	flat, err := p.Balance(0)
	require.NoError(t, err)
	p.Path = path
	b, err := p.Balance(0)
	require.NoError(t, err)
	require.InEpsilon(t, float64(flat.Weight)/2, float64(b.Weight), 1e-9)
	p.Sections = []movement.StringSection{{Pipe: tubing(), BottomMD: 9500 * unit.Foot}}
	_, err = p.Balance(0)
	require.ErrorContains(t, err, "packer: path")
}

func TestPartingByHand(t *testing.T) {
	r := overpull()
	p, err := r.Parting()
	require.NoError(t, err)
	workingtest.Check(t, p.Steps())
	// Most: 80 % of 207,215 less the buoyed weight and the drag.
	free := p.Neutral.Greatest.In(unit.PoundForce)
	require.InDelta(t, 0.8*207215-free, p.Most.In(unit.PoundForce), 1e-6)
	require.InDelta(t, 0.8*207215, p.MostReading.In(unit.PoundForce), 1e-6)
	require.Equal(t, "tubing body at surface", p.Weakest.Name)
	require.False(t, p.Weakest.Over())

	// Half-way down there is half the weight and half the drag less.
	r.Components = append(r.Components, packer.Component{Name: "middle", MD: 4500 * unit.Foot, Rating: 115 * unit.Kilopound, Share: 0.8})
	p, err = r.Parting()
	require.NoError(t, err)
	middle := p.Parts[1]
	// Real force: weight in air of the half below less the push on the steel at
	// the end, on the joint's seal of 4 in with one fluid on both sides.
	po := 9.5 * 9000 * 4 / 77
	end := -po * math.Pi / 4 * (3.5*3.5 - 2.992*2.992)
	require.InDelta(t, 63000+end+4500*9.3+2500, middle.Load.In(unit.PoundForce), 1)
	require.Equal(t, "middle", p.Weakest.Name)
	require.True(t, p.Weakest.Over())
	require.Equal(t, packer.Unknown, p.State, "92 klbf permit 59.2 of 57 to 63 klbf: %v", p.Most)

	r.Components[1].Share = 0.7
	p, err = r.Parting()
	require.NoError(t, err)
	require.Equal(t, packer.NotActed, p.State)
}

// Pressure on the seal helps the pull: at one reading the load on the joint
// rises by the pressure on the seal.
func TestPressureHelpsThePull(t *testing.T) {
	p := overpull().Pull
	bare, err := p.Balance(60 * unit.Kilopound)
	require.NoError(t, err)
	p.Inside = fluid(9.5*unit.PoundPerGallon, 1000*unit.PSI)
	helped, err := p.Balance(60*unit.Kilopound + packer.Push(1000*unit.PSI, tubular.AnnularCapacity(p.Seal, 0)))
	require.NoError(t, err)
	require.InEpsilon(t, float64(bare.Reading), float64(helped.Reading), 1e-12)
	// Plugged under the seal it doesn't: the pressure acts on the bore alone,
	// and the cap takes it back.
	p.Plugged, p.Below = true, overpull().Pull.Inside(9000*unit.Foot)
	same, err := p.Balance(60 * unit.Kilopound)
	require.NoError(t, err)
	require.InEpsilon(t, float64(bare.Reading), float64(same.Reading), 1e-12)
}

func TestReleaseFaults(t *testing.T) {
	_, err := packer.Release{Components: []packer.Component{{Name: "x", MD: 5}}, RigShare: 2}.Parting()
	for _, want := range []string{"Sections: is empty", "Inside: is missing", "Outside: is missing", "Pull.Seal", "Pins: part from", "Components[0].Depth: of x", "Components[0].Rating", "Components[0].Share", "Rig: ", "RigShare"} {
		require.ErrorContains(t, err, want)
	}
	p := overpull().Pull
	p.Inside = func(unit.Length) unit.Pressure { return unit.Pressure(math.NaN()) }
	_, err = p.Balance(0)
	require.Error(t, err)
	p = overpull().Pull
	_, err = p.Balance(unit.Force(math.Inf(1)))
	require.Error(t, err)
	p.Below = 5
	_, err = p.Balance(0)
	require.ErrorContains(t, err, "Below: is")
}

func ExampleHoldPins() {
	margins, err := packer.HoldPins(unit.Within(80*unit.Kilopound, 0.05), false, []packer.PinCase{
		{Case: "production", Load: -20 * unit.Kilopound},
		{Case: "cold injection at 5000 psi", Load: 74710 * unit.PoundForce},
		{Case: "colder", Load: 78 * unit.Kilopound},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range margins {
		fmt.Printf("%s: %.0f %% of the least strength, parted: %v\n", m.Case, 100*m.Used, m.State)
	}
	// Output:
	// production: -26 % of the least strength, parted: not
	// cold injection at 5000 psi: 98 % of the least strength, parted: not
	// colder: 103 % of the least strength, parted: unknown
}

func TestHoldPins(t *testing.T) {
	pins := unit.Within(100*unit.Kilopound, 0.1)
	loads := []packer.PinCase{{Load: -120 * unit.Kilopound}, {Load: 90 * unit.Kilopound}, {Load: 110 * unit.Kilopound}}
	m, err := packer.HoldPins(pins, false, loads)
	require.NoError(t, err)
	require.Equal(t, []packer.Outcome{packer.NotActed, packer.Unknown, packer.Acted}, []packer.Outcome{m[0].State, m[1].State, m[2].State})
	require.InDelta(t, 210, m[0].Margin.In(unit.Kilopound), 1e-9)
	m, err = packer.HoldPins(pins, true, loads)
	require.NoError(t, err)
	require.Equal(t, packer.Acted, m[0].State)
	_, err = packer.HoldPins(unit.Band[unit.Force]{}, false, []packer.PinCase{{Case: "x", Load: unit.Force(math.NaN())}})
	require.ErrorContains(t, err, "pins: part from")
	require.ErrorContains(t, err, "cases[0].Load")
}

func BenchmarkParting(b *testing.B) {
	r := overpull()
	r.Pull.Sections = taper().Sections
	for b.Loop() {
		if _, err := r.Parting(); err != nil {
			b.Fatal(err)
		}
	}
}
