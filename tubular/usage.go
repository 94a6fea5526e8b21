package tubular

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// DesignFactors are the reserves that a load must keep to each resistance: load
// times factor must not pass the resistance.
type DesignFactors struct {
	Name     string  `json:"name"`
	Burst    float64 `json:"burst"` // to internal yield
	Collapse float64 `json:"collapse"`
	Axial    float64 `json:"axial"`    // to body yield, tension and compression
	Triaxial float64 `json:"triaxial"` // of von Mises stress to yield strength
	Source   string  `json:"source"`
}

// Validate reports factors below 1 or not numbers.
func (f DesignFactors) Validate() error {
	return fault.Join("tubular",
		fault.Between("Burst", f.Burst, 1, 10), fault.Between("Collapse", f.Collapse, 1, 10),
		fault.Between("Axial", f.Axial, 1, 10), fault.Between("Triaxial", f.Triaxial, 1, 10))
}

// WithoutReserve returns factors of 1: the resistances themselves.
func WithoutReserve() DesignFactors {
	return DesignFactors{Name: "without reserve", Burst: 1, Collapse: 1, Axial: 1, Triaxial: 1, Source: "the ratings themselves"}
}

// NorwegianShelf returns the minimum factors of NORSOK D-010: burst 1.10,
// collapse 1.10, axial 1.25, triaxial 1.25. From memory of the standard.
func NorwegianShelf() DesignFactors {
	return DesignFactors{Name: "NORSOK D-010", Burst: 1.10, Collapse: 1.10, Axial: 1.25, Triaxial: 1.25,
		Source: "NORSOK D-010, from memory"}
}

// Single figures from the literature, for factors of one's own.
const (
	SuggestedTubingBurst = 1.25 // on internal yield of tubing, at least. SPE PetroWiki, Tubing design factors
	SourStressShare      = 0.80 // of the yield strength, for C90 and T95 in sour service. SPE PetroWiki, Tubing design factors
	BullheadBurstShare   = 0.80 // of the burst rating, upper limit while bullheading. Crumpton 2018, p. 280
)

// Limit is a resistance that a load may come near to.
type Limit int

// The limits.
const (
	BurstLimit Limit = iota
	CollapseLimit
	AxialLimit
	TriaxialLimit
	ConnectionLimit // of the joints between pipes: see Connection
)

var limits = [...]string{"burst", "collapse", "axial", "triaxial", "connection"}

// String returns the limit's name.
func (l Limit) String() string {
	if l < 0 || int(l) >= len(limits) {
		return fmt.Sprintf("Limit(%d)", int(l))
	}
	return limits[l]
}

// MarshalText writes the limit's name.
func (l Limit) MarshalText() ([]byte, error) {
	if l < 0 || int(l) >= len(limits) {
		return nil, fault.NewIn("tubular", "Limit", "is %d; must be from 0 to %d", int(l), len(limits)-1)
	}
	return []byte(limits[l]), nil
}

// UnmarshalText reads a limit's name.
func (l *Limit) UnmarshalText(text []byte) error {
	for i, name := range limits {
		if string(text) == name {
			*l = Limit(i)
			return nil
		}
	}
	return fault.NewIn("tubular", "", "limit is %q; must be burst, collapse, axial, triaxial or connection", text)
}

// Usage is how much of each resistance a load uses, with the design factor in
// it: 1 is the limit and 0 no load. The safety factor that is really there is
// the design factor divided by the usage.
type Usage struct {
	Burst    float64 `json:"burst"`
	Collapse float64 `json:"collapse"`
	Axial    float64 `json:"axial"`
	Triaxial float64 `json:"triaxial"`
}

// Governing returns the limit that is used most, and how much of it; NaN where the
// use of one isn't a number.
func (u Usage) Governing() (Limit, float64) {
	limit, most := BurstLimit, u.Burst
	if most == most && !(u.Collapse <= most) {
		limit, most = CollapseLimit, u.Collapse
	}
	if most == most && !(u.Axial <= most) {
		limit, most = AxialLimit, u.Axial
	}
	if most == most && !(u.Triaxial <= most) {
		limit, most = TriaxialLimit, u.Triaxial
	}
	return limit, most
}

// Within tells whether no limit is passed.
func (u Usage) Within() bool {
	_, most := u.Governing()
	return most <= 1
}

// Usage returns how much of each resistance a load uses.
//
//	burst      f (pi - po) / internal yield          where pi > po
//	collapse   f (po - pi) / collapse(Fa/As, pi)     where po > pi
//	axial      f (|Fa|/As + E κ ro) / Y              real force, with bending
//	triaxial   f σv / Y                              see VonMises
//
// Burst and collapse have API's wall tolerance in them; the stresses are those
// of the nominal wall. Where tension leaves no collapse resistance at all, the
// use of collapse is counted as 1e6.
//
// Range: any load and design factors: neither is checked, see Body.
//
// Source: API TR 5C3 (2008), Addendum 2015; von Mises.
func (b *Body) Usage(l Load, f DesignFactors) Usage {
	return b.usage(l, f, float64(l.Axial)*b.perSteel)
}

// usage is that with collapse at an axial stress.
func (b *Body) usage(l Load, f DesignFactors, stress float64) Usage {
	F, pi, po := float64(l.Axial), float64(l.Inside), float64(l.Outside)
	e, h := b.terms(F, pi, po)
	c, t, σa := b.young*math.Abs(float64(l.Curvature)), float64(l.Torque)*b.shear, F*b.perSteel
	u := Usage{
		Axial:    f.Axial * (math.Abs(σa) + c*b.ro) * b.perYield,
		Triaxial: f.Triaxial * math.Sqrt(b.square(math.Abs(e), h*h, c, t*t)) * b.perYield,
	}
	switch dp := pi - po; {
	case dp < 0:
		const none = 1e6
		u.Collapse = min(none, -f.Collapse*dp/float64(b.Collapse(unit.Pressure(stress), l.Inside)))
	case dp > 0:
		u.Burst = f.Burst * dp * b.perBurst
	case dp != dp:
		u.Burst, u.Collapse = dp, dp
	}
	return u
}
