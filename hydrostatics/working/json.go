package working

import (
	"encoding/json"
	"fmt"
	"math"
)

// written is how a Value stands in JSON: as people read it, and in SI.
type written struct {
	Text string  `json:"text"`
	SI   float64 `json:"si"`
}

// MarshalJSON writes the value as it is printed and in SI, such as
// {"text": "5000 psi", "si": 34473786.46584184}. A value that isn't finite is an
// error.
func (v Value) MarshalJSON() ([]byte, error) {
	if math.IsNaN(v.si) || math.IsInf(v.si, 0) {
		return nil, fmt.Errorf("working: value is %s; must be finite", v.text)
	}
	return json.Marshal(written{v.text, v.si})
}

// UnmarshalJSON reads what MarshalJSON writes.
func (v *Value) UnmarshalJSON(text []byte) error {
	var w written
	if err := json.Unmarshal(text, &w); err != nil {
		return err
	}
	*v = Value{si: w.SI, text: w.Text}
	return nil
}
