package valve

// Rows returns the valve as triggers on the control-line pressure less that of its
// backing, both at the valve: it opens when that rises to Opens, and closes when it
// falls to Closes.
func (v SafetyValve) Rows() (opens, closes Row) {
	return Row{{Threshold: v.Opens}}, Row{{Threshold: v.Closes, Direction: Falling}}
}
