package validation

// Suites lists every file of cases, floor by floor.
func Suites() []Suite {
	return []Suite{
		unitSuite,
		hydrostaticsSuite,
		surveySuite,
		flowingSuite,
		tubularRatingsSuite,
		tubularCollapseSuite,
		tubularDimensionsSuite,
		tubularStressSuite,
		tubularStretchSuite,
		tubularExpansionSuite,
		movementSuite,
		tubularLoadsSuite,
		dragSuite,
		flowFrictionSuite,
		flowLaminarSuite,
		flowWorkedSuite,
		flowVolumesSuite,
		confinedSuite,
		fluidWaterSuite,
		fluidSeawaterSuite,
		fluidSolutionSuite,
		fluidBrineSuite,
		fluidGasSuite,
		fluidOilSuite,
		controlFluidSuite,
		packerSuite,
		valveSuite,
		productionSuite,
		nozzleSuite,
		sequenceSuite,
	}
}
