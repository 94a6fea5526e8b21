package hydrostatics

import (
	"encoding"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strings"

	"completion.example/internal/fault"
)

// ReadSurvey reads the stations of a directional survey from CSV. The first line
// names the columns, in any order and in upper or lower case:
//
//	MD          or measured depth, depth
//	inclination or inc, incl
//	azimuth     or azi, azim
//
// and after a name may stand the unit of its column, as in MD/ft, MD (ft) or
// MD [ft]; where it doesn't, each value carries its own: "173.0 ft", "0.34 deg".
// Columns that follow from these are passed over: TVD, north, east and dogleg
// severity (DLS). Lines that begin with # are comments.
//
// Errors: every fault with its line and column, up to the first fifty. Whether
// the depths rise is for NewPath to say.
//
// Source: the file, whose header says columns and units.
func ReadSurvey(r io.Reader) ([]Station, error) {
	in := csv.NewReader(r)
	in.Comment, in.TrimLeadingSpace, in.ReuseRecord = '#', true, true
	head, err := in.Read()
	if err != nil {
		return nil, fault.NewIn(scope, "line 1", "is missing: %w", err)
	}
	columns, err := surveyHead(head)
	if err != nil {
		return nil, err
	}
	var stations []Station
	f := fault.In(scope)
	for wrong := 0; wrong < 50; {
		line, err := in.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			f.Add(err)
			break
		}
		var s Station
		at, _ := in.FieldPos(0)
		to := [...]encoding.TextUnmarshaler{surveyMD: &s.MD, surveyInclination: &s.Inclination, surveyAzimuth: &s.Azimuth}
		for i, c := range columns {
			if c.of == surveyDerived {
				continue
			}
			if err := to[c.of].UnmarshalText([]byte(strings.TrimSpace(line[i]) + c.unit)); err != nil {
				f.At(fmt.Sprintf("line %d.%s", at, surveyNames[c.of][0]), err)
				wrong++
			}
		}
		stations = append(stations, s)
	}
	if err := f.Err(); err != nil {
		return nil, err
	}
	return stations, nil
}

// What a column of a survey holds.
const (
	surveyMD = iota
	surveyInclination
	surveyAzimuth
	surveyDerived
)

var surveyNames = [...][]string{
	surveyMD:          {"MD", "measured depth", "depth"},
	surveyInclination: {"inclination", "inc", "incl"},
	surveyAzimuth:     {"azimuth", "azi", "azim"},
	surveyDerived:     {"TVD", "north", "east", "N/S", "E/W", "DLS", "dogleg severity"},
}

type surveyColumn struct {
	of   int
	unit string // with a space before it, or empty
}

func surveyHead(head []string) ([]surveyColumn, error) {
	f := fault.In(scope)
	columns := make([]surveyColumn, len(head))
	seen := map[int]bool{}
	for i, text := range head {
		text = strings.TrimSpace(strings.TrimPrefix(text, "\ufeff"))
		of, unit := surveyName(text)
		switch {
		case of < 0:
			f.New("line 1", "has a column %q; must be MD, inclination or azimuth, or TVD, north, east or DLS", text)
		case seen[of] && of != surveyDerived:
			f.New("line 1", "has the column %s twice; must have it once", surveyNames[of][0])
		}
		if of >= 0 {
			seen[of] = true
		}
		columns[i] = surveyColumn{of, unit}
	}
	for of := range surveyDerived {
		if !seen[of] {
			f.New("line 1", "has no column %s; must have one", surveyNames[of][0])
		}
	}
	return columns, f.Err()
}

// surveyName takes a column's name and unit apart; of is -1 for no column.
func surveyName(text string) (of int, unit string) {
	name := text
	if i := strings.IndexAny(text, "(["); i > 0 {
		name, unit = text[:i], " "+strings.Trim(text[i:], "()[] ")
	}
	first, _, _ := strings.Cut(name, "/")
	for _, whole := range []string{name, first} {
		for of, names := range surveyNames {
			if slices.ContainsFunc(names, func(n string) bool { return strings.EqualFold(n, strings.TrimSpace(whole)) }) {
				if rest := strings.TrimPrefix(name[len(whole):], "/"); rest != "" {
					unit = " " + strings.TrimSpace(rest)
				}
				return of, unit
			}
		}
	}
	return -1, ""
}
