package hydrostatics

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/internal/dimension"
	"github.com/stretchr/testify/require"
)

func leg(port unit.Length, area unit.Area, level unit.Length, rho unit.Density) Leg {
	return Leg{Sections: []LegSection{{port, area}}, LevelMD: level, Fluids: []Stretch{{port, rho}}}
}

// By hand: tubing of 0.003 m² with 1,200 kg/m³, annulus of 0.01 m² with 1,000,
// both full, 3,000 m. Tubing falls by d; what leaves it, 0.003·d, stands at the
// bottom of the annulus 0.3·d high and drives water over the top:
//
//	1200·(3000 − d) = 1000·(3000 − 0.3d) + 1200·0.3d  ⇒  d = 600000/1260
func TestUTubeByHand(t *testing.T) {
	r, err := UTube{PortMD: 3000, Tubing: leg(3000, 0.003, 0, 1200), Annulus: leg(3000, 0.01, 0, 1000)}.Rest()
	require.NoError(t, err)
	d := 600000. / 1260
	require.Equal(t, Tubing, r.Falling)
	require.InDelta(t, d, float64(r.Tubing.LevelMD), 1e-9)
	require.InDelta(t, d, float64(r.Tubing.LevelTVD), 1e-9)
	require.Zero(t, r.Annulus.LevelMD)
	require.InDelta(t, 0.003*d, float64(r.Moved), 1e-11)
	require.InDelta(t, 0.003*d, float64(r.Returned), 1e-11)
	require.InDelta(t, 200*gravity*3000, float64(r.Holding), 1e-8)
	require.InDelta(t, 200*gravity*3000, float64(r.Differential), 1e-8)
	require.InDelta(t, 1200*gravity*(3000-d), float64(r.Pressure), 1e-6)

	// What stands where before and after, from the top down.
	require.Equal(t, []Standing{{1200, 3000}}, r.Tubing.Filled)
	require.Len(t, r.Annulus.Settled, 2)
	require.InDelta(t, 3000-0.3*d, float64(r.Annulus.Settled[0].Height), 1e-9)
	require.Equal(t, unit.Density(1200), r.Annulus.Settled[1].Density)
	require.InDelta(t, 0.3*d, float64(r.Annulus.Settled[1].Height), 1e-9)
	workingtest.Check(t, r.Steps())
	require.Len(t, r.Steps(), 6)
}

// With the levels below surface nothing comes back: heavy falls by a, light
// rises by a·At/Aa.
func TestUTubeBelowSurface(t *testing.T) {
	u := UTube{PortMD: 3000, Tubing: leg(3000, 0.01, 500, 1000), Annulus: leg(3000, 0.005, 400, 1300)}
	r, err := u.Rest()
	require.NoError(t, err)
	require.Equal(t, Annulus, r.Falling)
	require.Zero(t, r.Returned)
	// 1300·(2600 − a) = 1000·2500 + 1300·(a/2)
	a := (1300.*2600 - 1000*2500) / (1300 * 1.5)
	require.InDelta(t, 400+a, float64(r.Annulus.LevelMD), 1e-9)
	require.InDelta(t, 500-a/2, float64(r.Tubing.LevelMD), 1e-9)
	require.Negative(t, float64(r.Differential))
	// The holding pressure on the lighter leg leaves everything in place.
	u.Tubing.Surface = r.Holding
	held, err := u.Rest()
	require.NoError(t, err)
	require.InDelta(t, 0, float64(held.Moved), 1e-9)
	require.InDelta(t, 500, float64(held.Tubing.LevelMD), 1e-6)
	require.InDelta(t, 0, float64(held.Holding), 1e-6)
	workingtest.Check(t, r.Steps())
}

// The slug formula is the U-tube with a full annulus of mud.
func TestSlugIsAUTube(t *testing.T) {
	s := Slug{Mud: 12.2 * unit.PoundPerGallon, Pill: 13.2 * unit.PoundPerGallon, Capacity: 0.01422 * unit.BarrelPerFoot}
	dry := 184 * unit.Foot
	length := s.Length(dry)
	port := 10000 * unit.Foot
	u := UTube{
		PortMD: port,
		// The pill fills the pipe from surface, and falls.
		Tubing: Leg{Sections: []LegSection{{port, s.Capacity}}, Fluids: []Stretch{
			{length, s.Pill}, {port, s.Mud},
		}},
		Annulus: leg(port, 0.05*unit.BarrelPerFoot, 0, s.Mud),
	}
	r, err := u.Rest()
	require.NoError(t, err)
	require.InDelta(t, float64(dry), float64(r.Tubing.LevelMD), 1e-8)
	require.InDelta(t, float64(s.Gain(dry)), float64(r.Moved), 1e-10)
	require.InDelta(t, float64(r.Moved), float64(r.Returned), 1e-12)
	require.InEpsilon(t, float64(dry), float64(s.Dry(s.Volume(dry))), 1e-14)
	require.InEpsilon(t, float64(s.Pill), float64(SlugDensity(s.Mud, length, dry)), 1e-14)
	workingtest.Check(t, s.Steps(dry))
}

// Sections, several fluids and a curved hole, against a crude march: move a
// thousandth of a litre at a time until the pressures cross.
func TestUTubeAgainstAMarch(t *testing.T) {
	p := path(t, []float64{0, 800, 1600, 3000}, []float64{0, 0, 60, 70}, []float64{0, 0, 0, 20})
	u := UTube{
		Path: p, PortMD: 2900,
		Tubing: Leg{
			Sections: []LegSection{{1000, 0.004}, {2000, 0.003}, {2950, 0.0025}},
			Fluids:   []Stretch{{300, 1500}, {1500, 1100}, {2900, 1350}},
		},
		Annulus: Leg{
			Sections: []LegSection{{700, 0.02}, {1200, 0.015}, {2900, 0.01}}, LevelMD: 50,
			Fluids: []Stretch{{600, 900}, {2900, 1050}}, Surface: 2e5,
		},
	}
	r, err := u.Rest()
	require.NoError(t, err)
	workingtest.Check(t, r.Steps()) // by the heights of five fluids in a curved hole
	require.Equal(t, Tubing, r.Falling)
	// Independent: each leg as a list of thin discs of equal volume, bottom first.
	const disc = 1e-3
	discs := func(l Leg) (rho []float64) {
		md, step := float64(u.PortMD), 0.0
		for {
			area := 0.0
			for _, s := range l.Sections {
				if md <= float64(s.BottomMD) {
					area = float64(s.Area)
					break
				}
			}
			step = disc / area
			mid := md - step/2
			if mid < float64(l.LevelMD) {
				return rho
			}
			for _, f := range l.Fluids {
				if mid <= float64(f.BottomMD) {
					rho = append(rho, float64(f.Density))
					break
				}
			}
			md -= step
		}
	}
	weigh := func(l Leg, rho []float64) float64 {
		sum, md := float64(l.Surface), float64(u.PortMD)
		for _, d := range rho {
			area := 0.0
			for _, s := range l.Sections {
				if md <= float64(s.BottomMD) {
					area = float64(s.Area)
					break
				}
			}
			next := md - disc/area
			if next < 0 {
				break
			}
			a, err1 := p.TVD(unit.Length(md))
			b, err2 := p.TVD(unit.Length(next))
			require.NoError(t, err1)
			require.NoError(t, err2)
			sum += d * gravity * float64(a-b)
			md = next
		}
		return sum
	}
	down, up := discs(u.Tubing), discs(u.Annulus)
	lo, hi := 0, len(down)
	for lo+1 < hi { // the difference falls all the way here
		n := (lo + hi) / 2
		risen := make([]float64, 0, len(up)+n)
		for i := n - 1; i >= 0; i-- {
			risen = append(risen, down[i])
		}
		risen = append(risen, up...)
		if weigh(u.Tubing, down[n:]) > weigh(u.Annulus, risen) {
			lo = n
		} else {
			hi = n
		}
	}
	require.InDelta(t, float64(lo)*disc, float64(r.Moved), 0.02)
	// At rest the two legs' pressures agree.
	tubing, annulus := u.Tubing.bore(p, u.PortMD), u.Annulus.bore(p, u.PortMD)
	require.InDelta(t, tubing.fallen(float64(r.Moved)), annulus.risen(float64(r.Moved), tubing), 1e-4)
	require.InDelta(t, float64(r.Pressure), tubing.fallen(float64(r.Moved)), 1e-6)
}

func TestUTubeBalancedAlready(t *testing.T) {
	r, err := UTube{PortMD: 1000, Tubing: leg(1000, 0.01, 0, 1000), Annulus: leg(1000, 0.02, 0, 1000)}.Rest()
	require.NoError(t, err)
	require.Equal(t, Neither, r.Falling)
	require.Zero(t, r.Moved)
	require.Equal(t, "neither", r.Falling.String())
	require.Equal(t, "annulus", Annulus.String())
}

func TestSideText(t *testing.T) {
	for _, want := range []Side{Neither, Tubing, Annulus} {
		text, err := want.MarshalText()
		require.NoError(t, err)
		var got Side
		require.NoError(t, got.UnmarshalText(text))
		require.Equal(t, want, got)
	}
	_, err := Side(7).MarshalText()
	require.ErrorContains(t, err, "Side(7)")
	var s Side
	require.ErrorContains(t, s.UnmarshalText([]byte("casing")), "neither, tubing or annulus")
}

func TestUTubeFaults(t *testing.T) {
	u := UTube{PortMD: 1000, Tubing: leg(1000, 0.01, 0, 1000), Annulus: leg(1000, 0.02, 0, 1000)}
	u.Tubing.Surface = 50 * unit.Megapascal
	_, err := u.Rest()
	require.ErrorIs(t, err, ErrNoBalance)
	require.ErrorContains(t, err, "tubing empties")
	_, err = UTube{PortMD: 1000, Tubing: Leg{Sections: []LegSection{{500, -1}}, LevelMD: -5, Fluids: []Stretch{{400, 0}}, Surface: unit.Pressure(math.NaN())}, Annulus: leg(900, 1, 0, 1)}.Rest()
	for _, want := range []string{
		"Tubing.Sections[0].Area: is", "Tubing.Sections: end at", "Tubing.LevelMD: is", "Tubing.Fluids[0].Density: is", "Tubing.Fluids: end at", "Tubing.Surface: is NaN",
		"Annulus.Sections: end at", "Annulus.Fluids: end at",
	} {
		require.ErrorContains(t, err, want)
	}
	_, err = UTube{}.Rest()
	require.Error(t, err)
	p, err := Vertical(500)
	require.NoError(t, err)
	u.Path = p
	_, err = u.Rest()
	require.ErrorContains(t, err, "PortMD: is")
}

func FuzzUTube(f *testing.F) {
	f.Add(3000.0, 0.003, 0.0, 1200.0, 0.0, 0.01, 10.0, 1000.0, 0.0)
	f.Add(10.0, 1.0, 0.0, 1.0, 1e5, 1e-3, 9.0, 900.0, -1e5)
	f.Fuzz(func(t *testing.T, port, a1, l1, r1, s1, a2, l2, r2, s2 float64) {
		u := UTube{PortMD: unit.Length(port), Tubing: leg(unit.Length(port), unit.Area(a1), unit.Length(l1), unit.Density(r1)),
			Annulus: leg(unit.Length(port), unit.Area(a2), unit.Length(l2), unit.Density(r2))}
		u.Tubing.Surface, u.Annulus.Surface = unit.Pressure(s1), unit.Pressure(s2)
		r, err := u.Rest()
		if err != nil {
			return
		}
		for _, x := range []float64{float64(r.Moved), float64(r.Returned), float64(r.Pressure), float64(r.Tubing.LevelMD), float64(r.Annulus.LevelTVD)} {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Fatalf("%+v", r)
			}
		}
		if r.Moved < 0 || r.Returned < 0 || r.Tubing.LevelMD < 0 || r.Tubing.LevelMD > u.PortMD || r.Annulus.LevelMD < 0 || r.Annulus.LevelMD > u.PortMD {
			t.Fatalf("%+v", r)
		}
	})
}

// An empty tubing takes fluid until both stand level: by hand, with areas of
// one to three, 3·d out of the annulus is 1·h in the tubing and h = H − d.
func TestUTubeIntoAnEmptyLeg(t *testing.T) {
	r, err := UTube{
		PortMD:  2000,
		Tubing:  Leg{Sections: []LegSection{{2000, 0.001}}, LevelMD: 2000},
		Annulus: leg(2000, 0.003, 0, 1100),
	}.Rest()
	require.NoError(t, err)
	require.Equal(t, Annulus, r.Falling)
	require.InDelta(t, 500, float64(r.Annulus.LevelMD), 1e-9)
	require.InDelta(t, 500, float64(r.Tubing.LevelMD), 1e-9)
	require.InDelta(t, 1100*gravity*2000, float64(r.Holding), 1e-6)
}

func TestUTubeAndCushionAreHomogeneous(t *testing.T) {
	dimension.Check(t, dimension.Gravity, UTube.Rest, UTube{PortMD: 3000, Tubing: leg(3000, 0.003, 0, 1200), Annulus: leg(3000, 0.01, 200, 1000)})
	cushion := func(p unit.Pressure, h unit.Length, light, heavy unit.Density) (CushionAnswer, error) {
		return Cushion{Formation: Formation{p, h}, Light: Incompressible(light), Heavy: Incompressible(heavy)}.Length()
	}
	dimension.Check(t, dimension.Gravity, cushion, 30*unit.Megapascal, unit.Length(3000), unit.Density(900), unit.Density(1100))
	column := func(p unit.Pressure, h unit.Length, rho unit.Density, c unit.Compressibility) (unit.Pressure, error) {
		f := SlightlyCompressible{Reference: rho, Compressibility: c}
		x, err := NewColumn([]Layer{{f, 0, h}}, straight(t, 20, 0), Reference{Pressure: p})
		if err != nil {
			return 0, err
		}
		return x.At(h)
	}
	dimension.Check(t, dimension.Gravity, column, 10*unit.Megapascal, unit.Length(3000), unit.Density(1100), unit.Compressibility(4e-10))
}
