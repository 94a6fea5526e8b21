package flow

import (
	"fmt"
	"strings"

	"completion.example/internal/fault"
)

// Model is the law of a rheology. The zero value is Newtonian.
type Model int

// The laws, each with one more freedom than the one before or beside it.
const (
	ModelNewtonian       Model = iota // τ = μ γ
	ModelBingham                      // τ = YP + PV γ
	ModelPowerLaw                     // τ = K γⁿ
	ModelHerschelBulkley              // τ = τ0 + K γⁿ
)

var modelNames = [...]string{"newtonian", "bingham", "power-law", "herschel-bulkley"}

// Models lists all laws.
func Models() []Model {
	return []Model{ModelNewtonian, ModelBingham, ModelPowerLaw, ModelHerschelBulkley}
}

func (m Model) String() string {
	if m < 0 || int(m) >= len(modelNames) {
		return fmt.Sprintf("Model(%d)", int(m))
	}
	return modelNames[m]
}

// MarshalText writes the law's name.
func (m Model) MarshalText() ([]byte, error) {
	if m < 0 || int(m) >= len(modelNames) {
		return nil, fault.NewIn("flow", "", "rheological model is %v; must be a known one", m)
	}
	return []byte(m.String()), nil
}

// UnmarshalText reads the law's name.
func (m *Model) UnmarshalText(text []byte) error {
	for i, name := range modelNames {
		if string(text) == name {
			*m = Model(i)
			return nil
		}
	}
	return fault.NewIn("flow", "", "rheological model is %q; must be one of %s", text, strings.Join(modelNames[:], ", "))
}

// parameters is the number of constants that a fit has to find.
func (m Model) parameters() int {
	switch m {
	case ModelNewtonian:
		return 1
	case ModelBingham, ModelPowerLaw:
		return 2
	case ModelHerschelBulkley:
		return 3
	}
	return 0
}
