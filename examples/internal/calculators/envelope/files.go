package envelope

import (
	"fmt"
	"os"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/strictjson"
	"completion.example/packer"
	"completion.example/tubular"
)

// namedLoad is a load as a file of loads has it.
type namedLoad struct {
	Name         string        `json:"name"`
	Differential unit.Pressure `json:"differential"`
	Axial        unit.Force    `json:"axial"`
}

// check looks at what the library doesn't see.
func (in inputs) check() error {
	if !(in.hand >= 0 && in.hand <= 1) {
		return fmt.Errorf("in-hand is %v; it must be from 0 to 1", in.hand)
	}
	if !(in.seat.Casing > in.seat.Bore && in.seat.Bore > 0) {
		return fmt.Errorf("casing is %v and bore %v; want a casing larger than the seal bore, both above 0", in.seat.Casing, in.seat.Bore)
	}
	return nil
}

// cases are the load of the flags and those of the file.
func (in inputs) cases(own packer.Load) ([]namedLoad, error) {
	loads := []namedLoad{{"load", own.Differential, own.Axial}}
	if in.loads == "" {
		return loads, nil
	}
	text, err := os.ReadFile(in.loads)
	if err != nil {
		return nil, err
	}
	var more []namedLoad
	if err := strictjson.Unmarshal(text, &more); err != nil {
		return nil, fmt.Errorf("%s: %w", in.loads, err)
	}
	return append(loads, more...), nil
}

// polygon is the envelope of the file, or else of the ratings.
func (in inputs) polygon() (packer.Polygon, error) {
	if in.file == "" {
		in.ratings.Area = tubular.AnnularCapacity(in.seat.Casing, in.seat.Bore)
		return in.ratings.Polygon()
	}
	f, err := os.Open(in.file)
	if err != nil {
		return packer.Polygon{}, err
	}
	defer f.Close()
	return packer.ReadPolygon(f)
}
