package valve

import (
	"encoding/json"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// writtenState is how a TriggerState stands in JSON.
type writtenState struct {
	Earliest writtenProgress `json:"earliest"`
	Latest   writtenProgress `json:"latest"`
	Lowest   unit.Pressure   `json:"lowest"`
	Highest  unit.Pressure   `json:"highest"`
	Seen     bool            `json:"seen"`
	Exact    bool            `json:"exact"`
}

// writtenProgress is how far one device has come.
type writtenProgress struct {
	Links   int  `json:"links"`
	Counted int  `json:"counted"`
	Out     bool `json:"out"`
}

// MarshalJSON writes a state, so that a job can be gone on with another day.
func (s TriggerState) MarshalJSON() ([]byte, error) {
	return json.Marshal(writtenState{
		Earliest: writtenProgress{s.earliest.links, s.earliest.counted, s.earliest.out},
		Latest:   writtenProgress{s.latest.links, s.latest.counted, s.latest.out},
		Lowest:   s.lowest, Highest: s.highest, Seen: s.seen, Exact: s.exact,
	})
}

// UnmarshalJSON reads what MarshalJSON writes. No count may be negative, and the
// earliest device can't be behind the latest, nor the lowest above the highest.
func (s *TriggerState) UnmarshalJSON(text []byte) error {
	var w writtenState
	if err := json.Unmarshal(text, &w); err != nil {
		return err
	}
	f := fault.In(scope)
	f.At("earliest", w.Earliest.validate())
	f.At("latest", w.Latest.validate())
	if w.Earliest.Links < w.Latest.Links {
		f.New("earliest.links", "is %d; must be %d or more, as many as the latest device's", w.Earliest.Links, w.Latest.Links)
	}
	if w.Lowest > w.Highest {
		f.New("lowest", "is %v; must be at most the highest, %v", w.Lowest, w.Highest)
	}
	if err := f.Err(); err != nil {
		return err
	}
	*s = TriggerState{
		earliest: progress{w.Earliest.Links, w.Earliest.Counted, w.Earliest.Out},
		latest:   progress{w.Latest.Links, w.Latest.Counted, w.Latest.Out},
		lowest:   w.Lowest, highest: w.Highest, seen: w.Seen, exact: w.Exact,
	}
	return nil
}

func (p writtenProgress) validate() error {
	f := fault.In(scope)
	if p.Links < 0 {
		f.New("links", "is %d; must be 0 or more", p.Links)
	}
	if p.Counted < 0 {
		f.New("counted", "is %d; must be 0 or more", p.Counted)
	}
	return f.Err()
}
