package validation

// Suites lists every file of cases, floor by floor.
func Suites() []Suite {
	return []Suite{
		unitSuite,
		hydrostaticsSuite,
		surveySuite,
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
		packerSuite,
		valveSuite,
		productionSuite,
		sequenceSuite,
	}
}
