package controlline

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Ratings are the resistances of the line's wall, each alone, at its thinnest.
type Ratings struct {
	ThinWall    unit.Length   `json:"thin_wall"`    // (1 − tolerance)·t
	Slenderness float64       `json:"slenderness"`  // OD over that wall
	Working     unit.Pressure `json:"working"`      // inside: Barlow with a further 0.875, as tubing tables print it
	YieldOpen   unit.Pressure `json:"yield_open"`   // inside: first yield of the bore, no axial force
	YieldClosed unit.Pressure `json:"yield_closed"` // inside: first yield of the bore, capped ends
	Collapse    unit.Pressure `json:"collapse"`     // outside: yield-strength collapse

	// Beyond says why Collapse may be too good; empty where it isn't.
	Beyond string `json:"beyond"`

	line Line
}

// Ratings returns what the wall stands from inside and outside.
//
//	tw = (1 − a)·t
//	working   0.875·2·Y·tw/D                     Barlow, as tables of small tubing use it
//	open      Y·(D² − d²)/√(3·D⁴ + d⁴)           von Mises with Lamé, no axial force
//	closed    Y·(D² − d²)/(√3·D²)                von Mises with Lamé, capped ends
//	collapse  2·Y·(D/tw − 1)/(D/tw)²             yield-strength collapse
//
//	D   OD
//	d   D − 2·tw
//	t   nominal wall, a its tolerance
//	Y   yield strength at the line's temperature
//
// Yield-strength collapse governs small, thick-walled line. Above the slenderness
// at which API's plastic regime begins for the yield strength, Beyond says so.
// Neither axial load nor ovality is in the figures; the maker's rating holds.
//
// It is an error if OD, wall or tolerance are out of range, or if the yield strength
// isn't positive. Nothing else of the line is asked for.
//
// Source: API TR 5C3 / Bul 5C3 (1985), 3.1.1 and 2.2; first yield from Lamé's
// stresses.
func (l Line) Ratings() (Ratings, error) {
	f := fault.In(scope)
	f.Add(l.checkWall())
	if l.Yield == 0 {
		f.New("Yield", "is %v; must be given for a rating", l.Yield)
	}
	if err := f.Err(); err != nil {
		return Ratings{}, err
	}
	Y, D := float64(l.Yield), float64(l.OD)
	tw := (1 - l.WallTolerance) * float64(l.Wall)
	d := D - 2*tw
	x := D / tw
	squares := 4 * tw * (D - tw) // D² − d²
	r := Ratings{
		ThinWall:    unit.Length(tw),
		Slenderness: x,
		Working:     unit.Pressure(0.875 * 2 * Y * tw / D),
		YieldOpen:   unit.Pressure(Y * squares / math.Sqrt(3*D*D*D*D+d*d*d*d)),
		YieldClosed: unit.Pressure(Y * squares / (math.Sqrt(3) * D * D)),
		Collapse:    unit.Pressure(2 * Y * (x - 1) / (x * x)),
		line:        l,
	}
	if limit := yieldCollapseLimit(l.Yield); x > limit {
		r.Beyond = "the wall is thinner than API's limit of yield-strength collapse for this yield strength; other regimes collapse earlier"
	}
	return r, nil
}

// yieldCollapseLimit is the slenderness up to which yield-strength collapse
// governs, as printed for the next higher grade.
//
// Source: API Bul 5C3 (1985), Table of yield collapse pressure formula range.
func yieldCollapseLimit(yield unit.Pressure) float64 {
	for _, g := range [...]struct{ ksi, limit float64 }{
		{40, 16.40}, {55, 14.81}, {80, 13.38}, {95, 12.85}, {110, 12.44}, {125, 12.11},
	} {
		if yield <= unit.Pressure(g.ksi)*unit.KSI {
			return g.limit
		}
	}
	return 0
}

// Outside is the pressure around a line: at the panel's depth and at the device,
// with a straight line between.
type Outside struct {
	Top    unit.Pressure `json:"top"`
	Bottom unit.Pressure `json:"bottom"`
}

// Load is a line's wall against its ratings.
type Load struct {
	Top      unit.Pressure `json:"top"` // inside minus outside
	Bottom   unit.Pressure `json:"bottom"`
	Burst    float64       `json:"burst"`    // highest differential over the working pressure; negative if outside prevails everywhere
	Collapse float64       `json:"collapse"` // highest outside-minus-inside over the collapse pressure; negative if inside prevails everywhere
	Ratings  Ratings       `json:"ratings"`
}

// Load returns how a pressure at the panel loads the wall at both ends, where
// the differential is highest and lowest. A vented line has a panel pressure of
// zero.
//
// Errors as for Ratings and Head, and for pressures that aren't finite.
//
//	top = panel − around, bottom = panel + head − around
//
// Source: balance of pressures.
func (l Line) Load(q LineFluid, panel unit.Pressure, around Outside) (Load, error) {
	r, err := l.Ratings()
	f := fault.In(scope)
	f.Add(err)
	f.Add(fault.AtLeast("panel", panel, 0), fault.AtLeast("around.Top", around.Top, 0), fault.AtLeast("around.Bottom", around.Bottom, 0))
	if err := f.Err(); err != nil {
		return Load{}, err
	}
	head, err := l.Head(q)
	if err != nil {
		return Load{}, err
	}
	load := Load{Top: panel - around.Top, Bottom: panel + head - around.Bottom, Ratings: r}
	load.Burst = float64(max(load.Top, load.Bottom) / r.Working)
	load.Collapse = float64(max(-load.Top, -load.Bottom) / r.Collapse)
	return load, nil
}
