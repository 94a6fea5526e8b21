package everyslot

import (
	"time"

	"completion.example/fluid"
	"completion.example/fluid/confined"
	"completion.example/fluid/flow"
	"completion.example/fluid/gasflow"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/tubular/catalogue"
	"completion.example/tubular/drag"
	"completion.example/tubular/movement"
	"completion.example/valve"
	"completion.example/valve/controlline"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
	"completion.example/valve/sleeve"
)

// An invented well: 3-1/2 in tubing in 9-5/8 in casing, 3,000 m.
const depth = 3000 * unit.Metre

var (
	pipe    = tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: tubular.Steel().WithStrength(80*unit.KSI, 95*unit.KSI)}
	brine   = hydrostatics.SlightlyCompressible{Reference: 1150, Temperature: unit.Celsius(20), Compressibility: 4e-10, Expansivity: 4e-4}
	path    = must(hydrostatics.NewPath([]hydrostatics.Station{{}, {MD: 1000}, {MD: 1500, Inclination: 0.6, Azimuth: 1}, {MD: depth, Inclination: 0.6, Azimuth: 1}}))
	ground  = must(hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{Temperature: unit.Celsius(15)}, {TVD: 2 * depth, Temperature: unit.Celsius(180)}}))
	layers  = []hydrostatics.Layer{{Fluid: brine, BottomTVD: 1200}, {Fluid: hydrostatics.Incompressible(1300), TopTVD: 1200, BottomTVD: depth}}
	column  = must(hydrostatics.NewColumn(layers, ground, hydrostatics.Reference{Pressure: 1e6}))
	slack   = unit.Within(3000*unit.PSI, 0.05)
	columns = valve.Columns{Applied: unit.Exactly(4500 * unit.PSI), Opposing: unit.Exactly(4300 * unit.PSI)}
	line    = controlline.Line{OD: 0.25 * unit.Inch, Wall: 0.049 * unit.Inch, Length: depth, TVD: depth, Yield: 30 * unit.KSI, Young: 28e6 * unit.PSI, Poisson: 0.3, WallTolerance: 0.1}
	oil     = controlline.LineFluid{Density: 870, Viscosity: 10 * unit.Centipoise, Compressibility: 5.5e-10, Expansivity: 7e-4}
	casing  = confined.Tube{OD: 9.625 * unit.Inch, ID: 8.681 * unit.Inch, Young: 30e6 * unit.PSI, Poisson: 0.28, Expansion: 1.2e-5}
	tube    = confined.Tube{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Young: 30e6 * unit.PSI, Poisson: 0.28, Expansion: 1.2e-5}
	table   = choke.Table{{Name: "shut"}, {Name: "half", Travel: 0.5, Coefficient: 1 * unit.Cv}, {Name: "open", Travel: 1, Coefficient: 4 * unit.Cv}}
	mud     = flow.PumpedFluid{Name: "mud", Density: 1300, Rheology: flow.Rheology{Yield: 4, Consistency: 0.3, Index: 0.7}}
	annulus = flow.ConduitSection{Name: "annulus", Conduit: flow.Conduit{Outer: 8.681 * unit.Inch, Inner: 3.5 * unit.Inch}, Length: depth, BottomTVD: depth}
	circuit = flow.Well{
		Pipe:    []flow.ConduitSection{{Name: "tubing", Conduit: flow.Conduit{Outer: 2.992 * unit.Inch, Roughness: 2e-5}, Length: depth, BottomTVD: depth}},
		Annulus: []flow.ConduitSection{annulus},
		Exit:    flow.Orifices{Count: 3, Diameter: 0.02, Discharge: 0.95},
	}
	leg     = hydrostatics.Leg{Sections: []hydrostatics.LegSection{{BottomMD: 2900, Area: 0.0045}}, Fluids: []hydrostatics.Stretch{{BottomMD: 2900, Density: 1200}}}
	ring    = hydrostatics.Leg{Sections: []hydrostatics.LegSection{{BottomMD: 2900, Area: 0.032}}, Fluids: []hydrostatics.Stretch{{BottomMD: 2900, Density: 1100}}}
	utube   = hydrostatics.UTube{Path: path, PortMD: 2900, Tubing: leg, Annulus: ring}
	hung    = movement.StringSection{Pipe: pipe, BottomMD: depth, Hole: 8.681 * unit.Inch, Joint: 200 * unit.Kilopound}
	seals   = movement.SealBore{Bore: 4 * unit.Inch, Restraint: movement.Limited, Up: 3}
	pull    = packer.Pull{Sections: []movement.StringSection{hung}, Path: path, Inside: at(1100), Outside: at(1150), Seal: 4 * unit.Inch, Drag: unit.Within(5000*unit.PoundForce, 0.2), Block: 10e3}
	heavy   = movement.WellFluids{InsideDensity: 1300, OutsideDensity: 1100, InsideSurface: 2e7, OutsideSurface: 2e6, Friction: 100}
	upright = movement.Vertical{Sections: []movement.StringSection{hung}, Seals: seals, Initial: movement.WellFluids{InsideDensity: 1100, OutsideDensity: 1100},
		Final: heavy, Warming: -20, SlackOff: 2e4}
	dragged = drag.String{Sections: []drag.PipeSection{{Pipe: pipe, Length: depth}}, BottomMD: depth, Path: path,
		HoleSections: []drag.HoleSection{{BottomMD: depth, Friction: 0.2, Hole: 8.681 * unit.Inch}}, Inside: 1100, Outside: 1100, Spacing: 50}
	state    = movement.WellProfiles{Inside: at(1200), Outside: at(1100), Temperature: ground.At}
	long     = movement.String{Sections: []movement.StringSection{hung}, Path: path, Seals: seals, Spacing: 100, Design: tubular.NorwegianShelf()}
	valveRow = valve.Row{{Threshold: slack}, {Threshold: unit.Within(500*unit.PSI, 0.1), Direction: valve.Falling}}
	record   = confined.Record{
		{Pressure: 3.5e7, Temperature: unit.Celsius(40)}, {At: 10 * time.Minute, Pressure: 3.49e7, Temperature: unit.Celsius(40)},
		{At: 30 * time.Minute, Pressure: 3.489e7, Temperature: unit.Celsius(40)}, {At: 45 * time.Minute, Pressure: 3.488e7, Temperature: unit.Celsius(40)},
	}
	slider = sleeve.Sleeve{Name: "sleeve", TVD: depth, OpenArea: 0.003, CloseArea: 0.003, Stroke: 0.1,
		Friction: unit.Within(4e3*unit.Newton, 0.1), Across: unit.Exactly(1e6 * unit.Pascal), PerDifferential: 1e-4, Inside: "tubing", Outside: "zone"}
	second = sleeve.Sleeve{Name: "upper", TVD: 2500, OpenArea: 0.003, CloseArea: 0.003, Stroke: 0.1, Friction: unit.Within(4e3*unit.Newton, 0.1), Inside: "tubing", Outside: "upper zone"}
	zone   = production.Zone{Name: "oil", TVD: depth, Inflow: inflow.LiquidDeliverability{Reservoir: 3e7, Index: 2e-9, Bubble: 1e7}, WaterCut: 0.2, Density: 850, VolumeFactor: 1.1, Chokes: table,
		Above: production.Interval{Density: 850, Loss: production.Loss{At: 0.005, Laminar: 1e4, Turbulent: 1e5}}}
	pumped = flow.Displacement{Well: circuit, InPipe: mud, InAnnulus: mud, Stages: []flow.Stage{{Liquid: flow.PumpedFluid{Name: "brine", Density: 1150, Rheology: flow.Newtonian(1e-3)}, Volume: 20, Rate: 0.01}}, Output: 0.02, Every: 5}
)

// What kills a well, and what flows from one of gas.
var (
	killed = flow.Kill{Well: circuit, InWell: mud, Liquid: mud, Rate: 0.005, Formation: 4e7, Margin: 1e6, WeakTVD: 2000, Fracture: 5e7,
		Influx: flow.Influx{Volume: 2, Fluid: fluid.Gas{Gravity: 0.65}, Surface: unit.Celsius(15), Bottom: unit.Celsius(90)}}
	pushed = hydrostatics.Bullhead{Formation: hydrostatics.Formation{Pressure: 3.5e7, TVD: depth}, Injection: 1e6, Fracture: 5e7, Sections: []hydrostatics.LegSection{{BottomMD: depth, Area: 0.0045}},
		Influx: brine, Kill: 1200, Friction: []unit.Gradient{200}, Temperature: ground}
	gassy = production.GasWell{Inflow: inflow.GasDeliverability{Reservoir: 2e7, OpenFlow: 20, Exponent: 0.8}, Choke: 3e-4, Discharge: 0.85, HeatRatio: 1.27, Line: 5e6, Standard: unit.Celsius(15),
		Tubing: gasflow.Tubing{Gas: fluid.Gas{Gravity: 0.65}, Wellhead: unit.Celsius(50), Bottom: unit.Celsius(90),
			Sections: []flow.ConduitSection{{Name: "tubing", Conduit: flow.Conduit{Outer: 0.076, Roughness: 2e-5}, Length: depth, BottomTVD: depth}}}}
)

// samples are arguments to begin with; of each type the first one counts.
func samples() []any {
	return []any{
		unit.Length(100), unit.Area(0.01), unit.Volume(1), unit.Angle(0.5), unit.Curvature(1e-3), unit.Mass(100), unit.Force(1e5), unit.Torque(1e3),
		unit.WeightPerLength(150), unit.Pressure(2e7), unit.Density(1100), unit.Gradient(1e4), unit.TemperatureDifference(20), unit.TemperatureGradient(0.03),
		unit.FlowRate(0.005), unit.Velocity(1), unit.Viscosity(1e-3), unit.Compressibility(4.5e-10), unit.Expansivity(4e-4), unit.ProductivityIndex(1e-9),
		unit.MassRate(5), unit.ShearRate(100), unit.Consistency(0.5), unit.Permeability(1e-13), unit.FlowCoefficient(1e-4), unit.SpecificHeat(4000),
		unit.Conductivity(2), unit.HeatTransfer(20), unit.Diffusivity(1e-6), unit.Kelvin(330), time.Hour, 0.3, 1, false, "x",
		unit.SecondMoment(1e-6),

		hydrostatics.Formation{Pressure: 3.5e7, TVD: depth}, hydrostatics.ShutIn{Pressure: 2e6, Density: 1200, TVD: depth}, layers, layers[0], []hydrostatics.MeasuredLayer{{Fluid: brine, BottomMD: 1200}, {Fluid: hydrostatics.Incompressible(1300), TopMD: 1200, BottomMD: depth}},
		hydrostatics.Reference{Pressure: 1e6}, column, brine, hydrostatics.Incompressible(1100), path, ground, []hydrostatics.TemperaturePoint{{Temperature: unit.Celsius(15)}, {TVD: depth, Temperature: unit.Celsius(90)}},
		hydrostatics.Cushion{Formation: hydrostatics.Formation{Pressure: 3.2e7, TVD: depth}, Underbalance: 3e6, Light: hydrostatics.Incompressible(850), Heavy: hydrostatics.Incompressible(1150), Temperature: ground},
		hydrostatics.HeatExchange{Rate: 5, SpecificHeat: 4000, Radius: 0.04, Transfer: 30, Hole: 0.12, Conductivity: 2.4, Diffusivity: 1e-6, Time: 1000 * time.Hour},
		hydrostatics.Flowing{Ground: ground, Inlet: unit.Celsius(95), BottomTVD: depth, Relaxing: 600}, leg, utube, hydrostatics.Slug{Mud: 1200, Pill: 1500, Capacity: 0.0045},
		hydrostatics.WeakPoint{Name: "shoe", TVD: 2000, Rating: 5e7, Share: 0.8, Outside: 1e7}, hydrostatics.Geothermal{Ground: unit.Celsius(15), Gradient: 0.03},
		[]hydrostatics.Station{{}, {MD: 1000}, {MD: 1500, Inclination: 0.6, Azimuth: 1}}, hydrostatics.Station{MD: 1500, Inclination: 0.6, Azimuth: 1}, []hydrostatics.LegSection{{BottomMD: depth, Area: 0.0045}},

		fluid.AverageGasColumn{Gravity: 0.7, Z: 0.9, Temperature: unit.Celsius(80), Height: depth}, fluid.Batch{Volume: 50, Density: 1200}, fluid.Brine{At70F: 1300, Expansion: 4e-4, Compression: 3e-10},
		fluid.SystemCaCl2, fluid.CalciumChloride, fluid.Constant{Value: 1100}, fluid.ControlFluid{Points: []fluid.ControlPoint{{Temperature: unit.Celsius(0), Density: 880, Viscosity: 0.03}, {Temperature: unit.Celsius(100), Density: 820, Viscosity: 0.004}}, Compression: 5e-10},
		fluid.Gas{Gravity: 0.7, CarbonDioxide: 0.02}, fluid.GasMixture{Methane: 0.9, Ethane: 0.06, Propane: 0.02, Nitrogen: 0.02}, fluid.Oil{Commodity: fluid.Crude, At60F: 850},
		fluid.Measured{Pressures: []unit.Pressure{0, 5e7}, Temperatures: []unit.Temperature{unit.Celsius(0), unit.Celsius(100)}, Densities: [][]unit.Density{{1100, 1080}, {1120, 1105}}},
		fluid.Seawater{Salinity: 0.035}, fluid.Solution{Salt: fluid.CalciumChloride, Fraction: 0.2, Compression: 3e-10},
		fluid.WellAverage{Wanted: 1200, Surface: unit.Celsius(15), Bottom: unit.Celsius(110), BottomPressure: 3.5e7},

		circuit, mud, annulus, killed, pushed, flow.Circulation{Well: circuit, Liquid: mud, Rate: 0.01}, flow.Conduit{Outer: 0.2, Inner: 0.09, Roughness: 1e-5},
		pumped, flow.Stream{Conduit: flow.Conduit{Outer: 0.2, Inner: 0.09}, Rheology: mud.Rheology, Density: 1300, Rate: 0.01}, flow.Orifices{Count: 3, Diameter: 0.02, Discharge: 0.95},
		flow.Pump{Cylinders: 3, Liner: 0.15, Stroke: 0.3, Efficiency: 0.95}, mud.Rheology, flow.Trip{Annulus: []flow.ConduitSection{annulus}, Liquid: mud, Speed: 0.5, Cling: 0.45, Peak: 1.5},
		[]flow.Reading{{Speed: 3, Dial: 8}, {Speed: 100, Dial: 21}, {Speed: 300, Dial: 34}, {Speed: 600, Dial: 53}}, flow.Reading{Speed: 300, Dial: 34},

		confined.PressureUp{Space: confined.Space{Outer: casing, Inner: &tube}, Fluid: fluid.Water{}, Volume: 50, To: 2e7, Temperature: unit.Celsius(50), Supply: unit.Celsius(20)},
		record,
		confined.PressureTest{Record: record,
			Criterion: confined.Criterion{Name: "mine", Hold: 30 * time.Minute, MostDecline: 0.1}, Target: 3.4e7},
		confined.LinearLiquid{Reference: 1150, Temperature: unit.Celsius(20), Compressibility: 4e-10, Expansivity: 4e-4}, casing, confined.Space{Outer: casing, Inner: &tube},
		confined.System{{Name: "annulus", Volume: 80, Fluid: 4e-10, Walls: 1e-10}},
		confined.Trapped{Space: confined.Space{Outer: casing, Inner: &tube}, Fills: []confined.Fill{{Name: "water", Fluid: fluid.Water{}, Volume: 40, From: unit.Celsius(30), To: unit.Celsius(60)}}, Pressure: 1e7, HeatOuter: 20, HeatInner: 40},
		[]confined.Fill{{Name: "water", Fluid: fluid.Water{}, Volume: 40, From: unit.Celsius(30), To: unit.Celsius(60)}},

		pipe, pipe.Material, tubular.HangingSection{Pipe: pipe, Length: depth, Warming: 20}, tubular.Hanging{Sections: []tubular.HangingSection{{Pipe: pipe, Length: depth}}, Fluid: 1100, Pull: 1e4},
		tubular.Load{Axial: 2e5, Inside: 4e7, Outside: 1e7, Curvature: 1e-3, Torque: 1000}, tubular.NorwegianShelf(), tubular.Outline{Factors: tubular.NorwegianShelf(), Points: 16, Backing: 1e7},
		tubular.FreePoint{Sections: []tubular.HangingSection{{Pipe: pipe, Length: depth}}, Stretch: 0.5, Pull: 1e5}, tubular.Rupture{Imperfection: 3e-4, BurstFactor: 1, Hardening: 0.1}, tubular.Derating{From: unit.Celsius(20), Rate: 5e-4},
		must(catalogue.Standard()), must(catalogue.FindGrade("L80")), must(catalogue.Standard()).Entries()[20], tally(), catalogue.Joints{OD: 3.5 * unit.Inch, Weight: 9.2 * unit.PoundPerFoot, Length: depth},
		dragged, must(dragged.Prepare()), drag.Pulled,
		movement.Confined{Pipe: pipe, Hole: 8.681 * unit.Inch, Weight: 120, Inclination: 0.5, Build: 1e-3}, movement.End{Bore: 4 * unit.Inch, OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Inside: 5e7, Outside: 3e7, Below: 5e7},
		movement.Helix{Pipe: pipe, Hole: 8.681 * unit.Inch, Compression: 1e5}, seals, hung, state, heavy, upright, long, must(long.Land(state, 0)),

		valve.FailSafeCase{Name: "filled", Control: 870, BackingSurface: 1e5}, valve.FailSafeColumns{Control: 870, Annulus: 1100}, valve.IsolationValve{Kind: valve.OpensAtBleedOff, Unlock: slack, Bleed: unit.Within(500*unit.PSI, 0.1)},
		valve.PressureEvent{Name: "test", Columns: columns, To: 1e7}, valve.GasLeak{Start: 1e7, End: 1.1e7, StartFactor: 0.9, EndFactor: 0.91, Duration: time.Hour, Volume: 5, Temperature: unit.Celsius(40), Standard: valve.StandardUS()},
		valve.Pins{Count: 6, Strength: 4500 * unit.PoundForce, Tolerance: 0.05, TemperatureFactor: 0.95}, valve.SafetyValve{Opens: unit.Within(1750*unit.PSI, 0.03), Closes: unit.Within(950*unit.PSI, 0.05)},
		valve.ControlState{TVD: 500, Density: 870, Backing: unit.Within(2000*unit.PSI, 0.5)}, valve.Trigger{Threshold: slack}, columns, valve.Demand{Name: "set", Trigger: valve.Trigger{Threshold: slack}, Columns: columns, Fire: true},
		valve.SurfaceRange{Greatest: 5000 * unit.PSI}, valveRow, valve.TriggerState{}, slack, unit.Within(4e5*unit.Newton, 0.1),

		line, oil, controlline.Outside{Top: 1e5, Bottom: 3e7}, controlline.Reading{Pumped: 1e-3, Returned: 9e-4, Uncertainty: 5e-5},
		controlline.Shift{Feed: line, Vent: line, Liquid: oil, Pump: 3000 * unit.PSI, Move: 600 * unit.PSI, Swept: 3e-4, Displaced: 3e-4}, unit.Within(1e5*unit.Pascal, 0.1),
		slider, sleeve.System{Sleeves: []sleeve.Sleeve{slider, second}, OpenLines: []controlline.Line{line, shorter}, CloseLine: line, Liquid: oil}, []sleeve.Position{sleeve.Open, sleeve.Closed},
		sleeve.Action{Move: []int{1}}, sleeve.Panel{Close: sleeve.Setting{}, Open: []sleeve.Setting{{}, {}}}, sleeve.Route{From: []sleeve.Position{sleeve.Open, sleeve.Closed}, To: []sleeve.Position{sleeve.Open, sleeve.Open}, Surface: valve.SurfaceRange{Greatest: 5000 * unit.PSI}},

		production.Straight{Index: 1e-9, Static: 3e7, Head: 1e6}, production.Well{Zones: []production.Zone{zone, upper}, Outflow: production.FixedPressure{Pressure: 2e7}}, zone, production.Tubing{Surface: 1e6, Height: depth, Density: 850, Loss: production.Loss{At: 0.005, Turbulent: 1e6}},
		production.OutflowTable{{Pressure: 1.5e7}, {Rate: 0.01, Pressure: 2e7}}, production.FixedRate{Rate: 0.003}, []float64{0.4, 0.6}, []int{2, 2},
		choke.UpstreamGas{Density: 150, HeatRatio: 1.3, Viscosity: 2e-5}, choke.UpstreamLiquid{Density: 850, VapourPressure: 1e5, CriticalPressure: 5e6, Viscosity: 2e-3}, choke.Orifice{Pipe: 0.1, Bore: 0.05},
		choke.Metered{Density: 850, Viscosity: 1e-3, Upstream: 1e6, Downstream: 9e5}, choke.Trim{Coefficient: 1e-4, Recovery: 0.9, GasRatio: 0.7, Style: 0.5, Bore: 0.05, Upstream: 0.08, Downstream: 0.1}, table,
		inflow.GasDeliverability{Reservoir: 2e7, OpenFlow: 20, Exponent: 0.8}, gassy, gassy.Tubing, inflow.Test{Flowing: 1.5e7, Rate: 5}, []inflow.Test{{Flowing: 1.8e7, Rate: 5}, {Flowing: 1.5e7, Rate: 9}}, inflow.Formation{Permeability: 1e-13, Thickness: 20, Viscosity: 1e-3, VolumeFactor: 1.2, Hole: 0.1, Boundary: 300, Skin: 2},
		inflow.LiquidDeliverability{Reservoir: 3e7, Index: 2e-9, Bubble: 1e7},

		packer.Case{Name: "squeeze", String: upright, Below: 5e7}, packer.PathCase{Name: "squeeze", String: long, Reference: state, State: state, Below: 4e7}, packer.Landing{Tagged: depth, Height: 2, HangerDepth: 10, HangerLength: 0.5, Joints: []unit.Length{9.5, 9.4, 9.6}, Above: 12, Pups: []unit.Length{1, 2, 3}},
		packer.LockIn{Pipe: pipe, Length: depth, Inside: 2e7, Outside: 1e6}, packer.Parted{Legs: utube, Open: true, Formation: 3.4e7, Margin: 1e6}, packer.Load{Differential: 1e7, Axial: 1e5}, pull,
		packer.Ratings{FromBelow: 5e7, FromAbove: 4e7, Tension: 7e5, Compression: 5e5, Up: 1.3e6, Down: 1.2e6, Area: 0.026}, packer.NotParted{Release: release(), Tried: 3e5, FreeMD: 1000, Clearance: 3, Intervals: []packer.CutInterval{{Name: "blank", TopMD: 500, BottomMD: 900}}, CutPull: 5e4},
		release(), packer.Setting{Stages: []packer.Stage{{Name: "set", Acts: slack}}, Columns: columns, Piston: 0.005, Kept: 0.8, Plug: packer.Plug{Columns: columns, Rating: 7e7}}, packer.Stage{Name: "set", Acts: slack},
		packer.SealPlan{Bore: packer.Receptacle{ShoulderMD: depth, TopMD: depth, BottomMD: depth + 8}, Seals: packer.SealStack{FirstMD: 1, LastMD: 6}, Cases: []packer.Travel{{Case: "squeeze", Movement: -1}, {Case: "produce", Movement: 0.5}}, Engaged: 1, Clearance: 0.3}, packer.Travel{Case: "squeeze", Movement: -1},
		packer.Stab{Down: 2e5, Up: 2.4e5, End: movement.End{Bore: 4 * unit.Inch, OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Inside: 3e7, Outside: 3e7, Below: 3e7}, Friction: unit.Within(5000*unit.Newton, 0.3), Latch: unit.Within(2e4*unit.Newton, 0.1)},
		packer.Seat{Casing: 8.535 * unit.Inch, Bore: 4 * unit.Inch}, packer.Unseating{Pull: pull, Trapped: unit.Within(1e6*unit.Pascal, 0.5), Reserve: 1e4},
		fluid.Methane{}, fluid.Nitrogen{}, fluid.Water{}, confined.Criterion{Name: "mine", Hold: 30 * time.Minute, MostDecline: 0.1}, packer.PinCase{Case: "squeeze", Load: 1e5}, packer.SealStack{FirstMD: 1, LastMD: 6},
		packer.Friction{Least: must(dragged.Prepare()), Nominal: must(dragged.Prepare()), Greatest: must(dragged.Prepare())}, tubular.Allowance{Inside: 1e-3, Outside: 1e-3}, production.FixedPressure{Pressure: 2e7},
		assembly,
		inHole,
		movement.PullLimits{Rig: 2e6, Parts: []movement.RatedPart{{Name: "joint", MD: 100, Rating: 1e6}}},
		fluid.ControlPoint{Temperature: unit.Celsius(0), Density: 880, Viscosity: 0.03}, production.GasAtChoke{Density: 0.8, Standard: unit.Celsius(15), Temperature: unit.Celsius(90), Z: 0.9, HeatRatio: 1.28, Ratio: 0.7},
		zone.Above, zone.Above.Loss,
		production.Limits{Most: 1000}, choke.Position{Name: "open", Coefficient: 1e-4}, sleeve.Signature{Storage: 1e-4, Swept: 3e-4}, packer.NoSpaceOutError{SpaceOut: packer.SpaceOut{Least: 2, Greatest: 1}},
	}
}

// byName are arguments of calls that the samples by type don't suit; a nil is left
// to them.
func byName() map[string][]any {
	return map[string][]any{
		"fluid/flow.Colebrook": {1e5, 1e-4}, "fluid/flow.Churchill": {1e5, 1e-4}, "fluid/flow.Haaland": {1e5, 1e-4}, "fluid/flow.SwameeJain": {1e5, 1e-4}, "fluid/flow.Chen": {1e5, 1e-4},
		"fluid/flow.Blasius": {1e4, 0.7}, "fluid/flow.Turbulent": {0.7, 1e4, 1e-4}, "fluid.ZFactor": {3.0, 1.6},
		"fluid.Adjust": {fluid.Batch{Volume: 50, Density: 1100}, 1200, 1500}, "fluid.Bridges": {fluid.SystemCaCl2, 1250}, "fluid.KrookBoyce": {fluid.SystemCaCl2, 1373}, "fluid.Crystallisation": {fluid.SodiumChloride, 0.1, 2e7},
		"fluid.Oil.Compressibility": {nil, 5e6, nil}, "fluid.Oil.Density": {nil, 5e6, nil}, "fluid.Oil.Expansivity": {nil, 5e6, nil}, "fluid.Oil.Viscosity": {nil, 0.0, nil}, "fluid.Oil.VolumeCorrection": {nil, 5e6, nil}, "fluid.Osif": {nil, 50, 360},
		"fluid.Seawater.Compressibility": {nil, nil, 290}, "fluid.Seawater.Density": {nil, nil, 290}, "fluid.Seawater.Expansivity": {nil, nil, 290}, "fluid.Seawater.FreezingPoint": {nil, 1e6},
		"fluid/flow.Schedule.FallRate": {must(falling().Schedule()), 5}, "hydrostatics.Path.MeanTVD": {nil, 100.0, 1800.0}, "hydrostatics.Column.Profile": {nil, []unit.Length{100, 200}, []unit.Pressure{0, 0}}, "tubular/catalogue.Catalogue.With": {nil, []catalogue.Entry{heavier()}},
		"valve.IsolationValve.BleedOff": {nil, nil, nil, []valve.Demand(nil)}, "valve.IsolationValve.Hold": {nil, nil, nil, []valve.Demand(nil)},
		"valve/sleeve.System.Run":          {nil, nil, nil, []sleeve.Position{sleeve.Open, sleeve.Open}},
		"tubular/catalogue.Catalogue.Pipe": {nil, "2-7/8 in 6.5 lb/ft L80"}, "tubular/catalogue.Pipe": {"2-7/8 in 6.5 lb/ft L80"},
		"tubular/drag.String.PrepareSpread": {nil, []float64{0.1}, []float64{0.3}},
		"fluid/confined.Preset":             {"barrier-low"}, "fluid/flow.Stream.APIFigures": {flow.Stream{Conduit: flow.Conduit{Outer: 0.2, Inner: 0.09}, Rheology: flow.PowerLaw(0.3, 0.6), Density: 1300, Rate: 0.01}},
		"fluid/flow.TwoPointBingham": {flow.Reading{Speed: 600, Dial: 53}, nil}, "fluid/flow.TwoPointPowerLaw": {flow.Reading{Speed: 600, Dial: 53}, nil},
		"hydrostatics.Cushion.Pressure": {nil, 2000}, "packer.Setting.Window": {nil, nil, valve.SurfaceRange{Greatest: 8000 * unit.PSI}, nil, 1e5}, "tubular.PrepareCollapse": {80 * unit.KSI},
		"tubular/catalogue.Catalogue.Find": {nil, 3.5 * unit.Inch, 9.2 * unit.PoundPerFoot}, "tubular/catalogue.FindGrade": {"L80"},
		"tubular/movement.String.Land": {nil, nil, 2e4}, "valve.SafetyValve.FailSafe": {nil, 1e5, nil},
		"valve.PinCounts":                     {nil, unit.Band[unit.Force]{Least: 1e5, Nominal: 1.2e5, Greatest: 1.4e5}},
		"valve/production/choke.Trim.GasDrop": {nil, nil, nil, 1.0}, "valve/production/choke.Trim.SizeGas": {nil, nil, nil, 1.5e7, 1.0}, "valve/production/choke.Trim.SizeLiquid": {nil, nil, nil, 1.5e7, 0.002},
		"valve/production/inflow.LiquidFromTest": {3e7, 1e7, nil, nil},
		"tubular/drag.Prepared.Along":            {nil, drag.Pulled, 100, 2000, false, func(unit.Length) unit.Force { return 1e5 }},
		"tubular/drag.Prepared.With":             {nil, []float64{0.2}, func(unit.Length) unit.WeightPerLength { return 120 }},
		"tubular/movement.Nest":                  {outer, inner}, "tubular/movement.MadeUp.Load": {made, held, inHole}, "tubular/movement.MadeUp.LoadInto": {made, new(movement.Loading), held, inHole},
		"tubular/movement.MadeUp.Terms": {made, under(inHole)}, "tubular/movement.MadeUp.WallAt": {made, pulled(), 500}, "tubular/movement.MadeUp.Steps": {made, under(inHole)}, "tubular/movement.MadeUp.LongestTool": {made, under(inHole), 0.05},
		"tubular/movement.Governing.DesignFactor": {movement.Governing{MD: 100, Usage: 0.5}},
		"tubular/movement.Concentric.Land":        {nested, landedOuter, inHole, inHole}, "tubular/movement.Concentric.Load": {nested, nestedLanded, inHole, inHole},
		"tubular/movement.Concentric.TakeHold": {nested, nestedLanded, 0, inHole, inHole}, "tubular/movement.Concentric.TakeHoldOuter": {nested, nestedLanded, 0, inHole, inHole},
		"tubular/movement.MadeUp.HangOff": {made, landed, onHook}, "tubular/movement.MadeUp.TakeHold": {made, landed, 0, inHole}, "tubular/movement.MadeUp.SetDown": {made, landed, 0, inHole, 1e4},
		"tubular/movement.MadeUp.LetGo": {made, held, 0}, "tubular/movement.MadeUp.Part": {made, landed, 0}, "tubular/movement.MadeUp.Join": {made, must(made.Part(held, 0)), 0}, "tubular/movement.MadeUp.StepsNamed": {made, under(inHole), movement.Names{}},
		"tubular/movement.MadeUp.ReadingForHold": {made, pulled(), 0, 1e4}, "tubular/movement.MadeUp.ReadingForJoint": {made, pulled(), 0, 1e4}, "tubular/movement.MadeUp.MostReading": {made, pulled(), nil},
	}
}

// assembly is hung in its hanger, made up, landed and held; nested are two strings,
// the inner one in the outer one.
var (
	assembly = movement.Assembly{Sections: []movement.StringSection{hung}, Path: path, Block: 1e5, Spacing: 200, Design: tubular.NorwegianShelf(),
		Seals: []movement.Seal{{MD: depth, Bore: 4 * unit.Inch, Up: 3, Length: 6}}, Holds: []movement.Hold{{MD: depth - 20, Bore: 4 * unit.Inch}}, Joints: []movement.Joint{{MD: depth - 50, Seal: 4 * unit.Inch}}}
	inHole = movement.Conditions{Inside: part(1200), Outside: part(1100), Temperature: ground.At}
	onHook = movement.Conditions{Inside: part(1200), Outside: part(1100), Temperature: ground.At, Top: movement.OnHookOpen, Reading: 6e5}
	made   = must(assembly.MakeUp())
	landed = must(made.Land(inHole))
	held   = must(made.TakeHold(landed, 0, inHole))

	liner        = movement.StringSection{Pipe: tubular.Pipe{OD: 7 * unit.Inch, ID: 6.184 * unit.Inch, Weight: 29 * unit.PoundPerFoot, Material: tubular.Steel()}, BottomMD: depth, Hole: 8.681 * unit.Inch}
	around       = movement.Assembly{Sections: []movement.StringSection{liner}, Path: path, Spacing: 200, Holds: []movement.Hold{{MD: depth - 30}}}.Carrying(assembly)
	outer, inner = must(around.MakeUp()), made
	nested       = must(movement.Nest(outer, inner))
	landedOuter  = must(outer.Land(inHole))
	nestedLanded = must(nested.Land(landedOuter, inHole, inHole))
)

// pulled is the string on the hook, pulled against what holds it.
func pulled() *movement.Loading { return under(onHook) }

func under(c movement.Conditions) *movement.Loading {
	l := must(made.Load(held, c))
	return &l
}

// shorter is the line of the upper sleeve, and upper the zone there.
var (
	shorter = func() controlline.Line { l := line; l.Length, l.TVD = second.TVD, second.TVD; return l }()
	upper   = func() production.Zone { z := zone; z.Name, z.TVD = "upper", 2800; return z }()
)

// falling is a heavy slug that outruns the pump.
func falling() flow.Displacement {
	d := pumped
	d.Stages = []flow.Stage{{Liquid: flow.PumpedFluid{Name: "slug", Density: 2300, Rheology: flow.Newtonian(1e-3)}, Volume: 10, Rate: 1e-4}}
	return d
}

// heavier is an entry that the catalogue hasn't.
func heavier() catalogue.Entry {
	e := must(catalogue.Standard()).Entries()[20]
	e.Weight, e.Source = e.Weight*1.01, "invented"
	return e
}

func release() packer.Release {
	return packer.Release{Pull: pull, Pins: unit.Within(60e3*unit.PoundForce, 0.05), Components: []packer.Component{{Name: "joint", MD: 100, Rating: 200 * unit.Kilopound, Share: 0.8}}, Rig: 300 * unit.Kilopound, RigShare: 0.8}
}

func tally() (t catalogue.Tally) {
	if err := t.UnmarshalText([]byte("3-1/2 in, 9.2 lb/ft, 3000 m")); err != nil {
		return catalogue.Tally{{OD: 3.5 * unit.Inch, Weight: 9.2 * unit.PoundPerFoot, Length: depth}}
	}
	return t
}

// part is at, alike in every part.
func part(rho unit.Density) func(int, unit.Length) unit.Pressure {
	return func(_ int, tvd unit.Length) unit.Pressure { return at(rho)(tvd) }
}

// at is a column of one density, with a little pressure on it.
func at(rho unit.Density) func(unit.Length) unit.Pressure {
	return func(tvd unit.Length) unit.Pressure { return 1e6 + hydrostatics.Pressure(rho, tvd) }
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}
