package packer

import "encoding/json"

// MarshalJSON writes the polygon of an envelope, which UnmarshalJSON makes the same
// envelope of.
func (e *Envelope) MarshalJSON() ([]byte, error) { return json.Marshal(e.Polygon()) }

// UnmarshalJSON reads a polygon and prepares the envelope; errors are those of
// Polygon.Envelope.
func (e *Envelope) UnmarshalJSON(text []byte) error {
	var p Polygon
	if err := json.Unmarshal(text, &p); err != nil {
		return err
	}
	read, err := p.Envelope()
	if err != nil {
		return err
	}
	*e = *read
	return nil
}
