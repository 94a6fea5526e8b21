package valve_test

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
)

func ExampleColumns_Differential() {
	fmt.Println(columns().Differential().Rounded(4)) // (8.8 - 9.5) lb/gal along 9,000 ft
	// Output: -327.3 psi
}

// What a device that is to fire between 2,850 and 3,150 psi asks of the pressure
// at surface.
func ExampleDemand_Bound() {
	b := valve.Demand{Name: "packer", Trigger: valve.Trigger{Threshold: psi(2850, 3150)}, Columns: columns(), Fire: true}.Bound()
	fmt.Println("at least", b.Surface.Rounded(5), "upper limit:", b.Upper)
	// Output: at least 3477.3 psi upper limit: false
}

func ExampleSurfaceWindow_Width() {
	hold := valve.Demand{Name: "sleeve", Trigger: valve.Trigger{Threshold: psi(4000, 4400)}, Columns: columns()}
	fire := valve.Demand{Name: "packer", Trigger: valve.Trigger{Threshold: psi(2850, 3150)}, Columns: columns(), Fire: true}
	w, err := valve.Window(valve.SurfaceRange{Greatest: 5000 * unit.PSI}, []valve.Demand{fire, hold})
	fmt.Println(w.Width().Rounded(5), err) // 4,000 - 3,150
	// Output: 850 psi <nil>
}

func ExampleTrigger_MarginOf() {
	m := valve.Trigger{Threshold: psi(2850, 3150)}.MarginOf(3000 * unit.PSI)
	fmt.Println(m.Near.Rounded(4), m.Far.Rounded(4)) // past the earliest, short of the latest
	// Output: 150 psi -150 psi
}

// The differential is known to ±100 psi only.
func ExampleRow_RampWithin() {
	row := valve.Row{{Threshold: psi(2850, 3150)}}
	off := unit.Band[unit.Pressure]{Least: -100 * unit.PSI, Greatest: 100 * unit.PSI}
	for _, to := range []unit.Pressure{2700 * unit.PSI, 3200 * unit.PSI, 3300 * unit.PSI} {
		fmt.Println(to, row.RampWithin(valve.TriggerState{}, 0, to, off).Verdict)
	}
	// Output:
	// 2700 psi cannot fire
	// 3200 psi may fire
	// 3300 psi must fire
}

// API RP 14B, E.1.7 prints 35.37 °R/psi.
func ExampleStandardState_Constant() {
	s := valve.StandardUS()
	fmt.Printf("%.2f degR/psi\n", s.Constant()*1.8*float64(unit.PSI))
	// Output: 35.37 degR/psi
}
