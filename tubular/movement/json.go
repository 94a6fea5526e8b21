package movement

import "completion.example/internal/fault"

// MarshalJSON returns an error: what a MadeUp was made of is what is written.
func (MadeUp) MarshalJSON() ([]byte, error) { return nil, errMadeUpJSON }

// UnmarshalJSON returns an error, as MarshalJSON does.
func (*MadeUp) UnmarshalJSON([]byte) error { return errMadeUpJSON }

var errMadeUpJSON = fault.NewIn("movement", "", "a MadeUp is neither written as JSON nor read; write the Assembly, and make it up again")

// MarshalJSON returns an error: what a Landed was made of is what is written.
func (*Landed) MarshalJSON() ([]byte, error) { return nil, errLandedJSON }

// UnmarshalJSON returns an error, as MarshalJSON does.
func (*Landed) UnmarshalJSON([]byte) error { return errLandedJSON }

var errLandedJSON = fault.NewIn("movement", "", "a Landed is neither written as JSON nor read; write the String and what it was landed with, and land it again")

// MarshalJSON returns an error: what a Standing was made of is what is written.
func (Standing) MarshalJSON() ([]byte, error) { return nil, errStandingJSON }

// UnmarshalJSON returns an error, as MarshalJSON does.
func (*Standing) UnmarshalJSON([]byte) error { return errStandingJSON }

var errStandingJSON = fault.NewIn("movement", "", "a Standing is neither written as JSON nor read; write what was done to the string, and do it again from Land on")
