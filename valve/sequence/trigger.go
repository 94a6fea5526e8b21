package sequence

import "completion.example/valve"

// Firing is what a step does to an action, over all choices of values.
type Firing string

// What a step may do.
const (
	MustFire    Firing = "must"     // it happens, whatever the values
	MayFire     Firing = "may"      // with some values
	CannotFire  Firing = "cannot"   // with none
	ComesOnOnly Firing = "comes on" // its row may come on, without firing
)

// TriggerResult is an action in a step.
type TriggerResult struct {
	Action   string `json:"action"`
	Intended bool   `json:"intended"`
	Firing   Firing `json:"firing"`
	// Felt is the range of what it felt over all choices while it waited.
	Least    Level `json:"least"`
	Greatest Level `json:"greatest"`
	// Threshold is the trigger that Margin is of: the one it waited for, or of an
	// intended row the one that is met with least to spare.
	Threshold LevelBand       `json:"threshold"`
	Direction valve.Direction `json:"direction"`
	// Margin is what is left to the threshold where nothing is intended, and what
	// there is beyond it where it is, each at the worst choice of all inputs;
	// negative is bad.
	Margin Level `json:"margin"`
}
