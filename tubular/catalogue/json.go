package catalogue

import "encoding/json"

// MarshalJSON writes the entries of a catalogue, which UnmarshalJSON makes the
// same catalogue of.
func (c Catalogue) MarshalJSON() ([]byte, error) { return json.Marshal(c.entries) }

// UnmarshalJSON reads a list of entries; errors are those of With.
func (c *Catalogue) UnmarshalJSON(text []byte) error {
	var entries []Entry
	if err := json.Unmarshal(text, &entries); err != nil {
		return err
	}
	read, err := Catalogue{}.With(entries...)
	if err != nil {
		return err
	}
	*c = read
	return nil
}
