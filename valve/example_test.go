package valve_test

import (
	"fmt"
	"time"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve"
)

func psi(least, greatest float64) unit.Band[unit.Pressure] {
	return unit.Band[unit.Pressure]{
		Least:    unit.Pressure(least) * unit.PSI,
		Nominal:  unit.Pressure((least+greatest)/2) * unit.PSI,
		Greatest: unit.Pressure(greatest) * unit.PSI,
	}
}

// columns are 8.8 lb/gal in the tubing and 9.5 lb/gal outside, at 9,000 ft.
func columns() valve.Columns {
	return valve.Columns{
		Applied:  unit.Exactly(hydrostatics.Pressure(8.8*unit.PoundPerGallon, 9000*unit.Foot)),
		Opposing: unit.Exactly(hydrostatics.Pressure(9.5*unit.PoundPerGallon, 9000*unit.Foot)),
	}
}

func ExamplePins_Force() {
	pins := valve.Pins{Count: 8, Strength: 5000 * unit.PoundForce, Tolerance: 0.05, TemperatureFactor: 0.92}
	f, err := pins.Force()
	fmt.Println(f.Rounded(5), err)
	// Output: 34960 lbf .. 36800 lbf .. 38640 lbf <nil>
}

func ExamplePins_LikelyForce() {
	pins := valve.Pins{Count: 16, Strength: 5000 * unit.PoundForce, Tolerance: 0.08, Correlation: valve.Independent}
	f, err := pins.LikelyForce()
	fmt.Println(f.Rounded(5), err) // ±8 %/√16
	// Output: 78400 lbf .. 80000 lbf .. 81600 lbf <nil>
}

func ExamplePins_In() {
	installed := valve.Pins{Count: 5, Strength: 4500 * unit.PoundForce, Tolerance: 0.05}
	fit, err := installed.In(valve.ForceOn(psi(3000, 3600), 8*unit.SquareInch))
	fmt.Println(fit.Fits(), fit.Holds.Rounded(4), fit.Parts.Rounded(4), err)
	// Output: false -2625 lbf 5175 lbf <nil>
}

func ExampleRow_Ramp() {
	row := valve.Row{
		{Threshold: psi(2850, 3150)},                         // unlocks
		{Threshold: psi(400, 600), Direction: valve.Falling}, // opens when bled
	}
	up := row.Ramp(valve.TriggerState{}, 0, 3300*unit.PSI)
	down := row.Ramp(up.State, 3300*unit.PSI, 500*unit.PSI)
	fmt.Println(up.Verdict, "-", down.Verdict, "-", row.Condition(down.State))
	// Output: cannot fire - may fire - unknown
}

func ExampleWindow() {
	w, err := valve.Window(valve.SurfaceRange{Greatest: 5000 * unit.PSI}, []valve.Demand{
		{Name: "setting piston", Trigger: valve.Trigger{Threshold: psi(2400, 2600)}, Columns: columns(), Fire: true},
		{Name: "isolation valve", Trigger: valve.Trigger{Threshold: psi(3200, 3600)}, Columns: columns()},
	})
	fmt.Println(w.Least.Rounded(4), "to less than", w.Greatest.Rounded(4), err)
	// Output: 2927 psi to less than 3527 psi <nil>
}

func ExampleIsolationValve_After() {
	v := valve.IsolationValve{Kind: valve.OpensAfterCycles, Unlock: psi(1900, 2100), Bleed: psi(300, 500), Cycles: 3}
	h, err := v.After([]valve.PressureEvent{
		{Name: "tubing test", Columns: columns(), To: 3000 * unit.PSI},
		{Name: "bled off", Columns: columns(), From: 3000 * unit.PSI},
		{Name: "packer setting", Columns: columns(), To: 2300 * unit.PSI},
		{Name: "bled off", Columns: columns(), From: 2300 * unit.PSI},
	})
	most, least := v.CyclesLeft(h)
	fmt.Println(h.Condition, "- cycles left:", least, "to", most, err)
	// Output: armed - cycles left: 1 to 2 <nil>
}

func ExampleIsolationValve_BleedOff() {
	v := valve.IsolationValve{Kind: valve.OpensAtBleedOff, Unlock: psi(2850, 3150), Bleed: psi(400, 600)}
	w, err := v.BleedOff(columns(), valve.SurfaceRange{Greatest: 5000 * unit.PSI})
	fmt.Println("bleed to", w.Greatest.Rounded(4), "or less", err)
	// Output: bleed to 727.3 psi or less <nil>
}

func ExampleIsolationValve_Hold() {
	v := valve.IsolationValve{Unlock: psi(2850, 3150)}
	w, err := v.Hold(columns(), valve.SurfaceRange{Greatest: 5000 * unit.PSI})
	fmt.Println("test with less than", w.Greatest.Rounded(4), err)
	// Output: test with less than 3177 psi <nil>
}

func ExampleSafetyValve_KeepOpen() {
	v := valve.SafetyValve{Opens: psi(1700, 1800), Closes: psi(900, 1000)}
	k, err := v.KeepOpen(4500*unit.PSI, valve.ControlState{
		TVD: 1500 * unit.Foot, Density: 7.26 * unit.PoundPerGallon, Backing: psi(1000, 3500),
	})
	fmt.Println("margin", k.FullyOpen.Rounded(4), "- tubing may rise to", k.Backing.Rounded(4), err)
	// Output: margin -234.3 psi - tubing may rise to 3266 psi <nil>
}

func ExampleGasLeak_RiseAt() {
	test := valve.GasLeak{Duration: 30 * time.Minute, Volume: 300 * unit.CubicFoot, Temperature: unit.Rankine(560), Standard: valve.StandardUS()}
	rise, err := test.RiseAt(valve.LeakLimitGas)
	fmt.Printf("p/Z may rise by %.2f psi %v\n", rise.In(unit.PSI), err)
	// Output: p/Z may rise by 23.75 psi <nil>
}

func ExampleLiquidLeak() {
	q := valve.LiquidLeak(10*unit.Barrel, 3e-6*unit.PerPSI, 1000*unit.PSI, time.Hour)
	fmt.Printf("%.1f cm3/min of %.0f allowed\n", q.In(unit.CubicCentimetrePerMinute), valve.LeakLimitLiquid.In(unit.CubicCentimetrePerMinute))
	// Output: 79.5 cm3/min of 400 allowed
}

// What the regulation wants of a subsurface safety valve in the Gulf of Mexico.
func ExampleSafetyValve_Pressures_vented() {
	v := valve.SafetyValve{Opens: psi(1700, 1800), Closes: psi(900, 1000)}
	p, err := v.Pressures(valve.ControlState{TVD: 1500 * unit.Foot, Density: 7.26 * unit.PoundPerGallon, Backing: psi(1000, 3500)})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("closes for certain when vented:", p.FailSafe())
	fmt.Println("surface valve within", valve.SurfaceClosingTime, "and this one within", valve.ClosingTime, "more, set", valve.DepthBelowMudline, "or more below the mudline")
	// Output:
	// closes for certain when vented: true
	// surface valve within 45s and this one within 2m0s more, set 100 ft or more below the mudline
}
