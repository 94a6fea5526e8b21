package production

import "completion.example/internal/fault"

// MarshalJSON returns an error: what a Network was made of is what is written.
func (Network) MarshalJSON() ([]byte, error) { return nil, errNetworkJSON }

// UnmarshalJSON returns an error, as MarshalJSON does.
func (*Network) UnmarshalJSON([]byte) error { return errNetworkJSON }

var errNetworkJSON = fault.NewIn("production", "", "a Network is neither written as JSON nor read; write the Well, and prepare it again")
