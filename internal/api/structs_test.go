package api

import (
	"completion.example/fluid"
	"completion.example/fluid/confined"
	"completion.example/fluid/flow"
	"completion.example/fluid/gasflow"
	"completion.example/hydrostatics"
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

// structs are the public packages' struct types.
var structs = []any{
	hydrostatics.Formation{}, hydrostatics.ShutIn{}, hydrostatics.Bullhead{}, hydrostatics.BullheadPoint{}, hydrostatics.Layer{},
	hydrostatics.Reference{}, hydrostatics.Column{}, hydrostatics.SlightlyCompressible{}, hydrostatics.Course{},
	hydrostatics.Cushion{}, hydrostatics.CushionAnswer{}, hydrostatics.HeatExchange{}, hydrostatics.Flowing{},
	hydrostatics.MeasuredLayer{}, hydrostatics.LegSection{}, hydrostatics.Stretch{}, hydrostatics.Leg{}, hydrostatics.Station{},
	hydrostatics.Position{}, hydrostatics.Path{}, hydrostatics.Slug{}, hydrostatics.WeakPoint{}, hydrostatics.PointLimit{},
	hydrostatics.SurfaceLimit{}, hydrostatics.TemperaturePoint{}, hydrostatics.TemperatureProfile{}, hydrostatics.Geothermal{},
	hydrostatics.UTube{}, hydrostatics.LegAtRest{}, hydrostatics.AtRest{}, hydrostatics.Standing{},
	fluid.AverageGasColumn{}, fluid.Batch{}, fluid.Adjustment{}, fluid.Brine{}, fluid.BrineState{}, fluid.Constant{},
	fluid.ControlFluid{}, fluid.ControlPoint{}, fluid.CrystallisationPoint{}, fluid.Gas{}, fluid.GasMixture{}, fluid.GasState{},
	fluid.Measured{}, fluid.Methane{}, fluid.Nitrogen{}, fluid.Oil{}, fluid.PseudoCritical{}, fluid.Seawater{}, fluid.Solution{},
	fluid.WellAverage{}, fluid.SurfaceWeight{}, fluid.Treatment{}, fluid.VolumeCorrection{}, fluid.Water{},
	flow.APIFigures{}, flow.Circulation{}, flow.Part{}, flow.Node{}, flow.Circulating{}, flow.Conduit{}, flow.Critical{},
	flow.Stage{}, flow.Displacement{}, flow.Point{}, flow.UTube{}, flow.Event{}, flow.Returned{}, flow.Schedule{}, flow.Fitted{},
	flow.Stream{}, flow.Friction{}, flow.Slug{}, flow.Span{}, flow.Kill{}, flow.Influx{}, flow.KillPoint{}, flow.Killing{},
	flow.Laminar{}, flow.Orifices{}, flow.Pump{}, flow.Rheology{}, flow.PumpedFluid{}, flow.ConduitSection{}, flow.Well{},
	flow.Trip{}, flow.Swept{}, flow.Surge{}, flow.Reading{},
	confined.PressureUp{}, confined.Pumped{}, confined.Criterion{}, confined.PressureTest{}, confined.Judgement{},
	confined.LinearLiquid{}, confined.Sample{}, confined.Part{}, confined.Fill{}, confined.Trapped{}, confined.Outcome{},
	confined.Tube{}, confined.Space{},
	gasflow.Tubing{}, gasflow.Node{},
	tubular.Allowance{}, tubular.Derating{}, tubular.Body{}, tubular.CollapseCurve{}, tubular.CollapseRating{},
	tubular.Connection{}, tubular.Envelope{}, tubular.LoadPoint{}, tubular.Outline{}, tubular.Expansion{}, tubular.FreePoint{},
	tubular.StuckDepth{}, tubular.RoundThread{}, tubular.Material{}, tubular.Pipe{}, tubular.Ratings{}, tubular.Rupture{},
	tubular.Load{}, tubular.WallStress{}, tubular.Stresses{}, tubular.HangingSection{}, tubular.Hanging{}, tubular.HangingStretch{},
	tubular.Causes{}, tubular.SectionStretch{}, tubular.DesignFactors{}, tubular.Usage{},
	catalogue.Catalogue{}, catalogue.Entry{}, catalogue.Grade{}, catalogue.Joints{},
	drag.Prepared{}, drag.Node{}, drag.Loads{}, drag.SetDown{}, drag.PipeSection{}, drag.HoleSection{}, drag.String{}, drag.Taken{},
	drag.Spread{},
	movement.Assembly{}, movement.Seal{}, movement.Hold{}, movement.Joint{}, movement.MadeUp{}, movement.StringPart{}, movement.Case{},
	movement.Node{}, movement.Movement{}, movement.Concentric{}, movement.Nested{}, movement.NestedLoading{}, movement.Conditions{},
	movement.Confined{}, movement.Lay{}, movement.Governing{}, movement.End{}, movement.Helix{}, movement.Landed{},
	movement.Loading{}, movement.HoldLoad{}, movement.JointLoad{}, movement.SealLoad{}, movement.Limits{}, movement.Bears{},
	movement.PullLimits{}, movement.MostPull{}, movement.Seals{}, movement.StringSection{}, movement.Standing{}, movement.String{},
	movement.WellProfiles{}, movement.Terms{}, movement.WellFluids{}, movement.Vertical{}, movement.Analysis{}, movement.SlackOff{},
	movement.SectionMovement{}, movement.SectionBuckling{},
	packer.Applied{}, packer.StageState{}, packer.Seat{}, packer.Bearing{}, packer.Case{}, packer.PathCase{}, packer.Connected{},
	packer.Landing{}, packer.MakeUp{}, packer.LockIn{}, packer.Locked{}, packer.Bitten{}, packer.Margin{}, packer.Parted{},
	packer.Aftermath{}, packer.Load{}, packer.Polygon{}, packer.Envelope{}, packer.PullLimit{}, packer.Validation{},
	packer.PinCase{}, packer.PinMargin{}, packer.Pull{}, packer.Balance{}, packer.Ratings{}, packer.Limit{}, packer.CutInterval{},
	packer.NotParted{}, packer.Options{}, packer.Cut{}, packer.Release{}, packer.Component{}, packer.Parting{}, packer.ComponentLoad{},
	packer.Setting{}, packer.Plug{}, packer.Pressures{}, packer.StagePressure{}, packer.SealPlan{}, packer.SpaceOut{},
	packer.Stab{}, packer.StabWeights{}, packer.Stage{}, packer.Receptacle{}, packer.SealStack{}, packer.Travel{}, packer.Stroke{},
	packer.Engagement{}, packer.Unseating{}, packer.Freed{},
	valve.FailSafeCase{}, valve.FailSafeColumns{}, valve.FailSafeDepth{}, valve.FailSafe{}, valve.IsolationValve{},
	valve.PressureEvent{}, valve.PressureRecord{}, valve.IsolationHistory{}, valve.StandardState{}, valve.GasLeak{},
	valve.LeakRate{}, valve.PinFit{}, valve.Pins{}, valve.TriggerState{}, valve.Outcome{}, valve.SafetyValve{}, valve.ControlState{},
	valve.ControlPressures{}, valve.KeepOpen{}, valve.Trigger{}, valve.Margin{}, valve.Columns{}, valve.Demand{}, valve.Bound{},
	valve.SurfaceWindow{}, valve.SurfaceRange{},
	controlline.Line{}, controlline.LineFluid{}, controlline.Ratings{}, controlline.Outside{}, controlline.Load{},
	controlline.Reading{}, controlline.Diagnosis{}, controlline.Response{}, controlline.Shift{}, controlline.ShiftPlan{},
	controlline.Storage{}, controlline.Warming{},
	sleeve.Action{}, sleeve.Operation{}, sleeve.Step{}, sleeve.Effect{}, sleeve.Combination{}, sleeve.LineFault{},
	sleeve.Shifting{}, sleeve.Junction{}, sleeve.Route{}, sleeve.Leg{}, sleeve.Sleeve{}, sleeve.System{}, sleeve.Setting{},
	sleeve.Panel{}, sleeve.Signature{},
	production.Limits{}, production.Choice{}, production.Straight{}, production.Flow{}, production.ZoneFlow{}, production.GasWell{},
	production.GasWellFlow{}, production.Network{}, production.FixedPressure{}, production.FixedRate{}, production.Tubing{},
	production.OutflowPoint{}, production.Well{}, production.Zone{}, production.GasAtChoke{}, production.Interval{},
	production.Loss{},
	choke.UpstreamGas{}, choke.GasFlow{}, choke.UpstreamLiquid{}, choke.LiquidFlow{}, choke.NozzleFlow{}, choke.Orifice{},
	choke.Metered{}, choke.OrificeFlow{}, choke.Position{}, choke.Curve{}, choke.Trim{},
	inflow.GasDeliverability{}, inflow.Test{}, inflow.GasFit{}, inflow.Formation{}, inflow.LiquidDeliverability{},
}
