package packer

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
)

// ReadPolygon reads a polygon from JSON, quantities as text with their unit, and
// checks that it is an envelope. A field it doesn't know is an error.
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
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	var p Polygon
	if err := d.Decode(&p); err != nil {
		return Polygon{}, fmt.Errorf("packer: envelope: %w", err)
	}
	if d.More() {
		return Polygon{}, fmt.Errorf("packer: envelope: something follows it at byte %d", d.InputOffset())
	}
	if _, err := p.Envelope(); err != nil {
		return Polygon{}, err
	}
	return p, nil
}

// maxPolygonBytes is the most that ReadPolygon reads.
const maxPolygonBytes = 1 << 20
