package drag

import (
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"completion.example/tubular"
	"github.com/stretchr/testify/require"
)

// bend is a string of two elements around a build with a turn; sections and zones end between them.
func bend(t *testing.T) String {
	path, err := hydrostatics.NewPath([]hydrostatics.Station{
		{MD: 0, Inclination: 0.3, Azimuth: 0.4}, {MD: 200, Inclination: 0.5, Azimuth: 0.9}, {MD: 420, Inclination: 0.45, Azimuth: 1.3},
	})
	require.NoError(t, err)
	pipe := func(od unit.Length) tubular.Pipe {
		return tubular.Pipe{OD: od, ID: 0.07, Weight: 140, Material: tubular.Steel()}
	}
	return String{
		Sections: []PipeSection{{pipe(0.09), 200}, {pipe(0.1), 220}}, BottomMD: 420, Path: path,
		HoleSections: []HoleSection{{BottomMD: 200, Friction: 0.2, Hole: 0.16}, {BottomMD: 420, Friction: 0.3, Hole: 0.15}},
		Inside:       1100, Outside: 1150, Spacing: 1000,
	}
}

// An element's terms, worked with 256 bits: Johancsik, Friesen & Dawson (JPT June
// 1984, Eq. 1 to 3) with the change of direction by the haversine.
func TestElementWorked(t *testing.T) {
	s := bend(t)
	p, err := s.Prepare()
	require.NoError(t, err)
	require.Equal(t, []float64{420, 200, 0}, p.depths)
	require.Len(t, p.elements, 2)
	for i, want := range []struct {
		a, b         hydrostatics.Station
		section      int
		friction, od float64
	}{
		{hydrostatics.Station{MD: 200, Inclination: 0.5, Azimuth: 0.9}, hydrostatics.Station{MD: 420, Inclination: 0.45, Azimuth: 1.3}, 1, 0.3, 0.1},
		{hydrostatics.Station{MD: 0, Inclination: 0.3, Azimuth: 0.4}, hydrostatics.Station{MD: 200, Inclination: 0.5, Azimuth: 0.9}, 0, 0.2, 0.09},
	} {
		e := p.elements[i]
		w := float64(s.Sections[want.section].Pipe.BuoyedWeight(1100, 1150))
		upper, err := s.Path.TVD(want.a.MD)
		require.NoError(t, err)
		lower, err := s.Path.TVD(want.b.MD)
		require.NoError(t, err)
		of := precise.Values{"w": w, "L": float64(want.b.MD - want.a.MD), "h": float64(lower - upper), "a": float64(want.a.Inclination), "b": float64(want.b.Inclination),
			"p": float64(want.a.Azimuth), "q": float64(want.b.Azimuth), "mu": want.friction, "Do": want.od}
		require.Equal(t, want.section, e.section)
		require.Equal(t, want.friction, e.μ)
		precise.Equal(t, e.length, "L", of)
		precise.Equal(t, e.weight, "w*h", of)
		precise.Equal(t, e.side, "w*L*(sin(a) + sin(b))/2", of)
		precise.Equal(t, e.build, "b - a", of)
		precise.Equal(t, e.radius, "Do/2", of)
		// sin(turn/2) = sqrt(sin a·sin b)·|sin(Δφ/2)|
		precise.Equal(t, math.Sin(e.turn/2), "sqrt(sin(a)*sin(b))*abs(sin((q - p)/2))", of)
		of["B"], of["T"] = e.build, e.turn
		precise.Equal(t, e.contact(5000), "sqrt(pow(w*L*(sin(a) + sin(b))/2 - 5000*B, 2) + pow(5000*T, 2))", of)
		precise.Equal(t, e.contact(-5000), "sqrt(pow(w*L*(sin(a) + sin(b))/2 + 5000*B, 2) + pow(5000*T, 2))", of)

		c := p.climbs[i]
		precise.Equal(t, c.half, "x/y/2", precise.Values{"x": e.length, "y": p.elements[0].length})
		precise.Equal(t, c.up(4000, 900, 1), "f = 4000 + 900*half\nW + mu*sqrt(pow(S - f*B, 2) + pow(f*T, 2))", precise.Values{
			"half": c.half, "W": e.weight, "mu": e.μ, "S": e.side, "B": e.build, "T": e.turn})
	}
	// the onset stands on the curvature, per length of hole
	upright := float64(s.Sections[1].Pipe.BuoyedWeight(1100, 1150))
	require.Greater(t, p.elements[0].onset, 0.5*upright)
}

// Weight set down in a bend: the pipe's sinusoidal load by Dawson and Paslay (JPT
// 1984) with the side force of the curve, worked by hand on the element's terms.
func TestOnsetGrowsWithBuild(t *testing.T) {
	flat, bent := bend(t), bend(t)
	var err error
	flat.Path, err = hydrostatics.NewPath([]hydrostatics.Station{{MD: 0, Inclination: 0.8}, {MD: 420, Inclination: 0.8}})
	require.NoError(t, err)
	bent.Path, err = hydrostatics.NewPath([]hydrostatics.Station{{MD: 0, Inclination: 0.6}, {MD: 420, Inclination: 1.0}})
	require.NoError(t, err)
	a, err := flat.Prepare()
	require.NoError(t, err)
	b, err := bent.Prepare()
	require.NoError(t, err)
	require.Greater(t, b.elements[0].onset, 1.2*a.elements[0].onset, "a build holds compressed pipe against the low side")
	tight := bend(t)
	tight.HoleSections[0].Hole, tight.HoleSections[1].Hole = 0.1, 0.1
	c, err := tight.Prepare()
	require.NoError(t, err)
	require.True(t, math.IsInf(c.elements[0].onset, 1), "no room, no buckling")
}

// The lowest node of a profile and the one above it, against the elements.
func TestProfileEnds(t *testing.T) {
	p, err := bend(t).Prepare()
	require.NoError(t, err)
	e := p.elements[0]
	for _, end := range []unit.Force{7000, unit.Force(-0.999 * e.onset), unit.Force(-1.001 * e.onset)} {
		nodes := p.Profile(Pulled, end)
		low := nodes[len(nodes)-1]
		require.Equal(t, unit.Length(420), low.MD)
		require.Equal(t, e.section, low.Section)
		require.Equal(t, end, low.Force)
		require.Equal(t, float64(-end) > e.onset, low.Buckles)
		precise.Equal(t, float64(low.Contact), "N/L", precise.Values{"N": e.contact(float64(end)), "L": e.length})
		top := nodes[0]
		up := p.elements[1]
		precise.Equal(t, float64(top.Contact), "N/L", precise.Values{"N": up.contact(float64(top.Force)), "L": up.length})
		require.Equal(t, -float64(top.Force) > up.onset, top.Buckles)
		require.Equal(t, unit.Length(200), nodes[1].MD)
		require.Equal(t, 1, nodes[1].Section)
	}
	require.Equal(t, []float64{1, -1, 0, 0}, []float64{Pulled.sign(), RunIn.sign(), Rotating.sign(), Motion(9).sign()})
	for _, m := range []Motion{-1, 3} {
		require.Contains(t, m.String(), "Motion(")
		_, err := m.MarshalText()
		require.ErrorContains(t, err, `must be one of ["rotating" "run in" "pulled"]`)
	}
	for _, load := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		_, err := p.EndForce(Pulled, unit.Force(load))
		require.ErrorContains(t, err, "must be finite")
	}
	require.Equal(t, []float64{0.20, 0.30}, []float64{UsualCased, UsualOpen})
}

// Sections, zones and nodes meet where their ends say.
func TestWhereSectionsAndZonesEnd(t *testing.T) {
	s := bend(t)
	require.Equal(t, []int{0, 0, 1, 1}, []int{s.sectionAt(0), s.sectionAt(199.999), s.sectionAt(200), s.sectionAt(420)})
	require.Equal(t, []float64{0.2, 0.2, 0.3, 0.3, 0.3}, []float64{
		s.zoneAt(0).Friction, s.zoneAt(200).Friction, s.zoneAt(200.001).Friction, s.zoneAt(420).Friction, s.zoneAt(421).Friction})
	require.Equal(t, []float64{0, 200, 420}, s.marks())
	s.HoleSections[0].BottomMD = 200 + 419e-9 // less than a billionth of the depth apart is one depth
	require.Len(t, s.marks(), 3)
	s.HoleSections[0].BottomMD = 200 + 421e-9
	require.Len(t, s.marks(), 4)
	s.Spacing = 100
	p, err := bendWith(t, 100).Prepare()
	require.NoError(t, err)
	require.Len(t, p.depths, 6, "220 m in three, 200 m in two")
	precise.Equal(t, p.depths[1], "420 - 220/3", nil)
	s = bend(t)
	s.Spacing = 0
	p, err = s.Prepare()
	require.NoError(t, err)
	require.Len(t, p.depths, 43, "10 m apart where nothing is asked for")
	require.NoError(t, bendWith(t, 420.0/1_000_000*(1+1e-9)).Validate())
	err = bendWith(t, 420.0/1_000_000*(1-1e-7)).Validate()
	require.ErrorContains(t, err, "(1000000 nodes), or 0 for 10 m")
	require.ErrorContains(t, err, "must be at least "+(unit.Length(420)/1_000_000).String())
}

func bendWith(t *testing.T, spacing unit.Length) String {
	s := bend(t)
	s.Spacing = spacing
	return s
}

// Each limit of the inputs: on it the answer, just beyond it a fault that names it.
func TestDragLimits(t *testing.T) {
	ok := bend(t)
	ok.Inside, ok.Outside = 0, 0
	ok.HoleSections[0].Friction, ok.HoleSections[1].Friction = 0, 1
	ok.HoleSections[0].Hole, ok.HoleSections[1].Hole = 0.1, 0.1
	ok.Sections[1].Length = 220 * (1 - 1e-13) // short by rounding
	_, err := ok.Prepare()
	require.NoError(t, err)
	inf := math.Inf(1)
	for text, change := range map[string]func(*String){
		"Sections: ":                          func(s *String) { s.Sections = nil },
		"Sections[1].Length: is 0":            func(s *String) { s.Sections[1].Length = 0 },
		"Sections[1].Length: is +Inf":         func(s *String) { s.Sections[1].Length = unit.Length(inf) },
		"the string's length of":              func(s *String) { s.Sections[1].Length = 220 * (1 - 1e-11) },
		"above 0 ft and at most the string's": func(s *String) { s.BottomMD = 0 },
		"at most the path's end":              func(s *String) { s.BottomMD = 420.001 },
		"Inside: is -":                        func(s *String) { s.Inside = -1e-9 },
		"Outside: is +Inf":                    func(s *String) { s.Outside = unit.Density(inf) },
		"Spacing: is -":                       func(s *String) { s.Spacing = -1 },
		"HoleSections[1].Bottom":              func(s *String) { s.HoleSections[1].BottomMD = s.HoleSections[0].BottomMD },
		"HoleSections[1].BottomMD: is +Inf":   func(s *String) { s.HoleSections[1].BottomMD = unit.Length(inf) },
		"HoleSections[0].BottomMD: is 0":      func(s *String) { s.HoleSections[0].BottomMD = 0 },
		"HoleSections[0].Friction: is -":      func(s *String) { s.HoleSections[0].Friction = -1e-9 },
		"HoleSections[1].Friction: is 1":      func(s *String) { s.HoleSections[1].Friction = math.Nextafter(1, 2) },
		"HoleSections[1].Hole":                func(s *String) { s.HoleSections[1].Hole = unit.Length(math.Nextafter(0.1, 0)) },
		"HoleSections[0].Hole: is +Inf":       func(s *String) { s.HoleSections[0].Hole = unit.Length(inf) },
		"HoleSections: end at":                func(s *String) { s.HoleSections[1].BottomMD = 419.999 },
	} {
		s := ok
		s.Sections, s.HoleSections = append([]PipeSection(nil), ok.Sections...), append([]HoleSection(nil), ok.HoleSections...)
		change(&s)
		_, err := s.Prepare()
		require.ErrorContains(t, err, text)
	}
}
