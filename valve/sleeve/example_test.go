package sleeve

import (
	"fmt"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
)

func ExampleSystem_Apply() {
	s := well(2)
	effects, err := s.Apply([]Position{Open, Open}, Panel{Close: on(3000), Open: []Setting{on(3000)}})
	if err != nil {
		panic(err)
	}
	for _, e := range effects {
		fmt.Println(e.Name, e.Motion, "- margin", e.Margin.Rounded(4))
	}
	// Output:
	// sleeve 1 stays - margin 800 lbf
	// sleeve 2 closes - margin 4800 lbf
}

func ExampleSystem_PanelWindow() {
	s := well(2)
	w, err := s.PanelWindow([]Position{Open, Open}, Action{Close: true, Move: []int{1}, Hold: []int{0}}, valve.SurfaceRange{Greatest: 5000 * unit.PSI})
	fmt.Println(w.Least.Rounded(4), "to", w.Greatest.Rounded(4), err)
	// Output: 600 psi to 5000 psi <nil>
}

func ExampleSystem_Junctions() {
	js, err := well(2).Junctions([]Position{Closed, Open}, []Position{Open, Open})
	fmt.Printf("%+v %v\n", js, err)
	// Output: [{Sleeve:sleeve 1 Inside:tubing Outside:zone 1 Joins:true Perhaps:false}] <nil>
}

func ExampleSystem_Shift() {
	shift, err := well(2).Shift(0, false, 3000*unit.PSI)
	if err != nil {
		panic(err)
	}
	plan, err := shift.Plan()
	fmt.Printf("%.2f L to pump, done after %v %v\n", plan.Pumped.In(unit.Litre), plan.Total.Round(time.Second), err)
	// Output: 0.85 L to pump, done after 4m58s <nil>
}
