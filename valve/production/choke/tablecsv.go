package choke

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"completion.example/hydrostatics/unit"
)

// ReadTable reads a choke's positions as CSV. The first line names the columns:
//
//	position,travel,coefficient          shut,0,0 Cv
//	position,travel,opening,discharge    3,0.4,0.11 in2,0.85
//
// coefficient is a flow coefficient with its unit; opening an area, turned into
// one by its discharge coefficient. Lines that begin with # are left out. The
// error names every faulty line.
func ReadTable(r io.Reader) (Table, error) {
	in := csv.NewReader(r)
	in.Comment, in.TrimLeadingSpace = '#', true
	rows, err := in.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("choke: table: %w", err)
	}
	if len(rows) == 0 {
		return nil, errors.New("choke: table is empty")
	}
	var coefficient func(row []string) (unit.FlowCoefficient, error)
	switch header := strings.Join(rows[0], ","); header {
	case "position,travel,coefficient":
		coefficient = func(row []string) (c unit.FlowCoefficient, err error) {
			err = c.UnmarshalText([]byte(row[2]))
			return c, err
		}
	case "position,travel,opening,discharge":
		coefficient = opening
	default:
		return nil, fmt.Errorf("choke: table begins with %q; it must be position,travel,coefficient or position,travel,opening,discharge", header)
	}
	var t Table
	var faults []error
	for i, row := range rows[1:] {
		p := Position{Name: row[0]}
		var errTravel, errC error
		p.Travel, errTravel = strconv.ParseFloat(row[1], 64)
		p.Coefficient, errC = coefficient(row)
		if err := errors.Join(errTravel, errC); err != nil {
			faults = append(faults, fmt.Errorf("choke: table row %d (%q): %w", i+1, row[0], err))
		}
		t = append(t, p)
	}
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	return t, t.Validate()
}

func opening(row []string) (unit.FlowCoefficient, error) {
	var a unit.Area
	errA := a.UnmarshalText([]byte(row[2]))
	cd, errC := strconv.ParseFloat(row[3], 64)
	if errC == nil {
		errC = within("discharge", cd, 0, 1.1)
	}
	return Coefficient(cd, a), errors.Join(errA, errC)
}
