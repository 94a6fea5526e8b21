package sequence_test

import (
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// countCases are cases of triggers, counts, order, and of what is judged at
// every moment.
func countCases() []plainCase {
	var all []plainCase
	add := func(name string, p *sequence.Plan, fails sequence.Kind) { all = append(all, plainCase{name, p, fails}) }

	// The two triggers of one row each have a value of their own: armed at 2,000 to
	// 2,200 psi, it fires at 300 to 500 psi on the way down. It fires before the
	// annulus is up only where the first is early and the second late or the like.
	row := func(first, least float64) *sequence.Plan {
		p := gaugeWell()
		addAction(p, "lock", "tubing", "", rising(2000*psi, 2200*psi), falling(300*psi, 500*psi))
		p.Steps = []sequence.Step{
			{Name: "up", Ramps: tubingTo(first, least)},
			{Name: "again", Ramps: tubingTo(2300, 200), Expect: []string{"lock: moves"}},
		}
		return p
	}
	add("a row that neither trigger meets", row(1999, 0), "")
	add("a row whose second trigger isn't met", row(2300, 501), "")
	add("a row with the first early and the second early", row(2001, 499), sequence.Unintended)

	// A re-arm level of 500 to 900 psi under an exact threshold: bled to 600 psi the
	// counter may or may not have come back.
	counter := func(bleed float64) *sequence.Plan {
		p := gaugeWell()
		t := rising(2000*psi, 2000*psi)
		t.Count, t.Rearm = 2, unit.Band[pressure]{Least: 500 * psi, Nominal: 850 * psi, Greatest: 900 * psi}
		addAction(p, "counter", "tubing", "", t)
		p.Steps = []sequence.Step{{Name: "twice", Ramps: tubingTo(2100, bleed, 2100), Expect: []string{"counter: moves"}}}
		return p
	}
	add("bled to the least re-arm level", counter(500), "")
	add("bled into the re-arm band", counter(600), sequence.Missing)

	// Opens, closes, and opens again: not what "opens, closes" expects.
	add("open, close, open", openCloseOpen("valve: opens", "valve: closes"), sequence.Unintended)
	add("open, close, open as expected", openCloseOpen("valve: opens", "valve: closes", "valve: opens"), "")
	add("open, close, open in the wrong order", openCloseOpen("valve: opens", "valve: opens", "valve: closes"), sequence.Unintended)

	// A test counts at the highest ramp, which is the second.
	test := func(greatest float64) *sequence.Plan {
		p := gaugeWell()
		f := sequence.Formation{Name: "sand", MD: 1000 * foot}
		setPore(&f, 1000)
		p.Formations = []sequence.Formation{f}
		p.Barriers = []sequence.Barrier{{Name: "plug", Formation: "sand"}}
		addAction(p, "far", "tubing", "", rising(9000*psi, 9000*psi))
		p.Steps = []sequence.Step{{Name: "test", Ramps: tubingTo(500, 3000, 0), Tests: []sequence.Test{{Barrier: "plug", Side: "above",
			Inside: "tubing", Outside: "annulus", Differential: unit.Band[pressure]{Least: 2900 * psi, Nominal: 2950 * psi, Greatest: pounds(greatest)}}}}}
		return p
	}
	add("a test at the second ramp", test(3000), "")
	add("a test beyond its band at the second ramp", test(2999), sequence.TestOff)

	// 11 lb/gal goes down through 9 lb/gal as far as 400 ft and through 14 lb/gal
	// from there: what stands at 1,000 ft rises by 400 ft·2 lb/gal·12/231 = 41.56
	// psi and falls again.
	add("a front's peak under the threshold", front(41.6), "")
	add("a front's peak over the threshold", front(41.5), sequence.Unintended)

	add("due at once, either first", dueAtOnce("burst: moves", "relief: moves", "witness: moves"), sequence.Missing)
	add("due at once, the other first", dueAtOnce("burst: moves", "relief: moves"), sequence.Unintended)
	add("one barrier falls, then the other", fallingBarriers(0), sequence.BarrierLack)
	add("one barrier falls, the other stands", fallingBarriers(400), "")

	// 9 lb/gal over 2,000 ft less a formation of 300 psi: a shut tubing that opens
	// to it stands at 300 − 935 psi at its top.
	vacuum := gaugeWell()
	vacuum.Well.MD = 2000 * foot
	vacuum.Compartments[0].BottomMD = 2000 * foot
	f := sequence.Formation{Name: "sand", MD: 2000 * foot}
	setPore(&f, 300)
	vacuum.Formations = []sequence.Formation{f}
	vacuum.Compartments = append(vacuum.Compartments, sequence.Compartment{Name: "face", TopMD: 1500 * foot, BottomMD: 2000 * foot, Fluid: "brine", Formation: "sand"})
	vacuum.Ports = []sequence.Port{{Name: "door", Joins: []string{"tubing", "face"}, MD: 2000 * foot}}
	addAction(vacuum, "valve", "annulus", "", rising(1000*psi, 1100*psi)).Opens = []string{"door"}
	vacuum.Steps = []sequence.Step{{Name: "start"}, {Name: "open", Shut: []string{"tubing"}, Expect: []string{"valve: moves"},
		Ramps: []map[string]pressure{{"annulus": 1500 * psi}}}}
	add("a vacuum at surface", vacuum, plainVacuum)
	return all
}

func openCloseOpen(expect ...string) *sequence.Plan {
	p := gaugeWell()
	p.Devices = []sequence.Device{{Name: "valve"}}
	none := pressure(0)
	for _, a := range []sequence.Action{
		{Name: "opens", Arms: []string{"closes"}, Triggers: []sequence.Trigger{rising(1900*psi, 2100*psi)}},
		{Name: "closes", Arms: []string{"opens"}, Disarmed: true, Triggers: []sequence.Trigger{falling(400*psi, 600*psi)}},
	} {
		a.Inside, a.Chamber = "tubing", &none
		p.Devices[0].Actions = append(p.Devices[0].Actions, a)
	}
	p.Steps = []sequence.Step{{Name: "cycle", Ramps: tubingTo(2500, 0, 2500), Expect: expect}}
	return p
}

// front is a swap whose pressure peaks on the way.
func front(threshold float64) *sequence.Plan {
	p := gaugeWell()
	p.Fluids = append(p.Fluids, sequence.Fluid{Name: "middle"}, sequence.Fluid{Name: "heavy"})
	setDensity(&p.Fluids[1], 11)
	setDensity(&p.Fluids[2], 14)
	p.Compartments[0].Fluid = ""
	p.Compartments[0].Layers = []sequence.Layer{{Fluid: "brine", ToMD: 400 * foot}, {Fluid: "heavy", ToMD: 1000 * foot}}
	base := (9*400 + 14*600) * psiPerFootPpg
	addAction(p, "valve", "tubing", "", sequence.Trigger{Threshold: unit.Exactly(pounds(base + threshold))})
	p.Devices[0].MD = 1000 * foot
	p.Steps = []sequence.Step{{Name: "circulate", Displace: []sequence.Displacement{{Compartment: "tubing", Fluid: "middle", ToMD: 1000 * foot}}}}
	return p
}

// fallingBarriers: two barriers, each until a device moves that does nothing else,
// at 200 to 220 psi and at 300 to 320 psi and more.
func fallingBarriers(more float64) *sequence.Plan {
	p := gaugeWell()
	f := sequence.Formation{Name: "sand", MD: 1000 * foot}
	setPore(&f, 1000)
	p.Formations = []sequence.Formation{f}
	addAction(p, "x", "tubing", "", rising(200*psi, 220*psi))
	addAction(p, "y", "tubing", "", rising(pounds(300+more), pounds(320+more)))
	p.Barriers = []sequence.Barrier{{Name: "one", Formation: "sand", Until: "x: moves"}, {Name: "two", Formation: "sand", Until: "y: moves"}}
	p.Rules.Barriers = 1
	p.Steps = []sequence.Step{{Name: "up", Ramps: tubingTo(500), Expect: []string{"x: moves"}}}
	if more == 0 {
		p.Steps[0].Expect = append(p.Steps[0].Expect, "y: moves")
	}
	return p
}

// dueAtOnce: a room jumps to the tubing's 1,000 psi as a disc bursts. Then a
// witness that moves at 500 psi and a relief that lets the room go to the annulus
// at 600 psi are due at once: after the relief the witness feels nothing.
func dueAtOnce(expect ...string) *sequence.Plan {
	p := gaugeWell("room")
	addPort(p, "in", "tubing", "room", false)
	addPort(p, "out", "room", "annulus", false)
	addAction(p, "burst", "tubing", "", rising(1000*psi, 1000*psi)).Opens = []string{"in"}
	relief := addAction(p, "relief", "room", "", rising(600*psi, 600*psi))
	relief.Closes, relief.Opens = []string{"in"}, []string{"out"}
	addAction(p, "witness", "room", "", rising(500*psi, 500*psi))
	p.Steps = []sequence.Step{{Name: "up", Ramps: tubingTo(1500), Expect: expect}}
	return p
}
