package sequence

import "completion.example/internal/fault"

// MarshalJSON returns an error: what a Follower was made of is what is written.
func (Follower) MarshalJSON() ([]byte, error) { return nil, errFollowerJSON }

// UnmarshalJSON returns an error, as MarshalJSON does.
func (*Follower) UnmarshalJSON([]byte) error { return errFollowerJSON }

var errFollowerJSON = fault.NewIn("sequence", "", "a Follower is neither written as JSON nor read; write the plan, and follow it again")

// MarshalJSON returns an error: what a Situation was made of is what is written.
func (Situation) MarshalJSON() ([]byte, error) { return nil, errSituationJSON }

// UnmarshalJSON returns an error, as MarshalJSON does.
func (*Situation) UnmarshalJSON([]byte) error { return errSituationJSON }

var errSituationJSON = fault.NewIn("sequence", "", "a Situation is neither written as JSON nor read; write the plan and the steps done, and follow them again")
