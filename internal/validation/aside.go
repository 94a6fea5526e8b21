package validation

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strings"
)

//go:embed aside.csv
var asides string

// Aside is a figure that was read in a source and is no case, with the reason.
type Aside struct{ ID, Capability, Quantity, Printed, Source, Why string }

var asideHeader = []string{"id", "capability", "quantity", "printed", "source", "why"}

// Asides lists them in the order of the file.
func Asides() ([]Aside, error) {
	rows, err := csv.NewReader(strings.NewReader(asides)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("validation: aside.csv: %w", err)
	}
	if len(rows) == 0 || !slices.Equal(rows[0], asideHeader) {
		return nil, fmt.Errorf("validation: aside.csv: the first line must be %s", strings.Join(asideHeader, ","))
	}
	var all []Aside
	for _, r := range rows[1:] {
		all = append(all, Aside{r[0], r[1], r[2], r[3], r[4], r[5]})
	}
	return all, nil
}
