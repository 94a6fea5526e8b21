package packer

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"completion.example/valve"
	"github.com/stretchr/testify/require"
)

// Limits that a user may stand on, on both sides.
func TestStandingOnALimit(t *testing.T) {
	for tagged, ok := range map[unit.Length]bool{12: false, 12.001: true, 11.999: false} {
		err := Landing{Tagged: tagged, HangerDepth: 12, Joints: []unit.Length{9}}.Validate()
		require.Equal(t, ok, err == nil, "tagged at %v: %v", tagged, err)
	}
	for bottom, ok := range map[unit.Length]bool{1024: false, 1024.001: true} {
		err := SealPlan{Bore: Receptacle{ShoulderMD: 1024, TopMD: 1024, BottomMD: bottom}, Seals: SealStack{FirstMD: 1, LastMD: 5}}.Validate()
		require.Equal(t, ok, err == nil, "bore to %v: %v", bottom, err)
	}
	// One height above the shoulder that does is a space-out: the clearance is the least, the engagement of the last seal the greatest.
	for clearance, ok := range map[unit.Length]bool{3.75: true, 4: true, 4.25: false} {
		p := SealPlan{Bore: Receptacle{ShoulderMD: 1024, TopMD: 1024, BottomMD: 1032}, Seals: SealStack{FirstMD: 1, LastMD: 5}, Engaged: 1, Clearance: clearance}
		s, err := p.SpaceOut()
		if !ok {
			require.Error(t, err)
			continue
		}
		require.NoError(t, err, "%v", clearance)
		require.Equal(t, clearance, s.Least)
		require.Equal(t, unit.Length(4), s.Greatest)
	}
	// Stages that may begin at one pressure can't be told apart.
	for second, distinct := range map[unit.Pressure]bool{2e7: false, 2.0001e7: true, 1.9e7: false} {
		p, err := Setting{Stages: []Stage{{Name: "slips", Acts: unit.Exactly[unit.Pressure](2e7)}, {Name: "element", Acts: unit.Exactly(second)}},
			Piston: 0.005, Kept: 0.8, Plug: Plug{Rating: 7e7}}.Pressures()
		require.NoError(t, err)
		require.Equal(t, distinct, p.Stages[1].Distinct, "%v", second)
	}
	// Columns that make just what a stage needs set it without any pressure at surface.
	for column, unaided := range map[unit.Pressure]bool{2e7: true, 1.9999e7: false, 2.0001e7: true} {
		p, err := Setting{Stages: []Stage{{Name: "slips", Acts: unit.Exactly[unit.Pressure](2e7)}}, Columns: valve.Columns{Applied: unit.Exactly(column)},
			Piston: 0.005, Kept: 0.8, Plug: Plug{Rating: 7e7}}.Pressures()
		require.NoError(t, err)
		require.Equal(t, unaided, p.Stages[0].Unaided, "%v", column)
	}
	// Where two pipes meet it is the upper one.
	upper, lower := tubular.Pipe{OD: 0.1, ID: 0.08}, tubular.Pipe{OD: 0.09, ID: 0.07}
	n := NotParted{Release: Release{Pull: Pull{Sections: []movement.StringSection{{Pipe: upper, BottomMD: 1000}, {Pipe: lower, BottomMD: 2000}}}}}
	for md, want := range map[unit.Length]tubular.Pipe{0: upper, 1000: upper, 1000.001: lower, 2000: lower} {
		require.Equal(t, want, n.pipeAt(md), "%v", md)
	}
}
