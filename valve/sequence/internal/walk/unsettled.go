package walk

// unsettled names what moved last.
func (r *run) unsettled(w *World) error {
	var names []string
	for t, n := w.Trail, 0; t != nil && n < 4; t, n = t.Before, n+1 {
		if t.Action < 0 {
			continue
		}
		names = append(names, w.State.Actions[t.Action].Name)
	}
	return unsettledError{names}
}

type unsettledError struct{ names []string }

func (e unsettledError) Error() string {
	return ErrUnsettled.Error() + ": " + quoted(e.names)
}

func (e unsettledError) Unwrap() error { return ErrUnsettled }

func quoted(names []string) string {
	text := ""
	seen := map[string]bool{}
	for _, n := range names {
		if seen[n] {
			continue
		}
		seen[n] = true
		if text != "" {
			text += ", "
		}
		text += "\"" + n + "\""
	}
	return text
}
