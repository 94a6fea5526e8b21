// Package calculators lists the calculators, each in a package of its own below,
// so that their commands and the page in the browser are the same.
package calculators

import (
	"completion.example/examples/internal/calculators/balance"
	"completion.example/examples/internal/calculators/brine"
	"completion.example/examples/internal/calculators/buckling"
	"completion.example/examples/internal/calculators/bullhead"
	"completion.example/examples/internal/calculators/capacity"
	"completion.example/examples/internal/calculators/choke"
	"completion.example/examples/internal/calculators/circulation"
	"completion.example/examples/internal/calculators/column"
	"completion.example/examples/internal/calculators/commingle"
	"completion.example/examples/internal/calculators/controlline"
	"completion.example/examples/internal/calculators/convert"
	"completion.example/examples/internal/calculators/displacement"
	"completion.example/examples/internal/calculators/envelope"
	"completion.example/examples/internal/calculators/freepoint"
	"completion.example/examples/internal/calculators/friction"
	"completion.example/examples/internal/calculators/gascolumn"
	"completion.example/examples/internal/calculators/gaswell"
	"completion.example/examples/internal/calculators/hookload"
	"completion.example/examples/internal/calculators/isolation"
	"completion.example/examples/internal/calculators/kill"
	"completion.example/examples/internal/calculators/movement"
	"completion.example/examples/internal/calculators/pins"
	"completion.example/examples/internal/calculators/pressuretest"
	"completion.example/examples/internal/calculators/ratings"
	"completion.example/examples/internal/calculators/release"
	"completion.example/examples/internal/calculators/safetyvalve"
	"completion.example/examples/internal/calculators/seals"
	"completion.example/examples/internal/calculators/setting"
	"completion.example/examples/internal/calculators/sleeves"
	"completion.example/examples/internal/calculators/stress"
	"completion.example/examples/internal/calculators/stretch"
	"completion.example/examples/internal/calculators/surge"
	"completion.example/examples/internal/calculators/survey"
	"completion.example/examples/internal/calculators/trapped"
	"completion.example/examples/internal/calculators/utube"
	"completion.example/internal/calculator"
)

// Group is calculators of one kind.
type Group struct {
	Name     string
	Commands []calculator.Command
}

// Groups are all calculators, as README lists them.
func Groups() []Group {
	return []Group{
		{"fluids and pressures", []calculator.Command{
			column.Command, balance.Command, bullhead.Command, kill.Command, surge.Command, utube.Command, brine.Command, gascolumn.Command,
			friction.Command, circulation.Command, displacement.Command, trapped.Command, pressuretest.Command, convert.Command,
		}},
		{"pipe and string", []calculator.Command{
			capacity.Command, ratings.Command, stress.Command, stretch.Command, freepoint.Command, movement.Command, buckling.Command,
			hookload.Command, survey.Command,
		}},
		{"packer", []calculator.Command{pins.Command, setting.Command, envelope.Command, seals.Command, release.Command}},
		{"valves and zones", []calculator.Command{
			controlline.Command, sleeves.Command, isolation.Command, safetyvalve.Command, choke.Command, commingle.Command, gaswell.Command,
		}},
	}
}

// Named is the calculator of a name.
func Named(name string) (c calculator.Command, ok bool) {
	for _, g := range Groups() {
		for _, c := range g.Commands {
			if c.Name == name {
				return c, true
			}
		}
	}
	return c, false
}

// Asked is a calculator as a page offers it.
type Asked struct {
	Name     string             `json:"name"`
	Question string             `json:"question"`
	Fields   []calculator.Field `json:"fields"`
}

// Questions are calculators of one kind as a page offers them.
type Questions struct {
	Group string  `json:"group"`
	Of    []Asked `json:"of"`
}

// AllQuestions lists what the calculators ask for.
func AllQuestions() []Questions {
	var all []Questions
	for _, g := range Groups() {
		q := Questions{Group: g.Name}
		for _, c := range g.Commands {
			q.Of = append(q.Of, Asked{c.Name, c.Question, c.Fields()})
		}
		all = append(all, q)
	}
	return all
}
