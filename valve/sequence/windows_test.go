package sequence_test

import (
	"context"
	"testing"

	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// Windows are told step by step, each once and as they are in the end; those of the
// step that is wanted first come before all others.
func TestWindowsStepByStep(t *testing.T) {
	told := map[int][]sequence.Window{}
	var order []int
	r, err := sequence.Check(context.Background(), demoPlan(t), sequence.Options{Workers: 1, First: 9, Windows: func(step int, of []sequence.Window) {
		require.Nil(t, told[step])
		order, told[step] = append(order, step), of
	}})
	require.NoError(t, err)
	require.Equal(t, 9, order[0])
	for i, s := range r.Steps {
		require.Equal(t, s.Windows, told[i+1], "step %d", i+1)
	}
	require.Len(t, told, len(order))
}
