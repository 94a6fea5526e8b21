package catalogue

import (
	"encoding"
	"fmt"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
)

// Joints are a length of one pipe in a string.
type Joints struct {
	OD     unit.Length          `json:"od"`
	Weight unit.WeightPerLength `json:"weight"`
	Length unit.Length          `json:"length"`
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
	f := fault.In("catalogue")
	for i, j := range t {
		for _, q := range []encoding.TextMarshaler{j.OD, j.Weight, j.Length} {
			if _, err := q.MarshalText(); err != nil {
				f.At(fmt.Sprintf("part %d", i+1), err)
			}
		}
	}
	return []byte(t.String()), f.Err()
}

// UnmarshalText reads the text in the type's doc. Empty text is an empty tally.
func (t *Tally) UnmarshalText(text []byte) error {
	var read Tally
	f := fault.In("catalogue")
	if s := strings.TrimSpace(string(text)); s != "" {
		for part := range strings.SplitSeq(s, ";") {
			j, err := joints(part)
			if err != nil {
				f.At(fmt.Sprintf("part %d", len(read)+1), err)
			}
			read = append(read, j)
		}
	}
	if err := f.Err(); err != nil {
		return err
	}
	*t = read
	return nil
}

func joints(part string) (Joints, error) {
	var j Joints
	fields := strings.Split(part, ",")
	if len(fields) != 3 {
		return j, fault.New("", "is %q; must be size, weight, length, such as \"3-1/2 in, 9.3 lb/ft, 4000 ft\"", strings.TrimSpace(part))
	}
	f := fault.In("catalogue")
	for i, q := range []encoding.TextUnmarshaler{&j.OD, &j.Weight, &j.Length} {
		f.Add(q.UnmarshalText([]byte(strings.TrimSpace(fields[i]))))
	}
	return j, f.Err()
}

// Sections looks up each part of t in c and returns the string in a grade.
func (c Catalogue) Sections(t Tally, g Grade) ([]tubular.HangingSection, error) {
	var sections []tubular.HangingSection
	f := fault.In("catalogue")
	f.At("Grade", g.Material().Validate())
	for i, j := range t {
		e, err := c.Find(j.OD, j.Weight)
		if err != nil {
			f.At(fmt.Sprintf("part %d", i+1), err)
		}
		f.At(fmt.Sprintf("part %d", i+1), fault.Finite("Length", j.Length))
		sections = append(sections, tubular.HangingSection{Pipe: e.Pipe(g), Length: j.Length})
	}
	if err := f.Err(); err != nil {
		return nil, err
	}
	return sections, nil
}
