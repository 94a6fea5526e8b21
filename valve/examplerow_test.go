package valve_test

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
)

// A valve that unlocks above 3,000 psi and opens when bled below 1,000 psi: what it
// waits for, how far it has come, and the state to go on from when it was seen open.
func ExampleRow_Next() {
	row := valve.Row{
		{Threshold: unit.Exactly(3000 * unit.PSI)},
		{Threshold: unit.Exactly(1000 * unit.PSI), Direction: valve.Falling},
	}
	var state valve.TriggerState
	for _, to := range []unit.Pressure{2500 * unit.PSI, 3500 * unit.PSI} {
		state = row.Ramp(state, 0, to).State
		at, direction, _ := row.Next(state)
		certain, _ := state.Links()
		_, highest, _ := state.Seen()
		fmt.Println("seen", highest, "fired", certain, "waits for", at, direction)
	}
	fmt.Println(row.Condition(state), row.Condition(row.Done()))
	// Output:
	// seen 2500 psi fired 0 waits for 3000 psi rising
	// seen 3500 psi fired 1 waits for 1000 psi falling
	// armed fired
}

// A valve that opens at the third of three cycles.
func ExampleTriggerState_Counted() {
	row := valve.Row{{Threshold: unit.Within(3000*unit.PSI, 0.05), Rearm: unit.Exactly(500 * unit.PSI), Count: 3}}
	var state valve.TriggerState
	for _, to := range []unit.Pressure{3500 * unit.PSI, 3000 * unit.PSI} {
		state = row.Ramp(state, 0, to).State
		state = row.Ramp(state, to, 0).State
	}
	latest, earliest := state.Counted()
	fmt.Println("met", latest, "times for certain,", earliest, "at most")
	// Output: met 1 times for certain, 2 at most
}

// The two ends of a trigger that waits for a fall: the higher one is met first.
func ExampleTrigger_Near() {
	t := valve.Trigger{Threshold: unit.Within(1000*unit.PSI, 0.1), Direction: valve.Falling}
	fmt.Println("from", t.Near(), "to", t.Far(), "- a bleed-off from 3,000 psi comes as far as", t.Extreme(3000*unit.PSI, 500*unit.PSI))
	r := t.Reversed()
	fmt.Println("counted the other way it is", r.Direction, "from", r.Near())
	// Output:
	// from 1100 psi to 900 psi - a bleed-off from 3,000 psi comes as far as 500 psi
	// counted the other way it is rising from -1100 psi
}
