package sleeves

import (
	"fmt"
	"strings"
)

// list is a flag of values between commas.
type list[T any, P interface {
	*T
	UnmarshalText([]byte) error
}] []T

func (l list[T, P]) String() string {
	var s []string
	for _, v := range l {
		s = append(s, fmt.Sprint(v))
	}
	return strings.Join(s, ", ")
}

func (l *list[T, P]) Set(text string) error {
	var read list[T, P]
	for part := range strings.SplitSeq(text, ",") {
		var v T
		if err := P(&v).UnmarshalText([]byte(strings.TrimSpace(part))); err != nil {
			return err
		}
		read = append(read, v)
	}
	*l = read
	return nil
}
