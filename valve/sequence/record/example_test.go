package record_test

import (
	"context"
	"fmt"
	"os"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"completion.example/valve/sequence/record"
)

// The record of the demo's invented job in which a valve did not open.
func ExampleDiagnose() {
	const dir = "../../../examples/installation/"
	plan := unit.Must(sequence.Read(unit.Must(os.ReadFile(dir + "plans/demo.json"))))
	job := unit.Must(record.Read(unit.Must(os.ReadFile(dir+"records/valve-did-not-open.csv")), plan))
	d := unit.Must(record.Diagnose(context.Background(), plan, nil, job, record.Options{}))
	fmt.Println(d.Finding)
	for _, e := range d.Explains {
		fmt.Println(e.Says[0])
	}
	for _, s := range d.Known {
		if s.Of == "isolation valve C" {
			fmt.Println(s.Of, "is", s.Is)
		}
	}
	// Output:
	// otherwise
	// step 11, open isolation valve C: “isolation valve C: opens” did not happen (meant at 2984 psi to 3229 psi of tubing, which was brought to 3500 psi)
	// isolation valve C is shut
}
