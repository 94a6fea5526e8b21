package hydrostatics

import (
	"math"
	"slices"
	"sort"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Layer is one fluid between two true vertical depths. LayersAlong makes
// layers from measured depths.
type Layer struct {
	Fluid     Fluid       `json:"fluid"`
	TopTVD    unit.Length `json:"top_tvd"`
	BottomTVD unit.Length `json:"bottom_tvd"`
}

// Reference is where a column's pressure is known: at surface, at a formation,
// at any depth in it.
type Reference struct {
	Pressure unit.Pressure `json:"pressure"`
	TVD      unit.Length   `json:"tvd"`
}

// Column is fluid at rest, layer upon layer. Its pressure follows
//
//	dp/dz = ρ(p, T(z))·g
//
// from the reference up and down. Constant density is exact and a
// SlightlyCompressible fluid has its closed form; any other density is
// integrated once, when the column is made, to better than 1e-8 of the
// pressure difference, and what is kept answers every depth without asking the
// fluid again. A Column never changes, so it is safe for concurrent use. The
// zero value holds no depth.
//
// The density must rise or fall smoothly with pressure and temperature within
// a layer; a kink or a small jump only costs time.
type Column struct {
	layers      []Layer
	temperature *TemperatureProfile
	reference   Reference
	pieces      []piece // in order of depth
}

// slackDepth is by how much depths that should be equal may differ after
// conversions of unit, m.
const slackDepth = 1e-6

// NewColumn prepares a column of layers, from the top down and each beginning
// where the last one ends. The temperature may be nil if all densities are
// constant. The reference may be anywhere from the top to the bottom.
func NewColumn(layers []Layer, temperature *TemperatureProfile, at Reference) (*Column, error) {
	c := &Column{layers: slices.Clone(layers), temperature: temperature}
	if err := c.check(); err != nil {
		return nil, fault.Join(scope, err, fault.At("at", fault.Finite("Pressure", at.Pressure)))
	}
	return c.WithReference(at)
}

func (c *Column) check() error {
	if len(c.layers) == 0 {
		return fault.NewIn(scope, "layers", "is empty; must be one layer or more")
	}
	f := fault.In(scope)
	for i, l := range c.layers {
		f.AtIndex("layers", i, c.checkLayer(l))
		if i > 0 {
			if last := c.layers[i-1].BottomTVD; !(math.Abs(float64(l.TopTVD-last)) <= slackDepth) {
				f.New(fault.Index("layers", i)+".TopTVD", "is %v; must be the bottom of the layer above, %v", l.TopTVD, last)
			}
			c.layers[i].TopTVD = c.layers[i-1].BottomTVD
		}
	}
	return f.Err()
}

func (c *Column) checkLayer(l Layer) error {
	f := fault.In("")
	f.Add(fault.Finite("TopTVD", l.TopTVD), fault.Above("BottomTVD", l.BottomTVD, l.TopTVD), c.checkFluid("Fluid", l.Fluid))
	return f.Err()
}

func (c *Column) checkFluid(path string, f Fluid) error {
	if f == nil {
		return fault.New(path, "is missing")
	}
	if own, ok := f.(interface{ Validate() error }); ok {
		if err := own.Validate(); err != nil {
			return fault.At(path, err)
		}
	}
	if rho, ok := uniform(f); ok {
		if err := fault.AtLeast("Density", rho, 0); err != nil {
			return fault.At(path, err)
		}
		return nil
	}
	if c.temperature == nil || len(c.temperature.depth) == 0 {
		return fault.New(path, "has a density that varies; the column must have a temperature profile")
	}
	return nil
}

// WithReference returns the same layers with another reference.
func (c *Column) WithReference(at Reference) (*Column, error) {
	if err := fault.Join(scope, fault.Finite("at.Pressure", at.Pressure), c.holds("at.TVD", at.TVD)); err != nil {
		return nil, err
	}
	d := &Column{layers: c.layers, temperature: c.temperature, reference: at}
	z := c.clamp(at.TVD)
	up := marcher{temperature: c.temperature, keep: true}
	if _, err := up.carry(c.layers, float64(at.Pressure), z, float64(c.Top())); err != nil {
		return nil, err
	}
	slices.Reverse(up.pieces)
	down := marcher{temperature: c.temperature, keep: true, pieces: up.pieces}
	if _, err := down.carry(c.layers, float64(at.Pressure), z, float64(c.Bottom())); err != nil {
		return nil, err
	}
	d.pieces = down.pieces
	return d, nil
}

// Carry takes a pressure from one depth of the column to another through its
// layers, without regard to the column's own reference and without allocating.
// It integrates anew each time: for many depths at one reference use At.
func (c *Column) Carry(p unit.Pressure, from, to unit.Length) (unit.Pressure, error) {
	if err := fault.Finite("pressure", p); err != nil {
		return 0, fault.Join(scope, err)
	}
	if c == nil || len(c.layers) == 0 || !c.within(from) {
		return 0, c.holds("depth", from)
	}
	if !c.within(to) {
		return 0, c.holds("depth", to)
	}
	m := marcher{temperature: c.temperature}
	q, err := m.carry(c.layers, float64(p), c.clamp(from), c.clamp(to))
	return unit.Pressure(q), err
}

// At returns the pressure at a depth; outside the column the error is
// ErrOutsideColumn.
func (c *Column) At(tvd unit.Length) (unit.Pressure, error) {
	if err := c.holds("depth", tvd); err != nil {
		return 0, err
	}
	z := c.clamp(tvd)
	return unit.Pressure(c.pieces[c.piece(z)].at(z)), nil
}

// Profile fills dst with the pressures at depths, which may come in any order;
// in order of depth is quickest. It doesn't allocate.
func (c *Column) Profile(depths []unit.Length, dst []unit.Pressure) error {
	if len(dst) != len(depths) {
		return fault.NewIn(scope, "dst", "has %d places; must have as many as there are depths, %d", len(dst), len(depths))
	}
	i := 0
	for k, tvd := range depths {
		if err := c.holds("depth", tvd); err != nil {
			return err
		}
		z := c.clamp(tvd)
		if q := &c.pieces[i]; z < q.top || z > q.bottom {
			i = c.piece(z)
		}
		dst[k] = unit.Pressure(c.pieces[i].at(z))
	}
	return nil
}

// Depth returns the depth at which the column has a pressure, the inverse of
// At: the least one where an empty layer holds it all along. A pressure that
// occurs nowhere is ErrOutsideColumn.
//
//	p(h) = p
//
// Source: inverse of At.
func (c *Column) Depth(p unit.Pressure) (unit.Length, error) {
	if c == nil || len(c.pieces) == 0 {
		return 0, fault.NewIn(scope, "", "the column has no layers: %w", ErrOutsideColumn)
	}
	want := float64(p)
	top, bottom := c.pieces[0].ptop, c.pieces[len(c.pieces)-1].pbottom
	slack := 1e-14 * (math.Abs(top) + math.Abs(bottom))
	if !(want >= top-slack && want <= bottom+slack) {
		return 0, fault.NewIn(scope, "pressure", "is %s; must be from %s to %s: %w",
			p.Rounded(6), unit.Pressure(top).Rounded(6), unit.Pressure(bottom).Rounded(6), ErrOutsideColumn)
	}
	i := sort.Search(len(c.pieces), func(i int) bool { return c.pieces[i].pbottom >= want })
	if i == len(c.pieces) { // by rounding
		return c.Bottom(), nil
	}
	return unit.Length(c.pieces[i].depth(want)), nil
}

// EquivalentDensity returns the equivalent mud weight at a depth: the constant
// density that would give the pressure there from TVD 0.
func (c *Column) EquivalentDensity(tvd unit.Length) (unit.Density, error) {
	p, err := c.At(tvd)
	if err != nil {
		return 0, err
	}
	if err := fault.Join(scope, fault.Above("depth", tvd, slackDepth)); err != nil {
		return 0, err
	}
	return EquivalentDensity(p, tvd), nil
}

// Density returns the fluid's own density at a depth; where two layers meet,
// that of the upper one.
func (c *Column) Density(tvd unit.Length) (unit.Density, error) {
	p, err := c.At(tvd)
	if err != nil {
		return 0, err
	}
	i := sort.Search(len(c.layers)-1, func(i int) bool { return c.layers[i].BottomTVD >= tvd })
	return c.layers[i].Fluid.Density(p, c.temperature.At(tvd))
}

// Layers returns the layers, from the top down.
func (c *Column) Layers() []Layer {
	if c == nil {
		return nil
	}
	return slices.Clone(c.layers)
}

// Reference returns where the pressure is given.
func (c *Column) Reference() Reference {
	if c == nil {
		return Reference{}
	}
	return c.reference
}

// Top returns the least depth of the column.
func (c *Column) Top() unit.Length {
	if c == nil || len(c.layers) == 0 {
		return 0
	}
	return c.layers[0].TopTVD
}

// Bottom returns the greatest depth of the column.
func (c *Column) Bottom() unit.Length {
	if c == nil || len(c.layers) == 0 {
		return 0
	}
	return c.layers[len(c.layers)-1].BottomTVD
}

// within tells the same as holds, of a column with layers: quickly.
func (c *Column) within(tvd unit.Length) bool {
	return tvd >= c.layers[0].TopTVD-slackDepth && tvd <= c.layers[len(c.layers)-1].BottomTVD+slackDepth
}

func (c *Column) holds(path string, tvd unit.Length) error {
	if c == nil || len(c.layers) == 0 {
		return fault.NewIn(scope, "", "the column has no layers: %w", ErrOutsideColumn)
	}
	if c.within(tvd) {
		return nil
	}
	return fault.NewIn(scope, path, "is %s; must be from %s to %s: %w",
		tvd.Rounded(7), c.Top().Rounded(7), c.Bottom().Rounded(7), ErrOutsideColumn)
}

func (c *Column) clamp(tvd unit.Length) float64 {
	switch top, bottom := c.layers[0].TopTVD, c.layers[len(c.layers)-1].BottomTVD; {
	case tvd < top:
		return float64(top)
	case tvd > bottom:
		return float64(bottom)
	}
	return float64(tvd)
}

// piece finds the piece that holds z.
func (c *Column) piece(z float64) int {
	return sort.Search(len(c.pieces)-1, func(i int) bool { return c.pieces[i].bottom >= z })
}
