package sequence_test

import (
	"testing"

	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// planFile writes a plan as a person would: without what is empty.
func planFile(t testing.TB, p *sequence.Plan) []byte {
	t.Helper()
	data, err := sequence.Write(p)
	require.NoError(t, err)
	return data
}
