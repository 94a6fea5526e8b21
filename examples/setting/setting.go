// Setting tells what sets a hydraulic packer, what else feels it, and what the
// string keeps.
package main

import (
	"completion.example/examples/internal/calculators/setting"
	"completion.example/internal/calculator"
)

func main() { calculator.Main(setting.Command) }
