package drag

import "completion.example/internal/fault"

// MarshalJSON returns an error: what a Prepared was made of is what is written.
func (Prepared) MarshalJSON() ([]byte, error) { return nil, errPreparedJSON }

// UnmarshalJSON returns an error, as MarshalJSON does.
func (*Prepared) UnmarshalJSON([]byte) error { return errPreparedJSON }

var errPreparedJSON = fault.NewIn("drag", "", "a Prepared is neither written as JSON nor read; write the String, and prepare it again")
