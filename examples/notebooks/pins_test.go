package notebooks_test

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve"
)

// columns are the pressures at 9,000 ft with nothing applied at surface: 8.8
// lb/gal in the tubing against 9.5 lb/gal outside.
func columns() valve.Columns {
	return valve.Columns{
		Applied:  unit.Exactly(hydrostatics.Pressure(8.8*unit.PoundPerGallon, 9000*unit.Foot)),
		Opposing: unit.Exactly(hydrostatics.Pressure(9.5*unit.PoundPerGallon, 9000*unit.Foot)),
	}
}

func Example_pinBand() {
	pins := valve.Pins{Count: 6, Strength: 4500 * unit.PoundForce, Tolerance: 0.05}
	force, err := pins.Force()
	fmt.Println("parts at", force.Rounded(5), err)
	differential, err := pins.PressureOn(8 * unit.SquareInch)
	fmt.Println("on 8 in2 of piston:", differential.Rounded(5), err)
	hot := pins
	hot.TemperatureFactor = 0.92
	differential, err = hot.PressureOn(8 * unit.SquareInch)
	fmt.Println("at the temperature of the well:", differential.Rounded(5), err)
	// Output:
	// parts at 25650 lbf .. 27000 lbf .. 28350 lbf <nil>
	// on 8 in2 of piston: 3206.2 psi .. 3375 psi .. 3543.7 psi <nil>
	// at the temperature of the well: 2949.7 psi .. 3105 psi .. 3260.2 psi <nil>
}

func Example_howManyPins() {
	window := valve.ForceOn(unit.Band[unit.Pressure]{Least: 3000 * unit.PSI, Nominal: 3300 * unit.PSI, Greatest: 3600 * unit.PSI}, 8*unit.SquareInch)
	fits, err := valve.PinCounts([]valve.Pins{{Count: 10, Strength: 4500 * unit.PoundForce, Tolerance: 0.05}}, window)
	for _, f := range fits {
		fmt.Println(f.Pins.Count, "pins:", f.Force.Rounded(5), "margin", f.Margin().Rounded(3))
	}
	fmt.Println(err)
	_, err = valve.PinCounts([]valve.Pins{{Count: 10, Strength: 4500 * unit.PoundForce, Tolerance: 0.10}}, window)
	fmt.Println(err)
	// Output:
	// 6 pins: 25650 lbf .. 27000 lbf .. 28350 lbf margin 450 lbf
	// <nil>
	// valve: no pin count does it: window 24000 lbf to 28800 lbf; 6 pins of 4500 lbf part at 24300 lbf to 29700 lbf, 900 lbf too late; 6 pins would do with a tolerance of 6.67 %
}

func Example_settingWindow() {
	piston := valve.Demand{Name: "setting piston", Columns: columns(), Fire: true,
		Trigger: valve.Trigger{Threshold: unit.Within(3375*unit.PSI, 0.05)}}
	sleeve := valve.Demand{Name: "sleeve that must hold", Columns: columns(),
		Trigger: valve.Trigger{Threshold: unit.Within(4500*unit.PSI, 0.05)}}
	pump := valve.SurfaceRange{Greatest: 5000 * unit.PSI}
	w, err := valve.Window(pump, []valve.Demand{piston, sleeve})
	fmt.Println("from", w.Least.Rounded(5), "to less than", w.Greatest.Rounded(5), err)
	sleeve.Trigger.Threshold = unit.Within(3700*unit.PSI, 0.05)
	_, err = valve.Window(pump, []valve.Demand{piston, sleeve})
	fmt.Println(err)
	// Output:
	// from 3871 psi to less than 4602.3 psi <nil>
	// valve: no surface pressure satisfies all: setting piston needs at least 3871 psi, sleeve that must hold needs less than 3842 psi; short by 28.75 psi
}

func Example_unknownDevice() {
	trigger := valve.Trigger{Threshold: unit.Within(3375*unit.PSI, 0.05)}
	for _, reached := range []unit.Pressure{3000 * unit.PSI, 3300 * unit.PSI, 3600 * unit.PSI} {
		o := trigger.Ramp(valve.TriggerState{}, 0, reached)
		fmt.Println("after", reached, "across it:", o.Verdict, "-", trigger.Condition(o.State))
	}
	// Output:
	// after 3000 psi across it: cannot fire - armed
	// after 3300 psi across it: may fire - unknown
	// after 3600 psi across it: must fire - fired
}
