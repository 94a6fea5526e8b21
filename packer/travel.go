package packer

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular/movement"
)

// Receptacle is the seal bore and the shoulder above it on which a locator
// stops. Depths are measured depths.
type Receptacle struct {
	ShoulderMD unit.Length `json:"shoulder_md"`
	TopMD      unit.Length `json:"top_md"` // of the polished bore
	BottomMD   unit.Length `json:"bottom_md"`
}

// SealStack is where the seals sit on the string, below its locator.
type SealStack struct {
	FirstMD unit.Length `json:"first_md"`
	LastMD  unit.Length `json:"last_md"`
}

// Length returns the length of the stack.
//
//	L = last − first
//
// Range: any depths; negative where the last is above the first.
//
// Source: definition.
func (s SealStack) Length() unit.Length { return s.LastMD - s.FirstMD }

// Travel is what the seals would do in one load case if nothing stopped them,
// downwards positive, from where they were landed.
type Travel struct {
	Case     string      `json:"case"`
	Movement unit.Length `json:"movement"`
}

// TravelOf returns the travel of a movement from landed to a load case, of a
// movement.Analysis or a movement.Case alike.
func TravelOf(name string, m movement.Movement) Travel {
	return Travel{Case: name, Movement: m.Total()}
}

// Stroke is the reach of the seals over all cases, the landed position among
// them.
type Stroke struct {
	Up       unit.Length `json:"up"` // both counted positive
	Down     unit.Length `json:"down"`
	UpCase   string      `json:"up_case"` // empty where no case moves that way
	DownCase string      `json:"down_case"`
}

// Total returns the whole stroke: the least length by which seals and bore must
// overlap, if nothing is to stop them and any engagement at all will do.
//
//	S = up + down
//
// Range: any lengths; they aren't checked.
//
// Source: definition.
func (s Stroke) Total() unit.Length { return s.Up + s.Down }

// StrokeOf returns the stroke over all cases. Every movement must be finite.
func StrokeOf(cases []Travel) (Stroke, error) {
	f := fault.In(scope)
	checkTravels(&f, cases)
	if err := f.Err(); err != nil {
		return Stroke{}, err
	}
	var s Stroke
	for _, c := range cases {
		if c.Movement > s.Down {
			s.Down, s.DownCase = c.Movement, c.Case
		}
		if -c.Movement > s.Up {
			s.Up, s.UpCase = -c.Movement, c.Case
		}
	}
	return s, nil
}

// Engagement is how the seals stand in one case.
type Engagement struct {
	Case     string      `json:"case"`
	Free     unit.Length `json:"free"`     // movement if nothing stopped them
	Movement unit.Length `json:"movement"` // with the locator on its shoulder at most
	// Height is of the locator above its shoulder. Stopped is set where the
	// movement would go farther: the string then bears on the shoulder with the
	// force that movement's Limited restraint gives.
	Height  unit.Length `json:"height"`
	Stopped bool        `json:"stopped"`
	Short   unit.Length `json:"short"` // the movement that the shoulder takes up

	Engaged unit.Length `json:"engaged"` // length of seal stack inside the bore; zero is unstung
	// Margin is Engaged less what must be; negative is too little.
	Margin unit.Length `json:"margin"`
}

// Engage returns how the seals stand in every case with the locator landed at a
// height above its shoulder, the landed case first.
//
//	m  = min(free movement, h)
//	e  = min(BottomMD, S - h + m + LastMD) - max(TopMD, S - h + m + FirstMD), at least 0
//
//	h  height of the locator above the shoulder when landed
//	S  measured depth of the shoulder
//
// Errors name every field out of range. Source: geometry.
func (p SealPlan) Engage(height unit.Length) ([]Engagement, error) {
	f := p.faults()
	f.Add(fault.AtLeast("height", height, 0))
	if err := f.Err(); err != nil {
		return nil, err
	}
	engaged := []Engagement{p.engage(Travel{Case: "as landed"}, height)}
	for _, c := range p.Cases {
		engaged = append(engaged, p.engage(c, height))
	}
	for _, e := range engaged {
		if err := finiteResult("seal engagement", float64(e.Height), float64(e.Engaged), float64(e.Margin)); err != nil {
			return nil, err
		}
	}
	return engaged, nil
}

func (p SealPlan) engage(c Travel, height unit.Length) Engagement {
	e := Engagement{Case: c.Case, Free: c.Movement, Movement: min(c.Movement, height)}
	e.Height = height - e.Movement
	e.Short = c.Movement - e.Movement
	e.Stopped = e.Short > 0
	at := p.Bore.ShoulderMD - e.Height
	e.Engaged = max(0, min(p.Bore.BottomMD, at+p.Seals.LastMD)-max(p.Bore.TopMD, at+p.Seals.FirstMD))
	e.Margin = e.Engaged - p.Engaged
	return e
}

// Restraint returns the seals for package movement: free to rise, stopped by the
// locator after the height below it.
func Restraint(bore, height unit.Length) movement.SealBore {
	return movement.SealBore{Bore: bore, Restraint: movement.Limited, Up: unit.Length(math.Inf(1)), Down: height}
}

func checkTravels(f *fault.Faults, cases []Travel) {
	for i, c := range cases {
		if !finite(c.Movement) {
			f.New(fault.Index("Cases", i)+".Movement", "of %s is %v; must be finite", c.Case, c.Movement)
		}
	}
}

func (p SealPlan) faults() fault.Faults {
	f := fault.In(scope)
	f.Add(fault.AtLeast("Bore.Shoulder", p.Bore.ShoulderMD, 0))
	f.Add(fault.AtLeast("Bore.Top", p.Bore.TopMD, 0))
	if !finite(p.Bore.BottomMD) || !(p.Bore.BottomMD > p.Bore.TopMD) {
		f.New("Bore.Bottom", "is %v; must be below the top of the bore, %v", p.Bore.BottomMD, p.Bore.TopMD)
	}
	f.Add(fault.AtLeast("Seals.First", p.Seals.FirstMD, 0))
	if !finite(p.Seals.LastMD) || !(p.Seals.LastMD > p.Seals.FirstMD) {
		f.New("Seals.Last", "is %v; must be below the first seal, %v", p.Seals.LastMD, p.Seals.FirstMD)
	}
	f.Add(fault.AtLeast("Engaged", p.Engaged, 0))
	if most := min(p.Seals.Length(), p.Bore.BottomMD-p.Bore.TopMD); p.Engaged > most && most > 0 {
		f.New("Engaged", "is %v; must be at most %s, the shorter of stack and bore", p.Engaged, most.Rounded(5))
	}
	f.Add(fault.AtLeast("Clearance", p.Clearance, 0))
	checkTravels(&f, p.Cases)
	return f
}

// Validate reports everything that is wrong with p.
func (p SealPlan) Validate() error {
	f := p.faults()
	return f.Err()
}

func (e Engagement) String() string {
	return fmt.Sprintf("%s: %s engaged, locator %s above its shoulder", e.Case, e.Engaged.Rounded(4), e.Height.Rounded(4))
}
