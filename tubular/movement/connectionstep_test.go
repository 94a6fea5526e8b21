package movement

import (
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"github.com/stretchr/testify/require"
)

// Which rating of the connection the working shows: the one that is used as much as is told, and that is known.
func TestWorkingOfTheConnectionThatGoverns(t *testing.T) {
	for _, x := range []struct {
		c     tubular.Connection
		n     Node
		shows string
	}{
		{tubular.Connection{Tension: 100, Compression: 100, Inside: 100, Outside: 100}, Node{True: 50}, "in tension"},
		{tubular.Connection{Tension: 100, Compression: 100, Inside: 100, Outside: 100}, Node{True: -50}, "in compression"},
		{tubular.Connection{Tension: 100, Compression: 100, Inside: 100, Outside: 100}, Node{Inside: 50}, "by internal pressure"},
		{tubular.Connection{Tension: 100, Compression: 100, Inside: 100, Outside: 100}, Node{Outside: 50}, "by external pressure"},
		{tubular.Connection{Tension: 100, Inside: 100}, Node{True: 20, Inside: 50}, "by internal pressure"},
		{tubular.Connection{Compression: 100, Outside: 100}, Node{True: -20, Outside: 50}, "by external pressure"},
		{tubular.Connection{Compression: 100, Outside: 100, Triaxial: 0.8}, Node{True: 50, Inside: 50, Usage: tubular.Usage{Triaxial: 0.4}}, "triaxial"},
		{tubular.Connection{Tension: 100, Inside: 100, Triaxial: 0.8}, Node{True: -50, Outside: 50, Usage: tubular.Usage{Triaxial: 0.4}}, "triaxial"},
		{tubular.Connection{Tension: 100, Inside: 100, Compression: 100, Outside: 100, Triaxial: 0.8}, Node{True: 20, Inside: 20, Usage: tubular.Usage{Triaxial: 0.4}}, "triaxial"},
		{tubular.Connection{Tension: 100, Inside: 100, Compression: 100, Outside: 100, Triaxial: 0.8}, Node{True: -20, Outside: 20, Usage: tubular.Usage{Triaxial: 0.4}}, "triaxial"},
	} {
		m := &MadeUp{}
		m.connections, m.design, m.deratings = []tubular.Connection{x.c}, tubular.WithoutReserve(), make([]*tubular.Derating, 1)
		usage := m.connects(&x.n)
		require.InDelta(t, 0.5, usage, 1e-12)
		s := m.connectionStep(&x.n, Governing{Usage: usage, Limit: tubular.ConnectionLimit}, 1, "")
		require.Contains(t, s.Name, x.shows, "%v", x)
	}
	// and at which node: that of the limit and of its use, of those at one depth
	m := &MadeUp{}
	m.connections, m.design, m.deratings = make([]tubular.Connection, 1), tubular.WithoutReserve(), make([]*tubular.Derating, 1)
	m.elements = []element{{length: 1}, {length: 1}, {length: 1}}
	l := &Loading{Nodes: []Node{{MD: 1, Usage: tubular.Usage{Axial: 0.7}}, {MD: 2, Usage: tubular.Usage{Burst: 0.3, Axial: 0.7}}, {MD: 2, Usage: tubular.Usage{Burst: 0.7, Axial: 0.2}}, {MD: 3, Usage: tubular.Usage{Burst: 0.7}}}}
	require.Same(t, &l.Nodes[2], m.used(l, Governing{MD: 2, Limit: tubular.BurstLimit, Usage: 0.7}))
	require.Same(t, &l.Nodes[1], m.used(l, Governing{MD: 2, Limit: tubular.AxialLimit, Usage: 0.7}))
	require.Nil(t, m.used(l, Governing{MD: 2, Limit: tubular.TriaxialLimit, Usage: 0.7}))
	require.Nil(t, m.used(l, Governing{MD: 4, Limit: tubular.AxialLimit, Usage: 0.7}))
	require.Nil(t, m.used(l, Governing{MD: 2, Limit: -1, Usage: 0.7}))
	require.Nil(t, m.used(l, Governing{MD: 2, Limit: tubular.ConnectionLimit + 1, Usage: 0.7}))
}

// What has no name is numbered from one by its kind; where a segment ends.
func TestNamesInTheWorking(t *testing.T) {
	n := Names{Holds: []string{"packer", ""}}
	require.Equal(t, []string{"packer", "held place 2", "held place 3", "joint 1", "seal 2"}, []string{n.hold(0), n.hold(1), n.hold(2), n.joint(0), n.seal(1)})
	m := &MadeUp{}
	m.marks = []mark{{kind: holdMark}, {kind: jointMark}, {kind: sealMark, index: 1}, {kind: plugMark, md: 30}}
	for i, want := range map[int]string{-1: "the top", 0: "packer", 1: "joint 1", 2: "seal 2", 3: unit.Length(30).Rounded(6), 4: "the lower end"} {
		require.Equal(t, want, m.endName(i, n))
	}
	c := compliance(1e-6)
	require.True(t, strings.HasSuffix(c.String(), "in/lbf"), c.String())
	require.InEpsilon(t, 1e-6, float64(c.Quantity().(unit.Length)), 1e-12)
	require.Contains(t, c.String(), "0.000175127", "1e-6 m/N is 1e-6/0.0254·4.4482216152605 in/lbf")
}
