package catalogue

import (
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
)

// Grade is an API grade of steel.
type Grade struct {
	Name          string        `json:"name"`
	Yield         unit.Pressure `json:"yield"`          // specified minimum
	GreatestYield unit.Pressure `json:"greatest_yield"` // specified maximum
	Tensile       unit.Pressure `json:"tensile"`        // specified minimum
}

// Grades returns the API grades, weakest first.
//
//	least yield, greatest yield and tensile strength, in ksi = 1,000 psi
//
// Source: API Spec 5CT / ISO 11960, tensile requirements; from memory. The
// published joint strengths of J55, K55 and L80 confirm their tensile strength.
func Grades() []Grade {
	return []Grade{
		{"H40", 40 * unit.KSI, 80 * unit.KSI, 60 * unit.KSI},
		{"J55", 55 * unit.KSI, 80 * unit.KSI, 75 * unit.KSI},
		{"K55", 55 * unit.KSI, 80 * unit.KSI, 95 * unit.KSI},
		{"M65", 65 * unit.KSI, 85 * unit.KSI, 85 * unit.KSI},
		{"N80", 80 * unit.KSI, 110 * unit.KSI, 100 * unit.KSI},
		{"L80", 80 * unit.KSI, 95 * unit.KSI, 95 * unit.KSI},
		{"C90", 90 * unit.KSI, 105 * unit.KSI, 100 * unit.KSI},
		{"R95", 95 * unit.KSI, 110 * unit.KSI, 105 * unit.KSI},
		{"C95", 95 * unit.KSI, 110 * unit.KSI, 105 * unit.KSI}, // withdrawn since, still in old wells
		{"T95", 95 * unit.KSI, 110 * unit.KSI, 105 * unit.KSI},
		{"C110", 110 * unit.KSI, 120 * unit.KSI, 115 * unit.KSI},
		{"P110", 110 * unit.KSI, 140 * unit.KSI, 125 * unit.KSI},
		{"Q125", 125 * unit.KSI, 150 * unit.KSI, 135 * unit.KSI},
	}
}

// FindGrade returns the API grade of that name, written as L80, L-80 or l80. The
// error wraps ErrNotFound and lists the grades.
func FindGrade(name string) (Grade, error) {
	wanted := strings.ToUpper(strings.ReplaceAll(strings.TrimSpace(name), "-", ""))
	var have []string
	for _, g := range Grades() {
		if g.Name == wanted {
			return g, nil
		}
		have = append(have, g.Name)
	}
	return Grade{}, fault.NewIn("catalogue", "", "grade %q: %w: there are %s", name, ErrNotFound, strings.Join(have, ", "))
}

// Material returns steel of this grade. See tubular.Steel for its elastic
// properties.
func (g Grade) Material() tubular.Material { return tubular.Steel().WithStrength(g.Yield, g.Tensile) }

// String returns the grade's name.
func (g Grade) String() string { return g.Name }

// MarshalText writes the grade's name.
func (g Grade) MarshalText() ([]byte, error) {
	if g.Name == "" {
		return nil, fault.Join("catalogue", fault.Given("Name", g.Name))
	}
	return []byte(g.Name), nil
}

// UnmarshalText reads the name of an API grade.
func (g *Grade) UnmarshalText(text []byte) error {
	found, err := FindGrade(string(text))
	if err != nil {
		return err
	}
	*g = found
	return nil
}
