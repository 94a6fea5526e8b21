package choke

import "encoding/json"

// MarshalJSON writes the table of a curve, which UnmarshalJSON makes the same curve
// of.
func (c *Curve) MarshalJSON() ([]byte, error) { return json.Marshal(c.table) }

// UnmarshalJSON reads a table and prepares the curve; errors are those of
// Table.Curve.
func (c *Curve) UnmarshalJSON(text []byte) error {
	var table Table
	if err := json.Unmarshal(text, &table); err != nil {
		return err
	}
	read, err := table.Curve()
	if err != nil {
		return err
	}
	*c = *read
	return nil
}
