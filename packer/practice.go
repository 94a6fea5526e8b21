package packer

import "fmt"

// PullLimit is a share of a rating that the trade is ready to use in a pull.
type PullLimit struct {
	Name   string  `json:"name"`
	Least  float64 `json:"least"` // the careful end of what is in use
	Most   float64 `json:"most"`
	Source string  `json:"source"`
}

// PullLimits returns the shares in use, for Component.Share. They are common
// practice, recalled and not read in a document; the maker's or the operator's
// own limit comes first.
func PullLimits() []PullLimit {
	return []PullLimit{
		{"tubing", 0.80, 0.85, "common practice, of the yield strength, from memory"},
		{"drill pipe", 0.90, 0.90, "common practice, of the yield strength, from memory"},
	}
}

// Grade is a design validation grade of packers: the lower its number, the more
// it was tested for.
type Grade uint8

// Grades.
const (
	V0 Grade = iota
	V1
	V2
	V3
	V4
	V5
	V6
)

// String returns "V0" to "V6".
func (g Grade) String() string { return fmt.Sprintf("V%d", uint8(g)) }

// MarshalText writes "V0" to "V6".
func (g Grade) MarshalText() ([]byte, error) {
	if g > V6 {
		return nil, fmt.Errorf("packer: no grade %d; there are V0 to V6", uint8(g))
	}
	return []byte(g.String()), nil
}

// UnmarshalText reads "V0" to "V6".
func (g *Grade) UnmarshalText(text []byte) error {
	if len(text) != 2 || text[0] != 'V' || text[1] < '0' || text[1] > '6' {
		return fmt.Errorf("packer: cannot read %q as a grade; write V0 to V6", text)
	}
	*g = Grade(text[1] - '0')
	return nil
}

// Validation is what a packer of a grade was tested for.
type Validation struct {
	Maker      bool   `json:"maker"` // the supplier's own definition, and nothing else is known
	Liquid     bool   `json:"liquid"`
	Gas        bool   `json:"gas"`
	AxialLoads bool   `json:"axial_loads"`
	Cycling    bool   `json:"cycling"` // of temperature
	NoBubble   bool   `json:"no_bubble"`
	Source     string `json:"source"`
}

// Validation returns what a packer of the grade was tested for. Only a grade
// with axial loads backs an envelope. Grades above V6 are the zero Validation.
//
// Source: ISO 14310:2008, 6.5.1, read in GOST ISO 14310-2014 for V3 to V6, and
// from memory for V0 to V2.
func (g Grade) Validation() Validation {
	const read, recalled = "GOST ISO 14310-2014, 6.5.1 (ISO 14310:2008)", "ISO 14310:2008, from memory"
	switch g {
	case V6:
		return Validation{Maker: true, Source: read}
	case V5:
		return Validation{Liquid: true, Source: read}
	case V4:
		return Validation{Liquid: true, AxialLoads: true, Source: read}
	case V3:
		return Validation{Liquid: true, AxialLoads: true, Cycling: true, Source: read}
	case V2:
		return Validation{Gas: true, AxialLoads: true, Source: recalled}
	case V1:
		return Validation{Gas: true, AxialLoads: true, Cycling: true, Source: recalled}
	case V0:
		return Validation{Gas: true, AxialLoads: true, Cycling: true, NoBubble: true, Source: recalled}
	}
	return Validation{}
}
