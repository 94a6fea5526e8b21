package calculator

import (
	"flag"
	"reflect"
	"strings"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/clock"
)

// Units is the system that a calculator's output is in. It is known once the
// flags have been read, before the calculation is run.
type Units struct {
	display.System
	name string
}

// unitsFlag is the flag's name; plan takes the units of the inputs.
const (
	unitsFlag    = "units"
	defaultUnits = "plan"
)

func addUnits(flags *flag.FlagSet) *Units {
	u := &Units{name: defaultUnits}
	flags.Var(u, unitsFlag, "units of the output: field, si, or plan, which are those that the inputs are in")
	return u
}

// UnitsOf returns the units of a calculator's output, for its words and pictures.
func UnitsOf(flags *flag.FlagSet) *Units {
	if f := flags.Lookup(unitsFlag); f != nil {
		if u, ok := f.Value.(*Units); ok {
			return u
		}
	}
	return &Units{} // of a set that no calculator runs: field
}

// String and Set make Units a flag.
func (u *Units) String() string { return u.name }

// Set takes the name of a system.
func (u *Units) Set(name string) error {
	_, err := display.Named(name)
	if err == nil {
		u.name = name
	}
	return err
}

// settle finds the system. What was typed says which units a plan is in; what
// wasn't, the defaults, says so for the rest.
func (u *Units) settle(flags *flag.FlagSet, typed map[string]string) {
	var given, rest []string
	flags.VisitAll(func(f *flag.Flag) {
		if g, ok := f.Value.(flag.Getter); ok {
			if _, is := g.Get().(time.Duration); is {
				return // 20m are minutes
			}
		}
		if text, ok := typed[f.Name]; ok {
			given = append(given, text)
		} else {
			rest = append(rest, f.DefValue)
		}
	})
	if u.System, _ = display.Named(u.name); u.name == defaultUnits { // Set has checked the name
		u.System = display.PlanOf(given, rest)
	}
}

// recorder keeps the text that a flag was given.
type recorder struct {
	flag.Value
	name  string
	texts map[string]string
}

// Set records text once the flag has taken it.
func (r recorder) Set(text string) error {
	err := r.Value.Set(text)
	if err == nil {
		r.texts[r.name] += " " + text
	}
	return err
}

// Get returns what the flag holds.
func (r recorder) Get() any {
	if g, ok := r.Value.(flag.Getter); ok {
		return g.Get()
	}
	return nil
}

// IsBoolFlag lets a boolean flag stand without a value.
func (r recorder) IsBoolFlag() bool {
	b, ok := r.Value.(interface{ IsBoolFlag() bool })
	return ok && b.IsBoolFlag()
}

// record makes every flag keep what it is given, until stop is called.
func record(flags *flag.FlagSet) (typed map[string]string, stop func()) {
	typed = map[string]string{}
	values := map[string]flag.Value{}
	flags.VisitAll(func(f *flag.Flag) {
		values[f.Name] = f.Value
		f.Value = recorder{f.Value, f.Name, typed}
	})
	return typed, func() { flags.VisitAll(func(f *flag.Flag) { f.Value = values[f.Name] }) }
}

// quantity returns the quantity behind a flag, or nil.
func quantity(v flag.Value) any {
	g, ok := v.(flag.Getter)
	if !ok {
		return nil
	}
	q := g.Get()
	if p := reflect.ValueOf(q); p.Kind() == reflect.Pointer && !p.IsNil() {
		q = p.Elem().Interface()
	}
	if (display.System{}).UnitOf(q, display.Usual) == "" {
		return nil
	}
	return q
}

// people writes a flag's value for the reader, in a unit of the output.
func (u *Units) people(f *flag.Flag, typed string) string {
	q := quantity(f.Value)
	if q == nil {
		if g, ok := f.Value.(flag.Getter); ok {
			if d, is := g.Get().(time.Duration); is {
				return clock.Words(d)
			}
		}
		return understood(f.Value)
	}
	symbol := lastWord(f.Value.String())
	if _, written, ok := unit.Written(typed); ok {
		symbol = written.Text
	}
	p := display.Implied(q, symbol)
	if exact := u.Exact(q, p); !long(exact) {
		return exact
	}
	return u.Significant(q, p, inputDigits)
}

func lastWord(text string) string { return text[strings.LastIndexByte(text, ' ')+1:] }
