package tubular_test

import (
	"completion.example/hydrostatics"
	"errors"
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/tubular"
	"github.com/stretchr/testify/require"
)

// hung returns the stretch of a string that must be valid.
func hung(t *testing.T, h tubular.Hanging) tubular.HangingStretch {
	t.Helper()
	s, err := h.Stretch()
	require.NoError(t, err)
	workingtest.Check(t, s.Steps())
	return s
}

func TestHangingByTheFieldsFormula(t *testing.T) {
	// API RP 7G: e = L² (65.44 - 1.44 W) / 9.625e7, in inches, feet, lb/gal; it has
	// steel of 65.44 lb/gal and a Poisson's ratio of 0.28. Formula from memory.
	p := bore(5, 4.276)
	p.Material.Poisson, p.Material.Density = 0.28, 65.44*unit.PoundPerGallon
	for _, W := range []float64{0, 8.33, 10, 16} {
		const L = 10_000.0
		s := hung(t, tubular.Hanging{Sections: []tubular.HangingSection{{Pipe: p, Length: L * unit.Foot}}, Fluid: unit.Density(W) * unit.PoundPerGallon})
		near(t, L*L*(65.44-1.44*W)/9.625e7, s.Total().In(unit.Inch), 2e-4)
	}
}

// TestHangingNodeByNode adds up the strain of thin slices with Lamé's stresses,
// another way to the same stretch.
func TestHangingNodeByNode(t *testing.T) {
	h := tubular.Hanging{
		Sections: []tubular.HangingSection{
			{Pipe: bore(4.5, 3.958), Length: 3000 * unit.Foot, Warming: 20 * unit.FahrenheitDifference},
			{Pipe: bore(2.875, 2.441), Length: 4000 * unit.Foot, Warming: 60 * unit.FahrenheitDifference},
			{Pipe: bore(3.5, 2.992), Length: 1000 * unit.Foot, Warming: 90 * unit.FahrenheitDifference},
		},
		Fluid: 10 * unit.PoundPerGallon,
		Pull:  5 * unit.Kilopound,
	}
	const g = 9.80665
	ρ := float64(h.Fluid)
	depth := 0.0
	for _, s := range h.Sections {
		depth += float64(s.Length)
	}
	F := float64(h.Pull) // real force just below the slice
	z, below, total := depth, 0.0, 0.0
	for i := len(h.Sections) - 1; i >= 0; i-- {
		s := h.Sections[i]
		As := float64(s.Pipe.SteelArea())
		F -= ρ * g * z * (As - below)
		below = As
		const n = 400
		dz := float64(s.Length) / n
		for range n {
			mid := z - dz/2
			pressure := unit.Pressure(ρ * g * mid)
			σ := s.Pipe.Stresses(tubular.Load{Axial: unit.Force(F + float64(s.Pipe.WeightInAir())*dz/2), Inside: pressure, Outside: pressure}).Inner
			m := s.Pipe.Material
			total += dz * ((float64(σ.Axial)-m.Poisson*float64(σ.Radial+σ.Hoop))/float64(m.Young) + float64(m.Expansion)*float64(s.Warming))
			F += float64(s.Pipe.WeightInAir()) * dz
			z -= dz
		}
	}
	near(t, total, float64(hung(t, h).Total()), 1e-10)
}

func TestHangingSigns(t *testing.T) {
	p := bore(3.5, 2.992)
	one := []tubular.HangingSection{{Pipe: p, Length: 5000 * unit.Foot, Warming: 50 * unit.FahrenheitDifference}}
	s := hung(t, tubular.Hanging{Sections: one, Fluid: 9 * unit.PoundPerGallon, Pull: -2 * unit.Kilopound})
	require.Positive(t, float64(s.Weight))
	require.Negative(t, float64(s.Pressure), "pressure on the end shortens")
	require.Positive(t, float64(s.Ballooning), "a squeezed wall lengthens")
	require.Positive(t, float64(s.Thermal), "warming lengthens")
	require.Negative(t, float64(s.Pull), "weight set down shortens")

	// Cutting a section in two changes nothing.
	two := []tubular.HangingSection{{Pipe: p, Length: 2000 * unit.Foot, Warming: 50 * unit.FahrenheitDifference}, {Pipe: p, Length: 3000 * unit.Foot, Warming: 50 * unit.FahrenheitDifference}}
	near(t, float64(s.Total()), float64(hung(t, tubular.Hanging{Sections: two, Fluid: 9 * unit.PoundPerGallon, Pull: -2 * unit.Kilopound}).Total()), 1e-12)
}

func TestHangingFaults(t *testing.T) {
	_, err := tubular.Hanging{}.Stretch()
	require.ErrorContains(t, err, "Sections: is empty")
	_, err = tubular.Hanging{Sections: []tubular.HangingSection{{Pipe: bore(3, 3), Warming: unit.TemperatureDifference(math.NaN())}}, Fluid: -1, Pull: unit.Force(math.NaN())}.Stretch()
	for _, field := range []string{"Sections[0]", "Pipe.ID", "Length: is 0 ft", "Warming", "tubular: Fluid: is", "tubular: Pull: is"} {
		require.ErrorContains(t, err, field)
	}
}

func TestPullAndStretchAreInverse(t *testing.T) {
	p := bore(3.5, 2.992)
	e := p.Stretch(10*unit.Kilopound, 9000*unit.Foot)
	// By hand: 10000 · 108000/(30e6 · 2.5902) = 13.90 in.
	require.InDelta(t, 13.90, e.In(unit.Inch), 0.005)
	near(t, 10, p.PullFor(e, 9000*unit.Foot).In(unit.Kilopound), 1e-12)
	near(t, 9000, p.FreeLength(e, 10*unit.Kilopound).In(unit.Foot), 1e-12)
}

func TestFreePoint(t *testing.T) {
	sections := []tubular.HangingSection{
		{Pipe: bore(4.5, 3.958), Length: 3000 * unit.Foot},
		{Pipe: bore(3.5, 2.992), Length: 4000 * unit.Foot},
		{Pipe: bore(2.875, 2.441), Length: 2000 * unit.Foot},
	}
	const pull = 20 * unit.Kilopound
	for depth := 100.0; depth <= 9000; depth += 100 {
		e, left := unit.Length(0), unit.Length(depth)*unit.Foot
		want := 0
		for i, s := range sections {
			part := min(left, s.Length)
			if part <= 0 {
				break
			}
			e += s.Pipe.Stretch(pull, part)
			left -= part
			want = i
		}
		d, err := tubular.FreePoint{Sections: sections, Stretch: e, Pull: pull}.Find()
		require.NoError(t, err, depth)
		near(t, depth, d.Depth.In(unit.Foot), 1e-9)
		if math.Mod(depth, 1000) != 0 {
			require.Equal(t, want, d.Section)
		}
		workingtest.Check(t, d.Steps())
	}
	F, err := tubular.PullToStretch(sections, sections[0].Pipe.Stretch(pull, sections[0].Length)+
		sections[1].Pipe.Stretch(pull, sections[1].Length)+sections[2].Pipe.Stretch(pull, sections[2].Length))
	require.NoError(t, err)
	near(t, float64(pull), float64(F), 1e-12)

	_, err = tubular.FreePoint{Sections: sections, Stretch: 100 * unit.Inch, Pull: pull}.Find()
	var free *tubular.FreeError
	require.True(t, errors.As(err, &free))
	require.Less(t, free.Greatest, free.Stretch)
	_, err = tubular.FreePoint{}.Find()
	for _, field := range []string{"Sections", "tubular: Stretch: is", "tubular: Pull: is"} {
		require.ErrorContains(t, err, field)
	}
	_, err = tubular.PullToStretch(nil, unit.Length(math.NaN()))
	require.ErrorContains(t, err, "Sections")
	require.ErrorContains(t, err, "Stretch")
}

func FuzzFreePoint(f *testing.F) {
	f.Add(3.5, 2.992, 5000.0, 12.0, 20000.0)
	f.Add(1e-300, 1e-301, 1e300, 1e-300, 1e300)
	f.Fuzz(func(t *testing.T, od, id, length, stretch, pull float64) {
		d, err := tubular.FreePoint{
			Sections: []tubular.HangingSection{{Pipe: bore(od, id), Length: unit.Length(length)}, {Pipe: bore(3.5, 2.992), Length: 1000}},
			Stretch:  unit.Length(stretch), Pull: unit.Force(pull),
		}.Find()
		if err == nil && !(float64(d.Depth) >= 0 && !math.IsInf(float64(d.Depth), 0)) {
			t.Errorf("depth %v without an error", d.Depth)
		}
	})
}

func TestExpansion(t *testing.T) {
	// The table itself is held by internal/validation.
	steel := tubular.CarbonSteel()
	a, b := unit.Fahrenheit(90), unit.Fahrenheit(260)
	there, err := steel.Strain(a, b)
	require.NoError(t, err)
	back, err := steel.Strain(b, a)
	require.NoError(t, err)
	require.Equal(t, there, -back)
	mean, err := steel.Mean(a, b)
	require.NoError(t, err)
	near(t, there, float64(mean)*float64(b.Sub(a)), 1e-14)
	at, err := steel.Mean(unit.Fahrenheit(175), unit.Fahrenheit(175))
	require.NoError(t, err)
	require.InDelta(t, 6.8e-6, at.In(unit.PerFahrenheit), 1e-15, "half way between two rows")
	for _, f := range []float64{70, 700} {
		_, err = steel.Strain(unit.Fahrenheit(f), unit.Fahrenheit(70))
		require.NoError(t, err, "ends belong to the table")
	}
	for _, bad := range []unit.Temperature{unit.Fahrenheit(69), unit.Fahrenheit(701), {}, unit.Kelvin(math.NaN())} {
		_, err = steel.Strain(bad, b)
		require.ErrorContains(t, err, "must be from 70 degF to 700 degF")
		_, err = steel.Mean(bad, b)
		require.Error(t, err)
		_, err = steel.Mean(bad, bad)
		require.Error(t, err)
	}
	_, err = tubular.Expansion{}.Strain(a, b)
	require.ErrorContains(t, err, "zero value")
}

func ExampleFreePoint_Find() {
	// Lapeyrouse: 3-1/2 in tubing stretches 20 in under 25,000 lbf; 5,180 ft are free.
	tubing := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Material: tubular.Steel()}
	d, err := tubular.FreePoint{
		Sections: []tubular.HangingSection{{Pipe: tubing, Length: 9000 * unit.Foot}},
		Stretch:  20 * unit.Inch,
		Pull:     25_000 * unit.PoundForce,
	}.Find()
	fmt.Println(d.Depth.Rounded(4), err)
	// Output: 5180 ft <nil>
}

func ExampleHanging_Stretch() {
	// 10,000 ft of steel in air: 5.67 ft.
	tubing := tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Material: tubular.Steel()}
	s, err := tubular.Hanging{Sections: []tubular.HangingSection{{Pipe: tubing, Length: 10_000 * unit.Foot}}}.Stretch()
	fmt.Printf("%.2f ft %v\n", s.Total().In(unit.Foot), err)
	// Output: 5.67 ft <nil>
}

func ExampleExpansion_Mean() {
	// Table TE-1 prints 6.9e-6 for the mean from 70 to 300 °F.
	mean, err := tubular.CarbonSteel().Mean(unit.Fahrenheit(70), unit.Fahrenheit(300))
	fmt.Printf("%.1e 1/degF %v\n", mean.In(unit.PerFahrenheit), err)
	// Output: 6.8e-06 1/degF <nil>
}

// Along a straight incline of θ the weight pulls by its cosine, and pressure stands by the
// vertical depth: by hand of the vertical string's closed form,
// g L² cosθ (ρs - 2 (1 - ν) ρ) / (2 E). A vertical path is the vertical string.
func TestHangingAlongAPath(t *testing.T) {
	p := bore(3.5, 2.992)
	sections := []tubular.HangingSection{{Pipe: p, Length: 9000 * unit.Foot}}
	const fluid = 9.5 * unit.PoundPerGallon
	for _, degrees := range []float64{0, 30, 60, 80} {
		at := unit.Angle(degrees) * unit.Degree
		path, err := hydrostatics.NewPath([]hydrostatics.Station{{Inclination: at}, {MD: 9000 * unit.Foot, Inclination: at}})
		require.NoError(t, err)
		s := hung(t, tubular.Hanging{Path: path, Sections: sections, Fluid: fluid})
		L, E, ν := float64(9000*unit.Foot), float64(p.Material.Young), p.Material.Poisson
		want := 9.80665 * L * L * math.Cos(float64(at)) * (float64(p.Material.Density) - 2*(1-ν)*float64(fluid)) / (2 * E)
		require.InEpsilon(t, want, float64(s.Total()), 1e-9)
	}
}

// Node by node: the force at each point is what hangs below it, by its height, and the
// pressure on the end and the shoulder.
func TestHangingAlongABend(t *testing.T) {
	path, err := hydrostatics.NewPath([]hydrostatics.Station{{}, {MD: 800 * unit.Metre}, {MD: 1400 * unit.Metre, Inclination: 70 * unit.Degree, Azimuth: 75 * unit.Degree}, {MD: 3000 * unit.Metre, Inclination: 70 * unit.Degree, Azimuth: 75 * unit.Degree}})
	require.NoError(t, err)
	h := tubular.Hanging{Path: path, Fluid: 10 * unit.PoundPerGallon, Pull: 3 * unit.Kilopound,
		Sections: []tubular.HangingSection{{Pipe: bore(4.5, 3.958), Length: 1000 * unit.Metre}, {Pipe: bore(3.5, 2.992), Length: 1800 * unit.Metre}}}
	tvd := func(md float64) float64 {
		z, err := path.TVD(unit.Length(md))
		require.NoError(t, err)
		return float64(z)
	}
	const g, n = 9.80665, 4000
	ρ, F, below, total, md := float64(h.Fluid), float64(h.Pull), 0.0, 0.0, 2800.0
	for i := 1; i >= 0; i-- {
		s := h.Sections[i]
		As, w := float64(s.Pipe.SteelArea()), float64(s.Pipe.WeightInAir())
		F -= ρ * g * tvd(md) * (As - below)
		below = As
		ds := float64(s.Length) / n
		for range n {
			F += w * (tvd(md) - tvd(md-ds/2))
			total += ds * (F/As + 2*s.Pipe.Material.Poisson*ρ*g*tvd(md-ds/2)) / float64(s.Pipe.Material.Young)
			F += w * (tvd(md-ds/2) - tvd(md-ds))
			md -= ds
			md = max(md, 0)
		}
	}
	require.InEpsilon(t, total, float64(hung(t, h).Total()), 1e-6)

	h.Sections[1].Length = 2500 * unit.Metre
	_, err = h.Stretch()
	require.ErrorContains(t, err, "outside the well path")
}
