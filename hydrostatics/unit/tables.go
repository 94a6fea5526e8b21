package unit

//go:generate go run completion.example/internal/quantities

// tables lists every quantity's table, so that an error can say whose unit a
// misplaced symbol is.
func tables() []*table {
	return []*table{
		&lengthUnits,
		&areaUnits,
		&volumeUnits,
		&angleUnits,
		&curvatureUnits,
		&massUnits,
		&forceUnits,
		&weightPerLengthUnits,
		&pressureUnits,
		&densityUnits,
		&gradientUnits,
		&temperatureDifferenceUnits,
		&temperatureGradientUnits,
		&flowRateUnits,
		&velocityUnits,
		&viscosityUnits,
		&consistencyUnits,
		&shearRateUnits,
		&compressibilityUnits,
		&expansivityUnits,
		&torqueUnits,
		&powerUnits,
		&secondMomentUnits,
		&productivityIndexUnits,
		&massRateUnits,
		&permeabilityUnits,
		&flowCoefficientUnits,
		&specificHeatUnits,
		&conductivityUnits,
		&heatTransferUnits,
		&diffusivityUnits,
		&temperatureUnits,
	}
}
