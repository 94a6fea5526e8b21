package tubular_test

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
)

// exampleTubing is 3-1/2 in 9.3 lb/ft of 80 ksi steel: wall 0.254 in.
func exampleTubing() tubular.Pipe {
	steel := tubular.Steel()
	steel.Yield, steel.Tensile = 80*unit.KSI, 95*unit.KSI
	return tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: steel}
}

func ExamplePipe_Slenderness() {
	fmt.Printf("%.2f\n", exampleTubing().Slenderness()) // 3.5/0.254
	// Output: 13.78
}

func ExamplePipe_SecondMoment() {
	p := exampleTubing()
	fmt.Println(p.SecondMoment().Rounded(4), p.PolarMoment().Rounded(4))
	// Output: 3.432 in4 6.865 in4
}

func ExamplePipe_Displacement() {
	p := exampleTubing()
	fmt.Printf("%.6f %.6f bbl/ft\n", p.Displacement().In(unit.BarrelPerFoot), p.ClosedDisplacement().In(unit.BarrelPerFoot))
	// Output: 0.003380 0.012076 bbl/ft
}

// The internal yield and body yield that API Bul 5C2 prints for this pipe, before
// rounding: 10,160 psi and 207,220 lbf.
func ExamplePipe_Barlow() {
	p := exampleTubing()
	fmt.Println(p.Barlow(0.875).Rounded(5), p.BodyYield().Rounded(6))
	// Output: 10160 psi 207215 lbf
}

func ExamplePipe_YieldOpenEnds() {
	p := exampleTubing()
	fmt.Println(p.YieldOpenEnds(0.875).Rounded(5), p.YieldClosedEnds(0.875).Rounded(5))
	// Output: 10056 psi 10987 psi
}

func ExamplePipe_EquivalentExternalPressure() {
	fmt.Println(exampleTubing().EquivalentExternalPressure(8000*unit.PSI, 2000*unit.PSI).Rounded(5)) // 8000 - 2000 (1 - 2/13.78)
	// Output: 6290.3 psi
}

func ExamplePipe_PullFor() {
	p := exampleTubing()
	pull := p.PullFor(24*unit.Inch, 9000*unit.Foot)
	fmt.Println(pull.Rounded(5), tubular.Elongation(pull, 9000*unit.Foot, p.SteelArea(), p.Material.Young).Rounded(4))
	// Output: 17268 lbf 2 ft
}

func ExampleMaterial_ShearModulus() {
	fmt.Println(tubular.Steel().ShearModulus().Rounded(6)) // 30e6/2.6
	// Output: 11538462 psi
}

func ExampleCollapseCurve_Pressure() {
	c, err := tubular.PrepareCollapse(80 * unit.KSI)
	fmt.Println(c.Pressure(exampleTubing().Slenderness()).Rounded(5), err) // API Bul 5C2: 10,540 psi
	// Output: 10535 psi <nil>
}

func ExampleHardeningExponent() {
	fmt.Printf("%.2f\n", tubular.HardeningExponent(80*unit.KSI)) // ISO/TR 10400 for L80, from memory: 0.10
	// Output: 0.10
}

func ExampleDerating_Factor() {
	k, err := tubular.UsualDerating().Factor(unit.Fahrenheit(300))
	fmt.Printf("%.3f %v\n", k, err)
	// Output: 0.931 <nil>
}

func ExampleExpansion_Strain() {
	e, err := tubular.CarbonSteel().Strain(unit.Fahrenheit(70), unit.Fahrenheit(300))
	fmt.Printf("%.5f %v\n", e, err)
	// Output: 0.00157 <nil>
}

func ExampleBody_StraightVonMises() {
	b, err := exampleTubing().Prepare()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(b.StraightVonMises(100*unit.Kilopound, 5000*unit.PSI, 4000*unit.PSI).Rounded(5))
	// Output: 40408 psi
}

// Collapse under tension, in a bend of 10 deg/100ft, cold and hot: the stretched
// side of the bend counts, and what is left of the yield strength.
func ExampleBody_UsageBent() {
	b, err := exampleTubing().Prepare()
	if err != nil {
		fmt.Println(err)
		return
	}
	hot := b.Derated(0.9)
	load := tubular.Load{Axial: 100 * unit.Kilopound, Outside: 5000 * unit.PSI, Curvature: 10 * unit.DegreePer100Feet}
	fmt.Printf("%.3f, hot %.3f\n", b.UsageBent(load, tubular.WithoutReserve()).Collapse, hot.UsageBent(load, tubular.WithoutReserve()).Collapse)
	// Output: 0.805, hot 1.012
}

// Collapse without and under 50 ksi of tension, by the older form.
func ExamplePipe_CollapseBiaxial() {
	p := exampleTubing()
	for _, stress := range []unit.Pressure{0, 50 * unit.KSI} {
		r, err := p.CollapseBiaxial(stress)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(stress, r.Pressure.Rounded(4), r.Regime)
	}
	// Output:
	// 0 psi 10535 psi plastic
	// 50000 psi 5690 psi yield
}

// Single figures of the literature, as factors of one's own.
func ExampleDesignFactors() {
	own := tubular.WithoutReserve()
	own.Name, own.Burst = "own", tubular.SuggestedTubingBurst
	burst := 10160 * unit.PSI
	fmt.Println("tubing may see", (burst / unit.Pressure(own.Burst)).Rounded(4))
	fmt.Println("while bullheading at most", (burst * tubular.BullheadBurstShare).Rounded(4))
	fmt.Println("C90 in sour service up to", (90 * unit.KSI * tubular.SourStressShare).Rounded(4))
	// Output:
	// tubing may see 8128 psi
	// while bullheading at most 8128 psi
	// C90 in sour service up to 72000 psi
}
