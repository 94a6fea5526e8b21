package well

// StringState is how the string stands; see the package that loads it.
type StringState struct{}
