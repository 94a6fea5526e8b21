package everyslot

import (
	"maps"
	"slices"
	"testing"

	"completion.example/internal/dimension"
	"github.com/stretchr/testify/require"
)

// How a formula stands to the units of length, mass, time and temperature.
type homogeneity int

const (
	free     homogeneity = iota // it knows none of them
	gravity                     // it knows standard gravity and nothing else
	constant                    // a number in it has a dimension
	refusing                    // its range ends before it can be scaled
	opaque                      // arguments or results can't be scaled: a temperature, a function, hidden fields
)

// TestFormulasAreHomogeneous scales length, mass, time and temperature under every
// exported call: a result must scale with them to the bit. What doesn't must be in
// the list below, with the number that it carries.
func TestFormulasAreHomogeneous(t *testing.T) {
	list, _ := subjects(t)
	count := map[homogeneity]int{}
	met := map[string]homogeneity{}
	for _, s := range list {
		if textual(s.name) {
			continue
		}
		h, why := homogeneous(s)
		count[h]++
		met[s.name] = h
		listed, reason := expected(s.name)
		switch {
		case h == opaque || h == free && listed == free || h == listed && reason != "":
		case reason != "":
			t.Errorf("%s stands in the list (%s), but not so: %d, %v", s.name, reason, h, why)
		default:
			t.Errorf("%s: %v", s.name, why)
		}
	}
	for _, group := range []map[string]string{withGravity, withConstants, withLimits} {
		for _, name := range slices.Sorted(maps.Keys(group)) {
			_, ok := met[name]
			require.True(t, ok, "%s is in the list and isn't called", name)
		}
	}
	t.Logf("%d know no unit, %d gravity, %d another constant, %d can't be scaled within their range, %d not at all",
		count[free], count[gravity], count[constant], count[refusing], count[opaque])
}

func homogeneous(s subject) (homogeneity, error) {
	for _, a := range s.args {
		if !dimension.Scalable(a) {
			return opaque, nil
		}
	}
	for _, r := range s.results {
		if r.Type() != errorType && !dimension.Comparable(r) {
			return opaque, nil
		}
	}
	refused, err := dimension.Departure(dimension.Free, s.f, s.args)
	if err == nil {
		return free, nil
	}
	beyond, heavy := dimension.Departure(dimension.Gravity, s.f, s.args)
	switch {
	case heavy == nil:
		return gravity, err
	case refused || beyond:
		return refusing, heavy
	}
	return constant, heavy
}

func expected(name string) (homogeneity, string) {
	if reason, ok := withGravity[name]; ok {
		return gravity, reason
	}
	if reason, ok := withConstants[name]; ok {
		return constant, reason
	}
	if reason, ok := withLimits[name]; ok {
		return refusing, reason
	}
	return free, ""
}

// withGravity are those that carry standard gravity alone.
var withGravity = map[string]string{
	"hydrostatics.AllowableDensity":         "a column",
	"hydrostatics.AllowableSurfacePressure": "a column",
	"hydrostatics.Density":                  "of a gradient",
	"hydrostatics.EquivalentDensity":        "a column",
	"hydrostatics.Formation.KillDensity":    "a column",
	"hydrostatics.Gradient":                 "of a density",
	"hydrostatics.Head":                     "a column",
	"hydrostatics.Pressure":                 "a column",
	"hydrostatics.ShutIn.Formation":         "a column",
	"hydrostatics.ShutIn.FormationPressure": "a column",
	"hydrostatics.ShutIn.KillDensity":       "a column",
	"packer.Seat.Connections":               "columns in the string and around it",
	"tubular.Hanging.Stretch":               "own weight",
	"tubular.Pipe.BuoyedWeight":             "weight of the fluids",
	"tubular.Pipe.ClosedDisplacement":       "volume of a weight",
	"tubular.Pipe.Displacement":             "volume of a weight",
	"tubular.Pipe.Less":                     "weight of what is worn",
	"tubular.Pipe.PlainEndWeight":           "weight of the steel",
	"tubular/movement.Vertical.Analyse":     "columns in the string and around it",
	"tubular/movement.WellFluids.Inside":    "a column",
	"tubular/movement.WellFluids.Outside":   "a column",
	"valve/production.Well.Flow":            "columns between the zones",
}

// withConstants are those that carry a number with a dimension, and which.
var withConstants = map[string]string{
	"fluid.Gas.PseudoCritical":                             "Sutton's coefficients are in psi and °R",
	"fluid.GasMixture.PseudoCritical":                      "critical properties of the components",
	"fluid/flow.Pump.Rate":                                 "its argument is a bare number of strokes a minute",
	"fluid/flow.YieldPoint":                                "the viscometer's spring, in lbf/100 ft² a degree",
	"hydrostatics.APIGravity":                              "the density of water at 60 °F",
	"hydrostatics.DensityOfAPIGravity":                     "the density of water at 60 °F",
	"hydrostatics.Incompressible.UniformDensity":           "none: its receiver is a density by another name",
	"tubular.HardeningExponent":                            "a correlation in psi",
	"tubular.Pipe.Buttress":                                "API's coefficients are in inches",
	"tubular.Pipe.RoundThread":                             "API's coefficients are in inches",
	"tubular.Steel":                                        "properties of steel",
	"tubular.UsualDerating":                                "properties of steel",
	"tubular/catalogue.Drift":                              "drift allowances by size",
	"tubular/catalogue.Entry.Pipe":                         "properties of steel",
	"tubular/catalogue.Entry.StandardTest":                 "caps and rounding in psi",
	"tubular/catalogue.Entry.ThreadHeight":                 "heights of threads by size",
	"tubular/catalogue.FindGrade":                          "strengths of the grades",
	"tubular/catalogue.Pipe":                               "a pipe by its text",
	"tubular/catalogue.Catalogue.Pipe":                     "a pipe by its text",
	"tubular/catalogue.Grade.Material":                     "properties of steel",
	"tubular/catalogue.Grades":                             "strengths of the grades",
	"valve.SafetyValve.FailSafe":                           "depths end at 20 km",
	"valve.StandardSI":                                     "standard conditions",
	"valve.StandardUS":                                     "standard conditions",
	"valve/production/choke.ErosionalArea":                 "API RP 14E's constant is in ft/s and lb/ft³",
	"valve/production/choke.ErosionalRate":                 "API RP 14E's constant is in ft/s and lb/ft³",
	"valve/production/choke.ErosionalVelocity":             "API RP 14E's constant is in ft/s and lb/ft³",
	"valve/production/choke.Orifice.Discharge":             "ISO 5167 has terms in millimetres",
	"valve/production/choke.Orifice.Rate":                  "ISO 5167 has terms and ranges in millimetres; one atmosphere",
	"valve/production/choke.Trim.GasDrop":                  "one atmosphere",
	"valve/production/choke.Trim.Liquid":                   "one atmosphere",
	"valve/production/choke.Trim.LiquidDrop":               "one atmosphere",
	"valve/production/choke.Trim.SizeGas":                  "one atmosphere",
	"valve/production/choke.Trim.SizeLiquid":               "one atmosphere; limits of the search in m²",
	"valve/production/inflow.GasDeliverability.At":         "one atmosphere; bare SI numbers for solvers",
	"valve/production/inflow.GasDeliverability.Pressure":   "one atmosphere",
	"valve/production/inflow.GasFit.At":                    "one atmosphere; bare SI numbers for solvers",
	"valve/production/inflow.GasFit.Pressure":              "one atmosphere",
	"valve/production/inflow.GasFromTests":                 "one atmosphere",
	"valve/production/inflow.LiquidDeliverability.At":      "none: bare SI numbers for solvers",
	"valve/production/inflow.LiquidDeliverability.Inverse": "none: bare SI numbers for solvers",
}

// withLimits are those whose range ends before it can be scaled by powers of two
// that leave gravity and square roots exact.
var withLimits = map[string]string{
	"fluid.Bridges":                        "densities of the table",
	"fluid.KrookBoyce":                     "densities of the table",
	"tubular.Pipe.Collapse":                "API's yield strengths; its polynomials are in psi",
	"tubular.Pipe.CollapseBiaxial":         "as Collapse",
	"tubular.Pipe.CollapseUnderLoad":       "as Collapse",
	"tubular.Pipe.Envelope":                "as Collapse",
	"tubular.Pipe.Prepare":                 "as Collapse",
	"tubular.Pipe.Ratings":                 "as Collapse",
	"tubular.PrepareCollapse":              "as Collapse",
	"tubular/catalogue.Entry.Validate":     "plausible sizes",
	"valve.SafetyValve.KeepOpen":           "depths to 20 km",
	"valve.SafetyValve.Pressures":          "depths to 20 km",
	"valve/controlline.Line.Validate":      "sizes, lengths and moduli of lines",
	"valve/controlline.Line.Friction":      "as Validate",
	"valve/controlline.Line.Head":          "as Validate",
	"valve/controlline.Line.Load":          "as Validate",
	"valve/controlline.Line.PanelFor":      "as Validate",
	"valve/controlline.Line.RateAt":        "as Validate",
	"valve/controlline.Line.Ratings":       "as Validate",
	"valve/controlline.Line.Storage":       "as Validate",
	"valve/controlline.Line.Warming":       "as Validate",
	"valve.ControlState.Validate":          "depths to 20 km",
	"valve/controlline.Shift.Validate":     "as Validate of its lines",
	"valve/controlline.LineFluid.Validate": "densities and viscosities of liquids",
	"valve/sleeve.System.Apply":            "as controlline.Line.Validate",
	"valve/sleeve.System.Validate":         "as controlline.Line.Validate",
	"valve/sleeve.System.Combinations":     "as controlline.Line.Validate",
	"valve/sleeve.System.Faults":           "as controlline.Line.Validate",
	"valve/sleeve.System.PanelWindow":      "as controlline.Line.Validate",
	"valve/sleeve.System.Run":              "as controlline.Line.Validate",
	"valve/sleeve.System.Shift":            "as controlline.Line.Validate",
	"valve/sleeve.System.Shifting":         "as controlline.Line.Validate",
	"valve/sleeve.System.Signatures":       "as controlline.Line.Validate",
}
