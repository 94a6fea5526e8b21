package capacity

import (
	"errors"
	"fmt"
)

func (in inputs) check() error {
	var faults []error
	if err := in.pipe().Validate(); err != nil {
		faults = append(faults, err)
	}
	if !(in.hole > in.od) {
		faults = append(faults, fmt.Errorf("hole is %v; it must be larger than the pipe's outside diameter of %v", in.hole, in.od))
	}
	if !(in.length > 0) {
		faults = append(faults, fmt.Errorf("length is %v; it must be above 0 ft", in.length))
	}
	return errors.Join(faults...)
}
