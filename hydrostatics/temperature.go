package hydrostatics

import (
	"errors"
	"fmt"
	"math"
	"sort"

	"completion.example/hydrostatics/unit"
)

// TemperaturePoint is a temperature known at a true vertical depth.
type TemperaturePoint struct {
	TVD         unit.Length
	Temperature unit.Temperature
}

// TemperatureProfile is temperature with depth, straight between points. It
// needn't rise: the sea is coldest at its bed. Above the first and below the
// last point it goes on as the nearest interval does; with a single point it
// is the same everywhere. Make one with NewTemperatureProfile, a Geothermal or
// a Flowing; it never changes, so it is safe for concurrent use. The zero
// value, and nil, answer absolute zero, which every fluid refuses.
type TemperatureProfile struct {
	depth, kelvin []float64
	slope         []float64 // K/m, of the interval below each point
}

// NewTemperatureProfile prepares a profile through points in order of depth.
func NewTemperatureProfile(points []TemperaturePoint) (*TemperatureProfile, error) {
	if len(points) == 0 {
		return nil, errors.New("hydrostatics: a temperature profile needs at least one point")
	}
	p := &TemperatureProfile{}
	var errs []error
	for i, at := range points {
		name := fmt.Sprintf("temperature point %d", i+1)
		errs = append(errs, finite(name+": TVD", at.TVD), checkTemperature(name, at.Temperature))
		if i > 0 && !(at.TVD > points[i-1].TVD) {
			errs = append(errs, fmt.Errorf("hydrostatics: %s: TVD is %v; it must be more than the last point's %v", name, at.TVD, points[i-1].TVD))
		}
		p.depth = append(p.depth, float64(at.TVD))
		p.kelvin = append(p.kelvin, at.Temperature.Kelvin())
	}
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	p.slope = make([]float64, len(p.depth))
	for i := range len(p.depth) - 1 {
		p.slope[i] = (p.kelvin[i+1] - p.kelvin[i]) / (p.depth[i+1] - p.depth[i])
		p.slope[i+1] = p.slope[i]
	}
	return p, nil
}

func checkTemperature(name string, t unit.Temperature) error {
	if k := t.Kelvin(); k > 0 && !math.IsInf(k, 0) {
		return nil
	}
	return fmt.Errorf("hydrostatics: %s is %v; it must be finite and above absolute zero", name, t)
}

// At returns the temperature at a depth.
func (p *TemperatureProfile) At(tvd unit.Length) unit.Temperature {
	if p == nil || len(p.depth) == 0 {
		return unit.Temperature{}
	}
	i := p.interval(float64(tvd))
	return unit.Kelvin(p.kelvin[i] + p.slope[i]*(float64(tvd)-p.depth[i]))
}

// interval is the index of the point above h, or of the first point.
func (p *TemperatureProfile) interval(h float64) int {
	return max(sort.SearchFloat64s(p.depth, h)-1, 0)
}

// Points returns the points of the profile.
func (p *TemperatureProfile) Points() []TemperaturePoint {
	if p == nil {
		return nil
	}
	points := make([]TemperaturePoint, len(p.depth))
	for i := range points {
		points[i] = TemperaturePoint{unit.Length(p.depth[i]), unit.Kelvin(p.kelvin[i])}
	}
	return points
}

// kink is the next depth from h towards end, strictly between, where the
// slope changes, or else end.
func (p *TemperatureProfile) kink(h, end float64) float64 {
	if p == nil {
		return end
	}
	inner := p.depth[min(1, len(p.depth)):max(len(p.depth)-1, min(1, len(p.depth)))]
	if h < end {
		if i := sort.Search(len(inner), func(i int) bool { return inner[i] > h }); i < len(inner) {
			return math.Min(inner[i], end)
		}
		return end
	}
	if i := sort.SearchFloat64s(inner, h); i > 0 {
		return math.Max(inner[i-1], end)
	}
	return end
}

// Geothermal is the temperature of undisturbed ground, and of the sea above
// it. Depths count from the datum of the well, as a rule the rotary table.
type Geothermal struct {
	// GroundTVD is where the ground begins: the ground level on land, the sea
	// bed offshore; Ground is its temperature.
	GroundTVD unit.Length
	Ground    unit.Temperature
	Gradient  unit.TemperatureGradient // in the ground, per vertical length

	// Offshore only: the air gap and the water's temperature under it, and
	// points measured in the water between, in order of depth.
	SeaTVD unit.Length
	Sea    unit.Temperature
	Water  []TemperaturePoint
}

// Profile returns the profile down to a depth and below. Offshore is what has
// a Sea temperature; on land the ground's temperature holds up to the datum.
func (g Geothermal) Profile(depth unit.Length) (*TemperatureProfile, error) {
	errs := []error{
		finite("ground TVD", g.GroundTVD),
		checkTemperature("ground temperature", g.Ground),
		finite("geothermal gradient", g.Gradient),
		above("depth", depth, g.GroundTVD),
	}
	var points []TemperaturePoint
	switch {
	case g.Sea != unit.Temperature{}:
		errs = append(errs, checkTemperature("sea temperature", g.Sea), within("sea TVD", g.SeaTVD, 0, g.GroundTVD))
		if g.SeaTVD > 0 {
			points = append(points, TemperaturePoint{0, g.Sea})
		}
		points = append(points, TemperaturePoint{g.SeaTVD, g.Sea})
		points = append(points, g.Water...)
	case len(g.Water) > 0:
		errs = append(errs, errors.New("hydrostatics: water temperatures are given without a sea temperature"))
	case g.GroundTVD > 0:
		points = append(points, TemperaturePoint{0, g.Ground})
	}
	points = append(points, TemperaturePoint{g.GroundTVD, g.Ground})
	rise := unit.TemperatureDifference(float64(g.Gradient) * float64(depth-g.GroundTVD))
	points = append(points, TemperaturePoint{depth, g.Ground.Add(rise)})
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	return NewTemperatureProfile(points)
}
