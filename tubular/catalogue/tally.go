package catalogue

import (
	"encoding"
	"errors"
	"fmt"
	"math"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
)

// Joints are a length of one pipe in a string.
type Joints struct {
	OD     unit.Length
	Weight unit.WeightPerLength
	Length unit.Length
}

// Tally is a string from the top down, by size, weight and length. As text it is
//
//	3-1/2 in, 9.3 lb/ft, 4000 ft; 2-7/8 in, 6.5 lb/ft, 3000 ft
type Tally []Joints

// String writes t without loss.
func (t Tally) String() string {
	parts := make([]string, len(t))
	for i, j := range t {
		parts[i] = fmt.Sprintf("%v, %v, %v", j.OD, j.Weight, j.Length)
	}
	return strings.Join(parts, "; ")
}

// MarshalText writes t without loss; NaN and infinities are errors.
func (t Tally) MarshalText() ([]byte, error) {
	var faults []error
	for i, j := range t {
		for _, q := range []encoding.TextMarshaler{j.OD, j.Weight, j.Length} {
			if _, err := q.MarshalText(); err != nil {
				faults = append(faults, fmt.Errorf("catalogue: Tally[%d]: %w", i, err))
			}
		}
	}
	return []byte(t.String()), errors.Join(faults...)
}

// UnmarshalText reads the text in the type's doc. Empty text is an empty tally.
func (t *Tally) UnmarshalText(text []byte) error {
	var read Tally
	var faults []error
	if s := strings.TrimSpace(string(text)); s != "" {
		for part := range strings.SplitSeq(s, ";") {
			j, err := joints(part)
			if err != nil {
				faults = append(faults, fmt.Errorf("catalogue: part %d of the string: %w", len(read)+1, err))
			}
			read = append(read, j)
		}
	}
	if err := errors.Join(faults...); err != nil {
		return err
	}
	*t = read
	return nil
}

func joints(part string) (Joints, error) {
	var j Joints
	fields := strings.Split(part, ",")
	if len(fields) != 3 {
		return j, fmt.Errorf("%q: want size, weight, length, such as \"3-1/2 in, 9.3 lb/ft, 4000 ft\"", strings.TrimSpace(part))
	}
	var faults []error
	for i, q := range []encoding.TextUnmarshaler{&j.OD, &j.Weight, &j.Length} {
		faults = append(faults, q.UnmarshalText([]byte(strings.TrimSpace(fields[i]))))
	}
	return j, errors.Join(faults...)
}

// Sections looks up each part of t in c and returns the string in a grade.
func (c Catalogue) Sections(t Tally, g Grade) ([]tubular.Section, error) {
	var sections []tubular.Section
	var faults []error
	if err := g.Material().Validate(); err != nil {
		faults = append(faults, fmt.Errorf("catalogue: grade %q: %w", g.Name, err))
	}
	for i, j := range t {
		e, err := c.Find(j.OD, j.Weight)
		if err != nil {
			faults = append(faults, fmt.Errorf("part %d of the string: %w", i+1, err))
		}
		if math.IsNaN(float64(j.Length)) || math.IsInf(float64(j.Length), 0) {
			faults = append(faults, fmt.Errorf("catalogue: part %d of the string: length is %v; it must be finite", i+1, j.Length))
		}
		sections = append(sections, tubular.Section{Pipe: e.Pipe(g), Length: j.Length})
	}
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	return sections, nil
}
