package sequence_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// fished is jointed with the same fluid in and around the string: parted 500 ft above its
// packer, set down on what stays with 10,000 lbf and latched to it, and pulled until
// 90,000 lbf up on the packer unseat that.
func fished() *sequence.Plan {
	p := jointed(60000 * unit.PoundForce)
	p.Fluids[1].Density = p.Fluids[0].Density
	release, packer := &p.Devices[1], &p.Devices[0]
	release.Actions = append(release.Actions, sequence.Action{Name: "latches", Axial: true, LatchesTo: "parts",
		Triggers: []sequence.Trigger{{Tension: unit.Exactly(-10000 * unit.PoundForce), Direction: valve.Falling}}})
	packer.Actions = append(packer.Actions, sequence.Action{Name: "unseats", Axial: true, Unseats: true, Opens: []string{"bypass"},
		Triggers: []sequence.Trigger{{Tension: unit.Within(90000*unit.PoundForce, 0.1)}}})
	p.Steps = append(p.Steps,
		sequence.Step{Name: "latch on", Pull: []unit.Force{76000 * unit.PoundForce}, Expect: []string{"release: latches"}},
		sequence.Step{Name: "straight pull", Pull: []unit.Force{200000 * unit.PoundForce}, Expect: []string{"packer: unseats"}})
	return p
}

// A joint that has parted is set down on and latched to, and a straight pull then unseats
// the packer and brings the rest. With steel of 2.590 in² in 0.4935 psi/ft:
//
//	above the joint  8,500 ft·9.3 lb/ft − 4,194.8 psi·2.590 in² = 68,186 lbf
//	latches at       68,186 + 20,000 of block − 10,000
//	all              9,000 ft·9.3 lb/ft − 4,441.6 psi·2.590 in² = 72,197 lbf
//	unseats at       72,197 + 20,000 + 81,000 to 99,000
//	the rest         72,197 − 68,186 = 500 ft·(9.3 lb/ft − 0.4935 psi/ft·2.590 in²) = 4,011 lbf
func TestAStraightPullBringsTheRest(t *testing.T) {
	p := fished()
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	steel := outside - bore
	above, all := 8500*9.3-column(9.5, 8500)*steel, 9000*9.3-column(9.5, 9000)*steel

	require.Len(t, r.Steps[2].Partings, 1)
	x := r.Steps[2].Partings[0]
	require.InDelta(t, above+20000-10000, x.Nominal.In(unit.PoundForce), 1)
	require.Zero(t, x.Above, "nothing has parted")
	at := lastString(r, 2)
	require.False(t, at.Joints[0].Parted)
	require.True(t, at.Held)
	require.False(t, at.Free, "it stands on the packer")

	require.Len(t, r.Steps[3].Partings, 1)
	x = r.Steps[3].Partings[0]
	require.InDelta(t, all+20000+90000, x.Nominal.In(unit.PoundForce), 1)
	require.InDelta(t, all+20000+81000, x.Least.In(unit.PoundForce), 1)
	require.InDelta(t, all+20000+99000, x.Greatest.In(unit.PoundForce), 1)
	require.InDelta(t, all, x.Above.In(unit.PoundForce), 1, "all of it hangs on the hook")
	require.InDelta(t, 500*9.3-column(9.5, 500)*steel, x.Brings.In(unit.PoundForce), 1)
	at = lastString(r, 3)
	require.True(t, at.Free)
	require.False(t, at.Held)
	require.InDelta(t, all+20000, at.Reading.In(unit.PoundForce), 1)
	e := eventOf(t, r.Steps[3], "packer: unseats")
	require.InDelta(t, 90000, e.Balance.In(unit.PoundForce), 1e-3)

	// Without the latch no pull reaches the packer: the string comes up alone.
	p = fished()
	p.Steps = append(p.Steps[:2], p.Steps[3])
	r = verdict(t, p)
	require.Contains(t, roots(r), "intended event missing | straight pull | packer: unseats")
	require.InDelta(t, above, lastString(r, 2).Hanger.In(unit.PoundForce), 1)
	// Too little set down doesn't latch, too little pull doesn't unseat; what is meant for
	// the joint alone may unseat the packer.
	p = fished()
	p.Steps[2].Pull[0] = 79000 * unit.PoundForce
	require.Equal(t, []string{"intended event missing | latch on | release: latches"}, roots(verdict(t, p)))
	require.Equal(t, "slack off until the weight indicator shows 78185 lbf", verdict(t, p).Findings[0].Cure)
	p.Steps[2].Pull = []unit.Force{85000 * unit.PoundForce, 79000 * unit.PoundForce} // the lowest of them counts
	require.Equal(t, "slack off until the weight indicator shows 78185 lbf", verdict(t, p).Findings[0].Cure)
	p.Steps[2].Pull[1] = 76000 * unit.PoundForce
	r = verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	require.Equal(t, 76000*unit.PoundForce, r.Steps[2].Partings[0].Planned)
	p = fished()
	p.Steps[3].Pull[0] = 190000 * unit.PoundForce
	r = verdict(t, p)
	require.Equal(t, []string{"intended event missing | straight pull | packer: unseats"}, roots(r))
	require.Contains(t, r.Findings[0].Cure, "191196", "72,197 + 20,000 + 99,000 lbf")
	p = fished()
	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(140000 * unit.PoundForce)
	p.Steps[1].Pull[0] = 260000 * unit.PoundForce
	require.Contains(t, roots(verdict(t, p)), "unintended event | pull | packer: unseats")
}

// What says nothing that can be felt is refused with what to add.
func TestUnseatingAndLatchingAreValidated(t *testing.T) {
	for text, change := range map[string]func(release, packer *sequence.Action){
		"has to unseat what holds the string at": func(release, _ *sequence.Action) {
			*release = sequence.Action{Name: "x", Axial: true, Unseats: true, Triggers: release.Triggers}
		},
		"latch to a joint that another action of \"release\" parts": func(release, _ *sequence.Action) { release.LatchesTo = "sets" },
		"falling and of negative tension":                           func(release, _ *sequence.Action) { release.Triggers[0].Tension = unit.Exactly(5 * unit.PoundForce) },
		"must be rising where it unseats":                           func(_, packer *sequence.Action) { packer.Triggers[0].Direction = valve.Falling },
		".axial: is missing":                                        func(_, packer *sequence.Action) { packer.Axial = false },
		"and without a seal":                                        func(_, packer *sequence.Action) { packer.Seal = 4 * unit.Inch },
		"or latch to a joint":                                       func(_, packer *sequence.Action) { packer.LatchesTo = "parts" },
	} {
		p := fished()
		change(&p.Devices[1].Actions[1], &p.Devices[0].Actions[1])
		require.ErrorContains(t, p.Validate(), text)
	}
}

// Cut after any step, what is left of the programme finds the string as the whole one left
// it: parted, latched to, unseated.
func TestFishedStringsCutAndGoOn(t *testing.T) {
	p := fished()
	whole := verdict(t, p)
	require.True(t, whole.OK(), "%+v", whole.Findings)
	for i := range p.Steps {
		rest, err := p.Rest(t.Context(), p.Steps[i].Name)
		require.NoError(t, err)
		r := verdict(t, rest)
		require.True(t, r.OK(), "%s: %+v", p.Steps[i].Name, r.Findings)
		for k := range r.Steps {
			if i+1+k < len(whole.Steps) {
				require.InDelta(t, float64(lastString(whole, i+1+k).Hanger), float64(lastString(r, k).Hanger), 1, "cut after %s: %s", p.Steps[i].Name, r.Steps[k].Name)
				require.Equal(t, lastString(whole, i+1+k).Joints[0].Parted, lastString(r, k).Joints[0].Parted)
			}
		}
	}
}
