package isolation

import (
	"fmt"
	"strings"

	"completion.example/hydrostatics/unit"
)

// ledger is a flag: surface pressures reached, in order, each bled off again,
// such as "tubing test 2500 psi, circulation 1200 psi".
type ledger []event

type event struct {
	name string
	to   unit.Pressure
}

func (l ledger) String() string {
	var s []string
	for _, e := range l {
		s = append(s, e.name+" "+e.to.String())
	}
	return strings.Join(s, ", ")
}

func (l *ledger) Set(text string) error {
	var read ledger
	for part := range strings.SplitSeq(text, ",") {
		words := strings.Fields(part)
		if len(words) == 0 {
			continue
		}
		if len(words) < 2 {
			return fmt.Errorf("%q is no event; write a name and a pressure with its unit, such as \"tubing test 2500 psi\"", part)
		}
		e := event{name: strings.Join(words[:len(words)-2], " ")}
		if err := e.to.UnmarshalText([]byte(strings.Join(words[len(words)-2:], " "))); err != nil {
			return err
		}
		read = append(read, e)
	}
	*l = read
	return nil
}
