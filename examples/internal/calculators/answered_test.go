package calculators_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"testing"

	"completion.example/internal/calculator"
	"github.com/stretchr/testify/require"
)

// answered are the results of a calculator by their names.
func answered(t *testing.T, c calculator.Command, args ...string) map[string]string {
	t.Helper()
	var out, errs bytes.Buffer
	require.Zero(t, c.Run(append(args, "-json"), &out, &errs), errs.String())
	var page struct {
		Results []struct {
			Name  string
			Value any
		}
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &page))
	values := map[string]string{}
	for _, r := range page.Results {
		values[r.Name] = fmt.Sprint(r.Value)
	}
	return values
}
