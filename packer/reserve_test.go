package packer_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"github.com/stretchr/testify/require"
)

// The weight that must stay on the hook, on both ends of what does.
func TestReserveOnBothEndsOfTheWeight(t *testing.T) {
	u := packer.Unseating{Pull: taper(), Trapped: unit.Within(2000*unit.PSI, 0.1), Reserve: 5 * unit.Kilopound}
	f, err := u.Freed()
	require.NoError(t, err)
	more := func(x unit.Force) unit.Force { return unit.Force(math.Nextafter(float64(x), math.Inf(1))) }
	for reserve, want := range map[unit.Force]packer.Outcome{
		f.Weight.Least: packer.NotActed, more(f.Weight.Least): packer.Unknown, f.Weight.Greatest: packer.Unknown, more(f.Weight.Greatest): packer.Acted,
	} {
		u.Reserve = reserve
		f, err := u.Freed()
		require.NoError(t, err)
		require.Equal(t, want, f.Light, "%v", reserve)
	}
}

// A cut just at the end of the string leaves no fish, and its force is that of the last piece.
func TestCutAtTheEndOfTheString(t *testing.T) {
	n := notParted()
	end := n.Release.Pull.Sections[len(n.Release.Pull.Sections)-1].BottomMD
	n.Clearance = 0
	n.Intervals = []packer.CutInterval{{Name: "last joint", TopMD: end - 10, BottomMD: end}}
	at, err := n.Options()
	require.NoError(t, err)
	require.Equal(t, end, at.Cut.MD)
	require.Zero(t, at.Cut.Fish)
	n.Clearance = 0.001
	above, err := n.Options()
	require.NoError(t, err)
	require.InDelta(t, float64(above.Cut.After), float64(at.Cut.After), 1)
}

// A reserve of the whole weight wants all of the trapped pressure bled, which can be done; more than that can't.
func TestReserveOfTheWholeWeight(t *testing.T) {
	u := packer.Unseating{Pull: taper(), Trapped: unit.Within(2000*unit.PSI, 0.1)}
	p := u.Pull
	p.Plugged, p.Below = true, 0
	b, err := p.Balance(0)
	require.NoError(t, err)
	for more, hopeless := range map[unit.Force]bool{0: false, 1: true, -1: false} {
		u.Reserve = b.Reading - b.Block + more
		f, err := u.Freed()
		require.NoError(t, err)
		require.Equal(t, hopeless, f.Hopeless, "%v: to %v", more, f.BleedTo)
		require.GreaterOrEqual(t, f.BleedTo, unit.Pressure(0))
	}
}
