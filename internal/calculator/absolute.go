package calculator

import (
	"flag"

	"completion.example/hydrostatics/unit"
)

// AbsoluteVar adds a flag for one of the few pressures that are absolute: psia
// is read as it stands, psig has the atmosphere added, as unit.ParseAbsolute has
// it.
func AbsoluteVar(flags *flag.FlagSet, p *unit.Pressure, name string, value unit.Pressure, usage string) {
	*p = value
	flags.Var((*absolute)(p), name, usage)
}

type absolute unit.Pressure

func (a *absolute) String() string { return unit.Pressure(*a).String() }
func (a *absolute) Get() any       { return unit.Pressure(*a) }

func (a *absolute) Set(text string) error {
	p, err := unit.ParseAbsolute(text)
	if err == nil {
		*a = absolute(p)
	}
	return err
}
