package well

// StringState is how the string stands. Who loads strings knows more of it.
type StringState interface {
	// Same tells whether another stands the same way.
	Same(other StringState) bool
}
