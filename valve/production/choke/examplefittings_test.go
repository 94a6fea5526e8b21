package choke_test

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production/choke"
)

// A trim of 100 mm between pipes of 200 mm: what the reducers take.
func ExampleTrim_PipingFactor() {
	t := choke.Trim{Coefficient: 200 * unit.Kv, Bore: 100 * unit.Millimetre, Upstream: 200 * unit.Millimetre, Downstream: 200 * unit.Millimetre, Recovery: 0.9, GasRatio: 0.7}
	fmt.Printf("FP %.3f FLP %.3f xTP %.3f\n", t.PipingFactor(), t.RecoveryWithFittings(), t.GasRatioWithFittings())
	// Output: FP 0.909 FLP 0.806 xTP 0.713
}

func ExampleTrim_ReynoldsFactor() {
	t := choke.Trim{Coefficient: 20 * unit.Kv, Bore: 50 * unit.Millimetre, Recovery: 0.9, Style: 0.46}
	for _, re := range []float64{1e4, 1000, 100, 1} {
		fmt.Printf("%g %.3f\n", re, t.ReynoldsFactor(re))
	}
	// Output:
	// 10000 1.000
	// 1000 0.860
	// 100 0.720
	// 1 0.144
}

func ExampleOrifice_Expansibility() {
	o := choke.Orifice{Pipe: 100 * unit.Millimetre, Bore: 50 * unit.Millimetre}
	fmt.Printf("%.4f\n", o.Expansibility(0.9, 1.3)) // 1 - 0.3706 (1 - 0.9^(1/1.3))
	// Output: 0.9711
}
