package packer_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// plan is 20 ft of seals, 1 ft below their locator, in a bore of 24 ft that
// begins 1 ft under its shoulder at 10,000 ft.
func plan() packer.SealPlan {
	return packer.SealPlan{
		Bore:  packer.Receptacle{ShoulderMD: 10000 * unit.Foot, TopMD: 10001 * unit.Foot, BottomMD: 10025 * unit.Foot},
		Seals: packer.SealStack{FirstMD: 1 * unit.Foot, LastMD: 21 * unit.Foot},
		Cases: []packer.Travel{
			{Case: "stimulation", Movement: -8 * unit.Foot},
			{Case: "production", Movement: 5 * unit.Foot},
		},
		Engaged: 3 * unit.Foot, Clearance: 1 * unit.Foot,
	}
}

func ExampleSealPlan_SpaceOut() {
	p := packer.SealPlan{
		Bore:  packer.Receptacle{ShoulderMD: 10000 * unit.Foot, TopMD: 10001 * unit.Foot, BottomMD: 10025 * unit.Foot},
		Seals: packer.SealStack{FirstMD: 1 * unit.Foot, LastMD: 21 * unit.Foot},
		Cases: []packer.Travel{
			{Case: "stimulation", Movement: -8 * unit.Foot},
			{Case: "production", Movement: 5 * unit.Foot},
		},
		Engaged: 3 * unit.Foot, Clearance: 1 * unit.Foot,
	}
	s, err := p.SpaceOut()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("locator %s to %s above its shoulder\n", s.Least.Rounded(3), s.Greatest.Rounded(3))
	cases, err := p.Engage(s.Middle())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range cases {
		fmt.Println(c)
	}
	p.Seals.LastMD = 15 * unit.Foot
	p.Engaged = 5 * unit.Foot
	_, err = p.SpaceOut()
	fmt.Println(err)
	// Output:
	// locator 6 ft to 9 ft above its shoulder
	// as landed: 150 in engaged, locator 90 in above its shoulder
	// stimulation: 54 in engaged, locator 186 in above its shoulder
	// production: 210 in engaged, locator 30 in above its shoulder
	// packer: no space-out satisfies all cases: the locator must be at least 6 ft up (production, locator off its shoulder) and at most 1 ft (stimulation, seals out of the top of the bore): 60 in of seal or bore are lacking
}

// The seal length of the worked example: the seals must reach 165.2 in upwards.
//
// Source of the case: Lubinski, Althouse & Logan, JPT June 1962 (from memory).
func TestSealsOfTheWorkedExample(t *testing.T) {
	a, err := packerExample().Analyse()
	require.NoError(t, err)
	stroke, err := packer.StrokeOf([]packer.Travel{packer.TravelOf("squeeze", a.Movement)})
	require.NoError(t, err)
	require.InDelta(t, 165.2, stroke.Total().In(unit.Inch), 0.05)
	require.Equal(t, "squeeze", stroke.UpCase)
	require.Empty(t, stroke.DownCase)
}

func packerExample() movement.Vertical {
	return movement.Vertical{
		Sections: []movement.StringSection{{
			Pipe:     tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot, Material: tubular.Steel()},
			BottomMD: 10000 * unit.Foot, Hole: 6.094 * unit.Inch,
		}},
		Seals:   movement.SealBore{Bore: 3.25 * unit.Inch},
		Initial: movement.WellFluids{InsideDensity: 7.31 * unit.PoundPerGallon, OutsideDensity: 7.31 * unit.PoundPerGallon},
		Final: movement.WellFluids{
			InsideDensity: 15 * unit.PoundPerGallon, OutsideDensity: 7.31 * unit.PoundPerGallon,
			InsideSurface: 5000 * unit.PSI, OutsideSurface: 1000 * unit.PSI,
		},
		Warming: -20 * unit.FahrenheitDifference,
	}
}

// Two ways: a height is in the range exactly where every case keeps its
// engagement and its clearance.
func TestSpaceOutAgreesWithEngage(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	found, none := 0, 0
	for range 3000 {
		p := plan()
		p.Seals.LastMD = p.Seals.FirstMD + unit.Length(1+r.Float64()*30)*unit.Foot
		p.Bore.BottomMD = p.Bore.TopMD + unit.Length(1+r.Float64()*30)*unit.Foot
		p.Engaged = min(p.Seals.Length(), p.Bore.BottomMD-p.Bore.TopMD) * unit.Length(r.Float64())
		p.Cases[0].Movement = unit.Length(r.NormFloat64()*5) * unit.Foot
		p.Cases[1].Movement = unit.Length(r.NormFloat64()*5) * unit.Foot
		s, err := p.SpaceOut()
		if err != nil {
			var no *packer.NoSpaceOutError
			require.ErrorAs(t, err, &no)
			require.ErrorIs(t, err, packer.ErrNoSpaceOut)
			require.Greater(t, no.Least, no.Greatest)
			none++
		} else {
			found++
		}
		for range 10 {
			h := unit.Length(r.Float64()*40) * unit.Foot
			cases, e := p.Engage(h)
			require.NoError(t, e)
			good := true
			for _, c := range cases {
				good = good && c.Margin >= 0 && c.Height >= p.Clearance && !c.Stopped
			}
			require.Equal(t, good, err == nil && h >= s.Least && h <= s.Greatest, "%+v at %v: %+v %v", p, h, s, err)
		}
	}
	require.Greater(t, found, 500)
	require.Greater(t, none, 500)
}

// The shoulder takes up what goes beyond it, and with package movement bears
// the force of it.
func TestStoppedByTheShoulder(t *testing.T) {
	p := plan()
	cases, err := p.Engage(2 * unit.Foot)
	require.NoError(t, err)
	require.True(t, cases[2].Stopped)
	require.InDelta(t, 3, cases[2].Short.In(unit.Foot), 1e-9)
	require.Zero(t, cases[2].Height)
	require.InDelta(t, 20, cases[2].Engaged.In(unit.Foot), 1e-9)

	v := packerExample()
	v.Final, v.Warming = v.Initial, 100*unit.FahrenheitDifference // 82.8 in downwards
	v.Seals = packer.Restraint(v.Seals.Bore, 50*unit.Inch)
	a, err := v.Analyse()
	require.NoError(t, err)
	require.InDelta(t, 50, a.SealMovement.In(unit.Inch), 1e-6)
	require.Negative(t, float64(a.PackerForce), "the shoulder bears the string")
	// Hooke alone for the 32.8 in taken up, which buckling can only lessen.
	hooke := 32.8 / 120000 * 30e6 * tubingArea()
	require.Less(t, -a.PackerForce.In(unit.PoundForce), hooke*1.0001)
	require.Greater(t, -a.PackerForce.In(unit.PoundForce), hooke*0.5)
}

func tubingArea() float64 { return math.Pi / 4 * (2.875*2.875 - 2.441*2.441) }

func TestSealPlanFaults(t *testing.T) {
	p := plan()
	p.Bore.BottomMD, p.Seals.LastMD, p.Engaged, p.Clearance = 1, 0, -1, unit.Length(math.NaN())
	p.Cases[0].Movement = unit.Length(math.Inf(1))
	_, err := p.SpaceOut()
	for _, want := range []string{"Bore.Bottom", "Seals.Last", "Engaged", "Clearance", "Cases[0].Movement: of stimulation"} {
		require.ErrorContains(t, err, want)
	}
	p = plan()
	p.Engaged = 21 * unit.Foot
	_, err = p.Engage(-1)
	require.ErrorContains(t, err, "Engaged: is 21 ft; must be at most 20 ft")
	require.ErrorContains(t, err, "height: is")
	_, err = packer.StrokeOf([]packer.Travel{{Case: "x", Movement: unit.Length(math.NaN())}})
	require.Error(t, err)
}

func ExampleLanding_MakeUp() {
	l := packer.Landing{
		Tagged: 10035 * unit.Foot, Height: 7.5 * unit.Foot,
		HangerDepth: 30 * unit.Foot, HangerLength: 2 * unit.Foot,
		Above:  6 * unit.Foot,
		Joints: []unit.Length{31.2 * unit.Foot, 30.9 * unit.Foot, 31.5 * unit.Foot},
		Pups:   []unit.Length{4 * unit.Foot, 6 * unit.Foot, 8 * unit.Foot, 10 * unit.Foot, 10 * unit.Foot},
	}
	m, err := l.MakeUp()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d joints off, pups %v in: locator %s above its shoulder\n", m.Joints, m.Pups, m.Height.Rounded(3))
	// Output:
	// 2 joints off, pups [10 ft 6 ft] in: locator 8.1 ft above its shoulder
}

// The whole string, laid out again from the seat down, ends at the height said.
func TestMakeUpAddsUp(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		l := packer.Landing{
			Tagged: 5000 * unit.Foot, Height: unit.Length(r.Float64()*15) * unit.Foot,
			HangerDepth: unit.Length(r.Float64()*60) * unit.Foot, HangerLength: 3 * unit.Foot, Above: unit.Length(r.Float64()*20) * unit.Foot,
			Pups: []unit.Length{2 * unit.Foot, 4 * unit.Foot, 6 * unit.Foot, 8 * unit.Foot, 10 * unit.Foot, 12 * unit.Foot},
		}
		for range 5 {
			l.Joints = append(l.Joints, unit.Length(30+2*r.Float64())*unit.Foot)
		}
		m, err := l.MakeUp()
		require.NoError(t, err)
		length := l.Tagged + l.Above + l.HangerLength
		for _, j := range l.Joints[:m.Joints] {
			length -= j
		}
		for _, p := range m.Pups {
			length += p
		}
		locator := l.HangerDepth + length
		require.InDelta(t, float64(l.Tagged-m.Height), float64(locator), 1e-9)
		require.InDelta(t, float64(m.Height-l.Height), float64(m.Off), 1e-9)
		most := 1.01 // pups of every two feet
		if l.Height < unit.Foot {
			most = 2.01 // the locator may not go under its shoulder
		}
		require.LessOrEqual(t, math.Abs(m.Off.In(unit.Foot)), most)
		require.GreaterOrEqual(t, float64(m.Height), 0.0)
	}
}

func TestMakeUpFaults(t *testing.T) {
	_, err := packer.Landing{Joints: []unit.Length{-1}, Pups: make([]unit.Length, 20), HangerDepth: 5}.MakeUp()
	for _, want := range []string{"Tagged: is 0", "Joints[0]", "Pups: has 20", "Pups[0]", "below the hanger's seat"} {
		require.ErrorContains(t, err, want)
	}
	l := packer.Landing{Tagged: 1000, HangerDepth: 20, HangerLength: 1, Height: 2, Joints: []unit.Length{9}}
	_, err = l.MakeUp()
	require.ErrorContains(t, err, "Joints: come to")
	require.False(t, errors.Is(err, packer.ErrNoSpaceOut))
	l.Joints, l.Pups = []unit.Length{9, 14.2}, []unit.Length{30}
	m, err := l.MakeUp()
	require.NoError(t, err)
	require.InDelta(t, 2.2, float64(m.Height), 1e-9)
}
