package hydrostatics

import (
	"math"
	"sort"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// TemperaturePoint is a temperature known at a true vertical depth.
type TemperaturePoint struct {
	TVD         unit.Length      `json:"tvd"`
	Temperature unit.Temperature `json:"temperature"`
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
//
//	T = Ti + (Ti+1 − Ti)·(h − hi)/(hi+1 − hi)
//
// Errors: no points; depths that don't rise, or aren't finite; a temperature not
// above absolute zero.
//
// Source: linear interpolation.
func NewTemperatureProfile(points []TemperaturePoint) (*TemperatureProfile, error) {
	if len(points) == 0 {
		return nil, fault.NewIn(scope, "points", "is empty; must be one point or more")
	}
	p := &TemperatureProfile{}
	f := fault.In(scope)
	for i, at := range points {
		f.AtIndex("points", i, fault.Join("", fault.Finite("TVD", at.TVD), fault.AboveZero("Temperature", at.Temperature)))
		if i > 0 && !(at.TVD > points[i-1].TVD) {
			f.New(fault.Index("points", i)+".TVD", "is %v; must be above the last point's %v", at.TVD, points[i-1].TVD)
		}
		p.depth = append(p.depth, float64(at.TVD))
		p.kelvin = append(p.kelvin, at.Temperature.Kelvin())
	}
	if err := f.Err(); err != nil {
		return nil, err
	}
	p.slope = make([]float64, len(p.depth))
	for i := range len(p.depth) - 1 {
		p.slope[i] = (p.kelvin[i+1] - p.kelvin[i]) / (p.depth[i+1] - p.depth[i])
		p.slope[i+1] = p.slope[i]
	}
	return p, nil
}

// At returns the temperature at a depth.
//
//	T = Ti + slope·(h − hi)
//
// Range: any depth, beyond the points as the type says; NaN in, NaN out.
//
// Source: linear interpolation.
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
	GroundTVD unit.Length              `json:"ground_tvd"`
	Ground    unit.Temperature         `json:"ground"`
	Gradient  unit.TemperatureGradient `json:"gradient"` // in the ground, per vertical length

	// Offshore only: the air gap and the water's temperature under it, and
	// points measured in the water between, in order of depth.
	SeaTVD unit.Length        `json:"sea_tvd"`
	Sea    unit.Temperature   `json:"sea"`
	Water  []TemperaturePoint `json:"water"`
}

// Profile returns the profile down to a depth and below. Offshore is what has
// a Sea temperature; on land the ground's temperature holds up to the datum.
//
//	T = T0 + G·(h − h0)
//
// Errors: faults of g; a depth not below the ground; those of NewTemperatureProfile.
//
// Source: definition of the gradient.
func (g Geothermal) Profile(depth unit.Length) (*TemperatureProfile, error) {
	f := fault.In(scope)
	f.Add(fault.Finite("GroundTVD", g.GroundTVD), fault.AboveZero("Ground", g.Ground), fault.Finite("Gradient", g.Gradient),
		fault.Above("depth", depth, g.GroundTVD))
	var points []TemperaturePoint
	switch {
	case g.Sea != unit.Temperature{}:
		f.Add(fault.AboveZero("Sea", g.Sea), fault.Between("SeaTVD", g.SeaTVD, 0, g.GroundTVD))
		if g.SeaTVD > 0 {
			points = append(points, TemperaturePoint{0, g.Sea})
		}
		points = append(points, TemperaturePoint{g.SeaTVD, g.Sea})
		points = append(points, g.Water...)
	case len(g.Water) > 0:
		f.New("Water", "is given without a temperature of the sea; must be empty, or Sea given")
	case g.GroundTVD > 0:
		points = append(points, TemperaturePoint{0, g.Ground})
	}
	points = append(points, TemperaturePoint{g.GroundTVD, g.Ground})
	rise := unit.TemperatureDifference(float64(g.Gradient) * float64(depth-g.GroundTVD))
	points = append(points, TemperaturePoint{depth, g.Ground.Add(rise)})
	if err := f.Err(); err != nil {
		return nil, err
	}
	return NewTemperatureProfile(points)
}
