package record

import "completion.example/internal/fault"

// MarshalJSON returns an error: what a Record was made of is what is written.
func (Record) MarshalJSON() ([]byte, error) { return nil, errRecordJSON }

// UnmarshalJSON returns an error, as MarshalJSON does.
func (*Record) UnmarshalJSON([]byte) error { return errRecordJSON }

var errRecordJSON = fault.NewIn("record", "", "a Record is neither written as JSON nor read; write the file that it was read from")
