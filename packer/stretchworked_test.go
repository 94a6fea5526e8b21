package packer_test

import (
	"testing"

	"completion.example/internal/precise"
	"completion.example/packer"
	"github.com/stretchr/testify/require"
)

// The stretch from no load on the joint to parting, with 256 bits: Hooke's law of every
// section for the pins and half of the drag, which is spread along the string.
func TestStretchToPartingWorked(t *testing.T) {
	r := packer.Release{Pull: taper(), Pins: overpull().Pins, Rig: overpull().Rig, RigShare: 0.8}
	r.Pull.Drag.Least, r.Pull.Drag.Nominal, r.Pull.Drag.Greatest = 10000, 20000, 40000
	p, err := r.Parting()
	require.NoError(t, err)
	of := precise.Values{"P": float64(r.Pins.Nominal), "least": float64(r.Pins.Least), "most": float64(r.Pins.Greatest)}
	formula, top := "c = 0", 0.0
	for i, s := range r.Pull.Sections {
		k := string(rune('a' + i))
		of["D"+k], of["d"+k], of["L"+k], of["E"+k] = float64(s.Pipe.OD), float64(s.Pipe.ID), float64(s.BottomMD)-top, float64(s.Pipe.Material.Young)
		top = float64(s.BottomMD)
		formula += " + L" + k + "/(E" + k + "*pi/4*(pow(D" + k + ", 2) - pow(d" + k + ", 2)))"
	}
	precise.Within(t, 1e-11, float64(p.Stretch.Least), formula+"\nc*(least + 10000/2)", of)
	precise.Within(t, 1e-11, float64(p.Stretch.Nominal), formula+"\nc*(P + 20000/2)", of)
	precise.Within(t, 1e-11, float64(p.Stretch.Greatest), formula+"\nc*(most + 40000/2)", of)
}
