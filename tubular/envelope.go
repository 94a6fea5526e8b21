package tubular

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Envelope is the outline, in axial force and differential pressure, of what a
// pipe body bears. Without bending and torque.
type Envelope struct {
	Triaxial      []LoadPoint   `json:"triaxial"`       // closed: the first point is repeated at the end
	Collapse      []LoadPoint   `json:"collapse"`       // from compression to tension; ends where API gives no formula
	InternalYield unit.Pressure `json:"internal_yield"` // differential
	BodyYield     unit.Force    `json:"body_yield"`     // tension; compression is its negative
}

// LoadPoint is a point of an envelope.
type LoadPoint struct {
	Axial        unit.Force    `json:"axial"`        // real force, tension positive
	Differential unit.Pressure `json:"differential"` // inside minus outside
}

// Outline says how an envelope is to be drawn.
type Outline struct {
	// Backing is the lesser of the two pressures: the one outside for a positive
	// differential, the one inside for a negative one.
	Backing unit.Pressure `json:"backing"`
	Factors DesignFactors `json:"factors"` // every limit is divided by its factor
	Points  int           `json:"points"`  // of each curve, 8 to 100,000; zero stands for 180
}

// Envelope returns the outline of what p bears. Every point of the triaxial
// curve has the same von Mises stress at the inner wall: with θ around the
// circle
//
//	Δp = Y sin θ As / (√3 Ao)
//	Fa = Y cos θ As + pi Ai - po Ao
//
// Errors: faults of p and o; those of CollapseUnderLoad.
//
// Source: follows from Lamé and von Mises; the collapse curve is that of
// CollapseUnderLoad.
func (p Pipe) Envelope(o Outline) (Envelope, error) {
	f := fault.In("tubular")
	f.Add(p.rateable(), fault.At("Outline.Factors", o.Factors.Validate()), fault.Finite("Outline.Backing", o.Backing))
	if o.Points != 0 && (o.Points < 8 || o.Points > 100_000) {
		f.New("Outline.Points", "is %d; must be from 8 to 100000, or 0 for 180", o.Points)
	}
	if err := f.Err(); err != nil {
		return Envelope{}, err
	}
	if o.Points == 0 {
		o.Points = 180
	}
	e := Envelope{
		InternalYield: p.InternalYield() / unit.Pressure(o.Factors.Burst),
		BodyYield:     p.BodyYield() / unit.Force(o.Factors.Axial),
		Triaxial:      p.triaxial(o),
	}
	var err error
	if e.Collapse, err = p.collapseOutline(o); err != nil {
		return Envelope{}, err
	}
	for _, at := range e.Triaxial {
		if err := fault.Join("tubular", finiteResult("axial force", at.Axial), finiteResult("differential pressure", at.Differential)); err != nil {
			return Envelope{}, err
		}
	}
	return e, nil
}

func (p Pipe) triaxial(o Outline) []LoadPoint {
	As, Ai, Ao := float64(p.SteelArea()), float64(p.InnerArea()), float64(p.OuterArea())
	Y := float64(p.Material.Yield) / o.Factors.Triaxial
	points := make([]LoadPoint, o.Points+1)
	for i := range o.Points {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(o.Points))
		dp := Y * sin * As / (math.Sqrt(3) * Ao)
		pi, po := float64(o.Backing)+max(dp, 0), float64(o.Backing)-min(dp, 0)
		points[i] = LoadPoint{Axial: unit.Force(Y*cos*As + pi*Ai - po*Ao), Differential: unit.Pressure(dp)}
	}
	points[o.Points] = points[0]
	return points
}

func (p Pipe) collapseOutline(o Outline) ([]LoadPoint, error) {
	b, err := p.Prepare()
	if err != nil {
		return nil, err
	}
	limit := p.BodyYield() / unit.Force(o.Factors.Axial)
	var points []LoadPoint
	for i := range o.Points {
		F := limit * unit.Force(2*float64(i)/float64(o.Points-1)-1)
		σa := unit.Pressure(float64(F) * b.perSteel)
		if EquivalentYield(p.Material.Yield, σa+o.Backing) < leastYield {
			break
		}
		points = append(points, LoadPoint{Axial: F, Differential: -b.Collapse(σa, o.Backing) / unit.Pressure(o.Factors.Collapse)})
	}
	return points, nil
}
