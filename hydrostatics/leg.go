package hydrostatics

import (
	"math"
	"slices"
	"sort"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// LegSection is a stretch of a leg with one cross-section, from the bottom of the
// section above it (or from surface) down to BottomMD.
type LegSection struct {
	BottomMD unit.Length `json:"bottom_md"`
	Area     unit.Area   `json:"area"` // open to flow; a capacity in bbl/ft is one
}

// Stretch is a stretch of a leg filled with one fluid of constant density,
// from the bottom of the stretch above it (or from the level) down to BottomMD.
type Stretch struct {
	BottomMD unit.Length  `json:"bottom_md"`
	Density  unit.Density `json:"density"`
}

// Leg is one side of a U-tube, from surface down to the port.
type Leg struct {
	Sections []LegSection  `json:"sections"`
	LevelMD  unit.Length   `json:"level_md"` // MD of the top of the liquid; zero is full to surface
	Fluids   []Stretch     `json:"fluids"`   // from the top down; the last one reaches the port
	Surface  unit.Pressure `json:"surface"`  // on top of the leg, and held there
}

func (l Leg) check(port unit.Length) error {
	f := fault.In(scope)
	last := unit.Length(0)
	for i, s := range l.Sections {
		f.AtIndex("Sections", i, fault.Join("", fault.Above("BottomMD", s.BottomMD, last), fault.Above("Area", s.Area, 0)))
		last = s.BottomMD
	}
	if !(last >= port) {
		f.New("Sections", "end at MD %v; must reach the port at %v", last, port)
	}
	f.Add(fault.Between("LevelMD", l.LevelMD, 0, port), fault.Finite("Surface", l.Surface))
	last = l.LevelMD
	for i, x := range l.Fluids {
		f.AtIndex("Fluids", i, fault.Join("", fault.Above("BottomMD", x.BottomMD, last), fault.Above("Density", x.Density, 0)))
		last = x.BottomMD
	}
	if !(math.Abs(float64(last-port)) <= slackDepth) {
		f.New("Fluids", "end at MD %v; must end at the port, %v", last, port)
	}
	return f.Err()
}

// bore is a leg by volume: a point's volume is what lies between it and the
// port.
type bore struct {
	path    *Path
	surface float64
	port    float64
	area    []float64
	bottom  []float64 // MD of the sections' bottoms, cut at the port
	volume  []float64 // at the sections' bottoms
	whole   float64   // at surface
	density []float64 // of the fluids, from the top down
	top     []float64 // volume at each fluid's top, and 0 for the port at the end
}

func (l Leg) bore(path *Path, port unit.Length) *bore {
	b := &bore{path: path, surface: float64(l.Surface), port: float64(port)}
	for _, s := range l.Sections {
		b.area = append(b.area, float64(s.Area))
		b.bottom = append(b.bottom, math.Min(float64(s.BottomMD), b.port))
		if s.BottomMD >= port {
			break
		}
	}
	b.volume = make([]float64, len(b.area))
	for i := len(b.area) - 1; i > 0; i-- {
		b.volume[i-1] = b.volume[i] + b.area[i]*(b.bottom[i]-b.bottom[i-1])
	}
	b.whole = b.volume[0] + b.area[0]*b.bottom[0]
	b.top = append(b.top, b.at(float64(l.LevelMD)))
	for _, f := range l.Fluids {
		b.density = append(b.density, float64(f.Density))
		b.top = append(b.top, b.at(float64(f.BottomMD)))
	}
	b.top[len(b.top)-1] = 0
	return b
}

// at returns the volume below md.
func (b *bore) at(md float64) float64 {
	i := min(sort.SearchFloat64s(b.bottom, md), len(b.bottom)-1)
	return b.volume[i] + b.area[i]*math.Max(b.bottom[i]-md, 0)
}

// md is the inverse of at.
func (b *bore) md(volume float64) float64 {
	volume = math.Min(math.Max(volume, 0), b.whole)
	i := sort.Search(len(b.volume)-1, func(i int) bool { return b.volume[i] <= volume })
	return math.Min(math.Max(b.bottom[i]-(volume-b.volume[i])/b.area[i], 0), b.port)
}

func (b *bore) tvd(md float64) float64 {
	h, err := b.path.TVD(unit.Length(md))
	if err != nil {
		return math.NaN() // unreachable: the port was checked to lie on the path
	}
	return float64(h)
}

// weight is the pressure of a stretch of fluid between two volumes, as far as
// it lies between the port and surface.
func (b *bore) weight(density, top, bottom float64) float64 {
	if top, bottom = math.Min(top, b.whole), math.Max(bottom, 0); top <= bottom {
		return 0
	}
	return density * gravity * (b.tvd(b.md(bottom)) - b.tvd(b.md(top)))
}

// fallen is the pressure at the port after the leg has lost a volume.
func (b *bore) fallen(v float64) float64 {
	p := b.surface
	for i, rho := range b.density {
		p += b.weight(rho, b.top[i]-v, b.top[i+1]-v)
	}
	return p
}

// risen is the pressure at the port after a volume has come in from another leg.
func (b *bore) risen(v float64, from *bore) float64 {
	p := b.surface
	for i, rho := range b.density {
		p += b.weight(rho, b.top[i]+v, b.top[i+1]+v)
	}
	for i, rho := range from.density {
		// What was x above the port there is v − x above it here.
		p += b.weight(rho, v-from.top[i+1], v-math.Min(from.top[i], v))
	}
	return p
}

// events lists the volumes, in order, at which an interface of either leg
// comes to a change of section, to surface or to the port.
func events(falling, rising *bore) []float64 {
	end := falling.top[0]
	at := []float64{0, end}
	for _, x := range falling.top {
		for _, s := range append(falling.volume, falling.whole) {
			at = append(at, x-s)
		}
		for _, s := range append(rising.volume, rising.whole) {
			at = append(at, x+s)
		}
	}
	for _, x := range rising.top {
		for _, s := range append(rising.volume, rising.whole) {
			at = append(at, s-x)
		}
	}
	at = slices.DeleteFunc(at, func(v float64) bool { return !(v >= 0 && v <= end) })
	slices.Sort(at)
	return slices.Compact(at)
}
