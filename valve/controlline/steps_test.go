package controlline

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"

	"github.com/stretchr/testify/require"
)

func TestSteps(t *testing.T) {
	r, err := quarter.Ratings()
	require.NoError(t, err)
	workingtest.Check(t, r.Steps())
	w, err := steel(quarter).Warming(oil, 16e-6*unit.PerKelvin, 30)
	require.NoError(t, err)
	workingtest.Check(t, w.Steps())
	p, err := shift.Plan()
	require.NoError(t, err)
	workingtest.Check(t, p.Steps())
}
