package sequence_test

import (
	"encoding/json"
	"strings"
	"testing"

	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// planFile writes a plan as a person would: without what is empty.
func planFile(t testing.TB, p *sequence.Plan) []byte {
	t.Helper()
	data, err := json.Marshal(p)
	require.NoError(t, err)
	var all any
	require.NoError(t, json.Unmarshal(data, &all))
	data, err = json.MarshalIndent(withoutEmpty(all), "", "  ")
	require.NoError(t, err)
	return append(data, '\n')
}

func withoutEmpty(x any) any {
	switch x := x.(type) {
	case map[string]any:
		for key, value := range x {
			if key == "ramps" || key == "pressure_change" || key == "chamber" { // there a nought says something
				if value == nil {
					delete(x, key)
				}
				continue
			}
			value = withoutEmpty(value)
			text, _ := value.(string)
			if value == nil || value == "" || value == false || value == 0.0 || strings.HasPrefix(text, "0 ") {
				delete(x, key)
			} else {
				x[key] = value
			}
		}
	case []any:
		for i := range x {
			x[i] = withoutEmpty(x[i])
		}
		if len(x) == 0 {
			return nil
		}
	}
	return x
}
