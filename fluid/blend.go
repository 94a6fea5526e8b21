package fluid

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/fault"
)

// Batch is an amount of fluid; all batches of one calculation count at one
// temperature, and at atmospheric pressure.
type Batch struct {
	Volume  unit.Volume  `json:"volume"`
	Density unit.Density `json:"density"`
}

// Mass returns V·ρ.
//
// Range: any numbers; Validate asks for a volume and a density above zero.
//
// Source: definition of density.
func (b Batch) Mass() unit.Mass { return unit.Mass(float64(b.Volume) * float64(b.Density)) }

// Validate reports a volume or density that is not above zero.
func (b Batch) Validate() error {
	return fault.Join(scope, positive("a batch", "Volume", b.Volume, float64(b.Volume)), positive("a batch", "Density", b.Density, float64(b.Density)))
}

// Blend returns what batches make together where volumes add up:
//
//	V = Σ Vi,  ρ = Σ ρi·Vi / V
//
// Mass is balanced to rounding. Volumes of stock brines of one system nearly add
// up; CaCl2 of 11 lb/gal cut back to 10 with water shrinks by 0.8 %, and dry salt
// has no volume of its own to add: see Treat.
// Whether the blend stays in solution is not looked at: zinc with formate,
// calcium with formate or sulphate, and bromide with cold strong chloride drop
// solids.
//
// Errors: a batch without a positive volume and density.
//
// Source: conservation of mass.
func Blend(batches ...Batch) (Batch, error) {
	f := fault.In(scope)
	mass, volume := 0.0, 0.0
	for i, b := range batches {
		f.AtIndex("batches", i, b.Validate())
		mass += float64(b.Mass())
		volume += float64(b.Volume)
	}
	if len(batches) == 0 {
		f.New("batches", "is empty; must be one batch or more")
	}
	blend := Batch{unit.Volume(volume), unit.Density(mass / volume)}
	if !f.Any() {
		f.Add(blend.Validate())
	}
	if err := f.Err(); err != nil {
		return Batch{}, err
	}
	return blend, nil
}

// Adjustment is what brings a batch to another density.
type Adjustment struct {
	Before Batch `json:"before"`
	Added  Batch `json:"added"`
	After  Batch `json:"after"`
}

// Adjust returns how much of a fluid of density with brings have to a wanted
// density, where volumes add up: weighting up with a heavier brine, cutting back
// with a lighter one or water.
//
//	Va = V·(ρ' − ρ)/(ρa − ρ')
//
//	V, ρ    what there is
//	ρ'      wanted
//	Va, ρa  what is added
//
// A volume that shrinks a little on mixing weighs heavily here: cutting CaCl2 of
// 11 lb/gal back to 10 with water takes 13 % more than this says. For a single
// salt with dry salt or water use Treat.
//
// Errors: wanted must lie between have.Density and with; nothing is added where
// it is have.Density already.
//
// Source: conservation of mass.
func Adjust(have Batch, wanted, with unit.Density) (Adjustment, error) {
	if err := fault.Join(scope, fault.At("have", have.Validate()), positive("a density", "with", with, float64(with))); err != nil {
		return Adjustment{}, err
	}
	low, high := min(have.Density, with), max(have.Density, with)
	if !within(float64(wanted), float64(low), float64(high)) || wanted == with && with != have.Density {
		return Adjustment{}, outside("adjusting a batch of "+have.Density.Rounded(errorDigits)+" with "+with.Rounded(errorDigits), "wanted", wanted, low, high)
	}
	if wanted == have.Density {
		return Adjustment{Before: have, Added: Batch{Density: with}, After: have}, nil
	}
	added := Batch{unit.Volume(float64(have.Volume) * float64((wanted-have.Density)/(with-wanted))), with}
	after, err := Blend(have, added)
	if err != nil {
		return Adjustment{}, err
	}
	return Adjustment{have, added, after}, nil
}

// Steps shows the working.
func (a Adjustment) Steps() []working.Step {
	inputs := []working.Input{
		{Symbol: "V", Value: working.Of(a.Before.Volume)}, {Symbol: "ρ", Value: working.Of(a.Before.Density)},
		{Symbol: "ρa", Value: working.Of(a.Added.Density)}, {Symbol: "ρw", Value: working.Of(a.After.Density)},
	}
	return []working.Step{
		{Name: "volume to add", Symbol: "Va", Equation: "V*(ρw-ρ)/(ρa-ρw)", Inputs: inputs, Value: working.Of(a.Added.Volume), Source: "conservation of mass"},
		{Name: "volume after", Symbol: "Vw", Equation: "V+Va",
			Inputs: []working.Input{{Symbol: "V", Value: working.Of(a.Before.Volume)}, {Symbol: "Va", Value: working.Of(a.Added.Volume)}},
			Value:  working.Of(a.After.Volume), Source: "volumes add up"},
	}
}
