package choke

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
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
		return nil, fault.NewIn(scope, "", "table is empty; must begin with a first line")
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
		return nil, fault.NewIn(scope, "line 1", "is %q; must be position,travel,coefficient or position,travel,opening,discharge", header)
	}
	var t Table
	f := fault.In(scope)
	for i, row := range rows[1:] {
		p := Position{Name: row[0]}
		var errTravel, errC error
		p.Travel, errTravel = strconv.ParseFloat(row[1], 64)
		p.Coefficient, errC = coefficient(row)
		f.At(fmt.Sprintf("row %d", i+1), fault.Join("", fault.At("travel", errTravel), errC))
		t = append(t, p)
	}
	if err := f.Err(); err != nil {
		return nil, err
	}
	return t, t.Validate()
}

func opening(row []string) (unit.FlowCoefficient, error) {
	var a unit.Area
	errA := a.UnmarshalText([]byte(row[2]))
	cd, errC := strconv.ParseFloat(row[3], 64)
	if errC == nil {
		errC = fault.AboveTo("discharge", cd, 0, 1.1)
	}
	return Coefficient(cd, a), fault.Join("", fault.At("opening", errA), errC)
}
