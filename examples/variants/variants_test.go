package main

import (
	"bytes"
	"context"
	"os"
	"testing"

	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

const begin = "../installation/begin/field.json"

// However many cores share the work, each variant's answer is its own; some hold and
// some don't, and the plan itself is as it was.
func TestEachVariantHasItsOwnAnswer(t *testing.T) {
	data, err := os.ReadFile(begin)
	require.NoError(t, err)
	p, err := sequence.Read(data)
	require.NoError(t, err)
	before := p.Clone()
	all := variants(p, long.Size(40, 120))
	alone := checkAll(context.Background(), p, all, 1)
	require.Equal(t, alone, checkAll(context.Background(), p, all, 3))
	require.Equal(t, before, p)
	verdicts := map[sequence.Verdict]int{}
	for _, o := range alone {
		require.NoError(t, o.Err)
		verdicts[o.Verdict]++
	}
	require.Positive(t, verdicts[sequence.Proved])
	require.Positive(t, verdicts[sequence.Refuted])
	require.Equal(t, len(all), verdicts[sequence.Proved]+verdicts[sequence.Refuted])
}

func TestVariantsCanBeStopped(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	require.ErrorIs(t, run(ctx, begin, 100, new(bytes.Buffer)), context.Canceled)
	require.ErrorIs(t, run(t.Context(), "nowhere.json", 1, new(bytes.Buffer)), os.ErrNotExist)
}
