package seals

import (
	"completion.example/hydrostatics/unit/display"
	"flag"
	"fmt"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/packer"
)

// lengths is a list of lengths with commas between, as text both ways.
type lengths []unit.Length

// MarshalText writes the list.
func (l lengths) MarshalText() ([]byte, error) {
	words := make([]string, len(l))
	for i, x := range l {
		words[i] = x.String()
	}
	return []byte(strings.Join(words, ", ")), nil
}

// UnmarshalText reads the list; nothing is an empty one.
func (l *lengths) UnmarshalText(text []byte) error {
	*l = nil
	if strings.TrimSpace(string(text)) == "" {
		return nil
	}
	for word := range strings.SplitSeq(string(text), ",") {
		var x unit.Length
		if err := x.UnmarshalText([]byte(strings.TrimSpace(word))); err != nil {
			return err
		}
		*l = append(*l, x)
	}
	return nil
}

// spacing is the tally at the top of the string.
type spacing struct {
	landing packer.Landing
	joints  lengths
	pups    lengths
}

func (s *spacing) setup(flags *flag.FlagSet) {
	flags.TextVar(&s.landing.Tagged, "tagged", 9003.4*unit.Foot, "pipe below the rotary table with the locator on its shoulder, by the tally")
	flags.TextVar(&s.landing.Above, "stick-up", 6*unit.Foot, "pipe above the rotary table then")
	flags.TextVar(&s.landing.HangerDepth, "hanger-depth", 30*unit.Foot, "seat of the tubing hanger below the rotary table")
	flags.TextVar(&s.landing.HangerLength, "hanger", 2*unit.Foot, "hanger from its seat to its lower end")
	flags.TextVar(&s.joints, "joints", lengths{31.2 * unit.Foot, 30.9 * unit.Foot, 31.5 * unit.Foot}, "joints on top of the string, uppermost first")
	flags.TextVar(&s.pups, "pups", lengths{2 * unit.Foot, 4 * unit.Foot, 6 * unit.Foot, 8 * unit.Foot, 10 * unit.Foot}, "pup joints at hand")
}

// add says what to take off and to put in for the middle of the range, and
// returns the height that comes of it.
func (s spacing) add(a *calculator.Answer, wanted packer.SpaceOut) (unit.Length, error) {
	s.landing.Height, s.landing.Joints, s.landing.Pups = wanted.Middle(), s.joints, s.pups
	m, err := s.landing.MakeUp()
	if err != nil {
		return 0, calculator.BadInput{Err: err}
	}
	pups, err := lengths(m.Pups).MarshalText()
	if err != nil {
		return 0, err
	}
	a.Results = append(a.Results,
		calculator.Result{Name: "to land it so: joints to take off", Value: fmt.Sprint(m.Joints)},
		calculator.Result{Name: "pups to put in", Value: string(pups)},
		calculator.Result{Name: "locator then above its shoulder", Value: m.Height, For: display.PipeLength})
	if m.Height < wanted.Least || m.Height > wanted.Greatest {
		a.Failed = true
		a.Notes = append(a.Notes, "the pups at hand don't bring the locator into its range")
	}
	return m.Height, nil
}
