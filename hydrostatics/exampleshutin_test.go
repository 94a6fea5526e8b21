package hydrostatics_test

import (
	"fmt"
	"time"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
)

// A well that has been injected into for a day is shut in: after two days 6 % of
// the cold is left.
func ExampleAfterShutIn() {
	ground, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{TVD: 0, Temperature: unit.Celsius(15)}, {TVD: 3000, Temperature: unit.Celsius(105)}})
	if err != nil {
		fmt.Println(err)
		return
	}
	heat := hydrostatics.HeatExchange{Rate: 9 * unit.KilogramPerSecond, SpecificHeat: 4187 * unit.JoulePerKilogramKelvin, Radius: 38 * unit.Millimetre,
		Transfer: 45 * unit.WattPerSquareMetreKelvin, Hole: 108 * unit.Millimetre, Conductivity: 2.4 * unit.WattPerMetreKelvin,
		Diffusivity: 1e-6 * unit.SquareMetrePerSecond, Time: 24 * time.Hour}
	long, err := heat.RelaxationDistance()
	if err != nil {
		fmt.Println(err)
		return
	}
	flowing, err := hydrostatics.Flowing{Ground: ground, Inlet: unit.Celsius(10), BottomTVD: 3000, Relaxing: long}.Injecting(0.1 * unit.KelvinDifference)
	if err != nil {
		fmt.Println(err)
		return
	}
	left, err := heat.LeftAfterShutIn(48 * time.Hour)
	if err != nil {
		fmt.Println(err)
		return
	}
	after, err := hydrostatics.AfterShutIn(ground, flowing, left)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("left: %.3f\n", left)
	fmt.Printf("at 3,000 m: %.1f degC flowing, %.1f degC after two days\n", flowing.At(3000).Celsius(), after.At(3000).Celsius())
	// Output:
	// left: 0.063
	// at 3,000 m: 27.9 degC flowing, 100.2 degC after two days
}
