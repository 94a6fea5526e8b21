package sequence

import (
	"fmt"

	"completion.example/internal/fault"
)

// kinds reports what is wrong with the numbers of devices given by their kind.
func (p *Plan) kinds() error {
	var faults []error
	for i := range p.Devices {
		if k := p.Devices[i].Kind; k != nil {
			for _, m := range k.list() {
				if err := m.Validate(); err != nil {
					faults = append(faults, fault.At(fmt.Sprintf("devices[%d].kind", i), err))
				}
			}
		}
	}
	faults = append(faults, p.lines())
	return fault.Join("", faults...)
}

func firstOf(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func positive(name string, x float64) error {
	if !(x > 0) || !finite(x) {
		return fmt.Errorf("%s is missing, or not above zero", name)
	}
	return nil
}

func notNegative(name string, x float64) error {
	if !(x >= 0) || !finite(x) {
		return fmt.Errorf("%s must not be negative", name)
	}
	return nil
}
