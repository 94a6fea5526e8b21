package notebooks_test

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

func Example_mudWeight() {
	mud := 13.5 * unit.PoundPerGallon
	depth := 12000 * unit.Foot
	exact := hydrostatics.Pressure(mud, depth)
	field := unit.Pressure(0.052*mud.In(unit.PoundPerGallon)*depth.In(unit.Foot)) * unit.PSI
	fmt.Println("exact:", exact.Rounded(5))
	fmt.Println("with 0.052:", field.Rounded(5))
	fmt.Printf("the short cut is %.3f %% high, here %s\n", 100*(float64(field/exact)-1), (field - exact).Rounded(3))
	// Output:
	// exact: 8415.6 psi
	// with 0.052: 8424 psi
	// the short cut is 0.100 % high, here 8.42 psi
}

func Example_verticalDepth() {
	path, err := hydrostatics.NewPath([]hydrostatics.Station{
		{MD: 3000 * unit.Foot},
		{MD: 6000 * unit.Foot, Inclination: 60 * unit.Degree},
		{MD: 14000 * unit.Foot, Inclination: 60 * unit.Degree},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	tvd, err := path.TVD(12000 * unit.Foot)
	fmt.Println("the device at 12,000 ft measured stands at", tvd.Rounded(5), err)
	brine := 9.5 * unit.PoundPerGallon
	fmt.Println("right:", hydrostatics.Pressure(brine, tvd).Rounded(5))
	fmt.Println("with measured depth:", hydrostatics.Pressure(brine, 12000*unit.Foot).Rounded(5))
	// Output:
	// the device at 12,000 ft measured stands at 8481 ft <nil>
	// right: 4185.4 psi
	// with measured depth: 5922.1 psi
}

func Example_twoColumns() {
	depth := 9000 * unit.Foot
	tubing := hydrostatics.Pressure(9.9*unit.PoundPerGallon, depth)
	annulus := hydrostatics.Pressure(8.8*unit.PoundPerGallon, depth)
	fmt.Println("differential with nothing applied:", (tubing - annulus).Rounded(4))
	wanted := 3375 * unit.PSI
	fmt.Println("surface pressure for 3375 psi across the device:", (wanted - (tubing - annulus)).Rounded(5))
	fmt.Println("5 % of it:", (wanted * 0.05).Rounded(4))
	// Output:
	// differential with nothing applied: 514.3 psi
	// surface pressure for 3375 psi across the device: 2860.7 psi
	// 5 % of it: 168.8 psi
}

func Example_halfDisplaced() {
	column, err := hydrostatics.NewColumn([]hydrostatics.Layer{
		{Fluid: hydrostatics.Incompressible(7.0 * unit.PoundPerGallon), BottomTVD: 4000 * unit.Foot},
		{Fluid: hydrostatics.Incompressible(9.9 * unit.PoundPerGallon), TopTVD: 4000 * unit.Foot, BottomTVD: 9000 * unit.Foot},
	}, nil, hydrostatics.Reference{Pressure: 250 * unit.PSI})
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := column.At(9000 * unit.Foot)
	fmt.Println("at the device:", p.Rounded(5), err)
	depth, err := column.Depth(2000 * unit.PSI)
	fmt.Println("2000 psi is reached at", depth.Rounded(5), err)
	_, err = column.At(9500 * unit.Foot)
	fmt.Println(err)
	// Output:
	// at the device: 4276 psi <nil>
	// 2000 psi is reached at 4574.5 ft <nil>
	// hydrostatics: depth: is 9500 ft; must be from 0 ft to 9000 ft: outside the column
}
