package packer

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/strictjson"
)

// maxPolygonBytes is the most that ReadPolygon reads.
const maxPolygonBytes = 1 << 20

// ReadPolygon reads a polygon from JSON, quantities as text with their unit, and
// checks that it is an envelope. Unknown, missing and doubled fields are errors
// with their path. encoding/json writes what ReadPolygon reads.
//
//	{"vertices": [{"differential": "5000 psi", "axial": "-20000 lbf"}, …],
//	 "limits": ["element from below", …]}
func ReadPolygon(r io.Reader) (Polygon, error) {
	text, err := io.ReadAll(io.LimitReader(r, maxPolygonBytes+1))
	if err != nil {
		return Polygon{}, fmt.Errorf("packer: envelope: %w", err)
	}
	if len(text) > maxPolygonBytes {
		return Polygon{}, fmt.Errorf("packer: envelope: more than %d bytes", maxPolygonBytes)
	}
	if err := shallow(text); err != nil {
		return Polygon{}, err
	}
	// Pointers, so that a coordinate left out isn't taken for zero.
	var file struct {
		Name     string `json:"name"`
		Vertices []struct {
			Differential *unit.Pressure `json:"differential"`
			Axial        *unit.Force    `json:"axial"`
		} `json:"vertices"`
		Limits []string `json:"limits"`
	}
	f := fault.In(scope)
	f.At("envelope", strictjson.Unmarshal(text, &file))
	p := Polygon{Name: file.Name, Limits: file.Limits}
	for i, v := range file.Vertices {
		if v.Differential == nil || v.Axial == nil {
			f.New(fault.Index("envelope.vertices", i), "must have both differential and axial")
			continue
		}
		p.Vertices = append(p.Vertices, Load{*v.Differential, *v.Axial})
	}
	if err := f.Err(); err != nil {
		return Polygon{}, err
	}
	if _, err := p.Envelope(); err != nil {
		return Polygon{}, err
	}
	return p, nil
}

// maxNesting is deeper than any polygon is. What reads the file keeps the path
// to every value, which a file of nothing but brackets would fill memory with.
const maxNesting = 8

// shallow reports JSON that is nested too deep. Faults of syntax are left to
// what reads it.
func shallow(text []byte) error {
	d := json.NewDecoder(bytes.NewReader(text))
	for depth := 0; ; {
		token, err := d.Token()
		if err != nil {
			return nil
		}
		switch token {
		case json.Delim('['), json.Delim('{'):
			if depth++; depth > maxNesting {
				return fmt.Errorf("packer: envelope: nested deeper than %d at byte %d", maxNesting, d.InputOffset())
			}
		case json.Delim(']'), json.Delim('}'):
			depth--
		}
	}
}
