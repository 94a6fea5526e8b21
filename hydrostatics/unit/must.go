package unit

import "encoding"

// Must returns v, or panics with err: for scripts and tests, where an input that
// is wrong can only be put right in the source. What handles input of others
// tells them the error instead.
func Must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// Read reads one quantity, or a Band of one, from its text, such as
// Read[Pressure]("35 bar"). Errors are those of its UnmarshalText.
func Read[Q any, P interface {
	*Q
	encoding.TextUnmarshaler
}](text string) (Q, error) {
	var q Q
	err := P(&q).UnmarshalText([]byte(text))
	return q, err
}
