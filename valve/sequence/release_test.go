package sequence_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// Areas of the string of landed, and pressures of its fluids, by hand.
var (
	bore    = math.Pi / 4 * 2.992 * 2.992 // in²
	outside = math.Pi / 4 * 3.5 * 3.5
)

func column(ppg, feet float64) float64 { return ppg * 4 / 77 * feet }

// jointed is landed with its release 500 ft above the packer, sealed on 4.5 in, and
// 0.7 lb/gal more in the tubing than around it.
func jointed(pins unit.Force) *sequence.Plan {
	p := landed()
	p.Fluids[1].Density = unit.Exactly(8.8 * ppg)
	a := &p.Devices[1].Actions[0]
	p.Devices[1].MD, a.Seal = 8500*foot, 4.5*unit.Inch
	// 3,600 psi on 15.9 in² would part pins of 60,000 lbf while the packer sets.
	p.Devices[0].Actions[0].Triggers[0].Pins.Count = 2
	p.Steps[0].Ramps[0]["tubing"] = 1500 * psi
	a.Triggers[0].Tension = unit.Exactly(pins)
	p.Steps = append(p.Steps, sequence.Step{Name: "pull", Pull: []unit.Force{170000 * unit.PoundForce}, Expect: []string{"release: parts"}})
	return p
}

// What the pins feel is the effective force just above the joint and the pressure
// inside less that outside on its seal. With nothing applied at the open top the
// effective force there is the hook load, and grows by the effective weight w·L +
// (pi·Ai − po·Ao) downwards:
//
//	R = block + w·L + pi·Ai − po·Ao + pins − (pi − po)·As
//	  = 20,000 + 79,050 + 4,193.8·7.031 − 3,884.7·9.621 + 60,000 − 309.1·15.904 lbf
func TestThePinsFeelTheBalanceOfTheirJoint(t *testing.T) {
	r := verdict(t, jointed(60000*unit.PoundForce))
	require.True(t, r.OK(), "%+v", r.Findings)
	pi, po := column(9.5, 8500), column(8.8, 8500)
	want := 20000 + 8500*9.3 + pi*bore - po*outside + 60000 - (pi-po)*math.Pi/4*4.5*4.5
	x := r.Steps[1].Partings[0]
	require.InDelta(t, want, x.Nominal.In(unit.PoundForce), 0.1)
	e := eventOf(t, r.Steps[1], "release: parts")
	require.InDelta(t, 60000, e.Balance.In(unit.PoundForce), 1e-6)
	require.Nil(t, e.Differential)
}

// While the string is run in, its tail hangs on the pins: 500 ft of 9.3 lb/ft less
// what the fluids at its end carry, plus the differential on the seal,
// 4,650 + (pi·Ai − po·Ao at 9,000 ft less those at 8,500 ft) − nothing at the plugged
// lower end: an effective force of 4,442 lbf, and 309.1 psi · 15.9 in².
func TestATailHangsOnThePins(t *testing.T) {
	tail := 500*9.3 + (column(9.5, 500))*bore - column(8.8, 500)*outside
	// Plugged, with 327.3 psi more inside than outside at the end: no effective force
	// there, whatever the pressures.
	balance := tail + (column(9.5, 8500)-column(8.8, 8500))*math.Pi/4*4.5*4.5
	p := jointed(unit.Force(balance+1) * unit.PoundForce)
	p.Steps = []sequence.Step{{Name: "run in"}}
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	require.InDelta(t, balance, lastString(r, 0).Joints[0].Balance.In(unit.PoundForce), 0.1)
	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(unit.Force(balance-1) * unit.PoundForce)
	require.Equal(t, []string{"unintended event | run in | release: parts"}, roots(verdict(t, p)))
}

// An axial action without the diameter of its seal says why it can't be walked.
func TestAxialActionWantsItsSeal(t *testing.T) {
	p := jointed(60000 * unit.PoundForce)
	p.Devices[1].Actions[0].Seal = 0
	err := p.Validate()
	require.ErrorContains(t, err, "devices[1].actions[0].seal: is missing")
	require.ErrorContains(t, err, "effective force")
}

// With pins of 190,000 lbf the reading at parting puts some 260,000 lbf on the
// uppermost joint, of 207,000 lbf body yield: nothing of it is left once it has
// parted.
func TestTheStringJustBeforeItParts(t *testing.T) {
	p := jointed(190000 * unit.PoundForce)
	p.Steps[1].Pull = []unit.Force{360000 * unit.PoundForce}
	r := verdict(t, p)
	require.NotEmpty(t, r.Findings)
	f := r.Findings[0]
	require.Equal(t, "string overloaded | pull | string", string(f.Kind)+" | "+f.Step+" | "+f.Device)
	require.Contains(t, f.Says, "just before “release: parts”")
	require.Less(t, lastString(r, 1).Usage, 0.5)
}

// After it has parted, what is above the joint hangs on the hook: with the end open
// to both, 8,500 ft in air less what the fluids carry. What is below it stays with
// the packer: 500 ft of pipe in its fluids.
func TestWhatIsAboveAndBelowAParting(t *testing.T) {
	p := jointed(60000 * unit.PoundForce)
	p.Fluids[1].Density = p.Fluids[0].Density
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	steel := outside - bore
	above := 8500*9.3 - column(9.5, 8500)*steel
	at := lastString(r, 1)
	require.InDelta(t, above, at.Hanger.In(unit.PoundForce), 1)
	require.InDelta(t, above+20000, at.Reading.In(unit.PoundForce), 1)
	require.True(t, at.Held, "the packer holds what is below")
	require.True(t, at.Joints[0].Parted)
	x := r.Steps[1].Partings[0]
	require.InDelta(t, above, x.Above.In(unit.PoundForce), 1)
	// What stays stands on the packer with its weight in the fluid, the same in and
	// around it: 500 ft · (9.3 lb/ft − 0.4935 psi/ft · 2.590 in²), by hand.
	require.InDelta(t, 500*9.3-column(9.5, 500)*steel, x.Below.In(unit.PoundForce), 1)
	require.InDelta(t, -float64(x.Below), float64(at.Packer), 1e-6)
}

// With the tubing 0.7 lb/gal heavier than the annulus the joint's lower half is pushed
// down by the 309.1 psi that stood across its seal of 15.904 in², its bore open: the
// ring between its seal and the bore, and what the fluids inside and around the 500 ft
// carry. Its end, open to the tubing's fluid at the bottom, has no effective force.
func TestPressureOnWhatAPartingLeaves(t *testing.T) {
	p := jointed(60000 * unit.PoundForce)
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	across := column(9.5, 8500) - column(8.8, 8500)
	effective := 500*9.3 + column(9.5, 500)*bore - column(8.8, 500)*outside // weight of the 500 ft
	below := column(9.5, 9000) - column(8.8, 9000)                          // inside less outside at the packer
	// Effective force above the packer: −(pi − po)·As of the joint, less the weight; below
	// it none. The packer's own ring has the same fluid on both sides.
	want := across*math.Pi/4*4.5*4.5 + effective
	require.InDelta(t, want, r.Steps[1].Partings[0].Below.In(unit.PoundForce), 1)
	require.Positive(t, below)
}

// What is locked in is that of the pressure at which the slips bite, which is known to
// lie between the first of them and the last: package packer's answer for the band, and
// not what the pressure that was pumped would leave, 4,200 psi · 0.4 · 7.031 in².
func TestLockInIsOfThePressureAtWhichTheSlipsBite(t *testing.T) {
	before := landed()
	before.Steps = []sequence.Step{{Name: "before"}}
	rest := lastString(verdict(t, before), 0)
	p := landed()
	a := p.Devices[0].Actions[0]
	a.Name, a.Triggers, a.Bites = "sets", []sequence.Trigger{rising(4000*psi, 4000*psi)}, "starts to set"
	start := sequence.Action{Name: "starts to set", Inside: a.Inside, Outside: a.Outside, Triggers: []sequence.Trigger{rising(3000*psi, 3000*psi)}}
	p.Devices[0].Actions = []sequence.Action{start, a}
	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(90000 * unit.PoundForce)
	p.Steps = []sequence.Step{{Name: "set", Ramps: []map[string]unit.Pressure{{"tubing": 4200 * psi}, {"tubing": 0}}, Expect: []string{"packer: starts to set", "packer: sets"}},
		{Name: "wait"}}
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	bitten, err := packer.LockIn{Pipe: tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: tubular.Steel()},
		Length: 9000 * foot}.Bitten(unit.Band[unit.Pressure]{Least: 3000 * psi, Nominal: 4000 * psi, Greatest: 4000 * psi})
	require.NoError(t, err)
	f := r.Steps[1].Forces[0]
	require.InEpsilon(t, float64(bitten.Tension.Least), float64(f.Load.Least), 1e-6)
	require.InEpsilon(t, float64(bitten.Tension.Greatest), float64(f.Load.Greatest), 1e-6)
	require.InEpsilon(t, float64(bitten.Tension.Least), float64(f.Wall.Least-rest.Wall), 1e-6)
	require.Less(t, f.Load.Greatest.In(unit.PoundForce), 0.4*4200*bore-500)
}

// Pressure in a plugged string pulls at its top as much as it lifts a closed one: the
// weight indicator doesn't see it. With an open top, such as a plug pumped against
// through a line, it shows p·Ai more.
func TestTheWeightIndicatorAndPressure(t *testing.T) {
	reading := func(top sequence.TopOfString, pressure unit.Pressure) float64 {
		p := landed()
		p.String.Top = top
		p.Steps = []sequence.Step{{Name: "hang", Ramps: []map[string]unit.Pressure{{"tubing": pressure}}}}
		return lastString(verdict(t, p), 0).Reading.In(unit.PoundForce)
	}
	rest := reading(sequence.TopClosed, 0)
	require.InDelta(t, 9000*9.3-column(9.5, 9000)*(outside-bore)+20000, rest, 1)
	require.InDelta(t, rest, reading(sequence.TopOpen, 0), 1e-6)
	require.InDelta(t, rest, reading(sequence.TopClosed, 1000*psi), 0.1)
	require.InDelta(t, rest+1000*bore, reading(sequence.TopOpen, 1000*psi), 0.1)
}

// A stored force is a force in the report too.
func TestALevelIsItsOwnText(t *testing.T) {
	r := verdict(t, jointed(60000*unit.PoundForce))
	text, err := json.Marshal(triggerOf(t, r.Steps[1], "release: parts"))
	require.NoError(t, err)
	require.Contains(t, string(text), `"threshold":{"least":"60000 lbf","nominal":"60000 lbf","greatest":"60000 lbf"}`)
	var back sequence.TriggerResult
	require.NoError(t, json.Unmarshal(text, &back))
	require.InDelta(t, 60000, inPounds(t, back.Threshold.Least), 1e-9)
	var l sequence.Level
	require.NoError(t, l.UnmarshalText([]byte("1290 psi")))
	require.Equal(t, 1290.0, inPsi(t, l))
	require.Error(t, l.UnmarshalText([]byte("1290 ft")))
}

// Where the plan gives no strength of the connections and the catalogue knows none,
// that isn't silence.
func TestWhatIsNotKnownOfTheStringIsSaid(t *testing.T) {
	text, err := json.Marshal(verdict(t, landed()).Unchecked)
	require.NoError(t, err)
	require.Contains(t, string(text), "connection")
	p := landed()
	p.String.Sections[0].Joint = 150000 * unit.PoundForce
	text, err = json.Marshal(verdict(t, p).Unchecked)
	require.NoError(t, err)
	require.NotContains(t, string(text), "no strength of connections")
}

// What a string isn't held against is said as long as it isn't given.
func TestARatingThatIsNotGivenIsSaid(t *testing.T) {
	p := landed()
	require.Contains(t, verdict(t, p).Unchecked, "the rig's rating isn't given")
	p.String.Rig = 500000 * unit.PoundForce
	require.NotContains(t, verdict(t, p).Unchecked, "the rig's rating isn't given")
}

// A release that parts before the packer sets is what goes wrong, not what keeps the
// plan from being walked.
func TestPartingBeforeTheSettingIsAFinding(t *testing.T) {
	p := landed()
	p.Fluids[0].Density = unit.Exactly(11 * ppg)
	p.Fluids[1].Density = unit.Exactly(9 * ppg)
	p.Devices[1].MD, p.Devices[1].Actions[0].Seal = 8500*foot, 4.9*unit.Inch
	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(45000 * unit.PoundForce)
	r := verdict(t, p)
	require.Equal(t, sequence.Refuted, r.Verdict)
	require.Equal(t, "unintended event | set | release: parts", roots(r)[0])
}

// A blank joint isn't as strong as the pipe where the catalogue knows better: non-upset
// connections of 3-1/2 in 9.2 lb/ft L80 bear 159,000 lbf (to 1,000 lbf; memory) of a
// body of 207,200; the external upset of 9.3 lb/ft bears what its body does. 100,000 lbf
// of pins put 100,000 + 78,200 + 4,193.8·7.031 − 3,884.7·9.621 − 309.1·15.904 =
// 165,400 lbf on the uppermost joint.
func TestABlankJointIsThatOfTheCatalogue(t *testing.T) {
	p := jointed(100000 * unit.PoundForce)
	p.Steps[1].Pull = []unit.Force{220000 * unit.PoundForce}
	require.True(t, verdict(t, p).OK())
	p.String.Sections[0].Pipe.Weight = 9.2 * unit.PoundPerFoot
	r := verdict(t, p)
	require.Equal(t, "string overloaded | pull | string", roots(r)[0])
	require.Contains(t, r.Findings[0].Says, "connection limit")
	require.Contains(t, r.Findings[0].Says, "just before “release: parts”")
	// Pins of 93,600 lbf put 159,000 lbf on it.
	for pins, ok := range map[unit.Force]bool{93000: true, 94200: false} {
		p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(pins * unit.PoundForce)
		require.Equal(t, ok, verdict(t, p).OK(), "%v", pins)
	}
}

// One reading, three ways: the balance by package packer, the made-up string by
// package movement, and the programme, on random strings of one pipe.
func TestThreeWaysToOneReading(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 9))
	between := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
	for range 8 {
		pins := unit.Force(between(60000, 90000)) * unit.PoundForce
		p := jointed(pins)
		p.Fluids[0].Density = unit.Exactly(unit.Density(between(9, 10)) * ppg)
		p.Fluids[1].Density = unit.Exactly(unit.Density(between(9, 10)) * ppg)
		seal := unit.Length(between(3.5, 4.2)) * unit.Inch
		p.Devices[1].Actions[0].Seal = seal
		p.Devices[1].MD = unit.Length(between(7500, 8900)) * foot
		p.Steps[0].Ramps[0]["tubing"] = 2200 * psi
		p.Steps[1].Pull[0] = 400000 * unit.PoundForce
		slant := unit.Angle(between(0, 50)) * unit.Degree
		p.Well.Path = []sequence.Station{{Inclination: slant}, {MD: 9000 * foot, Inclination: slant}}
		r := verdict(t, p)
		require.Len(t, r.Steps[1].Partings, 1, "%+v", r.Findings)

		path, err := hydrostatics.NewPath([]hydrostatics.Station{{Inclination: slant}, {MD: 9000 * foot, Inclination: slant}})
		require.NoError(t, err)
		fluid := func(d unit.Density) func(unit.Length) unit.Pressure {
			return func(tvd unit.Length) unit.Pressure { return unit.Pressure(float64(d) * 9.80665 * float64(tvd)) }
		}
		pipe := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: tubular.Steel()}
		pull := packer.Pull{Sections: []movement.StringSection{{Pipe: pipe, BottomMD: p.Devices[1].MD, Hole: 6.184 * unit.Inch}}, Path: path,
			Inside: fluid(p.Fluids[0].Density.Nominal), Outside: fluid(p.Fluids[1].Density.Nominal), Seal: seal, Block: p.String.Block, OpenTop: true}
		b, err := pull.Balance(pins)
		require.NoError(t, err)
		require.InEpsilon(t, float64(b.Reading), float64(r.Steps[1].Partings[0].Nominal), 1e-9)

		// While it stands in its hanger the pins feel what packer.JointLoad says.
		tvd, err := path.TVD(p.Devices[1].MD)
		require.NoError(t, err)
		end := movement.End{Bore: seal, OD: pipe.OD, ID: pipe.ID, Inside: pull.Inside(tvd), Outside: pull.Outside(tvd), Below: pull.Inside(tvd)}
		j := lastString(r, 0).Joints[0]
		require.InEpsilon(t, float64(packer.JointLoad(end, j.Wall)), float64(j.Balance), 1e-9)
	}
}

// What the packer locks in is what package packer says of the pressure at which the
// slips bite, not of the one that is pumped: for both ends of their band.
func TestLockedInIsThatOfThePackage(t *testing.T) {
	before := landed()
	before.Steps = []sequence.Step{{Name: "before"}}
	rest := lastString(verdict(t, before), 0)
	for _, pressure := range []unit.Pressure{1200 * psi, 3375 * psi, 3500 * psi} {
		p := landed()
		p.Devices[0].Actions[0].Triggers[0] = rising(pressure, pressure)
		r := verdict(t, p)
		require.True(t, r.OK(), "%+v", r.Findings)
		locked, err := packer.LockIn{Pipe: tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: tubular.Steel()},
			Length: 9000 * foot, Inside: pressure}.Locked()
		require.NoError(t, err)
		after := lastString(r, 0)
		require.InEpsilon(t, float64(locked.Tension), float64(after.Wall-rest.Wall), 1e-9)
		require.InEpsilon(t, float64(locked.Tension), float64(after.Packer), 1e-9)
	}
}
